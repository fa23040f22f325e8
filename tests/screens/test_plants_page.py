"""The plants page: zones, plants with reasons, swaps and wishes."""

from __future__ import annotations

from pathlib import Path

from interview.garden.planting.cheaper import cheaper_ways, fewest
from interview.garden.planting.costs import plant_count
from interview.garden.planting.words import hazard_names, hazards
from interview.screens.plant_notes import about, cheaper, line


async def test_plants_are_swapped_asked_for_and_asked_about_by_keyboard(sit, sample) -> None:
    path = sample("finished_us.yaml")
    async with sit(path, size=(100, 30)) as person:
        await person.press("ctrl+l")
        await person.press("f5")
        assert person.page == "PlantsScreen"
        seen = person.sees_words()
        assert "FLOOR, the wettest:" in seen and "h under water" in seen
        assert "Why it is in:" in seen and "Would do as well:" in seen
        first = person.session.plan.planting.chosen.zones[0].picks[0].plant
        others = person.session.plan.planting.chosen.zones[0].reserve
        lines = person.session.answers.texts["swap_out"].splitlines()
        await person.press("enter")
        assert "In place of" in person.sees_words()
        await person.press("down", "enter")
        assert person.session.answers.texts["swap_out"].splitlines()[:-1] == lines
        now = person.session.plan.planting.chosen.zones[0].picks[0].plant
        assert now == others[0] != first
        await person.settles()
        assert "in place of" in person.sees_words()
        await person.press("z")
        assert person.session.answers.texts["swap_out"].splitlines() == lines
        assert person.session.plan.planting.chosen.zones[0].picks[0].plant == first
        await person.press("i")
        assert first in [
            pick.plant
            for pick in person.session.plan.planting.chosen.zones[0].picks
            if pick.favourite
        ]
        kept = person.session.answers.texts["favourites"]
        await person.press("ctrl+y")
        await person.enters("cattail moss")
        assert "is not in the plant list" in person.sees_words()
        await person.press("ctrl+y", "escape", "escape")
        assert person.page == "PlanScreen"
    assert kept.splitlines()[-1] in Path(path).read_text(encoding="utf-8")


async def test_the_cheaper_ways_stand_over_the_plants(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(100, 60)) as person:
        await person.press("f5")
        await person.settles()
        plan = person.session.plan
        count, least = plant_count(plan.planting), fewest(plan.planting)
        assert f"{count} plants; cheaper ways from {least}" in person.sees_words()
        assert "half now, half next year" not in person.sees_words()
        await person.press("up")
        seen, told = person.sees_words(), str(cheaper(plan))
        for way in cheaper_ways(plan.planting):
            # The plants stand beside it, so that only what is on one line can be looked for.
            assert f"- {plan.answers.told(way.name)[:25]}" in seen
            assert f"- {plan.answers.told(way.name)}: {way.count}" in told
        await person.press("enter")
        assert "Choose a plant first." in person.sees_words()
        await person.press("down")
        assert "If sold out:" in person.sees_words()


async def test_without_a_size_the_page_says_what_the_plants_wait_for(sit, write) -> None:
    async with sit(str(write("oak.yaml", {"garden_name": "Oak"})), size=(60, 20)) as person:
        await person.press("f5")
        assert "The plants wait for an answer:" in person.sees_words()
        await person.press("enter", "i", "z", "ctrl+y", "escape")
        assert "swap_out" not in person.session.answers.texts


async def test_a_caution_is_of_what_can_harm_and_not_of_every_remark(sit, sample) -> None:
    path = sample("finished_us.yaml")
    async with sit(path, size=(100, 40)) as person:
        await person.press("f5")
        picks = [pick for zone in person.session.plan.planting.chosen.zones for pick in zone.picks]
        remarked = [pick for pick in picks if pick.cautions and not hazards(pick.plant)]
        plan, zone = person.session.plan, person.session.plan.planting.chosen.zones[0]
        assert remarked
        for pick in remarked:
            assert "CAUTION" not in str(line(pick)) + str(about(plan, zone, pick))
            assert all(said in str(about(plan, zone, pick)) for said in pick.cautions)
        for pick in picks:
            assert (hazard_names(pick.plant) in str(line(pick))) and "CAUTION" not in str(
                line(pick)
            )
            assert bool(hazard_names(pick.plant)) == bool(hazards(pick.plant))
