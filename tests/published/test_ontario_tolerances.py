"""How species stand drought and salt as a guide of Ontario prints it, beside the plant list.

Low Impact Development Stormwater Management Planning and Design Guide, TRCA, CVC and LSRCA,
Ontario, web pages: lists of perennials, shrubs and grasses, their first part. Rows as printed:
drought, then salt, each as marks out of three; a dash where nothing is said. That one mark is low,
two medium and three high is this project's reading. Most of the list rests on another source and
keeps the lower of the two, so it never stands more than is printed here.
"""

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import DEGREES

PRINTED = {
    "Achillea millefolium": "2-3/3 2/3",
    "Amsonia hubrichtii": "2/3 1/3",
    "Amsonia tabernaemontana": "2/3 1/3",
    "Andropogon gerardii": "3/3 2/3",
    "Anemone canadensis": "1-2/3 2/3",
    "Aquilegia canadensis": "2/3 2/3",
    "Aronia melanocarpa": "1-2/3 2-3/3",
    "Aruncus dioicus": "1-2/3 2/3",
    "Asclepias incarnata": "2/3 2/3",
    "Asclepias tuberosa": "2-3/3 2-3/3",
    "Baptisia alba": "3/3 3/3",
    "Baptisia australis": "3/3 3/3",
    "Boltonia asteroides": "2/3 2/3",
    "Calamagrostis canadensis": "1-2/3 2/3",
    "Caltha palustris": "1/3 1/3",
    "Carex bebbii": "1-2/3 2/3",
    "Carex brevior": "2-3/3 2/3",
    "Carex crinita": "1/3 1/3",
    "Carex grayi": "1/3 2/3",
    "Carex pensylvanica": "2-3/3 2/3",
    "Carex stipata": "1/3 2/3",
    "Carex vulpinoidea": "1-2/3 2/3",
    "Cephalanthus occidentalis": "2/3 2/3",
    "Chasmanthium latifolium": "2/3 3/3",
    "Chelone glabra": "1/3 1/3",
    "Chelone lyonii": "1/3 1/3",
    "Coreopsis lanceolata": "3/3 3/3",
    "Coreopsis rosea": "2/3 2/3",
    "Cornus amomum": "2/3 1/3",
    "Cornus sericea": "2/3 1/3",
    "Dasiphora fruticosa": "2-3/3 2/3",
    "Deschampsia cespitosa": "2/3 2-3/3",
    "Diervilla lonicera": "2/3 1-2/3",
    "Heliopsis helianthoides": "2-3/3 -",
    "Hypericum kalmianum": "2-3/3 3/3",
    "Iris versicolor": "1/3 2/3",
    "Lindera benzoin": "2/3 2/3",
    "Lobelia siphilitica": "1/3 1/3",
    "Morella pensylvanica": "3/3 3/3",
    "Physocarpus opulifolius": "2-3/3 3/3",
    "Sambucus canadensis": "1-2/3 1-2/3",
}


def test_no_species_stands_more_drought_or_salt_than_is_printed(subtests):
    plants = {one.scientific_name: one for one in builtin_plants()}
    for name, printed in PRINTED.items():
        plant = plants[name]
        for fact, marks in zip(("drought", "salt"), printed.split(), strict=True):
            if marks == "-":
                continue
            least, *most = (int(mark) for mark in marks.removesuffix("/3").split("-"))
            kept = DEGREES.index(getattr(plant, fact))
            with subtests.test(name=name, fact=fact):
                assert kept <= (most[0] if most else least)
                if plant.rests(fact) == ("STEP",):
                    assert kept == least


def test_the_sample_is_large_enough():
    assert len(PRINTED) >= 40
