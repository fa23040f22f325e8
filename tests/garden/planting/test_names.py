"""Names of plants that no plant answers to: told at once, with the nearest, and kept."""

from __future__ import annotations

from interview.garden.planting.names import nearest, remark_on_swaps, remark_on_wishes
from interview.garden.planting.plant_list import builtin_plants


def test_a_name_spelled_wrong_gets_the_nearest_names_of_the_list(subtests):
    for typed, first in [
        ("swamp milkwede", "swamp milkweed"),
        ("Asclepias incarnatta", "Asclepias incarnata"),
        ("cardinal flour", "cardinalflower"),
    ]:
        with subtests.test(typed=typed, first=first):
            assert nearest(typed, builtin_plants())[0] == first


def test_a_part_of_a_name_gets_names_that_hold_it() -> None:
    found = nearest("milkweed", builtin_plants())
    assert len(found) == 3
    assert all("milkweed" in name for name in found)


def test_what_is_like_nothing_is_said_to_be_so() -> None:
    assert nearest("qqqqqqzz", builtin_plants()) == ()
    assert "Nothing there is spelled like it" in remark_on_wishes(["qqqqqqzz"], builtin_plants())


def test_known_names_are_not_remarked_on() -> None:
    assert remark_on_wishes(["swamp milkweed", "Asclepias incarnata"], builtin_plants()) == ""
    assert remark_on_swaps(["swamp milkweed for cardinal flower"], builtin_plants(), None) == ""


def test_both_names_of_a_swap_are_looked_up_and_the_first_must_stand_in_the_planting() -> None:
    plants = builtin_plants()
    said = remark_on_swaps(["swampp milkweed for cardinal flour"], plants, None)
    assert "“swampp milkweed” is not in the plant list" in said
    assert "“cardinal flour” is not in the plant list" in said
    milkweed = [plant for plant in plants if plant.answers_to("swamp milkweed")]
    assert remark_on_swaps(["swamp milkweed"], plants, milkweed) == ""
    others = [plant for plant in plants if plant not in milkweed]
    assert "nothing to swap" in remark_on_swaps(["swamp milkweed"], plants, others)


def test_gaps_hyphens_and_apostrophes_in_a_name_do_not_count() -> None:
    for name in ("cardinalflower", "Cardinal flower", "cardinal-flower"):
        assert remark_on_wishes([name], builtin_plants()) == ""


def test_the_lists_that_name_plants_are_the_ones_remarked_on(session_of) -> None:
    session = session_of()
    step = session.jump("favourites")
    assert "not in the plant list" in session.remark(step, "qqqqq\nswamp milkweed")
    session.offer(step, "qqqqq")
    assert session.answers.texts["favourites"] == "qqqqq"
    assert session.remark(session.jump("garden_name"), "qqqqq") == ""
    assert session.remark(session.jump("swap_out"), "none") == ""
