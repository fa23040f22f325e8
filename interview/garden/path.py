"""The short way through the interview about a garden: its pages in the order of asking.

Three bands: what must be asked has a box; what only some gardens need opens by an answer; what is
nearly always the same is a row whose usual value Enter takes whole.
"""

from __future__ import annotations

from interview.asking.answers import Answers
from interview.asking.conditions import chosen
from interview.asking.lands import US
from interview.asking.path import PathPage as Page
from interview.asking.question import Status, Unanswered
from interview.garden.afterwards.levels_questions import BED_LEVELS, BedLevels
from interview.garden.place import questions as place
from interview.garden.site import lines_questions as buried
from interview.garden.site import spot_questions as ground
from interview.garden.site.gate import locate_state
from interview.garden.site.nearby_questions import DISTANCES, LOCAL
from interview.garden.size import questions as bed
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import timing_questions as timing
from interview.garden.survey import share_questions as sharing
from interview.garden.survey import surface_questions as surfacing
from interview.garden.survey.piece_lines import PieceLine
from interview.quantities.units import magnitude
from interview.reading import Refused

TODAY, LINES_DAY, TEST_DAY, PLAN_DAY = "today", "lines day", "test day", "plan day"
"""The visits: nothing is dug on the first two, the test hole on the third."""

LARGE_PIECE_FT2 = 1500.0
"""One downspout seldom drains more; above it the house is asked for as a check. Common practice,
no source."""


def _is_chosen(answers: Answers) -> bool:
    return ground.chosen_spot(answers).scope == answers.scope


def _abroad(answers: Answers) -> bool:
    """Tell whether the garden may be elsewhere, or its country or units are not known."""
    if answers.standing(place.STATE) is Status.OPEN and answers.country == US:
        return False
    units = answers.standing(place.UNITS) is Status.ANSWERED
    return place.us_state(answers) is None or answers.get(place.COUNTRY) is None or not units


def _no_rectangle(answers: Answers) -> bool:
    """Tell whether the room was left without its two sides."""
    sides = [answers.standing(one) for one in (bed.ROOM_LENGTH, bed.ROOM_WIDTH)]
    return Status.OPEN not in sides and Status.UNKNOWN in sides


def _is_large(line: PieceLine) -> bool:
    from interview.garden.survey.written_pieces import piece_of  # it knows every shape

    return magnitude(piece_of(line).area, "ft**2") > LARGE_PIECE_FT2


def _large_piece(answers: Answers) -> bool:
    for one in answers.items(surfacing.SURFACES.key):
        if one.get(sharing.SURFACE_KIND) != "roof":
            continue
        try:
            pieces = one.get(surfacing.PIECES)
            if pieces and any(_is_large(each) for each in pieces):
                return True
        except (Refused, Unanswered, ValueError):
            continue
    return False


def _waiting(answers: Answers) -> bool:
    """Tell whether the marks were asked for and not every owner has answered."""
    asked = locate_state(answers).asked
    return asked is not None and answers.get(buried.LINES_ANSWERED) is not True


def _was_read(answers: Answers) -> bool:
    return answers.text(timing.READINGS) is not None


def _rate_is_in(answers: Answers) -> bool:
    """Tell whether a size can be offered: a rate is known or was put off, or a floor is kept.

    Before that no floor can be pegged, and a dig day that was skipped would not be asked for again.
    """
    known = answers.get(digging.RATE_FROM) == "report" and answers.text(digging.KNOWN_RATE)
    floor = answers.text(bed.FLOOR_LENGTH) or answers.text(bed.FLOOR_WIDTH)
    holes = answers.items(digging.HOLE.key)
    return bool(known or floor) or any(_was_read(one) for one in holes)


def _spot(key: str, title: str, *asked: str) -> Page:
    return Page(key, "site", title, asked, visit=TODAY, group="spots")


def _local(key: str) -> Page:
    return Page(f"local_{key}", "site", LOCAL[key].label, (f"local_{key}",), visit=TODAY)


