"""The kind of answer that lists the pieces of a surface, one short line each."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from interview import reading
from interview.kinds import Measure, Simple, list_lines
from interview.model import Answers, Unanswered
from interview.reading import Amount, Paces, Refused
from interview.units import Quantity, magnitude, quantity

SHAPES: dict[str, tuple[str, ...]] = {
    "rectangle": ("length", "width"),
    "triangle": ("base", "height"),
    "three sides": ("first side", "second side", "third side"),
    "trapezoid": ("one parallel side", "other parallel side", "height between them"),
    "circle": ("width across",),
    "half circle": ("width across",),
    "quarter circle": ("radius",),
    "offsets": ("spacing", "first offset", "second offset"),
}
"""Each shape a piece may have, with the sides it is measured by."""


@dataclass(frozen=True)
class Side:
    """One measured side: its length, and whether it was paced."""

    length: Quantity
    paces: float | None = None
    walker: str = ""


@dataclass(frozen=True)
class PieceLine:
    """One piece of a surface as it was written."""

    shape: str
    sides: tuple[Side, ...]
    cut: bool = False
    """True where the piece is taken away."""
    count: int = 1


_CUT = re.compile(r"^(?:less|minus|cut(?:\s+out)?)\s+", re.IGNORECASE)
_TIMES = re.compile(r"\s+times\s+(\d{1,3})$", re.IGNORECASE)
_PART = re.compile(r"\s+(?:by|x|and)\s+|\s*,\s+|\s*;\s*|(?<=[\d\"'])x(?=\d)", re.IGNORECASE)
_LABEL = re.compile(r"^(?:base|height|sides?|across|radius|every|spacing|:)\s+", re.IGNORECASE)
_PIECE_GOOD = "Write it as rectangle 24 ft by 13 ft, or as less triangle 6 ft by 4 ft."
PIECES_MOST = 60


@dataclass(frozen=True)
class Pieces(Simple[tuple[PieceLine, ...]]):
    """The pieces that make up a surface, added and cut out."""

    side: Measure
    check: Callable[[tuple[PieceLine, ...]], None]
    """Raises ``Refused`` where the pieces cannot be so."""
    name = "list of pieces"
    many = True

    def read(self, text: str, answers: Answers) -> tuple[PieceLine, ...]:
        found = []
        lines = list_lines(text)
        if not lines:
            raise Refused(f"At least one piece is needed. {_PIECE_GOOD}")
        if len(lines) > PIECES_MOST:
            raise Refused(f"That is more than {PIECES_MOST} pieces. Join some of them.")
        for place, line in enumerate(lines, 1):
            try:
                found.append(self.line(line, answers))
                self.check(tuple(found))
            except Refused as refused:
                raise Refused(f"Piece {place}: {refused}") from None
        return tuple(found)

    def line(self, line: str, answers: Answers) -> PieceLine:
        """Return one piece; raises ``Refused``."""
        words = reading.plain(line)
        cut = bool(_CUT.match(words))
        words = _CUT.sub("", words)
        count = 1
        if times := _TIMES.search(words):
            count = int(times[1])
            words = words[: times.start()]
        shape, rest = _shape_of(words)
        texts = [part for part in _PART.split(_tidy(rest)) if part]
        wanted = len(SHAPES[shape])
        if len(texts) != wanted and not (shape == "offsets" and len(texts) > wanted):
            raise Refused(
                f"A {shape} needs {wanted} lengths ({', '.join(SHAPES[shape])}). {_PIECE_GOOD}"
            )
        if count < 1:
            raise Refused("How many times it counts must be 1 or more.")
        zero_ok = shape == "offsets"
        sides = tuple(self._side(_LABEL.sub("", one), answers, zero_ok) for one in texts)
        return PieceLine(shape, sides, cut, count)

    def _side(self, text: str, answers: Answers, zero_ok: bool) -> Side:
        amount = self.side.amount(text, answers.units)
        if isinstance(amount, Paces):
            length = float(amount.count) * answers.pace(amount.walker)
            side = Side(length, float(amount.count), amount.walker)
        else:
            side = Side(_quantity(amount))
        low = magnitude(side.length, "m")
        if low < 0 or (low == 0 and not zero_ok):
            raise Refused("Every side must be longer than zero.")
        if low > LONGEST_SIDE_M:
            raise Refused("A side is longer than 1000 ft (300 m). Check its unit.")
        return side

    def settle(self, text: str, answers: Answers) -> str:
        try:
            self.read(text, answers)
        except Unanswered:
            # A paced side may be written before the pace is known.
            for line in list_lines(text):
                _shape_of(_CUT.sub("", reading.plain(line)))
        return "\n".join(self._settled(line, answers) for line in list_lines(text))

    def _settled(self, line: str, answers: Answers) -> str:
        words = " ".join(line.split())
        shape, rest = _shape_of(_TIMES.sub("", _CUT.sub("", reading.plain(words))))
        parts = [_LABEL.sub("", part) for part in _PART.split(_tidy(rest)) if part]
        if all(_has_unit(part) for part in parts):
            return words
        unit = self.side.unit(answers.units)
        sides = [part if _has_unit(part) else f"{part} {unit}" for part in parts]
        times = _TIMES.search(reading.plain(words))
        tail = f" times {times[1]}" if times else ""
        lead = "less " if _CUT.match(words) else ""
        return f"{lead}{shape} {', '.join(sides)}{tail}"

    def echo(self, value: tuple[PieceLine, ...], answers: Answers) -> str:
        cuts = sum(1 for piece in value if piece.cut)
        adds = len(value) - cuts
        said = f"{adds} piece" + ("" if adds == 1 else "s")
        return said + (f", {cuts} cut out" if cuts else "")

    def hint(self, units: str) -> str:
        side = "24 ft by 13 ft" if units == "us" else "7.2 m by 3.9 m"
        return f"one a line, as rectangle {side}, or less triangle 6 ft by 4 ft"


LONGEST_SIDE_M = 305.0


def _quantity(amount: Amount) -> Quantity:
    return quantity(float(amount.number), amount.unit)


def _has_unit(text: str) -> bool:
    try:
        reading.read_length(text, None)
    except Refused:
        return False
    return True


def _tidy(text: str) -> str:
    """Put commas before the words that name a side, so that each side stands alone."""
    return re.sub(
        r"(?<=[^\s,]),?\s+(?=(?:height|base|every)\b)", ", ", text.strip(), flags=re.IGNORECASE
    )


def _shape_of(words: str) -> tuple[str, str]:
    lower = words.lower().strip()
    if lower.startswith("triangle sides"):
        return "three sides", words.strip()[len("triangle sides") :]
    for shape in sorted(SHAPES, key=len, reverse=True):
        if lower.startswith(shape):
            return shape, words.strip()[len(shape) :]
    names = ", ".join(SHAPES)
    raise Refused(f"Start with a shape: {names}.")
