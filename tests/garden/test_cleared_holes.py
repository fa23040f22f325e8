"""A hole that was dug with all lines clear stays open when new marks are asked for; no other."""

from __future__ import annotations

import datetime as dt
import random
from collections import Counter
from contextlib import suppress
from pathlib import Path

import pytest

from interview import answers_file as af
from interview.asking import route
from interview.asking.question import UNKNOWN_TEXT
from interview.asking.sitting import Doubt
from interview.garden import gate, store
from interview.garden.session import Session
from interview.garden.site import gate as site_gate
from interview.garden.site import lines_questions as buried
from interview.garden.site.locate import dig_gate
from interview.garden.soak import hole_questions as digging
from interview.garden.stages import new_answers
from interview.quantities.evidence import Grade
from interview.quantities.guards import reaches
from interview.quantities.units import magnitude
from interview.reading import Refused

SAMPLE = Path(__file__).parents[2] / "sample_answers" / "finished_us.yaml"
TODAY = dt.date(2026, 5, 28)
NOTE = "holes.1.hole_cleared"
WALKS, LEGS = 40, 30
DUG = {"holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "20 in"}


def say(session, address, text):
    """Give an answer as a person would who means it: once more where it is doubted."""
    step = session.jump(address)
    if step is None:
        raise Refused(f"{address} is not asked now")
    try:
        session.offer(step, text)
    except Doubt:
        session.offer(step, text)


def shut_of(session, number=1):
    """Return the keys of one hole that are shut."""
    return [
        step.question.key
        for step in route.steps(session.answers)
        if (step.question.group, step.number) == ("holes", number) and session.shut(step)
    ]


@pytest.fixture
def session_of(session_of):
    """Return a maker of sessions from answers as a file holds them, which know no clock."""
    return lambda answers: session_of(new_answers(answers.texts))


@pytest.fixture
def tested(given, located, session_of):
    """A session with one hole whose depth was given while digging was open."""
    session = session_of(given({**located, "holes.1.hole_dug_on": "2026-05-27"}))
    say(session, "holes.1.hole_depth", "20 in")
    return session


def test_the_ticket_is_noted_with_the_depth_of_the_hole(tested, keeper):
    assert keeper.saves[-1][0][NOTE] == "ticket W-1174"
    assert "hole_cleared" not in {step.question.key for step in route.steps(tested.answers)}
    assert NOTE in route.in_force(tested.answers).texts
    assert route.set_aside(tested.answers) == []


def test_without_a_ticket_it_is_noted_that_all_was_clear(given, located, session_of):
    texts = {key: text for key, text in located.items() if key != "lines_ticket"}
    session = session_of(given({**texts, "holes.1.hole_dug_on": "2026-05-27"}))
    say(session, "holes.1.hole_depth", "20 in")
    assert session.answers.texts[NOTE] == "yes"


def test_nothing_is_noted_of_a_hole_whose_day_was_shut(given, located, session_of):
    session = session_of(given({**located, **DUG, "holes.1.hole_dug_on": "2026-05-21"}))
    say(session, "children", "yes")
    assert NOTE not in session.answers.texts
    assert "hole_width" in shut_of(session)


def test_the_note_reads_back_from_the_file_in_its_place_with_its_meaning(tested):
    text = af.render({"written_by": "a test", **store.tree_of(tested.answers, {}, set(), "")},
                     store.notes)  # fmt: skip
    at = text.index("hole_cleared: ticket W-1174")
    assert text.index("hole_depth:") < at
    assert "Was every buried line marked" in text[text.index("hole_depth:") : at]
    loaded = store.interpret(af.parse(text.encode()))
    assert loaded.troubles == []
    assert loaded.answers.texts == tested.answers.texts


def test_what_says_neither_yes_nor_no_is_no_clearance(subtests, given):
    for text in ["T-0412", "no, I dug 2 days before", "maybe", "ticket"]:
        with subtests.test(text=text), pytest.raises(Refused):
            digging.HOLE_CLEARED.read(text, given())


def test_renewing_stale_marks_leaves_a_finished_soak_test_open(clock, keeper):
    answers = store.load(SAMPLE)[0].answers
    clock.now = clock.now.replace(month=6, day=11)
    session = Session(answers, keeper, clock)
    assert "were good only until" in site_gate.dig_reasons(session.answers, clock.now.date())[0]
    say(session, "lines_asked_on", "2026-06-11")
    assert shut_of(session) == []
    assert session.answers.texts[NOTE] == "ticket T-0412 (invented)"
    say(session, "holes.1.another_hole", "yes")
    assert "hole_depth" in shut_of(session, 2)
    assert site_gate.dig_reasons(session.answers, clock.now.date())


def test_a_hole_cleared_before_is_no_stop_while_new_marks_are_awaited(tested, plan_of, clock):
    clock.now = clock.now.replace(month=6, day=11)
    say(tested, "lines_asked_on", "2026-06-11")
    grades = {one.key: one.grade for one in plan_of(tested.answers).findings}
    assert grades["buried_lines"] is Grade.FIX


def test_a_later_request_takes_the_answers_about_the_old_marks_away(tested, clock):
    clock.now = clock.now.replace(month=6, day=11)
    step = tested.jump("lines_asked_on")
    with pytest.raises(Doubt, match=r"old marks are taken away.*Every owner has answered"):
        tested.offer(step, "2026-06-11")
    assert tested.answers.texts["lines_answered"] == "yes"
    tested.offer(step, "2026-06-11")
    left = set(tested.answers.texts)
    assert not left & {"lines_answered", "lines_finished_on", "mark_distance", "lines_ticket"}
    # The wait alone opens nothing: the owners must answer the new request too.
    assert site_gate.dig_reasons(tested.answers, dt.date(2026, 6, 20))


def test_a_date_put_right_takes_nothing_away(tested):
    say(tested, "lines_asked_on", "2026-05-19")
    assert tested.answers.texts["lines_answered"] == "yes"


def test_while_the_request_is_the_holes_own_its_answers_decide(tested):
    for address, text in (("lines_answered", "no"), ("private_lines", "not_found")):
        before = tested.answers.texts[address]
        say(tested, address, text)
        assert "hole_width" in shut_of(tested), address
        assert NOTE not in tested.answers.texts
        say(tested, address, before)
        assert shut_of(tested) == []
        assert NOTE in tested.answers.texts


def test_another_day_for_a_cleared_hole_is_held_against_the_marks_anew(tested, clock):
    clock.now = clock.now.replace(month=6, day=11)
    say(tested, "lines_asked_on", "2026-06-11")
    say(tested, "holes.1.hole_dug_on", "2026-05-01")
    assert "hole_width" in shut_of(tested)
    assert NOTE not in tested.answers.texts


def test_a_note_opens_nothing_under_the_request_it_belongs_to(given, located):
    answers = given({**located, **DUG, "holes.1.hole_dug_on": "2026-05-21", NOTE: "yes"})
    assert gate.shut(route.step_at("holes.1.readings", answers), answers, TODAY)


def test_a_smell_shuts_a_cleared_hole_too(tested, clock):
    clock.now = clock.now.replace(month=6, day=11)
    say(tested, "lines_asked_on", "2026-06-11")
    say(tested, "holes.1.hole_smell", "gas")
    assert "hole_width" in shut_of(tested)


# A file of 0.1 whose marks were renewed holds no note: the person says it once.


@pytest.fixture
def renewed(given, located, hole, session_of, clock):
    clock.now = clock.now.replace(month=6, day=20)
    texts = hole("round", "8 in", "8 in", "+1h left 7 in")
    late = {"lines_asked_on": "2026-06-11", "lines_finished_on": "2026-06-15"}
    return session_of(given({**texts, **late}))


def test_a_renewed_file_without_a_note_asks_once_and_opens(renewed):
    reasons = renewed.shut(renewed.jump("holes.1.readings"))
    assert "asked for later" in reasons[0]
    renewed.offer(renewed.jump(NOTE), "yes")
    assert shut_of(renewed) == []


@pytest.mark.parametrize("text", ["no", UNKNOWN_TEXT])
def test_a_hole_that_was_not_clear_or_not_known_to_be_stays_shut(renewed, text):
    renewed.offer(renewed.jump(NOTE), text)
    assert {"hole_width", "readings"} <= set(shut_of(renewed))


# A day that was named too early keeps nobody out, and is not the day of the hole.


def test_a_day_named_while_digging_was_shut_gives_way_to_today(given, located, session_of):
    session = session_of(given({**located, "holes.1.hole_dug_on": "2026-05-21"}))
    step = session.jump("holes.1.hole_depth")
    assert session.shut(step) == []
    assert "You named Thu 21 May 2026" in session.beware(step)
    session.offer(step, "20 in")
    texts = session.answers.texts
    assert (texts["holes.1.hole_dug_on"], texts[NOTE]) == ("2026-05-28", "ticket W-1174")
    assert session.beware(step) == ""


def test_no_day_is_taken_while_no_day_up_to_now_was_open(given, located, session_of, clock):
    silent = given({**located, "lines_answered": "no"})
    session = session_of(silent)
    step = session.jump("holes.1.hole_dug_on")
    with pytest.raises(Refused, match="Not all owners"):
        session.offer(step, "today")
    # Marks that have gone stale were good once: that day can still be told.
    clock.now = clock.now.replace(month=7, day=1)
    late = session_of(given(located))
    assert late.shut(late.jump("holes.1.hole_dug_on")) == []
    late.offer(late.step, "2026-05-28")


def test_a_day_on_which_digging_is_shut_is_doubted(given, located, session_of):
    session = session_of(given(located))
    step = session.jump("holes.1.hole_dug_on")
    with pytest.raises(Doubt, match="On Thu 21 May 2026 digging is not open: The owners"):
        session.offer(step, "2026-05-21")
    session.offer(step, "2026-05-21")


def test_marks_dated_before_their_request_open_nothing(given, located):
    answers = given(located).with_text("lines_asked_on", "2026-05-23")
    reasons = site_gate.dig_reasons(answers, dt.date(2026, 5, 29))
    assert any("needs attention" in reason for reason in reasons)


# Polluted ground


def test_polluted_ground_shuts_the_hole_until_a_laboratory_clears_it(subtests, given, located):
    for more, is_shut in [
        ({}, True),
        ({"spots.1.soil_lab": "not_tested"}, True),
        ({"spots.1.soil_lab": "above"}, True),
        ({"spots.1.soil_lab": "clear"}, False),
        ({"holes.1.test_start": "2026-05-27 10:00"}, False),
        ({"spots.2.contamination": "none", "chosen_spot": "2"}, False),
    ]:
        with subtests.test(more=more, is_shut=is_shut):
            answers = given({**located, "spots.1.contamination": "fuel", **more})
            step = route.step_at("holes.1.hole_depth", answers)
            assert any("polluted" in one for one in gate.shut(step, answers, TODAY)) == is_shut


# Against version 0.1

MOVES = (
    ("lines_requested", ("asked", "asked", "not_yet")),
    ("lines_asked_on", "day"),
    ("lines_asked_on", "today"),
    ("lines_asked_on", "today"),
    ("lines_finished_on", "day"),
    ("lines_answered", ("yes", "yes", "no")),
    ("private_lines", ("none", "none", "not_found")),
    ("mark_distance", ("30 ft", "30 ft", "1 ft")),
    ("lines_ticket", ("T-1", "T-2")),
    ("lines_valid_days", ("9", "20")),
    ("holes.1.hole_dug_on", "day"),
    ("holes.2.hole_dug_on", "day"),
    ("holes.1.hole_depth", ("9 in", "9 in", UNKNOWN_TEXT)),
    ("holes.2.hole_depth", ("9 in", "9 in", UNKNOWN_TEXT)),
    ("holes.1.hole_smell", ("earth", "earth", "gas")),
    ("holes.1.another_hole", ("yes",)),
    ("clear", ("lines_asked_on", "lines_answered", "holes.1.hole_depth", "holes.1.hole_dug_on")),
    ("days", ("1", "5", "9")),
    ("days", ("1", "5", "9")),
)
"""Where a person may do something, and what; ``day`` is a day about now."""
TWO_HOLES = {**DUG, "holes.1.another_hole": "yes"}


def reasons_in_0_1(answers, day):
    """Return why digging was shut on ``day`` in version 0.1."""
    whole = answers.whole()
    reasons = list(dig_gate(site_gate.locate_state(whole), day).reasons)
    near = whole.get(buried.MARK_DISTANCE)
    zone = magnitude(buried.tolerance_zone(whole).shown(whole.metric), "m")
    if near is None or not reaches(magnitude(near, "m"), zone):
        reasons.append("a mark")
    return reasons


def open_in_0_1(step, answers, today):
    """Tell whether version 0.1 took an answer to a question that needs digging."""
    view = step.view(answers)
    smell = view.get(digging.HOLE_SMELL)
    if smell in gate.BLOCKING_SMELLS and step.question is not digging.HOLE_SMELL:
        return False
    day = view.get(digging.HOLE_DUG_ON) or today
    return day <= today and not reasons_in_0_1(answers, day)


class Watch:
    """Follows a session and remembers which holes were seen clear, on which day, by 0.1's rule."""

    def __init__(self, session, clock, seen):
        self.session, self.clock, self.seen = session, clock, seen
        self.clear = {}

    def look(self):
        """Note what is clear now, then hold every open question against it."""
        answers, today = self.session.answers, self.clock.now.date()
        asked = site_gate.locate_state(answers).asked
        for number in answers.numbers("holes"):
            view = answers.at("holes", number)
            day = view.get(digging.HOLE_DUG_ON)
            dug = view.get(digging.HOLE_DEPTH) is not None
            if day is None or self.clear.get(number) not in (None, day):
                self.clear.pop(number, None)
            if day is not None and asked is not None and asked <= day:
                if reasons_in_0_1(answers, day):
                    self.clear.pop(number, None)
                elif dug and day <= today:
                    self.clear[number] = day
        for key in ("holes.1.hole_depth", "holes.1.readings", "holes.1.hole_smell",
                    "holes.2.hole_depth", "holes.2.readings"):  # fmt: skip
            step = route.step_at(key, answers)
            if not gate.shut(step, answers, today):
                why = self.why_open(step, answers, today)
                assert why, (step.address, today, answers.texts)
                self.seen[why] += 1

    def why_open(self, step, answers, today):
        if open_in_0_1(step, answers, today):
            return "as in 0.1"
        view = step.view(answers)
        smell, day = view.get(digging.HOLE_SMELL), view.get(digging.HOLE_DUG_ON)
        if smell in gate.BLOCKING_SMELLS and step.question is not digging.HOLE_SMELL:
            return ""
        if day is not None and self.clear.get(step.number) == day:
            return "cleared"
        undug = view.get(digging.HOLE_DEPTH) is None and day is not None and day <= today
        return "undug" if undug and not reasons_in_0_1(answers, today) else ""


class Nowhere:
    """Keeps nothing."""

    def keep(self, answers, stopped_at):
        pass


def do(session, clock, luck):
    """Do one thing that a person may do, as far as it is taken."""
    what, texts = luck.choice(MOVES)
    if texts in ("day", "today"):
        back = luck.randint(-12, 1) if texts == "day" else 0
        say(session, what, (clock.now.date() + dt.timedelta(days=back)).isoformat())
    elif what == "days":
        clock.forward(days=int(luck.choice(texts)))
    elif what == "clear":
        if step := session.jump(luck.choice(texts)):
            session.clear(step)
    else:
        say(session, what, luck.choice(texts))


@pytest.mark.parametrize("batch", range(3))
def test_no_question_is_open_that_0_1_shut_but_for_cleared_and_undug_holes(
    batch, given, located, clock
):
    begun = (given({**located, **TWO_HOLES}).texts, given(located).texts)
    seen, begin = Counter(), clock.now
    for seed in range(batch * WALKS, (batch + 1) * WALKS):
        luck, clock.now = random.Random(seed), begin
        session = Session(new_answers(begun[seed % 2]), Nowhere(), clock)
        watch = Watch(session, clock, seen)
        watch.look()
        for _ in range(LEGS):
            with suppress(Refused):
                do(session, clock, luck)
            watch.look()
    assert min(seen[one] for one in ("as in 0.1", "cleared", "undug")) > 5, seen
