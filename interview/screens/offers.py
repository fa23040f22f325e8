"""Keeping several answers at once, and finding a question by its key."""

from __future__ import annotations

from collections.abc import Mapping

from interview.asking import route
from interview.asking.route import Step
from interview.asking.sitting import Doubt
from interview.garden.session import Session
from interview.reading import Refused


def step_of(session: Session, address: str) -> Step | None:
    """Return the question at ``address`` where it is asked now."""
    return next((s for s in route.steps(session.answers) if s.address == address), None)


def offer(session: Session, address: str, text: str) -> str:
    """Keep one answer; return why not, or nothing."""
    step = step_of(session, address)
    if step is None:
        return "This question does not apply now."
    try:
        session.offer(step, text)
    except (Refused, Doubt) as refused:
        return str(refused)
    return ""


def offer_all(session: Session, wanted: Mapping[str, str]) -> tuple[int, list[str]]:
    """Keep each answer in turn; return how many were kept, and why others were not."""
    refused = []
    for address, text in wanted.items():
        step = step_of(session, address)
        if why := offer(session, address, text):
            label = step.worded(session.answers).label if step else address
            refused.append(f"{label}: {why}")
    return len(wanted) - len(refused), refused
