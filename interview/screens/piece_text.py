"""One line of the pieces of a surface taken apart for a form, put together again, and said."""

from __future__ import annotations

import re
from dataclasses import replace

from interview.asking.answers import Answers
from interview.asking.question import Unanswered
from interview.garden.survey import piece_lines as pl
from interview.garden.survey import surface_questions as surfacing
from interview.garden.survey.piece_layout import Spot, lay_pieces
from interview.garden.survey.piece_lines import SHAPES, PieceLine, Pieces
from interview.garden.survey.piece_words import take_ends
from interview.garden.survey.pieces import Piece
from interview.garden.survey.written_pieces import drawn_piece, piece_of
from interview.quantities.records import record
from interview.quantities.shown import length_words
from interview.quantities.units import magnitude, quantity, show
from interview.reading import Refused

SIDES: dict[str, tuple[str, ...]] = {
    **SHAPES,
    "offsets": ("spacing: how far apart the offsets are", "offsets, with commas between"),
    "round": ("sides with turns: 20 ft right 8 ft …",),
}
"""What the form asks for each shape."""
SHOWN = {
    "three sides": "triangle, three sides",
    "trapezoid sides": "trapezoid, four sides",
    "circle part": "part of a circle",
    "offsets": "curved edge, by offsets",
    "round": "any outline, walked round",
}
"""The shapes whose name in the list is not the word that is written."""
_LESS = r"(?i)^(?:less|minus|cut(?:\s+out)?)\s+"


@record
class PieceText:
    """The words of one piece."""

    shape: str = "rectangle"
    sides: tuple[str, ...] = ()
    cut: bool = False
    count: str = ""
    ends: str = ""
    """Where it is drawn, as it was written."""

    @property
    def line(self) -> str:
        """The line that stands in the answer."""
        lead = "less " if self.cut else ""
        times = f" times {self.count}" if self.count not in ("", "1") else ""
        return f"{lead}{self.shape} {', '.join(self.sides)}{times}{self.ends}"


def taken_apart(line: str) -> PieceText:
    """Return the words of a line that reads well; raises ``Refused``."""
    words, ends = take_ends(" ".join(line.split()))
    words = re.sub(_LESS, "", words)
    lower = words.casefold()
    named = [one for one in (*SHAPES, "triangle sides") if lower.startswith(one)]
    shape = max(named, key=len, default="rectangle")
    rest = words[len(shape) :].strip()
    shape = "three sides" if shape == "triangle sides" else shape
    sides = [rest] if shape == "round" else _split(rest)
    if shape == "offsets":
        sides = [sides[0], ", ".join(sides[1:])] if sides else []
    place = f" at {', '.join(ends.at)}" if ends.at else ""
    turned = f" turned {ends.turned:g} deg" if ends.turned else ""
    count = "" if ends.count == 1 else str(ends.count)
    return PieceText(
        shape, tuple(sides), bool(re.match(_LESS, line.strip())), count, place + turned
    )


def shown(line: str) -> str:
    """Return a line without the place where it is drawn, for the list."""
    try:
        words, ends = take_ends(line)
    except Refused:
        return line
    return f"{words} times {ends.count}" if ends.count > 1 else words


def replace_ends(line: str) -> str:
    """Return a line without the place where it is drawn, for a copy of it."""
    try:
        return replace(taken_apart(line), ends="").line
    except Refused:
        return line


def _split(rest: str) -> list[str]:
    """Return the texts of the sides without their names."""
    # The form and the list must agree on where one side ends.
    parts = [part for part in re.split(pl.PART, pl.tidy(rest)) if part]
    return [re.sub(pl.LABEL, "", part) for part in parts]


def read_line(line: str, view: Answers) -> PieceLine:
    """Return what a line says; raises ``Refused`` or ``Unanswered``."""
    kind = surfacing.PIECES.kind
    assert isinstance(kind, Pieces)
    # A cut-out is never refused for standing alone here.
    cut = re.match(_LESS, line.strip())
    found = kind.line(re.sub(_LESS, "", line.strip()), view)
    return replace(found, cut=bool(cut))


