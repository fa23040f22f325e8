"""From the answers about surfaces to the area that drains here."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from interview.calc import runoff
from interview.calc.catchment import (
    ONE_SIDE,
    WHOLE,
    Catchment,
    Share,
    Surface,
    catchment,
    equal_share,
    joined_share,
    share_of_gutter,
)
from interview.calc.pacing import Pace
from interview.calc.pieces import Pitch, PitchGiven, plan_length
from interview.calc.runoff import Cover, HydrologicGroup, RunoffMethod
from interview.drawing.scene import Drawing
from interview.drawing.survey_drawing import surface_drawing
from interview.evidence import Source, Standing
from interview.model import Answers, Unanswered
from interview.questions import site, start, survey
from interview.questions.shapes import drawn_piece, piece_of
from interview.reading import Refused
from interview.units import Quantity, quantity, ratio

_PITCH = {
    "in 12": PitchGiven.RISE_IN_12,
    "degrees": PitchGiven.DEGREES,
    "percent": PitchGiven.PERCENT,
}
SHARE_ESTIMATE_ERROR = 0.15
"""Relative standard error of a share given as a percentage: a choice of this project."""
_BEARINGS = {"n": 0, "ne": 45, "e": 90, "se": 135, "s": 180, "sw": 225, "w": 270, "nw": 315}


RunoffPart = Callable[[str, Answers], float]
"""The part of a rain that runs off a kind of surface."""


def catchment_of(answers: Answers, part: RunoffPart | None = None) -> Catchment:
    """Return the catchment, with the runoff of the rain to hold unless ``part`` is given.

    Raises ``Unanswered``.
    """
    surfaces = [surface_of(one, part or runoff_part) for one in answers.items("surfaces")]
    if not surfaces:
        raise Unanswered(survey.SURFACE_NAME, "surfaces.1.surface_name")
    try:
        return catchment(surfaces, walkers(answers))
    except ValueError as wrong:
        raise Unanswered(survey.PIECES, "surfaces.1.pieces", why=str(wrong)) from None


def walkers(answers: Answers) -> dict[str, Pace]:
    """Return the pace of each walker whose pace is calibrated, by name as ``walker_of`` has it."""
    found = {}
    for one in answers.items("walkers"):
        try:
            name, pace = walker_of(answers, str(one[survey.WALKER_NAME]))
        except (Refused, Unanswered):
            continue
        found[name] = pace
    return found


def walker_of(answers: Answers, name: str = "") -> tuple[str, Pace]:
    """Return a walker's name and pace; a single walker needs no name.

    Raises ``Unanswered`` or ``Refused`` where there is no such pace.
    """
    listed, pace = survey.named_pace(answers, name)
    return (listed if len(answers.items("walkers")) > 1 else ""), pace


PEAK_RUNOFF = {"roof": 0.95, "paved": 0.95, "gravel": 0.85, "compacted": 0.85, "lawn": 0.35}
"""Part of a cloudburst that runs off: the upper ends of ``PEAK_SOURCE``."""
PEAK_SOURCE = Source(
    "rational runoff coefficients, NRCS Hydrology Training Module 206D, table 1, and University of "
    "Illinois TSM 352: roofs and asphalt 0.95, drives 0.85, steep heavy lawn 0.35",
    Standing.SECONDARY,
)


def peak_part(kind: str, answers: Answers) -> float:
    """Return the part that runs off in the hardest rain, never less than of the rain to hold."""
    return max(runoff_part(kind, answers), PEAK_RUNOFF[kind])


def varies(answers: Answers) -> bool:
    """Tell whether the part that runs off changes with the depth of rain."""
    return any(
        one.get(survey.RUNOFF_LOCAL) is None
        and (answers[survey.RUNOFF_BY] == "curve_number" or one.get(survey.SURFACE_KIND) == "lawn")
        for one in answers.items("surfaces")
    )


def part_at(rain: Quantity) -> RunoffPart:
    """Return the part that runs off in a storm of another depth."""

    def part(kind: str, answers: Answers) -> float:
        local = answers[survey.RUNOFF_LOCAL]
        if local is not None:
            return local
        ways = runoff_ways(kind, answers, rain)
        by_number = answers[survey.RUNOFF_BY] == "curve_number" or ways.coefficient is None
        return ways.by_number if by_number else ways.coefficient or 0.0

    return part


def surface_of(answers: Answers, part: RunoffPart | None = None) -> Surface:
    """Return one surface from its item's answers; raises ``Unanswered``."""
    name, kind = answers[survey.SURFACE_NAME], answers[survey.SURFACE_KIND]
    try:
        pieces = tuple(
            piece_of(line, lambda walker: walker_of(answers, walker))
            for line in answers[survey.PIECES]
        )
        return Surface(
            name,
            kind,
            (part or runoff_part)(kind, answers),
            pieces,
            share=share_of(answers),
            level=_level(answers),
            falls_on=survey.falls_on(answers),
        )
    except ValueError as wrong:
        raise Unanswered(survey.PIECES, answers.address(survey.PIECES), why=str(wrong)) from None


