"""How much of the first page is left for the garden from above, from what else stands there.

A printed letter is taken as wide as Arial has it on the average. Lengths are millimetres; a guess
that is a little off costs white paper, or a page more.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

LEAST_MM, MOST_MM = 54.0, 92.0
"""Heights of the picture."""
_PAGE = 256.0
"""Height of the text on letter paper, the lower of the two."""
_HEADS = 121.0
"""Head, verdict, sentence, figures, section, headings and the last line."""
_ROW, _KEY, _NOTES = 4.85, 4.0, 12.0
"""A row of pegs, a line of a legend, the notes under the picture."""
_LEGEND = 16.0
"""The legend where it stands under the picture."""
SECOND_LINE = 6.0
"""What a verdict takes that has no room on one line."""
_SIDE, _PEG_SIDE = 56.0, 68.0
"""Width of the words at the right, and of those beside the pegs."""
_TEXT, _NOTE = (1.66, 4.13, 1.1), (1.57, 3.9, 0.8)
"""Width of a letter, height of a line, space after a paragraph: of the text and of notes."""


def high(lines: Iterable[str], of: tuple[float, float, float], wide: float) -> float:
    """Return the height of paragraphs."""
    letter, line, after = of
    return sum(math.ceil(len(one) * letter / wide) * line + after for one in lines)


def above(
    peg_words: Sequence[str], pegs: int, steps: Sequence[str], keys: int, more: float = 0.0
) -> tuple[float, bool]:
    """Return the height of the picture, and whether its legend stands apart, under the steps.

    ``more`` is what the head takes beyond the usual.
    """
    room = _PAGE - _HEADS - more - max(_ROW * (pegs + 1), high(peg_words, _NOTE, _PEG_SIDE))
    beside = high(steps, _TEXT, _SIDE)
    apart = beside + _KEY * keys <= max(room, LEAST_MM + _NOTES)
    under = _NOTES if apart else _NOTES + _LEGEND
    return min(max(room - under, beside - under, LEAST_MM), MOST_MM), apart
