"""The figures of the depth and the size, and the working behind each."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.figure import AREA, DIST, HOURS, PERCENT, SIDE, VOLUME, Figure, Value
from interview.garden.form.choices import FloorShape
from interview.garden.size.basin import RULE_OF_THUMB
from interview.garden.size.results import SizeResults
from interview.garden.size.size_factors import SIZE_FACTOR_TABLE
from interview.garden.soak.depth import CORRECTED_RATE_HOURS, DROP_RATE_HOURS
from interview.quantities.evidence import OURS
from interview.quantities.shown import HIGH, LOW, depth_words, length_words
from interview.quantities.units import quantity, ratio

SHAPE_WORDS = {
    FloorShape.ROUNDED: "straight sides, round ends",
    FloorShape.RECTANGLE: "a rectangle",
    FloorShape.OVAL: "an oval",
    FloorShape.KIDNEY: "a kidney",
    FloorShape.OWN: "an outline of your own",
}


def _soonest(found: SizeResults) -> Value:
    return "not measured" if found.soak.soil.drop_rate is None else found.depth.soonest_empty


def _drop_limit(found: SizeResults) -> Value:
    return "not measured" if found.soak.soil.drop_rate is None else found.depth.drop_limit


def _wide(low: Callable[[SizeResults], float]) -> Callable[[SizeResults], Value]:
    return lambda found: quantity(low(found), "ft**2")


FIGURES: tuple[Figure[SizeResults], ...] = (
    Figure("depth_by_drop", "Depth by the drop in 24 h", _drop_limit, *DIST,
           "the lower drop rate x 24 h", ("lower_drop_rate",), DROP_RATE_HOURS.source, LOW),
    Figure("depth_by_corrected", "Depth by the corrected rate", lambda p: p.depth.corrected_limit,
           *DIST, "corrected rate x 48 h (24 h under the strict rule)", ("corrected_rate",),
           CORRECTED_RATE_HOURS.source, LOW),
    Figure("pond_depth", "Depth of the pond", lambda p: p.depth.depth, *DIST,
           "the least of the limits in force, rounded down to 1/2 in (10 mm)",
           ("depth_by_drop", "depth_by_corrected", "deepest_pond", "drain_rule"), OURS,
           words=depth_words),
    Figure("depth_governed_by", "What decides the depth", lambda p: p.depth.governs.value),
    Figure("empty_soonest", "Time to empty, at the drop rate", _soonest, *HOURS,
           "pond depth / the lower drop rate", ("pond_depth", "lower_drop_rate"), rounding=HIGH),
    Figure("empty_latest", "Time to empty, at the corrected rate", lambda p: p.depth.latest_empty,
           *HOURS, "pond depth / corrected rate", ("pond_depth", "corrected_rate"), rounding=HIGH),
    Figure("rule_of_thumb_area", "Area by rule of thumb", lambda p: p.rule_of_thumb, *AREA,
           "area that drains here x rain / pond depth",
           ("catchment_area", "rain_depth", "pond_depth"), RULE_OF_THUMB),
    Figure("weighted_rule_area", "Rule of thumb by the weighted area",
           lambda p: p.required.rule_of_thumb * p.bed_count, *AREA, "S x P / d",
           ("weighted_area", "rain_depth", "pond_depth"), RULE_OF_THUMB),
    Figure("hand_check_area", "Rule of thumb with the rain on the garden", lambda p: p.hand_check,
           *AREA, "S x P / (d - P), without the sloping sides",
           ("weighted_area", "rain_depth", "pond_depth")),
    Figure("mid_area", "Area at half depth that is needed", lambda p: p.mid_area_needed, *AREA,
           "beds x A(d / 2) of the floor W wide: a (d - P) W^2 + c z (d^2 / 2 - P H) W + k z^2 "
           "(d^3 / 3 - P H^2) - P S1 = 0, H = d + b, S1 = S / beds; a, c, k area, perimeter and "
           "corner number of the shape one wide; never with a floor under 2 ft (600 mm) wide; that "
           "of the floor drawn where the storm decides the size",
           ("weighted_area", "rain_depth", "pond_depth", "side_slope", "freeboard",
            "length_to_width")),
    Figure("bed_count", "Number of beds", lambda p: p.bed_count,
           formula="equal beds, each sized for an even part of what drains here",
           inputs=("beds", "beds_how"), source=OURS),
    Figure("size_governed_by", "What decides the size", lambda p: p.size_governed_by,
           inputs=("room_length", "room_width", "room_area", "floor_length", "floor_width")),
    Figure("needed_floor_length", "Floor length that is needed, before rounding",
           lambda p: p.needed.floor_length, *SIDE, "L = length to width x W, of one bed",
           ("mid_area",), words=length_words),
    Figure("needed_floor_width", "Floor width that is needed, before rounding",
           lambda p: p.needed.floor_width, *SIDE,
           "W of the balance above, 2 ft (600 mm) or more, of one bed", ("mid_area",),
           words=length_words),
    Figure("needed_volume", "Pond volume that is needed", lambda p: p.needed.volume, *VOLUME,
           "V = Af d + Pf z d^2 / 2 + k z^2 d^3 / 3, of one bed", ("mid_area", "pond_depth")),
    Figure("recommended_area", "Recommended area", lambda p: p.recommended, *AREA,
           "area at half depth, two digits, up", ("mid_area",), rounding=HIGH),
    Figure("area_low", "Area, low end of the range", _wide(lambda p: p.area_range.low), *AREA,
           "A - 2 u, u = (dA / dS) x standard error of S", ("weighted_area_error",)),
    Figure("area_high", "Area, high end of the range", _wide(lambda p: p.area_range.high), *AREA,
           "A + 2 u, u = (dA / dS) x standard error of S", ("weighted_area_error",), rounding=HIGH),
    Figure("published_sandy", "Published size factor, sandy soil", lambda p: p.published.sandy,
           *AREA,
           "factor x catchment area; 0.19 for a pond under 6 in (150 mm), 0.15 under 8 in (200 "
           "mm), 0.08 above, 0.03 more than 30 ft (9 m) from the downspout",
           ("catchment_area", "pond_depth", "spout_distance"), SIZE_FACTOR_TABLE),
    Figure("published_silty", "Published size factor, silty soil", lambda p: p.published.silty,
           *AREA,
           "factor x catchment area; 0.34 for a pond under 6 in (150 mm), 0.25 under 8 in (200 "
           "mm), 0.16 above, 0.06 more than 30 ft (9 m) from the downspout",
           ("catchment_area", "pond_depth", "spout_distance"), SIZE_FACTOR_TABLE),
    Figure("published_clayey", "Published size factor, clayey soil", lambda p: p.published.clayey,
           *AREA,
           "factor x catchment area; 0.43 for a pond under 6 in (150 mm), 0.32 under 8 in (200 "
           "mm), 0.20 above, 0.10 more than 30 ft (9 m) from the downspout",
           ("catchment_area", "pond_depth", "spout_distance"), SIZE_FACTOR_TABLE),
    Figure("floor_length_drawn", "Floor length to peg", lambda p: p.garden.floor_length, *SIDE,
           "needed, raised to 1/2 ft (100 mm) until the rain is held; or as the room has it; or as "
           "you chose", ("needed_floor_length",), OURS, words=length_words),
    Figure("floor_width_drawn", "Floor width to peg", lambda p: p.garden.floor_width, *SIDE,
           "needed, raised to 1/2 ft (100 mm) until the rain is held; or as the room has it; or as "
           "you chose", ("needed_floor_width",), OURS, words=length_words),
    Figure("pond_length", "Full pond length", lambda p: p.garden.edge_length, *SIDE,
           "floor + 2 z d", ("floor_length_drawn", "side_slope", "pond_depth"), words=length_words),
    Figure("pond_width", "Full pond width", lambda p: p.garden.edge_width, *SIDE, "floor + 2 z d",
           ("floor_width_drawn", "side_slope", "pond_depth"), words=length_words),
    Figure("rim_length", "Rim length", lambda p: p.garden.rim_length, *SIDE, "floor + 2 z (d + b)",
           ("floor_length_drawn", "freeboard"), words=length_words),
    Figure("rim_width", "Rim width", lambda p: p.garden.rim_width, *SIDE, "floor + 2 z (d + b)",
           ("floor_width_drawn", "freeboard"), words=length_words),
    Figure("floor_shape_drawn", "Shape of the floor", lambda p: SHAPE_WORDS[p.garden.shape],
           inputs=("floor_shape",)),
    Figure("floor_perimeter", "Edge of the floor",
           lambda p: quantity(p.garden.outline.perimeter, "ft"), *SIDE,
           "Pf of the shape: 2 (L + W) of a rectangle; 2 (L - W) + pi W with round ends",
           ("floor_length_drawn", "floor_width_drawn")),
    Figure("floor_area", "Floor area", lambda p: p.garden.floor_area, *AREA,
           "Af of the shape, of one bed: L W of a rectangle; (L - W) W + pi W^2 / 4 with round "
           "ends and of a kidney; pi L W / 4 of an oval",
           ("floor_length_drawn", "floor_width_drawn")),
    Figure("mid_area_drawn", "Area at half depth as drawn", lambda p: p.garden.mid_area, *AREA,
           "Af + Pf z d / 2 + k (z d / 2)^2, of one bed",
           ("floor_length_drawn", "floor_width_drawn", "side_slope", "pond_depth")),
    Figure("rim_area", "Area inside the rim", lambda p: p.garden.rim_area, *AREA,
           "Af + Pf z H + k (z H)^2, H = d + b, of one bed", ("rim_length", "rim_width")),
    Figure("inside_area", "Area whose rain falls into the garden", lambda p: p.inside, *AREA,
           "inside the crest and, uphill, the cut edge, of one bed; inside the rim while the "
           "ground is not measured", ("rim_area", "slope")),
    Figure("own_rain_share", "That area as a part of what drains here",
           lambda p: quantity(100 * ratio(p.inside, p.served), "percent"), *PERCENT,
           "area inside / (S / beds)", ("inside_area", "weighted_area")),
    Figure("pond_volume", "Full pond volume", lambda p: p.garden.volume, *VOLUME,
           "V = Af d + Pf z d^2 / 2 + k z^2 d^3 / 3; k = 4 for square corners, else pi",
           ("floor_length_drawn",)),
    Figure("work_area", "Pond with upright walls that holds as much",
           lambda p: p.garden.volume * p.bed_count / p.garden.depth, *AREA, "V x beds / d",
           ("pond_volume", "pond_depth", "bed_count"), rounding=LOW),
    Figure("rain_held", "Rain it holds", lambda p: p.rain_held, *DIST,
           "V / (S / beds + area inside), V and area of one bed",
           ("pond_volume", "weighted_area", "inside_area"), rounding=LOW),
)  # fmt: skip
