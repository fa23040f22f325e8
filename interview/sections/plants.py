"""The plants and their first year, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from interview import cautions
from interview.calc.plant_care import first_year
from interview.model import Answers
from interview.plan import Plan
from interview.questions import planting, review, start
from interview.summary import wrap
from interview.units import magnitude


def plants(plan: Plan) -> Iterator[str]:
    """Yield the plants of each zone, or what to look for where none are listed."""
    words = {"floor": "FLOOR, the wettest", "side": "SIDE", "rim": "RIM, the driest"}
    region = planting.plant_region(plan.answers)
    if region:
        yield f"Region: {region.value}"
    for zone in plan.planting.zones:
        hours = magnitude(zone.site.hours, "h")
        unit, name = ("m**2", "m²") if plan.metric else ("ft**2", "ft²")
        area = magnitude(zone.site.area, unit)
        yield ""
        yield from wrap(
            f"{words[zone.zone.value]}: {area:.0f} {name}, under water {hours:.0f} h after the "
            "storm it holds"
        )
        for pick in zone.picks:
            plant = pick.plant
            yield from wrap(
                f"[ ] {pick.count} x {plant.common_name} ({plant.scientific_name}), "
                f"{plant.spacing_in:g} in apart. {pick.why}",
                "      ",
            )
            for caution in pick.cautions:
                yield from wrap(f"      CAUTION: {caution}", "      ")
        if not zone.picks:
            for trait in _guidance(zone.guidance):
                yield from wrap(f"- {trait}", "  ")
    for note in plan.planting.notes:
        yield from wrap(f"Note: {note}", "  ")
    yield from wrap(f"CAUTION: {cautions.PLANTS}", "  ")


def _guidance(guidance: Any) -> Iterator[str]:
    for value in vars(guidance).values():
        if isinstance(value, str):
            yield value
        elif isinstance(value, tuple):
            yield from (str(one) for one in value)


MONTHS = "January February March April May June July August September October November December"


def _southern(answers: Answers) -> bool:
    country: str | None = answers.get(start.COUNTRY)
    return country in ("australia", "new_zealand")


def care(plan: Plan) -> Iterator[str]:
    """Yield the work of the first year by month."""
    day = plan.answers.get(review.DIG_DAY)
    if day is None:
        yield "If planted in May:"
    months: dict[str, list[int]] = {}
    for month in first_year(day.month if day else 5, _southern(plan.answers)):
        for task in month.tasks:
            months.setdefault(task.task, []).append(month.month)
    for words, when in months.items():
        yield from wrap(f"{_months(when)}: {words}", "  ")


def _months(when: list[int]) -> str:
    """Write months in a row as a span, such as ``Jun to Aug, Nov``."""
    names = [name[:3] for name in MONTHS.split()]
    if len(when) == 12:
        return "all year"
    runs: list[list[int]] = []
    for month in when:
        if runs and month == runs[-1][-1] % 12 + 1:
            runs[-1].append(month)
        else:
            runs.append([month])
    return ", ".join(
        names[run[0] - 1] if len(run) == 1 else f"{names[run[0] - 1]} to {names[run[-1] - 1]}"
        for run in runs
    )