def piece(line: str, view: Answers) -> Piece:
    """Return the piece of one line; raises ``Refused`` or ``Unanswered``."""
    try:
        found = piece_of(read_line(line, view))
        _ = found.area
    except ValueError as wrong:
        raise Refused(str(wrong)) from None
    return found


def count_fault(count: str) -> str:
    """Return why ``count`` is no number of pieces alike, or nothing."""
    if count == "" or (count.isascii() and count.isdigit() and int(count) > 0):
        return ""
    return "How many alike: write a whole number, 1 or more."


def side_fault(text: PieceText, view: Answers) -> tuple[int, str] | None:
    """Return the place in the form of the first side that cannot be read, and why, or nothing."""
    single = text.shape not in ("offsets", "round")
    for place, words in enumerate(text.sides):
        parts = [part for part in re.split(pl.PART, pl.tidy(words)) if part]
        if len(parts) != 1 and (single or (text.shape == "offsets" and place == 0)):
            return place, f"The {SIDES[text.shape][place]}: write one measure here, such as 12 ft."
    try:
        read_line(replace(text, ends="", count="").line, view)
    except pl.SideRefused as refused:
        names = SIDES[text.shape]
        if refused.name in names:
            return names.index(refused.name), str(refused)
        return (0 if refused.name == "spacing" else len(names) - 1), str(refused)
    except Refused as refused:
        # What is left of a side by itself is the angle of a part of a circle.
        return (1, f"The angle: {refused}") if text.shape == "circle part" else None
    except Unanswered:
        return None
    return None


def area_words(line: str, view: Answers) -> str:
    """Say the area of one piece and its paced lengths; raises ``Refused`` or ``Unanswered``."""
    found = piece(line, view)
    unit = "m**2" if view.metric else "ft**2"
    said = show(quantity(abs(magnitude(found.area, unit)), unit), unit, 3)
    paced = paced_words(line, view)
    return f"{said} ({paced})" if paced else said


def paced_words(line: str, view: Answers) -> str:
    """Say how long the paced sides are, such as ``16 paces = 41 ft 4 in``."""
    sides = [side for side in read_line(line, view).sides if side.paces is not None]
    return ", ".join(
        f"{one.paces:g} paces = {length_words(one.length, view.metric)}" for one in sides
    )


def spots(lines: list[str], view: Answers) -> tuple[Spot, ...]:
    """Return where each piece is drawn; raises ``Refused``, ``Unanswered`` or ValueError."""
    unit = "m" if view.metric else "ft"
    return lay_pieces([drawn_piece(read_line(line, view)) for line in lines], unit)


def nudged(lines: list[str], place: int, right: int, up: int, view: Answers) -> list[str]:
    """Return the lines with every piece put where it is drawn, and one of them a step away.

    Raises ``Refused``, ``Unanswered`` or ValueError where the pieces cannot be drawn.
    """
    unit, step = ("m", 0.25) if view.metric else ("ft", 1.0)
    laid, found = spots(lines, view), []
    fixed = any(spot.fixed for spot in laid)
    x, y = (0.0, 0.0) if fixed else (min(spot.box[axis] for spot in laid) for axis in (0, 1))
    for at, (line, spot) in enumerate(zip(lines, laid, strict=True)):
        left, bottom = spot.box[0] - x, spot.box[1] - y
        if at == place:
            left, bottom = left + step * right, bottom + step * up
        where = quantity(left, unit), quantity(bottom, unit)
        found.append(pl.placed_line(line, *where, spot.turned, view.metric))
    return found


def turned(lines: list[str], place: int, view: Answers) -> list[str]:
    """Return the lines with one piece turned left by 15 degrees on the drawing."""
    lines = nudged(lines, place, 0, 0, view)
    spot = spots(lines, view)[place]
    unit = "m" if view.metric else "ft"
    where = quantity(spot.box[0], unit), quantity(spot.box[1], unit)
    lines[place] = pl.placed_line(lines[place], *where, spot.turned + 15, view.metric)
    return lines


def waits(gap: Unanswered) -> str:
    """Say what a paced length waits for."""
    return f"It waits for an answer: {gap.question.label}. {gap.why or gap.question.find_out}"
