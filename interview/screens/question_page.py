"""What the question page is made of, and what it says around the question."""

from __future__ import annotations

from textual import events
from textual.app import ComposeResult
from textual.containers import Container, Horizontal, Vertical, VerticalScroll

from interview.route import Step
from interview.screens.beside import PlanSoFar, StageStrip, TopLine
from interview.screens.parts import KeyLine, Page, Press, Words
from interview.screens.saver import BackgroundKeeper
from interview.session import Session

BUTTONS = (
    (("go_on", "Go on"), ("back", "Back"), ("put_off", "Don't know yet")),
    (("why", "Why"), ("how", "How to find out"), ("go_to", "Go to…"), ("plan", "Plan")),
)


KEYS = (
    ("esc", "Back", "screen.back"),
    ("^t", "Don't know", "screen.put_off"),
    ("^g", "Go to", "screen.go_to"),
    ("^l", "Plan", "screen.plan"),
    ("f1", "Keys", "app.keys"),
    ("^q", "Quit", "app.leave"),
)


class QuestionPage(Page):
    """The parts of the page; asking and answering are in ``QuestionScreen``."""

    def __init__(self, session: Session, saver: BackgroundKeeper) -> None:
        super().__init__()
        self._session = session
        self._saver = saver
        self._step: Step | None = None
        """The question shown."""
        self._aside = ""
        """``why`` or ``how`` while that is shown under the question."""

    def parts(self) -> ComposeResult:
        yield TopLine(id="top")
        yield StageStrip(id="strip")
        yield Words(id="unsaved")
        with Container(id="body"):
            with Vertical(id="left"):
                with VerticalScroll(id="asking", can_focus=False):
                    yield Words(id="item")
                    yield Words(id="asked")
                    yield Words(id="caution")
                    yield Words(id="shut")
                    yield Container(id="slot")
                    yield Words(id="heard")
                    yield Words(id="hint")
                    yield Words(id="aside")
                with Container(id="buttons"):
                    for row in BUTTONS:
                        with Horizontal(classes="buttons"):
                            for name, label in row:
                                yield Press(label, name)
            yield PlanSoFar(id="plan_so_far")
        yield KeyLine(*KEYS)

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        if self._step is not None:
            self.call_after_refresh(self._show_around)

    def _words(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Words).say(text)

    def _show_around(self) -> None:
        """Show what stands around the question."""
        if self._step is None:
            return
        self.query_one(TopLine).show(self._session, self._step, self._saver.report)
        self.query_one(StageStrip).show(self._session, self._step.stage.key)
        self.query_one(PlanSoFar).show(self._session)
        self.show_saved()

    def show_saved(self) -> None:
        """Show whether the answers are saved."""
        if self._step is None or not self.is_mounted:
            return
        report = self._saver.report
        self.query_one(TopLine).show(self._session, self._step, report)
        self._words("unsaved", report.banner)

    def _hear(self, text: str, refused: bool = False) -> None:
        heard = self.query_one("#heard", Words)
        heard.set_class(refused and bool(text), "refused")
        heard.say(text)

    def action_aside(self, which: str) -> None:
        """Show or hide why we ask, or how to find out."""
        if self._step is None:
            return
        question = self._step.question
        self._aside = "" if self._aside == which else which
        more = f"\n{question.more}" if question.more else ""
        said = {
            "": "",
            "why": f"Why: {question.why}{more}",
            "how": f"How to find out: {question.find_out}",
        }
        self._words("aside", said[self._aside])
        if self._aside:
            self.call_after_refresh(self.query_one("#aside").scroll_visible, animate=False)
