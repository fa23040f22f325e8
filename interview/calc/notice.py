"""What the locate services of the states ask for, and what the paint colors mean."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from interview.evidence import MEMORY, Cited, Source, Standing
from interview.units import Quantity, feet_and_inches, magnitude, plain_number, quantity, round_up

DEFAULT_BUSINESS_DAYS = 3
DEFAULT_VALID_WORKING_DAYS = 10
DEFAULT_HAND_DIG_IN = 24.0
DEFAULT_SOURCE = Source(
    "MISS DIG 811 and South Carolina 811, web pages: 3 business days; Best Practices Guide, Common "
    "Ground Alliance, practice 5.23: 10 working days",
    Standing.PUBLISHED,
)
DEFAULT_ZONE_SOURCE = Source(
    "USA North 811 and Virginia 811, web pages; LG&E and KU, safe digging, 2024: 24 in each side "
    "of a mark",
    Standing.PUBLISHED,
)
NATIONAL_NUMBER = Cited(
    "811", Source("Federal Communications Commission order, 2005", Standing.SECONDARY)
)


@dataclass(frozen=True)
class StateNotice:
    """What one state's service asks for; a ticket in hand always goes before this."""

    state: str
    business_days: int = DEFAULT_BUSINESS_DAYS
    """Full business days to wait; the day of the request is not counted."""
    hand_dig_in: float = DEFAULT_HAND_DIG_IN
    """Inches either side of a mark where only careful hand digging is allowed."""
    valid_days: int = DEFAULT_VALID_WORKING_DAYS
    valid_calendar: bool = False
    """Whether ``valid_days`` are calendar days; otherwise they are working days."""
    source: Source = DEFAULT_SOURCE
    note: str = ""


def _published(title: str) -> Source:
    return Source(title, Standing.PUBLISHED)


# Where a shorter wait, a narrower zone or a longer life is known from memory only, the default
# stays and the note tells.
_ROWS = {
    "CA": StateNotice(
        "California", 2, valid_days=28, valid_calendar=True,
        source=_published("USA North 811, usanorth811.org; Contractors State License Board, 2013"),
        note="Do not ask more than 14 days ahead.",
    ),
    "FL": StateNotice(
        "Florida", 2, source=_published("Sunshine 811, homeowner questions, web page"),
        note="Two full business days; the ticket may say longer than 10 working days.",
    ),
    "VA": StateNotice(
        "Virginia", 3, source=_published("Virginia 811, wait times explained, web page"),
        note="48 hours from 7 am of the next working day.",
    ),
    "MI": StateNotice(
        "Michigan", 3, hand_dig_in=48.0, valid_days=21, valid_calendar=True,
        source=_published("MISS DIG 811, frequent questions, web page"),
        note="Start within 14 days; hand dig within 4 ft of a mark.",
    ),
    "SC": StateNotice(
        "South Carolina", 3, valid_days=15,
        source=_published("South Carolina 811, life of a locate, web page"),
    ),
    "OR": StateNotice(
        "Oregon", 2, source=_published("Dig Safely Oregon, homeowners, web page"),
        note="A request after 5 pm counts from the next day.",
    ),
    "WA": StateNotice(
        "Washington", valid_days=45, valid_calendar=True,
        source=_published(
            "Rain Garden Handbook for Western Washington, WSU Extension and Washington Ecology,"
            " 2013, p. 13 (life of the marks)"
        ),
        note="The service may ask for 2 business days.",
    ),
    "MA": StateNotice(
        "Massachusetts", 3, source=_published("National Grid, Dig Safe required time, web page"),
        note="72 hours without weekends and holidays.",
    ),
    "RI": StateNotice(
        "Rhode Island", 3, source=_published("National Grid, Dig Safe required time, web page"),
        note="72 hours without weekends and holidays.",
    ),
    "NY": StateNotice(
        "New York", 2, source=_published("National Grid, required time, web page"),
        note="Two full working days.",
    ),
    "IL": StateNotice(
        "Illinois", 2, valid_days=27, valid_calendar=True,
        source=_published("Illinois One-Call, ticket life, web page"),
        note="28 calendar days with the day of the call; extend from day 20.",
    ),
    "NE": StateNotice(
        "Nebraska", valid_days=17, valid_calendar=True,
        source=_published("Nebraska 811, ticket life, web page"),
        note="17 calendar days after the start date of the ticket.",
    ),
    "IN": StateNotice(
        "Indiana", 2, source=_published("Kosciusko REMC, digging safely, web page"),
        note="Hand tools only within 2 ft of a mark.",
    ),
    "KY": StateNotice("Kentucky", source=_published("LG&E and KU, safe digging, 2024")),
    "MN": StateNotice(
        "Minnesota", source=_published("East Grand Forks, call before you dig, web page"),
        note="2 to 3 days; hand dig within 2 ft of a mark.",
    ),
    "AR": StateNotice(
        "Arkansas",
        source=Source("Arkansas Code 14-271-109, web page of laws9.com", Standing.SECONDARY),
        note="The law may spare earth moved by hand tools; ask for marks all the same.",
    ),
    "PA": StateNotice(
        "Pennsylvania", source=MEMORY, note="The service asks for 3 to 10 business days."
    ),
    "TX": StateNotice(
        "Texas", source=MEMORY, note="The service may ask for 48 hours without weekends."
    ),
}  # fmt: skip

