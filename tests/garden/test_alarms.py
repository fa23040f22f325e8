"""What is said at once, and what is said when shut questions are passed over."""

from __future__ import annotations

from interview.garden import gate


def at(session, address):
    step = session.jump(address)
    assert step is not None
    return step


def test_a_smell_of_gas_raises_an_alarm_at_once(session_of, given, located, hole):
    session = session_of(given({**located, **hole("round", "8 in", "8 in", "+1h left 7 in")}))
    session.offer(at(session, "holes.1.hole_smell"), "gas")
    assert session.alarm.startswith("STOP")
    assert "call 911 from upwind" in session.alarm
    session.offer(at(session, "holes.1.hole_smell"), "earth")
    assert session.alarm == ""


def test_water_that_seeps_in_raises_an_alarm(session_of, given, located, hole):
    session = session_of(given({**located, **hole("round", "8 in", "8 in", "+1h left 7 in")}))
    session.offer(at(session, "holes.1.hole_seeps"), "yes")
    assert "groundwater" in session.alarm


def test_passing_shut_questions_over_is_said_with_the_reason(session_of, given):
    session = session_of(given({"lines_requested": "not_yet"}))
    step = at(session, "holes.1.hole_name")
    assert gate.shut(step, session.answers, session.now.date()) == []
    session.go_on_open()
    assert "Passed over" in session.passed_over
    assert "not yet asked" in session.passed_over