_BESIDE = {
    "septic": ("septic_uphill",),
    "retaining_wall": ("wall_height",),
    "tree": ("drip_line",),
}
"""What is read at the same moment as a distance."""

_START = (
    Page("name", "start", "Name", ("garden_name",), visit=TODAY),
    Page("place", "start", "Place", ("state",), visit=TODAY),
    Page("abroad", "start", "Country and units", ("country", "units"), visit=TODAY,
         asks=_abroad),
    Page(
        "water_from", "start", "What brings the water",
        ("surface_kind", "falls_on", "gutter_outlets"), visit=TODAY, group="surfaces",
    ),
    Page("spouts_here", "start", "Downspouts that come here", ("outlets_here",),
         visit=TODAY, group="surfaces"),
    Page("roof_size", "start", "How big it is", ("pieces",), visit=TODAY, group="surfaces"),
    Page("soil_feel", "start", "Soil by feel", ("soil_dug",), visit=TODAY),
    Page("rough_size", "start", "A first size", usual=("rain_depth",), more=("has_rain_record",),
         visit=TODAY, tells="rough_size"),
    Page("rain_record", "start", "Rainfall file", ("rain_record", "rain_record_unit"),
         more=("rain_date_column", "rain_depth_column"), visit=TODAY),
    Page("another_surface", "start", "Another surface", ("another_surface",),
         visit=TODAY, group="surfaces"),
)  # fmt: skip

SITING = (
    _spot("after_rain", "After rain", "stands_after_rain"),
    _spot("slope", "Slope", "slope_run", "slope_drop", "downhill_direction"),
    Page("outline", "site", "Outline", ("room_length", "room_width"), visit=TODAY),
    Page("room_area", "site", "Room as an area", ("room_area",), visit=TODAY, asks=_no_rectangle),
    _spot("near", "What is near", "near_spot"),
    *(
        _spot(f"{key}_distance", DISTANCES[key].label, f"{key}_distance", *_BESIDE.get(key, ()))
        for key in LOCAL
    ),
    Page("spout_distance", "site", "Way of the water", ("spout_distance",), visit=TODAY),
    _spot("overflow", "Overflow", "overflow_to", "overflow_building_distance",
          "overflow_line_distance"),
    _spot("unstable", "Unstable ground", "unstable_ground"),
    _spot("pollution", "What the ground has been", "contamination"),
    _spot("soil_lab", "Soil laboratory", "soil_lab"),
    Page("children", "site", "Small children", ("children",), visit=TODAY),
    Page("permission", "site", "Right to dig", ("permission",), visit=TODAY),
    Page("rules", "site", "Permits and rules", ("rules_checked",), visit=TODAY),
    Page("ask_for_marks", "site", "Ask for the marks", ("lines_requested",), visit=TODAY),
)  # fmt: skip

SURVEY = (
    Page("roof_hazard", "survey", "Metal or treated roof", ("roof_hazard",), visit=TODAY),
    Page(
        "usual_roofs", "survey", "The usual for the surfaces",
        usual=("spout_percent", "roof_valley", "roof_sides", "surface_basis", "measured_by",
               "lawn_cover", "surface_name"),
        more=("surface_north", "runoff_local", "runoff_by", "soil_group"),
        visit=TODAY, group="surfaces",
    ),
    Page("roof_pitch", "survey", "Pitch of the roof", ("surface_pitch",),
         visit=TODAY, group="surfaces"),
    Page("house", "survey", "Area of the house", ("house_area",), visit=TODAY, asks=_large_piece),
    Page("pacing_line", "survey", "Pacing line", ("walker_name", "pace_line"),
         visit=TODAY, group="walkers"),
    Page("paces", "survey", "Paces counted", ("pace_counts",), more=("another_walker",),
         visit=TODAY, group="walkers"),
    Page("sharing", "survey", "How the gutter divides", ("share_known",),
         visit=TODAY, group="surfaces"),
    Page("high_point", "survey", "High point of the gutter", ("gutter_this_side", "gutter_whole"),
         visit=TODAY, group="surfaces"),
    Page("share", "survey", "Share that comes here", ("share_percent",),
         visit=TODAY, group="surfaces"),
    Page(
        "end_of_today", "site", "End of today",
        usual=("local_rules", "spot_name", "slope_drop_turned", "another_spot", "rate_from"),
        visit=TODAY, group="spots", tells="end_of_today",
    ),
    Page("chosen_spot", "site", "Spot chosen", ("chosen_spot",), visit=TODAY),
    *(_local(key) for key in LOCAL),
)  # fmt: skip

