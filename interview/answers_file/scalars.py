"""One answer as YAML text that every YAML reader takes for the same characters."""

from __future__ import annotations

import re

from interview.answers_file.characters import FORBIDDEN, code
from interview.answers_file.tree import KEY_LIMIT, SCALAR_LIMIT, Unwritable
from interview.reading.foreign import replaced, shown

_SAFE = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9 _./%+()'\"-]|:(?=[0-9A-Za-z]))*(?<! )")
_SAFE_KEY = re.compile(r"[A-Za-z][A-Za-z0-9_-]*")
# what YAML 1.1 or 1.2 readers may take for a truth value, nothing, a number, a time or a date
_WORDS = re.compile(r"y|yes|n|no|true|false|on|off|null|nan|inf|infinity", re.IGNORECASE)
_NUMBER = re.compile(
    r"0x[0-9a-f_]*|0o[0-7_]*|0b[01_]*"
    r"|[0-9][0-9_,.]*(?:e[-+]?[0-9_]*)?|[0-9][0-9_]*(?::[0-9][0-9_]*)+(?:\.[0-9_]*)?"
    r"|[0-9]{1,4}-[0-9]{1,2}-[0-9]{1,2}(?:[t ][0-9: .+z-]*)?",
    re.IGNORECASE,
)
_QUOTED = str.maketrans({'"': '\\"', "\\": "\\\\"})
_SHORT = {"\n": "\\n", "\t": "\\t", "\r": "\\r"}


def unwritable(text: str) -> str:
    """Why an answer cannot be kept in a file, as a sentence; empty when it can."""
    if found := FORBIDDEN.search(text):
        return (
            f"This holds a control character ({code(found.group())}) that cannot be kept; "
            "type it again without it."
        )
    if len(text) > SCALAR_LIMIT:
        return f"This is longer than {SCALAR_LIMIT} characters; shorten it."
    return ""


def double_quoted(text: str) -> str:
    """The text in double quotes, on one line, what cannot be seen written as an escape."""
    return f'"{replaced(text.translate(_QUOTED), _escape)}"'


def _escape(character: str) -> str:
    if "\ud800" <= character <= "\udfff":  # no escape of YAML stands for half a character
        return shown(character)
    number = ord(character)
    wide = f"\\u{number:04X}" if number <= 0xFFFF else f"\\U{number:08X}"
    return _SHORT.get(character, wide)


def written(text: str, *, quoted: bool = False) -> str:
    """An answer as YAML: bare when no reader can mistake it, else in double quotes.

    Raises Unwritable for a control character or a text that is too long.
    """
    if reason := unwritable(text):
        raise Unwritable(reason)
    bare = _SAFE.fullmatch(text) and not _WORDS.fullmatch(text) and not _NUMBER.fullmatch(text)
    return text if bare and not quoted else double_quoted(text)


def written_key(key: str) -> str:
    """A key as YAML; raises Unwritable for an empty or over-long one."""
    if not 0 < len(key) <= KEY_LIMIT:
        raise Unwritable("A name in the answers file is empty or too long.")
    if reason := unwritable(key):
        raise Unwritable(reason)
    return key if _SAFE_KEY.fullmatch(key) and not _WORDS.fullmatch(key) else double_quoted(key)
