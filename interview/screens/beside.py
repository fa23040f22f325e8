"""What stands beside the question: the plan so far."""

from __future__ import annotations

from textual import work
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.worker import get_current_worker

from interview.garden.plan import Plan
from interview.garden.session import Session
from interview.garden.summary import TOO_SMALL
from interview.screens import words
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.parts import Words, is_there


class PlanSoFar(VerticalScroll):
    """The plan so far: every line its value, or in words what it waits for."""

    can_focus = True

    def compose(self) -> ComposeResult:
        yield Words("The plan so far", id="plan_title")
        yield Words("", id="plan_far", classes="quiet")
        yield Words("", id="plan_lines")

    def show(self, session: Session) -> None:
        """Show the plan as it stands now; with years of rain, what needs them a little later."""
        plan = session.plan
        if plan.storms.has_long_sums:
            self._show(plan.without_record)
            self._work_out(plan)
        else:
            self.workers.cancel_node(self)
            self._far("")
            self._show(plan)

    @work(thread=True, exclusive=True)
    def _work_out(self, plan: Plan) -> None:
        # Years of rain take seconds; the questions must not wait for them.
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
            self.app.call_from_thread(self._done, shown)

    def _done(self, shown: words.PlanLines | str) -> None:
        if is_there(self):
            self._far("")
            self._say(shown)

    def _far(self, said: str) -> None:
        if is_there(self):
            self.query_one("#plan_far", Words).say(said)

    def _show(self, plan: Plan) -> None:
        try:
            self._say(words.plan_lines(plan))
        except Exception as trouble:
            # A fault in the sums must not keep anybody from the questions and their answers.
            self._say(words.fault(trouble))

    def _say(self, shown: words.PlanLines | str) -> None:
        if isinstance(shown, str):
            self.query_one("#plan_lines", Words).say(shown)
            return
        pieces: list[tuple[str, str]] = []
        known, waiting = shown
        for line in known:
            style = "$look bold" if line.value.startswith(("SHUT", "STOP", TOO_SMALL)) else "bold"
            pieces += [(f"{line.label}  ", ""), (line.value, style), ("\n", "")]
        for gap, labels in waiting:
            pieces += [(f"{labels}\n", "$muted")]
            pieces += [(f"  waits for: {gap}\n", "$muted italic")]
        self.query_one("#plan_lines", Words).say(Content.assemble(*pieces))
