"""Which characters an answers file may hold, and how doubtful ones are shown."""

from __future__ import annotations

import re

from interview.reading.foreign import code, shown

__all__ = ["FORBIDDEN", "FORBIDDEN_RAW", "INVISIBLE", "LINE_END", "code", "place", "shown"]

_NONCHARACTERS = "\ufdd0-\ufdef" + "".join(
    chr(plane << 16 | 0xFFFE) + chr(plane << 16 | 0xFFFF) for plane in range(17)
)
FORBIDDEN = re.compile(
    f"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x80-\x84\x86-\x9f\ud800-\udfff{_NONCHARACTERS}]"
)
"""Never in an answer, not even escaped: control characters, half characters, noncharacters."""
FORBIDDEN_RAW = re.compile(f"{FORBIDDEN.pattern[:-1]}\x85\u2028\u2029\ufeff]")
"""Never in the file's own text: as well, what other readers take for a line end or a file mark."""
INVISIBLE = re.compile("[\xa0\xad\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufff9-\ufffb]")
"""Not in the name of a file that the program makes."""
LINE_END = re.compile(r"\r\n|\n|\r")


def place(text: str, index: int) -> tuple[int, int]:
    """Line and column, both from 1, of a position in the text."""
    line, start = 1, 0
    for end in LINE_END.finditer(text, 0, min(index + 1, len(text))):
        if end.end() > index:
            break
        line, start = line + 1, end.end()
    return line, index - start + 1
