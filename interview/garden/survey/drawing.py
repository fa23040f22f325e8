"""The pieces of a surface, drawn to one scale, with their measures at the sides."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import combinations

from interview.drawing.scale import scale_bar
from interview.drawing.scene import (
    XY,
    Drawing,
    Hatch,
    Key,
    Label,
    LabelSpot,
    Material,
    Path,
    Shape,
    Stroke,
    extent,
    inside,
    line,
    polygon,
)
from interview.garden.survey.outlines import Offsets, SidesRound
from interview.garden.survey.piece_layout import Placed, Spot, lay_pieces, lie_over
from interview.garden.survey.pieces import Piece, plan_area
from interview.garden.survey.rings import shoelace, sides_of
from interview.garden.survey.shapes import (
    CirclePart,
    Rectangle,
    RightTriangle,
    ThreeSides,
    Trapezoid,
    TrapezoidSides,
)
from interview.garden.survey.shapes import Triangle as AnyTriangle
from interview.quantities.shown import length_words
from interview.quantities.units import (
    Quantity,
    magnitude,
    plain_number,
    quantity,
    show,
    significant,
)


def measures(piece: Piece, metric: bool) -> str:
    """Return the shape and measures of a piece in words."""
    sizes = [length_words(length, metric) for length in piece.shape.lengths]
    match piece.shape:
        case Rectangle():
            words = f"rectangle {sizes[0]} × {sizes[1]}"
        case AnyTriangle():
            words = f"triangle, base {sizes[0]}, height {sizes[1]}"
        case ThreeSides():
            words = f"triangle, sides {', '.join(sizes)}"
        case Trapezoid():
            words = f"trapezoid {sizes[0]} and {sizes[1]}, {sizes[2]} apart"
        case TrapezoidSides():
            words = f"trapezoid {sizes[0]} and {sizes[1]}, slants {sizes[2]} and {sizes[3]}"
        case CirclePart(angle=angle):
            words = f"{_round(magnitude(angle, 'degree'))} {sizes[0]} across"
        case Offsets():
            words = f"outline by offsets every {sizes[0]}: {', '.join(sizes[1:])}"
        case _:
            words = f"outline of sides {', '.join(sizes)}"
    return words if piece.count == 1 else f"{words}, {piece.count} times"


def _round(degrees: float) -> str:
    names = {360.0: "circle", 180.0: "half circle", 90.0: "quarter circle"}
    return names.get(degrees, f"{plain_number(degrees)} degrees of a circle")


_SMALL = 0.3
"""Part of the whole width under which the words of a piece would hide it: they stand around it."""


def side_shapes(
    spot: Spot, metric: bool, others: Sequence[Spot] = (), small: bool = False
) -> Iterator[Shape]:
    """Yield the texts at the sides of a piece, and the dashed lines of inner measures.

    Of two like sides the one that does not lie against one of ``others`` is written at. Inner
    measures of a ``small`` piece are written at its right.
    """
    sizes = [length_words(length, metric) for length in spot.piece.shape.lengths]
    corners = spot.outline
    match spot.piece.shape:
        case Rectangle():
            yield _at_side(spot, _clear(spot, (0, 2), others), sizes[0])
            yield _at_side(spot, _clear(spot, (1, 3), others), sizes[1])
        case RightTriangle():
            yield _at_side(spot, 0, sizes[0])
            yield _at_side(spot, 2, sizes[1])
        case AnyTriangle():
            yield _at_side(spot, 0, sizes[0])
            yield from _inner(spot, (corners[2][0], 0.0), corners[2], sizes[1], small)
        case ThreeSides():
            # The outline runs a, c, b.
            for side, size in zip((0, 2, 1), sizes, strict=True):
                yield _at_side(spot, side, size)
        case Trapezoid():
            yield _at_side(spot, 0, sizes[0])
            yield _at_side(spot, 2, sizes[1])
            middle = (corners[2][0] + corners[3][0]) / 2
            yield from _inner(spot, (middle, 0.0), (middle, corners[2][1]), sizes[2], small)
        case TrapezoidSides():
            # The outline runs along the long side, up one slant, back, and down the other.
            for side, size in zip((0, 2, 3, 1), sizes, strict=True):
                yield _at_side(spot, side, size)
        case CirclePart(angle=angle):
            yield from _circle(spot, magnitude(angle, "degree"), sizes[0], metric)
        case Offsets():
            yield from _offsets(spot, sizes)
        case SidesRound():
            for side, size in enumerate(sizes):
                yield _at_side(spot, side, size)


_NEXT_TO = 0.05
"""How far outside a side is looked for a neighbour, as a part of the piece."""


def _clear(spot: Spot, sides: tuple[int, int], others: Sequence[Spot]) -> int:
    """Return the first of two sides with nothing against it, or the first."""
    left, bottom, right, top = spot.box
    far = _NEXT_TO * max(right - left, top - bottom)
    for side in sides:
        (x, y), (dx, dy) = _middle_and_out(spot, side)
        size = math.hypot(dx, dy) or 1.0
        point = (x + far * dx / size, y + far * dy / size)
        if not any(inside(point, other.corners) for other in others):
            return side
    return sides[0]


def _middle_and_out(spot: Spot, side: int) -> tuple[XY, XY]:
    """Return the middle of a side and the direction that leads out of the piece there."""
    corners = spot.corners
    (x0, y0), (x1, y1) = corners[side], corners[(side + 1) % len(corners)]
    out = (y1 - y0, x0 - x1) if shoelace(corners) > 0 else (y0 - y1, x1 - x0)
    return ((x0 + x1) / 2, (y0 + y1) / 2), out


def _at_side(spot: Spot, side: int, text: str) -> Label:
    """Write ``text`` outside the middle of a side."""
    middle, out = _middle_and_out(spot, side)
    return Label(text, *middle, _toward(out))


def _toward(out: XY) -> LabelSpot:
    if abs(out[0]) >= abs(out[1]):
        return LabelSpot.RIGHT if out[0] > 0 else LabelSpot.LEFT
    return LabelSpot.ABOVE if out[1] > 0 else LabelSpot.BELOW


def _inner(spot: Spot, start: XY, end: XY, text: str, small: bool) -> Iterator[Shape]:
    a, b = spot.at(start), spot.at(end)
    yield Path((a, b), Stroke.DASHED)
    if small:
        _, bottom, right, _ = spot.box
        yield Label(text, right, bottom, LabelSpot.RIGHT)
        return
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    yield Label(text, *middle, LabelSpot.RIGHT, within=spot.box, on_hatch=Hatch.DRAINS)


def _circle(spot: Spot, degrees: float, size: str, metric: bool) -> Iterator[Shape]:
    radius = math.hypot(*spot.outline[1 if degrees < 360 else 0])
    if degrees >= 180:
        a, b = spot.at((-radius, 0.0)), spot.at((radius, 0.0))
        middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        if degrees > 180:
            yield Path((a, b), Stroke.DASHED)
        whole = degrees > 180
        box = spot.box if whole else None
        yield Label(f"{size} across", *middle, LabelSpot.BELOW, within=box, on_hatch=Hatch.DRAINS)
        return
    half = _half(spot.piece.shape.lengths[0])
    yield _at_side(spot, 0, f"radius {length_words(half, metric)}")


def _half(value: Quantity) -> Quantity:
    half: Quantity = value / 2
    return half


def _offsets(spot: Spot, sizes: list[str]) -> Iterator[Shape]:
    shape = spot.piece.shape
    base = spot.outline[1][0]
    steps = len(sizes) - 2
    corners = dict.fromkeys(spot.outline[2:])
    for place, (size, length) in enumerate(zip(sizes[1:], shape.lengths[1:], strict=True)):
        x = base * place / steps
        # The foot of each measure is a corner, but for what floats leave over.
        tall = next((y for px, y in corners if abs(px - x) < 1e-9 * max(base, 1.0)), 0.0)
        a, b = spot.at((x, 0.0)), spot.at((x, tall))
        if 0 < place < steps:
            yield Path((a, b), Stroke.DASHED)
        if magnitude(length, "ft") > 0:
            yield Label(size, *b, LabelSpot.ABOVE)
    first, second = spot.at((0.0, 0.0)), spot.at((base / steps, 0.0))
    middle = ((first[0] + second[0]) / 2, (first[1] + second[1]) / 2)
    yield Label(f"every {sizes[0]}", *middle, LabelSpot.BELOW)


def surface_drawing(
    pieces: Sequence[Piece | Placed],
    metric: bool = False,
    name: str = "",
    share: float | None = 1.0,
    north: float | None = None,
    way: Sequence[str] = (),
    material: Material = Material.ROOF,
) -> Drawing:
    """Return the pieces of a surface side by side, or where they are ``Placed``, all to one scale.

    ``share`` is the part of its water that drains to the garden, nought to one; none where it is
    not known. All of a surface is shaded; of a part only the size is known, so a bar shows how
    much, and ``way`` says by which partings. ``north`` is in degrees clockwise from the top of the
    page. A piece that is there several times is drawn once. The area is that of the pieces,
    wherever they lie. ``material`` is what they are painted as. Raises ValueError for no piece,
    cut-outs as big as what they are cut from, or
    a share outside nought to one.
    """
    if share is not None and not 0 <= share <= 1:
        raise ValueError("The part that drains here must be from 0 to 100 percent.")
    unit = "m" if metric else "ft"
    spots = lay_pieces(pieces, unit)
    area = plan_area([spot.piece for spot in spots])
    here = _drains_words(area, share, metric)
    told = [_told(spot, metric) for spot in spots]
    return Drawing(
        title=f"{name or 'SURFACE'}: {_area(area, metric)}",
        description=" ".join([f"{'; '.join(told)}.", here, *way]),
        shapes=tuple(_shapes(spots, metric, unit, north, share, material)),
        keys=tuple(_keys(spots, metric, share, material)),
        notes=(here, *way, *_overlaps(spots), *_position_note(spots)),
    )


def _keys(
    spots: Sequence[Spot], metric: bool, share: float | None, material: Material
) -> Iterator[Key]:
    if share == 1:
        yield Key(Hatch.DRAINS, "drains here", material)
    elif share is not None:
        yield Key(Stroke.BAR, "drains here: how much of it, not where")
    if any(spot.piece.cut for spot in spots):
        yield Key(Hatch.CUT, "cut out", Material.CUT)
    if _inside(spots, metric):
        yield Key(Stroke.DASHED, "a measure inside")


def _area(area: Quantity, metric: bool) -> str:
    return show(area, "m**2" if metric else "ft**2", 3)


def _drains_words(area: Quantity, share: float | None, metric: bool) -> str:
    if share is None:
        return "How much of it drains here is not known yet."
    if share == 1:
        return "All of it drains here."
    if share == 0:
        return "None of it drains here."
    unit = "m**2" if metric else "ft**2"
    part = quantity(magnitude(area, unit) * share, unit)
    return f"{_percent(share)} of it drains here: {_area(part, metric)} of {_area(area, metric)}."


def _percent(share: float) -> str:
    return f"{plain_number(significant(100 * share, 3))} %"


def _told(spot: Spot, metric: bool) -> str:
    cut = "cut-out" if spot.piece.cut else "piece"
    return f"{cut} {spot.number}, {measures(spot.piece, metric)}"


def _inside(spots: Sequence[Spot], metric: bool) -> bool:
    return any(
        getattr(shape, "stroke", None) is Stroke.DASHED
        for spot in spots
        if spot.host is None
        for shape in side_shapes(spot, metric)
    )


def _overlaps(spots: Sequence[Spot]) -> Iterator[str]:
    """Say which pieces were laid over each other: the ground there may be counted twice."""
    bodies = [spot for spot in spots if spot.fixed and not spot.piece.cut]
    for one, other in combinations(bodies, 2):
        if lie_over(one.corners, other.corners):
            yield (
                f"Pieces {one.number} and {other.number} lie over each other here; the area counts "
                "both in full."
            )


def _position_note(spots: Sequence[Spot]) -> tuple[str, ...]:
    if len(spots) == 1 or any(spot.fixed for spot in spots):
        return ()
    return ("The measures do not say how the pieces lie together; the area does not depend on it.",)


def _shapes(
    spots: Sequence[Spot],
    metric: bool,
    unit: str,
    north: float | None,
    share: float | None,
    material: Material,
) -> Iterator[Shape]:
    drains = Hatch.DRAINS if share == 1 else None
    for spot in sorted(spots, key=lambda spot: spot.piece.cut):
        hatch, stuff = (Hatch.CUT, Material.CUT) if spot.piece.cut else (drains, material)
        outline = polygon(spot.corners, Stroke.SOLID, hatch, border=True)
        yield outline._replace(material=stuff)
    for spot in spots:
        if spot.host is None:
            others = [one for one in spots if one is not spot]
            yield from side_shapes(spot, metric, others, _is_small(spot, spots))
    left, bottom, right, top = _all(spots)
    # Under the foot there is a line of measures before the scale.
    room = max(0.12 * (right - left), 0.2 * (top - bottom))
    yield from scale_bar(left, bottom - room, right - left, unit)
    if share is not None and share < 1:
        yield from _share_bar(left, bottom - 1.7 * room, right - left, share)
    for spot in spots:
        yield _name(spot, metric, spots)
    if north is not None:
        turn = math.radians(north)
        arrow = (math.sin(turn), math.cos(turn))
        yield Label("north", left, top + room / 2, LabelSpot.START, arrow=arrow)


def _share_bar(x: float, y: float, wide: float, share: float) -> Iterator[Shape]:
    """Yield a bar as long as the drawing is wide, filled for the part that drains here."""
    part = x + share * wide
    yield line(part, y, x + wide, y, Stroke.DOTTED)
    if share > 0:
        yield line(x, y, part, y, Stroke.BAR)
    yield Label(_percent(share), x + wide, y, LabelSpot.RIGHT)


def _is_small(spot: Spot, spots: Sequence[Spot]) -> bool:
    left, _, right, _ = _all(spots)
    return not spot.fixed and spot.box[2] - spot.box[0] < _SMALL * (right - left)


def _name(spot: Spot, metric: bool, spots: Sequence[Spot]) -> Label:
    x, y = _middle(spot.corners)
    times = "" if spot.piece.count == 1 else f", {spot.piece.count} times"
    if spot.piece.cut:
        size = f" {measures(spot.piece, metric)}" if spot.host is not None else times
        text = f"[{spot.number}] cut out{size}"
    else:
        area = _area(spot.piece.shape.area, metric)
        text = f"[{spot.number}] {area}{' each' if times else ''}{times}"
    host = next((one for one in spots if one.number == spot.host), spot)
    if _is_small(host, spots):
        left, _, right, top = host.box
        if host is not spot:
            return Label(text, right, y, LabelSpot.RIGHT, marker=f"[{spot.number}]")
        return Label(text, (left + right) / 2, top, LabelSpot.ABOVE, marker=f"[{spot.number}]")
    return Label(
        text,
        x,
        y,
        within=spot.box,
        outline=spot.corners,
        marker=f"[{spot.number}]",
        on_hatch=Hatch.CUT if spot.piece.cut else Hatch.DRAINS,
    )


def _middle(corners: Sequence[XY]) -> XY:
    """The middle of the area; of the corners where that is next to nothing."""
    area = x = y = 0.0
    for (x0, y0), (x1, y1) in sides_of(corners):
        part = x0 * y1 - x1 * y0
        area, x, y = area + part, x + part * (x0 + x1), y + part * (y0 + y1)
    left, bottom, right, top = extent(corners)
    if abs(area) > 1e-9 * (right - left) * (top - bottom):
        x, y = x / (3 * area), y / (3 * area)
        if left <= x <= right and bottom <= y <= top:
            return x, y
    return (left + right) / 2, (bottom + top) / 2


def _all(spots: Sequence[Spot]) -> tuple[float, float, float, float]:
    return extent([corner for spot in spots for corner in spot.corners])
