"""Each question that is not always asked: asked where its condition holds, and only there."""

from __future__ import annotations

from interview.asking import route
from interview.asking.question import always
from interview.garden.planting.plant_list import builtin_places
from interview.garden.site.nearby_questions import _NEAR
from interview.garden.stages import every_question

ASKED = {"lines_requested": "asked"}
CLEARED = {**ASKED, "lines_answered": "yes"}
REPORT = {"rate_from": "report"}
PACES = {"measured_by": "paces"}
ROOF = {"surfaces.1.surface_kind": "roof"}
SHARED = {**ROOF, "surfaces.1.gutter_outlets": "2"}
PLACED = {**ROOF, "surfaces.1.pieces": "rectangle 9 ft by 8 ft at 0 ft, 2 ft"}
SECOND = {"surfaces.1.surface_name": "low", "surfaces.2.surface_name": "high"}
SLOPING = {**ROOF, "surfaces.1.surface_basis": "slope"}
ONE_SPOT = {"spots.1.spot_name": "a"}
HIGH = {**SHARED, "surfaces.1.share_known": "high_point"}
PERCENT = {**SHARED, "surfaces.1.share_known": "percent"}
RECTANGULAR = {"holes.1.hole_shape": "rectangular"}
TAPERED = {"holes.1.hole_shape": "tapered"}
RENEWED = {
    **ASKED,
    "lines_asked_on": "2026-05-28",
    "holes.1.hole_dug_on": "2026-05-27",
    "holes.1.hole_depth": "20 in",
}
STEEP = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "18 in"}
SOAKED = {"holes.1.soaked_already": "yes"}
READ = {
    "holes.1.water_at_mark": "8 in",
    "holes.1.test_start": "2026-05-27 10:00",
    "holes.1.readings": "+1h left 7 in",
}
RECORD = {"has_rain_record": "yes"}
SEEN = {"storm_seen": "yes"}
LEVELS_READ = {"levels_read": "yes"}


def near(key: str) -> dict[str, str]:
    return {"spots.1.near_spot": key}


def rule(key: str) -> dict[str, str]:
    return {"local_rules": key}


HOLES = (
    "hole_name", "hole_dug_on", "hole_depth", "floor_depth", "hole_smell", "hole_seeps",
    "hole_shape", "hole_width", "ribbon", "hard_digging", "soaked_already", "water_at_mark",
    "test_start", "read_as", "ruler_mark", "readings", "hole_left",
)  # fmt: skip
FILLS = ("first_fill_start", "first_fill_empty", "second_fill_start", "second_fill_empty")
RAIN = ("rain_record", "rain_record_unit", "rain_date_column", "rain_depth_column")
STORM = ("storm_rain", "storm_empty_after", "storm_overflow", "storm_plants")
LEVELS = (
    "levels_from",
    "floor_cover",
    "floor_readings",
    "notch_reading",
    "rim_reading",
    "inlet_reading",
)

