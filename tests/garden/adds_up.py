"""The figures of one garden among themselves, worked out anew: lines, water, soil, costs, hours."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from itertools import pairwise

from told_of_one import FOOT_M, Complaints, Told, feet_of, flat, near

from interview.asking.question import Unanswered
from interview.garden.figures import BY_KEY
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.quantities.units import magnitude

BULK = {"sand": 1.15, "loam": 1.25, "clay": 1.40}
"""Loose soil of one measure in the ground, as the sheet's formula says it."""
COMPACTED = 0.9


def lines_within_lines(told: Told) -> Complaints:
    """Floor within pond within rim within all that is dug or built."""
    chains = (
        ("floor_length_drawn", "pond_length", "rim_length"),
        ("floor_width_drawn", "pond_width", "rim_width"),
        ("floor_area", "mid_area_drawn", "rim_area"),
        ("inside_area", "footprint_area"),
        ("floor_area", "mulched_area", "inside_area"),
        ("floor_length_drawn", "over_all_length"),
        ("floor_width_drawn", "over_all_width"),
    )
    bent = "measured along its bend" in flat(told.short)
    for chain in chains:
        if bent and chain[-1] == "over_all_length":
            continue  # a kidney much bent: its ends lie nearer to each other than its floor is long
        known = [(key, told.numbers[key]) for key in chain if key in told.numbers]
        for (a, one), (b, two) in pairwise(known):
            if one > two * (1 + 1e-9):
                yield f"{a} {one:g} is over {b} {two:g}"
    n = told.numbers
    if {"pond_volume", "floor_area", "pond_depth", "work_area", "bed_count"} <= n.keys():
        deep = told.feet("pond_depth") * (FOOT_M if told.metric else 1.0)
        if n["pond_volume"] < n["floor_area"] * deep * (1 - 1e-9):
            yield "the pond holds less than its floor alone would"
        if deep and not near(n["work_area"] * deep, n["pond_volume"] * n["bed_count"], 1e-4):
            yield "the pond with upright walls holds another volume"


def water_falls_with_height(told: Told) -> Complaints:
    """Hours on the floor, the side and the rim; more rain is more of everything."""
    n = told.numbers
    for chain in (
        ("rim_hours", "side_hours", "storm_hours_on_floor", "storm_hours_floor_only"),
        ("storm_peak", "again_peak"),
        ("storm_peak", "pond_depth"),
        ("again_peak", "pond_depth"),
        ("storm_hours_on_floor", "again_hours_on_floor"),
        ("caught_at_twice", "caught_at_one_and_a_half"),
    ):
        known = [(key, n[key]) for key in chain if key in n]
        for (a, one), (b, two) in pairwise(known):
            if one > two * (1 + 1e-6) + 1e-6:
                yield f"{a} {one:g} is over {b} {two:g}"
    for key in ("caught_at_twice", "caught_at_one_and_a_half", "again_caught", "record_share_held"):
        if not -1e-9 <= n.get(key, 0) <= 100 + 1e-9:
            yield f"{key} is {n[key]:g} %"
    if "storm_spill" in n and "storm_peak" in n and n["storm_spill"] > 1e-6:
        if not near(n["storm_peak"], n["pond_depth"], 1e-3):
            yield "water spills from a pond that is not full"
        if n["rim_hours"] <= 0:
            yield "water spills and the rim is never wet"
    try:
        rows = told.plan.storms.ladder
    except Unanswered:
        return
    for a, b in pairwise(rows):
        if magnitude(a.peak, "ft") > magnitude(b.peak, "ft") + 1e-6:
            yield f"a larger storm makes a shallower pond: {a.rain} and {b.rain}"
        if magnitude(a.hours_on_floor, "h") > magnitude(b.hours_on_floor, "h") + 1e-6:
            yield f"a larger storm dries sooner: {a.rain} and {b.rain}"
        if a.share_caught < b.share_caught - 1e-6:
            yield f"more is caught of a larger storm: {a.rain} and {b.rain}"


def depth_is_allowed(told: Told) -> Complaints:
    """The pond is no deeper than its limits, and empties within the hours they are of."""
    n = told.numbers
    if n.get("pond_depth"):
        for key in ("depth_by_drop", "depth_by_corrected"):
            rule = told.plan.answers.get(bed.DRAIN_RULE) or "both"
            applies = {"both": True, "strict": key == "depth_by_corrected"}.get(
                rule, key == "depth_by_drop"
            )
            if applies and isinstance(n.get(key), float) and n["pond_depth"] > n[key] * (1 + 1e-9):
                yield f"the pond of {n['pond_depth']:g} is deeper than {key} {n[key]:g}"


