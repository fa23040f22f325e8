"""Stage C: the soak test, how fast the soil under the garden takes water."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from interview.asking.conditions import always_this, both, by_units, chosen, depth
from interview.asking.kinds import Choice, Clearance, Day, Measure, Moment, Note, YesNo
from interview.asking.model import NO_CLOCK, Answers, Group, Question, Stage
from interview.garden.site import questions as site
from interview.garden.site.cautions import LOCATE
from interview.garden.soak.reading_lines import (
    DROP,
    LEFT,
    REFILLED,
    Readings,
    SoakEvent,
    noted_instants,
)
from interview.quantities.units import Quantity, magnitude
from interview.reading import Refused

HOLE_CAUTION = (
    "Never leave the hole open: a small child can drown in a very little water and anyone can "
    "break an ankle. Cover it with a board and a weight, or fill it."
)

RATE_FROM = Question(
    key="rate_from",
    label="Where the soak rate comes from",
    text="How will you find out how fast the soil takes water?",
    kind=Choice(
        (
            ("test", "I will dig a hole and time it here"),
            ("report", "I have a professional's report with a rate"),
        )
    ),
    why="The rate sets how deep the pond may be.",
    find_out="Choose the test unless somebody licensed has measured this very spot.",
    default=always_this("test"),
)

KNOWN_RATE = Question(
    key="known_rate",
    label="Rate in the report",
    text="What rate through level ground does the report give?",
    kind=Measure("rate", "in/h", "mm/h", (0.001, "in/h"), (100, "in/h")),
    why="It is used in place of the corrected rate of a test.",
    find_out="Look for saturated hydraulic conductivity or field infiltration rate, already "
    "divided by any safety factor. It is not the fall in a hole.",
    asks=chosen(RATE_FROM, "report"),
    when="the rate comes from a report",
)

KNOWN_RATE_BY = Question(
    key="known_rate_by",
    label="Who measured the rate",
    text="Who measured it, and when?",
    kind=Note(120, "soil report of 2024"),
    why="A reader of the plan can then ask them.",
    find_out="It is on the report.",
    asks=chosen(RATE_FROM, "report"),
    when="the rate comes from a report",
)


def testing(answers: Answers) -> bool:
    """Tell whether the rate comes from a soak test: yes unless a report was chosen."""
    return answers.get(RATE_FROM) != "report"


HOLE_NAME = Question(
    key="hole_name",
    label="Name of the hole",
    text="What do you call this test hole?",
    kind=Note(40, "north end"),
    why="Two holes tell more than one; the names keep them apart.",
    find_out="Such as north end.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    default=lambda a: f"hole {a.scope[1]}" if a.scope else None,
)

HOLE_DUG_ON = Question(
    key="hole_dug_on",
    label="Day the hole is dug",
    text="On which day is this hole dug?",
    kind=Day(),
    why="The marks must be complete and still good on that day.",
    find_out="Write today, or the day you dug it. Its questions open once the lines are located.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    caution=LOCATE,
    wording=site.service_too,
)

HOLE_DEPTH = Question(
    key="hole_depth",
    label="Depth of the hole",
    text="How deep is the test hole?",
    kind=depth((2, "in"), (36, "in")),
    why="The test must be in the soil the garden's floor will stand on, not in the topsoil.",
    find_out="Once the lines are located, dig to where the garden's floor will be, with room for "
    "the water below it: often 12 to 18 in (300 to 450 mm). Measure from the level of the lawn.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    caution="Do not climb into a deep hole. " + HOLE_CAUTION,
    warns=site.near_a_mark,
    digs=True,
)


def asked_after(answers: Answers) -> bool:
    """Tell whether the marks were asked for after the day of this item's hole."""
    day, asked = answers.get(HOLE_DUG_ON), answers.whole().get(site.LINES_ASKED_ON)
    return day is not None and asked is not None and asked > day


HOLE_CLEARED = Question(
    key="hole_cleared",
    label="Lines clear when the hole was dug",
    text="Was every buried line located and answered when this hole was dug? Where the answers "
    "tell, the program notes it.",
    kind=Clearance(),
    why="New marks say nothing of the day on which an older hole was dug.",
    find_out="Say yes only if all owners had answered and the marks were still good that day. If "
    "unsure, say no.",
    group="holes",
    asks=lambda a: testing(a) and a.get(HOLE_DEPTH) is not None and asked_after(a),
    when="the marks were asked for after the hole was dug",
    caution=LOCATE,
    wording=site.service_too,
    noted=True,
)

