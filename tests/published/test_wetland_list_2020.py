"""A sample of the plant list's wetland ratings against a later edition of the federal list.

National Wetland Plant List, 2020, version 1, national list (file national_2020v1), U.S. Army Corps
of Engineers; read in a second copy. The packaged ratings were taken from data sets of 2011 to 2020
that copy earlier editions, so agreement shows that they were carried over rightly and have stood;
a rating that is not carried over is named below. Rows as printed, in the order
AGCP, EMP, NCNE, MW, GP, AW, WMVC; a dash where the list prints none. Ratings are words, so there
is no tolerance.
"""

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import Indicator
from interview.garden.planting.regions import ListRegion

ORDER = ("AGCP", "EMP", "NCNE", "MW", "GP", "AW", "WMVC")

PRINTED = {
    "Achillea millefolium": "FACU FACU FACU FACU FACU FACU FACU",
    "Baptisia alba": "FACU FACU FACU FACU FACU - -",
    "Baptisia australis": "FACU FACU FACU FACU UPL - -",
    "Liatris ligulistylis": "- FACU FACU FACU FAC FAC FAC",
    "Liatris pycnostachya": "FACU FACU FAC FAC FAC - -",
    "Liatris spicata": "FAC FAC FAC FAC - - -",
    "Lilium michiganense": "FACW FACW FACW FACW FACW - -",
    "Lilium pardalinum": "- - - - - FACW FACW",
    "Lilium superbum": "FACW FACW FACW FACW - - -",
    "Lindera benzoin": "FACW FAC FACW FACW FACW - -",
    "Symphoricarpos albus": "FACU FACU FACU FACU UPL FACU FACU",
    "Symphoricarpos orbiculatus": "FACU FACU FACU FACU FACU UPL UPL",
    "Symphyotrichum chilense": "- - - - - FAC FAC",
    "Symphyotrichum ericoides": "UPL FACU FACU FACU FACU FAC FAC",
    "Symphyotrichum laeve": "UPL FACU FACU FACU FACU FACU FACU",
    "Symphyotrichum novae-angliae": "FACW FACW FACW FACW FACW FACW FACW",
    "Symphyotrichum novi-belgii": "OBL FACW FACW - - - -",
    "Symphyotrichum puniceum": "OBL OBL OBL OBL OBL - -",
    "Symphyotrichum subspicatum": "- - - - FAC FACW FACW",
    "Tellima grandiflora": "- - - - - FACU FACU",
}

NOT_PRINTED = (
    "Baccharis pilularis",
    "Liatris aspera",
    "Liatris punctata",
    "Symphyotrichum cordifolium",
    "Symphyotrichum oblongifolium",
)
"""Plants of the packaged list that the 2020 list does not hold; it directs to take them as dry."""

NOT_RATED_HERE = {
    "Baptisia alba": {"GP"},
    "Baptisia australis": {"AGCP", "GP"},
    "Liatris pycnostachya": {"GP"},
    "Symphyotrichum chilense": {"AW"},
}
"""Ratings the packaged list lacks: there the plant is left out, never guessed at."""


def printed(name):
    rows = zip(ORDER, PRINTED[name].split(), strict=True)
    return {ListRegion[region]: Indicator[code] for region, code in rows if code != "-"}


def plant(name):
    return next(one for one in builtin_plants() if one.scientific_name == name)


def test_the_sample_is_large_enough():
    assert sum(len(printed(name)) for name in PRINTED) >= 60
    assert {region for name in PRINTED for region in printed(name)} == set(ListRegion)


def test_the_ratings_of_a_species_are_those_printed_in_2020(subtests):
    for name in PRINTED:
        with subtests.test(name=name):
            ours = dict(plant(name).ratings)
            differ = {
                region.name: (ours[region].name, code.name)
                for region, code in printed(name).items()
                if region in ours and ours[region] is not code
            }
            assert differ == {}


def test_every_region_the_2020_list_rates_is_rated_here_or_named_as_missing(subtests):
    for name in PRINTED:
        with subtests.test(name=name):
            missing = set(printed(name)) - set(dict(plant(name).ratings))
            assert {one.name for one in missing} == NOT_RATED_HERE.get(name, set())


def test_a_species_that_is_not_on_the_list_is_taken_for_dry_ground(subtests):
    for name in NOT_PRINTED:
        with subtests.test(name=name):
            assert {code for _, code in plant(name).ratings} <= {Indicator.UPL, Indicator.FACU}
