"""What drains to the garden, on the sheet."""

from __future__ import annotations

import math
from collections.abc import Iterator

from interview.asking.answers import Answers
from interview.asking.question import Unanswered
from interview.garden.paced_lengths import paced_lengths
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.summary import wrap
from interview.garden.survey import pacing_questions as walking
from interview.garden.survey import questions as asked
from interview.garden.survey import share_questions as sharing
from interview.garden.survey.catchment import BARREL_GAL, BARREL_L, TYPICAL_PART
from interview.garden.survey.pacing_questions import pace_words
from interview.garden.survey.results import RunoffWays, drawing_of, runoff_ways
from interview.garden.survey.runoff import COEFFICIENTS, CURVE_NUMBER_TABLE, GRAVEL
from interview.quantities.shown import PLAIN
from interview.quantities.spread import COVERAGE
from interview.quantities.units import Quantity, magnitude, show
from interview.reading import Refused, foreign
from interview.sheet.common import drawn, figure_lines

PICTURE_ROWS = 22


def survey(plan: Plan) -> Iterator[str]:
    """Yield the surfaces, what each brings, how sure it is, and each surface drawn to scale."""
    yield from _table(plan)
    yield from _volume(plan)
    yield from figure_lines(
        plan, "catchment_area", "weighted_area", "weighted_area_low", "weighted_area_high"
    )
    yield from _driver(plan)
    yield from _sense(plan)
    yield ""
    yield from _ways(plan)
    yield from _paces(plan)
    yield from _pictures(plan)


def barrels(volume: Quantity, metric: bool) -> str:
    """Say a volume in drums: a number people can picture."""
    held = magnitude(volume, "L") / BARREL_L if metric else magnitude(volume, "gal") / BARREL_GAL
    size = f"{BARREL_L:g} L" if metric else f"{BARREL_GAL:g} gallons"
    return f"{PLAIN.write(held)} barrels of {size} each"


def _table(plan: Plan) -> Iterator[str]:
    unit, name = ("m**2", "m²") if plan.metric else ("ft**2", "ft²")
    volume = "L" if plan.metric else "gal"
    rain = plan.answers[start.RAIN_DEPTH]
    yield (
        f"{'surface':<24}{'plan ' + name:>10}{'share':>8}{'here ' + name:>10}"
        f"{'runs off':>10}{'brings ' + volume:>13}"
    )
    for one in plan.survey.catchment.surfaces:
        yield (
            f"{foreign.shown(one.name)[:23]:<24}{PLAIN.write(magnitude(one.plan, unit)):>10}"
            f"{PLAIN.write(100 * one.share):>7}%{PLAIN.write(magnitude(one.drains_here, unit)):>10}"
            f"{PLAIN.write(one.coefficient):>10}"
            f"{PLAIN.write(magnitude(one.brings(rain), volume)):>13}"
        )
    parts = [
        PLAIN.number(magnitude(one.drains_here, unit)) for one in plan.survey.catchment.surfaces
    ]
    whole = PLAIN.number(magnitude(plan.survey.catchment.drains_here, unit))
    if not math.isclose(math.fsum(parts), whole):
        yield from wrap(
            f"Each number is rounded by itself: “here” is {PLAIN.write(whole)} {name} in all, "
            "which may differ from the sum of the rounded parts."
        )
    yield from wrap(
        "“plan” is the area seen from straight above, “here” the part of it that drains here, and "
        "“runs off” the part of the rain that runs off (the runoff coefficient)."
    )


def _volume(plan: Plan) -> Iterator[str]:
    """Say what all surfaces bring in the rain to hold, in words people can picture."""
    rain = plan.answers[start.RAIN_DEPTH]
    volume, found = ("L" if plan.metric else "gal"), plan.survey.catchment
    all_of_it = found.brings(rain)
    part = COVERAGE * found.relative_error
    low, high = (
        PLAIN.write(magnitude(all_of_it, volume) * factor)
        for factor in (max(0, 1 - part), 1 + part)
    )
    deep = show(rain, "mm" if plan.metric else "in", 3)
    yield from wrap(
        f"In {deep} of rain about {show(all_of_it, volume, 2)} come here, "
        f"{barrels(all_of_it, plan.metric)}; likely from {low} to {high} {volume}."
    )
    yield from wrap(plan.answers.told(start.rain_standing(plan.answers)))


