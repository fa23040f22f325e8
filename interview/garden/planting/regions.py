"""The regions that plants are listed by, and the states that lie in them."""

from __future__ import annotations

from enum import Enum

from interview.quantities.evidence import Provenance, Source
from interview.quantities.records import record


class PlantRegion(Enum):
    """A part of the United States with a list of its own in the plant list."""

    NE = "Northeast and Mid-Atlantic"
    SE = "Southeast"
    MW = "Midwest"
    GP = "Great Plains"
    MT = "Mountain and Arid West"
    PN = "Pacific Northwest"
    CA = "California"


class ListRegion(Enum):
    """A region of the federal wetland plant list; the full names are from memory."""

    AGCP = "Atlantic and Gulf Coastal Plain"
    EMP = "Eastern Mountains and Piedmont"
    NCNE = "Northcentral and Northeast"
    MW = "Midwest"
    GP = "Great Plains"
    AW = "Arid West"
    WMVC = "Western Mountains, Valleys and Coast"


@record
class State:
    """A state, the plant region it is taken to be in, and the wetland lists that cover it."""

    code: str
    name: str
    plant_region: PlantRegion | None
    list_regions: tuple[ListRegion, ...]
    """The first is assumed until the gardener picks another; empty where the table has none."""
    source: str
    """Of the plant region, and of the lists that nothing confirms."""
    lists_confirmed: tuple[ListRegion, ...]
    """Those of ``list_regions`` that a text names for the state."""
    lists_source: Source | None
    """The text that does."""
    zone_coldest: str
    """The coldest hardiness zone of any place in the state, such as ``3a``."""
    zone_warmest: str
    zone_common: str
    """The zone of most ZIP codes; empty where that was not read."""
    zone_source: Source

    def list_standing(self, region: ListRegion) -> str:
        """Say whether anything confirms that the list of ``region`` covers a part of the state."""
        if self.lists_source is None or region not in self.lists_confirmed:
            return Provenance.MEMORY.value
        return str(self.lists_source)
