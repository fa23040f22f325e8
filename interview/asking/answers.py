"""The answers given to an interview, and the values read from them."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import field, replace
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from interview.asking import lands, own_fault
from interview.asking.question import Group, Question, Stage, Status, Unanswered
from interview.quantities.records import record
from interview.quantities.units import METRIC, US, Quantity
from interview.reading import Refused, is_unknown

if TYPE_CHECKING:
    from interview.asking.path import PathPage

T = TypeVar("T")

NO_CLOCK = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)
"""Stands for the clock where answers are only read back and hold full dates."""


_NAMING = ("_name", "_why", "_by")
"""How the keys of questions end whose answers are told again in sentences."""
_NAMES = "names."
"""Stands among the addresses looked at for every answer whose key ends so."""


@record(eq=False)
class Interview:
    """A whole interview in its written order, and how its answers are read."""

    stages: tuple[Stage, ...]
    units_of: Callable[[Answers], str]
    """The units in which a bare number is meant."""
    pace_of: Callable[[Answers, str], Quantity]
    """The length of one pace of somebody by name."""
    country_of: Callable[[Answers], str] = lambda _: lands.US
    """The id of the garden's country."""
    path: tuple[PathPage, ...] = ()
    """The pages in the order of asking; without any, each question in the written order."""
    optional: frozenset[str] = frozenset()
    """Keys of questions that may be skipped: they are never open, and in no list of what is."""

    @cached_property
    def questions(self) -> Mapping[str, Question[Any]]:
        """Every question by its key, in order."""
        return {q.key: q for stage in self.stages for q in stage.questions()}

    @cached_property
    def groups(self) -> Mapping[str, Group]:
        """Every repeated group by its key."""
        parts = (part for stage in self.stages for part in stage.parts)
        return {part.key: part for part in parts if isinstance(part, Group)}

    @cached_property
    def stage_of(self) -> Mapping[str, Stage]:
        """The stage of every question and group, by key."""
        named = {part.key: stage for stage in self.stages for part in stage.parts}
        return named | {q.key: stage for stage in self.stages for q in stage.questions()}

    def question_at(self, address: str) -> tuple[Question[Any], int] | None:
        """Return the question kept at ``address`` and its item number (0 outside groups)."""
        parts = address.split(".")
        question = self.questions.get(parts[-1])
        if question is None:
            return None
        if len(parts) == 1:
            return None if question.group else (question, 0)
        if len(parts) == 3 and parts[1].isdigit() and question.group == parts[0]:
            return question, int(parts[1])
        return None

    def answers(
        self, texts: Mapping[str, str] | None = None, now: dt.datetime = NO_CLOCK
    ) -> Answers:
        """Return answers to this interview holding ``texts`` by address."""
        return Answers(dict(texts or {}), self, now)


_NOTED: ContextVar[tuple[set[str], ...]] = ContextVar("noted", default=())


@contextmanager
def noting(reads: set[str]) -> Iterator[set[str]]:
    """Add to ``reads`` the address of every answer looked at within, in this thread.

    How many items a group has is noted as ``group.``, such as ``holes.``.
    """
    token = _NOTED.set((*_NOTED.get(), reads))
    try:
        yield reads
    finally:
        _NOTED.reset(token)


def _note(*addresses: str) -> None:
    for reads in _NOTED.get():
        reads.update(addresses)


def changed(before: Answers, after: Answers) -> frozenset[str]:
    """Return every address whose words differ, and ``group.`` for each group with other items."""
    one, two = before.texts, after.texts
    if one is two:
        return frozenset()
    found = {a for a in one.keys() | two.keys() if one.get(a) != two.get(a)}
    groups = {a.split(".")[0] for a in found if "." in a}
    found |= {f"{key}." for key in groups if before.numbers(key) != after.numbers(key)}
    if any(address.endswith(_NAMING) for address in found):
        found.add(_NAMES)
    return frozenset(found)


class _Kept(NamedTuple):
    """A value worked out from the words, and the addresses it was worked out from."""

    value: Any
    reads: frozenset[str]


