"""What speaks for and against: the levels as dug, and what the first storms showed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from interview.asking.answers import Answers
from interview.asking.question import Unanswered
from interview.garden.afterwards import questions as review
from interview.garden.afterwards.as_built import LEVEL_WITHIN, above, spread
from interview.garden.afterwards.levels_questions import LEVELS_READ
from interview.garden.afterwards.results import BuiltBed, BuiltResults
from interview.garden.place import questions as start
from interview.garden.planting.care import after_storm
from interview.garden.planting.wetness import USUAL_HOURS
from interview.garden.site import questions as site
from interview.garden.site.surroundings import CHILDREN_IN
from interview.garden.size import answered
from interview.quantities.evidence import ARITHMETIC, OURS, PRACTICE, Finding, Grade, Source
from interview.quantities.guards import within
from interview.quantities.shown import HIGH, LOW, PLAIN, depth_words, volume_words, water_words
from interview.quantities.units import Quantity, magnitude, quantity

_LEAST = 1 / 48
"""Feet under which a level that is off is not told: a quarter of an inch, the least on a tape."""


def built_findings(found: BuiltResults) -> Iterator[Finding]:
    """Yield what the levels as dug mean, bed by bed, and what to mend before planting.

    Whether a floor is level is told before the notch is read.
    """
    for bed in found.asked if found.answers[LEVELS_READ] else ():
        floor: tuple[Quantity, ...] = found.answers.get(bed.floor) or ()
        yield from _of_bed(found, bed.number, _level(found, floor))
    for one in found.beds:
        said = (_depth(found, one), *_rim(found, one), *_inlet(found, one))
        yield from _of_bed(found, one.number, said)


def _of_bed(found: BuiltResults, number: int, findings: Iterable[Finding]) -> Iterator[Finding]:
    several = found.size.bed_count > 1
    for one in findings:
        key = one.key if number == 1 else f"{one.key}_{number}"
        said = f"Bed {number}: {one.said[0].lower()}{one.said[1:]}" if several else one.said
        yield one._replace(key=key, said=said)


def _near(found: BuiltResults) -> tuple[Quantity, Source]:
    cited = LEVEL_WITHIN[found.place.system]
    return quantity(*cited.value), cited.source


def _depth(found: BuiltResults, bed: BuiltBed) -> Finding:
    """Say what the garden holds as dug, against what was planned."""
    dug, metric = bed.dug, found.place.metric
    near, source = _near(found)
    deep, planned = (depth_words(one, metric) for one in (dug.depth, dug.planned.depth))
    off = magnitude(dug.shallower, "ft")
    limit = f"within {depth_words(near, metric)} of the {planned} planned"
    key, holds = "built_depth", _holds(bed, metric)
    if magnitude(dug.depth, "ft") <= 0:
        over = above(dug.levels.finished_floor, dug.levels.spills_at)
        high = "as high as" if magnitude(over, "ft") <= 0 else f"{depth_words(over, metric)} above"
        said = f"As dug it holds no water: the floor lies {high} the place where it spills."
        return Finding(key, Grade.FIX, said, limit, source, _deepen(found, bed))
    if within(abs(off), magnitude(near, "ft")):
        said = f"As dug the pond is {deep} deep, as planned: {holds}."
        return Finding(key, Grade.GOOD, said, limit, source)
    if off > 0:
        said = f"As dug the pond is {deep} deep, not {planned}: {holds}."
        return Finding(key, Grade.FIX, said, limit, source, _deepen(found, bed))
    hours = magnitude(bed.hours_to_empty, "h")
    said = (
        f"As dug the pond is {deep} deep, not {planned}: {holds}, and a full pond stands "
        f"{HIGH.write(hours)} h."
    )
    if too_deep := _too_deep(found, bed, hours):
        return Finding(key, Grade.FIX, said, too_deep, USUAL_HOURS.source, _shallow(found, bed))
    keep = "You may keep it so. Watch how long the first storm stands."
    return Finding(key, Grade.GOOD, said, limit, source, keep)


def _holds(bed: BuiltBed, metric: bool) -> str:
    """Say how much it holds, and how much less or more than planned."""
    dug = bed.dug
    change = 100 * (dug.share - 1)
    than = f", {PLAIN.write(abs(change))} % {'less' if change < 0 else 'more'} than planned"
    than = than if abs(change) >= 1 else ""
    rain = water_words(bed.rain_held, metric, LOW)
    return f"it holds {volume_words(dug.volume, metric)}{than}, or {rain} of rain"


def _too_deep(found: BuiltResults, bed: BuiltBed, hours: float) -> str:
    """Return the limit that a pond deeper than planned breaks; nothing where it breaks none."""
    deep = magnitude(bed.dug.depth, "in")
    if not within(hours, USUAL_HOURS.value):
        return f"gone in {USUAL_HOURS.value:g} h"
    if found.answers.get(site.CHILDREN) and not within(deep, CHILDREN_IN):
        return "6 in (150 mm) is deep enough near small children"
    most = magnitude(quantity(*answered.DEEPEST_UNASKED[found.place.system]), "in")
    if not within(deep, max(most, magnitude(bed.dug.planned.depth, "in"))):
        return "12 in (300 mm) without an engineer's word"
    return ""


def _off(found: BuiltResults, bed: BuiltBed) -> tuple[float, float] | None:
    """Return how far, in feet, floor and notch lie above their levels; from the string alone."""
    if not found.from_string or bed.levels.over_rim:
        return None
    garden = found.size.garden
    floor = magnitude(garden.rim_height, "ft") - magnitude(bed.levels.finished_floor, "ft")
    return floor, magnitude(garden.freeboard, "ft") - magnitude(bed.levels.notch, "ft")


def _deepen(found: BuiltResults, bed: BuiltBed) -> str:
    """Say what to mend in a pond that is not deep enough."""
    metric = found.place.metric
    if bed.levels.over_rim:
        return "Raise the rim first where it is lowest, then read again."
    floor, notch = _off(found, bed) or (0.0, 0.0)
    said = []
    if floor > _LEAST:
        high = depth_words(quantity(floor, "ft"), metric)
        said.append(f"The floor is {high} too high: dig it that much deeper.")
    if notch < -_LEAST:
        low = depth_words(quantity(-notch, "ft"), metric)
        said.append(f"The notch is {low} too low: raise its sill that much.")
    lacks = depth_words(bed.dug.shallower, metric)
    return " ".join(said) or (
        f"Dig the floor {lacks} deeper, or raise the notch where the rim stands high enough."
    )


def _shallow(found: BuiltResults, bed: BuiltBed) -> str:
    """Say what to mend in a pond that is too deep."""
    metric = found.place.metric
    floor, notch = _off(found, bed) or (0.0, 0.0)
    said = []
    if floor < -_LEAST:
        low = depth_words(quantity(-floor, "ft"), metric)
        said.append(f"The floor is {low} too low: put loose soil back, do not tamp it.")
    if notch > _LEAST:
        high = depth_words(quantity(notch, "ft"), metric)
        said.append(f"The notch is {high} too high: cut it down that much.")
    over = depth_words(quantity(-magnitude(bed.dug.shallower, "ft"), "ft"), metric)
    return " ".join(said) or f"Lower the notch by {over}, or put that much loose soil back."


def _level(found: BuiltResults, floor: Sequence[Quantity]) -> Iterator[Finding]:
    """Say whether the floor is level; nothing of a single reading."""
    if len(floor) < 2:
        return
    near, source = _near(found)
    metric = found.place.metric
    apart = spread(floor)
    limit = f"within {depth_words(near, metric)}"
    words = depth_words(apart, metric)
    if within(magnitude(apart, "ft"), magnitude(near, "ft")):
        said = f"The floor is level: its readings lie {words} apart."
        yield Finding("built_level", Grade.GOOD, said, limit, source)
        return
    yield Finding(
        "built_level",
        Grade.FIX,
        f"The floor is not level: its readings lie {words} apart, so water stands longest in the "
        "low places.",
        limit,
        source,
        "Rake soil from the high places to the low ones, and read it again.",
    )


def _rim(found: BuiltResults, bed: BuiltBed) -> Iterator[Finding]:
    """Say whether the pond leaves at the notch, in the heaviest rain too."""
    levels, metric = bed.levels, found.place.metric
    if levels.rim is None:
        return
    over = magnitude(above(levels.rim, levels.notch), "ft")
    head = _head(found)
    words = depth_words(quantity(abs(over), "ft"), metric)
    wanted = depth_words(found.size.garden.freeboard, metric)
    mend = f"Raise the rim there with tamped soil until it stands {wanted} above the notch."
    limit = "the notch is the lowest place of the rim"
    if over <= 0:
        where = f"{words} below the notch" if over < 0 else "no higher than the notch"
        said = f"The rim is lowest {where}: the pond spills there, not at the notch."
        yield Finding("built_rim", Grade.FIX, said, limit, PRACTICE, mend)
        return
    said = f"The rim stands {words} above the notch at its lowest."
    if head is not None and not within(magnitude(head, "ft"), over):
        deep = depth_words(head, metric)
        said += f" In the heaviest rain the overflow runs {deep} deep and would go over it."
        limit = f"{deep} or more, the depth of the peak flow in the notch"
        yield Finding("built_rim", Grade.FIX, said, limit, OURS, mend)
        return
    yield Finding("built_rim", Grade.GOOD, said, limit, PRACTICE)


def _head(found: BuiltResults) -> Quantity | None:
    try:
        return found.earth.notch.head
    except Unanswered:
        return None


def _inlet(found: BuiltResults, bed: BuiltBed) -> Iterator[Finding]:
    """Say whether the inlet stands clear of the full pond."""
    levels, metric = bed.levels, found.place.metric
    if levels.inlet is None:
        return
    over = above(levels.inlet, levels.notch)
    words = depth_words(quantity(abs(magnitude(over, "ft")), "ft"), metric)
    limit = "the inlet is no lower than the notch"
    if magnitude(over, "ft") >= 0:
        said = f"The inlet lies {words} above the notch: the full pond does not reach it."
        yield Finding("built_inlet", Grade.GOOD, said, limit, PRACTICE)
        return
    yield Finding(
        "built_inlet",
        Grade.FIX,
        f"The inlet lies {words} below the notch: the full pond stands in it, silt settles there, "
        "and water may come out beside it.",
        limit,
        PRACTICE,
        "Raise its stone to the height of the notch or a little above.",
    )


def after_findings(answers: Answers) -> Iterator[Finding]:
    hours = answers.get(review.STORM_EMPTY)
    if hours is not None:
        yield after_storm(hours)
    if answers.get(review.STORM_OVERFLOW) == "elsewhere":
        yield Finding(
            "overflow_elsewhere",
            Grade.FIX,
            "Water left the garden somewhere other than the notch.",
            "the notch is the lowest place of the rim",
            PRACTICE,
            "Raise the rim there, or lower the notch, and check with a level.",
        )
    rain, held = answers.get(review.STORM_RAIN), answers.get(start.RAIN_DEPTH)
    over = answers.get(review.STORM_OVERFLOW) == "notch"
    if over and rain is not None and held is not None and rain < held:
        fell, asked = (water_words(one, answers.metric) for one in (rain, held))
        yield Finding(
            "overflow_soon",
            Grade.FIX,
            f"It ran over in {fell} of rain, and is made to hold {asked}.",
            "the rain to hold",
            ARITHMETIC,
            "Read the levels of floor and notch. If they are right, see whether more drains here "
            "than was measured, or whether it still stood full of an earlier rain.",
        )
    plants = answers.get(review.STORM_PLANTS)
    if plants in ("drowned", "dry"):
        wetter = plants == "dry"
        yield Finding(
            "plants_after_storm",
            Grade.FIX,
            "Plants look drowned." if not wetter else "Plants look dry.",
            "each plant at the height that suits it",
            PRACTICE,
            "Move them lower, and water in the first year."
            if wetter
            else "Move them higher and see why the water stands.",
        )