def soil_adds_up(told: Told) -> Complaints:
    """Dug, in the berm, left over, loose, in barrows."""
    n, plan = told.numbers, told.plan
    if "soil_carried_off" not in n:
        return
    beds, sand = n["bed_count"], plan.answers[bed.SOIL_DUG] == "sand"
    swell = BULK[plan.answers[bed.SOIL_DUG]]
    barrow = magnitude(plan.answers[bed.BARROW], "m**3" if told.metric else "ft**3")
    if not near(n["soil_dug_total"], n["soil_cut"] * beds):
        yield "all the soil is not that of the beds"
    if not near(n["soil_loose"], n["soil_dug_total"] * swell):
        yield "the heap is not the soil that swells"
    if not near(n["berm_bank_soil"], n["berm_soil"] * beds / COMPACTED):
        yield "the berm takes other soil than its own tamped"
    spare = n["soil_dug_total"] - (0 if sand else n["berm_bank_soil"])
    if not near(n["soil_spare"], spare, 1e-6, 0.011 * n["soil_dug_total"]):
        yield f"left over is {n['soil_spare']:g}, dug less berm is {spare:g}"
    channel = n["channel_soil"] if isinstance(n["channel_soil"], float) else 0.0
    if not near(n["soil_carried_off"], (n["soil_spare"] + channel) * swell):
        yield "what is carried off is not what is left over and the channel's"
    for loads, loose in (("barrow_loads", "soil_loose"), ("barrows_off", "soil_carried_off")):
        if n[loads] != math.ceil(n[loose] / barrow - 1e-6):
            yield f"{loads} {n[loads]} is not {n[loose]:g} by {barrow:g}"
    if n["sod_laid"] > n["sod_lifted"] * (1 + 1e-9):
        yield "more sod is laid than lifted"
    if not near(n["sod_lifted"], n["footprint_area"] * beds):
        yield "the sod lifted is not that of all that is dug or built"
    for key in ("soil_spare_bare", "soil_spare_thin", "soil_spare_thin_bare"):
        if isinstance(n.get(key), float) and n[key] > n["soil_spare"] * (1 + 1e-6) + 1e-6:
            yield f"{key} leaves more over, not less"


def depths_add_up(told: Told) -> Complaints:
    """Dug is finished with mulch and compost; a berm where the form says one."""
    n, plan = told.numbers, told.plan
    if "deepest_dig" not in n or "slope" not in n:
        return
    unit = BY_KEY["deepest_dig"].unit(told.metric)
    laid = magnitude(plan.answers[bed.MULCH_DEPTH], unit)
    if plan.answers[bed.AMEND]:
        laid += magnitude(plan.answers[bed.COMPOST_DEPTH], unit)
    if not near(n["deepest_dig"], n["uphill_floor_depth"] + laid):
        yield "the digging is not the finished floor, mulch and compost"
    rise = n["slope"] / 100 * told.plan.size.lie.outline.rise * 12 * (25.4 if told.metric else 1)
    if not near(n["uphill_floor_depth"] - n["downhill_floor_depth"], rise, 1e-5, 1e-5):
        yield "the ground does not rise across the floor by its slope"
    berm = n["crest_to_toe"] > 0
    if berm != ("berm" in n["garden_form"] or "bank" in n["garden_form"]):
        yield f"a berm of {n['crest_to_toe']:g} in a garden {n['garden_form']}"
    if berm != (n["berm_soil"] > 0):
        yield f"a berm of {n['crest_to_toe']:g} takes {n['berm_soil']:g}"


_LEVEL = re.compile(
    r"^(?P<point>\S.*?) {2,}(?P<above>-?(?:\d+ )?[\d./]+ (?:in|mm)) +(?P<string>.*)$", re.M
)


def levels_add_up(told: Told) -> Complaints:
    """Every level from the floor and from the string; the notch at the pond, the crest over it."""
    if "deepest_dig" not in told.numbers or "pond_depth" not in told.numbers:
        return
    rows = {}
    for at in _LEVEL.finditer(told.part("DIGGING", told.short)):
        down = at["string"]
        sign = -1 if down.endswith(" above it") else 1
        words = down.removesuffix(" down").removesuffix(" above it")
        below = 0.0 if down == "at the string" else sign * feet_of(words) * 12
        rows[at["point"].split(",")[0].split(":")[0]] = (feet_of(at["above"]) * 12, below)
    if not rows:
        yield "no table of levels"
        return
    crest = [rows[one] for one in rows if one in ("Crest of the berm", "Lawn that is the rim")]
    if len(crest) != 1:
        yield f"no one level of the rim: {sorted(rows)}"
        return
    string = crest[0][0]
    for point, (above, below) in rows.items():
        if not near(above + below, string, 0, 0.27):
            yield f"{point}: {above:g} over the floor and {below:g} under the string at {string:g}"
    pond, rim = told.feet("pond_depth") * 12, told.plan.answers[shaping.FREEBOARD]
    notch = rows.get("Overflow")
    if notch is None or not near(notch[0], pond, 0, 0.14):
        yield f"the notch lies {notch} over the floor, the pond is {pond:g}"
    if not near(string, pond + magnitude(rim, "in"), 0, 0.2):
        yield f"the rim lies {string:g} over the floor, pond {pond:g} and freeboard {rim}"
    if rows["Finished floor"][0] != 0:
        yield "the floor does not lie at the floor"


