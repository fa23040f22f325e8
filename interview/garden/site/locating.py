"""What the locate services of the states and DC ask for, and how near a mark one digs by hand."""

from __future__ import annotations

import csv
import re
from collections.abc import Mapping
from enum import Enum
from functools import cache
from importlib.resources import files
from typing import NamedTuple

from interview.quantities.evidence import Provenance, Source
from interview.quantities.units import (
    Quantity,
    feet_and_inches,
    magnitude,
    plain_number,
    quantity,
    round_up,
)

DEFAULT_BUSINESS_DAYS = 3
DEFAULT_VALID_WORKING_DAYS = 10
DEFAULT_VALID_CALENDAR_DAYS = 14
"""The two weeks that ten working days last when none of them is a holiday."""
DEFAULT_HAND_DIG_IN = 24.0
DEFAULT_WAIT_SOURCE = Source(
    "MISS DIG 811 and South Carolina 811, web pages: 3 business days", Provenance.PUBLISHED
)
DEFAULT_LIFE_SOURCE = Source(
    "Best Practices Guide, Common Ground Alliance, practice 5.23, web page: 10 working days",
    Provenance.PUBLISHED,
)
DEFAULT_ZONE_SOURCE = Source(
    "USA North 811 and Virginia 811, web pages; LG&E and KU, safe digging, 2024: 24 in each side "
    "of a mark",
    Provenance.PUBLISHED,
)


class Counted(Enum):
    """How the days of the marks are counted."""

    FROM_MARKING = "working days after the day the marks were finished"
    CALENDAR = "calendar days after the day of the request"
    FROM_REQUEST = "working days after the day of the request"


class Life(NamedTuple):
    """A number of days after the request."""

    days: int
    working: bool
    """Monday to Friday, holidays among them; otherwise days of the calendar."""
    kind_said: bool = True
    """False where the text does not say which days it means; the shorter, calendar, are taken."""

    @property
    def span(self) -> float:
        """About how many days of the calendar that is."""
        return self.days * 7 / 5 if self.working else float(self.days)

    @property
    def counted(self) -> Counted:
        """How these days are counted."""
        return Counted.FROM_REQUEST if self.working else Counted.CALENDAR

    def __str__(self) -> str:
        kind = "working days" if self.working else "calendar days"
        return f"{self.days} {kind if self.kind_said else 'days'}"


CAREFUL = Life(DEFAULT_VALID_WORKING_DAYS, True)
"""The life of the marks where no text of the state was read."""


def _careful(life: Life) -> Life:
    """Return ``life``, or the careful two weeks where it is longer."""
    most = DEFAULT_VALID_WORKING_DAYS if life.working else DEFAULT_VALID_CALENDAR_DAYS
    return Life(most, life.working) if life.days > most else life


class StateNotice(NamedTuple):
    """What one state's service asks for; a ticket in hand always goes before this.

    What was read stands in the fields, ``None`` or empty where nothing was; the properties give
    what is assumed. Of two texts of a state the longer wait, the wider strip and the shorter life
    are held.
    """

    code: str
    state: str
    wait: int | None = None
    """Full business days to wait, as read."""
    longest_wait: int | None = None
    """The wait of some places in the state, where it is longer; then none is assumed."""
    wait_words: str = ""
    call_day: str = "not said"
    """Whether the day of the call counts: ``yes``, ``no`` or ``not said``. Here it never does."""
    life: Life | None = None
    life_from: str = ""
    """The day the text counts from; here every day counted is one after the request."""
    begin: Life | None = None
    """Within how many days of the request digging must begin."""
    strip_in: float | None = None
    """Inches either side of a mark where only careful hand digging is allowed, as read."""
    hand: str = ""
    """Whether the law spares the owner's digging by hand: ``spared``, ``not spared`` or nothing."""
    hand_words: str = ""
    phone: str = ""
    website: str = ""
    note: str = ""
    pages: str = ""
    """Where all this was read."""
    wait_standing: Provenance | None = None
    life_standing: Provenance | None = None
    strip_standing: Provenance | None = None
    hand_standing: Provenance | None = None

    @property
    def business_days(self) -> int | None:
        """The full business days assumed; ``None`` where only the ticket can tell."""
        if self.longest_wait is not None:
            return None
        return max(self.wait or DEFAULT_BUSINESS_DAYS, DEFAULT_BUSINESS_DAYS)

    @property
    def wait_source(self) -> Source:
        """The source of ``business_days``."""
        own = self.business_days in (None, self.wait)
        return self._from(self.wait_standing) if own else DEFAULT_WAIT_SOURCE

    @property
    def marks(self) -> Life:
        """The life of the marks assumed.

        The shorter of the state's own life and the days within which digging must begin. Only a
        published life is taken where it is longer than the careful one.
        """
        own = self.life or CAREFUL
        if self.life_standing is not Provenance.PUBLISHED:
            own = _careful(own)
        held = [own, self.begin] if self.begin else [own]
        return min(held, key=lambda life: (life.span, life.working))

    @property
    def marks_source(self) -> Source:
        """The source of ``marks``."""
        if self.marks not in (self.life, self.begin):
            return DEFAULT_LIFE_SOURCE
        return self._from(self.life_standing or self.wait_standing)

    @property
    def hand_dig_in(self) -> float:
        """The inches assumed either side of a mark; never less than the state's own."""
        return max(self.strip_in or DEFAULT_HAND_DIG_IN, DEFAULT_HAND_DIG_IN)

    @property
    def zone_source(self) -> Source:
        """The source of ``hand_dig_in``."""
        own = self.hand_dig_in == self.strip_in
        return self._from(self.strip_standing) if own else DEFAULT_ZONE_SOURCE

    def _from(self, standing: Provenance | None) -> Source:
        return Source(f"{self.state}: {self.pages}; web pages", standing or Provenance.MEMORY)

    def read(self) -> str:
        """Return what was read of the state, each part with how much stands behind it."""
        if self.wait is None:
            return ""
        said = [f"{self.state}, as read. Wait: {self.wait_words}{_stands(self.wait_standing)}"]
        said.append(f"Day of the call counts: {self.call_day}; here it never does")
        since = f" from {self.life_from}" if self.life_from else ""
        said.append(
            f"Marks: {self.life}{since}{_stands(self.life_standing)}"
            if self.life
            else "Life of the marks: not read"
        )
        if self.begin:
            said.append(f"Digging begins within {self.begin}")
        said.append(
            f"Strip: {self.strip_in:g} in{_stands(self.strip_standing)}"
            if self.strip_in is not None
            else "Strip: not read"
        )
        if self.hand:
            said.append(f"Hand digging {self.hand}: {self.hand_words}{_stands(self.hand_standing)}")
        if self.note:
            said.append(self.note.rstrip("."))
        told = ". ".join([*said, f"Pages: {self.pages}", "Your ticket goes before all of it"])
        return _in_both_units(told) + "."


