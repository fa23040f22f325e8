"""A drawing as cells of color: materials filled, lines and plants on them, words on plain ground.

Nothing here knows a color: a cell says what it is made of or what it means.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple, TypeAlias

from interview.drawing.canvas import stroke_sample
from interview.drawing.grid import Frame, Look
from interview.drawing.layout import SAMPLE, Layout, lay_out
from interview.drawing.scene import Drawing, Hatch, Ink, Mark, Material, Path, Sprig, Stroke, Symbol
from interview.drawing.words import in_cells

SMALL = (60, 18)
"""Columns and rows under which a picture is small."""
ACROSS, DOWN = 2, 8
"""Samples in a cell: two halves across; down as many as there are block characters."""
_FLAT = 4
"""Samples that a border may fall or rise within a cell and still be drawn as a level."""
_LOWER = " ▁▂▃▄▅▆▇█"
_QUADRANTS = " ▗▖▄▝▐▞▟▘▚▌▙▀▜▛█"
"""By which quarters are filled: upper left 8, upper right 4, lower left 2, lower right 1."""
_TEXTURES = {
    Material.SOIL: (("·", 9), ("∙", 23)),
    Material.MULCH: (("▒", 1),),
    Material.COMPOST: (("▓", 3),),
    Material.BERM: (("·", 4),),
    Material.LAWN: ((",", 7), ("'", 13)),
    Material.STONE: (("∘", 2),),
    Material.ROOF: (("╱", 1),),
    Material.CUT: (("╳", 1),),
    Material.WATER: (("~", 17),),
    Material.WALL: (("▒", 3),),
}
"""Characters strewn over a material, each in one of so many cells: no material is color alone."""


class Tone(NamedTuple):
    """The color of a material at a height of what it fills."""

    material: Material
    part: float
    """0 at its top, 1 at its bottom."""
    texture: bool = False
    """Whether it is the color of the texture on it."""


Tint: TypeAlias = Ink | Tone | str
"""What colors a cell: a meaning, a material, or the name of a flower's color."""


class Cell(NamedTuple):
    """One cell; without ``back`` it stands on the ground of the page.

    On a meaning it is a badge: written in the color of the page's ground.
    """

    char: str
    fore: Tint | None = None
    back: Tone | Ink | None = None
    bold: bool = False


BLANK = Cell(" ")
Row: TypeAlias = tuple[Cell, ...]


class Painting(NamedTuple):
    """A drawing ready to be colored: title, picture and legend, row by row."""

    title: tuple[str, ...]
    picture: tuple[Row, ...]
    legend: tuple[Row, ...]


@lru_cache(32)
def paint(drawing: Drawing, columns: int, rows: int) -> Painting:
    """Return ``drawing`` painted, at most ``columns`` wide and, if it can be, ``rows`` high.

    In little room it is without its detail.
    """
    drawing = drawing.sized(columns < SMALL[0] or rows < SMALL[1])
    layout = lay_out(drawing, columns, rows, Look(painted=True))
    return Painting(layout.title, tuple(_picture(drawing, layout)), tuple(_legend(layout)))


def _picture(drawing: Drawing, layout: Layout) -> Iterator[Row]:
    grid = layout.grid
    filled = _fill(drawing, layout.frame)
    for texts in layout.texts:
        _chip(filled, texts.row, texts.column, texts.text, texts.label.ink)
    for row, cells in enumerate(filled):
        for column, cell in enumerate(cells):
            char = grid.ink.get((column, row))
            if cell.back is _CHIP_GROUND:
                cells[column] = cell._replace(back=None)
            elif char is not None:
                shape = grid.shapes.get((column, row))
                if isinstance(shape, Sprig) and _bare(cell):
                    continue
                cells[column] = Cell(char, _ink_of(shape), cell.back, isinstance(shape, Mark))
            elif (column, row) in grid.hatched:
                cells[column] = Cell(grid.hatched[column, row], Ink.MUTED, cell.back)
        yield tuple(cells)


_WIDE = (Material.SKY, Material.LAWN, Material.SOIL, Material.GRASS)
"""What has no end in the yard."""
_BARE = (Material.STONE, Material.BERM)
"""Where no plant is drawn, wherever its place falls by the width of a cell."""


def _bare(cell: Cell) -> bool:
    return isinstance(cell.back, Tone) and cell.back.material in _BARE


_CHIP_GROUND = Tone(Material.SKY, -1.0)
"""Marks a cell of a chip while a picture is made."""


