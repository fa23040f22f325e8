"""One page of keys."""

from __future__ import annotations

import re
import textwrap

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content

from interview.screens.page import Page
from interview.screens.parts import Folded, Words

KEYS = """\
^ is the Ctrl key: ^T is Ctrl and T together.

Enter      keep the answer and go on; on a list: add the line
Esc        back to the question before (also ^B); closes a page
^T         don't know yet: go on, and the plan says what waits for it
^Y         why we ask
^O         how to find out
^G         go to any question; look over and change every answer
^L         the whole plan, the working of its figures, the sheet
^N         now: writes this moment into the field of a time
^R         try again to save, when the top line says NOT SAVED
^Q         stop; every answer is saved, and what is half typed comes back
Tab        to the keys at the foot and back; arrows and Enter work them
…          more keys than fit at the foot: click it, or go past it
F1         this page, and where your answers are kept
F2         light or dark; the window is painted again
F3         the pieces of a surface, the readings of a soak test, else the garden
F4         try other sizes; nothing is kept until you say so
F5         the plants, with their reasons
F6         on a shut page: to the answer that would open it, and back
F9         options, where the room is too small; Enter takes one
F10        every question on a page of its own, or the short way again

Stages: ✓ all answered  ◆ where you are  ◐ begun  ○ to come
  ✕ shut until an earlier answer opens it  ■ has an answer to look at

Choices: a number, the first letters or the arrows choose one; Enter takes it.
A hollow ▹ is where you are while nothing is chosen; ▸ is what Enter takes.
Lists: Up to the rows; Enter changes one, Delete takes it out, ^Z brings it back.
Ticks: Space ticks, Enter goes on. If none of them is there, tick none of these.

The start page: Enter opens a garden, A adds a new one.
A file that needs mending: G go on, L read it again.

Every question and answer (^G):
  ^G  next open page      F7  take this answer away
  F8  remove this whole item

On the page of the soak test (F3 in its stage, H on the plan):
  R  reading now      F  refilled now     A  add one read earlier
  Enter  correct      X  strike out       S  water is at the fill level
  W  hole full, or empty, while it is soaked       P  plot of the water
  M  what it means    H  the next hole    T  move times of a wrong clock
  B  bell, notice, window title, desktop notification: each on or off

On the page of the pieces of a surface (F3 on its question):
  A  add              O  cut out          Enter  change
  D  duplicate        X  remove           U  what is up on the drawing
  V  move it on the drawing: arrows, Shift farther, Space turns, V ends
  In the form of one piece: ^P plus or minus, ^S take it.

Trying sizes out (F4):
  up, down  choose    ← →  change         K  keep
  Z  this one back    E  every one back   Page keys  the figures
  3  lean, usual and generous side by side: ← → choose, Enter tries it

The garden drawn (F3): 1 from above, 2 cut through, 3 pond, 4 options; ← → leaf.

The plants (F5):
  Enter  swap out     I  keep it in       Z  undo a swap
  ^Y  why a plant is in or out            Tab  to its notes: page keys leaf

The plan (^L):
  ^G  go to any question, to change it
  ^O  working: how each figure was got    ^S  write the sheet to print
  J  write the job list: what to do, buy and plant, step by step
  C  write the yard card, one page        H  the soak test and its readings

Every answer is saved when you press Enter. You may stop at any time,
switch off, and go on tomorrow: the times of a soak test go by the clock."""


_NEXT_KEY = r"\s{4,}(?=\S+  \S)"
"""The gap before another key on the same line."""
_KEY = r"\s*\S+\s{2,}"


OF_A_PAGE = {
    "welcome": "The start page:",
    "review": "Every question",
    "soak": "On the page of the soak test",
    "pieces": "On the page of the pieces",
    "piece": "On the page of the pieces",
    "try": "Trying sizes",
    "three": "Trying sizes",
    "garden": "The garden drawn",
    "plants": "The plants",
    "plan": "The plan",
}
"""How the part about a page begins, by the name of its keys."""


def folded_keys(columns: int, page: str = "") -> str:
    """Return the keys in so many columns, what a key does under its own beginning.

    What is told of the ``page`` that one comes from stands first.
    """
    found, lead = [], OF_A_PAGE.get(page)
    parts = sorted(KEYS.split("\n\n"), key=lambda part: not (lead and part.startswith(lead)))
    for line in "\n\n".join(parts).splitlines():
        if len(line) <= columns:
            found.append(line)
            continue
        margin = " " * (len(line) - len(line.lstrip()))
        for one in re.split(_NEXT_KEY, line.lstrip()):
            key = re.match(_KEY, margin + one)
            under = " " * len(key[0]) if key else f"{margin}  "
            found += textwrap.wrap(margin + one, columns, subsequent_indent=under)
    return "\n".join(found)


_SHOWN = r"(?m)(?:^ *| {3,})(up, down|Page keys|← →|\S+)(?=  +\S)"
"""A key, at the head of its line or after the gap before another."""
_HEADS = r"(?m)^[A-Z](?:(?!  )[^:\n])*:"


def keys_shown(text: str) -> Content:
    """Return the page with its keys in the ink of keys, and what leads each part in bold."""
    shown = Content(text)
    for one in re.finditer(_SHOWN, text):
        shown = shown.stylize("bold $due", *one.span(1))
    for one in re.finditer(_HEADS, text):
        shown = shown.stylize("bold $text", *one.span())
    return shown


class HelpScreen(Page):
    """The keys."""

    KEYS = "help"
    HEADING = "Keys"

    def __init__(self, where: str, page: str = "") -> None:
        """Show the keys, those of ``page`` first, and ``where`` the answers are kept."""
        super().__init__()
        self._where, self._page = where, page

    def parts(self) -> ComposeResult:
        with VerticalScroll(id="keys"):
            yield Words(f"{self._where}\n", id="where")
            yield Folded(lambda columns: keys_shown(folded_keys(columns, self._page)))

    def on_mount(self) -> None:
        self.query_one("#keys").focus()
