"""From the answers about a spot to what was found there."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from interview.asking.model import Answers, Unanswered
from interview.asking.results import Results, part
from interview.garden.site import questions as site
from interview.garden.site import siting, surroundings
from interview.garden.site.gate import gate_today
from interview.garden.site.locate import DigGate
from interview.garden.site.setbacks import SETBACKS, setback_finding
from interview.garden.site.siting import Below, SoilTest, StandingWater
from interview.garden.site.slope import Slope, ground_slope, level_finding
from interview.garden.site.surroundings import Destination
from interview.quantities.evidence import Finding, Grade
from interview.quantities.units import Quantity

SETBACK_OF = {
    "basement": "foundation_deep",
    "slab": "foundation_slab",
    "septic": "septic",
    "well": "well",
    "property_line": "property_line",
    "pavement": "pavement",
    "retaining_wall": "retaining_wall",
    "tree": "tree",
    "slope_crest": "slope_crest",
    "water": "water",
}
"""The setback that each thing in the yard comes under."""

_STANDS = {
    "never": StandingWater.NEVER,
    "few": StandingWater.SOMETIMES,
    "often": StandingWater.OFTEN,
}
_LAB = {
    "clear": SoilTest.CLEAR,
    "above": SoilTest.ABOVE,
    "not_tested": SoilTest.NOT_TESTED,
}
_GOES = {
    "own_lawn": Destination.OWN_LAWN,
    "street": Destination.STREET,
    "drain": Destination.STREET,
    "neighbour": Destination.NEIGHBOR,
    "building": Destination.BUILDING,
    "bank": Destination.STEEP_BANK,
    "undecided": Destination.UNDECIDED,
}


@dataclass(frozen=True)
class SpotReport:
    """What was found at one spot."""

    number: int
    name: str
    findings: tuple[Finding, ...]
    grade: Grade

    @property
    def against(self) -> tuple[str, ...]:
        """What speaks against it, the worst first, one sentence each."""
        worst_first = (Grade.STOP, Grade.FIX)
        return tuple(one.said for each in worst_first for one in self.findings if one.grade is each)

    def standing(self) -> tuple[int, int, int]:
        """Return a sort key by which the spot with the least against it comes first."""
        grades = [one.grade for one in self.findings]
        return grades.count(Grade.STOP), grades.count(Grade.FIX), self.number


def spot_slope(spot: Answers) -> Slope:
    """Return the slope at a spot; raises ``Unanswered``."""
    run, drop = spot[site.SLOPE_RUN], spot[site.SLOPE_DROP]
    try:
        return ground_slope(run, drop, spot.get(site.SLOPE_TURNED))
    except ValueError as wrong:
        raise Unanswered(site.SLOPE_DROP, spot.address(site.SLOPE_DROP), why=str(wrong)) from None


def spot_report(spot: Answers, dug_depth: Quantity) -> SpotReport:
    """Return what was found at a spot, where digging goes down to ``dug_depth``."""
    findings = tuple(one.told(spot.told) for one in _findings(spot, dug_depth))
    number = spot.scope[1] if spot.scope else 1
    return SpotReport(number, spot[site.SPOT_NAME], findings, siting.verdict(findings))


def _findings(spot: Answers, dug_depth: Quantity) -> Iterator[Finding]:
    stands = spot.get(site.STANDS)
    yield siting.standing_water_finding(_STANDS[stands] if stands else None)
    yield from _distances(spot)
    yield from _slope(spot)
    for what, question in ((Below.WATER, site.WET_DEPTH), (Below.BEDROCK, site.ROCK_DEPTH)):
        yield siting.below_floor_finding(what, spot.get(question), dug_depth, metric=spot.metric)
    unstable = spot.get(site.SLIDES)
    known = unstable is not None
    yield siting.slide_finding(unstable == "slides" if known else None)
    yield siting.karst_finding(unstable == "karst" if known else None)
    past = spot.get(site.CONTAMINATION)
    lab = spot.get(site.SOIL_LAB)
    yield siting.contamination_finding(
        bool(past) if past is not None else None, _LAB[lab] if lab else None
    )
    goes = spot.get(site.OVERFLOW_TO)
    yield surroundings.overflow_finding(_GOES[goes] if goes else None)


def _distances(spot: Answers) -> Iterator[Finding]:
    for key in spot.get(site.NEAR) or ():
        item = SETBACKS[SETBACK_OF[key]]
        if key == "septic" and spot[site.SEPTIC_UPHILL]:
            item = SETBACKS["septic_uphill"]
        yield setback_finding(
            item,
            spot.get(site.DISTANCES[key]),
            spot.whole().get(site.LOCAL[key]),
            spot.metric,
            wall_height=spot.get(site.WALL_HEIGHT) if key == "retaining_wall" else None,
            drip_line=spot.get(site.DRIP_LINE) if key == "tree" else None,
            paced=spot.waits(site.DISTANCES[key]),
        )


def _slope(spot: Answers) -> Iterator[Finding]:
    try:
        slope = spot_slope(spot)
    except Unanswered:
        yield siting.slope_unknown(paced=spot.waits(site.SLOPE_RUN))
        return
    yield siting.slope_finding(slope, spot.get(site.SLIDES) == "slides")
    yield level_finding(slope, spot.metric)


@dataclass(frozen=True)
class SiteResults(Results):
    """What follows from the answers about the spot."""

    today: dt.date

    @part
    def dig_gate(self) -> DigGate:
        """Whether digging may start today, and from which day."""
        return gate_today(self.answers, self.today)

    @property
    def tolerance(self) -> str:
        """The strip on each side of a mark that is only for gentle hand digging, in words."""
        return site.tolerance_zone(self.answers).words(self.answers.metric)

    @part
    def slope(self) -> Slope:
        """The slope of the ground at the spot chosen."""
        return spot_slope(site.chosen_spot(self.answers))