FLOOR_DEPTH = Question(
    key="floor_depth",
    label="Garden floor the hole stands for",
    text="How far below the lawn will the floor of the garden be at this place?",
    kind=depth((0, "in"), (36, "in")),
    why="The water in the test should stand in the soil just below that level.",
    find_out="On flat ground it is about the pond depth plus the mulch. The bottom of the water "
    "should be within 2 in (50 mm) of it or deeper.",
    doubt=lambda floor, a: (
        "The hole is no deeper than that, so the test would tell of soil that is dug away."
        if (hole := a.get(HOLE_DEPTH)) is not None and magnitude(hole, "m") <= magnitude(floor, "m")
        else None
    ),
    group="holes",
    asks=testing,
    when="a soak test is made",
    digs=True,
)

BLOCKING_SMELLS = ("gas", "fuel", "sewage")

HOLE_SMELL = Question(
    key="hole_smell",
    label="Smell of the hole",
    text="How does the hole smell?",
    kind=Choice(
        (
            ("earth", "of earth"),
            ("rotten_egg", "of rotten eggs"),
            ("sewage", "of sewage"),
            ("fuel", "of fuel or chemicals"),
            ("gas", "of gas"),
        )
    ),
    why="A smell of gas, fuel or sewage means stop at once.",
    find_out="Smell a handful of soil from the bottom.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    caution="Gas: leave at once, use no phone or switch here, and call from upwind. Fuel or "
    "sewage: stop, and ask the health department.",
    digs=True,
)

HOLE_SEEPS = Question(
    key="hole_seeps",
    label="Water seeping into the hole",
    text="Does water seep into the hole by itself?",
    kind=YesNo(),
    why="That is groundwater, and a garden here would fill from below.",
    find_out="Wait half an hour and look.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    digs=True,
)

HOLE_SHAPE = Question(
    key="hole_shape",
    label="Shape of the hole",
    text="What shape is the hole, seen from above?",
    kind=Choice(
        (
            ("round", "round, with upright walls"),
            ("square", "square, with upright walls"),
            ("rectangular", "longer than it is wide, with upright walls"),
            ("tapered", "round, wider at the top than at the bottom"),
        )
    ),
    why="Water leaves by the walls as well as the bottom; the shape says how much of each.",
    find_out="Scrape the walls upright where you can; it makes the sum surer.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    digs=True,
)

HOLE_WIDTH = Question(
    key="hole_width",
    label="Width of the hole",
    text="How wide is the hole (at the bottom, if it tapers)?",
    kind=depth((2, "in"), (60, "in")),
    why="A narrow hole loses much of its water sideways; the width takes that out. What is left "
    "is called the corrected rate.",
    find_out="Measure across where the water will stand, in two directions, and take the middle.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    digs=True,
)

HOLE_LENGTH = Question(
    key="hole_length",
    label="Length of the hole",
    text="How long is the hole the other way?",
    kind=depth((2, "in"), (120, "in")),
    why="A long hole has more wall for its bottom.",
    find_out="Measure the longer side where the water will stand.",
    group="holes",
    asks=both(testing, chosen(HOLE_SHAPE, "rectangular")),
    when="the hole is longer than it is wide",
    digs=True,
)

HOLE_TOP_WIDTH = Question(
    key="hole_top_width",
    label="Width of the hole higher up",
    text="How wide is the hole higher up, above the water?",
    kind=depth((2, "in"), (120, "in")),
    why="A cone-shaped hole needs its own sum.",
    find_out="Measure across at a height you can name in the next question.",
    group="holes",
    asks=both(testing, chosen(HOLE_SHAPE, "tapered")),
    when="the hole tapers",
    objection=lambda top, a: (
        "The top must be wider than the bottom. If it is not, choose the round shape."
        if (bottom := a.get(HOLE_WIDTH)) is not None and top <= bottom
        else None
    ),
    digs=True,
)

