"""The levels of a garden as it was dug, bed by bed, read before it is planted."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, said_yes
from interview.asking.kinds import Choice, Several, YesNo
from interview.asking.measures import Measure
from interview.asking.question import Kind, Question
from interview.garden.form.choices import MOST_BEDS
from interview.garden.size.questions import BEDS
from interview.quantities.records import record
from interview.quantities.units import Quantity

T = TypeVar("T")

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


@record
class BedLevels:
    """The questions about the levels of one bed."""

    number: int
    """Of the bed, from 1."""
    cover: Question[str]
    floor: Question[tuple[Quantity, ...]]
    notch: Question[Quantity]
    rim: Question[Quantity]
    inlet: Question[Quantity]

    @property
    def readings(self) -> tuple[Question[Any], ...]:
        """What is read with a tape: the blanks of the yard card."""
        return self.floor, self.notch, self.rim, self.inlet

    @property
    def every(self) -> tuple[Question[Any], ...]:
        """All of them, in order."""
        return self.cover, *self.readings


def _asked(number: int) -> Callable[[Answers], bool]:
    return _READ if number == 1 else lambda a: _READ(a) and a[BEDS] >= number


def _question(
    number: int, key: str, label: str, text: str, kind: Kind[T], why: str, find_out: str
) -> Question[T]:
    """Return a question about one bed; the key of the first has no number."""
    named = f"Bed {number}: {text[0].lower()}{text[1:]}"
    if number > 1:
        key, label, text = f"{key}_{number}", f"{label}, bed {number}", named

    def wording(answers: Answers) -> dict[str, str]:
        return {"text": named} if answers[BEDS] > 1 else {}

    return Question(
        key=key,
        label=label,
        text=text,
        kind=kind,
        why=why,
        find_out=find_out,
        asks=_asked(number),
        when=_WHEN if number == 1 else f"{_WHEN}, and there are {number} beds or more",
        wording=wording,
    )


def _bed(number: int) -> BedLevels:
    return BedLevels(
        number,
        _question(
            number,
            "floor_cover",
            "What lies on the floor so far",
            "What was on the floor when you read it?",
            Choice(
                (
                    ("bare", "bare soil; compost and mulch are still to come"),
                    ("compost", "the compost is worked in; the mulch is still to come"),
                    ("finished", "compost and mulch are both in"),
                )
            ),
            "What is still to come raises the floor and makes the pond that much shallower.",
            "Without compost in your plan the first two are the same.",
        ),
        _question(
            number,
            "floor_readings",
            "Floor found",
            "How far below the string is the floor, at several points?",
            Several(_READING, 1, MOST_POINTS),
            "They say how deep the pond is, and whether the floor is level.",
            "Read five points: the middle, both ends, uphill and downhill. Write one per line.",
        ),
        _question(
            number,
            "notch_reading",
            "Notch found",
            "How far below the string is the top of the stone in the notch?",
            _READING,
            "The garden holds the water between the floor and that stone.",
            "Read the middle of the notch, or of the lip where the lawn is the rim.",
        ),
        _question(
            number,
            "rim_reading",
            "Rim found",
            "How far below the string is the lowest place of the rim, away from the notch?",
            _READING,
            "A pond spills at its lowest place, and that must be the notch.",
            "Walk round with the tape. At the string it is 0; a minus is above the string.",
        ),
        _question(
            number,
            "inlet_reading",
            "Inlet found",
            "How far below the string is the stone where the water comes in?",
            _READING,
            "An inlet lower than the notch stands under water when the pond is full.",
            "Read the top of the stone at the rim. Skip it if there is no inlet yet.",
        ),
    )


BED_LEVELS = tuple(_bed(number) for number in range(1, MOST_BEDS + 1))
"""The questions of each bed, the first first."""
FLOOR_COVER, FLOOR_READINGS, NOTCH_READING, RIM_READING, INLET_READING = BED_LEVELS[0].every
READINGS = BED_LEVELS[0].readings
"""What is read with a tape in the first bed."""
LEVELS: tuple[Question[Any], ...] = (
    LEVELS_READ,
    LEVELS_FROM,
    *(one for bed in BED_LEVELS for one in bed.every),
)
