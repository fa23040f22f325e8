"""A garden by keyboard that is cut short goes on where it stopped."""

from __future__ import annotations

from pathlib import Path

from interview.garden import store


async def test_a_garden_cut_short_goes_on_where_it_stopped(sit, tmp_path: Path) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        await person.answers("wi")
        stopped = person.asked
        assert stopped == "surfaces.1.surface_kind"
    async with sit("garden.yaml") as person:
        assert person.asked == stopped
        assert "Maple corner" in person.sees()
    assert store.load(tmp_path / "garden.yaml")[0].answers.texts["country"] == "us"
