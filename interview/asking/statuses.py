"""The program's name and version, and the exit statuses by which a script learns how a run went."""

from __future__ import annotations

from functools import cache

NAME = "rain-garden-interview"
CLEAN, FAULTS, UNREADABLE, UNUSABLE, IN_USE, UNSAVED, UNWRITTEN, INPUT_ENDED = range(8)
INPUT = "-"
"""The FILE that stands for the standard input."""
CRASHED, INTERRUPTED, ENDED_BY = 70, 130, 128

STATUSES: tuple[tuple[str, str], ...] = (
    (str(CLEAN), "all was given; with --check: no faults"),
    (str(FAULTS), "--check: faults; with --strict: faults, or a plan not finished"),
    (str(UNREADABLE), "the command is wrong, or a file cannot be read"),
    (str(UNUSABLE), "the answers file cannot be used"),
    (str(IN_USE), "the answers file is open elsewhere"),
    (str(UNSAVED), "the last answers could not be saved"),
    (str(UNWRITTEN), "the output could not be written"),
    (str(INPUT_ENDED), "--plain: the input ended while pages are open"),
    (str(CRASHED), "a fault of the program, in all of it or in a part"),
    (f"{ENDED_BY}+n", f"ended by signal n, such as {INTERRUPTED} by Ctrl+C"),
)
"""Every exit status and what it says; of several files the worst one, which is the highest."""


@cache
def written_by() -> str:
    """Return the program's name and the version that is installed, as files say who wrote them."""
    from importlib.metadata import PackageNotFoundError
    from importlib.metadata import version as installed

    try:
        return f"{NAME} {installed(NAME)}"
    except PackageNotFoundError:
        return f"{NAME} 0 (not installed)"
