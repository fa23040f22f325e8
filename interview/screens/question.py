"""The question page: one page whose parts are updated in place, for every question."""

from __future__ import annotations

from pathlib import Path
from typing import Any, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Container, Horizontal, Vertical, VerticalScroll
from textual.widgets import Button, Footer

from interview import route
from interview.model import Standing
from interview.reading import Refused, write_instant
from interview.route import Step
from interview.screens import words
from interview.screens.beside import PlanSoFar, StageStrip, TopLine
from interview.screens.fields import Asked, Field, ListField, TextField, field_for
from interview.screens.parts import Page, Press, Words
from interview.screens.plan import PlanScreen
from interview.screens.review import ReviewScreen
from interview.screens.saver import BackgroundKeeper
from interview.screens.soak_timer import SoakScreen
from interview.screens.soak_watch import running
from interview.session import Doubt, Session

BUTTONS = (
    (("go_on", "Go on"), ("back", "Back"), ("put_off", "Don't know yet")),
    (("why", "Why"), ("how", "How to find out"), ("go_to", "Go to…"), ("plan", "Plan")),
)


class QuestionScreen(Page):
    """Asks the question the session stands at."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,ctrl+b", "back", "Back", key_display="esc"),
        Binding("ctrl+t", "put_off", "Don't know"),
        Binding("ctrl+y", "aside('why')", "Why", show=False),
        Binding("ctrl+o", "aside('how')", "How to find out", show=False),
        Binding("ctrl+g", "go_to", "Go to"),
        Binding("ctrl+l", "plan", "Plan"),
        Binding("ctrl+n", "now", "Now", show=False),
        Binding("ctrl+r", "save_again", "Save again", show=False),
    ]

    def __init__(self, session: Session, saver: BackgroundKeeper, path: Path) -> None:
        super().__init__()
        self._session = session
        self._saver = saver
        self._path = path
        self._drafts: dict[str, Any] = {}
        self._fresh: Any = None
        """What the field held before anything was typed."""
        self._step: Step | None = None
        self._aside = ""

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
        yield Footer(show_command_palette=False, compact=True)

    async def on_mount(self) -> None:
        if step := running(self._session):
            # A soak test does not wait: whoever comes back comes back to it.
            self._session.jump(step.address)
        await self._show()

    async def on_screen_resume(self) -> None:
        """Show the question anew after another page, unless it is still the same one."""
        if self._step is None:
            return
        field = self.query_one(Field)
        kept = self._step.view(self._session.answers).text(self._step.question)
        same = self._session.step is not None and self._session.step.address == self._step.address
        if same and kept == field.asked.kept:
            self._show_around()
        else:
            await self._show()

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        if self._step is not None:
            self.call_after_refresh(self._show_around)

    # Showing

    async def _show(self) -> None:
        step = self._session.step
        if step is None:
            return
        self._step, self._aside = step, ""
        view = step.view(self._session.answers)
        question = step.question
        shut = self._session.shut(step)
        asked = Asked(
            question.kind,
            view.text(question),
            question.default(view),
            question.kind.hint(view.units),
            bool(shut),
        )
        self._words("item", words.item_name(self._session, step))
        self._words("asked", question.text)
        self._words("caution", f"CAUTION: {question.caution}" if question.caution else "")
        self._words("shut", self._shut_words(shut))
        options = getattr(question.kind, "options", ()) or question.kind.name == "yes or no"
        hint = asked.examples[:1].upper() + asked.examples[1:]
        self._words("hint", "" if options else f"{hint}.")
        self._words("aside", "")
        slot = self.query_one("#slot", Container)
        with self.app.batch_update():
            await slot.remove_children()
            field = field_for(asked)
            await slot.mount(field)
        self._fresh = field.draft
        if step.address in self._drafts:
            field.restore(self._drafts[step.address])
        self._hear(view.fault(question) or "", refused=True)
        self._show_around()
        self.query_one("#asking").scroll_home(animate=False)
        if shut:
            self.query_one("#go_on").focus()
        else:
            field.begin()

    def _words(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Words).say(text)

    def _shut_words(self, reasons: list[str]) -> str:
        if not reasons:
            return ""
        return f"SHUT: {' '.join(reasons)} Meanwhile go on: the other questions are open."

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

    # Answering

    def on_field_typed(self, event: Field.Typed) -> None:
        """Say how the text is understood; a text that cannot be read yet is passed over."""
        if self._step is None or self.query_one(Field).draft == self._fresh:
            return
        try:
            echo = self._session.read(self._step, event.text).echo if event.text.strip() else ""
        except (Refused, ValueError):
            echo = ""
        self._hear(f"I read this as {echo}." if echo and echo != event.text else "")

    async def on_field_given(self, event: Field.Given) -> None:
        """Keep the answer and go on, or say why it cannot be."""
        await self._take(event.text)

    def on_list_field_adding(self, event: ListField.Adding) -> None:
        """Take a line into a list once the list reads well with it."""
        if self._step is None:
            return
        try:
            self._session.read(self._step, event.text)
        except Refused as refused:
            self._hear(str(refused), refused=True)
            return
        self._hear("")
        event.field.added()

    async def _take(self, text: str) -> None:
        step = self._step
        if step is None:
            return
        view = step.view(self._session.answers)
        kept, standing = view.text(step.question), view.standing(step.question)
        same = kept is not None and kept.strip() == text.strip()
        passed = same and standing is Standing.ANSWERED
        put_off = not text.strip() and standing is Standing.UNKNOWN
        if not text.strip() and hasattr(step.question.kind, "options") and not put_off:
            text = step.question.default(view) or ""
            if not text:
                self._refuse("Choose one first, or say that you don't know yet.")
                return
        if not (passed or put_off or self._session.shut(step)):
            try:
                self._session.offer(step, text)
            except (Refused, Doubt) as refused:
                self._refuse(str(refused))
                return
        self._drafts.pop(step.address, None)
        await self._forward()

    def _refuse(self, why: str) -> None:
        """Say why an answer cannot be kept; what was typed stays."""
        self._hear(why, refused=True)
        self.query_one("#heard").scroll_visible(animate=False)
        self.query_one(Field).begin()

    async def _forward(self) -> None:
        if self._session.go_on() is None:
            self._end()
        else:
            await self._show()

    def _end(self) -> None:
        self._show_around()
        said = "That was the last question."
        for step in route.open_steps(self._session.answers):
            if reasons := self._session.shut(step):
                said += f" Not asked yet, from '{step.question.label}' on: {' '.join(reasons)}"
                break
        self.app.push_screen(PlanScreen(self._session, self._path, said))

    def _keep_draft(self) -> None:
        field = self.query_one(Field)
        if self._step is not None and field.draft != self._fresh:
            self._drafts[self._step.address] = field.draft

    # Buttons and keys

    async def on_button_pressed(self, event: Button.Pressed) -> None:
        match event.button.id:
            case "go_on":
                await self._take(self.query_one(Field).text)
            case "back":
                await self.action_back()
            case "put_off":
                await self.action_put_off()
            case "why" | "how" as name:
                self.action_aside(name)
            case "go_to":
                self.action_go_to()
            case "plan":
                self.action_plan()
            case "now":
                self.action_now()

    async def action_back(self) -> None:
        """Go to the question before."""
        self._keep_draft()
        if self._session.go_back() is None:
            self.notify("This is the first question.", markup=False)
        else:
            await self._show()

    async def action_put_off(self) -> None:
        """Keep "don't know yet" and go on."""
        step = self._step
        if step is None:
            return
        if not self._session.shut(step):
            self._session.put_off(step)
            self._drafts.pop(step.address, None)
            self.notify(f"To find out: {step.question.find_out}", markup=False, timeout=8)
        await self._forward()

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

    def action_go_to(self) -> None:
        """Open the list of all questions and answers."""
        self._keep_draft()
        self.app.push_screen(ReviewScreen(self._session, self._step), self._jump)

    async def _jump(self, address: str | None) -> None:
        if address and self._session.jump(address) is not None:
            await self._show()

    def action_plan(self) -> None:
        """Show the whole plan."""
        self.app.push_screen(PlanScreen(self._session, self._path))

    def action_now(self) -> None:
        """Write this very moment into the field of a time, or open the timing page."""
        field = self.query_one(Field)
        if isinstance(field, TextField) and field.asked.kind.name == "date and time":
            if not field.disabled:
                field.restore(write_instant(self._session.now))
                field.begin()
        elif field.asked.kind.name == "list of readings" and not field.disabled:
            self.on_field_timing()

    def on_field_timing(self) -> None:
        """Open the page that times the soak test."""
        if self._step is not None:
            self.app.push_screen(SoakScreen(self._session, self._step))

    def action_save_again(self) -> None:
        """Try a failed save again."""
        self._saver.retry()
