"""The small page on which each way of telling that a reading is due is switched."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Button

from interview.answers_file.reminders import NAMES, Reminders
from interview.screens import keys
from interview.screens.desktop import Desktop
from interview.screens.parts import Press, Words
from interview.screens.reminding import RemindingApp

WORDS = {
    "bell": "the bell",
    "notice": "a notice on this screen",
    "title": "the time left in the window's title",
    "desktop": "a desktop notification",
}


class ReminderChoice(ModalScreen[None]):
    """Switches the ways of telling, each by its number."""

    BINDINGS: ClassVar[list[BindingType]] = keys.bindings("reminders")

    def __init__(self, reminding: RemindingApp) -> None:
        super().__init__()
        self._reminding = reminding

    def compose(self) -> ComposeResult:
        with Vertical(id="ask"):
            yield Words("When a reading is due, tell me by:")
            for name in NAMES:
                yield Press("", name)
            yield Press("", "all")
            yield Words("A phone's alarm does as well: the page gives the clock time.", id="kept")
            yield Press("Close (Esc)", "close")

    def on_mount(self) -> None:
        self._show()
        self.query_one("#bell").focus()

    def _show(self) -> None:
        chosen = self._reminding.reminders
        for at, name in enumerate(NAMES, 1):
            state = "on " if getattr(chosen, name) else "off"
            missing = name == "desktop" and self._reminding.desktop is Desktop.NONE
            known = " (none here)" if missing else ""
            self.query_one(f"#{name}", Press).label = f"{at}  {state}  {WORDS[name]}{known}"
        self.query_one("#all", Press).label = f"0  all {'off' if chosen.any_on else 'on'}"

    def on_button_pressed(self, event: Button.Pressed) -> None:
        match event.button.id:
            case "close":
                self.action_close()
            case "all":
                self.action_all()
            case str(name):
                self.action_switch(name)

    def action_switch(self, name: str) -> None:
        """Switch one way of telling."""
        self._choose(self._reminding.reminders.switched(name))

    def action_all(self) -> None:
        """Switch all of them off, or on where all are off."""
        chosen = self._reminding.reminders
        self._choose(chosen.all_set(not chosen.any_on))

    def _choose(self, chosen: Reminders) -> None:
        if not self._reminding.choose_reminders(chosen):
            self.query_one("#kept", Words).say("This lasts until you stop; it could not be saved.")
        self._show()

    def action_close(self) -> None:
        """Close the page."""
        self.dismiss(None)
