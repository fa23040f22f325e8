"""The dig gate: shut until the lines are located, and shut again where something smells."""

from __future__ import annotations

import datetime as dt
import re

import pytest

from interview.asking import route
from interview.garden import gate
from interview.garden.site import gate as site_gate
from interview.garden.stages import QUESTIONS, every_question

TODAY = dt.date(2026, 5, 28)


def hole_step(answers, key="hole_depth", number=1):
    return route.step_at(f"holes.{number}.{key}", answers)


def test_nothing_may_be_dug_before_the_request(given):
    answers = given()
    assert site_gate.gate_today(answers, TODAY).reasons
    reasons = gate.shut(hole_step(answers), answers, TODAY)
    assert "not yet asked" in reasons[0]


def test_the_gate_opens_when_everything_is_answered(given, located):
    answers = given(located)
    assert site_gate.dig_reasons(answers, TODAY) == []
    assert gate.shut(hole_step(answers), answers, TODAY) == []


def test_each_thing_that_keeps_the_gate_shut(subtests, given, located):
    for change, today, words in [
        ({"lines_answered": "no"}, TODAY, "Not all owners"),
        ({}, dt.date(2026, 5, 25), "have until Tue 26 May 2026"),
        ({"lines_holidays": "2026-05-25"}, dt.date(2026, 5, 26), "have until Wed 27 May 2026"),
        ({}, dt.date(2026, 6, 6), "good only until Fri 5 Jun 2026"),
        ({"private_lines": "not_found"}, TODAY, "Where your own buried lines run is not known"),
        ({"mark_distance": "23 in"}, TODAY, "A mark is within 2 ft"),
    ]:
        with subtests.test(change=change, today=today, words=words):
            texts = {**located, **change}
            if change.get("lines_answered") == "no":
                for key in ("lines_finished_on", "lines_valid_days", "mark_distance"):
                    texts.pop(key)
            answers = given(texts)
            assert any(words in reason for reason in site_gate.dig_reasons(answers, today))
            assert gate.shut(hole_step(answers), answers, today)


def test_not_knowing_keeps_the_gate_shut(subtests, given, located):
    for key in ["lines_answered", "private_lines", "mark_distance"]:
        with subtests.test(key=key):
            answers = given(located).with_text(key, "don't know yet")
            assert site_gate.dig_reasons(answers, TODAY)


def test_the_strip_beside_a_mark_goes_by_the_place_and_the_units(subtests, given, located):
    for place, units, words, inside, outside in [
        ({"country": "us", "state": "mi"}, "us", "4 ft", "47 in", "48 in"),
        ({"country": "us", "state": "mi"}, "metric", "1.22 m", "1.21 m", "1.22 m"),
        ({"country": "us", "state": "wi"}, "us", "2 ft", "23 in", "24 in"),
        ({"country": "us", "state": "wi"}, "metric", "0.61 m", "0.6 m", "0.61 m"),
        ({"country": "uk"}, "metric", "0.6 m", "0.59 m", "0.6 m"),
        ({"country": "canada"}, "metric", "1 m", "0.99 m", "1 m"),
    ]:
        with subtests.test(place=place, units=units, words=words, inside=inside, outside=outside):
            texts = {"units": units, **place, **located}
            near = given({**texts, "mark_distance": inside})
            assert f"A mark is within {words} of" in " ".join(site_gate.dig_reasons(near, TODAY))
            assert site_gate.dig_reasons(given({**texts, "mark_distance": outside}), TODAY) == []
            for key in ("mark_distance", "dig_day", "hole_depth"):
                assert f"within {words} of any mark" in QUESTIONS[key].caution_in(near)


def test_no_question_holds_a_width_of_that_strip_of_its_own():
    for question in every_question():
        said = f"{question.caution} {question.why} {question.find_out}"
        assert "two feet" not in said and "2 ft of a mark" not in said, question.key


def test_whatever_tells_to_dig_says_first_that_the_lines_must_be_located():
    for question in every_question():
        if re.search(r"\b[Dd]ig (to|a|the|down|another)\b", question.find_out):
            assert "lines are located" in question.find_out, question.key


LINE_ANSWERS = {
    "lines_requested": ("not_yet", "don't know yet", None),
    "lines_asked_on": ("2026-05-27", "2026-06-30", "don't know yet", None),
    "lines_answered": ("no", "don't know yet", None),
    "lines_finished_on": ("2026-05-12", "2026-06-20", "don't know yet"),
    "private_lines": ("not_found", "don't know yet", None),
    "mark_distance": ("0 ft", "1 ft 11 in", "don't know yet", None),
}
"""For each answer about the lines, texts with which no spade may go in on the day of the tests."""


