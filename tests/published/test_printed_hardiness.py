"""The coldest and the warmest zones of fourteen species as two lists print them.

MSD: list of plants of a sewer district, 10 March 2009. NGN: catalog of a nursery, Natural Garden
Natives. Both read in second copies; USDA zones, as printed. The milder of the coldest and the
colder of the warmest are kept, or a decision in ``plant_decisions.csv`` says why not.
"""

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.provenance import decisions

PRINTED = (
    ("Acorus americanus", "NGN", "4-9"),
    ("Amorpha canescens", "NGN", "4-9"),
    ("Andropogon gerardii", "NGN", "3-9"),
    ("Anemone canadensis", "NGN", "3-9"),
    ("Asclepias incarnata", "MSD", "3-6"),
    ("Carex muskingumensis", "MSD", "4-9"),
    ("Carex vulpinoidea", "MSD", "3-7"),
    ("Chelone obliqua", "MSD", "3-9"),
    ("Helenium autumnale", "MSD", "3-8"),
    ("Iris fulva", "MSD", "5-9"),
    ("Iris virginica", "MSD", "3-9"),
    ("Juncus effusus", "MSD", "4-9"),
    ("Lobelia cardinalis", "MSD", "3-9"),
    ("Mimulus ringens", "MSD", "3-8"),
)
DECIDED = {(one.scientific_name, one.field) for one in decisions()}


def test_a_species_is_planted_in_no_zone_outside_those_printed(subtests):
    plants = {one.scientific_name: one for one in builtin_plants()}
    for name, code, printed in PRINTED:
        coldest, warmest = map(int, printed.split("-"))
        low, high = plants[name].hardiness
        with subtests.test(name=name, code=code):
            assert low >= coldest
            assert high <= warmest or (name, "hardiness_max") in DECIDED
