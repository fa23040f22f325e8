"""Stage C: the soak test, how fast the soil under the garden takes water."""

from __future__ import annotations

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, both
from interview.asking.kinds import Choice, Note, YesNo
from interview.asking.measures import Count
from interview.asking.question import Group, Stage
from interview.garden.site import spot_questions as ground
from interview.garden.site.spot_questions import MOST_SPOTS
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.hole_questions import HOLE, HOLE_DEPTH

HOLE_LEFT = HOLE.question(
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
    why=(
        "An open hole with water is a danger to children and animals, and people break ankles in "
        "it."
    ),
    find_out="Go and look.",
    caution=digging.HOLE_CAUTION,
)


def _was_read(answers: Answers) -> bool:
    return answers.text(timing.READINGS) is not None


def _which_spot(answers: Answers) -> str | None:
    scope = ground.chosen_spot(answers).scope
    return None if scope is None else str(scope[1])


HOLE_SPOT = HOLE.question(
    key="hole_spot",
    label="Spot of the hole",
    text="At which spot is this hole? Write its number.",
    kind=Count(1, MOST_SPOTS, lead=("spot", "number", "no", "#")),
    why="Soil differs from spot to spot: the plan uses only holes at the spot chosen.",
    find_out="The spots are numbered in the order that you looked at them.",
    asks=lambda a: len(a.numbers(ground.SPOTS.key)) > 1 and a.text(HOLE_DEPTH) is not None,
    when="a test hole is dug, and several spots are recorded",
    objection=ground.no_such_spot,
    default=_which_spot,
    digs=False,
)


def elsewhere(hole: Answers) -> int:
    """Return the number of the spot where a hole is, if that is not the one chosen, or 0."""
    where = hole.get(HOLE_SPOT)
    scope = ground.chosen_spot(hole).scope
    several = len(hole.numbers(ground.SPOTS.key)) > 1
    return where if several and where is not None and scope and where != scope[1] else 0


HOLE_COUNTS = HOLE.question(
    key="hole_counts",
    label="The hole counts",
    text="Should the plan use this hole?",
    kind=YesNo(),
    why="A hole in an old trench, among roots or with smeared walls says nothing about the soil.",
    find_out="Yes, unless you know that something spoiled it. A low rate alone is no reason. What "
    "is set aside stays on the sheet, with your reason.",
    asks=_was_read,
    when="the hole has readings",
    default=always_this("yes"),
)

HOLE_SET_ASIDE_WHY = HOLE.question(
    key="hole_set_aside_why",
    label="Why the hole is set aside",
    text="Why should the plan not use this hole?",
    kind=Note(120, "dug into an old trench"),
    why="Whoever reads the plan can judge it.",
    find_out="Such as: roots ran through it, or the spade met an old trench.",
    asks=both(_was_read, lambda a: a.get(HOLE_COUNTS) is False),
    when="the hole does not count",
)


ANOTHER_HOLE = HOLE.question(
    key="another_hole",
    label="Another hole",
    text="Will you test another hole?",
    kind=YesNo(),
    why="A hole a few steps away often takes water twice as fast, or half as fast. Of two holes "
    "the slower one counts, of more the middle one.",
    find_out="One hole is the least. Test two if the garden is large or the ground looks mixed.",
    asks=digging.hole_is_dug,
    when="a test hole is dug",
    default=always_this("no"),
    digs=False,
)

HOLES = Group(
    HOLE,
    (
        digging.HOLE_NAME,
        digging.HOLE_DUG_ON,
        HOLE_DEPTH,
        digging.HOLE_CLEARED,
        digging.TEST_TO_LEARN,
        digging.FLOOR_DEPTH,
        digging.HOLE_SMELL,
        digging.HOLE_SEEPS,
        digging.HOLE_SHAPE,
        digging.HOLE_WIDTH,
        digging.HOLE_LENGTH,
        digging.HOLE_TOP_WIDTH,
        digging.HOLE_TOP_HEIGHT,
        digging.RIBBON,
        digging.HARD_DIGGING,
        timing.SOAKED_ALREADY,
        timing.FILL_1_START,
        timing.FILL_1_EMPTY,
        timing.FILL_2_START,
        timing.FILL_2_EMPTY,
        timing.WATER_AT_MARK,
        timing.TEST_START,
        timing.READ_AS,
        timing.RULER,
        timing.READINGS,
        HOLE_LEFT,
        HOLE_SPOT,
        HOLE_COUNTS,
        HOLE_SET_ASIDE_WHY,
    ),
    ANOTHER_HOLE,
)

STAGE = Stage(
    "soak",
    "C",
    "The soak test",
    (digging.RATE_FROM, digging.KNOWN_RATE, digging.KNOWN_RATE_BY, HOLES),
)
