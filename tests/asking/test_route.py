"""Which questions apply, what comes next, and how far each stage is."""

from __future__ import annotations

from interview.asking import route
from interview.garden.stages import GROUPS, STAGES, new_answers, question_at


def addresses(answers) -> list[str]:
    return [step.address for step in route.steps(answers)]


def test_an_empty_interview_asks_each_stage_in_order():
    steps = route.steps(new_answers())
    stages = [step.stage for step in steps]
    assert list(dict.fromkeys(stages)) == list(STAGES)
    assert stages == sorted(stages, key=STAGES.index)
    assert steps[0].address == "garden_name"


def test_a_further_item_is_asked_after_a_yes(given):
    assert "spots.2.spot_name" not in addresses(given())
    assert "spots.2.spot_name" in addresses(given({"spots.1.another_spot": "yes"}))
    assert "spots.2.spot_name" not in addresses(given({"spots.1.another_spot": "no"}))


def test_an_item_that_has_answers_is_asked_whatever_was_said_before_it(given):
    some = given({"spots.1.another_spot": "no", "spots.2.spot_name": "front"})
    assert route.item_count(GROUPS["spots"], some) == 2


def test_answers_that_do_not_apply_are_set_aside_and_come_back(given):
    some = given({"lines_requested": "asked", "lines_ticket": "W-1"})
    away = some.with_text("lines_requested", "not_yet")
    assert route.set_aside(away) == ["lines_ticket"]
    assert "lines_ticket" not in route.in_force(away).texts
    assert "lines_ticket" in away.texts
    assert route.set_aside(some) == []


def test_an_answer_set_aside_sets_aside_what_hangs_on_it(given):
    some = given(
        {"lines_requested": "asked", "lines_answered": "yes", "lines_finished_on": "2026-05-20"}
    ).with_text("lines_requested", "not_yet")
    assert set(route.set_aside(some)) == {"lines_answered", "lines_finished_on"}
    assert "lines_finished_on" not in addresses(some)


def test_no_step_is_where_no_question_is():
    for address in ("nothing", "spots.1", "spots.x.spot_name", "holes.1.spot_name", "spot_name"):
        assert route.step_at(address, new_answers()) is None
        assert question_at(address) is None


def test_every_step_can_be_found_by_its_address(given):
    answers = given({"country": "us", "lines_requested": "asked", "spots.1.near_spot": "well"})
    for step in route.steps(answers):
        assert route.step_at(step.address, answers) == step


def progress_of(answers, key):
    return next(one for one in route.progress(answers) if one.stage.key == key)


def test_how_far_a_stage_is(given):
    assert progress_of(given(), "start").word == "not started"
    some = given({"garden_name": "x"})
    assert progress_of(some, "start").word == "in progress"
    faulty = some.with_text("rain_depth", "many")
    assert progress_of(faulty, "start").word == "needs attention"
    done = given(
        {"garden_name": "x", "units": "us", "country": "canada", "rain_depth": "1 in"}
    ).with_text("has_rain_record", "don't know yet")
    start = progress_of(done, "start")
    assert (start.word, start.done, start.total, start.put_off) == ("done", 5, 5, 1)


def test_the_progress_of_all_stages_counts_every_step_once(given):
    answers = given({"country": "us", "spots.1.another_spot": "yes"})
    assert sum(one.total for one in route.progress(answers)) == len(route.steps(answers))
    done = len(route.steps(answers)) - len(route.open_steps(answers))
    assert sum(one.done for one in route.progress(answers)) == done == 2


def test_a_removed_item_is_not_asked_again(given):
    two = given({"spots.1.another_spot": "yes", "spots.2.spot_name": "front"})
    left = route.without_item(two, "spots", 2)
    assert dict(left.texts) == {"spots.1.another_spot": "no"}
    assert route.item_count(GROUPS["spots"], left) == 1


def test_an_item_that_was_only_begun_can_be_removed(given):
    begun = given({"spots.1.another_spot": "yes"})
    left = route.without_item(begun, "spots", 2)
    assert route.item_count(GROUPS["spots"], left) == 1


def test_the_spot_chosen_stays_the_same_spot_when_another_is_removed(subtests, given):
    for removed, chosen in [(1, "1"), (2, None), (3, "2")]:
        with subtests.test(removed=removed, chosen=chosen):
            names = {f"spots.{n}.spot_name": name for n, name in enumerate("abc", 1)}
            some = given({**names, "chosen_spot": "2"})
            left = route.without_item(some, "spots", removed)
            assert left.texts.get("chosen_spot") == chosen
            if chosen:
                assert left.texts[f"spots.{chosen}.spot_name"] == "b"


def test_a_thing_is_called_by_its_number_and_the_name_it_was_given(subtests, given):
    for given_name, words in [
        ("the back lawn", "spot 1, the back lawn"),
        ("Spot 1", "spot 1"),
        ("idk", "spot 1"),
    ]:
        with subtests.test(given_name=given_name, words=words):
            answers = given({"spots.1.near_spot": "none"}).with_text(
                "spots.1.spot_name", given_name
            )
            step = next(one for one in route.steps(answers) if one.question.key == "near_spot")
            assert route.item_name(step, answers) == words


def test_a_question_is_found_by_address_key_or_label(given):
    answers = given({"spots.1.another_spot": "yes"})
    both = ["spots.1.near_spot", "spots.2.near_spot"]
    assert [one.address for one in route.called("near_spot", answers)] == both
    assert [one.address for one in route.called(both[1], answers)] == both[1:]
    label = route.called("units", answers)[0].question.label
    assert [one.address for one in route.called(label.upper(), answers)] == ["units"]
    assert route.called("lines_ticket", answers) == []