_AS_READ = r"\b(\d+(?:\.\d+)?) (in|ft)\b(?! \(\d)"


def _in_both_units(words: str) -> str:
    """Write the metric length behind each length as it was read."""

    def both(found: re.Match[str]) -> str:
        number = float(found[1])
        metric = f"{25.4 * number:.0f} mm" if found[2] == "in" else f"{0.3048 * number:.1f} m"
        return f"{found[0]} ({metric})"

    return re.sub(_AS_READ, both, words)


def _stands(standing: Provenance | None) -> str:
    return f" ({standing.value})" if standing else ""


_STANDINGS = {
    "published": Provenance.PUBLISHED,
    "second copy": Provenance.SECONDARY,
    "carried over, not read again": Provenance.CARRIED,
    "": None,
}


def _life(days: str, kind: str) -> Life | None:
    if not days:
        return None
    if kind not in ("working", "calendar", "not said"):
        raise ValueError(f"“{kind}” is no kind of day.")
    return Life(int(days), kind == "working", kind != "not said")


def _state(row: Mapping[str, str]) -> StateNotice:
    standing = {name: _STANDINGS[row[f"{name}_standing"]] for name in _PARTS}
    return StateNotice(
        code=row["code"],
        state=row["state"],
        wait=int(row["wait"]),
        longest_wait=int(row["longest_wait"]) if row["longest_wait"] else None,
        wait_words=row["wait_words"],
        call_day=row["call_day"],
        life=_life(row["life"], row["life_kind"]),
        life_from=row["life_from"],
        begin=_life(row["begin"], row["begin_kind"]),
        strip_in=float(row["strip"]) if row["strip"] else None,
        hand=row["hand"],
        hand_words=row["hand_words"],
        phone=row["phone"],
        website=row["website"],
        note=row["note"],
        pages=row["sources"],
        wait_standing=standing["wait"],
        life_standing=standing["life"],
        strip_standing=standing["strip"],
        hand_standing=standing["hand"],
    )


_PARTS = ("wait", "life", "strip", "hand")


@cache
def states() -> Mapping[str, StateNotice]:
    """Return the packaged table by postal code, read once; raises ValueError if it is damaged."""
    text = (files("interview.garden.site") / "locating.csv").read_text(encoding="utf-8")
    try:
        return {row["code"]: _state(row) for row in csv.DictReader(text.splitlines())}
    except (KeyError, ValueError) as fault:
        raise ValueError(f"The packaged table of locate services is damaged: {fault}") from None


@cache
def notice_for(state: str) -> StateNotice:
    """Return the notice of a state by its two letters; the careful one when it is not known."""
    code = state.strip().upper()
    if not code:
        return StateNotice("", "your state")
    return states().get(code) or StateNotice(code, "your state")


class ToleranceZone(NamedTuple):
    """The strip on each side of a mark that is only for gentle digging by hand."""

    us: Quantity
    metric: Quantity
    """Its own round number, never less than a rule written in inches asks."""
    source: Source

    def shown(self, metric: bool) -> Quantity:
        """Return its width, a length, in the unit of the session."""
        return self.metric if metric else self.us

    def words(self, metric: bool) -> str:
        """Write its width, such as ``2 ft`` or ``0.6 m``."""
        if metric:
            return f"{plain_number(magnitude(self.metric, 'm'))} m"
        return feet_and_inches(self.us)


_ABROAD = Source(
    "as in most US states; this program knows no rule for this country",
    Provenance.OURS,
)
_CANADA = Source("1 m each side, custom of the Canadian one-call centres", Provenance.MEMORY)


def tolerance_zone(state: str, country: str = "us") -> ToleranceZone:
    """Return how near a mark only gentle hand digging may be.

    ``state`` is the two letters of a US state, empty where it is not known; ``country`` is ``us``,
    ``canada`` or any other word. What a ticket says goes before it.
    """
    if country == "canada":
        return ToleranceZone(quantity(40, "in"), quantity(1, "m"), _CANADA)
    if country != "us":
        return ToleranceZone(quantity(24, "in"), quantity(0.6, "m"), _ABROAD)
    notice = notice_for(state)
    width = quantity(notice.hand_dig_in, "in")
    return ToleranceZone(width, round_up(width, 0.01, "m"), notice.zone_source)
