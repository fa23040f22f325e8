"""A whole garden by keyboard alone, and the same garden on plain lines."""

from __future__ import annotations

import datetime as dt
import re
import threading
from pathlib import Path

from interview.garden import store


async def test_a_whole_garden_by_keyboard_gives_the_file_that_plain_lines_give(
    sit, tmp_path: Path, clock, finished, on_plain_lines
) -> None:
    clock.now = dt.datetime(2026, 6, 20, 9, 0, tzinfo=clock.now.tzinfo)
    gone_through = 0
    async with sit() as person:
        assert person.page == "WelcomeScreen"
        await person.press("enter")
        disk = _slow_disk(person)
        while person.page == "QuestionScreen":
            before = person.asked
            assert "fault of the program" not in person.sees_words()
            text = finished.get(before)
            if text is None:
                await person.press("ctrl+t")
            else:
                await person.answers(text)
            gone_through += 1
            assert person.page == "PlanScreen" or person.asked != before, person.sees()
        await person.settles()
        assert "That was the last question." in person.sees_words()
        disk.set()
        await person.press("ctrl+q")
    assert person.app.return_code == 0
    by_screen = (tmp_path / "rain_garden.yaml").read_text(encoding="utf-8")
    assert gone_through > 80
    assert _bare(by_screen) == _bare(on_plain_lines(tmp_path / "plain.yaml", finished))


def _bare(text: str) -> str:
    """Return a file whose place is not in quotes: a list begun puts it in some, and they stay."""
    return re.sub(r'^stopped_at: "(.*)"$', r"stopped_at: \1", text, flags=re.MULTILINE)


def _slow_disk(person) -> threading.Event:
    """Let the first save wait until the event is set; of those behind it only the last counts."""
    free = threading.Event()
    keeper = person.door.opened.keeper
    keep = keeper.keep

    def wait(*job: object) -> None:
        free.wait()
        keep(*job)

    keeper.keep = wait
    return free


async def test_a_garden_cut_short_goes_on_where_it_stopped(sit, tmp_path: Path) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        await person.answers("us")
        await person.answers("wi")
        await person.answers("us")
        stopped = person.asked
        assert stopped == "surfaces.1.surface_kind"
    async with sit("garden.yaml") as person:
        assert person.asked == stopped
        assert "Maple corner" in person.sees()
    assert store.load(tmp_path / "garden.yaml")[0].answers.texts["country"] == "us"
