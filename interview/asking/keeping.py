"""What keeps the answers of a sitting, and how it says that it could not."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Protocol

from interview.asking.answers import Answers


class Keeper(Protocol):
    """Keeps the answers somewhere safe; raises ``NotKept`` with one sentence where it cannot."""

    def keep(self, answers: Answers, stopped_at: str) -> None:
        """Keep ``answers`` and the address of the question reached."""


class NotKept(Exception):
    """The answers are in memory but could not be saved; the message says why and what to do."""


@contextmanager
def none_half_typed(drafts: dict[str, str], *addresses: str) -> Iterator[None]:
    """Hold nothing half typed for ``addresses`` while they are kept, and again where that fails.

    What is saved meanwhile must not offer words anew that it has as an answer.
    """
    half = {one: drafts.pop(one) for one in addresses if one in drafts}
    try:
        yield
    except Exception:
        drafts.update(half)
        raise
