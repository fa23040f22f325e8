"""What stands beside the question: what is known of the garden, and what is next."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, Any, NamedTuple

from textual import work
from textual.app import ComposeResult
from textual.content import Content
from textual.message import Message
from textual.worker import get_current_worker

from interview.asking.route import Step
from interview.garden.session import Session
from interview.screens import words
from interview.screens.badge import marked
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.page import framed
from interview.screens.parts import Scrolled, Words, is_there

if TYPE_CHECKING:
    from interview.garden.plan import Plan

LONGEST_LABEL = 22
"""Columns of what a line begins with, to be read as the name of what follows."""


class LinesWanted(NamedTuple):
    """What the lines are to be made of."""

    plan: Plan
    taken: tuple[str, ...]
    """The names of the usual pages taken."""
    here: tuple[str, ...]
    """The addresses that the page asks for."""

    def same(self, other: LinesWanted | None) -> bool:
        """Tell whether ``other`` gives the same lines; a plan is looked at by itself alone."""
        return other is not None and self.plan is other.plan and self[1:] == other[1:]


class PlanSoFar(Scrolled):
    """What is known of the garden, and what is next."""

    can_focus = True
    too_small = False
    """Whether the garden does not fit its room, by the lines shown."""

    due = ""
    """What is due, by the lines shown."""
    leads_to = ""
    presses = False
    """Where whoever comes back is led to, by the lines shown."""

    class Stands(Message):
        """Other lines stand here now."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._wanted: LinesWanted | None = None
        """What is to be shown."""
        self._busy = False
        self._title: Callable[[Step], str] = str

    def compose(self) -> ComposeResult:
        yield Words("What is known", id="plan_title")
        yield Words("", id="plan_far", classes="quiet")
        yield Words("", id="plan_lines")

    def show(self, session: Session) -> None:
        """Show the plan as it stands now, a little later: no key waits for a sum.

        Of several plans wanted while one is worked out the last alone is.
        """
        place = session.place
        keys = place.addresses(place.page.keys, session.answers.interview) if place else ()
        wanted = LinesWanted(session.plan, tuple(session.taken), tuple(keys))
        if not is_there(self) or wanted.same(self._wanted):
            return
        self._wanted = wanted
        self._title = partial(words.page_title, session)
        self.workers.cancel_group(self, "years")
        self._far("")
        if not self._busy:
            self._busy = True
            self._work_out(wanted)

    @work(thread=True, group="plan", exit_on_error=False, description="")
    def _work_out(self, wanted: LinesWanted) -> None:
        """Work the lines out; with years of rain, first those that need none."""
        long, plan = False, wanted.plan
        shown: words.Beside | str
        try:
            long = plan.storms.has_long_sums
            first = plan.without_record if long else plan
            shown = self._lines(first, wanted)
            if long:
                plan.after(first)  # what needs no years is not worked out twice
        except Exception as trouble:
            # A fault in the sums must not keep anybody from the questions and their answers.
            shown = words.fault(trouble)
        self.call_later(self._done, wanted, shown, long)

    def _lines(self, plan: Plan, wanted: LinesWanted) -> words.Beside:
        with framed(self).beside_keys():
            return words.plan_lines(plan, wanted.taken, self._title, wanted.here)

    def _done(self, wanted: LinesWanted, shown: words.Beside | str, long: bool) -> None:
        if self._wanted is not None and wanted is not self._wanted:
            self._work_out(self._wanted)
            return
        self._busy = False
        self._say(shown)
        if long:
            self._carry_years(wanted)

    @work(thread=True, group="years", exclusive=True, description="")
    def _carry_years(self, wanted: LinesWanted) -> None:
        worker = get_current_worker()
        shown: words.Beside | str
        try:
            with telling_page(self.app, self._far):
                shown = self._lines(wanted.plan, wanted)
        except Stopped:
            return
        except Exception as trouble:
            shown = words.fault(trouble)
        if not worker.is_cancelled:
            self.call_later(self._all_done, wanted, shown)

    def _all_done(self, wanted: LinesWanted, shown: words.Beside | str) -> None:
        if wanted is self._wanted and is_there(self):
            self._far("")
            self._say(shown)

    def _far(self, said: str) -> None:
        if is_there(self):
            self.query_one("#plan_far", Words).say(said)

    def _say(self, shown: words.Beside | str) -> None:
        self.post_message(self.Stands())
        if isinstance(shown, str):
            self.query_one("#plan_lines", Words).say(shown)
            return
        self.too_small, self.due = shown.too_small, shown.due
        self.leads_to, self.presses = shown.leads_to, shown.presses
        pieces: list[tuple[str, str]] = []
        for line in shown.lines:
            label, colon, rest = line.partition(": ")
            if verdict := marked(line):
                pieces += verdict
            elif "SHUT" in line:
                pieces.append((line, "$look bold"))
            elif colon and len(label) <= LONGEST_LABEL:
                pieces += [(f"{label}: ", "$muted"), (rest, "")]
            else:
                pieces.append((line, ""))
            pieces.append(("\n", ""))
        self.query_one("#plan_lines", Words).say(Content.assemble(*pieces[:-1]))
        framed(self).paint_first()
