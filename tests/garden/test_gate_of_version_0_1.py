"""No question that digs is open where version 0.1 kept it shut, but in the two cases named.

The rule of version 0.1 is written anew from its description, over the words of the answers and the
days of the calendar alone, so that no sum of the gate is held against itself.
"""

from __future__ import annotations

import datetime as dt
import random
from collections import Counter
from itertools import combinations, product

import pytest

from interview.asking import route
from interview.asking.question import UNKNOWN_TEXT
from interview.garden import gate
from interview.garden.stages import new_answers

THURSDAY = dt.date(2026, 5, 28)
HOLE = "holes.1."
DEPTH, SMELL, CLEARED = f"{HOLE}hole_depth", f"{HOLE}hole_smell", f"{HOLE}hole_cleared"
DAY, READINGS = f"{HOLE}hole_dug_on", f"{HOLE}readings"
CLEAR = {
    "country": "us",
    "state": "wi",
    "units": "us",
    "lines_requested": "asked",
    "lines_asked_on": "2026-05-20",
    "lines_business_days": "3",
    "lines_holidays": "none",
    "lines_answered": "yes",
    "lines_finished_on": "2026-05-22",
    "lines_valid_days": "10",
    "lines_valid_kind": "working",
    "private_lines": "none",
    "mark_distance": "30 ft",
}
"""Answers by which digging is open from Tuesday 26 May to Friday 5 June."""
WORDS = {
    "lines_requested": ("not_yet", UNKNOWN_TEXT, None),
    "lines_asked_on": ("2026-04-01", "2026-05-27", "2026-06-03", UNKNOWN_TEXT, None),
    "lines_business_days": ("1", "5", UNKNOWN_TEXT, None),
    "lines_holidays": ("2026-05-25", None),
    "lines_answered": ("no", UNKNOWN_TEXT, None),
    "lines_finished_on": ("2026-05-10", "2026-05-30", UNKNOWN_TEXT, None),
    "lines_valid_days": ("1", "30", None),
    "lines_valid_kind": ("calendar", None),
    "private_lines": ("kept_clear", "not_found", UNKNOWN_TEXT, None),
    "mark_distance": ("24 in", "23 in", "1 ft", UNKNOWN_TEXT, None),
    DAY: ("2026-05-21", "2026-05-27", "2026-05-28", "2026-06-02", UNKNOWN_TEXT),
    DEPTH: ("20 in", UNKNOWN_TEXT),
    CLEARED: ("yes", "ticket T-1", "no", UNKNOWN_TEXT),
    SMELL: ("earth", "rotten_egg", "gas", "fuel", "sewage", UNKNOWN_TEXT),
}
"""What may be said otherwise, and what may be left out."""
TODAYS = (dt.date(2026, 5, 25), THURSDAY, dt.date(2026, 6, 8))


def said(texts, key):
    text = texts.get(key)
    return None if text in (None, UNKNOWN_TEXT) else text


def day_said(texts, key):
    text = said(texts, key)
    return None if text is None else dt.date.fromisoformat(text)


def workday(day, texts):
    holidays = said(texts, "lines_holidays") or ""
    return day.weekday() < 5 and day.isoformat() not in holidays.split()


def after_workdays(day, count, texts):
    """Return the last of so many full working days after ``day``."""
    while count:
        day += dt.timedelta(days=1)
        count -= workday(day, texts)
    return day


def lines_clear(texts, day):
    """Tell whether version 0.1 let a spade in on ``day``, in Wisconsin.

    A request was made; its full business days are over, three where nothing is said; every owner
    has answered, on no day that is before the request or still to come; private lines are known;
    the marks are not stale: ten working days after they were finished, or calendar days after the
    request; the nearest mark is two feet off.
    """
    asked = day_said(texts, "lines_asked_on")
    if said(texts, "lines_requested") != "asked" or asked is None or asked > day:
        return False
    wait = int(said(texts, "lines_business_days") or 3)
    if day <= after_workdays(asked, wait, texts) or said(texts, "lines_answered") != "yes":
        return False
    finished = day_said(texts, "lines_finished_on")
    if finished is not None and not asked <= finished <= day:
        return False
    if said(texts, "private_lines") not in ("none", "kept_clear"):
        return False
    good = int(said(texts, "lines_valid_days") or 10)
    if said(texts, "lines_valid_kind") == "calendar":
        last = asked + dt.timedelta(days=good)
    else:
        last = after_workdays(finished or asked, good, texts)
    mark = said(texts, "mark_distance")
    return day <= last and mark in ("30 ft", "24 in")


