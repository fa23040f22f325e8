"""One number wherever it stands: the figures as YAML, the sheet, the printed page, card, table.

Each check takes what was told of one garden and yields a sentence for every contradiction.
"""

from __future__ import annotations

import csv
import datetime as dt
import html
import math
import re
from collections.abc import Callable, Iterable
from functools import lru_cache
from itertools import pairwise
from types import SimpleNamespace
from typing import Any

import yaml
from told_of_one import Complaints, Told, feet_of, flat, near

from interview.garden.figures import BY_KEY, find
from interview.garden.overview import overview
from interview.garden.summary import may_dig
from interview.sheet import table
from interview.sheet.card import ROWS

SHEET_COLUMNS = 76


@lru_cache(maxsize=1)
def tree_of(text: str) -> Any:
    """The list of figures as a program reads it."""
    return yaml.load(text, Loader=yaml.CSafeLoader)


def figures_are_told_to_programs(told: Told) -> Complaints:
    """The list of figures holds every number that is known, and its blocks add up to them."""
    tree, n = tree_of(told.list_of_figures), told.numbers
    listed = {key: one.get("value") for key, one in tree["figures"].items()}
    for key, value in n.items():
        other = listed.get(key)
        if isinstance(value, float) and isinstance(other, (int, float)):
            if not near(value, other, 1e-6, 1e-6):
                yield f"{key} is {value:g} and listed as {other}"
        elif isinstance(value, int) and other != value:
            yield f"{key} is {value} and listed as {other}"
    whole = (
        all(zone.picks for zone in told.plan.planting.chosen.zones) if "plants_total" in n else 0
    )
    planted = [one for zone in tree.get("planting", {}).get("zones", ()) for one in zone["plants"]]
    counted = sum(one["count"] or 0 for one in planted) * n.get("bed_count", 1)
    if whole and counted and counted != n["plants_total"]:
        yield f"the zones list {counted} plants of {n['plants_total']}"
    bought = sum(one["count"] or 0 for one in tree.get("plants", ()))
    if whole and bought and bought != n["plants_total"]:
        yield f"{bought} plants are bought of {n['plants_total']}"
    costs = [one["cost"] for one in tree.get("shopping", ()) if one["cost"] and not one["by_wish"]]
    if costs and not near(math.fsum(costs), tree["costs"]["total"], 0, 0.006 * len(costs)):
        yield f"{costs} make {tree['costs']['total']}"
    for one in tree.get("shopping", ()):
        if one["unit"] and one["order"] < one["needs"] * (1 - 1e-6):
            yield f"{one['order']} of {one['name']} is ordered, {one['needs']} are needed"


def page_has_the_figures(told: Told) -> Complaints:
    """Each figure at the head of the printed page is as the sheet shows it."""
    plan = told.plan
    for key, shown in re.findall(r'data-figure="(\w+)"><b>(.*?)</b>', told.page):
        words = html.unescape(re.sub(r"<[^>]*>", "", shown))
        wanted = find(BY_KEY[key], plan).shown(told.metric)
        if key in told.numbers and words != wanted:
            yield f"the page shows {words} for {key}, it is {wanted}"


_LEVEL = re.compile(
    r"^ ?(\S.*?) +(?:(-?[\d /]+? (?:in|mm)|-?\d+ ft [\d /]+ in) +)?"
    r"(at the string|[\d/][\d/. a-z]*? (?:down|above it))(?: .*)?$",
    re.M,
)


def levels_are_told_alike(told: Told) -> Complaints:
    """A level is the same on the sheet, the card and in the drawing of the section."""
    if "deepest_dig" not in told.numbers or may_dig(told.plan).word == "STOP":
        return
    sheet = {at[1]: at for at in _LEVEL.finditer(told.part("DIGGING", told.short)) if at[2]}
    for at in _LEVEL.finditer(told.card.partition("4 DIG AND LEVEL")[2].partition("5 SOIL")[0]):
        if at[1] in sheet and sheet[at[1]][3] != at[3]:
            yield f"{at[1]} is {at[3]} on the card and {sheet[at[1]][3]} on the sheet"
    above = {
        "full pond": "Overflow", "crest": "Crest of the berm", "toe": "Ground at the outer foot",
        "dug to": "Dig to here, under the floor",
    }  # fmt: skip
    for name, begins in above.items():
        drawn = re.search(rf"\b{name} ([+-]?[\d /]+ (?:in|mm))\b", told.page_words)
        row = next((at for key, at in sheet.items() if key.startswith(begins)), None)
        if drawn and row and not near(feet_of(drawn[1].lstrip("+")), feet_of(row[2]), 0, 0.011):
            yield f"{name} is {drawn[1]} in the drawing and {row[2]} on the sheet"


