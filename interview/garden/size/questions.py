"""Stage E: the room there is, the depth, the shape and the earth."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, by_units, chosen, depth, distance
from interview.asking.kinds import Choice, Several, YesNo
from interview.asking.measures import Count, Measure
from interview.asking.question import UNKNOWN_TEXT, Question, Stage
from interview.garden.form.choices import MOST_BEDS
from interview.garden.site import questions as site
from interview.garden.size import shape_questions as shaping
from interview.garden.size.price_lines import THINGS, PriceLine, wrong_prices
from interview.garden.survey import surface_questions as surfacing
from interview.quantities.guards import within
from interview.quantities.units import Quantity, magnitude
from interview.reading import SMALLER

ROOM_LENGTH = Question(
    key="room_length",
    label="Room across the slope",
    text="Lay a hose where the garden may lie, its long side level. How long may the garden be?",
    kind=distance(500, above_zero=True, careful=SMALLER),
    why="The long side lies level, across the slope. The whole garden must fit in, with its berm "
    "and its rim (the top edge all around).",
    find_out="Use no pegs yet. Measure between the things you must keep clear of. Skip it if "
    "there is plenty of room, or if the room is no rectangle.",
)

ROOM_WIDTH = Question(
    key="room_width",
    label="Room up and down the slope",
    text="How wide may the garden be, up and down the slope?",
    kind=distance(500, above_zero=True, careful=SMALLER),
    why="A garden that reaches far up the slope needs a deep cut.",
    find_out="Measure it as you did the length. Skip it if there is plenty of room.",
)

ROOM_AREA = Question(
    key="room_area",
    label="Room as an area",
    text="If the room is no rectangle, how large is it?",
    kind=Measure("area", "ft**2", "m**2", None, (250_000, "ft**2"), above_zero=True),
    why="A garden may take any shape. All of it must fit into this area, with its rim.",
    find_out="Add up rectangles and triangles. Skip it if there is plenty of room.",
    asks=lambda a: a.get(ROOM_LENGTH) is None or a.get(ROOM_WIDTH) is None,
    when="the room was not given as a length and a width",
)

BEDS = Question(
    key="beds",
    label="Number of beds",
    text="How many separate beds?",
    kind=Count(1, MOST_BEDS, ("beds", "bed")),
    why="Two small beds may fit where one large one does not. They are also easier to keep level.",
    find_out="One is simplest. The room you gave is for one bed.",
    default=always_this("1"),
)

BEDS_HOW = Question(
    key="beds_how",
    label="How the beds lie",
    text="How will the water come to the beds?",
    kind=Choice(
        (
            ("side_by_side", "shared out evenly, side by side"),
            ("in_a_row", "one below the other, each taking what the one above spills"),
        )
    ),
    why="The first bed in a row gets the most water and stays wet longest.",
    find_out="Side by side suits two downspouts, or a level stone edge that shares the water out. "
    "One below the other suits a slope.",
    asks=lambda a: a[BEDS] > 1,
    when="there is more than one bed",
    default=always_this("side_by_side"),
)


SPOUT_DISTANCE = Question(
    key="spout_distance",
    label="From the downspout to the garden",
    text="How far is it from the downspout to the hose?",
    wording=surfacing.no_roof(
        label="From the surface to the garden",
        text="Where does the water leave its surface? How far is that from the hose?",
    ),
    kind=distance(500, careful=SMALLER),
    why="It gives the length of the pipe or channel.",
    find_out="Measure along the way the water will take, to the nearest edge of the garden. Of "
    "several downspouts take the farthest.",
)

WATER_BY = Question(
    key="water_by",
    label="How water gets there",
    text="How will the water get from the downspout to the garden?",
    wording=surfacing.no_roof(text="How will the water get from its surface to the garden?"),
    kind=Choice(
        (
            ("pipe", "a buried pipe"),
            ("channel", "an open channel with stone"),
            ("lawn", "over the lawn"),
        )
    ),
    why="A buried pipe needs a trench and ground that falls about 12 in (300 mm) on the way.",
    find_out="A channel is the simplest, and over a nearly flat lawn the only way. A pipe ends on "
    "stone before the bed. Its trench must be inside the marked area.",
    default=always_this("channel"),
)

_PIPE_NEEDS = (
    "A buried pipe needs about 12 in (300 mm): soil over it, its own width, and a fall for the "
    "water to run."
)
_CHANNEL_NEEDS = "The water runs to the garden by itself only where the ground falls that way."

SPOUT_FALL = Question(
    key="spout_fall",
    label="Fall of the ground to the garden",
    text="How much does the ground fall from the downspout to the edge of the garden?",
    kind=depth((0, "in"), (240, "in")),
    why=_PIPE_NEEDS,
    wording=lambda a: {
        **surfacing.no_roof(text="How much does the ground fall from that surface to the garden?")(
            a
        ),
        **({} if a.get(WATER_BY) == "pipe" else {"why": _CHANNEL_NEEDS}),
    },
    find_out="Use the string and the level again.",
    doubt=lambda fall, a: (
        "That is steeper than 1 down for 1 along, as a cliff is. Measure it again."
        if magnitude(fall, "m") > magnitude(a.get(SPOUT_DISTANCE) or fall, "m")
        else None
    ),
    asks=chosen(WATER_BY, "pipe", "channel"),
    when="the water runs in a pipe or a channel",
)


def _deepest(answers: Answers) -> str | None:
    """Return the usual cap, lower where small children are known to play."""
    usual = ("6 in", "150 mm") if answers.get(site.CHILDREN) else ("10 in", "250 mm")
    return answers.by_units(*usual)


DEEPEST_POND = Question(
    key="deepest_pond",
    label="Deepest pond wanted",
    text="How deep may the pond be, at most?",
    kind=replace(depth((2, "in"), (18, "in")), such=("6 in or 150 mm", "150 mm or 15 cm")),
    why="The soil may allow more than you want; 6 to 10 in (150 to 250 mm) is usual.",
    find_out="Less is safer with small children and easier to dig. More makes a smaller garden.",
    default=_deepest,
    caution="Standing water is a danger to small children, even when hand-deep.",
)


def wants_over_twelve(answers: Answers) -> bool:
    """Tell whether the deepest pond wanted is over 12 in, or over 300 mm."""
    deep = answers.get(DEEPEST_POND)
    if deep is None:
        return False
    return not (within(magnitude(deep, "in"), 12) or within(magnitude(deep, "mm"), 300))


ENGINEER = Question(
    key="engineer_says_deeper",
    label="Engineer allows over 12 in (300 mm)",
    text="You want a pond deeper than 12 in (300 mm). Has an engineer said that it may be?",
    kind=YesNo(),
    why="A deep pond is a danger to children and presses hard on its berm.",
    find_out="Without an engineer's word answer no: the plan then keeps to 12 in (300 mm).",
    asks=wants_over_twelve,
    when="a pond deeper than 12 in (300 mm) is wanted",
    default=always_this("no"),
)


DRAIN_RULE = Question(
    key="drain_rule",
    label="Rule for the depth",
    text="Which rule should decide how deep a pond the soil can empty?",
    kind=Choice(
        (
            ("both", "both checks: drop in the hole in 24 h, and corrected rate in 48 h"),
            ("strict", "strict: corrected rate in 24 h"),
            ("custom", "the usual shortcut: drop in the hole in 24 h"),
        )
    ),
    why="The usual shortcut treats the garden like the hole. A wide garden has almost no walls, "
    "so it empties more slowly.",
    find_out="Both checks, unless your local office names another rule.",
    default=always_this("both"),
)

_FELT = (("gritty", "sand"), ("flour", "loam"), ("like flour", "loam"), ("floury", "loam"),
         ("smooth", "loam"), ("sticky", "clay"), ("ribbon", "clay"))  # fmt: skip
SOIL_DUG = Question(
    key="soil_dug",
    label="Soil you will dig",
    text="Rub a pinch of wet soil from a flower bed. How does it feel?",
    kind=Choice(
        (
            ("sand", "sandy: gritty"),
            ("loam", "loam: smooth, like flour"),
            ("clay", "clay: sticky, makes a ribbon"),
            # Whoever plans for the first time does not know the key for don't know yet.
            (UNKNOWN_TEXT, "can't tell yet"),
        ),
        said=_FELT,
    ),
    why="The kind of soil tells roughly how fast it takes water, before any test. Dug soil also "
    "swells: clay by a third, sand less.",
    find_out="No spade is needed: wet a pinch from any bed and rub it between your fingers. If "
    "soil from the test hole feels different later, go by that.",
    default=always_this("loam"),
)


def _amend(answers: Answers) -> str | None:
    """Return no for a lean garden and in sand, which is quick without it."""
    return "no" if shaping.lean(answers) or answers.get(SOIL_DUG) == "sand" else "yes"


AMEND = Question(
    key="amend",
    label="Compost worked in",
    text="Will you work compost into the floor?",
    kind=YesNo(),
    why="Compost opens the soil for roots. It does not change the layer below.",
    find_out="It is usual on loam and clay, unless the soil is rich already. Sandy soil drains "
    "well without it. Sand alone makes clay worse.",
    default=_amend,
)

COMPOST_DEPTH = Question(
    key="compost_depth",
    label="Depth of compost",
    text="How deep a layer of compost will you work in?",
    kind=depth((0.5, "in"), (12, "in")),
    why="It goes on the shopping list.",
    find_out="2 in (50 mm) forked into the top 6 in (150 mm) is usual.",
    asks=lambda a: a.get(AMEND) is not False,
    when="compost is worked in",
    default=by_units("2 in", "50 mm"),
)

MULCH_DEPTH = Question(
    key="mulch_depth",
    label="Depth of mulch",
    text="How deep will the mulch be, the loose wood you spread on the soil?",
    kind=depth((0, "in"), (6, "in")),
    why="It goes on the shopping list, and you dig that much deeper.",
    find_out="2 to 3 in (50 to 75 mm) of shredded hardwood is usual. Bark chips float away.",
    default=lambda a: (
        a.by_units("2 in", "50 mm") if shaping.lean(a) else a.by_units("3 in", "75 mm")
    ),
)

PEAK_INTENSITY = Question(
    key="peak_intensity",
    label="Heaviest rain",
    text="What is the heaviest rain the overflow must carry?",
    kind=Measure("rate", "in/h", "mm/h", (0.5, "in/h"), (20, "in/h")),
    why="It sets the width of the overflow notch, the low place in the rim where extra water "
    "leaves.",
    find_out="Look in local rainfall tables for the 10-year rain of 5 minutes: the heaviest 5 "
    "minutes in about ten years. 7 in/h (180 mm/h) is a cautious value where you don't know.",
    default=by_units("7 in/h", "180 mm/h"),
)

STORM_HOURS = Question(
    key="storm_hours",
    label="Length of the test storm",
    text="How many hours should the test storm last?",
    kind=Measure("duration", "h", "h", (0.5, "h"), (24, "h")),
    why="The plan tries the garden out in this storm. In a long one more water soaks in while it "
    "rains.",
    find_out="6 hours is used when you don't know.",
    default=always_this("6 h"),
)

STORM_SHAPE = Question(
    key="storm_shape",
    label="Shape of the test storm",
    text="How does the rain fall in the test storm?",
    kind=Choice(
        (
            ("triangle", "rising to a peak and falling"),
            ("uniform", "evenly"),
            ("type_ii", "NRCS Type II: one sharp burst in 24 hours"),
        )
    ),
    why="A peaked storm fills the pond faster than it can soak away.",
    find_out="Rising and falling is usual for a summer storm. NRCS Type II, which some US offices "
    "ask for, is a 24-hour storm with one sharp burst.",
    default=always_this("triangle"),
)


def _longer_than(room: Question[Quantity], side: str) -> Callable[[Quantity, Answers], str | None]:
    """Return a doubt for a floor that is longer than the room that was measured for it."""

    def doubt(floor: Quantity, answers: Answers) -> str | None:
        there = answers.get(room)
        if there is None or magnitude(floor, "m") <= magnitude(there, "m"):
            return None
        return f"The room you measured {side} is shorter than that floor."

    return doubt


FLOOR_LENGTH: Question[Quantity] = Question(
    key="floor_length",
    label="Length of the floor to peg out",
    text="How long will you make the floor?",
    kind=distance(200, above_zero=True),
    why="The plan gives the size you need, and you may round it. With several beds it is the size "
    "of each.",
    find_out="Take the size the plan has worked out, or round it to suit the place.",
    doubt=_longer_than(ROOM_LENGTH, "across the slope"),
)

FLOOR_WIDTH: Question[Quantity] = Question(
    key="floor_width",
    label="Width of the floor to peg out",
    text="How wide will you make the floor?",
    kind=distance(200, above_zero=True),
    why="The plan gives the size you need, and you may round it. With several beds it is the size "
    "of each.",
    find_out="Take the size the plan has worked out, or round it to suit the place.",
    doubt=_longer_than(ROOM_WIDTH, "up and down the slope"),
)

BARROW = Question(
    key="barrow",
    label="Wheelbarrow",
    text="How much does your wheelbarrow hold?",
    kind=Measure("volume", "ft**3", "L", (0.5, "ft**3"), (12, "ft**3")),
    why="The plan then counts the soil in loads.",
    find_out="A usual one holds 3 cu ft (85 L).",
    default=by_units("3 cu ft", "85 L"),
    caution="Lift with your legs, work in short turns, and drink in the heat.",
)

PRICES = Question(
    key="prices",
    label="Unit prices",
    text="What do the materials cost where you buy them?",
    kind=Several(PriceLine(), at_most=len(THINGS)),
    why="The shopping list then adds up what the garden costs.",
    find_out="One per line, each with what it is for. Skip it to do without.",
    objection=wrong_prices,
)

STAGE = Stage(
    "bed",
    "E",
    "Bed and size",
    (
        ROOM_LENGTH,
        ROOM_WIDTH,
        ROOM_AREA,
        BEDS,
        BEDS_HOW,
        SPOUT_DISTANCE,
        WATER_BY,
        SPOUT_FALL,
        DEEPEST_POND,
        ENGINEER,
        DRAIN_RULE,
        shaping.HOW_LARGE,
        shaping.SIDE_SLOPE,
        shaping.FLOOR_SHAPE,
        shaping.KIDNEY_BEND,
        shaping.OWN_OUTLINE,
        shaping.LENGTH_TO_WIDTH,
        shaping.FREEBOARD,
        shaping.BERM_TOP,
        SOIL_DUG,
        AMEND,
        COMPOST_DEPTH,
        MULCH_DEPTH,
        STORM_HOURS,
        STORM_SHAPE,
        PEAK_INTENSITY,
        FLOOR_LENGTH,
        FLOOR_WIDTH,
        BARROW,
        PRICES,
    ),
)


def pegged(answers: Answers) -> bool:
    """Tell whether a side of the floor was given, as it is pegged out."""
    return any(answers.get(side) is not None for side in (FLOOR_LENGTH, FLOOR_WIDTH))
