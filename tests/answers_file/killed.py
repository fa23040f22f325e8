"""Programs that are killed or kept from writing, by chance, and what their files hold after it.

Each runs in a forked process and tells by a pipe what was entered before each prompt, and what it
is about to save; whoever kills it, or has it killed at a system call, holds the file against that.
"""

from __future__ import annotations

import datetime as dt
import errno
import fcntl
import importlib
import io
import json
import os
import pkgutil
import random
import resource
import select
import signal
import subprocess
import sys
import time
import traceback
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from itertools import pairwise, product
from pathlib import Path
from typing import Any

import interview as rooms
from interview import __main__ as program
from interview.answers_file import render
from interview.asking import own_fault
from interview.asking.kinds import list_lines
from interview.asking.route import Step
from interview.asking.sitting import NotKept
from interview.asking.statuses import CRASHED, UNREADABLE, UNSAVED, UNUSABLE
from interview.garden import store
from interview.garden.opening import Opened, Refusal, open_session
from interview.garden.stages import STAGE_OF, new_answers, question_at
from interview.plain import clock, streams
from interview.plain import interview as plain
from interview.plain.held import Held
from interview.plain.lists import lines_of
from interview.quantities.units import magnitude, quantity

NOW = dt.datetime(2026, 5, 28, 12, 0, tzinfo=dt.timezone(dt.timedelta(hours=-5)))
"""The day of the hole in the garden that is typed, so that nothing has to be waited for."""
BY = "rain-garden-interview test"
LIMIT = 600.0
"""Seconds after which a program that tells nothing more is given up."""
MOST_TOLD = 2000
"""Lines told after which an interview goes round in a circle."""
MOST_CALLS = 1000
PIPE_SIZE = 1031
"""The number of ``F_SETPIPE_SZ``, which Python 3.11 has on Linux alone."""
PUT = ("> ", ". ")
"""The prompts of a question."""
MINE = "# My own words stay.\n"
CALLS = [
    *("open", "read", "write", "fsync", "close", "fstat", "fchmod", "fchown", "stat", "lstat"),
    *("access", "replace", "link", "unlink", "mkdir", "pread", "pwrite", "ftruncate", "chmod"),
]
"""The system calls of opening, locking and saving, as Python names them."""
ERRORS = ["ENOSPC", "EIO", "EDQUOT", "EACCES", "EPERM", "EROFS", "EMFILE", "EFBIG", "EINTR"]

Tell = Callable[..., None]
Record = dict[str, Any]


class Torn(Exception):
    """What must never be: an answer lost, a file torn, a file changed that is not ours."""


@dataclass
class State:
    """What a garden holds: the answers, and what is half typed."""

    texts: dict[str, str] = field(default_factory=dict)
    drafts: dict[str, str] = field(default_factory=dict)

    @classmethod
    def of(cls, told: Record) -> State:
        return cls(told["texts"], told["drafts"])

    def apart(self, other: State) -> str:
        """Say what differs."""
        one, two = {**self.drafts, **self.texts}, {**other.drafts, **other.texts}
        return str({key: (one.get(key), two.get(key)) for key in one | two
                    if one.get(key) != two.get(key)})  # fmt: skip


# A process of its own


def loaded() -> None:
    """Load what the interview loads as it goes: forked programs then need not, nor may nobody."""
    for module in pkgutil.walk_packages(rooms.__path__, "interview."):
        if "screens" not in module.name and not module.name.endswith("__main__"):
            importlib.import_module(module.name)
    magnitude(quantity(1, "ft"), "m")


