"""What the question page is made of, and what it says around the question."""

from __future__ import annotations

import textwrap
from collections.abc import Callable

from textual import events
from textual.app import ComposeResult
from textual.containers import Container, Vertical, VerticalScroll
from textual.widgets import OptionList

from interview.asking.kinds import Moment
from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.soak.reading_lines import Readings
from interview.garden.survey import questions as survey
from interview.screens.beside import PlanSoFar
from interview.screens.field import Field
from interview.screens.frame import Notice, Said, Weight
from interview.screens.keys import PageKey
from interview.screens.page import Page
from interview.screens.parts import LOW, NARROW, Words
from interview.screens.reminding import reminders_of
from interview.screens.saver import BackgroundKeeper
from interview.screens.stages import STAGE_NAMES
from interview.screens.words import place_in_stage

PLAN_LINES = 5
"""Lines kept for the plan so far before the reason for the question takes any."""
LEAST_PLAN = 3
"""Lines of the plan so far, with its border, under any question; a picture may take one."""
LEAST_LIST = 4
"""Lines that a list of choices keeps where the question must scroll."""
LOOK_SECONDS = 10.0
"""How often it is looked whether a reading of a soak test is due."""


class QuestionPage(Page):
    """The parts of the page; asking and answering are in ``QuestionScreen``."""

    SAYS_WHAT_IS_DUE = True
    KEYS = "question"

    def __init__(self, session: Session, saver: BackgroundKeeper, file: Callable[[], str]) -> None:
        """Ask the questions of ``session``; ``file`` tells the name its answers have now."""
        super().__init__()
        self._file = file
        self._session = session
        self._saver = saver
        self._step: Step | None = None
        """The question shown."""
        self._aside = ""
        """``why`` or ``how`` while that is shown under the question."""

    def parts(self) -> ComposeResult:
        yield Words(id="testing")
        with Container(id="body"):
            with Vertical(id="left"), VerticalScroll(id="asking", can_focus=False):
                yield Words(id="item")
                yield Words(id="asked")
                yield Words(id="caution")
                yield Words(id="shut")
                yield Container(id="slot")
                yield Words(id="heard")
                yield Words(id="hint", classes="quiet")
                yield Words(id="reason", classes="quiet")
                yield Words(id="sketch")
                yield Words(id="aside")
            yield PlanSoFar(id="plan_so_far")

    def headings(self) -> tuple[str, ...]:
        """Return the stage and the place in it; how far one is stays whole."""
        step = self._step
        if step is None:
            return ("",)
        place = place_in_stage(self._session, step)
        stage = STAGE_NAMES.get(step.stage.key, step.stage.title)
        return (f"{stage} · {place}", place)

    def stage_here(self, session: Session) -> str:
        return self._step.stage.key if self._step else ""

    def offers(self, action: str) -> bool:
        """Tell whether a key does something at this question."""
        if self._step is None:
            return False
        match action:
            case "mend":
                return bool(self._session.back_to or self._session.ways(self._step))
            case "now":
                return isinstance(self._step.question.kind, (Moment, Readings))
            case "save_again":
                return self._saver.report.failed
            case "ways":
                return self._step.stage.key == "bed" and self.query_one(PlanSoFar).too_small
        return True

    def word_of(self, key: PageKey) -> str:
        """Return the words of a key at this question."""
        assert self._step is not None
        question = self._step.question
        match key.action:
            case "draw" if question.group == "holes":
                return "time it"
            case "draw" if question is survey.PIECES:
                return "draw the pieces"
            case "mend" if self._session.back_to:
                return "go back"
            case "go_on" if self.query_one(Field).typed:
                return "add"
        return key.word

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
        self._show_reason()
        self.show_frame()
        self.show_testing()
        self.call_after_refresh(self._fit)
        self.call_after_refresh(self.query_one(PlanSoFar).show, self._session)

    def on_plan_so_far_stands(self) -> None:
        """Offer the ways out where the plan now finds the room too small."""
        if self._step is not None and self.is_mounted:
            self.show_keys()

    def _fit(self) -> None:
        """Let the question scroll before the plan loses its place."""
        if not self.is_mounted:
            return
        body, asking = self.query_one("#body").size, self.query_one("#asking")
        sketched = self.query_one("#sketch").display
        plan = (LEAST_PLAN - sketched) if self.size.width < NARROW else 0
        padding = self.query_one("#left").styles.padding.height
        room = max(1, body.height - plan - padding)
        asking.styles.max_height = room
        for listing in self.query(OptionList):
            others = asking.virtual_size.height - listing.outer_size.height
            listing.styles.max_height = max(LEAST_LIST, room - others)
            self.call_after_refresh(listing.scroll_to_highlight)
        heard = self.query_one("#heard", Words)
        if self.focused is not None and asking in self.focused.ancestors:
            self.call_after_refresh(self.focused.scroll_visible, animate=False)
        if heard.said:
            self.call_after_refresh(heard.scroll_visible, animate=False)

    def _tell(self, said: str, short: str = "", alarm: bool = False) -> None:
        """Tell something in the notice line: it covers nothing.

        ``short`` is told instead where there is no room for all of it.
        """
        self.tell(Said(said, Weight.ALARM if alarm else Weight.PLAIN, short))
        if self._step is not None and self.is_mounted:
            self.call_after_refresh(self._fit_told)

    def _fit_told(self) -> None:
        if self._step is not None and self.is_mounted:
            self._show_reason()
            self._fit()

    def _room(self) -> int:
        """Return how many lines there are for the question and what is told around it."""
        frame = 4 + (self.size.height >= LOW)
        return self.size.height - frame - (PLAN_LINES if self.size.width < NARROW else 0)

    def _lines(self) -> int:
        """Return how many lines the question takes without the reason for it."""
        assert self._step is not None
        question = self._session.worded(self._step)
        beside = 0 if self.size.width < NARROW else min(64, int(self.size.width * 0.42)) + 1
        width = max(20, self.size.width - beside - 5)
        lines = 2 + self.query_one(Field).lines
        lines += sum(len(textwrap.wrap(one, width)) for one in question.text.splitlines())
        lines += bool(self._step.number)
        for name in ("hint", "heard"):
            lines += len(textwrap.wrap(str(self.query_one(f"#{name}", Words).said), width))
        if caution := str(self.query_one("#caution", Words).said):
            lines += 1 + len(textwrap.wrap(caution, width - 2))
        if shut := str(self.query_one("#shut", Words).said):
            lines += 1 + len(textwrap.wrap(shut, width - 2))
        return lines

    def _show_reason(self) -> None:
        """Show why we ask, and the picture, where nothing has to give way to them."""
        assert self._step is not None
        question = self._step.worded(self._session.answers)
        narrow = self.size.width < NARROW
        beside = 0 if narrow else min(64, int(self.size.width * 0.42)) + 1
        width = max(20, self.size.width - beside - 5)
        why = textwrap.wrap(f"Why: {question.why}", width)
        told = self.query_one(Notice).size.height - 1
        left = self._room() - self._lines() - max(0, told) - len(why)
        fits = left >= 0 and self._aside != "why"
        self._words("reason", " ".join(why) if fits else "")
        # A picture helps here and now more than most of the plan so far does.
        left += PLAN_LINES - 2 if narrow else 0
        sketched = fits and self._aside != "how" and _sketch_fits(question.picture, width, left)
        self._words("sketch", f"\n{question.picture}" if sketched else "")

    def show_testing(self) -> None:
        """Say that a reading of a soak test is due, once one is; nothing lies over the page."""
        if self._step is None or not self.is_mounted:
            return
        said = ""
        if self._session.answers.numbers("holes") and reminders_of(self.app).notice:
            from interview.screens.soak_watch import due_words

            said = due_words(self._session)
        self._words("testing", said)
        self.query_one("#testing").display = bool(said)

    def _hear(self, text: str, refused: bool = False) -> None:
        heard = self.query_one("#heard", Words)
        heard.set_class(refused and bool(text), "refused")
        self.query(Field).set_class(refused and bool(text), "amiss")
        if text != heard.said:
            heard.say(text)
            self._show_reason()
            self.call_after_refresh(self._fit)

    def action_aside(self, which: str) -> None:
        """Show or hide why we ask, or how to find out."""
        if self._step is None:
            return
        question = self._step.worded(self._session.answers)
        self._aside = "" if self._aside == which else which
        more = f"\n{question.more}" if question.more else ""
        said = {
            "": "",
            "why": f"Why: {question.why}{more}",
            "how": f"How to find out: {self._session.find_out(self._step)}",
        }
        if self._aside == "how" and question.picture:
            said["how"] += f"\n{question.picture}"
        self._words("aside", said[self._aside])
        self._show_reason()
        if self._aside:
            self.call_after_refresh(self.query_one("#aside").scroll_visible, animate=False)


def _sketch_fits(picture: str, width: int, room: int) -> bool:
    lines = picture.splitlines()
    return 0 < len(lines) < room and max(map(len, lines)) <= width
