"""The page that is held on plain lines: what was given on it so far, and what is put next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Any, NamedTuple

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.kinds import InSteps
from interview.asking.path import Place
from interview.asking.question import Kind, Status
from interview.asking.route import Step
from interview.asking.way import Standing
from interview.garden.session import Session
from interview.quantities.records import record
from interview.reading import Refused


class NumberedWay(NamedTuple):
    """One numbered way on."""

    label: str
    target: str = ""
    """What ``verdicts`` or the gate name: an address, or a word of ``verdict_rows``."""
    takes: Mapping[str, str] | None = None
    """The answers that are kept for it, by address."""


@record(frozen=False)
class Turn:
    """A page from the moment it is reached until it is left."""

    place: Place
    before: Answers
    """The answers as they were then."""
    alone: str = ""
    """The address of the one question that is put here, where that was asked for by its name."""
    words: dict[str, str] = field(default_factory=dict)
    """What was given to the boxes and is not kept yet, by address."""
    past: set[str] = field(default_factory=set)
    """The addresses of boxes that were left as they are, or whose answer was kept at once."""
    row: Step | None = None
    """The row that is being changed."""
    more: bool = False
    """Whether the rows behind the last one are shown."""
    ways: tuple[NumberedWay, ...] = ()
    """The numbered ways that are offered."""
    about: Step | None = None
    """The question whose verdict offers them."""
    taken: bool = False
    """Whether the page was kept, its rows taken whole."""
    headed: bool = False
    """Whether it was set off from the page before."""
    cautioned: set[str] = field(default_factory=set)
    """The cautions that were said on it."""
    echo: str = ""
    """How the last answer was understood, to be said with what it means."""
    told: bool = False
    """Whether what the page tells was said."""
    said: str = ""
    """The name of what was read out last."""
    begun: bool = False
    """Whether a line was added to the list that is put."""
    meant: str = ""
    """What "yes" stands for, after "Did you mean"."""
    half: str = ""
    """The first of the two choices that an answer is made of, once it was made."""

    @property
    def at_once(self) -> bool:
        """Whether each answer is kept by itself: at the timer, and where one alone is put."""
        return bool(self.alone) or self.place.page.tells == "timer"

    def again(self) -> None:
        """Have what is put now read out again."""
        self.said, self.begun = "", False

    def whole(self, kind: Kind[Any], text: str) -> str | None:
        """Return the words of an answer; nothing where more is asked, or the first half again."""
        if not isinstance(kind, InSteps):
            return text
        begun, self.half = self.half, ""
        if begun and not text.strip():
            self.again()
            return None
        try:
            words, is_half = kind.at_step(text, begun)
        except Refused:
            self.half = begun
            raise
        if is_half:
            self.half = words
            self.again()
        return None if is_half else words

    def question(self, session: Session) -> Step | None:
        """Return the question put now; nothing where rows, ways or something told is put."""
        if self.ways:
            return None
        if self.row is not None:
            return self.row
        if self.alone:
            one = route.step_at(self.alone, session.answers)
            return one if self.alone not in self.past and one else None
        done = self.past | self.words.keys()
        return next((one for one in self.boxes(session) if one.address not in done), None)

    def boxes(self, session: Session) -> list[Step]:
        """Return what is put one by one: the boxes, and rows for which there is no usual value."""
        put = session.boxes(self.words)
        if not self.place.page.usual or self.alone:
            return put
        optional = session.answers.interview.optional
        supposed = session.supposing(self.words)
        rows = self.place.steps(self.place.page.usual + self.place.page.more, supposed)
        return put + [
            one
            for one in rows
            if one.question.key not in optional
            and one.view(supposed).standing(one.question) in (Status.OPEN, Status.FAULTY)
            and self.usual(session, one) is None
        ]

    def usual(self, session: Session, step: Step) -> str | None:
        """Return the words a row has now: its answer, or what is usual beside those given."""
        kept = step.view(session.supposing(self.words)).text(step.question)
        return kept if kept is not None else session.offered(step, self.words)

    def rows(self, session: Session) -> list[Step]:
        """Return the rows shown: the new ones of a page that was taken, or all but those behind."""
        if self.alone:
            return []
        if fresh := session.fresh():
            return fresh
        page = self.place.page
        keys = page.usual + (page.more if self.more else ())
        put = [one.address for one in self.boxes(session)]
        steps = self.place.steps(keys, session.supposing(self.words))
        return [one for one in steps if one.address not in put]

    def behind(self, session: Session) -> int:
        """Return how many rows are not shown."""
        if self.more or self.alone or session.fresh():
            return 0
        put = [one.address for one in self.boxes(session)]
        more = self.place.steps(self.place.page.more, session.supposing(self.words))
        return sum(1 for one in more if one.address not in put)

    def shut(self, session: Session) -> Step | None:
        """Return the question that is shut here, where that shuts the page."""
        step = self.question(session)
        if step is not None and self.alone:
            return step if session.shut(step) else None
        if session.way.standing(self.place) is not Standing.SHUT:
            return None
        put = [*self.boxes(session), *session.rows(), *session.more()]
        return next((one for one in put if session.shut(one)), None)


def turn_at(session: Session, place: Place, named: str = "") -> Turn:
    """Return the page reached; ``named`` is the address that was asked for by its name.

    A row asked for is put alone, and the timer begins at what was asked for: what stands before it
    was noted long since.
    """
    step = session.step
    turn = Turn(place, session.answers)
    if not named or step is None or step.address != named:
        return turn
    if step.question.key in place.page.usual + place.page.more:
        turn.alone = named
    elif place.page.tells == "timer":
        put = [one.address for one in session.way.boxes(place)]
        turn.past = set(put[: put.index(named)])
    return turn
