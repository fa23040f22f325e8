"""Plain characters that stand in for those an output cannot write, as ``ft2`` does for ``ft²``."""

from __future__ import annotations

import codecs
import unicodedata

HTML = "<!doctype html"

STAND_INS = {
    # measures
    "²": "2", "³": "3", "⁄": "/", "×": "x", "÷": "/", "±": "+/-", "−": "-", "≈": "~", "≤": "<=",
    "≥": ">=", "′": "'", "″": "''", "€": "EUR", "£": "GBP", "¥": "JPY", "¢": "c",
    # marks; none is a double quotation mark or a comma: YAML, JSON or CSV may stand around them
    "‐": "-", "‑": "-", "–": "-", "—": "-", "…": "...", "·": ".", "•": "*", "‘": "'", "’": "'",
    "“": "'", "”": "'", "«": "'", "»": "'", "←": "<", "→": ">", "↑": "^", "↓": "v", "✓": "+",
    "✕": "x", "●": "o", "○": "o", "■": "#", "▲": "^", "▼": "v", "\N{NO-BREAK SPACE}": " ",
    # lines and grounds of the drawings, a character for a character
    "─": "-", "━": "-", "═": "=", "│": "|", "║": "|", "╌": "'", "╎": "!", "╱": "/", "╲": "\\",
    "╳": "X", "┼": "+", "├": "+", "┤": "+", "┌": "+", "┐": "+", "└": "+", "┘": "+", "‾": "-",
    "⠤": "*", "░": ":", "▒": "%", "▓": "&", "█": "#",
    # letters that are no plain letter with a mark on it
    "ß": "ss", "æ": "ae", "Æ": "AE", "œ": "oe", "Œ": "OE", "ø": "o", "Ø": "O", "ł": "l", "Ł": "L",
    "đ": "d", "Đ": "D", "ð": "d", "Ð": "D", "þ": "th", "Þ": "Th", "ı": "i",
}  # fmt: skip
"""What is written in place of a character."""
DEGREE = "°"
_UNSAFE = frozenset('"\\')
"""They end or bend a quoted text."""


def plain(text: str, before: str = "") -> str:
    """Return ``text`` in ASCII alone; ``before`` is the character that it follows.

    A fraction parts from the digit before it, a letter loses its mark; for what has no stand-in
    there is a ``?``.
    """
    parts = []
    for one in text:
        parts.append(one if one.isascii() else _plain(one, before))
        before = one
    return "".join(parts)


def _plain(one: str, before: str) -> str:
    if found := STAND_INS.get(one):
        return found
    if one == DEGREE:
        return "deg" if before in (" ", "") else " deg"
    apart = unicodedata.normalize("NFKD", one)
    letters = "".join(
        STAND_INS.get(each, each) for each in apart if not unicodedata.combining(each)
    )
    if not letters.isascii() or not letters.isprintable() or _UNSAFE & set(letters):
        return "?"
    return f" {letters}" if "/" in letters and before.isdigit() else letters or "?"


def stand_in(trouble: UnicodeError) -> tuple[str | bytes, int]:
    """Return what is written for what could not be, and where to go on, as ``codecs`` asks for it.

    A page of HTML keeps every character, by its number.
    """
    if not isinstance(trouble, UnicodeEncodeError):
        raise trouble
    text = trouble.object
    if text.startswith(HTML):
        return codecs.xmlcharrefreplace_errors(trouble)
    before = text[trouble.start - 1] if trouble.start else ""
    return plain(text[trouble.start : trouble.end], before), trouble.end
