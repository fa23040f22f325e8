"""Taking the readings of a soak test, each with the true time of the key that was pressed."""

from __future__ import annotations

from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.widgets import Button, DataTable, Input

from interview.questions import soak
from interview.reading import Refused, write_instant
from interview.route import Step
from interview.screens import offers, soak_watch
from interview.screens import soak_entry as entry
from interview.screens.parts import Line, WindowTitle
from interview.screens.soak_entry import Entry
from interview.screens.soak_page import SoakPage
from interview.session import Doubt, Session


class SoakScreen(SoakPage):
    """Times the soak test of one hole and takes its readings."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", "Close", key_display="esc"),
        Binding("r", "reading", "Reading now"),
        Binding("ctrl+n", "reading", "Reading now", show=False),
        Binding("f", "refill", "Refilled"),
        Binding("a", "add", "Add"),
        Binding("x", "strike", "Strike"),
        Binding("c", "chart", "Chart"),
        Binding("h", "next_hole", "Next hole"),
        Binding("b", "bell", "Bell"),
        Binding("w", "wetting", "Wetting", show=False),
        Binding("s", "start", "Start", show=False),
        Binding("enter", "correct", "Correct", show=False),
    ]

    def __init__(self, session: Session, step: Step) -> None:
        super().__init__(session, step)
        self._entry: Entry | None = None

    def on_button_pressed(self, event: Button.Pressed) -> None:
        getattr(self, f"action_{(event.button.id or '').removesuffix('_button')}")()

    def action_start(self) -> None:
        """Keep this moment as the one at which the water stood at the mark."""
        if self._run.began is None:
            self._note(f"{self._step.address.rsplit('.', 1)[0]}.{soak.TEST_START.key}")

    def action_wetting(self) -> None:
        """Keep this moment as the one at which the hole was full, or empty, while it is wetted."""
        found = soak_watch.wetting_step(self._session, self._step)
        if found is not None:
            self._note(found[0])

    def _note(self, address: str) -> None:
        """Keep this very moment at ``address``."""
        if said := offers.offer(self._session, address, write_instant(self._session.now)):
            self.notify(said, severity="warning", markup=False)
        self.tick()
        self.rest()

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

    def action_chart(self) -> None:
        """Show the chart of the water left, or the table again."""
        self._chart = not self._chart
        self.tick()

    def action_next_hole(self) -> None:
        """Go on to the next test hole."""
        holes = soak_watch.holes(self._session)
        places = [p for p, one in enumerate(holes) if one.address == self._step.address]
        if len(holes) < 2 or self._entry is not None:
            return
        after = holes[(places[0] + 1) % len(holes)] if places else holes[0]
        if shut := self._session.shut(after):
            self.notify(shut[0], markup=False, timeout=5)
            return
        self._step, self._rung = after, None
        self.tick()
        self.rest()

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
        if self._run.began is None:
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
        self.rest()

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
