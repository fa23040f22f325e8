"""Paces and the lengths that come of them."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.survey.pacing import calibrate, expected_error, odd_walk, pace_findings, paced
from interview.quantities.units import magnitude, quantity


def feet(value):
    return magnitude(value, "ft")


def course(counts, distance=50.0, unit="ft"):
    return calibrate(quantity(distance, unit), counts)


def keys(pace):
    return {finding.key for finding in pace_findings(pace)}


def test_a_paced_length_follows_the_calibration():
    pace = course([19, 20, 19, 20])
    assert feet(pace.length) == pytest.approx(2.564, abs=5e-4)
    assert pace.sd_count == pytest.approx(0.577, abs=5e-4)
    assert pace.relative_error == pytest.approx(0.01480, abs=5e-6)
    assert feet(paced(16, pace).length) == pytest.approx(41.03, abs=5e-3)


@pytest.mark.parametrize(("count", "length", "own"), [(16, 41.03, 1.532), (12, 30.77, 1.377)])
def test_a_paced_length_knows_its_own_error(count, length, own):
    found = paced(count, course([19, 20, 19, 20]))
    assert feet(found.length) == pytest.approx(length, abs=5e-3)
    assert feet(found.own_error) == pytest.approx(own, rel=5e-4)
    assert feet(found.calibration_error) == pytest.approx(0.01480 * length, rel=1e-3)
    assert feet(found.standard_error) > own


def test_meters_pace_the_same_way():
    pace = course([26, 27, 26, 27, 26], 20, "m")
    assert magnitude(pace.length, "m") == pytest.approx(0.7576, abs=5e-5)
    found = paced(12, pace)
    assert magnitude(found.length, "m") == pytest.approx(9.091, abs=5e-4)
    assert magnitude(found.own_error, "m") == pytest.approx(0.3551, rel=5e-4)


def test_the_expected_error_is_that_of_the_paces_in_forty_feet():
    pace = course([19, 20, 19, 20])
    count = 40 / feet(pace.length)
    assert feet(expected_error(pace)) == pytest.approx(feet(paced(count, pace).standard_error))
    assert 1 < feet(expected_error(pace)) < 2


def test_walks_that_all_agree_still_leave_an_error():
    pace = course([20, 20, 20])
    assert pace.sd_count == 0
    assert feet(pace.standard_error) > 0
    alone = paced(20, pace).own_error
    assert feet(alone) == pytest.approx(2.5 * (2 / 12) ** 0.5)


def test_a_good_calibration_finds_nothing():
    assert keys(course([19, 20, 19, 20])) == set()


def test_every_second_step_is_asked_about():
    assert keys(course([10, 10, 10])) == {"pace_length"}
    assert keys(course([40, 40, 40])) == {"pace_length"}


def test_a_spread_over_six_percent_names_the_odd_walk():
    pace = course([19, 20, 19, 24])
    assert keys(pace) == {"pace_spread"}
    assert odd_walk(pace) == 3
    assert "Walk 4, with 24" in pace_findings(pace)[0].said


def test_counts_that_drift_evenly_name_no_walk():
    (finding,) = pace_findings(course([29, 30, 31], 80))
    assert finding.said == "Your counts differ by 7 % of their average."


def test_an_odd_pace_is_told_in_the_units_asked_for():
    pace = course([10, 10, 10])
    assert "at 5 ft" in pace_findings(pace)[0].said
    assert "at 1.52 m" in pace_findings(pace, metric=True)[0].said


def test_a_short_course_is_said_to_be_short():
    assert keys(course([10, 10, 10], 25)) == {"pace_course"}


def test_a_calibration_that_cannot_be_is_refused(subtests):
    for distance, counts in [(50, [19, 20]), (50, [19, 20, 0]), (5, [2, 2, 2]), (3000, [9, 9, 9])]:
        with (
            subtests.test(distance=distance, counts=counts),
            pytest.raises(ValueError, match=r"\.$"),
        ):
            course(counts, distance)


def test_the_shortest_course_is_as_long_in_meters_as_in_feet():
    """The sentence names 10 ft and 3 m as one length; 3 m are 9.84 ft (the foot is 0.3048 m)."""
    for distance, unit in [(10, "ft"), (3, "m")]:
        assert course([4, 4, 4], distance, unit).course == quantity(distance, unit)
    with pytest.raises(ValueError, match="from 10 ft"):
        course([4, 4, 4], 9.5)


def test_no_paces_are_no_length():
    with pytest.raises(ValueError, match="more than zero"):
        paced(0, course([19, 20, 19]))


@given(st.lists(st.integers(15, 30), min_size=3, max_size=5), st.floats(1, 80))
def test_the_unit_of_the_course_does_not_matter(counts, count):
    in_feet = paced(count, course(counts, 50, "ft"))
    in_meters = paced(count, course(counts, 15.24, "m"))
    assert feet(in_feet.length) == pytest.approx(feet(in_meters.length))
    assert feet(in_feet.standard_error) == pytest.approx(feet(in_meters.standard_error))


def test_the_order_of_the_walks_does_not_matter():
    lengths = {
        round(feet(course(list(walks)).standard_error), 12)
        for walks in itertools.permutations([19, 21, 20, 19])
    }
    assert len(lengths) == 1


@given(st.floats(1, 80), st.floats(1.1, 5))
def test_a_longer_walk_is_longer_and_less_sure(count, more):
    pace = course([19, 20, 19, 20])
    short, far = paced(count, pace), paced(count * more, pace)
    assert feet(far.length) == pytest.approx(feet(short.length) * more)
    assert feet(far.standard_error) > feet(short.standard_error)


def test_the_spread_is_from_the_lowest_to_the_highest_count():
    assert course([19, 20, 19, 20]).spread == pytest.approx(1 / 19.5)
    assert course([20, 20, 20]).spread == 0


def test_a_walk_far_from_the_rest_is_named_and_even_walks_name_none():
    assert odd_walk(course([20, 17, 20, 20])) == 1
    assert odd_walk(course([19, 20, 20, 21])) is None


def test_counting_every_second_step_is_said_to_be_as_good():
    (finding,) = pace_findings(course([10, 10, 10]))
    assert "every second step" in finding.said
    assert "Either will do, if you count the same way" in finding.change


def test_the_expected_error_grows_with_the_length_asked_about():
    pace = course([19, 20, 19, 20])
    near, far = (feet(expected_error(pace, quantity(x, "ft"))) for x in (20, 80))
    assert near < feet(expected_error(pace)) < far
    assert feet(expected_error(pace, quantity(12.192, "m"))) == pytest.approx(
        feet(expected_error(pace))
    )
