"""The stages as the strip names them, and how far one may be."""

from __future__ import annotations

from typing import NamedTuple

from interview.screens import palette

STAGE_NAMES = {
    "start": "Start",
    "site": "Siting",
    "soak": "Soak test",
    "survey": "Survey",
    "bed": "Size",
    "plants": "Plants",
    "review": "Review",
}
"""Names of the stages that are short enough for the strip."""
_STAGE_MARKS = {
    "done": palette.MARKS["good"],
    "in progress": palette.BEGUN,
    "needs attention": palette.MARKS["stop"],
    "shut": palette.SHUT,
    "not started": palette.OPEN,
}


class StageShare(NamedTuple):
    """How far one stage is, and whether one is in it."""

    name: str
    word: str
    done: int
    total: int
    here: bool = False

    @property
    def mark(self) -> str:
        """The mark before its name."""
        return palette.HERE if self.here else _STAGE_MARKS[self.word]


NOT_STARTED = tuple(StageShare(name, "not started", 0, 0) for name in STAGE_NAMES.values())
"""The stages while no garden is open."""
