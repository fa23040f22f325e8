"""Over a slow line: of each paint only what differs is written, and the same is seen."""

from __future__ import annotations

import asyncio

import pyte
import pytest
from textual._compositor import ChopsUpdate, LayoutUpdate

from interview.screens.app import InterviewApp
from interview.screens.sent import Changes, Sent

TURN, KEY = 15_000, 1_800
"""Bytes that a page turn and a typed key may take in a common window."""
WIDE_TURN = 30_000
"""The same of a turn in a large one, with its picture."""


class Line:
    """Two terminals at the end of a line: one is told every paint whole, one what differs."""

    def __init__(self, size: tuple[int, int], shows: bool) -> None:
        self.sent, self.bytes, self.shows = Sent(), 0, shows
        self.whole, self.differing = pyte.Screen(*size), pyte.Screen(*size)
        for one in (self.whole, self.differing):
            one.reset_mode(pyte.modes.DECAWM)

    def paints(self, update: LayoutUpdate | ChopsUpdate, console) -> None:
        said = Changes(update, self.sent).render_segments(console)
        self.bytes += len(said.encode())
        if not self.shows:
            return
        pyte.Stream(self.differing).feed(said)
        pyte.Stream(self.whole).feed(update.render_segments(console))

    def unlike(self) -> list[str]:
        """Return where the two show something else."""
        found = []
        for y in range(self.whole.lines):
            for x in range(self.whole.columns):
                one, other = self.whole.buffer[y][x], self.differing.buffer[y][x]
                if one.data == other.data == " ":  # a blank has no ink
                    one, other = (cell._replace(fg="", bold=False, italics=False)
                                  for cell in (one, other))  # fmt: skip
                if one != other:
                    found.append(f"{y},{x}: {one} {other}")
        return found


@pytest.fixture
def line(monkeypatch):
    """Return a maker of a line that hears every paint of the program."""

    def make(size: tuple[int, int], shows: bool = False) -> Line:
        one = Line(size, shows)
        display = InterviewApp._display

        def heard(app, screen, renderable):
            if isinstance(renderable, (LayoutUpdate, ChopsUpdate)):
                one.paints(renderable, app.console)
            display(app, screen, renderable)

        monkeypatch.setattr(InterviewApp, "_display", heard)
        return one

    return make


async def turned(person, line: Line, *keys: str) -> int:
    """Press keys; return the bytes until the page stands still."""
    before = line.bytes
    await person.press(*keys)
    await person.settles()
    await asyncio.sleep(0)
    await person.settles()
    return line.bytes - before


@pytest.mark.parametrize(("size", "most"), [((80, 24), TURN), ((160, 45), WIDE_TURN)])
async def test_a_page_turn_is_short_and_a_key_shorter(sit, sample, line, size, most) -> None:
    heard = line(size)
    async with sit(sample("usual_us.yaml"), size=size) as person:
        assert heard.bytes < most
        await person.goes_to("garden_name")
        assert await turned(person, heard, "x") < KEY
        took = {"name": await turned(person, heard, "enter")}
        await person.goes_to("spots.1.slope_run")
        took["slope"] = await turned(person, heard, "escape")
        for key in ("ctrl+l", "ctrl+g", "f3"):
            took[key] = await turned(person, heard, key)
            took[f"{key}, closed"] = await turned(person, heard, "escape")
        assert not {name: count for name, count in took.items() if count >= most}


@pytest.mark.parametrize("name", ["日本の庭 é\u0301 x", "Oak"])
async def test_what_is_seen_is_what_was_painted(sit, write, line, name) -> None:
    heard = line((80, 24), shows=True)
    async with sit(str(write("oak.yaml", {"garden_name": "Ash"}))) as person:
        await person.goes_to("garden_name")
        await person.press("ctrl+u")
        await person.pastes(name)
        await person.press("enter")
        await person.settles()
        for keys in (("ctrl+g",), ("escape",), ("f2",), ("ctrl+l",), ("escape",), ("f2",)):
            await turned(person, heard, *keys)
            assert not heard.unlike(), keys


async def test_another_size_is_painted_whole(sit) -> None:
    async with sit("garden.yaml") as person:
        sent = person.app._sent
        sent._rows[0] = [("?", ("", "", ""))]
        await person.pilot.resize_terminal(81, 24)
        await person.settles()
        assert 0 not in sent._rows
