"""The lists that fields are made of: choose one, tick several, edit the lines of a list."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual import events
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from interview.reading import Refused, read_choice

PAUSE_SECONDS = 1.0
"""After so long without a letter the next one begins another word."""


class Choices(OptionList):
    """Options of which one is chosen; none is chosen beforehand.

    A number or a letter only goes to an option: what takes it is always Enter, or a click.
    """

    class Chosen(Message):
        """An option was chosen; an empty key stands for Enter without one."""

        def __init__(self, key: str) -> None:
            super().__init__()
            self.key = key

    class Lost(Message):
        """The letters typed begin no option, and so none is marked; no letters: one is again."""

        def __init__(self, typed: str) -> None:
            super().__init__()
            self.typed = typed

    def __init__(self, options: Sequence[tuple[str, str]], kept: str, usual: str) -> None:
        self._keys = [key for key, _ in options]
        self._labels = [label.casefold() for _, label in options]
        kept_key, usual_key = _key_of(kept, options), _key_of(usual, options)
        shown = []
        for place, (key, label) in enumerate(options, 1):
            lead = f"{place} " if place < 10 and len(options) < 10 else ""
            tail = "   ✓ your answer" if key == kept_key else ""
            tail = tail or (
                "   · usual: Enter alone takes it" if key == usual_key and not kept_key else ""
            )
            shown.append(Option(f"{lead}{label}{tail}", id=key))
        super().__init__(*shown, markup=False)
        self._kept = self._keys.index(kept_key) if kept_key else None
        self._begun, self._typed_at = "", 0.0

    def on_mount(self) -> None:
        self.highlighted = self._kept

    def action_select(self) -> None:
        """Choose what is highlighted, or hand over nothing where nothing is."""
        if self.highlighted is None:
            self.post_message(self.Chosen(""))
        else:
            super().action_select()

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        self.post_message(self.Chosen(event.option.id or ""))

    def on_key(self, event: events.Key) -> None:
        letter = (event.character or "").casefold()
        if not letter.isalnum() or len(letter) != 1:
            self._begun = ""
            return
        event.stop()
        if event.time - self._typed_at > PAUSE_SECONDS:
            self._begun = ""
        self._typed_at = event.time
        if letter.isdigit():
            self._begun = ""
            place = int(letter) - 1
            if 0 <= place < len(self._keys) < 10:
                self.highlighted = place
            return
        self._jump(letter)

    def _jump(self, letter: str) -> None:
        """Go to the option, or one with a word, that begins as typed; or to the next of a letter.

        Other letters mark nothing: a word meant for another question must not answer this one.
        """
        whole = self._begun + letter
        again = set(whole) == {letter}
        tries = [(whole, 0), (letter, (self.highlighted or 0) + 1)] if again else [(whole, 0)]
        for begun, start in tries:
            count = len(self._labels)
            order = [(start + step) % count for step in range(count)]
            starts = (one for one in order if self._labels[one].startswith(begun))
            within = (one for one in order if f" {begun}" in self._labels[one])
            found = next(starts, next(within, None))
            if found is not None:
                if self.highlighted is None:
                    self.post_message(self.Lost(""))
                self._begun, self.highlighted = begun, found
                return
        self._begun, self.highlighted = whole, None
        self.post_message(self.Lost(whole))


def _key_of(text: str, options: Sequence[tuple[str, str]]) -> str:
    try:
        return read_choice(text, options) if text else ""
    except Refused:
        return ""


class Marks(OptionList):
    """Options of which any number is ticked; a tick is a sign, not a colour."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "done", "Go on", show=False),
        Binding("space", "select", "Tick", show=False),
    ]

    class Done(Message):
        """The ticks are set."""

    def __init__(self, options: Sequence[tuple[str, str]], ticked: set[str]) -> None:
        self._labels = dict(options)
        self._keys = list(self._labels)
        self.ticked = ticked & set(self._keys)
        super().__init__(*(self._shown(key) for key in self._keys), markup=False)

    def on_mount(self) -> None:
        self.highlighted = 0

    def _shown(self, key: str) -> str:
        return f"[{'x' if key in self.ticked else ' '}] {self._labels[key]}"

    def set(self, ticked: set[str]) -> None:
        """Tick these and no others."""
        self.ticked = ticked & set(self._keys)
        for place, key in enumerate(self._keys):
            self.replace_option_prompt_at_index(place, self._shown(key))

    def action_select(self) -> None:
        """Tick what is highlighted, or untick it."""
        if self.highlighted is not None:
            self.set(self.ticked ^ {self._keys[self.highlighted]})

    def action_done(self) -> None:
        """Go on with what is ticked."""
        self.post_message(self.Done())


class Items(OptionList):
    """The lines of a list, each to be changed or taken out."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("delete,backspace", "take_out", "Take out", show=False)
    ]

    class Edited(Message):
        """The line at a place is wanted back in the field."""

        def __init__(self, place: int) -> None:
            super().__init__()
            self.place = place

    class TakenOut(Message):
        """A line was taken out."""

    def __init__(self, lines: list[str]) -> None:
        super().__init__(*lines, markup=False)
        self.lines = lines
        self._place: int | None = None
        """Where the line goes that was lifted out to be changed."""
        self._gone: list[tuple[int, str]] = []
        self.display = bool(lines)

    def fill(self, lines: list[str]) -> None:
        """Show ``lines``."""
        self.lines, self._place = lines, None
        self.clear_options()
        self.add_options(lines)
        self.display = bool(lines)

    def with_line(self, line: str) -> list[str]:
        """Return the lines with ``line`` added, or back in the place it was lifted from."""
        if not line:
            return list(self.lines)
        place = len(self.lines) if self._place is None else self._place
        return [*self.lines[:place], line, *self.lines[place:]]

    def lift(self, place: int) -> str:
        """Take the line at ``place`` out to be changed; it goes back there."""
        line = self.lines[place]
        self.fill([one for at, one in enumerate(self.lines) if at != place])
        self._place = place
        return line

    def action_take_out(self) -> None:
        """Take the highlighted line out."""
        place, lifted = self.highlighted, self._place
        if place is None:
            return
        self._gone.append((place, self.lines[place]))
        self.fill([line for at, line in enumerate(self.lines) if at != place])
        self._place = lifted if lifted is None or lifted <= place else lifted - 1
        if self.lines:
            self.highlighted = min(place, len(self.lines) - 1)
        self.post_message(self.TakenOut())

    def bring_back(self) -> None:
        """Put the line taken out last back where it was."""
        if self._gone:
            place, line = self._gone.pop()
            lifted = self._place
            self.fill([*self.lines[:place], line, *self.lines[place:]])
            self._place = lifted if lifted is None or lifted <= place else lifted + 1

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        self.post_message(self.Edited(event.option_index))
