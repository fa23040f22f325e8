"""Which paced lengths a new calibration changed, and by how much."""

from __future__ import annotations

import textwrap
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.screen import ModalScreen

from interview.screens import keys
from interview.screens.parts import Folded, Press, Words


class ChangesScreen(ModalScreen[None]):
    """A list of changes that stays until it is closed."""

    BINDINGS: ClassVar[list[BindingType]] = keys.bindings("changes")

    def __init__(self, lead: str, lines: list[str]) -> None:
        super().__init__()
        self._said = (lead, lines)

    def compose(self) -> ComposeResult:
        """Yield what the list is about, its lines, and the button that closes it."""
        lead, lines = self._said
        with Vertical(id="changes"):
            yield Words(lead, classes="title")
            with VerticalScroll(id="changed"):
                yield Folded(lambda columns: _folded(lines, columns), id="changed_lines")
            with Horizontal(classes="buttons"):
                yield Press("Go on", "done")

    def on_mount(self) -> None:
        """Let the arrows scroll the list; Enter closes it wherever the focus is."""
        self.query_one("#changed").focus()

    def on_button_pressed(self) -> None:
        """Close."""
        self.dismiss(None)


def _folded(lines: list[str], columns: int) -> str:
    """Return the changes, each folded under its own beginning."""
    folded = (textwrap.wrap(f"- {one}", columns, subsequent_indent="  ") for one in lines)
    return "\n".join(line for one in folded for line in one)
