"""Reading what was typed: once for each key pressed, and once for each answer kept."""

from __future__ import annotations

from collections import Counter

import pytest

from interview.asking.question import Status
from interview.garden.place import questions as place
from interview.garden.soak import timing_questions as timing
from interview.garden.stages import new_answers
from interview.garden.survey import surface_questions as surfacing
from interview.reading import durations, lengths


@pytest.fixture
def read(monkeypatch):
    """Count every text that was parted into numbers and units."""
    counts: Counter[str] = Counter()

    def counted(real):
        def terms_of(clean, *args, **more):
            counts[clean] += 1
            return real(clean, *args, **more)

        return terms_of

    for room in (lengths, durations):
        monkeypatch.setattr(room, "terms_of", counted(room.terms_of))
    return counts


@pytest.mark.parametrize("text", ["1", "1 in", "25 mm", "1 1/4"])
def test_a_length_is_read_once_as_it_is_typed(session_of, read, text):
    session = session_of()
    session.read(session.jump("rain_depth"), text)
    assert read[text] == 1 and read.total() == 1


def test_a_length_is_read_once_as_it_is_given_and_once_as_it_is_kept(session_of, read):
    session = session_of()
    step = session.jump("rain_depth")
    read.clear()
    session.offer(step, "1.25")
    assert read.pop("1.25") == 1
    for _ in range(3):
        assert session.answers[place.RAIN_DEPTH].to("in").m == pytest.approx(1.25)
    assert read == {"1.25 in": 1}


def test_a_loaded_answer_is_read_once(read):
    answers = new_answers({"rain_depth": "1.25 in"})
    for _ in range(3):
        assert answers.standing(place.RAIN_DEPTH) is Status.ANSWERED
        assert answers[place.RAIN_DEPTH].to("in").m == pytest.approx(1.25)
        assert answers.fault(place.RAIN_DEPTH) is None
    assert read["1.25 in"] == 1


def test_another_answer_leaves_what_was_read_as_it_is(session_of, read):
    session = session_of(new_answers({"rain_depth": "1.25 in"}))
    assert session.answers[place.RAIN_DEPTH]
    read.clear()
    session.offer(session.jump("garden_name"), "Elm Street")
    assert session.answers[place.RAIN_DEPTH]
    assert read["1.25 in"] == 0


def test_each_side_of_a_piece_is_read_once(read):
    view = new_answers().at("surfaces", 1)
    text = "rectangle 24 by 13 ft; circle 9 at 2, 3 ft"
    kept = surfacing.PIECES.kind.take(text, view).kept
    assert kept == "rectangle 24 ft, 13 ft\ncircle 9 ft at 2 ft, 3 ft"
    assert read == Counter({"24": 1, "13 ft": 1, "9": 1, "2": 1, "3 ft": 1})


def test_the_depth_of_a_reading_is_read_once(read):
    texts = {"holes.1.test_start": "2026-05-28T08:00:00-05:00", "holes.1.water_at_mark": "10 in"}
    view = new_answers(texts).at("holes", 1)
    kept = timing.READINGS.kind.take("2026-05-28T10:00:00-05:00 left 7", view).kept
    assert kept == "2026-05-28T10:00:00-05:00 left 7 in"
    assert read["7"] == 1
