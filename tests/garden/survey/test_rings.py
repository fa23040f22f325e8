"""Rings of points, against shapely."""

import random

import pytest
from shapely.geometry import LineString, Polygon

from interview.garden.survey.rings import crossed, shoelace


def test_a_ring_is_crossed_where_shapely_crosses_it():
    rng = random.Random(5)
    for _ in range(40):
        ring = [(rng.randint(-4, 4), rng.uniform(-9, 9)) for _ in range(rng.randint(3, 7))]
        edge = LineString([*ring, ring[0]])
        for x in (-5.0, *range(-4, 5), rng.uniform(-4, 4)):
            met = edge.intersection(LineString([(x, -99), (x, 99)]))
            found = crossed(ring, x)
            if met.is_empty:
                assert found is None
            else:
                assert found == pytest.approx((met.bounds[1], met.bounds[3]))


def test_the_area_within_a_ring_has_the_sign_of_its_way():
    ring = [(0, 0), (4, 0), (4, 3), (1, 5)]
    assert shoelace(ring) == pytest.approx(Polygon(ring).area)
    assert shoelace(ring[::-1]) == pytest.approx(-Polygon(ring).area)