class Run:
    """Some work in a forked process, and what it tells."""

    def __init__(self, work: Callable[[Tell], int]) -> None:
        self.told: list[Record] = []
        self._rest = b""
        self.pipe, writing = os.pipe()
        self.pid = os.fork()
        if self.pid:
            os.close(writing)
            return
        status, tell = CRASHED, teller(writing)
        try:
            status = work(tell)
        except BaseException as trouble:
            frames = traceback.extract_tb(trouble.__traceback__)
            where = " < ".join(f"{Path(one.filename).name}:{one.lineno}" for one in frames[:-5:-1])
            tell("crashed", why=f"{trouble!r} {where}")
        os._exit(status)

    def hear(self, prompts: int = -1) -> None:
        """Read what is told until so many prompts more were shown, or the process has ended."""
        end = time.monotonic() + LIMIT
        while prompts:
            waits = select.select([self.pipe], [], [], max(0.0, end - time.monotonic()))[0]
            data = os.read(self.pipe, 1 << 16) if waits else b""
            if not waits or len(self.told) > MOST_TOLD:
                self.kill()
                raise Torn(f"it comes to no end: {self.told[-1:]}")
            if not data:
                return
            *lines, self._rest = (self._rest + data).split(b"\n")
            heard = [json.loads(one) for one in lines]
            self.told += heard
            if prompts > 0:
                prompts = max(0, prompts - sum(1 for one in heard if one["what"] == "prompt"))

    def kill(self) -> None:
        with suppress(ProcessLookupError):
            os.kill(self.pid, signal.SIGKILL)

    def ended(self) -> int:
        """Return the exit status; the negative number of the signal where one ended it."""
        try:
            self.hear()
        finally:
            os.close(self.pipe)
            status = os.waitstatus_to_exitcode(os.waitpid(self.pid, 0)[1])
        return status


def told_by() -> tuple[int, int]:
    """Return the two ends of a pipe that takes all a program tells without anybody reading."""
    reading, writing = os.pipe()
    fcntl.fcntl(writing, PIPE_SIZE, 1 << 20)
    return reading, writing


def heard(pipe: int) -> list[Record]:
    """Return all that was told by a pipe whose writers have ended."""
    with os.fdopen(pipe, "rb") as file:
        *lines, _ = file.read().split(b"\n")
    return [json.loads(one) for one in lines]


def teller(pipe: int) -> Tell:
    """Return what tells facts by a pipe, a line each."""
    write = os.write

    def tell(what: str, **facts: object) -> None:
        data = json.dumps({"what": what, **facts}).encode() + b"\n"
        while data:
            data = data[write(pipe, data) :]

    return tell


class Trap:
    """Springs at the ``when``-th system call of a kind that touches files."""

    def __init__(self, when: int, spring: Callable[..., object], lasting: bool = False) -> None:
        self.left, self.spring, self.lasting = when, spring, lasting

    def set(self) -> None:
        for name in CALLS:
            setattr(os, name, self._watched(getattr(os, name)))
        io.open = self._watched(io.open)  # type: ignore[assignment]

    def _watched(self, real: Callable[..., Any]) -> Callable[..., Any]:
        def call(*words: Any, **more: Any) -> Any:
            self.left -= 1
            if self.left == 0 or (self.lasting and self.left < 0):
                return self.spring(real, *words, **more)
            return real(*words, **more)

        return call


