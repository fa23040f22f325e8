"""From the answers about surfaces to the area that drains here."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import field
from typing import TYPE_CHECKING, NamedTuple

from interview.asking.answers import Answers, noting
from interview.asking.question import Unanswered
from interview.asking.results import Results, part
from interview.garden.place import questions as start
from interview.garden.survey import pacing_questions as walking
from interview.garden.survey import questions as survey
from interview.garden.survey import runoff
from interview.garden.survey import share_questions as sharing
from interview.garden.survey import surface_questions as surfacing
from interview.garden.survey.catchment import (
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
from interview.garden.survey.pacing import Pace
from interview.garden.survey.pieces import PitchGiven, RoofPitch, plan_length
from interview.garden.survey.runoff import Cover, HydrologicGroup, RunoffMethod
from interview.garden.survey.written_pieces import drawn_piece, piece_of
from interview.quantities.evidence import Provenance, Source
from interview.quantities.records import record
from interview.quantities.shown import length_words
from interview.quantities.units import (
    Quantity,
    magnitude,
    plain_number,
    quantity,
    ratio,
    show,
    significant,
    total,
)
from interview.reading import Refused

if TYPE_CHECKING:
    from interview.drawing.scene import Drawing

_PITCH = {
    "in 12": PitchGiven.RISE_IN_12,
    "degrees": PitchGiven.DEGREES,
    "percent": PitchGiven.PERCENT,
}
SHARE_ESTIMATE_ERROR = 0.15
"""Relative standard error of a share given as a percentage: a choice of this project."""


RunoffPart = Callable[[str, Answers], float]
"""The part of a rain that runs off a kind of surface."""


def catchment_of(answers: Answers, part: RunoffPart | None = None) -> Catchment:
    """Return the catchment, with the runoff of the rain to hold unless ``part`` is given.

    Raises ``Unanswered``.
    """
    surfaces = [surface_of(one, part or runoff_part) for one in answers.items("surfaces")]
    if not surfaces:
        raise Unanswered(sharing.SURFACE_KIND, "surfaces.1.surface_kind")
    try:
        return catchment(surfaces, walkers(answers))
    except ValueError as wrong:
        raise Unanswered(surfacing.PIECES, "surfaces.1.pieces", why=str(wrong)) from None


def walkers(answers: Answers) -> dict[str, Pace]:
    """Return the pace of each walker whose pace is calibrated, by name as ``walker_of`` has it."""
    found = {}
    for one in answers.items("walkers"):
        try:
            name, pace = walker_of(answers, str(one[walking.WALKER_NAME]))
        except (Refused, Unanswered):
            continue
        found[name] = pace
    return found


def walker_of(answers: Answers, name: str = "") -> tuple[str, Pace]:
    """Return a walker's name and pace; a single walker needs no name.

    Raises ``Unanswered`` or ``Refused`` where there is no such pace.
    """
    listed, pace = walking.named_pace(answers, name)
    return (listed if len(answers.items("walkers")) > 1 else ""), pace


PEAK_RUNOFF = {"roof": 0.95, "paved": 0.95, "gravel": 0.85, "compacted": 0.85, "lawn": 0.35}
"""Part of a cloudburst that runs off: the upper ends of ``PEAK_SOURCE``."""
PEAK_SOURCE = Source(
    "rational runoff coefficients, NRCS Hydrology Training Module 206D, table 1, and University of "
    "Illinois TSM 352: roofs and asphalt 0.95, drives 0.85, steep heavy lawn 0.35",
    Provenance.SECONDARY,
)


def peak_part(kind: str, answers: Answers) -> float:
    """Return the part that runs off in the heaviest rain, never less than of the rain to hold."""
    return max(runoff_part(kind, answers), PEAK_RUNOFF[kind])


def varies(answers: Answers) -> bool:
    """Tell whether the part that runs off changes with the depth of rain."""
    return any(
        one.get(surfacing.RUNOFF_LOCAL) is None
        and (answers[survey.RUNOFF_BY] == "curve_number" or one.get(sharing.SURFACE_KIND) == "lawn")
        for one in answers.items("surfaces")
    )


def part_at(rain: Quantity) -> RunoffPart:
    """Return the part that runs off in a storm of another depth."""

    def part(kind: str, answers: Answers) -> float:
        local = answers[surfacing.RUNOFF_LOCAL]
        if local is not None:
            return local
        ways = runoff_ways(kind, answers, rain)
        by_number = answers[survey.RUNOFF_BY] == "curve_number" or ways.coefficient is None
        return ways.by_number if by_number else ways.coefficient or 0.0

    return part


def weighted_by_rain(answers: Answers, found: Catchment) -> Callable[[Quantity], Quantity]:
    """Return the area weighted by runoff as it is in a rain of any depth.

    ``found`` is the catchment of the answers, whose areas do not change with the rain.
    """
    views = answers.items("surfaces")
    known = [
        (magnitude(area.drains_here, "ft**2"), view[sharing.SURFACE_KIND], view)
        for area, view in zip(found.surfaces, views, strict=True)
    ]

    def weighted(rain: Quantity) -> Quantity:
        part = part_at(rain)
        return quantity(sum(area * part(kind, view) for area, kind, view in known), "ft**2")

    return weighted


def area_so_far(view: Answers) -> str:
    """Return the plan area that the pieces of one surface make; nothing while it is not known."""
    try:
        return f"Plan area so far: {show(surface_of(view).area, view.by_units('ft**2', 'm**2'), 3)}"
    except (Unanswered, ValueError):
        return ""


def surface_of(answers: Answers, part: RunoffPart | None = None) -> Surface:
    """Return one surface from its item's answers; raises ``Unanswered``."""
    name, kind = answers[sharing.SURFACE_NAME], answers[sharing.SURFACE_KIND]
    try:
        pieces = tuple(
            piece_of(line, lambda walker: walker_of(answers, walker))
            for line in answers[surfacing.PIECES]
        )
        return Surface(
            name,
            kind,
            (part or runoff_part)(kind, answers),
            pieces,
            share=share_of(answers),
            level=_level(answers),
            falls_on=sharing.falls_on(answers),
        )
    except ValueError as wrong:
        raise _impossible(answers, wrong) from None


