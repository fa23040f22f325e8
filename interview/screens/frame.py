"""The frame that every page stands in: where one is, how far each stage is, what is said, the keys.

The first line, the strip of the stages, the line of notices and the key line keep their places on
every page, and nothing ever lies over a page.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum
from typing import TYPE_CHECKING, Any, ClassVar, NamedTuple

from textual import events
from textual.binding import Binding, BindingType
from textual.content import Content
from textual.geometry import Size
from textual.widget import Widget

from interview.screens import palette, themes
from interview.screens.keys import ALWAYS, PageKey
from interview.screens.parts import Words
from interview.screens.stages import StageShare

if TYPE_CHECKING:
    from interview.garden.session import Session
    from interview.screens.saver import SaveReport

LEAST_NAME, NAME = 8, 24
"""Columns of the garden's name without which it is left out; without which that of the file is."""
NOTHING_NEW = "No change"
SLOT = len("✓ Saved 09:00")
"""Least columns of the state of saving, so that nothing moves while answers are saved."""


class TopLine(Words):
    """The garden and the page on the left, the file and the state of saving on the right."""

    _line: Content | None = None

    def show(self, garden: str, names: Sequence[str], saved: SaveReport | None, file: str) -> None:
        """Show the ``garden``, the longest of the ``names`` of the page that fits, the ``file``.

        The garden's name gives way first, then the name of the page.
        """
        width = self.content_size.width or 78
        state = ""
        if saved:
            said = f"{saved.mark} {saved.short or NOTHING_NEW}".strip()
            state = said.rjust(SLOT)
        room = width - len(state) - 2
        name = names[0]
        if file and len(file) + len(name) + min(len(garden), NAME) + 6 <= room:
            state, room = f"{file}  {state}".rstrip(), room - len(file) - 2
        fits = list(names)
        if garden:
            cut = f"{garden[: max(LEAST_NAME, room - len(name) - 4)]}…"
            fits = [f"{garden} · {name}", f"{cut} · {name}", *names]
        left = next((one for one in fits if len(one) <= room), names[-1])[: max(0, room)]
        style = "$stop bold" if saved and saved.failed else "$muted"
        line = Content.assemble((left.ljust(max(0, room)), "bold"), "  ", (state, style))
        if line != self._line:
            self._line = line
            self.update(line, layout=False)


COUNTS_FROM, ROOMY_FROM, NAMES_FROM = 108, 66, 58
"""From so many columns on the strip counts, has a blank after each mark, and names every stage."""


