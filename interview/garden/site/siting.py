"""May we dig here: slope, water below, surroundings, and the verdict."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum

from interview.garden.site.setbacks import FIND_PACE
from interview.garden.site.slope import Slope
from interview.quantities.evidence import Brief, Cited, Finding, Grade, Provenance, Source
from interview.quantities.guards import not_negative, reaches, within
from interview.quantities.shown import slope_words
from interview.quantities.units import (
    METRIC,
    US,
    Quantity,
    feet_and_inches,
    magnitude,
    plain_number,
    quantity,
    round_up,
)

SLOPE_GOOD = Cited(8.0, Source("from the slope-to-depth table, as a caution", Provenance.OURS))
SLOPE_STOP = Cited(
    12.0,
    Source(
        "Rain garden design guide, University of Rhode Island and University of Connecticut, "
        "undated, slope table: over 12 %, elsewhere",
        Provenance.PUBLISHED,
    ),
)
SLOPE_STOP_SLIDES = Cited(
    10.0,
    Source(
        "Rain Gardens for the Disconnected Downspout, Portland area handout, undated, publisher "
        "not shown: over 10 % where the ground slides",
        Provenance.SECONDARY,
    ),
)
BELOW_FLOOR_FT = Cited(
    2.0,
    Source("Rain Gardens, Elk County, Pennsylvania, web page: 2 ft to rock", Provenance.PUBLISHED),
)
BELOW_FLOOR_MM = 600.0
BELOW_FLOOR_CAUTIOUS_FT = Cited(
    3.0,
    Source(
        "Stormwater infiltration and setback distances, Minnesota Stormwater Manual, Minnesota "
        "Pollution Control Agency, web page: 3 ft below the bottom",
        Provenance.PUBLISHED,
    ),
)
BELOW_FLOOR_CAUTIOUS_MM = 1000.0
_WATER = Source(
    "Newspaper and slides after North Carolina and Virginia extension, undated: 2 ft, here taken "
    "below the dug bottom",
    Provenance.SECONDARY,
)
_KARST = Source(
    "Stormwater infiltration and setback distances, Minnesota Stormwater Manual, Minnesota "
    "Pollution Control Agency, web page: active karst",
    Provenance.PUBLISHED,
)
_WET_SPOT = Source(
    "Step 1: Sizing and Siting the Rain Garden, University of Wisconsin-Extension, web page",
    Provenance.PUBLISHED,
)
_SLIDES = Source(
    "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. 13",
    Provenance.PUBLISHED,
)
_SOIL = Source("Infiltration: design tips, Water Sensitive SA, web page", Provenance.PUBLISHED)


def slope_limits(slide_prone: bool = False) -> tuple[float, float]:
    """Return the slopes in percent up to which the ground is fine, and past which it stops."""
    return SLOPE_GOOD.value, _slope_stop(slide_prone).value


def _slope_stop(slide_prone: bool) -> Cited[float]:
    return SLOPE_STOP_SLIDES if slide_prone else SLOPE_STOP


def slope_finding(slope: Slope, slide_prone: bool = False) -> Finding:
    """Return whether the ground is too steep: good to 8 %, fix to 12 %, stop past 12 %.

    Where slides are known the stop comes past 10 %.
    """
    stop = _slope_stop(slide_prone)
    percent = magnitude(slope.fall, "percent")
    grade, change, falls = Grade.GOOD, "", slope_words(slope.fall)
    line = f"{falls}: fine, up to {SLOPE_GOOD.value:g} %."
    steep = f"STOP here: slope {falls}. Move, or try another spot."
    if not within(percent, stop.value):
        line = steep
        grade, change = Grade.STOP, "Look for a flatter spot, or ask an engineer."
    elif not within(percent, SLOPE_GOOD.value):
        grade, change = Grade.FIX, "Check the height of the berm, or make the floor narrower."
        line = f"{falls}: steep. Fine up to {SLOPE_GOOD.value:g} %, STOP past {stop.value:g} %."
    return Finding(
        key="slope",
        grade=grade,
        said=f"The ground falls {falls}.",
        limit=f"good up to {SLOPE_GOOD.value:g} %, stop past {stop.value:g} %",
        source=stop.source,
        change=change,
        brief=Brief(line, steep),
    )


def _unknown(key: str, what: str, limit: str, source: Source, find_out: str) -> Finding:
    return Finding(key, Grade.FIX, f"{what} is not known yet.", limit, source, find_out)


class StandingWater(Enum):
    """How often water stands on the spot for more than a day after rain."""

    NEVER = "never"
    SOMETIMES = "a few times a year"
    OFTEN = "often"


def standing_water_finding(how: StandingWater | None) -> Finding:
    """Return what water standing after rain says: a wet spot is a poor spot."""
    key, limit = "standing_water", "no water standing a day after rain"
    if how is None:
        change = "Look the day after the next good rain."
        return _unknown(key, "Whether water stands here", limit, _WET_SPOT, change)
    if how is StandingWater.NEVER:
        return Finding(key, Grade.GOOD, "Water does not stand here after rain.", limit, _WET_SPOT)
    often = how is StandingWater.OFTEN
    return Finding(
        key,
        Grade.STOP if often else Grade.FIX,
        f"Water stands here {how.value}: the soil may not drain.",
        limit,
        _WET_SPOT,
        "Choose a higher spot."
        if often
        else ("Test the soil here with care, or choose a higher spot."),
    )


LEAST_DUG = {US: (3.0, "in"), METRIC: (75.0, "mm")}
"""The least that is dug: the shallowest pond, without mulch or compost."""


class Below(Enum):
    """What may lie too near below the floor of the garden."""

    WATER = "wet-season water or spotted soil"
    BEDROCK = "bedrock"


def below_floor(metric: bool) -> Quantity:
    """Return the length to keep between the dug bottom and water or rock: 2 ft (600 mm)."""
    return quantity(BELOW_FLOOR_MM, "mm") if metric else quantity(BELOW_FLOOR_FT.value, "ft")


def below_floor_finding(
    what: Below,
    depth: Quantity | None,
    dug_depth: Quantity,
    metric: bool = False,
) -> Finding:
    """Return whether water or rock lies far enough below the dug bottom: 2 ft (600 mm).

    ``depth`` and ``dug_depth`` are lengths from the ground surface. Raises ValueError for one
    below zero.
    """
    unit = "mm" if metric else "in"
    need = magnitude(below_floor(metric), unit)
    careful = BELOW_FLOOR_CAUTIOUS_MM if metric else BELOW_FLOOR_CAUTIOUS_FT.value * 12
    key = "water_below" if what is Below.WATER else "bedrock_below"
    limit = f"{need:g} {unit} below the dug bottom, cautious {careful:g} {unit}"
    source = BELOW_FLOOR_FT.source if what is Below.BEDROCK else _WATER
    dug = not_negative(dug_depth, unit, "The dug depth must be zero or more.")
    if depth is None:
        change = "Look in the soil survey, and in the test hole once it may be dug."
        return _unknown(key, f"The depth to {what.value}", limit, source, change)
    between = not_negative(depth, unit, "A depth must be zero or more.") - dug
    if reaches(between, need):
        more = "" if reaches(between, careful) else f"{careful:g} {unit} would be cautious."
        said = f"There is {_room(between, unit)} between the dug bottom and {what.value}."
        line = f"Fine: {_room(between, unit)} under the dig; {need:g} {unit} needed, "
        brief = Brief(f"{line}{careful:g} {unit} cautious.", near=bool(more))
        return Finding(key, Grade.GOOD, said, limit, source, more, brief)
    said = f"{what.value.capitalize()} lies {_room(max(0.0, between), unit)} below the dug bottom."
    least = magnitude(quantity(*LEAST_DUG[METRIC if metric else US]), unit)
    way, other = f"Dig {_more(quantity(need - between, unit), metric)} less deep", "another spot"
    change = f"{way}, or choose {other}."
    if dug - (need - between) < least:
        # So little is left to dig that no pond would be.
        way = f"Choose {other}"
        change = f"{way}."
    found = f"{_room(max(0.0, between), unit)} under the dig, {need:g} {unit} needed."
    brief = Brief(f"TOO NEAR: {found}", f"STOP here: {what.name.lower()} {found}", way)
    return Finding(key, Grade.STOP, said, limit, source, change, brief)


def _room(between: float, unit: str) -> str:
    return f"{plain_number(round(between, 1 if unit == 'in' else 0))} {unit}"


def _more(short: Quantity, metric: bool) -> str:
    if metric:
        return f"{magnitude(round_up(short, 10, 'mm'), 'mm'):.0f} mm"
    return feet_and_inches(round_up(short, 1, "in"))


class SoilTest(Enum):
    """What a laboratory said about ground that may be polluted."""

    CLEAR = "clear"
    ABOVE = "above the limits of your state"
    NOT_TESTED = "not tested"


def contamination_finding(suspected: bool | None, test: SoilTest | None = None) -> Finding:
    """Return what suspected pollution means: stop unless a soil test is clear."""
    key, limit = "contamination", "no water soaked into polluted ground"
    if suspected is None:
        change = "Ask about old fuel tanks, orchards, workshops, and paint from before 1978."
        return _unknown(key, "Whether the ground may be polluted", limit, _SOIL, change)
    if not suspected:
        return Finding(key, Grade.GOOD, "Nothing points to polluted ground.", limit, _SOIL)
    if test is SoilTest.CLEAR:
        return Finding(key, Grade.GOOD, "The ground was tested and is clear.", limit, _SOIL)
    if test is SoilTest.ABOVE:
        said, change = "The soil test is above the limits.", "Choose another spot."
    else:
        said, change = "The ground may be polluted and is not tested.", "Have the soil tested."
    return Finding(key, Grade.STOP, said, limit, _SOIL, f"{change} Do not dig or soak water in.")


def karst_finding(present: bool | None) -> Finding:
    """Return what sinkholes mean: stop and ask a professional."""
    return _present(
        "karst", present, "Sinkholes", "no sinkholes or caves in the rock", _KARST,
        "Ask a geologist or the county before soaking water in.",
    )  # fmt: skip


def slide_finding(present: bool | None) -> Finding:
    """Return what slides or a bluff nearby mean: stop and ask an engineer."""
    return _present(
        "slides", present, "Slides or a bluff", "no slides or bluff near the spot", _SLIDES,
        "Ask a geotechnical engineer: soaked ground can start to move.",
    )  # fmt: skip


def _present(
    key: str, present: bool | None, what: str, limit: str, source: Source, change: str
) -> Finding:
    if present is None:
        return Finding(key, Grade.FIX, f"{what}: not known yet.", limit, source, "Ask the county.")
    if present:
        return Finding(key, Grade.STOP, f"{what} are known here.", limit, source, change)
    return Finding(key, Grade.GOOD, f"{what}: none known here.", limit, source)


def slope_unknown(paced: bool = False) -> Finding:
    """Return the finding for a slope not known: not measured, or ``paced`` by an unknown pace."""
    limit = f"good up to {SLOPE_GOOD.value:g} %, stop past {SLOPE_STOP.value:g} %"
    if paced:
        said = (
            "The length of the slope string is in paces, and the length of the pace is not known "
            "yet."
        )
        return Finding("slope", Grade.FIX, said, limit, SLOPE_STOP.source, FIND_PACE)
    change = "Measure it with a string and a level."
    return _unknown("slope", "The slope of the ground", limit, SLOPE_STOP.source, change)


def verdict(findings: Iterable[Finding]) -> Grade:
    """Return the worst grade of the findings; fix when there are none, as nothing is known."""
    grades = (finding.grade for finding in findings)
    return max(grades, key=lambda grade: grade.trouble, default=Grade.FIX)
