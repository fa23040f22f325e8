"""The lines of a text file out of its bytes, in memory that no file can make large."""

from __future__ import annotations

import codecs
import io
import re
from collections.abc import Iterable, Iterator
from contextlib import suppress
from itertools import chain

_MARKS_16 = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)
_STEERING = "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\u202a-\u202e\u2066-\u2069]"
"""Control characters, and those that turn the direction of writing."""


def lines_of(pieces: Iterable[bytes], longest: int) -> Iterator[str]:
    """Yield the lines of a text that comes in ``pieces``, without what ends them.

    The text is UTF-8, UTF-16 with its mark, or else Latin-1, line by line. A line of more than
    ``longest`` characters (bytes, but for UTF-16) is cut to one more than that. What could steer
    a terminal is replaced. Raises ValueError for data that is no text.
    """
    found = iter(pieces)
    first = b""
    while len(first) < 2 and (piece := next(found, b"")):
        first += piece
    wide = first.startswith(_MARKS_16)
    decoder = codecs.getincrementaldecoder("utf-16" if wide else "latin-1")()
    held, lead = "", "" if wide else "\ufeff"
    for text in _texts(chain((first,), found), decoder):
        *whole, held = (held + text).split("\n")
        for line in whole:
            yield _clean(line, longest, wide).removeprefix(lead)
            lead = ""
        held = held[: longest + 1]
    if held:
        yield _clean(held, longest, wide).removeprefix(lead)


def _texts(pieces: Iterable[bytes], decoder: codecs.IncrementalDecoder) -> Iterator[str]:
    ends = io.IncrementalNewlineDecoder(decoder, translate=True)
    try:
        for piece in pieces:
            text = ends.decode(piece)
            if "\0" in text:
                raise ValueError("The file is not text. Save it as CSV.")
            yield text
        yield ends.decode(b"", final=True)
    except UnicodeDecodeError:
        raise ValueError("The file is not text. Save it as CSV.") from None


def _clean(line: str, longest: int, wide: bool) -> str:
    if len(line) > longest:
        # Cut, it may end within a character, and nothing of it is used but its beginning.
        return re.sub(_STEERING, "\ufffd", line[: longest + 1])
    if not wide and not line.isascii():
        with suppress(UnicodeDecodeError):
            line = line.encode("latin-1").decode("utf-8")
    return re.sub(_STEERING, "\ufffd", line)
