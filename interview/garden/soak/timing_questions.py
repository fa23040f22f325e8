"""How a test hole is wetted, filled to the mark and read."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from dataclasses import replace

from interview.asking.answers import NO_CLOCK, Answers
from interview.asking.conditions import always_this, by_units, depth
from interview.asking.kinds import Choice, Moment, YesNo
from interview.asking.measures import Measure
from interview.asking.question import Question, Status
from interview.garden.soak.hole_questions import HOLE, HOLE_DEPTH, HOLE_STILL
from interview.garden.soak.reading_lines import (
    DROP,
    LEFT,
    REFILLED,
    Readings,
    SoakEvent,
    noted_instants,
)
from interview.quantities.guards import reaches, within
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude
from interview.reading import Refused

SOAKED_ALREADY = HOLE.question(
    key="soaked_already",
    label="Soil soaked already",
    text="Has a wet season already soaked the soil through?",
    kind=YesNo(),
    why="Dry soil drinks fast and would make the test look too good.",
    find_out="If it has rained well for weeks, yes. If unsure, say no and soak it twice.",
    default=always_this("no"),
)


def _dry(answers: Answers) -> bool:
    return answers.get(SOAKED_ALREADY) is not True


def _not_yet(at: dt.datetime, answers: Answers) -> str | None:
    """Doubt a time still to come; only doubted, so that a clock set back faults no answer."""
    if at > answers.now + dt.timedelta(minutes=1) and answers.now != NO_CLOCK:
        return "By this clock that time has not come yet. Write when it was, or correct the clock."
    return None


def _not_at_once(
    filled: Question[dt.datetime],
) -> Callable[[dt.datetime, Answers], str | None]:
    """Return a doubt about water that was gone at the very time it was ``filled``."""

    def doubt(at: dt.datetime, answers: Answers) -> str | None:
        if at == answers.get(filled):
            return "That is the time the hole was filled. Write when the last water was gone."
        return _not_yet(at, answers)

    return doubt


def _not_before(
    *earlier: Question[dt.datetime],
) -> Callable[[dt.datetime, Answers], str | None]:
    """Return an objection to a time before one of ``earlier``."""

    def objection(at: dt.datetime, answers: Answers) -> str | None:
        for question in earlier:
            before = answers.get(question)
            if before is not None and at < before:
                return (
                    f"That is before this time: {question.label.lower()}. Check one of the two "
                    "times."
                )
        return None

    return objection


FILL_1_START = HOLE.question(
    key="first_fill_start",
    label="First soaking: filled",
    text="Scratch the walls, clean the bottom, and fill the hole with water. When was it full?",
    kind=Moment(),
    why="The first filling only wets the soil. It shows how thirsty the soil is, not how fast it "
    "drains.",
    find_out="Press the key for now when it is full.",
    asks=_dry,
    when="the soil is not soaked already",
    doubt=_not_yet,
    caution=HOLE_STILL,
)

FILL_1_EMPTY = HOLE.question(
    key="first_fill_empty",
    label="First soaking: empty",
    text="When was the hole empty again?",
    kind=Moment(),
    why="If it took hours, the soil is soaked.",
    find_out="Press the key for now when the last water is gone. If water stands all night, say "
    "you don't know yet and go on.",
    asks=_dry,
    when="the soil is not soaked already",
    doubt=_not_at_once(FILL_1_START),
    objection=_not_before(FILL_1_START),
    caution=HOLE_STILL,
)

FILL_2_START = HOLE.question(
    key="second_fill_start",
    label="Second soaking: filled",
    text="Fill the hole a second time. When was it full?",
    kind=Moment(),
    why="It is usual to fill the hole twice before the timed test.",
    find_out="Press the key for now when it is full.",
    asks=_dry,
    when="the soil is not soaked already",
    doubt=_not_yet,
    objection=_not_before(FILL_1_START, FILL_1_EMPTY),
    caution=HOLE_STILL,
)


def _filled_twice(answers: Answers) -> bool:
    """Tell whether there was a second filling, or still may be; what is kept of it stays asked."""
    put_off = answers.standing(FILL_2_START) is Status.UNKNOWN
    return _dry(answers) and not (put_off and answers.text(FILL_2_EMPTY) is None)


FILL_2_EMPTY = HOLE.question(
    key="second_fill_empty",
    label="Second soaking: empty",
    text="When was the hole empty the second time?",
    kind=Moment(),
    why="If both fillings are gone within ten minutes, the soil is sandy and needs no more "
    "soaking.",
    find_out="Press the key for now when the last water is gone.",
    asks=_filled_twice,
    when="the soil is not soaked already, and the second filling was not put off",
    doubt=_not_at_once(FILL_2_START),
    objection=_not_before(FILL_2_START),
    caution=HOLE_STILL,
)

WATER_AT_MARK = HOLE.question(
    key="water_at_mark",
    label="Depth of water at the fill level",
    text="Fill to a level you can find again, by a ruler or a nail: the fill level. How deep is "
    "the water?",
    kind=depth((1, "in"), (36, "in")),
    why="Every reading is compared with this depth.",
    find_out="About 6 to 8 in (150 to 200 mm), all of it below the topsoil.",
    objection=lambda water, a: (
        "The water cannot be deeper than the hole. Check one of the two."
        if (deep := a.get(HOLE_DEPTH)) is not None and water > deep
        else None
    ),
    caution=HOLE_STILL,
)

TEST_START = HOLE.question(
    key="test_start",
    label="Timed test: filled to the fill level",
    text="When was the water at the fill level?",
    kind=Moment(),
    why="All times are counted from here, even while this program is closed.",
    find_out="Press the key for now at the moment the water stands at the fill level.",
    doubt=_not_yet,
    objection=_not_before(FILL_1_START, FILL_2_START),
    caution=HOLE_STILL,
)

READ_AS = HOLE.question(
    key="read_as",
    label="How readings are written",
    text="What will you measure at each reading?",
    kind=Choice(
        (
            ("left", "the depth of water left in the hole"),
            ("drop", "how far the water is below the fill level"),
        )
    ),
    why="Both are equally good, but the two must not be mixed.",
    find_out="With a ruler standing in the hole, take the depth left. With a nail at the fill "
    "level, take the drop.",
    default=always_this(LEFT),
)

RULER = HOLE.question(
    key="ruler_mark",
    label="Smallest step on the ruler",
    text="How small a difference can you read on the ruler?",
    kind=Measure("length", "in", "mm", (0.01, "in"), (1, "in")),
    why="It tells how sure the rate is.",
    find_out="Most people read to 1/8 in (3 mm).",
    default=by_units("1/8 in", "3 mm"),
)


def _began(answers: Answers) -> dt.datetime:
    return answers[TEST_START]


def _word(answers: Answers) -> str:
    return answers.get(READ_AS) or LEFT


def depths(
    events: tuple[SoakEvent, ...], at_mark: Quantity
) -> list[tuple[SoakEvent, Quantity | None]]:
    """Return each kept reading with the depth of water it means; none where the hole was empty."""
    mark = at_mark
    found: list[tuple[SoakEvent, Quantity | None]] = []
    for event in events:
        if event.struck:
            continue
        if event.depth is None:
            found.append((event, None))
        elif event.what == DROP:
            found.append((event, mark - event.depth))
        else:
            if event.what == REFILLED:
                mark = event.depth
            found.append((event, event.depth))
    return found


DEPTH_WANTED = "Say how deep the water is at the fill level. Every reading is compared with it."
"""What readings wait for that were taken without it."""


class OutOfOrder(Refused):
    """A reading stands after one that was later."""


class StillToCome(Refused):
    """The time of a reading has not come yet."""


@record(frozen=False)
class _Level:
    """Where the water stood, and when, while the readings are gone through."""

    at: dt.datetime
    inches: float
    before: str = "the start of the test"
    read: bool = False
    """Whether this was a reading of the water, and not the start or a refill."""


def _check(events: tuple[SoakEvent, ...], answers: Answers) -> None:
    """Refuse readings that cannot be so, one sentence each."""
    water = _Level(answers[TEST_START], magnitude(answers[WATER_AT_MARK], "in"))
    deepest = answers.get(HOLE_DEPTH)
    hole_in = math.inf if deepest is None else magnitude(deepest, "in")
    places = [place for place, event in enumerate(events, 1) if not event.struck]
    read = depths(events, answers[WATER_AT_MARK])
    # A time that is noted already stands in nobody's way, whatever this clock says.
    noted = frozenset(noted_instants(answers.text(READINGS) or ""))
    for place, (event, deep) in zip(places, read, strict=True):
        now_in = 0.0 if deep is None else magnitude(deep, "in")
        who = f"Reading {place}: "
        _check_time(who, event, water)
        if event.at not in noted:
            _check_come(who, event, answers)
        if wrong := _wrong_depth(event, now_in, water, hole_in):
            raise Refused(who + wrong)
        water = _Level(event.at, now_in, f"reading {place}", event.what != REFILLED)


def _check_time(who: str, event: SoakEvent, water: _Level) -> None:
    before = water.before
    # Reading and refilling in one minute is how a test is run: one line each.
    refilled_at_once = event.what == REFILLED and water.read
    if event.at == water.at and not refilled_at_once:
        raise Refused(f"{who}it has the same time as {before}. Check the two times.")
    if event.at < water.at:
        raise OutOfOrder(f"{who}its time is before {before}. Check the two times and their order.")


def _check_come(who: str, event: SoakEvent, answers: Answers) -> None:
    if answers.now.year > NO_CLOCK.year and event.at > answers.now + dt.timedelta(minutes=1):
        raise StillToCome(
            f"{who}its time has not come yet. Write when you looked, or correct this clock."
        )


def _wrong_depth(event: SoakEvent, now_in: float, water: _Level, hole_in: float) -> str:
    if not reaches(now_in, 0):
        return "the drop is more than all the water in the hole. Check the depth."
    if event.what != REFILLED:
        higher = not within(now_in, water.inches)
        return (
            "the water is higher than before. If you refilled, write refilled to and the depth."
            if higher
            else ""
        )
    if now_in <= 0:
        return "a refill leaves some water. Write the depth you filled to."
    if not within(now_in, hole_in):
        return "the water cannot be deeper than the hole. Check the depth."
    return ""


_READINGS = Readings(_began, _word, _check, depth((0, "in"), (36, "in")))

READINGS = HOLE.question(
    key="readings",
    label="Readings",
    text="Take a reading about every hour, or as the timer asks: time and water.",
    kind=_READINGS,
    wording=lambda a: {"kind": replace(_READINGS, said=_word(a))},
    why="Six readings or more show whether the rate has settled. A late or early reading is just "
    "as good, because its own time is used.",
    find_out="Cover the hole between readings. Where the water falls fast, read sooner. You may "
    "refill to the fill level: write refilled to and the depth.",
    caution=HOLE_STILL,
    more="Corrected rate: f = (L / t) ln((h0 + L) / (h1 + L)), with L = bottom area / perimeter "
    "(a quarter of the width of a round hole): water leaving by bottom and walls alike.",
)
