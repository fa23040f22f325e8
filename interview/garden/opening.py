"""Opening an interview: the file, its lock, and the session."""

from __future__ import annotations

import datetime as dt
import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import field
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from interview import answers_file as af
from interview.answers_file import Lock, Trouble, own_files
from interview.answers_file.named_files import text_opener
from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.statuses import IN_USE, UNREADABLE, UNUSABLE
from interview.garden import store
from interview.garden.plan import Plan
from interview.garden.stages import new_answers
from interview.quantities.records import record
from interview.reading.foreign import shell_word

if TYPE_CHECKING:
    from interview.garden.session import Session

NEW_FILE = "rain_garden.yaml"
"""The file of a new garden where no name was given."""


class Refusal(NamedTuple):
    """The file cannot be opened; one sentence, and the exit status that goes with it."""

    sentence: str
    status: int
    unsure: bool = False
    """Only a note of another computer says that it is open: ask, and ``ignore_elsewhere``."""


@record(frozen=False)
class Opened:
    """An interview ready to go on."""

    session: Session
    keeper: store.FileKeeper
    lock: Lock
    path: Path
    new: bool
    troubles: list[Trouble] = field(default_factory=list)
    notices: list[str] = field(default_factory=list)
    plants: str = ""
    """The plant file that was named on the command line."""
    rescued: Path | None = None
    """Where answers are that could not be saved."""

    @property
    def shown_path(self) -> str:
        """The file's name, safe to show: the one written last."""
        return af.shown(str(self.keeper.path))

    def rescue(self) -> str:
        """Keep answers that could not be saved in another folder; say where, or nothing."""
        try:
            self.rescued = self.keeper.rescue(self.session.answers, _rescue_folders())
        except (OSError, ValueError, RuntimeError):
            self.rescued = None
        return f"All answers are kept in {af.shown(str(self.rescued))}." if self.rescued else ""

    def resume_command(self, name: str, way: str = "") -> str:
        """Return the command that goes on with this interview."""
        file = str(self.rescued or self.keeper.path)
        file = f"./{file}" if file.startswith("-") else file
        plants = f"--plants={_pasted(self.plants)}" if self.plants else ""
        words = (_started_as(name), way, plants, _pasted(file))
        return " ".join(word for word in words if word)


def _rescue_folders() -> Iterator[Path]:
    own = own_files.place("rescued", "XDG_STATE_HOME", ".local/state", os.environ)
    if own is not None:
        yield own
    yield Path(tempfile.mkdtemp(prefix="rain-garden-interview-"))


def _pasted(name: str) -> str:
    """Return a name as a word of a command that can be copied from the output."""
    return shell_word(name, getattr(sys.stdout, "encoding", None) or "utf-8")


def _started_as(name: str) -> str:
    """Return the command that starts the program from here, as it was started."""
    if shutil.which(name):
        return name
    started = Path(sys.argv[0])
    if started.name == name and started.exists():
        return _pasted(sys.argv[0])
    return f"{_pasted(sys.executable)} -m interview" if started.name == "__main__.py" else name


def plan_of(answers: Answers, folder: Path, now: dt.datetime, plants: str = "") -> Plan:
    """Return the plan of ``answers`` whose named files lie in ``folder``.

    ``plants`` is a plant file used in place of the one the answers name.
    """
    return Plan(route.in_force(answers), now, text_opener(folder), plants)


class ReadGarden(NamedTuple):
    """An answers file that was read to be reported on, and its plan."""

    name: str
    """The file as it was named."""
    loaded: store.Loaded
    plan: Plan


class NotRead(ValueError):
    """There is no answers file to read there; the message says why."""