HOLE_TOP_HEIGHT = Question(
    key="hole_top_height",
    label="Height of that wider place",
    text="How far above the bottom did you measure that width?",
    kind=depth((2, "in"), (60, "in")),
    why="It tells how steep the walls are.",
    find_out="Stand the tape on the bottom.",
    group="holes",
    asks=both(testing, chosen(HOLE_SHAPE, "tapered")),
    when="the hole tapers",
    digs=True,
)

RIBBON = Question(
    key="ribbon",
    label="Soil by feel",
    text="Squeeze a moist handful from the bottom, then press it out between thumb and finger. "
    "What happens?",
    kind=Choice(
        (
            ("falls_apart", "it falls apart"),
            ("ball", "it makes a ball but no ribbon"),
            ("short_gritty", "a ribbon under 1 in (25 mm), gritty"),
            ("short", "a ribbon under 1 in (25 mm), neither gritty nor smooth"),
            ("short_smooth", "a ribbon under 1 in (25 mm), smooth"),
            ("medium_gritty", "a ribbon of 1 to 2 in (25 to 50 mm), gritty"),
            ("medium", "a ribbon of 1 to 2 in (25 to 50 mm)"),
            ("medium_smooth", "a ribbon of 1 to 2 in (25 to 50 mm), smooth"),
            ("long_gritty", "a ribbon over 2 in (50 mm), gritty"),
            ("long", "a ribbon over 2 in (50 mm)"),
            ("long_smooth", "a ribbon over 2 in (50 mm), smooth"),
        )
    ),
    why="It is a check on the test: sand and clay differ a hundredfold.",
    find_out="Wet the soil until it is like putty. Skip it if you like; no figure depends on it.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    digs=True,
)

HARD_DIGGING = Question(
    key="hard_digging",
    label="Very hard to dig",
    text="Was the hole very hard to dig, or did you meet many roots or a buried layer?",
    kind=YesNo(),
    why="Hard ground is a poor sign; roots and old trenches can make the test look too good.",
    find_out="Say yes if you needed a pick or a bar.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    digs=True,
)

SOAKED_ALREADY = Question(
    key="soaked_already",
    label="Soil soaked already",
    text="Has a wet season already soaked the soil through?",
    kind=YesNo(),
    why="Dry soil drinks fast and would make the test look too good.",
    find_out="If it has rained well for weeks, yes. If unsure, say no and soak it twice.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    default=always_this("no"),
    digs=True,
)


def _dry(answers: Answers) -> bool:
    return testing(answers) and answers.get(SOAKED_ALREADY) is not True


def _not_yet(at: dt.datetime, answers: Answers) -> str | None:
    """Doubt a time still to come; only doubted, so that a clock set back faults no answer."""
    if at > answers.now + dt.timedelta(minutes=1) and answers.now != NO_CLOCK:
        return "By this clock that is still to come. Write when it was, or set the clock right."
    return None


def _not_at_once(
    filled: Question[dt.datetime],
) -> Callable[[dt.datetime, Answers], str | None]:
    """Return a doubt about water that was gone at the very time it was ``filled``."""

    def doubt(at: dt.datetime, answers: Answers) -> str | None:
        if at == answers.get(filled):
            return "That is the very time it was filled. Write when the last water was gone."
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
                return f"That is before: {question.label.lower()}. Check one of the two times."
        return None

    return objection


FILL_1_START = Question(
    key="first_fill_start",
    label="First soaking: filled",
    text="Scratch the walls, clean the bottom, and fill the hole with water. When was it full?",
    kind=Moment(),
    why="The first filling wets the soil; it measures thirst, not drainage.",
    find_out="Press the key for now when it is full.",
    group="holes",
    asks=_dry,
    when="the soil is not soaked already",
    doubt=_not_yet,
    caution=HOLE_CAUTION,
    digs=True,
)

FILL_1_EMPTY = Question(
    key="first_fill_empty",
    label="First soaking: empty",
    text="When was the hole empty again?",
    kind=Moment(),
    why="Soil that takes hours for it is wet through.",
    find_out="Press the key for now when the last water is gone. If it stands all night, say you "
    "don't know yet and go on.",
    group="holes",
    asks=_dry,
    when="the soil is not soaked already",
    doubt=_not_at_once(FILL_1_START),
    objection=_not_before(FILL_1_START),
    caution=HOLE_CAUTION,
    digs=True,
)

