"""What a plan says in one place held against what it says in another.

Each check takes what was told of one garden and yields a sentence for every contradiction. A check
reads the words of the sheets where it can, so that it sees what a person sees, and works sums out
anew. What must never be said together is in ``never_together.py``.
"""

from __future__ import annotations

import html
import math
import re
from collections.abc import Callable, Iterator
from functools import cached_property
from itertools import pairwise
from typing import Any

from interview.asking.question import Unanswered
from interview.drawing.scene import Material, Path
from interview.garden import pictures
from interview.garden.figures import BY_KEY, find, found
from interview.garden.overview import overview
from interview.garden.plan import Plan
from interview.garden.planting.cheaper import cheaper_ways, fewest
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.summary import may_dig, so_far
from interview.quantities.units import magnitude
from interview.sheet.card import card_text
from interview.sheet.figures_file import figures_text
from interview.sheet.page import page_html
from interview.sheet.report import outside_text, plan_text

Complaints = Iterator[str]
FOOT_M = 0.3048
BULK = {"sand": 1.15, "loam": 1.25, "clay": 1.40}
"""Loose soil of one measure in the ground, as the sheet's formula says it."""
COMPACTED = 0.9


class Told:
    """Everything that is told of one garden, each text made once."""

    def __init__(self, plan: Plan, whole: bool = True) -> None:
        self.plan = plan
        self.whole = whole
        """Whether the working is made too, which takes as long as all the rest."""
        self.metric = plan.metric

    @cached_property
    def numbers(self) -> dict[str, Any]:
        """Every figure that is known, bare, in the unit shown."""
        return {
            one.figure.key: one.number(self.metric)
            for one in found(self.plan)
            if one.waits_for is None and one.value is not None
        }

    @cached_property
    def feet(self) -> Callable[[str], float]:
        """A length among the figures in feet."""
        scale = {"in": 1 / 12, "ft": 1.0, "mm": 0.001 / FOOT_M, "m": 1 / FOOT_M}
        return lambda key: self.numbers[key] * scale[BY_KEY[key].unit(self.metric)]

    @cached_property
    def short(self) -> str:
        """The plain sheet."""
        return outside_text(self.plan)

    @cached_property
    def full(self) -> str:
        """The plain sheet with its working."""
        return plan_text(self.plan) if self.whole else self.short

    @cached_property
    def card(self) -> str:
        """The yard card."""
        return card_text(self.plan)

    @cached_property
    def page(self) -> str:
        """The printed sheet as HTML."""
        return page_html(self.plan)

    @cached_property
    def page_words(self) -> str:
        """Its words alone, those of its drawings too."""
        body = self.page.split("</style>", 1)[1]
        return flat(html.unescape(re.sub(r"<[^>]*>", " ", body)))

    @cached_property
    def list_of_figures(self) -> str:
        """The list of figures."""
        return figures_text(self.plan)

    @cached_property
    def texts(self) -> dict[str, str]:
        """The texts that a person reads, by name."""
        return {"sheet": self.short, "working": self.full, "card": self.card}

    def part(self, title: str, text: str | None = None) -> str:
        """A part of the sheet, without its heading; nothing where there is none."""
        lines = (self.full if text is None else text).splitlines()
        for at, line in enumerate(lines[:-1]):
            if line == title and lines[at + 1] == "-" * len(title):
                rest = lines[at + 2 :]
                ends = [n for n, (a, b) in enumerate(pairwise(rest)) if _heading(a, b)]
                return "\n".join(rest[: ends[0]] if ends else rest)
        return ""


def _heading(line: str, under: str) -> bool:
    return (bool(line) and under == "-" * len(line)) or line.startswith("=====")


def flat(text: str) -> str:
    """A text on one line."""
    return " ".join(text.split())


def near(one: float, two: float, part: float = 1e-6, by: float = 1e-6) -> bool:
    """Whether two numbers are the same but for rounding."""
    return abs(one - two) <= max(by, part * max(abs(one), abs(two)))


