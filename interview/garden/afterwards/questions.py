"""Stage G: dig day, notes, and what the first storms showed."""

from __future__ import annotations

from interview.asking.conditions import always_this, depth, said_yes
from interview.asking.kinds import Choice, Day, Note, YesNo
from interview.asking.measures import Measure
from interview.asking.question import Question, Stage
from interview.garden.afterwards.levels_questions import LEVELS
from interview.garden.site import lines_questions as buried
from interview.reading import When

DIG_DAY = Question(
    key="dig_day",
    label="Day you mean to dig",
    text="On which day will you dig the garden?",
    kind=Day(when=When.COMING),
    why="The line marks must still be good on that day.",
    find_out="Choose dry days: wet clay smears.",
    doubt=lambda day, a: (
        "That is before the last owner had answered."
        if (done := a.get(buried.LINES_FINISHED_ON)) is not None and day < done
        else None
    ),
    caution="Look at the marks again that morning.",
    warns=buried.near_a_mark,
)

NOTES = Question(
    key="notes",
    label="Notes",
    text="Is there anything else to keep with the plan?",
    kind=Note(2000),
    why="It is printed at the end of the sheet.",
    find_out="Names, telephone numbers, what the neighbor said. Skip it if there is nothing.",
)

STORM_SEEN = Question(
    key="storm_seen",
    label="First storm seen",
    text="Is the garden built, and have you seen it through a storm?",
    kind=YesNo(),
    why="The first storms show whether it works.",
    find_out="It may take months. Answer no for now, and come back.",
    default=always_this("no"),
)

STORM_RAIN = Question(
    key="storm_rain",
    label="Rain of that storm",
    text="How much rain fell?",
    kind=depth((0, "in"), (30, "in")),
    why="It is compared with the rain the garden was made for.",
    find_out="Read a straight-sided glass that stood outside, or ask the nearest weather station.",
    asks=said_yes(STORM_SEEN),
    when="a storm was seen",
)

STORM_EMPTY = Question(
    key="storm_empty_after",
    label="Hours until the pond was gone",
    text="How long after the rain stopped was the pond gone?",
    kind=Measure("duration", "h", "h", (0, "h"), (1000, "h")),
    why="Within a day is good. Over two days needs mending.",
    find_out="Look every few hours. If it still stands, write how long it has stood.",
    asks=said_yes(STORM_SEEN),
    when="a storm was seen",
    caution="Water that stands for more than two days: keep children away and mend the garden.",
)

STORM_OVERFLOW = Question(
    key="storm_overflow",
    label="Overflow in that storm",
    text="Did it overflow?",
    kind=Choice(
        (
            ("none", "no"),
            ("notch", "yes, at the notch"),
            ("elsewhere", "yes, somewhere else"),
        )
    ),
    why="The extra water must leave where you chose: at the notch.",
    find_out="Look for bent grass and washed mulch.",
    asks=said_yes(STORM_SEEN),
    when="a storm was seen",
)

STORM_PLANTS = Question(
    key="storm_plants",
    label="Plants after the storm",
    text="How do the plants look?",
    kind=Choice(
        (
            ("well", "well"),
            ("drowned", "yellow and limp, drowned"),
            ("dry", "wilted and dry"),
        )
    ),
    why="It shows whether each plant stands at the right height.",
    find_out="Look a week after the storm.",
    asks=said_yes(STORM_SEEN),
    when="a storm was seen",
)

STAGE = Stage(
    "review",
    "G",
    "Look it over",
    (DIG_DAY, NOTES, *LEVELS, STORM_SEEN, STORM_RAIN, STORM_EMPTY, STORM_OVERFLOW, STORM_PLANTS),
)
