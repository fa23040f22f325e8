"""A small window: how far one is, the field, the keys and the plan are seen at any question."""

from __future__ import annotations

import pytest
from textual.geometry import Region

from interview.asking import route
from interview.screens import words
from interview.screens.question_room import shares

FULLEST = ("readings", "pieces", "ribbon", "contamination", "prices", "pace_counts", "plant_region")
"""Questions whose words and lists take the most lines."""
LEAST_PLAN = 1
"""Lines of what is known that must be seen at least, where a page has them."""


def test_two_lists_give_up_together_only_the_lines_that_lack():
    assert shares(9, [20]) == [9]
    # One line lacks: it is lost once, by the longer list.
    assert shares(13, [10, 4]) == [9, 6]
    assert shares(10, [8, 8]) == [5, 5]


def seen(person, name: str) -> Region:
    """Return the part of a widget that no edge of the window or of a scrolled box hides."""
    screen = person.app.screen
    place = screen.find_widget(screen.query_one(name))
    return place.region.intersection(place.clip)


@pytest.mark.parametrize(
    ("name", "size"),
    [
        ("finished_us.yaml", (60, 20)),
        ("finished_us.yaml", (80, 24)),
        ("halfway_soak_test.yaml", (60, 20)),
    ],
    ids=str,
)
async def test_nothing_that_is_needed_is_pushed_out_of_a_small_window(
    sit, sample, clock, name, size
) -> None:
    clock.forward(hours=9)
    async with sit(sample(name), size=size) as person:
        while person.page != "QuestionScreen":
            await person.press("escape")
        for place, step in enumerate(route.steps(person.session.answers)):
            if place % 10 and step.question.key not in FULLEST:
                continue
            await person.app.screen._go(step.address)
            await person.rests()
            await person.rests()
            top = person.sees().splitlines()[0]
            assert words.place_in_stage(person.session, person.session.place) in top, top
            foot = person.sees().splitlines()[-1]
            assert "Enter" in foot and "Esc back" in foot, (step.address, foot)
            assert foot.rstrip().endswith("F1 help  ^Q quit"), (step.address, foot)
            if person.app.screen.query_one("#plan_so_far").display:
                assert seen(person, "#plan_so_far").height > LEAST_PLAN, step.address
            focused = person.app.focused
            if focused is not None and focused.id == "entry":
                assert seen(person, "#entry").height == focused.region.height, step.address


@pytest.mark.parametrize("width", [40, 60, 80, 120])
async def test_how_far_one_is_stays_whole_beside_any_name(sit, write, width: int) -> None:
    name = "The long rain garden behind the old barn"
    path = write("a_rather_long_name_of_a_file.yaml", {"garden_name": name})
    async with sit(str(path), size=(width, 24)) as person:
        for step in list(route.steps(person.session.answers))[::20]:
            await person.app.screen._go(step.address)
            await person.rests()
            place = words.place_in_stage(person.session, person.session.place)
            assert f"{place} " in f"{person.sees().splitlines()[0]} "


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_the_answer_kept_in_a_long_list_is_in_view(sit, write, size) -> None:
    path = write("garden.yaml", {"country": "us", "state": "mn"})
    async with sit(str(path), size=size) as person:
        await person.goes_to("rain_depth")
        await person.goes_to("state")
        await person.rests()
        assert "Minnesota   ✓ your answer" in person.sees()
