"""A page of the full screen in its frame, and what the frame asks of the application."""

from __future__ import annotations

import threading
from collections.abc import Sequence
from contextlib import AbstractContextManager
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from rich.console import RenderableType
from textual import events
from textual._compositor import ChopsUpdate, LayoutUpdate
from textual.app import App, ComposeResult
from textual.css.query import NoMatches
from textual.driver import Driver
from textual.geometry import Size
from textual.reactive import Reactive
from textual.screen import Screen
from textual.widget import Widget

from interview.reading.foreign import lines_shown
from interview.screens import keys
from interview.screens.frame import KeyLine, Notice, Said, StageStrip, TopLine, Weight, garden_name
from interview.screens.parts import LOW, NARROW, ROOMY, SMALLEST, WIDE, Line, Stacked, Words
from interview.screens.sent import Changes, Sent
from interview.screens.stages import NOT_STARTED, StageShare

if TYPE_CHECKING:
    # The first page stands before any of this is loaded.
    from interview.garden.session import Session
    from interview.screens.saver import SaveReport


LONGEST_WAIT = 0.1
"""Seconds after which a sum beside the keys goes on, painted or not."""


class Around(NamedTuple):
    """What the frame tells of the garden that is open."""

    session: Session | None = None
    report: SaveReport | None = None
    file: str = ""


class FramedApp(App[None]):
    """An application whose pages have the frame."""

    _untold: Said | None = None
    """What was said before there was a page to say it on."""

    def __init__(self) -> None:
        super().__init__()
        self._sent = Sent()
        self._painted = threading.Event()
        """Not set while something is to be shown at once, and no sum beside the keys goes on."""
        self._painted.set()

    # Textual has no public name for the place where a paint becomes bytes.
    def _display(self, screen: Screen[Any], renderable: RenderableType | None) -> None:
        written: Any = renderable
        if isinstance(renderable, (LayoutUpdate, ChopsUpdate)):
            written = Changes(renderable, self._sent)
        super()._display(screen, written)
        self._painted.set()

    async def on_event(self, event: events.Event) -> None:
        """Paint all of the window anew where its size changed, or the program was away."""
        back = isinstance(event, Driver.SignalResume)
        if back or isinstance(event, events.Resize):
            self._sent.forget()
        if isinstance(event, events.Key):
            self.paint_first()
        await super().on_event(event)
        if back:
            self.screen.refresh(layout=True)

    def paint_first(self) -> None:
        """Have the sums beside the keys wait until the next paint."""
        self._painted.clear()

    def beside_keys(self) -> AbstractContextManager[None]:
        """Return a context for sums in a thread that wait, between two parts, while one paints."""
        from interview.asking.long_work import giving_way

        return giving_way(self._wait_for_paint)

    def _wait_for_paint(self) -> None:
        if not self._painted.wait(LONGEST_WAIT):  # the key painted nothing
            self._painted.set()

    def around(self) -> Around:
        """Return what the frame tells of the garden that is open."""
        return Around()

    def tell(self, text: str, weight: Weight = Weight.PLAIN) -> None:
        """Say something in the notice line of the page on top, after what no key has answered."""
        said = Said(lines_shown(text), weight)
        pages = [page for page in reversed(self.screen_stack) if isinstance(page, Page)]
        if pages:
            told = pages[0].told
            both = told and text and said.text not in told
            pages[0].tell(Said(f"{told} {said.text}", weight) if both else said)
        else:
            self._untold = said

    def notify(self, message: str, *, severity: str = "information", **_how: Any) -> None:
        """Say in the notice line what Textual would lay over the page."""
        self.tell(message, Weight.PLAIN if severity == "information" else Weight.WARNING)


def framed(part: Widget) -> FramedApp:
    """Return the application that a part of a page is in."""
    assert isinstance(part.app, FramedApp)
    return part.app


