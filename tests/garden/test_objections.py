"""Answers that cannot be beside the others are refused, and the nearest that can be are taken."""

from __future__ import annotations

import pytest

from interview.asking.question import no_objection
from interview.garden.stages import QUESTIONS, every_question, new_answers
from interview.reading import Refused

ASKED = {"lines_requested": "asked", "lines_asked_on": "2026-05-20"}
FILL = {"holes.1.first_fill_start": "2026-05-27 08:00"}
GUTTER = {
    "surfaces.1.surface_kind": "roof",
    "surfaces.1.gutter_outlets": "2",
    "surfaces.1.share_known": "high_point",
    "surfaces.1.gutter_this_side": "12 ft",
}
LINE = {"units": "us", "measured_by": "paces", "walkers.1.pace_line": "50 ft"}
SPOTS = {"spots.1.spot_name": "a", "spots.2.spot_name": "b"}

# Address, the answers beside it, a text that cannot be, the reason, a text that can.
OBJECTIONS: tuple[tuple[str, dict[str, str], str, str, str], ...] = (
    ("rain_depth_column", {"rain_date_column": "When"}, "when", "gave for the date", "rain"),
    ("rain_depth_column", {"rain_date_column": "2"}, "02", "gave for the date", "1"),
    ("lines_asked_on", {}, "2026-05-29", "still to come", "2026-05-28"),
    ("lines_finished_on", ASKED, "2026-05-19", "before you asked", "2026-05-20"),
    ("spots.1.slope_run", {"units": "us"}, "0", "longer than zero", "1 in"),
    ("chosen_spot", SPOTS, "3", "no spot with that number", "2"),
    ("holes.1.hole_spot", SPOTS, "3", "no spot with that number", "2"),
    ("holes.1.hole_top_width", {"holes.1.hole_width": "8 in"}, "8 in", "wider than the bottom",
     "8 1/8 in"),
    ("holes.1.test_start", FILL, "2026-05-27 07:59", "That is before", "2026-05-27 08:00"),
    ("holes.1.first_fill_empty", FILL, "2026-05-27 07:59", "That is before", "2026-05-27 08:00"),
    ("holes.1.second_fill_start", FILL, "2026-05-27 07:59", "That is before", "2026-05-27 08:00"),
    ("holes.1.second_fill_empty", {"holes.1.second_fill_start": "2026-05-27 10:00"},
     "2026-05-27 09:59", "That is before", "2026-05-27 10:01"),
    ("holes.1.water_at_mark", {"holes.1.hole_depth": "8 in"}, "9 in", "deeper than", "8 in"),
    ("walkers.1.pace_counts", LINE, "19; 20", "at least three", "19; 20; 19"),
    ("surfaces.2.surface_name", {"surfaces.1.surface_name": "Roof"}, "roof",
     "has that name already", "roof two"),
    ("surfaces.2.falls_on", {"surfaces.1.surface_name": "Low"}, "high", "above this one", "low"),
    ("surfaces.1.outlets_here",
     {"surfaces.1.surface_kind": "roof", "surfaces.1.gutter_outlets": "3"}, "4",
     "than the gutter has", "3"),
    ("walkers.2.walker_name", {"walkers.1.walker_name": "Ann"}, "ann", "that name already", "Bob"),
    ("surfaces.1.gutter_whole", GUTTER, "11 ft", "shorter than one side", "12 ft"),
    ("floor_outline", {}, "0, 0, 0; 0, 3, 2", "farther along", "0, 0, 0; 1, 3, 2"),
    ("floor_outline", {}, "0, 0, 0; 4, 0, 0", "hold no area", "0, 0, 0; 4, 0, 1 in"),
    ("prices", {}, "mulch 38 per yd3; mulch 40 per yd3", "mulch",
     "mulch 38 per yd3; plants 4 each"),
)  # fmt: skip


def kept(answers, address, text):
    from interview.asking.route import step_at

    step = step_at(address, answers)
    view = step.view(answers)
    words = step.question.kind.settle(text, view)
    return step.question.read(words, view)


