"""The work of the whole garden: the earth that is moved and the plants that are set."""

from __future__ import annotations

from interview.garden.earth.work import Amounts, Task, tasks
from interview.garden.planting.costs import plant_count
from interview.garden.planting.results import PlantingResults
from interview.quantities.guards import times


def work_of(found: PlantingResults) -> tuple[Task, ...]:
    """Return the tasks of all the beds, in the order of the work; raises ``Unanswered``."""
    earth, beds = found.earth, found.size.bed_count
    return tasks(
        Amounts(
            sod=earth.sod_lifted,
            dug=earth.digging.bank,
            berm=times(earth.berm_bank, beds),
            carried_off=earth.loads_off,
            berm_brought=earth.loads_of("berm soil"),
            laid=earth.loads_of("compost", "stone"),
            mulch=earth.loads_of("mulch"),
            channel=earth.channel_soil,
            trench=earth.trench,
            plants=plant_count(found),
            spouts=earth.spouts_here,
        )
    )
