"""Saving off the event loop, in one worker thread; the latest answers win."""

from __future__ import annotations

import datetime as dt
import threading
from collections.abc import Callable
from enum import Enum
from typing import NamedTuple

from interview.asking.answers import Answers
from interview.asking.keeping import Keeper, NotKept
from interview.screens.palette import MARKS

RETRY_SECONDS = 20.0
QUIT_SECONDS = 3.0
"""How long leaving waits for a save that is under way."""


class SaveState(Enum):
    """Where the answers stand."""

    NOTHING = "nothing to save yet"
    SAVING = "Saving…"
    SAVED = "Saved"
    FAILED = "NOT SAVED"


_MARKS = {
    SaveState.NOTHING: MARKS["good"],
    SaveState.SAVING: "",
    SaveState.SAVED: MARKS["good"],
    SaveState.FAILED: MARKS["stop"],
}


class SaveReport(NamedTuple):
    """What came of the last save."""

    state: SaveState
    at: dt.datetime | None = None
    """When it was saved."""
    why: str = ""
    """Why not, and what to do."""
    note: str = ""
    """What is to be told of a save that worked."""

    @property
    def failed(self) -> bool:
        """Tell whether answers are in memory that the file does not hold."""
        return self.state is SaveState.FAILED

    @property
    def mark(self) -> str:
        """The mark before those words."""
        return _MARKS[self.state]

    @property
    def short(self) -> str:
        """A word or two for the top line."""
        if self.state is SaveState.SAVED and self.at:
            return f"Saved {self.at:%H:%M}" + (", see below" if self.note else "")
        return "" if self.state is SaveState.NOTHING else self.state.value

    @property
    def banner(self) -> str:
        """The whole sentence where a save failed or something is to be told of it."""
        if not self.failed:
            return f"Saved, but: {self.note}" if self.note else ""
        return f"NOT SAVED: {self.why} ^R tries again; your answers are still here."


class BackgroundKeeper:
    """A keeper that hands each save to another one in a worker thread.

    Only the latest answers wait: a save under way is finished, those between are passed over.
    """

    def __init__(
        self,
        keeper: Keeper,
        now: Callable[[], dt.datetime],
        retry_seconds: float = RETRY_SECONDS,
    ) -> None:
        self._keeper = keeper
        self._now = now
        self._retry_seconds = retry_seconds
        self._turn = threading.Condition()
        """Held while what waits is looked at or changed, never while a save is under way."""
        self._waiting: tuple[Answers, str] | None = None
        self._failed: tuple[Answers, str] | None = None
        self._busy = False
        self._closed = False
        self._worker: threading.Thread | None = None
        self._report = SaveReport(SaveState.NOTHING)
        self.on_change: Callable[[], object] = _quiet
        """Called, in the worker thread or the caller's, whenever the report changes."""

    @property
    def report(self) -> SaveReport:
        """What came of the last save, or that one is under way."""
        with self._turn:
            return self._report

    def keep(self, answers: Answers, stopped_at: str) -> None:
        """Take ``answers`` to be saved soon; returns at once and raises nothing."""
        with self._turn:
            self._waiting = (answers, stopped_at)
            if not self._report.failed:
                self._report = SaveReport(SaveState.SAVING)
            self._start()
            self._turn.notify_all()
        self.on_change()

    def retry(self) -> None:
        """Try a failed save again now."""
        with self._turn:
            self._take_failed()
            self._turn.notify_all()

    def settle(self, seconds: float = QUIT_SECONDS) -> bool:
        """Wait until nothing is being saved, at most ``seconds``; tell whether all is saved."""
        with self._turn:
            done = self._turn.wait_for(lambda: not (self._waiting or self._busy), seconds)
            return done and not self._report.failed

    def close(self, seconds: float = QUIT_SECONDS) -> bool:
        """Try once more what failed, wait for it, and stop; tell whether everything is saved."""
        self.retry()
        done = self.settle(seconds)
        with self._turn:
            if not done and not self._report.failed:
                why = "Saving took too long. Check the disk, then answer the last question again."
                self._report = SaveReport(SaveState.FAILED, why=why)
            self._closed = True
            self._turn.notify_all()
        return done

    def _start(self) -> None:
        if self._worker is None:
            # A daemon: a disk that hangs for ever must not keep the program from ending.
            self._worker = threading.Thread(target=self._work, name="saver", daemon=True)
            self._worker.start()

    def _take_failed(self) -> None:
        if self._failed and not self._waiting:
            self._waiting = self._failed
            self._start()

    def _work(self) -> None:
        while True:
            with self._turn:
                while not self._waiting and not self._closed:
                    if not self._turn.wait(self._retry_seconds if self._failed else None):
                        self._take_failed()
                if not self._waiting:
                    return
                job, self._waiting = self._waiting, None
                self._busy = True
            report = self._save(job)
            with self._turn:
                self._report = SaveReport(SaveState.SAVING) if self._waiting else report
                if report.failed:
                    self._report = report
                self._failed = job if report.failed else None
            try:
                self.on_change()
            finally:  # whoever waits for the end of it finds it told
                with self._turn:
                    self._busy = False
                    self._turn.notify_all()

    def _save(self, job: tuple[Answers, str]) -> SaveReport:
        try:
            self._keeper.keep(*job)
        except NotKept as trouble:
            return SaveReport(SaveState.FAILED, why=str(trouble))
        except Exception as trouble:
            # A fault of the program must show as answers not saved, never as a silent thread.
            why = f"There was an error in the program ({type(trouble).__name__})."
            return SaveReport(SaveState.FAILED, why=why)
        return SaveReport(SaveState.SAVED, self._now(), note=getattr(self._keeper, "note", ""))


def _quiet() -> None:
    """Do nothing: nobody looks yet."""
