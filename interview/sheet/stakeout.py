"""Pegging the garden out from one string, on the sheet and the yard card."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import NamedTuple

from interview.garden.form import pegs
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Lie
from interview.garden.form.outline import Station
from interview.garden.form.pegs import Offset
from interview.garden.pictures import lie_if_measured
from interview.garden.plan import Plan
from interview.garden.site import cautions
from interview.garden.size import questions as bed
from interview.garden.summary import may_dig, wrap
from interview.quantities.shown import length_words
from interview.quantities.units import magnitude, quantity

LINES = ("floor", "full pond", "rim")
SHAPE_WORDS = {
    FloorShape.ROUNDED: "round ends",
    FloorShape.RECTANGLE: "square corners",
    FloorShape.OVAL: "an oval",
    FloorShape.KIDNEY: "a kidney",
    FloorShape.OWN: "your own outline",
}
MOST_ROWS = 9
"""Rows of the table that a printed card has room for."""
_STEPS_FT = (1.0, 2.0, 3.0, 5.0, 10.0, 20.0)
_STEPS_M = (0.5, 1.0, 2.0, 5.0)
_FOOT_M = 0.3048
_ALIKE = 0.02
"""Feet within which a rim is the crest all round."""

Row = tuple[str, ...]


class PegLine(NamedTuple):
    """One line of the garden, pegged from the string; lengths in feet."""

    at: Callable[[float], Offset | None]
    """The pegs at a station, from the middle of the bed."""
    ends: tuple[float, float] | None
    """Where it crosses the string, left and right of the middle."""
    parallel: bool
    """Whether it is as far from the floor all round."""


def peg_lines(basin: Basin, lie: Lie | None) -> tuple[PegLine, ...]:
    """Return floor, full pond and rim; the rim is the crest, and uphill the edge of the cut."""
    one = basin.outline
    pond = basin.side_slope * magnitude(basin.depth, "ft")
    rim = basin.side_slope * magnitude(basin.rim_height, "ft")
    found = [
        PegLine(partial(pegs.offset_at, one, q), pegs.ends_along(one, q), True)
        for q in (0.0, pond, rim)
    ]
    if lie is not None and not _crest_all_round(lie):
        ring, string = lie.inside_line, pegs.string_height(one)
        at = partial(pegs.ring_offset, ring, string)
        found[2] = PegLine(at, pegs.ring_ends(ring, string), False)
    return tuple(found)


def _crest_all_round(lie: Lie) -> bool:
    return all(abs(lie.inner(ray) - lie.crest) < _ALIKE for ray in lie.outline.rays)


class PegTable(NamedTuple):
    """The pegs of one bed in words: the same on the sheet and on the card."""

    basin: Basin
    lie: Lie | None
    metric: bool

    def long(self, feet: float) -> str:
        return length_words(quantity(feet, "ft"), self.metric)

    @property
    def lines(self) -> tuple[PegLine, ...]:
        """Floor, full pond and rim."""
        return peg_lines(self.basin, self.lie)

    @property
    def own(self) -> bool:
        """Whether the stations are those of the person's own outline."""
        return self.basin.shape is FloorShape.OWN

    def rows(self, most: int = MOST_ROWS) -> list[Row]:
        """Return the rows of the table: station, side, floor, full pond, rim."""
        lines = self.lines
        ends = self._ends(lines)
        if self.own:
            stations: Sequence[Station] = self.basin.stations
            for skip in range(1, len(stations) + 1):
                places = [one.along for one in (*stations[:-1:skip], stations[-1])]
                rows = self._merged(lines, places, pegs.own_middle(self.basin.outline))
                if len(rows) + len(ends) <= most:
                    break
            return [*rows, *ends]
        far = max(line.ends[1] for line in lines if line.ends)
        one = 1 / _FOOT_M if self.metric else 1.0
        for step in _STEPS_M if self.metric else _STEPS_FT:
            places = pegs.stations_along(self.basin.outline, step * one, far)
            rows = self._merged(lines, places, 0.0)
            if len(rows) + len(ends) <= most:
                break
        return [*rows, *ends]

    def _merged(
        self, lines: Sequence[PegLine], places: Sequence[float], middle: float
    ) -> list[Row]:
        """Return the rows of the stations; those with the same pegs in one row."""
        kept: list[tuple[str, str, list[Row]]] = []
        for place in places:
            cells = self._cells([line.at(place - middle) for line in lines])
            name = self._station(place)
            if kept and kept[-1][2] == cells and not self.own:
                kept[-1] = (kept[-1][0], name, cells)
            elif cells:
                kept.append((name, name, cells))
        return [
            (first if first == last else f"{first} to {last}", *cell)
            for first, last, cells in kept
            for cell in cells
        ]

    def _station(self, place: float) -> str:
        return "0" if abs(place) < 1e-9 else self.long(place)

    def _cells(self, found: Sequence[Offset | None]) -> list[Row]:
        """Return one row where both sides of every line are alike, else one a side."""
        if not any(one and one.uphill + one.downhill > 1e-6 for one in found):
            return []
        up = self._side([one.uphill if one else None for one in found])
        down = self._side([one.downhill if one else None for one in found])
        return [("each side", *up)] if up == down else [("uphill", *up), ("downhill", *down)]

    def _side(self, found: Sequence[float | None]) -> Row:
        return tuple("-" if one is None or abs(one) < 1e-6 else self.long(one) for one in found)

    def _ends(self, lines: Sequence[PegLine]) -> list[Row]:
        if self.own:
            middle = pegs.own_middle(self.basin.outline)
            return [
                (
                    f"{name} end",
                    "",
                    *(self._station(one.ends[at] + middle) if one.ends else "-" for one in lines),
                )
                for at, name in enumerate(("left", "right"))
            ]
        ends = tuple(self.long(line.ends[1]) if line.ends else "-" for line in lines)
        rows: list[Row] = [("ends at", "both ways", *ends)]
        if self.basin.shape is FloorShape.RECTANGLE:
            rows.append(("diagonal", "", *(self._diagonal(line) for line in lines)))
        return rows

    def _diagonal(self, line: PegLine) -> str:
        """From corner to corner, where the four corners are square."""
        middle = line.at(0.0)
        if not line.parallel or middle is None or line.ends is None:
            return "-"
        return self.long(math.hypot(2 * line.ends[1], middle.uphill + middle.downhill))

    def text(self, rows: Sequence[Row]) -> Iterator[str]:
        """Yield the table in 75 columns or fewer."""
        where = "along the string" if self.own else "from the middle"
        for row in ((where, "to", *LINES), *rows):
            lines = " ".join(f"{one:<15}" for one in row[2:])
            yield f"{row[0]:<16} {row[1]:<9} {lines}".rstrip()

    def string(self) -> str:
        """Say where the string lies, and how to peg from it."""
        if self.own:
            return (
                "Lay the peg string where it lay when you measured the outline; distances along it "
                "count from its 0, and a minus lies before it. Measure at right angles to both "
                "sides."
            )
        far = max(line.ends[1] for line in self.lines if line.ends)
        where = (
            "through the middles of the kidney's two round ends"
            if self.basin.shape is FloorShape.KIDNEY
            else "through the middle of the bed"
        )
        return (
            f"Stretch a peg string {self.long(2 * far)} long level across the slope, {where}, and "
            "tie a knot at its middle; the knot goes where the middle of the outline lies that you "
            "measured the distances from. Measure along it both ways from there, and at right "
            "angles to both sides."
        )

    def round_words(self) -> str:
        """Say that round ends are laid with a hose between their pegs; else nothing."""
        if self.basin.shape in (FloorShape.RECTANGLE, FloorShape.OWN):
            return ""
        return (
            "Between the pegs lay a hose in a smooth curve: straight lines from peg to peg make "
            "the garden too small, a kidney by a tenth."
        )

    def hose(self) -> str:
        """Say in short how the pegs are joined, for the card."""
        if self.basin.shape is FloorShape.KIDNEY or not self.round_words():
            return ""
        return "Join the pegs with a hose in a smooth curve."

    def kidney(self) -> str:
        """Say how a kidney is laid with a hose, its hollow side uphill; else nothing."""
        one = self.basin.outline
        if one.shape is not FloorShape.KIDNEY:
            return ""
        bend, half = one.radius_of_bend, one.straight / one.radius_of_bend / 2
        radius = one.end_radius
        pond, rim = (
            radius + self.basin.side_slope * magnitude(height, "ft")
            for height in (self.basin.depth, self.basin.rim_height)
        )
        return (
            f"With a hose: from a point {self.long(bend * math.cos(half))} uphill of the string's "
            f"middle swing an arc of {self.long(bend)} that ends on the string "
            f"{self.long(bend * math.sin(half))} each way. Step {self.long(radius)} (floor), "
            f"{self.long(pond)} (full pond) and {self.long(rim)} (rim) off both its sides, and "
            "round both its ends. The hollow side is uphill."
        )

    def reach(self) -> str:
        """Say how far all that is dug or built reaches; nothing while the slope is unknown."""
        if self.lie is None:
            return ""
        string = pegs.string_height(self.basin.outline)
        left, right = (f(x for x, _ in self.lie.footprint) for f in (min, max))
        down, up = (f(y for _, y in self.lie.footprint) - string for f in (min, max))
        along = f"{self.long(right)} each way along it"
        if self.own:
            middle = pegs.own_middle(self.basin.outline)
            along = f"along it from {self.long(left + middle)} to {self.long(right + middle)}"
        berm = ", berm too" if self.lie.crest_to_toe > 0 else ""
        return (
            f"Dug or built{berm}: {self.long(-down)} downhill and {self.long(up)} uphill of the "
            f"string, {along}. Keep all of that clear."
        )


def peg_table(plan: Plan) -> PegTable:
    """Return the pegs of one bed; raises ``Unanswered`` while its size is open."""
    return PegTable(plan.size.garden, lie_if_measured(plan), plan.metric)


def stakeout(plan: Plan) -> Iterator[str]:
    """Yield the lines of the garden as a table of 76 columns or fewer, and how to use it."""
    table = peg_table(plan)
    yield from wrap(table.string(), "  ")
    if not may_dig(plan).open:
        yield from wrap(f"CAUTION: {cautions.PEGS}", "  ")
    most = 4 * len(table.basin.stations) + MOST_ROWS
    yield from table.text(table.rows(most if table.own else MOST_ROWS))
    for words in (table.round_words(), table.kidney(), table.reach()):
        if words:
            yield from wrap(words, "  ")
    if plan.answers.get(bed.ROOM_AREA) is not None:
        yield from wrap(
            "You gave the room as an area, so the garden may have another shape, if its floor, "
            "full pond and rim keep these areas and its sides this slope.",
            "  ",
        )
