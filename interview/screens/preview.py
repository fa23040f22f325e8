"""What an answer would mean, told under its field while it is typed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from textual import work
from textual.content import Content

from interview.asking import own_fault, route
from interview.asking.kinds import Note
from interview.asking.route import Step
from interview.garden.session import Session
from interview.quantities.evidence import Grade
from interview.screens.after_typing import FollowsTyping
from interview.screens.badge import badged
from interview.screens.parts import Words, is_there


class Preview(Words, FollowsTyping):
    """A line that follows what is typed, a little later: no key waits for a sum.

    Of several texts typed while one is looked at the last alone is.
    """

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._wanted: tuple[Session, Step, str, dict[str, str]] | None = None
        self._busy = False

    def follow(self, session: Session, step: Step, text: str, others: Mapping[str, str]) -> None:
        """Show what ``text`` would mean at ``step``; ``others`` are the words of other boxes."""
        if step.question.kind.many or isinstance(step.question.kind, Note):
            return
        self._wanted = (session, step, text, dict(others))
        self.once_typing_rests(self._begin)

    def _begin(self) -> None:
        if self._wanted is not None and not self._busy:
            self._busy = True
            self._look(*self._wanted)

    def forget(self) -> None:
        """Show nothing."""
        self._wanted = None
        self.say("")

    @work(thread=True, group="plan", exit_on_error=False, description="")
    def _look(self, session: Session, step: Step, text: str, others: dict[str, str]) -> None:
        from interview.garden.verdicts import preview  # it knows every sum

        said: str | Content = ""
        bad = False
        try:
            plan = session.plan
            typed = {address: one for address, one in others.items() if address != step.address}
            if typed:
                plan = plan.with_answers(route.in_force(session.supposing(typed)))
            found = preview(plan, step, text) if text.strip() else None
            if found is not None:
                said, bad = badged(found), found.grade is not Grade.GOOD
        except Exception as trouble:  # told where the plan is asked for
            own_fault.note("what an answer would mean", trouble)
        self.call_later(self._done, (session, step, text, others), said, bad)

    def _done(
        self, of: tuple[Session, Step, str, dict[str, str]], said: str | Content, bad: bool
    ) -> None:
        self._busy = False
        if self._wanted is None or not is_there(self):
            return
        if self._wanted[1:] != of[1:]:
            self._begin()
        else:
            self.set_class(bad, "refused")
            self.say(said)
