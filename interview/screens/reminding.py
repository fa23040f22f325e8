"""Telling that a soak test wants to be looked at, on whatever page one is."""

from __future__ import annotations

import datetime as dt
from abc import abstractmethod
from collections.abc import Sequence
from functools import cached_property
from typing import TYPE_CHECKING, Any

from textual.app import App

from interview.screens.desktop import desktop_of, sequence
from interview.screens.frame import Weight
from interview.screens.page import FramedApp

if TYPE_CHECKING:
    from interview.answers_file.reminders import Reminders
    from interview.garden.session import Session
    from interview.garden.soak.timed import SoakRun
    from interview.garden.soak_due import HoleTest

LOOK_SECONDS = 5.0
"""How often the holes are looked at on other pages; the timing page looks every second."""


class RemindingApp(FramedApp):
    """An application that rings when a reading comes due."""

    def __init__(self) -> None:
        super().__init__()
        self.desktop = desktop_of()
        self._titled = ""
        self._told: dict[str, dt.datetime] = {}
        """The due time that was told last, for each hole."""
        self._awaited: dict[str, tuple[dt.datetime | None, dt.datetime]] = {}
        """The due time that was still to come, with what it counts from, for each hole."""

    @cached_property
    def reminders(self) -> Reminders:
        """How the person wants to be told."""
        from interview.answers_file import reminders

        return reminders.kept()

    @property
    @abstractmethod
    def session(self) -> Session | None:
        """The interview that is open."""

    def choose_reminders(self, chosen: Reminders) -> bool:
        """Take a new choice and keep it; tell whether it is kept for the next time."""
        from interview.answers_file import reminders

        self.reminders = chosen
        self.remind()
        return reminders.keep(chosen)

    def remind(self, tests: Sequence[HoleTest] | None = None) -> None:
        """Tell of every hole that has come due since, once, and set the window's title.

        ``tests`` are all holes as they stand now, where they were looked at already.
        """
        session = self.session
        if session is None or not session.answers.numbers("holes"):
            self.set_title("")
            return
        from interview.screens import soak_watch

        found = soak_watch.under_way(session, tests)
        for one in found:
            if self._comes_due(one.step.address, one.run):
                self._call(soak_watch.call_words(session, one.step, one.run))
        self.set_title(title_of([one.run for one in found]) if self.reminders.title else "")

    def _comes_due(self, address: str, run: SoakRun) -> bool:
        """Tell whether a due time passed that was not told yet."""
        from interview.garden.soak.times import utc

        if run.due is None or run.clock_back:
            return False
        if utc(run.now) >= utc(run.due):
            fresh = self._told.get(address) != run.due
            self._told[address] = run.due
            return fresh
        # While a filling drains the next look follows as soon as one has passed.
        since, awaited = self._awaited.get(address, (None, run.due))
        self._awaited[address] = (run.since, run.due)
        return run.began is None and since == run.since and awaited < run.due

    def _call(self, said: str) -> None:
        chosen = self.reminders
        if chosen.bell:
            self.bell()
        if chosen.desktop:
            self.write(sequence(self.desktop, "Soak test", said))
        if chosen.notice and not getattr(self.screen, "SAYS_WHAT_IS_DUE", False):
            self.tell(said, Weight.WARNING)

    def write(self, codes: str) -> None:
        """Write to the terminal past the screen.

        Textual has no public way to: its driver alone writes in turn with the drawing.
        """
        if codes and self._driver is not None:
            self._driver.write(codes)

    def set_title(self, words: str) -> None:
        """Put words before the name of the program in the title of the terminal's window."""
        title = f"{words} · {self.TITLE}" if words else str(self.TITLE)
        if title != self._titled:
            self._titled = title
            self.write(f"\x1b]2;{title}\x07")


def title_of(runs: list[SoakRun]) -> str:
    """Return the words of the title: the hole that is due first, or nothing."""
    from interview.garden.soak.times import span_up, utc

    due = [(utc(run.due), run) for run in runs if run.due is not None and not run.clock_back]
    if not due:
        return ""
    at, run = min(due, key=lambda one: one[0])
    what = "reading" if run.began else "look"
    left = at - utc(run.now)
    return f"next {what} in {span_up(left)}" if left > dt.timedelta() else f"{what.upper()} DUE"


def reminders_of(app: App[Any]) -> Reminders:
    """Return how the person wants to be told."""
    from interview.answers_file.reminders import Reminders

    return app.reminders if isinstance(app, RemindingApp) else Reminders()
