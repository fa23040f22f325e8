"""The place reached in an interview about anything, and the ways on from it and back."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from dataclasses import replace

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.question import Status
from interview.asking.route import Step

UNFINISHED = ", unfinished"
"""Stands in the file after the address of a list of which only a part was kept."""
LOOKED_AT = ", looked at"
"""Stands there after the address of a question that was gone to though it has its answer."""


class Walk:
    """Goes on, back and to any question; ``shut`` and ``ways`` are for a subject to say."""

    def __init__(
        self,
        answers: Answers,
        now: Callable[[], dt.datetime],
        stopped_at: str,
        drafts: dict[str, str] | None,
    ) -> None:
        self.drafts: dict[str, str] = {} if drafts is None else drafts
        """What was typed and not yet taken as an answer, by address; the keeper may share it."""
        self._answers = answers
        self._now = now
        # Two places may wait at once: a question gone to may itself be shut and be mended.
        self._back_to = ""
        """The shut question that is come back to once an answer has opened it."""
        self._left = ""
        """The question that was left for a visit."""
        self._open_then: frozenset[str] = frozenset()
        """The questions that had no answer when it was left."""
        self.step: Step | None = self._resume(stopped_at)
        self.passed_over = ""
        """Why the last step forward went past shut questions; empty where it did not."""

    @property
    def now(self) -> dt.datetime:
        """The time now, with its offset."""
        return self._now()

    @property
    def answers(self) -> Answers:
        """The answers, with words such as "now" meant at this moment."""
        return replace(self._answers, now=self.now)

    def shut(self, step: Step) -> list[str]:
        """Return why ``step`` may not be answered yet."""
        return []

    def ways(self, step: Step) -> list[Step]:
        """Return the questions whose answers keep ``step`` shut, those to be given first."""
        return []

    def _resume(self, stopped_at: str) -> Step | None:
        path = route.steps(self._answers)
        addresses = [step.address for step in path]
        address = stopped_at.removesuffix(UNFINISHED).removesuffix(LOOKED_AT)
        place = addresses.index(address) if address in addresses else 0
        meant = address != stopped_at or address in self.drafts
        if address in addresses and meant and not self.shut(path[place]):
            return path[place]
        ahead = self._first_open(path[place:]) or self._first_open(path)
        return ahead or (path[-1] if path else None)

    def _first_open(self, path: list[Step]) -> Step | None:
        for step in path:
            if route.standing(step, self._answers) is Status.OPEN and not self.shut(step):
                return step
        return None

    def _at(self, address: str) -> Step | None:
        return next((one for one in route.steps(self._answers) if one.address == address), None)

    @property
    def back_to(self) -> Step | None:
        """The shut question that is come back to after this answer; mostly nothing."""
        return self._at(self._back_to) if self._back_to else None

    def mend(self) -> Step | None:
        """Move to the answer that keeps this question shut, or back from it; else to nothing."""
        if (back := self.back_to) is not None:
            self._back_to = ""
            self.step = back
            return back
        ways = self.ways(self.step) if self.step else []
        if not ways or self.step is None:
            return None
        self._back_to, self.step = self.step.address, ways[0]
        return self.step

    def _after_mending(self) -> Step | None:
        """Return the next answer that is still missing on the way back, or where it leads."""
        back, here = self.back_to, self.step
        if back is not None and here is not None:
            place = {one.address: at for at, one in enumerate(route.steps(self._answers))}
            for way in self.ways(back):
                missing = route.standing(way, self._answers) is Status.OPEN
                # Only forward, so that answers left out on the way do not hold one there.
                if missing and place[way.address] > place.get(here.address, -1):
                    return way
        self._back_to = ""
        return back

    def go_on(self) -> Step | None:
        """Move to the next question that may be answered now; nothing at the end."""
        step = self.step
        self.passed_over = ""
        if (back := self._after_mending()) is not None:
            self.step = back
            return back
        while step is not None:
            step = route.next_step(self._answers, step)
            if step is None or not (reasons := self.shut(step)):
                break
            self.passed_over = self.passed_over or (
                f"Passed over, from '{step.worded(self._answers).label}' on: {reasons[0]}"
            )
        if step is not None:
            self.step = step
        return step

    def go_on_open(self) -> Step | None:
        """Move to the next question that still wants an answer; nothing at the end.

        After a ``visit`` that is one which the visit has opened, or else the place that was left.
        """
        self.passed_over = ""
        step = self._after_mending() or self._way_back() or self._next_open()
        if step is not None:
            self.step = step
        return step

    def _next_open(self) -> Step | None:
        step = self.step
        while step is not None:
            step = route.next_step(self._answers, step)
            if step is None or not self._wants_answer(step):
                continue
            if not (reasons := self.shut(step)):
                break
            self.passed_over = self.passed_over or (
                f"Passed over, from '{step.question.label}' on: {reasons[0]}"
            )
        return step

    def _wants_answer(self, step: Step) -> bool:
        return route.standing(step, self._answers) in (Status.OPEN, Status.FAULTY)

    def _way_back(self) -> Step | None:
        """Return where to go after a visit; nothing where there was none, or one is back."""
        if not self._left or self.step is None:
            return None
        step: Step | None = self.step
        while (step := route.next_step(self._answers, step)) is not None:
            opened = route.standing(step, self._answers) is Status.OPEN
            if opened and step.address not in self._open_then and not self.shut(step):
                return step
        left, self._left = self._left, ""
        if left == self.step.address:
            return None
        back = self._at(left)
        return back if back is not None and not self.shut(back) else None

    def visit(self, address: str) -> Step | None:
        """Move to the question at ``address`` if it applies; ``go_on_open`` comes back here."""
        left = self.step
        step = self.jump(address)
        if step is None or left is None:
            return step
        if step.address == self._left:
            self._left = ""
        elif not self._left and step.address != left.address:
            self._left = left.address
            self._open_then = frozenset(one.address for one in route.open_steps(self._answers))
        return step

    def go_to_open(self) -> Step | None:
        """Move to the first question without an answer that may be answered now."""
        self._left = ""
        step = self._first_open(route.steps(self._answers))
        if step is not None:
            self.step, self._back_to = step, ""
        return step

    def go_back(self) -> Step | None:
        """Move to the question before this one; nothing at the start."""
        if self.step is None:
            return None
        if self.back_to is not None:
            return self.mend()
        step = route.previous_step(self._answers, self.step)
        if step is not None:
            self.step = step
        return step

    def jump(self, address: str) -> Step | None:
        """Move to the question at ``address`` if it applies."""
        step = self._at(address)
        if step is not None:
            self.step, self._back_to = step, ""
        return step
