"""From the answers about a spot to what was found there."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from interview.asking.answers import Answers
from interview.asking.question import Question, Unanswered
from interview.asking.results import Results, part
from interview.garden.site import lines_questions as buried
from interview.garden.site import nearby_questions as nearby
from interview.garden.site import siting, surroundings
from interview.garden.site import spot_questions as ground
from interview.garden.site.gate import gate_today
from interview.garden.site.locate import DigGate
from interview.garden.site.setbacks import (
    SETBACKS,
    Setback,
    distance_words,
    setback_finding,
    setback_limits,
)
from interview.garden.site.siting import Below, SoilTest, StandingWater
from interview.garden.site.slope import Slope, ground_slope, level_finding
from interview.garden.site.surroundings import Destination
from interview.quantities.evidence import OURS, Cited, Finding, Grade
from interview.quantities.guards import within
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, total

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


GUESS_OFF = Cited(0.2, OURS)
"""A guess may be off by this part of the distance that is asked for."""


class SpotReport(NamedTuple):
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
    run, drop = spot[ground.SLOPE_RUN], spot[ground.SLOPE_DROP]
    try:
        return ground_slope(run, drop, spot.get(ground.SLOPE_TURNED))
    except ValueError as wrong:
        raise Unanswered(
            ground.SLOPE_DROP, spot.address(ground.SLOPE_DROP), why=str(wrong)
        ) from None


def spot_report(
    spot: Answers, dug_depth: Quantity, reaches_out: Quantity | None = None
) -> SpotReport:
    """Return what was found at a spot, where digging goes down to ``dug_depth``.

    ``reaches_out`` is how far the garden reaches beyond the edge that distances were measured from.
    """
    findings = tuple(one.told(spot.told) for one in _findings(spot, dug_depth, reaches_out))
    number = spot.scope[1] if spot.scope else 1
    return SpotReport(number, spot[ground.SPOT_NAME], findings, siting.verdict(findings))


def _findings(
    spot: Answers, dug_depth: Quantity, reaches_out: Quantity | None
) -> Iterator[Finding]:
    yield from standing_findings(spot)
    yield from distance_findings(spot, reaches_out)
    yield from slope_findings(spot)
    yield from below_findings(spot, dug_depth)
    yield from ground_findings(spot)
    yield from overflow_findings(spot)


def standing_findings(spot: Answers) -> Iterator[Finding]:
    """Yield what was found of water that stands after rain."""
    stands = spot.get(ground.STANDS)
    yield siting.standing_water_finding(_STANDS[stands] if stands else None)


def below_findings(spot: Answers, dug_depth: Quantity) -> Iterator[Finding]:
    """Yield what was found of water and rock below the bottom, dug to ``dug_depth``."""
    for what, question in ((Below.WATER, ground.WET_DEPTH), (Below.BEDROCK, ground.ROCK_DEPTH)):
        yield siting.below_floor_finding(what, spot.get(question), dug_depth, metric=spot.metric)


def ground_findings(spot: Answers) -> Iterator[Finding]:
    """Yield what was found of slides, sinkholes and pollution."""
    unstable = spot.get(ground.SLIDES)
    known = unstable is not None
    yield siting.slide_finding(unstable == "slides" if known else None)
    yield siting.karst_finding(unstable == "karst" if known else None)
    past = spot.get(ground.CONTAMINATION)
    lab = spot.get(ground.SOIL_LAB)
    yield siting.contamination_finding(
        bool(past) if past is not None else None, _LAB[lab] if lab else None
    )


def overflow_findings(spot: Answers) -> Iterator[Finding]:
    """Yield what was found of the overflow's way."""
    goes = spot.get(ground.OVERFLOW_TO)
    yield surroundings.overflow_finding(_GOES[goes] if goes else None)
    for key, question in _OVERFLOWS:
        yield setback_finding(
            SETBACKS[key], spot.get(question), metric=spot.metric, paced=spot.waits(question)
        )


def _setback(key: str, spot: Answers) -> Setback:
    if key == "septic" and spot[nearby.SEPTIC_UPHILL]:
        return SETBACKS["septic_uphill"]
    return SETBACKS[SETBACK_OF[key]]


_OVERFLOWS = (
    ("overflow_building", ground.OVERFLOW_TO_BUILDING),
    ("overflow_outlet", ground.OVERFLOW_TO_LINE),
)


def needed(question: Question[Any], spot: Answers, dug_depth: Quantity) -> Quantity | None:
    """Return the length that the finding on the answer to ``question`` asks for, if there is one.

    ``dug_depth`` is how deep digging goes at this spot.
    """
    metric = spot.metric
    for key, distance in nearby.DISTANCES.items():
        if question is distance:
            wall = spot.get(nearby.WALL_HEIGHT) if key == "retaining_wall" else None
            crown = spot.get(nearby.DRIP_LINE) if key == "tree" else None
            local: Quantity | None = spot.whole().get(nearby.LOCAL[key])
            usual, _ = setback_limits(_setback(key, spot), metric, wall, crown)
            return usual if local is None else local
    for key, distance in _OVERFLOWS:
        if question is distance:
            return SETBACKS[key].usual.shown(metric)
    if question in (ground.WET_DEPTH, ground.ROCK_DEPTH):
        return total(dug_depth, siting.below_floor(metric))
    return None


