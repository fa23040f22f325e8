"""The picture beside a question: what is being measured, from the answers so far."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.path import Place
from interview.asking.question import Unanswered
from interview.asking.route import Step
from interview.drawing.scene import Drawing, Ink, Label, LabelSpot, Shape, Stroke, polygon
from interview.garden import pictures
from interview.garden.plan import Plan
from interview.garden.scenes import Scene, scene_of
from interview.garden.site import lines_questions as buried
from interview.garden.site import nearby_questions as nearby
from interview.garden.site import spot_questions as ground
from interview.garden.site.level_string import Fall, level_string
from interview.garden.site.results import spot_slope
from interview.garden.site.setbacks import distance_words
from interview.garden.site.yard import NAMES, Judged, RoomSide, Thing, yard
from interview.garden.size import questions as bed
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import timing_questions as timing
from interview.garden.soak import water_level
from interview.garden.soak.hole_view import Level, hole_view
from interview.garden.soak.noted import noted
from interview.garden.soak.water_level import Stand
from interview.garden.survey import surface_questions as surfacing
from interview.garden.survey.results import drawing_of
from interview.garden.verdicts import verdict
from interview.quantities.evidence import Grade
from interview.quantities.shown import depth_words, length_words, slope_words
from interview.quantities.units import Quantity, magnitude, plain_number

_NO_PIECE = (30.0, 14.0)
"""Length and width in feet of the piece that is drawn, dashed, while none is measured."""


def live_picture(plan: Plan, place: Place, step: Step | None) -> Drawing | None:
    """Return what is measured at ``place`` as far as it is known; nothing where that is no thing.

    ``plan`` is that of the answers so far, what is just typed among them.
    """
    drawing = _picture_of(plan, place, step)
    return drawing and drawing.told(plan.answers.told)


def _picture_of(plan: Plan, place: Place, step: Step | None) -> Drawing | None:
    try:
        match scene_of(place):
            case Scene.YARD:
                return _yard(plan, place, step)
            case Scene.STRING:
                return _string(plan, place, step)
            case Scene.HOLE:
                return hole_picture(place.view(plan.answers))
            case Scene.PIECES:
                view = place.view(plan.answers)
                return _no_piece() if view.get(surfacing.PIECES) is None else drawing_of(view)
            case Scene.SECTION:
                return pictures.section_picture(plan)
            case Scene.ABOVE:
                return pictures.planted_picture(plan)
            case Scene.ROOM:
                return _room(plan)
    except (Unanswered, ValueError):
        return None
    return None


def _no_piece() -> Drawing:
    """Return a piece of which nothing is known but that it is asked for."""
    long, wide = _NO_PIECE
    corners = ((0.0, 0.0), (long, 0.0), (long, wide), (0.0, wide))
    shapes: tuple[Shape, ...] = (
        polygon(corners, Stroke.DASHED),
        Label("how long?", long / 2, 0.0, LabelSpot.BELOW, ink=Ink.DUE),
        Label("how wide?", long, wide / 2, LabelSpot.RIGHT, ink=Ink.DUE),
    )
    said = "A piece that is not measured yet."
    return Drawing(title="THE PIECES", description=said, shapes=shapes)


def hole_picture(view: Answers, now: Stand | None = None) -> Drawing:
    """Return the test hole that ``view`` is seen from, with all that was read off it so far.

    ``now`` is about where the water stands since; it is told as an estimate.
    """
    depth, width = view.get(digging.HOLE_DEPTH), view.get(digging.HOLE_WIDTH)
    stands = water_level.fills(noted(view).timed)
    levels = [_level(one, view) for one in (stands[-1] if stands else ())]
    levels += [_level(now, view, ESTIMATE)] if now is not None else []
    return hole_view(depth, width, tuple(levels), view.metric)


ESTIMATE = "estimate"
"""Stands in the place of a time where a level is worked out and not read."""
_DIGITS = 1
"""Decimals of an estimated level: it is good to no more."""


def _level(stand: Stand, view: Answers, estimate: str = "") -> Level:
    unit = "mm" if view.metric else "in"
    digits = (0 if view.metric else _DIGITS) if estimate else 3
    words = f"{plain_number(round(magnitude(stand.left, unit), digits))} {unit}"
    began = view.get(timing.TEST_START)
    at = stand.at.astimezone(began.tzinfo if began else None)
    return Level(stand.left, words, estimate or f"{at:%H:%M}", bool(estimate))


def _string(plan: Plan, place: Place, step: Step | None) -> Drawing:
    spot = place.view(plan.answers)
    run, drop, toward = spot.get(_RUN), spot.get(_DROP), spot.get(ground.DOWNHILL)
    slope = None
    if run is not None and drop is not None:
        slope = spot_slope(spot)
    key = step.question.key if step is not None else ""
    judged = Judged.OPEN
    if slope is not None:
        judged = _standing(plan, f"spots.{place.number or 1}.{_DROP.key}")
    mark, ink = judged.value
    known = toward is not None and toward != "flat"
    return level_string(
        Fall(
            "" if run is None else length_words(run, plan.metric),
            "" if drop is None else depth_words(drop, plan.metric),
            None if slope is None else slope.percent / 100,
            "" if slope is None else f"{slope_words(slope.fall)} {mark}",
            ink,
            f"downhill: {_WAYS[toward]}" if toward is not None and known else "",
            {_RUN.key: "run", _DROP.key: "drop"}.get(key, ""),
        )
    )


_RUN, _DROP = ground.SLOPE_RUN, ground.SLOPE_DROP
_WAYS = dict(ground.DOWNHILL.kind.options)  # type: ignore[attr-defined]


def _yard(plan: Plan, place: Place, step: Step | None) -> Drawing:
    number = place.number or 1
    if place.page.key == "marks":
        number = (ground.chosen_spot(plan.answers).scope or ("", 1))[1]
    spot = plan.answers.at("spots", number)
    lengths = [spot.get(one) for one in (bed.ROOM_LENGTH, bed.ROOM_WIDTH)]
    long, wide = (None if one is None else magnitude(one, "ft") for one in lengths)
    key = step.question.key if step is not None else ""
    asked = (bed.ROOM_LENGTH.key, bed.ROOM_WIDTH.key)
    sides = tuple(
        RoomSide("" if one is None else distance_words(one, plan.metric), key == of)
        for one, of in zip(lengths, asked, strict=True)
    )
    outlined = place.page.key == "outline"
    things = tuple(_things(plan, spot, number, step))
    return yard(things, long, wide, (sides[0], sides[1]) if outlined else None)


def _room(plan: Plan) -> Drawing:
    """Return the room that the first size asks for."""
    found = plan.rough.sized
    sides = (found.length, found.width)
    long, wide = (magnitude(one, "ft") for one in sides)
    across, along = (RoomSide(length_words(one, plan.metric)) for one in sides)
    return yard((), long, wide, (across, along))


def _things(plan: Plan, spot: Answers, number: int, step: Step | None) -> Iterator[Thing]:
    here = step.address if step is not None else ""
    for key in spot.get(nearby.NEAR) or ():
        question = nearby.DISTANCES[key]
        address = f"spots.{number}.{question.key}"
        asked = here in (address, nearby.LOCAL[key].key)
        yield _thing(plan, key, spot.get(question), address, asked)
    for key, one in _ALONE.items():
        if (far := spot.get(one)) is not None or here == one.key:
            yield _thing(plan, key, far, one.key, here == one.key)


_ALONE = {"spout": bed.SPOUT_DISTANCE, "mark": buried.MARK_DISTANCE}
"""What is measured once for all spots: it is there once it is asked for."""


def _thing(plan: Plan, key: str, far: Quantity | None, address: str, here: bool) -> Thing:
    return Thing(
        key,
        NAMES[key],
        None if far is None else magnitude(far, "ft"),
        "" if far is None else distance_words(far, plan.metric),
        Judged.OPEN if far is None else _standing(plan, address),
        here,
    )


_JUDGED = {Grade.STOP: Judged.STOP, Grade.FIX: Judged.NEAR, Grade.GOOD: Judged.GOOD}


def _standing(plan: Plan, address: str) -> Judged:
    found = next((one for one in route.steps(plan.answers) if one.address == address), None)
    told = verdict(plan, found) if found is not None else None
    if told is None:
        return Judged.PLAIN
    return Judged.NEAR if told.near else _JUDGED[told.grade]
