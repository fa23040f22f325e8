"""Distances between plants as two public lists print them, beside the plant list.

MSD: list of plants of a sewer district, 10 March 2009. MCMD: plants for rain gardens, Montgomery
County, Maryland. Both read in second copies; inches, as printed. The list of plants lies between
the least and the most that the two print for a species; what was changed to them is a decision in
``plant_decisions.csv``, and what lies outside is named.
"""

from interview.garden.planting.plant_list import builtin_plants

PRINTED = (
    ("Amsonia hubrichtii", "MCMD", "18"),
    ("Andropogon virginicus", "MSD", "18"),
    ("Aquilegia canadensis", "MCMD", "12"),
    ("Asclepias incarnata", "MSD", "18"),
    ("Asclepias incarnata", "MCMD", "24"),
    ("Asclepias tuberosa", "MCMD", "12-24"),
    ("Baptisia australis", "MCMD", "12-24"),
    ("Carex crinita", "MSD", "18"),
    ("Carex grayi", "MSD", "18"),
    ("Carex muskingumensis", "MSD", "18"),
    ("Carex vulpinoidea", "MSD", "18"),
    ("Chelone glabra", "MCMD", "12-18"),
    ("Chelone lyonii", "MCMD", "12-18"),
    ("Chelone obliqua", "MSD", "24"),
    ("Chelone obliqua", "MCMD", "12-18"),
    ("Coreopsis tripteris", "MSD", "24"),
    ("Helenium autumnale", "MSD", "24"),
    ("Iris fulva", "MSD", "18"),
    ("Iris virginica", "MSD", "24"),
    ("Juncus effusus", "MSD", "18"),
    ("Lobelia cardinalis", "MSD", "18"),
    ("Mimulus ringens", "MSD", "18"),
    ("Monarda fistulosa", "MSD", "24"),
    ("Panicum virgatum", "MSD", "30"),
    ("Parthenium integrifolium", "MSD", "18"),
    ("Penstemon digitalis", "MSD", "18"),
    ("Schizachyrium scoparium", "MSD", "18"),
    ("Scirpus atrovirens", "MSD", "18"),
    ("Scirpus cyperinus", "MSD", "18"),
    ("Symphyotrichum novae-angliae", "MCMD", "24-36"),
)

OUTSIDE = {
    "Aquilegia canadensis",
    "Baptisia australis",
    "Carex crinita",
    "Helenium autumnale",
    "Lobelia cardinalis",
    "Mimulus ringens",
    "Scirpus atrovirens",
}
"""Species whose distance is another source's."""


def span(words):
    low, _, high = words.partition("-")
    return float(low), float(high or low)


def test_a_distance_lies_between_those_printed(subtests):
    plants = {one.scientific_name: one for one in builtin_plants()}
    for name in {name for name, _, _ in PRINTED}:
        with subtests.test(name=name):
            spans = [span(words) for one, _, words in PRINTED if one == name]
            least, most = min(low for low, _ in spans), max(high for _, high in spans)
            assert (least <= plants[name].spacing_in <= most) is (name not in OUTSIDE)


def test_a_list_that_prints_the_distance_is_named_for_it(subtests):
    plants = {one.scientific_name: one for one in builtin_plants()}
    for name, code, words in PRINTED:
        with subtests.test(name=name, code=code):
            low, high = span(words)
            if low <= plants[name].spacing_in <= high:
                assert code in plants[name].rests("spacing")
