"""The pieces of one surface: listed, drawn to scale, with the area they make."""

from __future__ import annotations

from collections.abc import Callable
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Container, Vertical
from textual.content import Content
from textual.geometry import Size
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from interview.asking.answers import Answers
from interview.asking.kinds import list_lines
from interview.asking.question import Unanswered
from interview.asking.route import Step
from interview.asking.sitting import Doubt
from interview.drawing.scene import Drawing
from interview.garden.session import Session
from interview.garden.survey import results as survey_plan
from interview.garden.survey import surface_questions as surfacing
from interview.quantities.units import show
from interview.reading import Refused
from interview.screens import keys, piece_text, words
from interview.screens.frame import KeyLine
from interview.screens.lists import Rows
from interview.screens.page import Page
from interview.screens.parts import ROOMY, WIDE, Words
from interview.screens.picture import Picture, whole
from interview.screens.piece_form import PieceForm

AGAIN = " Give the same answer again to keep it."


class PieceList(Rows):
    """The pieces; while one is moved the arrows are for the drawing."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "screen.nudge(-1, 0)", show=False),
        Binding("right", "screen.nudge(1, 0)", show=False),
        Binding("shift+left", "screen.nudge(-5, 0)", show=False),
        Binding("shift+right", "screen.nudge(5, 0)", show=False),
        Binding("shift+up", "screen.nudge(0, 5)", show=False),
        Binding("shift+down", "screen.nudge(0, -5)", show=False),
    ]

    def _nudge(self, up: int) -> bool:
        page = self.screen
        if isinstance(page, PiecesScreen) and page.moving:
            page.action_nudge(0, up)
            return True
        return False

    def action_cursor_up(self) -> None:
        """Go to the piece above, or move it up."""
        if not self._nudge(1):
            super().action_cursor_up()

    def action_cursor_down(self) -> None:
        """Go to the piece below, or move it down."""
        if not self._nudge(-1):
            super().action_cursor_down()

    def action_page_down(self) -> None:
        """Show what is further down in the drawing."""
        self.screen.query_one("#pieces_drawing", Picture).scroll_page_down(animate=False)

    def action_page_up(self) -> None:
        """Show what is further up in the drawing."""
        self.screen.query_one("#pieces_drawing", Picture).scroll_page_up(animate=False)


class PiecesScreen(Page):
    """Makes the same lines that may be typed into the question."""

    KEYS = "pieces"

    def __init__(self, session: Session, step: Step, listed: list[str]) -> None:
        super().__init__()
        self._session = session
        self._step = step
        self._listed = listed
        """The pieces in the field of the question, which may not be kept yet."""
        self.moving = False
        self._parts: list[Drawing] = []

    def parts(self) -> ComposeResult:
        with Container(id="measuring"):
            with Vertical(id="pieces_left"):
                yield PieceList(id="pieces", markup=False)
                yield Words(id="pieces_sum")
                yield Words(id="pieces_heard", classes="refused")
                yield Words(id="pieces_how", classes="quiet")
            yield Picture(id="pieces_drawing", can_focus=False)

    def headings(self) -> tuple[str, ...]:
        return (f"The pieces of {words.item_name(self._session, self._step)}", "The pieces")

    def on_mount(self) -> None:
        if self._listed and self._listed != self._lines:
            self._offer(self._listed)
        self._show(0)
        self._rest()

    # Showing

    @property
    def _view(self) -> Answers:
        return self._step.view(self._session.answers)

    @property
    def _lines(self) -> list[str]:
        return list_lines(self._view.text(surfacing.PIECES) or "")

    @property
    def _place(self) -> int | None:
        return self.query_one("#pieces", OptionList).highlighted

    def _show(self, at: int | None) -> None:
        lines = self._lines
        listing = self.query_one("#pieces", OptionList)
        listing.clear_options()
        name = min(WIDEST_NAME, max((len(piece_text.shown(one)) for one in lines), default=0))
        for number, line in enumerate(lines, 1):
            listing.add_option(Option(_said(number, line, self._view, name)))
        listing.display = bool(lines)
        if lines:
            listing.highlighted = min(at or 0, len(lines) - 1)
        total, drawing = self._drawn()
        self._say("pieces_sum", total)
        self._parts = drawing
        self._share_room(self.app.size)
        moving = "Arrows move piece {} (Shift: farther), Space turns it, V ends. The area stays."
        how = "Enter changes a piece, V moves it, U says what is up, page keys scroll."
        number = (self._place or 0) + 1
        self._say("pieces_how", moving.format(number) if self.moving else how)

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        self._share_room(event.size)

    def _share_room(self, size: Size) -> None:
        """Set a drawing that is wider than its room beside the list under it, in a large window."""
        large = size.width >= WIDE and size.height >= ROOMY
        under = large and any(_shape(one) >= ACROSS for one in self._parts)
        self.query_one("#measuring").set_class(under, "under")
        shown = [whole(one) for one in self._parts] if under else self._parts
        self.query_one("#pieces_drawing", Picture).show(*shown)

    def _drawn(self) -> tuple[str, list[Drawing]]:
        """Return the area in words and the drawing, or what they wait for."""
        if not self._lines:
            return "No piece yet. Add the first: the largest part of the surface.", []
        try:
            area = survey_plan.surface_of(self._view).area
            share = survey_plan.whole_share(survey_plan.way_of(self._view))
        except Unanswered as gap:
            return piece_text.waits(gap), self._bare()
        unit = "m**2" if self._view.metric else "ft**2"
        part = "all of it" if share == 1 else f"{show(area * share, unit, 3)} of it"
        said = f"Plan area so far: {show(area, unit, 3)}; {part} drains here."
        return said, [survey_plan.drawing_of(self._view)]

    def _bare(self) -> list[Drawing]:
        """Return the drawing where only the share of the surface is not known yet."""
        try:
            return [survey_plan.drawing_of(self._view)]
        except (Unanswered, Refused):
            return []

    def _say(self, name: str, text: str) -> None:
        self.query_one(f"#{name}", Words).say(text)

    def offers(self, action: str) -> bool:
        """Leave out what needs a piece where there is none, or one that is moved."""
        if action == "turn":
            return self.moving
        return bool(self._lines) or action in ("leave", "add", "cut_out")

    def word_of(self, key: keys.PageKey) -> str:
        return "end the move" if self.moving and key.action == "move" else key.word

    # Changing

    def on_option_list_option_selected(self) -> None:
        self.action_change()

    def _offer(self, lines: list[str]) -> bool:
        """Keep the pieces, or say why not; what is only unlikely is kept, and told."""
        said = ""
        if not lines:
            self._session.clear(self._step)
        for _ in range(2 if lines else 0):
            try:
                self._session.offer(self._step, "\n".join(lines))
            except Doubt as doubt:
                said = f"Kept, but look again: {str(doubt).removesuffix(AGAIN)}"
                continue
            except Refused as refused:
                self._say("pieces_heard", str(refused))
                return False
            break
        self._say("pieces_heard", said)
        return True

    def _put(self, lines: list[str], at: int | None) -> None:
        if self._offer(lines):
            self._show(at)

    def action_add(self) -> None:
        """Measure one more piece."""
        self._new(False)

    def action_cut_out(self) -> None:
        """Measure a piece that is taken away."""
        self._new(True)

    def _half(self, lines: list[str]) -> Callable[[str], None]:
        """Return what saves the words of a piece half typed, to come back below ``lines``."""

        def keep(half: str) -> None:
            drafts, address = self._session.drafts, self._step.address
            draft = "\n".join([*lines, half]) if half else None
            if drafts.get(address) != draft:
                if draft is None:
                    del drafts[address]
                else:
                    drafts[address] = draft
                self._session.save()

        return keep

    def _given_up(self, line: str | None) -> None:
        """Take the words of a half typed piece away, now that it is given or left."""
        half = self._session.drafts.pop(self._step.address, None)
        if half is not None and not line:
            self._session.save()

    def _new(self, cut: bool) -> None:
        def done(line: str | None) -> None:
            self._given_up(line)
            if line:
                self._put([*self._lines, line], len(self._lines))
            self._rest()

        half = self._half(self._lines)
        self.app.push_screen(PieceForm(self._view, cut=cut, keep_half=half), done)

    def action_change(self) -> None:
        """Change the piece chosen."""
        place = self._place
        if place is None or place >= len(self._lines):
            return

        def done(line: str | None) -> None:
            self._given_up(line)
            if line and place < len(self._lines):
                lines = self._lines
                lines[place] = line
                self._put(lines, place)
            self._rest()

        lines = self._lines
        half = self._half([one for at, one in enumerate(lines) if at != place])
        self.app.push_screen(PieceForm(self._view, lines[place], keep_half=half), done)

    def action_copy(self) -> None:
        """Add a piece like the one chosen, to be changed."""
        lines, place = self._lines, self._place
        if place is not None and place < len(lines):
            like = piece_text.replace_ends(lines[place])
            self._put([*lines[: place + 1], like, *lines[place + 1 :]], place + 1)

    def action_remove(self) -> None:
        """Take the piece chosen away."""
        lines, place = self._lines, self._place
        if place is not None and place < len(lines):
            self._put([line for at, line in enumerate(lines) if at != place], place)
            self._rest()

    def _rest(self) -> None:
        self.show_keys()
        if self._lines:
            self.query_one("#pieces").focus()
        else:
            self.query_one(KeyLine).point_at("add")

    # The drawing

    def action_move(self) -> None:
        """Begin or end moving the piece chosen on the drawing."""
        self.moving = bool(self._lines) and not self.moving
        self._show(self._place)
        self._rest()

    def action_turn(self) -> None:
        """Turn the piece chosen on the drawing."""
        if self.moving and self._place is not None:
            place = self._place
            self._placed(lambda: piece_text.turned(self._lines, place, self._view))

    def action_north(self) -> None:
        """Turn north on the drawing by an eighth; after the whole turn it is left out."""
        if not self._lines:
            return
        step = self._step._replace(question=surfacing.SURFACE_NORTH)
        if not surfacing.SURFACE_NORTH.asks(self._view):
            # North is kept for pieces that stay where they lie.
            self._placed(lambda: piece_text.nudged(self._lines, 0, 0, 0, self._view))
        if surfacing.SURFACE_NORTH.asks(self._view):
            ways = [surfacing.NOT_DRAWN, *surfacing.NORTH_WAYS]
            now = ways.index(self._view[surfacing.SURFACE_NORTH])
            self._session.offer(step, ways[(now + 1) % len(ways)])
            self._show(self._place)

    def _placed(self, made: Callable[[], list[str]]) -> None:
        place = self._place
        try:
            lines = made()
        except (Refused, ValueError) as wrong:
            self._say("pieces_heard", str(wrong))
        except Unanswered as gap:
            self._say("pieces_heard", piece_text.waits(gap))
        else:
            self._put(lines, place)

    def action_nudge(self, right: int, up: int) -> None:
        """Move the piece chosen a step on the drawing."""
        place = self._place
        if self.moving and place is not None:
            self._placed(lambda: piece_text.nudged(self._lines, place, right, up, self._view))

    def action_leave(self) -> None:
        """End the moving, or close."""
        if self.moving:
            self.action_move()
        else:
            self.dismiss(None)


ACROSS = 1.8
"""Times as wide as high from which on a drawing is larger under the list than beside it."""
WIDEST_NAME = 34
"""Columns up to which the areas stand under each other."""
AREA = 10
"""Columns of an area."""


def _shape(drawing: Drawing) -> float:
    left, low, right, high = drawing.bounds
    return (right - left) / (high - low) if high > low else 0.0


def _said(number: int, line: str, view: Answers, name: int) -> Content:
    """Return one piece for the list: its area in a column of its own, its paces under it."""
    paced = ""
    try:
        area = piece_text.area_words(line, view)
        area, _, paced = area.partition(" (")
        area = f"{'-' if piece_text.read_line(line, view).cut else ''}{area}".rjust(AREA)
    except Unanswered:
        area = "waits for the pace"
    except Refused:
        area = "cannot be read"
    under = f"\n  ({paced}" if paced else ""
    shown = piece_text.shown(line).ljust(name)
    return Content.assemble(f"{number} ", (shown, "bold"), f"  {area}{under}")
