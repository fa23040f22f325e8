"""What stands beside the question: the plan so far."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from textual import work
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.message import Message
from textual.worker import get_current_worker

from interview.garden.session import Session
from interview.screens import words
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.parts import Words, is_there

if TYPE_CHECKING:
    from interview.garden.plan import Plan


class PlanSoFar(VerticalScroll):
    """The plan so far: every line its value, or in words what it waits for."""

    can_focus = True
    too_small = False
    """Whether the garden does not fit its room, by the lines shown."""

    class Stands(Message):
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
            style = "$look bold" if line.value.startswith(("SHUT", "STOP", TOO_SMALL)) else "bold"
            pieces += [(f"{line.label}  ", ""), (line.value, style), ("\n", "")]
        for gap, labels in waiting:
            pieces += [(f"{labels}\n", "$muted")]
            pieces += [(f"  waits for: {gap}\n", "$muted italic")]
        self.query_one("#plan_lines", Words).say(Content.assemble(*pieces))
        self.post_message(self.Stands())
