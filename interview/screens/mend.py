"""What is wrong with an answers file: shown before anything is done with it."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.widgets import Button

from interview.answers_file import Trouble
from interview.reading.foreign import shown
from interview.screens.parts import KeyLine, Page, Press, Words

UNTOUCHED = (
    "The file has not been touched. You may mend it in an editor and read it again, or go on: "
    "what can be read is used, and the rest stays in the file as it is."
)
UNREAD = (
    "The file has not been touched. Mend it in an editor and read it again, or bring back its "
    "copy that ends in .bak."
)


class MendScreen(Page):
    """Lists every trouble; closes with ``go_on``, ``again`` or ``leave``."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("g", "choose('go_on')", "Go on"),
        Binding("r", "choose('again')", "Read it again"),
        Binding("escape,l", "choose('leave')", "Leave", key_display="esc"),
    ]

    def __init__(self, shown_path: str, troubles: list[Trouble], refusal: str = "") -> None:
        super().__init__()
        self._shown_path = shown_path
        self._troubles = troubles
        self._refusal = refusal
        """Why the file cannot be read at all; empty where it can."""

    def parts(self) -> ComposeResult:
        yield Words(f"{self._shown_path} needs mending", classes="title")
        yield Words(UNREAD if self._refusal else UNTOUCHED, id="lead")
        with VerticalScroll(id="troubles"):
            if self._refusal:
                yield Words(self._refusal, classes="trouble")
            for one in self._troubles:
                yield Words(_words(one), classes="trouble")  # type: ignore[arg-type]
        with Horizontal(classes="buttons"):
            if not self._refusal:
                yield Press("Go on", "go_on")
            yield Press("Read it again", "again")
            yield Press("Leave", "leave")
        yield KeyLine()

    def on_mount(self) -> None:
        self.query("Press").first().focus()

    def on_button_pressed(self, event: Button.Pressed) -> None:
        self.dismiss(event.button.id)

    def action_choose(self, what: str) -> None:
        """Close with the choice; a file that cannot be read is not gone on with."""
        if what != "go_on" or not self._refusal:
            self.dismiss(what)


def _words(trouble: Trouble) -> Content:
    where = f"line {trouble.line}  {trouble.key}" if trouble.line else trouble.key
    hint = f"Did you mean {trouble.suggestion}?" if trouble.suggestion else ""
    # Each is shown by itself: a line end in a name must not look like the next trouble.
    said = "\n".join(shown(one) for one in (trouble.sentence, hint) if one)
    return Content.assemble((shown(where), "bold"), "\n", said)
