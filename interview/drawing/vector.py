"""A drawing as SVG for print: black lines carry it, tints and patterns only help the eye."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from html import escape
from itertools import pairwise

from interview.drawing.grid import Frame, Look
from interview.drawing.layout import SAMPLE, Layout, Text, label_text, lay_out
from interview.drawing.printed import EDGED, HATCHES, MATERIALS, PrintFill, sprig
from interview.drawing.scale import APART_MM, Dimension, drawn, margins
from interview.drawing.scene import (
    XY,
    Drawing,
    Hatch,
    Key,
    Label,
    LabelSpot,
    Mark,
    Material,
    Path,
    Shape,
    Sprig,
    Stroke,
    Symbol,
    inside,
)
from interview.drawing.words import clean, column_width

FONT_MM = 3.0
"""Height of the letters: 8 1/2 points."""
CELL_MM = 0.6 * FONT_MM
"""Width kept for a letter; a line is twice as tall."""
TALLEST = 1.1
"""Height over width of the picture at most, so that it stays on one sheet."""
LEAST_MM = 40
"""Width under which no letter would be readable."""
_LETTER_MM = 1.75
"""Radius of the white round that the letter of a kind of plant stands in."""
_LETTERS_APART = (8, 4, 2.2)
"""How far such letters should lie apart, in radii: as far as one of these allows."""
_SPRIG_MM, _LEAST_SPRIG = 2.4, 0.45
"""Room that a plant's mark wants, and the least size it is drawn in."""
_TELLING = (Hatch.CUT, Hatch.DRAINS)
"""Hatches that say what no material does; the others are told by the pattern of theirs."""
_HALO = 'paint-order="stroke" stroke="white" stroke-width="0.9" stroke-linejoin="round"'


def svg(drawing: Drawing, width_mm: float) -> str:
    """Return ``drawing`` as a whole SVG document ``width_mm`` wide, as high as it needs.

    Raises ValueError under 40 mm, where no letter would be readable.
    """
    page = _Page(drawing, width_mm, "", TALLEST)
    title, description = _xml(drawing.title), _xml(drawing.description)
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<svg xmlns="http://www.w3.org/2000/svg" {page.size} role="img" aria-label="{title}" '
        f'font-family="Helvetica, Arial, sans-serif" font-size="{FONT_MM:g}">\n'
        f"<title>{title}</title>\n<desc>{description}</desc>\n<defs>{page.defs}</defs>\n"
        f'<rect x="0" y="0" width="{width_mm:g}" height="{page.height:.2f}" fill="white"/>\n'
        f"{page.body}\n</svg>\n"
    )


def inline(drawing: Drawing, width_mm: float, name: str, tallest: float = TALLEST) -> str:
    """Return ``drawing`` as an SVG element of an HTML page, without its title on it.

    ``name`` begins every id in it and must be its own on the page; ``tallest`` is the height over
    the width at most. Raises ValueError under 40 mm, where no letter would be readable.
    """
    return _element(_Page(replace(drawing, title=""), width_mm, f"{name}-", tallest), drawing)


def with_legend(
    drawing: Drawing,
    width_mm: float,
    name: str,
    tallest: float = TALLEST,
    sizes: Sequence[Dimension] = (),
) -> tuple[str, tuple[tuple[str, str], ...]]:
    """Return the element as ``inline`` does, and apart from it each sample with its words.

    ``sizes`` are set under it and at its left, the first of them nearest.
    """
    bare = replace(drawing, title="", keys=())
    page = _Page(bare, width_mm, f"{name}-", tallest, sizes)
    legend = tuple((page.sample(key), key.words) for key in drawing.keys)
    return _element(page, drawing), legend


def _element(page: _Page, drawing: Drawing) -> str:
    name, title = page.prefix, _xml(drawing.title)
    return (
        f'<svg {page.size} role="img" aria-labelledby="{name}title" '
        f'aria-describedby="{name}desc" font-size="{FONT_MM:g}">\n'
        f'<title id="{name}title">{title}</title>\n'
        f'<desc id="{name}desc">{_xml(drawing.description)}</desc>\n'
        f"<defs>{page.defs}</defs>\n{page.body}\n</svg>"
    )


def _rows(drawing: Drawing, columns: int, tallest: float) -> int:
    if drawing.proportional:
        return int(columns / 2 * tallest)
    legend = len(drawing.keys) + len(drawing.notes) + 1
    return int(columns / 2 * drawing.print_ratio) + legend


