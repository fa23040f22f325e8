"""The figures of the earth, and the working behind each."""

from __future__ import annotations

from interview.asking.figure import AREA, DIST, SIDE, VOLUME, Figure, Value
from interview.asking.question import Unanswered
from interview.garden.earth import materials_figures
from interview.garden.earth.materials_figures import BULKED, HEAPED
from interview.garden.earth.overflow import MANNING_PIPE, WEIR_US
from interview.garden.earth.results import EarthResults
from interview.garden.earth.work import DIG_YD3
from interview.garden.form.lie import COMPACTION, HIGHEST_BERM_SOURCE
from interview.quantities.evidence import ARITHMETIC, OURS, Provenance, Source
from interview.quantities.shown import HIGH, depth_words, length_words
from interview.quantities.units import Quantity, quantity

RATIONAL = Source(
    "rational method; 1 acre in/h = 1.00833 ft³/s: GISHydro note, University of Maryland, undated",
    Provenance.PUBLISHED,
)


UPHILL_CREST = Source(
    "Rain Garden Handbook for Western Washington, Washington State University Extension and "
    "Department of Ecology, 2013, p. 37: a level string from the uphill stake, the berm up to it",
    Provenance.PUBLISHED,
)


def _ft(feet: float) -> Quantity:
    return quantity(feet, "ft")


def _spare_winged(found: EarthResults) -> Value:
    if found.winged is None:
        return "no less"
    return found.spare_of(found.winged)


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


