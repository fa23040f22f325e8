"""A species as a frozen record that says where its facts come from, and the words it uses."""

from __future__ import annotations

from enum import Enum
from functools import cached_property, lru_cache
from typing import NamedTuple

from interview.garden.planting.regions import ListRegion, PlantRegion, State
from interview.garden.size.zones import Zone
from interview.quantities.evidence import Provenance, Source
from interview.quantities.units import Quantity, quantity


class Sun(Enum):
    """How much sun falls on the bed."""

    FULL = "full"
    PART = "part"
    SHADE = "shade"


class PlantKind(Enum):
    """The habit of a plant."""

    FORB = "forb"
    SHRUB = "shrub"
    GRASS = "grass"
    SEDGE = "sedge"
    RUSH = "rush"
    FERN = "fern"


class Indicator(Enum):
    """How often a species grows in wetlands, in the wording used since 2012."""

    OBL = "almost always in wetlands"
    FACW = "usually in wetlands, but may occur elsewhere"
    FAC = "in wetlands and elsewhere alike"
    FACU = "usually outside wetlands, but may occur in them"
    UPL = "almost never in wetlands"


INDICATOR_SOURCE = Source(
    "Lichvar, The National Wetland Plant List: 2013 wetland ratings, Phytoneuron 2013-49",
    Provenance.SECONDARY,
)

RATING_LISTS = {
    "EPA16": "EPA National Wetland Condition Assessment 2016, aquametNWCA package, 2025",
    "EPA11": "EPA National Wetland Condition Assessment 2011, aquametNWCA package, 2025",
    "CO20": "Colorado Floristic Quality Assessment 2020, USACE-ERDC fqadata package, 2025",
    "WY17": "Wyoming floristic quality table 2017, USACE-ERDC fqadata package, 2025",
    "OH14": "Ohio floristic quality table 2014, USACE-ERDC fqadata package, 2025",
    "CHI17": "Chicago Region, USACE 2017, USACE-ERDC fqadata package, 2025",
    "SE14": "Southeast wetland database, Gianopulos 2014, USACE-ERDC fqadata package, 2025",
}
"""What the codes in the column ``indicator_source`` stand for."""


DEGREES = ("none", "low", "medium", "high")
"""How well a plant stands something."""
COLORS = ("white", "yellow", "orange", "red", "pink", "purple", "blue", "green", "brown")
TRADE = ("routine", "listed", "contract", "collected", "unknown")
"""Routinely sold; on a list of what is sold; grown on order; gathered wild; no known source."""
INSECTS = ("bees", "butterflies", "pollinators", "insects", "caterpillars")
WILDLIFE = (*INSECTS, "hummingbirds", "birds")


class PlantFacts(NamedTuple):
    """What the list says of a species; lengths are floats in the unit their name ends with."""

    scientific_name: str
    common_name: str
    other_names: tuple[str, ...]
    kind: PlantKind
    regions: tuple[PlantRegion, ...]
    native_checked: tuple[PlantRegion, ...]
    """The regions where a published flora calls it native."""
    native_caution: str
    """Where a published flora calls it introduced, as ``NE: introduced per ...``."""
    height_min_ft: float
    height_max_ft: float
    spacing_in: float
    sun: tuple[Sun, ...]
    bloom_months: tuple[int, ...]
    zones: tuple[Zone, ...]
    ratings: tuple[tuple[ListRegion, Indicator], ...]
    indicator_status: str
    indicator_source: tuple[str, ...]
    """Codes of ``RATING_LISTS``, or words such as ``from memory``."""
    rated_by_two: tuple[ListRegion, ...]
    rated_by_one: tuple[ListRegion, ...]
    rated_upl_or_unlisted: tuple[ListRegion, ...]
    rating_conflict: str
    hardiness: tuple[int, int] | None
    """The coldest and the warmest USDA zone it grows in."""
    toxic: bool
    usda_toxicity: str
    spreads: str
    """``no``, ``some`` or ``yes`` (aggressive)."""
    thorny: bool
    over_8ft: bool
    needs_long_wet: bool
    remarks: str
    standing_water: str = ""
    """How its roots stand soil without air: ``none``, ``low``, ``medium``, ``high``; or unknown."""
    moisture: tuple[str, ...] = ()
    """How much water it wants: of ``low``, ``medium``, ``high``."""
    drought: str = ""
    """How it stands drought, in the same words as ``standing_water``."""
    salt: str = ""
    """How it stands salt in the soil, in the same words."""
    flower_color: str = ""
    trade: str = ""
    """How it is sold, of ``TRADE``; empty where the list does not say."""
    wildlife: tuple[str, ...] = ()
    """The animals it is listed for, of ``WILDLIFE``."""
    rests_on: str = ""
    """What each fact rests on, as ``sun: USDA + ALB; zones: WSU p. A-5``; see ``rests``."""
    zone_source: str = ""
    """Where the gardener's own file says that its zones come from."""
    hardiness_source: str = ""
    """The same of its hardiness."""
    absent_in: tuple[str, ...] = ()
    """Codes of states of its regions where it does not grow wild; the list is not complete."""
    regulated_in: tuple[str, ...] = ()
    """Codes of the states whose list of noxious weeds named it in 2015."""
    set_by: str = ""
    """Whose the spacing is where it is that of a size of plant, not the list's own."""
    southern: bool = False
    """Whether it is grown in the southern half of the world, where spring begins in September."""
    own: bool = False
    """Whether it comes from the gardener's own file."""
    any_rating: Indicator | None = None
    """Its rating wherever the gardener's own file is used."""


