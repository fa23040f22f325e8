"""What is worked out of the words typed waits until typing rests: no key waits for it."""

from __future__ import annotations

from collections.abc import Callable

from textual.timer import Timer
from textual.widget import Widget

TYPING_RESTS = 0.15
"""Seconds without a key after which it begins; a choice of ours."""


class FollowsTyping(Widget):
    """A part that follows what is typed, a little later."""

    _rest: Timer | None = None
    """Runs from the last key on."""

    def once_typing_rests(self, work: Callable[[], None]) -> None:
        """Do ``work`` once no key has come for a while; what was to be done before is not."""
        if self._rest is not None:
            self._rest.stop()
            self._rest = None
        if TYPING_RESTS:
            self._rest = self.set_timer(TYPING_RESTS, work)
        else:
            work()
