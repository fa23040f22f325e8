"""What is half typed is never lost: not by the keys of a list, not by leaving the program."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import Input

from interview.garden import store
from interview.screens.lists import Choices, Items
from interview.screens.resting import RESTS, Resting

SAMPLES = Path(__file__).parents[2] / "sample_answers"


def listed(person) -> list[str]:
    return person.app.screen.query_one(Items).lines


async def presses(person, *keys: str) -> None:
    """Press keys one after the other, each once the one before has done its work."""
    for key in keys:
        await person.press(key)


async def test_nothing_typed_is_lost_by_going_up_to_the_list_and_taking_lines_out(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("favourites")
        await person.enters("flag")
        await person.enters("sedge")
        await person.types("swamp")
        await presses(person, "up", "delete")
        assert listed(person) == ["flag"]
        assert "^Z brings it back" in person.sees_words()
        await person.press("delete")
        assert person.app.focused.value == "swamp"
        await person.press("ctrl+z", "ctrl+z")
        assert listed(person) == ["flag", "sedge"]
        await presses(person, "up", "down")
        await person.enters(" milkweed")
        assert listed(person) == ["flag", "sedge", "swamp milkweed"]


async def test_letters_typed_on_the_list_go_into_the_line(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("favourites")
        await person.enters("flag")
        await presses(person, "up", *"sedge", "enter")
        assert listed(person) == ["flag", "sedge"]


async def test_what_is_typed_straight_after_a_line_is_the_next_line(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("favourites")
        await person.press(*"flag", "enter", *"swa")
        assert listed(person) == ["flag"]
        assert person.app.focused.value == "swa"
        await person.press("enter", *"x", "backspace", "enter")
        assert listed(person) == ["flag", "swa"]


async def test_a_line_is_changed_in_its_place_and_only_when_the_field_is_free(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("favourites")
        await person.enters("flag")
        await person.enters("sedge")
        await person.types("swa")
        await presses(person, "up", "up", "enter")
        assert "half typed" in person.sees_words()
        assert person.app.focused.value == "swa"
        await presses(person, "ctrl+u", "up", "up", "enter")
        assert person.app.focused.value == "flag"
        await person.enters("s")
        assert listed(person) == ["flags", "sedge"]


async def test_the_list_offers_its_default_only_while_it_is_empty(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("favourites")
        assert "Enter alone takes none" in person.sees_words()
        await person.enters("flag")
        assert "Enter alone takes" not in person.sees_words()
        await presses(person, "up", "delete")
        assert "Enter alone takes none" in person.sees_words()


async def test_a_list_with_a_line_half_typed_comes_back_whole(sit, subtests) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("favourites")
        await person.enters("flag")
        await person.types("swamp m")
        for key in ("escape", "ctrl+g", "ctrl+l", "f1", "f3", "f4", "f5", "ctrl+t"):
            with subtests.test(key=key):
                await person.press(key)
                if person.page != "QuestionScreen":
                    await person.settles()
                    await person.press("escape")
                if person.asked != "favourites" or not person.app.screen.query(Items):
                    await person.goes_to("favourites")
                assert listed(person) == ["flag"]
                assert person.app.focused.value == "swamp m"


TYPED = {
    "garden_name": ("Map", "Map"),
    "rain_depth": ("1.", "1."),
    "favourites": ("swamp m", "swamp m"),
    "country": ("n", ""),
}


@pytest.mark.parametrize("address", TYPED)
async def test_what_is_half_typed_is_there_again_after_the_program_was_ended(
    sit, tmp_path: Path, address: str
) -> None:
    keys, draft = TYPED[address]
    async with sit("garden.yaml") as person:
        await person.goes_to(address)
        if address == "favourites":
            await person.enters("flag")
        await person.press(*keys)
        await person.press("ctrl+q")
    loaded, _ = store.load(tmp_path / "garden.yaml")
    assert address in loaded.drafts
    # The lines of a list are kept as they are added; the one half typed is not.
    assert loaded.answers.texts.get(address, "flag") == "flag"
    assert not loaded.troubles
    async with sit("garden.yaml") as person:
        assert person.asked == address
        if address == "country":
            assert person.app.focused.highlighted == 4
            return
        else:
            assert person.app.focused.value == draft
        if address == "favourites":
            assert listed(person) == ["flag"]
            await person.press("enter")
        await person.press("enter")
        assert address in person.session.answers.texts
        await person.press("ctrl+q")
    assert "half_typed" not in (tmp_path / "garden.yaml").read_text()


async def test_a_box_that_was_left_by_enter_is_in_the_file_before_the_page_is_taken(
    sit, tmp_path: Path
) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("room_length")
        await person.enters("21 ft")
        assert person.asked == "room_width"
        person.door.saver.settle(10)
        loaded, _ = store.load(tmp_path / "garden.yaml")
        assert loaded.drafts == {"room_length": "21 ft"}


RESTING = {
    "garden_name": (["M", "a", "p"], "Map"),
    "rain_depth": (["1", "."], "1."),
    "room_width": ([*"12 f"], "12 f"),
    "favourites": ([*"flag", "enter", *"swamp m"], "flag\nswamp m"),
    "children": (["down"], "yes"),
    "spots.1.near_spot": (["space", "down", "space"], "basement, slab"),
    "holes.1.readings": ([*"8:05 left 4"], "8:05 left 4"),
    "notes": ([*"gate code is wi"], "gate code is wi"),
}
"""What is typed, and no more, and the draft of it."""


@pytest.fixture
def rests_now(monkeypatch: pytest.MonkeyPatch) -> Callable[[], int]:
    """Return what lets the time pass in which no key comes; it counts what had waited for that."""
    waiting: dict[str, Callable[[], object]] = {}
    set_timer = Resting.set_timer

    def caught(page, seconds, done, **more):
        if seconds != RESTS:
            return set_timer(page, seconds, done, **more)
        timer = set_timer(page, 3600, None, **more)
        waiting[timer.name] = done
        stop = timer.stop
        timer.stop = lambda: (waiting.pop(timer.name, None), stop())
        return timer

    monkeypatch.setattr(Resting, "set_timer", caught, raising=False)

    def pass_by() -> int:
        due = list(waiting.values())
        waiting.clear()
        for done in due:
            done()
        return len(due)

    return pass_by


@pytest.mark.parametrize("address", RESTING)
async def test_what_is_half_typed_is_in_the_file_once_typing_has_rested(
    sit, tmp_path: Path, write, rests_now, address: str
) -> None:
    file = tmp_path / "garden.yaml"
    if address == "holes.1.readings":
        file.write_bytes((SAMPLES / "halfway_soak_test.yaml").read_bytes())
    else:
        write("garden.yaml", {"garden_name": "Oak"} if address != "garden_name" else {})
    keys, draft = RESTING[address]
    async with sit("garden.yaml") as person:
        if person.page == "SoakScreen":
            await person.press("escape")
        await person.goes_to(address)
        await person.press(*keys)
        assert rests_now() == 1  # of all the keys the last alone is waited on
        person.door.saver.settle(10)
        loaded, _ = store.load(file)
        assert loaded.drafts == {address: draft}
        assert loaded.answers.texts.get(address, "") not in (draft, draft.split("\n")[-1])
        # A program killed here leaves that file; whoever comes back finds it as it was typed.
        killed = file.read_bytes()
    (tmp_path / "killed.yaml").write_bytes(killed)
    async with sit("killed.yaml") as person:
        if person.page == "SoakScreen":
            await person.press("escape")
        assert person.asked == address
        assert person.app.screen.field.draft == draft


async def test_a_draft_goes_from_the_file_once_it_is_answered_or_wiped_out(
    sit, tmp_path: Path, rests_now
) -> None:
    file = tmp_path / "garden.yaml"
    async with sit("garden.yaml") as person:
        await person.types("Maple")
        rests_now()
        await person.press("enter")
        person.door.saver.settle(10)
        assert "half_typed" not in file.read_text()
        await person.goes_to("rain_depth")
        await person.types("2")
        rests_now()
        person.door.saver.settle(10)
        assert store.load(file)[0].drafts == {"rain_depth": "2"}
        await person.press("backspace")
        rests_now()
        person.door.saver.settle(10)
        assert "half_typed" not in file.read_text()


async def test_a_page_that_is_taken_down_while_typing_rests_ends_quietly(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("surfaces.1.surface_kind")
        page = person.app.screen
        await page.field.query_one(Choices).remove()
        page._rested()
        assert person.session.drafts == {}


async def test_a_line_of_a_list_or_a_reading_is_not_kept_twice(
    sit, tmp_path: Path, clock, rests_now
) -> None:
    file = tmp_path / "garden.yaml"
    file.write_bytes((SAMPLES / "halfway_soak_test.yaml").read_bytes())
    clock.now = clock.now.replace(hour=19)
    async with sit("garden.yaml") as person:
        if person.page == "SoakScreen":
            await person.press("escape")
        for address, line in (("favourites", "sedge"), ("holes.1.readings", "18:00 left 5 in")):
            await person.goes_to(address)
            await person.types(line)
            rests_now()
            await person.press("enter")
            person.door.saver.settle(10)
            loaded = store.load(file)[0]
            assert address in loaded.answers.texts and not loaded.drafts


@pytest.mark.parametrize("left", [False, True], ids=["rested", "left"])
async def test_a_row_half_typed_and_then_given_is_kept_as_it_was_given(
    sit, write, rests_now, left: bool
) -> None:
    write("garden.yaml", {"garden_name": "Oak", "country": "us", "state": "mn"})
    async with sit("garden.yaml") as person:
        await person.goes_to("rain_depth")
        await person.press("ctrl+u", *"1")
        rests_now()
        if left:
            await person.goes_to("garden_name")
            await person.goes_to("rain_depth")
        await person.press(*".5 in", "enter")
        assert person.session.answers.texts["rain_depth"] == "1.5 in"
        await person.press("enter")  # and the page is taken whole
        assert "rough_size" in person.session.taken
        assert person.session.answers.texts["rain_depth"] == "1.5 in"


async def test_a_row_left_half_typed_keeps_what_it_shows_and_comes_back(sit, write) -> None:
    write("garden.yaml", {"garden_name": "Oak", "country": "us", "state": "mn"})
    async with sit("garden.yaml") as person:
        await person.goes_to("rain_depth")
        await person.press("ctrl+u", *"2")
        await person.press("escape")
        assert "Rain to hold 1 in" in person.sees_words()
        await person.press("enter")
        assert "rough_size" in person.session.taken
        assert "rain_depth" not in person.session.answers.texts
        await person.goes_to("rain_depth")
        assert person.app.focused.value == "2"


async def test_a_piece_half_typed_on_its_form_is_in_the_file_and_comes_back(
    sit, write, tmp_path: Path, rests_now
) -> None:
    file = tmp_path / "garden.yaml"
    address = "surfaces.1.pieces"
    roof = {"surfaces.1.surface_kind": "roof", address: "rectangle 30 ft by 14 ft"}
    write("garden.yaml", {"garden_name": "Oak", "country": "us", **roof})
    async with sit("garden.yaml") as person:
        await person.goes_to(address)
        await presses(person, "f3", "a", "enter")
        await person.press(*"12 ft", "enter")
        await person.press("3")
        assert rests_now() == 1
        person.door.saver.settle(10)
        loaded = store.load(file)[0]
        assert loaded.answers.texts[address] == "rectangle 30 ft by 14 ft"
        assert loaded.drafts == {address: "rectangle 30 ft by 14 ft\nrectangle 12 ft, 3"}
        (tmp_path / "killed.yaml").write_bytes(file.read_bytes())
        await person.press("escape")
        person.door.saver.settle(10)
        assert not store.load(file)[0].drafts  # it was left
        await presses(person, "a", "enter")
        await person.press(*"12 ft", "enter")
        await person.press("3")
        rests_now()
        await person.press("enter")
        person.door.saver.settle(10)
        loaded = store.load(file)[0]
        assert not loaded.drafts and "12 ft, 3" in loaded.answers.texts[address]
    async with sit("killed.yaml") as person:
        assert person.asked == address
        assert listed(person) == ["rectangle 30 ft by 14 ft"]
        assert person.app.screen.field.typed == "rectangle 12 ft, 3"


async def test_one_comes_back_to_what_was_half_typed_over_an_answer(sit, sample) -> None:
    path = sample("finished_us.yaml")
    async with sit(path) as person:
        await person.goes_to("swap_out")
        await person.types("half of it")
        await person.press("ctrl+q")
    async with sit(path) as person:
        assert person.asked == "swap_out"
        assert person.app.focused.value == "half of it"
        assert (
            person.session.answers.texts["swap_out"] == "closed bottle gentian for white turtlehead"
        )


async def test_leaving_with_nothing_typed_makes_no_file(sit, tmp_path: Path) -> None:
    async with sit("garden.yaml") as person:
        await person.press("ctrl+q")
    assert not (tmp_path / "garden.yaml").exists()


def test_what_is_strange_under_half_typed_is_told_by_line_and_stays(write, tmp_path: Path) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    text = path.read_text()
    for strange in ("half_typed: [a, b]\n", "half_typed:\n  rain_depth: {a: b}\n"):
        path.write_text(text.replace("start:\n", f"{strange}start:\n", 1))
        loaded, mark = store.load(path)
        assert len(loaded.troubles) == 1 and loaded.troubles[0].line
        keeper = store.FileKeeper(path, "test", loaded, mark)
        keeper.drafts["units"] = "me"
        keeper.keep(loaded.answers.with_text("units", "us"), "country")
        assert strange.splitlines()[-1] in path.read_text()
        assert "units: us" in path.read_text()


def test_drafts_of_a_group_move_up_with_its_items(write, clock, tmp_path: Path) -> None:
    from interview.garden.opening import Opened, open_session

    path = write(
        "oak.yaml",
        {"spots.1.spot_name": "front", "spots.1.another_spot": "yes", "spots.2.spot_name": "back"},
    )
    opened = open_session(str(path), clock, "test")
    assert isinstance(opened, Opened)
    with opened.lock:
        opened.session.drafts.update({"spots.1.spot_name": "fr", "spots.2.spot_name": "ba"})
        opened.session.remove_item("spots", 1)
        assert opened.session.drafts == {"spots.1.spot_name": "ba"}


def test_plain_lines_say_what_was_half_typed(write, clock) -> None:
    from interview.garden.opening import Opened, open_session
    from interview.plain import interview as plain

    opened = open_session(
        str(write("oak.yaml", {"garden_name": "Oak", "country": "uk"})), clock, "test"
    )
    assert isinstance(opened, Opened)
    said: list[str] = []
    with opened.lock:
        opened.session.drafts["units"] = "met"

        def ask(_prompt: str) -> str:
            if "units" in opened.session.answers.texts:
                raise EOFError
            return "metric"

        plain.run(opened.session, ask, said.append)
        assert any("half typed before, not kept: met" in line for line in said)
        assert "units" not in opened.session.drafts


async def test_a_line_half_typed_stays_when_the_list_is_changed_on_its_own_page(
    sit, sample
) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("surfaces.2.pieces")
        await person.types("triangle 3 f")
        await person.press("f3")
        assert person.page == "PiecesScreen"
        await person.press("d")
        await person.press("escape")
        assert len(listed(person)) == 2
        assert person.app.screen.query_one(Input).value == "triangle 3 f"


async def test_what_is_half_typed_on_the_timing_page_is_there_again(
    sit, write, located, clock
) -> None:
    hole = {
        "holes.1.hole_depth": "20 in",
        "holes.1.soaked_already": "yes",
        "holes.1.test_start": "2026-05-28 08:00",
    }
    garden = str(write("garden.yaml", {**located, **hole, "holes.1.water_at_mark": "8 in"}))
    async with sit(garden) as person:
        assert person.page == "SoakScreen"
        await person.press("r")
        await person.types("6 1/2")
        person.app.screen.save_half_typed()
        person.door.saver.settle(10)
        # As it lies in the file when the program is killed now.
        loaded, _ = store.load(Path(garden))
        assert loaded.drafts == {"holes.1.readings": "2026-05-28 09:00 left 6 1/2"}
    clock.forward(minutes=30)
    async with sit(garden) as person:
        assert person.page == "SoakScreen"
        assert person.app.focused.value == "2026-05-28 09:00 left 6 1/2"
        await person.press(*" in", "enter")
        assert "T09:00:00-05:00 left 6 1/2 in" in person.session.answers.texts["holes.1.readings"]
        assert person.session.drafts == {}
