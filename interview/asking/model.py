"""Questions, repeated groups and stages as inert data, and the answers given to them."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import Enum
from typing import Any, Generic, Protocol, TypeVar

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


NO_CLOCK = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)
"""Stands for the clock where answers are only read back and hold full dates."""


def always(_: Answers) -> bool:
    """Return true: the question applies to every garden."""
    return True


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


@dataclass(frozen=True, eq=False)
class Group:
    """Questions asked once for each of several things, such as test holes."""

    key: str
    label: str
    """The name of one of them, such as ``test hole``."""
    questions: tuple[Question[Any], ...]
    another: Question[bool]
    """Asked last: is there one more?"""

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

    def questions(self) -> Iterator[Question[Any]]:
        """Yield every question once, in order."""
        for part in self.parts:
            if isinstance(part, Group):
                yield from part
            else:
                yield part


class Standing(Enum):
    """Where a question stands."""

    OPEN = "open"
    ANSWERED = "answered"
    UNKNOWN = "don't know yet"
    FAULTY = "needs attention"


_NAMING = ("_name", "_why", "_by")
"""How the keys of questions end whose answers are told again in sentences."""


@dataclass(frozen=True)
class Customs:
    """How answers are read that depend on other answers: units, a person's pace, the country."""

    units_of: Callable[[Answers], str]
    pace_of: Callable[[Answers, str], Quantity]
    country_of: Callable[[Answers], str] = lambda _: lands.US


@dataclass(frozen=True)
class Answers:
    """The answers so far: an unchanging map from address to the words kept.

    The address of a question is its key; inside a group, ``group.number.key`` with numbers from 1.
    Values are always worked out from the words, so nothing drifts.
    """

    texts: Mapping[str, str]
    customs: Customs
    now: dt.datetime = NO_CLOCK
    """The instant at which words such as "today" and "10:15" are meant."""
    scope: tuple[str, int] | None = None
    """The group and number whose questions are meant."""
    _values: dict[str, Any] = field(default_factory=dict, repr=False, compare=False)

    @property
    def units(self) -> str:
        """Return the units shown: ``us`` or ``metric``."""
        if "units" not in self._values:
            # Its own question, read meanwhile, may be told in the units that are looked for.
            self._values["units"] = US
            self._values["units"] = self.customs.units_of(self)
        return str(self._values["units"])

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
        if "country" not in self._values:
            self._values["country"] = lands.US
            self._values["country"] = self.customs.country_of(self)
        return str(self._values["country"])

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
        found: re.Pattern[str] | None = self._values.get("names")
        if found is None:
            own = {
                text
                for address, text in self.texts.items()
                if address.endswith(_NAMING) and lands.tell(text, self.country, self.metric) != text
            }
            words = "|".join(re.escape(one) for one in sorted(own, key=len, reverse=True))
            found = self._values["names"] = re.compile(rf"(?<!\w)({words or '(?!)'})(?!\w)")
        return found

    def by_units(self, us: str, metric: str) -> str:
        """Return the first or the second, by the units shown."""
        return us if self.units == US else metric

    def pace(self, walker: str) -> Quantity:
        """Return the length of one pace of ``walker``; raises ``Unanswered`` or ``Refused``."""
        return self.customs.pace_of(self, walker)

    def address(self, question: Question[Any]) -> str:
        """Return where the answer to ``question`` is kept."""
        if not question.group:
            return question.key
        if self.scope is None or self.scope[0] != question.group:
            raise LookupError(f"{question.key} is asked within {question.group}")
        return f"{question.group}.{self.scope[1]}.{question.key}"

    def text(self, question: Question[Any]) -> str | None:
        """Return the words kept for ``question``, or nothing."""
        return self.texts.get(self.address(question))

    def standing(self, question: Question[Any]) -> Standing:
        """Return where ``question`` stands, reading its words if there are any."""
        text = self.text(question)
        if text is None:
            return Standing.OPEN
        if is_unknown(text):
            return Standing.UNKNOWN
        try:
            self._read(question, text)
        except Refused:
            return Standing.FAULTY
        except Unanswered:
            return Standing.ANSWERED
        return Standing.ANSWERED

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
        key = f"{self.address(question)}={text}"
        if key not in self._values:
            try:
                self._values[key] = question.read(text, self)
            except (Refused, Unanswered) as trouble:
                self._values[key] = trouble
            except Exception as fault:
                own_fault.note(f"the answer {self.address(question)}", fault)
                said = f"Reading this met a fault of the program ({own_fault.where(fault)})."
                self._values[key] = Refused(f"{said} Write it in another way.")
        value = self._values[key]
        if isinstance(value, (Refused, Unanswered)):
            raise value.with_traceback(None)
        return value  # type: ignore[no-any-return]

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

    def once(self, name: str, work: Callable[[], T]) -> T:
        """Return what ``work`` gives, worked out once for these answers and kept by ``name``.

        The same for every scope and instant, so it may depend on neither.
        """
        if name not in self._values:
            self._values[name] = work()
        return self._values[name]  # type: ignore[no-any-return]

    def at(self, group: str, number: int) -> Answers:
        """Return the same answers as seen from one item of a group."""
        return replace(self, scope=(group, number))

    def whole(self) -> Answers:
        """Return the same answers seen from outside any group."""
        return replace(self, scope=None) if self.scope else self

    def numbers(self, group: str) -> list[int]:
        """Return the numbers of the items of ``group`` that have any answer."""
        prefix = f"{group}."
        found = {int(a.split(".")[1]) for a in self.texts if a.startswith(prefix)}
        return sorted(found)

    def items(self, group: str) -> list[Answers]:
        """Return the answers as seen from each item of ``group`` that has any."""
        return [self.at(group, number) for number in self.numbers(group)]

    def with_text(self, address: str, text: str) -> Answers:
        """Return new answers with ``text`` kept at ``address``."""
        return replace(self, texts={**self.texts, address: text}, _values={})

    def without(self, address: str) -> Answers:
        """Return new answers with nothing kept at ``address``."""
        texts = {a: t for a, t in self.texts.items() if a != address}
        return replace(self, texts=texts, _values={})

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
        return replace(self, texts=texts, _values={})


def option_ids(options: Sequence[tuple[str, str]]) -> list[str]:
    """Return the ids of a list of choices."""
    return [one for one, _ in options]
