"""What if: other sizes tried out, every figure following, nothing kept until asked for."""

from __future__ import annotations

from typing import ClassVar

from textual import events, work
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Container, Vertical, VerticalScroll
from textual.content import Content
from textual.widgets.option_list import Option

from interview.asking.answers import Answers
from interview.garden import scenarios as whatif
from interview.garden.plan import Plan
from interview.garden.scenarios import LEVERS, Followed, Lever
from interview.garden.session import Session
from interview.screens import keys, words
from interview.screens.garden import VIEWS, view_parts
from interview.screens.lists import Rows
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.offers import offer_all
from interview.screens.page import Page
from interview.screens.parts import NARROW, Ask, Words, is_there
from interview.screens.picture import Picture

LEAD = "Up and down choose, left and right change. Nothing is kept until you press K."
LABEL, VALUE = 18, 8
"""Least columns of a figure's name, most columns of its value."""
SHORT = {
    "Depth of the pond": "Pond depth",
    "Time to empty, at the corrected rate": "Time to empty",
    "Hours of water on the floor in the storm held": "Hours on the floor",
    "Caught of a storm half as large again": "Caught, 1½ storms",
    "Caught of a storm twice as large": "Caught, 2 storms",
    "Berm above the lawn": "Berm height",
    "Share of the record's runoff held": "Held of the record",
    "All the soil to dig, as it lies": "Soil to dig",
    "Width of the overflow notch": "Overflow notch",
    "What decides the depth": "Depth set by",
    "What decides the size": "Size set by",
}
"""Names of figures that would be cut short in a narrow window."""
FEWER = {
    "deepest pond wanted": "your limit",
    "the floor you chose": "your floor",
    "the narrowest floor": "least floor",
    "the rain to hold": "the rain",
    "the rain to hold, in the shape of the room": "room's shape",
}
"""The same for figures that are words."""


