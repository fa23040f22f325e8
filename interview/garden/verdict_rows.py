"""Which finding each answer decides, and what can be done about it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any, NamedTuple

from interview.asking.answers import Answers
from interview.asking.question import Question, Unanswered
from interview.garden.afterwards import levels_questions as levels
from interview.garden.afterwards import questions as review
from interview.garden.afterwards.findings import after_findings, built_findings
from interview.garden.checks import dig_day_findings, hole_depth_findings, mark_reach_findings
from interview.garden.earth.findings import earth_findings, water_findings
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting import questions as planting
from interview.garden.planting.findings import planting_findings
from interview.garden.site import lines_questions as buried
from interview.garden.site import nearby_questions as nearby
from interview.garden.site import questions as site
from interview.garden.site import results as found_at
from interview.garden.site import spot_questions as ground
from interview.garden.site.findings import permission_findings
from interview.garden.site.gate import mark_finding
from interview.garden.size import answered
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.findings import depth_findings, size_findings
from interview.garden.size.results import SizeResults
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import questions as soak
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.findings import holes_findings
from interview.garden.storms.findings import record_findings
from interview.garden.storms.rain_days import METHOD
from interview.garden.survey import questions as survey
from interview.garden.survey.findings import catchment_findings
from interview.quantities.evidence import ARITHMETIC, PRACTICE, Finding, Grade, Source
from interview.quantities.shown import LOW, depth_words, rate_words, sides_words, water_words
from interview.quantities.units import plain_number

KEEP = "keep"
"""The target of a way that leaves the answer as it is."""
WAYS_OUT = "ways_out"
"""The target of a way to the page of ways out, each with its numbers."""
LEARN = "learn"
"""The target of a way that tests a spot where no garden may be made, to learn of its soil."""


Find = Callable[[Plan, Answers], Iterable[Finding]]


def _own_words(_plan: Plan, _view: Answers) -> str:
    """Return nothing: the finding has its own words where all is well."""
    return ""


class Decides(NamedTuple):
    """Where the verdict on a question comes from."""

    keys: tuple[str, ...]
    """Keys of the findings that the answer decides; ``{n}`` stands for the number of the hole."""
    find: tuple[Find, ...]
    needs: tuple[Question[Any], ...] = ()
    """What has to be answered too before it means anything."""
    good: Callable[[Plan, Answers], str] = _own_words
    """Words for where nothing speaks against it; raises ``Unanswered``."""
    source: Source = ARITHMETIC
    """Where the limit of those words comes from."""

    @property
    def live(self) -> bool:
        """Whether it can be told while the words are typed: no file is read, nothing searched."""
        return not set(self.find) & {_SIZE, _EARTH, _RECORD, _PLANTS}


def _standing(_: Plan, spot: Answers) -> Iterable[Finding]:
    return found_at.standing_findings(spot)


def _distance(plan: Plan, spot: Answers) -> Iterable[Finding]:
    return found_at.distance_findings(spot, plan.size.reaches_out)


def _slope(_: Plan, spot: Answers) -> Iterable[Finding]:
    return found_at.slope_findings(spot)


def _below(plan: Plan, spot: Answers) -> Iterable[Finding]:
    return found_at.below_findings(spot, plan.checks.dug_depth)


def _ground(_: Plan, spot: Answers) -> Iterable[Finding]:
    return found_at.ground_findings(spot)


def _overflow(_: Plan, spot: Answers) -> Iterable[Finding]:
    return found_at.overflow_findings(spot)


def _mark(_: Plan, view: Answers) -> Iterator[Finding]:
    near = view.get(buried.MARK_DISTANCE)
    if near is not None:
        yield mark_finding(near, buried.tolerance_zone(view), view.metric)


def _from(check: Callable[[Any], Iterable[Finding]], record: str) -> Find:
    return lambda plan, _: check(getattr(plan, record))


def _size_or_why(found: SizeResults) -> Iterator[Finding]:
    """Yield what is found of the size; where there can be none, why."""
    try:
        _ = found.garden
    except Unanswered as gap:
        if gap.why:
            yield Finding("no_size", Grade.FIX, gap.why, "", ARITHMETIC)
        return
    yield from size_findings(found)


_DEPTH, _SIZE = _from(depth_findings, "size"), _from(_size_or_why, "size")
_EARTH, _WATER = _from(earth_findings, "earth"), _from(water_findings, "earth")
_ASKED = _from(permission_findings, "site")
_HOLES = _from(holes_findings, "soak")
_ROOF = _from(catchment_findings, "survey")
_RECORD = _from(record_findings, "storms")
_PLANTS = _from(planting_findings, "planting")
_AFTER = _from(after_findings, "answers")
_BUILT = _from(built_findings, "built")


def _built(found: tuple[str, ...], number: int) -> Decides:
    """Return the row of a reading of one bed, by what it decides."""
    bed = "" if number == 1 else f"_{number}"
    return Decides(tuple(f"built_{one}{bed}" for one in found), (_BUILT,))


def soil_allows(plan: Plan, _: Answers) -> str:
    """Say how fast the soil takes water and the pond it allows."""
    drop, corrected = plan.soak.soil.drop_rate, plan.soak.soil.corrected
    said = f"Water drops {rate_words(drop, plan.metric)}" if drop is not None else ""
    said = said or f"The soil takes {rate_words(corrected, plan.metric)}"
    return f"{said}: pond {depth_words(plan.size.depth.depth, plan.metric)}"


def result_words(plan: Plan, view: Answers) -> str:
    """Say what the soil allows, as far as it is known: the pond, the garden, whether it fits."""
    said = soil_allows(plan, view)
    try:
        fits = " It fits." if _within_room(plan) else ""
        wide = plan.size.over_all if plan.size.ground is not None else None
    except Unanswered:
        return f"{said}."
    garden = f", garden {sides_words(*wide, plan.metric)} over all" if wide else ""
    return f"{said}{garden}.{fits}"


def _within_room(plan: Plan) -> bool:
    """Tell whether room was given and takes the garden; raises ``Unanswered``."""
    garden = plan.size.garden
    return answered.has_room(plan.answers) and not plan.size.outgrows(garden)


def _fits(plan: Plan, _: Answers) -> str:
    over_all = sides_words(*plan.size.over_all, plan.metric)
    return f"It fits: {over_all} over all." if _within_room(plan) else ""


def _sunny(_: Plan, spot: Answers) -> str:
    hours = spot[ground.SUN_HOURS]
    return f"{plain_number(hours)} h: plants for {planting.SUN_WORDS[planting.sun_for(hours)]}."


def _most_days(plan: Plan, _: Answers) -> str:
    deep = water_words(plan.storms.days_of_rain.depth(90), plan.metric)
    return f"9 of 10 rain days in it bring {deep} or less: see Rain to hold."


def _days_within(plan: Plan, _: Answers) -> str:
    if not plan.answers[start.HAS_RECORD]:
        return ""
    part = 100 * plan.storms.days_of_rain.share_within(plan.answers[start.RAIN_DEPTH])
    return f"{LOW.write(part)} % of the rain days in your file bring no more."


def _distance_keys(key: str) -> tuple[str, ...]:
    item = found_at.SETBACK_OF[key]
    uphill = ("septic_uphill_distance",) if key == "septic" else ()
    return (f"{item}_distance", *uphill)


def _distance_row(key: str) -> Decides:
    return Decides(_distance_keys(key), (_distance,), (nearby.DISTANCES[key],))


_SLOPE = Decides(("slope", "level"), (_slope,), (ground.SLOPE_RUN, ground.SLOPE_DROP))
_TEST = Decides(
    ("hole_{n}_rate", "hole_{n}_settled", "pond_depth", "soil_too_fast", "no_size", "room"),
    (_HOLES, _DEPTH, _SIZE),
    good=result_words,
)
_ROOM = Decides(("no_size", "room"), (_SIZE,), good=_fits)
_FLOOR = Decides(
    ("no_size", "room", "rain_held", "own_rain_share", "split", "too_wide"),
    (_SIZE, _EARTH),
    good=_fits,
)
_PIPE = Decides(("pipe_fall", "pipe_flow"), (_WATER,))
_POND = ("pond_depth", "custom_depth", "pond_and_engineer", "pond_and_children")

TABLE: dict[Question[Any], Decides] = {
    start.RAIN_DEPTH: Decides(("no_size", "own_rain"), (_SIZE,), good=_days_within, source=METHOD),
    start.RECORD_PATH: Decides(("record_unit", "record_lines"), (_RECORD,)),
    start.RECORD_UNIT: Decides(("record_unit",), (_RECORD,), good=_most_days, source=METHOD),
    buried.MARK_DISTANCE: Decides(
        ("mark_distance", "mark_reach"), (_mark, _from(mark_reach_findings, "checks"))
    ),
    **{question: _distance_row(key) for key, question in nearby.LOCAL.items()},
    ground.STANDS: Decides(("standing_water",), (_standing,)),
    **{question: _distance_row(key) for key, question in nearby.DISTANCES.items()},
    nearby.SEPTIC_UPHILL: _distance_row("septic"),
    nearby.WALL_HEIGHT: _distance_row("retaining_wall"),
    nearby.DRIP_LINE: _distance_row("tree"),
    ground.SLOPE_RUN: _SLOPE,
    ground.SLOPE_DROP: _SLOPE,
    ground.SLOPE_TURNED: _SLOPE,
    ground.WET_DEPTH: Decides(("water_below",), (_below,)),
    ground.ROCK_DEPTH: Decides(("bedrock_below",), (_below,)),
    ground.SLIDES: Decides(("slides", "karst"), (_ground,)),
    ground.SUN_HOURS: Decides(("sun",), (), good=_sunny, source=PRACTICE),
    ground.CONTAMINATION: Decides(("contamination",), (_ground,)),
    ground.SOIL_LAB: Decides(("contamination",), (_ground,)),
    ground.OVERFLOW_TO: Decides(("overflow_way",), (_overflow,)),
    ground.OVERFLOW_TO_BUILDING: Decides(("overflow_building_distance",), (_overflow,)),
    ground.OVERFLOW_TO_LINE: Decides(("overflow_outlet_distance",), (_overflow,)),
    site.CHILDREN: Decides(("children", "pond_and_children"), (_ASKED, _DEPTH)),
    site.PERMISSION: Decides(("ownership",), (_ASKED,)),
    site.RULES_CHECKED: Decides(("permits",), (_ASKED,)),
    digging.KNOWN_RATE: Decides(
        ("pond_depth", "soil_too_fast", "no_size", "room"), (_DEPTH, _SIZE), good=result_words
    ),
    digging.HOLE_DEPTH: Decides(("hole_{n}_depth",), (_from(hole_depth_findings, "checks"),)),
    digging.FLOOR_DEPTH: Decides(("hole_{n}_depth",), (_from(hole_depth_findings, "checks"),)),
    digging.HOLE_SMELL: Decides(("hole_{n}_smell",), (_HOLES,)),
    digging.HOLE_SEEPS: Decides(("hole_{n}_seeps",), (_HOLES,)),
    digging.RIBBON: Decides(("hole_{n}_texture",), (_HOLES,)),
    timing.READINGS: _TEST,
    soak.HOLE_COUNTS: Decides(
        ("holes_apart", "pond_depth", "no_size", "room"), _TEST.find, good=result_words
    ),
    survey.HOUSE_AREA: Decides(("whole_roof",), (_ROOF,)),
    survey.ROOF_HAZARD: Decides(("roof_hazard",), (_ROOF,)),
    bed.ROOM_LENGTH: _ROOM,
    bed.ROOM_WIDTH: _ROOM,
    bed.ROOM_AREA: _ROOM,
    bed.BEDS: Decides(("no_size", "split", "room"), (_SIZE,)),
    bed.SPOUT_DISTANCE: _PIPE,
    bed.WATER_BY: Decides(("pipe_fall", "pipe_flow", "berm_sand"), (_WATER,)),
    bed.SPOUT_FALL: _PIPE,
    bed.DEEPEST_POND: Decides(_POND, (_DEPTH,), good=result_words),
    bed.ENGINEER: Decides(_POND, (_DEPTH,)),
    bed.DRAIN_RULE: Decides(_POND, (_DEPTH,), good=result_words),
    shaping.FREEBOARD: Decides(("overflow_head", "berm_height"), (_WATER, _EARTH)),
    bed.PEAK_INTENSITY: Decides(("overflow_head",), (_WATER,)),
    bed.SOIL_DUG: Decides(("berm_sand",), (_WATER,)),
    bed.FLOOR_LENGTH: _FLOOR,
    bed.FLOOR_WIDTH: _FLOOR,
    planting.OWN_PLANTS: Decides(("own_plants",), (_PLANTS,)),
    review.DIG_DAY: Decides(("dig_day",), (_from(dig_day_findings, "checks"),)),
    **{
        question: _built(found, bed.number)
        for bed in levels.BED_LEVELS
        for question, found in (
            (bed.cover, ("depth",)),
            (bed.floor, ("depth", "level")),
            (bed.notch, ("depth", "rim", "inlet")),
            (bed.rim, ("rim", "depth")),
            (bed.inlet, ("inlet",)),
        )
    },
    review.STORM_EMPTY: Decides(("drained", "drained_slowly", "drained_too_slowly"), (_AFTER,)),
    review.STORM_OVERFLOW: Decides(("overflow_elsewhere", "overflow_soon"), (_AFTER,)),
    review.STORM_PLANTS: Decides(("plants_after_storm",), (_AFTER,)),
}


def _decided_at() -> Mapping[str, str]:
    found: dict[str, str] = {}
    # A local rule is asked before the distance it stands for, but does not give it.
    first_last = sorted(TABLE, key=lambda question: question.key.startswith("local_"))
    for question in first_last:
        for key in TABLE[question].keys:
            found.setdefault(key, question.key)
    return found


DECIDED_AT = _decided_at()
"""By finding, the key of the first question that decides it."""

_OWN, _SPOT = "", "another_spot"
_KEEP = ("Keep it: the plan will say so", KEEP)
_AGAIN = ("Answer it again", _OWN)
_OTHER = ("Try another spot", _SPOT)
_SHALLOWER = ("Write a shallower pond", bed.DEEPEST_POND.key)
_OUT = ("See other ways", WAYS_OUT)
_HOLE = ("Test another hole", soak.ANOTHER_HOLE.key)

WAYS: dict[str, tuple[tuple[str, str], ...]] = {
    "standing_water": (_OTHER, _KEEP),
    **{
        key: (_AGAIN, _OTHER, _KEEP)
        for question in nearby.DISTANCES
        for key in _distance_keys(question)
    },
    "slope": (("Measure it again", ground.SLOPE_RUN.key), _OTHER, _KEEP),
    "level": (("Read it both ways again", ground.SLOPE_DROP.key), _KEEP),
    "water_below": (("", bed.DEEPEST_POND.key), _OTHER, _KEEP),
    "bedrock_below": (("", bed.DEEPEST_POND.key), _OTHER, _KEEP),
    "slides": (_OTHER, _KEEP),
    "karst": (_OTHER, _KEEP),
    "contamination": (("Have the soil tested", ground.SOIL_LAB.key), _OTHER, _KEEP),
    "overflow_way": (("Send it another way", ground.OVERFLOW_TO.key), _OTHER, _KEEP),
    "overflow_building_distance": (_AGAIN, _OTHER, _KEEP),
    "overflow_outlet_distance": (_AGAIN, _OTHER, _KEEP),
    "mark_distance": (_AGAIN, _OTHER, ("Keep it: digging stays shut", KEEP)),
    "mark_reach": (("Lay it all out, measure again", _OWN), _KEEP),
    "ownership": (_AGAIN, _KEEP),
    "pond_depth": (_HOLE, ("Allow a deeper pond", bed.DEEPEST_POND.key), _OTHER, _KEEP),
    "custom_depth": (("Choose both checks", bed.DRAIN_RULE.key), _SHALLOWER, _KEEP),
    "pond_and_engineer": (_SHALLOWER, _KEEP),
    "pond_and_children": (_SHALLOWER, _KEEP),
    "soil_too_fast": (_HOLE, _KEEP),
    "hole_{n}_depth": (("Dig it deeper, write its depth", digging.HOLE_DEPTH.key), _KEEP),
    "hole_{n}_smell": (_AGAIN, _OTHER),
    "hole_{n}_seeps": (_OTHER,),
    "hole_{n}_rate": (_HOLE, _OTHER, _KEEP),
    "hole_{n}_settled": (("Take more readings", timing.READINGS.key), _KEEP),
    "hole_{n}_texture": (("Feel it again", digging.RIBBON.key), _KEEP),
    "holes_apart": (_HOLE, _KEEP),
    "own_rain": (_OUT, _KEEP),
    "own_rain_share": (_OUT, _KEEP),
    "rain_held": (_OUT, _KEEP),
    "no_size": (
        ("Measure the room again", bed.ROOM_LENGTH.key),
        ("Hold less rain", start.RAIN_DEPTH.key),
        _KEEP,
    ),
    "room": (("Measure the room again", bed.ROOM_LENGTH.key), _OUT, _KEEP),
    "split": (("Choose the number of beds", bed.BEDS.key), _KEEP),
    "too_wide": (_OUT, _KEEP),
    "berm_height": (_SHALLOWER, _KEEP),
    "overflow_head": (("Raise the rim", shaping.FREEBOARD.key), _KEEP),
    "pipe_fall": (
        ("Choose another way for the water", bed.WATER_BY.key),
        ("Measure the fall again", bed.SPOUT_FALL.key),
        _KEEP,
    ),
    "pipe_flow": (("Choose another way for the water", bed.WATER_BY.key), _KEEP),
    "whole_roof": (("Check the house", survey.HOUSE_AREA.key), _KEEP),
    "record_unit": (("Answer the unit again", start.RECORD_UNIT.key), _KEEP),
    "own_plants": (_AGAIN, _KEEP),
    "dig_day": (("Choose another day", _OWN), _KEEP),
}
"""By finding, the labels and the targets of what can be done: an address, or a question's key.

The number that is missing, where the finding has it, takes the place of the first label."""
NEVER_TO_LEARN = digging.NOT_EVEN_TO_LEARN | {"permits"}
"""Stops where water may not even be soaked in to learn of the soil."""