# Key of the question, answers that make it asked, answers that do not.
CONDITIONS: tuple[tuple[str, dict[str, str], dict[str, str]], ...] = (
    ("state", {"country": "us"}, {"country": "canada"}),
    ("state", {}, {"country": "uk"}),
    *((key, RECORD, {"has_rain_record": "no"}) for key in RAIN),
    *(
        (key, ASKED, {"lines_requested": "not_yet"})
        for key in (
            "lines_asked_on", "lines_ticket", "lines_business_days", "lines_holidays",
            "lines_answered", "private_lines",
        )
    ),
    *(
        (key, CLEARED, {**ASKED, "lines_answered": "no"})
        for key in ("lines_finished_on", "lines_valid_days", "lines_valid_kind", "mark_distance")
    ),
    ("test_to_learn", {"spots.1.stands_after_rain": "often"}, {"spots.1.stands_after_rain": "few"}),
    ("test_to_learn", STEEP, {**STEEP, "spots.1.unstable_ground": "slides"}),
    ("test_to_learn", STEEP, {**STEEP, "holes.1.hole_depth": "20 in"}),
    *((f"local_{key}", rule(key), rule("none")) for key, _, _ in _NEAR),
    *((f"{key}_distance", near(key), near("none")) for key, _, _ in _NEAR),
    ("septic_uphill", near("septic"), near("well")),
    ("wall_height", near("retaining_wall"), near("well")),
    ("drip_line", near("tree"), near("well")),
    ("soil_lab", {"spots.1.contamination": "fuel"}, {"spots.1.contamination": "none"}),
    ("soil_lab", {"spots.1.contamination": "fuel"}, {}),
    ("hole_spot", {**ONE_SPOT, "spots.2.spot_name": "b", "holes.1.hole_depth": "18 in"}, ONE_SPOT),
    ("hole_spot", {**ONE_SPOT, "spots.2.spot_name": "b", "holes.1.hole_depth": "18 in"},
     {**ONE_SPOT, "spots.2.spot_name": "b"}),
    ("chosen_spot", {**ONE_SPOT, "spots.2.spot_name": "b"}, ONE_SPOT),
    *((key, REPORT, {"rate_from": "test"}) for key in ("known_rate", "known_rate_by")),
    *((key, {}, REPORT) for key in HOLES),
    *((key, {}, SOAKED) for key in FILLS),
    *((key, {"holes.1.soaked_already": "no"}, REPORT) for key in FILLS),
    ("hole_cleared", RENEWED, {**RENEWED, "lines_asked_on": "2026-05-26"}),
    ("hole_cleared", RENEWED, {**RENEWED, **REPORT}),
    ("hole_length", RECTANGULAR, {"holes.1.hole_shape": "round"}),
    ("hole_length", RECTANGULAR, {**RECTANGULAR, **REPORT}),
    *((key, TAPERED, RECTANGULAR) for key in ("hole_top_width", "hole_top_height")),
    ("hole_counts", READ, {}),
    ("hole_counts", READ, {**READ, **REPORT}),
    ("hole_set_aside_why", {**READ, "holes.1.hole_counts": "no"}, READ),
    (
        "hole_set_aside_why",
        {**READ, "holes.1.hole_counts": "no"},
        {**READ, "holes.1.hole_counts": "yes"},
    ),
    ("another_hole", {"holes.1.hole_depth": "20 in"}, {}),
    *(
        (key, PACES, {"measured_by": "tape"})
        for key in ("walker_name", "pace_line", "pace_counts", "another_walker")
    ),
    ("pace_line", PACES, {}),
    ("gutter_outlets", ROOF, {"surfaces.1.surface_kind": "paved"}),
    ("share_known", SHARED, {**ROOF, "surfaces.1.gutter_outlets": "1"}),
    ("share_known", SHARED, ROOF),
    ("share_known", SHARED, {**SHARED, "surfaces.1.outlets_here": "2"}),
    ("falls_on", SECOND, ROOF),
    ("outlets_here", SHARED, ROOF),
    ("roof_hazard", ROOF, {"surfaces.1.surface_kind": "paved"}),
    ("roof_hazard", {}, {"surfaces.1.surface_kind": "lawn"}),
    ("spout_percent", ROOF, {"surfaces.1.surface_kind": "paved"}),
    ("roof_valley", ROOF, {"surfaces.1.surface_kind": "paved"}),
    ("roof_sides", ROOF, {"surfaces.1.surface_kind": "paved"}),
    ("lawn_cover", {"surfaces.1.surface_kind": "lawn"}, ROOF),
    ("gutter_this_side", HIGH, SHARED),
    ("gutter_whole", HIGH, PERCENT),
    ("share_percent", PERCENT, SHARED),
    ("share_percent", {"surfaces.1.surface_kind": "lawn"}, ROOF),
    ("surface_north", PLACED, {**ROOF, "surfaces.1.pieces": "rectangle 9 ft by 8 ft"}),
    ("surface_north", PLACED, ROOF),
    ("surface_basis", ROOF, {"surfaces.1.surface_kind": "paved"}),
    ("surface_pitch", SLOPING, {**ROOF, "surfaces.1.surface_basis": "level"}),
    ("surface_pitch", SLOPING, ROOF),
    ("soil_group", {"runoff_by": "curve_number"}, {}),
    ("soil_group", {"surfaces.1.surface_kind": "lawn"}, {"surfaces.1.surface_kind": "gravel"}),
    ("room_area", {"room_length": "20 ft"}, {"room_length": "20 ft", "room_width": "9 ft"}),
    ("beds_how", {"beds": "2"}, {"beds": "1"}),
    ("engineer_says_deeper", {"deepest_pond": "13 in"}, {"deepest_pond": "12 in"}),
    ("engineer_says_deeper", {"deepest_pond": "310 mm"}, {"deepest_pond": "300 mm"}),
    ("engineer_says_deeper", {"deepest_pond": "18 in"}, {}),
    ("kidney_bend", {"floor_shape": "kidney"}, {"floor_shape": "oval"}),
    ("kidney_bend", {"floor_shape": "kidney"}, {}),
    ("floor_outline", {"floor_shape": "own"}, {"floor_shape": "rectangle"}),
    ("floor_outline", {"floor_shape": "own"}, {}),
    ("spout_fall", {"water_by": "pipe"}, {"water_by": "lawn"}),
    ("spout_fall", {"water_by": "channel"}, {"water_by": "lawn"}),
    ("compost_depth", {"amend": "yes"}, {"amend": "no"}),
    ("compost_depth", {}, {"amend": "no"}),
    ("wetland_list_region", {"country": "us", "state": "pa"}, {"country": "us", "state": "vt"}),
    ("wetland_list_region", {"plant_region": "northeast"}, {"plant_region": "outside"}),
    ("wetland_list_region", {"country": "us", "state": "pa"}, {"country": "uk"}),
    *((key, LEVELS_READ, {"levels_read": "no"}) for key in LEVELS),
    *(
        (f"{key}_{bed}", {**LEVELS_READ, "beds": str(bed)}, {**LEVELS_READ, "beds": str(bed - 1)})
        for key in LEVELS[1:]
        for bed in (2, 3, 4)
    ),
    *((f"{key}_2", {**LEVELS_READ, "beds": "2"}, {"beds": "2"}) for key in LEVELS[1:]),
    *((key, SEEN, {"storm_seen": "no"}) for key in STORM),
)  # fmt: skip


def asked(key, answers) -> bool:
    return any(step.question.key == key for step in route.steps(answers))


def test_it_is_asked_where_its_condition_holds_and_only_there(subtests, given):
    for key, holds, fails in CONDITIONS:
        with subtests.test(key=key, holds=holds, fails=fails):
            assert asked(key, given(holds))
            assert not asked(key, given(fails))


def test_no_condition_was_left_out():
    conditional = {question.key for question in every_question() if question.asks is not always}
    assert conditional == {key for key, _, _ in CONDITIONS}


def test_what_is_not_known_yet_counts_as_not_chosen(given):
    for key, holds, _ in CONDITIONS:
        cautious = (
            "another_hole", "wetland_list_region", "compost_depth", "room_area", "state",
            "roof_hazard", *FILLS,
        )  # fmt: skip
        if len(holds) == 1 and key not in cautious:
            (address,) = holds
            unsure = given().with_text(address, "don't know yet")
            assert not asked(key, unsure), key


def test_every_state_is_known_by_both_lists(given):
    codes = {place.code for place in builtin_places()}
    from interview.garden.place.questions import NOT_US, STATE

    assert {key.upper() for key, _ in STATE.kind.options if key != NOT_US} == codes