def test_no_single_answer_about_the_lines_can_be_wrong_and_the_gate_open(subtests, given, located):
    for key, text in [(key, text) for key, texts in LINE_ANSWERS.items() for text in texts]:
        with subtests.test(key=key, text=text):
            answers = given(located)
            # Where the day the marks were finished is not known, that of the request stands for it.
            late = dt.date(2026, 6, 4) if key == "lines_finished_on" else TODAY
            assert site_gate.dig_reasons(answers, late) == []
            wrong = answers.without(key) if text is None else answers.with_text(key, text)
            assert site_gate.dig_reasons(wrong, late)
            assert gate.shut(hole_step(wrong), wrong, late)


def test_the_last_good_day_of_the_marks_is_still_good(given, located):
    answers = given(located)
    assert site_gate.dig_reasons(answers, dt.date(2026, 6, 5)) == []


def test_a_request_taken_back_shuts_the_gate_though_its_answers_are_kept(given, located):
    answers = given(located).with_text("lines_requested", "not_yet")
    assert site_gate.dig_reasons(answers, TODAY)


def test_only_questions_that_need_digging_and_the_day_of_it_are_shut(given):
    answers = given()
    for step in route.steps(answers):
        digs = step.question.digs or step.question.key == "hole_dug_on"
        assert bool(gate.shut(step, answers, TODAY)) == digs


def test_a_hole_is_held_against_the_day_it_was_dug(given, located):
    late = dt.date(2026, 7, 1)
    texts = {**located, "holes.1.hole_dug_on": "2026-05-27"}
    answers = given(texts)
    assert site_gate.dig_reasons(answers, late)
    assert gate.shut(hole_step(answers), answers, late) == []
    second = answers.with_text("holes.1.another_hole", "yes")
    assert gate.shut(hole_step(second, number=2), second, late)


def test_a_hole_dug_before_the_lines_were_located_stays_shut(given, located):
    texts = {"holes.1.hole_dug_on": "2026-05-21", "holes.1.hole_depth": "20 in"}
    answers = given({**located, **texts})
    reasons = gate.shut(hole_step(answers), answers, TODAY)
    assert reasons[0].startswith("For Thu 21 May 2026, the day of this hole: The owners have until")


def test_a_hole_to_be_dug_later_opens_on_its_day(given, located):
    answers = given({**located, "holes.1.hole_dug_on": "2026-06-01"})
    assert "open then" in gate.shut(hole_step(answers), answers, TODAY)[-1]
    assert gate.shut(hole_step(answers), answers, dt.date(2026, 6, 1)) == []


def test_a_bad_smell_shuts_everything_about_that_hole_but_the_smell(subtests, given, located):
    for smell in gate.BLOCKING_SMELLS:
        with subtests.test(smell=smell):
            texts = {**located, "holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_smell": smell}
            answers = given(texts)
            reasons = gate.shut(hole_step(answers, "hole_width"), answers, TODAY)
            assert f"smells of {smell}" in reasons[0] and "call" in reasons[0]
            assert gate.shut(hole_step(answers, "hole_smell"), answers, TODAY) == []


@pytest.mark.parametrize("smell", ["earth", "rotten_egg"])
def test_other_smells_do_not_stop_the_test(given, located, smell):
    texts = {**located, "holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_smell": smell}
    answers = given(texts)
    assert gate.shut(hole_step(answers, "hole_width"), answers, TODAY) == []


def test_a_smell_of_rotten_eggs_is_told_as_what_may_be_gas(given, located, plan_of):
    # 49 CFR 192.625 has gas for heating given a smell; that it is mostly that of rotten eggs is
    # what the utilities tell their customers. From memory, not checked.
    texts = {**located, "holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_smell": "rotten_egg"}
    caution = hole_step(given(texts), "hole_smell").question.caution
    assert "Gas, which may smell of rotten eggs: leave at once" in caution
    [found] = [one for one in plan_of(texts).findings if one.key == "hole_1_smell"]
    assert "gas, or soil" in found.said and found.change.startswith("If it may be gas, leave")
    assert found.brief.line.startswith("Rotten eggs: it may be gas. Leave, and call")


def test_every_question_about_a_hole_is_gated_but_its_name_place_and_day_and_the_next():
    loose = {q.key for q in every_question() if q.group == "holes" and not q.digs}
    about = {"hole_name", "hole_spot", "hole_dug_on", "hole_cleared", "test_to_learn"}
    assert loose == {*about, "another_hole"}