def close_to_needed(question: Question[Any], guess: Any, spot: Answers, dug_depth: Quantity) -> str:
    """Return why a ``guess`` at the answer to ``question`` will not do, or nothing.

    It is too near what a finding asks for to tell on which side it is.
    """
    if question in (ground.SLOPE_DROP, ground.SLOPE_TURNED):
        return _close_to_steep(guess, spot)
    if (near := _DECIDING.get(question)) is not None:
        away = spot.get(near)
        if away is None or not _is_close(guess, away):
            return ""
        said = distance_words(away, spot.metric, up=True)
        return f"Close to the {said} that it is away. Measure it, or give it again."
    limit = needed(question, spot, dug_depth)
    if limit is None:
        return ""
    if not _is_close(guess, limit):
        return ""
    asked = distance_words(limit, spot.metric, up=True)
    return f"That is close to the {asked} needed. Measure it, or give the same answer again."


_DECIDING = {
    nearby.WALL_HEIGHT: nearby.DISTANCES["retaining_wall"],
    nearby.DRIP_LINE: nearby.DISTANCES["tree"],
}
"""Lengths that a distance is held against, each with that distance."""


def _is_close(guess: Quantity, limit: Quantity) -> bool:
    off = abs(magnitude(guess, "m") - magnitude(limit, "m"))
    return within(off, GUESS_OFF.value * magnitude(limit, "m"))


def _may_slide(spot: Answers) -> bool:
    return spot.get(ground.SLIDES) == "slides"


def _close_to_steep(drop: Quantity, spot: Answers) -> str:
    """Return why a guess at the drop of the slope string will not do, or nothing."""
    run = spot.get(ground.SLOPE_RUN)
    for percent in siting.slope_limits(_may_slide(spot)):
        if run is not None and _is_close(drop, run * (percent / 100)):
            return f"Close to a slope of {percent:g} %, a limit. Measure it, or give it again."
    return ""


def distance_findings(spot: Answers, reaches_out: Quantity | None) -> Iterator[Finding]:
    """Yield what was found of the distances; ``reaches_out`` as in ``spot_report``."""
    for key in spot.get(nearby.NEAR) or ():
        yield setback_finding(
            _setback(key, spot),
            spot.get(nearby.DISTANCES[key]),
            spot.whole().get(nearby.LOCAL[key]),
            spot.metric,
            wall_height=spot.get(nearby.WALL_HEIGHT) if key == "retaining_wall" else None,
            drip_line=spot.get(nearby.DRIP_LINE) if key == "tree" else None,
            paced=spot.waits(nearby.DISTANCES[key]),
            reaches_out=reaches_out,
        )


def slope_findings(spot: Answers) -> Iterator[Finding]:
    """Yield what was found of the slope and of the level it was read with."""
    try:
        slope = spot_slope(spot)
    except Unanswered:
        yield siting.slope_unknown(paced=spot.waits(ground.SLOPE_RUN))
        return
    yield siting.slope_finding(slope, _may_slide(spot))
    yield level_finding(slope, spot.metric)


STOPPED_BY: Mapping[str, Question[Any]] = {
    "standing_water": ground.STANDS,
    "slope": ground.SLOPE_DROP,
    "water_below": ground.WET_DEPTH,
    "bedrock_below": ground.ROCK_DEPTH,
    "slides": ground.SLIDES,
    "karst": ground.SLIDES,
    "contamination": ground.SOIL_LAB,
    "overflow_way": ground.OVERFLOW_TO,
    "overflow_building_distance": ground.OVERFLOW_TO_BUILDING,
    "septic_uphill_distance": nearby.DISTANCES["septic"],
    **{f"{item}_distance": nearby.DISTANCES[key] for key, item in SETBACK_OF.items()},
}
"""The question whose answer each finding about a spot that may be a stop goes by."""


def stops(spot: Answers, dug_depth: Quantity) -> tuple[Finding, ...]:
    """Return what stops a garden at a spot, where digging goes down to ``dug_depth``."""
    return tuple(one for one in _findings(spot, dug_depth, None) if one.grade is Grade.STOP)


@record(eq=False)
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
        return buried.tolerance_zone(self.answers).words(self.answers.metric)

    @part
    def slope(self) -> Slope:
        """The slope of the ground at the spot chosen."""
        return spot_slope(ground.chosen_spot(self.answers))

    @property
    def steepest(self) -> float:
        """The slope in percent past which no garden is dug at the spot chosen."""
        return siting.slope_limits(_may_slide(ground.chosen_spot(self.answers)))[1]
