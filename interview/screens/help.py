"""One page of keys."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.widgets import Footer

from interview.screens.parts import Page, Words

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
Ctrl+Q     stop; every answer is saved already
Tab        to the buttons and back; all of them work with the mouse
F1         this page
F2         light or dark

Lists of choices: arrows and Enter, a letter to jump, a number to choose.
Ticks: Space ticks, Enter goes on. Nothing ticked means none of these.

On the page of the soak test:
  R  reading now      F  refilled now     A  add one read earlier
  Enter  correct      X  strike out       S  water is at the mark now
  B  bell on or off

Every answer is saved when you press Enter. You may stop at any time,
switch off, and go on tomorrow: the times of a soak test go by the clock."""


class HelpScreen(Page):
    """The keys."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,f1,q", "dismiss", "Close", key_display="esc")
    ]

    def parts(self) -> ComposeResult:
        yield Words("Keys", classes="title")
        with VerticalScroll(id="keys"):
            yield Words(KEYS)
        yield Footer(show_command_palette=False, compact=True)

    def on_mount(self) -> None:
        self.query_one("#keys").focus()
