"""The field for each kind of answer."""

from __future__ import annotations

import textwrap

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.widgets import Input

from interview.asking.kinds import Choice, Note, Ticks, YesNo
from interview.garden.soak.reading_lines import Readings
from interview.screens.field import Asked, Field
from interview.screens.list_field import ListField, SoakField
from interview.screens.lists import Choices, Marks
from interview.screens.parts import Line, Words

LONGEST = 64
"""Most characters of a one-value answer."""


MANY = 7
"""Lists longer than this may not be seen whole, and say how many there are."""


def in_all(options: tuple[tuple[str, str], ...]) -> str:
    """Say how many options there are, where some may lie below the fold."""
    return f" {len(options)} in all." if len(options) > MANY else ""


GUTTER = 7
"""Columns before the words of an option: its edge, its mark, its tick."""


def option_lines(options: tuple[tuple[str, str], ...], width: int) -> int:
    """Return how many lines all the options take in ``width`` columns."""
    room = max(10, width - GUTTER)
    return sum(len(textwrap.wrap(words, room)) for _, words in options)


class ChoiceField(Field):
    """One of a few options: arrows, a letter or a number go to it; Enter takes it."""

    def __init__(self, asked: Asked, options: tuple[tuple[str, str], ...]) -> None:
        super().__init__(asked)
        self._options = options

    def compose(self) -> ComposeResult:
        yield Choices(self._options, self.asked.text, self.asked.default or "")

    @property
    def lines(self) -> int:
        return min(11, len(self._options))

    def lines_in(self, width: int) -> int:
        return option_lines(self._options, width)

    @property
    def how(self) -> str:
        goes = "A number" if len(self._options) < 10 else "The first letters"
        return f"{goes} or the arrows choose one; then press Enter.{in_all(self._options)}"

    @property
    def _list(self) -> Choices:
        return self.query_one(Choices)

    @property
    def text(self) -> str:
        place = self._list.marked
        return "" if place is None else self._options[place][0]

    def restore(self, draft: str) -> None:
        keys = [key for key, _ in self._options]
        self._list.mark(keys.index(draft) if draft in keys else None)

    def on_choices_chosen(self, event: Choices.Chosen) -> None:
        event.stop()
        self.post_message(self.Given(self, event.key))


class TicksField(Field):
    """Any of a few options: space ticks, Enter goes on."""

    def __init__(self, asked: Asked, options: tuple[tuple[str, str], ...]) -> None:
        super().__init__(asked)
        self._options = options

    def compose(self) -> ComposeResult:
        start = self.asked.text or self.asked.default or ""
        ticked = {one.strip() for one in start.split(",")}
        yield Marks(self._options, ticked)

    @property
    def how(self) -> str:
        usual = self.asked.kept is None and self.asked.default not in (None, "none")
        lead = "The usual ones are ticked. " if usual else ""
        how = f"{lead}Space ticks, Enter goes on. None of these: leave nothing ticked."
        return f"{how}{in_all(self._options)}"

    @property
    def lines(self) -> int:
        return min(11, len(self._options))

    def lines_in(self, width: int) -> int:
        return option_lines(self._options, width)

    @property
    def text(self) -> str:
        ticked = self.query_one(Marks).ticked
        return ", ".join(key for key, _ in self._options if key in ticked) or "none"

    def restore(self, draft: str) -> None:
        self.query_one(Marks).set(set(draft.split(", ")))

    def on_marks_done(self, event: Marks.Done) -> None:
        event.stop()
        self.give()


class TextField(Field):
    """One line of text."""

    def compose(self) -> ComposeResult:
        longest = self.asked.kind.longest if isinstance(self.asked.kind, Note) else LONGEST
        # A note of several lines comes from a hand-edited file; one line of Input would spoil it.
        lines = self.asked.text.splitlines()
        value = (self.asked.typed or self.asked.text) if len(lines) < 2 else ""
        if len(lines) > 1:
            yield Words("\n".join(lines), classes="kept")
        with Horizontal(classes="entry"):
            hint = self.asked.placeholder if len(lines) < 2 else "Enter alone keeps these lines"
            yield Line(value, longest, placeholder=hint, id="entry")

    @property
    def _line(self) -> Line:
        return self.query_one(Line)

    @property
    def text(self) -> str:
        typed = self._line.value
        many_kept = "\n" in self.asked.text.strip()
        return self.asked.text if many_kept and not typed.strip() else typed

    @property
    def draft(self) -> str:
        return self._line.value

    def restore(self, draft: str) -> None:
        self._line.say(draft)

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self.post_message(self.Typed(event.value))

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        # Keys typed ahead may have changed the line since Enter was pressed.
        many_kept = "\n" in self.asked.text.strip() and not event.value.strip()
        self.post_message(self.Given(self, self.asked.text if many_kept else event.value))


def field_for(asked: Asked) -> Field:
    """Return the field right for a kind of answer."""
    match asked.kind:
        case YesNo():
            return ChoiceField(asked, (("yes", "yes"), ("no", "no")))
        case Choice(options=options):
            return ChoiceField(asked, options)
        case Ticks(options=options):
            return TicksField(asked, options)
        case Readings():
            return SoakField(asked)
        case kind if kind.many:
            return ListField(asked)
        case _:
            return TextField(asked)
