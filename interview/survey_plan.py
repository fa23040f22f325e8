"""From the answers about surfaces to the area that drains here."""

from __future__ import annotations

from dataclasses import replace

from interview.calc import runoff
from interview.calc.catchment import (
    WHOLE,
    Catchment,
    Share,
    Surface,
    catchment,
    equal_share,
    share_of_gutter,
)
from interview.calc.pacing import Pace
from interview.calc.pieces import Pitch, PitchGiven, plan_area, plan_length
from interview.calc.pieces import own_error as pieces_error
from interview.calc.runoff import HydrologicGroup, RunoffMethod
from interview.model import Answers, Unanswered
from interview.questions import start, survey
from interview.questions.shapes import piece_of
from interview.reading import Refused
from interview.units import quantity, ratio

_PITCH = {
    "in 12": PitchGiven.RISE_IN_12,
    "degrees": PitchGiven.DEGREES,
    "percent": PitchGiven.PERCENT,
}
SHARE_ESTIMATE_ERROR = 0.15
"""Relative standard error of a share given as a percentage: a choice of this project."""


def catchment_of(answers: Answers) -> Catchment:
    """Return the catchment; raises ``Unanswered``."""
    surfaces = [surface_of(one) for one in answers.items("surfaces")]
    if not surfaces:
        raise Unanswered(survey.SURFACE_NAME, "surfaces.1.surface_name")
    pace = _first_pace(answers)
    try:
        return catchment(surfaces, pace)
    except ValueError as wrong:
        raise Unanswered(survey.PIECES, "surfaces.1.pieces", why=str(wrong)) from None


def _first_pace(answers: Answers) -> Pace | None:
    """Return the pace that paced sides share, or nothing: no side was paced without one."""
    try:
        return survey.walker_pace(answers)
    except (Refused, Unanswered):
        return None


def surface_of(answers: Answers) -> Surface:
    """Return one surface from its item's answers; raises ``Unanswered``."""
    name, kind = answers[survey.SURFACE_NAME], answers[survey.SURFACE_KIND]

    def pace_for(walker: str) -> Pace:
        return survey.walker_pace(answers, walker)

    pieces = tuple(piece_of(line, pace_for) for line in answers[survey.PIECES])
    try:
        surface = Surface(
            name,
            kind,
            runoff_part(kind, answers),
            pieces,
            share=share_of(answers),
        )
        return _as_plan(surface, answers)
    except ValueError as wrong:
        raise Unanswered(survey.PIECES, answers.address(survey.PIECES), why=str(wrong)) from None


def _as_plan(surface: Surface, answers: Answers) -> Surface:
    """Take a surface measured along its slope to the level."""
    if surface.kind != "roof" or answers[survey.BASIS] != "slope":
        return surface
    given, number = answers[survey.PITCH]
    pitch = Pitch(number, _PITCH[given])
    level = ratio(plan_length(quantity(1.0, "ft"), pitch), quantity(1.0, "ft"))
    area = plan_area(surface.pieces)
    error = ratio(pieces_error(surface.pieces), area)
    return replace(surface, pieces=(), plan=area * level, plan_error=error)


def share_of(answers: Answers) -> Share:
    """Return the share of a surface that drains here."""
    if answers[survey.SURFACE_KIND] != "roof":
        return _percent(answers)
    outlets = answers[survey.GUTTER_OUTLETS]
    if outlets == 1:
        return WHOLE
    match answers[survey.SHARE_KNOWN]:
        case "high_point":
            this_side = answers[survey.GUTTER_THIS_SIDE]
            return share_of_gutter([this_side], answers[survey.GUTTER_WHOLE])
        case "percent":
            return _percent(answers)
        case _:
            return equal_share(outlets)


def _percent(answers: Answers) -> Share:
    part = answers[survey.SHARE_PERCENT] / 100
    return WHOLE if part == 1 else Share(part, SHARE_ESTIMATE_ERROR)


def runoff_part(kind: str, answers: Answers) -> float:
    """Return the part of the rain to hold that runs off a kind of surface."""
    method = RunoffMethod[answers[survey.RUNOFF_BY].upper()]
    group = HydrologicGroup[answers[survey.SOIL_GROUP].upper()]
    return runoff.runoff_share(
        runoff.Surface[kind.upper()], answers[start.RAIN_DEPTH], method=method, group=group
    )
