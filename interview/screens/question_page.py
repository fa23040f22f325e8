"""What the question page is made of, and what it says around the question."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import Enum
from typing import NamedTuple

from textual.app import ComposeResult
from textual.content import Content

from interview.asking.kinds import Moment
from interview.asking.path import Place
from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.soak.reading_lines import Readings
from interview.garden.survey import surface_questions as surfacing
from interview.screens.beside import PlanSoFar
from interview.screens.field import Field
from interview.screens.keys import PageKey
from interview.screens.live import LivePicture
from interview.screens.page import Page
from interview.screens.parts import Holder, Scrolled, Stacked, Words
from interview.screens.preview import Preview
from interview.screens.saver import BackgroundKeeper
from interview.screens.stages import STAGE_NAMES
from interview.screens.words import place_in_stage

LOOK_SECONDS = 10.0
"""How often it is looked whether a reading of a soak test is due."""


class Mode(Enum):
    """What a page holds now."""

    BOX = "one field to be filled in"
    ROWS = "rows that Enter takes whole"
    WAYS = "ways on, where it is shut or something speaks against an answer"


class Shown(NamedTuple):
    """What stands on the page, to be compared with what should."""

    mode: Mode
    name: str
    """The name of the place, or the address of a question off the path."""
    address: str = ""
    kept: str | None = None
    shut: bool = False
    lines: tuple[str, ...] = ()
    """What stands around the field: what is told, the other boxes, the rows."""
    answers: Mapping[str, str] = {}
    """The answers that a page tells of."""


class QuestionPage(Page):
    """The parts of the page; asking and answering are in ``QuestionScreen``."""

    SAYS_WHAT_IS_DUE = True
    KEYS = "question"
    STYLES = "question.tcss"

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
        self._slot = Holder(id="slot")
        """Holds the field, or the rows: looked through many times a turn, and the page is large."""
        self._aside = ""
        """``why`` or ``how`` while that is shown under the question."""

    def parts(self) -> ComposeResult:
        yield Words(id="testing")
        with Holder(id="body"):
            with Stacked(id="left"), Scrolled(id="asking", can_focus=False):
                yield Words(id="item")
                yield Words(id="told")
                yield Words(id="before", classes="quiet")
                yield Words(id="asked")
                yield Words(id="caution")
                yield Words(id="shut")
                yield self._slot
                yield Words(id="hint", classes="quiet")
                yield Words(id="heard")
                yield Preview(id="preview")
                yield Words(id="after", classes="quiet")
                yield Words(id="reason", classes="quiet")
                yield Words(id="how", classes="quiet")
                yield Words(id="sketch")
                yield Words(id="aside")
                yield Words(id="stage_list")
            with Stacked(id="beside"):
                yield LivePicture(id="live")
                yield PlanSoFar(id="plan_so_far")

    @property
    def field(self) -> Field | None:
        """The field that is shown; nothing while a page is turned, when it is not whole."""
        fields = (one for one in self._slot.children if isinstance(one, Field))
        return next((one for one in fields if one.is_mounted and one.display), None)

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
                over = self._place is not None and self._place.page.tells == "result"
                return "readings" if over else "time it"
            case "draw" if question is surfacing.PIECES:
                return "draw the pieces"
            case "mend" if self._session.back_to:
                return "go back"
            case "go_on" if self.field is not None and self.field.typed:
                return "add"
        return key.word

    def _words(self, name: str, text: str | Content) -> None:
        self.query_one(f"#{name}", Words).say(text)
