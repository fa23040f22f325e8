"""Where the soak rate comes from, and each test hole: its shape and its soil."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from interview.asking.answers import NO_CLOCK, Answers
from interview.asking.conditions import always_this, chosen, depth
from interview.asking.kinds import Choice, Clearance, Day, InSteps, Note, YesNo
from interview.asking.measures import Measure
from interview.asking.question import Member, Question
from interview.garden.site import lines_questions as buried
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.garden.site.cautions import LOCATE
from interview.garden.site.gate import dig_reasons, locate_state
from interview.garden.site.results import stops
from interview.garden.site.surroundings import Owner, ownership_finding
from interview.garden.soak.depth import SHALLOWEST_IN
from interview.quantities.evidence import Finding
from interview.quantities.units import magnitude, quantity

HOLE_CAUTION = (
    "Never leave the hole open: a small child can drown in a very little water and anyone can "
    "break an ankle. Cover it with a board and a weight, or fill it."
)

HOLE_STILL = "Never leave the hole open: cover it with a board and a weight, or fill it."
"""The short form, after the whole caution has been read where the hole is dug."""

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
    why="How fast the soil takes water, its soak rate, decides how deep the pond may be. The pond "
    "is the water that stands in the garden after rain.",
    find_out="Choose the test, unless somebody licensed has measured this very spot.",
    default=always_this("test"),
)

KNOWN_RATE = Question(
    key="known_rate",
    label="Rate in the report",
    text="What soak rate does the report give?",
    kind=Measure("rate", "in/h", "mm/h", (0.001, "in/h"), (100, "in/h")),
    why="The plan uses it in place of a test of your own.",
    find_out="Look for saturated hydraulic conductivity or field infiltration rate: how fast "
    "level ground takes water, already divided by any safety factor. It is not the fall in a hole.",
    asks=chosen(RATE_FROM, "report"),
    when="the rate comes from a report",
)

KNOWN_RATE_BY = Question(
    key="known_rate_by",
    label="Who measured the rate",
    text="Who measured it, and when?",
    kind=Note(120, "soil report of 2024"),
    why="Whoever reads the plan can then ask them.",
    find_out="It is on the report.",
    asks=chosen(RATE_FROM, "report"),
    when="the rate comes from a report",
)


def testing(answers: Answers) -> bool:
    """Tell whether the rate comes from a soak test: yes unless a report was chosen."""
    return answers.get(RATE_FROM) != "report"


HOLE = Member("holes", "test hole", asks=testing, when="a soak test is made", digs=True)
"""A question about a hole waits for the lines unless it says that nothing is dug for it."""

HOLE_NAME = HOLE.question(
    key="hole_name",
    label="Name of the hole",
    text="What do you call this test hole?",
    kind=Note(40, "north end"),
    why="Two holes tell more than one. The names keep them apart.",
    find_out="Such as north end.",
    default=lambda a: f"hole {a.scope[1]}" if a.scope else None,
    digs=False,
)

HOLE_DUG_ON = HOLE.question(
    key="hole_dug_on",
    label="Day the hole is dug",
    text="On which day is this hole dug?",
    kind=Day(),
    why="The marks must be complete and still good on that day.",
    find_out="Write today, or the day you dug it. The other questions about the hole open once "
    "the lines are located.",
    caution=LOCATE,
    wording=buried.service_too,
    digs=False,
)

HOLE_DEPTH = HOLE.question(
    key="hole_depth",
    label="Depth of the hole",
    text="How deep is the test hole?",
    kind=replace(depth((2, "in"), (36, "in")), such=("16 in or 400 mm", "400 mm or 40 cm")),
    why="The test must be in the soil under the garden's floor, not in the topsoil.",
    find_out="Once the lines are located, dig inside the hose. The depth is that of the garden's "
    "floor and that of the test water together: often 12 to 18 in (300 to 450 mm). Measure from "
    "the level of the lawn.",
    caution="Do not climb into a deep hole. " + HOLE_CAUTION,
    warns=buried.near_a_mark,
    wording=lambda a: _digging_words(a),
)


def _digging_words(answers: Answers) -> dict[str, str]:
    """Say that the lines let one dig today, where they do and there is no hole yet."""
    whole = answers.whole()
    if answers.get(HOLE_DEPTH) is not None or answers.now == NO_CLOCK:
        return {}
    good_to = locate_state(whole).stale_after
    if good_to is None or dig_reasons(whole, answers.today):
        return {}
    return {
        "text": f"The lines let you dig today (marks good to {good_to:%a} {good_to.day} "
        f"{good_to:%b}). Dig 12 to 18 in (300 to 450 mm). How deep is the hole?"
    }


def asked_after(answers: Answers) -> bool:
    """Tell whether the marks were asked for after the day of this item's hole."""
    day, asked = answers.get(HOLE_DUG_ON), answers.whole().get(buried.LINES_ASKED_ON)
    return day is not None and asked is not None and asked > day