def pegs_are_told_alike(told: Told) -> Complaints:
    """The printed page has the pegs of the sheet, and the card some of them."""
    begin = re.compile(r"(each side|both ways|uphill|downhill) +[-\d]")
    if "pond_length" not in told.numbers:
        return
    sheet = [flat(line) for line in told.part("PEGGING OUT", told.short).splitlines()]
    rows = re.findall(
        r"<tr>(<td>.*?)</tr>", told.page.partition('class="pegs"')[2].partition("</table>")[0]
    )
    page = [html.unescape(" ".join(re.findall(r"<td>(.*?)</td>", row))) for row in rows]
    page = [flat(re.sub(r"<[^>]*>", "", row)) for row in page]
    if page and not set(page) <= set(sheet):
        yield f"the page has other pegs: {set(page) - set(sheet)}"
    part = told.card.partition("3 PEG OUT")[2].partition("4 DIG")[0]
    # A row of the card may stand for more or fewer stations than that of the sheet, or for others.
    known = {_station(line): line[at.start() :] for line in sheet if (at := begin.search(line))}
    for line in map(flat, part.splitlines()):
        at = begin.search(line)
        if at and line[at.start() :] != known.get(_station(line), line[at.start() :]):
            yield f"the card has other pegs: {line}, not {known[_station(line)]}"


def _station(row: str) -> tuple[str, str]:
    """Where a row of pegs begins, and its side."""
    at = re.match(r"(ends at|[\d /.]+(?:ft|in|m|mm)?(?: [\d /]+ in)?).*? (each|both|up|down)", row)
    return (at[1].split(" to ")[0].split()[0], at[2]) if at else (row, "")


_KIND = re.compile(r"\[ \] (\d+) x (.+?) \((.+?)\), ([\d.]+ (?:in|cm|mm|m|ft))\*? apart")
_ZONE = re.compile(r"^(FLOOR|SIDE|RIM)\b.*?(?: under water (.+?) in the storm)", re.M)


def kinds_are_told_alike(told: Told) -> Complaints:
    """Each kind has one count and one distance, each part one time under water."""
    if "plants_total" not in told.numbers:
        return
    if "Waits for" in told.part("PLANTS", told.short):
        return
    zones = told.plan.planting.chosen.zones
    wanted = [
        (pick.count, pick.plant.scientific_name)
        for zone in zones
        for pick in zone.picks
        if pick.count
    ]
    sheets = {"sheet": told.short, "working": told.full}
    apart: dict[str, set[str]] = {}
    for name, text in sheets.items():
        found = _KIND.findall(flat(told.part("PLANTS", text)))
        if [(int(many), latin) for many, _, latin, _ in found] != wanted:
            yield f"{name} counts {found}, the plan {wanted}"
        for _, _, latin, far in found:
            apart.setdefault(latin, set()).add(far)
    row = re.compile(
        r'<i>([^<]*)</i>(?:(?!</tr>).)*?<td class="n">(\d+)(?:; (\d+))?</td><td class="n">([^<]*)<'
    )
    page = row.findall(told.page)
    if page and [(int(many), html.unescape(latin)) for latin, many, *_ in page] != wanted:
        yield f"the page counts {page}, the plan {wanted}"
    for latin, many, all_beds, far in page:
        apart.setdefault(html.unescape(latin), set()).add(far.rstrip("*"))
        if all_beds and int(all_beds) != int(many) * told.numbers["bed_count"]:
            yield f"{latin}: {all_beds} for all beds of {many}"
    for latin, far_apart in apart.items():
        if len(far_apart) > 1:
            yield f"{latin} stands {far_apart} apart"
    wet = dict(_ZONE.findall(told.part("PLANTS", told.short)))
    for name, said in wet.items():
        title = {"FLOOR": "Floor, the wettest", "SIDE": "Side", "RIM": "Rim, the driest"}[name]
        at = re.search(rf"{title} [^;]*; under water (.+?) in the storm", told.page_words)
        if at and at[1] != said:
            yield f"{name} is under water {said} on the sheet and {at[1]} on the page"
    hours = {"FLOOR": "storm_hours_on_floor", "SIDE": "side_hours", "RIM": "rim_hours"}
    for name, key in hours.items():
        shown = find(BY_KEY[key], told.plan).shown(told.metric)
        if name in wet and wet[name] != shown:
            yield f"{name} is under water {wet[name]}, {key} is {shown}"


