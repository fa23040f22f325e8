"""What the question page is made of, and what it says around the question."""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

from textual import events
from textual.app import ComposeResult
from textual.containers import Container, Vertical, VerticalScroll
from textual.widgets import OptionList

from interview.asking.kinds import Moment
from interview.asking.path import Place
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
from interview.screens.preview import Preview
from interview.screens.reminding import reminders_of
from interview.screens.saver import BackgroundKeeper
from interview.screens.stages import STAGE_NAMES
from interview.screens.words import place_in_stage

PLAN_LINES = 5
"""Lines kept for what is known, with their border, under any question of a narrow window."""
LEAST_PLAN = 2
"""The same in a low one."""
LEAST_LIST = 4
"""Lines that a list of choices keeps where the question must scroll."""
LOOK_SECONDS = 10.0
"""How often it is looked whether a reading of a soak test is due."""


class Mode(Enum):
    """What a page holds now."""

    BOX = "one field to be filled in"
    ROWS = "rows that Enter takes whole"
    WAYS = "ways on, where it is shut or something speaks against an answer"


@dataclass(frozen=True)
class Shown:
    """What stands on the page, to be compared with what should."""

    mode: Mode
    name: str
    """The name of the place, or the address of a question off the path."""
    address: str = ""
    kept: str | None = None
    shut: bool = False
    lines: tuple[str, ...] = ()
    """What stands around the field: what is told, the other boxes, the rows."""


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
        """The question shown; nothing where a page only tells something."""
        self._place: Place | None = None
        """The page shown; nothing for a question that stands on none."""
        self._shown: Shown | None = None
        self._aside = ""
        """``why`` or ``how`` while that is shown under the question."""

    def parts(self) -> ComposeResult:
        yield Words(id="testing")
        with Container(id="body"):
            with Vertical(id="left"), VerticalScroll(id="asking", can_focus=False):
                yield Words(id="item")
                yield Words(id="told")
                yield Words(id="before", classes="quiet")
                yield Words(id="asked")
                yield Words(id="caution")
                yield Words(id="shut")
                yield Container(id="slot")
                yield Words(id="heard")
                yield Preview(id="preview")
                yield Words(id="hint", classes="quiet")
                yield Words(id="after", classes="quiet")
                yield Words(id="reason", classes="quiet")
                yield Words(id="sketch")
                yield Words(id="aside")
            yield PlanSoFar(id="plan_so_far")

    @property
    def field(self) -> Field | None:
        """The field that is shown."""
        return next(iter(self.query(Field)), None)

    @property
    def mode(self) -> Mode | None:
        """What the page holds now; nothing before it holds anything."""
        return self._shown.mode if self._shown else None

    def headings(self) -> tuple[str, ...]:
        """Return the stage and the place in it; how far one is stays whole."""
        if self._shown is None:
            return ("",)
        key = self.stage_here(self._session)
        stage = STAGE_NAMES.get(key, "")
        place = place_in_stage(self._session, self._place)
        return (f"{stage} · {place}", place)

    def stage_here(self, session: Session) -> str:
        if self._place is not None:
            return self._place.page.stage
        return self._step.stage.key if self._step else ""

    def offers(self, action: str) -> bool:
        """Tell whether a key does something at this question."""
        step = self._step
        if self._shown is None:
            return False
        match action:
            case "mend":
                return bool(self._session.back_to or (step and self._session.ways(step)))
            case "now":
                timed = step is not None and isinstance(step.question.kind, (Moment, Readings))
                return self.mode is Mode.BOX and timed
            case "put_off" | "aside('how')" | "aside('why')":
                return step is not None and self.mode is not Mode.ROWS
            case "save_again":
                return self._saver.report.failed
            case "ways":
                return self.stage_here(self._session) == "bed" and self._room_too_small
        return True

    @property
    def _room_too_small(self) -> bool:
        return self.query_one(PlanSoFar).too_small

    def word_of(self, key: PageKey) -> str:
        """Return the words of a key at this question."""
        question = self._step.question if self._step else None
        match key.action:
            case "draw" if question is not None and question.group == "holes":
                return "time it"
            case "draw" if question is survey.PIECES:
                return "draw the pieces"
            case "mend" if self._session.back_to:
                return "go back"
            case "go_on" if self.field is not None and self.field.typed:
                return "add"
        return key.word

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        if self._shown is not None:
            self.call_after_refresh(self._show_around)

    def _words(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Words).say(text)

    def _show_around(self) -> None:
        """Show what stands around the question."""
        if self._shown is None:
            return
        self._show_reason()
        self.show_frame()
        self.show_testing()
        self.call_after_refresh(self._fit)
        self.call_after_refresh(self.query_one(PlanSoFar).show, self._session)

    def on_plan_so_far_stands(self) -> None:
        """Offer the ways out where the plan now finds the room too small."""
        if self._shown is not None and self.is_mounted:
            self.show_keys()

    def _fit(self) -> None:
        """Let the question scroll before the plan loses its place."""
        if not self.is_mounted:
            return
        body, asking = self.query_one("#body").size, self.query_one("#asking")
        plan = self._plan_lines if self._beside else 0
        plan = min(plan, LEAST_PLAN) if self.query_one("#sketch").display else plan
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

    @property
    def _beside(self) -> bool:
        """Whether what is known stands under the page, and not at its side or nowhere."""
        return self.size.width < NARROW and self.query_one(PlanSoFar).display

    @property
    def _plan_lines(self) -> int:
        return LEAST_PLAN if self.size.height < LOW else PLAN_LINES

    def _tell(self, said: str, short: str = "", alarm: bool = False) -> None:
        """Tell something in the notice line: it covers nothing.

        ``short`` is told instead where there is no room for all of it.
        """
        self.tell(Said(said, Weight.ALARM if alarm else Weight.PLAIN, short))
        if self._shown is not None and self.is_mounted:
            self.call_after_refresh(self._fit_told)

    def _fit_told(self) -> None:
        if self._shown is not None and self.is_mounted:
            self._show_reason()
            self._fit()

    def _room(self) -> int:
        """Return how many lines there are for the question and what is told around it."""
        frame = 4 + (self.size.height >= LOW)
        return self.size.height - frame - (self._plan_lines if self._beside else 0)

    @property
    def _width(self) -> int:
        """Return how many columns there are for the question."""
        beside = 0
        if self.size.width >= NARROW and self.query_one(PlanSoFar).display:
            beside = min(64, int(self.size.width * 0.42)) + 1
        return max(20, self.size.width - beside - 5)

    def _lines(self) -> int:
        """Return how many lines the question takes without the reason for it."""
        width, field = self._width, self.field
        lines = 2 + (field.lines if field is not None else 0)
        for name in ("item", "told", "before", "asked", "hint", "heard", "preview", "after"):
            said = str(self.query_one(f"#{name}", Words).said)
            lines += sum(len(textwrap.wrap(one, width)) for one in said.splitlines())
        for name in ("caution", "shut"):
            if said := str(self.query_one(f"#{name}", Words).said):
                lines += 1 + len(textwrap.wrap(said, width - 2))
        return lines

    def _show_reason(self) -> None:
        """Show why we ask, and the picture, where nothing has to give way to them."""
        if self._step is None or self.mode is not Mode.BOX:
            self._words("reason", "")
            self._words("sketch", "")
            return
        question = self._step.worded(self._session.answers)
        width = self._width
        why = textwrap.wrap(f"Why: {question.why}", width)
        told = self.query_one(Notice).size.height - 1
        left = self._room() - self._lines() - max(0, told) - len(why)
        fits = left >= 0 and self._aside != "why"
        self._words("reason", " ".join(why) if fits else "")
        # A picture helps here and now more than most of the plan so far does.
        left += self._plan_lines - LEAST_PLAN if self._beside else 0
        sketched = fits and self._aside != "how" and _sketch_fits(question.picture, width, left)
        self._words("sketch", f"\n{question.picture}" if sketched else "")

    def show_testing(self) -> None:
        """Say that a reading of a soak test is due, once one is; nothing lies over the page."""
        if self._shown is None or not self.is_mounted:
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
        if refused:
            self.query_one(Preview).forget()
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
