"""The figures of the earth, and the working behind each."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.figure import DIST, SIDE, VOLUME, Figure, Value
from interview.asking.question import Unanswered
from interview.garden.earth.earthwork import COMPACTION_SOURCE
from interview.garden.earth.materials import HOURS_YD3
from interview.garden.earth.overflow import MANNING_PIPE, WEIR_US
from interview.garden.earth.results import EarthResults
from interview.quantities.evidence import ARITHMETIC, OURS, PRACTICE, Provenance, Source
from interview.quantities.shown import HIGH, depth_words, length_words
from interview.quantities.units import quantity

RATIONAL = Source(
    "rational method; 1 acre in/h = 1.00833 ft³/s: GISHydro note, University of Maryland, undated",
    Provenance.PUBLISHED,
)

BULKED = Source(
    "sand 1.15 and dense clay 1.30, construction estimating text, examples 9-3 and 9-2, title not "
    "shown in the copy; loam 1.25 and clay 1.43, US Army FM 5-434; clay 1.35 to 1.40 "
    "chosen between",
    Provenance.MEMORY,
)


def _no_pipe(found: EarthResults) -> str:
    """Why there is no pipe to size; nothing where there is one, or its fall is not known yet."""
    if not found.piped:
        return "no pipe"
    try:
        return "" if found.pipe.enough else "no pipe: too little fall"
    except Unanswered:
        return ""


def _pipe_width(found: EarthResults) -> Value:
    if why := _no_pipe(found):
        return why
    width = found.pipe_size.width
    return "wider than is sold" if width is None else width


def _pipe_flow(found: EarthResults) -> Value:
    return _no_pipe(found) or found.pipe_size.smooth


def _bought(name: str) -> Callable[[EarthResults], Value]:
    """Return how much of one thing on the shopping list is needed, before it is rounded up."""

    def get(found: EarthResults) -> Value:
        return next((item.amount for item in found.shopping if item.name == name), "none")

    return get


FIGURES: tuple[Figure[EarthResults], ...] = (
    Figure(
        "downhill_floor_depth",
        "Floor below the lawn, downhill edge",
        lambda p: p.earthwork.downhill_depth,
        *DIST,
        "t: the deepest of the three below, but no deeper than the most",
        ("slope", "floor_width_drawn", "freeboard"),
        COMPACTION_SOURCE,
        words=depth_words,
    ),
    Figure(
        "floor_by_berm",
        "Depth for the soil of the berm downhill",
        lambda p: p.floor_level.by_berm,
        *DIST,
        "the t at which 0.9 x cut by one section = berm downhill with its ends",
        ("slope", "floor_width_drawn", "freeboard"),
        COMPACTION_SOURCE,
    ),
    Figure(
        "floor_by_level_berm",
        "Depth for the soil of a berm level all round",
        lambda p: p.floor_level.by_level_berm,
        *DIST,
        "the t at which 0.9 x (cut over the whole ground + soil dug for the mulch) = berm level "
        "all round; 0 where ground level gives enough",
        ("slope", "mulch_dug"),
        COMPACTION_SOURCE,
    ),
    Figure(
        "floor_by_uphill",
        "Depth for the lawn uphill to hold the full pond",
        lambda p: p.floor_level.by_uphill,
        *DIST,
        "d (1 - z s) - s Wf, 0 or more",
        ("pond_depth", "side_slope", "slope", "floor_width_drawn"),
        ARITHMETIC,
    ),
    Figure(
        "floor_deepest",
        "Most depth, for the overflow to lie above the lawn",
        lambda p: p.floor_level.most,
        *DIST,
        "d + s z (d + b)",
        ("pond_depth", "side_slope", "slope", "freeboard"),
        ARITHMETIC,
    ),
    Figure(
        "floor_depth_governed_by",
        "What decides the depth of the digging",
        lambda p: p.floor_level.sets.value,
        inputs=("floor_by_berm", "floor_by_level_berm", "floor_by_uphill", "floor_deepest"),
    ),
    Figure(
        "uphill_floor_depth",
        "Floor below the lawn, uphill edge",
        lambda p: p.earthwork.uphill_depth,
        *DIST,
        "u = t + s x floor width",
        ("downhill_floor_depth", "slope"),
        ARITHMETIC,
        words=depth_words,
    ),
    Figure(
        "cut_volume",
        "Soil cut by one section, as it lies",
        lambda p: p.earthwork.cut,
        *VOLUME,
        "Lf (Wf m + z u^2 / (2 (1 - z s))) + Wf z m^2, m = (t + u) / 2",
        ("uphill_floor_depth",),
        ARITHMETIC,
    ),
    Figure(
        "cut_whole",
        "Soil cut over the whole ground, as it lies",
        lambda p: p.level_berm.cut,
        *VOLUME,
        "the hole summed over the falling ground: floor and four faces 1 in z to the ground, "
        "square corners",
        ("uphill_floor_depth", "downhill_floor_depth"),
        ARITHMETIC,
    ),
    Figure(
        "berm_height",
        "Berm above the lawn",
        lambda p: p.earthwork.berm_height,
        *DIST,
        "h = pond depth + freeboard - t",
        ("downhill_floor_depth",),
        ARITHMETIC,
        words=depth_words,
    ),
    Figure(
        "berm_volume",
        "Soil in the berm downhill with its ends, tamped",
        lambda p: p.earthwork.fill,
        *VOLUME,
        "section x (Lf + 2 z (d + b) + the least of Wf and h / s); section = (h e + s "
        "e^2) / 2 + T h + s (x^2 - e^2) / 2 + 3 (h + s x)^2 / (2 (1 - 3 s)), e = z h, x ="
        " e + T, T the top",
        ("berm_height", "berm_top"),
        OURS,
    ),
    Figure(
        "soil_to_keep",
        "Soil of a berm level all round, tamped",
        lambda p: p.soil_to_keep,
        *VOLUME,
        "summed over the falling ground on a grid, uphill too: faces 1 in z inside and 1 "
        "in 3 outside, top T wide, round corners",
        ("slope", "berm_top"),
        OURS,
        HIGH,
    ),
    Figure(
        "mulch_dug",
        "Soil dug for the mulch",
        lambda p: p.mulch_soil,
        *VOLUME,
        "floor area x mulch depth",
        ("floor_area", "mulch_depth"),
        ARITHMETIC,
    ),
    Figure(
        "soil_dug_total",
        "All the soil to dig, as it lies",
        lambda p: p.digging.bank,
        *VOLUME,
        "(cut over the whole ground + soil dug for the mulch) x beds",
        ("cut_whole", "mulch_dug", "beds"),
        ARITHMETIC,
    ),
    Figure(
        "soil_spare",
        "Soil left over, as it lies",
        lambda p: p.level_berm.spare * p.size.bed_count,
        *VOLUME,
        "all the soil to dig - berm level all round / 0.9 x beds, 0 or more",
        ("soil_dug_total", "soil_to_keep", "beds"),
        COMPACTION_SOURCE,
    ),
    Figure(
        "soil_loose",
        "Dug soil in a heap",
        lambda p: p.digging.loose,
        *VOLUME,
        "bank volume x 1.15 for sand, 1.25 for loam, 1.40 for clay",
        ("soil_dug_total", "soil_dug"),
        BULKED,
    ),
    Figure(
        "barrow_loads",
        "Wheelbarrow loads",
        lambda p: p.digging.loads,
        "",
        "",
        "loose volume / barrow, up",
        ("soil_loose", "barrow"),
        ARITHMETIC,
    ),
    Figure(
        "hours_quick",
        "Hours to dig by hand, quick",
        lambda p: quantity(p.digging.hours_quick, "h"),
        "h",
        "h",
        "bank volume / 0.5 yd³ (0.38 m³) an hour",
        ("soil_dug_total",),
        HOURS_YD3.source,
    ),
    Figure(
        "hours_slow",
        "Hours to dig by hand, slow",
        lambda p: quantity(p.digging.hours_slow, "h"),
        "h",
        "h",
        "bank volume / 0.25 yd³ (0.19 m³) an hour",
        ("soil_dug_total",),
        HOURS_YD3.source,
    ),
    Figure(
        "catchment_flow",
        "Peak flow from the catchment",
        lambda p: p.catchment_flow,
        "ft**3/s",
        "L/s",
        "Q = i x S of the hardest rain",
        ("peak_area", "peak_intensity"),
        RATIONAL,
    ),
    Figure(
        "peak_flow",
        "Peak flow over the notch",
        lambda p: p.notch.flow,
        "ft**3/s",
        "L/s",
        "Q = i (S of the hardest rain / beds + area inside the crest and the cut edge); of beds in "
        "a row for all beds together",
        ("peak_area", "rim_area", "slope", "peak_intensity"),
        RATIONAL,
    ),
    Figure(
        "notch_width",
        "Width of the overflow notch",
        lambda p: p.notch.width,
        *SIDE,
        "L = Q / (Cw H^1.5), Cw 2.6 ft^0.5/s (1.44 m^0.5/s), H the freeboard less 1 in (25 mm), "
        "or the freeboard over a lip in level lawn, 2 in (50 mm) at the most; 1 ft (0.3 m) or "
        "more, a lip 3 ft (0.9 m), raised to 1/2 ft (0.1 m)",
        ("peak_flow", "freeboard"),
        WEIR_US.source,
        HIGH,
        words=length_words,
    ),
    Figure(
        "notch_head",
        "Depth of the peak flow in the notch",
        lambda p: p.notch.head,
        *DIST,
        "H = (Q / (Cw L))^(2/3), Cw as for the width",
        ("peak_flow", "notch_width"),
        WEIR_US.source,
    ),
    Figure(
        "pipe_width",
        "Pipe from the downspout, inner width",
        _pipe_width,
        *DIST,
        "the narrowest pipe sold that carries the peak flow at a fall of 1.04 %, "
        "where the ground falls enough to cover it",
        ("catchment_flow", "water_by", "spout_fall"),
        MANNING_PIPE.source,
        words=depth_words,
    ),
    Figure(
        "pipe_flow",
        "What that pipe carries, just full",
        _pipe_flow,
        "ft**3/s",
        "L/s",
        "(d / 4)^(2/3) sqrt(fall) / n x pi d² / 4, n = 0.015, in meters and seconds",
        ("pipe_width",),
        MANNING_PIPE.source,
    ),
    Figure(
        "mulch_volume",
        "Mulch",
        _bought("mulch"),
        *VOLUME,
        "area inside the rim x mulch depth x beds",
        ("rim_area", "mulch_depth", "beds"),
        ARITHMETIC,
    ),
    Figure(
        "compost_volume",
        "Compost",
        _bought("compost"),
        *VOLUME,
        "floor area x compost depth x beds",
        ("floor_area", "compost_depth", "beds"),
        ARITHMETIC,
    ),
    Figure(
        "stone_volume",
        "Stone",
        _bought("stone"),
        *VOLUME,
        "(3 x 2 ft (0.9 x 0.6 m) + 4 ft (1.2 m) x notch width) x 4 in (100 mm) x beds",
        ("notch_width", "beds"),
        PRACTICE,
    ),
    Figure(
        "edging_length",
        "Edging",
        _bought("edging"),
        *SIDE,
        "2 (rim length + rim width) x beds",
        ("rim_length", "rim_width", "beds"),
        ARITHMETIC,
    ),
)
