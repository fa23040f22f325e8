"""Lean, usual and generous beside each other: each drawn, measured and priced; one is chosen."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from rich.segment import Segment
from rich.style import Style
from textual import work
from textual.app import ComposeResult
from textual.strip import Strip

from interview.asking.question import Unanswered
from interview.drawing.paint import BLANK, Cell, Row
from interview.drawing.scene import Drawing, Ink
from interview.drawing.words import in_cells
from interview.garden import pictures
from interview.garden.plan import Plan
from interview.garden.scenarios import Worth
from interview.garden.three_sizes import NAMES, sized, three_plans, yours
from interview.screens import words
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.page import Page
from interview.screens.palette import CURSOR, MARKS, Palette
from interview.screens.parts import Words, is_there
from interview.screens.picture import TINY, Picture, rows_of, strip_of, wordless
from interview.screens.try_out import TURNED
from interview.sheet.size import SizeRow, size_rows

LEAD = "← → choose one, Enter tries it."
_COMPARED = "Each is compared with the one you have."
BESIDE = 72
"""Columns from which on the three stand side by side."""
_LABEL = 25
_STACKED_PICTURE = (40, 9)
_LEAST_PICTURE = 5
"""Rows under which no picture is drawn."""
TURNS = {Worth.BETTER: Ink.GOOD, Worth.WORSE: Ink.LOOK}
"""The inks of better and worse, which are told by a mark and a word too."""
_OWN = "None of the three is yours: the floor you chose goes before."


class Three(NamedTuple):
    """What the page shows of the three."""

    yours: str
    """The name of the one that the garden is; nothing where the floor is a person's own."""
    rows: tuple[SizeRow, ...]
    drawings: tuple[Drawing | None, ...]


def three(plan: Plan) -> Three:
    """Return the three sizes of a plan with their pictures; raises ``Unanswered``."""
    plans = three_plans(plan)
    found = [sized(name, one) for name, one in zip(NAMES, plans, strict=True)]
    rows = tuple(size_rows(plan, found))
    return Three(yours(plan), rows, tuple(map(_drawn, plans)))


def _drawn(plan: Plan) -> Drawing | None:
    try:
        return pictures.planted_picture(plan).bare
    except (Unanswered, ValueError):
        return None


class Columns:
    """Makes the rows of the three for any room, with one of them marked."""

    def __init__(self, look: Three, at: int) -> None:
        self._look, self._at = look, at
        self.places = [0, 0, 0]
        """The row at which each begins."""

    def __call__(self, columns: int, rows: int, palette: Palette | None) -> list[Strip]:
        """Return the rows for a window."""
        beside = columns >= BESIDE
        made = self._beside(columns, rows, palette) if beside else self._stacked(columns, palette)
        return [strip_of(row, palette) if row else _empty(palette) for row in made]

    def _head(self, place: int) -> Row:
        name, here = NAMES[place], place == self._at
        lead = _text(CURSOR if here else " ", Ink.DUE, bold=True)
        title = _text(f" {name} ", bold=True)
        if here:
            title = tuple(Cell(one.char, None, Ink.DUE, True) for one in title)
        yours = name == self._look.yours
        return (*lead, *title, *(_text(f" {MARKS['good']} yours", Ink.GOOD) if yours else ()))

    def _beside(self, columns: int, rows: int, palette: Palette | None) -> Iterator[Row]:
        wide = (columns - _LABEL) // 3
        facts = [one for one in self._look.rows if one.chief or rows > len(self._look.rows) + 12]
        high = rows - len(facts) - 2
        yield _row([(), *map(self._head, range(3))], wide)
        shown = [_picture(one, share, wide - 2, high, palette) for one, share in self._sized()]
        for place in range(max(map(len, shown), default=0)):
            yield _row([(), *(one[place] if place < len(one) else () for one in shown)], wide)
        for one in facts:
            told = [_value(one, place, wide - 1) for place in range(3)]
            yield _row([_text(one.label, Ink.MUTED), *told], wide)

    def _stacked(self, columns: int, palette: Palette | None) -> Iterator[Row]:
        row = 0
        wide, high = min(columns - 4, _STACKED_PICTURE[0]), _STACKED_PICTURE[1]
        for place, (drawing, share) in enumerate(self._sized()):
            self.places[place] = row
            rows = [self._head(place)]
            drawn = _picture(drawing, share, wide, high, palette)
            rows += [(BLANK, BLANK, *one) for one in drawn]
            rows += [
                _row([_text(one.label, Ink.MUTED), _value(one, place, columns)], columns)
                for one in self._look.rows
                if one.chief
            ]
            yield from rows
            yield ()
            row += len(rows) + 1

    def _sized(self) -> list[tuple[Drawing | None, float]]:
        """The pictures, each with its width as a part of the widest: all are to one scale."""
        found = [one.bounds if one is not None else (0.0, 0.0, 1.0, 1.0) for one in self.drawings]
        widths = [right - left for left, _, right, _ in found]
        return [(one, wide / max(widths)) for one, wide in zip(self.drawings, widths, strict=True)]

    @property
    def drawings(self) -> tuple[Drawing | None, ...]:
        """The pictures."""
        return self._look.drawings


