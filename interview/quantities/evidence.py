"""Where a number comes from, and what was found about the yard."""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum
from typing import Generic, NamedTuple, TypeVar

T = TypeVar("T")


class Provenance(Enum):
    """How much stands behind a number."""

    PUBLISHED = "published"
    SECONDARY = "published, read in a second copy"
    CARRIED = "carried over, not read again"
    PRACTICE = "common practice, no source"
    OURS = "a choice of this project"
    YOURS = "as you gave it"
    ARITHMETIC = "arithmetic"
    MEMORY = "from memory, not checked"


class Source(NamedTuple):
    """A publication, a custom of the trade, or a choice of this project."""

    title: str
    """Title, publisher, year and table or page; for a custom, what it is; may be empty."""
    standing: Provenance

    def __str__(self) -> str:
        if not self.title:
            return self.standing.value
        if self.standing is Provenance.PUBLISHED:
            return self.title
        return f"{self.title} ({self.standing.value})"


class Cited(NamedTuple, Generic[T]):
    """A value together with the source that states it."""

    value: T
    source: Source


class Grade(Enum):
    """What a finding means for the plan, in rising order of trouble."""

    GOOD = "good"
    FIX = "fix"
    STOP = "stop"

    @property
    def trouble(self) -> int:
        """How much trouble it means beside the others, none first."""
        return list(Grade).index(self)


class Brief(NamedTuple):
    """A finding in the few words that are told at the moment of answering."""

    line: str
    """The verdict with its number and its limit, one short sentence."""
    stop: str = ""
    """The same of a stop where the question is not in sight."""
    way: str = ""
    """What to do about it, with its number."""
    near: bool = False
    """Whether it is good, but nearer than is cautious."""

    def told(self, tell: Callable[[str], str]) -> Brief:
        """Return the same put into other words by ``tell``."""
        return self._replace(line=tell(self.line), stop=tell(self.stop), way=tell(self.way))


class Finding(NamedTuple):
    """One thing found about the yard or the plan, and what would change it."""

    key: str
    """A short lower-case name, stable between versions, such as ``well_distance``."""
    grade: Grade
    said: str
    """What was found, one sentence."""
    limit: str
    """The limit it was held against, in words; empty where there is none."""
    source: Source
    change: str = ""
    """What would change the finding, one sentence."""
    brief: Brief | None = None
    """The same in few words; nothing where ``said`` is short enough."""

    @property
    def asks(self) -> bool:
        """Whether it asks for something to be done."""
        return self.grade is not Grade.GOOD or bool(self.change)

    @property
    def word(self) -> str:
        """The word that stands on one that asks; a good one is a note."""
        return "NOTE" if self.grade is Grade.GOOD else self.grade.value.upper()

    def told(self, tell: Callable[[str], str]) -> Finding:
        """Return the same finding with its sentences put into other words by ``tell``."""
        said, limit, change = map(tell, (self.said, self.limit, self.change))
        brief = self.brief and self.brief.told(tell)
        return self._replace(said=said, limit=limit, change=change, brief=brief)


PRACTICE = Source("", Provenance.PRACTICE)
OURS = Source("", Provenance.OURS)
ARITHMETIC = Source("", Provenance.ARITHMETIC)
MEMORY = Source("", Provenance.MEMORY)
