"""Errors carried to first order."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.quantities.spread import combine, propagate

size = st.floats(0.5, 100)
error = st.floats(0.001, 0.4)


def test_a_product_adds_relative_errors_in_squares():
    spread = propagate(lambda x: x["a"] * x["b"], {"a": (10.0, 0.3), "b": (20.0, 0.8)})
    assert spread.value == 200
    assert spread.standard_error == pytest.approx(200 * math.hypot(0.03, 0.04), rel=1e-6)
    assert spread.driver == "b"
    assert spread.shares["b"] == pytest.approx(0.64, rel=1e-6)
    assert spread.high - spread.low == pytest.approx(4 * spread.standard_error)


def test_a_certain_input_takes_no_share():
    spread = propagate(lambda x: x["a"] + x["b"], {"a": (1.0, 0.0), "b": (2.0, 0.1)})
    assert set(spread.shares) == {"b"}


def test_nothing_uncertain_has_no_driver():
    spread = propagate(lambda x: x["a"], {"a": (3.0, 0.0)})
    assert (spread.standard_error, spread.driver) == (0.0, None)


def test_an_impossible_error_is_refused(subtests):
    for bad in [-0.1, math.nan, math.inf]:
        with subtests.test(bad=bad), pytest.raises(ValueError, match="zero or more"):
            propagate(lambda x: x["a"], {"a": (1.0, bad)})


@given(size, size, error, error, st.floats(0.01, 100))
def test_scale_does_not_matter(a, b, ua, ub, scale):
    def ratio(x):
        return x["a"] / x["b"]

    plain = propagate(ratio, {"a": (a, ua), "b": (b, ub)})
    scaled = propagate(ratio, {"a": (a * scale, ua * scale), "b": (b * scale, ub * scale)})
    assert scaled.standard_error == pytest.approx(plain.standard_error, rel=1e-4)


@given(size, size, error, error)
def test_order_does_not_matter(a, b, ua, ub):
    def total(x):
        return x["a"] * x["b"] + x["a"]

    one = propagate(total, {"a": (a, ua), "b": (b, ub)})
    other = propagate(total, {"b": (b, ub), "a": (a, ua)})
    assert one.standard_error == pytest.approx(other.standard_error, rel=1e-12)
    assert one.driver == other.driver
    assert math.fsum(one.shares.values()) == pytest.approx(1.0)


def test_equal_parts_name_the_first_by_name():
    assert combine({"z": 1.0, "a": 1.0})[1] == {"z": 0.5, "a": 0.5}
    spread = propagate(lambda x: x["z"] + x["a"], {"z": (1.0, 0.1), "a": (1.0, 0.1)})
    assert spread.standard_error == pytest.approx(math.sqrt(2) * 0.1)
