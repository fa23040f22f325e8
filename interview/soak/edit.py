"""Readings added afterwards, corrected, struck out and taken back in: the words that are kept."""

from __future__ import annotations

from interview.kinds import list_lines
from interview.lines import STRUCK
from interview.model import Answers
from interview.questions import soak
from interview.reading import Refused, is_unknown


def reading_lines(view: Answers) -> list[str]:
    """Return the readings of one hole as the file keeps them, struck ones too."""
    kept = view.text(soak.READINGS) or ""
    return [] if is_unknown(kept) else list_lines(kept)


def with_added(view: Answers, line: str) -> str:
    """Return the readings with ``line`` put where its own time belongs; raises ``Refused``."""
    lines = reading_lines(view)
    refusals: list[Refused] = []
    for place in range(len(lines), -1, -1):
        try:
            return _settled(view, [*lines[:place], line, *lines[place:]])
        except Refused as refused:
            refusals.append(refused)
    raise _telling(refusals)


def _telling(refusals: list[Refused]) -> Refused:
    """The refusal that is about the reading and not about where it was tried."""
    for refused in refusals:
        if not isinstance(refused, (soak.OutOfOrder, soak.StillToCome)):
            return refused
    later = (one for one in refusals if isinstance(one, soak.StillToCome))
    return next(later, refusals[-1])


def with_corrected(view: Answers, place: int, line: str) -> str:
    """Return the readings with number ``place``, from 1, written anew; raises ``Refused``."""
    lines = reading_lines(view)
    lines[_index(lines, place)] = line
    return _settled(view, lines)


def with_struck(view: Answers, place: int) -> str:
    """Return the readings with number ``place`` struck out, or taken back in where it was struck.

    A struck reading stays in the file and counts for nothing. Raises ``Refused``.
    """
    lines = reading_lines(view)
    index = _index(lines, place)
    if lines[index].casefold().startswith(STRUCK):
        lines[index] = lines[index][len(STRUCK) :].strip()
    else:
        lines[index] = f"{STRUCK} {lines[index]}"
    return _settled(view, lines)


def _index(lines: list[str], place: int) -> int:
    if not 1 <= place <= len(lines):
        count = len(lines)
        raise Refused(
            f"There is no reading {place}; there are {count}."
            if count
            else "There is no reading yet."
        )
    return place - 1


def _settled(view: Answers, lines: list[str]) -> str:
    return soak.READINGS.kind.settle("\n".join(lines), view)
