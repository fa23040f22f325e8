"""The balance of one storm looked at piece by piece, each against the laws it is made from."""

import math
from itertools import pairwise

import pytest
from scipy.integrate import solve_ivp

from interview.garden.pond import pool as balance
from interview.garden.pond.hyetographs import uniform_storm
from interview.garden.pond.pieces import PoolPiece
from interview.garden.pond.pool import BarePool, FlowSpan, pieces_of, pool
from interview.garden.pond.routing import RoutedStorm, route
from interview.garden.pond.stage import StageCurve
from interview.quantities.units import magnitude, quantity

BED = BarePool(105.0, 132.0, 36.0, 0.5, 0.25 / 12)
"""A floor of 15 x 7 ft, sides of 3:1, a pond of 6 in, a quarter inch an hour."""
FLOOR_ONLY = BED._replace(floor_only=True)
WIDE = BarePool(0.5, 40.0, 60.0, 1.0, 0.02)
"""Hardly a floor, and sides so flat that the first drops spread far."""
STORMS = {
    "fills, runs over and dries": [(0, 3, 0, 40), (3, 6, 40, 0), (6, 40, 0, 0)],
    "turns below the brim": [(2, 5, 0, 15), (5, 8, 15, 0), (8, 40, 0, 0)],
    "empties while it rains": [(0, 1, 20, 20), (1, 30, 1.5, 0.5), (30, 31, 3, 4), (31, 50, 0, 0)],
    "hardly runs over": [(0, 2, 30, 30), (2, 50, 4.5, 4.5), (50, 51, 0, 0)],
    "late in a year": [(8000, 8001, 10, 30), (8001, 8001.01, 0, 0), (8001.01, 8009, 6, 0)],
}


@pytest.mark.parametrize("bed", [BED, FLOOR_ONLY, WIDE], ids=["bed", "floor only", "wide"])
@pytest.mark.parametrize(("steps", "millionths"), [(balance.STEPS, 0.1), (balance.YEARS_STEPS, 3)])
@pytest.mark.parametrize("storm", STORMS)
def test_each_piece_keeps_its_water_and_never_turns(bed, steps, millionths, storm):
    """What comes is what soaks, runs over and stands; the speeds are those of the balance."""
    spans = [FlowSpan(*one) for one in STORMS[storm]]

    def comes(time, after):
        inside = lambda one: one.start <= time < one.end if after else time <= one.end  # noqa: E731
        one = next(filter(inside, spans))
        return one.first + (one.last - one.first) * (time - one.start) / (one.end - one.start)

    def soaks(depth):
        return bed.rate * (bed.floor if bed.floor_only else area(depth))

    def area(depth):
        return bed.floor + bed.widening * depth + bed.bend * depth**2

    def holds(depth):
        return bed.floor * depth + bed.widening * depth**2 / 2 + bed.bend * depth**3 / 3

    total = sum(one.volume for one in spans)
    pieces = list(pieces_of(bed, spans, 0.0, steps))
    assert (pieces[0].start, pieces[-1].end) == (spans[0].start, spans[-1].end)
    for one, other in pairwise(pieces):
        assert one.end == other.start
        assert one.last_depth == pytest.approx(other.depths[0], abs=1e-12)
    for piece in pieces:
        assert len(piece.times) == len(piece.depths) == len(piece.speeds) >= 2
        assert all(one < other for one, other in pairwise(piece.times))
        rises = {one < other for one, other in pairwise(piece.depths) if one != other}
        assert len(rises) <= 1
        assert all(0 <= depth <= bed.full + 1e-12 for depth in piece.depths)
        came = sum(
            (other - one) * (comes(one, True) + comes(other, False)) / 2
            for one, other in pairwise(piece.times)
        )
        stands = holds(piece.last_depth) - holds(piece.depths[0])
        assert piece.soaked + piece.spilled + stands == pytest.approx(
            came, abs=millionths * 1e-6 * total + 1e-12
        )
        level = not rises
        for time, depth, speed in zip(piece.times, piece.depths, piece.speeds, strict=True):
            last = time == piece.end
            by = 0.0 if level else (comes(time, not last) - soaks(depth)) / area(depth)
            assert speed == pytest.approx(by, abs=1e-5)
        if level:
            assert piece.depth_at((piece.start + piece.end) / 2) == piece.depths[0]
            assert piece.depths[0] in (0.0, bed.full)
        elif not bed.floor_only and not came:
            assert len(piece.times) == 2  # a straight line


