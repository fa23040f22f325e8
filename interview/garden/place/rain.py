"""How much rain is usual to hold, by state, and what stands behind it."""

from __future__ import annotations

import csv
from enum import Enum
from functools import cache
from importlib.resources import files

from interview.quantities.evidence import Provenance, Source
from interview.quantities.records import record

MM_IN_AN_INCH = 25.4
"""By definition of the international inch."""
_EASY_MM = {1.0: 25}
"""A round depth of the trade is round in millimeters too."""


class Basis(Enum):
    """What kind of depth it is; one kind never stands for another."""

    PERCENTILE = "percentile"
    """Published: so many percent of storms bring no more."""
    RULE = "rule"
    """A rule of the state or of a town asks large sites to deal with so much."""
    MANUAL = "manual"
    """A manual of the state advises it for large sites."""
    CUSTOM = "custom"
    """What is usual where neither was read."""


@record
class RainDepth:
    """A depth of rain read for a state, or the custom."""

    state: str
    """Two letters; empty for the custom."""
    basis: Basis
    percent: int | None
    """Of a percentile."""
    depth_in: float
    usual: bool
    """Whether the plan takes it until there is an answer."""
    where: str
    """The part of the state that it was read for, such as ``in the whole state``."""
    method: str
    source: Source
    note: str = ""

    @property
    def us(self) -> str:
        """The depth as words in inches."""
        return f"{self.depth_in:g} in"

    @property
    def metric(self) -> str:
        """The depth as words in whole millimeters."""
        return f"{_EASY_MM.get(self.depth_in, round(self.depth_in * MM_IN_AN_INCH))} mm"

    @property
    def words(self) -> str:
        """The depth in both, as sentences are written."""
        return f"{self.us} ({self.metric})"

    @property
    def kind(self) -> str:
        """What kind of depth it is and where, in words."""
        if self.basis is Basis.PERCENTILE:
            return f"{self.percent} % of storms bring no more {self.where} ({self.method})"
        if self.basis is Basis.RULE:
            return f"a rule asks it of large sites {self.where} ({self.method})"
        if self.basis is Basis.MANUAL:
            return f"a state manual advises it for large sites {self.where} ({self.method})"
        return "usual in the US"


CUSTOM = RainDepth(
    "",
    Basis.CUSTOM,
    None,
    1.0,
    True,
    "",
    "",
    Source(
        "Center for Watershed Protection, Sizing Criteria, web page: the middle of the 90 percent "
        "event in most US regions",
        Provenance.PUBLISHED,
    ),
)


@cache
def depths() -> tuple[RainDepth, ...]:
    """Return the depths read for the states; raises ValueError where the table is damaged."""
    table = (files("interview.garden.place") / "rain_depths.csv").read_text(encoding="utf-8")
    return tuple(_depth(row) for row in csv.DictReader(table.splitlines()))


def _depth(row: dict[str, str]) -> RainDepth:
    return RainDepth(
        row["state"],
        Basis(row["kind"]),
        int(row["percent"]) if row["percent"] else None,
        float(row["depth_in"]),
        row["usual"] == "yes",
        row["where"],
        row["method"],
        Source(row["source"], Provenance(row["standing"])),
        row["note"],
    )


def usual_rain(state: str | None) -> RainDepth:
    """Return the depth that is usual in ``state``, two letters of any case; else the custom."""
    code = (state or "").upper()
    return next((one for one in depths() if one.state == code and one.usual), CUSTOM)


def also_read(state: str | None) -> tuple[RainDepth, ...]:
    """Return what else was read for ``state`` and is not taken."""
    code = (state or "").upper()
    return tuple(one for one in depths() if one.state == code and not one.usual)
