"""Stage E: the room there is, the depth, the shape and the earth."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, by_units, chosen, depth, distance
from interview.asking.kinds import Choice, Several, YesNo
from interview.asking.measures import Count, Measure, Ratio
from interview.asking.question import Question, Stage
from interview.garden.form.lie import LEVEL_BELOW_PERCENT
from interview.garden.form.outline import FloorShape
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.garden.site.slope import ground_slope
from interview.garden.size.basin import MOST_BEDS
from interview.garden.size.price_lines import PriceLine, wrong_prices
from interview.garden.size.station_lines import StationLine, wrong_stations
from interview.quantities.units import Quantity, magnitude

ROOM_LENGTH = Question(
    key="room_length",
    label="Room along the slope's level line",
    text="How much room is there across the slope, along its level line?",
    kind=distance(500, above_zero=True),
    why="The long side lies level; the whole rim must fit.",
    find_out="Measure between the things you must keep clear of. Skip it if there is plenty, or if "
    "the room is no rectangle.",
)

ROOM_WIDTH = Question(
    key="room_width",
    label="Room up and down the slope",
    text="How much room is there up and down the slope?",
    kind=distance(500, above_zero=True),
    why="A garden wide up the slope needs a deep cut.",
    find_out="Measure between the things you must keep clear of. Skip it if there is plenty.",
)

ROOM_AREA = Question(
    key="room_area",
    label="Room as an area",
    text="If the room is no rectangle, how large is it?",
    kind=Measure("area", "ft**2", "m**2", None, (250_000, "ft**2"), above_zero=True),
    why="A garden may take any shape; its whole rim must fit into this area.",
    find_out="Pace it out and add up rectangles and triangles. Skip it if there is plenty of room.",
    asks=lambda a: a.get(ROOM_LENGTH) is None or a.get(ROOM_WIDTH) is None,
    when="the room was not given as a length and a width",
)

BEDS = Question(
    key="beds",
    label="Number of beds",
    text="How many beds shall the garden be made as?",
    kind=Count(1, MOST_BEDS, ("beds", "bed")),
    why="Two small beds may fit where one large one does not, and are easier to keep level.",
    find_out="One is simplest. The room you gave is the room of one bed.",
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
    why="The first of beds in a row gets the most water and stays wet longest.",
    find_out="Side by side where two downspouts or a level stone sill can share the water out. "
    "One below the other on a slope.",
    asks=lambda a: a[BEDS] > 1,
    when="there is more than one bed",
    default=always_this("side_by_side"),
)

SPOUT_DISTANCE = Question(
    key="spout_distance",
    label="From the downspout to the garden",
    text="How far is it from the downspout to the edge of the garden?",
    kind=distance(500),
    why="It gives the length of the pipe or channel.",
    find_out="Measure along the way the water will take.",
)

WATER_BY = Question(
    key="water_by",
    label="How water gets there",
    text="How will the water get from the downspout to the garden?",
    kind=Choice(
        (
            ("pipe", "a buried pipe"),
            ("channel", "an open channel with stone"),
            ("lawn", "over the lawn"),
        )
    ),
    why="A buried pipe needs a trench and ground that falls about 12 in (300 mm) on the way.",
    find_out="A channel is the simplest, over a lawn that falls little the only one. A pipe comes "
    "out before the bed, on stone; its trench must be inside the marked area.",
    default=always_this("channel"),
)

SPOUT_FALL = Question(
    key="spout_fall",
    label="Fall of the ground to the garden",
    text="How much does the ground fall from the downspout to the edge of the garden?",
    kind=depth((0, "in"), (240, "in")),
    why="A buried pipe needs about 12 in (300 mm): soil over it, its own width, and a fall for "
    "the water to run.",
    find_out="String and level again.",
    doubt=lambda fall, a: (
        "That is a fall of more than one in one: the way there would be a cliff."
        if magnitude(fall, "m") > magnitude(a.get(SPOUT_DISTANCE) or fall, "m")
        else None
    ),
    asks=chosen(WATER_BY, "pipe", "channel"),
    when="the water runs in a pipe or a channel",
)


def _deepest(answers: Answers) -> str | None:
    """Return the usual cap, lower where small children are known to play."""
    if answers.get(site.CHILDREN):
        return answers.by_units("6 in", "150 mm")
    return answers.by_units("10 in", "250 mm")


DEEPEST_POND = Question(
    key="deepest_pond",
    label="Deepest pond wanted",
    text="How deep may the pond be at the most?",
    kind=depth((2, "in"), (18, "in")),
    why="The soil may allow more than you want; 6 to 10 in (150 to 250 mm) is usual.",
    find_out="Less is safer with small children and easier to dig; more makes a smaller garden.",
    default=_deepest,
    caution="Standing water is a danger to small children, even when hand-deep.",
)


def wants_over_twelve(answers: Answers) -> bool:
    """Tell whether the deepest pond wanted is over 12 in, or over 300 mm."""
    deep = answers.get(DEEPEST_POND)
    if deep is None:
        return False
    return magnitude(deep, "in") > 12 + 1e-6 and magnitude(deep, "mm") > 300 + 1e-6


ENGINEER = Question(
    key="engineer_says_deeper",
    label="Engineer allows over 12 in",
    text="You want a pond deeper than 12 in (300 mm). Has an engineer said that it may be?",
    kind=YesNo(),
    why="A deep pond is a danger to children and loads its berm.",
    find_out="Without an engineer's word answer no: the plan then keeps to 12 in (300 mm).",
    asks=wants_over_twelve,
    when="a pond deeper than 12 in (300 mm) is wanted",
    default=always_this("no"),
)


DRAIN_RULE = Question(
    key="drain_rule",
    label="Rule for the depth",
    text="Which rule shall decide how deep a pond the soil can empty?",
    kind=Choice(
        (
            ("both", "both checks: drop in the hole in 24 h, and corrected rate in 48 h"),
            ("strict", "strict: corrected rate in 24 h"),
            ("custom", "the custom alone: drop in the hole in 24 h"),
        )
    ),
    why="The custom takes the hole's drop for the garden's. A wide garden has almost no sides, "
    "so it empties more slowly.",
    find_out="Both checks unless your local office names another rule.",
    default=always_this("both"),
)

HOW_LARGE = Question(
    key="how_large",
    label="How large",
    text="How much is the garden to hold: lean, usual or generous?",
    kind=Choice(
        (
            ("lean", "lean: just holds the storm while it soaks, with no margin"),
            ("usual", "usual: holds the rain without counting on the soil"),
            ("generous", "generous: a quarter more, gentle sides, a high rim"),
        )
    ),
    why="A lean garden costs half of a usual one and overflows sooner; the plan works out all "
    "three.",
    find_out="Usual, unless room or money is short or water must not leave the yard.",
    default=always_this("usual"),
)


def lean(answers: Answers) -> bool:
    """Tell whether a lean garden is wanted."""
    return answers[HOW_LARGE] == "lean"


def generous(answers: Answers) -> bool:
    """Tell whether a generous garden is wanted."""
    return answers[HOW_LARGE] == "generous"


def _side_slope(answers: Answers) -> str | None:
    """Return 2:1, or 3:1 where small children may play and in a generous garden."""
    gentle = answers.get(site.CHILDREN) or generous(answers)
    return "3:1" if gentle else "2:1"


SIDE_SLOPE = Question(
    key="side_slope",
    label="Side slope",
    text="How gently shall the sides slope (so much along for one up)?",
    kind=Ratio(1, 6),
    why="2:1 is usual and saves room; 3:1 is safer for children, stands in sand and can be mown; "
    "1:1 crumbles.",
    find_out="Use 2:1; in sand, where children play, or where you will mow, use 3:1.",
    default=_side_slope,
)

LENGTH_TO_WIDTH = Question(
    key="length_to_width",
    label="Length to width",
    text="How many times as long as wide shall it be?",
    kind=Ratio(1, 10),
    why="About twice as long as wide, lying across the slope, needs the least digging.",
    find_out="Use 2 unless the place wants another shape; 3 to 4 on a steep slope.",
    default=always_this("2:1"),
)


FLOOR_SHAPE = Question(
    key="floor_shape",
    label="Shape of the garden",
    text="What shape shall the floor have?",
    kind=Choice(
        (
            (FloorShape.ROUNDED.value, "straight sides with round ends"),
            (FloorShape.OVAL.value, "an oval"),
            (FloorShape.KIDNEY.value, "a kidney, its hollow side uphill"),
            (FloorShape.RECTANGLE.value, "a rectangle with square corners"),
            (FloorShape.OWN.value, "an outline of my own, measured off a string"),
        )
    ),
    why="Round ends are the easiest to dig, to keep and to look at.",
    find_out="Lay a hose on the grass and look at it from the house.",
    more="A floor that is pegged without a word about its shape counts as a rectangle.",
    default=always_this(FloorShape.ROUNDED.value),
)

KIDNEY_BEND = Question(
    key="kidney_bend",
    label="Bend of the kidney",
    text="How far is it from the middle line of the kidney to the point it bends around?",
    kind=distance(500, above_zero=True),
    why="The closer that point, the more the bed is bent.",
    find_out="Skip it to take two thirds of the length of the bed.",
    asks=chosen(FLOOR_SHAPE, FloorShape.KIDNEY.value),
    when="the garden is a kidney",
)

OWN_OUTLINE = Question(
    key="floor_outline",
    label="Outline of the floor",
    text="Where does the edge of the floor lie, measured off a string laid along the slope's "
    "level line?",
    kind=Several(StationLine(), at_least=2, at_most=60),
    why="The plan then takes the area, the water and the pegs from your own outline.",
    find_out="Lay the outline with a hose. Stretch a string through it, level. Every foot or two "
    "(half a meter) along it measure square off to the edge uphill and the edge downhill; begin "
    "and end where the string leaves the outline, with 0 and 0.",
    asks=chosen(FLOOR_SHAPE, FloorShape.OWN.value),
    when="the garden has an outline of your own",
    objection=wrong_stations,
)


def _freeboard(answers: Answers) -> str | None:
    if generous(answers):
        return answers.by_units("6 in", "150 mm")
    spot = ground.chosen_spot(answers)
    run, drop = spot.get(ground.SLOPE_RUN), spot.get(ground.SLOPE_DROP)
    try:
        level = (
            run is not None
            and drop is not None
            and ground_slope(run, drop, spot.get(ground.SLOPE_TURNED)).percent < LEVEL_BELOW_PERCENT
        )
    except ValueError:
        level = False
    return answers.by_units("1 in", "25 mm") if level else answers.by_units("2 in", "50 mm")


FREEBOARD = Question(
    key="freeboard",
    label="Rim above the full pond",
    text="How high shall the rim stand above the full pond?",
    # Under an inch, for the 25 mm of a level lawn are.
    kind=depth((0.5, "in"), (12, "in")),
    why="It keeps a big storm in the overflow and off the berm.",
    find_out="2 in (50 mm) with a notch as wide as the plan makes it, 1 in (25 mm) where level "
    "lawn is the rim; 6 in (150 mm) is the cautious value.",
    default=_freeboard,
)

BERM_TOP = Question(
    key="berm_top",
    label="Width of the berm's top",
    text="How wide shall the top of the berm be?",
    kind=depth((6, "in"), (60, "in")),
    why="A narrow berm wears down and leaks.",
    find_out="1 ft (0.3 m) is usual.",
    default=by_units("12 in", "300 mm"),
)


SOIL_DUG = Question(
    key="soil_dug",
    label="Soil you will dig",
    text="What sort of soil will you dig out?",
    kind=Choice((("sand", "sandy"), ("loam", "loam"), ("clay", "clay"))),
    why="Dug soil swells: clay by a third, sand less.",
    find_out="As the handful from the test hole felt.",
    default=always_this("loam"),
)


def _amend(answers: Answers) -> str | None:
    """Return no for a lean garden and in sand, which is quick without it."""
    return "no" if lean(answers) or answers.get(SOIL_DUG) == "sand" else "yes"


AMEND = Question(
    key="amend",
    label="Compost worked in",
    text="Will you work compost into the floor?",
    kind=YesNo(),
    why="Compost opens the soil for roots. It does not change the layer below.",
    find_out="Usual on loam and clay unless the soil is already rich; sandy soil drains well "
    "without it. Sand alone makes clay worse.",
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
    text="How deep will the mulch be?",
    kind=depth((0, "in"), (6, "in")),
    why="It goes on the list, and you dig that much deeper.",
    find_out="2 to 3 in (50 to 75 mm) of shredded hardwood; bark chips float.",
    default=lambda a: a.by_units("2 in", "50 mm") if lean(a) else a.by_units("3 in", "75 mm"),
)

PEAK_INTENSITY = Question(
    key="peak_intensity",
    label="Hardest rain",
    text="How hard is the hardest rain the overflow must pass?",
    kind=Measure("rate", "in/h", "mm/h", (0.5, "in/h"), (20, "in/h")),
    why="It sets the width of the overflow notch.",
    find_out="Local rainfall tables: the 10-year rain of 5 minutes. 7 in/h (180 mm/h) is a "
    "cautious value where you don't know.",
    default=by_units("7 in/h", "180 mm/h"),
)

STORM_HOURS = Question(
    key="storm_hours",
    label="Length of a storm",
    text="How long does the storm last for which the garden is tried out?",
    kind=Measure("duration", "h", "h", (0.5, "h"), (24, "h")),
    why="A long storm leaves time to soak while it rains.",
    find_out="6 hours is used when you don't know.",
    default=always_this("6 h"),
)

STORM_SHAPE = Question(
    key="storm_shape",
    label="Shape of a storm",
    text="How does the rain of that storm come?",
    kind=Choice(
        (
            ("triangle", "rising to a peak and falling"),
            ("uniform", "evenly"),
            ("type_ii", "NRCS Type II over 24 hours"),
        )
    ),
    why="A peaked storm fills the pond faster than it can soak away.",
    find_out="Rising and falling is usual for a summer storm.",
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
    text="How long a floor will you peg out?",
    kind=distance(200, above_zero=True),
    why="The plan gives the size that is needed; you may round it to suit the place. Of several "
    "beds it is that of each.",
    find_out="Take the size the plan has worked out, or round it to suit the place.",
    doubt=_longer_than(ROOM_LENGTH, "across the slope"),
)

FLOOR_WIDTH: Question[Quantity] = Question(
    key="floor_width",
    label="Width of the floor to peg out",
    text="How wide a floor will you peg out?",
    kind=distance(200, above_zero=True),
    why="The plan gives the size that is needed; you may round it to suit the place. Of several "
    "beds it is that of each.",
    find_out="Take the size the plan has worked out, or round it to suit the place.",
    doubt=_longer_than(ROOM_WIDTH, "up and down the slope"),
)

BARROW = Question(
    key="barrow",
    label="Wheelbarrow",
    text="How much does your wheelbarrow hold?",
    kind=Measure("volume", "ft**3", "L", (0.5, "ft**3"), (12, "ft**3")),
    why="It turns the soil into loads.",
    find_out="A usual one holds 3 cu ft (85 L).",
    default=by_units("3 cu ft", "85 L"),
    caution="Lift with your legs, work in short turns, and drink in the heat.",
)

PRICES = Question(
    key="prices",
    label="Unit prices",
    text="What do the materials cost where you buy them?",
    kind=Several(PriceLine(), at_most=6),
    why="With prices the shopping list adds up what the garden costs.",
    find_out="One a line, each with what it is for. Skip it to do without.",
    objection=wrong_prices,
)

STAGE = Stage(
    "bed",
    "E",
    "Bed and size",
    "How deep, how big, what shape, and how the water gets in and out.",
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
        HOW_LARGE,
        SIDE_SLOPE,
        FLOOR_SHAPE,
        KIDNEY_BEND,
        OWN_OUTLINE,
        LENGTH_TO_WIDTH,
        FREEBOARD,
        BERM_TOP,
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
