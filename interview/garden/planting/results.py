"""Which plants, how many, and where."""

from __future__ import annotations

from interview.answers_file.named_files import NoFile, ReadsFiles
from interview.asking.lands import Half, land
from interview.asking.results import part
from interview.garden.earth.results import EarthResults
from interview.garden.planting import plant_file as plant_plan
from interview.garden.planting import questions as planting
from interview.garden.planting.choice import Season
from interview.garden.planting.choose import (
    PlantingPlan,
    Suited,
    choose,
    suited_to,
    why_plant,
)
from interview.garden.planting.plant_file import PlantFile
from interview.garden.planting.plant_list import builtin_plants, with_own
from interview.garden.planting.record import Plant, Sun
from interview.garden.planting.seed import Sowing, grass_seed, native_seed
from interview.garden.planting.stock import PlantSize, apart, at_size, sown
from interview.garden.planting.wetness import ZoneSite, planting_zones
from interview.garden.planting.wishes import KeepOut, Prefer, Wishes, read_swap
from interview.garden.size.basin import footprint_area
from interview.garden.size.cover_questions import BERM_OUTSIDE, PLANT_SIZE
from interview.garden.size.results import SizeResults
from interview.garden.size.zones import Zone
from interview.garden.storms.results import StormsResults
from interview.quantities.guards import times
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity, ratio, total


