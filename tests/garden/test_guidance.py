"""Where published guides disagree: what each says here, and which one the plan follows."""

from __future__ import annotations

import pytest

from interview.garden import guidance
from interview.garden.guides import guides, mulches, rims, side_slopes
from interview.garden.site.slope import ground_slope
from interview.garden.size.size_factors import published_size
from interview.garden.soak.depth import DepthRule
from interview.quantities.evidence import Provenance
from interview.quantities.units import quantity
from interview.sheet.report import plan_text

BY_DEFAULT = ("side_slope", "rim", "mulch")
"""What the usual answers decide, before anything is measured."""
EVERY = ("drawdown", "size", "steepest", "slope_depth", "least_rate", "pond_depth", *BY_DEFAULT)


def rate(number):
    return quantity(number, "in/h")


def here(matter):
    return [saying.here for saying in matter.sayings]


def test_each_drain_down_limit_allows_its_own_pond():
    """0.25 in/h takes 6, 9, 12 and 18 in in 24, 36, 48 and 72 h."""
    found = guidance.drawdown(rate(0.25), DepthRule.BOTH)
    assert [one.split()[3] for one in here(found)] == ["6", "9", "12", "18"]
    assert "corrected rate over 48 h" in found.followed


def test_the_limit_followed_is_the_one_chosen(subtests):
    for rule, words in [
        (DepthRule.BOTH, "two limits at once"),
        (DepthRule.STRICT, "over 24 h"),
        (DepthRule.CUSTOM, "drop in the hole"),
    ]:
        with subtests.test(rule=rule, words=words):
            assert words in guidance.drawdown(rate(0.25), rule).followed


def test_the_shares_and_the_table_stand_beside_the_area_that_was_worked_out():
    table = published_size(quantity(600, "ft**2"), quantity(6, "in"), quantity(10, "ft"))
    found = guidance.sizes(quantity(600, "ft**2"), table, quantity(140, "ft**2"))
    assert here(found) == [
        "60 ft²",
        "100 ft²",
        "120 ft²",
        "180 ft²",
        "90 ft² on sand to 190 ft² on clay",
    ]
    assert "140 ft²" in found.followed


def test_a_depth_no_row_covers_is_said():
    table = published_size(quantity(600, "ft**2"), quantity(5.5, "in"), quantity(10, "ft"))
    found = guidance.sizes(quantity(600, "ft**2"), table, quantity(140, "ft**2"))
    assert "no row covers this depth" in found.sayings[-1].says


def test_two_slope_tables_are_read_with_their_gaps(subtests):
    for percent, first, second in [
        (3, "3 to 5 in", "4 in (100 mm) for 3 %"),
        (4.5, "no row covers 4 to 5 %", "6 in (150 mm) for 4.5 %"),
        (7.5, "no row covers 7 to 8 %", "6 in (150 mm) for 7.5 %"),
        (8, "8 in (200 mm) for 8 %", "6 in (150 mm) or 8 in (200 mm) for 8 %"),
        (0.5, "3 to 5 in", "nothing for 0.5 %"),
        (14, "another spot", "nothing for 14 %"),
    ]:
        with subtests.test(percent=percent, first=first, second=second):
            slope = ground_slope(quantity(100, "in"), quantity(percent, "in"))
            one, other = here(guidance.slope_depths(slope))
            assert first in one
            assert other == second


def test_a_soil_may_meet_a_least_rate_in_the_hole_only():
    found = here(guidance.least_rates(rate(0.24), rate(1.0)))
    assert (
        found[0]
        == found[1]
        == found[2]
        == ("the drop in the hole meets it, the corrected rate does not")
    )
    assert here(guidance.least_rates(rate(0.28), rate(0.9)))[:3] == [
        "this soil meets it, through the bottom alone too",
        "the drop in the hole meets it, the corrected rate does not",
        "this soil does not meet it",
    ]
    assert here(guidance.least_rates(rate(0.1)))[0] == "this soil does not meet it"
    assert here(guidance.least_rates(rate(9.0)))[-1] == "this soil is faster"


def test_a_pond_is_held_against_each_published_range():
    found = here(guidance.pond_depths(quantity(10, "in")))
    assert [one.split()[-1] for one in found] == ["outside", "within", "within", "within"]


