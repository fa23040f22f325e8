"""How much of the first page is left for the garden from above, from what else stands there.

A printed letter is taken as wide as Arial has it on the average. Lengths are millimetres; a guess
that is a little off costs white paper, or a page more.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

LEAST_MM, MOST_MM = 80.0, 130.0
"""Heights of the picture."""
_SPARE = 12.0
"""How much less than the lowest picture still fits: pages printed were found to leave 18."""
SECTION_MM = 48.0
"""Height of the section."""
_PAGE = 260.0
"""Height of the text on letter paper, the lower of the two."""
_HEADS = 76.0
"""Head, verdict, sentence, figures, headings and the last line."""
_ROW, _KEY = 4.6, 4.0
"""A row of pegs, a line of a legend."""
_HEADING = 7.0
"""Height of the heading of a part."""
SECOND_LINE = 6.0
"""What a verdict takes that has no room on one line."""
NAME_LETTERS = 26
"""Letters of the garden's name that have room on a line; a longer one is set smaller."""
_NAME_LINE, _SMALL_LETTERS = 7.0, 38
"""Height of a line of such a name, and the letters that it has room for."""
SIDE, HALF, PEGS, WIDE = 56.0, 82.0, 96.0, 122.0
"""Width of the words at the right, of the section, of the pegs, of the picture."""
_TEXT, _NOTE = (1.57, 4.13, 1.1), (1.48, 3.9, 0.8)
"""Width of a letter, height of a line, space after a paragraph: of the text and of notes."""


def high(lines: Iterable[str], of: tuple[float, float, float], wide: float) -> float:
    """Return the height of paragraphs."""
    letter, line, after = of
    return sum(math.ceil(len(one) * letter / wide) * line + after for one in lines)


class FrontPage(NamedTuple):
    """What stands on the first page beside the garden from above."""

    steps: Sequence[str]
    keys: int
    """Entries of its legend."""
    notes: Sequence[str]
    peg_words: Sequence[str]
    pegs: int
    """Rows of pegs."""
    section: Sequence[str]
    """Notes of the section; none where it is not drawn."""
    section_keys: int
    name: str
    lines: int = 1
    """Lines of the verdict."""
    open: Sequence[str] = ()
    """What is still to be found out, in the width of the page."""


class FrontRoom:
    """Where the steps and the legend of the picture stand, how high it is, what has no room."""

    def __init__(self, one: FrontPage) -> None:
        pegs = _ROW * (one.pegs + 1) + high(one.peg_words, _NOTE, PEGS)
        cut = SECTION_MM + _KEY * math.ceil(one.section_keys / 2) + high(one.section, _NOTE, HALF)
        name = _NAME_LINE * (len(one.name) // _SMALL_LETTERS)
        head = _HEADS + SECOND_LINE * (one.lines - 1) + name
        still = _HEADING + high(one.open, _TEXT, SIDE + WIDE) if one.open else 0.0
        room = _PAGE - head - max(pegs, cut) - still
        steps, legend = high(one.steps, _TEXT, SIDE), _KEY * one.keys
        notes = high(one.notes, _NOTE, SIDE)
        self.steps_apart = steps > max(room, LEAST_MM)
        """Whether the steps stand under the picture, in two columns."""
        self.legend_apart = self.steps_apart or steps + legend <= max(room, LEAST_MM)
        """Whether the legend stands at the right of the picture, under the steps or alone."""
        self.notes_apart = self.steps_apart or steps + legend + notes <= max(room, LEAST_MM)
        """Whether the notes stand under it there."""
        if self.steps_apart:
            room -= high(one.steps, _TEXT, (SIDE + WIDE) / 2) / 2 + 8
        if not self.legend_apart:
            # And a line more, as what stands under the picture is guessed the most roughly.
            room -= _KEY * (math.ceil(one.keys / 2) + 1)
        if not self.notes_apart:
            room -= high(one.notes, _NOTE, WIDE)
        self.high = min(max(room, LEAST_MM), MOST_MM)
        self.spills = room < LEAST_MM - _SPARE
        """Whether the page goes on on another one, however low the picture is."""
