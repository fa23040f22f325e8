"""Text from outside, shown so that it can steer no terminal, forge no line and hide nothing.

Names of files, unknown keys, half-typed words, answers, cells of plant and rain files, and what the
operating system says of them all pass through ``shown`` before anybody sees them.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable

_BLANK = (
    "[\u034f\u115f\u1160\u17b4\u17b5\u180b-\u180f\u2800\u3164\ufe00-\ufe0f\uffa0"
    "\U000e0100-\U000e01ef]"
)
"""Printable to Python, and yet nothing is seen of them: what the Unicode Character Database lists
as Default_Ignorable_Code_Point, and the empty Braille pattern."""
_JOINER = "\u200d"
"""Makes one emoji of several."""
_SELECTORS = "[\ufe00-\ufe0f]"
"""Choose the look of the character before them, as in most hearts."""
_STEERING = ("Cc", "Cf", "Cs", "Zl", "Zp")
"""Categories of what moves the cursor, turns the writing, is half a character or parts lines."""
_CODES = (
    "(?:\x1b\\[|\x9b)[0-?]*[ -/]*[@-~]?"
    "|(?:\x1b[\\]PX^_]|[\x90\x98\x9d-\x9f])[^\x07\x1b\x9c\n\r]*(?:\x07|\x1b\\\\|\x9c)?"
    "|\x1b[ -/]*[0-~]?"
)
"""Control sequences, control strings and escapes, whole or broken off, by ECMA-48 (1991), 5.3 to
5.6; a string ends with its line too."""
_BARE = r"[A-Za-z0-9/._ ,=+@:-]"
"""What stands for itself between the quotes of ``printf`` in every shell."""


def code(character: str) -> str:
    """Return the character's number as people look it up, such as U+001B."""
    return f"U+{ord(character):04X}"


def replaced(text: str, mark: Callable[[str], str]) -> str:
    """Return ``text`` with each character that steers or hides replaced by its ``mark``.

    Spaces that are not plain ones count as hidden. What binds an emoji together stays in it.
    """
    if text.isprintable() and (text.isascii() or not re.search(_BLANK, text)):
        return text
    parts: list[str] = []
    before = ""
    for one in text:
        bound = before > "\x7f" and (one == _JOINER or re.match(_SELECTORS, one) is not None)
        if bound or (one.isprintable() and not re.match(_BLANK, one)):
            parts.append(one)
            before = "" if one == _JOINER else one
        else:
            parts.append(mark(one))
            before = ""
    return "".join(parts)


def shown(text: object) -> str:
    """Return the text on one line, with what steers or hides written as its number."""
    return replaced(str(text), lambda one: f"<{code(one)}>")


def lines_shown(text: str) -> str:
    """Return lines of text of which each is shown; they are parted by ``\\n`` alone."""
    return "\n".join(shown(line) for line in text.split("\n"))


def harmless(text: str) -> str:
    """Return what is left of a pasted text once codes for a terminal are taken out of it.

    A code goes whole, without leaving its tail; every line end becomes ``\\n``, every other space
    a plain one; marks that only steer or hide go.
    """
    lines = re.sub(_CODES, "", text).splitlines()
    return "\n".join(replaced(line, _let_go) for line in lines)


def _let_go(one: str) -> str:
    if one.isspace():
        return " "
    from unicodedata import category

    hides = category(one) in _STEERING or re.match(_BLANK, one)
    return "" if hides else one


def shell_word(name: str, encoding: str = "utf-8") -> str:
    """Return a name as one word for a POSIX shell, harmless to look at in ``encoding``.

    A name that cannot be shown as it is, or is no text, is put together by ``printf`` from octal
    bytes, which every shell has; the shells that know ``$'...'`` are fewer. Only that keeps a line
    end at the end of a name.
    """
    if shown(name) == name and _fits(name, encoding):
        from shlex import quote

        return quote(name)
    body = "".join(
        one if _stands_bare(one, encoding) and (place or one != "-") else _octal(one)
        for place, one in enumerate(name)
    )
    return f"$'{body}'" if name.endswith("\n") else f"\"$(printf '{body}')\""


def _stands_bare(one: str, encoding: str) -> bool:
    return bool(re.match(_BARE, one)) or (
        one > "\x7f" and shown(one) == one and _fits(one, encoding)
    )


def _fits(text: str, encoding: str) -> bool:
    try:
        text.encode(encoding)
    except (UnicodeError, LookupError):
        return False
    return True


def _octal(one: str) -> str:
    return "".join(f"\\{byte:03o}" for byte in os.fsencode(one))