FIGURES: tuple[Figure[EarthResults], ...] = (
    Figure(
        "garden_form",
        "How it is set into the ground",
        lambda p: p.lie.form.value,
        inputs=("slope",),
        source=OURS,
    ),
    Figure(
        "downhill_floor_depth",
        "Floor below the lawn, downhill edge",
        lambda p: _ft(p.lie.floor_below),
        *DIST,
        "t: the deepest of what the crest uphill, the height of the berm and its soil ask for; "
        "on level lawn d + b",
        ("floor_by_uphill_crest", "floor_by_berm_height"),
        OURS,
        words=depth_words,
    ),
    Figure(
        "floor_by_uphill_crest",
        "Depth for the lawn uphill to stand as high as the crest",
        lambda p: _ft(max(0.0, p.lie.below_for_crest)),
        *DIST,
        "H (1 - z s) - s W, 0 or more, H = d + b, W the floor up the slope",
        ("pond_depth", "freeboard", "side_slope", "slope", "floor_width_drawn"),
        UPHILL_CREST,
    ),
    Figure(
        "floor_by_berm_height",
        "Depth for a berm of 12 in (300 mm) at the most",
        lambda p: _ft(max(0.0, p.lie.below_for_berm)),
        *DIST,
        "H + s e - c (1 - 3 s), 0 or more, c = 12 in (300 mm), e = z H + top",
        ("pond_depth", "freeboard", "side_slope", "slope", "berm_top"),
        HIGHEST_BERM_SOURCE,
    ),
    Figure(
        "floor_depth_governed_by",
        "What decides the depth of the digging",
        lambda p: p.lie.sets.value,
        inputs=("floor_by_uphill_crest", "floor_by_berm_height"),
    ),
    Figure(
        "uphill_floor_depth",
        "Floor below the lawn, uphill edge",
        lambda p: _ft(p.lie.floor_below + p.lie.floor_rise),
        *DIST,
        "t + s x floor width up the slope",
        ("downhill_floor_depth", "slope"),
        ARITHMETIC,
        words=depth_words,
    ),
    Figure(
        "uphill_lawn",
        "Lawn over the floor where the side uphill comes out",
        lambda p: _ft(p.lie.uphill_cut),
        *DIST,
        "(t + s W) / (1 - z s)",
        ("downhill_floor_depth", "slope", "side_slope"),
        ARITHMETIC,
        words=depth_words,
    ),
    Figure(
        "deepest_dig",
        "Deepest digging below the lawn",
        lambda p: _ft(p.lie.deepest_dig),
        *DIST,
        "floor below the lawn uphill + mulch + compost",
        ("uphill_floor_depth", "mulch_depth", "compost_depth"),
        ARITHMETIC,
        HIGH,
        words=depth_words,
    ),
    Figure(
        "crest_to_toe",
        "Berm, from crest to outer foot",
        lambda p: _ft(p.lie.crest_to_toe),
        *DIST,
        "(H - t + s e) / (1 - 3 s), e = z H + top, H = d + b; no berm is 0",
        ("downhill_floor_depth", "slope", "berm_top"),
        ARITHMETIC,
        words=depth_words,
    ),
    Figure(
        "over_all_length",
        "Length over all, toe to toe along the slope",
        lambda p: _ft(p.lie.footprint_length),
        *SIDE,
        "the outline of all that is dug or built, by rays square to the floor's edge",
        ("floor_length_drawn", "crest_to_toe", "slope"),
        ARITHMETIC,
        words=length_words,
    ),
    Figure(
        "over_all_width",
        "Width over all, from the toe downhill to the cut uphill",
        lambda p: _ft(p.lie.footprint_width),
        *SIDE,
        "W + e + 3 x crest to toe + z (t + s W) / (1 - z s); with the lawn as the rim "
        "W + z t / (1 + z s) + z (t + s W) / (1 - z s)",
        ("floor_width_drawn", "crest_to_toe", "uphill_lawn"),
        ARITHMETIC,
        words=length_words,
    ),
    Figure(
        "footprint_area",
        "Area of all that is dug or built",
        lambda p: quantity(p.lie.footprint_area, "ft**2"),
        *AREA,
        "the area inside that outline, of one bed",
        ("over_all_length", "over_all_width"),
        ARITHMETIC,
        HIGH,
    ),
    Figure(
        "soil_cut",
        "Soil to dig for one bed, as it lies",
        lambda p: p.cut,
        *VOLUME,
        "the ground over the dug surface, summed along rays square to the floor's edge: mulch and "
        "compost below the floor, mulch below the sides, but for a rim that is sown",
        ("downhill_floor_depth", "mulch_depth", "compost_depth", "plant_size"),
        ARITHMETIC,
    ),
    Figure(
        "berm_soil",
        "Soil in the berm of one bed, tamped",
        lambda p: p.fill,
        *VOLUME,
        "the built surface over the ground, summed along the same rays: level top, 1 in 3 outside",
        ("crest_to_toe", "berm_top"),
        ARITHMETIC,
    ),
    Figure(
        "soil_dug_total",
        "All the soil to dig, as it lies",
        lambda p: p.digging.bank,
        *VOLUME,
        "soil to dig x beds",
        ("soil_cut", "beds"),
        ARITHMETIC,
    ),
    Figure(
        "soil_spare",
        "Soil left over, as it lies",
        lambda p: p.left_over,
        *VOLUME,
        "(soil to dig - berm / 0.9) x beds, 0 or more",
        ("soil_dug_total", "berm_soil", "beds"),
        COMPACTION.source,
    ),
    Figure(
        "soil_spare_winged",
        "Soil left over with wings, of one bed",
        _spare_winged,
        *VOLUME,
        "the same with the lawn uphill at the full pond and the berm's ends run on up the slope "
        "by b / s; without the soil of those ends",
        ("soil_spare", "freeboard", "slope"),
        COMPACTION.source,
    ),
    Figure(
        "soil_loose",
        "Dug soil in a heap",
        lambda p: p.digging.loose,
        *VOLUME,
        "bank volume x 1.15 for sand, 1.25 for loam, 1.40 for clay",
        ("soil_dug_total", "soil_dug"),
        BULKED,
        HEAPED,
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
        DIG_YD3.source,
    ),
    Figure(
        "hours_slow",
        "Hours to dig by hand, slow",
        lambda p: quantity(p.digging.hours_slow, "h"),
        "h",
        "h",
        "bank volume / 0.25 yd³ (0.19 m³) an hour",
        ("soil_dug_total",),
        DIG_YD3.source,
    ),
    Figure(
        "catchment_flow",
        "Peak flow from the catchment",
        lambda p: p.catchment_flow,
        "ft**3/s",
        "L/s",
        "Q = i x S of the heaviest rain",
        ("peak_area", "peak_intensity"),
        RATIONAL,
    ),
    Figure(
        "peak_flow",
        "Peak flow over the notch",
        lambda p: p.notch.flow,
        "ft**3/s",
        "L/s",
        "Q = i (S of the heaviest rain / beds + area inside); of beds in a row for"
        " all beds together",
        ("peak_area", "inside_area", "peak_intensity"),
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
    *materials_figures.FIGURES,
)
