"""The application: which page follows which. What the pages do is their own."""

from __future__ import annotations

import datetime as dt
import gc
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import field
from functools import partial
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, Any, ClassVar

from rich.console import RenderableType
from textual import events, work
from textual.binding import Binding, BindingType
from textual.filter import LineFilter
from textual.screen import Screen

from interview.quantities.records import record
from interview.reading.foreign import shown
from interview.screens import themes
from interview.screens.frame import Weight
from interview.screens.outside import Seen
from interview.screens.page import Around, Page
from interview.screens.parts import Ask
from interview.screens.reminding import LOOK_SECONDS, RemindingApp
from interview.screens.welcome import OpeningScreen, WelcomeScreen

if TYPE_CHECKING:
    # None of these is loaded before the first page stands: a garden is opened beside the keys.
    from interview.garden.opening import Opened, Refusal
    from interview.garden.session import Session
    from interview.screens.saver import BackgroundKeeper
    from interview.screens.shelf import Shelved

ASKING = "interview.screens.question"
"""The page of the questions, loaded beside the keys."""
UNREADABLE = 3
"""The status of a file that is there but cannot be read."""
TITLE = "Rain garden interview"
STOPS = "To stop press Ctrl+Q: everything is saved, and what is half typed comes back."
"""Said at Ctrl+C, which stops nothing here: it copies what is selected."""


def full_path(path: Path) -> str:
    """Return the whole path of a file, safe to show."""
    return shown(str(path.expanduser().absolute()))