_LINES = (
    Page("ticket", "site", "The request", ("lines_asked_on", "lines_ticket"),
         usual=("lines_business_days", "lines_holidays"), visit=LINES_DAY),
    Page("private_lines", "site", "Your own lines", ("private_lines",), visit=LINES_DAY),
    Page("below", "site", "Water and rock below", ("wet_season_depth", "rock_depth"),
         visit=LINES_DAY, group="spots", asks=_is_chosen),
    Page("sun_hours", "site", "Hours of sun", ("sun_hours",),
         visit=LINES_DAY, group="spots", asks=_is_chosen),
    Page("waiting", "site", "Waiting for the marks", visit=LINES_DAY, tells="waiting",
         asks=_waiting),
    Page("answered", "site", "Every owner", ("lines_answered", "lines_finished_on"),
         usual=("lines_valid_days", "lines_valid_kind"), visit=LINES_DAY),
    Page("marks", "site", "The nearest mark", ("mark_distance",), visit=LINES_DAY),
)  # fmt: skip


def _hole(key: str, title: str, *asked: str) -> Page:
    return Page(key, "soak", title, asked, visit=TEST_DAY, group="holes")


_SOAK = (
    Page("report", "soak", "Rate in a report", ("known_rate", "known_rate_by"), visit=TEST_DAY),
    _hole("to_learn", "Test only to learn", "test_to_learn"),
    _hole("hole", "The test hole", "hole_depth", "hole_dug_on"),
    _hole("hole_cleared", "Lines clear then", "hole_cleared"),
    _hole("smell", "Smell", "hole_smell"),
    _hole("seeping", "Water seeping in", "hole_seeps"),
    _hole("hole_shape", "Shape of the hole", "hole_shape", "hole_width", "hole_length"),
    _hole("hole_taper", "Taper of the hole", "hole_top_width", "hole_top_height"),
    Page(
        "usual_test", "soak", "The usual for the test",
        usual=("floor_depth", "soaked_already", "read_as", "ruler_mark", "hole_name", "ribbon"),
        visit=TEST_DAY, group="holes",
    ),
    Page(
        "timer", "soak", "Soaking and timing",
        ("first_fill_start", "first_fill_empty", "second_fill_start", "second_fill_empty",
         "water_at_mark", "test_start", "readings"),
        visit=TEST_DAY, group="holes", tells="timer",
    ),
    _hole("hole_left", "How the hole is left", "hole_left"),
    Page("result", "soak", "The result", usual=("hole_counts", "another_hole"),
         more=("hole_spot",), visit=TEST_DAY, group="holes", tells="result", asks=_was_read),
    _hole("set_aside", "Why it is set aside", "hole_set_aside_why"),
)  # fmt: skip


def _levels_of(bed: BedLevels) -> tuple[Page, Page]:
    """Return the pages of the levels of a further bed."""
    floor, *around = (one.key for one in bed.readings)
    return (
        Page(f"levels_{bed.number}", "review", f"Levels of the floor, bed {bed.number}",
             (bed.cover.key, floor), visit=PLAN_DAY),
        Page(f"levels_round_{bed.number}", "review",
             f"Levels of notch, rim, inlet, bed {bed.number}", tuple(around), visit=PLAN_DAY),
    )  # fmt: skip


