"""Whoever comes back to a garden stands at what is due, and is told it; invented gardens."""

from __future__ import annotations

import pytest
from test_coming_back import BACK, garden_in
from test_due import ROWS

from interview.garden.due_words import GardenState as State
from interview.garden.store import FileKeeper

DUG = {"holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "18 in"}


@pytest.mark.parametrize(
    ("texts", "month", "asked", "says"),
    [
        ({}, 7, "lines_asked_on", "Marks went stale"),
        ({**DUG, "holes.1.hole_smell": "gas"}, 5, "holes.1.hole_seeps", "STOP: the hole smells"),
        ({"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "18 in"}, 5, "spots.1.slope_drop",
         "STOP here: slope 15 %"),
    ],
    ids=["stale", "smell", "stop"],
)  # fmt: skip
async def test_what_is_due_leads_and_is_told(
    sit, write, located, clock, texts, month, asked, says
) -> None:
    write("garden.yaml", {**located, **texts})
    clock.now = clock.now.replace(month=month)
    async with sit("garden.yaml") as person:
        await person.settles()
        assert person.asked == asked
        assert says in person.sees_words()


async def test_a_stop_is_led_to_with_its_ways(sit, write, located) -> None:
    steep = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "18 in"}
    write("garden.yaml", {**located, **steep})
    async with sit("garden.yaml") as person:
        await person.settles()
        assert "1 Measure it again" in person.sees_words()
        assert "2 Try another spot" in person.sees_words()


async def test_where_nothing_presses_the_first_open_page_comes(sit, write) -> None:
    write("garden.yaml", {"garden_name": "Oak end"})
    async with sit("garden.yaml") as person:
        await person.settles()
        assert person.asked == "state"


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_whoever_left_at_the_plan_comes_back_to_what_is_due(
    sit, clock, tmp_path, subtests, size
) -> None:
    for state, page, _ in BACK:
        if state in (State.NEW, State.FIRST_SIZE, State.FAULTS, State.SOAKING, State.TIMING):
            continue  # no plan was seen yet, or another page comes first
        answers, taken = garden_in(state, clock)
        keeper = FileKeeper(tmp_path / f"{state.name}.yaml", "a test")
        keeper.taken[:] = taken
        keeper.keep(answers, "the_plan")
        async with sit(keeper.path.name, size=size) as person:
            await person.settles()
            with subtests.test(state=state.name):
                assert person.session.place is not None
                assert person.session.place.name == page
                # What names a page is told with the title of the path.
                says = ROWS[state][2].partition("Next: ")[0].strip()
                assert state is State.SPOT or says in person.sees_words()


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_a_shut_page_says_once_which_day_it_waits_for(sit, write, located, size) -> None:
    write("garden.yaml", {**located, "holes.1.hole_dug_on": "2026-06-02"})
    async with sit("garden.yaml", size=size) as person:
        await person.goes_to("holes.1.hole_depth")
        await person.settles()
        assert person.sees_words().count("to be dug on") == 1
        assert person.sees_words().count("Tue 2 Jun") == 1
