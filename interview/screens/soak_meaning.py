"""What the result of one test hole means: where the water went, how sure it is, what follows."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll

from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.summary import folded_to
from interview.screens import words
from interview.screens.parts import Folded, KeyLine, Page, Words
from interview.sheet.soil import result_lines


class SoakMeaning(Page):
    """The same words as on the sheet, for one hole."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape,m,q", "dismiss", "Close")]

    def __init__(self, session: Session, step: Step) -> None:
        super().__init__()
        self._session = session
        self._step = step

    def parts(self) -> ComposeResult:
        name = words.item_name(self._session, self._step)
        yield Words(f"What the soak test means: {name}", classes="title")
        with VerticalScroll(id="keys"):
            yield Folded(self._text)
        yield KeyLine(("esc", "Close", "screen.dismiss"), ("f1", "Keys", "app.keys"))

    def _text(self, columns: int) -> str:
        try:
            with folded_to(columns):
                return "\n".join(result_lines(self._session.plan, self._step.number))
        except Exception as trouble:
            # A fault in the sums must not keep anybody from the readings.
            return words.fault(trouble)

    def on_mount(self) -> None:
        self.query_one("#keys").focus()