class Plant(PlantFacts):
    """One species as the list has it, and what follows from that."""

    @property
    def height(self) -> Quantity:
        """Greatest height of a grown plant."""
        return quantity(self.height_max_ft, "ft")

    @property
    def spacing(self) -> Quantity:
        """Distance from one plant of this kind to the next."""
        return quantity(self.spacing_in, "in")

    @property
    def aggressive(self) -> bool:
        """Whether it is marked as taking over its neighbours' room."""
        return self.spreads == "yes"

    @property
    def warned(self) -> bool:
        """Whether anything about it may harm people or crowd out its neighbors."""
        toxic = self.toxic or self.usda_toxicity not in ("", "none")
        return toxic or self.aggressive or self.thorny

    @property
    def grasslike(self) -> bool:
        """Whether it is a grass, a sedge or a rush."""
        return self.kind in (PlantKind.GRASS, PlantKind.SEDGE, PlantKind.RUSH)

    def indicator(self, region: ListRegion | None) -> Indicator | None:
        """Return the rating in that region of the wetland list; None where it has none."""
        return next((rated for where, rated in self.ratings if where is region), None)

    @property
    def salt_tolerant(self) -> bool | None:
        """Whether it stands salt; None where the list does not say."""
        return self.salt in ("medium", "high") if self.salt else None

    def rests(self, fact: str) -> tuple[str, ...]:
        """Return the codes of ``PLANT_SOURCES`` that carry ``fact``; none where it is memory."""
        return self._rests.get(fact, ())

    @cached_property
    def _rests(self) -> dict[str, tuple[str, ...]]:
        parts = (part.partition(": ") for part in self.rests_on.split("; ") if part)
        return {fact: tuple(codes.split(" + ")) for fact, _, codes in parts}

    @property
    def names(self) -> frozenset[str]:
        """Every name it answers to, in small letters, and those in brackets by themselves."""
        return _names(self.scientific_name, self.common_name, self.other_names)[0]

    def answers_to(self, name: str) -> bool:
        """Tell whether ``name`` is its scientific, common or another name.

        Gaps, hyphens and apostrophes do not count: lists write cardinalflower and cardinal flower.
        """
        names = _names(self.scientific_name, self.common_name, self.other_names)
        return _closed_up(name) in names[1]

    def at_home(self, region: PlantRegion | None) -> bool:
        """Tell whether the list gives it as native in ``region``.

        A plant of the gardener's own file that names no region is at home wherever that is used.
        """
        return region in self.regions or (self.own and not self.regions)

    def introduced_in(self, region: PlantRegion | None) -> str:
        """Return ``introduced per ...`` where a flora of ``region`` says so, else nothing."""
        for part in self.native_caution.split(" | "):
            name, _, said = part.partition(": ")
            if region is not None and name == region.name:
                return said
        return ""

    def well_rated(self, region: ListRegion | None) -> bool:
        """Tell whether two or more lists agree on its rating in ``region`` and none differs."""
        return region is not None and region in self.rated_by_two and not self._disputed(region)

    def rating_standing(self, region: ListRegion | None) -> str:
        """Say in a few words how far its rating in ``region`` can be trusted."""
        if self.own or region is None:
            return "its wetness is your own plant file's word"
        if not self.ratings:
            return "it is on none of the wetland lists, so it is taken for dry ground"
        if self._disputed(region):
            return "lists disagree on its wetness rating"
        if region in self.rated_upl_or_unlisted:
            return "its rating may only mean that it is not on the wetland list"
        if region in self.rated_by_two:
            return "two or more lists agree on its wetness rating"
        if region in self.rated_by_one:
            return "one list gives its wetness rating"
        return "its wetness rating is from memory"

    def _disputed(self, region: ListRegion) -> bool:
        parts = self.rating_conflict.split(" | ")
        return any(part.startswith(f"{region.name}:") for part in parts)


_GAPS = str.maketrans("", "", " \t-'’‐‑")


# A plant is made anew for every distance, and keeps its names.
@lru_cache(maxsize=2000)
def _names(
    scientific: str, common: str, other: tuple[str, ...]
) -> tuple[frozenset[str], frozenset[str]]:
    """Return the names of a plant in small letters, and closed up."""
    first, _, second = common.partition("(")
    known = (scientific, common, *other, first, second.rstrip(") "))
    names = frozenset(" ".join(one.split()).casefold() for one in known if one.strip())
    return names, frozenset(map(_closed_up, names))


@lru_cache(maxsize=2000)
def _closed_up(name: str) -> str:
    return name.casefold().translate(_GAPS)


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
    if place is None or not plant.native_caution:
        return False
    named = [
        one
        for part in plant.native_caution.split(" | ")
        for one in _floras(part.partition(": ")[2])
    ]
    return any(place.code in FLORAS[one][1] for one in named if one in FLORAS)
