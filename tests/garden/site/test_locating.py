"""The table of locate services: every state, and nothing assumed that a text of it calls unsafe."""

from __future__ import annotations

import subprocess
import sys
from datetime import date, timedelta

from interview.garden.place.questions import STATES
from interview.garden.site.locate import LocateState, earliest_dig_day, federal_in_wait
from interview.garden.site.locating import (
    CAREFUL,
    Counted,
    Life,
    StateNotice,
    notice_for,
    states,
    tolerance_zone,
)
from interview.quantities.evidence import Provenance
from interview.quantities.units import magnitude

CODES = [one[:2] for one in STATES.split(",")]

# What the texts of a state say where they differ from each other or from three business days,
# 24 in and ten working days, each from the page named in the row of the table. A life without a
# kind is here in days of the calendar; "later" is the number of business days after the request
# from which the text counts.
WAITS = {
    "AK": (2, 10), "CO": (2, 3), "DC": (2, 4), "GA": (2,), "HI": (5,), "MD": (2, 3), "MN": (2, 3),
    "MO": (3,), "MS": (2, 3), "NC": (2, 3), "OK": (2, 3), "UT": (2, 3), "VA": (2, 3), "VT": (2, 3),
}  # fmt: skip
STRIPS = {
    "AK": (24,), "DC": (18,), "GA": (18, 24), "MI": (48,), "NJ": (18, 24), "TX": (18, 24),
    "WI": (18,), "SD": (18,), "UT": (24,),
}  # fmt: skip
WORKING, CALENDAR = True, False
LIVES = {
    "AL": ((20, WORKING, 0), (10, WORKING, 0), (14, CALENDAR, 0)),
    "AK": ((14, CALENDAR, 0), (15, WORKING, 0)),
    "AZ": ((15, WORKING, 0), (15, CALENDAR, 0)),
    "AR": ((10, WORKING, 0), (20, WORKING, 0)),
    "CA": ((14, CALENDAR, 0), (28, CALENDAR, 0)),
    "CO": ((30, CALENDAR, 0),),
    "CT": ((30, CALENDAR, 0),),
    "DE": ((10, WORKING, 0),),
    "DC": ((10, CALENDAR, 0), (15, WORKING, 0)),
    "FL": ((30, CALENDAR, 0),),
    "GA": ((10, WORKING, 0), (21, CALENDAR, 0)),
    "HI": ((28, CALENDAR, 0),),
    "ID": ((10, WORKING, 0), (21, CALENDAR, 0), (28, CALENDAR, 0)),
    "IL": ((14, CALENDAR, 0), (27, CALENDAR, 0)),
    "IN": ((20, CALENDAR, 0),),
    "IA": ((20, CALENDAR, 0),),
    "KS": ((15, CALENDAR, 0),),
    "KY": ((10, WORKING, 0), (21, CALENDAR, 0)),
    "LA": ((5, WORKING, 2), (20, CALENDAR, 2)),
    "MD": ((12, WORKING, 0),),
    "MI": ((14, CALENDAR, 0), (21, CALENDAR, 0)),
    "MN": ((14, CALENDAR, 0),),
    "MS": ((10, WORKING, 0), (14, CALENDAR, 0)),
    "MO": ((10, CALENDAR, 0), (21, CALENDAR, 0)),
    "MT": ((30, CALENDAR, 0),),
    "NE": ((17, CALENDAR, 0), (17, WORKING, 0)),
    "NJ": ((10, WORKING, 0), (45, WORKING, 0)),
    "NM": ((10, WORKING, 0), (15, WORKING, 0)),
    "NY": ((10, WORKING, 0),),
    "NC": ((15, WORKING, 0),),
    "ND": ((21, CALENDAR, 0),),
    "OH": ((10, WORKING, 0),),
    "OK": ((10, WORKING, 0),),
    "PA": ((10, WORKING, 0),),
    "SC": ((15, WORKING, 3),),
    "SD": ((21, CALENDAR, 0),),
    "TN": ((10, WORKING, 0), (15, CALENDAR, 3)),
    "TX": ((14, CALENDAR, 0),),
    "UT": ((14, CALENDAR, 0),),
    "VA": ((15, CALENDAR, 0), (15, WORKING, 0)),
    "WA": ((10, WORKING, 0), (45, CALENDAR, 0)),
    "WV": ((10, CALENDAR, 0),),
    "WI": ((10, CALENDAR, 0),),
    "WY": ((14, WORKING, 0),),
}
ALL = [notice_for(code) for code in CODES]
# A request on a day off counts from the next working day, so only those are tried.
ASKED = [day for n in range(1100) if (day := date(2026, 1, 1) + timedelta(n)).weekday() < 5]


def _weekdays_after(day: date, count: int) -> date:
    while count:
        day += timedelta(1)
        count -= day.weekday() < 5
    return day


def _ends(asked: date, days: int, working: bool, later: int) -> date:
    start = _weekdays_after(asked, later)
    return _weekdays_after(start, days) if working else start + timedelta(days)


