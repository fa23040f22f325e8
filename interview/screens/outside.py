"""What comes from outside to the full screen: pastes, and words that could steer a terminal."""

from __future__ import annotations

import codecs

from rich.cells import cell_len
from rich.segment import Segment
from textual.color import Color
from textual.content import Content
from textual.filter import LineFilter
from textual.visual import VisualType

from interview.reading.foreign import harmless, lines_shown, replaced

BEGIN, END = "\x1b[200~", "\x1b[201~"
"""What a terminal sends around a paste, by xterm's "Control Sequences", bracketed paste mode."""


class CleanTyping:
    """Turns bytes from the terminal into text in which nothing pasted can be read as a key.

    Textual hands what follows an escape within a paste over as keys: its tail would stand in the
    field, and a line end in it would take the answer. Bytes that are no text are marked as such,
    where Textual would stop reading keys.
    """

    def __init__(self) -> None:
        self._bytes = codecs.getincrementaldecoder("utf-8")("replace")
        self._passed = ""
        """The end of what was typed, which a paste may have begun with."""
        self._pasted: str | None = None
        """The paste so far; nothing outside one."""

    def decode(self, data: bytes, final: bool = False) -> str:
        """Return the text of the next bytes; a paste comes whole, when it has ended."""
        text, out = self._bytes.decode(data, final), ""
        while text:
            part, text = self._typed(text) if self._pasted is None else self._in_paste(text)
            out += part
        return out

    def _typed(self, text: str) -> tuple[str, str]:
        whole = self._passed + text
        start = whole.find(BEGIN)
        if start < 0:
            self._passed = whole[1 - len(BEGIN) :]
            return text, ""
        end = start + len(BEGIN) - len(self._passed)
        self._passed, self._pasted = "", ""
        return text[:end], text[end:]

    def _in_paste(self, text: str) -> tuple[str, str]:
        before = self._pasted or ""
        whole = before + text
        first = whole.find(END, max(0, len(before) - len(END)))
        if first < 0:
            self._pasted = whole
            return "", ""
        # An end within what was pasted is no end: the true one comes last.
        again = whole.find(BEGIN, first)
        end = whole.rfind(END, 0, again if again >= 0 else len(whole))
        self._pasted = None
        return harmless(whole[:end].replace(END, "")) + END, whole[end + len(END) :]


class Seen(LineFilter):
    """Lets nothing in the words of a page reach the terminal that could steer it."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:
        """Return the segments with blanks of the same width in place of what steers or hides."""
        return [
            one if one.control or one.text.isprintable() else Segment(_blanked(one.text), one.style)
            for one in segments
        ]


def _blanked(text: str) -> str:
    return replaced(text, lambda one: " " * cell_len(one))


def seen(content: VisualType) -> VisualType:
    """Return words with what steers or hides written out; their styles are lost where any does."""
    if isinstance(content, str):
        return lines_shown(content)
    if isinstance(content, Content) and (shown := lines_shown(content.plain)) != content.plain:
        return Content(shown)
    return content
