"""What a drawing is made of: lines, areas, marks and labels in world units, x right and y up."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import field, replace
from enum import Enum
from typing import NamedTuple, TypeAlias

from interview.quantities.records import record

XY: TypeAlias = tuple[float, float]


class LabelSpot(Enum):
    """Where a label's text goes, seen from its point."""

    CENTER = "center"
    LEFT = "left"
    RIGHT = "right"
    ABOVE = "above"
    BELOW = "below"
    START = "start"
    """The text begins at the point."""


class Pen(NamedTuple):
    """How one kind of line looks; without a stamp it is drawn with line characters."""

    width: float
    """In mm, for print."""
    dash: str = ""
    stamp: str = ""
    double: bool = False
    curve: bool = False
    """Whether dots draw it smoothly, where they may, in the place of its stamp."""


class Stroke(Enum):
    """The kinds of line; each has its own character, so that none needs a colour."""

    SOLID = Pen(0.35)
    HEAVY = Pen(0.8, double=True)
    DASHED = Pen(0.25, dash="1.6 1.2")
    DOTTED = Pen(0.45, dash="0.4 1.1", stamp="·")
    WATER = Pen(0.3, dash="3 0.8", stamp="~")
    NOTCH = Pen(2.0, dash="0.6 0.4", stamp="v")
    BAR = Pen(2.4, stamp="█")
    MULCH = Pen(0.35, stamp="▒")
    CURVE = Pen(0.6, stamp="*", curve=True)


class Hatch(Enum):
    """The fillings of an area, each its own character."""

    CUT = "╱"
    MULCH = "▒"
    COMPOST = "▓"
    FILL = "░"
    DRAINS = "·"


class Symbol(Enum):
    """Marks at a point, each its own character."""

    POINT = "●"
    CROSS = "×"
    TICK = "┼"
    INLET = "▼"


class Ink(Enum):
    """What a line or a word means; where there is color, each has its own."""

    TEXT = "text"
    MUTED = "muted"
    GOOD = "good"
    LOOK = "look"
    STOP = "stop"
    DUE = "due"
    WATER = "water"


class Pattern(NamedTuple):
    """How a material looks where there is no color."""

    name: str
    char: str
    every: int = 1
    """Of how many cells one shows it; the others stay blank."""


class Material(Enum):
    """What an area is made of. With color it is painted, without it has its texture."""

    SKY = Pattern("sky", " ")
    HOLE = Pattern("the open hole", " ")
    LAWN = Pattern("lawn", " ")
    GRASS = Pattern("grass", '"')
    SOIL = Pattern("soil", " ")
    COMPOST = Pattern("compost", "▓", 2)
    MULCH = Pattern("mulch", "▒")
    BERM = Pattern("berm", "▓")
    STONE = Pattern("stone", " ")
    WATER = Pattern("water", "≈", 4)
    FLOOR = Pattern("floor", " ")
    SIDE = Pattern("side", " ")
    RIM = Pattern("rim", " ")
    ROOF = Pattern("roof", " ")
    WALL = Pattern("wall", "█")
    CUT = Pattern("cut out", "╳")


class Path(NamedTuple):
    """A line through points; with ``hatch`` or ``material`` the area inside it, closed."""

    points: tuple[XY, ...]
    stroke: Stroke | None = Stroke.SOLID
    closed: bool = False
    hatch: Hatch | None = None
    material: Material | None = None
    """What fills it; a later one lies on an earlier one."""
    border: bool = False
    """Whether its line only parts what paint parts by color: it is not drawn on paint."""
    ink: Ink | None = None


class Mark(NamedTuple):
    """A symbol at a point."""

    x: float
    y: float
    symbol: Symbol = Symbol.POINT
    ink: Ink | None = None


class Sprig(NamedTuple):
    """A plant at a point: its mark and flower color where there is color, else its letter."""

    x: float
    y: float
    letter: str
    char: str
    bloom: str
    """A color that a flower has, as in ``BLOOMS``."""


BLOOMS = ("blue", "gold", "green", "pink", "red", "straw", "violet", "white")
"""The colors of flowers and of grasses that a drawing tells apart."""


