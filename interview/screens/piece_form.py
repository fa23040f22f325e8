"""The form for one piece of a surface: its shape, its sides, added or cut out, how many."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from textual.app import ComposeResult
from textual.containers import Container, Vertical
from textual.widgets import Input, OptionList
from textual.widgets.option_list import Option

from interview.asking.answers import Answers
from interview.asking.question import Unanswered
from interview.drawing.scene import Drawing
from interview.garden.survey.drawing import surface_drawing
from interview.garden.survey.piece_lines import SHAPES
from interview.reading import Refused
from interview.screens import keys
from interview.screens.lists import Rows
from interview.screens.parts import NARROW, Line, Words
from interview.screens.picture import Picture, painted
from interview.screens.piece_text import (
    SHOWN,
    SIDES,
    PieceText,
    area_words,
    count_fault,
    piece,
    side_fault,
    taken_apart,
    waits,
)
from interview.screens.resting import Resting

MOST_SIDES = max(len(sides) for sides in SIDES.values())
LONGEST = 120
HINT = "tape or paces"


class PieceForm(Resting):
    """Closes with the line of the piece, or with nothing."""

    KEYS = "piece"

    def __init__(
        self,
        view: Answers,
        line: str = "",
        cut: bool = False,
        keep_half: Callable[[str], object] = str,
    ) -> None:
        """Begin with ``line``; ``keep_half`` saves the words typed so far, or that none are."""
        super().__init__()
        self._view = view
        self._keep_half = keep_half
        self._line = line
        self._was = taken_apart(line) if line else PieceText(cut=cut)
        self._shape = self._was.shape
        self._cut = self._was.cut

    def parts(self) -> ComposeResult:
        with Container(id="piece_form"):
            options = [Option(SHOWN.get(one, one), id=one) for one in SHAPES]
            yield Rows(*options, id="shapes", markup=False)
            with Vertical(id="sides"):
                for place in range(MOST_SIDES):
                    yield Words("", id=f"side_name_{place}", classes="side_name")
                    text = self._was.sides[place] if place < len(self._was.sides) else ""
                    yield Line(text, LONGEST, id=f"side_{place}", compact=True, placeholder=HINT)
                yield Words("how many alike", classes="side_name")
                yield Line(self._was.count, 3, id="alike", compact=True, placeholder="1")
                yield Words(id="piece_said")
                yield Words(id="piece_heard", classes="refused")
            yield Picture(id="piece_drawing", can_focus=False)

    def headings(self) -> tuple[str, ...]:
        return ("Change a piece" if self._line else "A new piece",)

    def word_of(self, key: keys.PageKey) -> str:
        if key.action == "cut":
            return "add it" if self._cut else "cut it out"
        return key.word

    def on_mount(self) -> None:
        shapes = self.query_one("#shapes", OptionList)
        shapes.highlighted = list(SHAPES).index(self._shape)
        self._fit()
        if self._line:
            self._side(0).focus()
        else:
            shapes.focus()

    # The fields

    def _side(self, place: int) -> Line:
        return self.query_one(f"#side_{place}", Line)

    def _fit(self) -> None:
        """Show a field for each side of the shape."""
        names = [self._view.told(name) for name in SIDES[self._shape]]
        for place in range(MOST_SIDES):
            shown = place < len(names)
            self._side(place).display = shown
            self.query_one(f"#side_name_{place}", Words).say(names[place] if shown else "")
        self.show_keys()
        self._echo()

    @property
    def _now(self) -> PieceText:
        sides = tuple(self._side(at).value.strip() for at in range(len(SIDES[self._shape])))
        count = self.query_one("#alike", Line).value.strip()
        return replace(self._was, shape=self._shape, sides=sides, cut=self._cut, count=count)

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        if event.option.id and event.option.id != self._shape:
            self._shape = event.option.id
            self._fit()

    def on_option_list_option_selected(self) -> None:
        self._side(0).focus()

    def on_input_changed(self) -> None:
        self.query_one("#piece_heard", Words).say("")
        self._echo()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        """Go to the next side; on the last one take the piece."""
        self._after(event.input.id or "")

    def action_next_side(self) -> None:
        """Do what Enter does where the focus is."""
        self._after(self.focused.id or "" if self.focused else "")

    def _after(self, name: str) -> None:
        last = len(SIDES[self._shape]) - 1
        if name == "alike" or name == f"side_{last}":
            self.action_done()
        elif name.startswith("side_"):
            self._side(int(name.removeprefix("side_")) + 1).focus()
        else:
            self._side(0).focus()

    def save_half_typed(self) -> None:
        now = self._now
        begun = any(now.sides) and now.line != self._line
        self._keep_half(now.line.rstrip(", ") if begun else "")

    def leave(self, place: bool = True) -> None:
        """Have the words typed so far saved too before the program ends."""
        self.save_half_typed()

    # What comes of it

    def _echo(self) -> None:
        """Say and draw the piece as it stands, as far as it can be read."""
        lead = "CUT OUT" if self._cut else "ADDED"
        said, drawing = self._judge()
        self.query_one("#piece_said", Words).say(f"{lead}: {said}" if said else lead)
        # Under the fields there is room for the picture alone.
        beside = self.size.width >= NARROW
        shown = drawing if beside else [painted(one) for one in drawing]
        self.query_one("#piece_drawing", Picture).show(*shown)

    def _judge(self) -> tuple[str, list[Drawing]]:
        now = replace(self._now, ends="")
        if not all(now.sides):
            return "", []
        try:
            said = area_words(now.line, self._view)
            drawn = piece(replace(now, cut=False).line, self._view)
            return said, [surface_drawing([drawn], self._view.metric, "THIS PIECE")]
        except Unanswered as gap:
            return waits(gap), []
        except (Refused, ValueError):
            return "", []

    def action_cut(self) -> None:
        """Change between a piece that is added and one that is cut out."""
        self._cut = not self._cut
        self._fit()

    def action_done(self) -> None:
        """Close with the line, or say why it cannot be read."""
        now = self._now
        empty = next((at for at, text in enumerate(now.sides) if not text), None)
        if empty is not None:
            self._refuse(f"Give the {SIDES[self._shape][empty]}.", empty)
            return
        if why := count_fault(now.count):
            self._refuse(why, None)
            return
        if wrong := side_fault(now, self._view):
            self._refuse(wrong[1], wrong[0])
            return
        try:
            piece(now.line, self._view)
        except Unanswered:
            pass
        except (Refused, ValueError) as trouble:
            # The sides read well one by one, but not together: the person stays where they are.
            self._refuse(str(trouble), self._place())
            return
        self.dismiss(now.line)

    def _place(self) -> int:
        """Return the side that has the focus, or the last one."""
        last = len(SIDES[self._shape]) - 1
        return next((at for at in range(last) if self._side(at).has_focus), last)

    def _refuse(self, why: str, place: int | None) -> None:
        """Say why the piece is not taken, with the focus on a side, or on how many alike."""
        self.query_one("#piece_heard", Words).say(self._view.told(why))
        box = self.query_one("#alike", Line) if place is None else self._side(place)
        box.focus()
        box.scroll_visible(animate=False)
