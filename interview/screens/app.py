"""The application: which page follows which. What the pages do is their own."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import ClassVar

from rich.console import RenderableType
from textual import events
from textual.binding import Binding, BindingType
from textual.filter import LineFilter

from interview import answers_file as af
from interview.answers_file import recent
from interview.garden.opening import NEW_FILE, Opened, Refusal, open_session
from interview.garden.session import Session
from interview.screens import shelf, themes
from interview.screens.frame import Weight
from interview.screens.help import HelpScreen
from interview.screens.mend import MendScreen
from interview.screens.outside import Seen
from interview.screens.page import Around, Page
from interview.screens.parts import Ask
from interview.screens.question import QuestionScreen
from interview.screens.reminding import LOOK_SECONDS, RemindingApp
from interview.screens.saver import BackgroundKeeper
from interview.screens.welcome import WelcomeScreen

UNREADABLE = 3
"""The status of a file that is there but cannot be read."""
TITLE = "Rain garden interview"


def full_path(path: Path) -> str:
    """Return the whole path of a file, safe to show."""
    return af.shown(str(path.expanduser().absolute()))


@dataclass
class Door:
    """How a garden is found and opened, and the one that is open."""

    clock: Callable[[], dt.datetime]
    written_by: str
    folder: Path = field(default_factory=Path)
    opened: Opened | None = None
    saver: BackgroundKeeper | None = None
    plants: str = ""
    """A plant file used in place of the one the answers name."""

    def open(self, name: str | None, ignore_elsewhere: bool = False) -> Opened | Refusal:
        """Open the garden kept in the file ``name``, or a new one; leave the one before."""
        self.leave()
        found = open_session(name, self.clock, self.written_by, ignore_elsewhere, self.plants)
        if isinstance(found, Opened):
            self.opened = found
            self.saver = BackgroundKeeper(found.keeper, self.clock)
            found.session.keep_with(self.saver)
            recent.remember(found.path)
        return found

    def leave(self) -> None:
        """Let the open garden go, so that another session may have it."""
        if self.opened is not None:
            self.opened.lock.release()
        self.opened = self.saver = None

    def where(self) -> str:
        """Say in which file, with its whole path, the answers are kept."""
        if self.opened is None:
            return f"A new garden is kept in {full_path(self.new_file())}"
        return f"Your answers are kept in {full_path(self.opened.keeper.path)}"

    def new_file(self) -> Path:
        """Return the file that a new garden would be kept in."""
        return af.free_name(self.folder, NEW_FILE)

    def gardens(self) -> list[shelf.Shelved]:
        """Return the gardens at hand."""
        return shelf.shelf(self.folder, recent.recent(), self.clock())


class InterviewApp(RemindingApp):
    """Start page or mending page, then the question page."""

    CSS_PATH = "interview.tcss"
    TITLE = TITLE
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f1", "keys", "help"),
        Binding("f2", "shade", "light or dark", show=False),
        Binding("ctrl+q", "leave", "quit", priority=True),
    ]

    def __init__(self, door: Door, name: str | None = None) -> None:
        super().__init__()
        self._door = door
        self._name = name
        for theme in themes.THEMES.values():
            self.register_theme(theme)
        self.theme = themes.for_terminal(self.console.color_system)
        self._seen = Seen()

    def get_line_filters(self) -> Sequence[LineFilter]:
        """Return what every line drawn passes through."""
        return [*super().get_line_filters(), self._seen]

    @property
    def session(self) -> Session | None:
        return None if self._door.opened is None else self._door.opened.session

    def on_mount(self) -> None:
        self.set_title("")
        self.set_interval(LOOK_SECONDS, self.remind)
        if self._door.opened is not None:
            self._enter(self._door.opened)
        elif self._name is not None:
            self._open(self._name)
        else:
            self._welcome()

    # Pages

    def _welcome(self, trouble: str = "") -> None:
        page = WelcomeScreen(self._door.gardens(), trouble, self._door.new_file().name)
        self.push_screen(page, lambda path: self._open(str(path) if path else None))

    def _open(self, name: str | None, ignore_elsewhere: bool = False) -> None:
        found = self._door.open(name, ignore_elsewhere)
        if isinstance(found, Opened):
            self._enter(found)
        elif found.unsure:
            ask = Ask(found.sentence, "Yes, go on here", "No, leave it")
            self.push_screen(ask, lambda yes: self._open(name, True) if yes else self._welcome())
        elif found.status == UNREADABLE and name is not None:
            page = MendScreen(name, [], found.sentence)
            self.push_screen(page, lambda what: self._mended(what, name))
        else:
            self._welcome(found.sentence)

    def _enter(self, opened: Opened) -> None:
        if opened.troubles:
            page = MendScreen(opened.shown_path, opened.troubles)
            self.push_screen(page, lambda what: self._mended(what, str(opened.path)))
        else:
            self._ask(opened)

    def _mended(self, what: str | None, name: str) -> None:
        if what == "go_on" and self._door.opened is not None:
            self._ask(self._door.opened)
        elif what == "again":
            self._open(name)
        else:
            self._door.leave()
            self._welcome()

    def _ask(self, opened: Opened) -> None:
        saver = self._door.saver
        assert saver is not None
        page = QuestionScreen(opened.session, saver, opened.path, lambda: str(opened.keeper.path))
        # The worker thread of the saver must not touch the screen itself.
        saver.on_change = partial(self.call_later, self._show_saved)
        self.push_screen(page)
        told = opened.notices[: len(opened.notices) - len(opened.troubles)]
        self.tell(" ".join(told), Weight.WARNING)

    def _show_saved(self) -> None:
        for page in self.screen_stack:
            if isinstance(page, Page):
                page.show_saved()

    def around(self) -> Around:
        """Return what the frame tells of the garden that is open."""
        door = self._door
        if door.opened is None or door.saver is None:
            return Around()
        return Around(door.opened.session, door.saver.report, str(door.opened.keeper.path))

    # Keys

    async def on_event(self, event: events.Event) -> None:
        """Let no key through that was pressed before the question it would go to was shown."""
        page = self.screen if self.screen_stack else None
        if (
            isinstance(event, (events.Key, events.Paste))
            and isinstance(page, QuestionScreen)
            and not event.is_forwarded
            and not page.heeds(event)
        ):
            return
        # What was said of a key that was left out stays while others are left out, too.
        if isinstance(event, events.Key) and isinstance(page, Page) and not event.is_forwarded:
            page.keyed(event.key)
        await super().on_event(event)

    def action_keys(self) -> None:
        """Show the page of keys."""
        if not isinstance(self.screen, HelpScreen):
            self.push_screen(HelpScreen(self._door.where()))

    def action_shade(self) -> None:
        """Change between light and dark."""
        self.theme = themes.other(self.theme)

    def action_leave(self) -> None:
        """Stop; where answers are not saved, ask first."""
        saver = self._door.saver
        if saver is None or not saver.report.failed or isinstance(self.screen, Ask):
            self.exit(return_code=0)
            return
        asked = (
            f"NOT SAVED: {saver.report.why} Stop all the same? Your answers are then kept in "
            "another folder, if one takes them."
        )
        self.push_screen(Ask(asked, "Yes, stop", "No, stay"), self._leave_unsaved)

    def _leave_unsaved(self, yes: bool | None) -> None:
        if yes:
            self.exit(return_code=0)

    def exit(
        self, result: None = None, return_code: int = 0, message: RenderableType | None = None
    ) -> None:
        """End, by whatever way; what is half typed is saved with the answers."""
        opened = self._door.opened
        for page in self.screen_stack:
            if isinstance(page, QuestionScreen):
                page.leave(place=opened is not None and not opened.keeper.read_only)
        super().exit(result, return_code, message)

    def _print_error_renderables(self) -> None:
        """Print nothing: Textual would show every variable, answers and all, after a crash."""
        self._exit_renderables.clear()
