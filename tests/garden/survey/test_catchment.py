"""What drains here, and how sure it is."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from measures import ft, square_feet

from interview.garden.survey.catchment import (
    CALIBRATION,
    ONE_SIDE,
    WHOLE,
    Share,
    Surface,
    calibration_of,
    catchment,
    equal_share,
    joined_share,
    share_of_gutter,
    whole_roof_finding,
)
from interview.garden.survey.pacing import calibrate, paced
from interview.garden.survey.pieces import Piece, side_error, taped
from interview.garden.survey.shapes import Rectangle, Triangle
from interview.quantities.units import magnitude, quantity


@pytest.fixture
def pace():
    return calibrate(ft(50), [19, 20, 19, 20])


def paced_rectangle(pace, long, wide):
    a, b = paced(long, pace), paced(wide, pace)
    return Piece(Rectangle(a.length, b.length), errors=(side_error(a), side_error(b)))


@pytest.fixture
def household(pace):
    roof = (
        paced_rectangle(pace, 16, 7),
        Piece(Triangle(ft(14), ft(7))),
        Piece(Rectangle(ft(2.5), ft(4)), cut=True),
    )
    lawn = quantity(300, "ft**2")
    return (
        Surface("roof", "roof", 0.95, roof, share=equal_share(2)),
        Surface("patio", "paved", 0.95, (Piece(Rectangle(ft(10), ft(12))),)),
        Surface("lawn", "lawn", 0.25, plan=lawn, coefficient_error=0.1),
    )


def test_half_of_a_roof_in_three_pieces(household, pace):
    found = catchment(household[:1], pace)
    assert square_feet(found.surfaces[0].plan) == pytest.approx(775.4, abs=0.05)
    assert square_feet(found.drains_here) == pytest.approx(387.7, abs=0.05)


def test_a_whole_household_with_its_error(household, pace):
    found = catchment(household, pace)
    assert square_feet(found.weighted) == pytest.approx(557.3, abs=0.05)
    assert square_feet(found.standard_error) == pytest.approx(62.41, abs=0.02)
    assert found.relative_error == pytest.approx(0.1120, abs=5e-5)
    assert found.driver == "the share of roof"
    assert sum(found.shares.values()) == pytest.approx(1)
    assert square_feet(found.low) == pytest.approx(432.5, abs=0.1)
    assert square_feet(found.high) == pytest.approx(682.1, abs=0.1)


def test_the_pace_moves_all_paced_lengths_together(household, pace):
    found = catchment(household, pace)
    part = found.shares[CALIBRATION] ** 0.5 * square_feet(found.standard_error)
    assert part == pytest.approx(10.36, abs=0.01)


def test_finding_the_high_point_narrows_the_range(household, pace):
    known = share_of_gutter([ft(10)], ft(20))
    roof = replace(household[0], share=known)
    found = catchment((roof, *household[1:]), pace)
    assert square_feet(found.standard_error) == pytest.approx(34.37, abs=0.02)
    assert found.driver == "the measures of roof"


def test_two_halves_of_a_paced_surface_are_as_sure_of_the_pace_as_the_whole(pace):
    whole = Surface("whole", "roof", 1.0, (paced_rectangle(pace, 20, 10),))
    halves = tuple(
        Surface(name, "roof", 1.0, (paced_rectangle(pace, 10, 10),)) for name in ("left", "right")
    )
    parts = []
    for surfaces in ((whole,), halves):
        found = catchment(surfaces, pace)
        parts.append(found.shares[CALIBRATION] * square_feet(found.standard_error) ** 2)
    assert parts[0] == pytest.approx(parts[1])


@given(st.permutations([0, 1, 2]))
def test_the_order_of_surfaces_does_not_matter(order):
    plans = [
        Surface(f"s{n}", "roof", 0.95, plan=quantity(100 * n + 50, "ft**2"), plan_error=0.05)
        for n in range(3)
    ]
    found = catchment([plans[n] for n in order])
    assert square_feet(found.weighted) == pytest.approx(427.5)
    assert square_feet(found.standard_error) == pytest.approx(
        0.05 * 0.95 * (50**2 + 150**2 + 250**2) ** 0.5
    )
    assert found.driver == "the measures of s2"


def test_units_do_not_matter():
    feet = Surface("patio", "paved", 0.95, (Piece(Rectangle(ft(10), ft(12))),))
    meters = Surface(
        "patio", "paved", 0.95, (Piece(Rectangle(quantity(3.048, "m"), quantity(3.6576, "m"))),)
    )
    one, other = catchment([feet]), catchment([meters])
    assert square_feet(one.weighted) == pytest.approx(square_feet(other.weighted))
    assert one.relative_error == pytest.approx(other.relative_error)


def test_a_share_of_the_gutter():
    assert share_of_gutter([ft(10), ft(5)], ft(20)) == Share(0.75, 0.05)
    assert share_of_gutter([ft(20)], ft(20)) == Share(1.0, 0.0)
    with pytest.raises(ValueError, match="longer than the whole"):
        share_of_gutter([ft(21)], ft(20))
    assert equal_share(1) == Share(1.0, 0.0)
    assert equal_share(4) == Share(0.25, 0.15)
    with pytest.raises(ValueError, match="No more downspouts"):
        equal_share(0)


def test_what_cannot_be_is_refused(pace):
    patio = Surface("patio", "paved", 0.9, plan=quantity(50, "ft**2"))
    with pytest.raises(ValueError, match="at least one surface"):
        catchment([])
    with pytest.raises(ValueError, match="same name"):
        catchment([patio, patio])
    with pytest.raises(ValueError, match="walk a known distance"):
        catchment([Surface("roof", "roof", 1.0, (paced_rectangle(pace, 9, 9),))])
    with pytest.raises(ValueError, match="from 0 to 1"):
        Surface("patio", "paved", 1.1, plan=quantity(50, "ft**2"))
    with pytest.raises(ValueError, match="either its pieces or its area"):
        Surface("patio", "paved", 0.9)
    with pytest.raises(ValueError, match="share"):
        Share(1.5, 0.1)
    with pytest.raises(ValueError, match="from 0 to 1"):
        Share(0.5, 1.0)
    assert Share(0.0, 0.0).part == 0


def test_a_surface_that_sheds_nothing_has_no_range():
    found = catchment([Surface("lawn", "lawn", 0.0, plan=quantity(50, "ft**2"))])
    assert (square_feet(found.weighted), found.relative_error, found.driver) == (0, 0, None)


def test_one_downspout_that_takes_most_of_the_house_is_doubted():
    house = quantity(1500, "ft**2")
    assert whole_roof_finding(quantity(900, "ft**2"), house) is None
    assert whole_roof_finding(quantity(1000, "ft**2"), house).key == "whole_roof"


def test_two_walkers_are_two_errors(pace):
    """Two halves paced by two people: each half moves with its own pace, so less is common."""
    bob = calibrate(ft(50), [20, 19, 20, 19])

    def half(name, who, whose):
        a, b = paced(10, whose), paced(10, whose)
        errors = (side_error(a, who), side_error(b, who))
        return Surface(name, "roof", 1.0, (Piece(Rectangle(a.length, b.length), errors=errors),))

    one = catchment([half("a", "Ann", pace), half("b", "Ann", bob)], {"Ann": pace})
    two = catchment([half("a", "Ann", pace), half("b", "Bob", bob)], {"Ann": pace, "Bob": bob})
    ann = "the length of the pace of Ann"
    whole = one.shares[ann] * square_feet(one.standard_error) ** 2
    parts = sum(
        two.shares[f"the length of the pace of {who}"] * square_feet(two.standard_error) ** 2
        for who in ("Ann", "Bob")
    )
    assert square_feet(one.weighted) == pytest.approx(square_feet(two.weighted))
    assert whole == pytest.approx(2 * parts)
    assert calibration_of("") == CALIBRATION


def test_a_walker_without_a_pace_is_asked_for(pace):
    a = paced(10, pace)
    piece = Piece(Rectangle(a.length, ft(4)), errors=(side_error(a, "Bob"), taped()))
    with pytest.raises(ValueError, match="walk a known distance"):
        catchment([Surface("roof", "roof", 1.0, (piece,))], {"Ann": pace})


def plain(name, area, **more):
    return Surface(name, "roof", 1.0, plan=quantity(area, "ft**2"), **more)


def test_an_upper_roof_takes_the_share_of_the_roof_it_falls_on():
    low = plain("low", 300, share=equal_share(2))
    high = plain("high", 100, falls_on="low")
    top = plain("top", 40, falls_on="high", share=ONE_SIDE)
    found = catchment([top, high, low])
    assert [square_feet(one.drains_here) for one in found.surfaces] == pytest.approx([10, 50, 150])
    # The one guessed share moves all 210 square feet together; the half of the top moves its own.
    assert square_feet(found.standard_error) == pytest.approx((31.5**2 + 0.5**2) ** 0.5)
    assert found.driver == "the share of low"


def test_water_cannot_fall_round_in_a_ring(subtests):
    for surfaces, said in [
        ([plain("a", 10, falls_on="b")], "not listed"),
        ([plain("a", 10, falls_on="b"), plain("b", 10, falls_on="a")], "cannot each fall"),
        ([plain("a", 10, falls_on="a")], "cannot each fall"),
    ]:
        with (
            subtests.test(surfaces=surfaces, said=said),
            pytest.raises(ValueError, match=said),
        ):
            catchment(surfaces)


def test_lengths_along_the_slope_keep_their_errors_and_their_pace(pace):
    """The plan shrinks by the pitch factor, and so does everything that comes of it."""
    roof = Surface("roof", "roof", 1.0, (paced_rectangle(pace, 16, 7),))
    level, steep = catchment([roof], pace), catchment([replace(roof, level=0.8)], pace)
    assert square_feet(steep.weighted) == pytest.approx(0.8 * square_feet(level.weighted))
    assert steep.relative_error == pytest.approx(level.relative_error)
    assert steep.shares == pytest.approx(level.shares)
    with pytest.raises(ValueError, match="never longer"):
        replace(roof, level=1.2)


def test_several_downspouts_share_one_garden():
    assert equal_share(3, 2) == Share(2 / 3, 0.15)
    assert equal_share(3, 3) == Share(1.0, 0.0)
    with pytest.raises(ValueError, match="No more downspouts"):
        equal_share(2, 3)


def test_shares_one_after_another_multiply():
    joined = joined_share(ONE_SIDE, equal_share(2), Share(0.5, 0.1))
    assert joined.part == pytest.approx(0.125)
    assert joined.error == pytest.approx((0.05**2 + 0.15**2 + 0.1**2) ** 0.5)
    assert joined_share(WHOLE) == WHOLE


def test_what_a_rain_brings_is_area_times_depth():
    found = catchment([plain("roof", 623.3766), plain("patio", 100)])
    inch = quantity(1, "in")
    gallons = [magnitude(one.brings(inch), "gal") for one in found.surfaces]
    assert gallons == pytest.approx([388.6, 62.34], rel=1e-3)
    assert magnitude(found.brings(inch), "gal") == pytest.approx(sum(gallons))
    with pytest.raises(ValueError, match="less than zero"):
        found.brings(quantity(-1, "in"))


@given(st.floats(0.1, 30), st.floats(0.1, 5))
def test_twice_the_lengths_bring_four_times_the_water(scale, inches):
    def water(factor):
        patio = Surface("p", "paved", 0.9, (Piece(Rectangle(ft(4 * factor), ft(7 * factor))),))
        return magnitude(catchment([patio]).brings(quantity(inches, "in")), "L")

    assert water(2 * scale) == pytest.approx(4 * water(scale))


def test_one_downspout_drains_less_of_a_house_than_several():
    house = quantity(1000, "ft**2")
    roof = quantity(1000, "ft**2")
    assert "60 %" in whole_roof_finding(roof, house).limit
    assert "drains here is 90 % of" in whole_roof_finding(roof * 0.9, house).said
    assert whole_roof_finding(roof, house, 2) is None
    assert "120 %" in whole_roof_finding(quantity(1250, "ft**2"), house, 3).limit


def test_water_that_never_divides_comes_whole():
    assert joined_share() == WHOLE
