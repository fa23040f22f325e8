"""Pieces that several pages are made of."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Container, Horizontal, Vertical, VerticalScroll
from textual.content import Content
from textual.dom import NoScreen
from textual.geometry import Size
from textual.message import Message
from textual.reactive import Reactive
from textual.screen import ModalScreen
from textual.visual import VisualType
from textual.widget import Widget
from textual.widgets import Button, Input, Static

from interview.reading.foreign import harmless
from interview.screens import keys
from interview.screens.outside import seen
from interview.screens.palette import CURSOR

NARROW = 100
"""Below this many columns the plan so far stands under the question."""
WIDE = 136
"""From this many columns on all the buttons stand in one row beside the plan."""
ROOMY = 38
"""From this many lines on a list has room over the drawing that belongs to it."""
LOW = 24
"""Below this many lines nothing is left blank between the parts of a page."""
SMALLEST = (40, 12)
"""Below this many columns or lines only a request for a larger window is shown."""


def _alike(text: str | Content | None) -> str:
    """Return words that are the same for texts which differ in figures alone."""
    return re.sub(_FIGURES, "0", str(text or ""))


_FIGURES = "[0-9]"


class Laid(Widget):
    """A part of which the page is laid out once for a change.

    After a layout in which the room that its content takes changed, Textual lays the page out a
    second time and paints the part again, to the same cells: a part of another size is painted at
    once, and a scroll bar that comes or goes asks for a layout itself.
    """

    virtual_size: Reactive[Size] = Reactive(Size(0, 0), repaint=False)


class Across(Horizontal, Laid):
    """Parts beside one another."""


class Stacked(Vertical, Laid):
    """Parts under one another."""


class Holder(Container, Laid):
    """Parts as the styles lay them out."""


class Scrolled(VerticalScroll, Laid):
    """Parts under one another, scrolled where they have no room."""


class Words(Static, Laid):
    """Text shown exactly as it is: nothing in it is read as markup, or by the terminal."""

    def __init__(self, text: str = "", **kwargs: Any) -> None:
        super().__init__(seen(text), markup=False, **kwargs)
        self._said: str | Content | None = None

    def update(self, content: VisualType = "", *, layout: bool = True) -> None:
        """Show ``content`` in place of what is shown."""
        super().update(seen(content), layout=layout)

    def say(self, text: str | Content) -> None:
        """Show ``text``, or take no room where there is none; the same text costs nothing."""
        if text != self._said:
            # A clock that runs on takes the room it took: the page need not be laid out anew.
            same = _alike(text) == _alike(self._said)
            self._said = text
            self.update(text, layout=not same)
            self.display = bool(str(text))

    @property
    def said(self) -> str | Content:
        """Return what was said last."""
        return self._said or ""


class Folded(Words):
    """Text that is folded to the width it is given, and anew whenever that changes."""

    def __init__(self, text: Callable[[int], str | Content] = lambda _: "", **kwargs: Any) -> None:
        """Show what ``text`` gives for so many columns."""
        super().__init__(**kwargs)
        self._text = text
        self._folded_to = 0

    def on_resize(self) -> None:
        """Fold the text again."""
        if (width := self.content_size.width) not in (0, self._folded_to):
            self._folded_to = width
            self.update(self._text(width))

    def fold(self, text: Callable[[int], str | Content]) -> None:
        """Show what another ``text`` gives."""
        self._text, self._folded_to = text, 0
        self.on_resize()


def is_there(part: Widget) -> bool:
    """Tell whether a page, or a part of one, still stands when a thread is done with its sum."""
    try:
        return part.is_mounted and part.screen in part.app.screen_stack
    except (NoScreen, RuntimeError):
        return False


class Press(Button):
    """A button one line high; its id tells its action, and a mark that it has the focus."""

    def __init__(self, label: str, id: str, **kwargs: Any) -> None:  # noqa: A002
        super().__init__(Content(label), id=id, compact=True, **kwargs)

    def get_content_width(self, container: Size, viewport: Size) -> int:
        """Keep room for the mark."""
        return super().get_content_width(container, viewport) + 1

    def render(self) -> Content:
        """Return the label after its mark."""
        assert isinstance(self.label, Content)
        return Content.assemble(CURSOR if self.has_focus else " ", self.label)


def presses(buttons: Iterable[tuple[str, str]], **kwargs: Any) -> Horizontal:
    """Return a row of buttons, each given by its id and its label."""
    return Horizontal(*(Press(label, name) for name, label in buttons), classes="buttons", **kwargs)


_EDITING = {
    key: binding.action
    for binding in Input.BINDINGS
    if isinstance(binding, Binding)
    for key in binding.key.split(",")
}


class Line(Input, Laid):
    """One line of text that never cuts a paste silently."""

    class Pasted(Message):
        """Several lines were pasted into a field that holds a list."""

        def __init__(self, lines: list[str]) -> None:
            super().__init__()
            self.lines = lines

    class NotPasted(Message):
        """Nothing was pasted, and why."""

        def __init__(self, why: str) -> None:
            super().__init__()
            self.why = why

    def __init__(self, value: str, longest: int, many: bool = False, **kwargs: Any) -> None:
        super().__init__(
            value, max_length=max(longest, len(value)), select_on_focus=False, **kwargs
        )
        self.add_class("-valid")  # Textual has it so from the first key on, and styles it anew
        self._many = many

    def say(self, text: str) -> None:
        """Put ``text`` into the field, ready to be gone on with."""
        self.value = text
        self.cursor_position = len(text)

    async def _on_key(self, event: events.Key) -> None:
        # Left to Textual, Enter and the editing keys are acted on after the letters that were
        # typed behind them, so that fast typing would be kept wrong.
        if event.key in _EDITING:
            event.stop()
            event.prevent_default()
            await self.run_action(_EDITING[event.key])

    def action_copy(self) -> None:
        """Copy what is selected; with nothing selected Ctrl+C is meant to stop the program."""
        if self.selected_text:
            super().action_copy()
        else:
            self.app.action_help_quit()

    def _on_paste(self, event: events.Paste) -> None:
        # In place of Textual's, which keeps the first line and lets the others go unsaid.
        lines = [line.strip() for line in harmless(event.text).split("\n") if line.strip()]
        event.stop()
        event.prevent_default()
        if len(lines) > 1 and self._many:
            self.post_message(self.Pasted(lines))
        elif len(lines) > 1:
            self._refuse("The pasted text has more than one line, and this field holds one.")
        elif lines and len(self.value) + len(lines[0]) > (self.max_length or 0):
            self._refuse(f"The pasted text is too long: {self.max_length} characters fit here.")
        elif lines:
            self.insert_text_at_cursor(lines[0])

    def _refuse(self, why: str) -> None:
        self.post_message(self.NotPasted(f"{why} Nothing was pasted."))


class Ask(ModalScreen[bool]):
    """A yes-or-no question before something is taken away."""

    BINDINGS: ClassVar[list[BindingType]] = keys.bindings("ask")

    def __init__(self, question: str, yes: str, no: str) -> None:
        super().__init__()
        self._words = (question, yes, no)

    def compose(self) -> ComposeResult:
        question, yes, no = self._words
        with Vertical(id="ask"):
            yield Words(question)
            with Horizontal(classes="buttons"):
                yield Press(no, "no")
                yield Press(yes, "yes")

    def on_mount(self) -> None:
        self.query_one("#no").focus()

    def on_button_pressed(self, event: Button.Pressed) -> None:
        self.dismiss(event.button.id == "yes")

    def action_answer(self, yes: bool) -> None:
        """Close with the answer."""
        self.dismiss(yes)
