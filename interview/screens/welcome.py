"""The start page: a new garden, or go on with one of those at hand."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.content import Content
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from interview import answers_file as af
from interview.garden.site.cautions import LOCATE
from interview.screens import keys
from interview.screens.lists import Rows
from interview.screens.page import Page
from interview.screens.parts import Words
from interview.screens.shelf import Shelved

NEW = "new"
LEAD = (
    "Plan a rain garden in your own yard, one question at a time: where it is safe to dig, how "
    "fast your soil takes water, how deep and how big, what to plant. Stop whenever you like; "
    "every answer is saved."
)


class WelcomeScreen(Page):
    """Closes with the path to go on with, or with nothing for a new garden."""

    KEYS = "welcome"
    HEADING = "Rain garden interview"
    BINDINGS: ClassVar[list[BindingType]] = keys.bindings("welcome")

    def __init__(self, gardens: list[Shelved], trouble: str = "", new_file: str = "") -> None:
        super().__init__()
        self._new_file = new_file
        self._gardens = gardens
        self._trouble = trouble

    def parts(self) -> ComposeResult:
        yield Words(LEAD, id="lead")
        yield Words(f"CAUTION: {LOCATE}", id="caution")
        yield Words(self._trouble, id="trouble")
        begin = Content.assemble(
            "Begin a new garden", (f"  (kept in {af.shown(self._new_file)})", "italic")
        )
        options = [Option(begin, id=NEW)]
        for place, one in enumerate(self._gardens):
            options.append(Option(_words(one), id=str(place)))
        yield Rows(*options, id="gardens", markup=False)

    def on_mount(self) -> None:
        self.query_one("#trouble", Words).say(self._trouble)
        listing = self.query_one("#gardens", OptionList)
        listing.focus()
        listing.highlighted = 1 if self._gardens and not self._gardens[0].faulty else 0

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        if event.option.id == NEW:
            self.dismiss(None)
        else:
            path: Path = self._gardens[int(event.option.id or 0)].path
            self.dismiss(path)

    def action_open(self) -> None:
        """Open what the list is at."""
        self.query_one("#gardens", OptionList).action_select()

    def action_begin(self) -> None:
        """Begin a new garden."""
        self.dismiss(None)


def _words(one: Shelved) -> Content:
    first = "Mend " if one.faulty else "Go on with "
    # No colors of its own: on the row that is chosen they would be too near to its ground.
    style = "bold italic" if one.faulty else "italic"
    return Content.assemble(
        first,
        (af.shown(one.name), "bold"),
        (f"  {one.how_far}", ""),
        (f"\n    {af.shown(one.due)}" if one.due else "\n    ", style),
        (f"  ({af.shown(str(one.path))})", "italic"),
    )