def _driver(plan: Plan) -> Iterator[str]:
    driver = plan.survey.catchment.driver
    if driver is not None:
        part = PLAIN.write(100 * plan.survey.catchment.shares[driver])
        yield from wrap(
            f"What widens the range most: {driver} ({part} % of the uncertainty). Measure this "
            "again to narrow the range."
        )


def _sense(plan: Plan) -> Iterator[str]:
    """Hold the roof against the house's own size."""
    unit = "m**2" if plan.metric else "ft**2"
    kinds = [one[sharing.SURFACE_KIND] for one in plan.answers.items("surfaces")]
    roof = math.fsum(
        magnitude(area.drains_here, unit)
        for area, kind in zip(plan.survey.catchment.surfaces, kinds, strict=True)
        if kind == "roof"
    )
    if not roof:
        return
    typical = plan.answers.told(
        f"a typical downspout drains about {100 * TYPICAL_PART.value:g} % of the house"
    )
    house = plan.answers.get(asked.HOUSE_AREA)
    if house is None:
        yield from wrap(f"Does it make sense? Look at the house: {typical}.")
        return
    part = PLAIN.write(100 * roof / magnitude(house, unit))
    yield from wrap(f"The roof that drains here is {part} % of the house; {typical}.")


def _ways(plan: Plan) -> Iterator[str]:
    """Show the part that runs off by each way of working it out, and what the choice changes."""
    deep = show(plan.answers[start.RAIN_DEPTH], "mm" if plan.metric else "in", 3)
    yield from wrap(
        f"How much of {deep} of rain runs off, worked out in two ways (a curve number, CN, grades "
        "soil and cover from 0 to 100):"
    )
    yield f"{'surface':<24}{'coefficient':>13}{'curve number':>20}{'local':>9}{'used':>8}"
    sums = {"coefficient": 0.0, "curve number": 0.0}
    unit = "m**2" if plan.metric else "ft**2"
    for one, view in zip(
        plan.survey.catchment.surfaces, plan.answers.items("surfaces"), strict=True
    ):
        ways = runoff_ways(view[sharing.SURFACE_KIND], view)
        area = magnitude(one.drains_here, unit)
        sums["coefficient"] += area * _by_coefficient(ways)
        sums["curve number"] += area * ways.by_number
        usual = "none" if ways.coefficient is None else PLAIN.write(ways.coefficient)
        local = "" if ways.local is None else PLAIN.write(ways.local)
        number = f"{PLAIN.write(ways.by_number)} (CN {ways.number})"
        used = PLAIN.write(one.coefficient)
        yield f"{foreign.shown(one.name)[:23]:<24}{usual:>13}{number:>20}{local:>9}{used:>8}"
    name = "m²" if plan.metric else "ft²"
    said = "; ".join(f"by {way} {PLAIN.write(area)} {name}" for way, area in sums.items())
    yield from wrap(
        f"The whole weighted area {said}. Lawn goes by curve number either way. Sources: "
        f"{COEFFICIENTS}; {GRAVEL}. {CURVE_NUMBER_TABLE}."
    )


def _by_coefficient(ways: RunoffWays) -> float:
    return ways.by_number if ways.coefficient is None else ways.coefficient


def _paces(plan: Plan) -> Iterator[str]:
    """Say each walker's pace, and the error to expect at the longest length it measured."""
    people = plan.answers.items("walkers")
    paced = [one for one in paced_lengths(plan.answers) if one.length is not None]
    for place, one in enumerate(people):
        name = str(one[walking.WALKER_NAME])
        try:
            pace = walking.walker_pace(plan.answers, name)
        except (Refused, Unanswered):
            continue
        yield from wrap(f"Pace of {name}: {pace_words(pace, plan.metric)}.", "  ")
        mine = [
            length.length
            for length in paced
            if length.length is not None and _is(length.walker, name, place)
        ]
        if mine:
            longest = max(mine, key=lambda length: magnitude(length, "ft"))
            far = pace_words(pace, plan.metric, longest).rpartition("; ")[2]
            yield from wrap(f"  At the longest length paced: {far}.", "  ")


def _is(walker: str, name: str, place: int) -> bool:
    return walker.casefold() == name.casefold() or (not walker and place == 0)


def _pictures(plan: Plan) -> Iterator[str]:
    for view in plan.answers.items("surfaces"):
        yield ""
        yield from picture(view)


def picture(surface: Answers) -> list[str]:
    """Return one surface drawn to scale, from its item's answers; raises ``Unanswered``."""
    return list(drawn(drawing_of(surface), PICTURE_ROWS))