def _good_until(notice: StateNotice, asked: date) -> date:
    marks = notice.marks
    state = LocateState(asked, True, asked, valid_days=marks.days, counted=marks.counted)
    assert state.stale_after is not None
    return state.stale_after


def test_the_table_holds_every_state_once_and_dc():
    assert list(states()) == CODES
    assert len(CODES) == 51
    assert [one[3:] for one in STATES.split(",")] == [one.state for one in ALL]


def test_the_table_is_not_read_before_a_state_is_asked_for():
    done = subprocess.run(
        [sys.executable, "-c", "import interview.__main__, interview.garden.plan\n"
         "from interview.garden.site import locating\n"
         "print(locating.states.cache_info().currsize, locating.notice_for('').marks.days)\n"
         "print(locating.states.cache_info().currsize)"],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert done.stdout.split() == ["0", "10", "0"]


def test_every_row_says_where_it_was_read_and_how_much_stands_behind_each_part(subtests):
    for notice in ALL:
        with subtests.test(code=notice.code):
            assert notice.wait_standing is not None and len(notice.pages) > 8
            assert (notice.life is None) == (notice.life_standing is None)
            assert (notice.strip_in is None) == (notice.strip_standing is None)
            assert (
                bool(notice.hand) == bool(notice.hand_words) == (notice.hand_standing is not None)
            )
            assert notice.hand in ("", "spared", "not spared")
            assert notice.call_day in ("yes", "no", "not said")
            shown = notice.read()
            assert notice.state in shown and notice.pages in shown and notice.wait_words in shown
            assert f"({notice.wait_standing.value})" in shown
            for source in (notice.wait_source, notice.marks_source, notice.zone_source):
                assert source.standing is not Provenance.MEMORY


def test_no_wait_is_shorter_than_three_days_or_than_any_text_of_the_state(subtests):
    for notice in ALL:
        with subtests.test(code=notice.code):
            texts = (3, notice.wait, *WAITS.get(notice.code, ()))
            if notice.business_days is None:
                assert notice.longest_wait == max(texts)
            else:
                assert notice.business_days >= max(texts)
            assert notice.wait == max(texts) or max(texts) in (3, notice.longest_wait)


def test_hawaii_and_dc_wait_longer_than_three_days_and_remote_alaska_is_asked():
    assert notice_for("HI").business_days == 5
    assert notice_for("DC").business_days == 4
    assert notice_for("AK").business_days is None


def test_no_strip_is_narrower_than_two_feet_or_than_any_text_of_the_state(subtests):
    for notice in ALL:
        with subtests.test(code=notice.code):
            texts = (24, notice.strip_in or 0, *STRIPS.get(notice.code, ()))
            assert notice.hand_dig_in >= max(texts)
            assert magnitude(tolerance_zone(notice.code).us, "in") == notice.hand_dig_in
            assert magnitude(tolerance_zone(notice.code.lower()).metric, "in") >= max(texts)


def test_no_marks_are_good_for_longer_than_any_text_of_the_state(subtests):
    for notice in ALL:
        with subtests.test(code=notice.code):
            texts = LIVES.get(notice.code, ((10, WORKING, 0),))
            for asked in ASKED:
                assert _good_until(notice, asked) <= min(_ends(asked, *text) for text in texts), (
                    asked
                )


def test_every_life_read_is_among_the_texts_held_against_the_table(subtests):
    for notice in ALL:
        with subtests.test(code=notice.code):
            for life in (notice.life, notice.begin):
                if life is not None and notice.code in LIVES and notice.code != "LA":
                    assert (life.days, life.working) in [text[:2] for text in LIVES[notice.code]]
            assert (notice.code in LIVES) or notice.life is None


def test_the_marks_are_good_for_longer_than_two_weeks_only_where_that_was_read_at_the_source():
    longer = {one.code for one in ALL if one.marks.span > 14}
    assert longer == {"AZ", "CT", "FL", "MD", "MT", "NC", "SD", "VA"}
    assert all(notice_for(code).life_standing is Provenance.PUBLISHED for code in longer)


def test_the_marks_of_nine_states_end_with_their_own_texts():
    assert {one.code for one in ALL if one.marks.span < 14} == {"DC", "LA", "MO", "WI", "WV"}
    for code in ("MS", "MN", "TX", "AK"):
        assert (notice_for(code).marks.days, notice_for(code).marks.working) == (14, False)


def test_days_without_a_kind_are_taken_as_days_of_the_calendar(subtests):
    for notice in ALL:
        with subtests.test(code=notice.code):
            for life in (notice.life, notice.begin):
                assert life is None or life.kind_said or not life.working


def test_with_what_is_assumed_there_is_a_day_to_dig_after_every_request():
    pairs = {(one.business_days, one.marks): one for one in ALL if one.business_days}
    assert len(pairs) > 6
    for (wait, _), notice in pairs.items():
        for n in range(3660):
            asked = date(2026, 1, 1) + timedelta(n)
            first = earliest_dig_day(asked, wait, federal_in_wait(asked, wait))
            assert first <= _good_until(notice, asked), (notice.code, asked)


def test_a_cell_that_was_not_read_falls_to_the_careful_default():
    nothing = StateNotice(
        "ZZ", "nowhere", wait=2, wait_standing=Provenance.PUBLISHED, pages="x.org"
    )
    assert (nothing.business_days, nothing.hand_dig_in, nothing.marks) == (3, 24, CAREFUL)
    assert Life(10, True) == CAREFUL
    assert "practice 5.23" in nothing.marks_source.title
    assert notice_for("zz").business_days == 3 and notice_for("").marks == CAREFUL


def test_a_long_life_not_read_at_the_source_is_cut_to_two_weeks(subtests):
    for days, working, most in [(30, False, 14), (20, True, 10)]:
        for standing in [Provenance.SECONDARY, Provenance.CARRIED, None]:
            with subtests.test(standing=standing, days=days, working=working, most=most):
                row = notice_for("CT")._replace(
                    begin=None, life=Life(days, working), life_standing=standing
                )
                assert row.marks == Life(most, working)
                assert "practice 5.23" in row.marks_source.title
                known = row._replace(life_standing=Provenance.PUBLISHED)
                assert known.marks == Life(days, working)
                assert "Connecticut" in known.marks_source.title


def test_a_short_life_holds_whoever_tells_it(subtests):
    for standing in list(Provenance):
        with subtests.test(standing=standing):
            row = notice_for("CT")._replace(begin=None, life=Life(7, False), life_standing=standing)
            assert row.marks == Life(7, False)


def test_a_text_that_gives_fewer_days_to_begin_than_to_dig_decides():
    row = notice_for("CT")._replace(life=Life(30, False), begin=Life(10, True))
    assert row.marks == Life(10, True) and row.marks.counted is Counted.FROM_REQUEST


def test_a_narrow_strip_does_not_narrow_what_is_assumed():
    row = notice_for("CT")._replace(strip_in=18.0, strip_standing=Provenance.PUBLISHED)
    assert row.hand_dig_in == 24 and "24 in" in row.zone_source.title
    assert row._replace(strip_in=30.0).zone_source.title.startswith("Connecticut")


def test_what_was_read_of_a_state_is_told_with_what_stands_behind_it(subtests):
    """An invented state."""
    bare = StateNotice("XX", "Ruritania", 2, wait_words="2 full days", pages="law 1")
    start = "Ruritania, as read. Wait: 2 full days{}. Day of the call counts: not said; here it "
    start += "never does. "
    end = " Pages: law 1. Your ticket goes before all of it."
    nothing = "Life of the marks: not read. Strip: not read."
    copied, second = Provenance.SECONDARY, " (published, read in a second copy)"
    for change, said in [
        ({}, start.format("") + nothing),
        ({"wait_standing": copied}, start.format(second) + nothing),
        ({"life": Life(10, True), "life_from": "the request"},
         start.format("") + "Marks: 10 working days from the request. Strip: not read."),
        ({"life": Life(10, False), "life_standing": copied},
         start.format("") + f"Marks: 10 calendar days{second}. Strip: not read."),
        ({"strip_in": 18.0, "begin": Life(5, True, kind_said=False)},
         start.format("") + "Life of the marks: not read. Digging begins within 5 days. "
         "Strip: 18 in (457 mm)."),
        ({"hand": "spared", "hand_words": "to 2 ft deep", "note": "Ask..."},
         start.format("") + f"{nothing} Hand digging spared: to 2 ft (0.6 m) deep. Ask."),
        ({"note": ".Ask"}, start.format("") + f"{nothing} .Ask."),
    ]:  # fmt: skip
        with subtests.test(**change):
            assert bare._replace(**change).read() == said + end
    assert bare._replace(wait=None).read() == ""


def test_the_strip_by_a_mark_is_told_in_either_unit_and_abroad_as_well(subtests):
    """48 in are 1.2192 m, 24 in 0.6096 m: up to a hundredth where the rule is in inches."""
    for state, country, inches, meters, us, metric in [
        ("mi", "us", 48, 1.22, "4 ft", "1.22 m"),
        ("", "us", 24, 0.61, "2 ft", "0.61 m"),
        ("", "canada", 40, 1.0, "3 ft 4 in", "1 m"),
        ("", "elsewhere", 24, 0.6, "2 ft", "0.6 m"),
    ]:
        with subtests.test(state=state, country=country):
            zone = tolerance_zone(state, country)
            assert (zone.words(False), zone.words(True)) == (us, metric)
            assert abs(magnitude(zone.shown(False), "in") - inches) < 1e-9
            assert abs(magnitude(zone.shown(True), "m") - meters) < 1e-9


def test_michigan_wants_four_feet_of_hand_digging():
    assert notice_for("mi ").hand_dig_in == 48