_LENGTH = re.compile(r"(-?)(?:([\d.]+) ft)? ?(?:(?:([\d.]+) )?(\d)/(\d) in|([\d.]+) in)?$")


def feet_of(words: str) -> float:
    """A length as the sheets write it, in feet."""
    words = words.strip()
    if words.endswith(" mm"):
        return float(words[:-3]) / 1000 / FOOT_M
    if words.endswith(" m"):
        return float(words[:-2]) / FOOT_M
    at = _LENGTH.match(words)
    assert at and words, words
    sign, ft, whole, top, low, inches = at.groups()
    more = float(inches or 0) + float(whole or 0) + (int(top) / int(low) if top else 0.0)
    return (-1 if sign else 1) * (float(ft or 0) + more / 12)


def rounded(metric: bool, feet: float) -> float:
    """How far off a length may be as written: half an inch at the most, or three digits."""
    return max(0.0165, 0.006 * abs(feet)) if metric else 0.0215


# The figures among themselves.


def lines_within_lines(told: Told) -> Complaints:
    """Floor within pond within rim within all that is dug or built."""
    chains = (
        ("floor_length_drawn", "pond_length", "rim_length"),
        ("floor_width_drawn", "pond_width", "rim_width"),
        ("floor_area", "mid_area_drawn", "rim_area"),
        ("inside_area", "footprint_area"),
        ("floor_area", "inside_area"),
        ("floor_length_drawn", "over_all_length"),
        ("floor_width_drawn", "over_all_width"),
    )
    for chain in chains:
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


_LEVEL = re.compile(r"^(?P<point>\S.*?) {2,}(?P<above>-?[\d.]+ (?:in|mm)) +(?P<string>.*)$", re.M)


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
    costs = [float(at[4]) for at in _COST.finditer(listed)]
    whole = re.search(r"Together: \D?([\d.]+)[;.]", listed + ".")
    if costs and whole is None:
        yield "costs without their sum"
    if whole and not near(math.fsum(costs), float(whole[1].rstrip(".")), 0, 0.006 * len(costs)):
        yield f"{costs} together is told as {whole[1]}"
    if (
        whole
        and "cost_total" in n
        and not near(n["cost_total"], float(whole[1].rstrip(".")), 0, 0.006)
    ):
        yield f"the costs are {n['cost_total']} and {whole[1]}"
    plants = re.search(r"plants: (\d+) in all(?:.*?Costs \D?([\d.]+) at \D?([\d.]+) each)?", listed)
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
        "step_plant": ("planting", "mulching"),
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


# One number wherever it stands.

_SIZE = re.compile(
    r"(?:A garden|\d beds, each)(?: (?P<long>[\w./ ]+?) by (?P<wide>[\w./ ]+?) over all,)? with a "
    r"flat floor of (?P<floor>[\w./ ]+?) by (?P<across>[\w./ ]+?); (?:it does|together they do) the "
    r"work of a [^.]*?(?:\.\d[^.]*)? pond\."
)


def one_size_everywhere(told: Told) -> Complaints:
    """The sentence of the size is one, and says what the figures and the pegs say."""
    if "floor_width_drawn" not in told.numbers:
        return
    said = {
        name: at[0] if (at := _SIZE.search(flat(text))) else None
        for name, text in (
            ("sheet", told.short), ("working", told.full), ("page", told.page_words),
            ("overview", " ".join(overview(told.plan).sentences)),
        )
    }  # fmt: skip
    if len(set(said.values())) != 1 or None in said.values():
        yield f"the size is told as {said}"
        return
    at = _SIZE.search(said["sheet"] or "")
    assert at
    for name, key in (
        ("floor", "floor_length_drawn"), ("across", "floor_width_drawn"),
        ("long", "over_all_length"), ("wide", "over_all_width"),
    ):  # fmt: skip
        if at[name] and not near(
            feet_of(at[name]), told.feet(key), 0, rounded(told.metric, told.feet(key))
        ):
            yield f"{key} is {told.feet(key):.3f} ft and is told as {at[name]}"


