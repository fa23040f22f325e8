"""What speaks for and against: the depth and the size."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.form.lie import DEEPEST_UPHILL_FT
from interview.garden.place import questions as start
from interview.garden.site import questions as site
from interview.garden.site.setbacks import distance_words
from interview.garden.site.surroundings import CHILDREN_IN
from interview.garden.size import basin
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.results import SizeResults
from interview.garden.soak.depth import CORRECTED_RATE_HOURS, NO_POND_HERE, TOO_FAST_IN_H, Governs
from interview.quantities.evidence import ARITHMETIC, OURS, Brief, Finding, Grade
from interview.quantities.guards import reaches, within
from interview.quantities.shown import LOW, rate_words, sides_words, water_words
from interview.quantities.units import Quantity, magnitude, ratio, show

Sides = tuple[Quantity, Quantity]

OWN_RAIN = 1.5
"""A pond less than this many times the rain mostly catches its own: a choice of this project."""


def depth_findings(found: SizeResults) -> Iterator[Finding]:
    depth = found.depth
    unit = "mm" if found.answers.metric else "in"
    needed = found.answers.by_units("3 in", "75 mm")
    if depth.too_shallow:
        yield Finding(
            "pond_depth",
            Grade.STOP,
            f"This soil can empty a pond of only {show(depth.limit, unit, 2, 'down')} in time."
            if depth.soil_refuses
            else "The deepest pond you want is too shallow to be dug level.",
            "3 in (75 mm) of pond or more",
            OURS,
            NO_POND_HERE if depth.soil_refuses else "Allow a deeper pond.",
            Brief(
                f"STOP: the soil empties {show(depth.limit, unit, 2, 'down')} of pond in time, "
                f"{needed} needed."
                if depth.soil_refuses
                else f"STOP: a pond of {show(depth.depth, unit, 3)}, {needed} needed."
            ),
        )
    rate = found.soak.soil.corrected
    if not within(magnitude(rate, "in/h"), TOO_FAST_IN_H.value):
        yield Finding(
            "soil_too_fast",
            Grade.FIX,
            f"The soil takes {rate_words(rate, found.answers.metric)} through the bottom: water "
            "runs through before the soil can clean it.",
            "8.3 in/h (210 mm/h) at the most",
            TOO_FAST_IN_H.source,
            "Improve it first: mix slower soil and compost into the floor, and test again.",
        )
    if depth.caution and not depth.too_shallow:
        yield Finding(
            "custom_depth",
            Grade.FIX,
            "By the corrected rate this pond takes more than 48 hours to empty.",
            "empty within 48 hours through the bottom alone",
            CORRECTED_RATE_HOURS.source,
            "Choose both checks, or make the pond shallower."
            if magnitude(rate, "in/h") > 0
            else "Choose both checks.",
        )
    if depth.governs is Governs.CAP and not depth.too_shallow:
        yield Finding(
            "pond_depth",
            Grade.GOOD,
            f"The soil would empty {_by_drop(found)}"
            f"{show(depth.corrected_limit, unit, 2, 'down')} by the corrected rate; your own "
            "limit decides.",
            "",
            OURS,
        )
    wanted = found.answers[bed.DEEPEST_POND]
    if not reaches(magnitude(depth.cap, "in"), magnitude(wanted, "in")):
        yield Finding(
            "pond_and_engineer",
            Grade.FIX,
            f"You want a pond of {show(wanted, unit, 3)}. The plan keeps to "
            f"{show(depth.cap, unit, 3)} until an engineer says it may be deeper.",
            "12 in (300 mm) without an engineer's word",
            OURS,
            "Ask an engineer, or write 12 in (300 mm) or less as the deepest pond wanted.",
        )
    if found.answers[site.CHILDREN] and not within(magnitude(depth.depth, "in"), CHILDREN_IN):
        yield Finding(
            "pond_and_children",
            Grade.FIX,
            "The pond is deeper than 6 in (150 mm), and small children may play here.",
            "6 in (150 mm) is deep enough near small children",
            OURS,
            "Write 6 in (150 mm) as the deepest pond wanted, or fence the garden.",
        )


def _by_drop(found: SizeResults) -> str:
    if found.soak.soil.drop_rate is None:
        return ""
    unit = "mm" if found.answers.metric else "in"
    return f"{show(found.depth.drop_limit, unit, 2, 'down')} by the drop and "


def own_share(found: SizeResults) -> float:
    """Return the area inside a bed as a part of what drains to it."""
    return ratio(found.inside, found.served)


def _room(found: SizeResults) -> Iterator[Finding]:
    """Say where the garden, toe to toe, does not fit the room that was given."""
    metric = found.answers.metric
    if not found.outgrows(found.garden) and not found.too_big:
        return
    wanted = found.needed_basin if found.too_big else found.garden
    over_all = basin.footprint_sides(wanted, found.ground)
    room = found.room_sides
    limit = "the room as an area" if room is None else f"room {sides_words(*room, metric)}"
    said = "The garden that is needed does not fit the room"
    change = f"The plan draws {'what fits' if found.as_worked_out else 'the floor you chose'}."
    if not found.too_big:
        said, change = "The floor you pegged does not fit the room", "Make the floor smaller."
    yield Finding(
        "room",
        Grade.FIX,
        f"{said}: with its berm and its cut edge it takes {sides_words(*over_all, metric)}.",
        limit,
        ARITHMETIC,
        change,
        _room_in_short(found, over_all),
    )


def _room_in_short(found: SizeResults, over_all: Sides) -> Brief | None:
    """Say by how much the floor is too large, or what the one that fits holds."""
    metric = found.answers.metric
    if found.too_big and not found.outgrows(found.garden):
        held, rain = (
            water_words(one, metric, LOW) for one in (found.rain_held, found.rain_to_hold)
        )
        return Brief(f"What fits the outline holds {held} of the {rain} of rain.")
    room = found.room_sides
    return None if room is None else Brief(_too_large(over_all, room, metric))


def _too_large(over_all: Sides, room: Sides, metric: bool) -> str:
    """Say by how much a garden is too long or too wide, the worse of the two."""
    past, which = max(
        (taken - there, word)
        for taken, there, word in zip(over_all, room, ("long", "wide"), strict=True)
    )
    return f"{distance_words(past, metric, up=True)} too {which} for the outline."


def _soil_takes_more(found: SizeResults) -> bool:
    """Tell whether the soil would empty a pond that is deeper by half an inch.

    Not where this one, filled until the test storm ends, already stands as long as plants may.
    """
    soil = min(found.depth.drop_limit, found.depth.corrected_limit)
    storm = magnitude(found.answers[bed.STORM_HOURS], "h")
    stands = magnitude(found.depth.latest_empty, "h") + storm
    deeper = magnitude(soil, "in") > magnitude(found.depth.depth, "in") + 0.5
    return deeper and within(stands, CORRECTED_RATE_HOURS.value)


def _may_deepen(found: SizeResults) -> bool:
    """Tell whether a deeper pond is a way out: soil, engineer, children and slope allow it."""
    lie = basin.lying(found.garden, found.ground)
    if lie is not None and not within(lie.uphill_cut, DEEPEST_UPHILL_FT):
        return False
    most = CHILDREN_IN if found.answers[site.CHILDREN] else 12.0
    # Deeper by half an inch at the least; 150 and 300 mm are a little under 6 and 12 in.
    deeper = magnitude(found.depth.depth, "in") + 0.5
    return _soil_takes_more(found) and within(deeper, most)


def _may_steepen(found: SizeResults) -> bool:
    """Tell whether steeper sides are a way out: down to 2:1, near children to 3:1."""
    least = basin.GENTLE_SIDE_SLOPE if found.answers[site.CHILDREN] else basin.SIDE_SLOPE
    return found.garden.side_slope > least.value


def _less_own_rain(found: SizeResults) -> str:
    """Say how less of the water would be the rain on the bed itself."""
    if found.no_bed_fits:
        steeper = ", or its sides steeper" if _may_steepen(found) else ""
        return f"Make the pond shallower{steeper}: the bed then takes less ground."
    if found.enough and found.bed_count > 1:
        # Beds in a row hand water on, and it stands in the last of them longer than in one alone.
        return "Make fewer beds, or smaller ones."
    more = found.enough and _soil_takes_more(found)
    ways = ["make the bed smaller" if found.enough else "hold less rain"]
    ways += ["make the pond deeper"] if _may_deepen(found) else []
    ways += ["send more roof here"] if more else []
    said = ", or ".join(ways)
    return f"{said[0].upper()}{said[1:]}."


def _larger_floor(found: SizeResults) -> str:
    """Say how large a floor holds more, where the plan has worked one out; else nothing."""
    wanted, metric = found.worked_out, found.answers.metric
    if found.as_worked_out or ratio(wanted.mid_area, found.garden.mid_area) <= 1:
        return ""
    sides = sides_words(wanted.floor_length, wanted.floor_width, metric)
    return f"Peg out the floor that the plan has worked out now, {sides}."


def size_findings(found: SizeResults) -> Iterator[Finding]:
    metric = found.answers.metric
    too_shallow = found.depth.too_shallow
    if not too_shallow and ratio(found.garden.depth, found.answers[start.RAIN_DEPTH]) < OWN_RAIN:
        yield Finding(
            "own_rain",
            Grade.FIX,
            "The pond is hardly deeper than the rain to hold, so the garden mostly catches its "
            "own rain and must be very large.",
            "a pond of one and a half times the rain, or more",
            OURS,
            f"Hold less rain, {'allow a deeper pond, ' if _may_deepen(found) else ''}or send less "
            "roof here.",
        )
    share = found.share_of_rain
    held = water_words(found.rain_held, metric, LOW)
    if found.by_storms and found.enough:
        rain = water_words(found.answers[start.RAIN_DEPTH], metric)
        yield Finding(
            "rain_held",
            Grade.GOOD,
            f"A storm of {rain} does not fill the garden, because water soaks in while it rains. "
            f"If none soaked in, the garden would hold {held}.",
            "the rain to hold",
            ARITHMETIC,
        )
    elif reaches(share, 1):
        yield Finding(
            "rain_held", Grade.GOOD, f"The garden holds {held} of rain.", "the rain to hold",
            ARITHMETIC,
        )  # fmt: skip
    else:
        steeper = "make the sides steeper, " if _may_steepen(found) else ""
        asked = "a generous garden is to hold" if shaping.generous(found.answers) else "was asked"
        yield Finding(
            "rain_held",
            Grade.FIX,
            f"The garden as drawn holds {held} of rain, "
            f"{LOW.write(100 * share)} % of what {asked}.",
            "the rain to hold",
            ARITHMETIC,
            _larger_floor(found)
            or f"Find more room, {steeper}add a second garden, or send less roof here. A smaller "
            "garden still takes the small rains, which are most of the rainy days.",
        )
    if own_share(found) >= 1:
        yield Finding(
            "own_rain_share",
            Grade.FIX,
            "More rain falls on the bed than the roof and paving send to it.",
            "less rain on the bed than from the roof and paving",
            ARITHMETIC,
            _less_own_rain(found),
        )
    yield from _room(found)
    if basin.split_advised(found.garden.mid_area):
        yield Finding(
            "split",
            Grade.FIX,
            "One garden over 300 ft² (28 m²) is hard to keep level.",
            "100 to 300 ft² (10 to 28 m²) for one garden",
            basin.SPLIT_ABOVE_FT2.source,
            "Choose 2 beds, side by side or one below the other; the options show their sizes.",
        )