def why_open(texts, address, today):
    """Return by which rule a question that digs may be open; nothing where it must be shut."""
    if said(texts, SMELL) in ("gas", "fuel", "sewage") and address != SMELL:
        return ""
    dug = day_said(texts, DAY)
    day = dug or today
    if day <= today and lines_clear(texts, day):
        return "as in 0.1"
    if dug is None:
        return ""
    # A hole noted as dug with every line clear, under a request before the one there is now.
    asked = day_said(texts, "lines_asked_on") if said(texts, "lines_requested") == "asked" else None
    if said(texts, CLEARED) not in (None, "no") and (asked is None or asked > dug):
        return "cleared"
    # A day without a hole keeps nobody out: it is dug today.
    undug = said(texts, DEPTH) is None and dug <= today
    return "undug" if undug and lines_clear(texts, today) else ""


def states(today):
    """Yield every garden with two things said otherwise, and some with more of them."""
    options = [(key, text) for key, texts in WORDS.items() for text in texts]
    luck = random.Random(today.toordinal())
    if today == THURSDAY:
        yield from (dict(pair) for pair in combinations(options, 2))
    for _ in range(150):
        yield dict(luck.sample(options, luck.randint(2, 6)))


@pytest.mark.parametrize("today", TODAYS, ids=str)
def test_what_is_open_was_open_in_0_1_but_for_cleared_and_undug_holes(today):
    seen = Counter()
    for place, changes in enumerate(states(today)):
        texts = {key: text for key, text in {**CLEAR, **changes}.items() if text is not None}
        answers = new_answers(texts)
        address = (DEPTH, READINGS, SMELL)[place % 3]
        why = why_open(texts, address, today)
        is_open = not gate.shut(route.step_at(address, answers), answers, today)
        assert why or not is_open, (address, changes)
        seen[(why, is_open)] += 1
    wanted = {("as in 0.1", True), ("cleared", True), ("", False)}
    if today == THURSDAY:
        wanted.add(("undug", True))
    assert wanted <= set(seen), seen


def test_the_rule_as_written_here_opens_on_the_days_that_its_words_say():
    # Asked on Wednesday the 20th, three full business days: Thursday, Friday, Monday; finished on
    # Friday the 22nd, ten working days: to Friday 5 June.
    days = [THURSDAY + dt.timedelta(days=one) for one in range(-8, 14)]
    clear = [day for day in days if lines_clear(CLEAR, day)]
    assert (clear[0], clear[-1]) == (dt.date(2026, 5, 26), dt.date(2026, 6, 5))
    assert len(clear) == 11
    holiday = {**CLEAR, "lines_holidays": "2026-05-25"}
    assert not lines_clear(holiday, dt.date(2026, 5, 26))
    assert lines_clear({**CLEAR, "lines_valid_kind": "calendar"}, dt.date(2026, 5, 30))
    assert not lines_clear({**CLEAR, "lines_valid_kind": "calendar"}, dt.date(2026, 5, 31))


def test_each_answer_by_itself_opens_what_it_opened_in_0_1():
    for address, (key, texts) in product((DEPTH, READINGS), WORDS.items()):
        for text in texts:
            changed = {**CLEAR, key: text}
            changed = {one: words for one, words in changed.items() if words is not None}
            answers = new_answers(changed)
            is_open = not gate.shut(route.step_at(address, answers), answers, THURSDAY)
            assert is_open == bool(why_open(changed, address, THURSDAY)), (address, key, text)