@record(eq=False)
class PlantingResults(ReadsFiles):
    """Which plants, how many, and where."""

    size: SizeResults
    storms: StormsResults
    earth: EarthResults
    plants_path: str = ""

    @part
    def plant_file(self) -> PlantFile:
        """The gardener's own plant file: the one of this run, or the one an answer names."""
        path = self.plants_path or planting.own_plants_path(self.answers)
        if not path:
            return PlantFile()
        try:
            return plant_plan.plant_file(path, self.file_of(path))
        except NoFile as trouble:
            return PlantFile(path, trouble=str(trouble))

    @property
    def planted(self) -> PlantSize:
        """What is planted: plugs, pots or seed."""
        return PlantSize(self.answers[PLANT_SIZE])

    @part
    def plants(self) -> tuple[Plant, ...]:
        """Every plant that may be chosen, as far apart as what is planted asks for."""
        return at_size(self._listed, self.planted, self.size.place.system)

    @part
    def _listed(self) -> tuple[Plant, ...]:
        """The packaged list and the gardener's own, with the distances they give."""
        listed = with_own(builtin_plants(), self.plant_file.plants)
        if land(self.answers.country).half is not Half.SOUTH:
            return listed
        return tuple(one._replace(southern=True) for one in listed)

    @part
    def wishes(self) -> Wishes:
        """What the gardener wants of the planting."""
        return self._wishes(self.planted)

    def _wishes(self, size: PlantSize) -> Wishes:
        answers = self.answers
        keep_out, bloom = answers[planting.KEEP_OUT], answers[planting.BLOOM]
        return Wishes(
            region=planting.plant_region(answers),
            list_region=planting.list_region(answers),
            sun=Sun(answers[planting.SUN]),
            floor_height=answers[planting.TALLEST_FLOOR],
            rim_height=answers[planting.TALLEST_RIM],
            natives_only=answers[planting.NATIVES_ONLY],
            keep_out=frozenset(KeepOut[one.upper()] for one in keep_out),
            bloom=frozenset(Season[one.upper()] for one in bloom),
            road_salt=answers[planting.ROAD_SALT],
            prefer=frozenset(Prefer[one.upper()] for one in answers[planting.PREFER]),
            favourites=answers[planting.FAVOURITES],
            swaps=tuple(read_swap(words) for words in answers[planting.SWAP_OUT]),
            hardiness_zone=answers.get(planting.HARDINESS),
            place=planting.home_place(answers),
            apart_in=magnitude(apart(size, self.size.place.system), "in"),
            sown=sown(size),
        )

    @part
    def chosen(self) -> PlantingPlan:
        """Which plants, how many, and where."""
        return choose(self.plants, self.wishes, self.zones, self._suited)

    @part
    def _suited(self) -> Suited:
        """What each zone would take, whatever is planted."""
        return suited_to(self._listed, self.wishes, self.zones)

    @part
    def of_large_pots(self) -> PlantingPlan:
        """The planting as it would be of large pots."""
        return self._chosen_at(PlantSize.LARGE_POT)

    @part
    def of_seed(self) -> PlantingPlan:
        """The planting as it would be with seed on the rim."""
        return self._chosen_at(PlantSize.SEED)

    def _chosen_at(self, size: PlantSize) -> PlantingPlan:
        if size is self.planted:
            return self.chosen
        plants = at_size(self._listed, size, self.size.place.system)
        return choose(plants, self._wishes(size), self.zones, self._suited)

    @part
    def berm_outside(self) -> Quantity:
        """The area of the top and the outside of the berm of one bed; of no berm nought."""
        whole = footprint_area(self.size.garden, self.size.ground)
        beyond = magnitude(whole, "ft**2") - magnitude(self.size.inside, "ft**2")
        return quantity(max(0.0, beyond), "ft**2")

    @part
    def planted_area(self) -> Quantity:
        """The area of one bed that is planted or sown: inside the crest, and what was asked."""
        if self.answers[BERM_OUTSIDE] != "plants":
            return self.size.inside
        return total(self.size.inside, self.berm_outside)

    @part
    def zones(self) -> dict[Zone, ZoneSite]:
        """The ground that is planted: floor, side, and rim up to the crest and the cut edge."""
        garden = self.size.garden
        worse = [("when the same storm comes again next day", self.storms.zone_hours_again)]
        if self.storms.zone_hours_record is not None:
            worse.append(("at the longest in your rainfall record", self.storms.zone_hours_record))
        return planting_zones(
            garden.floor_area, garden.edge_area, self.planted_area, self.storms.zone_hours, worse
        )

    @property
    def rim_area(self) -> Quantity:
        """The area of the rims of all the beds, up to the crest and the cut edge."""
        return times(self.zones[Zone.RIM].area, self.size.bed_count)

    @part
    def sowings(self) -> tuple[Sowing, ...]:
        """The seed to buy, for all the beds: of the rims, and of the berms where grass is sown."""
        sowings = []
        if sown(self.planted):
            sowings.append(native_seed(self.rim_area))
        if self.answers[BERM_OUTSIDE] == "grass":
            sowings.append(grass_seed(times(self.berm_outside, self.size.bed_count)))
        return tuple(one for one in sowings if one.area.m > 0)

    @part
    def bare_area(self) -> Quantity:
        """The ground of all the beds that lies bare until it is green: sown, or a planted berm."""
        bare = [one.area for one in self.sowings]
        if self.answers[BERM_OUTSIDE] == "plants" and not sown(self.planted):
            bare.append(times(self.berm_outside, self.size.bed_count))
        return total(quantity(0.0, "ft**2"), *bare)

    def zone_shape(self, zone: Zone) -> float:
        """Length over width of the floor, or of the side or rim as it is walked round."""
        garden = self.size.garden
        if zone is Zone.FLOOR:
            return ratio(garden.floor_length, garden.floor_width)
        inner, outer, area = {
            Zone.SIDE: (
                garden.floor_width,
                garden.edge_width,
                garden.edge_area - garden.floor_area,
            ),
            Zone.RIM: (garden.edge_width, garden.rim_width, garden.rim_area - garden.edge_area),
        }[zone]
        across = (outer - inner) / 2
        return ratio(area, across * across)

    def why_plant(self, name: str) -> tuple[str, ...]:
        """Say for each zone why the plant of that name is in or out."""
        said = why_plant(name, self.chosen, self.plants, self.wishes)
        return tuple(map(self.answers.told, said))