def _level(answers: Answers) -> float:
    """Return the level length for a length of one as measured."""
    if answers[survey.SURFACE_KIND] != "roof" or answers[survey.BASIS] != "slope":
        return 1.0
    given, number = answers[survey.PITCH]
    one = quantity(1.0, "ft")
    return ratio(plan_length(one, Pitch(number, _PITCH[given])), one)


def share_of(answers: Answers) -> Share:
    """Return the share of a surface that drains here, or of it that falls on the next."""
    if answers[survey.SURFACE_KIND] != "roof":
        return WHOLE if survey.falls_on(answers) else _percent(answers)
    side = ONE_SIDE if answers[survey.ROOF_SIDES] == "both" else WHOLE
    if survey.falls_on(answers):
        return side
    return joined_share(side, _gutter_share(answers), _part(answers[survey.SPOUT_PERCENT]))


def _gutter_share(answers: Answers) -> Share:
    outlets = answers[survey.GUTTER_OUTLETS]
    here = answers[survey.OUTLETS_HERE] if outlets > 1 else 1
    if here >= outlets:
        return WHOLE
    match answers[survey.SHARE_KNOWN]:
        case "high_point":
            this_side = answers[survey.GUTTER_THIS_SIDE]
            return share_of_gutter([this_side], answers[survey.GUTTER_WHOLE])
        case "percent":
            return _percent(answers)
        case _:
            return equal_share(outlets, here)


def _percent(answers: Answers) -> Share:
    return _part(answers[survey.SHARE_PERCENT])


def _part(percent: float) -> Share:
    return WHOLE if percent == 100 else Share(percent / 100, SHARE_ESTIMATE_ERROR)


def runoff_part(kind: str, answers: Answers) -> float:
    """Return the part of the rain to hold that runs off a kind of surface."""
    return part_at(answers[start.RAIN_DEPTH])(kind, answers)


@dataclass(frozen=True)
class RunoffWays:
    """The part of the rain to hold that runs off a surface, by each way of reckoning."""

    coefficient: float | None
    """By its coefficient; none where there is none."""
    number: int
    """Its curve number."""
    by_number: float
    local: float | None
    """By a local rule; none where none is given."""


def runoff_ways(kind: str, answers: Answers, rain: Quantity | None = None) -> RunoffWays:
    """Return the part of a rain, the one to hold unless given, that runs off, by each way."""
    surface = runoff.Surface[kind.upper()]
    group = HydrologicGroup[answers[survey.SOIL_GROUP].upper()]
    cover = runoff.USUAL_COVER[surface]
    if surface is runoff.Surface.LAWN:
        cover = Cover[answers[survey.LAWN_COVER].upper()]
    depth = answers[start.RAIN_DEPTH] if rain is None else rain
    return RunoffWays(
        runoff.RUNOFF_COEFFICIENTS.get(surface),
        runoff.curve_number(cover, group),
        runoff.runoff_share(
            surface, depth, method=RunoffMethod.CURVE_NUMBER, group=group, cover=cover
        ),
        answers[survey.RUNOFF_LOCAL],
    )


def drawing_of(answers: Answers, share: float) -> Drawing:
    """Return one surface drawn to scale, from its item's answers; raises ``Unanswered``.

    North is drawn where the pieces were put into place: the foot of the drawing is downhill.
    """
    lines = answers[survey.PIECES]
    downhill = site.chosen_spot(answers.whole()).get(site.DOWNHILL)
    bearing = _BEARINGS.get(downhill or "")
    placed = all(line.at is not None for line in lines)
    try:
        return surface_drawing(
            [drawn_piece(line) for line in lines],
            answers.metric,
            answers[survey.SURFACE_NAME],
            share,
            None if bearing is None or not placed else float((180 - bearing) % 360),
        )
    except ValueError as wrong:
        raise Unanswered(survey.PIECES, answers.address(survey.PIECES), why=str(wrong)) from None