class Label(NamedTuple):
    """A text near a point, moved to free room or into the legend where it does not fit.

    ``shift`` is added to its place, in characters right and lines down. ``within`` is a box
    (left, bottom, right, top) it may not leave. ``arrow`` draws an arrow before it (x right, y up).
    ``optional`` text is left out where its own place is taken: for the numbers of an axis.
    """

    text: str
    x: float
    y: float
    place: LabelSpot = LabelSpot.CENTER
    shift: tuple[int, int] = (0, 0)
    within: tuple[float, float, float, float] | None = None
    outline: tuple[XY, ...] = ()
    """Corners of an area it may not leave."""
    arrow: XY | None = None
    optional: bool = False
    over_line: bool = False
    """Whether the text may stand on a line, as in a dimension line."""
    on_hatch: Hatch | None = None
    """The hatch the text may stand on."""
    marker: str = ""
    """What stands for it where it goes into the legend; a letter if not given."""
    ink: Ink = Ink.TEXT
    stacked: bool = False
    """Whether it is moved up or down alone, in its own box, as those of a scale are."""
    brief: str = ""
    """What is written in its place on a small picture: the same where not given, nothing for a
    blank."""


class Key(NamedTuple):
    """A line of the legend: a sample, and what it means."""

    sample: Stroke | Hatch | Symbol
    words: str
    material: Material | None = None
    """What is shown in the place of the sample where materials are painted."""


Shape: TypeAlias = Path | Mark | Sprig | Label


@record
class Drawing:
    """A drawing in world units, whatever it is shown on."""

    title: str
    description: str
    """The drawing in words, for those who do not see it."""
    shapes: tuple[Shape, ...]
    keys: tuple[Key, ...] = ()
    notes: tuple[str, ...] = ()
    """Sentences under the legend."""
    proportional: bool = True
    """Whether a length looks the same along and across; charts fill the room instead."""
    lines: int | None = None
    """Exact number of text lines of a table of bars."""
    print_ratio: float = field(default=0.5)
    """Height over width in print, where not proportional."""
    ground: Material | None = None
    """What is painted behind all else."""
    steps: XY | None = None
    """From number to number of the axes of a chart: each step is a whole number of cells."""
    detail: tuple[Shape, ...] = ()
    """What a small picture leaves out, such as dimension lines."""

    def sized(self, small: bool) -> Drawing:
        """Return the drawing with its detail among its shapes, or for a small picture without."""
        if not small:
            return replace(self, shapes=(*self.shapes, *self.detail), detail=())
        brief = (
            one._replace(text=one.brief) if isinstance(one, Label) and one.brief else one
            for one in self.shapes
            if not (isinstance(one, Label) and one.brief.isspace())
        )
        return replace(self, shapes=tuple(brief), detail=())

    @property
    def bare(self) -> Drawing:
        """The picture alone, without title and legend."""
        return replace(self, title="", keys=(), notes=())

    def told(self, tell: Callable[[str], str]) -> Drawing:
        """Return the same drawing with its words put into others by ``tell``."""
        shapes, detail = (
            tuple(
                one._replace(text=tell(one.text), brief=tell(one.brief))
                if isinstance(one, Label)
                else one
                for one in some
            )
            for some in (self.shapes, self.detail)
        )
        notes = tuple(map(tell, self.notes))
        said = tell(self.description)
        return replace(self, description=said, shapes=shapes, detail=detail, notes=notes)

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of all that is drawn, labels by their points."""
        points: list[XY] = []
        for shape in self.shapes:
            points += shape.points if isinstance(shape, Path) else ((shape.x, shape.y),)
        return extent(points) if points else (0.0, 0.0, 1.0, 1.0)

    @property
    def labels(self) -> tuple[Label, ...]:
        """The texts of the drawing, in the order they are placed."""
        return tuple(shape for shape in self.shapes if isinstance(shape, Label))


def line(x0: float, y0: float, x1: float, y1: float, stroke: Stroke = Stroke.SOLID) -> Path:
    """Return a straight line."""
    return Path(((x0, y0), (x1, y1)), stroke)


def filled(points: tuple[XY, ...], material: Material, stroke: Stroke | None = None) -> Path:
    """Return an area of one material; its line, if any, only stands where nothing is painted."""
    return Path(points, stroke, True, material=material, border=True)


def box(left: float, bottom: float, right: float, top: float) -> tuple[XY, ...]:
    """Return the corners of a rectangle with its sides level and upright."""
    return ((left, bottom), (right, bottom), (right, top), (left, top))


def extent(points: Sequence[XY]) -> tuple[float, float, float, float]:
    """Return left, bottom, right and top of points."""
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def polygon(
    points: tuple[XY, ...],
    stroke: Stroke | None = Stroke.SOLID,
    hatch: Hatch | None = None,
    border: bool = False,
) -> Path:
    """Return a closed outline, hatched or not."""
    return Path(points, stroke, True, hatch, border=border)


def inside(point: XY, corners: tuple[XY, ...]) -> bool:
    """Tell whether a point lies inside an outline, by counting the sides a ray crosses."""
    x, y = point
    within = False
    for (x0, y0), (x1, y1) in zip(corners, (*corners[1:], corners[0]), strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
            within = not within
    return within