class StageStrip(Widget):
    """The seven stages, each filled from the left as far as it is answered."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._stages: tuple[StageShare, ...] = ()

    def show(self, stages: Sequence[StageShare]) -> None:
        """Show how far each stage is."""
        if tuple(stages) != self._stages:
            self._stages = tuple(stages)
            self.refresh()

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return 1

    def render(self) -> Content:
        """Return the strip in the room there is."""
        width = self.content_size.width
        line = " underline" if self._shadeless else ""
        texts = [self._text(one, width) for one in self._stages]
        spare = max(0, width - sum(map(len, texts)) - len(texts) + 1)
        pieces: list[Content] = []
        for place, (one, text) in enumerate(zip(self._stages, texts, strict=True)):
            wide = len(text)
            more = spare * (place + 1) // len(texts) - spare * place // len(texts)
            text = f" {text}" if more > 1 and spare > 2 * len(texts) else text
            text = text.ljust(wide + more)
            full = self.filled(one, len(text))
            ink = _STAGE_INKS.get(one.word, "$muted")
            ink = "$text bold" if one.here else ink
            pieces += [
                Content.styled(text[:full], f"{ink} on $filled{line}"),
                Content.styled(text[full:], f"{ink} on $panel"),
                Content(" "),
            ]
        return Content("").join(pieces[:-1])

    @staticmethod
    def filled(one: StageShare, columns: int) -> int:
        """Return how many of so many columns are filled.

        Something answered always shows, and so does something that is still open.
        """
        full = round(columns * one.done / one.total) if one.total else 0
        return min(max(full, one.done > 0), columns - (one.done < one.total))

    @property
    def _shadeless(self) -> bool:
        """Whether the part that is filled cannot be told by its shade."""
        now = themes.OF.get(self.app.theme)
        return self.app.no_color or now is None or now.filled == now.panel

    def _text(self, one: StageShare, width: int) -> str:
        if width < NAMES_FROM and not one.here:
            return f"{one.mark}{one.name[0]}"
        if width < ROOMY_FROM:
            return f"{one.mark}{one.name}"
        if width >= COUNTS_FROM:
            count = f" {one.done}/{one.total}" if one.total else ""
            return f"{one.mark} {one.name}{_STAGE_WORDS.get(one.word, count)}"
        return f"{one.mark} {one.name}"


_STAGE_WORDS = {"shut": " shut", "needs attention": " look"}
"""What stands in the place of the count where that says too little."""
_STAGE_INKS = {"done": "$good", "needs attention": "$stop", "shut": "$look", "in progress": "$text"}


class Weight(Enum):
    """How much something said matters: so long it stays."""

    PLAIN = "goes with the next key"
    WARNING = "goes with the next Enter or Escape"
    ALARM = "goes with the next Enter or Escape, too"


class Said(NamedTuple):
    """One notice; ``short`` is shown in its place where the whole has no room."""

    text: str
    weight: Weight = Weight.PLAIN
    short: str = ""


_LOOKS = {
    Weight.PLAIN: ("", "$text"),
    Weight.WARNING: (f"{palette.MARKS['look']} ", "$look bold"),
    Weight.ALARM: (f"{palette.MARKS['stop']} ", "$stop bold"),
}


class Notice(Words):
    """The line kept for what is said of the last key; it covers nothing, and grows upward."""

    _said_last: Said | None = None

    @property
    def told(self) -> str:
        """What is said now."""
        return self._said_last.text if self._said_last else ""

    def tell(self, said: Said | None) -> None:
        """Say something, or nothing any more."""
        self._said_last = said
        self._fit()

    def on_resize(self) -> None:
        self._fit()

    def _fit(self) -> None:
        said = self._said_last
        if said is None or not said.text:
            self.update("")
            return
        mark, style = _LOOKS[said.weight]
        width = max(1, self.content_size.width)
        text = said.text
        if said.short and len(mark + text) > width * 2 and said.weight is not Weight.ALARM:
            text = said.short
        self.update(Content.styled(f"{mark}{text}", style))

    def keyed(self, key: str) -> None:
        """Take away what has been said long enough, now that a key is pressed."""
        said = self._said_last
        if said and (said.weight is Weight.PLAIN or key in ("enter", "escape")):
            self.tell(None)


class Offer(NamedTuple):
    """A key that does something now, as the key line shows it."""

    shown: str
    word: str
    action: str

    @property
    def text(self) -> str:
        """What stands on the line."""
        return f"{self.shown} {self.word}".rstrip()


MORE = Offer("…", "more", "more")
MORE_BRIEFLY = Offer("…", "", "more")
BRIEF = 76
"""Under so many columns "more" is its mark alone."""
GAP = 2
"""Columns between two keys; the pointer stands in the last one."""


class KeyLine(Widget, can_focus=True):
    """The keys that do something on this page, at its foot: one order, one notation.

    Each may also be clicked; Tab comes here, the arrows go along, Enter presses. Help and the end
    of the program are always at the right; what finds no room stands behind "more".
    """

    # A click must not take the focus from where letters are typed.
    FOCUS_ON_CLICK = False
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "along(-1)", show=False),
        Binding("right", "along(1)", show=False),
        Binding("home", "along(-99)", show=False),
        Binding("end", "along(99)", show=False),
        Binding("enter,space", "press", show=False),
    ]

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._left: tuple[Offer, ...] = ()
        self._right = tuple(Offer(one.shown, one.word, one.action) for one in ALWAYS)
        self._from = 0
        """The first key of the left part that is shown."""
        self._at = 0
        """The key the pointer is at, among those shown."""
        self._over: int | None = None
        """The key the mouse is over."""

    def offer(self, keys: Sequence[tuple[PageKey, str]]) -> None:
        """Show these keys, each with its words."""
        left = tuple(Offer(key.shown, word, key.action) for key, word in keys)
        if left != self._left:
            self._left, self._from, self._at, self._over = left, 0, 0, None
            self.refresh()

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return 1

    @property
    def offers(self) -> tuple[Offer, ...]:
        """Every key there is, shown or behind "more"."""
        return (*self._left, *self._right)

    @property
    def _count(self) -> int:
        """How many keys of the left part fit, from the first one shown."""
        room = self.content_size.width - sum(len(one.text) + GAP for one in self._right)
        rest = self._left[self._from :]
        if self._from == 0 and sum(len(one.text) + GAP for one in rest) <= room:
            return len(rest)
        room -= len(self._more.text) + GAP
        count = 0
        for one in rest:
            room -= len(one.text) + GAP
            if room < 0:
                break
            count += 1
        return max(1, count)

    @property
    def shown(self) -> tuple[Offer, ...]:
        """The keys on the line now, from left to right."""
        count = self._count
        left = self._left[self._from : self._from + count]
        more = (self._more,) if count < len(self._left) else ()
        return (*left, *more, *self._right)

    @property
    def _more(self) -> Offer:
        return MORE_BRIEFLY if self.size.width < BRIEF else MORE

    def _places(self) -> list[tuple[int, Offer]]:
        """Return each key shown with the column of its pointer."""
        shown, column, found = self.shown, 0, []
        for one in shown[: -len(self._right)]:
            found.append((column, one))
            column += len(one.text) + GAP
        column = self.content_size.width - sum(len(one.text) + GAP for one in self._right) + 1
        for one in self._right:
            found.append((column, one))
            column += len(one.text) + GAP
        return found

    def render(self) -> Content:
        """Return the line."""
        pieces: list[Content] = []
        column = 0
        for place, (start_at, one) in enumerate(self._places()):
            pieces.append(Content(" " * (start_at - column)))
            here = self.has_focus and place == self._at
            ground = " on $cursor" if here else ""
            under = " underline" if here or place == self._over else ""
            pieces += [
                Content.styled(palette.CURSOR if here else " ", f"bold $focus{ground}"),
                Content.styled(one.shown, f"bold $due{ground}"),
                Content.styled(f" {one.word}".rstrip(), f"$text{ground}{under}"),
            ]
            column = start_at + 1 + len(one.text)
        return Content("").join(pieces)

    def on_focus(self) -> None:
        self.refresh()

    def on_blur(self) -> None:
        self.refresh()

    def point_at(self, action: str) -> None:
        """Take the focus with the pointer at the key that does ``action``, else at the first."""
        actions = [one.action for one in self.shown]
        self._at = actions.index(action) if action in actions else 0
        self.focus()
        self.refresh()

    def action_along(self, by: int) -> None:
        """Move the pointer."""
        self._at = max(0, min(self._at + by, len(self.shown) - 1))
        self.refresh()

    async def action_press(self) -> None:
        """Do what the key at the pointer does."""
        await self._do(self.shown[min(self._at, len(self.shown) - 1)])

    def _place_of(self, column: int) -> int | None:
        for place, (start_at, one) in enumerate(self._places()):
            if start_at <= column <= start_at + len(one.text):
                return place
        return None

    async def on_click(self, event: events.Click) -> None:
        """Do what the key does that was clicked."""
        offset = event.get_content_offset(self)
        place = None if offset is None else self._place_of(offset.x)
        if place is not None:
            event.stop()
            await self._do(self.shown[place])

    def on_mouse_move(self, event: events.MouseMove) -> None:
        """Mark the key the mouse is over."""
        offset = event.get_content_offset(self)
        self._hover(None if offset is None else self._place_of(offset.x))

    def on_leave(self) -> None:
        self._hover(None)

    def _hover(self, place: int | None) -> None:
        if place != self._over:
            self._over = place
            self.refresh()

    async def _do(self, one: Offer) -> None:
        if one.action == "more":
            after = self._from + self._count
            self._from, self._at = (after if after < len(self._left) else 0), 0
            self.refresh()
            return
        await self.app.run_action(one.action, self.screen)


def garden_name(session: Session | None) -> str:
    """Return the name of the garden that is open."""
    if session is None:
        return ""
    from interview.garden.place import questions as start

    return session.answers.whole().get(start.GARDEN_NAME) or "Rain garden"
