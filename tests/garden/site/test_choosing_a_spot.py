"""Several spots: what was found at each is told where one of them is chosen."""

from __future__ import annotations

import pytest

from interview.sheet.report import plan_text


@pytest.fixture
def two_spots(level_spot):
    """Return answers about a spot where water stands and a better one."""
    bad = {a: t for a, t in level_spot.items()} | {
        "spots.1.spot_name": "low corner",
        "spots.1.stands_after_rain": "often",
        "spots.1.another_spot": "yes",
    }
    good = {a.replace("spots.1", "spots.2"): t for a, t in level_spot.items()}
    return {**bad, **good, "spots.2.spot_name": "by the gate"}


def test_the_question_lists_each_spot_with_its_verdict_and_reasons(two_spots, given, session_of):
    session = session_of(given(two_spots))
    asked = session.worded(session.jump("chosen_spot")).text.splitlines()
    assert asked[1].startswith("1 low corner: stop. Water stands here often")
    assert asked[2] == "2 by the gate: good."


def test_enter_alone_takes_the_spot_with_the_least_against_it(two_spots, given, session_of):
    session = session_of(given(two_spots))
    step = session.jump("chosen_spot")
    assert session.offered(step) == "2"
    session.offer(step, "")
    assert session.answers.texts["chosen_spot"] == "2"


def test_plain_lines_read_the_spots_too(two_spots, given, session_of, talk):
    heard, _, _ = talk(session=session_of(given(two_spots)), at="chosen_spot")
    assert "1 low corner: stop. Water stands here often" in heard


def test_the_sheet_compares_the_spots_with_their_reasons(two_spots, plan_of):
    compared = plan_text(plan_of(two_spots)).partition("Spots compared:")[2]
    lines = [line.strip() for line in compared.splitlines()[1:4]]
    assert lines[0] == "1. low corner: stop"
    assert lines[1].startswith("- Water stands here often")
    assert lines[2] == "2. by the gate: good"


def test_a_distance_in_paces_waits_for_the_pace_and_is_not_called_unmeasured(
    level_spot, given, plan_of
):
    texts = {**level_spot, "measured_by": "paces", "spots.1.near_spot": "tree"}
    texts |= {"spots.1.tree_distance": "12 paces", "spots.1.slope_run": "4 paces"}
    texts |= {"spots.1.slope_drop": "1 in"}
    answers = given()
    for address, text in texts.items():
        answers = answers.with_text(address, text)
    found = {one.key: one for one in plan_of(answers).findings}
    assert (
        "The distance from the trunk of the large tree to the garden is in paces"
        in found["tree_distance"].said
    )
    assert "in paces" in found["slope"].said
    for key in ("tree_distance", "slope"):
        assert found[key].grade.value == "fix"
        assert "length of your pace" in found[key].change
    calibrated = {"walkers.1.pace_line": "50 ft", "walkers.1.pace_counts": "20; 20; 20"}
    for address, text in calibrated.items():
        answers = answers.with_text(address, text)
    found = {one.key: one for one in plan_of(answers).findings}
    assert "is 30 ft from the trunk" in found["tree_distance"].said  # 12 paces of 2 1/2 ft


def test_a_mark_in_paces_keeps_digging_shut_and_says_why(given, located, plan_of):
    answers = given(located | {"measured_by": "paces"}).with_text("mark_distance", "9 paces")
    found = next(one for one in plan_of(answers).findings if one.key == "buried_lines")
    assert found.grade.value != "good"
    assert "in paces" in found.said and "have not said" not in found.said
