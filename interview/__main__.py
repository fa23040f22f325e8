"""The command line: the full screen, plain lines, the plan, the figures, the check."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TextIO

from interview import clock
from interview.long_work import HowFar, heard_by

NAME = "rain-garden-interview"
CLEAN, FAULTS, UNREADABLE = 0, 1, 2
"""Exit statuses of ``--check``."""
UNSAVED = 5
"""Exit status of an interview whose last answers could not be saved."""


def version() -> str:
    """Return the version of the installed program."""
    from importlib.metadata import PackageNotFoundError
    from importlib.metadata import version as installed

    try:
        return installed(NAME)
    except PackageNotFoundError:
        return "0 (not installed)"


def parser() -> argparse.ArgumentParser:
    """Return the reader of the command line."""
    words = argparse.ArgumentParser(
        prog=NAME,
        description="An interview that plans a rain garden for a home yard: where it is safe to "
        "dig, how fast the soil takes water, what drains there, how deep and big, what to plant.",
        epilog="Without an option it fills the screen. Answers are saved after every one; start "
        "it again with the same file to go on.",
    )
    words.add_argument("file", nargs="?", metavar="FILE", help="answers file to go on with")
    ways = words.add_mutually_exclusive_group()
    ways.add_argument("--plain", action="store_true", help="question by question on plain lines")
    ways.add_argument("--plan", action="store_true", help="print the plan of FILE")
    ways.add_argument(
        "--card", action="store_true", help="print the yard card of FILE: one page to take outside"
    )
    ways.add_argument("--figures", action="store_true", help="print every figure of FILE as YAML")
    ways.add_argument(
        "--check", action="store_true", help="list faults and open questions of FILE; status 0-2"
    )
    ways.add_argument("--questions", action="store_true", help="print the blank worksheet")
    words.add_argument(
        "--plants", metavar="CSV", help="choose from this plant file too, not the one FILE names"
    )
    words.add_argument("--version", action="version", version=f"{NAME} {version()}")
    return words


def main(words: Sequence[str] | None = None) -> int:
    """Run the program; return its exit status."""
    _safe_streams(sys.stdout, sys.stderr)
    given = parser().parse_args(words)
    try:
        return _run(given)
    except BrokenPipeError:
        # The reader of a pipe went away; leave quietly, as the tools of a pipe do.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        print(file=sys.stderr)
        return 130


def _safe_streams(*streams: TextIO) -> None:
    """Let characters that the terminal cannot show be replaced instead of failing."""
    for stream in streams:
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")


def _run(given: argparse.Namespace) -> int:
    if given.questions:
        from interview.report import worksheet

        print(worksheet(), end="")
        return 0
    if given.plan or given.card or given.figures or given.check:
        if not given.file:
            return _refuse("name the answers FILE as well")
        return _report(given)
    if given.plain:
        return _plain(given.file, _plants(given))
    return _full_screen(given.file, _plants(given))


def _plants(given: argparse.Namespace) -> str:
    """Return the plant file as a full path, for it is not looked for beside the answers file."""
    return str(Path(given.plants).expanduser().absolute()) if given.plants else ""


def _refuse(sentence: str, status: int = UNREADABLE) -> int:
    print(f"{NAME}: {sentence}", file=sys.stderr)
    return status


def _report(given: argparse.Namespace) -> int:
    from interview import answers_file as af
    from interview import check, store

    path = Path(given.file)
    try:
        loaded, _ = store.load(path)
    except (af.NotLoaded, af.Unreadable) as trouble:
        return _refuse(f"{af.shown(given.file)}: {trouble}")
    except ValueError as wrong:
        return _refuse(str(wrong))
    from interview import card, figures_file, report
    from interview.opening import plan_of

    plan = plan_of(loaded.answers, path.parent, clock.now(), _plants(given))
    if given.check:
        own = plan.plant_file
        print(check.check_text(given.file, loaded, own), end="")
        return FAULTS if loaded.troubles or own.faults or own.trouble else CLEAN
    with heard_by(_far):
        if given.figures:
            text = figures_file.figures_text(plan)
        elif given.card:
            text = card.card_text(plan)
        else:
            text = report.plan_text(plan)
    _far(None)
    print(text, end="")
    for one in loaded.troubles:
        print(f"{NAME}: line {one.line}: {one.key}: {one.sentence}", file=sys.stderr)
    return 0


def _far(far: HowFar | None) -> None:
    """Show on one line of a terminal how far a long sum is; nothing takes the line away."""
    if sys.stderr.isatty():
        print(f"\r\033[K{far.words if far else ''}", end="", file=sys.stderr, flush=True)


def _plain(name: str | None, plants: str) -> int:
    from interview import plain
    from interview.opening import UNUSABLE, Opened, Refusal, open_session

    def ask(prompt: str) -> str:
        return input(prompt)

    opened: Opened | Refusal = open_session(name, clock.now, f"{NAME} {version()}", plants=plants)
    if isinstance(opened, Refusal):
        return _refuse(opened.sentence, opened.status)
    for line in opened.notices:
        print(line)
    if opened.troubles and not _agreed(ask):
        opened.lock.release()
        return _refuse("stopped; the file has not been touched", UNUSABLE)
    with opened.lock:
        finished = plain.run(opened.session, ask, print)
        print(f"\nYour answers are in {opened.shown_path}.")
        if not finished:
            print(f"To go on: {opened.resume_command(NAME, '--plain')}")
        if opened.session.not_kept:
            rescued = opened.rescue()
            return _refuse(f"NOT SAVED: {opened.session.not_kept} {rescued}".rstrip(), UNSAVED)
    return 0


def _agreed(ask: Callable[[str], str]) -> bool:
    """Ask before a file with faults is written to."""
    try:
        return ask("Go on with what is readable? The rest is kept. Type yes: ").strip() == "yes"
    except (EOFError, KeyboardInterrupt):
        return False


def _full_screen(name: str | None, plants: str) -> int:
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        return _refuse("a terminal is needed for the full screen; use --plain here")
    from interview.screens.run import run

    return run(name, clock.now, f"{NAME} {version()}", plants)


if __name__ == "__main__":
    raise SystemExit(main())
