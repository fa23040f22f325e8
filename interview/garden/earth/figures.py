"""The figures of the earth, what is moved and bought, and the working behind each."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.figure import AREA, DIST, SIDE, VOLUME, Figure, Value
from interview.asking.question import Unanswered
from interview.garden.earth.materials import (
    BY_WISH,
    DISCONNECTING,
    PIPED,
    STONE_LAYER,
    STONE_LB_FT3,
    Item,
    stone_uses,
)
from interview.garden.earth.overflow import MANNING_PIPE, WEIR_US
from interview.garden.earth.results import OVERBUILT, EarthResults
from interview.garden.earth.work import DIG_YD3
from interview.garden.form.lie import COMPACTION, HIGHEST_BERM_SOURCE
from interview.quantities.evidence import ARITHMETIC, OURS, PRACTICE, Provenance, Source
from interview.quantities.guards import times
from interview.quantities.shown import HIGH, Rounding, depth_words, length_words
from interview.quantities.units import US, Quantity, quantity

RATIONAL = Source(
    "rational method; 1 acre in/h = 1.00833 ft³/s: GISHydro note, University of Maryland, undated",
    Provenance.PUBLISHED,
)
UPHILL_CREST = Source(
    "Rain Garden Handbook for Western Washington, Washington State University Extension and "
    "Department of Ecology, 2013, p. 37: a level string from the uphill stake, the berm up to it",
    Provenance.PUBLISHED,
)
YARD = ("yd**3", "m**3")
NONE = "none"
HEAPED = Rounding(3)
"""Loose soil, told so finely that the barrows come out of the number that is told."""
BULKED = Source(
    "sand 1.15 and dense clay 1.30, construction estimating text, examples 9-3 and 9-2, title not "
    "shown in the copy; loam 1.25 and clay 1.43, US Army FM 5-434; clay 1.35 to 1.40 "
    "chosen between",
    Provenance.MEMORY,
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


def _of(name: str, get: Callable[[Item], Value | None]) -> Callable[[EarthResults], Value]:
    """Return what ``get`` finds of one thing on the shopping list; none where it is not there."""

    def found(earth: EarthResults) -> Value:
        listed = (*earth.shopping, *earth.by_wish)
        value = next((get(item) for item in listed if item.name == name), None)
        return NONE if value is None else value

    return found


def _stone(use: str) -> Callable[[EarthResults], Value]:
    def found(earth: EarthResults) -> Value:
        return stone_uses(earth.bed_sizes, earth.place.metric).get(use, NONE)

    return found


def _spare(*, thin: bool, bare: bool) -> Callable[[EarthResults], Value]:
    def found(earth: EarthResults) -> Value:
        lie = earth.laid(thin=thin, bare=bare)
        return "no less" if lie is None else times(earth.spare_of(lie), earth.size.bed_count)

    return found


def _heap(
    name: str, formula: str, *inputs: str, source: Source
) -> tuple[Figure[EarthResults], ...]:
    """Return the volume of a thing, its order from a yard, and its bags where it is bagged."""
    key, label = name.replace(" ", "_"), name.capitalize()
    made = [
        Figure(f"{key}_volume", label, _of(name, lambda item: item.amount), *VOLUME, formula,
               inputs, source, HIGH),
        Figure(f"{key}_bought", f"{label} to order loose", _of(name, lambda item: item.buy), *YARD,
               "volume, up to 1/2 yd³ (0.1 m³)", (f"{key}_volume",), PRACTICE, HIGH),
    ]  # fmt: skip
    if name != "berm soil":
        made.append(
            Figure(f"{key}_bags", f"{label} in bags instead", _of(name, lambda item: item.bags),
                   formula="volume / what a bag holds, up: mulch 2 ft³ (50 L), compost 1 ft³ "
                   "(50 L), stone 0.5 ft³ (15 L)", inputs=(f"{key}_volume",), source=PRACTICE)
        )  # fmt: skip
    return tuple(made)


def _pieces(
    name: str, label: str, formula: str, source: Source, *inputs: str
) -> Figure[EarthResults]:
    key = name.replace(" ", "_")
    return Figure(f"{key}_pieces", label, _of(name, lambda item: item.pieces), formula=formula,
                  inputs=inputs or ("spouts_here", "water_by"), source=source)  # fmt: skip


FIGURES: tuple[Figure[EarthResults], ...] = (
    Figure("garden_form", "How it is set into the ground", lambda p: p.lie.form.value,
           inputs=("slope",), source=OURS),
    Figure("downhill_floor_depth", "Floor below the lawn, downhill edge",
           lambda p: _ft(p.lie.floor_below), *DIST,
           "t: the deepest of what the crest uphill, the height of the berm and its soil ask for; "
           "on level lawn d + b", ("floor_by_uphill_crest", "floor_by_berm_height"), OURS,
           words=depth_words),
    Figure("floor_by_uphill_crest", "Depth for the lawn uphill to stand as high as the crest",
           lambda p: _ft(max(0.0, p.lie.below_for_crest)), *DIST,
           "H (1 - z s) - s W, 0 or more, H = d + b, W the floor up the slope",
           ("pond_depth", "freeboard", "side_slope", "slope", "floor_width_drawn"), UPHILL_CREST),
    Figure("floor_by_berm_height", "Depth for a berm of 12 in (300 mm) at the most",
           lambda p: _ft(max(0.0, p.lie.below_for_berm)), *DIST,
           "H + s e - c (1 - 3 s), 0 or more, c = 12 in (300 mm), e = z H + top",
           ("pond_depth", "freeboard", "side_slope", "slope", "berm_top"), HIGHEST_BERM_SOURCE),
    Figure("floor_depth_governed_by", "What decides the depth of the digging",
           lambda p: p.lie.sets.value, inputs=("floor_by_uphill_crest", "floor_by_berm_height")),
    Figure("uphill_floor_depth", "Floor below the lawn, uphill edge",
           lambda p: _ft(p.lie.floor_below + p.lie.floor_rise), *DIST,
           "t + s x floor width up the slope", ("downhill_floor_depth", "slope"), ARITHMETIC,
           words=depth_words),
    Figure("uphill_lawn", "Lawn over the floor where the side uphill comes out",
           lambda p: _ft(p.lie.uphill_cut), *DIST, "(t + s W) / (1 - z s)",
           ("downhill_floor_depth", "slope", "side_slope"), ARITHMETIC, words=depth_words),
    Figure("deepest_dig", "Deepest digging below the lawn", lambda p: _ft(p.lie.deepest_dig), *DIST,
           "floor below the lawn uphill + mulch + compost",
           ("uphill_floor_depth", "mulch_depth", "compost_depth"), ARITHMETIC, HIGH,
           words=depth_words),
    Figure("crest_to_toe", "Berm, from crest to outer foot", lambda p: _ft(p.lie.crest_to_toe),
           *DIST, "(H - t + s e) / (1 - 3 s), e = z H + top, H = d + b; no berm is 0",
           ("downhill_floor_depth", "slope", "berm_top"), ARITHMETIC, words=depth_words),
    Figure("over_all_length", "Length over all, toe to toe along the slope",
           lambda p: _ft(p.lie.footprint_length), *SIDE,
           "the outline of all that is dug or built, by rays square to the floor's edge",
           ("floor_length_drawn", "crest_to_toe", "slope"), ARITHMETIC, words=length_words),
    Figure("over_all_width", "Width over all, from the toe downhill to the cut uphill",
           lambda p: _ft(p.lie.footprint_width), *SIDE,
           "W + e + 3 x crest to toe + z (t + s W) / (1 - z s); with the lawn as the rim W + z t / "
           "(1 + z s) + z (t + s W) / (1 - z s)",
           ("floor_width_drawn", "crest_to_toe", "uphill_lawn"), ARITHMETIC, words=length_words),
    Figure("footprint_area", "Area of all that is dug or built",
           lambda p: quantity(p.lie.footprint_area, "ft**2"), *AREA,
           "the area inside that outline, of one bed", ("over_all_length", "over_all_width"),
           ARITHMETIC, HIGH),
    Figure("soil_cut", "Soil to dig for one bed, as it lies", lambda p: p.cut, *VOLUME,
           "the ground over the dug surface, summed along rays square to the floor's edge: mulch "
           "and compost below the floor, mulch below the sides, but for a rim that is sown",
           ("downhill_floor_depth", "mulch_depth", "compost_depth", "plant_size"), ARITHMETIC),
    Figure("berm_soil", "Soil in the berm of one bed, tamped", lambda p: p.fill, *VOLUME,
           "the built surface over the ground, summed along the same rays: level top, 1 in 3 "
           "outside", ("crest_to_toe", "berm_top"), ARITHMETIC),
    Figure("soil_dug_total", "All the soil to dig, as it lies", lambda p: p.digging.bank, *VOLUME,
           "soil to dig x beds", ("soil_cut", "beds"), ARITHMETIC),
    Figure("soil_spare", "Soil left over, as it lies", lambda p: p.left_over, *VOLUME,
           "(soil to dig - berm / 0.9) x beds, 0 or more", ("soil_dug_total", "berm_soil", "beds"),
           COMPACTION.source),
    Figure("soil_spare_winged", "Soil left over with wings, of one bed", _spare_winged, *VOLUME,
           "the same with the lawn uphill at the full pond and the berm's ends run on up the slope "
           "by b / s; without the soil of those ends", ("soil_spare", "freeboard", "slope"),
           COMPACTION.source),
    Figure("soil_loose", "Dug soil in a heap", lambda p: p.digging.loose, *VOLUME,
           "bank volume x 1.15 for sand, 1.25 for loam, 1.40 for clay",
           ("soil_dug_total", "soil_dug"), BULKED, HEAPED),
    Figure("barrow_loads", "Wheelbarrow loads", lambda p: p.digging.loads, "", "",
           "loose volume / barrow, up", ("soil_loose", "barrow"), ARITHMETIC),
    Figure("hours_quick", "Hours to dig by hand, quick",
           lambda p: quantity(p.digging.hours_quick, "h"), "h", "h",
           "bank volume / 0.5 yd³ (0.38 m³) an hour", ("soil_dug_total",), DIG_YD3.source),
    Figure("hours_slow", "Hours to dig by hand, slow",
           lambda p: quantity(p.digging.hours_slow, "h"), "h", "h",
           "bank volume / 0.25 yd³ (0.19 m³) an hour", ("soil_dug_total",), DIG_YD3.source),
    Figure("catchment_flow", "Peak flow from the catchment", lambda p: p.catchment_flow, "ft**3/s",
           "L/s", "Q = i x S of the heaviest rain", ("peak_area", "peak_intensity"), RATIONAL),
    Figure("peak_flow", "Peak flow over the notch", lambda p: p.notch.flow, "ft**3/s", "L/s",
           "Q = i (S of the heaviest rain / beds + area inside); of beds in a row for all beds "
           "together", ("peak_area", "inside_area", "peak_intensity"), RATIONAL),
    Figure("notch_width", "Width of the overflow notch", lambda p: p.notch.width, *SIDE,
           "L = Q / (Cw H^1.5), Cw 2.6 ft^0.5/s (1.44 m^0.5/s), H the freeboard less 1 in (25 mm), "
           "or the freeboard over a lip in level lawn, 2 in (50 mm) at the most; 1 ft (0.3 m) or "
           "more, a lip 3 ft (0.9 m), raised to 1/2 ft (0.1 m)", ("peak_flow", "freeboard"),
           WEIR_US.source, HIGH, words=length_words),
    Figure("notch_head", "Depth of the peak flow in the notch", lambda p: p.notch.head, *DIST,
           "H = (Q / (Cw L))^(2/3), Cw as for the width", ("peak_flow", "notch_width"),
           WEIR_US.source),
    Figure("roof_flow", "Peak flow from the roofs", lambda p: p.roof_flow, "ft**3/s", "L/s",
           "Q = i x S of the roofs in the heaviest rain; of all where no roof drains here",
           ("peak_area", "peak_intensity"), RATIONAL),
    Figure("pipe_width", "Pipe from the downspout, inner width", _pipe_width, *DIST,
           "the narrowest pipe sold that carries the peak flow at a fall of 1.04 %, where the "
           "ground falls enough to cover it", ("roof_flow", "water_by", "spout_fall"),
           MANNING_PIPE.source, words=depth_words),
    Figure("pipe_flow", "What that pipe carries, just full", _pipe_flow, "ft**3/s", "L/s",
           "(d / 4)^(2/3) sqrt(fall) / n x pi d² / 4, n = 0.015, in meters and seconds",
           ("pipe_width",), MANNING_PIPE.source),
    Figure("berm_bank_soil", "Undisturbed soil that the berms take",
           lambda p: times(p.berm_bank, p.size.bed_count), *VOLUME, "berm / 0.9 x beds",
           ("berm_soil", "beds"), COMPACTION.source),
    Figure("berm_built", "Berms as built, a tenth higher", lambda p: p.berm_built, *VOLUME,
           "1.1 x berm x beds: tamped by hand the soil lies about as it lay, and settles to 0.9",
           ("berm_soil", "beds"), OVERBUILT.source),
    Figure("channel_soil", "Soil from the channel of stone, as it lies", lambda p: p.channel_soil,
           *VOLUME, "the volume of its stone", ("stone_channel",), ARITHMETIC),
    Figure("soil_carried_off", "To carry elsewhere, loose", lambda p: p.carried_off, *VOLUME,
           "(soil left over + channel) x 1.15 for sand, 1.25 for loam, 1.40 for clay",
           ("soil_spare", "channel_soil", "soil_dug"), BULKED, HEAPED),
    Figure("barrows_off", "Wheelbarrow loads of it", lambda p: p.loads_off,
           formula="loose volume / barrow, up", inputs=("soil_carried_off", "barrow")),
    Figure("barrows_in", "Wheelbarrow loads brought in",
           lambda p: p.loads_of("mulch", "compost", "stone", "berm soil"),
           formula="volume / barrow, up, of mulch, of compost, of stone, of soil for the berm",
           inputs=("mulch_volume", "compost_volume", "stone_volume", "berm_soil_volume", "barrow")),
    Figure("soil_spare_bare", "Left over without compost", _spare(thin=False, bare=True), *VOLUME,
           "the same with no room dug for compost", ("soil_spare", "compost_depth"),
           COMPACTION.source),
    Figure("soil_spare_thin", "Left over with 2 in (50 mm) of mulch", _spare(thin=True, bare=False),
           *VOLUME, "the same with room dug for 2 in (50 mm) of mulch",
           ("soil_spare", "mulch_depth"), COMPACTION.source),
    Figure("soil_spare_thin_bare", "Left over with both", _spare(thin=True, bare=True), *VOLUME,
           "the same with 2 in (50 mm) of mulch and no compost",
           ("soil_spare", "mulch_depth", "compost_depth"), COMPACTION.source),
    Figure("bank_elsewhere", "Length of a low bank that takes it all", lambda p: p.bank_elsewhere,
           *SIDE,
           "0.9 x (soil left over + channel) / (h (12 in (300 mm) + 3 h)), h = 6 in (150 mm)",
           ("soil_spare", "channel_soil"), OURS, words=length_words),
    Figure("sod_lifted", "Sod to lift", lambda p: p.sod_lifted, *AREA,
           "area of all that is dug or built x beds", ("footprint_area", "beds"), ARITHMETIC, HIGH),
    Figure("sod_laid", "Sod to lay again", lambda p: p.sod_laid, *AREA,
           "(area of all that is dug or built - area inside the crest and the cut edge, where sod "
           "is laid back on the berm, + area inside - area under mulch, of a lean garden that is "
           "not sown) x beds",
           ("footprint_area", "inside_area", "mulched_area", "berm_outside", "how_large",
            "plant_size", "beds"), ARITHMETIC),
    Figure("mulched_area", "Area under mulch", lambda p: p.mulched, *AREA,
           "area inside the crest and the cut edge, of one bed; the full pond of a lean garden, or "
           "where seed is sown on the rim", ("inside_area", "how_large", "plant_size"), OURS),
    *_heap("mulch", "area under mulch x mulch depth x beds", "mulched_area", "mulch_depth", "beds",
           source=ARITHMETIC),
    *_heap("compost", "floor area x compost depth x beds", "floor_area", "compost_depth", "beds",
           source=ARITHMETIC),
    Figure("stone_inlet", "Stone where the water comes in", _stone("inlet"), *VOLUME,
           "3 x 2 ft (0.9 x 0.6 m) x 6 in (150 mm) x beds", ("beds",), STONE_LAYER[US].source,
           HIGH),
    Figure("stone_apron", "Stone below the notch", _stone("apron"), *VOLUME,
           "notch width x (top + 3 x crest to toe + 1 ft (0.3 m)) x 6 in (150 mm) x beds; a lip in "
           "the lawn has none", ("notch_width", "crest_to_toe", "berm_top", "beds"),
           STONE_LAYER[US].source, HIGH),
    Figure("stone_channel", "Stone of the channel from the downspout", _stone("channel"), *VOLUME,
           "way from the downspout x 18 in (450 mm) x 6 in (150 mm) x downspouts, at least one, "
           "for all the beds together; also where a pipe is wanted and cannot be",
           ("spout_distance", "water_by", "spouts_here"), STONE_LAYER[US].source, HIGH),
    *_heap("stone", "inlet + apron + channel", "stone_inlet", "stone_apron", "stone_channel",
           source=PRACTICE),
    Figure("stone_weight", "Weight of the stone, about", _of("stone", lambda item: item.weighs),
           "lb", "kg", "stone x its loose weight, from its source", ("stone_volume",),
           STONE_LB_FT3.source, HIGH),
    *_heap("berm soil",
           "soil that the berms take x 1.40, loose; none where the soil dug makes them",
           "berm_bank_soil", "soil_dug", source=BULKED),
    Figure("spouts_here", "Downspouts to lead here", lambda p: p.spouts_here,
           formula="sum over the gutters of the downspouts that come here",
           inputs=("outlets_here",)),
    _pieces("elbow", "Elbows under the downspouts", "1 a downspout, but for a pipe", DISCONNECTING),
    _pieces("strap", "Straps above the cut", "1 a downspout", DISCONNECTING),
    _pieces("splash stone", "Splash stones", "1 a downspout, but for a pipe", DISCONNECTING),
    _pieces("pipe", "Pieces of pipe", "way from the downspout / 10 ft (3 m), up", PIPED,
            "spout_distance", "pipe_width"),
    _pieces("adapter", "Adapters from downspout to pipe", "1 a downspout, for a pipe", PIPED),
    _pieces("bend", "Bends of the pipe", "1 a downspout, for a pipe", PIPED),
    _pieces("wye", "Wyes that join pipes", "1 for each downspout after the first, for a pipe",
            PIPED),
    _pieces("guard", "Guards at the outlet", "1 for a pipe", PIPED),
    _pieces("diverter", "Winter diverters, by wish", "1 a downspout, by wish", BY_WISH),
    _pieces("cap", "Caps on old drains, by wish", "1 a downspout, by wish", DISCONNECTING),
)  # fmt: skip
