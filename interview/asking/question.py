"""Questions, repeated groups and stages of an interview, as inert data."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import replace
from enum import Enum
from typing import (
    TYPE_CHECKING,
    Any,
    Generic,
    NamedTuple,
    Protocol,
    Required,
    TypedDict,
    TypeVar,
    Unpack,
)

from interview.quantities.records import record
from interview.reading import Refused, is_usual

if TYPE_CHECKING:
    from interview.asking.answers import Answers

T = TypeVar("T")

UNKNOWN_TEXT = "don't know yet"
"""What the file holds for a question that was put off."""


class Taken(NamedTuple, Generic[T]):
    """What a text was read as."""

    kept: str
    """The words to keep: as typed, with units and dates made explicit."""
    found: T | Unanswered
    """The value; or what it waits for, as paces wait for a pace."""
    rough: bool = False
    """Whether it was said to be a guess."""
    said: str = ""
    """How it was understood, where that tells more than the value does."""
    asks_back: str = ""
    """What is asked of who types this; in a file it has had its meaning since version 0.1."""

    @property
    def value(self) -> T:
        """The value; raises ``Unanswered`` where it waits for another answer."""
        if isinstance(self.found, Unanswered):
            raise self.found.with_traceback(None)
        return self.found


class Kind(Protocol[T]):
    """How the text of an answer becomes a value, and how the value is said back."""

    def take(self, text: str, answers: Answers) -> Taken[T]:
        """Return the words to keep and the value, reading ``text`` once.

        Raises ``Refused`` with one sentence, and ``Unanswered`` where another answer is needed to
        tell what to keep.
        """

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

    @property
    def has_usual(self) -> bool:
        """Tell whether "the usual" is an answer: never where a fact is asked for by yes or no."""

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


_COMMA = r",\s|[;\n]"
"""What parts a list. A comma without a space may be a decimal one."""
_BEFORE_WORD = r", (?=[^\W\d])"


def _parted_ways(text: str) -> Iterator[str]:
    """Yield a list with an item a line by every comma, by those before a word, by each third.

    There are commas within an item too, at which a list in brackets is cut.
    """
    cut = [one.strip() for one in re.split(_COMMA, text) if one.strip()]
    yield "\n".join(cut)
    yield re.sub(_BEFORE_WORD, "\n", ", ".join(cut))
    yield "\n".join(", ".join(cut[place : place + 3]) for place in range(0, len(cut), 3))


_SENTENCES = ("label", "text", "why", "find_out", "caution", "more")
"""Fields of a question that are told in the words and units of the garden."""


@record(eq=False)
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
    """Whether an answer holds though it is not asked: the program may write it where the others
    tell, or it was asked at its own time."""
    more: str = ""
    """Longer help: tables and reading for the practised."""
    picture: str = ""
    """A small drawing of plain characters, shown with how to find out."""
    wording: Callable[[Answers], Mapping[str, Any]] = as_written
    """Fields of this question that are worded otherwise beside the answers so far."""

    def caution_in(self, answers: Answers) -> str:
        """Return every safety sentence to show with the question; may be nothing."""
        return answers.told(f"{self.warns(answers)} {self.caution}".strip())

    def take(self, text: str, answers: Answers) -> Taken[T]:
        """Return the words to keep and the value: the one way in, typed, loaded or piped.

        Commas part the items of a list that is refused without. Raises ``Refused`` and
        ``Unanswered`` as the kind does.
        """
        try:
            return self._fitting(text, answers)
        except (Refused, Unanswered):
            parted = self.parted(text, answers)
            if parted == text:
                raise
        return self._fitting(parted, answers)

    def read_unparted(self, text: str, answers: Answers) -> T:
        """Return the value of ``text`` as it is parted; raises ``Refused`` and ``Unanswered``."""
        return self._fitting(text, answers).value

    def parted(self, text: str, answers: Answers) -> str:
        """Return a list with an item a line, where it reads so and not as it is written.

        Returns ``text`` where nothing else reads, and where the answer is no list.
        """
        if self.kind.many and ("," in text or "\n" in text):
            for one in (text, *_parted_ways(text)):
                with suppress(Refused, Unanswered):
                    self._fitting(one, answers)
                    return one
        return text

    def _fitting(self, text: str, answers: Answers) -> Taken[T]:
        """Return what ``text`` is read as, once it is held against the other answers."""
        try:
            taken = self._taken(text, answers)
        except Refused as refused:
            raise retold(refused, answers) from refused.__cause__
        if isinstance(taken.found, Unanswered):
            return taken
        try:
            complaint = self.objection(taken.found, answers)
        except Unanswered as gap:
            return taken._replace(found=gap)
        if complaint:
            raise Refused(answers.told(complaint))
        return taken

    def _taken(self, text: str, answers: Answers) -> Taken[T]:
        """Let the kind read ``text``; "the usual" is the default, where there is one."""
        try:
            return self.kind.take(text, answers)
        except Refused:
            usual = self.default(answers) if self.kind.has_usual and is_usual(text) else None
            if usual is None:
                raise
        return self.kind.take(usual, answers)

    def read(self, text: str, answers: Answers) -> T:
        """Return the value of ``text``; raises ``Refused`` and ``Unanswered``."""
        return self.take(text, answers).value

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


@record(eq=False)
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


@record(eq=False)
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


@record(eq=False)
class Stage:
    """One part of the interview, in its written order."""

    key: str
    letter: str
    title: str
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
