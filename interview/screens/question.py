"""The question page: what comes of a key, of what is typed, of a page that closes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from interview.asking.path import Place
from interview.asking.question import Status
from interview.asking.route import Step
from interview.asking.sitting import Doubt
from interview.garden.session import Session
from interview.garden.soak.reading_lines import typed_instant
from interview.garden.survey import surface_questions as surfacing
from interview.reading import Refused, is_unknown
from interview.screens import words
from interview.screens.beside import PlanSoFar
from interview.screens.field import Field
from interview.screens.fields import TextField
from interview.screens.further import FurtherPages
from interview.screens.list_field import ListField, SoakField
from interview.screens.lists import Choices
from interview.screens.live import LivePicture
from interview.screens.page_turns import CHOOSE, PageTurns
from interview.screens.parts import Ask, Words
from interview.screens.preview import Preview
from interview.screens.question_page import LOOK_SECONDS, Mode
from interview.screens.saver import BackgroundKeeper
from interview.screens.usual_rows import UsualRows

TIMED = "Enter goes on with the readings there are; F3 opens the timing page again."


class QuestionScreen(FurtherPages, PageTurns):
    """Asks the question the session stands at."""

    AUTO_FOCUS = ""

    def __init__(
        self, session: Session, saver: BackgroundKeeper, path: Path, file: Callable[[], str]
    ) -> None:
        super().__init__(session, saver, file)
        self._path = path
        self._began_at = ""
        self._began_place: Place | None = None
        self._resumed = False
        """Whether somebody has come back, and is to be told what is due."""

    async def on_mount(self) -> None:
        self.watch(self.query_one("#asking"), "virtual_size", self._fit_list, init=False)
        session = self._session
        # A soak test does not wait: whoever comes back comes back to its page.
        found = None
        if session.answers.numbers("holes"):
            from interview.garden import soak_due

            found = soak_due.first(session.answers, session.now)
        half = [one for one in session.drafts if session._at(one) is not None]
        if found:
            session.begin_at(found.address)
            self._begin_page(None)
            await self._show()
        elif session.step is not None and session.step.address in half:
            # What was half typed comes first.
            await self._go(session.step.address)
        else:
            self._begin_page(session.start())
            await self._show()
        self._began_at = self._step.address if self._step else ""
        self._began_place = self._place
        self._resumed = bool(session.answers.texts) and not found
        self.set_interval(LOOK_SECONDS, self.show_testing)
        if found:
            self._time(found.step, resumed=True)

    async def on_screen_resume(self) -> None:
        """Show the page anew after another one, unless it is still the same."""
        if self._stood and self._shown is not None:
            await self._show()
            if self._timed and isinstance(self.field, SoakField) and self.field.asked.text:
                self._tell(TIMED)

    def _time(self, test: Step, resumed: bool = False) -> None:
        """Open the page that times the test of a hole; Enter then leads on, and not there again."""
        from interview.screens.soak_timer import SoakScreen

        self._timed = True
        self.app.push_screen(SoakScreen(self._session, test, resumed))

    def on_plan_so_far_stands(self) -> None:
        """Say what is due to whoever comes back, once it is known, and lead there."""
        super().on_plan_so_far_stands()
        if self._resumed:
            self._resumed = False
            self.call_next(self._come_back)

    async def _come_back(self) -> None:
        beside = self.query_one(PlanSoFar)
        meant = self._session.left_open and not beside.presses
        if beside.leads_to and not meant and self._untouched:
            await self._lead(beside.leads_to)
        if beside.due and not self.told:
            self._tell(beside.due)

    @property
    def _untouched(self) -> bool:
        """Whether nothing was done yet on the page one came back to."""
        here = self._step.address if self._step else ""
        moved = here != self._began_at or (not here and self._place != self._began_place)
        if moved or self._row or self._began_at in self._session.drafts or not self.is_current:
            return False
        return self.field is None or self.field.draft == self._fresh

    def on_field_typed(self, event: Field.Typed) -> None:
        """Say how the text is understood; a text that cannot be read yet is passed over."""
        field = self.field
        self.show_keys()
        if self._step is None or field is None:
            return
        if field.draft == self._refused and self.query_one("#heard").has_class("refused"):
            return
        self._refused = None
        if field.draft == self._fresh:
            if not field.draft and self.query_one("#heard").has_class("refused"):
                self._hear("")  # what was wrong is wiped out
            return
        # On the empty line of a list the whole list is said back.
        self._hear(self._understood(event.text if event.text.strip() else field.text))
        self._typed_on(field)
        self.query_one(Preview).follow(self._session, self._step, field.text, self._typed_words())
        self.query_one(LivePicture).follow(self._words_typed())

    def _typed_on(self, field: Field) -> None:
        """Show the boxes that the words typed open, at once."""
        place, step = self._place, self._step
        if place is not None and step is not None and len(place.page.asked) > 1:
            self._typed[step.address] = field.text
            self._show_boxes()

    def on_choices_moved(self) -> None:
        """Show the boxes that the choice one is at opens, or what Enter does at a row."""
        self.save_at_rest()  # it may have been marked by a click
        field = self.field
        for listing in self._slot.query(UsualRows):
            self._show_what_enter_does(listing)
        if field is not None and field.text and self.query_one("#heard", Words).said == CHOOSE:
            self._hear("")
        if field is not None and field.text and not self._row:
            self._typed_on(field)
        if field is not None and field.has_class("amiss"):
            self._hear("")  # another one is marked than was refused
        self.query_one(LivePicture).follow(self._words_typed())

    async def on_choices_chosen(self, event: Choices.Chosen) -> None:
        """Go the way that was chosen, or open the row; with none take the page whole."""
        event.stop()
        if self.mode is Mode.WAYS:
            await self._choose_way(event.key)
        elif self.mode is Mode.ROWS:
            await self._open_row(event.key)

    async def on_field_given(self, event: Field.Given) -> None:
        """Keep the answer and go on, or say why it cannot be."""
        if event.field is not self.field:  # typed ahead, it is not for the next one
            return
        if self._step and isinstance(event.field, SoakField) and self._wants_readings(self._step):
            self.action_draw()
        else:
            await self._take(event.text)

    def _wants_readings(self, step: Step) -> bool:
        """Tell whether the test has too few readings yet, and was not looked at since the last."""
        from interview.screens.soak_watch import run_of

        unknown = step.view(self._session.answers).standing(step.question) is Status.UNKNOWN
        return not unknown and not self._timed and not run_of(self._session, step).enough

    async def on_soak_field_added(self, event: SoakField.Added) -> None:
        """Keep the readings that were typed, each where its time belongs."""
        from interview.garden.soak.edit import NotBegun, with_added
        from interview.screens.soak_watch import run_of

        step = self._step
        if step is None or event.field is not self.field:
            return
        if is_unknown(event.lines[0]):
            await self.action_put_off()
            return
        # What is saved now must not offer a reading again that it holds.
        self._session.drafts.pop(step.address, None)
        for line in event.lines:
            try:
                view = step.view(self._session.answers)
                self._session.offer(step, with_added(view, line))
            except (Refused, Doubt) as refused:
                event.field.restore(line)
                self._session.drafts[step.address] = line
                if isinstance(refused, NotBegun):
                    self._session.step = self._session._at(view.address(refused.first))
                await self._show()
                self._refuse(str(refused))
                return
        event.field.kept()
        self._timed = False
        await self._show()
        self._hear(run_of(self._session, step).do_now)

    def on_choices_lost(self, event: Choices.Lost) -> None:
        """Say that letters typed begin no choice, or that all is well again."""
        event.stop()
        told = f"No choice begins with “{event.typed}”: none is chosen."
        self._hear((self._understood(event.typed) or told) if event.typed else "")

    def leave(self, place: bool = True) -> None:
        """Have what is half typed saved too, and the ``place``, before the program ends."""
        if self._step is None:
            return
        self.save_half_typed()
        if place and self._session.answers.texts and self._step.address != self._began_at:
            self._session.keep_place()

    # Keys

    async def action_go_on(self) -> None:
        """Keep what stands in the field and go on; a reading that is typed is added."""
        field = self.field
        if field is None:
            listing = next(iter(self._slot.query(Choices)), None)
            if listing is not None:
                listing.action_select()
            else:
                await self._forward()
        elif isinstance(field, SoakField) and field.typed:
            await self.on_soak_field_added(SoakField.Added(field, [field.typed]))
        elif isinstance(field, ListField) and field.typed:
            field.add()
        else:
            await self._take(field.text)

    async def action_back(self) -> None:
        """Close the help that is open, else go to what stands before."""
        if self._aside:
            self.action_aside(self._aside)
        else:
            await self._back()

    async def action_next_box(self, by: int) -> None:
        """Go to the next box of the page or the one before, then to its rows, then round."""
        boxes, step = self._boxes(), self._step
        addresses = [one.address for one in boxes]
        rows = bool(self._rows()) and bool(boxes) and not self._is_timer
        if self._row or self.mode is Mode.WAYS or len(boxes) + rows < 2:
            self.app.action_focus_next() if by > 0 else self.app.action_focus_previous()
            return
        self._keep_draft()
        stops = len(boxes) + rows
        at = addresses.index(step.address) if step and step.address in addresses else 0
        at = len(boxes) if self._listed or self.mode is Mode.ROWS else at
        at = (at + by) % stops
        if at == len(boxes):
            self._listed = True
            await self._show()
        else:
            await self._to_box(boxes[at])

    @property
    def _is_timer(self) -> bool:
        return self._place is not None and self._place.page.tells == "timer"

    async def action_mend(self) -> None:
        """Go to the answer that keeps this question shut, or back from it."""
        self._keep_draft()
        if self._session.mend() is None:
            self._tell("Nothing is shut here that an answer would open.")
            return
        step, place = self._session.step, self._session.place
        self._begin_page(None)
        if step is not None and place is not None and step.question.key not in place.page.asked:
            self._row = step.address
        await self._show()
        self._tell(words.then_back(self._session))

    async def action_put_off(self) -> None:
        """Keep "don't know yet" and go on; an answer there is goes only after a question."""
        step = self._step
        if step is None or self.mode is not Mode.BOX:
            if self.mode is Mode.WAYS and self._verdict is None:
                await self._forward()
            return
        standing = step.view(self._session.answers).standing(step.question)
        if standing in (Status.OPEN, Status.UNKNOWN):
            await self._put_off(step)
        else:
            label = step.worded(self._session.answers).label
            asked = f"Put “don't know yet” in the place of your answer to “{label}”?"

            async def done(yes: bool | None) -> None:
                if yes:
                    await self._put_off(step)

            self.app.push_screen(Ask(asked, "Yes, I don't know yet", "No, keep my answer"), done)

    async def action_every_question(self) -> None:
        """Ask every question on a page of its own from here on, or only what is not usual."""
        from interview.screens.welcome import ONE_BY_ONE, SHORT_WAY

        self._keep_draft()
        session = self._session
        session.every_question = not session.every_question
        self._begin_page(session.place)
        await self._show()
        self._tell(ONE_BY_ONE if session.every_question else SHORT_WAY)

    def action_go_to(self) -> None:
        """Open the list of all questions and answers."""
        from interview.screens.review import ReviewScreen

        self._keep_draft()
        self.app.push_screen(ReviewScreen(self._session, self._step), self._jump)

    def action_plan(self) -> None:
        """Show the whole plan."""
        from interview.screens.plan import PlanScreen

        self.app.push_screen(PlanScreen(self._session, self._path), self._jump)

    def action_now(self) -> None:
        """Write this very moment into the field of a time, or open the timing page."""
        field = self.field
        if field is None:
            return
        if isinstance(field, TextField) and field.asked.kind.name == "date and time":
            if not field.disabled:
                now = self._session.now.replace(microsecond=0)
                field.restore(typed_instant(now, now))
                field.begin()
        elif field.asked.kind.name == "list of readings" and not field.disabled:
            self.action_draw()

    def action_draw(self) -> None:
        """Open the page of this question: pieces drawn, a test timed; else the garden drawn."""
        step = self._step
        if step is None or (self.mode is Mode.ROWS and step.question.group != "holes"):
            super().action_draw()
        elif step.question is surfacing.PIECES:
            from interview.screens.pieces_page import PiecesScreen

            field = self.field
            listed = list(field.items.lines) if isinstance(field, ListField) else []
            # What that page keeps takes the place of what is half typed here.
            self._session.drafts.pop(step.address, None)
            self._typed.pop(step.address, None)
            self.app.push_screen(PiecesScreen(self._session, step, listed))
        elif step.question.group == "holes":
            from interview.screens.soak_watch import holes

            test = next((one for one in holes(self._session) if one.number == step.number), step)
            if shut := self._session.shut(test):
                self._tell(shut[0])
            else:
                self._time(test)
        else:
            super().action_draw()

    def action_save_again(self) -> None:
        """Try a failed save again."""
        self._saver.retry()