def _xml(text: str) -> str:
    return escape(clean(text))


class _Page:
    """Writes a drawing in millimetres, its picture under its title."""

    def __init__(
        self,
        drawing: Drawing,
        width_mm: float,
        prefix: str,
        tallest: float,
        sizes: Sequence[Dimension] = (),
    ) -> None:
        if not LEAST_MM <= width_mm < math.inf:
            raise ValueError("A printed drawing must be at least 40 mm (1.6 in) wide.")
        drawing = drawing.sized(small=False)
        self.prefix = prefix
        self._used: dict[str, PrintFill] = {}
        letters = {one.letter for one in drawing.shapes if isinstance(one, Sprig)}
        shapes: list[Shape] = []
        self._letters: list[Label] = []
        for shape in drawing.shapes:
            if isinstance(shape, Label) and shape.text in letters:
                self._letters.append(shape)
            else:
                shapes.append(shape)
        self._drawing = replace(drawing, shapes=tuple(shapes))
        left, under = margins(sizes)
        columns = int((width_mm - left) / CELL_MM) - 2
        rows = _rows(drawing, columns, tallest)
        if sizes:
            rows = int((tallest * width_mm - under) / (2 * CELL_MM))
        self._layout = lay_out(self._drawing, columns, rows, Look(printed=True))
        title_lines, legend = len(self._layout.title), self._layout.legend_lines
        lines = title_lines + self._layout.frame.rows + (legend + 0.5 if legend else 0)
        self.top = title_lines * 2 * CELL_MM
        picture = lines * 2 * CELL_MM
        self.height = picture + under
        self.size = (
            f'width="{width_mm:g}mm" height="{self.height:.2f}mm" '
            f'viewBox="0 0 {width_mm:g} {self.height:.2f}"'
        )
        self.body = "\n".join(self._lines())
        if sizes:
            self.body = f'<g transform="translate({left:g} 0)">\n{self.body}\n</g>'
            self.body += "".join(self._sizes(sizes, left, picture, width_mm))

    def sample(self, key: Key) -> str:
        """Return the sample of a line of the legend as a small SVG element."""
        wide = SAMPLE * CELL_MM
        inner = "".join(self._sample(0.0, 0.5 * FONT_MM, key))
        return (
            f'<svg width="{wide:g}mm" height="{FONT_MM:g}mm" viewBox="0 0 {wide:g} {FONT_MM:g}" '
            f'aria-hidden="true">{inner}</svg>'
        )

    @property
    def defs(self) -> str:
        """The patterns that are used."""
        return "".join(fill.pattern(name) for name, fill in self._used.items())

    def _lines(self) -> Iterator[str]:
        layout = self._layout
        for line, words in enumerate(layout.title):
            yield _text(CELL_MM, _base(line, 0), words, weight="bold")
        frame = layout.frame
        paths = [shape for shape in self._drawing.shapes if isinstance(shape, Path)]
        for path in paths:
            yield from self._area(path, frame)
            # What parts materials lies under a later material; other lines lie on all of them.
            if path.border and path.stroke is not None:
                yield self._stroked(path, frame, path.stroke)
        for path in paths:
            if not path.border and path.stroke is not None:
                yield self._stroked(path, frame, path.stroke)
        for mark in self._drawing.shapes:
            if isinstance(mark, Mark):
                yield _symbol(self._at(frame, mark.x, mark.y), mark.symbol)
        yield from self._plants(frame)
        for text in layout.texts:
            yield from self._label(text)
        yield from self._legend(layout)

    def _at(self, frame: Frame, x: float, y: float) -> XY:
        column, row = frame.at(x, y)
        return (column + 1.5) * CELL_MM, (row + 0.5) * 2 * CELL_MM + self.top

    def _sizes(
        self, sizes: Sequence[Dimension], left: float, under: float, wide: float
    ) -> Iterator[str]:
        """Yield the dimension lines, ``under`` the picture and at the ``left`` of it."""
        upright, level, half = left, under, APART_MM / 2
        for one in sizes:
            frame = self._layout.frame
            (x0, y0), (x1, y1) = (self._at(frame, end, end) for end in (one.start, one.end))
            if one.upright:
                upright -= APART_MM
                yield drawn(one.words, y0, y1, upright + half, True, self.height)
            else:
                yield drawn(one.words, x0 + left, x1 + left, level + half, False, wide)
                level += APART_MM

    def _points(self, path: Path, frame: Frame) -> str:
        points = (self._at(frame, x, y) for x, y in path.points)
        return " ".join(f"{x:.2f},{y:.2f}" for x, y in points)

    def _area(self, path: Path, frame: Frame) -> Iterator[str]:
        points = self._points(path, frame)
        edged = path.material in EDGED and path.stroke is None
        line = 'stroke="black" stroke-width="0.2"' if edged else 'stroke="none"'
        for fill in self._fills(path.material, path.hatch):
            yield f'<polygon points="{points}" fill="{fill}" {line}/>'

    def _fills(self, material: Material | None, hatch: Hatch | None) -> Iterator[str]:
        """Yield what an area is filled with, the lowest first; nothing for bare paper."""
        if hatch in _TELLING or material is None:
            # A cut-out takes away the hatch of what it is cut from.
            tint = MATERIALS[material].tint if material in MATERIALS else ""
            if under := "white" if hatch is Hatch.CUT else tint:
                yield under
            if hatch is not None:
                yield self._pattern(f"hatch-{hatch.name}", HATCHES[hatch])
        elif fill := MATERIALS.get(material):
            yield self._pattern(material.name, fill) if fill.marks else fill.tint

    def _pattern(self, name: str, fill: PrintFill) -> str:
        """Note that a pattern is used; return what refers to it."""
        name = f"{self.prefix}{name.lower()}"
        self._used[name] = fill
        return f"url(#{name})"

    def _stroked(self, path: Path, frame: Frame, stroke: Stroke) -> str:
        name = "polygon" if path.closed else "polyline"
        return f'<{name} points="{self._points(path, frame)}" fill="none" {_pen(stroke)}/>'

    def _plants(self, frame: Frame) -> Iterator[str]:
        """Yield every plant but where stone lies, and the letter of each kind on one of them."""
        stone = [
            one.points
            for one in self._drawing.shapes
            if isinstance(one, Path) and one.material is Material.STONE
        ]
        plants = [
            one
            for one in self._drawing.shapes
            if isinstance(one, Sprig) and not any(inside((one.x, one.y), area) for area in stone)
        ]
        told: list[XY] = []
        for label in self._letters:
            same = [(one.x, one.y) for one in plants if one.letter == label.text]
            same.sort(key=partial(math.dist, (label.x, label.y)))
            spots = [self._at(frame, x, y) for x, y in same]
            free = (spot for far in _LETTERS_APART for spot in spots if _apart(spot, told, far))
            told.append(next(free, spots[0] if spots else self._at(frame, label.x, label.y)))
        spots = [self._at(frame, one.x, one.y) for one in plants]
        size = _sprig_size(spots)
        for plant, (x, y) in zip(plants, spots, strict=True):
            if all(math.dist((x, y), one) > _LETTER_MM for one in told):
                move = f"translate({x:.2f} {y:.2f}) scale({size:.2f})"
                yield f'<g transform="{move}">{sprig(plant.char)}</g>'
        for label, (x, y) in zip(self._letters, told, strict=True):
            yield (
                f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{_LETTER_MM:g}" fill="white" stroke="black" '
                'stroke-width="0.2"/>'
            )
            yield _text(x, y + 0.34 * FONT_MM, label.text, anchor="middle", weight="bold")

    def _label(self, text: Text) -> Iterator[str]:
        # One column is left free at either edge of the page.
        column, words, label = text.column + 1 + text.off[0], text.text, text.label
        y = _base(text.row + text.off[1], self.top)
        if label.arrow is not None and words == label_text(label):
            yield _arrow(column + 1.0, y - 0.36 * FONT_MM, label.arrow)
            words = words.partition(" ")[2]
            column += 3 if words else 0
            yield _text(column * CELL_MM, y, words, anchor="start", halo=True)
            return
        size = column_width(words)
        if label.over_line:
            yield _blank(column, y, size)
        place = label.place
        if place in (LabelSpot.CENTER, LabelSpot.ABOVE, LabelSpot.BELOW):
            x, anchor = column + size / 2, "middle"
        elif place is LabelSpot.LEFT:
            x, anchor = column + size, "end"
        else:
            x, anchor = column, "start"
        yield _text(x * CELL_MM, y, words, anchor=anchor, halo=True)

    def _legend(self, layout: Layout) -> Iterator[str]:
        top = self.top + layout.frame.rows * 2 * CELL_MM + CELL_MM
        for entry in layout.legend:
            x, y = (entry.column + 1) * CELL_MM, _base(entry.line, top)
            if entry.key is not None:
                yield from self._sample(x, y - 0.35 * FONT_MM, entry.key)
                x += (SAMPLE + 1) * CELL_MM
            yield _text(x, y, entry.text)

    def _sample(self, x: float, y: float, key: Key) -> Iterator[str]:
        long, sample = SAMPLE * CELL_MM, key.sample
        box = f'x="{x:.2f}" y="{y - 1.1:.2f}" width="{long:.2f}" height="2.2"'
        for fill in self._fills(key.material, sample if isinstance(sample, Hatch) else None):
            edge = "none" if isinstance(sample, Stroke) else "black"
            yield f'<rect {box} fill="{fill}" stroke="{edge}" stroke-width="0.2"/>'
        match sample:
            case Stroke():
                yield f'<path d="M{x:.2f} {y:.2f} h{long:.2f}" fill="none" {_pen(sample)}/>'
            case Symbol():
                yield _symbol((x + long / 2, y), sample)


