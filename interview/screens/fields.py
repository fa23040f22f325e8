"""The field for each kind of answer. A field gives text; what it means is the session's to say."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from textual import events
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.message import Message
from textual.widgets import Button, Input

from interview.kinds import Choice, Moment, Note, Ticks, YesNo, list_lines
from interview.lines import Readings
from interview.model import Kind
from interview.reading import is_unknown
from interview.screens.lists import Choices, Items, Marks
from interview.screens.parts import Line, Press, Words

LONGEST = 64
"""Most characters of a one-value answer."""
LONGEST_ITEM = 200


@dataclass(frozen=True)
class Asked:
    """What a field needs to know of its question."""

    kind: Kind[Any]
    kept: str | None
    """The words kept, or nothing."""
    default: str | None
    """What Enter alone takes while there is no answer."""
    examples: str
    """How an answer is written."""
    shut: bool = False

    @property
    def text(self) -> str:
        """The words kept, where they are an answer."""
        return "" if self.kept is None or is_unknown(self.kept) else self.kept

    @property
    def placeholder(self) -> str:
        """What stands in the empty field."""
        if self.kept is not None and is_unknown(self.kept):
            return "don't know yet; Enter leaves it so"
        return f"Enter alone takes {self.default}" if self.default else ""


class Field(Vertical):
    """Where an answer is given."""

    class Given(Message):
        """The person pressed Enter: the text is to be kept."""

        def __init__(self, text: str) -> None:
            super().__init__()
            self.text = text

    class Typed(Message):
        """The text so far, to be said back; nothing is kept."""

        def __init__(self, text: str) -> None:
            super().__init__()
            self.text = text

    class Timing(Message):
        """The page that times a soak test is wanted."""

    def __init__(self, asked: Asked) -> None:
        super().__init__(id="field", disabled=asked.shut)
        self.asked = asked

    @property
    def text(self) -> str:
        """The answer as it stands in the field."""
        raise NotImplementedError

    @property
    def draft(self) -> Any:
        """What is half typed, in a form that ``restore`` takes."""
        return self.text

    def restore(self, draft: Any) -> None:
        """Put back what was half typed."""

    def begin(self) -> None:
        """Take the focus."""
        for child in self.query("Input, OptionList, Button"):
            child.focus()
            return

    def give(self) -> None:
        """Hand the answer over."""
        self.post_message(self.Given(self.text))


class ChoiceField(Field):
    """One of a few options: arrows, a letter or a number; Enter chooses."""

    def __init__(self, asked: Asked, options: tuple[tuple[str, str], ...]) -> None:
        super().__init__(asked)
        self._options = options

    def compose(self) -> ComposeResult:
        yield Choices(self._options, self.asked.text, self.asked.default or "")

    @property
    def _list(self) -> Choices:
        return self.query_one(Choices)

    @property
    def text(self) -> str:
        place = self._list.highlighted
        return "" if place is None else self._options[place][0]

    @property
    def draft(self) -> int | None:
        return self._list.highlighted

    def restore(self, draft: Any) -> None:
        self._list.highlighted = draft

    def on_choices_taken(self, event: Choices.Taken) -> None:
        event.stop()
        self.post_message(self.Given(event.key))


class TicksField(Field):
    """Any of a few options: space ticks, Enter goes on."""

    def __init__(self, asked: Asked, options: tuple[tuple[str, str], ...]) -> None:
        super().__init__(asked)
        self._options = options

    def compose(self) -> ComposeResult:
        start = self.asked.text or self.asked.default or ""
        ticked = {one.strip() for one in start.split(",")}
        yield Marks(self._options, ticked)
        usual = self.asked.kept is None and ticked & {key for key, _ in self._options}
        lead = "The usual ones are ticked. " if usual else ""
        yield Words(
            f"{lead}Space ticks, Enter goes on. None of these: leave nothing ticked.",
            classes="quiet",
        )

    @property
    def text(self) -> str:
        ticked = self.query_one(Marks).selected
        return ", ".join(key for key, _ in self._options if key in ticked) or "none"

    def restore(self, draft: Any) -> None:
        marks = self.query_one(Marks)
        marks.deselect_all()
        for key in str(draft).split(", "):
            if key != "none":
                marks.select(key)

    def on_marks_done(self, event: Marks.Done) -> None:
        event.stop()
        self.give()


class TextField(Field):
    """One line of text."""

    def compose(self) -> ComposeResult:
        longest = self.asked.kind.longest if isinstance(self.asked.kind, Note) else LONGEST
        # A note of several lines comes from a hand-edited file; one line of Input would spoil it.
        lines = self.asked.text.splitlines()
        value = self.asked.text if len(lines) < 2 else ""
        if len(lines) > 1:
            yield Words("\n".join(lines), classes="kept")
        with Horizontal(classes="entry"):
            hint = self.asked.placeholder if len(lines) < 2 else "Enter alone keeps these lines"
            yield Line(value, longest, placeholder=hint, id="entry")
            if isinstance(self.asked.kind, Moment):
                yield Press("Now (ctrl+n)", "now")

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

    def restore(self, draft: Any) -> None:
        self._line.value = str(draft)
        self._line.cursor_position = len(self._line.value)

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self.post_message(self.Typed(event.value))

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        self.give()


class ListField(Field):
    """A list: each line is added with Enter; Enter on the empty line goes on."""

    def compose(self) -> ComposeResult:
        yield Items(list_lines(self.asked.text))
        with Horizontal(classes="entry"):
            yield Line("", LONGEST_ITEM, many=True, id="entry", placeholder=self.asked.placeholder)
            yield Press("Add", "add")
        yield Words(
            "Enter adds the line; Enter on the empty line goes on. Up to the list: Enter changes "
            "an item, Delete takes it out.",
            classes="quiet",
        )

    @property
    def items(self) -> Items:
        """The list above the line."""
        return self.query_one(Items)

    @property
    def _line(self) -> Line:
        return self.query_one(Line)

    @property
    def text(self) -> str:
        lines = self.items.with_line(self._line.value.strip())
        if not lines and not self.asked.text:
            return "" if self.asked.default or self.asked.kind.name == "list of pieces" else "none"
        return "\n".join(lines) or "none"

    @property
    def draft(self) -> Any:
        return (self.items.lines, self._line.value)

    def restore(self, draft: Any) -> None:
        lines, typed = draft
        self.items.fill(list(lines))
        self._line.value = typed

    def begin(self) -> None:
        self._line.focus()

    def added(self) -> None:
        """Take the line into the list, once it is known to be good."""
        self.items.fill(self.items.with_line(self._line.value.strip()))
        self._line.value = ""
        self._line.focus()

    class Adding(Message):
        """A line is to be added; ``field.added`` takes it in when the whole list reads well."""

        def __init__(self, field: ListField, text: str) -> None:
            super().__init__()
            self.field = field
            self.text = text

    def add(self) -> None:
        """Ask for the line to be added, or go on where it is empty."""
        if self._line.value.strip():
            self.post_message(self.Adding(self, self.text))
        else:
            self.give()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        self.add()

    def on_button_pressed(self, event: Button.Pressed) -> None:
        if event.button.id == "add":
            event.stop()
            self.add()

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self.post_message(self.Typed(self.text if event.value.strip() else ""))

    def on_items_edited(self, event: Items.Edited) -> None:
        event.stop()
        self._line.value = event.line
        self._line.focus()

    def on_line_pasted(self, event: Line.Pasted) -> None:
        event.stop()
        self.items.fill([*self.items.lines, *event.lines])

    def on_key(self, event: events.Key) -> None:
        if event.key == "up" and self._line.has_focus and self.items.lines:
            event.stop()
            self.items.focus()
            self.items.highlighted = len(self.items.lines) - 1


class SoakField(Field):
    """The readings of a soak test: they are taken on a page of their own."""

    def compose(self) -> ComposeResult:
        lines = list_lines(self.asked.text)
        yield Words("\n".join(lines), classes="kept") if lines else Words("No reading yet.")
        yield Press("Open the timing page", "timing")

    @property
    def text(self) -> str:
        return self.asked.text

    def on_button_pressed(self, event: Button.Pressed) -> None:
        event.stop()
        self.post_message(self.Timing())


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
