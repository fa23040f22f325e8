"""The whole plan to read, the working of each figure, and the sheet to take outside."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

from textual import work
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.widgets import Button, OptionList
from textual.widgets.option_list import Option

from interview import answers_file as af
from interview import figures
from interview.report import plan_text
from interview.screens import words
from interview.screens.further import FurtherPages
from interview.screens.parts import KeyLine, Page, Press, Words
from interview.session import Session

TRIES = 20


class PlanScreen(FurtherPages, Page):
    """The plan as it stands."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,q", "dismiss", "Close", key_display="esc"),
        Binding("w", "working", "Working"),
        Binding("s", "write", "Write the sheet"),
        Binding("d,f3", "draw", "Draw", key_display="d"),
        Binding("t,f4", "try_out", "Try sizes", key_display="t"),
        Binding("p,f5", "plants", "Plants", key_display="p"),
    ]

    def __init__(self, session: Session, path: Path, lead: str = "") -> None:
        super().__init__()
        self._session = session
        self._path = path
        self._lead = lead

    def parts(self) -> ComposeResult:
        yield Words("The plan", classes="title")
        yield Words(self._lead, id="lead")
        with VerticalScroll(id="sheet"):
            yield Words("Working it out…", id="sheet_text")
        with Horizontal(classes="buttons"):
            yield Press("Close", "close")
            yield Press("Working", "working")
            yield Press("Write the sheet", "write")
            yield Press("Drawing", "draw")
            yield Press("Try sizes", "try_out")
            yield Press("Plants", "plants")
        yield KeyLine()

    def on_mount(self) -> None:
        self.query_one("#lead", Words).say(self._lead)
        self.query_one("#sheet").focus()

    @work(thread=True, exclusive=True)
    def _work_out(self) -> None:
        # A long rainfall record takes seconds; the page must not stand still meanwhile.
        try:
            text = plan_text(self._session.plan)
        except Exception as trouble:
            text = words.fault(trouble)
        self.app.call_from_thread(self._show, text)

    def _show(self, text: str) -> None:
        if self.is_mounted:
            self.query_one("#sheet_text", Words).update(text)

    def on_button_pressed(self, event: Button.Pressed) -> None:
        if event.button.id == "close":
            self.dismiss(None)
        else:
            getattr(self, f"action_{event.button.id}")()

    def on_screen_resume(self) -> None:
        """Work the plan out anew: trying sizes out may have changed an answer."""
        self._work_out()

    def action_working(self) -> None:
        """List the figures, to see how each was got."""
        self.app.push_screen(WorkingScreen(self._session))

    def action_write(self) -> None:
        """Write the sheet beside the answers."""
        try:
            place = write_sheet(self._path, plan_text(self._session.plan))
        except OSError as trouble:
            why = trouble.strerror or "the folder does not take it"
            said = f"The sheet could not be written: {why}. Free some space or check the folder."
            self.notify(said, severity="error", markup=False)
        else:
            self.notify(f"The sheet is in {af.shown(str(place))}.", markup=False, timeout=10)


def write_sheet(answers: Path, text: str) -> Path:
    """Write the sheet to a new text file beside the answers; raises ``OSError``.

    No file is ever written over: not the answers, their backup, nor an older sheet.
    """
    folder = answers.parent
    for _ in range(TRIES):
        place = af.free_name(folder, f"{answers.stem[:100] or 'garden'}-plan.txt")
        if af.belongs_to(answers, place):
            raise FileExistsError(17, "the name of the sheet is taken by the answers")
        try:
            with place.open("x", encoding="utf-8") as sheet:
                sheet.write(text)
        except FileExistsError:
            continue
        return place
    raise FileExistsError(17, "no free name was found")


class WorkingScreen(Page):
    """Every figure, and how the one chosen was got."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,q", "dismiss", "Close", key_display="esc")
    ]

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session

    def parts(self) -> ComposeResult:
        yield Words("How each figure was got", classes="title")
        plan = self._session.plan
        options = []
        for one in figures.found(plan):
            value = one.shown(plan.metric) if one.waits_for is None else "not known yet"
            options.append(Option(f"{one.figure.label}: {value}", id=one.figure.key))
        yield OptionList(*options, id="figures", markup=False)
        with VerticalScroll(id="working_box"):
            yield Words("Choose a figure with the arrows.", id="working_text")
        yield KeyLine()

    def on_mount(self) -> None:
        self.query_one("#figures").focus()

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        lines = figures.working(event.option.id or "", self._session.plan)
        self.query_one("#working_text", Words).update("\n".join(lines))
