"""What the question page is made of, and what it says around the question."""

from __future__ import annotations

import textwrap
from collections.abc import Callable

from textual import events
from textual.app import ComposeResult
from textual.containers import Container, Vertical, VerticalScroll
from textual.widgets import OptionList

from interview.asking.route import Step
from interview.garden.session import Session
from interview.screens.beside import PlanSoFar, StageStrip, TopLine
from interview.screens.field import Field
from interview.screens.parts import NARROW, WIDE, KeyLine, Page, Press, Words, presses
from interview.screens.reminding import reminders_of
from interview.screens.saver import BackgroundKeeper
from interview.screens.words import short_name

BUTTONS = (
    (("go_on", "Go on"), ("back", "Back"), ("put_off", "Don't know yet")),
    (("why", "Why"), ("how", "How to find out"), ("go_to", "Go to…"), ("plan", "Plan")),
)
FURTHER = (
    ("draw", "Garden drawn"),
    ("try_out", "Try other sizes"),
    ("ways", "Ways out of the small room"),
    ("plants", "Plants"),
    ("mend", "Change what shuts it (f6)"),
)
OFFERED = {"bed": ("draw", "try_out"), "plants": ("plants",), "review": ("draw", "plants")}
"""The buttons of further pages that stand on the question page, by stage."""
PLAN_LINES = 5
"""Lines kept for the plan so far before the reason for the question takes any."""
LEAST_PLAN = 3
"""Lines of the plan so far, with its border, under any question; a picture may take one."""
LEAST_LIST = 4
"""Lines that a list of choices keeps where the question must scroll."""
LOOK_SECONDS = 10.0
"""How often it is looked whether a reading of a soak test is due."""

KEYS = (
    ("esc", "Back", "screen.back"),
    ("^t", "Don't know", "screen.put_off"),
    ("^g", "Go to", "screen.go_to"),
    ("^l", "Plan", "screen.plan"),
    ("f1", "Keys", "app.keys"),
    ("^q", "Quit", "app.leave"),
    ("f3", "Draw", "screen.draw"),
    ("f4", "Try", "screen.try_out"),
    ("f5", "Plants", "screen.plants"),
)


class QuestionPage(Page):
    """The parts of the page; asking and answering are in ``QuestionScreen``."""

    SAYS_WHAT_IS_DUE = True

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
        self._told = ("", "", False)
        """What is told of the last key in full and in short, and whether it is an alarm."""

    def parts(self) -> ComposeResult:
        yield TopLine(id="top")
        yield StageStrip(id="strip")
        yield Words(id="unsaved")
        yield Words(id="testing")
        yield Words(id="told")
        with Container(id="body"):
            with Vertical(id="left"):
                with VerticalScroll(id="asking", can_focus=False):
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
                with Container(id="buttons"):
                    for row in BUTTONS:
                        yield presses(row)
                yield presses(FURTHER, id="further")
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
        self.query_one(StageStrip).show(self._session, self._step.stage.key)
        self._show_offered()
        self._show_told()
        self._show_reason()
        self.show_saved()
        self.show_testing()
        self.call_after_refresh(self._fit)
        self.call_after_refresh(self.query_one(PlanSoFar).show, self._session)

    def _show_offered(self) -> None:
        offered = self._offered()
        self.query_one("#further").display = bool(offered)
        for name, _ in FURTHER:
            self.query_one(f"#{name}").display = name in offered

    def on_plan_so_far_said(self) -> None:
        """Offer the ways out where the plan has found the room too small."""
        if self._step is not None and self.is_mounted:
            self._show_offered()

    def _fit(self) -> None:
        """Let the question scroll before the buttons and the plan lose their place."""
        if not self.is_mounted:
            return
        body, asking = self.query_one("#body").size, self.query_one("#asking")
        below = sum(
            part.outer_size.height + part.styles.margin.height
            for part in (self.query_one("#buttons"), self.query_one("#further"))
            if part.display
        )
        sketched = self.query_one("#sketch").display
        plan = (LEAST_PLAN - sketched) if self.size.width < NARROW else 0
        padding = self.query_one("#left").styles.padding.height
        room = max(1, body.height - below - plan - padding)
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

    def _offered(self) -> tuple[str, ...]:
        """Return the further pages that a button leads to from this question."""
        assert self._step is not None
        testing = self._step.question.group == "holes"
        label = "Timing page (f3)" if testing else "Garden drawn"
        self.query_one("#draw", Press).label = label
        if self._session.back_to or self._session.ways(self._step):
            back = "Back to the shut question (f6)" if self._session.back_to else FURTHER[-1][1]
            self.query_one("#mend", Press).label = back
            return ("draw", "mend") if testing else ("mend",)
        if testing:
            return ("draw",)
        offered: tuple[str, ...] = OFFERED.get(self._step.stage.key, ())
        return (*offered, "ways") if offered and self.query_one(PlanSoFar).too_small else offered

    def _tell(self, said: str, short: str = "", alarm: bool = False) -> None:
        """Tell something in a line of the page: it covers nothing and goes with the question.

        ``short`` is told instead where there is no room for all of it.
        """
        self._told = (said, short or said, alarm)
        if self._step is not None and self.is_mounted:
            self._show_told()
            self._show_reason()

    def _show_told(self) -> None:
        said, short, alarm = self._told
        room = self._room() - self._lines()
        fits = len(textwrap.wrap(said, max(20, self.size.width - 2))) <= room
        self.query_one("#told").set_class(alarm, "alarm")
        self._words("told", said if fits or alarm else short)

    def _room(self) -> int:
        """Return how many lines there are for the question and what is told around it."""
        return self.size.height - 4 - (PLAN_LINES if self.size.width < NARROW else 0)

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
        lines += 1 + (self.size.width < 80 or NARROW <= self.size.width < WIDE)
        lines += bool(self._offered())
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
        told = textwrap.wrap(str(self.query_one("#told", Words).said), max(20, self.size.width - 2))
        left = self._room() - self._lines() - len(told) - len(why)
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

    def _show_top(self) -> None:
        assert self._step is not None
        file = short_name(self._file())
        self.query_one(TopLine).show(self._session, self._step, self._saver.report, file)

    def show_saved(self) -> None:
        """Show whether the answers are saved."""
        if self._step is None or not self.is_mounted:
            return
        report = self._saver.report
        self._show_top()
        self.query_one("#unsaved").set_class(not report.failed, "noted")
        self._words("unsaved", report.banner)

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
