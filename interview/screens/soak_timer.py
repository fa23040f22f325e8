"""The live page of one soak test. Every second it is worked out anew from the clock."""

from __future__ import annotations

import datetime as dt
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Container, Horizontal, Vertical, VerticalScroll
from textual.widgets import Button, DataTable, Digits, Footer, Input

from interview.kinds import list_lines
from interview.model import Answers
from interview.questions import soak
from interview.reading import Refused, write_instant
from interview.route import Step, step_at
from interview.screens import soak_entry as entry
from interview.screens import words
from interview.screens.parts import Line, Page, Press, WindowTitle, Words
from interview.screens.soak_entry import Entry
from interview.screens.soak_watch import Watch, watch
from interview.session import Doubt, Session

CAUTION = (
    "CAUTION: Never leave the hole open. A child can drown in very little water. "
    "Cover it with a board and a weight."
)
LONGEST = 80


class SoakScreen(Page):
    """Times the soak test of one hole and takes its readings."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "Close", key_display="esc"),
        Binding("r", "reading", "Reading now"),
        Binding("ctrl+n", "reading", "Reading now", show=False),
        Binding("f", "refill", "Refilled"),
        Binding("a", "add", "Add"),
        Binding("x", "strike", "Strike"),
        Binding("b", "bell", "Bell"),
        Binding("s", "start", "Start", show=False),
        Binding("enter", "correct", "Correct", show=False),
    ]

    def __init__(self, session: Session, step: Step) -> None:
        super().__init__()
        self._session = session
        self._step = step
        self._entry: Entry | None = None
        self._bell = True
        self._rung: dt.datetime | None = None
        """The due time the bell was rung for."""
        self._rows: object = None

    def parts(self) -> ComposeResult:
        yield Words(f"Soak test: {words.item_name(self._session, self._step)}", classes="title")
        yield Words(CAUTION, id="caution")
        with Container(id="clockwork"):
            yield Digits("", id="elapsed")
            with Vertical(id="times"):
                yield Words(id="since")
                yield Words(id="due")
        with VerticalScroll(id="readings_box", can_focus=False):
            yield DataTable(id="readings", cursor_type="row", zebra_stripes=True)
            yield Words(id="meaning")
            yield Words(id="advice")
        with Vertical(id="entry_box"):
            yield Words(id="entry_title")
            yield Line("", LONGEST, id="entry_line")
            yield Words(id="entry_heard", classes="refused")
        with Container(id="buttons"):
            with Horizontal(classes="buttons"):
                yield Press("Now at the mark", "start")
                yield Press("Reading now", "reading")
                yield Press("Refilled", "refill")
                yield Press("Add one", "add")
            with Horizontal(classes="buttons"):
                yield Press("Correct", "correct")
                yield Press("Strike out", "strike")
                yield Press("Bell off", "bell")
                yield Press("Close", "leave")
        yield Footer(show_command_palette=False, compact=True)

    def on_mount(self) -> None:
        unit = "mm/h" if self._session.answers.metric else "in/h"
        deep = "mm" if self._session.answers.metric else "in"
        table = self.query_one(DataTable)
        for name in ("clock", "after", "water", f"drop {deep}", unit, "corrected"):
            table.add_column(name)
        self.query_one("#entry_box").display = False
        self.tick()
        self.set_interval(1.0, self.tick)
        self._rest()

    # Showing

    @property
    def _view(self) -> Answers:
        return self._step.view(self._session.answers)

    @property
    def _lines(self) -> list[str]:
        return list_lines(self._view.text(soak.READINGS) or "")

    def tick(self) -> None:
        """Show the test as it stands at this instant."""
        now = watch(self._view, self._session.now)
        self.query_one("#start").display = now.began is None
        for name in ("reading", "refill", "add", "correct", "strike"):
            self.query_one(f"#{name}").display = now.began is not None
        elapsed = now.elapsed
        self.query_one(Digits).update("" if elapsed is None else words.ticking(elapsed))
        self._say("since", _since(now))
        self._say("due", now.due_words())
        self._say("meaning", now.meaning(self._view))
        self._say("advice", now.advice())
        self._table(now)
        self._call(now)

    def _say(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Words).say(text)

    def _table(self, now: Watch) -> None:
        if now.rows == self._rows:
            return
        self._rows = now.rows
        table = self.query_one(DataTable)
        place = table.cursor_row
        table.clear()
        for row in now.rows:
            cells = (row.clock, row.elapsed, row.water, row.drop, row.rate, row.corrected)
            table.add_row(*(("struck " + cells[0], *cells[1:]) if row.struck else cells))
        table.display = bool(now.rows)
        if now.rows:
            table.move_cursor(row=min(place, len(now.rows) - 1))

    def _call(self, now: Watch) -> None:
        """Ring once when a reading is due, and count down in the window's title."""
        due = now.due
        if due is None or now.clock_back:
            self.post_message(WindowTitle(""))
            return
        left = due - now.now
        if left.total_seconds() > 0:
            self.post_message(WindowTitle(f"next reading in {words.span(left)}"))
            return
        self.post_message(WindowTitle("READING DUE"))
        if self._bell and self._rung != due:
            self._rung = due
            self.app.bell()
            self.notify("A reading is due. Press R at the hole.", markup=False, timeout=15)

    def _rest(self) -> None:
        """Put the focus where single letters are commands."""
        now = watch(self._view, self._session.now)
        if now.rows:
            self.query_one(DataTable).focus()
        else:
            self.query_one("#start" if now.began is None else "#reading").focus()

    # Taking readings

    def on_button_pressed(self, event: Button.Pressed) -> None:
        getattr(self, f"action_{event.button.id}")()

    def action_start(self) -> None:
        """Keep this moment as the one at which the water stood at the mark."""
        address = self._step.address.rsplit(".", 1)[0] + f".{soak.TEST_START.key}"
        step = step_at(address, self._session.answers)
        if step is None or watch(self._view, self._session.now).began is not None:
            return
        try:
            self._session.offer(step, write_instant(self._session.now))
        except (Refused, Doubt) as refused:
            self.notify(str(refused), severity="warning", markup=False)
        self.tick()
        self._rest()

    def action_reading(self) -> None:
        """Stamp this moment, then ask only for the water."""
        self._open(entry.reading(self._session.now, self._view))

    def action_refill(self) -> None:
        """Stamp this moment as a refill, then ask to what depth."""
        self._open(entry.refill(self._session.now, self._view))

    def action_add(self) -> None:
        """Ask for a reading taken earlier."""
        self._open(entry.earlier(self._view))

    def action_correct(self) -> None:
        """Put the chosen reading into the line, to be corrected."""
        lines, place = self._lines, self.query_one(DataTable).cursor_row
        if place < len(lines):
            self._open(entry.correction(place), lines[place])

    def action_strike(self) -> None:
        """Strike the chosen reading out, or take it back in."""
        lines, place = self._lines, self.query_one(DataTable).cursor_row
        if place >= len(lines):
            return
        lines[place] = entry.struck_or_back(lines[place])
        if said := self._offer(lines):
            self.notify(said, severity="warning", markup=False)

    def action_bell(self) -> None:
        """Switch the bell."""
        self._bell = not self._bell
        self.query_one("#bell", Button).label = "Bell off" if self._bell else "Bell on"
        self.notify(f"The bell is {'on' if self._bell else 'off'}.", markup=False, timeout=3)

    def action_leave(self) -> None:
        """Close the line that is open, or the page."""
        if self._entry is not None:
            self._close()
        else:
            self.post_message(WindowTitle(""))
            self.dismiss(None)

    def on_data_table_row_selected(self) -> None:
        self.action_correct()

    def _open(self, what: Entry, text: str = "") -> None:
        if watch(self._view, self._session.now).began is None:
            self.notify("First say when the water stood at the mark.", markup=False)
            return
        self._entry = what
        self.query_one("#entry_box").display = True
        self._say("entry_title", what.title)
        self._say("entry_heard", "")
        line = self.query_one("#entry_line", Line)
        line.say(text)
        line.focus()

    def _close(self) -> None:
        self._entry = None
        self.query_one("#entry_box").display = False
        self._rest()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        if self._entry is None:
            return
        typed = event.value.strip()
        if not typed and not self._entry.may_be_empty:
            self._say("entry_heard", "Nothing was written. Write the water, or press Escape.")
            return
        built = self._entry.build(typed)
        said = self._insert(built) if self._entry.place is None else self._replace(built)
        if said:
            self._say("entry_heard", said)
        else:
            self._close()

    def _replace(self, line: str) -> str:
        lines = self._lines
        assert self._entry is not None and self._entry.place is not None
        lines[self._entry.place] = line
        return self._offer(lines)

    def _insert(self, line: str) -> str:
        """Put a reading where its time belongs: at the end, or between those before it."""
        lines = self._lines
        first = ""
        for place in range(len(lines), -1, -1):
            said = self._offer([*lines[:place], line, *lines[place:]])
            if not said:
                return ""
            first = first or said
        return first

    def _offer(self, lines: list[str]) -> str:
        """Keep the readings; return why not, or nothing."""
        try:
            self._session.offer(self._step, "\n".join(lines))
        except (Refused, Doubt) as refused:
            return str(refused)
        self.tick()
        return ""


def _since(now: Watch) -> str:
    if now.began is None:
        return "The timed test has not begun."
    said = f"since the mark at {words.clock(now.began, now.now)}; now {now.now:%H:%M:%S}"
    if now.elapsed is not None and now.elapsed.total_seconds() < 0:
        return f"The mark was at {words.clock(now.began, now.now)}, but it is {now.now:%H:%M} now."
    return said
