"""What people type in place of one plain number, question by question, and what is made of it."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given as drawn
from hypothesis import strategies as st

from interview.asking.answers import NO_CLOCK
from interview.asking.sitting import Doubt
from interview.garden.paced_lengths import paced_lengths
from interview.garden.stages import QUESTIONS, new_answers
from interview.quantities.units import magnitude
from interview.reading import Refused

MONDAY = dt.datetime(2026, 11, 30, 9, 0, tzinfo=dt.timezone(dt.timedelta(hours=-6)))


def heard(key: str, text: str, units: str = "us", now: dt.datetime = MONDAY):
    """Return what a question makes of a text."""
    question = QUESTIONS[key]
    answers = new_answers({"units": units}, now)
    view = answers.at(question.group, 1) if question.group else answers
    return question.take(text, view)


def refusal(key: str, text: str, **more: str) -> str:
    with pytest.raises(Refused) as refused:
        heard(key, text, **more).value  # noqa: B018 a value that waits is raised when looked at
    return refused.value.said


DISTANCE, DROP, SUN = "well_distance", "slope_drop", "sun_hours"
BELOW = "wet_season_depth"

KEPT = (
    # about, ~, roughly, around, ish
    (DISTANCE, "about 12 ft", "12 ft"),
    (DISTANCE, "About 12", "12 ft"),
    (DISTANCE, "~12 ft", "12 ft"),
    (DISTANCE, "~ 12' 6\"", "12' 6\""),
    (DISTANCE, "roughly 12 ft", "12 ft"),
    (DISTANCE, "around 12 ft", "12 ft"),
    (DISTANCE, "12ish", "12 ft"),
    (DISTANCE, "12-ish ft", "12 ft"),
    (DISTANCE, "12 ft or so", "12 ft"),
    (DISTANCE, "about 5 or 6 ft", "5 ft"),
    (DISTANCE, "12 ft?", "12 ft"),
    (SUN, "about 6", "6"),
    ("room_area", "about 120 sq ft", "120 sq ft"),
    ("storm_hours", "about 6 h", "6 h"),
    # at least, over, more than, 50+
    (DISTANCE, "at least 50 ft", "50 ft"),
    (DISTANCE, "over 50 ft", "50 ft"),
    (DISTANCE, "well over 50 ft", "50 ft"),
    (DISTANCE, "more than 50 ft", "50 ft"),
    (DISTANCE, "50+ ft", "50 ft"),
    (DISTANCE, "50+", "50 ft"),
    (DISTANCE, "50 ft+", "50 ft"),
    (DISTANCE, "50 ft or more", "50 ft"),
    (DISTANCE, "> 50 ft", "50 ft"),
    (DISTANCE, "over about 50 ft", "50 ft"),
    (DISTANCE, "about over 50 ft", "50 ft"),
    (BELOW, "over 4 ft", "4 ft"),
    ("rock_depth", "at least 6 feet", "6 feet"),
    # 5 or 6, 5-6, 5 to 6: the smaller
    (DISTANCE, "5 or 6", "5 ft"),
    (DISTANCE, "5-6 ft", "5 ft"),
    (DISTANCE, "5 – 6 ft", "5 ft"),
    (DISTANCE, "5 to 6 ft", "5 ft"),
    (DISTANCE, "5ft to 6ft", "5ft"),
    (DISTANCE, "6 or 5 ft", "5 ft"),
    (DISTANCE, "between 5 and 6 ft", "5 ft"),
    (DISTANCE, "5 ft or 6", "5 ft"),
    (DISTANCE, "5 ft 6 or 5 ft 9", "5 ft 6"),
    (DISTANCE, "2,5-3 m", "2,5 m"),
    (DISTANCE, "2,5 or 3,5 m", "2,5 m"),
    (DISTANCE, "80 cm to 1 m", "80 cm"),
    (BELOW, "5 or 6 ft", "5 ft"),
    (SUN, "6-8", "6"),
    (SUN, "six to eight hours", "6 hours"),
    # and the larger
    (DROP, "5 or 6 in", "6 in"),
    (DROP, "5-6", "6 in"),
    (DROP, "5-6 in", "6 in"),
    (DROP, "1-1/2 to 2 in", "2 in"),
    (DROP, "1/2-3/4 in", "3/4 in"),
    (DROP, "1 to 1-1/2 in", "1-1/2 in"),
    ("pieces", "rectangle 28 or 30 ft by 14 ft", "rectangle 30 ft, 14 ft"),
    ("pieces", "30-32 x 14", "rectangle 32 ft, 14 ft"),
    ("pieces", "about 30 ft by 14 ft", "rectangle 30 ft, 14 ft"),
    # steps are paces, and wait for a pace as paces do
    (DISTANCE, "4 steps", "4 paces"),
    (DISTANCE, "four steps", "four paces"),
    (DISTANCE, "12 or 14 steps Ann", "12 paces Ann"),
    ("pieces", "12 steps by 10 steps", "rectangle 12 paces, 10 paces"),
    # a dozen, a couple
    (DISTANCE, "a dozen feet", "12 feet"),
    (DISTANCE, "about half a dozen feet", "6 feet"),
    (DISTANCE, "a couple of yards", "2 yards"),
    (DISTANCE, "a dozen steps", "12 paces"),
    ("gutter_outlets", "a couple", "2"),
    ("lines_valid_days", "a dozen days", "12 days"),
    # sun by name
    (SUN, "full sun", "8 h"),
    (SUN, "all day", "8 h"),
    (SUN, "Part sun", "4 h"),
    (SUN, "half a day", "4 h"),
    (SUN, "part shade", "4 h"),
    (SUN, "shade", "2 h"),
    # no and sometimes
    ("stands_after_rain", "no", "never"),
    ("stands_after_rain", "No.", "never"),
    ("stands_after_rain", "sometimes", "few"),
    # days from today, a Monday
    ("dig_day", "Saturday", "2026-12-05"),
    ("dig_day", "this sat", "2026-12-05"),
    ("dig_day", "tomorrow", "2026-12-01"),
    ("dig_day", "in two weeks", "2026-12-14"),
    ("dig_day", "in a week", "2026-12-07"),
    ("dig_day", "two weeks from now", "2026-12-14"),
    ("dig_day", "in 10 days", "2026-12-10"),
    ("dig_day", "the day after tomorrow", "2026-12-02"),
    ("lines_asked_on", "Saturday", "2026-11-28"),
    ("lines_asked_on", "last Saturday", "2026-11-28"),
    ("lines_asked_on", "today", "2026-11-30"),
    ("lines_asked_on", "yesterday", "2026-11-29"),
    ("lines_asked_on", "two days ago", "2026-11-28"),
    ("lines_asked_on", "a week ago", "2026-11-23"),
    ("lines_asked_on", "a couple of days ago", "2026-11-28"),
    ("lines_asked_on", "day before yesterday", "2026-11-28"),
    # the usual
    ("rain_depth", "usual", "1 in"),
    ("rain_depth", "normal", "1 in"),
    ("mulch_depth", "The usual", "3 in"),
    ("runoff_local", "usual", "usual"),
    # what was plain before is kept as it was
    (DISTANCE, "5 ft 6", "5 ft 6"),
    (DISTANCE, "5 ft - 6", "5 ft - 6"),
    (DISTANCE, "5' - 6\"", "5' - 6\""),
    (DROP, "1-1/2 in", "1-1/2 in"),
    (DROP, "2-3/4", "2-3/4 in"),
    (DISTANCE, "2,5 m", "2,5 m"),
    (DISTANCE, "2,50 m", "2,50 m"),
    (DISTANCE, "half a foot", "half a foot"),
)
"""Question, what is typed, what is kept: words that a 0.1 program reads alike."""

REFUSED = (
    ("mark_distance", "about 12 ft", "Measure it."),
    ("mark_distance", "~12", "Measure it."),
    ("mark_distance", "12ish", "Measure it."),
    ("mark_distance", "about 12 paces", "Measure it."),
    (DISTANCE, "a few feet", "Measure it."),
    ("pieces", "a few feet by 12 ft", "Measure it."),
    (DISTANCE, "several paces", "Count them."),
    ("gutter_outlets", "a few", "Count them."),
    ("beds", "several", "Count them."),
    (SUN, "a few hours", "Count them."),
    (SUN, "over 6", "Write one number."),
    (DROP, "at least 5 in", "Write one number."),
    ("rain_depth", "over 1 in", "Write one number."),
    ("gutter_outlets", "2+", "Write one number."),
    (DISTANCE, "under 12 ft", "Write the number itself."),
    (DISTANCE, "less than 12", "Write the number itself."),
    (DISTANCE, "up to 12 ft", "Write the number itself."),
    (DISTANCE, "12 ft or less", "Write the number itself."),
    (SUN, "under 6 hours", "Write the number itself."),
    ("gutter_outlets", "5 or 6", "Which: 5 or 6?"),
    ("hardiness_zone", "5-6", "Which: 5 or 6?"),
    ("rain_depth", "1 or 2 in", "Which: 1 or 2 in?"),
    ("rain_depth", "1 in or 1 1/2 in", "Which: 1 or 1 1/2 in?"),
    ("storm_hours", "6 to 12 h", "Which: 6 or 12 h?"),
    ("floor_length", "20 or 22", "Which: 20 or 22?"),
    ("dig_day", "next Saturday", "Which: Sat 5 Dec or Sat 12 Dec?"),
    ("dig_day", "Monday", "Which: Mon 30 Nov or Mon 7 Dec?"),
    ("lines_asked_on", "Monday", "Which: Mon 23 Nov or Mon 30 Nov?"),
    ("lines_holidays", "Thursday", "Which: Thu 26 Nov or Thu 3 Dec?"),
    ("lines_asked_on", "tomorrow", "Write the day it happened."),
    ("lines_asked_on", "next Saturday", "Write the day it happened."),
    ("lines_asked_on", "in two weeks", "Write the day it happened."),
    ("lines_finished_on", "in 10 days", "Write the day it happened."),
)
"""Question, what is typed, what is said."""

MISREADABLE = (
    (DISTANCE, "5-6 in", "could mean two things"),
    (DISTANCE, "14-6", "14 ft 6 in"),
    ("floor_length", "5-6", "5 ft 6 in"),
    ("pieces", "12-6 in by 14", "12 ft 6 in"),
    (DISTANCE, "6-5 ft", "6 ft 5 in"),
    (DISTANCE, "6 to 5 ft", "range"),
    (DISTANCE, "5, 6 or 7 ft", "range"),
    (DISTANCE, "5 or 6 or 7 ft", "range"),
    (DISTANCE, "5 or 6 ft 3 in", "range"),
    (DISTANCE, "5 ft 6 or 7", "range"),
    (DISTANCE, "10-15-20", "more than one number"),
    (DISTANCE, "1,250 or 1,500", "range"),
    (DISTANCE, "12 paces or 14 ft", "range"),
    (DISTANCE, "a dozen and a half ft", "digits"),
    (DISTANCE, "two dozen ft", ""),
    (DISTANCE, "a couple hundred ft", "digits"),
    (DISTANCE, "about", ""),
    (DISTANCE, "about time", ""),
    (DISTANCE, "over the hill", ""),
    (DISTANCE, "not over 50 or under 20", ""),
    (DISTANCE, "nearly 12 ft", "your best one"),
    (DROP, "1 - 1/2 in", ""),
    ("room_area", "10 x 10 to 12", ""),
    ("lines_asked_on", "10-15", "is not a date"),
    ("dig_day", "5 or 6 December", "is not a date"),
    ("dig_day", "3 days", "is not a date"),
    ("dig_day", "in 3 days ago", "is not a date"),
    ("dig_day", "next week", "is not a date"),
    ("dig_day", "about Saturday", "is not a date"),
    ("gutter_outlets", "about 3", "Write one number"),
    ("lines_business_days", "2-3 days", "Which: 2 or 3 days?"),
    ("contamination", "usual", "not on the list"),
    ("children", "normal", "not yes or no"),
    ("mark_distance", "usual", "digits"),
)
"""Question, what is typed, a part of what is said: no number is made of these."""


def test_obvious_speech_is_taken_and_kept_in_words_of_old(subtests):
    for key, text, kept in KEPT:
        with subtests.test(key=key, text=text):
            taken = heard(key, text)
            assert taken.kept == kept
            again = heard(key, kept)
            assert again.kept == kept and str(again.found) == str(taken.found)
            loaded = heard(key, kept, now=NO_CLOCK)
            assert str(loaded.found) == str(taken.found)


def test_what_is_not_clear_is_answered_in_one_short_sentence(subtests):
    for key, text, said in REFUSED:
        with subtests.test(key=key, text=text):
            assert refusal(key, text).split(": ")[-1] == said.split(": ")[-1]
            assert refusal(key, text).endswith(said)


def test_what_could_be_misread_makes_no_number(subtests):
    for key, text, part in MISREADABLE:
        with subtests.test(key=key, text=text):
            assert part in refusal(key, text)


def test_only_a_guess_is_rough(subtests):
    for text, rough in [
        ("about 12 ft", True),
        ("12ish", True),
        ("~5-6 ft", True),
        ("about 4 steps", True),
        ("over about 50 ft", True),
        ("12 ft", False),
        ("5 or 6 ft", False),
        ("over 50 ft", False),
    ]:
        with subtests.test(text=text):
            assert heard(DISTANCE, text).rough is rough


def test_what_was_made_of_it_is_said_back(session_of, subtests, clock):
    session = session_of(new_answers({"spots.1.near_spot": "well"}))
    for address, text, echo in [
        ("spots.1.well_distance", "about 80 ft", "80 ft"),
        ("spots.1.well_distance", "80 or 90 ft", "80 ft: the smaller of the two"),
        ("spots.1.well_distance", "over 80 ft", "80 ft: the least that it may be"),
        ("spots.1.well_distance", "80+", "80 ft: the least that it may be"),
        ("spots.1.well_distance", "over about 80 ft", "80 ft: the least that it may be"),
        ("spots.1.slope_drop", "5 or 6 in", "6 in: the larger of the two"),
        ("spots.1.sun_hours", "6-8", "6 hours: the smaller of the two"),
        ("spots.1.stands_after_rain", "sometimes", "a few times a year"),
        ("spots.1.sun_hours", "full sun", "8 hours"),
        ("rain_depth", "usual", "1 in"),
        ("dig_day", "Saturday", "Saturday 30 May 2026"),
    ]:
        with subtests.test(address=address, text=text):
            assert session.read(session.jump(address), text).echo == echo
    session = session_of(new_answers({"lines_requested": "asked"}))
    asked = session.jump("lines_asked_on")
    assert session.read(asked, "saturday").echo == "last Saturday, 23 May 2026"
    assert session.read(asked, "23 May").echo == "Saturday 23 May 2026"


RULE = {"local_rules": "basement", "local_basement": "30 ft"}
GUESSES = (
    # Twenty percent either side of the 10 ft of a basement, from the table of setbacks.
    ("us", {}, "basement_distance", "about 12 ft", "10 ft"),
    ("us", {}, "basement_distance", "8 ft or so", "10 ft"),
    ("us", {}, "basement_distance", "about 12 ft 1 in", ""),
    ("us", {}, "basement_distance", "about 7 ft 11", ""),
    ("us", {}, "basement_distance", "10 or 11 ft", ""),
    ("us", {}, "basement_distance", "10 ft", ""),
    ("metric", {}, "basement_distance", "~3.1 m", "3 m"),
    ("metric", {}, "basement_distance", "~3.7 m", ""),
    ("us", RULE, "basement_distance", "~32", "30 ft"),
    ("us", RULE, "basement_distance", "~12", ""),
    ("us", {"spots.1.wall_height": "14 ft"}, "retaining_wall_distance", "~15 ft", "14 ft"),
    ("us", {"spots.1.drip_line": "20 ft"}, "tree_distance", "~ 18 ft", "20 ft"),
    ("us", {"spots.1.septic_uphill": "yes"}, "septic_distance", "about 45 ft", "50 ft"),
    ("us", {"spots.1.septic_uphill": "no"}, "septic_distance", "about 45 ft", ""),
    ("us", {}, "overflow_building_distance", "about 9 ft", "10 ft"),
    # 10 in of pond, 3 in of mulch and no compost, and 2 ft below them.
    ("us", {"amend": "no"}, "wet_season_depth", "about 40 in", "3 ft 1 in"),
    ("us", {"amend": "no"}, "rock_depth", "about 6 ft", ""),
    ("us", {}, "drip_line", "about 10 ft", ""),
)  # fmt: skip
"""Units, other answers, question, what is typed, the distance it is too close to."""


def test_a_guess_close_to_what_is_needed_is_doubted_once(session_of, subtests):
    near = "basement, retaining_wall, tree, septic"
    for units, texts, key, text, needed in GUESSES:
        with subtests.test(key=key, text=text, units=units):
            session = session_of(new_answers({"units": units, "spots.1.near_spot": near, **texts}))
            step = session.jump(f"spots.1.{key}")
            if needed:
                with pytest.raises(Doubt) as doubt:
                    session.offer(step, text)
                said = f"That is close to the {needed} needed. "
                said += "Measure it, or give the same answer again."
                assert str(doubt.value) == said
                assert step.address not in session.answers.texts
            session.offer(step, text)
            assert step.address in session.answers.texts


STEEP = (
    # 8 % and 12 % of 10 ft are 9.6 in and 14.4 in; with slides it stops past 10 %.
    ({}, "slope_drop", "about 8 in", "Close to a slope of 8 %, a limit."),
    ({}, "slope_drop", "about 7 in", ""),
    ({}, "slope_drop", "roughly 16 in", "Close to a slope of 12 %, a limit."),
    ({}, "slope_drop", "roughly 18 in", ""),
    ({}, "slope_drop", "9 in", ""),
    ({"unstable_ground": "slides"}, "slope_drop", "~12 in", "Close to a slope of 10 %, a limit."),
    ({}, "slope_drop_turned", "~ 9 in", "Close to a slope of 8 %, a limit."),
    # A length that a distance is held against, beside that distance.
    ({}, "wall_height", "about 5 ft", "Close to the 6 ft that it is away."),
    ({}, "wall_height", "about 3 ft", ""),
    ({}, "drip_line", "about 22 ft", "Close to the 20 ft that it is away."),
)


def test_a_guess_close_to_a_limit_of_another_kind_is_doubted_once(session_of, subtests):
    given = {
        "near_spot": "retaining_wall, tree", "slope_run": "10 ft",
        "retaining_wall_distance": "6 ft", "tree_distance": "20 ft",
    }  # fmt: skip
    for more, key, text, said in STEEP:
        with subtests.test(key=key, text=text):
            texts = {f"spots.1.{one}": word for one, word in {**given, **more}.items()}
            session = session_of(new_answers({"units": "us", **texts}))
            step = session.jump(f"spots.1.{key}")
            if said:
                with pytest.raises(Doubt) as doubt:
                    session.offer(step, text)
                assert str(doubt.value) == f"{said} Measure it, or give it again."
            session.offer(step, text)
            assert step.address in session.answers.texts


def test_a_guess_is_weighed_beside_the_other_boxes_of_its_page(session_of):
    session = session_of(new_answers({"units": "us", "spots.1.spot_name": "a"}))
    session.go_to("spots.1.slope_run")
    words = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "about 9 in"}
    with pytest.raises(Doubt, match="Close to a slope of 8 %"):
        session.take(words)
    session.take(words)
    assert session.answers.texts["spots.1.slope_drop"] == "9 in"


def test_a_measured_answer_after_the_doubt_is_taken_at_once(session_of):
    session = session_of(new_answers({"spots.1.near_spot": "basement"}))
    step = session.jump("spots.1.basement_distance")
    with pytest.raises(Doubt):
        session.offer(step, "about 11 ft")
    assert session.offer(step, "11 ft 2 in").kept == "11 ft 2 in"


BARE = (
    ("us", "60", "Write 60 in or 5 ft."),
    ("us", "5", "Write 5 in or 5 ft."),
    ("us", "over 5", "Write 5 in or 5 ft."),
    ("us", "100", "Write 100 in or 8.33 ft."),
    ("metric", "1500", "Write 1500 mm or 1.5 m."),
    ("metric", "2", "Write 2 mm or 2 m."),
)


def test_a_bare_depth_below_that_is_typed_is_asked_for_its_unit(session_of, subtests):
    for units, text, said in BARE:
        for key in ("wet_season_depth", "rock_depth"):
            with subtests.test(units=units, text=text, key=key):
                session = session_of(new_answers({"units": units, "spots.1.spot_name": "a"}))
                step = session.jump(f"spots.1.{key}")
                with pytest.raises(Refused) as refused:
                    session.offer(step, text)
                assert refused.value.said == said
                assert step.address not in session.answers.texts


def test_a_bare_depth_below_in_a_file_stays_inches_and_may_be_given_again(session_of):
    session = session_of(new_answers({"spots.1.wet_season_depth": "60"}))
    step = session.jump("spots.1.wet_season_depth")
    assert magnitude(session.answers.at("spots", 1)[step.question], "in") == pytest.approx(60)
    assert session.offer(step, "60").kept == "60 in"
    metric = new_answers({"units": "metric", "spots.1.rock_depth": "1500"}).at("spots", 1)
    assert magnitude(metric[QUESTIONS["rock_depth"]], "mm") == pytest.approx(1500)


def test_nought_below_needs_no_unit(session_of):
    session = session_of(new_answers({"spots.1.spot_name": "a"}))
    assert session.offer(session.jump("spots.1.rock_depth"), "0").kept == "0 in"


def test_a_day_told_from_today_is_refused_in_a_file(subtests):
    for key in ("dig_day", "lines_asked_on"):
        for text in ("Saturday", "last Saturday", "two days ago", "in 10 days", "tomorrow"):
            with subtests.test(key=key, text=text), pytest.raises(Refused):
                heard(key, text, now=NO_CLOCK)


def test_a_pick_of_two_days_reads_back_across_the_new_year(subtests):
    late = MONDAY.replace(month=12, day=28)
    said = "Which: Sat 2 Jan 2027 or Sat 9 Jan 2027?"
    with pytest.raises(Refused) as refused:
        heard("dig_day", "next Saturday", now=late)
    assert refused.value.said == said
    assert heard("dig_day", "Sat 2 Jan 2027", now=late).kept == "2027-01-02"


_EDGES = st.fractions(min_value=1, max_value=300, max_denominator=8)
_UNITS = st.sampled_from(["ft", "in", "m", "yd", "paces"])


def _mixed(number) -> str:
    whole, rest = divmod(number, 1)
    return f"{whole} {rest}" if rest else str(whole)


@drawn(_EDGES, _EDGES, _UNITS, st.sampled_from(["{} or {} {}", "{} to {} {}", "{}-{} {}"]))
def test_of_a_range_one_of_its_own_ends_is_taken_or_nothing(one, other, unit, form):
    text = form.format(_mixed(one), _mixed(other), unit)
    for key, end in ((DISTANCE, min), ("pieces", max)):
        line = f"rectangle {text} by 1 ft" if key == "pieces" else text
        feet_and_inches = "-" in form and unit == "in" and one.denominator == 1 and other < 12
        if (one >= other and ("or" not in form or one == other)) or feet_and_inches:
            if one != other or "or" not in form:
                with pytest.raises(Refused):
                    heard(key, line)
            continue
        try:
            kept = heard(key, line).kept
        except Refused as refused:
            assert "large" in refused.said or "longer" in refused.said
            continue
        kept = kept.removeprefix("rectangle ").removesuffix(", 1 ft")
        assert kept == f"{_mixed(end(one, other))} {unit}"


@drawn(st.integers(1, 400), st.sampled_from(["about {}", "~{}", "{}ish", "around {} ft", "{} ft?"]))
def test_a_guess_is_the_number_that_was_guessed(number, form):
    taken = heard(DISTANCE, form.format(number))
    assert taken.kept == f"{number} ft" and taken.rough


def test_steps_in_a_file_are_listed_among_the_paced_lengths():
    walk = {"measured_by": "paces", "walkers.1.walker_name": "Ann", "walkers.1.pace_line": "50 ft"}
    spot = {"spots.1.near_spot": "well", "spots.1.well_distance": "12 steps"}
    found = [one.label for one in paced_lengths(new_answers({**walk, **spot}))]
    assert any("12 paces" in said for said in found)


HINTS = (
    ("rain_depth", "us", "such as 1 in, 3/4 in or 25 mm; a bare number is in"),
    ("deepest_pond", "us", "such as 6 in or 150 mm; a bare number is in"),
    ("hardiness_zone", "us", "such as 5b or 6"),
    ("slope_drop", "us", "such as 7 in, or level; a bare number is in"),
    ("wet_season_depth", "us", "such as 5 ft, or over 4 ft"),
    ("rock_depth", "metric", "such as 1.5 m, or over 1.2 m"),
)


def test_hints_show_the_answers_that_fit_the_question(subtests):
    for key, units, hint in HINTS:
        with subtests.test(key=key, units=units):
            assert QUESTIONS[key].kind.hint(units) == hint
