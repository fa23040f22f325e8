"""The cautions of the sheet, in plain words; local codes and licensed professionals decide."""

from __future__ import annotations

from typing import NamedTuple

NOT_ENGINEERING = (
    "This is a plan for a small home garden, made from your own measurements. It is not a survey, "
    "a permit or an engineer's design; local codes and licensed professionals decide."
)
PLANTS = (
    "Some plants are poisonous or irritate the skin; keep children and pets away from them. Check "
    "your local list of invasive plants before you buy."
)
LOCATE = (
    "Do not dig, not even the test hole, before every buried line is marked and every owner has "
    "answered."
)
PEGS = (
    "A peg pushed into the ground is digging too. Until digging is open, lay out the outline with "
    "a hose, string and stones."
)
HIT_A_LINE = (
    "If you hit or nick a line: stop, get everyone away, light nothing, and call the emergency "
    "number and the utility from a distance."
)

SPOUT = (
    "Connect the downspout standing on the ground, in gloves and with your eyes covered: cut metal "
    "is sharp. What asks for a ladder, such as a gutter or a new outlet, is for somebody who does "
    "it for a living."
)


def lines(zone: str) -> str:
    """Return the caution about buried lines; ``zone`` is the strip beside a mark, as ``2 ft``."""
    return f"{LOCATE} Within {zone} of a mark dig only gently, by hand."


_ALL = (
    "Locators mark the utilities' lines, usually only to the meter; private lines are yours to "
    "find.",
    HIT_A_LINE,
    "A small child can drown in a very little water. Cover or fill an open hole, and keep an eye "
    "on the full pond. Never climb into a hole deeper than your waist.",
    "Measure roofs from the ground. No ladder near power lines.",
    "Keep the distances from buildings, septic systems and wells. After the first storms look at "
    "the walls near the garden and into every basement; if one is damp, turn the downspout away "
    "the same day.",
    "On steep slopes, on banks and on ground that may slide, ask an engineer first.",
    "Where pollution is suspected do not dig and do not soak water in; soil near old painted "
    "walls may hold lead. Wash your hands after working in the soil.",
    "Water that stands for more than 48 hours is a fault: find out why.",
    "Grow nothing to eat in runoff from metal or treated roofs.",
    "Dig in short turns, drink water in the heat, and lift with your legs. Wear gloves, and shoes "
    "that a spade cannot cut. Keep others out of reach of a swinging tool.",
    "The overflow must run over your own ground to a place where water may go. There may be rules "
    "about it: permits, easements (others' rights to use your ground), the home association, or "
    "the strip kept for the road.",
)


def every(zone: str) -> tuple[str, ...]:
    """Return every caution of the sheet; ``zone`` as in ``lines``."""
    return (lines(zone), *_ALL)


def on_the_day(zone: str) -> tuple[str, ...]:
    """Return what to heed on the day of digging, short enough for one page."""
    return (
        f"Within {zone} of a mark: gently, by hand. A line hit: get away and call.",
        "Cover or fill every hole: a small child drowns in very little water.",
        "Work in short turns, drink water, lift with your legs, wear strong shoes.",
        "No ladder near power lines. Smell of gas, fuel, sewage: stop and call.",
        "Ground that slides, looks polluted, fills from below: stop and ask.",
    )


class DayCaution(NamedTuple):
    """What decides the list for the day of digging."""

    zone: str
    """The strip beside a mark, such as ``2 ft``."""
    compost: bool
    piped: bool
    level_within: str
    """How level the floor must be, such as ``half an inch``."""
    berm: bool = True
    """Whether a berm is built; else the lawn is the rim."""
    own_berm: bool = True
    """Whether the berm is built of the soil that is dug."""
    sod: bool = True
    """Whether the lifted sod is laid on the outside of the berm."""
    mulch: bool = True
    sown: bool = False
    """Whether the rim is sown."""
    hole: bool = True
    """Whether a test hole was dug."""
    spouts: bool = True
    """Whether a downspout comes here."""
    channel: bool = False
    """Whether its water comes in a channel of stone."""


def dig_day(day: DayCaution) -> tuple[str, ...]:
    """Return the list for the day of digging, in the order of the work."""
    sow = "; sow the rim last, on bare raked soil" if day.sown else ""
    steps = [
        "Marks are visible and still good; take a photograph of them.",
        f"Within {day.zone} of any mark dig only gently, by hand; lift the sod that way too.",
        *(["Fill the test hole or cover it."] if day.hole else []),
        "Peg out floor, full pond and rim, measured from the peg string.",
        "Tie the level string over it; all heights are measured down from it.",
        "Strip the sod and stack it for the outside of the berm."
        if day.berm and day.sod
        else "Strip the sod and stack it in the shade.",
        "Roughen the ground under the berm. Cut the uphill side first and lay the soil where the "
        "berm will be."
        if day.berm and day.own_berm
        else "Dig from the middle out and carry the soil away from the rim.",
        f"Make the floor level within {day.level_within}: a level floor, not a bowl.",
    ]
    if day.berm:
        laid = "make its top level, and lay the sod on it" if day.sod else "and make its top level"
        how = "" if day.own_berm else " of the soil brought for it, on roughened ground,"
        steps.append(f"Build the berm{how} in thin layers, tamp each one, {laid}.")
    if day.piped or day.channel:
        way, fill = ("trench", "lay the pipe") if day.piped else ("channel", "line it with stone")
        steps.append(f"Dig the {way}, falling all the way, and {fill}.")
    steps.append("Loosen the floor with a fork while dry; do not tread on it again.")
    if day.compost:
        steps.append("Work in the compost.")
    steps += [
        "Cut the overflow notch, check its level, and line it with stone."
        if day.berm
        else "Cut the overflow lip and check it with a level.",
        "Lay the stone where the water comes in, and try it with a bucket.",
        "Read the levels, and mend them before you plant.",
        f"Plant, water, and mulch; keep mulch off the middle of each plant{sow}."
        if day.mulch
        else f"Plant and water{sow}.",
        "Cover or fill what is still open before you leave.",
    ]
    if day.spouts:
        way = "pipe" if day.piped else "downspout"
        steps.append(f"Connect the {way} last, from the ground: no ladder.")
    else:
        steps.append("Let the water in last.")
    return tuple(steps)
