"""What keeps the answers of a sitting, and how it says that it could not."""

from __future__ import annotations

from typing import Protocol

from interview.asking.answers import Answers


class Keeper(Protocol):
    """Keeps the answers somewhere safe; raises ``NotKept`` with one sentence where it cannot."""

    def keep(self, answers: Answers, stopped_at: str) -> None:
        """Keep ``answers`` and the address of the question reached."""


class NotKept(Exception):
    """The answers are in memory but could not be saved; the message says why and what to do."""