HOLE_CLEARED = HOLE.question(
    key="hole_cleared",
    label="Lines clear when the hole was dug",
    text="Was every buried line marked, and every owner's answer in, when this hole was dug?",
    kind=Clearance(),
    why="New marks say nothing about the day on which an older hole was dug.",
    find_out="Say yes only if all owners had answered and the marks were still good that day. If "
    "unsure, say no.",
    asks=lambda a: a.get(HOLE_DEPTH) is not None and asked_after(a),
    when="the marks were asked for after the hole was dug",
    caution=LOCATE,
    wording=buried.service_too,
    noted=True,
    digs=False,
    more="Where your answers tell it, the program fills this in by itself.",
)

NOT_EVEN_TO_LEARN = frozenset(
    {
        "slides", "karst", "slope_crest_distance", "septic_distance", "septic_uphill_distance",
        "well_distance", "contamination", "ownership",
    }
)  # fmt: skip
"""Stops by which no water is to be poured into the ground, and none that is not one's own dug."""


def spot_stops(answers: Answers) -> tuple[Finding, ...]:
    """Return what stops any garden at the spot chosen, the shallowest too."""
    if not answers.texts:  # a new garden is asked its first question before any sum
        return ()
    spot = ground.chosen_spot(answers)
    found = stops(spot, quantity(SHALLOWEST_IN.value, "in"))
    if answers.whole().get(site.PERMISSION) == "no":
        found = (ownership_finding(Owner.NO), *found)
    return tuple(one.told(answers.told) for one in found)


def may_learn(answers: Answers, found: Iterable[Finding]) -> bool:
    """Tell whether a hole may be dug only to learn about the soil where ``found`` stops a garden.

    Not by a bank, on ground that slides or is polluted, by a septic system or a well.
    """
    over_bank = ground.chosen_spot(answers).get(ground.OVERFLOW_TO) == "bank"
    return not over_bank and not any(one.key in NOT_EVEN_TO_LEARN for one in found)


def _asks_to_learn(answers: Answers) -> bool:
    if answers.get(HOLE_DEPTH) is not None:
        return False
    found = spot_stops(answers)
    return bool(found) and may_learn(answers, found)


TEST_TO_LEARN = HOLE.question(
    key="test_to_learn",
    label="Test only to learn",
    text="No garden should be made at this spot. Will you dig here all the same, only to learn "
    "about the soil?",
    kind=YesNo(),
    why="A hole is work and a danger. Its rate can still tell you about a spot nearby.",
    find_out="Say no if another spot may do: the test belongs there.",
    asks=_asks_to_learn,
    when="something stops a garden at the spot, and no hole is dug yet",
    caution=LOCATE,
    wording=buried.service_too,
    noted=True,
    digs=False,
)

FLOOR_DEPTH = HOLE.question(
    key="floor_depth",
    label="Garden floor the hole stands for",
    text="How far below the lawn will the garden's floor be at this place?",
    kind=depth((0, "in"), (36, "in")),
    why="The water of the test should stand in the soil just below that floor.",
    find_out="On flat ground it is about the depth of the pond plus the mulch. The bottom of the "
    "water should be within 2 in (50 mm) of it, or deeper.",
    doubt=lambda floor, a: (
        "The hole is no deeper than that, so the test would tell of soil that is dug away."
        if (hole := a.get(HOLE_DEPTH)) is not None and magnitude(hole, "m") <= magnitude(floor, "m")
        else None
    ),
)

BLOCKING_SMELLS = ("gas", "fuel", "sewage")