def test_sides_are_held_against_the_steepest_of_each_guide(subtests):
    """Western Washington has 2:1 at the steepest, Los Angeles 3:1."""
    for run, first, second in [
        (1.5, "these sides are steeper", "these sides are steeper"),
        (2, "these sides are gentle enough", "these sides are steeper"),
        (3, "these sides are gentle enough", "these sides are gentle enough"),
    ]:
        with subtests.test(run=run):
            found = side_slopes(run)
            assert [one.says for one in found.sayings] == ["2:1 or gentler", "3:1 or gentler"]
            assert here(found) == [first, second]


def test_a_rim_is_held_against_each_guide(subtests):
    """Iowa has 2 in, Gloucestershire 100 mm, Western Washington 6 in."""
    for inches, enough in [(1, 0), (2, 1), (4, 2), (6, 3)]:
        with subtests.test(inches=inches):
            us = rims(quantity(inches, "in"))
            metric = rims(quantity(25 * inches, "mm"), metric=True)
            high = ["this rim is as high"] * enough + ["this rim is lower"] * (3 - enough)
            assert here(us) == here(metric) == high
            assert [one.says for one in us.sayings] == [
                "2 in or more",
                "4 in or more",
                "6 in or more",
            ]
            assert [one.says for one in metric.sayings] == [
                "50 mm or more",
                "100 mm or more",
                "150 mm or more",
            ]


def test_mulch_is_held_against_each_guide(subtests):
    """One guide has 2 in, one 3 in, Toronto 75 mm, 25 mm more or less."""
    thin, same, deep = "this mulch is thinner", "so it is", "this mulch is deeper"
    for inches, told in [
        (1, [thin, thin, thin]),
        (2, [same, thin, same]),
        (3, [deep, same, same]),
        (4, [deep, deep, same]),
        (4.5, [deep, deep, deep]),
    ]:
        with subtests.test(inches=inches):
            us = mulches(quantity(inches, "in"))
            metric = mulches(quantity(25 * inches, "mm"), metric=True)
            assert here(us) == here(metric) == told
            assert [one.says for one in us.sayings] == ["2 in", "3 in", "2 in to 4 in"]
            assert metric.sayings[2].says == "50 mm to 100 mm"


def test_what_cannot_be_is_refused():
    with pytest.raises(ValueError):
        rims(quantity(-1, "in"))
    with pytest.raises(ValueError):
        mulches(quantity(-1, "in"))
    with pytest.raises(ValueError):
        guidance.drawdown(rate(-1), DepthRule.BOTH)
    with pytest.raises(ValueError):
        guidance.pond_depths(quantity(0, "in"))
    with pytest.raises(ValueError):
        guidance.sizes(quantity(0, "ft**2"), None, quantity(1, "ft**2"))


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_sheet_and_the_list_tell_every_matter_with_its_sources(
    plan_of, sized, level_spot, printed, units
):
    plan = plan_of({**sized, **level_spot, "units": units})
    assert tuple(matter.key for matter in guides(plan)) == EVERY
    for matter in guides(plan):
        assert len(matter.sayings) >= 2
        assert matter.followed.startswith(("The plan follows ", "The plan takes "))
        for saying in matter.sayings:
            assert saying.source.title
            assert saying.source.standing in (Provenance.PUBLISHED, Provenance.SECONDARY)
    listed = printed(plan)["guides_disagree"]
    assert tuple(one["key"] for one in listed) == EVERY
    sheet = plan_text(plan)
    assert "WHERE GUIDES DISAGREE" in sheet
    assert " ".join(listed[0]["followed"].split()) in " ".join(sheet.split())


def test_what_the_plan_cannot_judge_yet_is_left_out(plan_of):
    empty = plan_of({"units": "us"})
    assert tuple(matter.key for matter in guides(empty)) == BY_DEFAULT
    # 2:1, 2 in and 3 in are taken until there is an answer.
    assert [here(matter)[0] for matter in guides(empty)] == [
        "these sides are gentle enough",
        "this rim is as high",
        "this mulch is deeper",
    ]
    sheet = " ".join(plan_text(empty).split())
    assert "How deep the mulch" in sheet and "How deep the pond may be" not in sheet
