"""Figures: every one names its unit and its source, and says what it waits for."""

from __future__ import annotations

import pytest

from interview.garden.figures import BY_KEY, FIGURES, find, found, working
from interview.garden.stages import QUESTIONS, STAGES
from interview.quantities.evidence import Source
from interview.quantities.units import magnitude, quantity
from interview.sheet.figures_file import figures_text

PEGGED = {"floor_length": "15 ft", "floor_width": "7 ft"}


def test_every_figure_is_named_once_and_has_its_source(subtests):
    for figure in FIGURES:
        with subtests.test(figure=figure):
            assert BY_KEY[figure.key] is figure
            assert figure.label and not figure.label.endswith(".")
            assert isinstance(figure.source, Source) and str(figure.source).strip(" ()")
            assert (figure.us == "") == (figure.metric == "")
            assert figure.key not in QUESTIONS
            names = {*BY_KEY, *QUESTIONS, *(part.key for stage in STAGES for part in stage.parts)}
            assert set(figure.inputs) <= names, set(figure.inputs) - names
            quantity(1.0, figure.us), quantity(1.0, figure.metric)


def test_no_two_figures_share_a_label():
    labels = [figure.label for figure in FIGURES]
    assert sorted(labels) == sorted(set(labels))


def test_the_two_units_of_a_figure_are_of_one_dimension():
    for figure in FIGURES:
        if figure.us:
            assert quantity(1.0, figure.us).is_compatible_with(figure.metric), figure.key


def test_an_empty_plan_waits_for_questions_that_can_be_answered(plan_of):
    plan = plan_of({})
    waits = [one for one in found(plan) if one.waits_for]
    assert len(waits) > len(FIGURES) / 2
    assert all(one.value is None and one.shown(False) == "" for one in waits)


def test_a_figure_of_one_garden_is_the_same_in_either_units(plan_of, sized, figure):
    texts = {**sized, **PEGGED, "peak_intensity": "7 in/h"}
    us = plan_of(texts)
    metric = plan_of({**texts, "units": "metric"})
    # The depth is rounded to 1/2 in or 10 mm, so what hangs on it differs a little.
    for key in ("weighted_area", "catchment_area", "catchment_flow", "corrected_rate"):
        value = magnitude(find(BY_KEY[key], us).value, BY_KEY[key].metric)
        assert figure(key, metric) == pytest.approx(value), key
    assert figure("floor_area", metric) == pytest.approx(105 * 0.3048**2)


def test_figures_are_shown_rounded_with_their_unit(subtests, plan_of, sized):
    for key, words in [
        ("weighted_area", "570 ft²"),
        ("recommended_area", "140 ft²"),
        ("pond_depth", "6 in"),
        ("slope", ""),
        ("drop_rate", "not measured"),
    ]:
        with subtests.test(key=key, words=words):
            assert find(BY_KEY[key], plan_of(sized)).shown(False) == words


def test_the_working_shows_formula_inputs_unrounded_value_and_source(plan_of, sized):
    lines = working("mid_area", plan_of(sized))
    text = "\n".join(lines)
    assert lines[0].startswith("Area at half depth")
    assert "how: beds x A(d / 2) of the floor W wide: a (d - P) W^2 + c z" in text
    assert "with area weighted by runoff: 570 ft²" in text
    assert "with your answer: rain_depth (Rain to hold)" in text
    # Worked by hand in test_worked_cases: 0.74392 W^2 + 0.85693 W - 47.9581 = 0.
    assert "unrounded: 130.316" in text
    assert lines[-1].strip().startswith("source:")


def test_every_working_can_be_shown_with_and_without_answers(subtests, plan_of, sized):
    for key in sorted(BY_KEY):
        with subtests.test(key=key):
            for plan in (plan_of({}), plan_of({**sized, **PEGGED})):
                assert working(key, plan)[0].startswith(BY_KEY[key].label)


def test_the_list_tells_what_each_figure_waits_for(plan_of, printed):
    listed = printed(plan_of({"units": "us"}))
    one = listed["figures"]["slope"]
    assert (one["value"], one["waits_for"]) == (None, "spots.1.slope_run")
    assert listed["holes"] == []
    assert listed["surfaces"] == []


def test_the_list_says_why_where_an_answer_stands_in_the_way(plan_of, sized, printed):
    listed = printed(plan_of({**sized, "rain_depth": "4 in", "deepest_pond": "3 in"}))
    assert "why" in listed["figures"]["mid_area"]


def test_names_with_odd_characters_stay_yaml(plan_of, roof, printed, sized):
    odd = 'a: "b" # c \\ \''
    texts = {**sized, **roof("circle across 20 ft")}
    texts["surfaces.1.surface_name"] = odd
    assert printed(plan_of(texts))["surfaces"][0]["name"] == odd


def test_what_is_assumed_is_listed_and_what_is_answered_is_not(plan_of, printed):
    listed = printed(plan_of({"side_slope": "2:1"}))
    assert listed["assumed"]["freeboard"] == "2 in"
    assert "side_slope" not in listed["assumed"]


def test_the_list_of_one_plan_is_always_the_same(plan_of, sized):
    assert figures_text(plan_of(sized)) == figures_text(plan_of(sized))