def _impossible(answers: Answers, wrong: ValueError) -> Unanswered:
    return Unanswered(surfacing.PIECES, answers.address(surfacing.PIECES), why=str(wrong))


def _level(answers: Answers) -> float:
    """Return the level length for a length of one as measured."""
    if answers[sharing.SURFACE_KIND] != "roof" or answers[surfacing.BASIS] != "slope":
        return 1.0
    given, number = answers[surfacing.PITCH]
    one = quantity(1.0, "ft")
    return ratio(plan_length(one, RoofPitch(number, _PITCH[given])), one)


class Parting(NamedTuple):
    """One place where water divides on its way to the garden, or a sentence about its way."""

    share: Share
    words: str


def share_of(answers: Answers) -> Share:
    """Return the share of a surface that drains here, or of it that falls on the next."""
    return joined_share(*(one.share for one in _own_partings(answers)))


def way_of(answers: Answers) -> tuple[Parting, ...]:
    """Return every parting of a surface's water down to the garden; raises ``Unanswered``."""
    own = tuple(_own_partings(answers))
    name = sharing.falls_on(answers)
    for one in answers.items("surfaces") if name else ():
        if one.get(sharing.SURFACE_NAME) == name:
            return (
                *own,
                Parting(WHOLE, f"It goes over {name}, and on as that does."),
                # What brings that surface more water is nothing to this one.
                *(each for each in way_of(one) if each.share != WHOLE or name in each.words),
            )
    return own


def whole_share(way: Iterable[Parting]) -> float:
    """Return the part of a surface's water that is left after every parting, nought to one."""
    return joined_share(*(one.share for one in way)).part


def _own_partings(answers: Answers) -> Iterator[Parting]:
    falls = sharing.falls_on(answers)
    if answers[sharing.SURFACE_KIND] != "roof":
        if not falls:
            yield from _judged(answers[sharing.SHARE_PERCENT], "of its water runs to the garden.")
        return
    if answers[surfacing.ROOF_SIDES] == "both":
        yield Parting(ONE_SIDE, "Half: one of two like sides of the ridge.")
    if answers[sharing.VALLEY]:
        yield Parting(WHOLE, "A valley pours in: the slopes on both its sides count.")
    if not falls:
        yield from _at_gutter(answers)
        percent = answers[sharing.SPOUT_PERCENT]
        yield from _judged(percent, answers.told("of the downspout's water is led here."))


def _at_gutter(answers: Answers) -> Iterator[Parting]:
    outlets, here = answers[sharing.GUTTER_OUTLETS], sharing.outlets_here(answers)
    if outlets == 1:
        return
    counted = answers.told(f"{here} of the gutter's {outlets} downspouts")
    if here >= outlets:
        all_here = answers.told(f"All {outlets} downspouts of the gutter come here.")
        yield Parting(WHOLE, all_here)
        return
    match answers[sharing.SHARE_KNOWN]:
        case "high_point":
            mine, whole = answers[sharing.GUTTER_THIS_SIDE], answers[sharing.GUTTER_WHOLE]
            said = (length_words(one, answers.metric) for one in (mine, whole))
            words = "{} of the {} of gutter fall this way.".format(*said)
            yield Parting(share_of_gutter([mine], whole), words)
        case "percent":
            yield from _judged(answers[sharing.SHARE_PERCENT], f"of its water: {counted}.")
        case _:
            yield Parting(equal_share(outlets, here), f"{counted}, taken as alike.")