_PLAN = (
    Page(
        "usual_bed", "bed", "The usual for the bed",
        usual=("deepest_pond", "how_large", "floor_shape", "water_by", "beds", "side_slope",
               "freeboard", "mulch_depth"),
        more=("kidney_bend", "floor_outline", "length_to_width", "amend", "compost_depth",
              "berm_top", "drain_rule", "storm_hours", "storm_shape", "peak_intensity", "barrow",
              "prices", "beds_how"),
        visit=PLAN_DAY,
    ),
    Page("over_twelve", "bed", "Over 12 in", ("engineer_says_deeper",), visit=PLAN_DAY),
    Page("pipe_fall", "bed", "Fall for the pipe", ("spout_fall",), visit=PLAN_DAY,
         asks=chosen(bed.WATER_BY, "pipe")),
    Page("peg_out", "bed", "Peg out", ("floor_length", "floor_width"), visit=PLAN_DAY,
         asks=_rate_is_in),
    Page(
        "usual_plants", "plants", "The usual for the plants",
        usual=("plant_size", "hardiness_zone", "keep_out", "bloom", "tallest_floor", "tallest_rim",
               "natives_only", "road_salt"),
        more=("plant_region", "wetland_list_region", "own_plants", "prefer_plants", "favourites",
              "sun", "berm_outside"),
        visit=PLAN_DAY,
    ),
    Page("dig_day", "review", "Dig day", ("dig_day",), visit=PLAN_DAY, asks=_rate_is_in),
    Page("the_plan", "review", "The plan", more=("swap_out", "notes", "levels_read", "storm_seen"),
         visit=PLAN_DAY, tells="the_plan"),
    Page("levels", "review", "Levels of the floor", ("floor_cover", "floor_readings"),
         usual=("levels_from",), visit=PLAN_DAY),
    Page("levels_round", "review", "Levels of notch, rim, inlet",
         ("notch_reading", "rim_reading", "inlet_reading"), visit=PLAN_DAY),
    *(page for bed in BED_LEVELS[1:] for page in _levels_of(bed)),
    Page("storm", "review", "The first storm", ("storm_rain", "storm_empty_after"),
         visit=PLAN_DAY),
    Page("storm_overflow", "review", "Overflow in that storm", ("storm_overflow",),
         visit=PLAN_DAY),
    Page("storm_plants", "review", "Plants after that storm", ("storm_plants",), visit=PLAN_DAY),
)  # fmt: skip

PATH: tuple[Page, ...] = (*_START, *SITING, *SURVEY, *_LINES, *_SOAK, *_PLAN)

OFF_PATH = {"hard_digging": "No figure uses it; it can be gone to."}
"""Keys of questions on no page, each with the reason."""

OPTIONAL = frozenset(
    {
        "lines_ticket", "slope_drop_turned", "downhill_direction", "room_area", "house_area",
        "ribbon", "hard_digging", "hardiness_zone", "prices", "notes", "dig_day",
        "rain_date_column", "rain_depth_column", "spout_fall", "kidney_bend",
        *(question.key for bed in BED_LEVELS for question in bed.every),
    }
)  # fmt: skip
"""Keys of questions that an empty Enter skips: it keeps don't know yet, and they count as done."""

SAFETY = frozenset(
    {
        "near_spot", *(f"{key}_distance" for key in LOCAL), "wall_height", "drip_line",
        "septic_uphill", "stands_after_rain", "unstable_ground", "contamination", "soil_lab",
        "overflow_to", "overflow_building_distance", "overflow_line_distance", "children",
        "permission", "rules_checked", "roof_hazard", "lines_requested", "lines_answered",
        "lines_finished_on", "private_lines", "mark_distance", "wet_season_depth", "rock_depth",
        "hole_smell", "hole_seeps", "hole_left", "hole_cleared", "test_to_learn",
        "engineer_says_deeper",
    }
)  # fmt: skip
"""Keys of safety questions: Enter alone never answers one, and none is a row."""
