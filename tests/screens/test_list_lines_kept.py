"""Lines put into a list on the full screen are in the file before the list is given."""

from __future__ import annotations

import threading
from pathlib import Path

from interview.garden import store
from interview.screens.frame import TopLine
from interview.screens.list_field import ListField
from interview.screens.saver import SaveState

SAMPLE = Path(__file__).parents[2] / "sample_answers" / "finished_us.yaml"


async def test_a_line_added_to_a_list_is_saved_at_once(sit, tmp_path: Path) -> None:
    file = tmp_path / "garden.yaml"
    file.write_bytes(SAMPLE.read_bytes())
    async with sit("garden.yaml") as person:
        await person.goes_to("lines_holidays")
        await person.press(*"2026-07-03", "enter")
        await person.rests()
        person.door.saver.settle(10)
        assert person.asked == "lines_holidays"
        kept = store.load(file)[0]
        assert kept.answers.texts["lines_holidays"] == "2026-05-25\n2026-07-03"
        assert kept.stopped_at == "lines_holidays, unfinished"
        await person.press("enter")
        await person.rests()
        person.door.saver.settle(10)
        assert person.app.screen.field is None  # the row is closed
        assert store.load(file)[0].stopped_at == "lines_holidays"


async def test_a_line_is_on_its_way_to_the_file_before_it_is_seen(
    sit, tmp_path: Path, monkeypatch
) -> None:
    (tmp_path / "garden.yaml").write_bytes(SAMPLE.read_bytes())
    async with sit("garden.yaml") as person:
        await person.goes_to("lines_holidays")
        person.door.saver.settle(10)
        await person.rests()
        gate = threading.Event()
        monkeypatch.setattr(person.door.saver._keeper, "keep", lambda *_: gate.wait(20))
        page, field = person.app.screen, person.app.screen.field
        line = "2026-07-03"
        page.on_list_field_adding(ListField.Adding(field, line, f"{field.text}\n{line}"))
        # Nothing was painted since.
        assert person.session.answers.texts["lines_holidays"] == f"2026-05-25\n{line}"
        assert SaveState.SAVING.value in page.query_one(TopLine)._line.plain
        gate.set()
        await person.rests()


async def test_none_is_taken_as_an_empty_list(sit) -> None:
    async with sit("new.yaml") as person:
        person.session.offer(person.session.jump("lines_requested"), "asked")
        await person.goes_to("lines_holidays")
        await person.enters("none")
        await person.rests()
        assert person.session.answers.texts["lines_holidays"] == "none"
        assert person.app.screen.field is None  # the row is closed


async def test_an_empty_list_that_may_be_skipped_is_skipped_by_enter(sit, tmp_path: Path) -> None:
    (tmp_path / "garden.yaml").write_bytes(SAMPLE.read_bytes())
    async with sit("garden.yaml") as person:
        person.session.offer(person.session.jump("levels_read"), "yes")
        await person.goes_to("floor_readings")
        assert "Enter skips" in person.says("hint")
        await person.press("enter")
        await person.rests()
        assert person.says("heard") == ""
        assert person.asked != "floor_readings"
        await person.goes_to("floor_readings")
        await person.press("enter")
        await person.rests()
        assert "Write 1 or more" not in person.says("heard")


async def test_several_walks_typed_in_one_line_are_several_lines(sit, write) -> None:
    walker = {"walkers.1.walker_name": "Ann", "walkers.1.pace_line": "50 ft"}
    write("paces.yaml", {"country": "us", "measured_by": "paces", **walker})
    async with sit("paces.yaml") as person:
        await person.goes_to("walkers.1.pace_counts")
        await person.enters("19, 20, 19.5")
        assert person.session.answers.texts["walkers.1.pace_counts"] == "19\n20\n19.5"
        await person.enters("19, twenty eleven")
        assert "ends with a comma" in person.says("heard")
