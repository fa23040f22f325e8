"""How near a mark only hand digging is allowed."""

from __future__ import annotations

from dataclasses import dataclass

from interview.garden.site.locating import notice_for
from interview.quantities.evidence import Provenance, Source
from interview.quantities.units import (
    Quantity,
    feet_and_inches,
    magnitude,
    plain_number,
    quantity,
    round_up,
)


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
    Provenance.OURS,
)
_ZONES_ABROAD = {
    "canada": ToleranceZone(
        quantity(40, "in"),
        quantity(1, "m"),
        Source("1 m each side, custom of the Canadian one-call centres", Provenance.MEMORY),
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
    return ToleranceZone(width, round_up(width, 0.01, "m"), notice.zone_source)