def test_what_cannot_be_is_refused_and_the_nearest_is_taken(subtests, given):
    for address, beside, bad, words, good in OBJECTIONS:
        with subtests.test(address=address, beside=beside, bad=bad, words=words, good=good):
            answers = given(beside)
            with pytest.raises(Refused) as refused:
                kept(answers, address, bad)
            assert words in str(refused.value)
            assert str(refused.value)[-1] == "."
            assert kept(answers, address, good) is not None


def test_every_objection_is_tried_here_or_with_its_kind():
    known = {address.split(".")[-1] for address, *_ in OBJECTIONS} | {"slope_drop"}
    having = {
        question.key for question in every_question() if question.objection is not no_objection
    }
    assert having <= known, having - known


def test_a_drop_uphill_is_refused_either_way_it_is_typed(given):
    with pytest.raises(Refused):
        kept(given({"units": "us"}), "spots.1.slope_drop", "-3 in")
    assert kept(given({"units": "us"}), "spots.1.slope_drop", "0").m == 0


def test_nothing_beside_it_means_nothing_objects():
    """Objections hold an answer against others; with none of them there is none."""
    for address, _, _, _, good in OBJECTIONS:
        if address.startswith(("holes.1.first", "holes.1.second")):
            continue
        answers = new_answers({"units": "us"}) if not address.endswith("_spot") else None
        if answers is not None and "2026" not in good:
            assert kept(answers, address, good) is not None


def test_a_day_asked_for_is_not_held_against_a_file_without_a_clock():
    answers = new_answers({"lines_requested": "asked"})
    assert kept(answers, "lines_asked_on", "2099-01-01") is not None


def test_uneven_walks_are_doubted_and_even_ones_are_not(given):
    from interview.garden.survey.pacing_questions import PACE_COUNTS

    view = given(LINE).at("walkers", 1)
    uneven = PACE_COUNTS.read("10; 20; 30", view)
    even = PACE_COUNTS.read("19; 20; 19; 20", view)
    assert PACE_COUNTS.doubt(uneven, view)
    assert PACE_COUNTS.doubt(even, view) is None


# Address, the answers beside it, a text that is doubted, words of the doubt, a text that is not.
DOUBTS = (
    ("floor_length", {"room_length": "20 ft"}, "21 ft", "shorter than that floor", "20 ft"),
    ("floor_width", {"room_width": "3 m"}, "3.1 m", "shorter than that floor", "3 m"),
    ("spout_fall", {"spout_distance": "2 ft"}, "25 in", "steeper than 1 down for 1 along", "24 in"),
    ("spots.1.slope_drop_turned", {"spots.1.slope_drop": "8 in"}, "3 in", "differ a lot", "5 in"),
    ("spots.1.slope_drop_turned", {"spots.1.slope_drop": "1 in"}, "2.1 in", "differ", "2 in"),
    ("holes.1.floor_depth", {"holes.1.hole_depth": "9 in"}, "9 in", "no deeper", "8 in"),
    ("dig_day", {"lines_finished_on": "2026-05-26"}, "2026-05-25", "before the last", "2026-05-26"),
    ("sun", {"spots.1.spot_name": "a", "spots.1.sun_hours": "7"}, "shade", "6 hours", "full"),
)


def test_an_answer_that_makes_little_sense_beside_another_is_doubted(subtests, given):
    for address, beside, odd, words, likely in DOUBTS:
        with subtests.test(address=address, beside=beside, odd=odd, words=words, likely=likely):
            view = given({"units": "us", **beside})
            *group, key = address.split(".")
            view = view.at(group[0], int(group[1])) if group else view
            question = QUESTIONS[key]
            assert words in (question.doubt(question.read(odd, view), view) or "")
            assert question.doubt(question.read(likely, view), view) is None
            alone = new_answers({"units": "us"})
            alone = alone.at(group[0], int(group[1])) if group else alone
            assert question.doubt(question.read(odd, alone), alone) is None
