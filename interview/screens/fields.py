"""The field for each kind of answer."""

from __future__ import annotations

import textwrap

from textual.app import ComposeResult
from textual.widgets import Input

from interview.asking.kinds import Choice, InSteps, Note, Ticks, YesNo
from interview.garden.soak.reading_lines import Readings
from interview.screens.field import Asked, Field
from interview.screens.list_field import ListField, SoakField
from interview.screens.lists import NONE_OF_THEM, Choices, Marks
from interview.screens.parts import Across, Line, Words

LONGEST = 64
"""Most characters of a one-value answer."""


MANY = 7
"""Lists longer than this may not be seen whole, and say how many there are."""


CHOOSE_ONE = "Choose one of these."


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
        """Hand over what is marked; else the words typed, to be read as on plain lines."""
        event.stop()
        self.post_message(self.Given(self, event.key or self._list.begun))


class StepsField(Field):
    """A choice in two lists: what is chosen in the first may bring up the second."""

    def __init__(self, asked: Asked, kind: InSteps) -> None:
        super().__init__(asked)
        self._kind = kind
        self._keys = [key for key, _ in kind.first]
        self._sorts = [key for key, _ in kind.sorts]

    def compose(self) -> ComposeResult:
        key = self.asked.text
        kept, sort = self._parted(key) or ("", "")
        yield Choices(self._kind.first, kept, "", id="first_step")
        yield Words(self._kind.further, id="further")
        label = dict(self._kind.sorts)[sort] if kept and self._kind.has_sorts(kept) else ""
        yield Choices(self._kind.sorts, label, "", id="second_step")

    def on_mount(self) -> None:
        self._show_second()

    def _parted(self, key: str) -> tuple[str, str] | None:
        return self._kind.parted(key) if key in dict(self._kind.options) else None

    @property
    def _first(self) -> Choices:
        return self.query_one("#first_step", Choices)

    @property
    def _second(self) -> Choices:
        return self.query_one("#second_step", Choices)

    @property
    def _begun(self) -> str:
        """The first choice, where one is marked."""
        place = self._first.marked
        return "" if place is None else self._keys[place]

    def _show_second(self) -> None:
        wanted = bool(self._begun) and self._kind.has_sorts(self._begun)
        self._second.display = self.query_one("#further").display = wanted

    @property
    def lines(self) -> int:
        second = len(self._sorts) + 1 if self.is_mounted and self._second.display else 0
        return len(self._keys) + second

    @property
    def how(self) -> str:
        return "A number or the arrows choose one; then press Enter."

    @property
    def text(self) -> str:
        place = self._second.marked
        if not self._kind.has_sorts(self._begun):
            return self._begun
        return "" if place is None else self._kind.joined(self._begun, self._sorts[place])

    @property
    def draft(self) -> str:
        return self.text or dict(self._kind.first).get(self._begun, "")

    def restore(self, draft: str) -> None:
        labels = [label for _, label in self._kind.first]
        whole = self._parted(draft)
        if whole is not None:
            self._first.mark(self._keys.index(whole[0]))
            if self._kind.has_sorts(whole[0]):
                self._second.mark(self._sorts.index(whole[1]))
        elif draft in labels:
            self._first.mark(labels.index(draft))
        self._show_second()

    def on_choices_moved(self) -> None:
        self._show_second()

    def on_choices_chosen(self, event: Choices.Chosen) -> None:
        """Hand over a whole answer, or go to the second list."""
        event.stop()
        if not self._begun or not self._kind.has_sorts(self._begun):
            self.give()
        elif not self._second.has_focus:
            self._show_second()
            self._second.focus()
        elif self.text:
            self.give()
        else:
            self.query_one("#further", Words).update(f"{self._kind.further} {CHOOSE_ONE}")


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
        how = f"{lead}Space ticks, Enter goes on. If none is there, tick the last row."
        return f"{how}{in_all((*self._options, NONE_OF_THEM))}"

    @property
    def lines(self) -> int:
        return min(11, len(self._options) + 1)

    def lines_in(self, width: int) -> int:
        return option_lines(self._options, width)

    @property
    def text(self) -> str:
        ticked = self.query_one(Marks).ticked
        if ticked:
            return ", ".join(key for key, _ in (*self._options, NONE_OF_THEM) if key in ticked)
        # Where nothing is usual, as with every question of safety, no tick is no answer.
        return "" if self.asked.default is None else NONE_OF_THEM[0]

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
        with Across(classes="entry"):
            hint = self.asked.placeholder if len(lines) < 2 else "Enter alone keeps these rows"
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

    def offer_anew(self) -> None:
        # A name or a note is seldom written anew as a whole, and would be gone at one key.
        if not isinstance(self.asked.kind, Note):
            self._line.select_all()

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
        case InSteps() as kind:
            return StepsField(asked, kind)
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
