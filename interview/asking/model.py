"""Questions, repeated groups and stages as inert data, and the answers given to them."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field, replace
from enum import Enum
from functools import cached_property
from typing import Any, Generic, Protocol, Required, TypedDict, TypeVar, Unpack

from interview.asking import lands, own_fault
from interview.quantities.units import METRIC, US, Quantity
from interview.reading import Refused, is_unknown

T = TypeVar("T")

UNKNOWN_TEXT = "don't know yet"
"""What the file holds for a question that was put off."""


class Kind(Protocol[T]):
    """How the text of an answer becomes a value, and how the value is said back."""

    def read(self, text: str, answers: Answers) -> T:
        """Return the value of ``text``; raises ``Refused`` with one sentence."""

    def settle(self, text: str, answers: Answers) -> str:
        """Return the text to keep: as typed, with units and dates made explicit."""

    def echo(self, value: T, answers: Answers) -> str:
        """Return how the value was understood."""

    def hint(self, units: str) -> str:
        """Return one short line on how to write an answer."""

    def limits(self, units: str) -> str:
        """Return the hard limits in words, or nothing."""

    @property
    def name(self) -> str:
        """Return the plain name of this kind of answer."""

    @property
    def many(self) -> bool:
        """Tell whether the answer is a list with one line an item."""

    def worded(self, answers: Answers) -> Kind[T]:
        """Return the same kind in the words and units that fit the answers."""


class Unanswered(Exception):
    """A value was needed whose question has no answer yet."""

    def __init__(
        self, question: Question[Any], address: str, unknown: bool = False, why: str = ""
    ) -> None:
        super().__init__(address)
        self.question = question
        self.address = address
        self.unknown = unknown
        """True when the person said they do not know yet."""
        self.why = why
        """What is wrong with the answers there are, where that is the reason."""

    def said(self, answers: Answers) -> str:
        """Say what is waited for, in the words of the garden's country."""
        return answers.told(self.why or self.question.label)


@contextmanager
def waits_for(question: Question[Any], answers: Answers) -> Iterator[None]:
    """Turn a calculation's refusal into waiting for a better answer to ``question``."""
    try:
        yield
    except ValueError as wrong:
        raise Unanswered(question, answers.address(question), why=str(wrong)) from None


NO_CLOCK = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)
"""Stands for the clock where answers are only read back and hold full dates."""


def always(_: Answers) -> bool:
    """Return true: the question applies to every garden."""
    return True


def never(_: Answers) -> bool:
    """Return false: nobody else is waited for."""
    return False


def no_objection(_value: Any, _answers: Answers) -> str | None:
    """Return nothing: every value within the limits is possible and likely."""
    return None


def no_warning(_: Answers) -> str:
    """Return nothing: no caution hangs on the other answers."""
    return ""


def as_written(_: Answers) -> Mapping[str, Any]:
    """Return nothing: the question is worded alike for every garden."""
    return {}


def no_default(_: Answers) -> str | None:
    """Return nothing: there is no honest default."""
    return None


_SENTENCES = ("label", "text", "why", "find_out", "caution", "more")
"""Fields of a question that are told in the words and units of the garden."""


@dataclass(frozen=True, eq=False)
class Question(Generic[T]):
    """One question: what is asked, why, how to find out, and what an answer may be."""

    key: str
    """The name in the answers file; never changes once released."""
    label: str
    """The name in the plan and in the list of answers."""
    text: str
    """The question as asked."""
    kind: Kind[T]
    why: str
    find_out: str
    group: str = ""
    """The key of the repeated group this belongs to, or nothing."""
    asks: Callable[[Answers], bool] = always
    """Whether the question applies; looks only at earlier questions."""
    when: str = "always"
    """The condition of ``asks`` in words."""
    objection: Callable[[T, Answers], str | None] = no_objection
    """A sentence where the value is impossible beside the other answers."""
    doubt: Callable[[T, Answers], str | None] = no_objection
    """A sentence where the value is unlikely; offering it again keeps it."""
    default: Callable[[Answers], str | None] = no_default
    """The text used until there is an answer, where a default is honest."""
    caution: str = ""
    """The safety sentence shown with the question."""
    warns: Callable[[Answers], str] = no_warning
    """A safety sentence that hangs on other answers, such as the rule of the state."""
    digs: bool = False
    """Whether answering needs ground to be broken."""
    noted: bool = False
    """Whether the program writes it where the other answers tell: it then holds though it is not
    asked."""
    more: str = ""
    """Longer help: tables and reading for the practised."""
    picture: str = ""
    """A small drawing of plain characters, shown with how to find out."""
    wording: Callable[[Answers], Mapping[str, Any]] = as_written
    """Fields of this question that are worded otherwise beside the answers so far."""

    def caution_in(self, answers: Answers) -> str:
        """Return every safety sentence to show with the question; may be nothing."""
        return answers.told(f"{self.warns(answers)} {self.caution}".strip())

    def read(self, text: str, answers: Answers) -> T:
        """Return the value of ``text``: the one way in, typed, loaded or piped."""
        try:
            value = self.kind.read(text, answers)
        except Refused as refused:
            raise retold(refused, answers) from None
        if complaint := self.objection(value, answers):
            raise Refused(answers.told(complaint))
        return value

    def worded(self, answers: Answers) -> Question[T]:
        """Return the question in the words that fit the answers so far."""
        words = self.wording(answers)
        return (replace(self, **words) if words else self).told(answers)

    def told(self, answers: Answers) -> Question[T]:
        """Return the question in the units shown and the words of the country."""
        said: dict[str, Any] = {name: answers.told(getattr(self, name)) for name in _SENTENCES}
        said["kind"] = self.kind.worded(answers)
        changed = {name: told for name, told in said.items() if told != getattr(self, name)}
        return replace(self, **changed) if changed else self


