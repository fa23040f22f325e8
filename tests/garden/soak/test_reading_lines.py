"""The lines of soak readings: how they are read, kept and said."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import given as every
from hypothesis import strategies as st

from interview.asking.question import Unanswered
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import said_line, typed_line
from interview.garden.stages import new_answers
from interview.quantities.units import magnitude
from interview.reading import Refused

KIND = timing.READINGS.kind


@pytest.fixture
def view(given):
    """Return the view of a hole filled to 8 in at ten in the morning, the day before."""
    texts = {
        "units": "us",
        "holes.1.hole_depth": "20 in",
        "holes.1.water_at_mark": "8 in",
        "holes.1.test_start": "2026-05-27 10:00",
    }
    return given(texts).at("holes", 1)


def clock_of(events) -> list[str]:
    return [f"{event.at:%H:%M}" for event in events]


def depths_of(events) -> list[float | None]:
    return [None if event.depth is None else magnitude(event.depth, "in") for event in events]


def test_readings_by_elapsed_time_count_from_the_start_of_the_test(view):
    events = KIND.read("+1h left 7 in; +2h left 6 1/8 in", view)
    assert clock_of(events) == ["11:00", "12:00"]
    assert depths_of(events) == [7, 6.125]


def test_readings_by_the_clock_come_after_one_another(view):
    events = KIND.read("10:50 am left 7 in\n2:05 pm left 3 in\n01:15 left 1 in", view)
    assert [event.at.day for event in events] == [27, 27, 28]
    assert clock_of(events) == ["10:50", "14:05", "01:15"]


def test_the_words_of_a_reading(subtests, view):
    for line, what, depth in [
        ("+1h left 7", "left", 7),
        ("+1h LEFT 7 in", "left", 7),
        ("+1h drop 1 1/8 in", "drop", 1.125),
        ("+1h dropped 1 in", "drop", 1),
        ("+1h refilled to 8 in", "refilled", 8),
        ("+1h refilled 8 in", "refilled", 8),
        ("+1h empty", "empty", None),
        ("+1h emptied", "emptied", None),
        ("11:00 7 in", "left", 7),
        ("11:00, left 7 in", "left", 7),
        ("11:00, 7 in", "left", 7),
    ]:
        with subtests.test(line=line, what=what, depth=depth):
            (event,) = KIND.read(line, view)
            assert (event.what, event.struck) == (what, False)
            assert depths_of([event]) == [depth]
            assert clock_of([event]) == ["11:00"]


def test_a_day_and_a_time_need_no_word_before_the_depth(subtests, view):
    for line in [
        "may 27 11:00 am 7 in",
        "May 27, 11:00 7",
        "27 May 11 am, 7 in",
        "2026-05-27 11:00 7 in",
        "11:00 am 7 in",
    ]:
        with subtests.test(line):
            (event,) = KIND.read(line, view)
            assert (event.at.day, clock_of([event]), depths_of([event])) == (27, ["11:00"], [7])


def test_a_depth_without_a_word_means_what_was_chosen(view):
    whole = view.with_text("holes.1.read_as", "drop")
    (event,) = KIND.read("11:00 1 in", whole)
    assert event.what == "drop"


def test_a_reading_taken_out_stays_in_the_file_and_does_not_count(view):
    text = KIND.settle("+1h left 7 in\nstruck +2h left 9 in\n+3h left 6 in", view)
    assert "struck 2026-05-27T12:00:00-05:00 left 9 in" in text
    events = KIND.read(text, view)
    assert [event.struck for event in events] == [False, True, False]
    assert KIND.echo(events, view) == "2 readings"
    assert len(timing.depths(events, view[timing.WATER_AT_MARK])) == 2


def test_kept_readings_are_full_and_read_the_same_without_a_clock(view):
    text = KIND.settle("+1h left 7\n12:00 left 6 in\n+3h refilled to 8 in\n+4h empty", view)
    assert text.splitlines() == [
        "2026-05-27T11:00:00-05:00 left 7 in",
        "2026-05-27T12:00:00-05:00 left 6 in",
        "2026-05-27T13:00:00-05:00 refilled to 8 in",
        "2026-05-27T14:00:00-05:00 empty",
    ]
    later = new_answers(view.texts).at("holes", 1)
    assert KIND.read(text, later) == KIND.read(text, view)
    assert KIND.settle(text, view) == text


@pytest.mark.parametrize(
    "line", ["2026-05-27T14:00:00-05:00 empty, gone", "2026-05-27 14:00 empty, gone"]
)
def test_a_remark_after_empty_stands_in_a_file_and_says_no_depth(view, line):
    loaded = new_answers(view.texts).at("holes", 1)
    assert [event.what for event in KIND.read(line, loaded)] == ["empty"]


def test_no_depth_is_left_where_the_hole_was_empty(view):
    with pytest.raises(Refused, match="Reading 1:"):
        KIND.settle("14:00 empty left 3 in", view)


def test_readings_that_cannot_be_are_refused_by_number(subtests, view):
    for text, words in [
        ("+1h", "Write a time and a depth"),
        ("left 7 in", "Write the time first, such as 10:30, left 4 in."),
        ("7 in", "Write the time first"),
        ("7", "Write the time first"),
        ("6 1/2 in", "Write the time first"),
        ("6.5", "Write the time first"),
        ("empty", "Write the time first"),
        ("+1h left", "The depth is missing"),
        ("+1h left 9 in", "the water is higher than before"),
        ("+1h left 7 in; +1h left 6 in", "Reading 2: it has the same time as reading 1"),
        ("09:59 left 7 in", "has not come yet"),
        ("+1h drop 9 in", "the drop is more than all the water"),
        ("+2h left 7 in; +1h left 6 in", "Reading 2: its time is before reading 1"),
        ("2026-05-27 09:59 left 7 in", "its time is before the start of the test"),
        ("2026-05-27 10:00 left 7 in", "it has the same time as the start of the test"),
        ("+1h left 7 in; +2h left 7 1/4 in", "Reading 2: the water is higher than before"),
        ("+1h empty; +2h left 1 in", "Reading 2: the water is higher than before"),
        ("+1h refilled to 0 in", "a refill leaves some water"),
        ("struck +30 min left 9 in; +1h left 9 in", "Reading 2: the water is higher"),
        ("+1h refilled to 21 in", "the water cannot be deeper than the hole"),
        ("+25h left 7 in", "its time has not come yet"),
        ("+1h left 7 in; +2h left lots", "Reading 2: "),
    ]:
        with subtests.test(text=text, words=words):
            with pytest.raises(Refused) as refused:
                KIND.read(text, view)
            assert words in str(refused.value)
            assert "Reading" in str(refused.value)


def test_the_nearest_readings_that_can_be_are_taken(subtests, view):
    for text in [
        "+1h left 8 in",
        "+1h drop 8 in",
        "+1h empty; +2h empty",
        "+1h empty; +2h refilled to 8 in; +3h left 7 in",
        "+1h left 5 in; +2h refilled to 20 in",
        "+1h left 5 in; +2h refilled to 4 in",
        "+1h left 7 in; struck +1h left 7 in; +2h left 6 in",
    ]:
        with subtests.test(text=text):
            assert KIND.read(text, view)


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@every(st.permutations(range(1, 6)))
def test_lines_in_another_order_than_their_times_are_refused(view, order):
    text = "; ".join(f"+{hour}h left {8 - hour} in" for hour in order)
    if list(order) == sorted(order):
        assert len(KIND.read(text, view)) == 5
        return
    with pytest.raises(Refused, match="Reading"):
        KIND.read(text, view)


def test_a_kept_reading_is_said_with_its_time_as_people_say_it():
    assert said_line("2026-05-28T10:05:30-05:00 left 7 in") == "Thu 28 May, 10:05 left 7 in"
    assert said_line("struck 2026-05-28T10:05:30-05:00 empty") == "struck Thu 28 May, 10:05 empty"
    for odd in ("+2h left 7", "2026-13-40T10:05:30-05:00 left 7 in"):
        assert said_line(odd) == odd


def test_readings_wait_for_the_start_of_the_test(given):
    view = given({"units": "us"}).at("holes", 1)
    with pytest.raises(Unanswered) as gap:
        KIND.read("+1h left 7 in", view)
    assert gap.value.question is timing.TEST_START


def test_a_clock_set_back_is_refused_and_never_a_negative_time(view, clock):
    text = KIND.settle("+1h left 7 in", view)
    clock.now -= dt.timedelta(days=2)
    early = new_answers(view.texts, clock.now).at("holes", 1)
    with pytest.raises(Refused, match="has not come yet"):
        KIND.read(text, early)


def test_a_reading_to_be_corrected_has_its_time_as_one_types_it_here():
    here = dt.datetime(2026, 5, 28, 12, tzinfo=dt.timezone(dt.timedelta(hours=-5)))
    for kept, typed in (
        ("2026-05-28T10:05:00-05:00 left 7 in", "2026-05-28 10:05 left 7 in"),
        ("struck 2026-05-28T10:05:30-05:00 empty", "struck 2026-05-28 10:05:30 empty"),
        ("2026-05-28T10:05:00+01:00 left 7 in", "2026-05-28 10:05 +01:00 left 7 in"),
        ("2026-02-30T10:05:00-05:00 left 7 in", "2026-02-30T10:05:00-05:00 left 7 in"),
    ):
        assert typed_line(kept, here) == typed
