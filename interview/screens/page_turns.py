"""What comes of an answer: it is kept, it is judged, and the page is left or stays."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from interview.asking.kinds import Several
from interview.asking.question import Status
from interview.asking.route import Step
from interview.asking.sitting import NOTHING_WRITTEN, Doubt, Heard
from interview.garden.survey.pacing_questions import WALKERS
from interview.reading import Refused
from interview.screens import words
from interview.screens.asked_page import AskedPage
from interview.screens.question_page import Mode
from interview.screens.usual_rows import MORE

if TYPE_CHECKING:
    from interview.asking.answers import Answers
    from interview.asking.path import Place
    from interview.garden.verdicts import Verdict

CHOOSE = "Choose one first, or say that you don't know yet."
WAITS = "This waits for another answer"
"""How a refusal begins that says nothing against the words themselves."""


class PageTurns(AskedPage):
    """Keeps answers and goes from page to page."""

    _path: Path
    _left = ""
    """The name of the place that was left for a question off the path."""

    # Keeping

    def _words_of(self, step: Step, text: str) -> str:
        """Return the words to keep for ``step``; none where its answer stays as it is.

        Raises ``Refused`` where nothing was written and nothing stands for it.
        """
        session, field = self._session, self.field
        view = step.view(session.answers)
        kept, standing = view.text(step.question), session.way.status(step)
        if kept is not None and field is not None and text == field.asked.typed:
            text = kept
        same = kept is not None and kept.strip() == text.strip()
        if same and standing is Status.ANSWERED and not session.is_unfinished(step):
            return ""
        if text.strip() or standing is Status.UNKNOWN:
            return text.strip() and text
        offered = session.offered(step)
        if offered:
            return offered
        if standing is Status.OPEN and self._optional(step):
            return ""
        raise Refused(CHOOSE if hasattr(step.question.kind, "options") else NOTHING_WRITTEN)

    async def _take(self, text: str) -> None:
        """Keep the words of the field and go on: to the next box, or from the page."""
        step, field = self._step, self.field
        if step is None or field is None:
            await self._forward()
            return
        try:
            given = self._words_of(step, text)
        except Refused as refused:
            self._refuse(str(refused))
            return
        place = self._place
        alone = place is None or place.page.tells == "timer" or self._row == step.address
        self._given = text
        if alone:
            await self._keep_alone(step, given, text)
            return
        self._keep_draft()
        self._typed[step.address] = given
        boxes = self._boxes()
        at = [one.address for one in boxes].index(step.address)
        if len(boxes) > 1 and given:
            try:
                self._session.read(step, given, self._typed_words())
            except Refused as refused:
                if not str(refused).startswith(WAITS):
                    self._given = None
                    self._refuse(str(refused))
                    return
        if at + 1 < len(boxes):
            await self._to_box(boxes[at + 1])
        else:
            await self._keep_page()

    async def _keep_alone(self, step: Step, given: str, text: str) -> None:
        """Keep the answer of a row, of a time of the soak test, or of what is on no page."""
        session, before = self._session, self._session.answers
        heard = list[Heard]()
        if given:
            try:
                heard = [session.offer(step, given)]
            except (Refused, Doubt) as refused:
                self._given = None
                self._refuse(str(refused))
                return
        elif session.way.status(step) is Status.OPEN and self._optional(step):
            session.put_off(step)
        session.drafts.pop(step.address, None)
        if self.field is not None:
            self._fresh = self.field.draft
        await self._judge(heard, before)

    async def _keep_page(self) -> None:
        """Keep all that was typed on this page, or none."""
        session, before = self._session, self._session.answers
        boxes = self._boxes()
        try:
            heard = session.take(self._typed_words())
        except (Refused, Doubt) as refused:
            self._given = None
            await self._to_fault(str(refused))
            return
        for one in [*boxes, *(one.step for one in heard)]:
            session.drafts.pop(one.address, None)
            self._typed.pop(one.address, None)
        if self.field is not None:
            self._fresh = self.field.draft
        await self._judge(heard, before)

    async def _to_fault(self, why: str) -> None:
        """Go to the box that was refused, and say why."""
        at = self._session.at_fault
        if at and at != (self._step.address if self._step else ""):
            step = self._session._at(at)
            if step is not None:
                if at not in [one.address for one in self._boxes()]:
                    self._row = at
                await self._to_box(step)
        self._refuse(why)

    async def _to_box(self, step: Step) -> None:
        """Show another box of this page, or one of its rows."""
        self._session.step = step
        self._listed = False
        await self._show()

    async def _judge(self, heard: Sequence[Heard], before: Answers) -> None:
        """Say what the answers just kept mean: here, where it stays; else on the next page."""
        session, row = self._session, self._row
        found = self._verdicts(heard)
        stays = next((one for one in found if one.stays), None)
        if stays is not None:
            self._verdict = stays
            await self._show()
            if session.alarm:
                self._tell(session.alarm, alarm=True)
                session.alarm = ""
            return
        said = [one.line for one in found]
        # What came of the line of a list was said as it was added.
        said += [
            remark
            for one in heard
            if not one.step.question.kind.many and (remark := session.remark(one.step, one.kept))
        ]
        if changed := session.changed:
            said.append(changed)
        told = " ".join(said)
        if row:
            await self._close_row(told)
        elif not await self._more_of_the_timer(told):
            await self._forward(told)
        self._given = None
        self._tell_new_pace(heard, before)

    def _verdicts(self, heard: Sequence[Heard]) -> list[Verdict]:
        """Return what the answers mean, each finding once."""
        if not heard:
            return []
        from interview.garden.verdicts import verdict  # it knows every sum

        found: dict[str, Verdict] = {}
        for one in heard:
            if one.taken is not None and (told := verdict(self._session.plan, one.step)):
                found.setdefault(told.key, told)
        return list(found.values())

    def _tell_new_pace(self, heard: Sequence[Heard], before: Answers) -> None:
        if any(one.step.question in WALKERS for one in heard):
            from interview.garden.paced_lengths import changes_said
            from interview.screens.changes import ChangesScreen

            if changed := changes_said(before, self._session.answers):
                said = "This changes lengths given in paces:"
                self.app.push_screen(ChangesScreen(said, changed))

    async def _more_of_the_timer(self, told: str) -> bool:
        """Show the next time that is missing on the page of the soak test; tell whether one is."""
        place, way = self._session.place, self._session.way
        if place is None or place.page.tells != "timer":
            return False
        missing = [one for one in way.wanted(place) if not self._session.shut(one)]
        if not missing:
            return False
        self._session.step = missing[0]
        await self._show()
        label = missing[0].worded(self._session.answers).label
        self._tell(f"{told} Still to give here: {label}.".strip())
        return True

    # Rows

    async def _open_row(self, key: str) -> None:
        """Open the row of ``key``, show the further rows, or with none take the page whole."""
        session, place = self._session, self._place
        if key == MORE:
            self._all_rows = True
            await self._show()
            return
        row = next((one for one in self._rows() if one.key == key), None)
        if row is None:
            if place is not None and place.page.tells == "the_plan":
                await self._on_from_the_plan()
            elif place is not None and (place.page.usual or place.page.more):
                await self._keep_page()
            else:
                await self._forward()
        elif row.goes:
            await self._go(key)
        else:
            step = session._at(key)
            if step is not None:
                self._row = key
                await self._to_box(step)

    async def _close_row(self, told: str = "") -> None:
        """Come back from a row to the list of them."""
        at, self._row = self._row, ""
        place = self._session.place
        self._listed = place is not None and bool(place.page.asked)
        if self._session.step is None or self._session.step.address != at:
            pass
        await self._show()
        if told:
            self._tell(told)

    async def _on_from_the_plan(self) -> None:
        first = self._session.way.first_open()
        if first is not None and first != self._place:
            await self._forward()
        else:
            self._end("")

    # Going on

    def _begin_page(self, place: Place | None) -> None:
        """Forget what was half done on the page left; of the soak test the timer comes first."""
        self._typed.clear()
        self._row, self._listed, self._all_rows, self._verdict = "", False, False, None
        if place is not None and place.page.tells == "timer":
            boxes = self._session.way.boxes(place)
            readings = next((one for one in boxes if one.question.kind.many), None)
            if readings is not None and not self._session.shut(readings):
                self._session.step = readings

    async def _forward(self, told: str = "", short: str = "") -> None:
        session = self._session
        alarm, session.alarm = session.alarm, ""
        mending = session.back_to is not None
        if session.place is None and self._left:
            place, self._left = session.go_to(self._left), ""
        else:
            place = session.forward()
        self._begin_page(place)
        if place is None or (place.page.tells == "the_plan" and not mending):
            await self._show()
            self._end(f"{alarm} {words.at_the_end(session)} {told}".strip())
            return
        back = words.then_back(session)
        await self._show()
        if alarm:
            self._tell(alarm, alarm=True)
        elif told or back:
            self._tell(f"{told} {back}".strip(), f"{short} {back}".strip())

    def _end(self, lead: str) -> None:
        from interview.screens.plan import PlanScreen

        self._show_around()
        self.app.push_screen(PlanScreen(self._session, self._path, lead))

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
            self._hear("Choose one of these first.", refused=True)
        elif target == KEEP:
            row = self._row
            await (self._close_row() if row else self._forward())
        elif target == WAYS_OUT:
            self._verdict = verdict
            self.action_ways()
        else:
            await self._go(target)

    def action_ways(self) -> None:
        """Show the ways out where the room is too small."""

    # Don't know yet

    async def _put_off(self, step: Step) -> None:
        """Keep "don't know yet" for a box or a row, and go on."""
        self._keep_draft()
        session, place = self._session, self._place
        timer = place is not None and place.page.tells == "timer" and step.question.kind.many
        if timer and place is not None:
            for one in session.way.wanted(place):
                if one != step and session.way.status(one) is Status.OPEN:
                    session.put_off(one)
        session.put_off(step)
        self._typed.pop(step.address, None)
        short = f"Put off: {step.worded(session.answers).label}."
        told = f"{short} To find out: {session.find_out(step)}"
        if self._row:
            await self._close_row(told)
            return
        boxes = self._boxes()
        addresses = [one.address for one in boxes]
        at = addresses.index(step.address) if step.address in addresses else len(boxes)
        if at + 1 < len(boxes):
            await self._to_box(boxes[at + 1])
            self._tell(told, short)
        elif len(boxes) > 1:
            await self._keep_page()
        else:
            await self._forward(told, short)

    def _keep_draft(self) -> None:
        """Put what is half typed by, so that it comes back with its question."""
        field, step = self.field, self._step
        if step is None or field is None:
            return
        if field.draft != self._fresh:
            self._session.drafts[step.address] = field.draft
            if not isinstance(step.question.kind, Several) or field.text != "none":
                self._typed[step.address] = field.text
        else:
            self._session.drafts.pop(step.address, None)
            self._typed.pop(step.address, None)
