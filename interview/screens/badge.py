"""A verdict as a badge with its mark and its word, then its sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import TYPE_CHECKING

from textual.content import Content

from interview.screens.palette import MARKS

if TYPE_CHECKING:
    from interview.garden.verdicts import Verdict  # it knows every sum

_LEAD = r"^(?:(TOO [A-Z]+|STOP)(?: here)?[:.]|Fine:) "
"""The word that a line begins with: it stands on the badge."""
_GRADE = r"^(STOP|FIX|TOO [A-Z]+)(?: here)?[:.] "
"""The same of a line that is told: a size or a room that does not do is to be mended."""
_MEND = ("FIX", "TOO SMALL")
_INKS = {"good": "good", "fix": "look", "stop": "stop"}


def badged(verdict: Verdict) -> Content:
    """Return the verdict for the screen: what it says is text, and never read as markup."""
    lead = re.match(_LEAD, verdict.line)
    ink = "look" if verdict.near else _INKS[verdict.grade.value]
    word = "NEAR" if verdict.near else verdict.grade.value.upper()
    said = verdict.line
    if lead is not None:
        word = lead[1] or word
        said = said[lead.end() :]
    said = said[:1].upper() + said[1:]
    return Content.assemble(*_badge(word, ink, said))


def told(lines: Iterable[str], apart: bool) -> Content:
    """Return what a page tells: the first line leads, and a verdict in it stands on a badge.

    ``apart`` sets a blank line between them.
    """
    pieces: list[tuple[str, str]] = []
    for line in lines:
        if pieces:
            pieces.append(("\n\n" if apart else "\n", ""))
        pieces += marked(line) or [(line, "" if pieces else "bold")]
    return Content.assemble(*pieces)


def marked(line: str) -> list[tuple[str, str]]:
    """Return a line that begins with a verdict as its badge and its words; nothing for another."""
    lead = re.match(_GRADE, line)
    if lead is None:
        return []
    said = line[lead.end() :]
    ink = "look" if lead[1] in _MEND else "stop"
    return _badge(lead[1], ink, said[:1].upper() + said[1:])


def _badge(word: str, ink: str, said: str) -> list[tuple[str, str]]:
    badge = (f" {MARKS[ink]} {word} ", f"bold $ground on ${ink}")
    return [badge, (" ", ""), (said, f"bold ${ink}")]
