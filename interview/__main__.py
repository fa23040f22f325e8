"""The command line: the full screen, plain lines, the plan, the figures, the check."""

from __future__ import annotations

import argparse
import atexit
import gc
import os
import sys
import textwrap
from collections.abc import Callable, Sequence
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from interview.asking import own_fault
from interview.asking.statuses import (
    CRASHED,
    ENDED_BY,
    INPUT,
    INPUT_ENDED,
    INTERRUPTED,
    NAME,
    STATUSES,
    UNSAVED,
    UNUSABLE,
    UNWRITTEN,
    written_by,
)
from interview.plain import clock, streams
from interview.plain.streams import NotSaid, Typist, refuse, say, tell
from interview.reading.foreign import shown

if TYPE_CHECKING:
    from interview.garden.opening import Opened

WIDTH = 78
"""Columns of the help."""
RARELY = (20_000, 20, 20)
"""How often rings of objects are looked for; Python's own thresholds do it every 700."""


def _epilog() -> str:
    said = (
        "Without an option it fills the screen. Answers are saved after every one; start it again "
        "with the same file to go on."
    )
    statuses = (f"  {number:<6} {meaning}" for number, meaning in STATUSES)
    return "\n".join(
        (textwrap.fill(said, WIDTH), "", "exit status, of several FILEs the worst:", *statuses)
    )


class _Parser(argparse.ArgumentParser):
    """Says what is wrong with the words of a command without a code for the terminal."""

    def error(self, message: str) -> NoReturn:
        super().error(shown(message))


