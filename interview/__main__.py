"""The command line: the full screen, plain lines, the plan, the figures, the check."""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from interview.asking import own_fault
from interview.asking.long_work import HowFar, heard_by
from interview.plain import clock, streams
from interview.plain.streams import NotSaid, Typist, say
from interview.reading.foreign import shown

if TYPE_CHECKING:
    from interview.garden.opening import Opened
    from interview.garden.plan import Plan

NAME = "rain-garden-interview"
CLEAN, FAULTS, UNREADABLE = 0, 1, 2
"""Exit statuses of ``--check``."""
UNSAVED, INPUT_ENDED = 5, 7
"""Exit statuses of an interview: its last answers could not be saved; its input ended too soon."""
UNWRITTEN, CRASHED = 6, 70
"""Exit statuses: what was asked for could not be written out; a fault of the program itself, in
all of it or in a part."""
RARELY = (20_000, 20, 20)
"""Python's thresholds look for rings of objects every 700; loading makes many, and no rings."""


def version() -> str:
    """Return the version of the installed program."""
    from importlib.metadata import PackageNotFoundError
    from importlib.metadata import version as installed

    try:
        return installed(NAME)
    except PackageNotFoundError:
        return "0 (not installed)"


class _Parser(argparse.ArgumentParser):
    """Says what is wrong with the words of a command without a code for the terminal."""

    def error(self, message: str) -> NoReturn:
        super().error(shown(message))


def parser() -> argparse.ArgumentParser:
    """Return the reader of the command line."""
    words = _Parser(
        prog=NAME,
        description="An interview that plans a rain garden for a home yard: where it is safe to "
        "dig, how fast the soil takes water, what drains there, how deep and big, what to plant.",
        epilog="Without an option it fills the screen. Answers are saved after every one; start "
        "it again with the same file to go on.",
    )
    words.add_argument("file", nargs="?", metavar="FILE", help="answers file to go on with")
    ways = words.add_mutually_exclusive_group()
    ways.add_argument(
        "--plain",
        action="store_true",
        help="one question at a time, on plain lines; status 7 where the input ends too soon",
    )
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
    ways.add_argument("--questions", action="store_true", help="print the blank worksheet")
    ways.add_argument(
        "--blank", action="store_true", help="print an answers file to fill in, nothing answered"
    )
    for key in ("units", "country", "state"):
        words.add_argument(f"--{key}", metavar="WORD", help="with --blank: already answered there")
    words.add_argument(
        "--plants", metavar="CSV", help="choose from this plant file too, not the one FILE names"
    )
    words.add_argument(
        "--working", action="store_true", help="with --plan, --sheet: how all was worked out too"
    )
    words.add_argument("--json", action="store_true", help="with --figures: as JSON")
    words.add_argument("--schema", action="store_true", help="with --figures: what its keys mean")
    words.add_argument("--html", action="store_true", help="with --card: as HTML to print")
    words.add_argument("--output", metavar="PATH", help="write this file instead of printing")
    words.add_argument("--version", action="version", version=f"{NAME} {version()}")
    return words


def main(words: Sequence[str] | None = None) -> int:
    """Run the program; return its exit status."""
    gc.set_threshold(*RARELY)
    streams.mend()
    given = parser().parse_args(words)
    try:
        return _run(given)
    except BrokenPipeError:
        # The reader of a pipe went away; leave quietly, as the tools of a pipe do.
        streams.hush()
        return 0
    except NotSaid as trouble:
        streams.hush()
        return _refuse(f"The output could not be written. {trouble}", UNWRITTEN)
    except KeyboardInterrupt:
        _tell("")
        return 130
    except Exception as trouble:
        said = f"An error in the program stopped it ({own_fault.where(trouble)})."
        return _refuse(said, CRASHED)


def _run(given: argparse.Namespace) -> int:
    if wrong := _misplaced(given):
        return _refuse(wrong)
    if given.questions or given.schema or given.blank:
        return _report(given)
    if given.check or _prints(given):
        if not given.file:
            return _refuse("name the answers FILE as well")
        return _report(given)
    if given.plain:
        return _plain(given.file, _plants(given))
    return _full_screen(given.file, _plants(given))


def _prints(given: argparse.Namespace) -> bool:
    return bool(given.plan or given.sheet or given.card or given.figures)


def _misplaced(given: argparse.Namespace) -> str:
    """Say which option goes with another way; nothing where all fit."""
    if given.working and not (given.plan or given.sheet):
        return "--working goes with --plan or --sheet"
    if (given.json or given.schema) and not given.figures:
        return f"{'--json' if given.json else '--schema'} goes with --figures"
    if given.html and not given.card:
        return "--html goes with --card; --sheet is HTML as it is"
    if given.output is not None and not (_prints(given) or given.blank):
        return "--output goes with --plan, --sheet, --card, --figures or --blank"
    if given.blank and given.file:
        return "--blank goes with no FILE; --output names the file to write"
    if not given.blank and (given.units or given.country or given.state):
        return "--units, --country and --state go with --blank"
    return ""


def _plants(given: argparse.Namespace) -> str:
    """Return the plant file as a full path, for it is not looked for beside the answers file."""
    if not given.plants:
        return ""
    try:
        return str(Path(given.plants).expanduser().absolute())
    except (OSError, RuntimeError):  # no such person, no folder to start from
        return str(given.plants)


def _refuse(sentence: str, status: int = UNREADABLE) -> int:
    _tell(f"{NAME}: {sentence}")
    return status


def _tell(line: str) -> None:
    """Write a line to the errors, where they still can be written to."""
    with suppress(OSError, ValueError):
        print(shown(line), file=sys.stderr, flush=True)


