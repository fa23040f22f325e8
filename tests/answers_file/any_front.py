"""Somebody who opens a damaged answers file on plain lines or on the full screen, by chance."""

from __future__ import annotations

import asyncio
import datetime as dt
import gc
import random
from collections.abc import Callable
from pathlib import Path

from any_file import HOSTILE
from textual import events
from textual.keys import _character_to_key
from textual.widgets import Input

from interview.answers_file import Unreadable, parse
from interview.garden import store
from interview.garden.opening import Opened, open_session
from interview.plain import interview as plain
from interview.screens.app import Door, InterviewApp

BY = "rain-garden-interview test"
LINES = (
    "", "", "", "1", "2", "3", "yes", "no", ":skip", ":back", ":later x", ":list", ":go readings",
    ":go pieces", ":go floor_length", ":go dig_day", ":why", ":how", ":options", ":picture",
    ":picture plan", ":again", ":plan", ":card", ":waiting", ":answers", ":open", ":next", ":clear",
    ":mend", ":remove", ":every", ":help", ":nothing",
)  # fmt: skip
KEYS = (
    "enter", "enter", "enter", "escape", "down", "up", "left", "right", "tab", "shift+tab", "space",
    "home", "end", "pagedown", "backspace", "ctrl+t", "ctrl+g", "ctrl+l", "ctrl+o", "ctrl+y",
    "ctrl+n", "ctrl+r", "f1", "f3", "f4", "f5", "f6", "f7", "f8", "f9", "f10", "1", "2", "3", "a",
    "g", "k", "e", "x", "z",
)  # fmt: skip
TYPED, PRESSED = 30, 25
BURST = 0.5
"""How often a key comes straight after the one before."""
SIZES = ((80, 24), (60, 20), (100, 40), (200, 60))
LOOKS = 20

Front = Callable[[Path, random.Random, dt.datetime], str]


def on_plain_lines(path: Path, rng: random.Random, now: dt.datetime) -> str:
    """Type odd lines on plain lines; the file is read afterwards as far as it was before."""
    before = path.read_bytes()
    opened = open_session(str(path), lambda: now, BY)
    if not isinstance(opened, Opened):
        assert opened.sentence.isprintable() and path.read_bytes() == before
        return "refused"
    left = TYPED

    def ask(asked: str) -> str:
        nonlocal left
        assert all(line.isprintable() for line in asked.splitlines())
        left -= 1
        if left < 0:
            raise EOFError
        return rng.choice(HOSTILE if rng.random() < 0.3 else LINES).split("\n")[0]

    with opened.lock:
        opened.session.start()
        plain.run(opened.session, ask, lambda said: None)
        assert not opened.session.not_kept
    return _still_read(path, before)


def _still_read(path: Path, before: bytes) -> str:
    if path.read_bytes() == before:
        return "left as it was"
    try:
        store.interpret(parse(path.read_bytes()))
    except Unreadable as refused:
        raise AssertionError(refused.sentence) from refused
    return "saved"


def on_the_screen(path: Path, rng: random.Random, now: dt.datetime) -> str:
    """Press odd keys on the full screen; the file is read afterwards as far as it was before."""
    try:
        return asyncio.run(_at_the_screen(path, rng, now))
    finally:
        # The program keeps what its first page loaded for as long as it runs, and that ends here.
        gc.unfreeze()


async def _at_the_screen(path: Path, rng: random.Random, now: dt.datetime) -> str:
    before = path.read_bytes()
    door = Door(lambda: now, BY, path.parent)
    opened = door.open(str(path))
    if not isinstance(opened, Opened):
        assert opened.sentence.isprintable() and path.read_bytes() == before
        return "refused"
    app = InterviewApp(door)
    try:
        async with app.run_test(size=rng.choice(SIZES)) as pilot:
            app._driver.process_message(events.Key("g", "g"))  # go on with what is readable
            for _ in range(PRESSED):
                if rng.random() < 0.2 and isinstance(app.focused, Input):
                    app._driver.process_message(events.Paste(rng.choice(HOSTILE)))  # type: ignore[union-attr]
                else:
                    key = rng.choice(KEYS)
                    name = _character_to_key(key) if len(key) == 1 else key
                    app._driver.process_message(  # type: ignore[union-attr]
                        events.Key(name, key if len(key) == 1 else None)
                    )
                if rng.random() > BURST:  # else the next key comes while this one is at work
                    await pilot.pause()
            await app.workers.wait_for_complete()
            await pilot.pause()
    finally:
        if door.saver is not None:
            door.saver.close(10)
        door.leave()
    return _still_read(path, before)