def _picture(
    drawing: Drawing | None, share: float, columns: int, rows: int, palette: Palette | None
) -> Sequence[Row]:
    if drawing is None or rows < _LEAST_PICTURE:
        return ()
    one = wordless(drawing) if columns < TINY[0] or rows < TINY[1] else drawing
    high = max(_LEAST_PICTURE, round(rows * share))
    # Without the words under a picture of characters, for which a column is too narrow.
    return rows_of(one, round(columns * share), high, palette, told=False)[:high]


def _value(row: SizeRow, place: int, columns: int) -> Row:
    said, turn = row.values[place], row.turns[place]
    if turn is None:
        return _text(said, bold=True)
    ink, word = TURNS[turn], TURNED[turn]
    word = word if len(said) + len(word) + 1 <= columns else word[:1]
    return (*_text(said, bold=True), BLANK, *_text(word, ink))


def _row(parts: Sequence[Row], wide: int) -> Row:
    """Return a label and its values, each in its column."""
    cells: list[Cell] = []
    for place, part in enumerate(parts):
        starts = 0 if place == 0 else _LABEL + (place - 1) * wide
        cells += [BLANK] * (starts - len(cells))
        cells += part
    return tuple(cells)


def _text(said: str, ink: Ink = Ink.TEXT, bold: bool = False) -> Row:
    return tuple(Cell(char, ink, None, bold) for char in in_cells(said))


def _empty(palette: Palette | None) -> Strip:
    return Strip([Segment(" ", Style() if palette is None else Style(bgcolor=palette.ground))])


class ThreeSizesScreen(Page):
    """Closes with the name of the size that is to be tried, or with nothing."""

    KEYS = "three"
    HEADING = "Lean, usual, generous"

    def __init__(self, plan: Plan) -> None:
        """Show the three sizes of ``plan``."""
        super().__init__()
        self._plan = plan
        self._look: Three | None = None
        self._at = 1

    def parts(self) -> ComposeResult:
        yield Words(LEAD, id="three_lead", classes="quiet")
        yield Picture(id="three")

    def on_mount(self) -> None:
        self.query_one("#three").focus()
        self.query_one("#three", Picture).show("Working it out…")
        self._work_out()

    @work(thread=True, exclusive=True)
    def _work_out(self) -> None:
        # With a rainfall record this takes seconds; the keys must not wait for it.
        said = ""
        look = None
        try:
            with telling_page(self.app, lambda far: None):
                look = three(self._plan)
        except Stopped:
            return
        except Unanswered as gap:
            said = f"This waits for an answer: {gap.question.told(self._plan.answers).label}."
        except Exception as trouble:
            said = words.fault(trouble)
        self.app.call_from_thread(self._worked_out, look, said)

    def _worked_out(self, look: Three | None, said: str) -> None:
        if not is_there(self):
            return
        if look is None:
            self.query_one("#three", Picture).show(said)
            return
        self._look = look
        self._at = NAMES.index(look.yours) if look.yours in NAMES else 1
        self.query_one("#three_lead", Words).update(f"{LEAD} {_COMPARED if look.yours else _OWN}")
        self._draw()

    def _draw(self) -> None:
        if self._look is None:
            return
        made = Columns(self._look, self._at)
        picture = self.query_one("#three", Picture)
        picture.show(made)
        if picture.size.width < BESIDE:
            self.call_after_refresh(picture.scroll_to, y=made.places[self._at], animate=False)

    def action_turn(self, by: int) -> None:
        """Choose the one before, or after."""
        self._at = (self._at + by) % len(NAMES)
        self._draw()

    def action_take(self) -> None:
        """Try the one that is chosen."""
        if self._look is not None:
            self.dismiss(NAMES[self._at])
