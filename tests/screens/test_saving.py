"""Saving in the background: the latest answers win, failures are told, tried again, never fatal."""

from __future__ import annotations

import os
import threading
from pathlib import Path

from interview.asking.keeping import NotKept
from interview.garden.opening import Opened, open_session
from interview.garden.stages import new_answers
from interview.screens.parts import Words
from interview.screens.run import UNSAVED, _end
from interview.screens.saver import BackgroundKeeper, SaveState


class SlowKeeper:
    """Keeps answers once it is let through."""

    def __init__(self) -> None:
        self.open = threading.Event()
        self.begun = threading.Event()
        self.kept: list[str] = []

    def keep(self, answers, stopped_at: str) -> None:
        self.begun.set()
        self.open.wait(10)
        self.kept.append(stopped_at)


def test_only_the_latest_answers_wait_while_a_save_is_under_way(clock) -> None:
    slow = SlowKeeper()
    saver = BackgroundKeeper(slow, clock)
    saver.keep(new_answers(), "first")
    assert slow.begun.wait(10)
    for place in ("second", "third", "fourth"):
        saver.keep(new_answers(), place)
    assert saver.report.state is SaveState.SAVING
    slow.open.set()
    assert saver.close(10)
    assert slow.kept == ["first", "fourth"]
    assert saver.report.short == "Saved 09:00"


def test_leaving_does_not_wait_for_ever_for_a_disk_that_hangs(clock) -> None:
    slow = SlowKeeper()
    saver = BackgroundKeeper(slow, clock)
    saver.keep(new_answers(), "first")
    assert not saver.close(0.05)
    assert saver.report.failed
    slow.open.set()


def test_a_failed_save_is_tried_again_by_itself(clock, keeper) -> None:
    keeper.refuses = "The disk is full. Free some space."
    saver = BackgroundKeeper(keeper, clock, retry_seconds=0.01)
    saver.keep(new_answers({"garden_name": "Oak"}), "units")
    assert not saver.settle(10)
    saved = threading.Event()
    saver.on_change = saved.set
    keeper.refuses = ""
    assert saved.wait(10)
    assert saver.close(10)
    assert keeper.saves[-1] == ({"garden_name": "Oak"}, "units")


def test_a_fault_of_the_keeper_itself_shows_as_not_saved(clock) -> None:
    class Broken:
        def keep(self, answers, stopped_at: str) -> None:
            raise ZeroDivisionError

    saver = BackgroundKeeper(Broken(), clock)
    saver.keep(new_answers(), "units")
    assert not saver.settle(10)
    assert "ZeroDivisionError" in saver.report.banner


def test_the_last_words_say_first_what_is_not_saved_and_where_it_is(
    tmp_path, clock, capsys
) -> None:
    opened = open_session(str(tmp_path / "garden.yaml"), clock, "test")
    assert isinstance(opened, Opened)
    opened.session.offer(opened.session.step, "Maple corner")
    assert _end(opened, False, 0, "") == UNSAVED
    first, second, third = capsys.readouterr().err.splitlines()
    assert first.startswith("NOT SAVED: the latest answers are not in")
    assert second == f"All answers are kept in {opened.rescued}."
    assert third.startswith("To go on: ") and third.endswith(str(opened.rescued))
    assert not opened.lock.held


async def test_not_saved_is_told_until_it_is_tried_again(sit, monkeypatch) -> None:
    async with sit("garden.yaml") as person:
        keeper = person.door.opened.keeper
        real = keeper.keep

        def fail(answers, stopped_at: str) -> None:
            raise NotKept("The disk is full. Free some space.")

        monkeypatch.setattr(keeper, "keep", fail)
        await person.answers("Maple corner")
        person.door.saver.settle(10)
        await person.rests()
        assert person.asked == "state"
        assert "NOT SAVED: The disk is full. Free some space." in person.sees_words()
        await person.press("ctrl+q")
        asked = str(person.app.screen.query_one(Words).render())
        assert "Your answers are then kept in another folder" in asked
        await person.press("enter")
        assert person.page == "QuestionScreen"
        monkeypatch.setattr(keeper, "keep", real)
        await person.press("ctrl+r")
        person.door.saver.settle(10)
        await person.rests()
        assert "NOT SAVED" not in person.sees()
        assert "Saved 09:00" in person.sees()


async def test_a_garden_saved_after_every_answer_says_when(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        person.door.saver.settle(10)
        await person.rests()
        assert "Saved 09:00" in person.sees()


async def test_what_is_to_be_told_of_a_save_that_worked_stands_in_a_line_of_its_own(
    sit, tmp_path: Path
) -> None:
    async with sit("garden.yaml", size=(100, 30)) as person:
        await person.answers("Maple corner")
        assert person.door.saver.settle(10)
        os.link(tmp_path / "garden.yaml", tmp_path / "same.yaml")
        await person.answers("mn")
        assert person.door.saver.settle(10)
        await person.rests()
        seen = person.sees_words()
        assert "Saved 09:00, see below" in seen
        assert "Saved, but: The file had a second name" in seen
        assert "NOT SAVED" not in seen
