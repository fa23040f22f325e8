"""Keys pressed before a question could be read are not for it."""

from __future__ import annotations

REST = 0.2
"""Seconds after an Enter in which the next Enter is a bounce, or a key held down."""
BURST = 0.05
"""Seconds: keys that follow one another faster than this come from a paste, not from fingers."""
_TAKES = frozenset(("enter", "ctrl+t"))
_EDITS = frozenset(("space", "backspace", "delete", "paste"))


class TypedAhead:
    """Judges each key by the time it was pressed; times are in seconds by one steady clock."""

    def __init__(self) -> None:
        self._shown = self._last = self._took = float("-inf")
        self._running_on = self._resting = False

    def turned(self, at: float) -> None:
        """Note that a new question stands on the screen since ``at``."""
        self._shown = at
        self._running_on = self._resting = True

    def heeds(self, key: str, printable: bool, at: float) -> bool:
        """Tell whether a key pressed at ``at`` is for the question that is shown."""
        before, self._last = self._last, at
        took, self._took = self._took, at if key in _TAKES else self._took
        early = at < self._shown
        self._running_on = self._running_on and (early or at - before < BURST)
        if not (printable or key in _TAKES or key in _EDITS):
            return True
        if early:
            return False
        if self._running_on:
            return False
        if key in _TAKES:
            self._resting = self._resting and at - took < REST
            return not self._resting
        return True
