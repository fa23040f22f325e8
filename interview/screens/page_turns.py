"""What comes of an answer: it is kept, it is judged, and the page is left or stays."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from textual import work

from interview.asking import keeping, own_fault
from interview.asking.kinds import Choice, Several, YesNo, list_lines, nothing_given
from interview.asking.question import Status
from interview.asking.route import Heard, Step
from interview.asking.sitting import Doubt
from interview.garden.survey import surface_questions as surfacing
from interview.garden.survey.pacing_questions import WALKERS
from interview.reading import Refused
from interview.screens.list_field import ListField
from interview.screens.page_moves import PageMoves
from interview.screens.parts import is_there
from interview.screens.usual_rows import MORE

if TYPE_CHECKING:
    from interview.asking.answers import Answers
    from interview.garden.verdicts import Verdict

CHOOSE = "Choose one first, or press ^T if you don't know yet."
WAITS = "This waits for another answer"
"""How a refusal begins that says nothing against the words themselves."""


def _read_apart(kind: Several[Any], line: str, view: Answers) -> list[str]:
    """Return the items of a list that stand in ``line``, mostly one; raises ``Refused``."""
    parts = [one.strip() for one in re.split(r";|,\s", line) if one.strip()]
    try:
        kind.each.read(line, view)
    except Refused as refused:
        try:
            read = [kind.each.read(one, view) for one in parts]
        except Refused:
            raise refused from None
        if len(read) < 2:
            raise
        return parts
    return [line]


class PageTurns(PageMoves):
    """Keeps answers, and goes on from them."""

    # Keeping

    def _words_of(self, step: Step, text: str) -> str:
        """Return the words to keep for ``step``; none where its answer stays as it is.

        Raises ``Refused`` where nothing was written and nothing stands for it.
        """
        session, field = self._session, self.field
        view = step.view(session.answers)
        kept, standing = view.text(step.question), session.way.status(step)
        if kept is not None and field is not None and text and text == field.asked.typed:
            text = kept
        same = kept is not None and kept.strip() == text.strip()
        if same and standing is Status.ANSWERED and not session.is_unfinished(step):
            return ""
        if text.strip() or standing is Status.UNKNOWN:
            return text.strip() and text
        offered = session.offered(step, self._typed_words())
        if offered:
            return offered
        if standing is Status.OPEN and self._optional(step):
            return ""
        one = isinstance(step.question.kind, Choice | YesNo)
        raise Refused(CHOOSE if one else nothing_given(step.question.kind))

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
            self._save_drafts()
            await self._to_box(boxes[at + 1])
        else:
            await self._keep_page()

    async def _keep_alone(self, step: Step, given: str, text: str) -> None:
        """Keep the answer of a row, of a time of the soak test, or of what is on no page."""
        session, before = self._session, self._session.answers
        try:
            with keeping.none_half_typed(session.drafts, step.address):
                heard = [session.offer(step, given)] if given else []
        except (Refused, Doubt) as refused:
            self._given = None
            self._refuse(str(refused))
            return
        if not given and session.way.status(step) is Status.OPEN and self._optional(step):
            session.put_off(step)
        # What was half typed in it before is no word of the page any more.
        self._typed.pop(step.address, None)
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
        told = " ".join(said)
        if row:
            await self._close_row(told)
        elif not await self._more_of_the_timer(told):
            await self._forward(told)
        self._given = None
        self._tell_new_pace(heard, before)
        if any(before.text_at(one.step.address) not in (None, one.kept) for one in heard):
            self.call_after_refresh(self._tell_change, session.answers)

    @work(thread=True, group="plan", exit_on_error=False, description="")
    def _tell_change(self, answers: Answers) -> None:
        """Say what the change of an answer did, once it is known: no key waits for it."""
        session = self._session
        try:
            # Years of rain are not gone through for it.
            said = "" if session.plan.storms.has_long_sums else session.changed
        except Exception as trouble:  # told where the plan is asked for
            own_fault.note("what an answer changed", trouble)
            return
        if said and session.answers.texts == answers.texts:
            self.call_later(self._add_to_told, said)

    def _add_to_told(self, said: str) -> None:
        if is_there(self) and said not in self.told:
            self._tell(f"{self.told} {said}".strip())

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

    async def _on_from_the_plan(self) -> None:
        first = self._session.way.first_open()
        if first is not None and first != self._place:
            await self._forward()
        else:
            self._end("")

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
        elif not await self._more_of_the_timer(short):
            await self._forward(told, short)

    # Lists

    def on_list_field_adding(self, event: ListField.Adding) -> None:
        """Take a line into a list once the list reads well with it."""
        if self._step is None:
            return
        kind = self._step.question.kind
        if isinstance(kind, Several) and not event.field.items.lines and not list_lines(event.line):
            event.field.refused()
            event.field.give()
            return
        lines = [event.line]
        try:
            if isinstance(kind, Several):
                # The line alone: a list that is only begun may still be too short.
                lines = _read_apart(kind, event.line, self._step.view(self._session.answers))
            else:
                self._session.read(self._step, event.text)
        except Refused as refused:
            event.field.refused()
            self._hear(self._session.answers.told(str(refused)), refused=True)
            return
        event.field.added(event.line, lines)
        remark = self._session.remark(self._step, event.line)
        self._hear(remark or self._understood(event.field.text))
        # At once: what the list shows must be on its way to the file before it is seen.
        self._keep_grown(event.field)

    def on_list_field_pasted_lines(self, event: ListField.PastedLines) -> None:
        """Say what is not known of the lines that were pasted into a list."""
        if self._step is not None:
            self._hear(self._session.remark(self._step, event.text))

    def on_list_field_remarked(self, event: ListField.Remarked) -> None:
        """Say under a list what came of a key."""
        self._hear(event.said)

    def on_list_field_grown(self, event: ListField.Grown) -> None:
        self._keep_grown(event.field)

    def _keep_grown(self, field: ListField) -> None:
        """Keep what is in a list so far: a flat battery must not cost it."""
        step = self._step
        if step is None or field is not self.field:
            return
        try:
            with keeping.none_half_typed(self._session.drafts, step.address):
                heard = self._session.keep_part(step, "\n".join(field.items.lines))
        except Refused:  # too short as yet, or pasted with a fault; said when the list is given
            return
        field.asked = field.asked._replace(kept=heard.kept)
        # What was typed meanwhile is no part of it.
        self._fresh, self._shown = "\n".join([*field.items.lines, ""]), self._should()
        self._show_around()
        if step.question is surfacing.PIECES:
            from interview.garden.survey.results import area_so_far

            # Feet taken for meters show in the area.
            if area := area_so_far(step.view(self._session.answers)):
                self._hear(f"I read this as {list_lines(heard.kept)[-1]}. {area}.")
