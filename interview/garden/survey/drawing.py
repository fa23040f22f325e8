"""The pieces of a surface, drawn to one scale."""

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
    Shape,
    Stroke,
    line,
    polygon,
)
from interview.garden.survey.piece_layout import Placed, Spot, lay_pieces, lie_over
from interview.garden.survey.piece_sides import measures, side_shapes
from interview.garden.survey.pieces import Piece, plan_area
from interview.quantities.units import (
    Quantity,
    magnitude,
    plain_number,
    quantity,
    show,
    significant,
)

__all__ = ["Placed", "Spot", "lay_pieces", "surface_drawing"]


def surface_drawing(
    pieces: Sequence[Piece | Placed],
    metric: bool = False,
    name: str = "",
    share: float | None = 1.0,
    north: float | None = None,
    way: Sequence[str] = (),
) -> Drawing:
    """Return the pieces of a surface side by side, or where they are ``Placed``, all to one scale.

    ``share`` is the part of its water that drains to the garden, nought to one; none where it is
    not known. All of a surface is shaded; of a part only the size is known, so a bar shows how
    much, and ``way`` says by which partings. ``north`` is in degrees clockwise from the top of the
    page. A piece that is there several times is drawn once. The area is that of the pieces,
    wherever they lie. Raises ValueError for no piece, cut-outs as big as what they are cut from, or
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
        shapes=tuple(_shapes(spots, metric, unit, north, share)),
        keys=tuple(_keys(spots, metric, share)),
        notes=(here, *way, *_overlaps(spots), *_position_note(spots)),
    )


def _keys(spots: Sequence[Spot], metric: bool, share: float | None) -> Iterator[Key]:
    if share == 1:
        yield Key(Hatch.DRAINS, "drains here")
    elif share is not None:
        yield Key(Stroke.BAR, "drains here: how much of it, not where")
    if any(spot.piece.cut for spot in spots):
        yield Key(Hatch.CUT, "cut out")
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
    spots: Sequence[Spot], metric: bool, unit: str, north: float | None, share: float | None
) -> Iterator[Shape]:
    drains = Hatch.DRAINS if share == 1 else None
    for spot in sorted(spots, key=lambda spot: spot.piece.cut):
        yield polygon(spot.corners, Stroke.SOLID, Hatch.CUT if spot.piece.cut else drains)
    for spot in spots:
        if spot.host is None:
            others = [one for one in spots if one is not spot]
            yield from side_shapes(spot, metric, others)
    left, bottom, right, top = _all(spots)
    # Under the foot there is a line of measures before the scale.
    room = max(0.12 * (right - left), 0.2 * (top - bottom))
    yield from scale_bar(left, bottom - room, right - left, unit)
    if share is not None and share < 1:
        yield from _share_bar(left, bottom - 1.7 * room, right - left, share)
    for spot in spots:
        yield _name(spot, metric)
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
        on_hatch=Hatch.CUT if spot.piece.cut else Hatch.DRAINS,
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
