"""What speaks for and against: the earth and the ways of the water."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.earth import earthwork, overflow
from interview.garden.earth.results import EarthResults
from interview.garden.site.slope import DEPTH_ROWS, table_depth
from interview.garden.size import questions as bed
from interview.quantities.evidence import (
    ARITHMETIC,
    Finding,
    Grade,
    Provenance,
    Source,
)
from interview.quantities.shown import (
    depth_words,
    length_words,
)
from interview.quantities.units import magnitude, quantity, show

_BERM_SOIL = Source(
    "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. 39",
    Provenance.PUBLISHED,
)
SOIL_SLACK = 0.05
"""Part of the berm's soil that may be lacking without a word: a choice of this project."""


def earth_findings(found: EarthResults) -> Iterator[Finding]:
    yield earthwork.berm_finding(found.earthwork, found.answers.metric)
    yield _berm_soil(found)
    yield _uphill_side(found)
    yield from _ground_taken(found)
    said = table_depth(found.site.slope)
    yield Finding("slope_and_depth", Grade.GOOD, said, "", DEPTH_ROWS.source)


def _uphill_side(found: EarthResults) -> Finding:
    """Say how high the ground uphill stands; the floor is dug so that it holds the full pond."""
    garden, unit = found.size.garden, "mm" if found.answers.metric else "in"
    fall = magnitude(found.site.slope.fall, "percent") / 100
    reach = magnitude(found.earthwork.uphill_depth, unit) / (1 - garden.side_slope * fall)
    high = depth_words(quantity(reach, unit), found.answers.metric)
    rim = magnitude(garden.rim_height, unit)
    key, limit = "uphill_side", "the rim is level all round, uphill too"
    said = f"The ground on the uphill side reaches {high} above the floor"
    if reach >= rim - 1e-6:
        return Finding(key, Grade.GOOD, f"{said}, as high as the rim.", limit, ARITHMETIC)
    low = depth_words(quantity(rim - reach, unit), found.answers.metric)
    return Finding(
        key,
        Grade.GOOD,
        f"{said}, {low} lower than the rim.",
        limit,
        ARITHMETIC,
        f"Carry the berm round the uphill side too, {low} high there, with a gap lined with stone "
        "where the water comes in.",
    )


def _berm_soil(found: EarthResults) -> Finding:
    """Say whether the digging gives the soil of a berm that is level all round."""
    berm, unit = found.level_berm, "m**3" if found.answers.metric else "ft**3"
    key, source = "berm_soil", earthwork.COMPACTION_SOURCE
    limit = "a berm level all round, uphill too, tamped to 0.9"
    if magnitude(berm.lacking, unit) > SOIL_SLACK * magnitude(berm.fill, unit):
        return Finding(
            key,
            Grade.FIX,
            f"A berm level all round takes {show(berm.fill, unit, 2, 'up')} of tamped soil; the "
            f"digging lacks {show(berm.lacking, unit, 2, 'up')} for it.",
            limit,
            source,
            "Bring that soil in, or set the rim lower; deeper, the overflow would lie under the "
            "lawn. Keep all the soil until the berm stands.",
        )
    return Finding(
        key,
        Grade.GOOD,
        "The soil you dig makes a berm level all round.",
        limit,
        source,
        "Keep all the soil until the berm stands.",
    )


def _ground_taken(found: EarthResults) -> Iterator[Finding]:
    """Say where the berm does not fit the room beside the rim."""
    width = found.answers.get(bed.ROOM_WIDTH)
    if width is None:
        return
    unit = "m" if found.answers.metric else "ft"
    berm = magnitude(found.earthwork.berm_height, unit) * earthwork.OUTER_SLOPE
    berm += magnitude(found.answers[bed.BERM_TOP], unit)
    taken = magnitude(found.size.garden.rim_width, unit) + berm
    if taken <= magnitude(width, unit) * (1 + 1e-9):
        return
    yield Finding(
        "ground_taken",
        Grade.FIX,
        "With its berm the garden reaches "
        f"{length_words(quantity(taken, unit), found.answers.metric)} up "
        "and down the slope.",
        f"room of {length_words(width, found.answers.metric)}",
        ARITHMETIC,
        f"Leave {length_words(quantity(berm, unit), found.answers.metric)} downhill of the rim "
        "for the "
        "berm, or make the floor narrower.",
    )


def water_findings(found: EarthResults) -> Iterator[Finding]:
    freeboard, metric = found.answers[bed.FREEBOARD], found.answers.metric
    yield overflow.head_finding(found.notch, freeboard, metric)
    if (wide := overflow.wide_finding(found.notch, freeboard, metric)) is not None:
        yield wide
    if found.swale is not None:
        yield overflow.swale_finding(found.swale, metric)
    if not found.notch.lip and found.answers[bed.SOIL_DUG] == "sand":
        yield Finding(
            "berm_sand",
            Grade.FIX,
            "A berm of sand leaks and washes out.",
            "a berm of soil that packs",
            _BERM_SOIL,
            "Bring silt or clay soil for the berm.",
        )
    if found.piped:
        yield overflow.pipe_finding(found.pipe, metric)
