"""Answers: an unchanging map from address to words, whose values are always worked out anew."""

from __future__ import annotations

import dataclasses

import pytest

from interview.asking.answers import NO_CLOCK, Answers, Interview
from interview.asking.kinds import Choice
from interview.asking.measures import Count, Measure
from interview.asking.question import UNKNOWN_TEXT, Member, Question, Status, Unanswered
from interview.quantities.units import magnitude, quantity
from interview.reading import Refused

WIDTH = Question(
    key="width", label="Width", text="How wide?", why="w", find_out="f",
    kind=Measure("length", "ft", "m", (1, "ft"), (10, "ft"), paced=True),
)  # fmt: skip
COUNT = Question(
    key="count", label="Count", text="How many?", why="w", find_out="f", kind=Count(1, 9),
    default=lambda _: "3",
    objection=lambda n, a: "Too many for that width." if (a.get(WIDTH) is None and n > 5) else None,
)  # fmt: skip
INSIDE = Question(
    key="inside", label="Inside", text="What?", why="w", find_out="f", group="things",
    kind=Choice((("a", "this"), ("b", "that"))),
)  # fmt: skip


def no_pace(answers, walker):
    raise Unanswered(WIDTH, "width")


def answers(**texts: str) -> Answers:
    interview = Interview((), lambda a: a.texts.get("units", "us"), no_pace)
    return Answers({key.replace("__", "."): text for key, text in texts.items()}, interview)


def test_a_value_is_read_from_the_words():
    assert magnitude(answers(width="30 in")[WIDTH], "ft") == pytest.approx(2.5)


def test_a_bare_number_follows_the_units_shown():
    assert magnitude(answers(width="2")[WIDTH], "ft") == pytest.approx(2)
    assert magnitude(answers(width="2", units="metric")[WIDTH], "m") == pytest.approx(2)


def test_no_answer_and_no_default_names_the_question():
    with pytest.raises(Unanswered) as gap:
        answers()[WIDTH]
    assert (gap.value.address, gap.value.unknown) == ("width", False)
    with pytest.raises(Unanswered) as gap:
        answers(width=UNKNOWN_TEXT)[WIDTH]
    assert gap.value.unknown


def test_a_default_stands_in_for_what_is_open_unknown_or_faulty(subtests):
    for text in [None, UNKNOWN_TEXT, "many", "12", "7"]:
        with subtests.test(text=text):
            some = answers(count=text) if text else answers()
            assert some[COUNT] == 3
            assert some.get(COUNT) is None
            assert some.assumed(COUNT) == "3"


def test_an_answer_is_not_assumed():
    assert answers(count="4").assumed(COUNT) is None
    assert answers(count="4")[COUNT] == 4


def test_where_a_question_stands(subtests):
    for text, standing in [
        (None, Status.OPEN),
        ("skip", Status.UNKNOWN),
        ("4", Status.ANSWERED),
        ("many", Status.FAULTY),
        ("7", Status.FAULTY),
    ]:
        with subtests.test(text=text, standing=standing):
            some = answers(count=text) if text else answers()
            assert some.standing(COUNT) is standing
            assert (some.fault(COUNT) is not None) == (standing is Status.FAULTY)


def test_the_fault_is_the_objection_itself():
    assert answers(count="7").fault(COUNT) == "Too many for that width."
    assert answers(count="7", width="2 ft").fault(COUNT) is None


def test_a_length_in_paces_is_answered_but_waits_for_the_pace():
    some = answers(width="3 paces")
    assert some.standing(WIDTH) is Status.ANSWERED
    assert some.get(WIDTH) is None
    assert some.fault(WIDTH) is None
    with pytest.raises(Unanswered):
        some[WIDTH]


def test_a_default_stands_in_while_the_pace_is_not_known():
    wide = dataclasses.replace(WIDTH, default=lambda _: "4 ft")
    some = answers(width="3 paces")
    assert some[wide] == quantity(4, "ft")
    assert some.assumed(wide) == "4 ft"


def test_answers_do_not_change():
    first = answers(width="2 ft")
    second = first.with_text("width", "3 ft")
    assert magnitude(first[WIDTH], "ft") == 2
    assert magnitude(second[WIDTH], "ft") == 3
    assert "width" not in second.without("width").texts
    with pytest.raises(dataclasses.FrozenInstanceError):
        first.scope = ("things", 1)


def test_a_changed_answer_changes_what_objects_to_it():
    some = answers(count="7")
    assert some.standing(COUNT) is Status.FAULTY
    assert some.with_text("width", "2 ft").standing(COUNT) is Status.ANSWERED


def test_items_of_a_group_are_seen_one_at_a_time():
    some = answers(things__1__inside="a", things__3__inside="b")
    assert some.numbers("things") == [1, 3]
    assert [view[INSIDE] for view in some.items("things")] == ["a", "b"]
    assert some.at("things", 3).address(INSIDE) == "things.3.inside"
    with pytest.raises(LookupError):
        some.address(INSIDE)
    assert some.at("things", 3).whole().scope is None


WIDE = Member("things", "thing", asks=lambda a: a.get(WIDTH) is not None, when="wide", digs=True)
MORE = {"label": "More", "text": "More?", "kind": Count(1, 9), "why": "w", "find_out": "f"}


def test_a_question_of_a_group_has_what_the_group_shares():
    plain = WIDE.question(key="plain", **MORE)
    assert (plain.group, plain.when, plain.digs) == ("things", "wide", True)
    assert plain.asks(answers(width="2 ft")) and not plain.asks(answers())
    assert WIDE.question(key="above", digs=False, **MORE).digs is False


def test_a_condition_of_its_own_comes_on_top_of_what_the_group_asks_for(subtests):
    for given, asked in [({}, False), ({"width": "2 ft"}, False), ({"count": "2"}, False),
     ({"width": "2 ft", "count": "2"}, True)]:  # fmt: skip
        with subtests.test(given=given, asked=asked):
            own = WIDE.question(
                key="own", asks=lambda a: a.get(COUNT) is not None, when="more", **MORE
            )
            assert (own.asks(answers(**given)), own.when) == (asked, "more")


def test_the_items_after_a_removed_one_move_up():
    some = answers(things__1__inside="a", things__2__inside="b", things__3__inside="a", width="2")
    left = some.without_item("things", 1)
    assert dict(left.texts) == {"things.1.inside": "b", "things.2.inside": "a", "width": "2"}


def test_numbers_are_in_order_past_nine():
    some = answers(things__10__inside="a", things__9__inside="b")
    assert some.numbers("things") == [9, 10]


def test_a_refusal_is_told_each_time_it_is_asked_for():
    some = answers(count="many")
    for _ in range(2):
        with pytest.raises(Refused):
            some._read(COUNT, "many")


def test_the_clock_of_answers_that_are_only_read_back_says_so():
    assert answers().now is NO_CLOCK
