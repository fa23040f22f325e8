"""Obvious speech around any text: plain words and a value, or one plain sentence."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from interview.reading import (
    LARGER,
    SMALLER,
    Amount,
    Hearing,
    Paces,
    Refused,
    When,
    convert_length,
    read_day,
    read_length,
)

MONDAY = dt.date(2026, 11, 30)


def size(length):
    if isinstance(length, Paces):
        return f"paces {length.walker}", float(length.count)
    return "", float(convert_length(length, "mm"))


def hearing(careful: str = SMALLER, **more) -> Hearing:
    wanted = {"least": careful == SMALLER, "feet": True, **more}
    return Hearing(lambda text: read_length(text, "ft"), size, careful, **wanted)


_SPEECH = """
    about around ~ ish or so at least over + > under less than up to between from and a few several
    dozen couple of half steps paces Ann or to - .. 1 2 5 6 12 1/2 1-1/2 2,5 ½ . , ' " ft in m cm ?
    last next this on Saturday sat day days weeks ago in two ten now today tomorrow the
"""
_WORDS = _SPEECH.split()
_SAID = st.lists(st.sampled_from(_WORDS), max_size=9).map(" ".join) | st.lists(
    st.sampled_from([*_WORDS, " ", "\n", "\u200b", "\ud800"]), max_size=12
).map("".join)


@settings(max_examples=400)
@given(_SAID, st.sampled_from([SMALLER, LARGER, ""]))
def test_any_speech_is_a_length_in_words_of_old_or_one_plain_sentence(text, careful):
    try:
        spoken = hearing(careful).hear(text)
    except Refused as refused:
        assert 10 <= len(refused.said) <= 180
        assert refused.said.isprintable() and refused.said[-1] in ".?…"
        return
    assert read_length(spoken.words, "ft") == spoken.value


@settings(max_examples=300)
@given(_SAID, st.sampled_from(list(When)))
def test_any_words_for_a_day_are_a_day_or_one_plain_sentence(text, when):
    try:
        day = read_day(text, MONDAY, when)
    except Refused as refused:
        assert 10 <= len(refused.said) <= 180
        return
    assert isinstance(day.date, dt.date)
    if day.said:
        assert day.date < MONDAY


@settings(max_examples=200)
@given(st.integers(1, 60), st.integers(1, 60), st.sampled_from(["or", "to", "-"]))
def test_the_two_careful_ends_are_the_two_ends(one, other, join):
    text = f"{one} {join} {other} m" if join != "-" else f"{one}-{other} m"
    found = []
    for careful in (SMALLER, LARGER):
        try:
            found.append(hearing(careful).hear(text).value)
        except Refused:
            assert one >= other
            return
    ends = sorted((one, other))
    assert found == [Amount(ends[0], "m"), Amount(ends[1], "m")]


def test_a_weekday_is_within_the_week_on_its_own_side(subtests):
    names = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
    for ahead in range(1, 7):
        for short in (3, 9):
            name = names[ahead][:short]
            with subtests.test(name=name):
                coming = read_day(name, MONDAY, When.COMING).date
                assert coming == MONDAY + dt.timedelta(days=ahead)
                last = read_day(name, MONDAY)
                assert last.date == MONDAY - dt.timedelta(days=7 - ahead)
                assert last.said.startswith(f"last {names[ahead]}, ")


def test_the_work_is_bounded_however_many_joins_there_are(calls_of):
    def refused(text):
        with pytest.raises(Refused):
            hearing().hear(text)

    for text in ("1-" * 32, "1 or " * 12, "~" * 64, "a dozen " * 8, "+" * 64, "1..2" * 16):
        assert calls_of(lambda text=text: refused(text)) < 4_000