# What is bought, what it costs, how long it takes.

_COST = re.compile(
    r"\[ \] ([a-z ]+): ((?:(?!\[ \]|\( \)).)*?)\. Costs (\D?)([\d.]+) at (\D?)([\d.]+)"
)


def lists_add_up(told: Told) -> Complaints:
    """Costs make their sum, a price its cost; what is bought holds what is needed."""
    n, listed = told.numbers, flat(told.part("SHOPPING LIST", told.short))
    if "Waits for" in listed or not listed:
        return
    # The working has the cost of each.
    costs = [float(at[4]) for at in _COST.finditer(flat(told.part("SHOPPING LIST", told.full)))]
    whole = re.search(r"Together: \D?([\d.]+)[;.]", listed + ".")
    if costs and whole is None:
        yield "costs without their sum"
    told_sum = float(whole[1].rstrip(".")) if whole else 0.0
    if told.whole and whole and not near(math.fsum(costs), told_sum, 0, 0.006 * len(costs)):
        yield f"{costs} together is told as {whole[1]}"
    if (
        whole
        and "cost_total" in n
        and not near(n["cost_total"], float(whole[1].rstrip(".")), 0, 0.006)
    ):
        yield f"the costs are {n['cost_total']} and {whole[1]}"
    plants = re.search(
        r"plants: (\d+) in all(?:.*?Costs \D?([\d.]+) at \D?([\d.]+) each)?",
        flat(told.part("SHOPPING LIST", told.full)),
    )
    if (
        plants
        and plants[2]
        and not near(float(plants[2]), int(plants[1]) * float(plants[3]), 0, 0.006)
    ):
        yield f"the plants cost {plants[0]}"
    bag = (
        {"mulch": 50, "compost": 50, "stone": 15}
        if told.metric
        else {"mulch": 2, "compost": 1, "stone": 0.5}
    )
    for thing, holds in bag.items():
        if not isinstance(n.get(f"{thing}_bags"), int):
            continue
        amount = n[f"{thing}_volume"] * (1000 if told.metric else 1)
        if n[f"{thing}_bags"] != math.ceil(amount / holds - 1e-6):
            yield f"{n[f'{thing}_bags']} bags of {holds} for {amount:g} of {thing}"
        loose = n[f"{thing}_bought"] * (1 if told.metric else 27)
        step = 0.1 if told.metric else 13.5
        if not n[f"{thing}_volume"] - 1e-6 <= loose <= n[f"{thing}_volume"] + step:
            yield f"{loose:g} of {thing} loose is bought for {n[f'{thing}_volume']:g}"
    stone = math.fsum(
        n[key] for key in ("stone_inlet", "stone_apron", "stone_channel")
        if isinstance(n.get(key), float)
    )  # fmt: skip
    if "stone_volume" in n and not near(stone, n["stone_volume"]):
        yield f"stone for {stone:g} is told as {n['stone_volume']:g}"


def hours_add_up(told: Told) -> Complaints:
    """Tasks make the steps, steps the whole; two people take half; days are whole."""
    n = told.numbers
    if "work_hours_slow" not in n:
        return
    tasks = {
        "step_dig": ("sod", "", "berm", "carry"),
        "step_lay": ("way", "lay"),
        "step_plant": ("planting", "mulching", "spout"),
    }
    for pace in ("quick", "slow"):
        whole = 0.0
        for step, parts in tasks.items():
            added = sum(n[f"{one}{'_' if one else ''}hours_{pace}"] for one in parts)
            whole += added
            if not near(n[f"{step}_hours_{pace}"], added):
                yield f"{step} takes {n[f'{step}_hours_{pace}']:g} h, its tasks {added:g}"
        if not near(n[f"work_hours_{pace}"], whole):
            yield f"all takes {n[f'work_hours_{pace}']:g} h, its steps {whole:g}"
        if not near(n[f"work_hours_two_{pace}"], whole / 2):
            yield "two people do not take half"
        for who, part in (("one", 1), ("two", 2)):
            if n[f"days_{who}_{pace}"] != math.ceil(whole / part / 6 - 1e-9):
                yield f"{n[f'days_{who}_{pace}']} days for {whole / part:g} h"


SUMS: tuple[Callable[[Told], Complaints], ...] = (
    lines_within_lines,
    water_falls_with_height,
    depth_is_allowed,
    soil_adds_up,
    depths_add_up,
    levels_add_up,
    lists_add_up,
    hours_add_up,
)
