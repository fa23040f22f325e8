"""The plants page: zones, plants with reasons, swaps and wishes."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from itertools import combinations
from pathlib import Path

import pytest

from interview.drawing.paint import Tone
from interview.drawing.scene import BLOOMS
from interview.drawing.words import column_width
from interview.garden import store
from interview.garden.opening import plan_of
from interview.garden.planting.cheaper import cheaper_ways, fewest
from interview.garden.planting.choose import ZonePlan
from interview.garden.planting.costs import plant_count
from interview.garden.planting.laid_out import letters, mark_of
from interview.garden.planting.words import hazard_names, hazards
from interview.quantities.units import magnitude
from interview.screens.materials import color_of
from interview.screens.palette import DARK, PALETTES
from interview.screens.picture import Drawn
from interview.screens.plant_notes import about, cheaper, short
from interview.screens.plant_rows import GROUNDS, IN_BLOOM, PlantRows
from interview.sheet.report import outside_text
from tests.screens.test_contrast import contrast, rgb

SAMPLES = Path(__file__).parents[2] / "sample_answers"


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
        assert f"In place of {first.common_name}." in person.sees_words()
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
        assert "is not in the plant list" in person.says("pick_words")
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
        rows = PlantRows(plan.planting.chosen.zones, 60, DARK)
        for pick in remarked:
            assert "CAUTION" not in str(rows.kind(pick)) + str(about(plan, zone, pick))
            assert all(said in str(about(plan, zone, pick)) for said in pick.cautions)
        for pick in picks:
            shown = str(rows.kind(pick))
            assert hazard_names(pick.plant) in shown and "CAUTION" not in shown
            assert bool(hazard_names(pick.plant)) == bool(hazards(pick.plant))


SIZES = [(60, 20), (80, 24), (100, 30), (160, 45)]


def zones_of(name: str) -> tuple[ZonePlan, ...]:
    answers = store.load(SAMPLES / name)[0].answers
    now = dt.datetime(2026, 5, 30, 9, tzinfo=dt.UTC)
    return plan_of(answers, SAMPLES, now).without_record.planting.chosen.zones


def harmful(zones: tuple[ZonePlan, ...]) -> tuple[ZonePlan, ...]:
    """Return the zones with a first plant that has every hazard there is."""
    first, *others = zones
    pick, *rest = first.picks
    plant = pick.plant._replace(usda_toxicity="slight", spreads="yes", thorny=True)
    assert hazard_names(plant) == "mildly toxic, spreads hard, thorny"
    return (first._replace(picks=(replace(pick, plant=plant), *rest)), *others)


@pytest.mark.parametrize("columns", [54, 57, 76, 78])
@pytest.mark.parametrize("name", ["finished_us.yaml", "finished_metric.yaml"])
def test_a_row_names_its_kind_whole_and_its_strip_is_the_months_of_bloom(name, columns) -> None:
    for zones in (zones_of(name), harmful(zones_of(name))):
        rows = PlantRows(zones, columns, DARK)
        wide, names = rows.month_columns, letters(zones)
        head = str(rows.head())
        assert head.split() == list("MAMJJASON") if wide == 2 else head.strip() == "MAMJJASON"
        for pick in [pick for zone in zones for pick in zone.picks]:
            lines = str(rows.kind(pick)).splitlines()
            assert all(column_width(line) <= columns for line in lines)
            strip = lines[0][-9 * wide :]
            found = {
                month
                for place, month in enumerate(range(3, 12))
                if strip[place * wide : (place + 1) * wide] == IN_BLOOM * wide
            }
            assert found == set(pick.plant.bloom_months), pick.plant.common_name
            # The initials stand over their columns, one to the right of the mark of the row.
            assert head[1:][-9 * wide :][::wide] == "MAMJJASON"
            name, told = short(pick.plant), " ".join(" ".join(lines).split())
            letter = names[pick.plant.scientific_name]
            assert lines[0].split()[0] == letter and f"{pick.count} × {name}" in told
            assert mark_of(pick.plant, list(names).index(pick.plant.scientific_name))[0] in told
            assert hazard_names(pick.plant) in told


def test_a_planting_that_blooms_in_winter_is_shown_with_the_whole_year() -> None:
    zones = zones_of("finished_us.yaml")
    pick = zones[0].picks[0]
    early = replace(pick, plant=pick.plant._replace(bloom_months=(2, 3, 4)))
    rows = PlantRows((zones[0]._replace(picks=(early,)), *zones[1:]), 78, DARK)
    assert rows.months == tuple(range(1, 13))
    row = str(rows.kind(early))
    assert row.endswith("· ▆▆▆▆▆▆· · · · · · · · ")


@pytest.mark.parametrize("palette", PALETTES, ids=lambda one: one.name)
def test_a_zone_is_named_and_a_bloom_seen_on_its_ground(palette) -> None:
    for material in GROUNDS.values():
        ground = color_of(Tone(material, 0.0), palette)
        # WCAG 2.1, 1.4.3 for words and 1.4.11 for what is drawn.
        assert contrast(rgb(palette.text), rgb(ground)) >= 4.5, material
    for bloom in BLOOMS:
        for ground in (palette.ground, palette.cursor):
            assert contrast(rgb(color_of(bloom, palette)), rgb(ground)) >= 3, (bloom, ground)


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_nothing_is_cut_off_or_lies_over_another_in_any_window(sit, sample, size) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        await person.press("f5")
        await person.settles()
        page, plan = person.app.screen, person.session.plan
        listing = page.query_one("#picks")
        width = listing.scrollable_content_region.width
        for place in range(listing.option_count):
            prompt = str(listing.get_option_at_index(place).prompt)
            assert all(column_width(one) < width for one in prompt.splitlines()), prompt
        parts = ["#pick_months", "#picks", "#pick_picture", "#pick_zones", "#pick_box"]
        shown = [page.query_one(name).region for name in parts if page.query_one(name).display]
        assert not any(one.overlaps(other) for one, other in combinations(shown, 2))
        at = [row for row in person.sees().splitlines() if row.lstrip().startswith("▸")]
        assert len(at) == 1 and "11 × Gray's sedge" in at[0]
        hours = round(magnitude(plan.storms.zone_hours.floor, "h"))
        assert f"{hours} h under water, 50 plants" in person.sees_words()
        for _ in plan.planting.chosen.zones:
            await person.press("end")
        assert "RIM, the driest: 0 h under water" in person.sees_words()


@pytest.mark.parametrize(
    ("size", "where"), [((80, 24), "#pick_picture"), ((160, 45), "#pick_zones")]
)
async def test_the_zones_are_drawn_with_their_hours_wet_and_a_wide_window_shows_every_plant(
    sit, sample, size, where
) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        await person.press("f5")
        await person.settles()
        page, wet = person.app.screen, person.session.plan.storms.zone_hours
        drawn = " ".join(page.query_one(where).query_one(Drawn).text.split())
        assert "FLOOR" in drawn and "SIDE" in drawn and "RIM" in drawn
        for hours in (wet.floor, wet.side):
            assert f"wet {magnitude(hours, 'h'):.0f} h" in drawn
        assert drawn.endswith("dry") or " dry " in drawn
        if where == "#pick_zones":
            above = page.query_one("#pick_picture").query_one(Drawn).text
            assert "overflow notch" in above
            for letter in letters(person.session.plan.planting.chosen.zones).values():
                assert letter in above


async def test_the_rows_take_the_colors_of_another_theme_and_the_room_of_another_window(
    sit, sample
) -> None:
    async with sit(sample("finished_us.yaml"), size=(100, 30)) as person:
        await person.press("f5")
        await person.settles()
        listing = person.app.screen.query_one("#picks")
        wide = [str(listing.get_option_at_index(at).prompt) for at in range(4)]
        before = listing.get_option_at_index(1).prompt
        await person.press("down", "f2")
        await person.settles()
        assert listing.get_option_at_index(1).prompt.spans != before.spans
        await person.pilot.resize_terminal(60, 20)
        await person.settles()
        narrow = [str(listing.get_option_at_index(at).prompt) for at in range(4)]
        assert narrow != wide and "4 × New England aster" in narrow[3]
        assert listing.highlighted == 3


async def test_where_no_kind_is_named_the_zones_are_counted_and_no_months_stand(
    sit, sample
) -> None:
    path = Path(sample("finished_metric.yaml"))
    text = path.read_text(encoding="utf-8").replace("own_plants.csv", "none")
    path.write_text(text, encoding="utf-8")
    async with sit(str(path), size=(100, 30)) as person:
        await person.press("f5")
        await person.settles()
        zones = person.session.plan.planting.chosen.zones
        assert not any(zone.picks for zone in zones)
        seen = person.sees_words()
        assert f"{zones[0].places} plants" in seen and " 0 plants" not in seen
        assert person.says("pick_months").strip() == ""
        said = outside_text(plan_of(person.session.answers, path.parent, person.session.now))
    assert "no kinds are named here" in " ".join(said.split())
