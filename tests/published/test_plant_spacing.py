"""How far apart plants of one size are set, as printed.

Plant Spacing, Low Impact Development Center, web page: quart perennials 12 in on center,
one-gallon perennials 18 in. Step 3: Planting and Maintaining the Rain Garden, University of
Wisconsin-Extension, web page: plugs on a grid of 1 ft. The metric distances are round numbers of
this project, within 2 % of the printed ones.
"""

import pytest

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import PlantKind
from interview.garden.planting.stock import SPACING, PlantSize, apart, at_size
from interview.quantities.evidence import Provenance
from interview.quantities.units import METRIC, US, magnitude

PRINTED_IN = {PlantSize.POT: 12, PlantSize.LARGE_POT: 18, PlantSize.PLUG: 12}


def test_each_size_is_set_as_far_apart_as_printed(subtests):
    for size, inches in PRINTED_IN.items():
        with subtests.test(size=size):
            assert magnitude(apart(size, US), "in") == inches
            assert magnitude(apart(size, METRIC), "in") == pytest.approx(inches, rel=0.02)
            assert SPACING[size].source.standing is Provenance.PUBLISHED
            for plant, listed in zip(
                at_size(builtin_plants(), size), builtin_plants(), strict=True
            ):
                shrub = plant.kind is PlantKind.SHRUB
                assert plant.spacing_in == (listed.spacing_in if shrub else inches)


def test_the_sources_are_those_printed():
    assert "Low Impact Development Center" in SPACING[PlantSize.POT].source.title
    assert "Low Impact Development Center" in SPACING[PlantSize.LARGE_POT].source.title
    assert "University of Wisconsin" in SPACING[PlantSize.PLUG].source.title
