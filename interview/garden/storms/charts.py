"""The soak test, a storm in the garden, and years or months, as charts."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

from interview.drawing.scale import ticks
from interview.drawing.scene import (
    XY,
    Drawing,
    Ink,
    Key,
    Label,
    LabelSpot,
    Mark,
    Material,
    Path,
    Shape,
    Stroke,
    Symbol,
    filled,
    line,
)
from interview.garden.pond.routing import RoutedStorm
from interview.garden.soak.rates import SoakTest
from interview.garden.soak.readings import Interval
from interview.garden.soak.times import utc
from interview.garden.soak.water_level import Stand
from interview.quantities.shown import PLAIN, rate_words
from interview.quantities.units import Quantity, magnitude, plain_number, significant

DAY_H = 24.0
WATER_LEFT = "WATER LEFT in the test hole"
_ACROSS, _UP = 6, 5
"""Most numbers on the axes."""


def _number(x: float) -> str:
    return plain_number(x) if x else ""


def _axes(wide: float, high: float, named: Callable[[float], str] = _number) -> Iterator[Shape]:
    """Yield axes from nought with round numbers, those of the level one as they are ``named``."""
    yield line(0, 0, 0, high)
    yield line(0, 0, wide, 0)
    for x in ticks(wide, _ACROSS):
        if x:
            yield Mark(x, 0, Symbol.TICK)
        if name := named(x):
            yield Label(name, x, 0, LabelSpot.BELOW, optional=True)
    for y in ticks(high, _UP):
        yield Mark(0, y, Symbol.TICK)
        yield Label(plain_number(y), 0, y, LabelSpot.LEFT, optional=True)


def _over(words: str, high: float) -> Label:
    """Return what the upright axis tells, over it."""
    return Label(words, 0, high, LabelSpot.START, shift=(0, -1))


def _under(words: str, wide: float) -> Label:
    """Return what the level axis tells, under its numbers."""
    return Label(words, wide / 2, 0, LabelSpot.BELOW, shift=(0, 1))


def _chart(size: XY, title: str, told: str, shapes: Sequence[Shape], *keys: Key) -> Drawing:
    """Return a chart of this ``size`` along its axes."""
    return Drawing(
        title=title,
        description=told,
        shapes=tuple(shapes),
        keys=keys,
        proportional=False,
        print_ratio=0.45,
        # From number to number of both axes.
        steps=(ticks(size[0], _ACROSS)[1], ticks(size[1], _UP)[1]),
    )


def drop_chart(soak_test: SoakTest, metric: bool = False) -> Drawing:
    """Return the water left in the test hole against time.

    Each reading is a mark, crossed where it was not used; the dashed line falls from every fill at
    the drop rate, which is the mean of the readings.
    """
    unit, rate_unit = ("mm", "mm/h") if metric else ("in", "in/h")
    rows = soak_test.intervals
    points = [(_hours(row.end), magnitude(row.depth_after, unit)) for row in rows]
    starts = [(_hours(row.start), magnitude(row.depth_before, unit)) for row in rows]
    wide = max(x for x, _ in points)
    high = max(y for _, y in (*points, *starts))
    rate = magnitude(soak_test.drop_rate, rate_unit)
    mean = rate_words(soak_test.drop_rate, metric)
    shapes: list[Shape] = list(_axes(wide, high))
    shapes += [_over(f"water left, {unit}", high), _under("hours", wide)]
    for fill in _fills(rows):
        shapes.append(_water(fill, unit))
    for fill in _fills(rows):
        shapes += _mean_line(fill, rate, unit)
    shapes += [Mark(*start) for start in starts]
    shapes += [
        Mark(*end, Symbol.POINT if row.valid else Symbol.CROSS)
        for row, end in zip(rows, points, strict=True)
    ]
    unused = any(not row.valid for row in rows)
    keys = [Key(Symbol.POINT, "a reading"), Key(Stroke.DASHED, f"average drop rate {mean}")]
    keys += [Key(Symbol.CROSS, "a reading not used")] if unused else []
    told = "; ".join(f"{plain_number(round(x, 2))} h {y:.4g} {unit}" for x, y in points)
    said = f"Water at the start {starts[0][1]:.4g} {unit}, then {told}."
    said = f"{said} The average drop rate is {mean}."
    return _chart((wide, high), WATER_LEFT, said, shapes, *keys)


class Coming(NamedTuple):
    """What is still to come of a soak test."""

    due: dt.datetime | None = None
    """When the next reading is."""
    rate: Quantity | None = None
    """How fast the water falls meanwhile, a speed; not known before the first reading."""
    now: Stand | None = None
    """About where the water stands now."""


_BEYOND = 1.2
"""How far the chart of a running test goes on after what is due, as a multiple."""
_LEAST_H = 1.0
"""Hours that it shows at least."""


def running_chart(
    fills: Sequence[Sequence[Stand]],
    coming: Coming,
    metric: bool = False,
    zone: dt.tzinfo | None = None,
    brief: bool = False,
) -> Drawing:
    """Return the water of a test under way by the clock of ``zone``: read, estimated, to come.

    ``fills`` are the readings of each filling, one at least; their depths are left out where it is
    to be ``brief``.
    """
    unit = "mm" if metric else "in"
    began = fills[0][0].at
    stands = [stand for fill in fills for stand in fill]
    ends = [stand.at for stand in stands]
    ends += [coming.due] if coming.due is not None else []
    ends += [coming.now.at] if coming.now is not None else []
    wide = max(_since(began, max(ends)) * _BEYOND, _LEAST_H)
    high = max(magnitude(stand.left, unit) for stand in stands)
    shapes: list[Shape] = []
    for fill in fills:
        curve = [(_since(began, one.at), magnitude(one.left, unit)) for one in fill]
        if fill is fills[-1] and coming.now is not None:
            curve.append((_since(began, coming.now.at), magnitude(coming.now.left, unit)))
        if len(curve) > 1:
            under = ((curve[0][0], 0.0), *curve, (curve[-1][0], 0.0))
            shapes.append(filled(under, Material.WATER))
    shapes += _axes(wide, high, lambda x: _clock(began + dt.timedelta(hours=x), zone))
    last = (_since(began, fills[-1][-1].at), magnitude(fills[-1][-1].left, unit))
    shapes += _to_come(began, last, wide, coming, unit, zone)
    read = [f"{plain_number(round(magnitude(one.left, unit), 3))} {unit}" for one in stands]
    places = [(_since(began, one.at), magnitude(one.left, unit)) for one in stands]
    for stand, place in zip(stands, places, strict=True):
        shapes.append(Mark(*place, Symbol.POINT if stand.counts else Symbol.CROSS))
    if not brief:
        shapes.append(_over(f"water left, {unit}", high))
        shapes += [
            Label(words, *place, LabelSpot.ABOVE, shift=(3, 0), optional=True)
            for words, place in zip(read, places, strict=True)
        ]
    told = "; ".join(
        f"{_clock(stand.at, zone)} {words}" for stand, words in zip(stands, read, strict=True)
    )
    keys = [Key(Symbol.POINT, "a reading")]
    keys += [Key(Stroke.DOTTED, "about as it goes on")] if coming.rate is not None else []
    unused = not all(stand.counts for stand in stands)
    keys += [Key(Symbol.CROSS, "a reading not used")] if unused else []
    return _chart((wide, high), WATER_LEFT, f"Water left by the clock: {told}.", shapes, *keys)


def _to_come(
    began: dt.datetime,
    last: XY,
    wide: float,
    coming: Coming,
    unit: str,
    zone: dt.tzinfo | None,
) -> Iterator[Shape]:
    """Yield how the water goes on at its rate from the ``last`` level, and the next reading."""
    x, y = last
    rate = None if coming.rate is None else magnitude(coming.rate, f"{unit}/h")
    if coming.now is not None:
        x, y = _since(began, coming.now.at), magnitude(coming.now.left, unit)
    if rate is not None and wide > x:
        end = min(wide, x + y / rate) if rate > 0 else wide
        go_on = line(x, y, end, y - rate * (end - x), Stroke.DOTTED)
        yield go_on._replace(ink=Ink.WATER)
    if coming.due is not None:
        at = _since(began, coming.due)
        left = 0.0 if rate is None else max(0.0, y - rate * (at - x))
        words = f"○ {_clock(coming.due, zone)}"
        if left:
            yield Label(
                words, at, left, LabelSpot.START, shift=(-1, 0), over_line=True, ink=Ink.DUE
            )
        else:
            yield Label(words, at, 0.0, LabelSpot.ABOVE, ink=Ink.DUE)


def _since(began: dt.datetime, at: dt.datetime) -> float:
    return (utc(at) - utc(began)).total_seconds() / 3600


def _clock(at: dt.datetime, zone: dt.tzinfo | None) -> str:
    return f"{utc(at).astimezone(zone) if zone else at:%H:%M}"


def _hours(value: Quantity) -> float:
    return magnitude(value, "h")


def _fills(rows: Sequence[Interval]) -> list[list[Interval]]:
    """The intervals of each fill together."""
    fills: list[list[Interval]] = [[rows[0]]]
    for before, row in pairwise(rows):
        apart = magnitude(row.depth_before, "in") - magnitude(before.depth_after, "in")
        if abs(apart) > 1e-9:  # filled again; else what floats leave over
            fills.append([])
        fills[-1].append(row)
    return fills


def _water(fill: Sequence[Interval], unit: str) -> Path:
    """The water left of one fill, from reading to reading."""
    start, top = _hours(fill[0].start), magnitude(fill[0].depth_before, unit)
    read = [(_hours(row.end), magnitude(row.depth_after, unit)) for row in fill]
    return filled(((start, 0.0), (start, top), *read, (read[-1][0], 0.0)), Material.WATER)


def _mean_line(fill: Sequence[Interval], rate: float, unit: str) -> list[Shape]:
    used = [row for row in fill if row.valid]
    if not used:
        return []
    start, top = _hours(used[0].start), magnitude(used[0].depth_before, unit)
    end = _hours(used[-1].end)
    if rate * (end - start) > top:
        end = start + top / rate
    return [line(start, top, end, max(0.0, top - rate * (end - start)), Stroke.DASHED)]


def pond_chart(
    routed_storm: RoutedStorm, metric: bool = False, of: str = "", spills_to: str = ""
) -> Drawing:
    """Return the depth of the pond against the time since the rain began.

    The full pond is a level line and 24 h an upright one, so that both can be judged at a look.
    ``of`` names the bed where there are several, ``spills_to`` where its water runs over to.
    """
    unit = "mm" if metric else "in"
    curve = [
        (_hours(time), max(0.0, magnitude(depth, unit)))
        for time, depth in routed_storm.breakpoints(between=8)
    ]
    full = magnitude(routed_storm.pool.stage.depth, unit)
    wide = max(DAY_H * 1.08, curve[-1][0])
    high = full * 1.12
    peak, empty = routed_storm.peak, routed_storm.empty_at
    water = tuple(_thinned([(0.0, 0.0), *curve, (curve[-1][0], 0.0)]))
    shapes: list[Shape] = [filled(water, Material.WATER)]
    shapes += [
        *_axes(wide, high),
        _over(f"pond, {unit}", high),
        _under("hours since the rain began", wide),
        line(0, full, wide, full, Stroke.DASHED),
        line(DAY_H, 0, DAY_H, high, Stroke.DASHED)._replace(ink=Ink.LOOK),
        Path(_thinned(curve), Stroke.CURVE, border=True),
        Label("24 h", DAY_H, high, LabelSpot.ABOVE),
        Label(f"full pond {_depth(full, unit)}", DAY_H / 2, full, LabelSpot.ABOVE),
    ]
    over = magnitude(routed_storm.spill_volume, "ft**3") > 1e-9  # less is rounding
    words = (
        f"The pond is {_depth(magnitude(peak, unit), unit)} deep at most and empty "
        f"{PLAIN.write(_hours(empty))} h after the rain began; "
        + (f"{'some water runs over ' + spills_to}".rstrip() if over else "nothing runs over")
        + "."
    )
    chart = _chart(
        (wide, high),
        f"POND DEPTH in the storm{', ' + of if of else ''}",
        words,
        shapes,
        Key(Stroke.CURVE, "pond depth", Material.WATER),
        Key(Stroke.DASHED, "full pond, and 24 h"),
    )
    return replace(chart, notes=(words,))


def _depth(number: float, unit: str) -> str:
    return f"{PLAIN.write(number)} {unit}"


def _thinned(curve: Sequence[XY]) -> tuple[XY, ...]:
    """Leave out points that repeat the one before."""
    kept = [curve[0]]
    kept += [after for before, after in pairwise(curve) if after != before]
    return tuple(kept)


def bars(rows: Sequence[tuple[str, float]], unit: str, title: str = "") -> Drawing:
    """Return a table of bars from nought, one line each: name, bar, number and ``unit``.

    Raises ValueError for no row, or a number below zero or not finite.
    """
    if not rows:
        raise ValueError("There is nothing to draw yet.")
    if any(not 0 <= number < float("inf") for _, number in rows):
        raise ValueError("Every bar must be a number of zero or more.")
    last = len(rows) - 1
    shapes: list[Shape] = [line(0, last, 0, 0)] if last else []
    told = []
    for place, (name, number) in enumerate(rows):
        y = float(last - place)
        value = f"{plain_number(significant(number, 3))} {unit}".rstrip()
        told.append(f"{name} {value}")
        if number > 0:
            shapes.append(line(0, y, number, y, Stroke.BAR))
        else:
            shapes.append(Mark(0, y, Symbol.TICK))
        shapes.append(Label(name, 0, y, LabelSpot.LEFT))
        shapes.append(Label(value, number, y, LabelSpot.RIGHT))
    return Drawing(
        title=title,
        description=f"{title + ': ' if title else ''}{'; '.join(told)}.",
        shapes=tuple(shapes),
        proportional=False,
        lines=len(rows),
        print_ratio=0.2,
    )
