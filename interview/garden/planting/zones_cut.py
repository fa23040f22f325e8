"""The three zones of a planting cut through, with their hours under water; not to scale."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from interview.drawing.scene import (
    XY,
    Drawing,
    Ink,
    Label,
    Material,
    Path,
    Shape,
    Sprig,
    Stroke,
    filled,
)
from interview.garden.planting.choose import ZonePlan
from interview.garden.planting.laid_out import letters, mark_of
from interview.garden.size.zones import Zone
from interview.quantities.units import magnitude

WIDE, HIGH = 36.0, 7.0
"""In cells of a small picture; the picture is stretched to the room it is given."""
_ENDS: dict[Zone, XY] = {Zone.FLOOR: (0.0, 14.0), Zone.SIDE: (14.0, 25.0), Zone.RIM: (25.0, WIDE)}
_FLOOR, _FULL, _TOP = 2.6, 4.0, 4.6
"""Heights of the floor, of the full pond where the side ends, and of the rim."""
_MULCH = 0.4
_KINDS = 3
"""Kinds drawn in each zone."""
_TALL = (2, 3, 2)
"""Rows that the plants of a zone are high in a small picture."""
_BANK = -4.0
"""Where the bank on the far side of the floor begins."""
_DRY_HOURS = 0.5
"""Hours under which a zone is called dry: they are written without a fraction."""


def zones_cut(zones: Sequence[ZonePlan], rows: int = 8) -> Drawing:
    """Return the zones of a planting from the floor up, each with its plants and hours wet.

    It is drawn for so many ``rows``, as wide as the room it is given.
    """
    return Drawing(
        title="",
        description="From the floor up: "
        + "; ".join(f"{one.zone.value}, {hours_words(one)}" for one in zones)
        + ". Not to scale.",
        shapes=tuple(_shapes(zones, HIGH / max(1, rows - 1))),
        proportional=False,
        ground=Material.SKY,
    )


_DRY = "dry"


def hours_words(zone: ZonePlan) -> str:
    """Say how long a zone is under water in the rain the garden holds."""
    hours = magnitude(zone.site.hours, "h")
    return f"wet {hours:.0f} h" if hours >= _DRY_HOURS else _DRY


def _shapes(zones: Sequence[ZonePlan], row: float) -> Iterator[Shape]:
    floor, side = _ENDS[Zone.FLOOR][1], _ENDS[Zone.SIDE][1]
    bank: tuple[XY, ...] = ((_BANK, _TOP), (_BANK / 2, _TOP), (0.0, _FLOOR))
    slope: tuple[XY, ...] = ((floor, _FLOOR), (side, _FULL), (side + 2, _TOP))
    surface = (*bank, *slope, (WIDE, _TOP))
    yield filled((*surface, (WIDE, 0.0), (_BANK, 0.0)), Material.SOIL)
    low = _FLOOR - _MULCH
    yield filled((bank[-1], slope[0], (floor, low), (0.0, low)), Material.MULCH)
    reach = _BANK / 2 * (_FULL - _FLOOR) / (_TOP - _FLOOR)
    yield filled((bank[-1], slope[0], slope[1], (reach, _FULL)), Material.WATER)
    yield Path(surface, Stroke.SOLID, border=True)
    yield Path(((_BANK, 0.0), (WIDE, HIGH)), None)
    names = letters(zones)
    order = list(names)
    for zone in zones:
        left, right = _ENDS[zone.zone]
        picks = [one for one in zone.picks if one.plant.scientific_name in names][:_KINDS]
        for place, pick in enumerate(picks):
            name = pick.plant.scientific_name
            x = left + (right - left) * (place + 0.5) / len(picks)
            char, bloom = mark_of(pick.plant, order.index(name))
            foot = _foot(x)
            head = foot + _TALL[place]
            yield Sprig(x, head, names[name], char, bloom)
            for below in range(1, max(1, round((head - foot) / row))):
                yield Sprig(x, head - below * row, "|", "│", "green")
        hours = hours_words(zone)
        ink = Ink.TEXT if hours == _DRY else Ink.WATER
        middle = (left + right) / 2
        yield Label(zone.zone.value.upper(), middle, row, ink=Ink.TEXT)
        yield Label(hours, middle, 0.0, ink=ink)


def _foot(x: float) -> float:
    floor, side = _ENDS[Zone.FLOOR][1], _ENDS[Zone.SIDE][1]
    if x >= side:
        return _TOP
    return _FLOOR + max(0.0, (x - floor) / (side - floor)) * (_FULL - _FLOOR)
