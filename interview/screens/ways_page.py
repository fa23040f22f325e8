"""The ways out where the garden does not fit its room or its soil; one can be taken."""

from __future__ import annotations

from textual import work
from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from interview.asking.question import Unanswered
from interview.garden.remedies import WayOut
from interview.garden.session import Session
from interview.screens import words
from interview.screens.garden import NOTHING, paragraphs
from interview.screens.lists import Rows
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.page import Page
from interview.screens.parts import Words, is_there
from interview.sheet import size, soil

SLOW = "The soil is slow: see below what helps with it. Another size helps little."
LEAD = "The garden does not fit its room, or does not hold the whole rain. Enter takes one of:"


class WaysScreen(Page):
    """Closes with the words that a way keeps, by address, or with nothing."""

    KEYS = "ways"
    HEADING = "Options"

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._plan = session.plan
        self._ways: list[WayOut] = []

    def parts(self) -> ComposeResult:
        yield Words("Working it out…", id="ways_lead")
        yield Rows(id="ways", markup=False)
        yield Words("", id="ways_slow")

    def on_mount(self) -> None:
        self.query_one("#ways").focus()
        self._work_out()

    @work(thread=True, exclusive=True)
    def _work_out(self) -> None:
        # With a long rainfall record they take seconds.
        found: list[WayOut] = []
        try:
            with telling_page(self.app, lambda _: None):
                _ = self._plan.size.garden  # before there is one, none fits its room
                found = size.ways_shown(self._plan)
                slow = paragraphs(soil.slow(self._plan))
                said = (SLOW if slow else LEAD) if found or slow else NOTHING
        except Stopped:
            return
        except Unanswered as gap:
            label = gap.question.told(self._plan.answers).label
            said, slow = f"This waits for an answer: {label}.", []
        except Exception as trouble:
            said, slow = words.fault(trouble), []
        self.app.call_from_thread(self._worked_out, found, said, "\n".join(slow))

    def _worked_out(self, found: list[WayOut], said: str, slow: str) -> None:
        if not is_there(self):
            return
        self._ways = found
        self.query_one("#ways_lead", Words).say(said)
        self.query_one("#ways_slow", Words).say(slow)
        rows = self.query_one("#ways", Rows)
        rows.add_options(Option(self._row(one)) for one in found)
        rows.display = bool(found)
        rows.highlighted = 0 if found else None

    def _row(self, way: WayOut) -> Content:
        name, _, rest = size.way_words(self._plan, way).partition(": ")
        return Content.assemble((f"{name}: ", "bold"), rest)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Take a way that answers alone can take."""
        takes = self._ways[event.option_index].takes
        if takes is None:
            self.tell("No answer does that: lead part of the water elsewhere, and measure again.")
        else:
            self.dismiss(takes)