def pegs_make_the_size(told: Told) -> Complaints:
    """The pegs end at half of each line's length; floor within pond within rim in each row."""
    lines = told.part("PEGGING OUT", told.short).splitlines()
    rows = [
        line for line in lines if re.search(r" (each side|both ways|uphill|downhill) +[-\d]", line)
    ]
    ends = [line for line in rows if "both ways" in line]
    shape = told.plan.size.garden.shape.value if "pond_length" in told.numbers else ""
    if "pond_length" in told.numbers and not rows and not shape.startswith("your"):
        yield "no pegs"
    for row in rows:
        cells = [cell.strip() for cell in (row[27:43], row[43:59], row[59:])]
        known = [feet_of(cell) for cell in cells if cell not in ("-", "")]
        minus = shape.startswith(("a kidney", "kidney", "your"))
        if known != sorted(known) and not minus:
            yield f"a peg row is not floor, pond, rim outward: {row}"
        if row in ends and not minus:
            for cell, key in zip(cells, ("floor_length_drawn", "pond_length"), strict=False):
                half = told.feet(key) / 2
                if not near(feet_of(cell), half, 0, rounded(told.metric, half)):
                    yield f"the pegs end at {cell}, {key} is {told.feet(key):.3f} ft"


def plants_are_counted_alike(told: Told) -> Complaints:
    """The plants of the zones make the number told wherever it stands."""
    n, plan = told.numbers, told.plan
    if "plants_total" not in n:
        return
    if "Waits for" in told.part("SHOPPING LIST", told.short):
        return
    total, beds = n["plants_total"], n["bed_count"]
    zones = plan.planting.chosen.zones
    listed = [
        int(at[1]) for at in re.finditer(r"\[ \] (\d+) x ", flat(told.part("PLANTS", told.short)))
    ]
    if listed and sum(listed) * beds != total:
        yield f"{sum(listed)} plants are listed for {beds} beds, {total} told"
    full = [int(at[1]) for at in re.finditer(r"\[ \] (\d+) x ", flat(told.part("PLANTS")))]
    if full != listed:
        yield "the two sheets list other plants"
    said = {
        "in short": re.search(r"Plants: (\d+)[;\s]", flat(told.short)),
        "shopping list": re.search(r"plants: (\d+) in all", flat(told.short)),
        "cheaper ways": re.search(r"The plan counts (\d+) plants", flat(told.full)),
        "overview": re.search(r"it takes (\d+) plants", " ".join(overview(plan).sentences)),
        "page": re.search(r'data-figure="plants_total"><b>(\d+)<', told.page.replace("\n", "")),
    }
    for name, at in said.items():
        if at is None and name not in ("cheaper ways",):
            yield f"{name} tells no number of plants"
        elif at is not None and int(at[1]) != total:
            yield f"{name} tells {at[1]} plants, not {total}"
    short = {line.label: line.value for line in so_far(plan)}["Plants"]
    few = re.search(r"cheaper ways from (\d+)", short)
    if few and int(few[1]) != fewest(plan.planting):
        yield "the fewest plants are told otherwise"
    for way in cheaper_ways(plan.planting):
        if way.count >= total:
            yield f"{way.name} takes {way.count} of {total}"
    if may_dig(plan).word != "STOP":
        section = flat(told.card.split("6 PLANT", 1)[1].split("7 TAKE CARE", 1)[0])
        short_form = [int(at[1]) for at in re.finditer(r": (\d+) plants ", section)]
        if short_form and len(short_form) == len(zones) and sum(short_form) * beds != total:
            yield f"the card tells {short_form} plants a bed, the plan {total} for {beds}"
    for line in re.finditer(
        r"^  [A-Z]  (\d+) (.+?): (.+(?:\n {8,}.+)*)", told.part("PLANTING SKETCH"), re.M
    ):
        drifts = flat(line[3])
        if not re.search(r"of \d", drifts):
            continue
        added = 0
        for many, size in re.findall(r"(one|\d+)(?: drifts?)? of (\d+)", drifts):
            added += (1 if many == "one" else int(many)) * int(size)
        if added != int(line[1]):
            yield f"{line[2]}: {line[1]} in drifts of {drifts}"
    area = math.fsum(magnitude(zone.site.area, "ft**2") for zone in zones)
    if not near(area, n["planted_area"] * (1 / FOOT_M**2 if told.metric else 1), 1e-4):
        yield "the zones are not the ground that is planted"


