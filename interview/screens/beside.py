"""What stands around the question: the top line, the stage strip, the plan so far."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from textual import work
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.message import Message
from textual.worker import get_current_worker

from interview.asking.route import Step
from interview.garden.place import questions as start
from interview.garden.session import Session
from interview.screens import words
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.parts import Words, is_there
from interview.screens.saver import SaveReport

if TYPE_CHECKING:
    from interview.garden.plan import Plan

LEAST_NAME = 8
"""Columns of the garden's name without which the name of the file is left out, or the name."""


class TopLine(Words):
    """Garden, stage and place in it on the left, the file and the state of saving on the right."""

    _line: Content | None = None

    def show(self, session: Session, step: Step, saved: SaveReport, file: str = "") -> None:
        """Show where the interview is, and the name of its ``file`` where there is room."""
        name = session.answers.whole().get(start.GARDEN_NAME) or "Rain garden"
        stage = f"{step.stage.letter}. {step.stage.title}"
        place = words.place_in_stage(session, step)
        width = self.size.width or 80
        state = saved.short
        room = width - len(state) - 2
        short = f"{stage} · {place}"
        if file and len(file) + len(short) + LEAST_NAME + 5 <= room:
            state, room = f"{file}  {state}".rstrip(), room - len(file) - 2
        cut = f"{name[: max(LEAST_NAME, room - len(short) - 4)]}…"
        fits = (f"{name} · {short}", f"{cut} · {short}", short, f"{step.stage.letter} · {place}")
        # The name gives way first, then the title; how far one is stays whole.
        left = next((one for one in fits if len(one) <= room), place)[: max(0, room)]
        left = left.ljust(max(0, room))
        style = "$text-error bold" if saved.failed else "$foreground-muted"
        line = Content.assemble((left, "bold"), "  ", (state, style))
        if line != self._line:
            self._line = line
            self.update(line, layout=False)


class StageStrip(Words):
    """How far each stage is, in words; the stage one is in stands out."""

    def show(self, session: Session, here: str) -> None:
        """Show the seven stages."""
        pieces: list[Content | tuple[str, str]] = []
        for text, current in words.strip(session, here):
            if pieces:
                pieces.append(("  ", ""))
            style = "bold reverse" if current else _STYLES.get(text.partition(" ")[2], "")
            pieces.append((f" {text} " if current else text, style))
        self.say(Content.assemble(*pieces))


_STYLES = {
    "done": "$text-success",
    "needs attention": "$text-error",
    "shut": "$text-warning",
    "not started": "$foreground-muted",
    "in progress": "",
}


class PlanSoFar(VerticalScroll):
    """The plan so far: every line its value, or in words what it waits for."""

    can_focus = True
    too_small = False
    """Whether the garden does not fit its room, by the lines shown."""

    class Said(Message):
        """Other lines stand here now."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._wanted: Plan | None = None
        """The plan that is to be shown."""
        self._busy = False

    def compose(self) -> ComposeResult:
        yield Words("The plan so far", id="plan_title")
        yield Words("", id="plan_far", classes="quiet")
        yield Words("", id="plan_lines")

    def show(self, session: Session) -> None:
        """Show the plan as it stands now, a little later: no key waits for a sum.

        Of several plans wanted while one is worked out the last alone is.
        """
        if not is_there(self) or session.plan is self._wanted:
            return
        self._wanted = session.plan
        self.workers.cancel_group(self, "years")
        self._far("")
        if not self._busy:
            self._busy = True
            self._work_out(self._wanted)

    @work(thread=True, group="plan", exit_on_error=False)
    def _work_out(self, plan: Plan) -> None:
        """Work the lines out; with years of rain, first those that need none."""
        long = False
        shown: words.PlanLines | str
        try:
            long = plan.storms.has_long_sums
            first = plan.without_record if long else plan
            shown = words.plan_lines(first)
            if long:
                plan.after(first)  # what needs no years is not worked out twice
        except Exception as trouble:
            # A fault in the sums must not keep anybody from the questions and their answers.
            shown = words.fault(trouble)
        self.call_later(self._done, plan, shown, long)

    def _done(self, plan: Plan, shown: words.PlanLines | str, long: bool) -> None:
        if self._wanted is not None and plan is not self._wanted:
            self._work_out(self._wanted)
            return
        self._busy = False
        self._say(shown)
        if long:
            self._carry_years(plan)

    @work(thread=True, group="years", exclusive=True)
    def _carry_years(self, plan: Plan) -> None:
        worker = get_current_worker()
        shown: words.PlanLines | str
        try:
            with telling_page(self.app, self._far):
                shown = words.plan_lines(plan)
        except Stopped:
            return
        except Exception as trouble:
            shown = words.fault(trouble)
        if not worker.is_cancelled:
            self.call_later(self._all_done, plan, shown)

    def _all_done(self, plan: Plan, shown: words.PlanLines | str) -> None:
        if plan is self._wanted and is_there(self):
            self._far("")
            self._say(shown)

    def _far(self, said: str) -> None:
        if is_there(self):
            self.query_one("#plan_far", Words).say(said)

    def _say(self, shown: words.PlanLines | str) -> None:
        if isinstance(shown, str):
            self.query_one("#plan_lines", Words).say(shown)
            return
        from interview.garden.summary import TOO_SMALL

        pieces: list[tuple[str, str]] = []
        known, waiting = shown
        self.too_small = any(line.value.startswith(TOO_SMALL) for line in known)
        for line in known:
            style = (
                "$text-warning bold"
                if line.value.startswith(("SHUT", "STOP", TOO_SMALL))
                else "bold"
            )
            pieces += [(f"{line.label}  ", ""), (line.value, style), ("\n", "")]
        for gap, labels in waiting:
            pieces += [(f"{labels}\n", "$foreground-muted")]
            pieces += [(f"  waits for: {gap}\n", "$foreground-muted italic")]
        self.query_one("#plan_lines", Words).say(Content.assemble(*pieces))
        self.post_message(self.Said())
