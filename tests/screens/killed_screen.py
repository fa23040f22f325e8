"""The full screen, killed on every kind of page, and what the file holds of what was entered."""

from __future__ import annotations

import datetime as dt
import random
import shutil
import time
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import killed
import simple_way
import tube

from interview.garden import store
from interview.garden.opening import Opened, open_session
from interview.screens import app, question  # loaded before the forks
from interview.screens.run import run

SAMPLES = Path(__file__).parents[2] / "sample_answers"
NEW, WHOLE = "new", "finished_us"
LOADED = (app, question)
LIMIT = 120.0
"""Seconds after which a page that does not come is given up."""
REST = 0.3
"""Seconds between two keys that are for two pages."""
SIZES = ((60, 20), (80, 24))
TAKEN = "taken"
F3, F5, DOWN, PLAN, TAKE = "\x1bOR", "\x1b[15~", "\x1b[B", "\x0c", "\x13"


@dataclass(frozen=True)
class Step:
    """What is typed at once, what is then on the screen, and what is entered by it."""

    keys: str
    shows: str
    entered: str = ""
    """An address and a word of its answer, or of what is half typed there."""


@dataclass(frozen=True)
class Scene:
    """A kind of page."""

    garden: str
    """The page of the simple way that the garden has reached, a new one, or a finished one."""
    begins: str
    """What stands on the screen at first."""
    steps: tuple[Step, ...]


SCENES: Mapping[str, Scene] = {
    "question": Scene(
        NEW,
        "What do you call",
        (Step("Maple lane\r", "Which state", "garden_name Maple lane"),),
    ),
    "choice": Scene(
        "after_rain",
        "Choose a place",
        (Step("1\r", "Slope · spot 1", "spots.1.stands_after_rain never"),),
    ),
    "usual page": Scene(
        "rough_size",
        "for 1 in of rain",
        (Step("\r", "Does another surface", f"{TAKEN} rough_size"),),
    ),
    "form": Scene(
        "slope",
        "Slope · spot 1",
        (
            Step("10 ft\r", "string: 10 ft", "spots.1.slope_run 10 ft"),
            Step("3 in\r", "Which way is downhill", "spots.1.slope_drop 3 in"),
            Step("\r", "Outline", "spots.1.downhill_direction don't know yet"),
        ),
    ),
    "list": Scene(
        "roof_size",
        "How big is this side",
        (
            Step("rectangle 31 ft by 14 ft\r", "▸rectangle", "surfaces.1.pieces 31 ft by 14 ft"),
            Step("less rectangle 2 ft by 2 ft\r", "430 ft", "surfaces.1.pieces 2 ft by 2 ft"),
            Step("\r", "Rub a pinch", "surfaces.1.pieces 2 ft by 2 ft"),
        ),
    ),
    "pieces": Scene(
        "roof_size",
        "How big is this side",
        (
            Step(F3, "No piece yet"),
            Step("a", "ADDED"),
            Step("\r", ""),
            Step("24 ft\r", "24 ft"),
            Step("13 ft\r", "13 ft"),
            Step(TAKE, "The pieces of", "surfaces.1.pieces 24 ft, 13 ft"),
        ),
    ),
    "soak page": Scene(
        "dig_day",
        "Cover the hole",
        (
            Step("r", "How deep is the water"),
            Step("4 1/8\r", "4.125 in", "holes.1.readings 4 1/8 in"),
        ),
    ),
    "plants": Scene(
        WHOLE,
        "A garden",
        (
            Step(F5, "The plants"),
            Step("\r", "In place of"),
            Step(f"{DOWN}\r", "Swapped out", "swap_out Gray's sedge for fox sedge"),
        ),
    ),
    "finale": Scene(WHOLE, "A garden", (Step(PLAN, "The plan"), Step(DOWN, "The plan"))),
}


class Clock:
    def __init__(self) -> None:
        self.now = killed.NOW.replace(day=simple_way.FIRST_DAY.day, hour=9)

    def __call__(self) -> dt.datetime:
        return self.now


