"""Each spot that is looked at: its slope and ground, and which spot is chosen."""

from __future__ import annotations

from dataclasses import replace

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, depth, distance
from interview.asking.kinds import Choice, Note, Ticks, YesNo
from interview.asking.measures import Count, Number
from interview.asking.question import Group, Question
from interview.garden.site.nearby_questions import (
    DISTANCES,
    DRIP_LINE,
    NEAR,
    SEPTIC_UPHILL,
    SPOT,
    WALL_HEIGHT,
)
from interview.quantities.evidence import OURS, Cited
from interview.quantities.units import Quantity, magnitude
from interview.reading import LARGER, SMALLER

LEVEL = tuple((word, (0.0, "in")) for word in ("level", "flat", "none", "no drop"))

SPOT_NAME = SPOT.question(
    key="spot_name",
    label="Name of the spot",
    text="What do you call this spot?",
    kind=Note(40, "back lawn"),
    why="You may look at several spots and compare them.",
    find_out="Such as back lawn by the gate.",
    default=lambda a: f"spot {a.scope[1]}" if a.scope else None,
)

STANDS = SPOT.question(
    key="stands_after_rain",
    label="Water stands after rain",
    text="Choose a place for the garden. After rain, does water stand there for more than a day?",
    kind=Choice(
        (("never", "never"), ("few", "a few times a year"), ("often", "often")),
        said=(("no", "never"), ("sometimes", "few")),
    ),
    why="A wet spot is a poor spot. Standing water shows that the soil does not drain.",
    find_out="Take open lawn below the downspout, 10 ft (3 m) or more from the house. Look at it a "
    "day after the next good rain.",
)

SLOPE_RUN = SPOT.question(
    key="slope_run",
    label="Length of the slope string",
    text="Stretch a level string between two chairs, from uphill to downhill. How long is it?",
    kind=distance(100, careful=SMALLER),
    why="The slope decides how deep you dig uphill, and how high the berm is downhill. The berm "
    "is a low bank of soil that holds the water back.",
    find_out="You need two chairs, a string and a line level (a small level that hangs on the "
    "string). 10 to 15 ft (3 to 4.5 m) is a good length.",
    objection=lambda run, _: "The string must be longer than zero." if run.m <= 0 else None,
    caution="Pushing a stake in is digging too. Until the lines are marked, use chairs, or stand "
    "the stakes in buckets of stones.",
)

SLOPE_DROP = SPOT.question(
    key="slope_drop",
    label="Drop at the downhill end",
    text="How much lower is the ground at the downhill end of the string than at the uphill end?",
    kind=replace(
        depth((-240, "in"), (240, "in"), LARGER),
        said=LEVEL,
        such=("7 in, or level", "180 mm, or level"),
    ),
    why="The drop divided by the length of the string is the slope.",
    find_out="Measure from the level string down to the ground at each end. The drop is the "
    "difference. On flat ground write level.",
    objection=lambda drop, _: (
        "That is uphill. Swap the two ends and write the drop without a minus."
        if drop.m < 0
        else None
    ),
)

DROPS_APART = Cited(0.5, OURS)
"""The two drops are doubted when they differ by more than this part of the larger one, and by more
than an inch."""


def _uneven_drops(turned: Quantity, answers: Answers) -> str | None:
    first = answers.get(SLOPE_DROP)
    if first is None:
        return None
    one, other = magnitude(first, "in"), magnitude(turned, "in")
    if abs(one - other) <= max(1.0, DROPS_APART.value * max(one, other)):
        return None
    return "The two drops differ a lot. Pull the string tight and level, and measure both again."


SLOPE_TURNED = SPOT.question(
    key="slope_drop_turned",
    label="Drop with the level turned",
    text="Turn the level end for end on the string and level it again. What is the drop now?",
    kind=depth((0, "in"), (240, "in"), LARGER),
    why="The average of the two cancels out a level that reads crooked.",
    find_out="If you skip this, the first drop is used alone.",
    doubt=_uneven_drops,
)

DOWNHILL = SPOT.question(
    key="downhill_direction",
    label="Downhill is toward",
    text="Which way is downhill?",
    kind=Choice(
        (
            ("n", "north"),
            ("ne", "northeast"),
            ("e", "east"),
            ("se", "southeast"),
            ("s", "south"),
            ("sw", "southwest"),
            ("w", "west"),
            ("nw", "northwest"),
            ("flat", "it is flat"),
        )
    ),
    why="The plan draws it: the garden's long side lies across the slope, with the berm downhill.",
    find_out="Use the compass of a phone.",
)

