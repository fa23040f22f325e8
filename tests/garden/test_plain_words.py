"""The words of the questions: short, plain, and each term of the trade explained."""

from __future__ import annotations

import datetime as dt
import re

import pytest

from interview.garden.soak.hole_questions import HOLE_DEPTH
from interview.garden.stages import every_question, new_answers

ALL = list(every_question())
MOST_TEXT, MOST_WHY_SENTENCES, MOST_HOW_SENTENCES = 110, 2, 3
"""A page of 60 columns by 20 rows holds so much: a choice of this project."""
MOST_GRADE = 9.0
"""The person addressed reads as after eight or nine years of school: a choice of this project."""
MOST_GRADE_HOW = 9.5
HARD_BUT_NEEDED = {
    "Do not dig, not even the test hole, before every buried line is marked and every owner has "
    "answered.": "the caution of the lines, in one breath so that nobody reads half of it",
}

JARGON = (
    "infiltration", "percolation", "catchment", "hydraulic", "invert", "datum", "freeboard",
    "ponding", "drawdown", "permeability", "conductivity", "hydrograph", "headloss", "thalweg",
)  # fmt: skip
NAMES_OF_THE_TRADE = {"known_rate": ("hydraulic", "conductivity", "infiltration")}
"""Words that are looked for in a report, and explained in the same sentence."""
EXPLAINED = {
    "berm": "a low bank of soil",
    "rim": "the top edge all around",
    "pond": "the water that stands in the garden after rain",
    "notch": "the low place in the rim",
    "swale": "a shallow grass ditch",
    "easement": "somebody's right to use a strip of your ground",
    "plat": "the map of your lot",
    "grading": "reshaping the ground",
    "ticket": "the receipt for your request",
    "line level": "a small level that hangs on the string",
    "soil survey": "a public soil map",
    "bluff": "a high, steep bank",
    "corrected rate": "what is left",
    "soak rate": "how fast the soil takes water",
    "downspout": "a pipe that takes the gutter's water down",
    "ridge": "the top of the roof",
    "gable end": "the wall under the point of the roof",
    "curve number": "grade soil and cover from 0 to 100",
    "Type II": "a 24-hour storm with one sharp burst",
    "wetland rating": "how wet it likes to stand",
    "usual shortcut": "treats the garden like the hole",
    "easements": "somebody's right",
    "mulch": "the loose wood you spread on the soil",
    "10-year rain": "the heaviest 5 minutes in about ten years",
    "90 percent event": "90 of 100 rainy days bring no more",
}


def syllables(word: str) -> int:
    """Count the runs of vowels, without a silent e at the end and the e of a silent -ed."""
    bare = re.sub(r"[^a-z]", "", word.casefold())
    bare = re.sub(r"(?<=[^aeiouyl])e$|(?<=[aeiouy]l)e$", "", bare)
    bare = re.sub(r"(?<=[^dt])ed$", "d", bare)
    return max(1, len(re.findall(r"[aeiouy]+", bare)))


def reading_grade(text: str) -> float:
    """Return the Flesch-Kincaid grade of a text.

    0.39 words / sentences + 11.8 syllables / words - 15.59: Kincaid, Fishburne, Rogers and
    Chissom, Derivation of New Readability Formulas for Navy Enlisted Personnel, Research Branch
    Report 8-75, 1975 (the formula from memory). The count of syllables is our own.
    """
    sentences = max(1, len(re.findall(r"[.?!:;](?=\s|$)", text)))
    words = re.findall(r"[A-Za-z][A-Za-z'-]*", text)
    return 0.39 * len(words) / sentences + 11.8 * sum(map(syllables, words)) / len(words) - 15.59


def sentences(text: str) -> list[str]:
    return re.split(r"(?<=[.?!])\s+(?=[“A-Z0-9])", text)


def shown(question) -> dict[str, str]:
    return {
        name: said
        for name in ("text", "why", "find_out", "caution")
        if (said := getattr(question, name))
    }


@pytest.mark.parametrize(
    ("word", "count"),
    [("hole", 1), ("marked", 1), ("needed", 2), ("soil", 1), ("berm", 1), ("overflow", 3),
     ("garden", 2), ("able", 2), ("association", 5), ("tree", 1), ("gauge", 1)],
)  # fmt: skip
def test_syllables_are_counted_as_a_dictionary_parts_them(word, count):
    # Counted by saying them; "association" parts as as-so-ci-a-tion, of which the rule sees four.
    assert abs(syllables(word) - count) <= (1 if word == "association" else 0)


def test_the_grade_of_a_text_is_that_of_the_formula():
    # Worked out by hand: 6 words, 1 sentence, 6 syllables; then 4 words of 3, 4, 5 and 5.
    assert reading_grade("The cat sat on the mat.") == pytest.approx(0.39 * 6 + 11.8 - 15.59)
    assert reading_grade("Hydrologists calculate evapotranspiration accurately.") > 30