def _sprig_size(spots: list[XY]) -> float:
    """Return how large plants may be drawn that they stay apart, 1 for their whole size."""
    steps = sorted(math.dist(*pair) for pair in pairwise(spots))
    return min(1.0, max(_LEAST_SPRIG, steps[len(steps) // 2] / _SPRIG_MM)) if steps else 1.0


def _apart(spot: XY, others: list[XY], far: float) -> bool:
    return all(math.dist(spot, other) > far * _LETTER_MM for other in others)


def _blank(column: float, y: float, size: int) -> str:
    where = f'x="{column * CELL_MM:.2f}" y="{y - FONT_MM:.2f}"'
    return f'<rect {where} width="{size * CELL_MM:.2f}" height="{1.3 * FONT_MM:.2f}" fill="white"/>'


def _base(line: float, top: float) -> float:
    """The line on which the letters of a text line stand."""
    return top + (line + 0.5) * 2 * CELL_MM + 0.36 * FONT_MM


def _pen(stroke: Stroke) -> str:
    pen = stroke.value
    dash = f' stroke-dasharray="{pen.dash}"' if pen.dash else ""
    return f'stroke="black" stroke-width="{pen.width:g}"{dash}'


def _text(
    x: float, y: float, words: str, *, anchor: str = "start", weight: str = "", halo: bool = False
) -> str:
    bold = f' font-weight="{weight}"' if weight else ""
    around = f" {_HALO}" if halo else ""
    where = f'x="{x:.2f}" y="{y:.2f}" text-anchor="{anchor}"'
    return f"<text {where}{bold}{around}>{_xml(words)}</text>"


def _symbol(at: XY, symbol: Symbol) -> str:
    x, y = at
    match symbol:
        case Symbol.POINT:
            return f'<circle cx="{x:.2f}" cy="{y:.2f}" r="0.9" fill="black"/>'
        case Symbol.CROSS:
            shape = f"M{x - 0.9:.2f} {y - 0.9:.2f} l1.8 1.8 m0 -1.8 l-1.8 1.8"
        case Symbol.TICK:
            shape = f"M{x - 0.8:.2f} {y:.2f} h1.6 M{x:.2f} {y - 0.8:.2f} v1.6"
        case Symbol.INLET:
            shape = f"M{x - 1.3:.2f} {y - 1.2:.2f} h2.6 l-1.3 2.2 z"
            return f'<path d="{shape}" fill="black"/>'
    return f'<path d="{shape}" fill="none" stroke="black" stroke-width="0.3"/>'


def _arrow(column: float, y: float, toward: XY) -> str:
    size = math.hypot(*toward) or 1.0
    dx, dy = toward[0] / size, -toward[1] / size
    x, reach = column * CELL_MM, 0.5 * FONT_MM
    tail, tip = (x - reach * dx, y - reach * dy), (x + reach * dx, y + reach * dy)
    wings = []
    for turn in (2.6, -2.6):
        cos, sin = math.cos(turn), math.sin(turn)
        wings.append((tip[0] + 1.3 * (dx * cos - dy * sin), tip[1] + 1.3 * (dx * sin + dy * cos)))
    line = "".join(f" L{a:.2f} {b:.2f}" for a, b in (tip, wings[0]))
    back = f"M{tip[0]:.2f} {tip[1]:.2f} L{wings[1][0]:.2f} {wings[1][1]:.2f}"
    path = f"M{tail[0]:.2f} {tail[1]:.2f}{line} {back}"
    return f'<path d="{path}" fill="none" stroke="black" stroke-width="0.35"/>'
