"""A verdict as a badge with its mark and its word, then its sentence."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from textual.content import Content

from interview.screens.palette import MARKS

if TYPE_CHECKING:
    from interview.garden.verdicts import Verdict  # it knows every sum

_LEAD = r"^(?:(TOO [A-Z]+|STOP)(?: here)?[:.]|Fine:) "
"""The word that a line begins with: it stands on the badge."""
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
    return Content.assemble(
        (f" {MARKS[ink]} {word} ", f"bold $ground on ${ink}"), " ", (said, f"bold ${ink}")
    )
