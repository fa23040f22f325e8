"""The pieces of a surface, drawn to one scale."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from interview.calc.pieces import Piece, plan_area
from interview.drawing.piece_layout import Placed, Spot, lay_pieces
from interview.drawing.piece_sides import measures, side_shapes
from interview.drawing.scale import scale_bar
from interview.drawing.scene import XY, Drawing, Hatch, Key, Label, Place, Shape, Stroke, polygon
from interview.units import Quantity, magnitude, plain_number, quantity, show, significant

__all__ = ["Placed", "Spot", "lay_pieces", "surface_drawing"]


def surface_drawing(
    pieces: Sequence[Piece | Placed],
    metric: bool = False,
    name: str = "",
    share: float = 1.0,
    north: float | None = None,
) -> Drawing:
    """Return the pieces of a surface side by side, or where they are ``Placed``, all to one scale.

    ``share`` is the part of its water that drains to the garden, nought to one. ``north`` is in
    degrees clockwise from the top of the page. A piece that is there several times is drawn once.
    The area is that of the pieces, wherever they lie. Raises ValueError for no piece, cut-outs as
    big as what they are cut from, or a share outside nought to one.
    """
    if not 0 <= share <= 1:
        raise ValueError("The part that drains here must be from 0 to 100 percent.")
    unit = "m" if metric else "ft"
    spots = lay_pieces(pieces, unit)
    area = plan_area([spot.piece for spot in spots])
    here = _drains_words(area, share, metric)
    cut = any(spot.piece.cut for spot in spots)
    keys = (Key(Hatch.CUT, "cut out"),) if cut else ()
    told = [_told(spot, metric) for spot in spots]
    return Drawing(
        title=f"{name or 'SURFACE'}: {_area(area, metric)}",
        description=f"{'; '.join(told)}. {here}",
        shapes=tuple(_shapes(spots, metric, unit, north)),
        keys=(*keys, Key(Stroke.DASHED, "a measure inside")) if _inside(spots, metric) else keys,
        notes=(here, *_position_note(spots)),
    )


def _area(area: Quantity, metric: bool) -> str:
    return show(area, "m**2" if metric else "ft**2", 3)


def _drains_words(area: Quantity, share: float, metric: bool) -> str:
    if share == 1:
        return "All of it drains here."
    if share == 0:
        return "None of it drains here."
    unit = "m**2" if metric else "ft**2"
    part = quantity(magnitude(area, unit) * share, unit)
    percent = plain_number(significant(100 * share, 3))
    return f"{percent} % of it drains here: {_area(part, metric)} of {_area(area, metric)}."


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


def _position_note(spots: Sequence[Spot]) -> tuple[str, ...]:
    if len(spots) == 1 or any(spot.fixed for spot in spots):
        return ()
    return ("The measures do not say how the pieces lie together; the area does not depend on it.",)


def _shapes(spots: Sequence[Spot], metric: bool, unit: str, north: float | None) -> Iterator[Shape]:
    for spot in sorted(spots, key=lambda spot: spot.piece.cut):
        hatch = Hatch.CUT if spot.piece.cut else None
        yield polygon(spot.corners, Stroke.SOLID, hatch)
    for spot in spots:
        if spot.host is None:
            yield from side_shapes(spot, metric)
    left, bottom, right, top = _all(spots)
    room = 0.12 * max(right - left, top - bottom)
    yield from scale_bar(left, bottom - room, right - left, unit)
    for spot in spots:
        yield _name(spot, metric)
    if north is not None:
        turn = math.radians(north)
        arrow = (math.sin(turn), math.cos(turn))
        yield Label("north", left, top + room / 2, Place.START, arrow=arrow)


def _name(spot: Spot, metric: bool) -> Label:
    x, y = _middle(spot.corners)
    times = "" if spot.piece.count == 1 else f", {spot.piece.count} times"
    if spot.piece.cut:
        size = f" {measures(spot.piece, metric)}" if spot.host is not None else times
        text = f"[{spot.number}] cut out{size}"
    else:
        area = _area(spot.piece.shape.area, metric)
        text = f"[{spot.number}] {area}{' each' if times else ''}{times}"
    return Label(
        text,
        x,
        y,
        within=spot.box,
        outline=spot.corners,
        marker=f"[{spot.number}]",
        on_hatch=spot.piece.cut,
    )


def _middle(corners: Sequence[XY]) -> XY:
    """The middle of the area; of the corners where that is next to nothing."""
    area = x = y = 0.0
    for (x0, y0), (x1, y1) in zip(corners, (*corners[1:], corners[0]), strict=True):
        part = x0 * y1 - x1 * y0
        area, x, y = area + part, x + part * (x0 + x1), y + part * (y0 + y1)
    left, bottom, right, top = _box_of(corners)
    if abs(area) > 1e-9 * (right - left) * (top - bottom):
        x, y = x / (3 * area), y / (3 * area)
        if left <= x <= right and bottom <= y <= top:
            return x, y
    return (left + right) / 2, (bottom + top) / 2


def _box_of(corners: Sequence[XY]) -> tuple[float, float, float, float]:
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return min(xs), min(ys), max(xs), max(ys)


def _all(spots: Sequence[Spot]) -> tuple[float, float, float, float]:
    return _box_of([corner for spot in spots for corner in spot.corners])
