"""Published volumes, swell and cover.

1. Construction estimating text, example 9-2: 1,000 bank yd3 of dense clay swell 30 % to 1,300
   loose, 186 loads of 7; example 9-3: sand and gravel swell 15 %, 526 bank are 605 loose.
2. Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. 34:
   392 ft2 x 1.5 ft = 588 ft3 = 21.78 yd3.
3. Rain Gardens of West Michigan: 2 x 5 x 10 ft = 100 ft3, about 3.7 yd3.
4. Cover of one cubic yard: 324, 162, 108, 81 ft2 at 1, 2, 3, 4 in (arithmetic; a widely repeated
   135 ft2 at 2 in is wrong).
5. Wheelbarrow loads in a cubic yard: 13.5, 9, 4.5 of 2, 3, 6 ft3 (arithmetic).
"""

import pytest

from interview.garden.earth.materials import BULKING, Soil, covers, layer, loosen
from interview.quantities.units import magnitude, quantity


def test_sand_and_gravel_swell():
    loose = loosen(quantity(526, "yd**3"), Soil.SAND)
    assert magnitude(loose, "yd**3") == pytest.approx(605, abs=0.5)


def test_clay_swells_at_least_as_the_text_says():
    assert BULKING[Soil.CLAY].low >= 1.30
    assert BULKING[Soil.CLAY].high <= 1.43


def test_soil_fill():
    washington = layer(quantity(392, "ft**2"), quantity(1.5, "ft"))
    assert magnitude(washington, "ft**3") == pytest.approx(588)
    assert magnitude(washington, "yd**3") == pytest.approx(21.78, abs=0.005)
    michigan = layer(quantity(50, "ft**2"), quantity(2, "ft"))
    assert magnitude(michigan, "yd**3") == pytest.approx(3.7, abs=0.05)


def test_cover_of_a_cubic_yard(subtests):
    for inches, area in [(1, 324), (2, 162), (3, 108), (4, 81)]:
        with subtests.test(inches=inches, area=area):
            covered = covers(quantity(1, "yd**3"), quantity(inches, "in"))
            assert magnitude(covered, "ft**2") == pytest.approx(area)
