"""The table of every figure of a plan, and the working behind each."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from interview.asking.model import Unanswered
from interview.garden.earth.costs import costs, plant_count
from interview.garden.earth.earthwork import COMPACTION_SOURCE
from interview.garden.earth.materials import HOURS_YD3
from interview.garden.earth.overflow import MANNING_SMOOTH, WEIR_US
from interview.garden.figure import Figure, Found, Value, find
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting.count import SPACING_SOURCE
from interview.garden.site import questions as site
from interview.garden.size.basin import RULE_OF_THUMB
from interview.garden.size.depth import CORRECTED_RATE_HOURS, DROP_RATE_HOURS
from interview.garden.size.size_factors import SIZE_FACTOR_TABLE
from interview.garden.soak.hole import INVERSE_AUGER_HOLE
from interview.garden.storms.hyetographs import StormShape
from interview.garden.survey.results import PEAK_SOURCE
from interview.quantities.evidence import ARITHMETIC, OURS, PRACTICE, Source, Standing
from interview.quantities.shown import HIGH, LOW, SLOPE, Rounding, depth_words, length_words
from interview.quantities.units import quantity, unit_name


def _share_held(shape: StormShape | None, rain: float) -> Callable[[Plan], Value]:
    """Return the percentage caught of a storm of so many times the rain to hold."""

    def get(plan: Plan) -> Value:
        depth = plan.answers[start.RAIN_DEPTH] * rain
        return quantity(100 * plan.garden_storm(depth, shape).share_caught, "percent")

    return get


def _drop_rate(plan: Plan) -> Value:
    rate = plan.soil.drop_rate
    return "not measured" if rate is None else rate


def _pipe_width(plan: Plan) -> Value:
    if not plan.piped:
        return "no pipe"
    width = plan.pipe_size.width
    return "wider than is sold" if width is None else width


def _pipe_flow(plan: Plan) -> Value:
    return plan.pipe_size.smooth if plan.piped else "no pipe"


def _cost(plan: Plan) -> Value:
    """Return the sum of everything that has a price, or say that none was given."""
    found = costs(plan)
    return found.total if found.lines else "no prices given"


def _soonest(plan: Plan) -> Value:
    return "not measured" if plan.soil.drop_rate is None else plan.depth.soonest_empty


def _drop_limit(plan: Plan) -> Value:
    return "not measured" if plan.soil.drop_rate is None else plan.depth.drop_limit


def _rate_error(plan: Plan) -> Value:
    error = plan.soil.standard_error
    return "not known" if error is None else error


def _bought(name: str) -> Callable[[Plan], Value]:
    """Return how much of one thing on the shopping list is needed, before it is rounded up."""

    def get(plan: Plan) -> Value:
        return next((item.amount for item in plan.shopping if item.name == name), "none")

    return get


def _wide(low: Callable[[Plan], float]) -> Callable[[Plan], Value]:
    return lambda plan: quantity(low(plan), "ft**2")


SOAK = Source(
    "custom of soak tests: the fall in the hole since the mark by the time", Standing.PRACTICE
)
LEVEL_POOL = Source(
    "level-pool balance, solved exactly within each part of the storm", Standing.ARITHMETIC
)
RUNOFF = Source(
    "District of Columbia Municipal Regulations, title 21, section 520: 0.95 impervious, 0.25 "
    "compacted cover, gravel counted as such by choice; TR-55, USDA-NRCS, 1986, Table 2-2a, for "
    "lawn and curve numbers",
    Standing.SECONDARY,
)
RATIONAL = Source(
    "rational method; 1 acre in/h = 1.00833 ft³/s: GISHydro note, University of Maryland, undated",
    Standing.PUBLISHED,
)
BULKED = Source(
    "sand 1.15 and dense clay 1.30, construction estimating text, examples 9-3 and 9-2, title not "
    "shown in the copy; loam 1.25 and clay 1.43, US Army FM 5-434; clay 1.35 to 1.40 "
    "chosen between",
    Standing.MEMORY,
)
DIST, RATE, AREA, VOLUME = ("in", "mm"), ("in/h", "mm/h"), ("ft**2", "m**2"), ("ft**3", "m**3")
SIDE = ("ft", "m")

FIGURES: tuple[Figure, ...] = (
    Figure(
        "earliest_dig_day",
        "First day to dig",
        lambda p: p.dig_gate.earliest or _none(p),
        formula="the day after the last full business day of the wait",
        inputs=("lines_asked_on", "lines_business_days", "lines_holidays"),
        source_of=lambda p: site.wait_source(p.answers),
    ),
    Figure(
        "marks_stale_after",
        "Last day the marks are good",
        lambda p: p.dig_gate.stale_after or _none(p),
        formula="the days of the marks, counted after the day of the request or of the marking",
        inputs=("lines_asked_on", "lines_finished_on", "lines_valid_days", "lines_valid_kind"),
        source_of=lambda p: site.marks_source(p.answers),
    ),
    Figure(
        "slope",
        "Slope of the ground",
        lambda p: p.slope.fall,
        "percent",
        "percent",
        "100 x average drop / run",
        ("slope_run", "slope_drop", "slope_drop_turned"),
        rounding=SLOPE,
    ),
    Figure(
        "drop_rate",
        "Drop rate in the hole",
        _drop_rate,
        *RATE,
        "average over the readings of drop since the fill / time since the fill",
        ("readings", "water_at_mark", "test_start"),
        SOAK,
        LOW,
    ),
    Figure(
        "corrected_rate",
        "Corrected rate, through the bottom alone",
        lambda p: p.soil.corrected,
        *RATE,
        "f = (L / t) ln((h0 + L) / (h1 + L)), L = bottom area / perimeter; the lower of all "
        "intervals and the last three",
        ("readings", "hole_shape", "hole_width"),
        INVERSE_AUGER_HOLE,
        LOW,
    ),
    Figure(
        "corrected_rate_error",
        "Standard error of the corrected rate",
        _rate_error,
        *RATE,
        "reading and width errors carried into f by its derivatives",
        ("readings", "ruler_mark"),
        ARITHMETIC,
    ),
    Figure(
        "depth_by_drop",
        "Depth by the drop in 24 h",
        _drop_limit,
        *DIST,
        "drop rate x 24 h",
        ("drop_rate",),
        DROP_RATE_HOURS.source,
        LOW,
    ),
    Figure(
        "depth_by_corrected",
        "Depth by the corrected rate",
        lambda p: p.depth.corrected_limit,
        *DIST,
        "corrected rate x 48 h (24 h under the strict rule)",
        ("corrected_rate",),
        CORRECTED_RATE_HOURS.source,
        LOW,
    ),
    Figure(
        "pond_depth",
        "Depth of the pond",
        lambda p: p.depth.depth,
        *DIST,
        "the least of the limits in force, rounded down to 1/2 in (10 mm)",
        ("depth_by_drop", "depth_by_corrected", "deepest_pond", "drain_rule"),
        OURS,
        words=depth_words,
    ),
    Figure("depth_governed_by", "What decides the depth", lambda p: p.depth.governs.value),
    Figure(
        "empty_soonest",
        "Time to empty, at the drop rate",
        _soonest,
        "h",
        "h",
        "pond depth / drop rate",
        ("pond_depth", "drop_rate"),
        ARITHMETIC,
        HIGH,
    ),
    Figure(
        "empty_latest",
        "Time to empty, at the corrected rate",
        lambda p: p.depth.latest_empty,
        "h",
        "h",
        "pond depth / corrected rate",
        ("pond_depth", "corrected_rate"),
        ARITHMETIC,
        HIGH,
    ),
    Figure(
        "catchment_area",
        "Area that drains here",
        lambda p: p.catchment.drains_here,
        *AREA,
        "sum of plan area x share",
        ("surfaces",),
        ARITHMETIC,
    ),
    Figure(
        "weighted_area",
        "Area weighted by runoff",
        lambda p: p.catchment.weighted,
        *AREA,
        "S = sum of plan area x share x part that runs off",
        ("surfaces", "runoff_by"),
        RUNOFF,
    ),
    Figure(
        "weighted_area_error",
        "Standard error of that area",
        lambda p: p.catchment.standard_error,
        *AREA,
        "first-order propagation of tape, pace, share",
        ("surfaces",),
        ARITHMETIC,
    ),
    Figure(
        "widest_error",
        "What widens the range most",
        lambda p: p.catchment.driver or "nothing",
        formula="largest share of the variance",
    ),
    Figure(
        "weighted_area_low",
        "Area weighted by runoff, low end",
        lambda p: p.catchment.low,
        *AREA,
        "two standard uncertainties below",
        ("weighted_area", "weighted_area_error"),
        ARITHMETIC,
    ),
    Figure(
        "weighted_area_high",
        "Area weighted by runoff, high end",
        lambda p: p.catchment.high,
        *AREA,
        "two standard uncertainties above",
        ("weighted_area", "weighted_area_error"),
        ARITHMETIC,
    ),
    Figure(
        "catchment_volume",
        "Water that comes in the rain to hold",
        lambda p: p.catchment.brings(p.answers[start.RAIN_DEPTH]),
        "gal",
        "L",
        "S x P, without the rain on the garden itself",
        ("weighted_area", "rain_depth"),
        ARITHMETIC,
    ),
    Figure(
        "rule_of_thumb_area",
        "Area by rule of thumb",
        lambda p: p.rule_of_thumb,
        *AREA,
        "area that drains here x rain / pond depth",
        ("catchment_area", "rain_depth", "pond_depth"),
        RULE_OF_THUMB,
    ),
    Figure(
        "weighted_rule_area",
        "Rule of thumb by the weighted area",
        lambda p: p.required.rule_of_thumb * p.bed_count,
        *AREA,
        "S x P / d",
        ("weighted_area", "rain_depth", "pond_depth"),
        RULE_OF_THUMB,
    ),
    Figure(
        "hand_check_area",
        "Rule of thumb with the rain on the garden",
        lambda p: p.hand_check,
        *AREA,
        "S x P / (d - P), without the sloping sides",
        ("weighted_area", "rain_depth", "pond_depth"),
        ARITHMETIC,
    ),
    Figure(
        "mid_area",
        "Area at half depth that is needed",
        lambda p: p.mid_area_needed,
        *AREA,
        "beds x A of the root of a A - P g (k + 1) / sqrt(k) sqrt(A) - (P (S1 + g^2) - "
        "z^2 d^3 / 3) = 0, with g = z (d + 2 b), a = d - P, S1 = S / beds; never with a "
        "floor under 2 ft (600 mm) wide",
        ("weighted_area", "rain_depth", "pond_depth", "side_slope", "freeboard", "length_to_width"),
        ARITHMETIC,
    ),
    Figure(
        "bed_count",
        "Number of beds",
        lambda p: p.bed_count,
        formula="equal beds, each sized for an even part of what drains here",
        inputs=("beds", "beds_how"),
        source=OURS,
    ),
    Figure(
        "size_governed_by",
        "What decides the size",
        lambda p: p.size_governed_by,
        inputs=("room_length", "room_width", "room_area", "floor_length", "floor_width"),
    ),
    Figure(
        "needed_floor_length",
        "Floor length that is needed, before rounding",
        lambda p: p.required.basin.floor_length,
        *SIDE,
        "L = sqrt(k A) - z d, 2 ft (600 mm) or more, A that of one bed",
        ("mid_area",),
        ARITHMETIC,
        words=length_words,
    ),
    Figure(
        "needed_floor_width",
        "Floor width that is needed, before rounding",
        lambda p: p.required.basin.floor_width,
        *SIDE,
        "W = sqrt(A / k) - z d, 2 ft (600 mm) or more, A that of one bed",
        ("mid_area",),
        ARITHMETIC,
        words=length_words,
    ),
    Figure(
        "needed_volume",
        "Pond volume that is needed",
        lambda p: p.required.basin.volume,
        *VOLUME,
        "V = A d + z^2 d^3 / 3, A that of one bed",
        ("mid_area", "pond_depth"),
        ARITHMETIC,
    ),
    Figure(
        "recommended_area",
        "Recommended area",
        lambda p: p.recommended,
        *AREA,
        "area at half depth, two digits, up",
        ("mid_area",),
        ARITHMETIC,
        HIGH,
    ),
    Figure(
        "area_low",
        "Area, low end of the range",
        _wide(lambda p: p.area_range.low),
        *AREA,
        "A - 2 u, u = (dA / dS) x standard error of S",
        ("weighted_area_error",),
        ARITHMETIC,
    ),
    Figure(
        "area_high",
        "Area, high end of the range",
        _wide(lambda p: p.area_range.high),
        *AREA,
        "A + 2 u, u = (dA / dS) x standard error of S",
        ("weighted_area_error",),
        ARITHMETIC,
        HIGH,
    ),
    Figure(
        "published_sandy",
        "Published size factor, sandy soil",
        lambda p: p.published.sandy,
        *AREA,
        "factor x catchment area; 0.19 for a pond under 6 in (150 mm), 0.15 under 8 in (200 mm), "
        "0.08 above, 0.03 more than 30 ft (9 m) from the downspout",
        ("catchment_area", "pond_depth", "spout_distance"),
        SIZE_FACTOR_TABLE,
    ),
    Figure(
        "published_silty",
        "Published size factor, silty soil",
        lambda p: p.published.silty,
        *AREA,
        "factor x catchment area; 0.34 for a pond under 6 in (150 mm), 0.25 under 8 in (200 mm), "
        "0.16 above, 0.06 more than 30 ft (9 m) from the downspout",
        ("catchment_area", "pond_depth", "spout_distance"),
        SIZE_FACTOR_TABLE,
    ),
    Figure(
        "published_clayey",
        "Published size factor, clayey soil",
        lambda p: p.published.clayey,
        *AREA,
        "factor x catchment area; 0.43 for a pond under 6 in (150 mm), 0.32 under 8 in (200 mm), "
        "0.20 above, 0.10 more than 30 ft (9 m) from the downspout",
        ("catchment_area", "pond_depth", "spout_distance"),
        SIZE_FACTOR_TABLE,
    ),
    Figure(
        "floor_length_drawn",
        "Floor length to peg",
        lambda p: p.garden.floor_length,
        *SIDE,
        "needed, raised to 1/2 ft (100 mm) until the rain is held; or as the room has it;"
        " or as you chose",
        ("needed_floor_length",),
        OURS,
        words=length_words,
    ),
    Figure(
        "floor_width_drawn",
        "Floor width to peg",
        lambda p: p.garden.floor_width,
        *SIDE,
        "needed, raised to 1/2 ft (100 mm) until the rain is held; or as the room has it;"
        " or as you chose",
        ("needed_floor_width",),
        OURS,
        words=length_words,
    ),
    Figure(
        "pond_length",
        "Full pond length",
        lambda p: p.garden.edge_length,
        *SIDE,
        "floor + 2 z d",
        ("floor_length_drawn", "side_slope", "pond_depth"),
        ARITHMETIC,
        words=length_words,
    ),
    Figure(
        "pond_width",
        "Full pond width",
        lambda p: p.garden.edge_width,
        *SIDE,
        "floor + 2 z d",
        ("floor_width_drawn", "side_slope", "pond_depth"),
        ARITHMETIC,
        words=length_words,
    ),
    Figure(
        "rim_length",
        "Rim length",
        lambda p: p.garden.rim_length,
        *SIDE,
        "floor + 2 z (d + b)",
        ("floor_length_drawn", "freeboard"),
        ARITHMETIC,
        words=length_words,
    ),
    Figure(
        "rim_width",
        "Rim width",
        lambda p: p.garden.rim_width,
        *SIDE,
        "floor + 2 z (d + b)",
        ("floor_width_drawn", "freeboard"),
        ARITHMETIC,
        words=length_words,
    ),
    Figure(
        "floor_area",
        "Floor area",
        lambda p: p.garden.floor_area,
        *AREA,
        "Lf x Wf, of one bed",
        ("floor_length_drawn", "floor_width_drawn"),
        ARITHMETIC,
    ),
    Figure(
        "mid_area_drawn",
        "Area at half depth as drawn",
        lambda p: p.garden.mid_area,
        *AREA,
        "(Lf + z d) (Wf + z d), of one bed",
        ("floor_length_drawn", "floor_width_drawn", "side_slope", "pond_depth"),
        ARITHMETIC,
    ),
    Figure(
        "rim_area",
        "Area inside the rim",
        lambda p: p.garden.rim_area,
        *AREA,
        "rim length x rim width, of one bed",
        ("rim_length", "rim_width"),
        ARITHMETIC,
    ),
    Figure(
        "pond_volume",
        "Full pond volume",
        lambda p: p.garden.volume,
        *VOLUME,
        "d (Lf Wf + z d (Lf + Wf) + 4/3 z^2 d^2)",
        ("floor_length_drawn",),
        ARITHMETIC,
    ),
    Figure(
        "rain_held",
        "Rain it holds",
        lambda p: p.rain_held,
        *DIST,
        "V / (S / beds + area inside the rim), V and rim of one bed",
        ("pond_volume", "weighted_area", "rim_area"),
        ARITHMETIC,
        LOW,
    ),
    Figure(
        "gain",
        "Rise of the pond for a depth of rain",
        lambda p: p.pool.gain,
        "",
        "",
        "kappa = (S1 + area inside the rim) / area at half depth; S1 = S / beds, but all "
        "of S for the first of beds in a row",
        ("weighted_area", "rim_area", "mid_area_drawn"),
        ARITHMETIC,
    ),
    Figure(
        "full_depth",
        "Full pond as an average depth",
        lambda p: p.pool.full_depth,
        *DIST,
        "V / area at half depth",
        ("pond_volume", "mid_area_drawn"),
        ARITHMETIC,
    ),
    Figure(
        "storm_peak",
        "Deepest pond in the storm held",
        lambda p: p.held_storm.peak,
        *DIST,
        "greatest h of dh/dt = kappa i(t) - f from empty, h no more than the full pond as"
        " a mean depth and no less than 0; i(t) the storm shape over its hours",
        ("gain", "corrected_rate", "storm_hours"),
        LEVEL_POOL,
    ),
    Figure(
        "storm_hours_on_floor",
        "Hours of water on the floor in the storm held",
        lambda p: p.held_storm.hours_on_floor,
        "h",
        "h",
        "dh/dt = kappa i(t) - f, until empty",
        ("gain", "corrected_rate"),
        LEVEL_POOL,
    ),
    Figure(
        "storm_spill",
        "Spilled in the storm held",
        lambda p: p.all_held_storm.spill_volume,
        *VOLUME,
        "sum of (kappa i(t) - f) dt while the pond is full, x area at half depth, of "
        "every bed water leaves the garden from",
        ("gain", "full_depth"),
        LEVEL_POOL,
    ),
    Figure(
        "side_hours",
        "Hours under water half way up the side",
        lambda p: p.zone_hours.side,
        "h",
        "h",
        "time h is above d / 2",
        ("storm_peak",),
        LEVEL_POOL,
    ),
    Figure(
        "rim_hours",
        "Hours under water at the edge of the full pond",
        lambda p: p.zone_hours.rim,
        "h",
        "h",
        "time h is above d",
        ("storm_peak",),
        LEVEL_POOL,
    ),
    Figure(
        "again_peak",
        "Deepest pond, the same storm again",
        lambda p: p.storm_again.peak,
        *DIST,
        "the storm held, and again 24 h after it began",
        ("storm_peak",),
        LEVEL_POOL,
    ),
    Figure(
        "again_hours_on_floor",
        "Hours of water on the floor in both storms",
        lambda p: p.storm_again.hours_on_floor,
        "h",
        "h",
        "the storm held, and again 24 h after it began",
        ("storm_hours_on_floor",),
        LEVEL_POOL,
    ),
    Figure(
        "again_caught",
        "Caught of both storms together",
        lambda p: quantity(100 * p.all_storm_again.share_caught, "percent"),
        "percent",
        "percent",
        "1 - spill / inflow",
        ("rain_depth",),
        LEVEL_POOL,
        LOW,
    ),
    Figure(
        "caught_at_one_and_a_half",
        "Caught of a storm half as large again",
        _share_held(None, 1.5),
        "percent",
        "percent",
        "1 - spill / inflow",
        ("rain_depth",),
        LEVEL_POOL,
        LOW,
    ),
    Figure(
        "caught_at_twice",
        "Caught of a storm twice as large",
        _share_held(None, 2),
        "percent",
        "percent",
        "1 - spill / inflow",
        ("rain_depth",),
        LEVEL_POOL,
        LOW,
    ),
    Figure(
        "caught_uniform_at_one_and_a_half",
        "The same, with even rain",
        _share_held(StormShape.UNIFORM, 1.5),
        "percent",
        "percent",
        "1 - spill / inflow",
        ("rain_depth",),
        LEVEL_POOL,
        LOW,
    ),
    Figure(
        "record_share_held",
        "Share of the record's runoff held",
        lambda p: quantity(100 * p.real_years.share_held, "percent"),
        "percent",
        "percent",
        "1 - spill / inflow over all the days: each day's rain in the shape of the storm "
        "over its first storm hours, kappa by that day's own depth of rain, water left at"
        " night carried over",
        ("rain_record",),
        LEVEL_POOL,
        LOW,
    ),
    Figure(
        "record_overflow_days",
        "Days of overflow in the record",
        lambda p: len(p.real_years.overflow_days),
        formula="days on which any water leaves the garden",
        inputs=("rain_record",),
    ),
    Figure(
        "record_overflow_days_a_year",
        "Days of overflow a year",
        lambda p: p.real_years.overflow_days_a_year,
        formula="days of overflow x 365.25 / days in the record",
        inputs=("record_overflow_days",),
    ),
    Figure(
        "record_missing_days",
        "Days missing from the record",
        lambda p: p.record.missing_days,
        formula="days between the first and the last of which nothing is said",
        inputs=("rain_record",),
    ),
    Figure(
        "record_longest_wet",
        "Longest time water stood, in the record",
        lambda p: p.real_years.longest_wet_spell.hours,
        "h",
        "h",
        "longest unbroken time with water on the floor of the bed the water reaches first",
        inputs=("rain_record",),
    ),
    Figure(
        "downhill_floor_depth",
        "Floor below the lawn, downhill edge",
        lambda p: p.earth.downhill_depth,
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
        lambda p: p.earth.uphill_depth,
        *DIST,
        "u = t + s x floor width",
        ("downhill_floor_depth", "slope"),
        ARITHMETIC,
        words=depth_words,
    ),
    Figure(
        "cut_volume",
        "Soil cut by one section, as it lies",
        lambda p: p.earth.cut,
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
        lambda p: p.earth.berm_height,
        *DIST,
        "h = pond depth + freeboard - t",
        ("downhill_floor_depth",),
        ARITHMETIC,
        words=depth_words,
    ),
    Figure(
        "berm_volume",
        "Soil in the berm downhill with its ends, tamped",
        lambda p: p.earth.fill,
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
        lambda p: p.level_berm.spare * p.bed_count,
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
        "peak_area",
        "Area weighted by runoff in the hardest rain",
        lambda p: p.peak_area,
        *AREA,
        "sum of plan area x share x part: 0.95 hard, 0.85 gravel and compacted, 0.35 lawn, or "
        "that of the rain to hold where it is more",
        ("surfaces",),
        PEAK_SOURCE,
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
        "Q = i (S of the hardest rain / beds + area inside the rim); of beds in a row for"
        " all beds together",
        ("peak_area", "rim_area", "peak_intensity"),
        RATIONAL,
    ),
    Figure(
        "notch_width",
        "Width of the overflow notch",
        lambda p: p.notch.width,
        *SIDE,
        "L = Q / (Cw H^1.5), Cw 2.6 ft^0.5/s (1.44 m^0.5/s), H 2 in (50 mm); 1 ft (0.3 m)"
        " or more, raised to 1/2 ft (0.1 m)",
        ("peak_flow",),
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
        "the narrowest smooth pipe sold that carries the peak flow at a fall of 1 in 100",
        ("catchment_flow", "water_by"),
        MANNING_SMOOTH.source,
        words=depth_words,
    ),
    Figure(
        "pipe_flow",
        "What that pipe carries, just full",
        _pipe_flow,
        "ft**3/s",
        "L/s",
        "(d / 4)^(2/3) sqrt(fall) / n x pi d² / 4, n = 0.011, in meters and seconds",
        ("pipe_width",),
        MANNING_SMOOTH.source,
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
    Figure(
        "cost_total",
        "Cost of what has a price",
        _cost,
        formula="sum of price x what is bought",
        inputs=("prices",),
        rounding=Rounding(places=2),
    ),
    Figure(
        "plants_total",
        "Plants to buy",
        plant_count,
        "",
        "",
        "zone area / (0.866 x spacing²), up, x beds",
        ("floor_area", "rim_area", "beds"),
        SPACING_SOURCE,
    ),
)

BY_KEY = {figure.key: figure for figure in FIGURES}


def _none(plan: Plan) -> Value:
    question = site.wait_gap(plan.answers)
    raise Unanswered(question, question.key)


def found(plan: Plan) -> Iterator[Found]:
    """Yield every figure of ``plan`` in order."""
    for figure in FIGURES:
        yield find(figure, plan)


def working(key: str, plan: Plan) -> list[str]:
    """Return how one figure was got: formula, inputs, unrounded value, source."""
    one = find(BY_KEY[key], plan)
    figure = one.figure
    lines = [f"{figure.label}: {one.shown(plan.metric) or 'not known yet'}"]
    if figure.formula:
        lines.append(f"  how: {figure.formula}")
    for name in figure.inputs:
        if name in BY_KEY:
            inner = find(BY_KEY[name], plan)
            lines.append(f"  with {inner.figure.label.lower()}: {inner.shown(plan.metric) or '?'}")
        else:
            lines.append(f"  with your answer: {name}")
    number = one.number(plan.metric)
    if isinstance(number, float):
        lines.append(f"  unrounded: {number:.6g} {unit_name(figure.unit(plan.metric))}".rstrip())
    lines.append(f"  source: {one.source}")
    return lines
