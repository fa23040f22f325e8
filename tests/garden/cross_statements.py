"""What a plan says in one place held against what it says in another.

Each check takes what was told of one garden and yields a sentence for every contradiction. A check
reads the words of the sheets where it can, so that it sees what a person sees, and works sums out
anew. The figures among themselves are in
``adds_up.py``, what must never be said together in ``never_together.py``.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from itertools import pairwise

from adds_up import SUMS
from told_of_one import FOOT_M, Complaints, Told, feet_of, flat, near, rounded

from interview.asking.question import Unanswered
from interview.drawing.scene import Material, Path
from interview.garden import pictures
from interview.garden.figures import BY_KEY, find
from interview.garden.form.choices import FloorShape
from interview.garden.overview import overview
from interview.garden.planting.cheaper import cheaper_ways, fewest
from interview.garden.summary import may_dig, so_far
from interview.quantities.units import magnitude

# One number wherever it stands.

_SIZE = re.compile(
    r"(?:A garden|\d beds, each)(?: (?P<long>[\w./ ]+?) by (?P<wide>[\w./ ]+?) over all,)? with a "
    r"flat floor of (?P<floor>[\w./ ]+?) by (?P<across>[\w./ ]+?)(?:, measured along its bend)?; "
    r"(?:it does|together they do) the work of an? [^.]*?(?:\.\d[^.]*)? pond\."
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
    unnamed = sum(zone.places for zone in zones if not zone.picks)
    if listed and (sum(listed) + unnamed) * beds != total:
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
        ("plants", "plants_total"), ("soil to dig", "soil_dug_total"),
        ("soil left over", "soil_spare"), ("water on the floor", "storm_hours_on_floor"),
        ("deepest in that storm", "storm_peak"),
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
    # The rim in a hollow narrower than its sides is told as near as ``own_outline`` says.
    outline = plan.size.garden.outline
    hollow = outline.shape is FloorShape.OWN and any(one.spread < 0 for one in outline.rays)
    for drawn, known, name in (
        (ring[Material.FLOOR], n["floor_area"], "floor"),
        (ring[Material.SIDE], pond, "full pond"),
        (ring[Material.RIM], n["inside_area"], "rim"),
        (ring[Material.RIM] + berm, n["footprint_area"], "all that is dug or built"),
    ):
        rim = name not in ("floor", "full pond")
        if not near(drawn, known, 0.09 if hollow and rim else 0.03, 0.01):
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
    at = re.search(r"TOO SMALL\. It holds ([\d.]+) \w+ of the ([\d.]+)", flat(told.short))
    if at and float(at[1]) >= float(at[2]):
        yield f"{at[0]} of rain"
    ways = re.findall(r": (\d beds, each )?over all (.+?) \((fits|does not fit)", flat(told.short))
    fits = {(beds, size) for beds, size, word in ways if word == "fits"}
    for size in fits & {(beds, size) for beds, size, word in ways if word != "fits"}:
        yield f"{size} fits and does not fit"
    for name, text in (("sheet", told.short), ("working", told.full)):
        for way in re.finditer(r"over all ([\w./ ]+?) by ([\w./ ]+?) \(fits", flat(text)):
            sides = told.plan.size.room_sides
            if sides and any(
                feet_of(one) > magnitude(room, "ft") + rounded(told.metric, feet_of(one))
                for one, room in zip(way.groups(), sides, strict=True)
            ):
                yield f"{name}: {way[0]} in a room of {sides}"


CHECKS: tuple[Callable[[Told], Complaints], ...] = (
    *SUMS,
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
