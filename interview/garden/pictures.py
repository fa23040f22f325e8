"""The drawings of a plan: the garden from above, cut along the slope, and its pond in a storm."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TypeAlias

from interview.asking.answers import Answers
from interview.asking.question import Unanswered
from interview.drawing.scale import Dimension
from interview.drawing.scene import XY, Drawing, Shape
from interview.garden.earth.above import plan_sizes, plan_view
from interview.garden.earth.profile import LevelRow, level_table
from interview.garden.form.lie import Lie
from interview.garden.plan import Plan
from interview.garden.planting import laid_out
from interview.garden.planting.section import cross_section
from interview.garden.site import nearby_questions as nearby
from interview.garden.site import spot_questions as ground
from interview.garden.site.setbacks import left_of
from interview.garden.size import questions as bed
from interview.garden.size.zones import Zone
from interview.garden.storms.charts import pond_chart
from interview.quantities.units import Quantity

Ring: TypeAlias = Sequence[XY]
Planting: TypeAlias = Callable[[Ring, Ring, Ring], Iterable[Shape]]
_SHORT = dict(nearby.NEAR.kind.options)  # type: ignore[attr-defined]


def distances(spot: Answers, reaches_out: Quantity) -> list[tuple[str, Quantity]]:
    """Return the distances of a spot by the name of the thing.

    ``reaches_out`` is how far the garden reaches beyond where they were measured: it is taken off.
    """
    found = []
    for key in spot.get(nearby.NEAR) or ():
        far = spot.get(nearby.DISTANCES[key])
        if far is not None:
            found.append((_SHORT[key], left_of(far, reaches_out)))
    return found


def lie_if_measured(plan: Plan) -> Lie | None:
    """Return how a bed lies in its ground; nothing while the ground is not measured."""
    try:
        return plan.size.lie
    except Unanswered:
        return None


def planted_picture(plan: Plan, dimensioned: bool = True) -> Drawing:
    """Return one bed seen from above with its plants, as far as they are chosen.

    Its sizes stand on it unless it is not ``dimensioned``: ``picture_sizes`` has them then.
    """
    try:
        zones = plan.planting.chosen.zones
    except Unanswered:
        return plan_picture(plan, None, dimensioned)
    names = laid_out.letters(zones)
    beds = max(1, plan.size.bed_count)

    def planting(floor: Ring, pond: Ring, rim: Ring) -> Iterator[Shape]:
        lines = {Zone.FLOOR: (floor, ()), Zone.SIDE: (pond, floor), Zone.RIM: (rim, pond)}
        for zone in zones:
            yield from laid_out.planted(zone, *lines[zone.zone], names, beds)

    return plan_picture(plan, planting, dimensioned)


def picture_sizes(plan: Plan) -> tuple[Dimension, ...]:
    """Return the sizes of one bed as dimension lines beside its picture; raises ``Unanswered``."""
    notch = plan.earth.notch.width
    return plan_sizes(plan.size.garden, lie_if_measured(plan), notch, plan.metric)


def plan_picture(plan: Plan, planting: Planting | None = None, dimensioned: bool = True) -> Drawing:
    """Return one bed seen from above; raises ``Unanswered``."""
    spot = ground.chosen_spot(plan.answers)
    drawn = plan_view(
        plan.size.garden,
        lie_if_measured(plan),
        spot.get(ground.DOWNHILL) or "flat",
        plan.earth.notch.width,
        plan.answers.get(bed.SPOUT_DISTANCE),
        plan.earth.way,
        distances(spot, plan.size.reaches_out),
        plan.metric,
        planting,
        dimensioned,
    )
    return drawn.told(plan.answers.told)


def section_picture(plan: Plan) -> Drawing:
    """Return one bed cut along the slope; raises ``Unanswered``."""
    return cross_section(plan.size.lie, plan.metric, plan.storms.zone_hours)


def printed_section(plan: Plan) -> Drawing:
    """Return the same higher and with fewer words, for the page that lists the hours elsewhere."""
    return cross_section(plan.size.lie, plan.metric, printed=True)


def levels(plan: Plan) -> tuple[LevelRow, ...]:
    """Return every level of a bed from one string set at its rim; raises ``Unanswered``."""
    return level_table(plan.size.lie)


def pond_pictures(plan: Plan) -> tuple[Drawing, ...]:
    """Return the pond in the storm of the rain to hold, of each bed that differs.

    Beds side by side are alike. Raises ``Unanswered``.
    """
    beds = plan.storms.all_held_storm.beds
    return tuple(
        pond_chart(
            one,
            plan.metric,
            f"bed {place} of {len(beds)}" if len(beds) > 1 else "",
            "to the bed below" if place < len(beds) else "",
        )
        for place, one in enumerate(beds, 1)
    )
