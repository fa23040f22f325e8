"""What is wrong with an answers file: shown before anything is done with it."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content

from interview.answers_file import Trouble
from interview.reading.foreign import shown
from interview.screens.frame import KeyLine
from interview.screens.page import Page
from interview.screens.parts import Words

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

    KEYS = "mend"
    HEADING = "A file that needs mending"

    def __init__(self, shown_path: str, troubles: list[Trouble], refusal: str = "") -> None:
        super().__init__()
        self._shown_path = shown_path
        self._troubles = troubles
        self._refusal = refusal
        """Why the file cannot be read at all; empty where it can."""

    def parts(self) -> ComposeResult:
        yield Words(f"{self._shown_path} needs mending", id="mending")
        yield Words(UNREAD if self._refusal else UNTOUCHED, id="lead")
        with VerticalScroll(id="troubles"):
            if self._refusal:
                yield Words(self._refusal, classes="trouble")
            for one in self._troubles:
                yield Words(_words(one), classes="trouble")  # type: ignore[arg-type]

    def on_mount(self) -> None:
        self.show_keys()
        self.query_one(KeyLine).point_at(f"choose('{'again' if self._refusal else 'go_on'}')")

    def headings(self) -> tuple[str, ...]:
        return (self.HEADING, "Mending")

    def offers(self, action: str) -> bool:
        return "go_on" not in action or not self._refusal

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