def garden(scene: Scene, file: Path) -> None:
    """Write the garden of a scene."""
    if scene.garden == NEW:
        return
    if scene.garden == WHOLE:
        shutil.copy(SAMPLES / f"{WHOLE}.yaml", file)
        shutil.copy(SAMPLES / "invented_rain.csv", file.parent)
        return
    clock = Clock()
    opened = open_session(str(file), clock, killed.BY)
    assert isinstance(opened, Opened)
    with opened.lock:
        for _ in simple_way.walk(opened.session, clock, until=scene.garden):
            pass
        opened.session.save()


class Desk:
    """Gardens made once, and the folder in which the program is killed over and over."""

    def __init__(self, place: Path) -> None:
        self.place, self.made = place, dict[str, dict[str, bytes]]()

    def file(self, scene: Scene) -> Path:
        """Return the garden of a scene as it was before anything was entered."""
        room = self.place / scene.garden
        room.mkdir(exist_ok=True)
        file = room / "garden.yaml"
        if scene.garden not in self.made:
            garden(scene, file)
            self.made[scene.garden] = {one.name: one.read_bytes() for one in room.iterdir()}
        for one in room.iterdir():
            one.unlink()
        for name, data in self.made[scene.garden].items():
            (room / name).write_bytes(data)
        return file


def holds(file: Path, entered: str) -> bool:
    """Tell whether a file holds what was entered, as an answer or half typed."""
    address, _, words = entered.partition(" ")
    loaded = store.load(file)[0]
    if address == TAKEN:
        return words in loaded.taken
    return words in (loaded.answers.texts.get(address) or loaded.drafts.get(address, ""))


def killed_screen(desk: Desk, kind: str, luck: random.Random) -> str:
    """Kill the full screen on a kind of page; return how far it was.

    Raises ``killed.Torn`` where what the screen has gone on from is not in the file, but for a
    screen that says it is just saving.
    """
    scene = SCENES[kind]
    file, steps = desk.file(scene), scene.steps[: luck.randint(0, len(scene.steps))]
    notes = {one.name: one.read_bytes() for one in file.parent.iterdir() if one != file}
    reading, writing = killed.told_by()

    def work() -> int:
        killed.telling_saves(killed.teller(writing))
        return run(str(file), lambda: killed.NOW, killed.BY)

    before = killed.held(file)
    window = tube.Tube(folder=file.parent, size=luck.choice(SIZES), work=work)
    killed.os.close(writing)
    try:
        shows = scene.begins
        _until(window, shows)
        for at, step in enumerate(steps):
            _for(window, REST)  # faster than fingers is taken for a paste
            window.type(step.keys.encode())
            if at + 1 < len(steps) or luck.random() < 0.5:
                _until(window, step.shows)
            else:
                _for(window, luck.uniform(0, 0.4))
        window.program.kill()
        window.program.wait()
        while window.take(0):
            pass
        shown = window.shown()
    finally:
        window.close()
        told = killed.heard(reading)
    there = killed.held(file)
    opened = {"what": "opened", "texts": before.texts, "drafts": before.drafts}
    killed.hold_against([opened, *told], there)
    for name, data in notes.items():
        if (file.parent / name).read_bytes() != data:
            raise killed.Torn(f"{name} was changed")
    sure = steps if steps and steps[-1].shows in shown else steps[:-1]
    missing = [one.entered for one in sure if one.entered and not holds(file, one.entered)]
    if missing and "Saving" not in shown:
        raise killed.Torn(f"{kind}: {missing} is lost where the screen showed:\n{shown}")
    return "killed while it said Saving" if missing else "killed"


def _until(window: tube.Tube, words: str) -> None:
    end = time.monotonic() + LIMIT
    while words not in window.shown():
        if time.monotonic() > end or window.program.poll() is not None:
            raise killed.Torn(f"{words!r} never came:\n{window.shown()}")
        with suppress(OSError):
            window.take(0.05)


def _for(window: tube.Tube, seconds: float) -> None:
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        window.take(0.02)
