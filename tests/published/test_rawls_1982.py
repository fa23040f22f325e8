"""Saturated rates by texture.

Rawls, Brakensiek and Saxton, Estimation of Soil Water Properties, Transactions of the ASAE 25(5),
1982, pp. 1316-1320. Centimeters per hour to two decimals, read in a second copy; the inches per
hour are those state stormwater manuals print, to two decimals.
"""

import pytest

from interview.garden.soak.rates import Texture, published_rate
from interview.quantities.units import magnitude

ROWS = [
    ("sand", 21.00, 8.27),
    ("loamy sand", 6.11, 2.41),
    ("sandy loam", 2.59, 1.02),
    ("loam", 1.32, 0.52),
    ("silt loam", 0.68, 0.27),
    ("sandy clay loam", 0.43, 0.17),
    ("clay loam", 0.23, 0.09),
    ("silty clay loam", 0.15, 0.06),
    ("sandy clay", 0.12, 0.05),
    ("silty clay", 0.09, 0.04),
    ("clay", 0.06, 0.02),
]


def test_every_class_of_the_table_is_here():
    assert [texture.value for texture in Texture] == [name for name, _, _ in ROWS]


def test_the_rate_is_as_printed_in_both_units(subtests):
    for name, cm_per_h, in_per_h in ROWS:
        with subtests.test(name=name, cm_per_h=cm_per_h, in_per_h=in_per_h):
            rate = published_rate(Texture(name))
            assert magnitude(rate, "cm/h") == pytest.approx(cm_per_h)
            assert round(magnitude(rate, "in/h"), 2) == pytest.approx(in_per_h)
