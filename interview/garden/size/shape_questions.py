"""Stage E: how large, what shape (an outline of one's own too), how its rim and sides are built."""

from __future__ import annotations

from typing import TYPE_CHECKING

from interview import reading
from interview.asking.answers import Answers
from interview.asking.conditions import always_this, by_units, chosen, depth, distance
from interview.asking.kinds import Choice, Several, Simple
from interview.asking.measures import Ratio
from interview.asking.question import Question, Taken
from interview.garden.form.choices import LEVEL_BELOW_PERCENT, FloorShape
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.quantities.shown import length_words
from interview.quantities.units import METRIC, US, magnitude, quantity, unit_name
from interview.reading import Amount, Refused

if TYPE_CHECKING:
    from interview.garden.form.outline import Station  # few draw an outline of their own


EXAMPLE = {US: "4 ft, 3 ft, 2 1/2 ft", METRIC: "1 m, 0.9 m, 0.8 m"}
FARTHEST_FT = 200.0


class StationLine(Simple["Station"]):
    """Along the string, to the edge uphill, to the edge downhill."""

    name = "station"

    def take(self, text: str, answers: Answers) -> Taken[Station]:
        units = answers.units
        unit = "ft" if units == US else "m"
        parts = [" ".join(part.split()) for part in text.split(",")]
        if len(parts) != 3 or not all(parts):
            raise Refused(
                "Write three lengths separated by commas: along the string, uphill, downhill, such "
                f"as {EXAMPLE[units]}."
            )
        kept, feet = [], []
        for part in parts:
            amount = reading.read_taped_length(part, unit)
            kept.append(f"{part} {unit_name(unit)}" if amount.bare else part)
            feet.append(_feet(amount))
        if max(feet) > FARTHEST_FT:
            raise Refused("That is too far from the string: 200 ft (60 m) is the most.")
        from interview.garden.form.outline import Station

        return Taken(", ".join(kept), Station(*feet))

    def echo(self, value: Station, answers: Answers) -> str:
        along, up, down = (
            length_words(quantity(one, "ft"), answers.metric)
            for one in (value.along, value.uphill, value.downhill)
        )
        return f"at {along}: {up} uphill, {down} downhill"

    def hint(self, units: str) -> str:
        return f"along the string, uphill, downhill, such as 0, 0, 0; {EXAMPLE[units]}"


def _feet(amount: Amount) -> float:
    return magnitude(quantity(float(amount.number), amount.unit), "ft")


def wrong_stations(stations: tuple[Station, ...], _answers: Answers) -> str | None:
    """Return the sentence that refuses stations which make no outline, or nothing."""
    if not stations:
        return None
    from interview.garden.form.outline import own_outline

    try:
        own_outline(stations)
    except ValueError as trouble:
        return str(trouble)
    return None


HOW_LARGE = Question(
    key="how_large",
    label="How large",
    text="How large should the garden be: lean, usual or generous?",
    kind=Choice(
        (
            ("lean", "lean: just holds the storm while it soaks, with no margin"),
            ("usual", "usual: holds the rain without counting on the soil"),
            ("generous", "generous: a quarter more, gentle sides, a high rim"),
        )
    ),
    why="A lean garden costs less than a usual one, but overflows sooner. The plan works "
    "out all three.",
    find_out="Usual, unless room or money is short or no water may leave the yard.",
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
    text="How gently should the sides slope? 3:1 is 3 along for 1 up.",
    kind=Ratio(1, 6),
    why="2:1 is usual and saves room, and 1:1 crumbles. 3:1 is safer for children, stands in sand "
    "and can be mown.",
    find_out="Use 2:1; in sand, where children play, or where you will mow, use 3:1.",
    default=_side_slope,
)

LENGTH_TO_WIDTH = Question(
    key="length_to_width",
    label="Length to width",
    text="How many times longer than wide should the garden be?",
    kind=Ratio(1, 10),
    why="About twice as long as wide, lying across the slope, needs the least digging.",
    find_out="Use 2 unless the place wants another shape. On a steep slope use 3 to 4.",
    default=always_this("2:1"),
)


FLOOR_SHAPE = Question(
    key="floor_shape",
    label="Shape of the garden",
    text="What shape should the floor have?",
    kind=Choice(
        (
            (FloorShape.ROUNDED.value, "straight sides with round ends"),
            (FloorShape.OVAL.value, "an oval"),
            (FloorShape.KIDNEY.value, "a kidney, its hollow side uphill"),
            (FloorShape.RECTANGLE.value, "a rectangle with square corners"),
            (FloorShape.OWN.value, "an outline of my own, measured from a string"),
        )
    ),
    why="Round ends are the easiest to dig, to keep and to look at.",
    find_out="Lay a hose on the grass and look at it from the house.",
    more="If you peg a floor and name no shape, it counts as a rectangle.",
    default=always_this(FloorShape.ROUNDED.value),
)

KIDNEY_BEND = Question(
    key="kidney_bend",
    label="Bend of the kidney",
    text="How far is it from the middle of the kidney to the point it bends around?",
    kind=distance(500, above_zero=True),
    why="The closer that point is, the more the bed is bent.",
    find_out="Skip it to take two thirds of the length of the bed.",
    asks=chosen(FLOOR_SHAPE, FloorShape.KIDNEY.value),
    when="the garden is a kidney",
)

OWN_OUTLINE = Question(
    key="floor_outline",
    label="Outline of the floor",
    text="Where is the floor's edge, measured from a level string along its length?",
    kind=Several(StationLine(), at_least=2, at_most=60),
    why="The plan then takes the area, the water and the pegs from an outline of your own.",
    find_out="Lay the outline with a hose and stretch a level string through it. Every 1 or 2 ft "
    "(0.5 m) along it, measure at a right angle to the uphill edge and to the downhill "
    "edge. Begin and end where the string leaves the outline, with 0 and 0.",
    asks=chosen(FLOOR_SHAPE, FloorShape.OWN.value),
    when="the garden has an outline of your own",
    objection=wrong_stations,
)


def _freeboard(answers: Answers) -> str | None:
    if generous(answers):
        return answers.by_units("6 in", "150 mm")
    from interview.garden.site.slope import ground_slope

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
    text="How high should the rim stand above the full pond?",
    # Under an inch, for the 25 mm of a level lawn are.
    kind=depth((0.5, "in"), (12, "in")),
    why="It keeps a big storm in the overflow and off the berm.",
    find_out="2 in (50 mm) is enough with the notch as wide as the plan makes it. Where level "
    "lawn is the rim, 1 in (25 mm) is enough. 6 in (150 mm) is the cautious value.",
    default=_freeboard,
)

BERM_TOP = Question(
    key="berm_top",
    label="Width of the berm's top",
    text="How wide should the top of the berm be?",
    kind=depth((6, "in"), (60, "in")),
    why="A narrow berm wears down and leaks.",
    find_out="1 ft (0.3 m) is usual.",
    default=by_units("12 in", "300 mm"),
)
