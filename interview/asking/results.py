"""Results worked out part by part when first asked for, and taken over while nothing changed."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import field, fields
from typing import Any, TypeVar

from interview.asking.answers import Answers, noting
from interview.asking.long_work import cached_property
from interview.asking.question import Unanswered
from interview.quantities.records import record

T = TypeVar("T")


@record(eq=False)
class Results:
    """What follows from answers and from the records before it; its fields say which.

    Each part notes the answers it looks at. The record of other answers takes the parts over
    where none of those changed and every record it is made from was itself taken over.
    """

    answers: Answers
    reads: set[str] = field(default_factory=set, kw_only=True, compare=False, repr=False)
    """Addresses of the answers looked at so far."""
    gaps: dict[str, Unanswered] = field(
        default_factory=dict, kw_only=True, compare=False, repr=False
    )
    """What parts wait for, by name."""

    def holds_beside(self, new: Results, gone: Collection[str], taken: Collection[str]) -> bool:
        """Tell whether what was worked out holds for ``new``, a record of other answers.

        ``gone`` are the addresses whose words changed, ``taken`` the names of the earlier records
        that were taken over.
        """
        if not self.reads.isdisjoint(gone):
            return False
        for one in fields(self):
            if not one.compare or one.name == "answers":
                continue
            mine = getattr(self, one.name)
            if isinstance(mine, Results):
                if one.name not in taken:
                    return False
            elif mine != getattr(new, one.name):
                return False
        return True

    def take_over(self, old: Results, gone: Collection[str], taken: Collection[str]) -> bool:
        """Keep what ``old`` has worked out, where it holds here too; tell whether it does."""
        own = {one.name: one for one in fields(self)}
        # The values first: a part still being worked out in a thread has then noted its reads.
        parts = {name: kept for name, kept in dict(old.__dict__).items() if name not in own}
        memory = {
            name: dict(kept)
            for name, one in own.items()
            if not one.compare and isinstance(kept := getattr(old, name), dict)
        }
        if not old.holds_beside(self, gone, taken):
            return False
        self.__dict__.update(parts)
        for name, kept in memory.items():
            getattr(self, name).update(kept)
        self.reads.update(set(old.reads))
        return True


class part(cached_property[T]):
    """A part of a record: worked out when first asked for, noting the answers it looks at.

    A part that waits for an answer raises the same ``Unanswered`` each time.
    """

    def __init__(self, work: Callable[[Any], T]) -> None:
        def noted(record: Results) -> T:
            if (gap := record.gaps.get(self._name)) is not None:
                raise gap.with_traceback(None)
            with noting(record.reads):
                try:
                    return work(record)
                except Unanswered as wanting:
                    record.gaps[self._name] = wanting
                    raise

        super().__init__(noted)
        self.__doc__ = work.__doc__
