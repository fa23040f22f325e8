"""The start page: a new garden, or go on with one of those at hand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.content import Content
from textual.message import Message
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from interview.garden.site.cautions import LOCATE
from interview.reading.foreign import shown
from interview.screens import keys
from interview.screens.lists import Rows
from interview.screens.page import Page
from interview.screens.parts import Words

if TYPE_CHECKING:
    from interview.screens.shelf import Shelved

NEW = "new"
LEAD = (
    "Plan a rain garden in your own yard, page by page: where it is safe to dig, how fast your "
    "soil takes water, how deep and how big, what to plant. Stop whenever you like; every answer "
    "is saved."
)
TODAY = "Today, no digging: measure the roof, find the spot. About 40 minutes."
"""What a new garden begins with; the same is due in one without answers."""
LOOKING = "Looking for gardens begun before…"
"""Said until they are listed: whoever comes back must not think that theirs is gone."""
ONE_BY_ONE = "Every question will be asked, one on each page. F10: the short way again."
SHORT_WAY = "The short way: what is usual is asked on few pages. F10 asks every question."


class OpeningScreen(Page):
    """Stands while a garden is opened; takes no key but those of the program."""

    KEYS = "opening"
    HEADING = "Rain garden interview"

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name

    def parts(self) -> ComposeResult:
        yield Words(LEAD, id="lead")
        yield Words(f"CAUTION: {LOCATE}", id="caution")
        yield Words(f"Opening {shown(self._name)}…" if self._name else "", classes="looking")


class WelcomeScreen(Page):
    """Gives ``choose`` the path to go on with, or nothing for a new garden."""

    KEYS = "welcome"
    HEADING = "Rain garden interview"
    BINDINGS: ClassVar[list[BindingType]] = keys.bindings("welcome")

    def __init__(
        self,
        choose: Callable[[Path | None], None],
        trouble: str = "",
        switch: Callable[[], bool] = bool,
    ) -> None:
        """``switch`` turns on and off that every question is asked, and tells which it is now."""
        super().__init__()
        self._choose = choose
        self._switch = switch
        self._gardens: Sequence[Shelved] = ()
        self._trouble = trouble
        self._moved = False
        self._offered_at = float("-inf")

    def parts(self) -> ComposeResult:
        yield Words(LEAD, id="lead")
        yield Words(f"CAUTION: {LOCATE}", id="caution")
        yield Words(self._trouble, id="trouble")
        yield Rows(Option(_new(""), id=NEW), id="gardens", markup=False)
        yield Words(LOOKING, classes="looking")

    def on_mount(self) -> None:
        self.query_one("#trouble", Words).say(self._trouble)
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
        self._gardens = gardens
        self.query_one(".looking").display = False
        listing = self.query_one("#gardens", OptionList)
        listing.replace_option_prompt(NEW, _new(f"  (kept in {shown(new_file)})"))
        listing.add_options(Option(_words(one), id=str(at)) for at, one in enumerate(gardens))
        if gardens and not gardens[0].faulty and not self._moved:
            listing.highlighted = 1
            self._offered_at = Message().time

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        of = event.option.id or NEW
        self._choose(None if of == NEW else self._gardens[int(of)].path)

    def action_open(self) -> None:
        """Open what the list is at."""
        self.query_one("#gardens", OptionList).action_select()

    def action_every_question(self) -> None:
        """Ask every question on a page of its own, or only what is not usual."""
        self.tell(ONE_BY_ONE if self._switch() else SHORT_WAY)

    def action_begin(self) -> None:
        """Begin a new garden."""
        self._choose(None)


def _new(kept: str) -> Content:
    return Content.assemble("Begin a new garden", (kept, "italic"), f"\n    {TODAY}")


def _words(one: Shelved) -> Content:
    first = "Mend " if one.faulty else "Go on with "
    # No colors of its own: on the row that is chosen they would be too near to its ground.
    style = "bold italic" if one.faulty else "italic"
    return Content.assemble(
        first,
        (shown(one.name), "bold"),
        (f"  {one.how_far}", ""),
        (f"\n    {shown(one.due)}" if one.due else "\n    ", style),
        (f"  ({shown(str(one.path))})", "italic"),
    )