def _judged(percent: float, words: str) -> Iterator[Parting]:
    if percent != 100:
        yield Parting(_part(percent), f"{plain_number(significant(percent, 3))} % {words}")


def _part(percent: float) -> Share:
    return WHOLE if percent == 100 else Share(percent / 100, SHARE_ESTIMATE_ERROR)


def runoff_part(kind: str, answers: Answers) -> float:
    """Return the part of the rain to hold that runs off a kind of surface."""
    return part_at(answers[start.RAIN_DEPTH])(kind, answers)


class RunoffWays(NamedTuple):
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
    surface = runoff.LawnSurface[kind.upper()]
    group = HydrologicGroup[answers[survey.SOIL_GROUP].upper()]
    cover = runoff.USUAL_COVER[surface]
    if surface is runoff.LawnSurface.LAWN:
        cover = Cover[answers[surfacing.LAWN_COVER].upper()]
    depth = answers[start.RAIN_DEPTH] if rain is None else rain
    return RunoffWays(
        runoff.RUNOFF_COEFFICIENTS.get(surface),
        runoff.curve_number(cover, group),
        runoff.runoff_share(
            surface, depth, method=RunoffMethod.CURVE_NUMBER, group=group, cover=cover
        ),
        answers[surfacing.RUNOFF_LOCAL],
    )


def drawing_of(answers: Answers) -> Drawing:
    """Return one surface drawn to scale, from its item's answers; raises ``Unanswered``.

    North is drawn where a person said which way it is. Where the part that drains here is not
    known yet, the drawing says so.
    """
    from interview.drawing.scene import Material
    from interview.garden.survey.drawing import surface_drawing

    lines = answers[surfacing.PIECES]
    north = None
    if surfacing.SURFACE_NORTH.asks(answers):
        north = surfacing.NORTH_WAYS.get(answers[surfacing.SURFACE_NORTH])
    share, words = _known_share(answers)
    try:
        return surface_drawing(
            [drawn_piece(line) for line in lines],
            answers.metric,
            answers[sharing.SURFACE_NAME],
            share,
            north,
            words,
            Material[_PAINTED[answers[sharing.SURFACE_KIND]]],
        )
    except ValueError as wrong:
        raise _impossible(answers, wrong) from None


_PAINTED = {
    "roof": "ROOF",
    "paved": "STONE",
    "gravel": "STONE",
    "compacted": "SOIL",
    "lawn": "LAWN",
}


def _known_share(answers: Answers) -> tuple[float | None, tuple[str, ...]]:
    try:
        way = way_of(answers)
        return whole_share(way), tuple(one.words for one in way)
    except (Unanswered, ValueError):
        return None, ()


@record(eq=False)
class SurveyResults(Results):
    """What drains to the garden."""

    by_rain: dict[float, Quantity] = field(default_factory=dict, compare=False, repr=False)
    """Weighted areas worked out so far, by the depth of rain in inches."""

    @part
    def catchment(self) -> Catchment:
        """The surfaces that drain here, and their weighted area."""
        return catchment_of(self.answers)

    def first_surface(self) -> Answers:
        """Return the answers as seen from the first surface."""
        return self.answers.at("surfaces", 1)

    def weighted_in(self, rain: Quantity) -> Quantity:
        """Return the area weighted by what runs off in a ``rain``, each depth worked out once."""
        inches = magnitude(rain, "in")
        if inches not in self.by_rain:
            with noting(self.reads):
                weighted = weighted_by_rain(self.answers, self.catchment)(rain)
            self.by_rain[inches] = weighted
        return self.by_rain[inches]

    @part
    def peak(self) -> Catchment:
        """The catchment, weighted by what runs off in the heaviest rain."""
        return catchment_of(self.answers, peak_part)

    @property
    def peak_area(self) -> Quantity:
        """The area that drains here, weighted by what runs off in the heaviest rain."""
        return self.peak.weighted

    @part
    def peak_roofs(self) -> Quantity:
        """The same of the roofs alone, whose water a downspout brings; of all where none is."""
        views = zip(self.peak.surfaces, self.answers.items("surfaces"), strict=True)
        roofs = [row.weighted for row, one in views if one[sharing.SURFACE_KIND] == "roof"]
        return total(*roofs) if roofs else self.peak_area
