"""The ordinary slips of somebody who sits down at it for the first time."""

from __future__ import annotations

import pytest
from textual.widgets import Input

from interview.screens.app import STOPS

OHIO = {"garden_name": "Gate", "country": "us", "state": "oh", "units": "us"}


@pytest.mark.parametrize("address", ["garden_name", "soil_dug"])
async def test_ctrl_c_says_which_key_stops_the_program(sit, write, address: str) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to(address)
        await person.press("ctrl+c")
        assert person.told == STOPS


async def test_ctrl_c_copies_what_is_selected_and_says_nothing(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("garden_name")
        person.app.screen.query_one(Input).select_all()
        await person.press("ctrl+c")
        assert person.told == "" and person.app.clipboard == "Gate"