class _Version(argparse.Action):
    """Looks the version up when it is asked for: that loads what reads e-mail."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        print(written_by())
        parser.exit()


def parser() -> argparse.ArgumentParser:
    """Return the reader of the command line."""
    words = _Parser(
        prog=NAME,
        usage=f"{NAME} [option ...] [FILE ...]",
        description=textwrap.fill(
            "An interview that plans a rain garden for a home yard: where it is safe to dig, how "
            "fast the soil takes water, what drains there, how deep and big, what to plant.",
            WIDTH,
        ),
        epilog=_epilog(),
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    words.add_argument(
        "files",
        nargs="*",
        metavar="FILE",
        help="answers file to go on with; for the reports one or more, - for the standard input",
    )
    ways = words.add_mutually_exclusive_group()
    ways.add_argument("--plain", action="store_true", help="one question at a time, on plain lines")
    ways.add_argument(
        "--plan", action="store_true", help="print what to take outside of the plan of FILE"
    )
    ways.add_argument(
        "--sheet", action="store_true", help="write the plan of FILE as HTML to print on two pages"
    )
    ways.add_argument(
        "--card", action="store_true", help="print the yard card of FILE: one page to take outside"
    )
    ways.add_argument("--figures", action="store_true", help="print every figure of FILE as YAML")
    ways.add_argument(
        "--check", action="store_true", help="list faults and open questions of FILE; status 0-2"
    )
    ways.add_argument(
        "--table",
        action="store_true",
        help="print one line for each FILE, as comma-separated values",
    )
    ways.add_argument(
        "--diff",
        action="store_true",
        help="list the answers and figures that differ in two FILEs; other words of the same "
        "value are no difference",
    )
    ways.add_argument("--questions", action="store_true", help="print the blank worksheet")
    ways.add_argument(
        "--blank", action="store_true", help="print an answers file to fill in, nothing answered"
    )
    for key in ("units", "country", "state"):
        words.add_argument(f"--{key}", metavar="WORD", help="with --blank: this answer filled in")
    words.add_argument(
        "--plants", metavar="CSV", help="choose from this plant file too, not the one FILE names"
    )
    words.add_argument(
        "--working", action="store_true", help="with --plan, --sheet: how all was worked out too"
    )
    words.add_argument("--json", action="store_true", help="with --figures: as JSON")
    words.add_argument("--schema", action="store_true", help="with --figures: what its keys mean")
    words.add_argument("--html", action="store_true", help="with --card: as HTML to print")
    words.add_argument(
        "--output",
        metavar="PATH",
        help="with --plan, --sheet, --card, --figures, --blank: write this file; of several "
        "FILEs, or where it is a folder or ends with /, one file for each garden in it",
    )
    words.add_argument(
        "--columns", metavar="NAMES", help="with --table: these, separated by commas; figures too"
    )
    words.add_argument(
        "--today", metavar="DATE", help="report as if it were noon of this day; nothing is stored"
    )
    words.add_argument(
        "--strict",
        action="store_true",
        help="end with 1 where a FILE has faults or its plan waits for an answer; without it only "
        "--check does, for faults",
    )
    words.add_argument("--version", action=_Version, nargs=0, help="print the version and end")
    return words


def _given(words: Sequence[str]) -> argparse.Namespace:
    """Return what the words ask for; after ``--`` each is a FILE, though it begin with a dash."""
    # Mixed with options, argparse reads what stands after "--" as options too.
    cut = words.index("--") if "--" in words else len(words)
    given = parser().parse_intermixed_args(words[:cut])
    given.files += words[cut + 1 :]
    return given


def main(words: Sequence[str] | None = None) -> int:
    """Run the program; return its exit status."""
    # Loading makes many objects and no rings: they are looked for again once a garden is open.
    gc.set_threshold(*RARELY)
    # What is left at the end goes with the program, and need not be looked through first.
    atexit.register(gc.freeze)
    gc.disable()
    try:
        return _ended(words)
    finally:
        gc.enable()


def _ended(words: Sequence[str] | None) -> int:
    """Run what the words ask for; return the exit status, however it ended."""
    streams.mend()
    given = _given(sys.argv[1:] if words is None else words)
    try:
        return _run(given)
    except BrokenPipeError:
        # The reader of a pipe went away; leave quietly, as the tools of a pipe do.
        streams.hush()
        return 0
    except NotSaid as trouble:
        streams.hush()
        return refuse(f"The output could not be written. {trouble}", UNWRITTEN)
    except KeyboardInterrupt:
        streams.passing("")
        return refuse("stopped by Ctrl+C before it was done", INTERRUPTED)
    except Exception as trouble:
        said = f"An error in the program stopped it ({own_fault.where(trouble)})."
        return refuse(said, CRASHED)


def _run(given: argparse.Namespace) -> int:
    if wrong := _misplaced(given):
        return refuse(wrong)
    if not (_of_none(given) or _reads(given)):
        name = given.files[0] if given.files else None
        return (_plain if given.plain else _full_screen)(name, _plants(given))
    try:
        now = clock.now() if given.today is None else clock.on(given.today)
    except ValueError as wrong_day:
        return refuse(f"--today: {wrong_day}")
    from interview.plain.reports import report

    return report(given, now, _plants(given))


def _of_none(given: argparse.Namespace) -> bool:
    """Tell whether what is asked for is told of no garden."""
    return bool(given.questions or given.blank or given.schema)


def _prints(given: argparse.Namespace) -> bool:
    return bool(given.plan or given.sheet or given.card or given.figures)


def _reads(given: argparse.Namespace) -> bool:
    return bool(_prints(given) or given.check or given.table or given.diff)


def _misplaced(given: argparse.Namespace) -> str:
    """Say which option goes with another way, or which FILE is amiss; nothing where all fit."""
    if given.working and not (given.plan or given.sheet):
        return "--working goes with --plan or --sheet"
    if (given.json or given.schema) and not given.figures:
        return f"{'--json' if given.json else '--schema'} goes with --figures"
    if given.html and not given.card:
        return "--html goes with --card; --sheet is HTML as it is"
    if given.output is not None and not (_prints(given) or given.blank):
        return "--output goes with --plan, --sheet, --card, --figures or --blank"
    if not given.blank and (given.units or given.country or given.state):
        return "--units, --country and --state go with --blank"
    if given.columns is not None and not given.table:
        return "--columns goes with --table"
    if given.plants and _of_none(given):
        return "--plants goes with a garden: name its FILE, or leave --plants out"
    if (given.today is not None or given.strict) and (_of_none(given) or not _reads(given)):
        return "--today and --strict go with a report, such as --plan or --check"
    return _misplaced_files(given)


def _misplaced_files(given: argparse.Namespace) -> str:
    count = len(given.files)
    if _of_none(given):
        way = "--schema" if given.schema else "--blank" if given.blank else "--questions"
        return f"{way} goes with no FILE" if count else ""
    if given.diff:
        return "" if count == 2 else "--diff goes with two answers FILEs"
    if _reads(given):
        if not count:
            return "name the answers FILE as well"
        if given.files.count(INPUT) > 1:
            return "the standard input can be read once: name - once"
        if count > 1 and given.output is None and (given.sheet or given.html):
            return "several sheets of HTML need a folder: name it with --output"
        return ""
    if count > 1:
        return "the interview goes on with one FILE at a time"
    return "the interview needs a FILE, and - is none; name one" if INPUT in given.files else ""


def _plants(given: argparse.Namespace) -> str:
    """Return the plant file as a full path, for it is not looked for beside the answers file."""
    if not given.plants:
        return ""
    try:
        return str(Path(given.plants).expanduser().absolute())
    except (OSError, RuntimeError):  # no such person, no folder to start from
        return str(given.plants)


def _plain(name: str | None, plants: str) -> int:
    from interview.garden.opening import Refusal, open_session

    typist = Typist()
    with typist.listening():  # from before the lock until after it, so that none is left behind
        begin = partial(open_session, name, clock.now, plants=plants)
        opened = begin()
        if isinstance(opened, Refusal) and opened.unsure:
            asked = f"{opened.sentence}\nGo on with it here? Type yes: "
            opened = begin(ignore_elsewhere=True) if _agreed(typist.ask, asked) else opened
        if isinstance(opened, Refusal):
            return refuse(opened.sentence, opened.status)
        with opened.lock:
            for line in opened.notices:
                say(line)
            asked = "Go on with what is readable? The rest is kept. Type yes: "
            if opened.troubles and not _agreed(typist.ask, asked):
                return refuse("stopped; the file has not been touched", UNUSABLE)
            gc.enable()
            return _interview(opened, typist)


def _interview(opened: Opened, typist: Typist) -> int:
    """Hold the interview; whatever ends it, no answer is left in memory alone."""
    from interview.plain import interview as plain
    from interview.plain.told import where

    finished, trouble = False, None
    faults: list[own_fault.Fault] = []
    try:
        with own_fault.noting() as faults:
            opened.session.start()
            finished = plain.run(opened.session, typist.ask, say)
    except Exception as ended:
        trouble = ended
    unsaved = _unsaved(opened, bool(trouble))
    there, lines = opened.keeper.there, [""]
    if unsaved:
        refuse(unsaved)
    elif there:
        lines.append(f"Your answers are in {opened.shown_path}.")
    else:
        lines.append("Nothing was answered, so no file was made.")
    if opened.rescued or (there and not finished):
        lines.append(f"To go on: {opened.resume_command(NAME, '--plain')}")
    with suppress(NotSaid, BrokenPipeError):
        say("\n".join(lines))
    ended_by = ENDED_BY + typist.ended_by if typist.ended_by else 0
    if unsaved:
        return ended_by or UNSAVED
    if ended_by:
        streams.hush()
        return ended_by
    if trouble is not None:
        raise trouble
    for line in own_fault.told(faults):
        tell(f"{NAME}: {line}")
    if faults:
        return CRASHED
    if finished or not typist.at_end or opened.session.way.first_open() is None:
        return 0
    return refuse(f"the input ended at: {where(opened.session)}", INPUT_ENDED)


def _unsaved(opened: Opened, cut_short: bool) -> str:
    """Save what is not saved, or keep it elsewhere; return what is to be said of it."""
    session = opened.session
    gone = cut_short or not opened.keeper.there
    if not session.not_kept and not (gone and session.answers.texts):
        return ""
    why = ""
    try:
        session.save()
        why = session.not_kept
    except Exception as trouble:
        why = f"There was an error in the program ({own_fault.where(trouble)})."
    return f"NOT SAVED: {why} {opened.rescue()}".rstrip() if why else ""


def _agreed(ask: Callable[[str], str], asked: str) -> bool:
    """Ask before a file is written to that has faults, or may be open elsewhere."""
    try:
        return ask(asked).strip() == "yes"
    except EOFError:
        return False


def _full_screen(name: str | None, plants: str) -> int:
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        return refuse("a terminal is needed for the full screen; use --plain here")
    if os.environ.get("TERM") == "dumb":
        return refuse("this terminal cannot show a full screen; use --plain here")
    from interview.screens.run import run

    return run(name, clock.now, plants=plants)


if __name__ == "__main__":
    raise SystemExit(main())
