"""The live page of one soak test: what it shows. Every second it is worked out anew."""

from __future__ import annotations

import datetime as dt

from textual import events
from textual.app import ComposeResult
from textual.containers import Container, Horizontal, Vertical, VerticalScroll
from textual.widgets import DataTable, Digits

from interview.drawing.charts import drop_chart
from interview.kinds import list_lines
from interview.model import Answers
from interview.questions import soak
from interview.route import Step
from interview.screens import soak_watch, words
from interview.screens.parts import KeyLine, Line, Page, Press, WindowTitle, Words
from interview.screens.picture import Picture
from interview.session import Session
from interview.soak.run import SoakRun, State
from interview.soak.times import span_up, utc

CAUTION = (
    "CAUTION: Never leave the hole open. A child can drown in very little water. "
    "Cover it with a board and a weight."
)
LONGEST = 80
CHART_FROM = 38
"""From this many lines on the chart stands under the table."""
ALL_COLUMNS = 80
"""From this many columns on both rates are shown."""


class SoakPage(Page):
    """Shows one test; taking its readings is in ``SoakScreen``."""

    def __init__(self, session: Session, step: Step) -> None:
        super().__init__()
        self._session = session
        self._step = step
        self._bell = True
        self._rung: dt.datetime | None = None
        """The due time the bell was rung for."""
        self._shown: object = None
        self._chart = False
        """Whether the chart was asked for."""

    def parts(self) -> ComposeResult:
        yield Words(classes="title", id="hole_name")
        yield Words(CAUTION, id="caution")
        with Container(id="clockwork"):
            yield Digits("", id="elapsed")
            with Vertical(id="times"):
                yield Words(id="since")
                yield Words(id="due")
        yield Words(id="do_now")
        with VerticalScroll(id="readings_box", can_focus=False):
            yield Words(id="and_then", classes="quiet")
            yield DataTable(id="readings", cursor_type="row", zebra_stripes=True)
            yield Words(id="meaning")
            yield Words(id="told", classes="quiet")
            yield Words(id="others", classes="quiet")
        yield Picture(id="chart", can_focus=False)
        with Vertical(id="entry_box"):
            yield Words(id="entry_title")
            yield Line("", LONGEST, id="entry_line")
            yield Words(id="entry_heard", classes="refused")
        with Container(id="buttons"):
            with Horizontal(classes="buttons"):
                yield Press("Filled now", "wetting")
                yield Press("Now at the mark", "start")
                yield Press("Reading now", "reading")
                yield Press("Refilled", "refill")
                yield Press("Add one", "add")
            with Horizontal(classes="buttons"):
                yield Press("Correct", "correct")
                yield Press("Strike out", "strike")
                yield Press("Chart", "chart_button")
                yield Press("Next hole", "next_hole")
                yield Press("Bell off", "bell")
                yield Press("Close", "leave")
        yield KeyLine()

    def on_mount(self) -> None:
        self.query_one("#entry_box").display = False
        self.tick()
        self.set_interval(1.0, self.tick)
        self.rest()

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        self._shown = None
        self.call_after_refresh(self.tick)

    @property
    def _view(self) -> Answers:
        return self._step.view(self._session.answers)

    @property
    def _run(self) -> SoakRun:
        return soak_watch.run_of(self._session, self._step)

    @property
    def _lines(self) -> list[str]:
        return list_lines(self._view.text(soak.READINGS) or "")

    def tick(self) -> None:
        """Show the test as it stands at this instant."""
        run = self._run
        elapsed = run.elapsed
        waiting = dt.timedelta() if run.since else None
        shown = elapsed if elapsed is not None else waiting
        self.query_one(Digits).update("" if shown is None else words.ticking(shown))
        self._say("hole_name", f"Soak test: {words.item_name(self._session, self._step)}")
        self._say("since", soak_watch.since_words(run))
        self._say("due", run.due_words)
        self._say("do_now", run.do_now)
        self._say("and_then", run.and_then)
        self._say("meaning", soak_watch.meaning(run, self._view.metric))
        notices = [one for one in run.notices if one != run.do_now]
        told = (*notices, soak_watch.zone_words(run))
        self._say("told", " ".join(one for one in told if one))
        self._say("others", self._others())
        self.query_one("#due").set_class(run.state in (State.DUE, State.OVERDUE), "now")
        self._buttons(run)
        self._table(run)
        self._show_chart(run)
        self._call(run)

    def _say(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Words).say(text)

    def _others(self) -> str:
        """Say in a few words how the other holes stand."""
        said = [
            f"{words.item_name(self._session, step)}: "
            f"{soak_watch.run_of(self._session, step).short}"
            for step in soak_watch.holes(self._session)
            if step.address != self._step.address
        ]
        return f"H goes on to: {'; '.join(said)}." if said else ""

    def _buttons(self, run: SoakRun) -> None:
        """Show the buttons that can be used now."""
        begun = run.began is not None
        wetting = soak_watch.wetting_step(self._session, self._step)
        button = self.query_one("#wetting", Press)
        button.display = wetting is not None
        if wetting and str(button.label) != wetting[1]:
            button.label = wetting[1]
        self.query_one("#start").display = not begun
        for name in ("reading", "refill", "add", "correct", "strike"):
            self.query_one(f"#{name}").display = begun
        self.query_one("#chart_button").display = run.test is not None
        self.query_one("#next_hole").display = len(soak_watch.holes(self._session)) > 1

    def _table(self, run: SoakRun) -> None:
        state = (run.rows, self._step.address)
        if state == self._shown:
            return
        self._shown = state
        table = self.query_one(DataTable)
        place = table.cursor_row
        table.clear(columns=True)
        rate, deep = ("mm/h", "mm") if self._view.metric else ("in/h", "in")
        heads = ["clock", "after", "water", f"drop {deep}", rate, "corrected"]
        wide = self.size.width >= ALL_COLUMNS
        if wide:
            heads[4:5] = ["since fill", f"now {rate}"]
        for head in heads:
            table.add_column(head)
        clocks = soak_watch.clock_cells(self._view, run.now)
        for row in run.rows:
            at = clocks[row.place - 1] if row.place <= len(clocks) else row.line
            cells = [at, *row.cells[1:]] if wide else [at, *row.cells[1:4], *row.cells[5:]]
            if row.struck:
                cells[0] = f"struck {at}"
            table.add_row(*cells)
        table.display = bool(run.rows)
        if run.rows:
            table.move_cursor(row=min(place, len(run.rows) - 1))

    def _show_chart(self, run: SoakRun) -> None:
        """Show the chart below the table where there is room, or in its place when asked."""
        room = self.size.height >= CHART_FROM
        chart = self.query_one("#chart", Picture)
        chart.display = run.test is not None and (room or self._chart)
        self.query_one("#readings_box").display = room or not chart.display
        self.set_class(chart.display, "charted")
        if run.test is not None and chart.display:
            chart.show(drop_chart(run.test, self._view.metric))

    def _call(self, run: SoakRun) -> None:
        """Ring once when a reading is due, and count down in the window's title."""
        due = run.due
        if due is None or run.clock_back:
            self.post_message(WindowTitle(""))
            return
        left = utc(due) - utc(run.now)
        if left > dt.timedelta():
            what = "reading" if run.began else "look"
            self.post_message(WindowTitle(f"next {what} in {span_up(left)}"))
            return
        self.post_message(WindowTitle("READING DUE"))
        if self._bell and self._rung != due:
            self._rung = due
            self.app.bell()

    def rest(self) -> None:
        """Put the focus where single letters are commands."""
        run = self._run
        if run.rows:
            self.query_one(DataTable).focus()
            return
        wetting = soak_watch.wetting_step(self._session, self._step)
        name = "reading" if run.began else "wetting" if wetting else "start"
        self.query_one(f"#{name}").focus()