_DAY = r"\w{3} \d+ \w{3} \d{4}"


def times_and_dates_are_told_alike(told: Told) -> Complaints:
    """How soon it empties and the days of the lines are the same wherever they stand."""
    n = told.numbers
    if "empty_latest" in n:
        if isinstance(n["empty_soonest"], float) and n["empty_soonest"] > n["empty_latest"] * (
            1 + 1e-9
        ):
            yield "it empties sooner at the slower rate"
        said = {
            name: at[1]
            for name, text in (
                ("sheet", flat(told.short)), ("page", told.page_words),
                ("overview", " ".join(overview(told.plan).sentences)),
            )
            if (at := re.search(r"(?:Empties:|it empties) in ([\d.]+(?: to [\d.]+)? h)", text))
        }  # fmt: skip
        if len(set(said.values())) > 1:
            yield f"it empties in {said}"
    for key, label, on_card in (
        ("earliest_dig_day", "First day to dig", rf"First day to dig: ({_DAY})"),
        ("marks_stale_after", "Last day the marks are good", rf"marks good until ({_DAY})"),
    ):
        sheet = re.search(rf"{label}: +({_DAY})", told.part("DIGGING", told.short))
        card = re.search(on_card, flat(told.card))
        days = {
            dt.datetime.strptime(at[1], "%a %d %b %Y").date().isoformat()
            for at in (sheet, card)
            if at
        }
        days |= {n[key]} if key in n else set()
        if len(days) > 1:
            yield f"{key}: {days}"


def spared_money_is_told_alike(told: Told) -> Complaints:
    """The cheaper ways of the page are those of the sheet, and none takes more."""
    sheet = re.findall(
        r"(?:Or|;) ([^;:]+): (\d+)(?:;|, ([\d.]+)[;.]|\.)",
        flat(told.part("PLANTS", told.short)).replace("; ", ";; "),
    )
    page = re.findall(r"<td[^>]*>(\d+)</td><td[^>]*>([^<]*?)[;,<]", told.page)
    counts = {int(many) for _, many, _ in sheet}
    for many, name in page:
        if any(name == one for one, _, _ in sheet) and int(many) not in counts:
            yield f"{name} takes {many} on the page, {sheet} on the sheet"
    for name, many, cost in sheet:
        total = told.numbers.get("plants_total", math.inf)
        if int(many) > total:
            yield f"{name} takes {many} of {total}"
        whole = told.numbers.get("cost_total")
        if cost and whole is not None and float(cost) > whole + 0.01:
            yield f"{name} costs {cost}, all together {whole}"


def _amount(cell: str) -> float | None:
    """The number of a cell, a length in inches or millimeters."""
    if re.search(r"\b(?:ft|in|mm|m)$", cell):
        return feet_of(cell)
    at = re.match(r"\d[\d.]*", cell)
    return float(at[0]) if at else None


GROWS = ("over all", "holds, if none soaks in", "soil to dig", "mulch, loose")
SHRINKS = ("deepest in that storm", "water on the floor")


def sizes_come_in_order(told: Told) -> Complaints:
    """Lean is no larger than usual and usual no larger than generous, in all that grows.

    Of a garden its area grows: one may be longer and narrower, and gentler sides may leave less
    floor. Where all three have the least floor there is, their sides alone differ, and with them
    how deep the same water stands.
    """
    lines = told.part("LEAN, USUAL, GENEROUS").splitlines()
    if "named larger holds less" in flat(told.part("LEAN, USUAL, GENEROUS")):
        return
    rows = {
        line[:25].strip().removeprefix("a bed's "): [
            _amount(line[25 + 17 * at :][:17].strip()) for at in range(3)
        ]
        for line in lines[1:]
    }
    for what in ("floor", "over all"):
        sides = rows.get(f"{what}, long", []), rows.get(f"{what}, wide", [])
        rows[what] = [a * b if a and b else None for a, b in zip(*sides, strict=True)]
    one_floor = len(set(rows["floor"])) == 1
    for label in (*GROWS, *(() if one_floor else SHRINKS)):
        known = [one for one in rows.get(label, []) if one is not None]
        if label in SHRINKS:
            known.reverse()
        if any(a > b + 1e-9 for a, b in pairwise(known)):
            yield f"lean, usual, generous out of order: {label} {known}"


