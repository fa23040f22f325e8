"""The blocks of the list of figures that are tables: holes, surfaces, storms, plants, prices."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from interview.asking.figure import AREA, DIST, RATE, SIDE
from interview.asking.question import Unanswered
from interview.garden.earth.materials import Item, sold_in
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting.choose import Pick
from interview.garden.planting.costs import Costs, bought, costs, plant_count
from interview.garden.planting.provenance import from_memory, provenance
from interview.garden.planting.record import RATING_LISTS
from interview.garden.planting.wetness import rating
from interview.garden.planting.wishes import Wishes
from interview.garden.pond.hyetographs import StormShape
from interview.garden.size.price_lines import BY_PLANT
from interview.garden.soak.rates import SoakTest
from interview.garden.survey import pacing_questions as walking
from interview.garden.survey import share_questions as sharing
from interview.garden.survey.catchment import Catchment
from interview.garden.survey.pacing import expected_error
from interview.garden.survey.results import runoff_ways
from interview.quantities.units import magnitude, quantity, same_dimension, unit_name
from interview.reading import Refused

Tree = dict[str, Any]
"""Names with text, numbers, truth values, nothing, lists and trees."""


class TableRow(dict[str, Any]):
    """A tree that is one line of a table."""


class Word(str):
    """A word of this program, such as a grade, and no text of anybody."""


HOURS, APART, BROUGHT, SPILT = ("h", "h"), ("in", "cm"), ("gal", "L"), ("ft**3", "L")
WEIGHT = ("lb", "kg")
UNITS: dict[str, dict[str, tuple[str, str]]] = {
    "holes": {
        "shape_length": DIST,
        **dict.fromkeys(
            ("drop_rate", "mean_drop_rate", "corrected_all", "corrected_last_three", "corrected",
             "standard_error", "drop_rate_since_fill"), RATE),
        **dict.fromkeys(("start", "end"), HOURS),
        **dict.fromkeys(("depth_before", "depth_after"), DIST),
    },
    "surfaces": {**dict.fromkeys(("plan", "drains_here", "weighted"), AREA), "brings": BROUGHT},
    "walkers": dict.fromkeys(("pace", "standard_error", "expected_error"), SIDE),
    "storms": {"rain": DIST, "peak": DIST, "hours_on_floor": HOURS, "spill_volume": SPILT},
    "record_by_size": {"floor_area": AREA},
    "record_by_year": {"rain": DIST},
    "record_by_month": {"rain": DIST},
    "planting": {
        "area": AREA,
        **dict.fromkeys(("hours_held", "hours_again", "hours_record"), HOURS),
        "spacing": APART,
    },
}  # fmt: skip
"""The units, US and metric, of every measure in a block, by its key."""


def columns(plan: Plan) -> Tree:
    """Return the unit of every measure in the tables, in the units shown."""
    return {
        "columns": {
            block: TableRow({key: unit_name(one[plan.metric]) for key, one in units.items()})
            for block, units in UNITS.items()
        }
    }


def _row(block: str, plan: Plan, values: Mapping[str, Any]) -> TableRow:
    """Return values with each quantity as a number in the unit of its key."""
    return TableRow({key: _number(block, key, value, plan) for key, value in values.items()})


def _number(block: str, key: str, value: Any, plan: Plan) -> Any:
    unit = UNITS[block].get(key)
    return magnitude(value, unit[plan.metric]) if unit and value is not None else value


def holes(plan: Plan) -> Tree:
    """Return every test hole with its rates, reading by reading."""
    found: list[Tree] = []
    for hole in plan.soak.holes:
        one: Tree = {"name": hole.name}
        if hole.set_aside:
            one["set_aside"] = hole.set_aside
        if hole.test is not None:
            one |= _tested(hole.test, plan)
        elif hole.waits_for:
            one["waits_for"] = hole.waits_for.address
        found.append(one)
    return {"holes": found}


def _tested(test: SoakTest, plan: Plan) -> Tree:
    rates: Tree = {
        "shape_length": test.hole.shape_length,
        "drop_rate": test.drop_rate,
        "mean_drop_rate": test.mean_drop_rate,
        "corrected_all": test.corrected_all,
        "corrected_last_three": test.corrected_last_three,
        "corrected": test.corrected,
        "standard_error": test.standard_error,
        "side_share": test.side_share,
    }
    if test.deviation is not None:
        rates["deviation_of_last_three"] = test.deviation
    rates |= {"settled": test.settled, "trend": test.trend.value, "band": test.band.value}
    keys = (
        "start", "end", "depth_before", "depth_after", "drop_rate", "drop_rate_since_fill",
        "corrected", "valid",
    )  # fmt: skip
    rows = [{key: getattr(row, key) for key in keys} for row in test.intervals]
    return {
        **_row("holes", plan, rates),
        "intervals": [_row("holes", plan, row) for row in rows],
    }


def surfaces(plan: Plan) -> Tree:
    """Return the surfaces that drain here, what their error comes from, and who paced them."""
    try:
        catchment = plan.survey.catchment
    except Unanswered:
        return {"surfaces": [], "variance_shares": {}, "walkers": _walkers(plan)}
    rain = plan.answers[start.RAIN_DEPTH]
    rows = []
    for one, view in zip(catchment.surfaces, plan.answers.items("surfaces"), strict=True):
        ways = runoff_ways(view[sharing.SURFACE_KIND], view)
        values = {
            "name": one.name,
            "plan": one.plan,
            "share": one.share,
            "drains_here": one.drains_here,
            "coefficient": one.coefficient,
            "weighted": one.weighted,
            "brings": one.brings(rain),
            "usual_coefficient": ways.coefficient,
            "curve_number": ways.number,
            "by_curve_number": ways.by_number,
        }
        rows.append(_row("surfaces", plan, values))
    return {"surfaces": rows, "variance_shares": _errors(catchment), "walkers": _walkers(plan)}


def _errors(catchment: Catchment) -> Tree:
    """Return the share of the variance of the weighted area by input, the widest first."""
    shares = sorted(catchment.shares.items(), key=lambda item: (-item[1], item[0]))
    return {name: part for name, part in shares if part > 0}


def _walkers(plan: Plan) -> list[TableRow]:
    """Return each calibrated pace, with the error to expect over 40 ft or 12 m."""
    far = quantity(12.0, "m") if plan.metric else quantity(40.0, "ft")
    rows = []
    for one in plan.answers.items("walkers"):
        name = str(one[walking.WALKER_NAME])
        try:
            pace = walking.walker_pace(plan.answers, name)
        except (Refused, Unanswered):
            continue
        values = {
            "name": name,
            "pace": pace.length,
            "standard_error": pace.standard_error,
            "spread": pace.spread,
            "expected_error": expected_error(pace, far),
        }
        rows.append(_row("walkers", plan, values))
    return rows


def storms(plan: Plan) -> Tree:
    """Return the ladder of storms, for each shape of rain."""
    keys = ("rain", "peak", "hours_on_floor", "spill_volume", "share_caught")
    try:
        ladders = {
            shape.name.lower(): [
                _row("storms", plan, {key: getattr(storm, key) for key in keys})
                for storm in plan.storms.ladder_of(shape)
            ]
            for shape in StormShape
        }
    except Unanswered:
        ladders = {}
    return {"storms": ladders}


def record(plan: Plan) -> Tree:
    """Return the years of the record by size of floor, by year and by month."""
    try:
        sizes = plan.storms.years_by_size
    except Unanswered:
        return {"record_by_size": [], "record_by_year": [], "record_by_month": []}
    area = UNITS["record_by_size"]["floor_area"][plan.metric]
    years = plan.storms.real_years
    found: Tree = {
        "record_by_size": [
            TableRow(
                part=one.part,
                floor_area=magnitude(one.garden.floor_area, area) * plan.size.bed_count,
                share_held=one.replay.share_held,
                overflow_days=len(one.replay.overflow_days),
                overflow_days_a_year=one.replay.overflow_days_a_year,
            )
            for one in sizes
        ]
    }
    for name, parts in (("year", years.years), ("month", years.months)):
        found[f"record_by_{name}"] = [
            _row(
                f"record_by_{name}",
                plan,
                {
                    name: part.number,
                    "days": part.days,
                    "rain": part.rain,
                    "share_held": part.share_held,
                    "overflow_days": part.overflow_days,
                },
            )
            for part in parts
        ]
    return found


def planting(plan: Plan) -> Tree:
    """Return the plants of each zone of one bed, what is known of them and from where."""
    try:
        zones = plan.planting.chosen.zones
    except Unanswered:
        return {"planting": {}}
    wishes, wet = plan.planting.wishes, plan.storms
    listed = []
    for zone in zones:
        worst = wet.zone_hours_record
        listed.append(
            {
                "zone": Word(zone.zone.value),
                **_row(
                    "planting",
                    plan,
                    {
                        "area": zone.site.area,
                        "hours_held": wet.zone_hours.of(zone.zone),
                        "hours_again": wet.zone_hours_again.of(zone.zone),
                        "hours_record": worst.of(zone.zone) if worst else None,
                    },
                ),
                "plants": [_pick(pick, wishes, plan) for pick in zone.picks],
            }
        )
    lists = {code for zone in zones for pick in zone.picks for code in pick.plant.indicator_source}
    return {
        "planting": {
            "wetland_list": wishes.list_region.value if wishes.list_region else None,
            "beds": plan.size.bed_count,
            "zones": listed,
            "rating_lists": {code: RATING_LISTS[code] for code in sorted(lists & {*RATING_LISTS})},
        }
    }


def _pick(pick: Pick, wishes: Wishes, plan: Plan) -> Tree:
    plant, other = pick.plant, pick.substitute
    code = rating(plant, wishes.list_region)
    memory = from_memory(plant, wishes.region, wishes.list_region)
    return {
        "scientific_name": plant.scientific_name,
        "common_name": plant.common_name,
        "count": pick.count,
        "spacing": _number("planting", "spacing", plant.spacing, plan),
        "indicator": Word(code.name) if code else None,
        "bloom_months": list(plant.bloom_months),
        "why": pick.why,
        "substitute": other.scientific_name if other else None,
        "sources": provenance(plant, wishes.region, wishes.list_region),
        "from_memory": [Word(one) for one in memory],
    }


def plants(plan: Plan) -> Tree:
    """Return how many of each kind all the beds take, and in which zones it stands."""
    try:
        zones = plan.planting.chosen.zones
    except Unanswered:
        return {"plants": []}
    found: dict[str, TableRow] = {}
    for zone in zones:
        for pick in zone.picks:
            name = pick.plant.scientific_name
            row = found.setdefault(
                name,
                TableRow(
                    scientific_name=name, common_name=pick.plant.common_name, count=0, zones=[]
                ),
            )
            row["count"] += pick.count * plan.size.bed_count
            row["zones"].append(Word(zone.zone.value))
    return {"plants": list(found.values())}


def shopping(plan: Plan) -> Tree:
    """Return what to buy, at which price, and what it costs together."""
    try:
        found, items = costs(plan.planting), bought(plan.planting)
        wished = plan.earth.by_wish
    except Unanswered:
        return {"shopping": [], "costs": {}}
    rows = [{**_item(item, plan), "by_wish": False} for item in items]
    try:
        count = plant_count(plan.planting)
    except Unanswered:
        count = 0
    if count:
        rows += [{"name": name, **_counted(count), "by_wish": False} for name in BY_PLANT]
    rows += [{**_item(item, plan), "by_wish": True} for item in wished]
    return {
        "shopping": [TableRow(row | _price(row["name"], found)) for row in rows],
        "costs": {
            "total": found.total,
            "money": found.sign or None,
            "without_price": list(found.unpriced),
            "priced_and_not_needed": list(found.unused),
        },
    }


def _counted(count: int | None) -> Tree:
    return {"needs": count, "order": count, "unit": None, "bags": None, "pieces": count,
            "note": None}  # fmt: skip


def _item(item: Item, plan: Plan) -> Tree:
    """Return what the sum gives of a thing, and what to order, in the unit it is sold in."""
    told = plan.answers.told(item.note)
    if same_dimension(item.buy, "m"):
        unit = SIDE[plan.metric]
    elif same_dimension(item.buy, "m**3"):
        unit = sold_in(item.buy, plan.metric)
    elif same_dimension(item.buy, "kg"):
        unit = WEIGHT[plan.metric]
    else:
        return {"name": item.name, **_counted(item.pieces), "note": told}
    return {
        "name": item.name,
        "needs": magnitude(item.amount, unit),
        "order": magnitude(item.buy, unit),
        "unit": unit_name(unit),
        "bags": item.bags,
        "pieces": item.pieces,
        "note": told,
    }


def _price(name: str, found: Costs) -> Tree:
    line = found.of(name)
    if line is None:
        return {"price": None, "price_for": None, "cost": None}
    unit = line.price.unit
    return {"price": line.price.amount, "price_for": unit_name(unit), "cost": line.amount}
