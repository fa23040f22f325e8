"""A published table of garden size by soil and depth, to hold a calculated size against."""

from __future__ import annotations

from enum import Enum

from interview.quantities.evidence import Provenance, Source
from interview.quantities.guards import not_negative, positive, reaches, within
from interview.quantities.records import record
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity

SIZE_FACTOR_TABLE = Source(
    "Rain Gardens: A How-to Manual for Homeowners, University of Wisconsin Extension and "
    "Wisconsin DNR, GWQ037, 2003 edition, tables 1 and 2",
    Provenance.SECONDARY,
)
FAR_FT = 30.0


class SoilKind(Enum):
    """The three soils of the table."""

    SANDY = "sandy"
    SILTY = "silty"
    CLAYEY = "clayey"


class DepthRow(Enum):
    """The depths of the table, and ``FAR`` for a garden over 30 ft from the downspout."""

    SHALLOW = "3 to 5 in"
    MIDDLE = "6 to 7 in"
    DEEP = "8 in"
    FAR = "any depth, over 30 ft away"


SIZE_ROW_WORDS: dict[DepthRow, str] = {
    DepthRow.SHALLOW: "3 to 5 in (75 to 125 mm)",
    DepthRow.MIDDLE: "6 to 7 in (150 to 175 mm)",
    DepthRow.DEEP: "8 in (200 mm)",
    DepthRow.FAR: "any depth, over 30 ft (9 m) away",
}
"""Each row as it is told, with round metric numbers of our own."""

SIZE_FACTORS: dict[SoilKind, dict[DepthRow, float]] = {
    SoilKind.SANDY: {
        DepthRow.SHALLOW: 0.19,
        DepthRow.MIDDLE: 0.15,
        DepthRow.DEEP: 0.08,
        DepthRow.FAR: 0.03,
    },
    SoilKind.SILTY: {
        DepthRow.SHALLOW: 0.34,
        DepthRow.MIDDLE: 0.25,
        DepthRow.DEEP: 0.16,
        DepthRow.FAR: 0.06,
    },
    SoilKind.CLAYEY: {
        DepthRow.SHALLOW: 0.43,
        DepthRow.MIDDLE: 0.32,
        DepthRow.DEEP: 0.20,
        DepthRow.FAR: 0.10,
    },
}
"""Garden area over drainage area. Source: ``SIZE_FACTOR_TABLE``."""

_PRINTED = {
    US: {
        DepthRow.SHALLOW: (3.0, 5.0),
        DepthRow.MIDDLE: (6.0, 7.0),
        DepthRow.DEEP: (8.0, 8.0),
    },
    METRIC: {
        DepthRow.SHALLOW: (75.0, 125.0),
        DepthRow.MIDDLE: (150.0, 175.0),
        DepthRow.DEEP: (200.0, 200.0),
    },
}
"""Depths from and to: inches as printed, millimeters as in ``SIZE_ROW_WORDS``."""


@record
class PublishedSize:
    """What the table says of a drainage area, from sandy to clayey soil; areas."""

    row: DepthRow
    covered: bool
    """False when the depth falls between or outside the rows as printed."""
    sandy: Quantity
    silty: Quantity
    clayey: Quantity


def published_size(
    drainage_area: Quantity, depth: Quantity, distance: Quantity, metric: bool = False
) -> PublishedSize:
    """Return the garden sizes the table gives for a drainage area, a depth and a distance.

    The area is the plan area that drains here, not weighted. A depth between two rows takes the
    shallower one, which gives more garden; ``metric`` compares in millimeters, so that 150 mm is
    in the row of 6 in. Raises ValueError for an area or depth that is not
    more than zero. Source: ``SIZE_FACTOR_TABLE``.
    """
    area = positive(drainage_area, "ft**2", "No surface drains here yet, so add one first.")
    deep = positive(depth, "mm" if metric else "in", "The pond must be deeper than zero.")
    not_negative(distance, "ft", "The way from the downspout cannot be shorter than nothing.")
    row, covered = _row(deep, METRIC if metric else US)
    if magnitude(distance, "ft") > FAR_FT:
        row, covered = DepthRow.FAR, True
    sizes = {kind: quantity(area * SIZE_FACTORS[kind][row], "ft**2") for kind in SoilKind}
    return PublishedSize(
        row,
        covered,
        sandy=sizes[SoilKind.SANDY],
        silty=sizes[SoilKind.SILTY],
        clayey=sizes[SoilKind.CLAYEY],
    )


def _row(deep: float, system: str) -> tuple[DepthRow, bool]:
    found = DepthRow.SHALLOW
    for row, (least, _) in _PRINTED[system].items():
        if reaches(deep, least):
            found = row
    least, most = _PRINTED[system][found]
    return found, reaches(deep, least) and within(deep, most)
