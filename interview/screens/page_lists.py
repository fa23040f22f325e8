"""What comes of the lines of a list: each is read, kept at once, and said back."""

from __future__ import annotations

from interview.asking.kinds import Several, list_lines
from interview.garden.survey import surface_questions as surfacing
from interview.reading import Refused
from interview.screens.list_field import ListField
from interview.screens.page_turns import PageTurns


class PageLists(PageTurns):
    """Keeps the lines of a list as they are put into it."""

    def on_list_field_adding(self, event: ListField.Adding) -> None:
        """Take a line into a list once the list reads well with it."""
        if self._step is None:
            return
        kind = self._step.question.kind
        if isinstance(kind, Several) and not event.field.items.lines and not list_lines(event.line):
            event.field.refused()
            event.field.give()
            return
        try:
            if isinstance(kind, Several):
                # The line alone: a list that is only begun may still be too short.
                kind.each.read(event.line, self._step.view(self._session.answers))
            else:
                self._session.read(self._step, event.text)
        except Refused as refused:
            event.field.refused()
            self._hear(self._session.answers.told(str(refused)), refused=True)
            return
        event.field.added(event.line)
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
        draft = self._session.drafts.pop(step.address, None)
        try:
            heard = self._session.keep_part(step, "\n".join(field.items.lines))
        except Refused:  # too short as yet, or pasted with a fault; said when the list is given
            if draft is not None:
                self._session.drafts[step.address] = draft
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
