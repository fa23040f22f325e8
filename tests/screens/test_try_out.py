"""Trying other sizes out: everything follows, and nothing is kept until it is asked for."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from interview.garden.opening import plan_of
from interview.garden.store import load
from interview.garden.three_sizes import three_sizes
from interview.quantities.shown import length_words
from interview.quantities.units import magnitude
from interview.screens.palette import PALETTES
from interview.screens.three_page import BESIDE, Columns, three

SAMPLES = Path(__file__).parents[2] / "sample_answers"
SIDES = ("floor_length", "floor_width")
SIZES = [(60, 20), (80, 24), (100, 30), (160, 45)]


async def test_a_lever_moves_every_figure_and_is_kept_only_when_asked_for(sit, sample) -> None:
    path = sample("finished_us.yaml")
    async with sit(path, size=(160, 45)) as person:
        await person.press("ctrl+l")
        await person.press("f4")
        await person.settles()
        assert person.page == "TryOutScreen"
        assert "Deepest pond ◂ 6 in ▸" in person.sees_words()
        before = dict(person.session.answers.texts)
        saved = Path(path).read_text(encoding="utf-8")
        await person.press("left", "left")
        await person.settles()
        seen = person.sees_words()
        assert "Deepest pond ◂ 5 in ▸ was 6 in" in seen
        assert "Depth of the pond 6 in 5 in -1 in" in seen or "Pond depth 6 in 5 in -1 in" in seen
        assert "PLAN of the garden" in seen
        assert dict(person.session.answers.texts) == before
        assert Path(path).read_text(encoding="utf-8") == saved
        await person.press("down", "right", "up", "z")
        await person.settles()
        assert "Rain to hold ◂ 1.1 in ▸ was 1 in" in person.sees_words()
        assert "6 in 6 in" in person.sees_words()
        await person.press("k")
        await person.settles()
        assert "Kept: 1 answer." in person.sees_words()
        # With the first change it is noted that the lines were clear when the hole was dug.
        noted = {"holes.1.hole_cleared": "ticket T-0412 (invented)"}
        assert person.session.answers.texts == {**before, **noted, "rain_depth": "1.1 in"}
        await person.press("escape")
        assert person.page == "PlanScreen"
    assert "rain_depth: 1.1 in" in Path(path).read_text(encoding="utf-8")


async def test_what_was_tried_goes_only_after_a_question_and_can_all_be_put_back(
    sit, sample
) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        before = dict(person.session.answers.texts)
        await person.press("f4")
        await person.press(*["down"] * 4, "right")
        await person.settles()
        assert "Side slope ◂ 3.5 : 1 ▸" in person.sees_words()
        await person.press("escape")
        assert "Leave without keeping what you tried?" in person.sees_words()
        await person.press("n")
        await person.press("e")
        assert "Everything is back as it was kept." in person.says("try_said")
        await person.press("k")
        assert "there is nothing to keep" in person.says("try_said")
        await person.press("escape")
        assert person.page == "QuestionScreen"
        assert dict(person.session.answers.texts) == before


async def test_a_lever_stops_where_soil_and_safety_allow_no_more_and_says_so(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("f4")
        await person.press(*(["right"] * 12))
        await person.settles()
        assert "Deepest pond ◂ 11.5 in ▸" in person.sees_words()
        assert "Deepest pond goes no further." in person.says("try_said")


async def test_figures_that_wait_are_dashes_and_unknown_levers_do_not_move(sit, write) -> None:
    async with sit(str(write("oak.yaml", {"garden_name": "Oak"})), size=(60, 20)) as person:
        await person.press("f4")
        await person.settles()
        assert "Depth of the pond – –" in person.sees_words()
        assert "Deepest pond not known yet" in person.sees_words()
        await person.press("right")
        assert "Deepest pond goes no further." in person.says("try_said")


@pytest.mark.parametrize("size", SIZES)
async def test_better_and_worse_are_told_in_words_with_their_units_at_every_size(
    sit, sample, size
) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        await person.press("f4")
        await person.press(*["down"] * 5, "right", "right")
        await person.settles()
        rows = person.sees().splitlines()
        dug = next(row for row in rows if "oil to dig" in row)
        assert dug.split("oil to dig")[1].split("ft³")[-1].split()[:2] == ["▼", "worse"], dug
        held = next(row for row in rows if "Rain it holds" in row)
        assert " in ▲ better" in held and "+" in held
        # Nothing of a figure is cut off, and no row is broken into two.
        box = person.app.screen.query_one("#followed")
        assert "…" not in str(box.render())
        if size[1] >= 24:
            name = "try_drawing" if size[0] >= 136 else "try_small"
            picture = person.app.screen.query_one(f"#{name}")
            assert (picture.size.height >= 5 and picture.max_scroll_y == 0) or size[0] >= 136
            levers = person.app.screen.query_one("#levers")
            assert len(levers._lines) == levers.option_count


@pytest.fixture(scope="module")
def look():
    now = dt.datetime.fromisoformat("2026-05-30T09:00:00-05:00")
    plan = plan_of(load(SAMPLES / "finished_us.yaml")[0].answers, SAMPLES, now)
    return plan, three_sizes(plan), three(plan)


@pytest.mark.parametrize("palette", [*PALETTES, None], ids=lambda one: one.name if one else "none")
@pytest.mark.parametrize("room", [(57, 14), (78, 18), (98, 24), (158, 39)], ids=str)
def test_lean_usual_and_generous_stand_whole_in_any_room(look, room, palette) -> None:
    plan, rows, found = look
    strips = Columns(found, 2)(*room, palette)
    text = [strip.text.rstrip() for strip in strips]
    assert all(strip.cell_length <= room[0] for strip in strips)
    whole = " ".join(" ".join(text).split())
    for one in rows:
        for value in (*one.over_all, one.garden.floor_length, one.garden.floor_width):
            assert length_words(value, plan.metric) in whole
    for label in ("over all, long", "holds", "deepest", "on the floor", "soil to dig", "mulch",
                  "plants", "cost"):  # fmt: skip
        assert sum(label in line for line in text) == (3 if room[0] < BESIDE else 1), label
    for one in found.rows:
        said = [line for line in text if one.label in line]
        assert all(line.partition(one.label)[2].startswith(" ") for line in said), one.label
    assert whole.count("✓ yours") == 1 and whole.count("▸") == 1
    assert "usual ✓ yours" in whole and "▸ generous" in whole
    assert "200 ft³ ▼ worse" in whole and "1.2 in ▲ better" in whole
    if room[0] >= BESIDE:
        assert len(text) <= room[1]
        head = next(line for line in text if "generous" in line)
        dug = next(line for line in text if line.startswith("soil to dig"))
        # Each value stands under the name of its size.
        assert [dug.index(f"{one} ft³") for one in (120, 170, 200)] == [
            head.index(one) - 2 for one in ("lean", "usual", "generous")
        ]


async def test_one_of_the_three_is_chosen_with_the_arrows_and_tried(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("f4")
        await person.settles()
        await person.press("3")
        await person.settles()
        assert person.page == "ThreeSizesScreen"
        assert "▸ usual ✓ yours" in person.sees_words()
        await person.press("left")
        assert "▸ lean" in person.sees_words()
        await person.press("enter")
        await person.settles()
        assert person.page == "TryOutScreen"
        assert "How large ◂ lean ▸" in person.sees_words()
        assert person.session.answers.texts.get("how_large") != "lean"
        # The three are held against what is tried now.
        await person.press("3")
        await person.settles()
        assert "lean ✓ yours" in person.sees_words()
        await person.press("escape", "k")
        await person.settles()
        assert person.session.answers.texts["how_large"] == "lean"


async def test_in_a_narrow_window_the_one_chosen_of_the_three_is_scrolled_to(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(60, 20)) as person:
        await person.press("f4")
        await person.press("3")
        await person.settles()
        for key, name in (("right", "generous"), ("right", "lean"), ("right", "usual")):
            await person.press(key)
            await person.settles()
            shown = person.sees().splitlines()
            assert any(row.split()[:2] == ["▸", name] for row in shown[2:8]), (name, shown)


async def test_the_three_wait_for_an_answer_and_say_which(sit, write) -> None:
    async with sit(str(write("oak.yaml", {"garden_name": "Oak"}))) as person:
        await person.press("f4")
        await person.press("3")
        await person.settles()
        assert "This waits for an answer:" in person.sees_words()
        await person.press("right", "enter")
        assert person.page == "ThreeSizesScreen"


async def test_with_no_color_the_three_sizes_are_drawn_by_characters(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(160, 45)) as person:
        person.app.no_color = True
        await person.goes_to("garden_name")
        await person.press("f4")
        await person.settles()
        await person.press("3")
        await person.settles()
        assert any("\u2801" <= char <= "\u28ff" for char in person.sees()), "no outline"
        assert not set("▄▌▐▗▖▝▘") & set(person.sees())
        for size in ((60, 20), (80, 24), (100, 30)):
            await person.pilot.resize_terminal(*size)
            await person.settles()
            assert "Lines too" not in person.sees(), size


async def test_what_is_kept_is_told_of_on_the_page_one_comes_back_to(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        person.session.go_to("the_plan")
        await person.press("ctrl+l", "escape")
        await person.settles()
        before = person.says("told")
        await person.press("f4")
        await person.press(*["down"] * 4, "right", "k")
        await person.settles()
        await person.press("escape")
        await person.settles()
        assert person.session.answers.texts["side_slope"] == "3.5:1"
        assert before and person.says("told") != before


async def test_only_a_floor_one_chose_is_said_to_be_none_of_the_three(
    subtests, sit, sample
) -> None:
    def pegged(person) -> dict[str, str]:
        floor = person.session.plan.size.garden
        sides = (floor.floor_length, floor.floor_width)
        return dict(zip(SIDES, (f"{magnitude(one, 'in'):g} in" for one in sides), strict=True))

    async with sit(sample("finished_us.yaml")) as person:
        # The sides are not known yet in the sample; then pegged out as worked out; then one's own.
        for name, texts, own in (
            ("not known yet", {}, False),
            ("as worked out", pegged(person), False),
            ("chosen", {"floor_length": "20 ft", "floor_width": "6 ft"}, True),
        ):
            with subtests.test(floor=name):
                for key, text in texts.items():
                    person.session.offer(person.session.jump(key), text)
                await person.press("f4")
                await person.settles()
                await person.press("3")
                await person.settles()
                assert person.page == "ThreeSizesScreen"
                lead = person.says("three_lead")
                assert ("None of the three is yours" in lead) is own
                assert ("compared with the one you have" in lead) is not own
                assert ("✓ yours" in person.sees_words()) is not own
                assert ("better" in person.sees_words()) is not own
                await person.press("escape", "escape")


async def test_a_floor_pegged_as_worked_out_goes_with_the_size_that_is_tried(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        floor = person.session.plan.size.garden
        for key, side in zip(SIDES, (floor.floor_length, floor.floor_width), strict=True):
            person.session.offer(person.session.jump(key), f"{magnitude(side, 'in'):g} in")
        await person.press("f4")
        await person.settles()
        await person.press("3")
        await person.settles()
        await person.press("left", "enter")
        await person.settles()
        tried = person.app.screen._tried
        assert tried.answers.texts["how_large"] == "lean" and tried.size.as_worked_out
        assert tried.answers.texts["floor_length"] != person.session.answers.texts["floor_length"]
