"""A drawing as SVG for print: black on white, one file, no fonts of its own."""

from __future__ import annotations

import math
from collections.abc import Iterator
from xml.sax.saxutils import escape

from interview.drawing.grid import Frame, Look
from interview.drawing.layout import SAMPLE, Layout, Text, label_text, lay_out
from interview.drawing.scene import XY, Drawing, Hatch, LabelSpot, Mark, Path, Stroke, Symbol
from interview.drawing.words import clean, column_width

FONT_MM = 3.0
"""Height of the letters: 8 1/2 points."""
CELL_MM = 0.6 * FONT_MM
"""Width kept for a letter; a line is twice as tall."""
TALLEST = 1.1
"""Height over width of the picture at most, so that it stays on one sheet."""
_PATTERNS = {
    Hatch.CUT: ("2", '<path d="M0 2 L2 0" stroke="black" stroke-width="0.18"/>'),
    Hatch.MULCH: (
        "1.6",
        '<path d="M0 0 L1.6 1.6 M0 1.6 L1.6 0" stroke="black" stroke-width="0.14"/>',
    ),
    Hatch.COMPOST: (
        "1.2",
        '<path d="M0 0 L1.2 1.2 M0 0.6 h1.2" stroke="black" stroke-width="0.16"/>',
    ),
    Hatch.DRAINS: ("2.6", '<path d="M0.4 1.3 h1" stroke="black" stroke-width="0.2"/>'),
    Hatch.FILL: ("1.6", '<circle cx="0.8" cy="0.8" r="0.22" fill="black"/>'),
}
_HALO = 'paint-order="stroke" stroke="white" stroke-width="0.9" stroke-linejoin="round"'


def svg(drawing: Drawing, width_mm: float) -> str:
    """Return ``drawing`` as a whole SVG document ``width_mm`` wide, as high as it needs.

    Raises ValueError under 40 mm, where no letter would be readable.
    """
    if not 40 <= width_mm < math.inf:
        raise ValueError("A printed drawing must be at least 40 mm (1.6 in) wide.")
    drawing = drawing.sized(small=False)
    columns = int(width_mm / CELL_MM) - 2
    layout = lay_out(drawing, columns, _rows(drawing, columns), Look(printed=True))
    title_lines = len(layout.title)
    lines = title_lines + layout.frame.rows + layout.legend_lines + 1
    height = lines * 2 * CELL_MM
    page = _Page(title_lines * 2 * CELL_MM)
    body = "\n".join(page.of(drawing, layout))
    title, description = _xml(drawing.title), _xml(drawing.description)
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width_mm:g}mm" height="{height:.2f}mm" '
        f'viewBox="0 0 {width_mm:g} {height:.2f}" role="img" aria-label="{title}" '
        f'font-family="Helvetica, Arial, sans-serif" font-size="{FONT_MM:g}">\n'
        f"<title>{title}</title>\n<desc>{description}</desc>\n<defs>{_defs()}</defs>\n"
        f'<rect x="0" y="0" width="{width_mm:g}" height="{height:.2f}" fill="white"/>\n'
        f"{body}\n</svg>\n"
    )


def _rows(drawing: Drawing, columns: int) -> int:
    if drawing.proportional:
        return int(columns / 2 * TALLEST)
    legend = len(drawing.keys) + len(drawing.notes) + 1
    return int(columns / 2 * drawing.print_ratio) + legend


def _xml(text: str) -> str:
    return escape(clean(text), {'"': "&quot;"})


def _defs() -> str:
    return "".join(
        f'<pattern id="hatch-{hatch.name.lower()}" width="{size}" height="{size}" '
        f'patternUnits="userSpaceOnUse">{inner}</pattern>'
        for hatch, (size, inner) in _PATTERNS.items()
    )


class _Page:
    """Writes a layout in millimetres, the picture ``top`` under the upper edge."""

    def __init__(self, top: float) -> None:
        self.top = top

    def of(self, drawing: Drawing, layout: Layout) -> Iterator[str]:
        for line, words in enumerate(layout.title):
            yield _text(CELL_MM, _base(line, 0), words, weight="bold")
        frame = layout.frame
        paths = [shape for shape in drawing.shapes if isinstance(shape, Path)]
        for path in paths:
            if path.hatch is not None:
                yield self._filled(path, frame, path.hatch)
        for path in paths:
            if path.stroke is not None:
                yield self._stroked(path, frame, path.stroke)
        for mark in drawing.shapes:
            if isinstance(mark, Mark):
                yield _symbol(self._at(frame, mark.x, mark.y), mark.symbol)
        for text in layout.texts:
            yield from self._label(text)
        yield from self._legend(layout)

    def _at(self, frame: Frame, x: float, y: float) -> XY:
        column, row = frame.at(x, y)
        return (column + 1.5) * CELL_MM, (row + 0.5) * 2 * CELL_MM + self.top

    def _points(self, path: Path, frame: Frame) -> str:
        points = (self._at(frame, x, y) for x, y in path.points)
        return " ".join(f"{x:.2f},{y:.2f}" for x, y in points)

    def _filled(self, path: Path, frame: Frame, hatch: Hatch) -> str:
        area = f'<polygon points="{self._points(path, frame)}"'
        # A cut-out takes away the hatch of what it is cut from.
        under = f'{area} fill="white" stroke="none"/>' if hatch is Hatch.CUT else ""
        return f'{under}{area} fill="url(#hatch-{hatch.name.lower()})" stroke="none"/>'

    def _stroked(self, path: Path, frame: Frame, stroke: Stroke) -> str:
        name = "polygon" if path.closed else "polyline"
        return f'<{name} points="{self._points(path, frame)}" fill="none" {_pen(stroke)}/>'

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
                yield _sample(x, y - 0.35 * FONT_MM, entry.key.sample)
                x += (SAMPLE + 1) * CELL_MM
            yield _text(x, y, entry.text)


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


def _sample(x: float, y: float, sample: Stroke | Hatch | Symbol) -> str:
    long = SAMPLE * CELL_MM
    match sample:
        case Stroke():
            return f'<path d="M{x:.2f} {y:.2f} h{long:.2f}" fill="none" {_pen(sample)}/>'
        case Hatch():
            box = f'x="{x:.2f}" y="{y - 1.1:.2f}" width="{long:.2f}" height="2.2"'
            look = f'fill="url(#hatch-{sample.name.lower()})" stroke="black" stroke-width="0.2"'
            return f"<rect {box} {look}/>"
        case Symbol():
            return _symbol((x + long / 2, y), sample)