_BELOW = replace(
    depth((0, "in"), (1200, "in"), SMALLER),
    says_unit=True,
    such=("5 ft, or over 4 ft", "1.5 m, or over 1.2 m"),
)
"""The kind of a depth that is thought of in feet and was always written in inches."""

WET_DEPTH = SPOT.question(
    key="wet_season_depth",
    label="Depth to wet-season water",
    text="How deep is it to water in the wet season, or to gray or rust-spotted soil?",
    kind=_BELOW,
    why="There should be 2 ft (0.6 m) of drained soil below the dug bottom. Gray or rusty spots "
    "show how high the water rises.",
    find_out="Ask a neighbor, or look in the soil survey (a public soil map), a well driller's "
    "notes or the test hole. If you saw none, write the deepest you know to be dry.",
)

ROCK_DEPTH = SPOT.question(
    key="rock_depth",
    label="Depth to rock",
    text="How deep is it to rock, or to a layer that no spade goes through?",
    kind=_BELOW,
    why="Water cannot soak into rock: there should be 2 ft (0.6 m) of soil below the dug bottom.",
    find_out="Ask neighbors, or look in the soil survey, or in the test hole once the lines are "
    "marked. If you met none, write the depth that you know to be free of it.",
    caution="Pushing a rod into the ground is digging too: only after the lines are marked.",
)

SLIDES = SPOT.question(
    key="unstable_ground",
    label="Unstable ground",
    text="Is there a landslide, a bluff (a high, steep bank) or a sinkhole nearby?",
    kind=Choice(
        (
            ("none", "none"),
            ("slides", "slides, or a bluff"),
            ("karst", "sinkholes or caves"),
        )
    ),
    why="Added water can start the ground moving.",
    find_out="Ask neighbors or the county. Look for leaning trees and cracks in the ground.",
    caution="On ground that may move an engineer decides, not this plan.",
)

_SUN_SAID = tuple(
    (words, hours)
    for hours, said in (
        ("8 h", ("full sun", "all day", "sun all day", "full")),
        ("4 h", ("part sun", "partial sun", "half a day", "half the day", "part shade")),
        ("2 h", ("shade", "full shade", "shady", "in the shade")),
    )
    for words in said
)
"""Hours for how sunny a spot is called: amid the range in which plants are chosen for it."""

SUN_HOURS = SPOT.question(
    key="sun_hours",
    label="Hours of sun in midsummer",
    text="How many hours of direct sun does the spot get on a summer day?",
    kind=Number(
        0,
        16,
        tail=("hours", "hour", "hrs", "hr", "h", "hours a day", "hours of sun"),
        said=_SUN_SAID,
        careful=SMALLER,
    ),
    why="The plan picks plants by it.",
    find_out="Look at the spot at 9, 12, 3 and 6 o'clock on a clear day.",
    default=always_this("5"),
)

CONTAMINATION = SPOT.question(
    key="contamination",
    label="What the ground has been",
    text="Has any of these ever been here?",
    kind=Ticks(
        (
            ("fuel", "a fuel tank or a spill"),
            ("paint", "old painted walls, before 1978"),
            ("orchard", "an orchard"),
            ("industry", "a repair shop, industry or rail"),
            ("dump", "a place for dumping or burning"),
        )
    ),
    why="Water that soaks in carries old pollution down.",
    find_out="Ask former owners and neighbors. Look at old maps or photographs.",
    caution="Where pollution is suspected do not dig and do not soak water in. Near old painted "
    "walls the soil may hold lead.",
)


def _suspected(answers: Answers) -> bool:
    ticks = answers.get(CONTAMINATION)
    return bool(ticks)


SOIL_LAB = SPOT.question(
    key="soil_lab",
    label="Soil test for pollution",
    text="What did a laboratory test of that soil say?",
    kind=Choice(
        (
            ("clear", "below the limits"),
            ("above", "above the limits"),
            ("not_tested", "not tested"),
        )
    ),
    why="Only a test can tell whether the soil is clean.",
    find_out="Your university extension office can name a laboratory. Taking the sample is digging "
    "too: have the lines marked first.",
    asks=_suspected,
    when="the ground may be polluted",
)

