"""The lists that fields are made of: choose one, tick several, edit the lines of a list."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, ClassVar

from rich.segment import Segment
from textual import events
from textual.binding import Binding, BindingType
from textual.geometry import Size
from textual.message import Message
from textual.strip import Strip
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from interview.reading import Refused, read_choice
from interview.screens.palette import CURSOR, POINTER

PAUSE_SECONDS, FORGOTTEN_SECONDS = 1.0, 6.0
"""After so long without a letter the next one may begin another word; and after so long it does."""
WITHIN_WORDS = (" ", "'", "-")
"""What is typed within the words of one choice, as in don't know or New York."""


LEAST_COLUMNS = 8
"""Columns a list is folded to in a window of fewer, in which nothing can be read anyway."""


class Rows(OptionList):
    """A list with a row one is at from the start, told by a mark as well as by its ground."""

    def on_mount(self) -> None:
        if self.highlighted is None:
            self.action_first()

    def on_resize(self) -> None:
        """Keep the row one is at in sight where the list has become shorter."""
        self.scroll_to_highlight()

    @property
    def pointed(self) -> str:
        """The mark of the row one is at."""
        return CURSOR

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        # While a window is dragged it may be narrower than a row, and no word folds to no column.
        return super().get_content_height(container, viewport, max(width, LEAST_COLUMNS))

    # Textual has no public name for the column before the rows, nor for the lines they fold to.
    def _get_left_gutter_width(self) -> int:
        return 1

    def _update_lines(self) -> None:
        if self.scrollable_content_region.width > self._get_left_gutter_width():
            super()._update_lines()

    def render_line(self, y: int) -> Strip:
        """Return a line with the mark before the row one is at."""
        strip = super().render_line(y)
        at = self.scroll_offset.y + y
        row, line = self._lines[at] if at < len(self._lines) else (-1, 0)
        here = row == self.highlighted and not self.options[row].disabled
        names = ("option-list--option", *(("option-list--option-highlighted",) if here else ()))
        style = self.get_visual_style(*names).rich_style
        mark = self.pointed if here and not line else " "
        return Strip([Segment(mark, style), *strip], strip.cell_length + 1)