def _chip(filled: list[list[Cell]], row: int, column: int, text: str, ink: Ink) -> None:
    """Set words on plain ground, with a blank at either side where something is painted.

    One letter, as on a plant, has none.
    """
    line = filled[row]
    for place, char in enumerate(in_cells(text)):
        line[column + place] = Cell(char, ink, _CHIP_GROUND)
    for beside in (column - 1, column + len(in_cells(text))) if len(text) > 1 else ():
        if 0 <= beside < len(line) and line[beside].back not in (None, _CHIP_GROUND):
            line[beside] = Cell(" ", None, _CHIP_GROUND)


def _ink_of(shape: Path | Mark | Sprig | None) -> Tint:
    match shape:
        case Sprig():
            return shape.bloom
        case Path():
            stroke = shape.stroke or Stroke.SOLID
            return shape.ink or _STROKE_INKS.get(stroke, Ink.TEXT)
        case Mark():
            return shape.ink or (Ink.WATER if shape.symbol is Symbol.INLET else Ink.TEXT)
    return Ink.TEXT


_STROKE_INKS = {
    Stroke.DASHED: Ink.MUTED,
    Stroke.DOTTED: Ink.MUTED,
    Stroke.WATER: Ink.WATER,
    Stroke.BAR: Ink.WATER,
    Stroke.CURVE: Ink.WATER,
    Stroke.NOTCH: Ink.LOOK,
}


def _fill(drawing: Drawing, frame: Frame) -> list[list[Cell]]:
    """Return the cells of all materials, each area over those before it."""
    materials: list[Material | None] = [drawing.ground]
    samples = [bytearray(frame.columns * ACROSS) for _ in range(frame.rows * DOWN)]
    for path in drawing.shapes:
        if isinstance(path, Path) and path.material is not None:
            if path.material not in materials:
                materials.append(path.material)
            _area(samples, frame, path, materials.index(path.material))
    if drawing.ground is not None:
        wide = bytes(place for place, one in enumerate(materials) if not place or one in _WIDE)
        _bleed(samples, frame, drawing.bounds, wide)
    spans = _spans(samples, len(materials))
    return [
        [
            _cell(materials, spans, _block(samples, column, row), column, row)
            for column in range(frame.columns)
        ]
        for row in range(frame.rows)
    ]


def _area(samples: list[bytearray], frame: Frame, path: Path, number: int) -> None:
    """Fill an outline line by line of the samples, between each pair of sides it crosses."""
    # A whole number of a frame is the middle of a cell, its edge half a cell before.
    corners = [
        ((x + 0.5) * ACROSS, (y + 0.5) * DOWN) for x, y in (frame.at(*one) for one in path.points)
    ]
    last = len(samples[0])
    top = max(0, int(min(y for _, y in corners)))
    for line in range(top, min(len(samples), int(max(y for _, y in corners)) + 1)):
        middle = line + 0.5
        crossed = sorted(
            ax + (middle - ay) * (bx - ax) / (by - ay)
            for (ax, ay), (bx, by) in pairwise((*corners, corners[0]))
            if (ay <= middle) != (by <= middle)
        )
        for left, right in zip(crossed[::2], crossed[1::2], strict=True):
            start, end = max(0, round(left)), min(last, round(right))
            if end > start:
                samples[line][start:end] = bytes([number]) * (end - start)


def _bleed(
    samples: list[bytearray],
    frame: Frame,
    bounds: tuple[float, float, float, float],
    wide: bytes,
) -> None:
    """Carry the ground at the ends of a drawing on to the ends of its frame; all else ends there.

    ``wide`` are the numbers of what goes on; nought, the ground behind all, is one of them.
    """
    ends = bytes(one if one in wide else 0 for one in range(256))
    left, bottom, right, top = bounds
    (x0, y1), (x1, y0) = frame.at(left, bottom), frame.at(right, top)
    first, last = math.ceil((x0 + 0.5) * ACROSS), math.floor((x1 + 0.5) * ACROSS) - 1
    upper, lower = math.ceil((y0 + 0.5) * DOWN), math.floor((y1 + 0.5) * DOWN) - 1
    for line in samples:
        line[:first] = line[first : first + 1].translate(ends) * first
        line[last + 1 :] = line[last : last + 1].translate(ends) * (len(line) - last - 1)
    samples[:upper] = [samples[upper].translate(ends)] * upper
    samples[lower + 1 :] = [samples[lower].translate(ends)] * (len(samples) - lower - 1)


