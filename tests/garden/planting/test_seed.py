"""What is sown in place of plants, by weight."""

import pytest

from interview.garden.planting.seed import GRASS, NATIVE, grass_seed, native_seed, to_sow
from interview.quantities.units import magnitude, quantity


def test_seed_is_weighed_by_its_rate_and_the_thickest_is_bought():
    """By hand: 500 ft² of grass at 2 to 8 lb on 1000; an acre at 23 lb."""
    berm = grass_seed(quantity(500, "ft**2"))
    assert magnitude(berm.least, "lb") == pytest.approx(1)
    assert magnitude(berm.most, "lb") == pytest.approx(4)
    assert magnitude(berm.item.buy, "lb") == pytest.approx(4) and berm.rate is GRASS
    rim = native_seed(quantity(43560, "ft**2"))
    assert magnitude(rim.most, "lb") == pytest.approx(NATIVE.most.value[0][0]) == 23
    # 10 kg to the hectare of 10,000 m², on 4046.86 m².
    assert magnitude(rim.least, "kg") == pytest.approx(4.04686, rel=1e-5)
    assert magnitude(to_sow(quantity(0.5, "acre"), NATIVE.most.value), "lb") == pytest.approx(11.5)
    with pytest.raises(ValueError, match="zero or more"):
        to_sow(quantity(-1, "ft**2"), NATIVE.most.value)
