"""The live page of one soak test: what it shows. Every second it is told by the clock anew."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from textual import events
from textual.app import ComposeResult
from textual.containers import Container, Vertical, VerticalScroll
from textual.widgets import DataTable, Digits

from interview.asking.answers import Answers
from interview.asking.kinds import list_lines
from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.run import RunState, SoakRun
from interview.garden.soak_due import HoleTest
from interview.garden.storms.charts import drop_chart
from interview.screens import keys, soak_watch, words
from interview.screens.frame import KeyLine
from interview.screens.page import Page
from interview.screens.parts import Line, Words
from interview.screens.picture import Picture
from interview.screens.reminding import RemindingApp, reminders_of
from interview.screens.soak_entry import SoakEntry

CAUTION = (
    "CAUTION: Never leave the hole open. A child can drown in very little water. "
    "Cover it with a board and a weight."
)
SHORT_CAUTION = "CAUTION: Never leave the hole open: a child can drown."
LONGEST = 80
CHART_FROM = 38
"""From this many lines on the chart stands under the table."""
ALL_COLUMNS = 80
"""From this many columns on both rates are shown."""
LINES_FOR_ALL = 22
"""From this many lines on there is room for the large figures."""


class SoakPage(Page):
    """Shows one test; taking its readings is in ``SoakScreen``."""

    SAYS_WHAT_IS_DUE = True
    KEYS = "soak"

    def __init__(self, session: Session, step: Step) -> None:
        super().__init__()
        self._session = session
        self._step = step
        self._shown: object = None
        self._marked_among: tuple[str, list[str]] | None = None
        """The hole and the readings among which one is marked."""
        self._chart = False
        """Whether the chart was asked for."""
        self._can_do: frozenset[str] = frozenset()
        """The actions that do something now."""
        self._wetting = ""
        """What the key of a wetting notes now."""
        self._entry: SoakEntry | None = None
        """What the line at the foot is open for."""

    def parts(self) -> ComposeResult:
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

    def headings(self) -> tuple[str, ...]:
        name = words.item_name(self._session, self._step)
        return (f"Soak test: {name}", "Soak test")

    def stage_here(self, session: Session) -> str:
        return self._step.stage.key

    def offers(self, action: str) -> bool:
        """Leave out what does nothing now; the line that is open has the keys to itself."""
        if self._entry is not None:
            return action in ("correct", "leave")
        return action in self._can_do

    def word_of(self, key: keys.PageKey) -> str:
        if self._entry is not None:
            return "keep" if key.action == "correct" else "close the line"
        return self._wetting if key.action == "wetting" else key.word

    def on_mount(self) -> None:
        self.query_one("#entry_box").display = False
        self.tick()
        self.set_interval(1.0, self.tick)
        self.rest()

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        small = event.size.width < ALL_COLUMNS or event.size.height < LINES_FOR_ALL
        self.set_class(small, "small")
        self._shown = None
        self.call_after_refresh(self.tick)

    @property
    def has_room(self) -> bool:
        """Tell whether the chart stands under the table without being asked for."""
        return self.size.height >= CHART_FROM

    @property
    def _view(self) -> Answers:
        return self._step.view(self._session.answers)

    @property
    def _run(self) -> SoakRun:
        return soak_watch.run_of(self._session, self._step)

    @property
    def _lines(self) -> list[str]:
        return list_lines(self._view.text(timing.READINGS) or "")

    def tick(self) -> None:
        """Show the test as it stands at this instant, each hole looked at once."""
        tests = soak_watch.tests_of(self._session)
        here = (one.run for one in tests if one.step.address == self._step.address)
        run = next(here, None) or self._run
        self.show_saved()
        self._say("caution", SHORT_CAUTION if self.has_class("small") else CAUTION)
        self._say_times(run)
        self._say("due", run.due_words)
        self._say("do_now", run.do_now)
        self._say("and_then", run.and_then)
        meaning = soak_watch.meaning(run, self._view)
        self._say("meaning", "" if meaning == run.do_now else meaning)
        notices = [one for one in run.notices if one != run.do_now]
        told = (*notices, soak_watch.zone_words(run))
        self._say("told", " ".join(one for one in told if one))
        self._say("others", self._others(tests))
        is_due = run.state in (RunState.DUE, RunState.OVERDUE)
        self.query_one("#due").set_class(is_due and reminders_of(self.app).notice, "now")
        wetting = soak_watch.wetting_step(self._step, run)
        self._can_do = _can_do(run, wetting is not None, len(tests) > 1)
        self._wetting = wetting[1].lower() if wetting else ""
        self.show_keys()
        self._table(run)
        self._show_chart(run)
        if isinstance(self.app, RemindingApp):
            self.app.remind(tests)

    def _say_times(self, run: SoakRun) -> None:
        """Show the time since the mark: large where there is room for it."""
        elapsed = run.elapsed
        waiting = dt.timedelta() if run.since else None
        shown = elapsed if elapsed is not None else waiting
        ticking = "" if shown is None else words.ticking(shown)
        self.query_one(Digits).update(ticking)
        small = self.has_class("small")
        since = soak_watch.since_words(run, short=small)
        behind = small and elapsed is not None
        self._say("since", f"{ticking} {since}" if behind else since)

    def _say(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Words).say(text)
        if name == "entry_heard":
            self.query_one("#entry_box").set_class(bool(text), "amiss")

    def _others(self, tests: Sequence[HoleTest]) -> str:
        """Say in a few words how the other holes stand."""
        said = [
            f"{words.item_name(self._session, one.step)}: {one.run.short}"
            for one in tests
            if one.step.address != self._step.address
        ]
        return f"H goes on to: {'; '.join(said)}." if said else ""

    def _table(self, run: SoakRun) -> None:
        state = (run.rows, self._step.address)
        if state == self._shown:
            return
        self._shown = state
        table = self.query_one(DataTable)
        place = self._place_to_mark(table.cursor_row)
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
            table.move_cursor(row=max(0, min(place, len(run.rows) - 1)))

    def _place_to_mark(self, marked: int) -> int:
        """Return the row to mark: a reading just taken, the latest on a page just opened."""
        before, now = self._marked_among, (self._step.address, self._lines)
        self._marked_among = now
        if before is None or before[0] != now[0]:
            return len(now[1]) - 1
        if len(now[1]) <= len(before[1]):
            return marked
        pairs = zip(before[1], now[1], strict=False)
        return next((at for at, (old, new) in enumerate(pairs) if old != new), len(before[1]))

    def _show_chart(self, run: SoakRun) -> None:
        """Show the chart below the table where there is room, or in its place when asked."""
        chart = self.query_one("#chart", Picture)
        chart.display = run.test is not None and (self.has_room or self._chart)
        self.query_one("#readings_box").display = self.has_room or not chart.display
        self.set_class(chart.display, "charted")
        if run.test is not None and chart.display:
            chart.show(drop_chart(run.test, self._view.metric))

    def rest(self) -> None:
        """Put the focus where single letters are commands."""
        run = self._run
        if run.rows:
            self.query_one(DataTable).focus()
            return
        wetting = soak_watch.wetting_step(self._step, run)
        name = "reading" if run.began else "wetting" if wetting else "start"
        self.show_keys()
        self.query_one(KeyLine).point_at(name)


def _can_do(run: SoakRun, wetting: bool, several: bool) -> frozenset[str]:
    """Return the actions that do something while a test stands so."""
    begun = run.began is not None
    can = {
        "wetting": wetting,
        "start": not begun,
        **dict.fromkeys(("reading", "refill", "add"), begun),
        **dict.fromkeys(("correct", "strike"), bool(run.rows)),
        **dict.fromkeys(("chart", "meaning"), run.test is not None),
        "next_hole": several,
        "shift": run.since is not None,
        "bell": True,
        "leave": True,
    }
    return frozenset(action for action, does in can.items() if does)