def _spans(samples: Sequence[bytearray], many: int) -> list[tuple[int, int]]:
    """Return the first and last row of cells of each material."""
    found = []
    for number in range(many):
        lines = [place for place, line in enumerate(samples) if number in line]
        found.append((lines[0] // DOWN, lines[-1] // DOWN) if lines else (0, 0))
    return found


def _block(samples: Sequence[bytearray], column: int, row: int) -> bytes:
    at = column * ACROSS
    return b"".join(line[at : at + ACROSS] for line in samples[row * DOWN : (row + 1) * DOWN])


def _cell(
    materials: Sequence[Material | None],
    spans: Sequence[tuple[int, int]],
    block: bytes,
    column: int,
    row: int,
) -> Cell:
    def tone(number: int, texture: bool = False) -> Tone | None:
        material = materials[number]
        first, last = spans[number]
        part = (row - first) / max(1, last - first)
        return None if material is None else Tone(material, part, texture)

    if block.count(block[0]) == len(block):
        material = materials[block[0]]
        char = " " if material is None else _strewn(material, column, row)
        return Cell(char, None if char == " " else tone(block[0], True), tone(block[0]))
    left, right = block[::ACROSS], block[1::ACROSS]
    upper, lower = block[0], block[-1]
    over, beside = left.count(upper), right.count(upper)
    level = bytes([upper]) * over + bytes([lower]) * (DOWN - over)
    slope = bytes([upper]) * beside + bytes([lower]) * (DOWN - beside)
    # At an upright edge one half has none of what lies below: that is a corner and no slope.
    is_level = abs(over - beside) <= _FLAT and max(over, beside) < DOWN
    if is_level and (left, right) == (level, slope):
        return _split(_LOWER[DOWN - (over + beside) // 2], tone(lower), tone(upper))
    half = DOWN // 2
    # Of what fills a quarter by halves the one behind is taken, as it is along a level.
    parts = [side[start : start + half] for start in (0, half) for side in (left, right)]
    quarters = [max(set(part), key=lambda one: (part.count(one), -one)) for part in parts]
    first, *others = [number for number, _ in Counter(quarters).most_common()]
    if not others:
        return Cell(" ", None, tone(first))
    bits = sum(8 >> place for place, number in enumerate(quarters) if number == others[0])
    return _split(_QUADRANTS[bits], tone(others[0]), tone(first))


def _split(char: str, fore: Tone | None, back: Tone | None) -> Cell:
    """Return a cell of two materials; the page's own ground can only be behind."""
    if fore is None:
        return Cell(_TURNED[char], back, None)
    return Cell(char, fore, back)


_TURNED = {
    **{one: _QUADRANTS[15 - bits] for bits, one in enumerate(_QUADRANTS)},
    # There are no blocks that hang from above: the nearest half or whole one stands for them.
    **dict(zip(_LOWER[1:8], "██▀▀▀  ", strict=True)),
}


def _strewn(material: Material, column: int, row: int) -> str:
    """Return the texture of a cell, by a rule of its place: it stays as it is when drawn anew."""
    place = column * 7919 + row * 104729 + column * row * 31
    return next((char for char, many in _TEXTURES.get(material, ()) if place % many == 0), " ")


def _legend(layout: Layout) -> Iterator[Row]:
    lines: list[list[Cell]] = [[] for _ in range(layout.legend_lines)]
    for entry in layout.legend:
        line = lines[entry.line]
        line += [BLANK] * (entry.column - len(line))
        if entry.key is not None:
            line += [*_sample(entry.key.material or entry.key.sample), BLANK]
        line += [Cell(char, Ink.MUTED) for char in in_cells(entry.text)]
    yield from map(tuple, lines)


def _sample(sample: Stroke | Hatch | Symbol | Material) -> list[Cell]:
    match sample:
        case Material():
            return [
                Cell(char, Tone(sample, 0.0, True), Tone(sample, 0.0))
                for char in (_strewn(sample, column, 0) for column in range(SAMPLE))
            ]
        case Stroke():
            ink = _STROKE_INKS.get(sample, Ink.TEXT)
            return [Cell(char, ink) for char in stroke_sample(sample)]
        case Hatch():
            return [Cell(sample.value, Ink.MUTED)] * SAMPLE
        case Symbol():
            return [BLANK, Cell(sample.value, _ink_of(Mark(0, 0, sample)), None, True), BLANK]
