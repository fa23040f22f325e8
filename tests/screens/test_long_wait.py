"""Years of rain on the pages: how far they are is said, and every key still answers."""

from __future__ import annotations

import datetime as dt
import threading
from pathlib import Path
from types import SimpleNamespace

import pytest

from interview.asking.long_work import telling
from interview.screens import long_wait
from interview.screens import plan as plan_page


@pytest.fixture
def with_years(sample):
    """A finished garden with five invented years of daily rain."""
    path = Path(sample("finished_us.yaml"))
    first = dt.date(1990, 1, 1)
    rows = [f"{first + dt.timedelta(days=n)},{(0, 0.3, 0, 1.1)[n % 4]}" for n in range(2000)]
    (path.parent / "years.csv").write_text("date,rain_in\n" + "\n".join(rows) + "\n")
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("invented_rain.csv", "years.csv"), encoding="utf-8")
    assert "years.csv" in path.read_text(encoding="utf-8")
    return str(path)


async def test_a_question_is_answered_while_the_years_are_carried(sit, with_years) -> None:
    async with sit(with_years) as person:
        # At once, before the years are done: the lines that need no record stand there.
        assert "Pond 6 in" in person.says("plan_lines")
        await person.goes_to("mulch_depth")
        await person.press("ctrl+u")
        await person.types("2 in")
        await person.press("enter")
        assert person.session.answers.texts["mulch_depth"] == "2 in"
        await person.settles()
        assert "Pond 6 in" in person.says("plan_lines")


def test_how_far_a_sum_is_is_said_only_once_it_can_be_read(monkeypatch) -> None:
    said, times = list[str](), iter((0.0, 0.29, 0.3))
    monkeypatch.setattr(long_wait, "monotonic", lambda: next(times))
    monkeypatch.setattr(
        long_wait, "get_current_worker", lambda: SimpleNamespace(is_cancelled=False)
    )
    app = SimpleNamespace(call_later=lambda say, words: say(words))
    with long_wait.telling_page(app, said.append):
        tell = telling("Carrying")
        tell(1, 10)
        assert not said
        tell(2, 10)
    assert said == ["Carrying: 20 %"]


@pytest.mark.parametrize("key", ["ctrl+l", "f3", "f4", "f5"])
async def test_a_page_may_be_left_before_its_sums_are_done(sit, with_years, key) -> None:
    async with sit(with_years) as person:
        await person.goes_to("deepest_pond")
        await person.press(key)
        await person.press("escape")
        await person.settles()
        assert person.asked == "deepest_pond"


async def test_the_plan_says_that_it_is_worked_out_and_then_stands_there(
    sit, with_years, monkeypatch
) -> None:
    gate, written = threading.Event(), plan_page.plan_text
    monkeypatch.setattr(plan_page, "plan_text", lambda plan: (gate.wait(20), written(plan))[1])
    async with sit(with_years) as person:
        await person.press("ctrl+l")
        assert "Working it out" in person.sees_words()
        gate.set()
        await person.settles()
        assert "What was found" in person.sees()


async def test_sheet_and_card_are_both_written_though_the_page_was_left(sit, with_years) -> None:
    async with sit(with_years) as person:
        await person.press("ctrl+l")
        await person.press("ctrl+s", "c", "escape")
        await person.settles()
        assert "The yard card is in" in person.told, person.told
        names = {path.name for path in Path(with_years).parent.iterdir()}
    assert any(name.endswith("_plan.html") for name in names), names
    assert any(name.endswith("-card.txt") for name in names), names