class Page(Screen[Any]):
    """A screen in its frame, that knows when the window is narrow, and when it is too small."""

    KEYS = ""
    """The name of its keys in the table of keys; the page listens for those."""
    HEADING = ""
    """What the page is called in the first line."""
    STYLES = "further.tcss"
    """The styles it needs beside those of every page; they are read when the first one opens."""
    # The two parts that the focus goes from and to paint themselves; the page need not.
    focused: Reactive[Widget | None] = Reactive(None, repaint=False)
    _unsaid: Said | None = None
    """What was said before the page stood."""
    _stood = False
    """Whether the page has been in sight."""

    def __init_subclass__(cls, **how: Any) -> None:
        if "KEYS" in vars(cls):
            cls.BINDINGS = keys.bindings(cls.KEYS)  # before Textual gathers them for the class
        super().__init_subclass__(**how)

    def compose(self) -> ComposeResult:
        """Yield the frame with the page in it, and over it the request for a larger window."""
        self._read_styles()
        self._note_room(self.app.size)  # before the parts get their first style
        yield TopLine(id="top")
        yield StageStrip(id="strip")
        yield Words(id="unsaved")
        yield from self.parts()
        with Stacked(id="foot"):
            yield Notice(id="notice")
            yield KeyLine(id="keyline")
        yield Words(
            "Make the window larger.\n40 by 12 is the least.\nNothing you typed is lost.",
            id="too_small",
        )

    def _read_styles(self) -> None:
        if self.STYLES:
            path = str(Path(__file__).with_name(self.STYLES))
            if not self.app.stylesheet.has_source(path):
                self.app.stylesheet.read(path)

    def parts(self) -> ComposeResult:
        """Yield the widgets of the page."""
        yield from ()

    # What the frame shows

    def headings(self) -> tuple[str, ...]:
        """Return what the page is called, the longest name first."""
        return (self.HEADING,)

    def stage_here(self, session: Session) -> str:
        """Return the key of the stage one is in."""
        return session.step.stage.key if session.step else ""

    def offers(self, action: str) -> bool:
        """Tell whether a key does something now; those that do not are left out."""
        return True

    def word_of(self, key: keys.PageKey) -> str:
        """Return the words of a key on the key line now."""
        return key.word

    @property
    def around(self) -> Around:
        """What the frame tells of the garden that is open."""
        return self.app.around() if isinstance(self.app, FramedApp) else Around()

    @property
    def stands(self) -> bool:
        """Whether the whole frame is there: answers may be saved while a page opens or goes."""
        try:
            parts = [self.query_one(one) for one in ("#top", "#strip", "#unsaved", "#keyline")]
            return all(one.is_mounted for one in parts)
        except NoMatches:
            return False

    def show_saved(self) -> None:
        """Show what the page is called and whether the answers are saved."""
        if not self.stands:
            return
        around = self.around
        names = self.headings()
        report, file = around.report, _name_of(around.file)
        self.query_one(TopLine).show(garden_name(around.session), names, report, file)
        banner = report.banner if report else ""
        unsaved = self.query_one("#unsaved", Words)
        unsaved.set_class(not (report and report.failed), "noted")
        unsaved.say(banner)

    def show_frame(self) -> None:
        """Show the whole frame as things stand."""
        if not self.stands:
            return
        self.show_saved()
        session = self.around.session
        here = self.stage_here(session) if session else ""
        self.query_one(StageStrip).show(_shares(session, here))
        self.show_keys()

    def show_keys(self) -> None:
        """Show the keys that do something now."""
        if self.stands:
            wanted = (one for one in keys.PAGES[self.KEYS] if one.word)
            kept = [(one, self.word_of(one)) for one in wanted if self.offers(one.action)]
            self.query_one(KeyLine).offer(kept)

    # Textual calls the handlers of every class in turn, of each the private name too: so a page may
    # have an ``on_mount`` of its own and need not call this one.
    def _on_mount(self, _event: events.Mount) -> None:
        if isinstance(self.app, FramedApp) and self.app._untold is not None:
            self._unsaid, self.app._untold = self.app._untold, None
        self.call_after_refresh(self._framed)

    def _framed(self) -> None:
        if self._unsaid is not None:
            self.tell(self._unsaid)

    def _on_screen_resume(self, event: events.ScreenResume) -> None:
        # A new page has its styles; under another one the colors may have changed.
        event.refresh_styles = event.refresh_styles and self._stood
        self._stood = True
        self.show_frame()

    def on_resize(self, event: events.Resize) -> None:
        """Note how much room there is."""
        self._note_room(event.size)
        self.call_after_refresh(self.show_saved)

    def _note_room(self, size: Size) -> None:
        width, height = size
        room = {
            "narrow": width < NARROW,
            "slim": width < 80 or NARROW <= width < WIDE,
            "wide": width >= WIDE,
            "low": height < LOW,
            "tall": height >= 28,
            "roomy": height >= ROOMY,
            "tiny": width < SMALLEST[0] or height < SMALLEST[1],
        }
        self.update_classes(room)

    # Keys

    def heeds(self, event: events.Key | events.Paste) -> bool:
        """Tell whether a key is for what the page shows, and not typed ahead of it."""
        return True

    def leave(self, place: bool = True) -> None:
        """Put by what is half typed, and the ``place`` reached, before the program ends."""

    # What is said

    def tell(self, said: str | Said, weight: Weight = Weight.PLAIN) -> None:
        """Say something in the notice line; it covers nothing."""
        one = Said(said, weight) if isinstance(said, str) else said
        found = self.query(Notice)
        if found:
            found.first().tell(one if one.text else None)
        else:
            self._unsaid = one

    @property
    def told(self) -> str:
        """What stands in the notice line."""
        found = self.query(Notice)
        return found.first().told if found else ""

    def warn(self, said: str) -> None:
        """Say something that stays until the next Enter or Escape."""
        self.tell(said, Weight.WARNING)

    def on_line_not_pasted(self, event: Line.NotPasted) -> None:
        """Say why nothing was pasted."""
        event.stop()
        self.warn(event.why)

    def keyed(self, key: str) -> None:
        """Take away what was said, now that another key is pressed."""
        if found := self.query(Notice):
            found.first().keyed(key)


def _shares(session: Session | None, here: str) -> Sequence[StageShare]:
    if session is None:
        return NOT_STARTED
    from interview.screens.words import stage_shares

    return stage_shares(session, here)


def _name_of(file: str) -> str:
    if not file:
        return ""
    from interview.screens.words import short_name

    return short_name(file)
