"""How wet the ground of a species may be, in the words of a Maryland guide, beside our zones.

Using Native Plants for Rain Gardens and Wet Meadows, Maryland, undated, read in a second copy in
which the columns were paired by their order. Words as printed. That regular flooding is the floor,
seasonal the floor and the side, irregular the side and upland the rim is this project's reading.
"""

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.provenance import decisions

PRINTED = {
    "Acorus americanus": "regular inundation 0-6 in",
    "Aronia melanocarpa": "irregular and seasonal inundation",
    "Asclepias incarnata": "seasonal inundation",
    "Carex stricta": "regular inundation",
    "Cephalanthus occidentalis": "permanent inundation 0-12 in",
    "Chelone glabra": "seasonal inundation + upland",
    "Clethra alnifolia": "seasonal and regular inundation",
    "Eupatorium perfoliatum": "irregular inundation + upland",
    "Eutrochium dubium": "seasonal inundation + upland",
    "Ilex verticillata": "seasonal inundation",
    "Iris versicolor": "regular inundation 0-6 in",
    "Lindera benzoin": "seasonal inundation",
    "Lobelia cardinalis": "irregular inundation + upland",
    "Mimulus ringens": "seasonal and regular inundation",
    "Onoclea sensibilis": "regular and permanent inundation",
    "Osmunda cinnamomea": "seasonal and regular inundation",
    "Osmunda regalis": "irregular and permanent inundation",
    "Panicum virgatum": "irregular inundation + upland",
    "Sambucus canadensis": "seasonal inundation",
    "Scirpus cyperinus": "seasonal inundation",
    "Symphyotrichum novi-belgii": "irregular inundation + upland",
    "Verbena hastata": "irregular inundation",
    "Vernonia noveboracensis": "seasonal inundation",
    "Viburnum dentatum": "seasonal inundation",
}

READ_AS = {
    "permanent": {"floor"},
    "regular": {"floor"},
    "seasonal": {"floor", "side"},
    "irregular": {"side"},
    "upland": {"rim"},
}

DECIDED = {one.scientific_name for one in decisions() if one.field == "zones"}


def test_every_species_grows_in_a_zone_that_the_guide_names(subtests):
    plants = {one.scientific_name: one for one in builtin_plants()}
    for name, words in PRINTED.items():
        with subtests.test(name=name):
            named = set().union(*(READ_AS[word] for word in READ_AS if word in words.split()))
            ours = {zone.value for zone in plants[name].zones}
            assert ours & named
            if name not in DECIDED:
                assert ours <= named and "MDRG" in plants[name].rests("zones")


def test_the_sample_is_large_enough():
    assert len(PRINTED) > 15
