"""What is half typed on a page is saved once typing rests."""

from __future__ import annotations

from contextlib import suppress
from typing import TYPE_CHECKING

from textual import events
from textual.css.query import NoMatches

from interview.screens.page import Page
from interview.screens.parts import is_there

if TYPE_CHECKING:
    from textual.timer import Timer

RESTS = 1.0
"""Seconds without a key after which what is half typed is put in the file; a choice of ours."""


class Resting(Page):
    """Has what is half typed saved once no key has come for a while: no key waits for it."""

    _rest: Timer | None = None
    """Runs from the last key on."""

    def heeds(self, event: events.Key | events.Paste) -> bool:
        heeded = super().heeds(event)
        if heeded:
            self.save_at_rest()
        return heeded

    def save_at_rest(self) -> None:
        """Begin to wait anew."""
        if self._rest is not None:
            self._rest.stop()
        self._rest = self.set_timer(RESTS, self._rested)

    def _rested(self) -> None:
        # A page whose field is being taken down has put by what is typed before.
        with suppress(NoMatches):
            if is_there(self):
                self.save_half_typed()

    def save_half_typed(self) -> None:
        """Have what is half typed in the file."""
        raise NotImplementedError
