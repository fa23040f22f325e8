"""Long sums: done once, saying how far they are to whoever asked for them, and stopped by it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Any, Generic, NamedTuple, Self, TypeVar, overload


class HowFar(NamedTuple):
    """How far a long sum is."""

    what: str
    done: int
    of: int

    @property
    def words(self) -> str:
        """What is being done and how far it is, such as ``Reading the file: 40 %``."""
        return f"{self.what}: {100 * self.done // max(1, self.of)} %"


_WAITS: ContextVar[Callable[[], object] | None] = ContextVar("waits", default=None)


def give_way() -> None:
    """Let what is more urgent go first, where this thread does so: between two parts of a sum."""
    if (waits := _WAITS.get()) is not None:
        waits()


@contextmanager
def giving_way(waits: Callable[[], object]) -> Iterator[None]:
    """Call ``waits`` between the parts of the sums within; of this thread alone."""
    token = _WAITS.set(waits)
    try:
        yield
    finally:
        _WAITS.reset(token)


T = TypeVar("T")


class cached_property(Generic[T]):
    """A property worked out when first asked for, and kept.

    As that of ``functools``, whose lock in Python 3.11 is one for all instances: there a sum in a
    thread would hold up every other plan.
    """

    def __init__(self, work: Callable[[Any], T]) -> None:
        self._work = work
        self.__doc__ = work.__doc__

    def __set_name__(self, owner: type, name: str) -> None:
        self._name = name

    @overload
    def __get__(self, instance: None, owner: type | None = None) -> Self: ...

    @overload
    def __get__(self, instance: object, owner: type | None = None) -> T: ...

    def __get__(self, instance: object | None, owner: type | None = None) -> Self | T:
        if instance is None:
            return self
        give_way()
        kept = instance.__dict__[self._name] = self._work(instance)
        return kept


class LetGo(Exception):
    """Nobody wants the sum any more, or nobody can be told: no fault of the sum."""


Hear = Callable[[HowFar], None]
"""Is told how far a sum is; what it raises stops the sum."""

_HEARER: ContextVar[Hear | None] = ContextVar("hearer", default=None)


@contextmanager
def heard_by(hear: Hear) -> Iterator[None]:
    """Tell ``hear`` how far the long sums within are; of this thread alone."""
    token = _HEARER.set(hear)
    try:
        yield
    finally:
        _HEARER.reset(token)


def telling(what: str) -> Callable[[int, int], None]:
    """Return what a sum calls with how much is done, of how much."""

    def tell(done: int, of: int) -> None:
        give_way()
        hear = _HEARER.get()
        if hear is not None:
            hear(HowFar(what, done, of))

    return tell