@pytest.mark.parametrize("bed", [WIDE, WIDE._replace(floor_only=True), WIDE._replace(bend=0.0)])
@pytest.mark.parametrize(
    ("first", "last", "most"), [(3, 3, 36), (0.5, 6, 180), (6, 0.5, 48), (0.1, 0.1, 21)]
)
def test_a_pond_that_widens_fast_takes_shorter_steps_and_no_more_than_it_needs(
    bed, first, last, most, monkeypatch
):
    """The depth after an hour, from nothing, by a general solver (DOP853 of scipy)."""
    rule, looked = balance._runge_kutta, []
    monkeypatch.setattr(
        balance, "_runge_kutta", lambda *given: (looked.append(given), rule(*given))[1]
    )
    *_, piece = pieces_of(bed, [FlowSpan(0, 1, first, last)], 0.0, balance.YEARS_STEPS)

    def grows(time, depth):
        area = bed.floor + bed.widening * depth[0] + bed.bend * depth[0] ** 2
        soaks = bed.rate * (bed.floor if bed.floor_only else area)
        return [(first + (last - first) * time - soaks) / area]

    exact = solve_ivp(grows, (0, 1), [0.0], method="DOP853", rtol=1e-12, atol=1e-14).y[0][-1]
    assert piece.last_depth == pytest.approx(exact, rel=2e-6)
    assert len(looked) < most


def test_a_pond_that_hardly_widens_takes_even_steps():
    (piece,) = pieces_of(BED, [FlowSpan(0, 1, 10, 10)], 0.0, balance.YEARS_STEPS)
    assert piece.times == pytest.approx([count / 8 for count in range(9)])
    (piece,) = pieces_of(BED, [FlowSpan(3, 3.7, 10, 11)], 0.0, balance.STEPS)
    assert piece.times == pytest.approx([3 + 0.7 * count / 32 for count in range(33)])


def test_a_pond_a_hair_from_its_brim_late_in_a_year_is_full_at_once():
    depth = math.nextafter(BED.full, 0)
    (piece,) = pieces_of(BED, [FlowSpan(8000, 8001, 400, 400)], depth)
    assert (piece.times, piece.depths) == ((8000, 8001), (BED.full, BED.full))
    assert piece.spilled == pytest.approx(400 - BED.rate * (105 + 66 + 9))


def test_a_film_of_water_late_in_a_year_is_gone_at_once():
    (piece,) = pieces_of(BED, [FlowSpan(8000, 8001, 0, 0)], 1e-18)
    assert (piece.times, piece.depths) == ((8000, 8001), (0.0, 0.0))


@pytest.mark.parametrize("start", [0.0, 1.0, 6.0])
@pytest.mark.parametrize("ulps", [-1, 1])
def test_a_flow_a_hair_from_what_soaks_does_no_harm(start, ulps):
    """Where rounding leaves the flow on the wrong side of what an empty or a full pond takes."""
    for depth, takes, last in ((0.0, BED.soak(0.0), 9.0), (BED.full, BED.soak(BED.full), 0.0)):
        first = math.nextafter(takes, ulps * math.inf)
        spans = [FlowSpan(start, start + 2, first, last)]
        pieces = list(pieces_of(BED, spans, depth))
        exact = solve_ivp(
            lambda time, now, first=first, last=last: [
                (first + (last - first) * time / 2 - BED.soak(now[0])) / BED.area(now[0])
            ],
            (0, 2), [depth], method="DOP853", rtol=1e-12, atol=1e-14,
        ).y[0][-1]  # fmt: skip
        assert pieces[-1].last_depth == pytest.approx(exact, abs=1e-9)
        assert all(-1e-12 < one < BED.full + 1e-12 for piece in pieces for one in piece.depths)
        assert sum(piece.spilled for piece in pieces) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("floor", [0.3, 2.0, 105.0])
