"""One page of keys."""

from __future__ import annotations

import re
import textwrap
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll

from interview.screens.parts import Folded, KeyLine, Page, Words

KEYS = """\
Enter      keep the answer and go on; on a list: add the line
Escape     back to the question before (also Ctrl+B); closes a page
Ctrl+T     don't know yet: go on, and the plan says what waits for it
Ctrl+Y     why we ask
Ctrl+O     how to find out
Ctrl+G     go to any question; look over and change every answer
Ctrl+L     the whole plan, the working of its figures, the sheet
Ctrl+N     now: writes this moment into the field of a time
Ctrl+R     try again to save, when the top line says NOT SAVED
Ctrl+Q     stop; every answer is saved, and what is half typed comes back
Tab        to the buttons and back; all of them work with the mouse
F1         this page, and where your answers are kept
F2         light or dark
F3         draws: the pieces of a surface, the clock of a soak test, else the garden
F4         try other sizes; nothing is kept until you say so
F5         the plants, with their reasons
F6         on a shut page: to the answer that would open it, and back

Choices: a number, the first letters or the arrows mark one; Enter takes it.
Lists: Up to the lines; Enter changes one, Delete takes it out, Ctrl+Z brings it back.
Ticks: Space ticks, Enter goes on. Nothing ticked means none of these.

On the page of the soak test (F3 or Ctrl+N on its questions):
  R  reading now      F  refilled now     A  add one read earlier
  Enter  correct      X  strike out       S  water is at the mark now
  W  hole full, or empty, while it is soaked       C  chart
  M  what it means    H  the next hole    T  shift times of a wrong clock
  B  bell, notice, window title, desktop notification: each on or off

On the page of the pieces of a surface (F3 on its question):
  A  add              O  cut out          Enter  change
  C  copy             X  remove           N  north on the drawing
  M  move it on the drawing: arrows, Shift farther, T turns, M ends
  In the form of one piece: Ctrl+O add or cut out, Ctrl+S take it.

Trying sizes out (F4):
  up, down  choose    left, right  change  K  keep
  Z  this one back    D  all back         Page keys  the figures

The garden drawn (F3): 1 from above, 2 cut through, 3 pond, 4 ways out.

The plants (F5):
  S  swap out         F  keep it in       U  undo a swap
  W  why a plant is in or out

The plan (Ctrl+L):
  W  working          S  write the sheet  C  write the yard card, one page
  D  draw             T  try sizes        P  plants

Every answer is saved when you press Enter. You may stop at any time,
switch off, and go on tomorrow: the times of a soak test go by the clock."""


_NEXT_KEY = re.compile(r"\s{4,}(?=\S+  \S)")
"""The gap before another key on the same line."""
_KEY = re.compile(r"\s*\S+\s{2,}")


def folded_keys(columns: int) -> str:
    """Return the keys in so many columns, what a key does under its own beginning."""
    found = []
    for line in KEYS.splitlines():
        if len(line) <= columns:
            found.append(line)
            continue
        margin = " " * (len(line) - len(line.lstrip()))
        for one in _NEXT_KEY.split(line.lstrip()):
            key = _KEY.match(margin + one)
            under = " " * len(key[0]) if key else "  "
            found += textwrap.wrap(margin + one, columns, subsequent_indent=under)
    return "\n".join(found)


class HelpScreen(Page):
    """The keys."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,f1,q", "dismiss", "Close", key_display="esc")
    ]

    def __init__(self, where: str) -> None:
        """Show the keys, and ``where`` the answers are kept."""
        super().__init__()
        self._where = where

    def parts(self) -> ComposeResult:
        yield Words("Keys", classes="title")
        with VerticalScroll(id="keys"):
            yield Words(f"{self._where}\n", id="where")
            yield Folded(folded_keys)
        yield KeyLine()

    def on_mount(self) -> None:
        self.query_one("#keys").focus()