@record
class Answers:
    """The answers so far: an unchanging map from address to the words kept.

    The address of a question is its key; inside a group, ``group.number.key`` with numbers from 1.
    Values are always worked out from the words, so nothing drifts; each is worked out once, and
    kept while none of the words it was worked out from change.
    """

    texts: Mapping[str, str]
    interview: Interview
    now: dt.datetime = NO_CLOCK
    """The instant at which words such as "today" and "10:15" are meant."""
    scope: tuple[str, int] | None = None
    """The group and number whose questions are meant."""
    _values: dict[str, _Kept] = field(default_factory=dict, repr=False, compare=False)

    def once(self, name: str, work: Callable[[], T], meanwhile: T | None = None) -> T:
        """Return what ``work`` gives, worked out once for these answers and kept by ``name``.

        The same for every scope and instant, so it may depend on neither. What asks for it while
        it is worked out gets ``meanwhile``, where that is given.
        """
        kept = self._values.get(name)
        if kept is None:
            if meanwhile is not None:
                self._values[name] = _Kept(meanwhile, frozenset())
            with noting(set()) as reads:
                value = work()
            kept = self._values[name] = _Kept(value, frozenset(reads))
        else:
            _note(*kept.reads)
        return kept.value  # type: ignore[no-any-return]

    @property
    def units(self) -> str:
        """Return the units shown: ``us`` or ``metric``."""
        # Its own question, read meanwhile, may be told in the units that are looked for.
        return self.once("units", lambda: self.interview.units_of(self), meanwhile=US)

    @property
    def today(self) -> dt.date:
        """Return the day on which words such as "yesterday" are meant."""
        return self.now.date()

    @property
    def metric(self) -> bool:
        """Tell whether metric units are shown."""
        return self.units == METRIC

    @property
    def country(self) -> str:
        """Return the id of the garden's country; the United States until another is chosen."""
        return self.once("country", lambda: self.interview.country_of(self), meanwhile=lands.US)

    def told(self, sentence: str) -> str:
        """Return a sentence in the units shown and the words of the country.

        Names and notes that the person wrote stand in it as they were written.
        """
        if lands.stands(sentence, self.country, self.metric):
            return sentence
        parts = self._names().split(sentence)
        parts[::2] = (lands.tell(part, self.country, self.metric) for part in parts[::2])
        return "".join(parts)

    def _names(self) -> re.Pattern[str]:
        """Return what finds the person's own names and notes in a sentence."""

        def found() -> re.Pattern[str]:
            _note(_NAMES)
            own = {
                text
                for address, text in self.texts.items()
                if address.endswith(_NAMING) and lands.tell(text, self.country, self.metric) != text
            }
            words = "|".join(re.escape(one) for one in sorted(own, key=len, reverse=True))
            return re.compile(rf"(?<!\w)({words or '(?!)'})(?!\w)")

        return self.once("names", found)

    def by_units(self, us: str, metric: str) -> str:
        """Return the first or the second, by the units shown."""
        return us if self.units == US else metric

    def pace(self, walker: str) -> Quantity:
        """Return the length of one pace of ``walker``; raises ``Unanswered`` or ``Refused``."""
        return self.interview.pace_of(self, walker)

    def address(self, question: Question[Any]) -> str:
        """Return where the answer to ``question`` is kept."""
        if not question.group:
            return question.key
        if self.scope is None or self.scope[0] != question.group:
            raise LookupError(f"{question.key} is asked within {question.group}")
        return f"{question.group}.{self.scope[1]}.{question.key}"

    def text_at(self, address: str) -> str | None:
        """Return the words kept at ``address``, or nothing."""
        _note(address)
        return self.texts.get(address)

    def text(self, question: Question[Any]) -> str | None:
        """Return the words kept for ``question``, or nothing."""
        return self.text_at(self.address(question))

    def standing(self, question: Question[Any]) -> Status:
        """Return where ``question`` stands, reading its words if there are any."""
        text = self.text(question)
        if text is None:
            return Status.OPEN
        if is_unknown(text):
            return Status.UNKNOWN
        return Status.FAULTY if self.fault(question) is not None else Status.ANSWERED

    def fault(self, question: Question[Any]) -> str | None:
        """Return the sentence that refuses the words kept, or nothing."""
        text = self.text(question)
        if text is None or is_unknown(text):
            return None
        try:
            self._read(question, text)
        except Refused as refused:
            return str(refused)
        except Unanswered:
            return None
        return None

    def _read(self, question: Question[T], text: str) -> T:
        def value() -> T | Refused | Unanswered:
            try:
                return question.read(text, self)
            except (Refused, Unanswered) as trouble:
                return trouble
            except Exception as fault:
                own_fault.note(f"the answer {self.address(question)}", fault)
                said = (
                    "This could not be read because of an error in the program "
                    f"({own_fault.where(fault)})."
                )
                return Refused(f"{said} Write it in another way.")

        found = self.once(f"{self.address(question)}={text}", value)
        if isinstance(found, (Refused, Unanswered)):
            raise found.with_traceback(None)
        return found

    def reads_as_written(self, question: Question[Any]) -> bool:
        """Tell whether the words kept read as they are parted; the value is kept then.

        False also where they were read before: that may have been as they part otherwise.
        """
        text = self.text(question)
        name = f"{self.address(question)}={text}"
        if text is None or name in self._values:
            return False
        try:
            self.once(name, lambda: question.read_unparted(text, self))
        except (Refused, Unanswered):
            return False
        return True

    def assumed(self, question: Question[Any]) -> str | None:
        """Return the default in use for ``question``, or nothing."""
        if self.get(question) is not None:
            return None
        return question.default(self)

    def __getitem__(self, question: Question[T]) -> T:
        """Return the value; raises ``Unanswered`` where there is neither answer nor default."""
        text = self.text(question)
        unknown = text is not None and is_unknown(text)
        if text is not None and not unknown:
            try:
                return self._read(question, text)
            except Refused:
                pass
            except Unanswered:
                # A length in paces waits for the pace; until then the default stands in.
                if question.default(self) is None:
                    raise
        default = question.default(self)
        if default is None:
            raise Unanswered(question, self.address(question), unknown)
        return self._read(question, default)

    def get(self, question: Question[T]) -> T | None:
        """Return the value given, or nothing; defaults do not count."""
        text = self.text(question)
        if text is None or is_unknown(text):
            return None
        try:
            return self._read(question, text)
        except (Refused, Unanswered):
            return None

    def waits(self, question: Question[Any]) -> bool:
        """Tell whether an answer is kept that waits for another, as paces wait for a pace."""
        text = self.text(question)
        if text is None or is_unknown(text):
            return False
        try:
            self._read(question, text)
        except Unanswered:
            return True
        except Refused:
            pass
        return False

    def at(self, group: str, number: int) -> Answers:
        """Return the same answers as seen from one item of a group."""
        return replace(self, scope=(group, number))

    def whole(self) -> Answers:
        """Return the same answers seen from outside any group."""
        return replace(self, scope=None) if self.scope else self

    def numbers(self, group: str) -> list[int]:
        """Return the numbers of the items of ``group`` that have any answer."""
        prefix = f"{group}."
        _note(prefix)
        found = {int(a.split(".")[1]) for a in self.texts if a.startswith(prefix)}
        return sorted(found)

    def items(self, group: str) -> list[Answers]:
        """Return the answers as seen from each item of ``group`` that has any."""
        return [self.at(group, number) for number in self.numbers(group)]

    def with_texts(self, texts: Mapping[str, str]) -> Answers:
        """Return answers holding ``texts`` alone; values whose words are the same are kept."""
        new = replace(self, texts=texts, _values={})
        gone = changed(self, new)
        # Another thread may be working out values of these answers just now.
        kept = {n: one for n, one in dict(self._values).items() if gone.isdisjoint(one.reads)}
        new._values.update(kept)
        return new

    def with_text(self, address: str, text: str) -> Answers:
        """Return new answers with ``text`` kept at ``address``."""
        return self.with_texts({**self.texts, address: text})

    def without(self, address: str) -> Answers:
        """Return new answers with nothing kept at ``address``."""
        return self.with_texts({a: t for a, t in self.texts.items() if a != address})

    def without_item(self, group: str, number: int) -> Answers:
        """Return new answers less one item of ``group``; those after it move up."""
        texts: dict[str, str] = {}
        for address, text in self.texts.items():
            parts = address.split(".")
            if parts[0] != group or len(parts) < 3:
                texts[address] = text
            elif int(parts[1]) != number:
                place = int(parts[1]) - (int(parts[1]) > number)
                texts[f"{group}.{place}.{parts[2]}"] = text
        return self.with_texts(texts)