OVERFLOW_TO = SPOT.question(
    key="overflow_to",
    label="Where overflow goes",
    text="When the garden is full, where will the extra water go?",
    kind=Choice(
        (
            ("own_lawn", "over my own lawn"),
            ("street", "to the street or a roadside swale (a shallow grass ditch)"),
            ("drain", "to a drain inlet"),
            ("neighbour", "toward a neighbor"),
            ("building", "back toward a building"),
            ("bank", "over a steep bank"),
            ("undecided", "not decided yet"),
        )
    ),
    why="Every garden overflows sometimes. The water must leave at a place you choose.",
    find_out="Pour out a bucket at the downhill edge and follow the water.",
    caution="Overflow must stay clear of buildings, neighbors and walks that ice over.",
)

OVERFLOW_TO_BUILDING = SPOT.question(
    key="overflow_building_distance",
    label="From the overflow's way to a building",
    text="How far does the overflow's way stay from any building, next door too?",
    kind=distance(careful=SMALLER),
    why="Water that runs along a wall gets into it. Keep 10 ft (3 m) or more away, all the way.",
    find_out="Follow the water from the low side of the garden, and measure where it comes "
    "nearest. If no building is near, write 200 ft (60 m).",
    caution="Near a building the ground must fall away from it: 6 in (150 mm) in the first 10 ft "
    "(3 m).",
)

OVERFLOW_TO_LINE = SPOT.question(
    key="overflow_line_distance",
    label="From the overflow's way to a property line",
    text="How far does the overflow's way stay from the nearest property line?",
    kind=distance(careful=SMALLER),
    why="Water that you gather must not harm the ground next door.",
    find_out="Measure where the water comes nearest to the property line, or write 0 where it "
    "crosses. If none is near, write 200 ft (60 m).",
)

ANOTHER_SPOT = SPOT.question(
    key="another_spot",
    label="Another spot",
    text="Do you want to look at another spot, to compare?",
    kind=YesNo(),
    why="If one spot fails, another may do.",
    find_out="Answer no to go on; you can come back.",
    default=always_this("no"),
)

SPOTS = Group(
    SPOT,
    (
        SPOT_NAME,
        STANDS,
        NEAR,
        DISTANCES["basement"],
        DISTANCES["slab"],
        DISTANCES["septic"],
        SEPTIC_UPHILL,
        DISTANCES["well"],
        DISTANCES["property_line"],
        DISTANCES["pavement"],
        DISTANCES["retaining_wall"],
        WALL_HEIGHT,
        DISTANCES["tree"],
        DRIP_LINE,
        DISTANCES["slope_crest"],
        DISTANCES["water"],
        SLOPE_RUN,
        SLOPE_DROP,
        SLOPE_TURNED,
        DOWNHILL,
        WET_DEPTH,
        ROCK_DEPTH,
        SLIDES,
        SUN_HOURS,
        CONTAMINATION,
        SOIL_LAB,
        OVERFLOW_TO,
        OVERFLOW_TO_BUILDING,
        OVERFLOW_TO_LINE,
    ),
    ANOTHER_SPOT,
    chosen="chosen_spot",
)

MOST_SPOTS = 20


def no_such_spot(number: int, answers: Answers) -> str | None:
    """Return the sentence that refuses the number of no spot, or nothing."""
    if number in answers.numbers(SPOTS.key):
        return None
    return "There is no spot with that number. The spots are numbered from 1."


CHOSEN_SPOT = Question(
    key="chosen_spot",
    label="Spot chosen",
    text="Which spot will you use? Write its number.",
    kind=Count(1, MOST_SPOTS, lead=("spot", "number", "no", "#")),
    why="The soak test and the plan are for this spot.",
    find_out="The plan shows what was found at each spot so far.",
    asks=lambda a: len(a.numbers("spots")) > 1,
    when="several spots are recorded",
    objection=no_such_spot,
    default=always_this("1"),
)


def chosen_spot(answers: Answers) -> Answers:
    """Return the answers as seen from the spot that was chosen."""
    numbers = answers.numbers("spots")
    wanted = answers.get(CHOSEN_SPOT) or (numbers[0] if numbers else 1)
    return answers.at("spots", wanted)