def read_garden(
    name: str, now: dt.datetime, plants: str = "", data: bytes | None = None
) -> ReadGarden:
    """Return the garden of an answers file, which is only read; raises ``NotRead``.

    ``data`` are its bytes where they come from no file: ``name`` then only says what they are, and
    the files that the answers name lie in the folder one stands in.
    """
    try:
        loaded = store.interpret(af.parse(data)) if data is not None else store.load(Path(name))[0]
    except af.NotLoaded as trouble:
        raise NotRead(str(trouble)) from trouble
    except af.Unreadable as trouble:
        raise NotRead(f"{af.shown(name)}: {trouble}") from trouble
    folder = Path() if data is not None else Path(name).parent
    return ReadGarden(name, loaded, plan_of(loaded.answers, folder, now, plants))


def open_session(
    name: str | None,
    now: Callable[[], dt.datetime],
    written_by: str = "",
    ignore_elsewhere: bool = False,
    plants: str = "",
) -> Opened | Refusal:
    """Open the interview kept in the file ``name``, or begin a new one there.

    ``written_by`` is who the file says wrote it, this program where it is left out;
    ``ignore_elsewhere`` passes over a note that it is open on another computer. ``plants`` is a
    plant file used in place of the one the answers name.
    """
    path = _path(name)
    if isinstance(path, Refusal):
        return path
    try:
        lock = Lock.take(path, since=f"{now():%Y-%m-%d %H:%M}", ignore_elsewhere=ignore_elsewhere)
    except af.AlreadyOpen as held:
        return Refusal(held.sentence, IN_USE, not held.certain)
    except (OSError, ValueError):
        return Refusal(f"{af.shown(str(path))} cannot be opened. Check its name.", UNREADABLE)
    try:
        return _open(path, lock, now, written_by, plants)
    except BaseException as trouble:
        lock.release()
        if isinstance(trouble, af.NotLoaded):
            return Refusal(str(trouble), UNUSABLE)
        if isinstance(trouble, af.Unreadable):
            return Refusal(f"{af.shown(str(path))}: {trouble}", UNUSABLE)
        if isinstance(trouble, OSError):
            return Refusal(f"{af.shown(str(path))}: {af.reason(trouble)}", UNUSABLE)
        raise


def _path(name: str | None) -> Path | Refusal:
    try:
        if name is None:
            return af.free_name(Path(), NEW_FILE)
        path = Path(name).expanduser()
        if not name or "\0" in name:
            return Refusal(
                "the name of the file is empty or holds a character no name can have", UNREADABLE
            )
        if not path.exists() and not path.is_symlink() and not path.parent.is_dir():
            return Refusal(f"there is no folder {af.shown(str(path.parent))}", UNREADABLE)
        return path
    except (OSError, ValueError, RuntimeError):
        return Refusal(f"{af.shown(name or '')} cannot be the name of a file", UNREADABLE)


def _open(
    path: Path, lock: Lock, now: Callable[[], dt.datetime], written_by: str, plants: str
) -> Opened:
    from interview.garden.session import Session  # none is opened for a report

    notices = [lock.notice] if lock.notice else []
    if not path.exists() and not path.is_symlink():
        keeper = store.FileKeeper(path, written_by)
        opener = text_opener(path.parent)
        session = Session(
            new_answers(), keeper, now, "", opener, plants, keeper.drafts, keeper.taken
        )
        return Opened(session, keeper, lock, path, True, [], notices, plants)
    if lock.held:
        for stray in af.remove_stray_temps(path):
            notices.append(f"{af.shown(str(stray))} holds answers of a save that was broken off.")
    loaded, mark = store.load(path)
    keeper = store.FileKeeper(path, written_by, loaded, mark)
    session = Session(
        loaded.answers,
        keeper,
        now,
        loaded.stopped_at,
        text_opener(path.parent),
        plants,
        keeper.drafts,
        keeper.taken,
    )
    for trouble in loaded.troubles:
        hint = f" Did you mean {trouble.suggestion}?" if trouble.suggestion else ""
        said = f"line {trouble.line}: {trouble.key}: {trouble.sentence}{hint}"
        notices.append(af.shown(said))
    return Opened(session, keeper, lock, path, False, loaded.troubles, notices, plants)