def test_the_depth_of_a_volume_holds_that_volume(floor):
    bed = BED._replace(floor=floor)
    for depth in (0.0, 1e-9, 0.01, 0.2, 0.5, 3.0):
        volume = floor * depth + 132 * depth**2 / 2 + 36 * depth**3 / 3
        assert bed.depth_of(volume) == pytest.approx(depth, rel=1e-12)


def test_a_chart_bends_each_part_that_has_a_point_inside_and_no_other():
    bent = PoolPiece((0.0, 1.0, 2.0), (0.0, 0.1, 0.3), (0.1, 0.15, 0.2), 1.0)
    straight = PoolPiece((2.0, 5.0), (0.3, 0.0), (-0.1, -0.1), 1.0)
    no = quantity(0, "ft**3")
    routed = RoutedStorm(None, None, (bent, straight), no, no, no, quantity(0.3, "ft"))
    times = [magnitude(time, "h") for time, _ in routed.breakpoints(between=3)]
    assert times == [0, 0.5, 1, 1.5, 2, 5]


def test_the_account_ends_with_the_rain_where_nothing_stands():
    stage = StageCurve(quantity(105, "ft**2"), quantity(44, "ft"), 4, 3, quantity(6, "in"))
    garden = pool(stage, quantity(50, "ft**2"), quantity(100, "ft**2"), quantity(1, "in/h"))
    found = route(garden, uniform_storm(quantity(0.1, "in"), quantity(2, "h")))
    assert found.pieces[-1].end == 2


def test_an_outline_may_add_nothing_at_its_corners_but_not_more_than_can_be_told():
    def volume(corners):
        curve = StageCurve(quantity(9, "ft**2"), quantity(12, "ft"), corners, 1, quantity(2, "ft"))
        return magnitude(curve.volume, "ft**3")

    assert volume(0) == pytest.approx(9 * 2 + 12 * 2)
    assert volume(0.5) == pytest.approx(9 * 2 + 12 * 2 + 0.5 * 8 / 3)
    with pytest.raises(ValueError, match="cannot lean inward"):
        volume(math.inf)


def test_a_pond_that_soaks_fast_by_its_floor_alone_is_empty_when_a_general_solver_says():
    bed, came = WIDE._replace(rate=0.8, floor_only=True), 0.01
    first, *_ = pieces_of(bed, [FlowSpan(0, 1, came, came)], 0.05, balance.YEARS_STEPS)
    empty = lambda time, depth: depth[0]  # noqa: E731
    empty.terminal = True
    exact = solve_ivp(
        lambda time, depth: [
            (came - 0.8 * bed.floor) / (bed.floor + 40 * depth[0] + 60 * depth[0] ** 2)
        ],
        (0, 1), [0.05], method="DOP853", rtol=1e-12, atol=1e-14, events=empty,
    )  # fmt: skip
    assert first.end == pytest.approx(exact.t_events[0][0], rel=1e-5)


def test_a_part_without_length_changes_nothing():
    spans = [FlowSpan(0, 1, 10, 10), FlowSpan(1, 1, 5, 5), FlowSpan(1, 2, 10, 10)]
    assert list(pieces_of(BED, spans)) == list(pieces_of(BED, [spans[0], spans[2]]))


def test_a_full_pond_that_takes_just_what_comes_rests():
    takes = BED.soak(BED.full)
    (piece,) = pieces_of(BED, [FlowSpan(0, 3, takes, takes)], BED.full)
    assert (piece.times, piece.depths) == ((0, 3), (BED.full, BED.full))


@pytest.mark.parametrize(("start", "end"), [(1.4, 5.7), (2.1, 7.8)])
def test_a_part_ends_when_it_ends_however_its_length_is_rounded(start, end):
    assert start + (end - start) != end
    (piece,) = pieces_of(BED, [FlowSpan(start, end, 10, 10)])
    assert piece.end == end


def test_the_depth_is_told_where_two_times_of_a_piece_are_one():
    piece = PoolPiece((0.0, 1.0, 1.0), (0.2, 0.1, 0.1), (-0.1, -0.1, -0.1), 1.0)
    assert piece.depth_at(1.0) == 0.1
