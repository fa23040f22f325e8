"""What the questions about the buried lines offer and say by the country and the state."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import Any

from interview.asking.answers import Answers
from interview.asking.lands import land
from interview.asking.question import Question
from interview.garden.place import questions as start
from interview.garden.site.locate import FEDERAL_SOURCE, federal_in_wait
from interview.garden.site.locating import CAREFUL, StateNotice, notice_for
from interview.quantities.evidence import Source
from interview.reading import said_day

Words = Mapping[str, Any]
"""Fields of a question worded otherwise."""

TICKET_FIRST = "Your ticket says it, and the ticket decides."
AFTER_HOURS = "If you asked after working hours or on a day off, add one."


def _country(answers: Answers) -> str:
    return answers.get(start.COUNTRY) or "us"


def notice(answers: Answers) -> StateNotice:
    """Return what the service of the garden's state asks for; the careful one elsewhere."""
    state = start.us_state(answers) if _country(answers) == "us" else None
    return notice_for(state or "")


def wait_offered(answers: Answers) -> str | None:
    """Return the business days to wait as words; nothing where only the ticket can tell."""
    if (abroad := land(_country(answers)).wait) is not None:
        return str(abroad)
    days = notice(answers).business_days
    return None if days is None else str(days)


def wait_source(answers: Answers) -> Source:
    """Return the source of ``wait_offered``."""
    abroad = land(_country(answers))
    return notice(answers).wait_source if abroad.wait is None else abroad.wait_source


def holidays_offered(
    answers: Answers, asked: dt.date | None, business_days: int | None
) -> str | None:
    """Return the federal holidays in the wait, one a line, or ``none``.

    Nothing outside the United States, or while the wait is not known.
    """
    if _country(answers) != "us" or asked is None or business_days is None:
        return None
    return "\n".join(day.isoformat() for day in federal_in_wait(asked, business_days)) or "none"


def _named(state: StateNotice) -> str:
    return f"the {state.state}" if state.code == "DC" else state.state


def read_words(answers: Answers, question: Question[Any]) -> Words:
    """Add what was read of the state, with its standing, to the longer help."""
    said = notice(answers).read()
    return {"more": f"{question.more} {said}".strip()} if said else {}


def service(answers: Answers) -> str:
    """Say whom to call in the garden's state; nothing where no state is known."""
    state = notice(answers)
    if state.wait is None:
        return ""
    ways = f"811 or {state.phone}" if state.phone else "811"
    page = f", or use {state.website}" if state.website else ""
    return f"In {_named(state)} call {ways}{page}; it is free."


def request_words(answers: Answers, question: Question[Any]) -> Words:
    """Say the number and the page of the state, and that marks are asked for all the same."""
    state = notice(answers)
    if state.wait is None:
        return {}
    words = {"find_out": service(answers)}
    if state.hand == "spared":
        words["why"] = (
            f"{question.why} The law of {_named(state)} may spare some digging by hand. Ask for "
            "the marks all the same: a spade cuts a line too."
        )
    return {**words, **read_words(answers, question)}


def wait_words(answers: Answers, question: Question[Any]) -> Words:
    """Say what the state asks for, and what is taken for it."""
    state, days = notice(answers), wait_offered(answers)
    if _country(answers) != "us":
        held = land(_country(answers))
        source = f"[{held.wait_source}]" if held.wait else "That is the least asked in the US."
        return {
            "find_out": f"The ticket or the reply says it, and it decides. {held.wait_said} "
            f"{AFTER_HOURS} This program takes {days} when you don't know. {source}"
        }
    if state.wait is None:
        return {"find_out": f"{question.find_out} {AFTER_HOURS}"}
    if days is None:
        taken = "The plan assumes no number: it must come from the ticket."
    else:
        taken = f"The plan counts {days} when you don't know."
    said = f"{TICKET_FIRST} In {_named(state)} it is {state.wait_words}."
    return {"find_out": f"{said} {taken} {AFTER_HOURS}", **read_words(answers, question)}


def holiday_words(
    answers: Answers, asked: dt.date | None, business_days: int | None, question: Question[Any]
) -> Words:
    """Name the federal holidays that are offered, or say that no calendar is held."""
    if _country(answers) != "us":
        return {
            "find_out": "This program has no calendar for this country, so it assumes no holiday: "
            "look at one. Write one date per line, or none."
        }
    if asked is None or business_days is None:
        filled = (
            "The federal holidays are filled in once the day of the request and the wait are known."
        )
    elif found := federal_in_wait(asked, business_days):
        named = ", ".join(f"{name} on {said_day(day)}" for day, name in found.items())
        filled = f"Filled in: {named}."
    else:
        filled = "No federal holiday falls in it."
    return {
        "find_out": f"{filled} Add those of your state or its locate service. Write one date per "
        "line, or none.",
        "more": f"{question.more} Federal holidays: {FEDERAL_SOURCE}.".strip(),
    }


def life_words(answers: Answers, question: Question[Any]) -> Words:
    """Say for how long the marks are taken as good."""
    state = notice(answers)
    if _country(answers) != "us":
        held = f"{CAREFUL.days} {CAREFUL.counted.value}"
        return {
            "find_out": "The ticket or the plans say it, and they decide. If you write none, "
            f"{held} are used."
        }
    if state.wait is None:
        return {}
    held = f"{state.marks.days} {state.marks.counted.value}"
    said = f"{TICKET_FIRST} If it says nothing, the plan counts {held} in {_named(state)}."
    return {"find_out": said, **read_words(answers, question)}
