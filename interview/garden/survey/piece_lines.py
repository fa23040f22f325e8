"""The kind of answer that lists the pieces of a surface, one short line each."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from interview import reading
from interview.asking.answers import Answers
from interview.asking.kinds import Simple, list_lines
from interview.asking.measures import Measure
from interview.asking.question import Taken, Unanswered
from interview.garden.survey.piece_words import (
    ROUND_GOOD,
    Ends,
    read_angle,
    take_ends,
    turn_words,
    walked,
)
from interview.quantities.records import record
from interview.quantities.shown import in_metric
from interview.quantities.units import US, Quantity, magnitude, plain_number, quantity
from interview.reading import Paces, Refused

SHAPES: dict[str, tuple[str, ...]] = {
    "rectangle": ("length", "width"),
    "triangle": ("base", "height"),
    "three sides": ("first side", "second side", "third side"),
    "trapezoid sides": ("long parallel side", "short parallel side", "one slant", "other slant"),
    "trapezoid": ("one parallel side", "other parallel side", "height between them"),
    "circle part": ("width across", "angle at the middle"),
    "circle": ("width across",),
    "half circle": ("width across",),
    "quarter circle": ("radius",),
    "offsets": ("spacing", "first offset", "second offset"),
    "round": ("first side", "turn", "next side", "turn", "last side"),
}
"""Each shape a piece may have, with the sides it is measured by."""


class Side(NamedTuple):
    """One measured side: its length, and whether it was paced."""

    length: Quantity
    paces: float | None = None
    walker: str = ""


@record
class PieceLine:
    """One piece of a surface as it was written."""

    shape: str
    sides: tuple[Side, ...]
    cut: bool = False
    """True where the piece is taken away."""
    count: int = 1
    turns: tuple[float, ...] = ()
    """Degrees of turn between the sides walked round, left more than zero."""
    angle: float = 360.0
    """Degrees of a part of a circle."""
    at: tuple[Quantity, Quantity] | None = None
    """Where its lower left is drawn; the area never depends on it."""
    turned: float = 0.0
    """Degrees it is turned left on the drawing."""


class SideRefused(Refused):
    """One side of a piece that was not taken; ``name`` is that of the side."""

    def __init__(self, name: str, said: str) -> None:
        self.name = name
        lead = name.capitalize() if name[-1].isdigit() else f"The {name}"
        super().__init__(f"{lead}: {said}")


def side_name(shape: str, place: int) -> str:
    """Return what the measure at ``place``, from 0, of a shape is called."""
    if shape == "round":
        return f"side {place + 1}"
    if shape == "offsets":
        return f"offset {place}" if place else "spacing"
    return SHAPES[shape][place]


_CUT = r"(?i)^(?:less|minus|cut(?:\s+out)?)\s+"
PART = r"(?i)\s+(?:by|x|and)\s+|\s*,\s+|\s*;\s*|(?<=[\d\"'])x(?=\d)"
LABEL = r"(?i)^(?:base|height|sides?|across|radius|every|spacing|:)\s+"
_PIECE_GOOD = "Write it as rectangle 24 ft by 13 ft, or as less triangle 6 ft by 4 ft."
PIECES_MOST = 60


@record(eq=False)
class Pieces(Simple[tuple[PieceLine, ...]]):
    """The pieces that make up a surface, added and cut out."""

    side: Measure
    check: Callable[[tuple[PieceLine, ...], Answers], None]
    """Raises ``Refused`` where the pieces cannot be so."""
    name = "list of pieces"
    many = True

    def take(self, text: str, answers: Answers) -> Taken[tuple[PieceLine, ...]]:
        lines = list_lines(text)
        if not lines:
            raise Refused(f"At least one piece is needed. {_PIECE_GOOD}")
        if len(lines) > PIECES_MOST:
            raise Refused(f"That is more than {PIECES_MOST} pieces. Join some of them.")
        kept: list[str] = []
        found: list[PieceLine] = []
        waits: Unanswered | None = None
        for place, line in enumerate(lines, 1):
            try:
                taken = self._line(line, answers)
                kept.append(taken.kept)
                if isinstance(taken.found, Unanswered):
                    waits = waits or taken.found
                elif waits is None:
                    found.append(taken.found)
                    self.check(tuple(found), answers)
            except Unanswered as gap:
                waits = gap
            except Refused as refused:
                raise Refused(f"Piece {place}: {refused}") from None
        return Taken("\n".join(kept), waits or tuple(found))

    def line(self, line: str, answers: Answers) -> PieceLine:
        """Return one piece; raises ``Refused`` and ``Unanswered``."""
        return self._line(line, answers).value

    def _line(self, line: str, answers: Answers) -> Taken[PieceLine]:
        cut, shape, rest, ends = _taken_apart(line)
        texts, turns, angle = _measures(shape, rest)
        wanted = len(SHAPES[shape])
        many = shape in ("offsets", "round")
        if len(texts) < (3 if many else wanted) or (not many and len(texts) > wanted):
            raise Refused(_too_few(shape, wanted))
        if shape == "circle part":
            texts = texts[:1]
        texts = [re.sub(LABEL, "", one) for one in texts]
        zero_ok = shape == "offsets"
        sides = [
            self._side(one, side_name(shape, place), answers, zero_ok)
            for place, one in enumerate(texts)
        ]
        where = [self._signed(one, answers.units) for one in ends.at or ()]
        kept, at = [side.kept for side in sides], [one.kept for one in where]
        if kept == texts and at == list(ends.at or ()):
            words = " ".join(line.split())
        else:
            said = _written(shape, kept, turns, angle)
            lead = "less " if cut else ""
            words = f"{lead}{shape} {said}{_ends_written(ends.count, at, ends.turned)}"
        try:
            lengths = tuple(side.value for side in sides)
        except Unanswered as gap:
            # A paced side may be written before the pace is known.
            return Taken(words, gap)
        lower_left = (where[0].value, where[1].value) if where else None
        piece = PieceLine(shape, lengths, cut, ends.count, turns, angle, lower_left, ends.turned)
        return Taken(words, piece)

    def _side(self, text: str, name: str, answers: Answers, zero_ok: bool) -> Taken[Side]:
        """Return one side; a refusal begins with its ``name``."""
        try:
            return self._length(text, answers, zero_ok)
        except Refused as refused:
            raise SideRefused(name, refused.said) from None

    def _length(self, text: str, answers: Answers, zero_ok: bool) -> Taken[Side]:
        spoken = self.side.heard(text, answers.units)
        text, amount = spoken.words, spoken.value
        if isinstance(amount, Paces):
            try:
                length = float(amount.count) * answers.pace(amount.walker)
            except Unanswered as gap:
                return Taken(text, gap)
            side = Side(length, float(amount.count), amount.walker)
        else:
            side = Side(quantity(float(amount.number), amount.unit))
        low = magnitude(side.length, "m")
        if low < 0 or (low == 0 and not zero_ok):
            raise Refused("It must be longer than zero.")
        if low > LONGEST_SIDE_M:
            raise Refused("That is longer than 1000 ft (300 m). Check the unit.")
        return Taken(self.side.with_unit(text, amount, answers.units), side)

    def _signed(self, text: str, units: str) -> Taken[Quantity]:
        """Return a taped length that may lie left of or below nought; raises ``Refused``."""
        amount = reading.read_taped_length(text.lstrip("-").strip(), self.side.unit(units))
        number = float(amount.number) * (-1 if text.startswith("-") else 1)
        return Taken(self.side.with_unit(text, amount, units), quantity(number, amount.unit))

    def paces_of(self, line: str, units: str) -> list[Paces]:
        """Return the sides of one written piece that are in paces; none of a line not read."""
        found = []
        try:
            _, shape, rest, _ = _taken_apart(line)
            for text in _measures(shape, rest)[0]:
                amount = self.side.heard(re.sub(LABEL, "", text), units).value
                if isinstance(amount, Paces):
                    found.append(amount)
        except Refused:
            return found
        return found

    def echo(self, value: tuple[PieceLine, ...], answers: Answers) -> str:
        cuts = sum(1 for piece in value if piece.cut)
        adds = len(value) - cuts
        said = f"{adds} piece" + ("" if adds == 1 else "s")
        return said + (f", {cuts} cut out" if cuts else "")

    def hint(self, units: str) -> str:
        said = "one per line, as rectangle 24 ft by 13 ft, or less triangle 6 ft by 4 ft"
        return said if units == US else in_metric(said)


LONGEST_SIDE_M = 305.0


def _too_few(shape: str, wanted: int) -> str:
    if shape == "round":
        return f"To walk round takes three or more sides and the turns between. {ROUND_GOOD}"
    if shape == "offsets":
        return (
            "Offsets need their spacing, then two or more distances, a comma and a blank between: "
            "offsets 5 ft, 0, 3 ft, 4 ft."
        )
    lengths = "1 length" if wanted == 1 else f"{wanted} lengths"
    return f"A {shape} needs {lengths} ({', '.join(SHAPES[shape])}). {_PIECE_GOOD}"


def placed_line(line: str, right: Quantity, up: Quantity, turned: float, metric: bool) -> str:
    """Return ``line`` with the place of its lower left and its turn to the left in degrees.

    Raises ``Refused`` for a line that names no shape.
    """
    cut, shape, rest, ends = _taken_apart(line)
    unit = "m" if metric else "ft"
    where = [f"{plain_number(round(magnitude(one, unit), 2) + 0.0)} {unit}" for one in (right, up)]
    lead = "less " if cut else ""
    return f"{lead}{shape} {rest.strip()}{_ends_written(ends.count, where, turned % 360)}"


def _taken_apart(line: str) -> tuple[bool, str, str, Ends]:
    words, ends = take_ends(reading.plain(line))
    cut = bool(re.match(_CUT, words))
    shape, rest = _shape_of(re.sub(_CUT, "", words))
    return cut, shape, rest, ends


def _measures(shape: str, rest: str) -> tuple[list[str], tuple[float, ...], float]:
    """Return the texts of the lengths, the turns between them, and the angle of a circle part."""
    if shape == "round":
        sides, turns = walked(rest)
        return sides, turns, 360.0
    texts = [part for part in re.split(PART, tidy(rest)) if part]
    angle = read_angle(texts[1], 360.0) if shape == "circle part" and len(texts) == 2 else 360.0
    return texts, (), angle


def _written(shape: str, sides: list[str], turns: tuple[float, ...], angle: float) -> str:
    if shape == "round":
        return " ".join(
            [sides[0], *(f"{turn_words(t)} {s}" for t, s in zip(turns, sides[1:], strict=True))]
        )
    if shape == "circle part":
        return f"{sides[0]}, {plain_number(angle)} deg"
    return ", ".join(sides)


def _ends_written(count: int, where: list[str], turned: float) -> str:
    times = f" times {count}" if count > 1 else ""
    place = f" at {', '.join(where)}" if where else ""
    return times + place + (f" turned {plain_number(turned)} deg" if turned else "")


def tidy(text: str) -> str:
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
    if re.match(r"[\d.½¼¾⅛⅜⅝⅞]", lower) or reading.begins_speech(lower):
        return "rectangle", words.strip()
    names = ", ".join(SHAPES)
    raise Refused(f"Start with a shape: {names}.")