HOLE_SMELL = HOLE.question(
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
    # Gas for heating is given a smell, often that of rotten eggs: 49 CFR 192.625, from memory.
    caution="Gas, which may smell of rotten eggs: leave at once, use no phone or switch here, and "
    "call the emergency number from upwind. Fuel or sewage: stop, and ask the health department.",
)

HOLE_SEEPS = HOLE.question(
    key="hole_seeps",
    label="Water seeping into the hole",
    text="Does water seep into the hole by itself?",
    kind=YesNo(),
    why="That is groundwater. A garden here would fill from below.",
    find_out="Wait half an hour and look.",
)

HOLE_SHAPE = HOLE.question(
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
    why="Water leaves by the walls as well as the bottom. The shape says how much of each.",
    find_out="Make the walls upright where you can: the result is then surer.",
)

HOLE_WIDTH = HOLE.question(
    key="hole_width",
    label="Width of the hole",
    text="How wide is the hole? If it tapers, measure at the bottom.",
    kind=replace(depth((2, "in"), (60, "in")), such=("8 in or 200 mm", "200 mm or 20 cm")),
    why="A narrow hole loses much of its water sideways. With the width the plan takes that out; "
    "what is left is called the corrected rate.",
    find_out="Measure across where the water will stand, in two directions, and take the average.",
)

HOLE_LENGTH = HOLE.question(
    key="hole_length",
    label="Length of the hole",
    text="How long is the hole the other way?",
    kind=depth((2, "in"), (120, "in")),
    why="A long hole has more wall for its bottom.",
    find_out="Measure the longer side where the water will stand.",
    asks=chosen(HOLE_SHAPE, "rectangular"),
    when="the hole is longer than it is wide",
)

HOLE_TOP_WIDTH = HOLE.question(
    key="hole_top_width",
    label="Width of the hole higher up",
    text="How wide is the hole higher up, above the water?",
    kind=depth((2, "in"), (120, "in")),
    why="A hole shaped like a cone needs its own sum.",
    find_out="Measure across at a height you can name in the next question.",
    asks=chosen(HOLE_SHAPE, "tapered"),
    when="the hole tapers",
    objection=lambda top, a: (
        "The top must be wider than the bottom. If it is not, choose the round shape."
        if (bottom := a.get(HOLE_WIDTH)) is not None and top <= bottom
        else None
    ),
)

HOLE_TOP_HEIGHT = HOLE.question(
    key="hole_top_height",
    label="Height of that wider place",
    text="How far above the bottom did you measure that width?",
    kind=depth((2, "in"), (60, "in")),
    why="It tells how steep the walls are.",
    find_out="Stand the tape on the bottom.",
    asks=chosen(HOLE_SHAPE, "tapered"),
    when="the hole tapers",
)

RIBBON = HOLE.question(
    key="ribbon",
    label="Soil by feel",
    text="Squeeze a moist handful from the bottom, then press it out between thumb and finger. "
    "What happens?",
    kind=InSteps(
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
        ),
        first=(
            ("falls_apart", "it falls apart"),
            ("ball", "it makes a ball but no ribbon"),
            ("short", "a ribbon under 1 in (25 mm)"),
            ("medium", "a ribbon of 1 to 2 in (25 to 50 mm)"),
            ("long", "a ribbon over 2 in (50 mm)"),
        ),
        further="Rub a pinch of it, very wet, in your palm. How does it feel?",
        sorts=(
            ("gritty", "gritty"),
            ("smooth", "smooth, like flour"),
            ("", "neither gritty nor smooth"),
        ),
    ),
    why="It is a check on the test: sand takes water a hundred times faster than clay.",
    find_out="Wet the soil until it is like putty. Skip it if you like; no figure depends on it.",
)

HARD_DIGGING = HOLE.question(
    key="hard_digging",
    label="Very hard to dig",
    text="Was the hole very hard to dig, or did you meet many roots or a buried layer?",
    kind=YesNo(),
    why="Hard ground is a poor sign. Roots and old trenches can make the test look too good.",
    find_out="Say yes if you needed a pick or a bar.",
)


def hole_is_dug(answers: Answers) -> bool:
    """Tell whether this item's hole exists already."""
    return answers.get(HOLE_DEPTH) is not None
