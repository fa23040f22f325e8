"""What speaks for and against: the planting."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.planting.results import PlantingResults
from interview.quantities.evidence import Finding


def planting_findings(found: PlantingResults) -> Iterator[Finding]:
    if doubt := found.plant_file.finding():
        yield doubt
    yield from found.chosen.findings