FILL_2_START = Question(
    key="second_fill_start",
    label="Second soaking: filled",
    text="Fill the hole a second time. When was it full?",
    kind=Moment(),
    why="Two fillings are the custom before the timed one.",
    find_out="Press the key for now when it is full.",
    group="holes",
    asks=_dry,
    when="the soil is not soaked already",
    doubt=_not_yet,
    objection=_not_before(FILL_1_START, FILL_1_EMPTY),
    caution=HOLE_CAUTION,
    digs=True,
)

FILL_2_EMPTY = Question(
    key="second_fill_empty",
    label="Second soaking: empty",
    text="When was it empty the second time?",
    kind=Moment(),
    why="If both fillings are gone within ten minutes the soil is sandy and needs no more.",
    find_out="Press the key for now when the last water is gone.",
    group="holes",
    asks=_dry,
    when="the soil is not soaked already",
    doubt=_not_at_once(FILL_2_START),
    objection=_not_before(FILL_2_START),
    caution=HOLE_CAUTION,
    digs=True,
)

WATER_AT_MARK = Question(
    key="water_at_mark",
    label="Depth of water at the mark",
    text="Push in a ruler or nail a mark, and fill to it. How deep is the water at the mark?",
    kind=depth((1, "in"), (36, "in")),
    why="Every reading is measured against this depth.",
    find_out="About 6 to 8 in (150 to 200 mm), all of it below the topsoil.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    objection=lambda water, a: (
        "The water cannot be deeper than the hole. Check one of the two."
        if (deep := a.get(HOLE_DEPTH)) is not None and water > deep
        else None
    ),
    caution=HOLE_CAUTION,
    digs=True,
)

TEST_START = Question(
    key="test_start",
    label="Timed test: filled to the mark",
    text="When was the water at the mark?",
    kind=Moment(),
    why="All times are counted from here by the clock, even while this program is closed.",
    find_out="Press the key for now at the moment the water stands at the mark.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    doubt=_not_yet,
    objection=_not_before(FILL_1_START, FILL_2_START),
    caution=HOLE_CAUTION,
    digs=True,
)

READ_AS = Question(
    key="read_as",
    label="How readings are written",
    text="What will you measure at each reading?",
    kind=Choice(
        (
            ("left", "the depth of water left in the hole"),
            ("drop", "how far the water is below the mark"),
        )
    ),
    why="Either is as good; the two must not be mixed up.",
    find_out="With a ruler standing in the hole, the depth left. With a mark, the drop.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    digs=True,
)