@record(frozen=False)
class Door:
    """How a garden is found and opened, and the one that is open."""

    clock: Callable[[], dt.datetime]
    written_by: str = ""
    folder: Path = field(default_factory=Path)
    opened: Opened | None = None
    saver: BackgroundKeeper | None = None
    plants: str = ""
    """A plant file used in place of the one the answers name."""

    def open(self, name: str | None, ignore_elsewhere: bool = False) -> Opened | Refusal:
        """Open the garden kept in the file ``name``, or a new one; leave the one before."""
        from interview.answers_file import recent
        from interview.garden.opening import Opened, open_session
        from interview.screens.saver import BackgroundKeeper

        self.leave()
        found = open_session(name, self.clock, self.written_by, ignore_elsewhere, self.plants)
        if isinstance(found, Opened):
            self.opened = found
            self.saver = BackgroundKeeper(found.keeper, self.clock)
            found.session.keep_with(self.saver)
            recent.remember(found.path)
        return found

    def open_invented(self) -> Opened | Refusal:
        """Put a copy of the invented garden into the folder, and open it."""
        from interview.asking.statuses import UNUSABLE
        from interview.garden import invented
        from interview.garden.opening import Opened, Refusal

        try:
            path = invented.copied(self.folder)
        except OSError:
            where = full_path(self.folder)
            return Refusal(f"No file can be made in {where}. Start from another folder.", UNUSABLE)
        found = self.open(str(path))
        if isinstance(found, Opened):
            found.notices.append(invented.SAID)
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
        from interview import answers_file as af
        from interview.garden.opening import NEW_FILE

        return af.free_name(self.folder, NEW_FILE)

    def gardens(self) -> list[Shelved]:
        """Return the gardens at hand."""
        from interview.answers_file import recent
        from interview.screens import shelf

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
        self._asked_for = name
        for theme in themes.THEMES.values():
            self.register_theme(theme)
        self.theme = themes.for_terminal(self.console.color_system)
        self._seen = Seen()
        self._begins = self._opening = self._typed_ahead = False
        self._every_question = False
        """Whether a garden opened from the start page is asked every question by itself."""
        self.refusal: Refusal | None = None
        """Why the garden that was asked for by name cannot be opened."""

    def get_line_filters(self) -> Sequence[LineFilter]:
        """Return what every line drawn passes through."""
        return [*super().get_line_filters(), self._seen]

    def refresh_css(self, animate: bool = True) -> None:
        """Style every page anew, in the colors of another theme."""
        if self.screen_stack:
            super().refresh_css(animate)
        else:
            # The theme set at the start: nothing is styled yet, and nothing need be read twice.
            self.stylesheet.set_variables(self.get_css_variables())

    @property
    def session(self) -> Session | None:
        return None if self._door.opened is None else self._door.opened.session

    def get_default_screen(self) -> Screen[None]:
        """Return the first page, which needs nothing of the garden."""
        if self._asked_for is None and self._door.opened is None:
            return self._start_page()
        return OpeningScreen(self._asked_for or "")

    @property
    def _background_screens(self) -> list[Screen[Any]]:
        # Textual counts the page below as seen whatever covers it: what changes there, such as the
        # plan so far, would have the page above painted anew.
        covered = bool(self.screen.styles.background.a == 1)
        return [] if covered else super()._background_screens

    def on_mount(self) -> None:
        self.set_title("")
        self.set_interval(LOOK_SECONDS, self.remind)
        if self._door.opened is not None:
            self._enter(self._door.opened)
        else:
            self._begins = True

    def post_display_hook(self) -> None:
        """Go on as soon as the first page is painted: a callback after it comes a frame later."""
        if self._begins and self.screen.size:
            self._begins = False
            self._begin()

    def _begin(self) -> None:
        """Go on once the first page stands."""
        if self._asked_for is not None:
            self._open(self._asked_for)
        else:
            self._look_round()

    # What takes long, beside the keys

    @work(thread=True, group="opening", exit_on_error=False)
    def _look_round(self) -> None:
        """List the gardens at hand; make ready for whichever is chosen."""
        with self._faults_told():
            import_module(ASKING)
            self.call_later(self._offer, self._door.gardens(), self._door.new_file().name)

    @work(thread=True, group="opening", exit_on_error=False, description="")
    def _open_beside(
        self, name: str | None, ignore_elsewhere: bool, invented: bool = False
    ) -> None:
        with self._faults_told():
            door = self._door
            found = door.open_invented() if invented else door.open(name, ignore_elsewhere)
            import_module(ASKING)
            self.call_later(self._opened, name, found)

    @contextmanager
    def _faults_told(self) -> Iterator[None]:
        """Have a fault met in a thread end the program as any other does."""
        try:
            yield
        except Exception as trouble:
            self.call_later(_raise, trouble)

    # Pages

    def _offer(self, gardens: list[Shelved], new_file: str) -> None:
        pages = [one for one in self.screen_stack if isinstance(one, WelcomeScreen)]
        if pages:
            pages[-1].offer(gardens, new_file)

    def _welcome(self, trouble: str = "") -> None:
        self.push_screen(self._start_page(trouble))
        self._look_round()

    def _start_page(self, trouble: str = "") -> WelcomeScreen:
        return WelcomeScreen(
            self._chosen, trouble, self._switch_every_question, self._open_invented
        )

    def _switch_every_question(self) -> bool:
        self._every_question = not self._every_question
        return self._every_question

    def _chosen(self, path: Path | None) -> None:
        self._open(str(path) if path else None)

    def _open(self, name: str | None, ignore_elsewhere: bool = False) -> None:
        """Open a garden; until its first question is shown no key is for it."""
        if not self._opening:
            self._opening = True
            self._open_beside(name, ignore_elsewhere)

    def _open_invented(self) -> None:
        """Open a copy of the invented garden, in the folder of the gardens."""
        if not self._opening:
            self._opening = True
            self._open_beside(None, False, invented=True)

    def _opened(self, name: str | None, found: Opened | Refusal) -> None:
        from interview.garden.opening import Opened

        self._opening = False
        if isinstance(found, Opened):
            self._enter(found)
        elif found.unsure:
            ask = Ask(found.sentence, "Yes, go on here", "No, leave it")
            self.push_screen(ask, lambda yes: self._open(name, True) if yes else self._welcome())
        elif found.status == UNREADABLE and name is not None:
            from interview.screens.mend import MendScreen

            page = MendScreen(name, [], found.sentence)
            self.push_screen(page, lambda what: self._mended(what, name))
        elif isinstance(self.screen, OpeningScreen):
            self.refusal = found
            self.exit()
        else:
            self._welcome(found.sentence)

    def _enter(self, opened: Opened) -> None:
        if opened.troubles:
            from interview.screens.mend import MendScreen

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
        from interview.screens.asked_page import LEFT_OUT
        from interview.screens.question import QuestionScreen

        saver = self._door.saver
        assert saver is not None
        opened.session.every_question = self._every_question
        page = QuestionScreen(opened.session, saver, opened.path, lambda: str(opened.keeper.path))
        # The worker thread of the saver must not touch the screen itself.
        saver.on_change = partial(self.call_later, self._show_saved)
        self.push_screen(page)
        # What was loaded stays: it need not be looked through again and again.
        page.call_after_refresh(gc.freeze)
        told = list(opened.notices[: len(opened.notices) - len(opened.troubles)])
        if self._typed_ahead:
            told.append(LEFT_OUT)
            self._typed_ahead = False
        self.tell(" ".join(told), Weight.WARNING)

    def _show_saved(self) -> None:
        # A page underneath shows it when it comes up again.
        pages = [one for one in self.screen_stack if isinstance(one, Page)]
        if pages:
            pages[-1].show_saved()

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
        if isinstance(event, (events.Key, events.Paste)) and not event.is_forwarded:
            text = isinstance(event, events.Paste) or event.is_printable or event.key == "enter"
            if text and (self._opening or isinstance(page, OpeningScreen)):
                self._typed_ahead = True
                return
            if isinstance(page, Page):
                if not page.heeds(event):
                    return
                # What was said of a key that was left out stays while others are left out, too.
                if isinstance(event, events.Key):
                    page.keyed(event.key)
        await super().on_event(event)

    def action_keys(self) -> None:
        """Show the page of keys."""
        from interview.screens.help import HelpScreen

        if not isinstance(self.screen, HelpScreen):
            page = self.screen.KEYS if isinstance(self.screen, Page) else ""
            self.push_screen(HelpScreen(self._door.where(), page))

    def action_help_quit(self) -> None:
        """Say which key stops the program, to whoever presses the one that stops most others."""
        self.tell(STOPS)

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
            if isinstance(page, Page):
                page.leave(place=opened is not None and not opened.keeper.read_only)
        super().exit(result, return_code, message)

    def _print_error_renderables(self) -> None:
        """Print nothing: Textual would show every variable, answers and all, after a crash."""
        self._exit_renderables.clear()


def _raise(trouble: Exception) -> None:
    raise trouble
