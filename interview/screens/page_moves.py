"""Going from page to page, and within one from box to box and to its rows."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from textual.content import Content

from interview.asking.kinds import Several
from interview.asking.route import Step
from interview.reading import Refused
from interview.screens import words
from interview.screens.asked_page import AskedPage
from interview.screens.badge import badged
from interview.screens.parts import Line
from interview.screens.question_page import Mode
from interview.screens.resting import Resting

if TYPE_CHECKING:
    from collections.abc import Mapping

    from interview.asking.path import Place


class PageMoves(Resting, AskedPage):
    """Goes on, back and anywhere."""

    _path: Path
    _left = ""
    """The name of the place that was left for a question off the path."""
    _timed = False
    """Whether the page that times a test was looked at since this page was begun."""

    # Places

    def _begin_page(self, place: Place | None) -> None:
        """Forget what was half done on the page left; of the soak test the timer comes first."""
        self._typed = self._half_typed()
        self._row, self._listed, self._all_rows, self._verdict = "", False, False, None
        self._timed = False
        if place is not None and place.page.tells == "timer":
            boxes = self._session.way.boxes(place)
            readings = next((one for one in boxes if one.question.kind.many), None)
            if readings is not None and not self._session.shut(readings):
                self._session.step = readings

    def _half_typed(self) -> dict[str, str]:
        """Return what is half typed in the boxes of this page: Enter takes it with the others."""
        drafts, place = self._session.drafts, self._session.place
        if not drafts or place is None or place.page.tells == "timer":
            return {}
        boxes = [one for one in self._session.boxes(drafts) if not one.question.kind.many]
        return {one.address: drafts[one.address] for one in boxes if one.address in drafts}

    async def _forward(self, told: str = "", short: str = "") -> None:
        session = self._session
        alarm, session.alarm = session.alarm, ""
        # To where one was before a visit elsewhere one only comes back.
        mending = session.back_to is not None
        left, led_on = session._came_from, session._for_it
        if session.place is None and self._left:
            place, self._left = session.go_to(self._left), ""
        else:
            place = session.forward()
        self._begin_page(place)
        comes_back = mending or (place is not None and place.name == left)
        if place is None or (place.page.tells == "the_plan" and not comes_back):
            await self._show()
            self._end(f"{alarm} {words.at_the_end(session)} {told}".strip())
            return
        back = words.then_back(session)
        if session._for_it and not led_on:
            back = words.WAITED_FOR
        await self._show()
        if alarm:
            self._tell(alarm, alarm=True)
        elif told or back:
            self._tell(f"{told} {back}".strip(), f"{short} {back}".strip())

    def _end(self, lead: str) -> None:
        from interview.screens.plan import PlanScreen

        self._show_around()
        self.app.push_screen(PlanScreen(self._session, self._path, lead), self._jump)

    async def _jump(self, address: str | None) -> None:
        if address:
            await self._go(address)

    async def _go(self, name: str) -> None:
        """Go to a page or a question, which may be a row or stand on no page."""
        session = self._session
        here = session.place
        place = session.go_to(name)
        if place is None and session._at(name) is not None:
            self._left = here.name if here is not None else self._left
            session.jump(name)
        elif place is None:
            return
        step = session.step
        if place is None or step is None or step.address != name:
            self._begin_page(place)
        else:
            self._begin_page(None)
            rows = session.way.rows(place) + session.way.more(place)
            self._row = name if name in [one.address for one in rows] else ""
        await self._show()

    async def _lead(self, name: str) -> None:
        """Go where something is due as if the way had led there; a stop shows its ways on."""
        session = self._session
        if session._at(name) is None and session.way.place_of(name) not in session.way.places:
            return
        await self._go(name)
        session._came_from = ""
        if session.step is None or session.shut(session.step):
            return
        from interview.garden.verdicts import verdict  # it knows every sum
        from interview.quantities.evidence import Grade

        found = verdict(session.plan, session.step)
        if found is not None and found.grade is Grade.STOP and found.stays:
            self._verdict = found
            await self._show()

    async def _back(self) -> None:
        """Go to what stands before: a box, the rows, the page before."""
        session = self._session
        if self._verdict is not None:
            self._verdict = None
            await self._show()
            return
        self._keep_draft()
        if self._row and self._place is not None and not session.back_to:
            await self._close_row()
            return
        boxes = self._boxes()
        addresses = [one.address for one in boxes]
        at = addresses.index(self._step.address) if self._step and (
            self._step.address in addresses) else 0  # fmt: skip
        if self._listed and boxes:
            await self._to_box(boxes[-1])
            return
        if at > 0 and self.mode is Mode.BOX:
            await self._to_box(boxes[at - 1])
            return
        if session.back_to is not None:
            session.mend()
            self._begin_page(None)
        elif session.place is None and self._left:
            place, self._left = session.go_to(self._left), ""
            self._begin_page(place)
        else:
            place = session.backward()
            if place is None:
                self._tell("This is the first question.")
                return
            self._begin_page(place)
        await self._show()

    async def _choose_way(self, target: str) -> None:
        """Go the way that was chosen on a page that says why one should not go on."""
        verdict, self._verdict = self._verdict, None
        if verdict is None:
            await (self._go(target) if target else self._forward())
            return
        from interview.garden.verdict_rows import KEEP, WAYS_OUT

        if not target:
            self._verdict = verdict
            first = " Choose one of these first."  # and what is wrong stays said
            self._hear(Content.assemble(badged(verdict), first), refused=True)
        elif target == KEEP:
            row = self._row
            await (self._close_row() if row else self._forward())
        elif target == WAYS_OUT:
            self._verdict = verdict
            self.action_ways()
        else:
            await self._go(target)
            for line in self.query(Line):
                # What is measured anew takes the place of what was too near.
                line.select_all()

    def action_ways(self) -> None:
        """Show the ways out where the room is too small, to take one."""
        from interview.screens.ways_page import WaysScreen

        self.app.push_screen(WaysScreen(self._session), self._take_way)

    async def _take_way(self, takes: Mapping[str, str] | None) -> None:
        if takes is None:
            return
        self._verdict = None
        try:
            said = self._session.take_way(takes)
        except Refused as refused:
            said = [str(refused)]
        await self._show()
        self._tell(" ".join(said))

    async def _to_box(self, step: Step) -> None:
        """Show another box of this page, or one of its rows."""
        self._session.step = step
        self._listed = False
        await self._show()

    async def _close_row(self, told: str = "") -> None:
        """Come back from a row to the list of them."""
        self._row = ""
        place = self._session.place
        self._listed = place is not None and bool(place.page.asked)
        await self._show()
        if told:
            self._tell(told)

    def _save_drafts(self) -> None:
        """Have what is half typed in the file too: a flat battery must not cost it."""
        if self._session.drafts != self._drafts_saved:
            self._drafts_saved = dict(self._session.drafts)
            self._session.save()

    def save_half_typed(self) -> None:
        self._put_by()
        self._save_drafts()

    def _put_by(self) -> None:
        """Put what is half typed by; while it is typed on it is no word of this page."""
        field, step = self.field, self._step
        if step is None or field is None:
            return
        if field.draft != self._fresh:
            self._session.drafts[step.address] = field.draft
        else:
            self._session.drafts.pop(step.address, None)

    def _keep_draft(self) -> None:
        """Put what is half typed by, so that it comes back with its question."""
        self._put_by()
        field, step = self.field, self._step
        # Of a row that is left half typed the usual value still holds, as it is shown.
        if step is None or field is None or self._row:
            return
        if field.draft == self._fresh:
            self._typed.pop(step.address, None)
        elif not isinstance(step.question.kind, Several) or field.text != "none":
            self._typed[step.address] = field.text
