"""What stands beside a question: what is known of the garden, and what is next."""

from __future__ import annotations

from collections.abc import Callable, Collection

from interview.asking import own_fault, route
from interview.asking.question import Unanswered
from interview.garden import soak_due
from interview.garden.due_words import Due, GardenState, day_words
from interview.garden.plan import Plan
from interview.garden.site import spot_questions as ground
from interview.garden.soak.times import elapsed_words
from interview.garden.summary import pond_line, size_sentence, value_of
from interview.garden.survey import surface_questions as surfacing
from interview.quantities.evidence import Finding, Grade

PANEL_STOPS = 2
"""How many stops the panel tells, and how many distances too near; the plan tells all."""
_PIECES = f".{surfacing.PIECES.key}"
_BEFORE_SIZE = (GardenState.NEW, GardenState.FIRST_SIZE)
_AT_THE_HOLE = (GardenState.SOAKING, GardenState.TIMING, GardenState.LEAVE_HOLE)
_WAITS = (GardenState.WHILE_WAITING, GardenState.WAITING, GardenState.MAY_OPEN)


def panel_lines(plan: Plan, due: Due, rough: str = "", here: Collection[str] = ()) -> list[str]:
    """Return what stands beside a question: what is known, and what is next; ten lines at most.

    ``rough`` is the first size in one line, told until there is a garden; ``here`` as ``due`` has
    it.
    """
    ahead = [one for one in due.keys if one not in here]
    if due.state in _BEFORE_SIZE:
        roof = "how big the roof is, then " if any(one.endswith(_PIECES) for one in ahead) else ""
        return [f"Next: {roof}a first size."]
    lead = [plan.answers.told(one) for one in _panel_stops(plan, due)]
    digging_line = [f"Digging: {one}" for one in known(lambda: value_of("Digging", plan))]
    if due.state in _AT_THE_HOLE:
        rate = [f"Rate so far: {one}" for one in known(lambda: value_of("Drop rate", plan))]
        return [*lead, *(_timer(plan) or [due.says]), *rate]
    if sized := garden_lines(plan):
        return [*lead, *sized, *digging_line, due.says]
    middle = [one for one in (rough, *distances_line(plan), *slope_line(plan)) if one]
    if due.state in _WAITS:
        first = plan.site.dig_gate.earliest
        if first is not None and first > plan.now.date():
            day = day_words(first, plan.now.date())
            lead.insert(0, f"First day to dig: {day}, if all owners have answered")
            digging_line = []
    following = [] if is_told_there(due, here) else [_next_line(plan, due, ahead, rough)]
    return [*lead, *middle, *digging_line, *following]


def is_told_there(due: Due, here: Collection[str]) -> bool:
    """Tell whether the page that asks for ``here`` says itself what is due: that a hole is shut."""
    at_hole = due.target.startswith("holes.") and due.target in here
    return at_hole and due.state is GardenState.SHUT


def known(get: Callable[[], str]) -> list[str]:
    """Return what ``get`` says as one line; none while it waits for an answer."""
    try:
        return [said] if (said := get()) else []
    except Unanswered:
        return []
    except Exception as trouble:
        own_fault.note("a line of the panel", trouble)
        return [own_fault.short(trouble)]


def _panel_stops(plan: Plan, due: Due) -> list[str]:
    # What is due says them already.
    told = due.state in (GardenState.STOP, GardenState.SMELL)
    stops = [] if told else [one for one in plan.findings if one.grade is Grade.STOP]
    near = [one for one in _distances(plan) if one.said.endswith("too near.") and one not in stops]
    near = [one for one in near if one.said.rstrip(".").casefold() not in due.says.casefold()]
    return [
        *(f"STOP: {one.said}" for one in stops[:PANEL_STOPS]),
        *(f"TOO NEAR: {one.said}" for one in near[:PANEL_STOPS] if not stops),
        *known(lambda: value_of("Room", plan)),
    ]


def _chosen(plan: Plan) -> tuple[Finding, ...]:
    chosen = ground.chosen_spot(plan.answers)
    return tuple(
        found
        for spot in plan.checks.spots
        if chosen.scope and spot.number == chosen.scope[1]
        for found in spot.findings
    )


def _distances(plan: Plan) -> list[Finding]:
    return [one for one in _chosen(plan) if one.key.endswith("_distance")]


def distances_line(plan: Plan) -> list[str]:
    """Return how many distances are fine, in one line; none where none is."""
    fine = sum(1 for one in _distances(plan) if one.grade is Grade.GOOD)
    return [f"Distances: {fine} fine"] if fine else []


def slope_line(plan: Plan) -> list[str]:
    """Return the slope and what is to be thought of it, in one line; none before it is known."""
    slope = known(lambda: value_of("Slope", plan))
    graded = [one.grade for one in _chosen(plan) if one.key == "slope"]
    if not slope or not graded:
        return []
    word = {Grade.GOOD: "fine", Grade.FIX: "steep", Grade.STOP: "too steep"}[graded[0]]
    return [f"Slope {slope[0]}: {word}"]


def garden_lines(plan: Plan) -> list[str]:
    """Return the size of the garden and what it holds; nothing while that is not known."""
    return [*known(lambda: size_sentence(plan)), *known(lambda: pond_line(plan))]


def _timer(plan: Plan) -> list[str]:
    """Return how long the water stands, and when to look next; nothing where no time is due."""
    look = soak_due.first(plan.answers, plan.now)
    if look is None or not look.run.due_words:
        return []
    since = look.run.elapsed
    timer = [f"Timer: {elapsed_words(since)} h"] if since is not None else []
    return [*timer, look.run.due_words]


def _next_line(plan: Plan, due: Due, ahead: list[str], rough: str) -> str:
    step = route.step_at(ahead[0], plan.answers) if ahead else None
    if due.state is GardenState.SPOT and step is not None:
        return f"Next: {step.worded(plan.answers).label}"
    return due.says.removeprefix(f"{rough.partition(' (')[0]}. ")  # told above