RULER = Question(
    key="ruler_mark",
    label="Smallest mark on the ruler",
    text="How small a difference can you read?",
    kind=Measure("length", "in", "mm", (0.01, "in"), (1, "in")),
    why="It tells how sure the rate is.",
    find_out="Most people read to 1/8 in (3 mm).",
    group="holes",
    asks=testing,
    when="a soak test is made",
    default=by_units("1/8 in", "3 mm"),
    digs=True,
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


class OutOfOrder(Refused):
    """A reading stands after one that was later."""


class StillToCome(Refused):
    """The time of a reading has not come yet."""


@dataclass
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
        raise Refused(f"{who}its time is the same as that of {before}. Check the two times.")
    if event.at < water.at:
        raise OutOfOrder(f"{who}its time is before {before}. Check the two times and their order.")


def _check_come(who: str, event: SoakEvent, answers: Answers) -> None:
    if answers.now.year > NO_CLOCK.year and event.at > answers.now + dt.timedelta(minutes=1):
        raise StillToCome(
            f"{who}its time is still to come. Write when you looked, or set this clock right."
        )


def _wrong_depth(event: SoakEvent, now_in: float, water: _Level, hole_in: float) -> str:
    if now_in < -1e-6:
        return "the drop is more than the water there was. Check the depth."
    if event.what != REFILLED:
        higher = now_in > water.inches + 1e-6
        return (
            "the water is higher than before. If you refilled, write refilled to and the depth."
            if higher
            else ""
        )
    if now_in <= 0:
        return "a refill leaves some water. Write the depth you filled to."
    if now_in > hole_in + 1e-6:
        return "the water cannot be deeper than the hole. Check the depth."
    return ""


_READINGS = Readings(_began, _word, _check, depth((0, "in"), (36, "in")))

READINGS = Question(
    key="readings",
    label="Readings",
    text="Take a reading about every hour: the time, and the water.",
    kind=_READINGS,
    wording=lambda a: {"kind": replace(_READINGS, said=_word(a))},
    why="Six readings or more show whether the rate has settled. A reading taken late or early "
    "is as good as a punctual one: the true time counts.",
    find_out="Cover the hole between readings. Where the water falls fast, read sooner. You may "
    "refill to the mark: write refilled to and the depth.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    caution=HOLE_CAUTION,
    digs=True,
    more="Corrected rate: f = (L / t) ln((h0 + L) / (h1 + L)), with L = bottom area / perimeter "
    "(a quarter of the width of a round hole): water leaving by bottom and walls alike.",
)

HOLE_LEFT = Question(
    key="hole_left",
    label="How the hole was left",
    text="How have you left the hole?",
    kind=Choice(
        (
            ("filled", "filled in"),
            ("covered", "covered with a board and a weight"),
            ("open", "still open, I am beside it"),
        )
    ),
    why="An open hole of water is dangerous to children and animals, and to ankles.",
    find_out="Go and look.",
    group="holes",
    asks=testing,
    when="a soak test is made",
    caution=HOLE_CAUTION,
    digs=True,
)


def _was_read(answers: Answers) -> bool:
    return testing(answers) and answers.text(READINGS) is not None


HOLE_COUNTS = Question(
    key="hole_counts",
    label="The hole counts",
    text="Shall this hole count for the plan?",
    kind=YesNo(),
    why="A hole in an old trench, a root run or a smeared corner says nothing of the soil.",
    find_out="Yes, unless you know that something spoiled it. A low rate alone is no reason. What "
    "is set aside stays on the sheet with your reason.",
    group="holes",
    asks=_was_read,
    when="the hole has readings",
    default=always_this("yes"),
    digs=True,
)

HOLE_SET_ASIDE_WHY = Question(
    key="hole_set_aside_why",
    label="Why the hole is set aside",
    text="Why shall this hole not count?",
    kind=Note(120, "dug into an old trench"),
    why="Whoever reads the plan can judge it.",
    find_out="Such as: roots ran through it, or the spade met an old trench.",
    group="holes",
    asks=both(_was_read, lambda a: a.get(HOLE_COUNTS) is False),
    when="the hole does not count",
    digs=True,
)


def hole_is_dug(answers: Answers) -> bool:
    """Tell whether this item's hole exists already."""
    return answers.get(HOLE_DEPTH) is not None


ANOTHER_HOLE = Question(
    key="another_hole",
    label="Another hole",
    text="Will you test another hole?",
    kind=YesNo(),
    why="A second hole a few paces away often differs by a factor of two. With two the slower "
    "one counts, with more the middle one.",
    find_out="One is the least; two if the garden is large or the ground looks mixed.",
    group="holes",
    asks=lambda a: testing(a) and hole_is_dug(a),
    when="a test hole is dug",
    default=always_this("no"),
)

HOLES = Group(
    "holes",
    "test hole",
    (
        HOLE_NAME,
        HOLE_DUG_ON,
        HOLE_DEPTH,
        HOLE_CLEARED,
        FLOOR_DEPTH,
        HOLE_SMELL,
        HOLE_SEEPS,
        HOLE_SHAPE,
        HOLE_WIDTH,
        HOLE_LENGTH,
        HOLE_TOP_WIDTH,
        HOLE_TOP_HEIGHT,
        RIBBON,
        HARD_DIGGING,
        SOAKED_ALREADY,
        FILL_1_START,
        FILL_1_EMPTY,
        FILL_2_START,
        FILL_2_EMPTY,
        WATER_AT_MARK,
        TEST_START,
        READ_AS,
        RULER,
        READINGS,
        HOLE_LEFT,
        HOLE_COUNTS,
        HOLE_SET_ASIDE_WHY,
    ),
    ANOTHER_HOLE,
)

STAGE = Stage(
    "soak",
    "C",
    "The soak test",
    "Dig a test hole, wet it twice, then time how fast the water goes. Needs the lines located.",
    (RATE_FROM, KNOWN_RATE, KNOWN_RATE_BY, HOLES),
)