def hands_make_days(told: Told) -> Complaints:
    """People and days at the slow pace are enough, and one fewer is not; quick is not slower."""
    n, work = told.numbers, flat(told.part("THE WORK", told.full))
    if "work_hours_slow" not in n:
        return
    if at := re.search(r"At the slow pace (\d+) people finish it in (\d+) days", work):
        people, days = int(at[1]), int(at[2])
        if n["work_hours_slow"] / people > days * 6 + 1e-6:
            yield f"{people} people do not end {n['work_hours_slow']:g} h in {days} days"
        if people > 2 and n["work_hours_slow"] / (people - 1) <= days * 6 - 1e-6:
            yield f"one fewer than {people} people finish it in {days} days too"
    for at in re.finditer(r"(\d[\d.]*) to (\d[\d.]*) (?:h|days)\b", work):
        if float(at[1]) > float(at[2]):
            yield f"from the more to the less: {at[0]}"


def table_has_the_figures(told: Told) -> Complaints:
    """The line of the table holds the figures, the verdict and the digging."""
    wanted = ("verdict", "digging", *(one for one in table.USUAL if one in BY_KEY))
    read: Any = SimpleNamespace(plan=told.plan)
    cells = next(csv.reader([table.row(read, wanted, told.metric).strip()]))
    if cells[0] != told.plan.verdict.value or cells[1] != may_dig(told.plan).word.lower():
        yield f"the table says {cells[:2]}"
    for key, cell in zip(wanted[2:], cells[2:], strict=True):
        value = told.numbers.get(key)
        if isinstance(value, (int, float)) and not near(float(cell or "nan"), value, 1e-6):
            yield f"{key} is {value} and {cell} in the table"


def storms_are_told_alike(told: Told) -> Complaints:
    """The line of the storm to hold, among all storms, has the figures of that storm."""
    rain = told.plan.answers.text_at("rain_depth") or ""
    lines = told.part("STORMS").splitlines()
    first = re.match(r"([\d.]+) (?:in|mm)$", rain)
    if not told.whole or first is None or "storm_peak" not in told.numbers:
        return
    for line in lines:
        at = re.match(r" +([\d.]+) +([\d.]+ (?:in|mm)) +([\d.]+) +(\d+) ?%", line)
        if at is None or at[1] != first[1]:
            continue
        for cell, key in ((at[2], "storm_peak"), (f"{at[3]} h", "storm_hours_on_floor")):
            shown = find(BY_KEY[key], told.plan).shown(told.metric)
            if cell != shown:
                yield f"{key} is {shown} and {cell} among the storms"
        return


_FAR = r"(\d[\d/ ]*(?:ft(?: [\d/ ]+ in)?|in|m|mm))"


def distances_are_told_alike(told: Told) -> Complaints:
    """How far a thing lies from the garden is the same on the card and on the page."""
    note = re.search(r"Distances from the garden: (.*?)\.(?: |$)", told.page_words + " ")
    if note is None:
        return
    page = dict(one.groups() for one in re.finditer(rf"([a-z].*?) {_FAR}(?:; |$)", note[1]))
    card = told.card.partition("2 WHERE")[2].partition("3 PEG")[0]
    for name, far in re.findall(rf"([a-z][a-z ,'()]*?) {_FAR} \(usual", flat(card)):
        if page.get(name, far) != far:
            yield f"{name} is {far} off on the card and {page[name]} on the page"


def pages_fit(told: Told) -> Complaints:
    """No line of the sheet is wider than the sheet, and the card is one page."""
    for name, text in (("sheet", told.short), ("working", told.full), ("card", told.card)):
        for line in text.splitlines():
            if len(line) > SHEET_COLUMNS:
                yield f"{name}: a line of {len(line)} columns: {line}"
    if (rows := len(told.card.splitlines())) > ROWS:
        yield f"the card has {rows} lines"


CHECKS: tuple[Callable[[Told], Iterable[str]], ...] = (
    figures_are_told_to_programs,
    page_has_the_figures,
    levels_are_told_alike,
    pegs_are_told_alike,
    kinds_are_told_alike,
    times_and_dates_are_told_alike,
    spared_money_is_told_alike,
    sizes_come_in_order,
    hands_make_days,
    table_has_the_figures,
    storms_are_told_alike,
    distances_are_told_alike,
    pages_fit,
)
