"""From answers to plants: the gardener's own plant file, and where what is known comes from."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from interview.answers_file.named_files import NamedFile, NoFile
from interview.garden.planting.plant_list import OWN_LIMIT, read_own_plants
from interview.garden.planting.record import Plant
from interview.quantities.evidence import ARITHMETIC, Finding, Grade
from interview.reading.csv_reader import RowFault

SHOWN_FAULTS = 5
"""Faults of a plant file told on the sheet; the check of the file tells them all."""


class PlantFile(NamedTuple):
    """The gardener's own plant file as it was read."""

    path: str = ""
    """Empty where there is none."""
    plants: tuple[Plant, ...] = ()
    faults: tuple[RowFault, ...] = ()
    trouble: str = ""
    """Why it could not be read at all."""

    def finding(self) -> Finding | None:
        """Return what is wrong with the file, or nothing."""
        if not self.trouble and not self.faults:
            return None
        count = len(self.faults)
        lines = f"has {count} fault{'s' if count > 1 else ''}; lines with a fault are left out"
        said = self.trouble or f"Your own plant file {lines}."
        change = "Correct the path, or the file." if self.trouble else "Mend the lines named below."
        return Finding("own_plants", Grade.FIX, said, "every line can be read", ARITHMETIC, change)

    def fault_lines(self, most: int | None = None) -> Iterator[str]:
        """Yield each fault with its line and column, ``most`` at the most."""
        for fault in self.faults[:most]:
            where = f"{fault.column}: " if fault.column else ""
            yield f"line {fault.line}: {where}{fault.sentence}"
        if most is not None and len(self.faults) > most:
            yield f"and {len(self.faults) - most} more; --check lists them all"


@lru_cache(maxsize=4)
def plant_file(path: str, file: NamedFile) -> PlantFile:
    """Return the plants and faults of a file, read once while it stays as it is."""
    try:
        return PlantFile(path, *read_own_plants(file.text(OWN_LIMIT)))
    except NoFile as trouble:
        return PlantFile(path, trouble=str(trouble))
