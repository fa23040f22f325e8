"""Trying other sizes out: everything follows, and nothing is kept until it is asked for."""

from __future__ import annotations

from pathlib import Path


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
        assert "Depth of the pond 6 in 5 in -1" in seen
        assert "PLAN of the garden" in seen
        assert dict(person.session.answers.texts) == before
        assert Path(path).read_text(encoding="utf-8") == saved
        await person.press("down", "right", "up", "z")
        await person.settles()
        assert "Rain to hold ◂ 1.1 in ▸ was 1 in" in person.sees_words()
        assert "Depth of the pond 6 in 6 in" in person.sees_words()
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
