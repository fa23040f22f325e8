"""The live page of one soak test: what it shows. Every second it is told by the clock anew."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from textual import events
from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import DataTable

from interview.asking.answers import Answers
from interview.asking.kinds import list_lines
from interview.asking.route import Step
from interview.garden.live_picture import hole_picture
from interview.garden.session import Session
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import timing_questions as timing
from interview.garden.soak import water_level
from interview.garden.soak.hole_view import finest_step
from interview.garden.soak.noted import Timed, noted
from interview.garden.soak.timed import SoakRun
from interview.garden.soak_due import HoleTest
from interview.garden.storms.charts import Coming, running_chart
from interview.screens import keys, soak_watch, words
from interview.screens.frame import KeyLine
from interview.screens.page import Page
from interview.screens.palette import MARKS
from interview.screens.parts import Across, Holder, Line, Scrolled, Stacked, Words
from interview.screens.reminding import RemindingApp, reminders_of
from interview.screens.soak_entry import SoakEntry
from interview.screens.soak_parts import Clock, Pane, ReadingRows, Room, WaitBar

CAUTIONS = (
    "Never leave the hole open. A child can drown in very little water. Cover it with a board "
    "and a weight.",
    "Never leave the hole open. A child can drown: cover and weight it.",
    "Never leave the hole open: a child can drown.",
    "Never leave the hole open.",
)
"""The same, the longest first: the first one that fits its row is shown."""
LONGEST = 80
IDLE = "-:--:--"
"""On the clock while there is nothing to count from."""


class SoakPage(Page):
    """Shows one test; taking its readings is in ``SoakScreen``."""

    SAYS_WHAT_IS_DUE = True
    KEYS = "soak"

    def __init__(self, session: Session, step: Step) -> None:
        super().__init__()
        self._session = session
        self._step = step
        self._room = Room.of(80, 24)
        """How the page is parted in this window."""
        self._shown: object = None
        """What is in the table."""
        self._stands: object = None
        """What the page said last, but for the clock."""
        self._pictured: object = None
        """What the pictures were drawn from."""
        self._marked_among: tuple[str, list[str]] | None = None
        """The hole and the readings among which one is marked."""
        self._chart = False
        """Whether the chart alone was asked for."""
        self._can_do: frozenset[str] = frozenset()
        """The actions that do something now."""
        self._wetting = ""
        """What the key of a wetting notes now."""
        self._entry: SoakEntry | None = None
        """What the line at the foot is open for."""

    def parts(self) -> ComposeResult:
        yield Words(id="caution")
        with Holder(id="upper"):
            with Stacked(id="timing"):
                with Across(id="clockwork"):
                    yield Clock(id="elapsed")
                    yield Words(id="since")
                yield WaitBar(id="wait")
                yield Words(id="due")
                yield Words(id="do_now")
                yield ReadingRows(id="readings_box")
            yield Pane(id="hole", can_focus=False)
        with Holder(id="lower"):
            yield Pane(id="chart", can_focus=False)
            with Scrolled(id="words_box", can_focus=False):
                yield Words(id="verdict")
                yield Words(id="meaning")
                yield Words(id="and_then", classes="quiet")
                yield Words(id="told")
                yield Words(id="others", classes="quiet")
        with Stacked(id="entry_box"):
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
        self._fit()
        self.tick()
        self.set_interval(1.0, self.tick)
        self.rest()

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        self._fit()
        self.call_after_refresh(self.tick)

    def _fit(self) -> None:
        """Part the page anew for the window there is."""
        room = self._room = Room.of(*self.app.size)
        self._shown = self._stands = self._pictured = None
        self.set_class(room.small, "small")
        self.set_class(room.large, "large")
        self.query_one("#hole").styles.width = room.right
        text = next((one for one in CAUTIONS if len(one) <= room.width - 14), CAUTIONS[-1])
        badge = (f" {MARKS['look']} CAUTION ", "$ground on $look bold")
        self.query_one("#caution", Words).say(Content.assemble(badge, " ", (text, "$look")))

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
        """Show the test as it stands at this instant, each hole looked at once.

        Of most seconds the clock and the bar alone tell; the rest is gone over once a minute, and
        with every key.
        """
        tests = soak_watch.tests_of(self._session)
        here = (one.run for one in tests if one.step.address == self._step.address)
        run = next(here, None) or self._run
        self._tell_time(run)
        at = f"{run.now:%d %H:%M %Z}"
        said = (run.state, run.do_now, run.and_then, run.due, run.notices)
        asked = (self._step.address, self._entry, self._chart, reminders_of(self.app).notice)
        stands = (self._session.answers.texts, at, said, asked)
        if stands != self._stands:
            self._stands = stands
            self._say_all(run, tests)
            self._show_pictures(run)
        if isinstance(self.app, RemindingApp):
            self.app.remind(tests)

    def _tell_time(self, run: SoakRun) -> None:
        elapsed = run.elapsed
        shown = elapsed if elapsed is not None or run.since is None else dt.timedelta()
        clock = self.query_one("#elapsed", Clock)
        clock.set_class(shown is None, "idle")
        clock.show(IDLE if shown is None else words.ticking(shown), self._room.large)
        wait = soak_watch.wait_of(run)
        if wait is not None:
            self.query_one("#wait", WaitBar).show(wait.before, wait.part, wait.after)

    def _say_all(self, run: SoakRun, tests: Sequence[HoleTest]) -> None:
        """Say everything but the seconds."""
        room, view = self._room, self._view
        self.show_saved()
        wait = soak_watch.wait_of(run)
        is_due = wait is not None and wait.is_due
        self.query_one("#wait").display = wait is not None
        self._say("due", soak_watch.DUE_NOW if is_due else "")
        self.query_one("#due").set_class(is_due and reminders_of(self.app).notice, "now")
        self._say_since(run)
        notices = [f"{MARKS['look']} {one}" for one in run.notices if one != run.do_now]
        told = " ".join(one for one in (*notices, soak_watch.zone_words(run)) if one)
        below = {"and_then": run.and_then, "told": told, "others": self._others(tests)}
        # What is long has more room below than beside the picture.
        long = not room.small and bool(run.rows) and room.lines(run.do_now, room.left - 2) > 3
        if long:
            mark = f"{MARKS['look']} " if run.do_now in run.notices else ""
            below["told"] = f"{mark}{run.do_now} {told}".strip()
        self._say("do_now", "" if long else run.do_now)
        self.query_one("#told").set_class(not (long or notices), "quiet")
        self.query_one("#told").set_class(bool(run.notices), "noted")
        timed = noted(view).timed
        self._part_words(run, view, below, bool(water_level.fills(timed)), is_due)
        wetting = soak_watch.wetting_step(self._step, run)
        self._can_do = _can_do(run, wetting is not None, len(tests) > 1)
        self._wetting = wetting[1].lower() if wetting else ""
        self.show_keys()
        self._table(run)

    def _say_since(self, run: SoakRun) -> None:
        """Say from when the clock counts, in no more lines than the clock has."""
        room, clock = self._room, self.query_one("#elapsed", Clock)
        beside = room.left - clock.columns - 4
        short = room.lines(soak_watch.since_words(run), beside) > clock.rows
        self._say("since", soak_watch.since_words(run, short))

    def _part_words(
        self, run: SoakRun, view: Answers, below: dict[str, str], has_chart: bool, is_due: bool
    ) -> None:
        """Part what is under the clock between the chart and the words, which go first."""
        room = self._room
        meaning = "" if run.test is None and run.waits == run.do_now else run.waits
        verdict = soak_watch.verdict_of(run, view, room.words, room.large)
        if run.test is not None:
            full, brief = soak_watch.sentences(run.test, view)
            used = len(str(verdict).splitlines())
            used += sum(room.lines(one, room.words) for one in below.values())
            fits = used + room.lines(full, room.words) <= room.lower
            meaning = full if fits else brief
        if room.small:
            verdict, meaning = Content(""), soak_watch.meaning(run, view)
            # The last readings go first where one is due.
            meaning = "" if is_due or meaning == run.do_now else meaning
        lines = _lines_in(room.words, str(verdict), meaning, *below.values())
        charted = has_chart and self._chart
        wordy = not room.small and lines > room.lower
        if wordy and _lines_in(room.width - 2, str(verdict), meaning, *below.values()) > room.lower:
            # What is to be done goes before what the soil is like, which the key of it tells too.
            meaning = ""
            if _lines_in(room.width - 2, str(verdict), *below.values()) > room.lower:
                verdict = Content("")
        self.query_one("#verdict", Words).say(verdict)
        self._say("meaning", meaning)
        for name, text in below.items():
            self._say(name, text)
        typing = self._entry is not None and not room.large
        chart = charted or (has_chart and not (room.small or wordy or typing))
        self.query_one("#chart").display = chart
        box = self.query_one("#words_box")
        box.display = lines > 0 and not charted
        box.styles.width = room.right if chart else "1fr"
        lower = self.query_one("#lower")
        lower.display = charted or not typing
        lower.styles.height = "1fr" if charted else "auto" if room.small else room.lower
        for name in ("#upper", "#timing"):
            self.query_one(name).styles.height = "auto" if charted else "1fr"
        self.query_one("#hole").display = not (room.small or charted)
        self.query_one("#readings_box").display = run.began is not None and not charted

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
        """Fill the table, where other readings stand or another one is due."""
        coming = soak_watch.next_row(run)
        state = (run.rows, self._step.address, coming)
        if state == self._shown:
            return
        self._shown = state
        box = self.query_one(ReadingRows)
        place = self._place_to_mark(box.table.cursor_row)
        heads, rows = soak_watch.table_of(run, self._view)
        box.fill(heads, rows, coming, self._room.left - 2)
        if run.rows:
            box.mark(max(0, min(place, len(run.rows) - 1)))

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

    def _show_pictures(self, run: SoakRun) -> None:
        """Draw the hole and the chart where a reading came or the level moved by what shows."""
        view = self._view
        timed = noted(view).timed
        level = self._estimate(view, timed, run)
        drawn = (timed, self._step.address, level, run.due, self._chart, run.now.tzinfo)
        if drawn == self._pictured:
            return
        self._pictured = drawn
        self.query_one("#hole", Pane).show(hole_picture(view, level).bare)
        if fills := water_level.fills(timed):
            due = None if run.clock_back else run.due
            rate = None if run.enough else water_level.latest_rate(timed)
            coming = Coming(due, rate, level)
            full = self._chart or self._room.large
            chart = running_chart(fills, coming, view.metric, run.now.tzinfo, brief=not full)
            self.query_one("#chart", Pane).show(chart if self._chart else chart.bare)

    def _estimate(
        self, view: Answers, timed: Timed | None, run: SoakRun
    ) -> water_level.Stand | None:
        depth = view.get(digging.HOLE_DEPTH)
        if depth is None or run.enough or run.clock_back:
            return None
        step = finest_step(depth, self._room.upper)
        return water_level.estimated(timed, run.now, step)

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


def _lines_in(columns: int, *texts: str) -> int:
    return sum(Room.lines(text, columns) for text in texts)


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
