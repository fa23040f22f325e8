"""A plant with nothing special about it."""

import pytest

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import Indicator, PlantKind, Sun
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.size.zones import Zone


@pytest.fixture
def plain_plant():
    """A plant of every zone that no wish speaks against, rated in one list region."""
    base = next(one for one in builtin_plants() if one.kind is PlantKind.FORB)

    def make(indicator=Indicator.FAC, **changes):
        rated = ((ListRegion.MW, indicator),) if indicator else ()
        usual = {
            "zones": tuple(Zone),
            "ratings": rated,
            "needs_long_wet": False,
            "standing_water": "",
            "spreads": "no",
            "regions": (PlantRegion.MW,),
            "sun": tuple(Sun),
        }
        return base._replace(**{**usual, **changes})

    return make
