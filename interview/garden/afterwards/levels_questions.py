"""The levels of a garden as it was dug, read before it is planted."""

from __future__ import annotations

from interview.asking.conditions import always_this, said_yes
from interview.asking.kinds import Choice, Several, YesNo
from interview.asking.measures import Measure
from interview.asking.question import Question

MOST_POINTS = 20
_READING = Measure("length", "in", "mm", (-36, "in"), (120, "in"), such=("12 1/4 in", "310 mm"))

LEVELS_READ = Question(
    key="levels_read",
    label="Levels read",
    text="Is the garden dug, and have you read its levels?",
    kind=YesNo(),
    why="A floor 1 in (25 mm) too high takes a fifth of the water. Before planting it is easily "
    "mended.",
    find_out="Read the points on the yard card down from the string. Answer no until it is dug.",
    default=always_this("no"),
)
_READ = said_yes(LEVELS_READ)
_WHEN = "the levels were read"

LEVELS_FROM = Question(
    key="levels_from",
    label="What the levels are read from",
    text="From what did you measure down?",
    kind=Choice(
        (
            ("string", "the string of the plan, at crest height"),
            ("other", "another level line, such as a laser or a water level"),
        )
    ),
    why="From the string the plan can tell whether the floor or the notch is off.",
    find_out="Any level line will do, if all readings are from the same one.",
    asks=_READ,
    when=_WHEN,
    default=always_this("string"),
)

FLOOR_COVER = Question(
    key="floor_cover",
    label="What lies on the floor so far",
    text="What was on the floor when you read it?",
    kind=Choice(
        (
            ("bare", "bare soil; compost and mulch are still to come"),
            ("compost", "the compost is worked in; the mulch is still to come"),
            ("finished", "compost and mulch are both in"),
        )
    ),
    why="What is still to come lifts the floor, and the pond has so much less room.",
    find_out="Without compost in your plan the first two are the same.",
    asks=_READ,
    when=_WHEN,
)

FLOOR_READINGS = Question(
    key="floor_readings",
    label="Floor found",
    text="How far below the string is the floor, at several points?",
    kind=Several(_READING, 1, MOST_POINTS),
    why="They say how deep the pond is, and whether the floor is level.",
    find_out="Read five points: the middle, both ends, uphill and downhill. Write one per line.",
    asks=_READ,
    when=_WHEN,
)

NOTCH_READING = Question(
    key="notch_reading",
    label="Notch found",
    text="How far below the string is the top of the stone in the notch?",
    kind=_READING,
    why="From the floor up to there is what the garden holds.",
    find_out="Read the middle of the notch, or of the lip where the lawn is the rim.",
    asks=_READ,
    when=_WHEN,
)

RIM_READING = Question(
    key="rim_reading",
    label="Rim found",
    text="How far below the string is the lowest place of the rim, away from the notch?",
    kind=_READING,
    why="A pond spills at its lowest place, and that must be the notch.",
    find_out="Walk round with the tape. At the string it is 0; a minus is above the string.",
    asks=_READ,
    when=_WHEN,
)

INLET_READING = Question(
    key="inlet_reading",
    label="Inlet found",
    text="How far below the string is the stone where the water comes in?",
    kind=_READING,
    why="An inlet lower than the notch stands under water when the pond is full.",
    find_out="Read the top of the stone at the rim. Skip it if there is no inlet yet.",
    asks=_READ,
    when=_WHEN,
)

READINGS = (FLOOR_READINGS, NOTCH_READING, RIM_READING, INLET_READING)
"""What is read with a tape: the blanks of the yard card."""
LEVELS = (LEVELS_READ, LEVELS_FROM, FLOOR_COVER, *READINGS)