def card_tells_the_same(told: Told) -> Complaints:
    """Soil, berm and loads of the card are those of the sheet."""
    plan, n = told.plan, told.numbers
    if may_dig(plan).word == "STOP" or "barrow_loads" not in n:
        return
    card = flat(told.card)
    at = re.search(r"dig ([\d.]+ \S+?), (\d+) barrow-loads?", card)
    if at is None:
        yield "the card tells no soil"
        return
    shown = find(BY_KEY["soil_dug_total"], plan).shown(plan.metric)
    if at[1] != shown or int(at[2]) != n["barrow_loads"]:
        yield f"the card says dig {at[1]} in {at[2]} loads, the sheet {shown}, {n['barrow_loads']}"
    loads = [int(one) for one in re.findall(r", (\d+) loads?\b", card.split("SOIL AND STONE")[1])]
    if isinstance(n.get("barrows_in"), int) and loads and sum(loads) != n["barrows_in"]:
        yield f"the card brings in {loads} loads, the sheet {n['barrows_in']}"


def sizes_tell_the_same(told: Told) -> Complaints:
    """The column of the size that is chosen tells what the rest of the plan tells."""
    table = told.part("LEAN, USUAL, GENEROUS").splitlines()
    if not table or "(yours)" not in table[0]:
        return
    at = table[0].index("(yours)")
    column = (at - 25) // 17
    for label, key in (
        ("plants", "plants_total"), ("soil to dig", "soil_dug_total"), ("soil left over", "soil_spare"),
        ("water on the floor", "storm_hours_on_floor"), ("deepest in that storm", "storm_peak"),
    ):  # fmt: skip
        line = next((one for one in table if one[:25].strip() == label), None)
        if line is None or key not in told.numbers:
            continue
        value = line[25 + 17 * column :][:17].strip()
        shown = find(BY_KEY[key], told.plan).shown(told.metric)
        if value != shown and value != "not known yet":
            yield f"{label} of the size chosen is {value}, {key} is {shown}"


def drawings_are_to_scale(told: Told) -> Complaints:
    """The areas of the drawing are those of the figures."""
    n, plan = told.numbers, told.plan
    if "inside_area" not in n or "footprint_area" not in n:
        return
    try:
        shapes = pictures.plan_picture(plan).shapes
    except Unanswered:
        return
    ring = {
        one.material: area_of(one.points)
        for one in shapes
        if isinstance(one, Path) and one.material in (Material.RIM, Material.SIDE, Material.FLOOR)
    }
    berm = math.fsum(
        area_of(one.points)
        for one in shapes
        if isinstance(one, Path) and one.material is Material.BERM
    )
    pond = magnitude(plan.size.garden.edge_area, "m**2" if told.metric else "ft**2")
    for drawn, known, name in (
        (ring[Material.FLOOR], n["floor_area"], "floor"),
        (ring[Material.SIDE], pond, "full pond"),
        (ring[Material.RIM], n["inside_area"], "rim"),
        (ring[Material.RIM] + berm, n["footprint_area"], "all that is dug or built"),
    ):
        if not near(drawn, known, 0.03, 0.01):
            yield f"the drawing of the {name} is {drawn:.3f}, the figure {known:.3f}"


def area_of(points: tuple[tuple[float, float], ...]) -> float:
    """The area inside points."""
    closed = [*points, points[0]]
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(closed))) / 2


