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
from interview.drawing.scene import Drawing
from interview.garden import scenarios as whatif
from interview.garden.plan import Plan
from interview.garden.scenarios import LEVERS, Followed, Lever, Worth
from interview.garden.session import Session
from interview.garden.size import shape_questions as shaping
from interview.screens import words
from interview.screens.garden import VIEWS, view_parts
from interview.screens.lists import Rows
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.offers import offer_all
from interview.screens.page import Page
from interview.screens.parts import NARROW, Ask, Words, is_there
from interview.screens.picture import Part, Picture, painted

LEAD = "Up and down choose, left and right change. Nothing is kept until you press K."
LABEL, VALUE = 16, 8
"""Least columns of a figure's name, most columns of its value."""
LEAST_CHANGE = len("+0.5 yd³ ▲ better")
"""Columns kept for a change, so that little moves while a size is tried."""
TURNED = {Worth.BETTER: "▲ better", Worth.WORSE: "▼ worse"}
"""How better and worse are told: by a mark and a word, in a color too."""
INKS: dict[Worth | None, str] = {Worth.BETTER: "$good bold", Worth.WORSE: "$look bold"}
SHORT = {
    "Depth of the pond": "Pond depth",
    "Time to empty, at the corrected rate": "Time to empty",
    "Hours of water on the floor in the storm held": "Wet floor hours",
    "Caught of a storm half as large again": "1½ storms caught",
    "Caught of a storm twice as large": "2 storms caught",
    "Berm above the lawn": "Berm height",
    "Share of the record's runoff held": "Held of record",
    "Floor length to peg": "Floor length",
    "Floor width to peg": "Floor width",
    "All the soil to dig, as it lies": "Soil to dig",
    "Length over all, toe to toe along the slope": "Length over all",
    "Width over all, from the toe downhill to the cut uphill": "Width over all",
    "Berm, from crest to outer foot": "Crest to toe",
    "Mulch to order loose": "Mulch, loose",
    "Cost of what has a price": "Cost",
    "Wheelbarrow loads": "Barrow loads",
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
                yield Picture(id="try_small", can_focus=False)
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

    def action_three(self) -> None:
        """Show lean, usual and generous beside each other, of what is tried; try the one chosen."""
        from interview.screens.three_page import ThreeSizesScreen

        answers = self._tried.answers

        def done(name: str | None) -> None:
            if name and name != answers[shaping.HOW_LARGE]:
                lever = next(one for one in LEVERS if one.question is shaping.HOW_LARGE)
                self._try(lever.taking(self._tried, name))
                self._say(f"Trying the {name} garden.")

        self.app.push_screen(ThreeSizesScreen(self._tried), done)

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

    @work(thread=True, exclusive=True, description="")
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

    def _show(self, tried: Plan, rows: list[Followed], shown: tuple[Part, ...]) -> None:
        if not is_there(self) or tried is not self._tried:
            return
        self._rows = rows
        self.query_one("#try_lead", Words).say(LEAD)
        self._show_rows()
        self.query_one("#try_drawing", Picture).show(*shown)
        small = (painted(one) if isinstance(one, Drawing) else one for one in shown)
        self.query_one("#try_small", Picture).show(*small)

    def on_resize(self, event: events.Resize) -> None:
        """Fit the table of figures to its room."""
        super().on_resize(event)
        if self._rows:
            self.call_after_refresh(self._show_rows)
            self.call_after_refresh(self._show_levers)

    def _show_rows(self) -> None:
        # Room for the scroll bar is kept whether it is there or not.
        width = self.query_one("#followed_box").content_size.width - 2
        rows = self._rows
        if self.has_class("low"):  # there are few lines: what changed comes first
            rows = sorted(rows, key=lambda row: not row.change)
        self.query_one("#followed", Words).update(table(rows, width))


def table(rows: list[Followed], width: int) -> Content:
    """Return the figures as a table of at most ``width`` columns, what changed in bold.

    What was kept is left out where there is no room for it. Figures that are words, too long for a
    column, stand under it as sentences.
    """
    words_of = [row for row in rows if max(len(_brief(row.kept)), len(_brief(row.tried))) > VALUE]
    numbers = [row for row in rows if row not in words_of]
    lines = [("", "kept", "tried", "change")]
    lines += [(row.label, _brief(row.kept), _brief(row.tried), _change(row)) for row in numbers]
    kept, tried, change = (max(len(line[at]) for line in lines) for at in (1, 2, 3))
    room = width - tried - max(change, LEAST_CHANGE) - 3
    whole = room - kept - 2 >= LABEL
    label = max(LABEL, room - kept - 2 if whole else room)
    label = min(label, max(len(line[0]) for line in lines))
    inks = ["$muted", *(INKS.get(row.turn, "bold" if row.change else "") for row in numbers)]
    pieces: list[tuple[str, str]] = []
    for (name, was, now, by), ink in zip(lines, inks, strict=True):
        name = SHORT.get(name, name) if len(name) > label else name
        name = name if len(name) <= label else f"{name[: label - 1]}…"
        cells = [f"{name:<{label}}", *([f"{was:>{kept}}"] if whole else []), f"{now:>{tried}}", by]
        pieces.append((f"{'  '.join(cells).rstrip()}\n", ink))
    for row in words_of:
        pieces.append((f"{_sentence(row, width)}\n", "bold" if row.change else ""))
    return Content.assemble(*pieces).rstrip()


def _change(row: Followed) -> str:
    """Return what changed, and whether that is better or worse."""
    return f"{row.change} {TURNED[row.turn]}" if row.turn is not None else row.change


def _sentence(row: Followed, width: int) -> str:
    """Return a figure that is words as one line, in fewer words where it would not fit."""
    by = f" ({row.change})" if row.change[:1] in ("+", "-") else ""
    said = f"was {row.kept}, now {row.tried}{by}" if row.change else row.kept
    full = f"{row.label}: {said}"
    if len(full) <= width:
        return full
    kept, tried = (FEWER.get(words, words) for words in (row.kept, row.tried))
    label = SHORT.get(row.label, row.label)
    brief = f"{label}: {f'{kept} → {tried}{by}' if row.change else kept}"
    return brief if len(brief) <= width or not by else f"{label}: {tried}{by}"


def _brief(value: str) -> str:
    """Return a value short enough for a column."""
    return {"not known yet": "–"}.get(value, value)
