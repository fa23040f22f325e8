"""Keys of questions by when they are due, and the list of what was put off."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.question import Status
from interview.asking.route import Step
from interview.garden.site import lines_questions as buried
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.garden.site.nearby_questions import DISTANCES, LOCAL
from interview.quantities.evidence import OURS, Cited

MOST_PUT_OFF = Cited(5, OURS)
"""How many of the questions put off are told at once."""


def _keys(words: str) -> frozenset[str]:
    return frozenset(words.split())


FIRST_SIZE: tuple[frozenset[str], ...] = (
    _keys("garden_name"),
    _keys("country state units"),
    _keys("surface_kind falls_on gutter_outlets"),
    _keys("outlets_here"),
    _keys("pieces"),
    _keys("soil_dug"),
)
"""The pages before the first size, of the first surface."""
SPOT = _keys(
    "another_surface stands_after_rain near_spot slope_run slope_drop septic_uphill wall_height "
    "drip_line room_length room_width spout_distance overflow_to overflow_building_distance "
    "overflow_line_distance unstable_ground contamination soil_lab children permission "
    "rules_checked"
) | {question.key for question in DISTANCES.values()}
"""What is looked at in the yard before the marks are asked for."""
SURVEY = _keys(
    "roof_hazard surface_pitch walker_name pace_line pace_counts share_known gutter_this_side "
    "gutter_whole share_percent"
) | {question.key for question in LOCAL.values()}
"""What can be gone on with while digging is shut."""
WHILE_WAITING = _keys("lines_asked_on wet_season_depth rock_depth sun_hours private_lines")
"""What is found out while the marks are waited for; of a spot, of the one chosen."""
ASK, ANSWERED = _keys("lines_requested"), _keys("lines_answered")
MARKS = _keys("lines_finished_on mark_distance")
REPORT = _keys("known_rate known_rate_by")
HOLE = _keys(
    "hole_depth hole_dug_on hole_cleared hole_smell hole_seeps hole_shape hole_width hole_length "
    "hole_top_width hole_top_height"
)
TIMER = _keys(
    "first_fill_start first_fill_empty second_fill_start second_fill_empty water_at_mark "
    "test_start readings"
)
AFTER_TEST = _keys("hole_left hole_set_aside_why")
PLAN_PAGES: Mapping[str, frozenset[str]] = {
    "usual_bed": _keys(
        "deepest_pond how_large floor_shape water_by beds side_slope freeboard mulch_depth "
        "kidney_bend floor_outline length_to_width amend compost_depth berm_top drain_rule "
        "storm_hours storm_shape peak_intensity barrow beds_how engineer_says_deeper"
    ),
    "peg_out": _keys("floor_length floor_width"),
    "usual_plants": _keys(
        "keep_out bloom tallest_floor tallest_rim natives_only road_salt plant_region "
        "wetland_list_region own_plants"
    ),
    "dig_day": _keys("dig_day"),
}
"""The pages of the plan day before the plan, by name."""
STORM = _keys("storm_rain storm_empty_after storm_overflow storm_plants")
MUSTS = (
    frozenset().union(*FIRST_SIZE)
    | SPOT
    | SURVEY
    | WHILE_WAITING
    | ASK
    | ANSWERED
    | MARKS
    | REPORT
    | HOLE
    | TIMER
    | AFTER_TEST
    | PLAN_PAGES["peg_out"]
)
"""What must be known for the plan; the rest has a usual value, or may be skipped."""
NOT_FOUND_OUT = {
    site.RULES_CHECKED.key: ("not_checked", "pending"),
    buried.PRIVATE_LINES.key: ("not_found",),
}
"""Answers by which a question is still to be found out."""


@dataclass(frozen=True)
class PutOff:
    """A question that was put off."""

    step: Step
    label: str
    how: str
    """How to find it out."""

    @property
    def address(self) -> str:
        """Where it is answered."""
        return self.step.address


def put_off(answers: Answers) -> list[PutOff]:
    """Return what must be known and was put off, in the order of the interview, five at most."""
    found = [step for step in route.steps(answers) if is_put_off(step, answers)]
    told = [(step, step.worded(answers)) for step in found[: int(MOST_PUT_OFF.value)]]
    return [PutOff(step, words.label, words.find_out) for step, words in told]


def is_put_off(step: Step, answers: Answers) -> bool:
    """Tell whether ``step`` asks for something that must be known and was put off."""
    if not concerns(step, answers) or step.question.key not in MUSTS:
        return False
    if route.standing(step, answers) is Status.UNKNOWN:
        return True
    return step.view(answers).get(step.question) in NOT_FOUND_OUT.get(step.question.key, ())


def concerns(step: Step, answers: Answers) -> bool:
    """Tell whether ``step`` is not about a spot that was not chosen."""
    if step.question.group != ground.SPOTS.key:
        return True
    return (step.question.group, step.number) == ground.chosen_spot(answers).scope
