"""Fields whose answer has several lines: a list, and the readings of a soak test."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.message import Message
from textual.widgets import Input

from interview.asking.kinds import Several, list_lines
from interview.garden.soak.reading_lines import said_line
from interview.screens import keys
from interview.screens.field import Field
from interview.screens.lists import Items
from interview.screens.parts import Across, Line, Words

LONGEST_ITEM = 200
HELP = (
    "Enter adds what you typed; Enter on an empty field goes on. Up to the list: Enter changes a "
    "row, Delete takes it out."
)
HALF_DONE = "Something is half typed. Add it with Enter, or clear it, before you change a row."
TAKEN_OUT = "Taken out of the list. ^Z brings it back."
ADDS = (
    "Enter adds a reading. On an empty field it opens the timing page, and after that it goes on."
)
NONE_YET = "Enter opens the timing page. It leads you through both fillings, then the readings."
SHOWN_READINGS, FEWER_READINGS = 4, 2
"""The latest readings shown beside the question, and in a low window; the timing page has all."""


class ListField(Field):
    """A list: each line is added with Enter; Enter on the empty line goes on."""

    BINDINGS: ClassVar[list[BindingType]] = keys.bindings("list")
    _adding = ""
    """What stands at the head of the line and was given with Enter, until it is in the list."""

    class Remarked(Message):
        """Something is to be said under the field."""

        def __init__(self, said: str) -> None:
            super().__init__()
            self.said = said

    def compose(self) -> ComposeResult:
        yield Items(list_lines(self.asked.text))
        with Across(classes="entry"):
            yield Line("", LONGEST_ITEM, many=True, id="entry", placeholder=self.asked.placeholder)

    @property
    def how(self) -> str:
        example = self.asked.examples
        return f"{example[:1].upper()}{example[1:]}. {HELP}"

    @property
    def _pieces(self) -> bool:
        """Whether the list may also be made on a page of its own."""
        return self.asked.kind.name == "list of pieces"

    @property
    def lines(self) -> int:
        return 3 + min(6, len(self.items.lines))

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
            kind = self.asked.kind
            needs_some = isinstance(kind, Several) and kind.at_least > 0
            return "" if self.asked.default or self._pieces or needs_some else "none"
        return "\n".join(lines) or "none"

    @property
    def typed(self) -> str:
        return self._line.value

    def carry(self, typed: str) -> None:
        self._line.say(typed)

    @property
    def draft(self) -> str:
        return "\n".join([*self.items.lines, self._line.value])

    def restore(self, draft: str) -> None:
        *lines, typed = draft.split("\n")
        self._fill(lines)
        self._line.say(typed)

    def begin(self) -> None:
        self._line.focus()

    def on_mount(self) -> None:
        self._offer()

    def added(self, line: str, parts: Sequence[str] = ()) -> None:
        """Take a line into the list, once it is known to be good; what was typed since stays.

        ``parts`` are its items where it holds several.
        """
        lines = self.items.with_line(line.strip())
        at = len(self.items.lines) if self.items.lifted is None else self.items.lifted
        self._fill([*lines[:at], *(parts or [line.strip()]), *lines[at + 1 :]])
        self._adding = self._adding.removeprefix(line)
        with self._line.prevent(Input.Changed):
            self._line.say(self._line.value.removeprefix(line))
        self._line.focus()

    def refused(self) -> None:
        """Leave the line as it stands: it is none of the list."""
        self._adding = ""

    class Grown(Message):
        """The list holds more lines than before; they are to be kept at once."""

        def __init__(self, field: ListField) -> None:
            super().__init__()
            self.field = field

    def _fill(self, lines: list[str]) -> None:
        self.items.fill(lines)
        self._offer()

    def _offer(self) -> None:
        """Offer the default only while the list is empty: Enter then takes the list."""
        self._line.placeholder = "" if self.items.lines else self.asked.placeholder

    class Adding(Message):
        """A line is to be added; ``field.added`` takes it in when the whole list reads well."""

        def __init__(self, field: ListField, line: str, text: str) -> None:
            super().__init__()
            self.field = field
            self.line = line
            self.text = text

    class PastedLines(Message):
        """Several lines were pasted; they are looked at with the whole list."""

        def __init__(self, text: str) -> None:
            super().__init__()
            self.text = text

    def add(self, line: str | None = None) -> None:
        """Ask for ``line``, or what stands there, to be added; go on where it is empty."""
        line = (self._line.value if line is None else line).removeprefix(self._adding)
        if line.strip():
            self._adding += line
            text = "\n".join(self.items.with_line(line.strip()))
            self.post_message(self.Adding(self, line, text))
        elif not self._adding:
            self.give()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        # Keys typed ahead may have changed the line since Enter was pressed.
        self.add(event.value)

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self.post_message(self.Typed(self.text if event.value.strip() else ""))

    def on_items_edited(self, event: Items.Edited) -> None:
        """Move a line from the list into the field, unless another one is half typed there."""
        event.stop()
        if self._line.value.strip():
            self.post_message(self.Remarked(HALF_DONE))
        else:
            self._line.say(self.items.lift(event.place))
            self._offer()
        self._line.focus()

    def on_items_taken_out(self, event: Items.TakenOut) -> None:
        event.stop()
        self._offer()
        self.post_message(self.Remarked(TAKEN_OUT))
        if not self.items.lines:
            self._line.focus()

    def action_bring_back(self) -> None:
        """Put the line taken out last back where it was."""
        self.items.bring_back()
        self._offer()
        self.post_message(self.Remarked(""))

    def on_line_pasted(self, event: Line.Pasted) -> None:
        event.stop()
        self._fill([*self.items.lines, *event.lines])
        self.post_message(self.Grown(self))
        self.post_message(self.PastedLines("\n".join(event.lines)))

    def on_key(self, event: events.Key) -> None:
        """Go between the list and the line below it; letters always go into the line."""
        last = len(self.items.lines) - 1
        if event.key == "up" and self._line.has_focus and last >= 0:
            event.stop()
            self.items.focus()
            self.items.highlighted = last
        elif event.key == "down" and self.items.has_focus and self.items.highlighted == last:
            event.stop()
            event.prevent_default()
            self._line.focus()
        elif self.items.has_focus and event.is_printable and event.character:
            event.stop()
            self._line.focus()
            self._line.insert_text_at_cursor(event.character)


class SoakField(Field):
    """The readings of a soak test: typed here one by one, or taken on a page of their own."""

    class Added(Message):
        """Readings were typed; ``field.kept`` empties the line once they are kept."""

        def __init__(self, field: SoakField, lines: list[str]) -> None:
            super().__init__()
            self.field = field
            self.lines = lines

    def compose(self) -> ComposeResult:
        lines = list_lines(self.asked.text)
        said = [said_line(line) for line in lines[-self._shown :]]
        if before := len(lines) - len(said):
            said.insert(0, f"{before} earlier, on the timing page")
        yield Words("\n".join(said), classes="kept") if lines else Words("No reading yet.")
        yield Line("", LONGEST_ITEM, many=True, id="entry", placeholder=self.asked.placeholder)
        yield Words(ADDS if lines else NONE_YET, classes="quiet")

    @property
    def lines(self) -> int:
        return 5 + min(max(1, len(list_lines(self.asked.text))), self._shown + 1)

    @property
    def _shown(self) -> int:
        return FEWER_READINGS if self.screen.has_class("low") else SHOWN_READINGS

    @property
    def text(self) -> str:
        return self.asked.text

    @property
    def _line(self) -> Line:
        return self.query_one(Line)

    @property
    def draft(self) -> str:
        return self._line.value

    @property
    def typed(self) -> str:
        """The reading that is typed and not kept yet."""
        return self._line.value.strip()

    def restore(self, draft: str) -> None:
        self._line.say(draft)

    def carry(self, typed: str) -> None:
        self._line.say(typed)

    def begin(self) -> None:
        self._line.focus()

    def kept(self) -> None:
        """Empty the line: what was typed is kept."""
        self._line.value = ""

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        if self.typed:
            self.post_message(self.Added(self, [self.typed]))
        else:
            self.give()

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()

    def on_line_pasted(self, event: Line.Pasted) -> None:
        event.stop()
        self.post_message(self.Added(self, event.lines))