def _report(given: argparse.Namespace) -> int:
    """Print what was asked for; a part at fault is told, and the rest is given."""
    with own_fault.noting() as faults:
        status = _reported(given)
    for line in own_fault.told(faults):
        _tell(f"{NAME}: {line}")
    return CRASHED if faults else status


def _reported(given: argparse.Namespace) -> int:
    if given.questions or given.schema or given.blank:
        return _without_file(given)
    from interview import answers_file as af
    from interview.garden import store

    path = Path(given.file)
    try:
        loaded, _ = store.load(path)
    except af.NotLoaded as trouble:
        return _refuse(str(trouble))
    except af.Unreadable as trouble:
        return _refuse(f"{af.shown(given.file)}: {trouble}")
    except ValueError as wrong:
        return _refuse(str(wrong))
    from interview.garden.opening import plan_of

    plan = plan_of(loaded.answers, path.parent, clock.now(), _plants(given))
    if given.check:
        from interview.sheet import check

        beside = check.faults_beside(plan)
        say(check.check_text(given.file, loaded, beside), end="")
        return FAULTS if loaded.troubles or beside else CLEAN
    with heard_by(_far):
        text = _sheet(given)(plan)
    _far(None)
    status = 0
    if given.output is None:
        say(text, end="")
    else:
        status = _put(given.output, text, path)
    for one in loaded.troubles:
        _tell(f"{NAME}: line {one.line}: {one.key}: {one.sentence}")
    return status


def _without_file(given: argparse.Namespace) -> int:
    """Print what is told of every garden; a blank answers file may be written, to a new file."""
    from interview import answers_file as af

    try:
        text = _told_of_all(given)
        if given.output is not None:
            af.save(given.output, text, expect=None)
            return 0
    except af.NotSaved as trouble:
        return _refuse(f"not written: {trouble}", UNWRITTEN)
    except ValueError as refused:
        return _refuse(str(refused))
    say(text, end="")
    return 0


def _told_of_all(given: argparse.Namespace) -> str:
    if given.schema:
        from interview.sheet.figures_file import schema_text

        return schema_text()
    if given.questions:
        from interview.sheet.report import worksheet

        return worksheet()
    from interview.sheet.blank import blank_text

    return blank_text(given.units, given.country, given.state, f"{NAME} {version()}")


def _put(name: str, text: str, answers: Path) -> int:
    """Write a page to a file, whole or not at all, and over nothing but an earlier page."""
    from interview import answers_file as af
    from interview.sheet.written import NotOurs, put_page

    try:
        put_page(name, text, answers)
    except (NotOurs, af.NotSaved) as trouble:
        return _refuse(f"not written: {trouble}", UNWRITTEN)
    return 0


def _sheet(given: argparse.Namespace) -> Callable[[Plan], str]:
    """Return what writes the sheet that is asked for; the others are not loaded."""
    if given.figures:
        from interview.sheet.figures_file import figures_json, figures_text

        wanted = figures_json if given.json else figures_text
        return partial(wanted, written_by=f"{NAME} {version()}")
    if given.sheet:
        from interview.sheet.page import page_html

        return partial(page_html, working=given.working)
    if given.html:
        from interview.sheet.page import card_html

        return card_html
    if given.card:
        from interview.sheet.card import card_text

        return card_text
    from interview.sheet.report import outside_text, plan_text

    return plan_text if given.working else outside_text


def _far(far: HowFar | None) -> None:
    """Show on one line of a terminal how far a long sum is; nothing takes the line away."""
    if sys.stderr is None or not sys.stderr.isatty():
        return
    with suppress(OSError, UnicodeError):
        print(f"\r\033[K{far.words if far else ''}", end="", file=sys.stderr, flush=True)


def _plain(name: str | None, plants: str) -> int:
    from interview.garden.opening import UNUSABLE, Refusal, open_session

    typist = Typist()
    with typist.listening():  # from before the lock until after it, so that none is left behind
        begin = partial(open_session, name, clock.now, f"{NAME} {version()}", plants=plants)
        opened = begin()
        if isinstance(opened, Refusal) and opened.unsure:
            asked = f"{opened.sentence}\nGo on with it here? Type yes: "
            opened = begin(ignore_elsewhere=True) if _agreed(typist.ask, asked) else opened
        if isinstance(opened, Refusal):
            return _refuse(opened.sentence, opened.status)
        with opened.lock:
            for line in opened.notices:
                say(line)
            asked = "Go on with what is readable? The rest is kept. Type yes: "
            if opened.troubles and not _agreed(typist.ask, asked):
                return _refuse("stopped; the file has not been touched", UNUSABLE)
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
        _refuse(unsaved)
    elif there:
        lines.append(f"Your answers are in {opened.shown_path}.")
    else:
        lines.append("Nothing was answered, so no file was made.")
    if opened.rescued or (there and not finished):
        lines.append(f"To go on: {opened.resume_command(NAME, '--plain')}")
    with suppress(NotSaid, BrokenPipeError):
        say("\n".join(lines))
    ended_by = 128 + typist.ended_by if typist.ended_by else 0
    if unsaved:
        return ended_by or UNSAVED
    if ended_by:
        streams.hush()
        return ended_by
    if trouble is not None:
        raise trouble
    for line in own_fault.told(faults):
        _tell(f"{NAME}: {line}")
    if faults:
        return CRASHED
    if finished or not typist.at_end or opened.session.way.first_open() is None:
        return 0
    return _refuse(f"the input ended at: {where(opened.session)}", INPUT_ENDED)


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
        return _refuse("a terminal is needed for the full screen; use --plain here")
    if os.environ.get("TERM") == "dumb":
        return _refuse("this terminal cannot show a full screen; use --plain here")
    from interview.screens.run import run

    return run(name, clock.now, f"{NAME} {version()}", plants)


if __name__ == "__main__":
    raise SystemExit(main())