class Levers(Rows):
    """The things that can be changed; left and right move the one chosen by a step."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left,minus", "screen.move(-1)", "Less", show=False),
        Binding("right,plus", "screen.move(1)", "More", show=False),
        Binding("enter,space", "screen.move(1)", "More", show=False),
    ]


class TryOutScreen(Page):
    """Try other sizes on the plan."""

    KEYS = "try"
    HEADING = "Try other sizes"
    BINDINGS: ClassVar[list[BindingType]] = keys.bindings("try")

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._kept: Plan = session.plan
        self._tried: Plan = session.plan
        self._rows: list[Followed] = []

    def parts(self) -> ComposeResult:
        yield Words(LEAD, id="try_lead")
        with Container(id="trying"):
            with Vertical(id="try_left"):
                yield Levers(id="levers", markup=False)
                yield Words(id="try_said")
            with VerticalScroll(id="followed_box", can_focus=False):
                yield Words("Working it out…", id="followed")
            yield Picture(id="try_drawing", can_focus=False)

    def on_mount(self) -> None:
        listing = self.query_one("#levers", Levers)
        listing.add_options([Option("", id=str(place)) for place in range(len(LEVERS))])
        listing.highlighted = 0
        listing.focus()
        self._show_levers()
        self._follow(self._tried)

    # Changing

    def _try(self, answers: Answers) -> None:
        self._tried = whatif.tried_plan(self._kept, answers)
        self._show_levers()
        self._follow(self._tried)

    @property
    def _place(self) -> int:
        return self.query_one("#levers", Levers).highlighted or 0

    def action_move(self, steps: int) -> None:
        """Move the lever chosen by one step."""
        lever = LEVERS[self._place]
        answers = lever.moved(self._tried, steps)
        # Past what soil and safety allow an answer may still grow, and the garden does not.
        moved = lever.shown(whatif.tried_plan(self._kept, answers)) != lever.shown(self._tried)
        if moved:
            self._try(answers)
        self._say(self._was(lever) if moved else f"{lever.label} goes no further.")

    def _was(self, lever: Lever) -> str:
        """Say what a lever was kept at, where its own line has no room for it."""
        kept = lever.shown(self._kept)
        if self.size.width >= NARROW or kept == lever.shown(self._tried):
            return ""
        return f"{lever.label}: was {kept}."

    def action_reset(self) -> None:
        """Put the lever chosen back where it was kept."""
        self._try(LEVERS[self._place].reset(self._kept, self._tried))
        self._say("")

    def action_discard(self) -> None:
        """Put everything back."""
        self._try(self._kept.answers)
        self._say("Everything is back as it was kept.")

    def action_keep(self) -> None:
        """Write what was changed into the answers, each as if it had been typed."""
        wanted = whatif.keep(self._kept.answers, self._tried.answers)
        if not wanted:
            self._say("Nothing was changed, so there is nothing to keep.")
            return
        count, refused = offer_all(self._session, wanted)
        self._kept = self._session.plan
        if refused:
            self._say(f"Kept: {count}. Not kept: {' '.join(refused)}")
        else:
            self._say(f"Kept: {count} answer{'' if count == 1 else 's'}.")
            self._tried = self._kept
        self._show_levers()
        self._follow(self._tried)

    def action_leave(self) -> None:
        """Go back; what was tried and not kept goes only after a question."""
        if not whatif.changed(self._kept.answers, self._tried.answers):
            self.dismiss(None)
            return

        def done(yes: bool | None) -> None:
            if yes:
                self.dismiss(None)

        self.app.push_screen(
            Ask("Leave without keeping what you tried?", "Yes, leave", "No, stay"), done
        )

    def action_page(self, by: int) -> None:
        """Scroll the figures."""
        box = self.query_one("#followed_box")
        box.scroll_relative(y=by * max(1, box.size.height - 1), animate=False)

    # Showing

    def _say(self, text: str) -> None:
        self.query_one("#try_said", Words).say(text)

    def _show_levers(self) -> None:
        listing = self.query_one("#levers", Levers)
        for place, lever in enumerate(LEVERS):
            now, kept = lever.shown(self._tried), lever.shown(self._kept)
            known = now != "not known yet"
            shown = f"◂ {now} ▸" if known else now
            was = f"  was {kept}" if now != kept and self.size.width >= NARROW else ""
            prompt = Content.assemble(f"{lever.label:<18} ", (shown, "bold"), was)
            listing.replace_option_prompt_at_index(place, prompt)

    @work(thread=True, exclusive=True)
    def _follow(self, tried: Plan) -> None:
        # A rainfall record makes the figures slow; the keys must not wait for them.
        try:
            with telling_page(self.app, lambda far: self._far(tried, far)):
                rows = whatif.followed(self._kept, tried)
                shown = view_parts(VIEWS[0][1], tried)
        except Stopped:
            return
        except Exception as trouble:
            self.app.call_from_thread(self._fault, tried, words.fault(trouble))
            return
        self.app.call_from_thread(self._show, tried, rows, shown)

    def _far(self, tried: Plan, said: str) -> None:
        """Say how far the figures are, in the place of the lead."""
        if is_there(self) and tried is self._tried:
            self.query_one("#try_lead", Words).say(f"{said}…")

    def _fault(self, tried: Plan, said: str) -> None:
        if is_there(self) and tried is self._tried:
            self.query_one("#followed", Words).update(said)

    def _show(self, tried: Plan, rows: list[Followed], shown: tuple[object, ...]) -> None:
        if not is_there(self) or tried is not self._tried:
            return
        self._rows = rows
        self.query_one("#try_lead", Words).say(LEAD)
        self._show_rows()
        self.query_one("#try_drawing", Picture).show(*shown)  # type: ignore[arg-type]

    def on_resize(self, event: events.Resize) -> None:
        """Fit the table of figures to its room."""
        super().on_resize(event)
        if self._rows:
            self.call_after_refresh(self._show_rows)
            self.call_after_refresh(self._show_levers)

    def _show_rows(self) -> None:
        # Room for the scroll bar is kept whether it is there or not.
        width = self.query_one("#followed_box").content_size.width - 2
        self.query_one("#followed", Words).update(table(self._rows, width))


def table(rows: list[Followed], width: int) -> Content:
    """Return the figures as a table of at most ``width`` columns, what changed in bold.

    Figures that are words, too long for a column, stand under it as sentences.
    """
    words_of = [row for row in rows if max(len(_brief(row.kept)), len(_brief(row.tried))) > VALUE]
    cells = [("", "kept", "tried", "change")]
    cells += [
        (r.label, _brief(r.kept), _brief(r.tried), r.change) for r in rows if r not in words_of
    ]
    kept, tried, change = (max(len(row[at]) for row in cells) for at in (1, 2, 3))
    gap = "  " if width - kept - tried - change - 6 >= LABEL else " "
    room = max(LABEL, width - kept - tried - change - 3 * len(gap))
    label = min(room, max(len(row[0]) for row in cells))
    pieces: list[tuple[str, str]] = []
    for name, was, now, by in cells:
        name = SHORT.get(name, name) if len(name) > label else name
        name = name if len(name) <= label else f"{name[: label - 1]}…"
        line = gap.join(
            (f"{name:<{label}}", f"{was:>{kept}}", f"{now:>{tried}}", f"{by:>{change}}")
        )
        pieces.append((f"{line.rstrip()}\n", "bold $good" if by else ""))
    for row in words_of:
        pieces.append((f"{_sentence(row, width)}\n", "bold $good" if row.change else ""))
    return Content.assemble(*pieces).rstrip()


def _sentence(row: Followed, width: int) -> str:
    """Return a figure that is words as one line, in fewer words where it would not fit."""
    said = f"was {row.kept}, now {row.tried}" if row.change else row.kept
    full = f"{row.label}: {said}"
    if len(full) <= width:
        return full
    kept, tried = (FEWER.get(words, words) for words in (row.kept, row.tried))
    return f"{SHORT.get(row.label, row.label)}: {f'{kept} → {tried}' if row.change else kept}"


def _brief(value: str) -> str:
    """Return a value short enough for a column."""
    return {"not known yet": "–"}.get(value, value)
