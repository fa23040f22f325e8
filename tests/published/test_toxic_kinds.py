"""Kinds that a flora, a work on animals or a list of the Northwest calls poisonous.

Read in web pages, as printed: a flora of California on the roots of barberries, in a quotation; a
veterinary toxicology on Glyceria, with fowl mannagrass among the related species; Hansen's
Northwest Native Plant Database on Pacific ninebark, on its own page; Chesnut's catalogue for the
U.S. Department of Agriculture, 1898, p. 421, in a reproduction; and the pages that the codes of
``PLANT_SOURCES`` name. What the list held to be safe and another marks is a decision of its own.
"""

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.provenance import decisions

PRINTED = {
    "Mahonia aquifolium": ("JEP", "roots often toxic"),
    "Mahonia nervosa": ("JEP", "roots often toxic"),
    "Mahonia repens": ("JEP", "roots often toxic"),
    "Glyceria striata": ("CVT", "hydrogen cyanide, 0.06 to 0.2 g/kg: cattle, sheep"),
    "Physocarpus capitatus": ("HNW", "considered to be poisonous"),
    "Xanthorhiza simplicissima": ("PFAF", "root, in high doses, potentially toxic"),
    "Eutrochium purpureum": ("NMCD", "likely unsafe: hepatotoxic pyrrolizidine alkaloids"),
    "Veronicastrum virginicum": ("MEDD", "emetic and cathartic; hepatotoxicity reported"),
    "Aruncus dioicus": ("SAFE", "pets, children: cyanogenic glycosides"),
    "Zizia aurea": ("CARL", "considered to be mildly poisonous"),
    "Saururus cernuus": ("TOXB", "animals affected: cattle, sheep"),
    "Helenium autumnale": ("CHES", "sheep, cattle, and horses are often poisoned"),
    "Lobelia cardinalis": ("CHES", "all of the species in this genus are poisonous"),
    "Lobelia siphilitica": ("CHES", "all of the species in this genus are poisonous"),
}


def test_what_a_second_source_calls_toxic_is_never_marked_safe(subtests):
    by_name = {one.scientific_name: one for one in builtin_plants()}
    decided = {one.scientific_name: one for one in decisions() if one.field == "toxic"}
    for name, (code, _) in PRINTED.items():
        with subtests.test(name):
            plant = by_name[name]
            assert plant.toxic and plant.warned
            assert code in plant.rests("toxicity")
            # The leaf of every barberry is as sharp as the same flora says.
            assert ("thorns" in plant.rests_on) == (code == "JEP") == plant.thorny
            if code != "CHES" and name != "Mahonia aquifolium":  # these were marked before
                assert code in decided[name].published
