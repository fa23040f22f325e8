"""The start page: a new garden, or go on with one of those at hand."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from textwrap import wrap
from typing import TYPE_CHECKING

from textual import events
from textual.app import ComposeResult
from textual.content import Content
from textual.geometry import Size
from textual.message import Message
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from interview.garden.site.cautions import LOCATE
from interview.reading.foreign import shown
from interview.screens.banner import Banner
from interview.screens.lists import Rows
from interview.screens.page import Page
from interview.screens.palette import MARKS
from interview.screens.parts import Words

if TYPE_CHECKING:
    from interview.screens.shelf import Shelved

NEW, INVENTED = "new", "invented"
"""The rows that are no garden at hand."""
INVENTED_WORDS = "a finished one, made up, to look around in"
LEAD = (
    "Page by page to a rain garden in your own yard: where it is safe to dig, how deep, how big, "
    "what to plant. Stop whenever you like; every answer is saved."
)
TODAY = "Today, no digging: measure the roof, find the spot. About 40 minutes."
"""What a new garden begins with; the same is due in one without answers."""
VISITS = (
    ("1  Today", "measure the roof, the spot and its slope; ask for the marks of buried lines"),
    ("2  Marked", "note what every owner of a line has answered"),
    ("3  Soak test", "dig a hole, pour, read the water: it is timed while the program is closed"),
    ("4  Plan", "size and plants; print two pages, take them outside"),
)
"""The visits of the way through, told to a newcomer where a large window has room for them."""
VISITED = "About an hour of typing over four visits, and a few hours outside"
LOOKING = "Looking for gardens begun before…"
"""Said until they are listed: whoever comes back must not think that theirs is gone."""
ONE_BY_ONE = "Every question will be asked, one on each page. F10: the short way again."
SHORT_WAY = "The short way: what is usual is asked on few pages. F10 asks every question."


class OpeningScreen(Page):
    """Stands while a garden is opened; takes no key but those of the program."""

    KEYS = "opening"
    HEADING = "Rain garden interview"
    STYLES = ""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._opened = name

    def parts(self) -> ComposeResult:
        yield Words(LEAD, id="lead")
        yield Words(f"CAUTION: {LOCATE}", id="caution")
        yield Words(f"Opening {shown(self._opened)}…" if self._opened else "", classes="looking")


class WelcomeScreen(Page):
    """Gives ``choose`` the path to go on with, or nothing for a new garden."""

    KEYS = "welcome"
    HEADING = "Rain garden interview"
    STYLES = ""

    def __init__(
        self,
        choose: Callable[[Path | None], None],
        trouble: str = "",
        switch: Callable[[], bool] = bool,
        invented: Callable[[], object] = bool,
    ) -> None:
        """``switch`` turns on and off that every question is asked, and tells which it is now.

        ``invented`` opens a copy of the invented garden.
        """
        super().__init__()
        self._choose = choose
        self._switch = switch
        self._invented = invented
        self._gardens: Sequence[Shelved] = ()
        self._new_file = ""
        self._trouble = trouble
        self._moved = False
        self._offered_at = float("-inf")

    def parts(self) -> ComposeResult:
        yield Banner(id="banner")
        yield Words(LEAD, id="lead")
        yield Words(f"CAUTION: {LOCATE}", id="caution")
        yield Words(id="trouble")
        yield Rows(*self._rows(), id="gardens", markup=False)
        yield Words(LOOKING, classes="looking")
        yield Static(_visits(), id="visits")

    def on_mount(self) -> None:
        if self._trouble:
            self.query_one("#trouble", Words).say(f"{MARKS['stop']} NOT OPENED: {self._trouble}")
        listing = self.query_one("#gardens", OptionList)
        listing.focus()
        listing.highlighted = 0

    def heeds(self, event: events.Key | events.Paste) -> bool:
        """Tell whether a key was pressed with the gardens in sight that it may choose from."""
        self._moved = True
        return event.time >= self._offered_at

    def offer(self, gardens: Sequence[Shelved], new_file: str) -> None:
        """Offer ``gardens`` too, and say in which file a new one is kept.

        What somebody has begun to choose stays marked.
        """
        if not self.is_mounted:
            return
        self.query_one(".looking").display = False
        self._gardens, self._new_file = gardens, new_file
        first = bool(gardens) and not gardens[0].faulty and not self._moved
        self.set_class(bool(gardens), "with_gardens")
        self._fill("0" if first else None)
        if first:
            self._offered_at = Message().time
            self._tell_due(gardens[0])

    def _tell_due(self, one: Shelved) -> None:
        if one.due_at is not None and not self.told:
            self.tell(f"{shown(one.name)}: {shown(one.due)}")

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        self.call_after_refresh(self._fill, None)

    def _fill(self, marked: str | None) -> None:
        """Set the rows anew for the room there is, and mark one, or the one that was marked."""
        listing = self.query_one("#gardens", OptionList)
        at = listing.highlighted
        if marked is None:
            marked = listing.get_option_at_index(at).id if at is not None else NEW
        listing.clear_options()
        listing.add_options(self._rows())
        listing.highlighted = listing.get_option_index(marked or NEW)

    def _rows(self) -> Iterator[Option]:
        """Yield the gardens, what is due first, then the ways to another one."""
        gap, columns = self._gap, self._columns
        if self._gardens:
            # Loaded with the gardens: the first page does without.
            from interview.screens import cards

            badges = cards.badge_columns(self._gardens)
            for at, one in enumerate(self._gardens):
                yield Option(cards.card(one, columns, badges), id=str(at))
                if gap:
                    yield Option("", disabled=True)
        kept = f"(kept in {shown(self._new_file)})" if self._new_file else ""
        today = "" if self._gardens else TODAY
        yield Option(_row("+", "Begin a new garden", kept, today, columns), id=NEW)
        if gap and not self._gardens:
            yield Option("", disabled=True)
        words = (INVENTED_WORDS, "", columns)
        yield Option(_row("»", "Try an invented garden", *words), id=INVENTED)

    @property
    def _room(self) -> Size:
        found = self.query("#gardens")
        return found.first().scrollable_content_region.size if found else Size()

    @property
    def _columns(self) -> int:
        # The mark before the row one is at takes one.
        return max(LEAST, (self._room.width or self.app.size.width - 3) - 1)

    @property
    def _gap(self) -> bool:
        """Whether there is room for a blank row after each card."""
        return self._room.height >= 3 * len(self._gardens) + 3

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        match event.option.id:
            case "new":
                self._choose(None)
            case "invented":
                self._invented()
            case str(at):
                self._choose(self._gardens[int(at)].path)

    def action_open(self) -> None:
        """Open what the list is at."""
        self.query_one("#gardens", OptionList).action_select()

    def action_every_question(self) -> None:
        """Ask every question on a page of its own, or only what is not usual."""
        self.tell(ONE_BY_ONE if self._switch() else SHORT_WAY)

    def action_begin(self) -> None:
        """Begin a new garden."""
        self._choose(None)


def _visits() -> Content:
    """Return what a new garden asks of one's days."""
    name = max(len(visit) for visit, _ in VISITS) + 2
    pieces = [(VISITED, "bold")]
    for visit, does in VISITS:
        pieces += [(f"\n  {visit.ljust(name)}", "$text bold"), (does, "$muted")]
    return Content.assemble(*pieces)


LEAST = 30
"""Columns that a card is made for at least."""


def _row(mark: str, does: str, more: str, below: str, columns: int) -> Content:
    """Return a row that is no garden; what finds no room behind its words stands below them."""
    first = f"{mark} {does}"
    fits = len(first) + 2 + len(more) <= columns
    lines = [one for one in ("" if fits else more, below) if one]
    folded = (line for one in lines for line in wrap(one, columns - len(UNDER)))
    under = "\n".join(f"{UNDER}{line}" for line in folded)
    return Content.assemble(
        (first, "$good bold"),
        (f"  {more}" if fits and more else "", "$muted"),
        (f"\n{under}" if under else "", "$muted"),
    )


UNDER = "  "
