"""The depth of rain that is usual by state, what stands behind it, and files of version 0.1."""

from __future__ import annotations

from pathlib import Path

import pytest

from interview.garden.place import questions as start
from interview.garden.place.rain import CUSTOM, Basis, also_read, depths, usual_rain
from interview.garden.stages import QUESTIONS
from interview.garden.store import load
from interview.garden.told_pages import rough_size
from interview.quantities.evidence import Grade, Provenance
from interview.quantities.units import magnitude, quantity
from interview.sheet.report import outside_text

READY = {"country": "us", "units": "us", "spots.1.slope_run": "10 ft", "spots.1.slope_drop": "2 in"}
OLD = Path(__file__).parents[1] / "version_0_1" / "finished_us.yaml"


def of(given, state, units="us", **more):
    return given({"state": state, "country": "us", "units": units, **more})


def test_the_usual_rain_is_that_of_the_state_or_else_the_custom(subtests, given):
    for state, us, metric in [
        ("dc", "1.2 in", "30 mm"),
        ("ia", "1.25 in", "32 mm"),
        ("ut", "0.7 in", "18 mm"),
        ("wv", "1 in", "25 mm"),
        ("mn", "1 in", "25 mm"),
        ("no", "1 in", "25 mm"),
    ]:
        with subtests.test(state=state):
            assert start.RAIN_DEPTH.default(of(given, state)) == us
            assert start.RAIN_DEPTH.default(of(given, state, "metric")) == metric
            both = [magnitude(quantity(float(one.split()[0]), one.split()[1]), "mm")
                    for one in (us, metric)]  # fmt: skip
            assert both[0] == pytest.approx(both[1], abs=0.5)
    assert start.RAIN_DEPTH.default(given({"country": "uk", "units": "metric"})) == "25 mm"


def test_a_depth_of_a_part_of_a_state_or_for_less_is_told_and_not_taken(subtests, given):
    for state, depth in [("nc", "1.5 in"), ("ma", "0.5 in")]:
        with subtests.test(state=state):
            assert usual_rain(state) is CUSTOM
            assert [one.us for one in also_read(state)] == [depth]
            asked = QUESTIONS["rain_depth"].worded(of(given, state))
            assert depth in asked.more and "rule" in asked.more


def test_a_percentile_a_rule_and_the_custom_have_words_of_their_own(given):
    for one in depths():
        assert (one.percent is None) is (one.basis is not Basis.PERCENTILE)
        assert ("storms bring no more" in one.kind) is (one.basis is Basis.PERCENTILE)
        assert ("rule" in one.kind) is (one.basis is Basis.RULE)
        assert ("manual" in one.kind) is (one.basis is Basis.MANUAL)
        assert one.source.standing in (Provenance.PUBLISHED, Provenance.SECONDARY)
    assert CUSTOM.basis is Basis.CUSTOM and CUSTOM not in depths()
    assert "9 of 10 storms" in QUESTIONS["rain_depth"].worded(of(given, "ia")).why
    for state, by in [("wv", "a rule asks"), ("ct", "a state manual asks")]:
        assert f"{by} large sites" in QUESTIONS["rain_depth"].worded(of(given, state)).why


def test_one_depth_at_the_most_is_usual_in_a_state():
    taken = [one.state for one in depths() if one.usual]
    assert len(taken) == len(set(taken)) > 0
    assert set(taken) <= {one[:2] for one in start.STATES.split(",")}


def test_what_stands_behind_the_rain_is_said(given):
    assumed = start.rain_standing(of(given, "ia"))
    assert "assumed, 1.25 in" in assumed and "Iowa Stormwater Management Manual" in assumed
    answered = start.rain_standing(of(given, "ia", rain_depth="1 in"))
    assert "as you answered" in answered and "Read for Iowa: 1.25 in" in answered
    assert "Center for Watershed Protection" in start.rain_standing(of(given, "mn"))


def without_rain(tmp_path, state, floor="don't know yet"):
    held = OLD.read_text(encoding="utf-8")
    for old, new in [
        ("  state: mn", f"  state: {state}"),
        ("  rain_depth: 1 in\n", ""),
        ("  floor_length: don't know yet", f"  floor_length: {floor}"),
    ]:
        assert old in held
        held = held.replace(old, new)
    file = tmp_path / "old.yaml"
    file.write_text(held, encoding="utf-8")
    return load(file)[0].answers


def told_of_the_rain(answers, plan_of):
    found = [one for one in plan_of(answers).findings if one.key == "rain_of_the_state"]
    assert all(one.grade is Grade.GOOD and one.change for one in found)
    return " ".join(f"{one.said} {one.change}" for one in found)


def test_an_old_file_that_only_assumed_the_rain_is_told_what_changed(tmp_path, plan_of):
    planned = without_rain(tmp_path, "ia")
    assert magnitude(planned[start.RAIN_DEPTH], "in") == 1.25
    said = told_of_the_rain(planned, plan_of)
    assert "is 1.25 in (32 mm) now, as read for Iowa; version 0.1 took 1 in (25 mm)" in said
    sheet = " ".join(outside_text(plan_of(planned)).split())
    assert "[NOTE] The rain to hold, which you did not answer, is 1.25 in (32 mm) now" in sheet
    assert "Answer 1 in to Rain to hold if you want the garden as it was." in said
    # A garden of today is asked this before its bed, and has seen the rain it takes.
    since = planned.with_text("spots.1.overflow_building_distance", "20 ft")
    assert told_of_the_rain(since, plan_of) == ""
    assert told_of_the_rain(without_rain(tmp_path, "mn"), plan_of) == ""
    assert told_of_the_rain(load(OLD)[0].answers, plan_of) == ""


def test_a_floor_pegged_by_an_old_file_was_pegged_for_an_inch(tmp_path, plan_of):
    pegged = without_rain(tmp_path, "ia", "15 ft")
    assert magnitude(pegged[start.RAIN_DEPTH], "in") == 1
    said = told_of_the_rain(pegged, plan_of)
    assert "pegged for 1 in (25 mm) of rain" in said and "1.25 in plans it for more" in said
    assert "0.7 in plans it for less" in told_of_the_rain(
        without_rain(tmp_path, "ut", "15 ft"), plan_of
    )
    assert "Read for Iowa: 1.25 in" in start.rain_standing(pegged)


def test_a_floor_pegged_now_keeps_the_rain_it_was_shown(subtests, session_of, given):
    for state, kept in [("ia", "1.25 in"), ("mn", None)]:
        with subtests.test(state=state):
            session = session_of(given({**READY, "state": state}))
            session.taken.append("rough_size")
            session.offer(session.jump("floor_length"), "15 ft")
            assert session.answers.text_at("floor_length") == "15 ft"
            assert session.answers.text_at("rain_depth") == kept


def test_the_page_of_the_first_size_says_where_the_rain_comes_from(plan_of, roof):
    surface = roof("rectangle 30 ft by 14 ft")
    told = rough_size(plan_of({"state": "ia", "country": "us", "units": "us", **surface}))
    assert "1.25 in of rain" in told[0]
    assert told[-1] == (
        "Iowa: 9 of 10 storms bring 1.25 in (32 mm) or less in the whole state [Iowa Stormwater "
        "Management Manual, section 2B-1, as hosted by IIHR, University of Iowa]."
    )
    for texts in ({"state": "mn"}, {"state": "ia", "rain_depth": "1 in"}):
        told = rough_size(plan_of({"country": "us", "units": "us", **texts, **surface}))
        assert "1 in of rain" in told[0] and "storms" not in " ".join(told)
