"""An interview in progress: the answers, the place reached, and where they are kept."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Protocol

from interview.answers_file.named_files import NamedFile, no_files
from interview.asking import own_fault, route
from interview.asking.answers import Answers
from interview.asking.kinds import list_lines
from interview.asking.question import UNKNOWN_TEXT, Question, Status, Taken, Unanswered
from interview.asking.route import Step
from interview.garden import gate
from interview.garden.plan import Plan
from interview.garden.planting import names as plant_names
from interview.garden.planting import questions as planting
from interview.garden.suggest import beside, help_for, trouble_with, value_for
from interview.reading import Refused, is_unknown


class Keeper(Protocol):
    """Keeps the answers somewhere safe; raises ``NotKept`` with one sentence where it cannot."""

    def keep(self, answers: Answers, stopped_at: str) -> None:
        """Keep ``answers`` and the address of the question reached."""


class NotKept(Exception):
    """The answers are in memory but could not be saved; the message says why and what to do."""


class Doubt(Exception):
    """The value is possible but unlikely; offering it again keeps it."""


@dataclass(frozen=True)
class Heard:
    """What came of an answer: how it was understood."""

    step: Step
    echo: str
    kept: str
    """The words that were kept."""
    taken: Taken[Any] | None = None
    """The same with the value; nothing where the answer is not known."""


UNFINISHED = ", unfinished"
"""Stands in the file after the address of a list of which only a part was kept."""
LOOKED_AT = ", looked at"
"""Stands there after the address of a question that was gone to though it has its answer."""


class Session:
    """The part that both front ends share: offer an answer, go on, go back, jump."""

    def __init__(
        self,
        answers: Answers,
        keeper: Keeper,
        now: Callable[[], dt.datetime],
        stopped_at: str = "",
        open_text: Callable[[str], NamedFile] = no_files,
        plants: str = "",
        drafts: dict[str, str] | None = None,
    ) -> None:
        self.drafts: dict[str, str] = {} if drafts is None else drafts
        """What was typed and not yet taken as an answer, by address; the keeper may share it."""
        self._answers = answers
        self._keeper = keeper
        self._now = now
        self._open_text = open_text
        self._plants = plants
        self._doubted: tuple[str, str] | None = None
        self._plan: Plan | None = None
        self._unfinished = ""
        self._back_to = ""
        self._left = ""
        self._open_then: frozenset[str] = frozenset()
        self._stopped_at = stopped_at
        """The place that was kept last."""
        self.step: Step | None = self._resume(stopped_at)
        if self.step and stopped_at == self.step.address + UNFINISHED:
            self._unfinished = self.step.address
        self.alarm = ""
        """What must be said at once after the last answer; mostly empty."""
        self.passed_over = ""
        """Why the last step forward went past shut questions; empty where it did not."""
        self.not_kept = ""
        """Why the last save failed; empty while everything is saved."""
        self.note = ""
        """What is to be told of a save that worked; mostly empty."""

    def keep_with(self, keeper: Keeper) -> None:
        """Keep the answers with ``keeper`` from now on."""
        self._keeper = keeper

    @property
    def now(self) -> dt.datetime:
        """The time now, with its offset."""
        return self._now()

    @property
    def answers(self) -> Answers:
        """The answers, with words such as "now" meant at this moment."""
        return replace(self._answers, now=self.now)

    @property
    def plan(self) -> Plan:
        """The plan from the answers in force; worked out anew after every answer."""
        if self._plan is None:
            in_force = route.in_force(self._answers)
            self._plan = Plan(in_force, self.now, self._open_text, self._plants)
        return self._plan

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

    def shut(self, step: Step) -> list[str]:
        """Return why ``step`` may not be answered yet."""
        return gate.shut(step, self._answers, self.now.date())

    def beware(self, step: Step) -> str:
        """Return what is to be known before ``step`` is answered today, or nothing."""
        return gate.beware(step, self._answers, self.now.date())

    def ways(self, step: Step) -> list[Step]:
        """Return the questions whose answers keep ``step`` shut, those to be given first.

        What opens in time by itself comes last.
        """
        asked = {one.address: one for one in route.steps(self._answers)}
        found: dict[str, tuple[bool, bool]] = {}
        for bar in gate.bars(step, self._answers, self.now.date()):
            for address in bar.addresses:
                if address in asked and address != step.address and not self.shut(asked[address]):
                    known = route.standing(asked[address], self._answers) is Status.ANSWERED
                    found.setdefault(address, (bar.waits, known))
        return [asked[address] for address in sorted(found, key=lambda one: found[one])]

    def ways_said(self, step: Step, how: str) -> str:
        """Name the answers that keep ``step`` shut, and tell ``how`` to go to the first one."""
        labels = [f"“{one.question.label}”" for one in self.ways(step)]
        return f"To change: {', '.join(labels)}. {how}" if labels else ""

    @property
    def back_to(self) -> Step | None:
        """The shut question that is come back to after this answer; mostly nothing."""
        path = route.steps(self._answers) if self._back_to else []
        return next((one for one in path if one.address == self._back_to), None)

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

    def read(self, step: Step, text: str) -> Heard:
        """Return how ``text`` would be understood, keeping nothing; raises ``Refused``."""
        return self._read(step, text, self.answers)

    def _read(self, step: Step, text: str, answers: Answers) -> Heard:
        view = step.view(answers)
        question = step.question
        if is_unknown(text):
            return Heard(step, UNKNOWN_TEXT, UNKNOWN_TEXT)
        try:
            taken = question.take(text, view)
        except Unanswered as gap:
            said = view.told(gap.question.label)
            raise Refused(f"This waits for another answer: {said}. Answer that first.") from None
        if isinstance(taken.found, Unanswered):
            said = view.told(taken.found.question.label).lower()
            return Heard(step, f"{taken.kept} (waits for: {said})", taken.kept, taken)
        return Heard(step, question.kind.echo(taken.found, view), taken.kept, taken)

    def offer(self, step: Step, text: str) -> Heard:
        """Keep ``text`` as the answer to ``step`` and save.

        Raises ``Refused`` where it cannot be, ``Doubt`` where it is unlikely and was not offered
        twice. An empty text takes the default. A failed save is told by ``not_kept``.
        """
        if reasons := self.shut(step):
            raise Refused(reasons[0])
        view = step.view(self.answers)
        if not text.strip():
            default = self.offered(step)
            if default is None:
                raise Refused(
                    "Nothing was written. Write an answer, or say that you don't know yet."
                )
            text = default
        heard = self.read(step, text)
        if heard.taken is not None:
            self._weigh(step, heard.taken, view)
        if self._unfinished == step.address:
            self._unfinished = ""
        self._keep(self._answers.with_text(step.address, heard.kept))
        self.alarm = gate.alarm(step, self._answers)
        return heard

    def offer_together(self, wanted: Mapping[str, str]) -> None:
        """Keep an answer at each address, all of them or none, and save once.

        Each is read with those before it; what is not asked now is passed over. Raises
        ``Refused`` for the first that cannot be.
        """
        answers, steps = self.answers, {one.address: one for one in route.steps(self._answers)}
        kept: dict[str, str] = {}
        for address, text in wanted.items():
            if (step := steps.get(address)) is None:
                continue
            if reasons := self.shut(step):
                raise Refused(reasons[0])
            kept[address] = self._read(step, text, answers).kept
            answers = answers.with_text(address, kept[address])
        new = self._answers
        for address, text in kept.items():
            new = new.with_text(address, text)
        self._keep(new)

    def offered(self, step: Step) -> str | None:
        """Return the words an empty answer stands for: the default, or what the plan works out."""
        return value_for(step.question, self.plan) or step.question.default(step.view(self.answers))

    def worded(self, step: Step) -> Question[Any]:
        """Return the question in the words that fit the answers, with what the plan has found."""
        question = step.worded(self.answers)
        found = beside(step.question, self.plan)
        return replace(question, text=f"{question.text}\n{found}") if found else question

    def find_out(self, step: Step) -> str:
        """Return how to find the answer out, with the numbers this plan has for it."""
        said = step.worded(self._answers).find_out
        return f"{said} {help_for(step.question, self.plan)}".rstrip()

    def _weigh(self, step: Step, taken: Taken[Any], view: Answers) -> None:
        kept, value = taken
        if isinstance(value, Unanswered):
            return
        doubt = step.question.doubt(value, view) or gate.doubt(step, value, self._answers)
        if doubt and self._doubted != (step.address, kept):
            self._doubted = (step.address, kept)
            raise Doubt(f"{view.told(doubt)} Give the same answer again to keep it.")
        self._doubted = None

    def remark(self, step: Step, text: str) -> str:
        """Return what is to be said of words that are kept though nothing is known by them."""
        if said := trouble_with(step.question, self.plan):
            return f"{step.question.label}: {said}"
        lines = list_lines(text)
        if not lines or step.question not in (planting.FAVOURITES, planting.SWAP_OUT):
            return ""
        try:
            plants = self.plan.planting.plants
            if step.question is planting.FAVOURITES:
                return plant_names.remark_on_wishes(lines, plants)
        except Unanswered:
            return ""
        try:
            picks = [pick for zone in self.plan.planting.chosen.zones for pick in zone.picks]
            # A plant swapped already is still the one that the line names.
            planted = [one for pick in picks for one in (pick.plant, pick.instead_of) if one]
        except Unanswered:
            return plant_names.remark_on_swaps(lines, plants, None)
        return plant_names.remark_on_swaps(lines, plants, planted or None)

    def keep_part(self, step: Step, text: str) -> Heard:
        """Keep the lines of a list so far; whoever comes back later comes back to it.

        Raises ``Refused`` where they cannot be read, or may not be given yet.
        """
        if reasons := self.shut(step):
            raise Refused(reasons[0])
        heard = self.read(step, text)
        self._unfinished = step.address
        self._keep(self._answers.with_text(step.address, heard.kept))
        return heard

    def is_unfinished(self, step: Step) -> bool:
        """Tell whether only a part of the list that answers ``step`` was kept."""
        return self._unfinished == step.address

    def put_off(self, step: Step) -> Heard:
        """Keep "don't know yet" for ``step``."""
        self._unfinished = ""
        self._keep(self._answers.with_text(step.address, UNKNOWN_TEXT))
        return Heard(step, UNKNOWN_TEXT, UNKNOWN_TEXT)

    def clear(self, step: Step) -> None:
        """Take the answer to ``step`` away, so that it is asked again."""
        self._unfinished = ""
        self._keep(self._answers.without(step.address))

    def remove_item(self, group: str, number: int) -> None:
        """Take one item of a group away; those after it move up."""
        for address in [one for one in self.drafts if one.startswith(f"{group}.")]:
            text = self.drafts.pop(address)
            place, key = int(address.split(".")[1]), address.split(".")[2]
            if place != number:
                self.drafts[f"{group}.{place - (place > number)}.{key}"] = text
        self._keep(route.without_item(self._answers, group, number), follow=False)
        self._back_to = self._left = ""
        self.step = self._first_open(route.steps(self._answers)) or self.step

    def _keep(self, answers: Answers, follow: bool = True) -> None:
        if follow:
            answers = gate.follow(self._answers, answers, self.now.date())
        self._answers = answers
        self._plan = None
        self.save()

    def keep_place(self) -> None:
        """Save where the person is, where coming back would lead to another question."""
        found = self._resume(self._stopped_at)
        if self.step and found and found.address != self.step.address:
            self.save(LOOKED_AT)

    def save(self, why_here: str = "") -> bool:
        """Save now; tell whether it worked and note in ``not_kept`` why not."""
        place = self.step.address if self.step else ""
        if place:
            place += UNFINISHED if place == self._unfinished else why_here
        self._stopped_at = place
        try:
            self._keeper.keep(self._answers, place)
        except NotKept as trouble:
            self.not_kept = str(trouble)
            return False
        except Exception as trouble:
            own_fault.note("saving", trouble)
            self.not_kept = f"The program met a fault of its own ({own_fault.where(trouble)})."
            return False
        self.not_kept = ""
        self.note = str(getattr(self._keeper, "note", ""))
        return True

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
        path = route.steps(self._answers)
        return next((one for one in path if one.address == left and not self.shut(one)), None)

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
        for step in route.steps(self._answers):
            if step.address == address:
                self.step, self._back_to = step, ""
                return step
        return None