NOTICE: Mapping[str, StateNotice] = MappingProxyType(_ROWS)
"""State notices by postal code; a state that is not listed takes the default."""


def notice_for(state: str) -> StateNotice:
    """Return the notice of a state by its two letters; the default when it is not known."""
    return NOTICE.get(state.strip().upper(), StateNotice(state.strip() or "your state"))


@dataclass(frozen=True)
class ToleranceZone:
    """The strip on each side of a mark that is only for gentle digging by hand."""

    us: Quantity
    metric: Quantity
    """Its own round number, never less than a rule written in inches asks."""
    source: Source

    def shown(self, metric: bool) -> Quantity:
        """Return its width in the unit of the session."""
        return self.metric if metric else self.us

    def words(self, metric: bool) -> str:
        """Write its width, such as ``2 ft`` or ``0.6 m``."""
        if metric:
            return f"{plain_number(magnitude(self.metric, 'm'))} m"
        return feet_and_inches(self.us, 1)


_ABROAD = Source(
    "as in most US states; no rule of this country is held here",
    Standing.OURS,
)
_ZONES_ABROAD = {
    "canada": ToleranceZone(
        quantity(40, "in"),
        quantity(1, "m"),
        Source("1 m each side, custom of the Canadian one-call centres", Standing.MEMORY),
    ),
}


def tolerance_zone(state: str, country: str = "us") -> ToleranceZone:
    """Return how near a mark only gentle hand digging may be.

    ``state`` is the two letters of a US state, empty where it is not known; ``country`` is ``us``,
    ``canada`` or any other word. What a ticket says goes before it.
    """
    if country != "us":
        default = ToleranceZone(quantity(24, "in"), quantity(0.6, "m"), _ABROAD)
        return _ZONES_ABROAD.get(country, default)
    notice = notice_for(state)
    width = quantity(notice.hand_dig_in, "in")
    own = notice.hand_dig_in != DEFAULT_HAND_DIG_IN
    return ToleranceZone(
        width, round_up(width, 0.01, "m"), notice.source if own else DEFAULT_ZONE_SOURCE
    )


@dataclass(frozen=True)
class PaintColor:
    """One color of the uniform code and what it marks."""

    color: str
    marks: str


COLOR_CODE = Cited(
    (
        PaintColor("red", "electric power and lighting"),
        PaintColor("yellow", "gas, oil, steam, petroleum"),
        PaintColor("orange", "phone, cable, alarm and signal"),
        PaintColor("blue", "drinking water"),
        PaintColor("purple", "reclaimed water, irrigation, slurry"),
        PaintColor("green", "sewer and drain"),
        PaintColor("pink", "survey marks; some crews use it for unknown lines"),
        PaintColor("white", "where you plan to dig"),
    ),
    Source(
        "Uniform Color Code, American Public Works Association, web page of callbeforeyoudig.org",
        Standing.SECONDARY,
    ),
)

NOT_MARKED = Cited(
    (
        "sprinkler pipes and wires",
        "gas to a grill, pool heater or garage",
        "power to a shed, lights or a gate",
        "pet fence wire",
        "septic pipes",
        "water pipes past the meter",
        "a private sewer pipe",
        "propane",
    ),
    Source(
        "LG&E and KU safe digging, 2024; Digline; Colorado Stormwater Center; gas grill and septic"
        " from memory",
        Standing.SECONDARY,
    ),
)
"""Lines past the meter, which the marking service mostly leaves out."""
