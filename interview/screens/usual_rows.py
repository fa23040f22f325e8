"""The rows of a page whose usual values Enter takes whole, and what may be gone to from it."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from textual import events
from textual.widgets.option_list import Option

from interview.asking.kinds import Choice, Note, Several
from interview.asking.path import Place
from interview.asking.question import Status, Unanswered
from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.soak.reading_lines import said_words
from interview.reading import Refused
from interview.screens.lists import PAUSE_SECONDS, Choices
from interview.screens.palette import CURSOR

MORE = "more"
"""The key of the row that shows the further ones."""
SKIPPED = "Enter skips"
WANTED = "needs an answer"
ROOM = 72
"""Columns of a row until its room is known."""
LONGEST_LABEL = 34
"""Columns of the labels; a longer one pushes its value to the right."""


class UsualRow(NamedTuple):
    """One row: a question with what holds for it, or something else that may be opened."""

    key: str
    """The address of its question, or ``MORE``."""
    label: str
    value: str
    goes: bool = False
    """Whether it leads to another page."""


def value_words(session: Session, step: Step, typed: Mapping[str, str] | None = None) -> str:
    """Return what holds for a question: its answer, or what is usual beside the words ``typed``."""
    view = step.view(session.answers)
    standing, text = session.way.status(step), view.text(step.question)
    if standing is Status.FAULTY:
        return f"{said_words(step.question.kind, text or '')}: needs attention"
    if standing is Status.UNKNOWN:
        return "don't know yet"
    # What a size comes to is not worked out anew at every key.
    beside = typed if isinstance(step.question.kind, (Choice, Note, Several)) else None
    usual = session.offered(step, beside) if text is None else text
    if not usual:
        optional = step.question.key in session.answers.interview.optional
        return SKIPPED if optional else session.not_yet(step) or WANTED
    try:
        return " ".join(session.read(step, usual).echo.split())
    except (Refused, Unanswered, ValueError):
        return " ".join(said_words(step.question.kind, usual).split())


def rows_at(
    session: Session, place: Place, all_of_them: bool, typed: Mapping[str, str] | None = None
) -> list[UsualRow]:
    """Return the rows of ``place`` beside the words ``typed`` into its boxes.

    The further ones stand behind a last row unless all are wanted; a single one would gain no
    line there.
    """
    way = session.way
    rows, more = way.rows(place), way.more(place)
    fresh = {one.address for one in way.fresh(place)}
    if all_of_them or not rows or len(more) == 1 or any(one.address in fresh for one in more):
        rows, more = rows + more, []
    answers = session.answers
    found = []
    for step in rows:
        new = "new: " if step.address in fresh else ""
        label = step.worded(answers).label
        found.append(UsualRow(step.address, label, f"{new}{value_words(session, step, typed)}"))
    if more:
        found.append(UsualRow(MORE, f"{len(more)} more…", ""))
    return found


def put_off_at(session: Session, place: Place) -> list[UsualRow]:
    """Return what is still to be found out, where ``place`` tells it: each row leads there."""
    if place.page.tells not in ("end_of_today", "waiting", "result", "the_plan"):
        return []
    found = []
    for step in session.put_off_list():
        label = f"To find out: {step.worded(session.answers).label}"
        found.append(UsualRow(step.address, label, session.find_out(step), goes=True))
    return found


class UsualRows(Choices):
    """Numbered rows, none of them marked at first: until somebody goes to one Enter takes all."""

    def __init__(self, rows: Sequence[UsualRow]) -> None:
        self.rows = list(rows)
        self._keys = [one.key for one in rows]
        self._labels = [one.label.casefold() for one in rows]
        shown = [Option(" ", id=str(number)) for number, _ in enumerate(rows, 1)]
        super(Choices, self).__init__(*shown, markup=False)
        self._usual: int | None = None
        self._is_marked = False
        self.set_class(True, "-unmarked", update=False)
        self._begun, self._typed_at = "", 0.0
        self._folded_to = 0
        self._fold(ROOM)

    def _fold(self, room: int) -> None:
        """Fold every row to ``room`` columns, its value under itself."""
        self._folded_to = room
        for place, lines in enumerate(self._folded(room)):
            self.replace_option_prompt_at_index(place, "\n".join(lines))

    def _folded(self, room: int) -> Iterator[list[str]]:
        wide = max((len(one.label) for one in self.rows if not one.goes), default=0)
        wide = min(wide, LONGEST_LABEL, max(room // 2, 1))
        digits = len(str(len(self.rows)))
        for number, one in enumerate(self.rows, 1):
            lead = f"{number:>{digits}}  "
            label = f"{one.label}." if one.goes else one.label.ljust(wide)
            indent = " " * (len(lead) + (0 if one.goes else wide + 2))
            line = f"{label}  {one.value}".rstrip()
            yield textwrap.wrap(line, max(room, 20), initial_indent=lead, subsequent_indent=indent)

    def lines_in(self, width: int) -> int:
        """Return how many lines the rows take in ``width``."""
        return sum(map(len, self._folded(width - 2)))

    def on_resize(self) -> None:
        """Fold the rows anew where their room has changed."""
        if (room := self.scrollable_content_region.width - 1) not in (0, self._folded_to):
            self._fold(room)

    @property
    def pointed(self) -> str:
        return CURSOR if self._is_marked else " "

    @property
    def row(self) -> UsualRow | None:
        """The row that is marked."""
        return None if self.marked is None else self.rows[self.marked]

    def action_cursor_up(self) -> None:
        """Mark the row above; above the first one none is."""
        if self.marked == 0:
            self.mark(None)
        else:
            super().action_cursor_up()

    def on_option_list_option_selected(self, event: Choices.OptionSelected) -> None:
        event.stop()
        event.prevent_default()  # not by the number that a row has here
        self.post_message(self.Chosen(self.rows[event.option_index].key))

    def on_key(self, event: events.Key) -> None:
        """Go to the row of a number, of two figures too."""
        letter = event.character or ""
        if not letter.isdecimal():
            return
        event.stop()
        event.prevent_default()
        goes_on = self._begun.isdecimal() and event.time - self._typed_at <= PAUSE_SECONDS
        self._typed_at = event.time
        for typed in (f"{self._begun}{letter}" if goes_on else letter, letter):
            if 1 <= int(typed) <= len(self.rows):
                self._begun = typed
                self.mark(int(typed) - 1)
                return
