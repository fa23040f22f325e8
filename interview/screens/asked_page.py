"""The question the session stands at, shown in the parts of one page that are updated in place."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from datetime import datetime

from textual import events
from textual.containers import Container
from textual.message import Message

from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.soak.reading_lines import typed_instant
from interview.reading import Refused
from interview.screens import words
from interview.screens.field import Asked, Field
from interview.screens.fields import field_for
from interview.screens.frame import KeyLine
from interview.screens.question_page import QuestionPage
from interview.screens.saver import BackgroundKeeper

REST = 0.2
"""Seconds after an Enter in which the next Enter is a bounce, or a key held down."""
BURST = 0.05
"""Seconds: keys that follow one another faster than this come from a paste, not from fingers."""
_TAKES = frozenset(("enter", "ctrl+t"))
_EDITS = frozenset(("space", "backspace", "delete", "paste"))


class TypedAhead:
    """Judges each key by the time it was pressed; times are in seconds by one steady clock."""

    def __init__(self) -> None:
        self._shown = self._last = self._took = float("-inf")
        self._running_on = self._resting = False

    def turned(self, at: float) -> None:
        """Note that a new question stands on the screen since ``at``."""
        self._shown = at
        self._running_on = self._resting = True

    def heeds(self, key: str, printable: bool, at: float) -> bool:
        """Tell whether a key pressed at ``at`` is for the question that is shown."""
        before, self._last = self._last, at
        took, self._took = self._took, at if key in _TAKES else self._took
        if not (printable or key in _TAKES or key in _EDITS):
            return True
        if at < self._shown:
            return False
        self._running_on = self._running_on and at - before < BURST
        if self._running_on:
            return False
        if key in _TAKES:
            self._resting = self._resting and at - took < REST
            return not self._resting
        return True


LEFT_OUT = "Keys pressed before this question appeared were ignored. Look, then press them again."


class AskedPage(QuestionPage):
    """Shows the question; what comes of an answer is in ``QuestionScreen``."""

    def __init__(self, session: Session, saver: BackgroundKeeper, file: Callable[[], str]) -> None:
        super().__init__(session, saver, file)
        self._fresh = ""
        """What the field held before anything was typed."""
        self._turn = asyncio.Lock()
        """One showing at a time: a page that closes asks for one while a jump asks for another."""
        self._ahead = TypedAhead()
        self._given: str | None = None
        """The text that was taken, while the next question is on its way."""

    async def _show(self) -> None:
        """Show the question the session stands at; what is shown already stays as it is."""
        async with self._turn:
            step = self._session.step
            with self.app.batch_update():  # one paint a turn
                if step is not None and not self._is_shown(step):
                    await self._show_step(step)
                self._show_around()

    def _is_shown(self, step: Step) -> bool:
        if self._step is None or self._step.address != step.address:
            return False
        kept = step.view(self._session.answers).text(step.question)
        asked = self.query_one(Field).asked
        return kept == asked.kept and asked.shut == bool(self._session.shut(step))

    async def _show_step(self, step: Step) -> None:
        same = self._step is not None and self._step.address == step.address
        half = self.query_one(Field).typed if same else ""
        missed = self._given is not None and self.query_one(Field).text != self._given
        if self._step is not None and not same:
            self.tell("")
        self._step, self._aside, self._given = step, "", None
        view = step.view(self._session.answers)
        question = self._session.worded(step)
        shut, value = self._session.shut(step), view.get(step.question)
        asked = Asked(
            question.kind,
            view.text(question),
            self._session.offered(step),
            question.kind.hint(view.units),
            bool(shut),
            typed_instant(value, self._session.now) if isinstance(value, datetime) else "",
        )
        self._words("item", words.item_name(self._session, step))
        self._words("asked", question.text)
        caution = f"{self._session.beware(step)} {question.caution_in(view)}".strip()
        self._words("caution", f"CAUTION: {caution}" if caution else "")
        self._words("shut", words.shut(self._session, step))
        hint = asked.examples[:1].upper() + asked.examples[1:]
        self._words("aside", "")
        slot = self.query_one("#slot", Container)
        await slot.remove_children()
        field = field_for(asked)
        await slot.mount(field)
        self._words("hint", field.how or f"{hint}.")
        self._fresh = field.draft
        if step.address in self._session.drafts:
            field.restore(self._session.drafts[step.address])
        elif half:
            field.carry(half)
        fault = view.fault(question) or ""
        said = fault or self._session.remark(step, asked.text) or self._meant(step, asked.text)
        self._hear(said, refused=bool(fault))
        self.query_one("#asking").scroll_home(animate=False)
        if shut:
            self.show_keys()
            self.query_one(KeyLine).point_at("go_on")
        else:
            field.begin()
        self._ahead.turned(Message().time)
        if missed:
            self.warn(LEFT_OUT)

    def _meant(self, step: Step, kept: str) -> str:
        """Say in words a day or a time that is kept, as the file writes it, in its figures."""
        return (
            self._understood(kept) if step.question.kind.name in ("date", "date and time") else ""
        )

    def _understood(self, text: str) -> str:
        """Say how ``text`` is understood, where that can be said and is not plain."""
        assert self._step is not None
        try:
            echo = self._session.read(self._step, text).echo if text.strip() else ""
        except (Refused, ValueError):
            echo = ""
        return f"I read this as {echo}." if echo and echo != text else ""

    def _refuse(self, why: str) -> None:
        """Say why an answer cannot be kept; what was typed stays."""
        self._hear(why, refused=True)
        self.query_one("#heard").scroll_visible(animate=False)
        self.query_one(Field).begin()

    def heeds(self, event: events.Key | events.Paste) -> bool:
        """Tell whether a key is for the question shown, and not typed ahead of it."""
        key = event.key if isinstance(event, events.Key) else "paste"
        printable = isinstance(event, events.Key) and event.is_printable
        if self._ahead.heeds(key, printable, event.time):
            return True
        if printable or key == "paste":
            self.warn(LEFT_OUT)
        return False
