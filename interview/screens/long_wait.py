"""Long sums in a thread: the page says how far they are, and lets go of those no longer wanted."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractContextManager
from time import monotonic

from textual.app import App
from textual.worker import get_current_worker

from interview.asking.long_work import HowFar, LetGo, heard_by

SOON = 0.3
"""Seconds in which a sum is done before anybody could read how far it is: nothing is said then."""


class Stopped(LetGo):
    """The sum is no longer wanted: a later one has taken its place."""


def telling_page(app: App[object], say: Callable[[str], None]) -> AbstractContextManager[None]:
    """Return a context for a thread worker whose long sums tell the page how far they are.

    ``say`` is called on the page's own thread. A worker that was cancelled is stopped by
    ``Stopped``.
    """
    worker, began = get_current_worker(), monotonic()

    def hear(far: HowFar) -> None:
        if worker.is_cancelled:
            raise Stopped
        # Never waiting for the page: it may be waiting for the same sum.
        if monotonic() - began >= SOON:
            app.call_later(say, far.words)

    return heard_by(hear)