def test_every_question_asks_or_tells_in_a_whole_sentence(subtests):
    for question in ALL:
        with subtests.test(key=question.key):
            assert question.text[0].isupper() and question.text[-1] in "?."
            assert len(question.text) <= MOST_TEXT
            assert len(sentences(question.why)) <= MOST_WHY_SENTENCES
            assert len(sentences(question.find_out)) <= MOST_HOW_SENTENCES


def test_the_words_can_be_read_after_eight_or_nine_years_of_school(subtests):
    for question in ALL:
        for name, said in shown(question).items():
            with subtests.test(key=question.key, name=name):
                if said not in HARD_BUT_NEEDED:
                    most = MOST_GRADE_HOW if name == "find_out" else MOST_GRADE
                    assert reading_grade(said) <= most, said


def test_what_is_excepted_for_its_reading_grade_still_stands(subtests):
    said = [one for question in ALL for one in shown(question).values()]
    for hard in HARD_BUT_NEEDED:
        assert hard in said and MOST_GRADE < reading_grade(hard) < MOST_GRADE + 1


def test_no_word_of_the_trade_meets_a_first_timer_unexplained(subtests):
    for question in ALL:
        with subtests.test(key=question.key):
            labels = [label for _, label in getattr(question.kind, "options", ())]
            told = " ".join([question.label, *shown(question).values(), *labels])
            known = NAMES_OF_THE_TRADE.get(question.key, ())
            found = [word for word in JARGON if re.search(rf"\b{word}", told, re.IGNORECASE)]
            assert [word for word in found if word not in known] == []


def test_a_name_of_the_trade_is_explained_in_its_own_sentence():
    for question in ALL:
        if question.key in NAMES_OF_THE_TRADE:
            first = sentences(question.find_out)[0]
            assert "conductivity" in first and "how fast level ground takes water" in first


def test_every_term_is_explained_at_a_question_that_uses_it(subtests):
    for term, meaning in EXPLAINED.items():
        with subtests.test(term=term):
            told = [" ".join([*shown(one).values(), one.more]) for one in ALL]
            told += [label for one in ALL for _, label in getattr(one.kind, "options", ())]
            both = [one for one in told if term in one and meaning in one]
            assert both, f"{term} is nowhere explained as {meaning}"


def test_a_measure_for_the_ground_is_taken_from_the_hose(subtests):
    for question in ALL:
        near = question.group == "spots" and question.key.endswith("_distance")
        if (near and not question.key.startswith("overflow")) or question.key == "spout_distance":
            with subtests.test(key=question.key):
                assert question.text.endswith("from the hose?") or "to the hose?" in question.text


def test_the_caution_of_an_open_hole_stands_in_full_once_and_short_after():
    cautions = {one.key: one.caution for one in ALL if one.group == "holes" and one.caution}
    full = [key for key, said in cautions.items() if "drown" in said]
    assert full == ["hole_depth", "hole_left"]
    still = [key for key, said in cautions.items() if "Never leave the hole open" in said]
    assert len(still) >= 8 and set(full) < set(still)
    assert all("board and a weight, or fill it" in cautions[key] for key in still)


def test_the_why_of_the_fall_speaks_of_a_pipe_only_where_a_pipe_is_chosen():
    from interview.garden.size.questions import SPOUT_FALL

    assert "pipe" in SPOUT_FALL.worded(new_answers({"water_by": "pipe"})).why
    assert "pipe" not in SPOUT_FALL.worded(new_answers({"water_by": "channel"})).why


CLEAR = {
    "country": "us",
    "lines_requested": "asked",
    "lines_asked_on": "2026-05-20",
    "lines_business_days": "3",
    "lines_holidays": "none",
    "lines_answered": "yes",
    "lines_finished_on": "2026-05-22",
    "lines_valid_days": "14",
    "lines_valid_kind": "calendar",
    "private_lines": "none",
    "mark_distance": "12 ft",
}
NOON = dt.datetime(2026, 5, 28, 12, 0, tzinfo=dt.UTC)


@pytest.mark.parametrize(
    ("more", "open_today"),
    [
        ({}, True),
        ({"lines_answered": "no"}, False),
        ({"mark_distance": "1 ft"}, False),
        ({"lines_asked_on": "2026-05-01", "lines_finished_on": "2026-05-06"}, False),
        ({"holes.1.hole_depth": "18 in"}, False),
    ],
)
def test_the_hole_says_that_the_lines_let_one_dig_only_where_they_do(more, open_today):
    answers = new_answers({**CLEAR, **more}, NOON).at("holes", 1)
    asked = HOLE_DEPTH.worded(answers)
    # Fourteen days of the calendar after 20 May, by counting.
    assert ("The lines let you dig today (marks good to Wed 3 Jun)." in asked.text) == open_today
    assert ("Dig 12 to 18 in" in asked.text) == open_today
    assert len(asked.text) <= MOST_TEXT and asked.caution == HOLE_DEPTH.caution
    assert "let you dig" not in HOLE_DEPTH.text
