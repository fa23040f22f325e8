"""Where a published flora calls a plant introduced, in the names of places."""

from __future__ import annotations

from interview.garden.planting.record import Plant
from interview.garden.planting.regions import PlantRegion, State

FLORAS: dict[str, tuple[str, tuple[str, ...]]] = {
    "dakotas excluding black hills 2017": ("the Dakotas", ("ND", "SD")),
    "nebraska 2003": ("Nebraska", ("NE",)),
    "ID": ("Idaho", ("ID",)),
    "montana 2017": ("Montana", ("MT",)),
    "WI": ("Wisconsin", ("WI",)),
    "chicago region 2017": ("the Chicago region", ()),
    "illinois 2020": ("Illinois", ("IL",)),
    "indiana 2019": ("Indiana", ("IN",)),
    "iowa 2001": ("Iowa", ("IA",)),
    "michigan 2014": ("Michigan", ("MI",)),
    "minnesota wetlands 2007": ("Minnesota", ("MN",)),
    "missouri 2015": ("Missouri", ("MO",)),
    "ohio 2014": ("Ohio", ("OH",)),
    "wisconsin wetland northern southcentral 2017": ("Wisconsin", ("WI",)),
    "delaware 2013": ("Delaware", ("DE",)),
    "eastern great lakes hudson lowlands 2018": ("the lowlands of the Hudson and Great Lakes", ()),
    "maine new brunswick 2018": ("Maine", ("ME",)),
    "mid atlantic coastal plain 2012": ("the mid-Atlantic coast", ()),
    "mid atlantic piedmont 2012": ("the mid-Atlantic Piedmont", ()),
    "new jersey 2019": ("New Jersey", ("NJ",)),
    "northeastern coastal 2018": ("the northeastern coast", ()),
    "northern appalachian atlantic maritime highlands 2018": ("the northern Appalachians", ()),
    "pennsylvania piedmont 2013": ("Pennsylvania", ("PA",)),
    "west virginia 2015": ("West Virginia", ("WV",)),
    "eastern washington columbia basin 2013": ("eastern Washington", ("WA",)),
    "eastern washington mountains 2013": ("eastern Washington", ("WA",)),
    "western washington 2013": ("western Washington", ("WA",)),
}
"""For each flora named in the plant list: its place, and the states it speaks of by name."""


def _floras(said: str) -> tuple[str, ...]:
    """Return the floras of one part of a native caution, such as ``introduced per a, b``."""
    names = said.strip().removeprefix("introduced per ").split(", ")
    return tuple(name for name in names if name)


def introduced_at(plant: Plant, region: PlantRegion | None) -> tuple[str, ...]:
    """Return the places of ``region`` whose flora calls ``plant`` introduced, each once."""
    names = _floras(plant.introduced_in(region))
    return tuple(dict.fromkeys(FLORAS[one][0] if one in FLORAS else one for one in names))


def introduced_in_state(plant: Plant, place: State | None) -> bool:
    """Tell whether a flora that names the gardener's own state calls ``plant`` introduced."""
    if place is None:
        return False
    named = [
        one
        for part in plant.native_caution.split(" | ")
        for one in _floras(part.partition(": ")[2])
    ]
    return any(place.code in FLORAS[one][1] for one in named if one in FLORAS)
