"""What speaks for and against: the earth and the ways of the water."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.earth import overflow
from interview.garden.earth.results import EarthResults
from interview.garden.form.lie import (
    COMPACTION,
    DEEPEST_UPHILL_FT,
    HIGHEST_BERM,
    WIDEST_RISE_FT,
    Lie,
    too_wide,
    wing_length,
)
from interview.garden.site.slope import DEPTH_ROWS, table_depth
from interview.garden.size import shape_questions as shaping
from interview.garden.size.answered import in_a_row
from interview.garden.size.basin import lying
from interview.quantities.evidence import OURS, Finding, Grade, Provenance, Source
from interview.quantities.guards import times, within
from interview.quantities.shown import depth_words, length_words, sides_words, volume_words
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity

_BERM_SOIL = Source(
    "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. 39",
    Provenance.PUBLISHED,
)
BERM_STOP = {US: (18.0, "in"), METRIC: (450.0, "mm")}
NARROWER = (3.0, 4.0)
"""Lengths to width that are tried on a slope too steep for the usual one."""
LESS_FT = 1 / 12
"""A bed that rises or is cut no less than this is no way out: an inch, a choice of ours."""


def earth_findings(found: EarthResults) -> Iterator[Finding]:
    yield berm_finding(quantity(found.lie.crest_to_toe, "ft"), found.answers.metric)
    yield _left_over(found)
    if too_wide(found.lie):
        yield _too_wide(found)
    said = table_depth(found.site.slope)
    yield Finding("slope_and_depth", Grade.GOOD, said, "", DEPTH_ROWS.source)


def berm_finding(crest_to_toe: Quantity, metric: bool = False) -> Finding:
    """Return whether the berm is low enough, a length from crest to outer toe at its greatest.

    Over 12 in (300 mm) fix, over 18 in (450 mm) stop. Source: ``OURS``.
    """
    system = METRIC if metric else US
    caution, unit = HIGHEST_BERM[system]
    stop = BERM_STOP[system][0]
    high = magnitude(crest_to_toe, unit)
    limit = f"over {caution:g} {unit} take care, over {stop:g} {unit} stop"
    key = "berm_height"
    if high <= 0:
        said = "The garden needs no berm: the lawn is its rim."
        return Finding(key, Grade.GOOD, said, limit, OURS)
    said = f"From its crest to its outer foot the berm is {depth_words(crest_to_toe, metric)} high."
    if within(high, caution):
        return Finding(key, Grade.GOOD, said, limit, OURS)
    if within(high, stop):
        change = "Make the pond shallower or the floor narrower."
        return Finding(key, Grade.FIX, said, limit, OURS, change)
    change = "Ask an engineer: a bank this high is a small dam."
    return Finding(key, Grade.STOP, said, limit, OURS, change)


def _left_over(found: EarthResults) -> Finding:
    """Say how much soil is left over, and the way to carry off less."""
    metric, key = found.answers.metric, "berm_soil"
    change = "Plan where it goes: not against trunks, walls or in the overflow's way."
    spare = volume_words(found.left_over, metric)
    if found.lie.crest_to_toe <= 0:
        said = f"All the soil you dig, {spare} before it swells, is left over."
        return Finding(key, Grade.GOOD, said, "", COMPACTION.source, change)
    if not found.own_berm:
        said = f"The sand you dig makes no berm; all of it, {spare}, is left over."
        return Finding(key, Grade.GOOD, said, "", COMPACTION.source, change)
    if magnitude(found.left_over, "ft**3") <= 0:
        said = "The soil you dig is just enough for the berm."
        return Finding(key, Grade.GOOD, said, "", COMPACTION.source, "Keep all of it.")
    bare = found.laid_thin
    if bare is not None:
        less = times(found.spare_of(bare), found.size.bed_count)
        mulch = bare.ground.mulch
        ways = [f"{depth_words(quantity(mulch, 'ft'), metric)} of mulch"] if mulch > 0 else []
        ways += ["no compost"] if found.lie.ground.compost > 0 else []
        change += f" With {' and '.join(ways)} about {volume_words(less, metric)} is left over."
    wings = found.winged
    if wings is not None:
        less = times(found.spare_of(wings), found.size.bed_count)
        length = length_words(quantity(wing_length(found.lie), "ft"), metric)
        laid = wings.ground.mulch + wings.ground.compost
        below = depth_words(quantity(wings.floor_below + laid, "ft"), metric)
        change += (
            f" Less of it, about {volume_words(less, metric)}, would be left over with wings: the "
            f"berm's ends run on up the slope by {length}, and the floor is dug {below} below the "
            "lawn downhill. The heights of this sheet are for the garden without wings."
        )
    said = f"The soil you dig makes the berm; {spare}, before it swells, is left over."
    return Finding(key, Grade.GOOD, said, "", COMPACTION.source, change)


def _too_wide(found: EarthResults) -> Finding:
    """Say that the bed is too wide for its slope, with a narrower bed or two beds worked out."""
    metric, size = found.answers.metric, found.size
    rise = quantity(found.lie.floor_rise, "ft")
    ways = []
    for along in NARROWER:
        narrow = size.as_long_as(along)
        lie = None if narrow is None else lying(narrow, size.ground)
        if narrow is None or lie is None or not _eased(found.lie, lie):
            continue
        if not too_wide(lie) or along == NARROWER[-1]:
            floor = sides_words(narrow.floor_length, narrow.floor_width, metric)
            deep = depth_words(quantity(lie.uphill_cut, "ft"), metric)
            ways.append(f"a floor of {floor}, cut {deep} deep uphill")
            break
    halves = size.halves
    if halves is not None and _eased(found.lie, lying(halves, size.ground)):
        floor = sides_words(halves.floor_length, halves.floor_width, metric)
        ways.append(f"two beds one above the other on the slope, each with a floor of {floor}")
    limits = "300 mm of rise across the floor, 450 mm of cut uphill"
    if not metric:
        limits = "12 in of rise across the floor, 18 in of cut uphill"
    return Finding(
        "too_wide",
        Grade.FIX,
        f"The lawn rises {depth_words(rise, metric)} across the floor and the cut uphill is "
        f"{depth_words(quantity(found.lie.uphill_cut, 'ft'), metric)} deep.",
        limits,
        OURS,
        f"Make it {', or '.join(ways)}."
        if ways
        else "Make the pond shallower, or its rim lower."
        if within(found.lie.floor_rise, WIDEST_RISE_FT)
        else "Make the bed narrower, or make two beds.",
    )


def _eased(now: Lie, then: Lie | None) -> bool:
    """Tell whether a bed lies better in each way in which the one now lies ill."""
    if then is None:
        return False
    ways = (
        (now.floor_rise, then.floor_rise, WIDEST_RISE_FT),
        (now.uphill_cut, then.uphill_cut, DEEPEST_UPHILL_FT),
    )
    return all(within(high, most) or less <= high - LESS_FT for high, less, most in ways)


def water_findings(found: EarthResults) -> Iterator[Finding]:
    freeboard, metric = found.answers[shaping.FREEBOARD], found.answers.metric
    yield overflow.head_finding(found.notch, freeboard, metric)
    if (wide := overflow.wide_finding(found.notch, freeboard, metric)) is not None:
        yield wide
    if found.swale is not None:
        yield overflow.swale_finding(found.swale, metric)
    if found.notch.lip and in_a_row(found.answers):
        yield Finding(
            "row_on_level",
            Grade.FIX,
            "On level lawn no water runs on by itself from one bed to the next.",
            "beds one below the other where the ground falls 1 % or more",
            OURS,
            "Choose side by side, or make it one bed.",
        )
    if not found.notch.lip and not found.own_berm:
        yield Finding(
            "berm_sand",
            Grade.FIX,
            "A berm of sand leaks and washes out.",
            "a berm of soil that packs",
            _BERM_SOIL,
            "Bring silt or clay soil for the berm.",
        )
    if found.piped and found.pipe_size.width is None:
        yield overflow.no_pipe_sold_finding(found.roof_flow, metric)
    elif found.piped:
        yield overflow.pipe_finding(found.pipe, metric)
