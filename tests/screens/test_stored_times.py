"""The file keeps times in figures with their zone; nobody is shown them so, on any page."""

from __future__ import annotations

import re

import pytest

from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import said_words
from interview.screens.review import entries

STORED = re.compile(r"\d{4}-\d\d-\d\dT\d\d")
"""The beginning of an instant as ISO 8601 writes it, which the file does."""


def test_every_time_in_an_answer_is_said_as_people_say_it() -> None:
    kept = "2026-05-28T08:00:00-05:00 left 6 7/8 in\n2026-05-28T09:30:00-05:00 left 5 3/4 in"
    said = "Thu 28 May, 08:00 left 6 7/8 in; Thu 28 May, 09:30 left 5 3/4 in"
    assert said_words(timing.READINGS.kind, kept) == said
    assert said_words(timing.TEST_START.kind, "2026-05-28T08:00:00-05:00") == "Thu 28 May, 08:00"


@pytest.mark.parametrize("name", ["finished_us.yaml", "halfway_soak_test.yaml"])
async def test_no_page_shows_a_time_as_the_file_keeps_it(sit, sample, name) -> None:
    async with sit(sample(name), size=(100, 45)) as person:
        while person.page != "QuestionScreen":
            await person.press("escape")
        stored = [a for a, t in person.session.answers.texts.items() if STORED.search(t)]
        assert len(stored) >= 2
        for address in stored:
            await person.press("ctrl+g")
            await person.types(address)
            assert person.session.answers.texts[address] and not STORED.search(person.sees())
            await person.press("enter")
            assert person.asked == address
            assert not STORED.search(person.sees()), address
        for key in ("f3", "ctrl+l"):
            await person.press(key)
            await person.settles()
            assert not STORED.search(person.sees()), key
            await person.press("escape")


@pytest.mark.parametrize("name", ["finished_us.yaml", "halfway_soak_test.yaml"])
async def test_no_row_of_the_list_of_answers_shows_one_either(sit, sample, name) -> None:
    async with sit(sample(name)) as person:
        told = [f"{one.label}: {one.said}" for one in entries(person.session)]
        assert len(told) > 60
        assert [one for one in told if STORED.search(one)] == []


def test_plain_lines_show_none_kept_listed_or_taken_away(talk, session_of, given, hole) -> None:
    answers = given(hole("round", "8 in", "6 in", "2026-05-27 11:00 left 5 in"))
    stored = [a for a, text in answers.texts.items() if STORED.search(text)]
    assert stored == ["holes.1.test_start", "holes.1.readings"]
    begun, readings = (f":go {one}" for one in stored)
    heard, _, _ = talk(begun, ":answers", ":clear", readings, ":clear", session=session_of(answers))
    assert "kept: Wed 27 May, 10:00; Enter keeps it" in heard
    assert "holes.1.readings: Wed 27 May, 11:00 left 5 in" in heard
    assert heard.count("= taken away: ") == 2
    assert not STORED.search(heard)


async def test_a_time_that_does_not_fit_is_shown_as_people_write_it_too(
    sit, write, located
) -> None:
    soaked, later = "2026-05-27T10:00:00-05:00", "2026-05-27T10:30:00-05:00"
    dug = {"holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "18 in"}
    fills = {"holes.1.first_fill_start": soaked, "holes.1.test_start": later}
    file = write("garden.yaml", {**located, **dug, **fills})
    told = file.read_text(encoding="utf-8")
    file.write_text(told.replace(later, later.replace("10:30", "08:00")), encoding="utf-8")
    async with sit("garden.yaml") as person:
        await person.press("g")
        await person.press("escape")  # from the timer
        await person.goes_to("holes.1.test_start")
        assert "2026-05-27 08:00" in person.sees() and not STORED.search(person.sees())
        assert "That is before this time" in person.sees_words()
