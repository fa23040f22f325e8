"""How near a mark only hand digging is allowed, and what the paint colors mean."""

from __future__ import annotations

from dataclasses import dataclass

from interview.garden.site.locating import notice_for
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.units import (
    Quantity,
    feet_and_inches,
    magnitude,
    plain_number,
    quantity,
    round_up,
)

NATIONAL_NUMBER = Cited(
    "811", Source("Federal Communications Commission order, 2005", Provenance.SECONDARY)
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
        Provenance.SECONDARY,
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
        Provenance.SECONDARY,
    ),
)
"""Lines past the meter, which the marking service mostly leaves out."""
