"""Lists on plain lines: each line is kept at once, and a wrong one costs none of the others."""

from __future__ import annotations

import pytest


@pytest.fixture
def talk(talk, session_of, given):
    """Return a runner: it goes to a list and types lines there; returns the words and the session.

    Given a session it goes on with that one.
    """

    def run(address, *lines, session=None, **answers):
        return talk(*lines, session=session or session_of(given(answers)), at=address)[:2]

    return run


HOLIDAYS = "lines_holidays"
ASKED = {"lines_requested": "asked", "lines_asked_on": "2026-05-20", "lines_ticket": "W-1"}


def test_a_new_line_is_added_to_those_kept(talk):
    heard, session = talk(HOLIDAYS, "2026-07-03", "", **ASKED, lines_holidays="2026-05-25")
    assert "kept 1. 2026-05-25" in heard
    assert session.answers.texts[HOLIDAYS] == "2026-05-25\n2026-07-03"
    assert session.place.name == "name"


def test_a_piece_is_added_to_those_kept_and_the_area_is_said(talk, roof):
    kept = roof("rectangle 20 ft by 30 ft")
    heard, session = talk("surfaces.1.pieces", "less rectangle 2 ft by 3 ft", "", **kept)
    assert session.answers.texts["surfaces.1.pieces"].splitlines() == [
        "rectangle 20 ft by 30 ft",
        "less rectangle 2 ft by 3 ft",
    ]
    assert "= 2. less rectangle 2 ft by 3 ft" in heard
    # 20 by 30 less 2 by 3, worked by hand
    assert "Plan area so far: 594 ft²" in heard


def test_each_line_is_said_back_as_it_was_understood(talk):
    heard, _ = talk(HOLIDAYS, "25 May 2026; 3 July 2026", "", **ASKED)
    assert "= 1. Monday 25 May 2026" in heard
    assert "= 2. Friday 3 July 2026" in heard
    assert heard.count("Another row, or an empty line to go on.") == 1


def test_a_line_of_several_parted_by_commas_is_told_item_by_item(talk):
    heard, session = talk(HOLIDAYS, "May 25, 2026, July 3, 2026", "", **ASKED)
    assert "= 1. Monday 25 May 2026" in heard
    assert "= 2. Friday 3 July 2026" in heard
    assert session.answers.texts[HOLIDAYS] == "2026-05-25\n2026-07-03"


def test_each_line_is_saved_before_the_next_is_asked_for(talk, keeper):
    talk(HOLIDAYS, "2026-05-25", "2026-07-03", **ASKED)
    texts, stopped_at = keeper.saves[0]
    assert texts[HOLIDAYS] == "2026-05-25"
    assert stopped_at == "lines_holidays, unfinished"
    assert keeper.saves[1][0][HOLIDAYS] == "2026-05-25\n2026-07-03"


def test_a_wrong_line_is_refused_alone(talk):
    heard, session = talk(HOLIDAYS, "2026-05-25", "2026-13-40; 2026-07-03", "May", "", **ASKED)
    assert heard.count("  ! ") == 2
    assert session.answers.texts[HOLIDAYS] == "2026-05-25\n2026-07-03"
    assert session.place.name == "name"


def test_a_command_within_a_list_is_carried_out_and_the_list_goes_on(subtests, talk):
    for command, words in [
        (":why", "A holiday is not a business day"),
        (":how", "Write one date per line"),
        (":x", ":skip"),
    ]:
        with subtests.test(command=command, words=words):
            heard, session = talk(HOLIDAYS, "2026-05-25", command, "2026-07-03", "", **ASKED)
            assert words in heard.partition("= 1. Monday")[2].partition("= 2. Friday")[0]
            assert session.answers.texts[HOLIDAYS] == "2026-05-25\n2026-07-03"


def test_leaving_a_list_in_its_midst_keeps_its_lines(talk):
    _, session = talk(HOLIDAYS, "2026-05-25", ":go units", **ASKED)
    assert session.answers.texts[HOLIDAYS] == "2026-05-25"
    assert session.step.address == "units"


def test_no_single_word_takes_kept_lines_away(subtests, talk):
    for word in ["none", "no", "don't know"]:
        with subtests.test(word=word):
            heard, session = talk(HOLIDAYS, word, **ASKED, lines_holidays="2026-05-25")
            assert "The list holds 1 already." in heard
            assert session.answers.texts[HOLIDAYS] == "2026-05-25"
            assert session.step.address == HOLIDAYS


def test_none_answers_a_list_that_holds_nothing(talk):
    _, session = talk(HOLIDAYS, "none", **ASKED)
    assert session.answers.texts[HOLIDAYS] == "none"
    assert session.place.name == "name"


def test_a_line_is_written_anew_taken_out_and_the_whole_list_cleared(talk):
    heard, session = talk(
        HOLIDAYS,
        ":correct 1 2026-05-26",
        ":strike 2",
        ":strike 9",
        **ASKED,
        lines_holidays="2026-05-25; 2026-07-03",
    )
    assert "= taken out: 2026-07-03" in heard
    assert "There is no row 9; there are 1." in heard
    assert session.answers.texts[HOLIDAYS] == "2026-05-26"
    heard, session = talk(HOLIDAYS, ":clear", "none", session=session)
    assert "= taken away: 2026-05-26" in heard
    assert session.answers.texts[HOLIDAYS] == "none"


WALKS = {
    "measured_by": "paces",
    "walkers.1.walker_name": "Ann",
    "walkers.1.pace_line": "50 ft",
}
COUNTS = "walkers.1.pace_counts"


def test_lines_that_are_too_few_yet_wait_and_are_saved_meanwhile(talk, session_of, given, keeper):
    session = session_of(given(WALKS))
    _, session = talk(COUNTS, "20", "21", session=session)
    assert COUNTS not in session.answers.texts
    assert session.drafts[COUNTS] == "20\n21\n"
    assert len(keeper.saves) == 2
    heard, session = talk(COUNTS, "", "20", "", session=session)
    assert "kept 2. 21" in heard
    assert "! Walk the course at least three times" in heard
    assert session.answers.texts[COUNTS] == "20\n21\n20"
    assert COUNTS not in session.drafts


def test_an_unlikely_list_is_kept_by_a_second_empty_line(talk, session_of, given):
    session = session_of(given(WALKS))
    heard, session = talk(COUNTS, "10", "20", "30", "", "", "", session=session)
    assert "An empty line gives it again." in heard
    assert session.answers.texts[COUNTS] == "10\n20\n30"
    assert session.place.name == "name"


def test_a_second_price_of_one_thing_is_refused_and_the_first_one_stays(talk):
    heard, session = talk("prices", "mulch 38 per yd3", "mulch 40 per yd3", "plants 4 each", "")
    assert "! There are two prices of mulch." in heard
    assert session.answers.texts["prices"] == "mulch 38 per yd3\nplants 4 each"
