"""One sitting of an interview about anything: answers are offered, kept and saved."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from typing import NamedTuple

from interview.asking import own_fault, path, route
from interview.asking.answers import Answers
from interview.asking.keeping import Keeper, NotKept
from interview.asking.kinds import nothing_given
from interview.asking.path import Place
from interview.asking.question import UNKNOWN_TEXT, Status, Unanswered
from interview.asking.route import Heard, Step, heard_at
from interview.asking.walk import LOOKED_AT, UNFINISHED, Walk
from interview.reading import Refused

MOST_PUT_OFF = 5
"""So many answers still to be found out are listed at once; a choice of ours."""
SAME_AGAIN = "Give the same answer again to keep it."


class Doubt(Exception):
    """The value is possible but unlikely; offering it again keeps it."""


class _Supposed(NamedTuple):
    """Answers with words supposed at a place: they are asked for many times at one key."""

    of: Answers
    words: tuple[object, ...]
    answers: Answers


class Sitting(Walk):
    """The answers, the place reached, and what keeps them.

    What a subject has to say of a question (that it is shut, what may be taken for its answer,
    that an answer is unlikely or changes another) it says by the methods named for it.
    """

    def __init__(
        self,
        answers: Answers,
        keeper: Keeper,
        now: Callable[[], dt.datetime],
        stopped_at: str = "",
        drafts: dict[str, str] | None = None,
        taken: list[str] | None = None,
    ) -> None:
        super().__init__(answers, now, stopped_at, drafts, taken)
        self._keeper = keeper
        self._doubted: dict[str, str] = {}
        self._stopped_at = stopped_at
        """The place that was kept last."""
        address = self.step.address if self.step else ""
        self._unfinished = address if address and stopped_at == address + UNFINISHED else ""
        self.alarm = ""
        """What must be said at once after the last answer; mostly empty."""
        self._supposed: _Supposed | None = None
        self._changed_from: Answers | None = None
        """The answers before the last one given, where that changed another."""
        self.at_fault = ""
        """The address of the box that was last refused or doubted."""
        self.not_kept = ""
        """Why the last save failed; empty while everything is saved."""
        self.note = ""
        """What is to be told of a save that worked; mostly empty."""

    # What the subject says

    def offered(self, step: Step, words: Mapping[str, str] | None = None) -> str | None:
        """Return the words an empty answer stands for, with ``words`` given to this place."""
        return step.question.default(step.view(self.supposing(words)))

    def _doubt(self, step: Step, value: object) -> str:
        """Return why the subject finds an answer unlikely, or nothing."""
        return ""

    def _too_rough(self, step: Step, value: object, view: Answers) -> str:
        """Return why a guess, given beside ``view``, will not do as it stands, or nothing."""
        return ""

    def _alarm(self, step: Step) -> str:
        """Return what must be said at once after the answer to ``step``, or nothing."""
        return ""

    def _followed(self, answers: Answers) -> Answers:
        """Return ``answers``, just changed, with what the change brings about in others."""
        return answers

    def _change(self, before: Answers) -> str:
        """Return what the answers changed since ``before`` did, or nothing."""
        return ""

    # Pages

    def boxes(self, words: Mapping[str, str] | None = None) -> list[Step]:
        """Return the questions to put at this place, if ``words`` by address were its answers.

        Words that cannot be read open nothing.
        """
        place = self.place
        return self._boxes(place, self.supposing(words)) if place else []

    def _boxes(self, place: Place, answers: Answers) -> list[Step]:
        return place.steps((*place.page.asked, *self.needs(place, answers)), answers)

    def supposing(self, words: Mapping[str, str] | None = None) -> Answers:
        """Return the answers as they would be with ``words`` by address kept at this place."""
        place, answers = self.place, self._answers
        if not words or place is None:
            return answers
        minute = self.now.replace(second=0, microsecond=0)
        of, said, last = answers, (place, minute, *words.items()), self._supposed
        if last is not None and last.of is of and last.words == said:
            return last.answers
        for address, text in words.items():
            asked = place.steps(place.page.keys, answers)
            step = next((one for one in asked if one.address == address), None)
            if step is not None and text.strip():
                with suppress(Refused):
                    kept = heard_at(step, text, replace(answers, now=self.now)).kept
                    answers = answers.with_text(address, kept)
        self._supposed = _Supposed(of, said, answers)
        return answers

    def rows(self) -> list[Step]:
        """Return the rows of usual values of this place."""
        return self.way.rows(self.place) if self.place else []

    def more(self) -> list[Step]:
        """Return the further rows of this place."""
        return self.way.more(self.place) if self.place else []

    def fresh(self) -> list[Step]:
        """Return the rows that are new since this place was taken whole."""
        return self.way.fresh(self.place) if self.place else []

    def take(self, words: Mapping[str, str] | None = None) -> list[Heard]:
        """Keep ``words`` by address for this place, all or none, take its rows whole, save once.

        A box without words keeps its answer, or takes what is offered; one that may be skipped
        is put off. A row without words keeps its usual value, unstored; what is only offered is
        stored. Raises ``Refused`` and ``Doubt`` as ``offer`` does; ``at_fault`` is the box.
        """
        place, given = self.place, dict(words or {})
        self.at_fault = ""
        if place is None:
            return []
        before, answers, heard = self._answers, self._answers, list[Heard]()
        put = {one.address for one in place.steps(place.page.keys, answers)}
        needed = self.needs(place, answers)
        half = False
        # A box may open the next one, as the shape of a hole its length.
        for address in place.addresses(place.page.keys, answers.interview):
            asked = place.steps(place.page.keys, answers)
            step = next((one for one in asked if one.address == address), None)
            if step is None:
                continue
            text = given.get(address, "").strip()
            if not text and not self._lacks(step, place, answers):
                continue
            shown = [one for one in self.needs(place, answers) if one not in needed]
            words = {one.step.address: one.kept for one in heard}
            new = address not in put or step.question.key in shown
            if not text and new and self.offered(step, words) is None:
                half = True
                continue
            self.at_fault = step.address
            if reasons := self.shut(step):
                raise Refused(reasons[0])
            text = text or self._stands_for_nothing(step, words)
            beside = replace(answers, now=self.now)
            one = heard_at(step, text, beside)
            self._weigh(one, step.view(beside))
            answers = answers.with_text(step.address, one.kept)
            heard.append(one)
        supposed = self.supposing(given)
        if supposed.texts == answers.texts:
            answers = supposed  # what follows from them is worked out already
        self._weigh_others(heard, answers)
        self.at_fault, self._half = "", half
        self._doubted.clear()
        if place.page.usual and not half:
            self.taken[:] = [n for n in self.taken if n.split(path.BUT)[0] != place.name]
            self.taken.append(place.name)
        if any(one.step.address == self._unfinished for one in heard):
            self._unfinished = ""
        # Taken, it is half typed no more: what is saved now must not offer it again.
        for box in [*self._boxes(place, answers), *(one.step for one in heard)]:
            self.drafts.pop(box.address, None)
        self._keep(answers)
        self.alarm = " ".join(said for one in heard if (said := self._alarm(one.step)))
        self._note_change(before)
        return heard

    def _lacks(self, step: Step, place: Place, answers: Answers) -> bool:
        """Tell whether an empty Enter has to find words for ``step``."""
        if step.view(answers).standing(step.question) is not Status.OPEN:
            return False
        if step.question.key in (*place.page.asked, *self.needs(place, answers)):
            return True
        if not place.page.usual or step.question.default(step.view(answers)) is not None:
            return False
        optional = answers.interview.optional
        return step.question.key not in optional or self.offered(step) is not None

    def _stands_for_nothing(self, step: Step, words: Mapping[str, str]) -> str:
        """Return what an empty box stands for beside ``words``; raises ``Refused``."""
        if (offered := self.offered(step, words)) is not None:
            return offered
        if step.question.key in self._answers.interview.optional:
            return UNKNOWN_TEXT
        raise Refused(nothing_given(step.question.kind))

    def _note_change(self, before: Answers) -> None:
        after = self._answers.texts
        other = any(after.get(one) != text for one, text in before.texts.items())
        self._changed_from = before if other else None

    @property
    def changed(self) -> str:
        """What the last change of an answer did; empty where it did nothing, or none was.

        It is worked out when it is asked for, which may be in a thread.
        """
        return self._change(self._changed_from) if self._changed_from is not None else ""

    def put_off_list(self) -> list[Step]:
        """Return what is still to be found out, the first few in the order of the path."""
        return self.way.put_off()[:MOST_PUT_OFF]

    # Answers

    def keep_with(self, keeper: Keeper) -> None:
        """Keep the answers with ``keeper`` from now on."""
        self._keeper = keeper

    def read(self, step: Step, text: str, words: Mapping[str, str] | None = None) -> Heard:
        """Return how ``text`` would be understood, keeping nothing; raises ``Refused``.

        It is read beside the answers, and beside ``words`` given to this place and not kept.
        """
        return heard_at(step, text, replace(self.supposing(words), now=self.now))

    def offer(self, step: Step, text: str) -> Heard:
        """Keep ``text`` as the answer to ``step`` and save.

        Raises ``Refused`` where it cannot be, ``Doubt`` where it is unlikely and was not offered
        twice. An empty text takes the default. A failed save is told by ``not_kept``.
        """
        if reasons := self.shut(step):
            raise Refused(reasons[0])
        view = step.view(self.answers)
        text = text if text.strip() else self.offered(step) or ""
        if not text:
            raise Refused(nothing_given(step.question.kind))
        heard = self.read(step, text)
        self._weigh(heard, view)
        before = self._answers
        answers = before.with_text(step.address, heard.kept)
        self._weigh_others([heard], answers)
        self._doubted.clear()
        if self._unfinished == step.address:
            self._unfinished = ""
        self._keep(answers)
        self.alarm = self._alarm(step)
        self._note_change(before)
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
            kept[address] = heard_at(step, text, answers).kept
            answers = answers.with_text(address, kept[address])
        self._keep(self._answers.with_texts({**self._answers.texts, **kept}))

    def _weigh(self, heard: Heard, view: Answers) -> None:
        """Raise ``Doubt`` where what was heard is unlikely beside ``view``."""
        step, taken = heard.step, heard.taken
        if taken is None or isinstance(value := taken.found, Unanswered):
            return
        if doubt := step.question.doubt(value, view) or self._doubt(step, value):
            doubt = f"{view.told(doubt)} {SAME_AGAIN}"
        elif taken.rough:
            doubt = self._too_rough(step, value, view)
        if doubt and self._doubted.get(step.address) != taken.kept:
            self._doubted[step.address] = taken.kept
            raise Doubt(doubt)

    def _weigh_others(self, heard: Sequence[Heard], answers: Answers) -> None:
        """Raise ``Doubt`` where an answer given before would not hold beside ``answers``."""
        given, kept = {one.step.address: one.kept for one in heard}, self._answers
        others = [one for one in route.made_unfit(kept, answers) if one.address not in given]
        # What a change brings about in others may take such an answer away.
        if not others or not any(route.made_unfit(kept, self._followed(answers))):
            return
        if self._doubted.get(others[0].address) != str(given):
            self._doubted[others[0].address] = str(given)
            self.at_fault = next(one for one in given if given[one] != kept.texts.get(one))
            why = route.unfit_words(others[0], kept, answers)
            raise Doubt(f"{why} {SAME_AGAIN}")

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
        self.taken[:] = path.without_item(self.taken, group, number, self._answers.interview)
        self._keep(route.without_item(self._answers, group, number), follow=False)
        self._back_to = self._left = self._came_from = ""
        self._place = None
        self.step = self._first_open(path.steps(self._answers)) or self.step

    def _keep(self, answers: Answers, follow: bool = True) -> None:
        before = self._answers
        self._answers = self._followed(answers) if follow else answers
        self._anew = frozenset(one for one in answers.texts if one not in self._answers.texts)
        self.taken[:] = path.with_new_rows(before, self._answers, self.taken)
        self.save()

    def keep_place(self) -> None:
        """Save where the person is, where coming back would lead to another question."""
        found = self._resume(self._stopped_at)
        if self.step and found and found.address != self.step.address:
            self.save(LOOKED_AT)

    def save(self, why_here: str = "") -> bool:
        """Save now; tell whether it worked and note in ``not_kept`` why not."""
        place = self.step.address if self.step else ""
        if self._place is not None:
            place = self._place.name
        elif place:
            place += UNFINISHED if place == self._unfinished else why_here
        self._stopped_at = place
        try:
            self._keeper.keep(self._answers, place)
        except NotKept as trouble:
            self.not_kept = str(trouble)
            return False
        except Exception as trouble:
            own_fault.note("saving", trouble)
            self.not_kept = f"There was an error in the program ({own_fault.where(trouble)})."
            return False
        self.not_kept = ""
        self.note = str(getattr(self._keeper, "note", ""))
        return True
