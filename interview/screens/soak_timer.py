"""Taking the readings of a soak test, each with the true time of the key that was pressed."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import DataTable, Input

from interview.asking.route import Step
from interview.asking.sitting import Doubt
from interview.garden.session import Session
from interview.garden.soak import edit as soak_edit
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import typed_line
from interview.garden.summary import folded_to
from interview.reading import Refused, write_instant
from interview.screens import offers, soak_watch, words
from interview.screens import soak_entry as entry
from interview.screens.page import Page
from interview.screens.parts import Folded, Line
from interview.screens.reminder_choice import ReminderChoice
from interview.screens.reminding import RemindingApp
from interview.screens.resting import Resting
from interview.screens.soak_entry import Does, SoakEntry
from interview.screens.soak_page import SoakPage
from interview.sheet.soil import result_lines


class SoakMeaning(Page):
    """The same words as on the sheet, for one hole."""

    KEYS = "meaning"

    def __init__(self, session: Session, step: Step) -> None:
        super().__init__()
        self._session = session
        self._step = step

    def parts(self) -> ComposeResult:
        with VerticalScroll(id="keys"):
            yield Folded(self._text)

    def headings(self) -> tuple[str, ...]:
        name = words.item_name(self._session, self._step)
        return (f"What the soak test means: {name}", "What the soak test means")

    def _text(self, columns: int) -> str:
        try:
            with folded_to(columns):
                return "\n".join(result_lines(self._session.plan, self._step.number))
        except Exception as trouble:
            # A fault in the sums must not keep anybody from the readings.
            return words.fault(trouble)

    def on_mount(self) -> None:
        self.query_one("#keys").focus()


class SoakScreen(Resting, SoakPage):
    """Times the soak test of one hole and takes its readings."""

    def __init__(self, session: Session, step: Step, resumed: bool = False) -> None:
        super().__init__(session, step)
        self._resumed = resumed
        """Whether somebody has come back to it, and finds again what was half typed."""
        self._found_again = False
        """Whether the line is open with words that were half typed before."""
        self._ours: set[str] = set()
        """The addresses whose half typed words are those of the line here."""
        self._waiting: tuple[SoakEntry, str] | None = None
        """A reading that cannot be kept until the noted times are shifted, as it was typed."""

    # Textual calls that of the page it is made from, too.
    def on_mount(self) -> None:
        """Open the line again with what was half typed in it before the program ended."""
        drafts = self._session.drafts if self._resumed else {}
        readings, mark = self._step.address, self._view.address(timing.WATER_AT_MARK)
        self._ours = {readings, mark} & set(drafts)
        self._found_again = bool(self._ours)
        if half := drafts.get(mark):
            self.call_after_refresh(self._open, entry.mark(self._view), half)
        elif half := drafts.get(readings):
            self.call_after_refresh(self._begun, entry.earlier(self._view), half)

    def _half_typed(self) -> dict[str, str]:
        """Return the words of the line by the address they are for; none where it is shut."""
        what, typed = self._entry, self.query_one("#entry_line", Line).value.strip()
        if what is not None and typed and what.does is Does.MARK:
            return {self._view.address(timing.WATER_AT_MARK): typed}
        if what is not None and typed and what.does is Does.ADD:
            # With the moment of its key, which is not come back to.
            return {self._step.address: typed_line(what.build(typed), self._session.now)}
        return {}

    def save_half_typed(self) -> None:
        """Have the words of the line in the file: a flat battery must not cost a reading."""
        drafts = self._session.drafts
        before, half = dict(drafts), self._half_typed()
        for address in self._ours - set(half):
            drafts.pop(address, None)
        drafts.update(half)
        self._ours = set(half)
        if drafts != before:
            self._session.save()

    def leave(self, place: bool = True) -> None:
        """Have what is half typed saved too before the program ends."""
        self.save_half_typed()

    def action_start(self) -> None:
        """Keep this moment as the one at which the water stood at the mark."""
        if self._run.began is not None:
            return
        self._note(self._view.address(timing.TEST_START))
        if self._run.began is not None and self._view.get(timing.WATER_AT_MARK) is None:
            self._open(entry.mark(self._view))

    def action_wetting(self) -> None:
        """Keep this moment as the one at which the hole was full, or empty, while it is wetted."""
        found = soak_watch.wetting_step(self._step, self._run)
        if found is not None:
            self._note(found[0])

    def _note(self, address: str) -> None:
        """Keep this very moment at ``address``."""
        if said := offers.offer(self._session, address, write_instant(self._session.now)):
            self.warn(said)
        self.tick()
        self.rest()

    def action_reading(self) -> None:
        """Stamp this moment, then ask only for the water."""
        self._begun(entry.reading(self._session.now, self._view))

    def action_refill(self) -> None:
        """Stamp this moment as a refill, then ask to what depth."""
        self._begun(entry.refill(self._session.now, self._view))

    def action_add(self) -> None:
        """Ask for a reading taken earlier."""
        self._begun(entry.earlier(self._view))

    def action_correct(self) -> None:
        """Put the chosen reading into the line, to be corrected."""
        if self._entry is not None:
            self._submit(self.query_one("#entry_line", Line).value)
            return
        lines, place = self._lines, self.query_one(DataTable).cursor_row
        if place < len(lines):
            line = typed_line(lines[place], self._session.now)
            self._begun(entry.correction(place + 1), line)

    def action_strike(self) -> None:
        """Strike the chosen reading out, or take it back in."""
        place = self.query_one(DataTable).cursor_row
        if place >= len(self._lines):
            return
        try:
            self._keep(soak_edit.with_struck(self._view, place + 1))
        except (Refused, Doubt) as refused:
            self.warn(str(refused))

    def action_shift(self) -> None:
        """Ask how far off the clock was that noted the times."""
        self._open(entry.shift(self._session.now, self._view))

    def action_bell(self) -> None:
        """Choose how one is told that a reading is due."""
        if isinstance(self.app, RemindingApp):
            self.app.push_screen(ReminderChoice(self.app))

    def action_chart(self) -> None:
        """Show the chart of the water left in the place of the table, or the table again."""
        self._chart = not self._chart
        self.tick()

    def action_meaning(self) -> None:
        """Show what the result means and where its water went."""
        self.app.push_screen(SoakMeaning(self._session, self._step))

    def action_next_hole(self) -> None:
        """Go on to the next test hole."""
        holes = soak_watch.holes(self._session)
        places = [p for p, one in enumerate(holes) if one.address == self._step.address]
        if len(holes) < 2 or self._entry is not None:
            return
        after = holes[(places[0] + 1) % len(holes)] if places else holes[0]
        if shut := self._session.shut(after):
            self.tell(shut[0])
            return
        self._step = after
        self.tick()
        self.rest()

    def action_leave(self) -> None:
        """Close the line that is open, else the chart, else the page."""
        if self._entry is not None and self._found_again:
            self.dismiss(None)  # the line of the question has it too
        elif self._entry is not None:
            self._close()
        elif self._chart:
            self.action_chart()
        else:
            self.dismiss(None)

    def on_data_table_row_selected(self) -> None:
        self.action_correct()

    # The line

    def _begun(self, what: SoakEntry, text: str = "") -> None:
        if self._run.began is None:
            self.tell("First say when the water stood at the fill level.")
        elif self._view.get(timing.WATER_AT_MARK) is None:
            # The reading keeps the moment of its key; only its depth is asked after the mark.
            self._waiting = (what, text)
            self._open(entry.mark(self._view))
        else:
            self._open(what, text)

    def _open(self, what: SoakEntry, text: str = "", said: str = "") -> None:
        self._entry = what
        self.query_one("#entry_box").display = True
        self._say("entry_title", what.title)
        self._say("entry_heard", said)
        line = self.query_one("#entry_line", Line)
        line.say(text)
        line.focus()
        self.tick()

    def _close(self) -> None:
        waiting, self._waiting = self._waiting, None
        if waiting is not None:
            self._open(*waiting)
            return
        self._entry, self._found_again = None, False
        self.query_one("#entry_box").display = False
        self.save_half_typed()
        self.tick()
        self.rest()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        self._submit(event.value)

    def _submit(self, text: str) -> None:
        """Take what stands in the line."""
        if self._entry is None:
            return
        typed = text.strip()
        if not typed and not self._entry.may_be_empty:
            self._say("entry_heard", "Nothing was written. Write the water, or press Escape.")
            return
        try:
            self._take(self._entry, self._entry.build(typed))
        except soak_edit.NotedAhead:
            # The reading keeps its true time while the others are set right.
            self._waiting = (self._entry, typed)
            said = (
                "Some noted times are ahead of this clock. Move them back, then this reading is "
                "kept."
            )
            self._open(entry.shift(self._session.now, self._view), said=said)
        except (Refused, Doubt) as refused:
            self._say("entry_heard", str(refused))

    def _take(self, what: SoakEntry, words: str) -> None:
        """Keep what was typed; raises ``Refused`` or ``Doubt``."""
        waiting = self._waiting
        match what.does:
            case Does.ADD:
                self._keep(soak_edit.with_added(self._view, words))
            case Does.CORRECT:
                self._keep(soak_edit.with_corrected(self._view, what.place, words))
            case Does.SHIFT:
                self._session.offer_together(soak_edit.with_shift(self._view, words))
                self._waiting = None
            case Does.MARK:
                self._offer_mark(words)
        self._close()
        if what.does is Does.SHIFT and waiting is not None:
            self._again(*waiting)

    def _offer_mark(self, words: str) -> None:
        """Keep the depth of water at the mark; raises ``Refused`` or ``Doubt``."""
        step = offers.step_of(self._session, self._view.address(timing.WATER_AT_MARK))
        if step is not None:
            self._session.offer(step, words)

    def _again(self, what: SoakEntry, typed: str) -> None:
        """Keep the reading that waited for the shift; it stays in its line where it cannot be."""
        try:
            self._take(what, what.build(typed))
        except (Refused, Doubt) as refused:
            self._open(what, typed, str(refused))

    def _keep(self, readings: str) -> None:
        """Keep the readings; raises ``Refused`` or ``Doubt``."""
        self._session.offer(self._step, readings)
        self.tick()
