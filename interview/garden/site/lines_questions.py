"""Buried lines: the locate request, the answers to it, and the marks."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from interview.asking.answers import Answers
from interview.asking.conditions import chosen, distance, said_yes
from interview.asking.kinds import Choice, Day, Note, Several, YesNo
from interview.asking.lands import US, land
from interview.asking.measures import Count
from interview.asking.question import Question
from interview.garden.place import questions as start
from interview.garden.site import locating as notice
from interview.garden.site import locating_words as locating
from interview.garden.site.cautions import LOCATE
from interview.garden.site.locating import CAREFUL, DEFAULT_BUSINESS_DAYS, Counted, ToleranceZone
from interview.quantities.evidence import Provenance, Source
from interview.quantities.units import Quantity
from interview.reading import SMALLER, When

YOUR_TICKET = Source("your ticket, or your own word", Provenance.YOURS)


def locating_service(answers: Answers) -> str:
    """Say whom to ask about buried lines where the garden is."""
    return locating.service(answers) or land(answers.country).service


def service_too(answers: Answers) -> dict[str, str]:
    """Word a question so that its caution names the locating service of the place."""
    return {"caution": f"{LOCATE} {locating_service(answers)}"}


_BUSINESS_DAYS = ("business days", "business day", "full business days", "working days")
NO_MARK_FT = 500.0
_FAR = (NO_MARK_FT, "ft")
NO_MARKS = tuple((word, _FAR) for word in ("no marks", "no mark", "none"))
"""Where there is no mark the distance is the largest the question takes."""

_OUTLINE = (
    "Outline in white the garden, the berm, the test hole and the pipe route: all of it is digging."
)

LINES_REQUESTED: Question[str] = Question(
    key="lines_requested",
    label="Locate request",
    text="Have you asked for the buried lines to be marked?",
    kind=Choice((("not_yet", "not yet"), ("asked", "yes, I have asked"))),
    why="Gas, power and cable lines can lie only a hand deep. Hitting one can kill.",
    find_out="Ask the locating service of your country, or else each utility.",
    caution=LOCATE,
    more=_OUTLINE,
    wording=lambda a: _request_words(a),
)


def _request_words(answers: Answers) -> Mapping[str, Any]:
    colors = f"{_OUTLINE} Colors of the marks: {land(answers.country).paint}."
    asked = replace(LINES_REQUESTED, more=colors)
    plans = answers.country != US and {
        "text": f"Have you asked for {land(answers.country).gives} of the buried lines?"
    }
    return {
        **service_too(answers),
        **(plans or {}),
        "find_out": locating_service(answers),
        "more": colors,
        **locating.request_words(answers, asked),
    }


LINES_ASKED_ON = Question(
    key="lines_asked_on",
    label="Date of the locate request",
    text="On which day did you ask for the marks?",
    kind=Day(),
    why="The wait counts the full business days after this day.",
    find_out="It is on the ticket (the receipt for your request) or in your e-mail.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    objection=lambda day, a: (
        ("That day is still to come. Write the day on which you asked." if day > a.today else None)
        if a.today.year > 2000
        else None
    ),
)

LINES_TICKET = Question(
    key="lines_ticket",
    label="Ticket number",
    text="What is the ticket or reference number?",
    kind=Note(60, "2614-0399"),
    why="You need it to renew the marks, and it is printed on the sheet you take outside.",
    find_out="The service that takes your request gives it to you.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
)


def tolerance_zone(answers: Answers) -> ToleranceZone:
    """Return how near a mark only gentle hand digging may be, by the country and the state."""
    whole = answers.whole()
    return notice.tolerance_zone(start.us_state(whole) or "", whole.get(start.COUNTRY) or "us")


def marks_abroad(answers: Answers) -> str:
    """Say what counts as a mark outside the United States, where plans may be all one gets."""
    return "" if answers.country == US else land(answers.country).marks


def near_a_mark(answers: Answers) -> str:
    """Say how near a mark only gentle hand digging may be."""
    words = tolerance_zone(answers).words(answers.metric)
    return f"Dig only gently, by hand, within {words} of any mark."


LINES_BUSINESS_DAYS: Question[int] = Question(
    key="lines_business_days",
    label="Business days to wait",
    text="How many full business days must you wait after you ask?",
    kind=Count(1, 15, ("days", "day", *_BUSINESS_DAYS)),
    why="Before that, some lines may not be marked yet.",
    find_out="Your ticket says it, and the ticket decides. Most US states ask for 2 or 3; "
    f"the plan counts {DEFAULT_BUSINESS_DAYS} when you don't know.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    default=locating.wait_offered,
    wording=lambda a: locating.wait_words(a, LINES_BUSINESS_DAYS),
)


def business_days(answers: Answers) -> int | None:
    """Return the business days to wait; ``None`` where only the ticket can tell them."""
    given = answers.get(LINES_BUSINESS_DAYS)
    offered = locating.wait_offered(answers)
    return given if given is not None or offered is None else int(offered)


def _holidays_offered(answers: Answers) -> str | None:
    return locating.holidays_offered(answers, answers.get(LINES_ASKED_ON), business_days(answers))


LINES_HOLIDAYS: Question[tuple[dt.date, ...]] = Question(
    key="lines_holidays",
    label="Holidays in the waiting time",
    text="Which public holidays fall in the waiting time?",
    kind=Several(Day(when=When.EITHER), 0, 20),
    why="A holiday is not a business day, so it makes the wait longer.",
    find_out="Look at a calendar. Write one date per line, or none.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    default=_holidays_offered,
    wording=lambda a: locating.holiday_words(
        a, a.get(LINES_ASKED_ON), business_days(a), LINES_HOLIDAYS
    ),
)

LINES_ANSWERED = Question(
    key="lines_answered",
    label="Every owner has answered",
    text="Has every owner on the ticket marked its lines, or said it has none there?",
    kind=YesNo(),
    why="Silence does not mean clear. An owner who has not answered may still have a line there.",
    find_out="Look up the ticket online, or call the service and ask who has not answered.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    caution=LOCATE,
    warns=marks_abroad,
    wording=lambda a: _answered_words(a),
)


def _answered_words(answers: Answers) -> Mapping[str, Any]:
    if answers.country == US:
        return service_too(answers)
    text = "Has every owner sent its plans or marked its lines, or said it has none there?"
    return {**service_too(answers), "text": text}


LINES_FINISHED_ON = Question(
    key="lines_finished_on",
    label="Marks finished on",
    text="On which day did the last owner answer?",
    kind=Day(),
    why="Nobody may dig before that day, and the marks are good for only so long.",
    find_out="The ticket's web page shows it. If you don't know, use the day you saw all the "
    "marks.",
    asks=said_yes(LINES_ANSWERED),
    when="every owner has answered",
    objection=lambda day, a: (
        "That is before you asked. Check one of the two dates."
        if (asked := a.get(LINES_ASKED_ON)) and day < asked
        else None
    ),
)

LINES_VALID_DAYS: Question[int] = Question(
    key="lines_valid_days",
    label="Days the marks stay good",
    text="For how many days do the marks stay good?",
    kind=Count(1, 60, ("days", "day")),
    why="After that you must ask again before you dig.",
    find_out="Your ticket says it, and the ticket decides. If you don't know, the plan takes your "
    f"state's rule, or {CAREFUL.days} {CAREFUL.counted.value}.",
    asks=said_yes(LINES_ANSWERED),
    when="every owner has answered",
    default=lambda a: str(locating.notice(a).marks.days),
    wording=lambda a: locating.life_words(a, LINES_VALID_DAYS),
)

COUNTED = {
    "working": Counted.FROM_MARKING,
    "calendar": Counted.CALENDAR,
    "from_request": Counted.FROM_REQUEST,
}
_COUNTED_KEYS = {counted: key for key, counted in COUNTED.items()}

LINES_VALID_KIND: Question[str] = Question(
    key="lines_valid_kind",
    label="How those days are counted",
    text="Are those working days or calendar days?",
    kind=Choice(
        (
            ("working", "working days, from the day the marks were finished"),
            ("calendar", "calendar days, from the day you asked"),
            ("from_request", "working days, from the day you asked"),
        )
    ),
    why="The two can differ by a week.",
    find_out="The ticket says it, often as a last day.",
    asks=said_yes(LINES_ANSWERED),
    when="every owner has answered",
    default=lambda a: _COUNTED_KEYS[locating.notice(a).marks.counted],
    wording=lambda a: locating.read_words(a, LINES_VALID_KIND),
)


PRIVATE_LINES = Question(
    key="private_lines",
    label="Private lines",
    text="Are there buried lines of your own, which the service does not mark?",
    kind=Choice(
        (
            ("none", "none, I am sure"),
            ("kept_clear", "yes, I know where they run and keep clear"),
            ("not_found", "maybe, I have not found out"),
        )
    ),
    why="The utilities mark their own lines, usually only to the meter. What runs on from there "
    "is yours to find.",
    find_out="Think of sprinklers, gas to a grill or pool, power to a shed or lights, a pet "
    "fence, septic pipes, propane, drains. Look at old drawings, or pay a private locator to find "
    "them.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    caution="Dig gently, by hand, near any line you know of. If you nick one, stop, go away and "
    "call.",
)

MARK_DISTANCE: Question[Quantity] = Question(
    key="mark_distance",
    label="Nearest mark to where you will dig",
    text="How far is the nearest mark or flag from anywhere you will dig? If there is none, write "
    "no marks.",
    kind=replace(distance(500, careful=SMALLER), said=NO_MARKS, measured=True),
    why="A line may lie to either side of its mark, so the garden, the hole and the trench stay "
    "out of the strip along it. Whatever else is dug there is dug gently, by hand.",
    find_out="A mark is paint on the ground. Measure from it to the nearest edge of the garden, "
    "test hole or pipe route. No marks counts as 500 ft (150 m) away.",
    asks=said_yes(LINES_ANSWERED),
    when="every owner has answered",
    warns=lambda a: f"{marks_abroad(a)} {near_a_mark(a)}".strip(),
    wording=lambda a: _mark_words(a),
)


def _mark_words(answers: Answers) -> Mapping[str, Any]:
    if answers.country == US:
        return locating.read_words(answers, MARK_DISTANCE)
    return {
        "find_out": "A mark is paint on the ground, or a line that a plan shows. Measure from it "
        "to the nearest edge of the garden, test hole or pipe route. Write no marks only where no "
        "plan shows a line near either: it counts as 500 ft (150 m) away."
    }


def holidays(answers: Answers) -> frozenset[dt.date]:
    """Return the holidays named in the locate questions."""
    days = answers.get(LINES_HOLIDAYS)
    return frozenset(days or ())


def assumed_holidays(answers: Answers) -> frozenset[dt.date] | None:
    """Return the holidays offered while none are named; ``None`` where none can be worked out."""
    if answers.get(LINES_HOLIDAYS) is not None:
        return frozenset()
    if _holidays_offered(answers) is None:
        return None
    days = answers[LINES_HOLIDAYS]
    return frozenset(days)


def counted(answers: Answers) -> Counted:
    """Return how the days of the marks are counted; a kind without a number decides nothing."""
    if answers.get(LINES_VALID_DAYS) is None:
        return locating.notice(answers).marks.counted
    return COUNTED[answers[LINES_VALID_KIND]]


def wait_gap(answers: Answers) -> Question[Any]:
    """Return the question whose answer the end of the wait is waiting for."""
    if answers.get(LINES_REQUESTED) != "asked":
        return LINES_REQUESTED
    if answers.get(LINES_ASKED_ON) is None:
        return LINES_ASKED_ON
    return LINES_HOLIDAYS if business_days(answers) is not None else LINES_BUSINESS_DAYS


def wait_source(answers: Answers) -> Source:
    """Return where the length of the wait comes from."""
    if answers.get(LINES_BUSINESS_DAYS) is not None:
        return YOUR_TICKET
    return locating.wait_source(answers)


def marks_source(answers: Answers) -> Source:
    """Return where the life of the marks comes from."""
    if answers.get(LINES_VALID_DAYS) is not None:
        return YOUR_TICKET
    return locating.notice(answers).marks_source