class Choices(Rows):
    """Options of which one is chosen; none is chosen beforehand.

    A cursor stands at a row from the start, hollow until somebody goes to a row: until then Enter
    takes none, for a question of safety must not be answered by Enter alone.

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

    class Moved(Message):
        """Another option is marked, or none any more."""

    def __init__(
        self, options: Sequence[tuple[str, str]], kept: str, usual: str, **kwargs: Any
    ) -> None:
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
        super().__init__(*shown, markup=False, **kwargs)
        self._usual = self._keys.index(usual_key) if usual_key else None
        self._is_marked = False
        if kept_key:
            self._is_marked = True
            self.highlighted = self._keys.index(kept_key)
        self.set_class(not self._is_marked, "-unmarked", update=False)  # it has no style yet
        self._begun, self._typed_at = "", 0.0

    def on_mount(self) -> None:
        if self.marked is None:
            self.highlighted = self._usual or 0

    @property
    def marked(self) -> int | None:
        """The row that somebody went to, or the answer kept; nothing while there is none."""
        return self.highlighted if self._is_marked else None

    @property
    def begun(self) -> str:
        """The letters typed last, where no choice begins with them."""
        return self._begun if self.marked is None else ""

    @property
    def pointed(self) -> str:
        return CURSOR if self._is_marked else POINTER

    def mark(self, place: int | None) -> None:
        """Mark a row, or none."""
        self._is_marked = place is not None
        self.set_class(not self._is_marked, "-unmarked")
        if place is not None:
            self.highlighted = place
        self.refresh()
        self.post_message(self.Moved())

    async def _on_click(self, event: events.Click) -> None:
        # Textual then takes the row that was clicked.
        place = event.style.meta.get("option")
        if place is not None:
            self.mark(place)

    def action_select(self) -> None:
        """Choose what is marked, or hand over nothing where nothing is."""
        if self.marked is None:
            self.post_message(self.Chosen(""))
        else:
            super().action_select()

    def action_cursor_up(self) -> None:
        super().action_cursor_up()
        self.mark(self.highlighted)

    def action_cursor_down(self) -> None:
        """Mark the row below; from a hollow cursor the row it stands at."""
        if self.marked is not None or self.highlighted is None:
            super().action_cursor_down()
        self.mark(self.highlighted)

    def action_first(self) -> None:
        super().action_first()
        self.mark(self.highlighted)

    def action_last(self) -> None:
        super().action_last()
        self.mark(self.highlighted)

    def action_page_up(self) -> None:
        super().action_page_up()  # type: ignore[no-untyped-call]
        self.mark(self.highlighted)

    def action_page_down(self) -> None:
        super().action_page_down()  # type: ignore[no-untyped-call]
        self.mark(self.highlighted)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        self.post_message(self.Chosen(event.option.id or ""))

    def on_key(self, event: events.Key) -> None:
        letter = (event.character or "").casefold()
        if not event.is_printable or len(letter) != 1:
            self._begun = self.begun if event.key == "enter" else ""
            return
        pause, self._typed_at = event.time - self._typed_at, event.time
        if pause > FORGOTTEN_SECONDS:
            self._begun = ""
        if self.begun and pause <= PAUSE_SECONDS:
            # What goes on from words that begin no choice begins none either.
            self._lose(self._begun + letter)
        elif letter.isdigit():
            event.stop()
            place = int(letter) - 1
            if 0 <= place < len(self._keys) < 10:
                self._begun = ""
                self.mark(place)
            else:
                self._lose(letter)
        elif letter.isalnum():
            event.stop()
            self._jump(letter, pause > PAUSE_SECONDS)
        elif self._begun and letter in WITHIN_WORDS:
            self._begun += letter

    def _jump(self, letter: str, paused: bool) -> None:
        """Go to the option, or one with a word, that begins as typed; or to the next of a letter.

        A short name in the file is taken first. Other letters mark nothing: a word meant for
        another question must not answer this one.
        """
        whole = self._begun + letter
        again = set(whole) == {letter}
        tries = [(whole, 0)]
        if again or (paused and not self._begun.endswith(WITHIN_WORDS)):
            tries.append((letter, (self.marked or 0) + 1 if again else 0))
        for begun, start in tries:
            count = len(self._labels)
            order = [(start + step) % count for step in range(count)]
            starts = [one for one in order if self._labels[one].startswith(begun)]
            within = [one for one in order if f" {begun}" in self._labels[one]]
            # One that all the others go on from is meant, as south is before southeast.
            stem = (one for one in starts if self._goes_on(one, starts) and begun == whole)
            found = next(iter((*stem, *starts, *within)), None)
            if begun in self._keys:  # as the two letters of a state
                found = self._keys.index(begun)
            if found is not None:
                if self.marked is None:
                    self.post_message(self.Lost(""))
                self._begun = begun
                self.mark(found)
                return
        self._lose(whole)

    def _lose(self, typed: str) -> None:
        """Mark none: ``typed`` begins no choice."""
        self._begun = typed
        self.mark(None)
        self.post_message(self.Lost(typed))

    def _goes_on(self, place: int, others: Sequence[int]) -> bool:
        """Tell whether all ``others`` are the label at ``place`` gone on with."""
        return all(self._labels[one].startswith(self._labels[place]) for one in others)


def _key_of(text: str, options: Sequence[tuple[str, str]]) -> str:
    try:
        return read_choice(text, options) if text else ""
    except Refused:
        return ""


NONE_OF_THEM = ("none", "none of these")
"""The row that is ticked alone: to tick nothing is no answer."""


class Marks(Rows):
    """Options of which any number is ticked, or none of these; a tick is a sign, not a colour."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("enter", "done", "Go on", show=False),
        Binding("space", "select", "Tick", show=False),
    ]

    class Done(Message):
        """The ticks are set."""

    def __init__(self, options: Sequence[tuple[str, str]], ticked: set[str]) -> None:
        self._labels = dict((*options, NONE_OF_THEM))
        self._keys = list(self._labels)
        self.ticked = ticked & set(self._keys)
        super().__init__(*(self._shown(key) for key in self._keys), markup=False)

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
            key, none = self._keys[self.highlighted], NONE_OF_THEM[0]
            other = {none} if key != none else self.ticked - {none}
            self.set((self.ticked - other) ^ {key})

    def on_key(self, event: events.Key) -> None:
        """Go to the next row with a word that begins with the letter; nothing is ticked by it."""
        letter = (event.character or "").casefold()
        if len(letter) != 1 or not letter.isalpha():
            return
        event.stop()
        labels = [f" {self._labels[key].casefold()}" for key in self._keys]
        start = (self.highlighted or 0) + 1
        order = [(start + step) % len(labels) for step in range(len(labels))]
        starts = (one for one in order if labels[one].startswith(f" {letter}"))
        within = (one for one in order if f" {letter}" in labels[one])
        self.highlighted = next(starts, next(within, self.highlighted))

    def action_done(self) -> None:
        """Go on with what is ticked."""
        self.post_message(self.Done())


class Items(Rows):
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
        self.action_first()
        self.display = bool(lines)

    @property
    def lifted(self) -> int | None:
        """The place that the line goes back to which was lifted out to be changed."""
        return self._place

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
