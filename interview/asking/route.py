"""Which questions apply, in which order, which come next, and how words are read at one."""

from __future__ import annotations

from collections.abc import Iterator, Set
from typing import Any, NamedTuple

from interview.asking.answers import Answers
from interview.asking.question import (
    UNKNOWN_TEXT,
    Group,
    Question,
    Stage,
    Status,
    Taken,
    Unanswered,
)
from interview.quantities.records import record
from interview.reading import Refused, is_unknown


class Step(NamedTuple):
    """One question at one place of the interview."""

    question: Question[Any]
    number: int
    """The number of the item within its group; 0 outside groups."""
    stage: Stage

    @property
    def address(self) -> str:
        """Where the answer is kept."""
        if not self.number:
            return self.question.key
        return f"{self.question.group}.{self.number}.{self.question.key}"

    def worded(self, answers: Answers) -> Question[Any]:
        """Return the question in the words that fit ``answers``."""
        return self.question.worded(self.view(answers))

    def view(self, answers: Answers) -> Answers:
        """Return ``answers`` as seen from this step."""
        return answers.at(self.question.group, self.number) if self.number else answers.whole()


class Heard(NamedTuple):
    """What came of an answer: how it was understood."""

    step: Step
    echo: str
    kept: str
    """The words that were kept."""
    taken: Taken[Any] | None = None
    """The same with the value; nothing where the answer is not known."""


def heard_at(step: Step, text: str, answers: Answers) -> Heard:
    """Return how ``text`` is understood at ``step``, beside ``answers``; raises ``Refused``."""
    view, question = step.view(answers), step.question
    if is_unknown(text):
        return Heard(step, UNKNOWN_TEXT, UNKNOWN_TEXT)
    try:
        taken = question.take(text, view)
    except Unanswered as gap:
        said = view.told(gap.question.label)
        raise Refused(f"This waits for another answer: {said}. Answer that first.") from None
    if taken.asks_back and text != view.text(question):
        raise Refused(taken.asks_back)
    if isinstance(taken.found, Unanswered):
        said = view.told(taken.found.question.label).lower()
        return Heard(step, f"{taken.kept} (waits for: {said})", taken.kept, taken)
    echo = taken.said or question.kind.echo(taken.found, view)
    return Heard(step, echo, taken.kept, taken)


def steps(answers: Answers) -> list[Step]:
    """Return every question that applies now, in the written order.

    An answer that is itself set aside decides nothing.
    """
    return list(answers.once("steps", lambda: _steps(answers)))


def _steps(answers: Answers) -> list[Step]:
    while True:
        found = list(_asked(answers.whole()))
        kept = _only(answers, found)
        if len(kept.texts) == len(answers.texts):
            return found
        answers = kept


def _asked(answers: Answers) -> Iterator[Step]:
    for stage in answers.interview.stages:
        for part in stage.parts:
            if isinstance(part, Group):
                yield from _group_steps(part, stage, answers)
            elif part.asks(answers):
                yield Step(part, 0, stage)


def _only(answers: Answers, found: list[Step]) -> Answers:
    addresses = {step.address for step in found}
    items = {(step.question.group, step.number) for step in found if step.number}
    texts = {
        address: text
        for address, text in answers.texts.items()
        if address in addresses or _noted_of(answers.interview.question_at(address), items)
    }
    return answers.whole().with_texts(texts)


def _noted_of(found: tuple[Question[Any], int] | None, items: Set[tuple[str, int]]) -> bool:
    """Tell whether an address is what the program noted of one of ``items``."""
    if found is None:
        return False
    question, number = found
    return question.noted and (question.group, number) in items


def _group_steps(group: Group, stage: Stage, answers: Answers) -> Iterator[Step]:
    for number in range(1, item_count(group, answers) + 1):
        view = answers.at(group.key, number)
        for question in group:
            if question.asks(view):
                yield Step(question, number, stage)


def item_count(group: Group, answers: Answers) -> int:
    """Return how many items of ``group`` are asked about: one more after each yes."""
    numbers = answers.numbers(group.key)
    count = max(numbers, default=1)
    if answers.at(group.key, count).get(group.another) is True:
        count += 1
    return count


