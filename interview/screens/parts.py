"""Pieces that several pages are made of."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.dom import NoScreen
from textual.geometry import Size
from textual.markup import escape
from textual.message import Message
from textual.reactive import Reactive
from textual.screen import ModalScreen, Screen
from textual.visual import VisualType
from textual.widget import Widget
from textual.widgets import Button, Input, Static

from interview.reading.foreign import harmless
from interview.screens.outside import seen

NARROW = 100
"""Below this many columns the plan so far stands under the question."""
WIDE = 136
"""From this many columns on all the buttons stand in one row beside the plan."""
SMALLEST = (40, 12)
"""Below this many columns or lines only a request for a larger window is shown."""


class Words(Static):
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
            self._said = text
            self.update(text)
            self.display = bool(str(text))

    @property
    def said(self) -> str | Content:
        """Return what was said last."""
        return self._said or ""


class Folded(Words):
    """Text that is folded to the width it is given, and anew whenever that changes."""

    def __init__(self, text: Callable[[int], str], **kwargs: Any) -> None:
        """Show what ``text`` gives for so many columns."""
        super().__init__(**kwargs)
        self._text = text
        self._folded_to = 0

    def on_resize(self) -> None:
        """Fold the text again."""
        if (width := self.content_size.width) not in (0, self._folded_to):
            self._folded_to = width
            self.update(self._text(width))


def is_there(part: Widget) -> bool:
    """Tell whether a page, or a part of one, still stands when a thread is done with its sum."""
    try:
        return part.is_mounted and part.screen in part.app.screen_stack
    except (NoScreen, RuntimeError):
        return False


class Page(Screen[Any]):
    """A screen that knows when the window is narrow, and when it is too small."""

    # The two parts that the focus goes from and to paint themselves; the page need not.
    focused: Reactive[Widget | None] = Reactive(None, repaint=False)

    def compose(self) -> ComposeResult:
        """Yield the page, and over it the request for a larger window."""
        self._note_room(self.app.size)  # before the parts get their first style
        yield from self.parts()
        yield Words(
            "Make the window larger.\n40 by 12 is the least.\nNothing you typed is lost.",
            id="too_small",
        )

    def parts(self) -> ComposeResult:
        """Yield the widgets of the page."""
        yield from ()

    def on_resize(self, event: events.Resize) -> None:
        """Note how much room there is."""
        self._note_room(event.size)

    def _note_room(self, size: Size) -> None:
        width, height = size
        self.set_class(width < NARROW, "narrow")
        self.set_class(width < 80 or NARROW <= width < WIDE, "slim")
        self.set_class(width >= WIDE, "wide")
        self.set_class(height < 24, "low")
        self.set_class(height >= 28, "tall")
        self.set_class(width < SMALLEST[0] or height < SMALLEST[1], "tiny")

    def heeds(self, event: events.Key | events.Paste) -> bool:
        """Tell whether a key is for what the page shows, and not typed ahead of it."""
        return True

    def leave(self, place: bool = True) -> None:
        """Put by what is half typed, and the ``place`` reached, before the program ends."""


ALWAYS = ("esc", "f1")
"""The keys that are shown however narrow the window is."""


class KeyLine(Static):
    """The main keys, at the foot of a page; each may also be clicked.

    Only keys that fit whole are shown, the first ones first; the page of keys has them all.
    Textual's own footer cuts the last one, and is built anew at every change of focus, which costs
    a fifth of the time that a new question takes to show.
    """

    def __init__(self, *keys: tuple[str, str, str]) -> None:
        """Show ``keys``, each as shown, its words and its action; else those of the page."""
        super().__init__("", id="keyline")
        self._keys = keys
        self._line = ""

    def on_mount(self) -> None:
        """Follow the keys of the page."""
        if not self._keys:
            self.screen.bindings_updated_signal.subscribe(self, self._follow)

    def _follow(self, _screen: Screen[Any]) -> None:
        self.fit()

    def offer(self, *keys: tuple[str, str, str]) -> None:
        """Take other keys."""
        if keys != self._keys:
            self._keys = keys
            self.fit()

    def on_resize(self) -> None:
        """Show as many keys as fit."""
        self.fit()

    def _of_the_page(self) -> list[tuple[str, str, str]]:
        found: dict[str, tuple[str, str, str]] = {}
        for _, binding, enabled, _ in self.screen.active_bindings.values():
            if binding.show and enabled and binding.description:
                shown = self.app.get_key_display(binding)
                press = f"press({binding.key!r})"
                found.setdefault(binding.action, (shown, binding.description, press))
        return list(found.values())

    def fit(self) -> None:
        """Show the keys that fit whole, in their order."""
        keys = self._keys or self._of_the_page()
        room = self.content_size.width + 1
        wanted = sorted(keys, key=lambda one: one[0] not in ALWAYS)
        kept = set()
        for one in wanted:
            room -= len(one[0]) + len(one[1]) + 2
            if room < 0:
                break
            kept.add(one)
        words = []
        for shown, what, action in keys:
            if (shown, what, action) in kept:
                word = f"[b]{escape(shown)}[/b] {escape(what)}"
                words.append(f"[@click={action}]{word}[/]" if action else word)
        line = " ".join(words)
        if line != self._line:
            self._line = line
            self.update(line)

    def action_press(self, key: str) -> None:
        """Do what the key does that was clicked."""
        self.app.simulate_key(key)


class Press(Button):
    """A button one line high; its action is told by its id."""

    def __init__(self, label: str, id: str, **kwargs: Any) -> None:  # noqa: A002
        super().__init__(Content(label), id=id, compact=True, **kwargs)


def presses(buttons: Iterable[tuple[str, str]], **kwargs: Any) -> Horizontal:
    """Return a row of buttons, each given by its id and its label."""
    return Horizontal(*(Press(label, name) for name, label in buttons), classes="buttons", **kwargs)


_EDITING = {
    key: binding.action
    for binding in Input.BINDINGS
    if isinstance(binding, Binding)
    for key in binding.key.split(",")
}


class Line(Input):
    """One line of text that never cuts a paste silently."""

    class Pasted(Message):
        """Several lines were pasted into a field that holds a list."""

        def __init__(self, lines: list[str]) -> None:
            super().__init__()
            self.lines = lines

    def __init__(self, value: str, longest: int, many: bool = False, **kwargs: Any) -> None:
        super().__init__(
            value, max_length=max(longest, len(value)), select_on_focus=False, **kwargs
        )
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

    def _on_paste(self, event: events.Paste) -> None:
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
        self.notify(f"{why} Nothing was pasted.", severity="warning", markup=False)


class Ask(ModalScreen[bool]):
    """A yes-or-no question before something is taken away."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,n", "answer(False)", "No"),
        Binding("y", "answer(True)", "Yes"),
        Binding("left,right,up,down", "app.focus_next", show=False),
    ]

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