def retold(refused: Refused, answers: Answers) -> Refused:
    """Put a refusal into the units shown and the words of the country, and return it."""
    refused.said = answers.told(refused.said)
    refused.args = (refused.said,)
    return refused


class Own(TypedDict, Generic[T], total=False):
    """What a question of a group says for itself: the fields of ``Question`` but the group."""

    key: Required[str]
    label: Required[str]
    text: Required[str]
    kind: Required[Kind[T]]
    why: Required[str]
    find_out: Required[str]
    asks: Callable[[Answers], bool]
    when: str
    objection: Callable[[T, Answers], str | None]
    doubt: Callable[[T, Answers], str | None]
    default: Callable[[Answers], str | None]
    caution: str
    warns: Callable[[Answers], str]
    digs: bool
    noted: bool
    more: str
    picture: str
    wording: Callable[[Answers], Mapping[str, Any]]


@dataclass(frozen=True, eq=False)
class Member:
    """One of the several things a group asks about, and what all questions about it share."""

    key: str
    """The key of the group."""
    label: str
    """The name of one of them, such as ``test hole``."""
    asks: Callable[[Answers], bool] = always
    """Whether anything is asked about them; looks only at questions before the group."""
    when: str = "always"
    """The condition of ``asks`` in words."""
    digs: bool = False
    """Whether answering needs ground to be broken, unless a question says otherwise."""

    def question(self, **own: Unpack[Own[T]]) -> Question[T]:
        """Return a question about each of them; a condition of its own comes on top of ``asks``."""
        shared, only = self.asks, own.get("asks")
        own["asks"] = shared if only is None else lambda a: shared(a) and only(a)
        own.setdefault("when", self.when)
        own.setdefault("digs", self.digs)
        return Question(group=self.key, **own)


@dataclass(frozen=True, eq=False)
class Group:
    """Questions asked once for each of several things, such as test holes."""

    member: Member
    questions: tuple[Question[Any], ...]
    another: Question[bool]
    """Asked last: is there one more?"""
    chosen: str = ""
    """The key of a question outside, whose answer is the number of one of them."""

    @property
    def key(self) -> str:
        """Return the name in the answers file; never changes once released."""
        return self.member.key

    @property
    def label(self) -> str:
        """Return the name of one of them, such as ``test hole``."""
        return self.member.label

    def __iter__(self) -> Iterator[Question[Any]]:
        yield from self.questions
        yield self.another


@dataclass(frozen=True, eq=False)
class Stage:
    """One part of the interview, in its written order."""

    key: str
    letter: str
    title: str
    intro: str
    parts: tuple[Question[Any] | Group, ...]
    waits: Callable[[Answers], bool] = never
    """Whether it waits for somebody else though all is answered."""

    def questions(self) -> Iterator[Question[Any]]:
        """Yield every question once, in order."""
        for part in self.parts:
            if isinstance(part, Group):
                yield from part
            else:
                yield part


class Status(Enum):
    """Where a question stands."""

    OPEN = "open"
    ANSWERED = "answered"
    UNKNOWN = "don't know yet"
    FAULTY = "needs attention"


_NAMING = ("_name", "_why", "_by")
"""How the keys of questions end whose answers are told again in sentences."""
_NAMES = "names."
"""Stands among the addresses looked at for every answer whose key ends so."""


@dataclass(frozen=True, eq=False)
class Interview:
    """A whole interview in its written order, and how its answers are read."""

    stages: tuple[Stage, ...]
    units_of: Callable[[Answers], str]
    """The units in which a bare number is meant."""
    pace_of: Callable[[Answers, str], Quantity]
    """The length of one pace of somebody by name."""
    country_of: Callable[[Answers], str] = lambda _: lands.US
    """The id of the garden's country."""

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

    @cached_property
    def order(self) -> Mapping[str, int]:
        """The place of every question in the written order."""
        return {key: place for place, key in enumerate(self.questions)}

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


@dataclass(frozen=True)
class _Kept:
    """A value worked out from the words, and the addresses it was worked out from."""

    value: Any
    reads: frozenset[str]


@dataclass(frozen=True)
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
        if not self.metric and self.country == lands.US:
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
                said = f"Reading this met a fault of the program ({own_fault.where(fault)})."
                return Refused(f"{said} Write it in another way.")

        found = self.once(f"{self.address(question)}={text}", value)
        if isinstance(found, (Refused, Unanswered)):
            raise found.with_traceback(None)
        return found

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


def option_ids(options: Sequence[tuple[str, str]]) -> list[str]:
    """Return the ids of a list of choices."""
    return [one for one, _ in options]
