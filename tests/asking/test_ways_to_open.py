"""What keeps a question shut: each reason leads to the answer that would open it, and back."""

from __future__ import annotations

from interview.asking.question import UNKNOWN_TEXT

DUG = {"holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "20 in"}

WAYS = {
    "not asked": ({"lines_requested": "not_yet"}, "lines_requested"),
    "no date": ({"lines_asked_on": UNKNOWN_TEXT}, "lines_asked_on"),
    "too early": ({"lines_asked_on": "2026-05-27"}, "lines_finished_on"),
    "silent": ({"lines_answered": "no"}, "lines_answered"),
    "private": ({"private_lines": "not_found"}, "private_lines"),
    "stale": ({"lines_valid_days": "2"}, "lines_asked_on"),
    "near": ({"mark_distance": "1 ft"}, "mark_distance"),
    "unmeasured": ({"mark_distance": UNKNOWN_TEXT}, "mark_distance"),
    "smell": ({"holes.1.hole_smell": "gas"}, "holes.1.hole_smell"),
    "polluted": ({"spots.1.contamination": "dump"}, "spots.1.soil_lab"),
    "planned": ({"holes.1.hole_dug_on": "2026-06-01"}, "holes.1.hole_dug_on"),
    "too early a hole": ({**DUG, "holes.1.hole_dug_on": "2026-05-21"}, "holes.1.hole_dug_on"),
}


def test_each_shut_page_names_the_answer_that_would_open_it_and_leads_back(
    subtests, given, located, session_of
):
    for why in WAYS:
        with subtests.test(why=why):
            texts, wanted = WAYS[why]
            answers = given(located)
            for address, text in texts.items():
                answers = answers.with_text(address, text)
            session = session_of(answers)
            shut = session.jump("holes.1.hole_seeps")
            assert session.shut(shut)
            assert wanted in [one.address for one in session.ways(shut)]
            assert session.mend().address == wanted
            assert session.back_to == shut
            assert session.mend() == shut
            assert session.back_to is None


def test_the_way_leads_over_all_that_is_missing_and_back(given, session_of, clock):
    session = session_of(given({"lines_requested": "not_yet"}))
    session.jump("holes.1.hole_dug_on")
    seen = []
    for text in ("asked", "2026-05-20", "none", "yes", "no marks"):
        step = session.step if seen else session.mend()
        seen.append(step.address)
        session.offer(step, text)
        session.go_on_open()
    assert seen == ["lines_requested", "lines_asked_on", "private_lines", "lines_answered",
                    "mark_distance"]  # fmt: skip
    assert session.step.address == "holes.1.hole_dug_on"
    assert session.shut(session.step) == []
    assert session.mend() is None


def test_a_renewed_file_without_a_note_leads_to_the_question_that_opens_it(
    given, located, session_of, clock
):
    clock.now = clock.now.replace(month=6, day=20)
    late = {"lines_asked_on": "2026-06-11", "lines_finished_on": "2026-06-15"}
    session = session_of(given({**located, **DUG, **late}))
    assert session.shut(session.jump("holes.1.readings"))
    assert session.mend().address == "holes.1.hole_cleared"
    session.offer(session.step, "yes")
    assert session.go_on_open().address == "holes.1.readings"
    assert session.shut(session.step) == []