def dying(luck: random.Random, most: int) -> Trap:
    """Return a trap that kills the process: before a call, after it, or half way through it."""
    how = luck.choice(("before", "after", "half"))

    def die(real: Callable[..., Any], *words: Any, **more: Any) -> None:
        if how == "half" and real.__name__ == "write":
            real(words[0], words[1][: len(words[1]) // 2])
        elif how == "after":
            real(*words, **more)
        os.kill(os.getpid(), signal.SIGKILL)

    return Trap(luck.randint(1, most), die)


def failing(when: int, code: int, lasting: bool) -> Trap:
    """Return a trap that makes a call fail; one that closes a file closes it all the same."""

    def fail(real: Callable[..., Any], *words: Any, **more: Any) -> None:
        if real.__name__ == "close":
            real(*words)
        raise OSError(code, os.strerror(code))

    return Trap(when, fail, lasting)


def without_locks() -> None:
    """Have a file system that knows no locks."""

    def flock(number: int, how: int) -> None:
        raise OSError(errno.ENOLCK, "no locks")

    fcntl.flock = flock  # type: ignore[assignment]


def without_links() -> None:
    """Have a file system that knows no hard links."""

    def link(*words: object, **more: object) -> None:
        raise OSError(errno.EPERM, "no links")

    os.link = link  # type: ignore[assignment]


# The interview on plain lines


class Typed:
    """Types the answers of a garden, whichever question is put, and nothing twice."""

    def __init__(self, answers: Mapping[str, str], tell: Tell, most: int) -> None:
        self.answers, self.tell = answers, tell
        self.talk: Held | None = None
        self.turn: Any = None
        self.tries: dict[str, int] = {}
        self.left = most

    def line(self, prompt: str) -> str:
        """Return the next line; tell before what was entered up to now."""
        if self.talk is None:
            return "yes"
        turn, session = self.turn, self.talk.session
        texts, drafts = dict(session.answers.texts), dict(session.drafts)
        words, why = dict(turn.words), session.not_kept
        self.tell("prompt", texts=texts, drafts=drafts, words=words, not_kept=why)
        self.left -= 1
        if not self.left:
            raise EOFError
        found = question_at(turn.said) if prompt in PUT and not turn.ways else None
        if found is None:  # rows, ways, or something told
            return ""
        question, number = found
        step = Step(question, number or 0, STAGE_OF[question.key])
        text = self.answers.get(turn.said, self.answers.get(question.key, ""))
        if question.kind.many and text:
            left = list_lines(text)[len(lines_of(session, step)) :]
            return left[0] if left else ""
        tried = self.tries[step.address] = self.tries.get(step.address, 0) + 1
        if tried > 2:  # refused, or doubted twice
            return ":skip" if tried < 4 else ":next"
        if turn.half:  # the second of two choices
            return text.partition(" ")[2]
        return text or ("" if session.offered(step, turn.words) is not None else ":skip")


def interview(
    file: Path,
    answers: Mapping[str, str],
    tell: Tell,
    now: Callable[[], dt.datetime] = lambda: NOW,
    most: int = -1,
) -> int:
    """Run the program on plain lines in this process; ``most`` lines are typed into it."""
    clock.now, program.version = now, lambda: "test"
    quiet = os.open(os.devnull, os.O_RDWR)
    for number in (0, 1, 2):
        os.dup2(quiet, number)
    sys.stdin, sys.stdout = open(0), open(1, "w")  # noqa: SIM115
    typed = Typed(answers, tell, most)
    run, put = plain.run, Held._put

    def begun(session: Any, ask: Any, say: Any) -> bool:
        tell("opened", texts=dict(session.answers.texts), drafts=dict(session.drafts))
        return run(session, ask, say)

    def noted(talk: Held, turn: Any) -> str | None:
        typed.talk, typed.turn = talk, turn
        return put(talk, turn)

    # What is said on coming back takes longer than all that can be broken off.
    plain._Talk._begin = lambda talk: None  # type: ignore[method-assign]
    plain.run, Held._put = begun, noted  # type: ignore[assignment, method-assign]
    streams.Typist.ask = lambda self, prompt: typed.line(prompt)  # type: ignore[method-assign]
    telling_saves(tell)
    refuse = program.refuse

    def refused(sentence: str, *status: int) -> int:
        tell("refused", sentence=sentence)
        return refuse(sentence, *status)

    program.refuse = refused
    return program.main(["--plain", str(file)])


def telling_saves(tell: Tell) -> None:
    """Have each save of this process told before it and after it, and where answers are rescued."""
    keep, rescue = store.FileKeeper.keep, Opened.rescue

    def saving(keeper: store.FileKeeper, kept: Any, place: str) -> None:
        drafts, taken = dict(keeper.drafts), list(keeper.taken)
        tell("saving", texts=dict(kept.texts), drafts=drafts, taken=taken, place=place)
        keep(keeper, kept, place)
        tell("saved", path=str(keeper.path))

    def rescued(opened: Opened) -> str:
        said = rescue(opened)
        tell("rescued", path=str(opened.rescued or ""))
        return said

    store.FileKeeper.keep, Opened.rescue = saving, rescued  # type: ignore[method-assign]


def saves(file: Path, states: Sequence[Record], tell: Tell) -> int:
    """Open the garden in this process and keep ``states`` in it one after the other."""
    opened = open_session(str(file), lambda: NOW, BY)
    if isinstance(opened, Refusal):
        tell("refused", sentence=opened.sentence)
        return opened.status
    now, keeper = opened.session.answers, opened.keeper
    tell("opened", texts=dict(now.texts), drafts=dict(keeper.drafts))
    telling_saves(tell)
    for one in states:
        keeper.drafts.clear()
        keeper.drafts.update(one["drafts"])
        keeper.taken[:] = one["taken"]
        try:
            keeper.keep(new_answers(one["texts"]), one["place"])
        except NotKept as trouble:
            tell("not kept", why=str(trouble))
    opened.lock.release()
    return 0


# What must hold


def held(file: Path) -> State:
    """Return what a file holds, nothing where there is none. Raises ``Torn``."""
    try:
        loaded = store.load(file)[0] if file.exists() else None
    except Exception as trouble:
        raise Torn(f"{file.name} cannot be read: {trouble}") from trouble
    return State(dict(loaded.answers.texts), dict(loaded.drafts)) if loaded else State()


def hold_against(told: Sequence[Record], there: State) -> None:
    """Raise ``Torn`` where a file does not hold what was entered before the last prompt."""
    sure: list[State] = []
    words: dict[str, str] = {}
    for one in told:
        match one["what"]:
            case "opened":
                sure = [State.of(one)]
            case "saving":
                sure.append(State.of(one))
            case "saved":
                sure = sure[-1:]
            case "prompt":
                words = one["words"]
                if sure[-1] != State.of(one):
                    raise Torn(f"it goes on before it saves: {sure[-1].apart(State.of(one))}")
                for address, text in words.items():
                    if sure[-1].texts.get(address, sure[-1].drafts.get(address)) != text:
                        raise Torn(f"it goes on and has not saved {address}: {text}")
                sure = sure[-1:]
    if sure and there not in sure:
        raise Torn(f"the file holds something else: {sure[0].apart(there)}")


class Folder:
    """The folder of a garden, with files of somebody else in it that nothing may change."""

    OTHERS = ("notes.txt", ".other.yaml.lock", "garden.mine.yaml", "garden.yaml.bak")

    def __init__(self, place: Path) -> None:
        self.file, self.others, self.mine = place / "garden.yaml", self.OTHERS, False
        place.mkdir(parents=True, exist_ok=True)

    def begin_anew(self, luck: random.Random) -> None:
        """Take the garden away and put another beginning there: none, or one written by hand."""
        for one in self.file.parent.iterdir():
            one.unlink()
        self.others = self.OTHERS[: luck.choice((3, 4))]
        for name in self.others:
            self.file.with_name(name).write_text(f"{name}: mine\n")
        self.mine = luck.random() < 0.5
        if self.mine:
            self.file.write_text(MINE + render({"start": {}}, lambda path: "") + "my_own: x\n")

    def moved_in_time(self, luck: random.Random) -> None:
        """Give each file the time of a clock that was set forward or back."""
        for one in self.file.parent.iterdir():
            stamp = NOW.timestamp() + luck.choice((-1, 0, 1)) * 86400 * 400
            os.utime(one, (stamp, stamp))

    def check(self) -> None:
        """Raise ``Torn`` where something was changed, or a copy of the answers is not whole."""
        for one in self.file.parent.iterdir():
            if one.name in self.others:
                if one.read_text() != f"{one.name}: mine\n":
                    raise Torn(f"{one.name} was changed")
            elif one.name.endswith(".bak"):
                held(one)
            elif one != self.file and not one.name.startswith(".garden.yaml."):
                raise Torn(f"{one.name} was made")
        if any(not self.file.with_name(one).exists() for one in self.others):
            raise Torn("a file was removed")
        if self.mine:
            text = self.file.read_text()
            if not text.startswith(MINE) or "\nmy_own: x\n" not in text:
                raise Torn("what was written by hand is gone")


def killed_talk(folder: Folder, answers: Mapping[str, str], luck: random.Random) -> bool:
    """Go on with a garden on plain lines and kill it; tell whether it was at its end before."""
    jump = dt.timedelta(days=luck.choice((0, 0, 0, -400, 3, 400)))
    run = Run(lambda tell: interview(folder.file, answers, tell, lambda: NOW + jump))
    run.hear(luck.choice((0, 1, 1, 2, 2, 3, 8)))
    select.select([], [], [], luck.uniform(0, 0.03))
    run.kill()
    return _checked(folder, run, luck)


def killed_saves(folder: Folder, states: Sequence[Record], luck: random.Random) -> bool:
    """Go on saving until the process dies at a system call; tell whether all was saved."""
    there = held(folder.file)
    known = [at for at, one in enumerate(states) if State.of(one) == there]
    left = states[known[-1] + 1 if known else 0 :]

    def work(tell: Tell) -> int:
        dying(luck, 250).set()
        for take_away in luck.choice(((), (), (without_links,), (without_locks, without_links))):
            take_away()
        return saves(folder.file, left, tell)

    return _checked(folder, Run(work), luck)


def _checked(folder: Folder, run: Run, luck: random.Random) -> bool:
    status = run.ended()
    if status not in (0, -signal.SIGKILL):
        raise Torn(f"it ended with {status}: {run.told[-1:]}")
    hold_against(run.told, held(folder.file))
    folder.check()
    if luck.random() < 0.1:
        folder.moved_in_time(luck)
    return status == 0


def failed_saves(folder: Path, states: Sequence[Record], every: int = 1) -> Iterator[int]:
    """Fail each system call of opening and saving a garden in turn, each in a process of its own.

    Each fails once and for good, into a new file and an old one, with and without locks and links,
    by a full disk and by another error. Yields after each; raises ``Torn``.
    """
    lacks = ((), (without_locks,), (without_links,))
    for lacking, lasting, new in product(lacks, (False, True), (True, False)):
        for when in range(1, MOST_CALLS, every):
            codes = {"ENOSPC", ERRORS[when % len(ERRORS)]}
            hit = [
                _failed(folder / "garden.yaml", states, lacking, name, lasting, new, when)
                for name in sorted(codes)
            ]
            yield len(hit)
            if not any(hit):
                break


def _failed(
    file: Path,
    states: Sequence[Record],
    lacking: Sequence[Callable[[], None]],
    name: str,
    lasting: bool,
    new: bool,
    when: int,
) -> bool:
    """Fail one call; tell whether there were so many calls."""
    for one in file.parent.iterdir():
        one.unlink()
    if not new:
        Run(lambda tell: saves(file, states[:1], tell)).ended()
    before = held(file)

    def work(tell: Tell) -> int:
        own_fault.PASSED_ON = (Exception,)
        trap = failing(when, getattr(errno, name), lasting)
        for take_away in lacking:
            take_away()
        trap.set()
        status = saves(file, states[1:], tell)
        tell("left", calls=trap.left)
        return status

    run = Run(work)
    status, case = run.ended(), f"{name} {'for good' if lasting else 'once'} at call {when}: "
    what = [one["what"] for one in run.told]
    if "left" not in what or status == CRASHED:
        raise Torn(f"{case}it ended with {status}: {run.told[-2:]}")
    if new and lasting and "saved" not in what and file.exists() and not file.stat().st_size:
        # Its name was taken with an empty file, and what takes that away failed for good too.
        return run.told[-1]["calls"] <= 0
    there = held(file)
    if "opened" not in what:
        if there != before:
            raise Torn(f"{case}refused, and changed")
        return run.told[-1]["calls"] <= 0
    hold_with_faults(run.told, there, case)
    if lasting is False and "saved" in what[-3:] and State.of(states[-1]) != there:
        raise Torn(f"{case}it never caught up: {State.of(states[-1]).apart(there)}")
    return bool(run.told[-1]["calls"] <= 0)


def hold_with_faults(told: Sequence[Record], there: State, case: str) -> None:
    """As ``hold_against``, where saves may have failed and said so."""
    sure: list[State] = []
    begun = State()
    for one in told:
        match one["what"]:
            case "opened":
                sure = [State.of(one)]
            case "saving":
                begun = State.of(one)
            case "saved":
                sure = [begun]
            case "not kept":
                pass
    if there not in sure:
        raise Torn(f"{case}{sure[0].apart(there)}")


# Places that take nothing


NOBODY = 65534
ROOM = "32k"
"""The size of the disk that is full soon."""


def as_nobody() -> None:
    """Go on as an ordinary user."""
    os.setgroups([])
    os.setgid(NOBODY)
    os.setuid(NOBODY)


@dataclass(frozen=True)
class Place:
    """A place where answers cannot be kept, or not for long."""

    make: Callable[[Path], None]
    """Makes it so, of the folder of a garden that others may write to."""
    limit: Callable[[], None] = as_nobody
    """What holds for the program alone."""
    status: int = UNSAVED
    rescued: bool = True
    """Whether there is another folder that takes the answers."""
    begun: bool = True
    """Whether there is a garden before."""


def _mounted(options: str, filled: int) -> Callable[[Path], None]:
    def make(folder: Path) -> None:
        kept = {one.name: one.read_bytes() for one in folder.iterdir()}
        subprocess.run(["mount", "-t", "tmpfs", "-o", options, "none", str(folder)], check=True)
        folder.chmod(0o777)
        for name, data in kept.items():
            (folder / name).write_bytes(data)
            (folder / name).chmod(0o666)
        for number in range(filled):
            with suppress(OSError), (folder / f"other{number}").open("wb") as file:
                file.write(b"x" * 4096)

    return make


def _small_files() -> None:
    """Have no file grow beyond what the garden has already."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (800, 800))


PLACES: Mapping[str, Place] = {
    "a folder that may only be read": Place(lambda folder: folder.chmod(0o755)),
    "a new garden there": Place(lambda folder: folder.chmod(0o755), begun=False),
    "a sticky folder": Place(lambda folder: folder.chmod(0o1777)),
    "a file that may only be read": Place(lambda folder: (folder / "garden.yaml").chmod(0o444)),
    "a file that may not be read": Place(
        lambda folder: (folder / "garden.yaml").chmod(0), status=UNUSABLE, rescued=False
    ),
    "a folder that may not be entered": Place(
        lambda folder: folder.chmod(0), status=UNREADABLE, rescued=False
    ),
    "a full disk": Place(_mounted(f"size={ROOM}", 7)),
    "a disk without inodes": Place(_mounted("nr_inodes=4", 3)),
    "a limit on the size of files": Place(lambda folder: None, _small_files, rescued=False),
}


def placed(room: Path, name: str, answers: Mapping[str, str], lines: int = 8) -> None:
    """Type some lines into a garden in such a place. Raises ``Torn``."""
    place, folder, state = PLACES[name], room / "garden", room / "state"
    for one in (folder, state):
        one.mkdir()
        one.chmod(0o777)
    file = folder / "garden.yaml"
    if place.begun:
        Run(lambda tell: interview(file, answers, tell, most=4)).ended()
        file.chmod(0o666)
    before = held(file)
    # The garden is of somebody else, as is the folder.
    try:
        place.make(folder)
        there = {one.name: one.read_bytes() for one in folder.iterdir()}

        def work(tell: Tell) -> int:
            os.environ["XDG_STATE_HOME"] = str(state)
            place.limit()
            return interview(file, answers, tell, most=lines)

        run = Run(work)
        status, told = run.ended(), run.told
        found = held(file)
        changed = {one.name for one in folder.iterdir() if there.get(one.name) != one.read_bytes()}
    finally:
        folder.chmod(0o777)
        if os.path.ismount(folder):
            subprocess.run(["umount", str(folder)], check=True)
    if status != place.status:
        raise Torn(f"{name}: it ended with {status}: {told[-1:]}")
    last = next((State.of(one) for one in reversed(told) if one["what"] == "prompt"), before)
    sure = [before, *(State.of(o) for o, then in pairwise(told) if then["what"] == "saved")]
    if found != sure[-1]:
        raise Torn(f"{name}: {sure[-1].apart(found)}")
    if found == before and changed - {file.name + ".bak"}:
        raise Torn(f"{name}: {changed} changed")
    if place.status == UNSAVED and not any(one.get("not_kept") for one in told):
        raise Torn(f"{name}: nobody was told")
    if place.rescued:
        paths = [one["path"] for one in told if one["what"] == "rescued"]
        if not paths or not paths[-1] or held(Path(paths[-1])) != last:
            raise Torn(f"{name}: not rescued: {paths}")
