"""How wet and how salt the ground of a species may be, by a list of Maryland.

Plant list of Environmental Concern, Maryland, 2021, read in a second copy. Rows as printed: how
long water stands, and the salt of the water in parts per thousand; MHW is mean high water. Under
0.5 ppt is fresh water, where a plant need stand no more than little salt: that is this project's
reading, as is what the words mean on floor, side and rim.
"""

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.provenance import decisions

PRINTED = {
    "Acorus americanus": ("near MHW or regular inundation 0-6 in", "0-10 ppt"),
    "Andropogon virginicus": ("irregular inundation and upland", "<0.5 ppt"),
    "Aquilegia canadensis": ("irregular inundation and upland", "<0.5 ppt"),
    "Asclepias incarnata": ("seasonal inundation", "0-5 ppt"),
    "Asclepias tuberosa": ("irregular inundation and upland", "<0.5 ppt"),
    "Baptisia australis": ("irregular inundation and upland", "<0.5 ppt"),
    "Boltonia asteroides": ("seasonal to irregular inundation", "<0.5 ppt"),
    "Carex crinita": ("irregular inundation", "<0.5 ppt"),
    "Carex lurida": ("irregular inundation", "<0.5 ppt"),
    "Carex pensylvanica": ("upland", "<0.5 ppt"),
    "Carex stricta": ("regular inundation 0-6 in", "<0.5 ppt"),
    "Carex vulpinoidea": ("regular inundation 0-6 in", "<0.5 ppt"),
    "Chasmanthium latifolium": ("seasonal inundation and upland", "<0.5 ppt"),
    "Chelone glabra": ("irregular to permanent inundation", "<0.5 ppt"),
    "Conoclinium coelestinum": ("seasonal inundation and upland", "<0.5 ppt"),
}

READ_AS = {
    "permanent": {"floor"},
    "regular": {"floor"},
    "seasonal": {"floor", "side"},
    "irregular": {"side"},
    "upland": {"rim"},
}
DECIDED = {one.scientific_name for one in decisions() if one.field == "zones"}


def test_every_species_grows_in_a_zone_that_the_list_names_or_a_decision_says_why_not(subtests):
    plants = {one.scientific_name: one for one in builtin_plants()}
    for name, (water, _) in PRINTED.items():
        with subtests.test(name=name):
            named = set().union(*(READ_AS[word] for word in READ_AS if word in water.split()))
            ours = {zone.value for zone in plants[name].zones}
            assert ours & named or name in DECIDED


def test_a_species_of_fresh_water_is_not_taken_to_stand_salt(subtests):
    plants = {one.scientific_name: one for one in builtin_plants()}
    fresh = [name for name, (_, salt) in PRINTED.items() if salt == "<0.5 ppt"]
    assert len(fresh) == 13
    for name in fresh:
        with subtests.test(name=name):
            assert plants[name].salt in ("none", "low")