def charts_tell_the_same(told: Told) -> Complaints:
    """What the chart of the pond says of its depth is what the figures say."""
    at = re.search(r"The pond is ([\d.]+) (?:in|mm) deep at most", flat(told.full))
    beds = told.numbers.get("bed_count")
    if at and beds == 1 and not near(float(at[1]), told.numbers["storm_peak"], 0.06, 0.06):
        yield f"the chart tells {at[1]}, the figure {told.numbers['storm_peak']:g}"


def verdict_agrees(told: Told) -> Complaints:
    """The verdict and the digging are told alike wherever they stand."""
    plan = told.plan
    grades = [one.grade for one in plan.findings]
    worst = max(grades, key=lambda one: one.trouble).value.upper() if grades else "GOOD"
    digging = may_dig(plan).word
    said = {
        "sheet": re.search(r"^Verdict: (\w+):", told.short, re.M),
        "working": re.search(r"^Verdict: (\w+):", told.full, re.M),
        "page": re.search(r'class="badge">. (\w+)<', told.page),
        "figures": re.search(r"^verdict: (\w+)", told.list_of_figures, re.M),
    }
    for name, at in said.items():
        if at is None or at[1].upper() != worst:
            yield f"{name} gives {at and at[1]}, the worst finding is {worst}"
    if (overview(plan).verdict.value.upper()) != worst:
        yield "the overview gives another verdict"
    for text, name in ((told.short, "sheet"), (told.full, "working")):
        found_words = set(re.findall(r"^\[(FIX|STOP|NOTE)\]", text, re.M))
        if worst in ("FIX", "STOP") and worst not in found_words:
            yield f"{name} lists no {worst}"
        if ("STOP" in found_words) != (worst == "STOP"):
            yield f"{name} lists a stop, the verdict is {worst}"
    card = re.search(r"^ (?:\[ \] )?(OPEN|SHUT|STOP)\b", told.card, re.M)
    part = told.part("DIGGING", told.short)
    sheet = re.search(r"Digging is (OPEN|SHUT)|(STOP): do not dig here", part)
    if card is None or card[1] != digging:
        yield f"the card says {card and card[1]}, digging is {digging}"
    if sheet and (sheet[1] or sheet[2]) != digging:
        yield f"the sheet says {sheet[0]}, digging is {digging}"
    brief = {line.label: line.value for line in so_far(plan)}.get("Digging", "")
    if digging == "OPEN" and not brief.startswith("open"):
        yield f"in short digging is {brief!r}, and OPEN"
    if digging == "SHUT" and brief.startswith("open"):
        yield "in short digging is open, and SHUT"
    page = "Digging is open" in told.page_words
    if page != (digging == "OPEN"):
        yield f"the page {'opens' if page else 'shuts'} the digging, it is {digging}"


def too_small_is_too_small(told: Told) -> Complaints:
    """A garden called too small holds less than it was asked to; what fits is within the room."""
    if at := re.search(r"TOO SMALL\. It holds ([\d.]+) \w+ of the ([\d.]+)", flat(told.short)):
        if float(at[1]) >= float(at[2]):
            yield f"{at[0]} of rain"
    for name, text in (("sheet", told.short), ("working", told.full)):
        for way in re.finditer(r"over all ([\w./ ]+?) by ([\w./ ]+?) \(fits\)", flat(text)):
            sides = told.plan.size.room_sides
            if sides and any(
                feet_of(one) > magnitude(room, "ft") + rounded(told.metric, feet_of(one))
                for one, room in zip(way.groups(), sides, strict=True)
            ):
                yield f"{name}: {way[0]} in a room of {sides}"


CHECKS: tuple[Callable[[Told], Complaints], ...] = (
    lines_within_lines,
    water_falls_with_height,
    depth_is_allowed,
    soil_adds_up,
    depths_add_up,
    levels_add_up,
    lists_add_up,
    hours_add_up,
    one_size_everywhere,
    pegs_make_the_size,
    plants_are_counted_alike,
    card_tells_the_same,
    sizes_tell_the_same,
    drawings_are_to_scale,
    charts_tell_the_same,
    verdict_agrees,
    too_small_is_too_small,
)