def without_item(answers: Answers, group: str, number: int) -> Answers:
    """Return the answers less one item of ``group``: it is not asked again, and a spot chosen
    by its number stays the same spot.
    """
    left, asked = answers.without_item(group, number), answers.interview.groups[group]
    if number > 1 and number >= item_count(asked, answers):
        another = f"{group}.{number - 1}.{asked.another.key}"
        if another in left.texts:
            left = left.with_text(another, "no")
    if not asked.chosen:
        return left
    chosen: int | None = answers.get(answers.interview.questions[asked.chosen])
    if chosen == number:
        return left.without(asked.chosen)
    if chosen is not None and chosen > number:
        return left.with_text(asked.chosen, str(chosen - 1))
    return left


def in_force(answers: Answers) -> Answers:
    """Return the answers whose questions apply; the others are set aside, never lost."""
    return _only(answers, steps(answers))


def set_aside(answers: Answers) -> list[str]:
    """Return the addresses of answers that are kept but do not apply now."""
    holds = in_force(answers).texts
    return [a for a in answers.texts if a not in holds]


def step_at(address: str, answers: Answers) -> Step | None:
    """Return the step kept at ``address`` if there is such a question."""
    found = answers.interview.question_at(address)
    if found is None:
        return None
    question, number = found
    return Step(question, number, answers.interview.stage_of[question.key])


def item_name(step: Step, answers: Answers) -> str:
    """Name the thing a question of a group is about, such as ``test hole 2, north end``."""
    if not step.number:
        return ""
    group = answers.interview.groups[step.question.group]
    first = group.questions[0]
    given = step.view(answers).text(first) if first is not step.question else None
    named = f"{group.label} {step.number}"
    if not given or is_unknown(given) or named.endswith(given.casefold()):
        return named
    return f"{named}, {' '.join(given.split())}"


def called(name: str, answers: Answers) -> list[Step]:
    """Return the questions that apply now and have this address, or else this key or label."""
    wanted = " ".join(name.casefold().split())
    path = steps(answers)
    exact = [step for step in path if step.address == wanted]
    return exact or [
        step
        for step in path
        if wanted in (step.question.key, step.worded(answers).label.casefold())
    ]


def standing(step: Step, answers: Answers) -> Status:
    """Return where the question of ``step`` stands."""
    return step.view(answers).standing(step.question)


def made_unfit(before: Answers, after: Answers) -> Iterator[Step]:
    """Yield each question whose answer is sound beside ``before``, and no longer in ``after``."""
    for step in steps(after):
        if standing(step, after) is Status.FAULTY and standing(step, before) is Status.ANSWERED:
            yield step


def unfit_words(step: Step, before: Answers, after: Answers) -> str:
    """Say which answer it is that no longer fits, and why."""
    view = step.view(before)
    said = step.question.kind.echo(view[step.question], view)
    fault = step.view(after).fault(step.question)
    return view.told(f"This does not fit “{step.worded(before).label}”: {said}. {fault}")


def open_steps(answers: Answers) -> list[Step]:
    """Return the questions that apply and have no answer at all."""
    return [step for step in steps(answers) if standing(step, answers) is Status.OPEN]


@record
class Progress:
    """How far one stage is."""

    stage: Stage
    done: int
    """Questions answered or put off."""
    put_off: int
    """Questions answered with don't know yet."""
    faulty: int
    total: int
    waits: bool = False
    """Whether it waits for somebody else though all is answered: the lines are not located."""

    @property
    def word(self) -> str:
        """One of four words: not started, in progress, needs attention, done."""
        if self.faulty:
            return "needs attention"
        if not self.done:
            return "not started"
        return "done" if self.done == self.total and not self.waits else "in progress"


def progress(answers: Answers) -> list[Progress]:
    """Return how far each stage is."""
    found = []
    path = steps(answers)
    for stage in answers.interview.stages:
        kinds = [standing(step, answers) for step in path if step.stage is stage]
        found.append(
            Progress(
                stage,
                sum(1 for one in kinds if one is not Status.OPEN),
                kinds.count(Status.UNKNOWN),
                kinds.count(Status.FAULTY),
                len(kinds),
                stage.waits(answers.whole()),
            )
        )
    return found
