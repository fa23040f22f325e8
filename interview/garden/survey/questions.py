"""Stage D: how much hard surface drains to the garden."""

from __future__ import annotations

from interview.asking.answers import Answers
from interview.asking.conditions import always_this
from interview.asking.kinds import Choice, YesNo
from interview.asking.measures import Measure
from interview.asking.question import Question, Stage
from interview.garden.survey.pacing_questions import MEASURED_BY, WALKERS
from interview.garden.survey.share_questions import SURFACE_KIND
from interview.garden.survey.surface_questions import SURFACES, may_be_a_roof

RUNOFF_BY = Question(
    key="runoff_by",
    label="How runoff is worked out",
    text="How should the plan work out how much rain runs off each surface?",
    kind=Choice(
        (
            ("coefficient", "one part for each kind of surface (runoff coefficient)"),
            ("curve_number", "by kind and soil, more in big storms (curve number, TR-55)"),
        )
    ),
    why="Some offices ask for curve numbers, which grade soil and cover from 0 to 100. For roofs "
    "the two ways differ by about a sixth at 1 in (25 mm).",
    find_out="Take the first, unless your office says otherwise.",
    default=always_this("coefficient"),
)


def _grouped(answers: Answers) -> bool:
    return answers.get(RUNOFF_BY) == "curve_number" or any(
        one.get(SURFACE_KIND) == "lawn" for one in answers.items("surfaces")
    )


SOIL_GROUP = Question(
    key="soil_group",
    label="Hydrologic soil group",
    text="What kind of soil does the yard have?",
    kind=Choice(
        (
            ("a", "A: sand, loamy sand"),
            ("b", "B: loam, silt loam"),
            ("c", "C: sandy clay loam"),
            ("d", "D: clay"),
        )
    ),
    why="Less rain runs off lawn, gravel and packed soil where the soil lets water in.",
    find_out="The soil survey (a public soil map) names it as the hydrologic soil group. If "
    "unsure, take D: it gives the most runoff.",
    asks=_grouped,
    when="runoff is worked out by curve number, or a surface is lawn",
    default=always_this("d"),
)

HOUSE_AREA = Question(
    key="house_area",
    label="Area the house covers",
    text="About how much ground does the whole house cover?",
    kind=Measure("area", "ft**2", "m**2", (10, "ft**2"), (50000, "ft**2")),
    why="One downspout seldom drains more than half of it. So this shows when the whole roof was "
    "counted by mistake.",
    find_out="Length by width of the house, such as 1200 sq ft (110 m²). Skip it if you like.",
)


ROOF_HAZARD = Question(
    key="roof_hazard",
    label="Metal or treated roof",
    text="Does the roof have copper, zinc strips, treated wood shingles or moss killer?",
    kind=YesNo(),
    why="Water that runs off them harms plants and soil. Grow nothing to eat there.",
    find_out="Look from the ground, or ask who put the roof on.",
    asks=may_be_a_roof,
    when="a roof drains to the garden",
)

STAGE = Stage(
    "survey",
    "D",
    "What drains here",
    (MEASURED_BY, WALKERS, SURFACES, RUNOFF_BY, SOIL_GROUP, HOUSE_AREA, ROOF_HAZARD),
)
