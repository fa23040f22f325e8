"""A person at the keyboard: opens a garden on a small screen, presses keys, reads the screen."""

from __future__ import annotations

import asyncio
import datetime as dt
import shutil
from collections.abc import AsyncIterator, Callable, Iterator, Mapping
from contextlib import AbstractAsyncContextManager, asynccontextmanager
from pathlib import Path
from typing import Any

import pytest
from textual import events
from textual.css.stylesheet import Stylesheet
from textual.keys import _character_to_key
from textual.pilot import Pilot
from textual.widgets import Input

from interview.asking.keeping import Keeper
from interview.asking.kinds import Choice, InSteps, Ticks, YesNo, list_lines
from interview.asking.route import Step
from interview.garden import store
from interview.garden.opening import Opened, open_session
from interview.garden.session import Session
from interview.garden.soak.reading_lines import Readings
from interview.plain import interview as plain
from interview.screens import after_typing, typed_ahead
from interview.screens.app import Door, InterviewApp
from interview.screens.frame import KeyLine, Notice
from interview.screens.page import Page

LOOKS = 20
"""How often it is looked for the field to type into."""
BY = "rain-garden-interview test"


@pytest.fixture(scope="session", autouse=True)
def styles_read_once() -> Iterator[None]:
    """Read each sheet of styles once: it says the same to the pages of every test."""
    read: dict[Any, Any] = {}
    parse_rules = Stylesheet._parse_rules

    def once(sheet: Stylesheet, *told: Any, **more: Any) -> Any:
        key = (told, tuple(more.items()), tuple(sheet._variables.items()))
        if key not in read:
            read[key] = parse_rules(sheet, *told, **more)
        return read[key]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Stylesheet, "_parse_rules", once)
        yield


class Person:
    """Somebody at the keyboard of one interview."""

    def __init__(self, pilot: Pilot[None], door: Door) -> None:
        self.pilot = pilot
        self.door = door

    @property
    def app(self) -> InterviewApp:
        assert isinstance(self.pilot.app, InterviewApp)
        return self.pilot.app

    @property
    def session(self) -> Session:
        assert self.door.opened is not None
        return self.door.opened.session

    @property
    def asked(self) -> str:
        """The address of the question on the screen."""
        return self.session.step.address if self.session.step else ""

    @property
    def page(self) -> str:
        """The name of the page on top."""
        return type(self.app.screen).__name__

    @property
    def told(self) -> str:
        """Return what is said in the notice line of the page on top."""
        pages = [page for page in self.app.screen_stack if isinstance(page, Page)]
        return pages[-1].query_one(Notice).told if pages else ""

    def sees(self) -> str:
        """Return the screen as text."""
        strips = self.app.screen._compositor.render_strips()
        return "\n".join("".join(part.text for part in strip).rstrip() for strip in strips)

    def sees_words(self) -> str:
        """Return the screen as one line, as words broken between lines are read."""
        return " ".join(self.sees().replace("▌", " ").replace("█", " ").split())

    def says(self, name: str) -> str:
        """Return the whole text of the part of the page called ``name``, on one line."""
        return " ".join(str(self.app.screen.query_one(f"#{name}").render()).split())

    async def press(self, *keys: str) -> None:
        """Press keys by name, one straight after the other, as a terminal hands them over."""
        driver = self.app._driver
        assert driver is not None
        for key in keys:
            single = " " if key == "space" else key
            known = _character_to_key(single) if len(single) == 1 else key
            driver.process_message(events.Key(known, single if len(single) == 1 else None))
        await self.rests()

    async def clicks(self, word: str) -> None:
        """Click a key of the key line by its words, leafing on where it is not in sight."""
        line = self.app.screen.query_one(KeyLine)
        for _ in line.offers:
            found = [(at, one) for at, one in line._places() if one.word == word]
            at, _ = found[0] if found else next(o for o in line._places() if o[1].shown == "…")
            await self.pilot.click("#keyline", offset=(at + 1, 0))
            await self.rests()
            if found:
                return
        raise AssertionError(f"{word} is not on the key line: {line.offers}")

    async def rests(self) -> None:
        """Wait until no message is on its way and nothing scrolls: a page may still be opening."""
        loop = asyncio.get_running_loop()
        for _ in range(LOOKS):
            # Ready in the loop is each handler that waits for neither a timer nor a thread.
            while loop._ready:
                await asyncio.sleep(0)
            await self.app.animator.wait_until_complete()
            self.app.screen._on_timer_update()
            beside = [one for one in self.app.workers if one.group in ("opening", "plan")]
            if beside:  # of none at all Textual waits for every one
                await self.app.workers.wait_for_complete(beside)
            elif not loop._ready:
                break
        if any(not one.is_finished for one in self.app.workers):
            await self.pilot.pause()

    async def settles(self) -> None:
        """Wait for what is worked out beside the keys."""
        await self.rests()
        await self.app.workers.wait_for_complete()
        await self.rests()

    async def pastes(self, text: str) -> None:
        driver = self.app._driver
        assert driver is not None
        driver.process_message(events.Paste(text))
        await self.rests()

    async def types(self, text: str) -> None:
        """Type ``text`` into the line that has the focus."""
        for _ in range(LOOKS):  # a page just opened may still be on its way
            if isinstance(self.app.focused, Input):
                break
            await self.rests()
        assert isinstance(self.app.focused, Input), self.app.focused
        await self.press(*text)

    async def enters(self, text: str) -> None:
        await self.types(text)
        await self.press("enter")

    async def goes_to(self, address: str) -> None:
        """Go to a question by the list of all of them."""
        await self.press("ctrl+g")
        await self.enters(address)
        assert self.asked == address

    async def answers(self, text: str) -> None:
        """Answer the question on the screen in the way its kind wants."""
        step = self.session.step
        assert step is not None
        match step.question.kind:
            case YesNo():
                await self._chooses(text, (("yes", "yes"), ("no", "no")))
            case InSteps() as kind:
                first, sort = kind.parted(text)
                await self._chooses(first, kind.first)
                if kind.has_sorts(first):
                    await self._chooses(sort, kind.sorts)
            case Choice(options=options):
                await self._chooses(text, options)
            case Ticks(options=options):
                await self._ticks(text, options, step)
            case Readings():
                await self._reads(text)
            case kind if kind.many:
                for line in list_lines(text):
                    await self.enters(line)
                await self.press("enter")
            case _:
                await self.enters(text)

    async def _chooses(self, text: str, options: tuple[tuple[str, str], ...]) -> None:
        place = [key for key, _ in options].index(text)
        if len(options) < 10:
            await self.press(str(place + 1), "enter")
        else:
            await self.press("home", *(["down"] * place), "enter")

    async def _ticks(self, text: str, options: tuple[tuple[str, str], ...], step: Step) -> None:
        default = step.question.default(step.view(self.session.answers)) or ""
        ticked = {one.strip() for one in default.split(",")}
        wanted = {one.strip() for one in text.split(",")}
        keys: list[str] = ["home"]
        for key, _ in options:
            keys += ["space", "down"] if (key in wanted) != (key in ticked) else ["down"]
        if wanted == {"none"} != ticked:
            keys.append("space")
        await self.press(*keys, "enter")

    async def _reads(self, text: str) -> None:
        await self.press("enter")
        assert self.page == "SoakScreen"
        for line in list_lines(text):
            await self.press("a")
            await self.enters(line)
        await self.press("escape")
        await self.clicks("go on")


Sit = Callable[..., AbstractAsyncContextManager[Person]]


@pytest.fixture
def sit(tmp_path: Path, clock: Callable[[], dt.datetime], monkeypatch: pytest.MonkeyPatch) -> Sit:
    """Return a way to sit down at a garden: a file by its name, or the start page."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.setenv("COLORTERM", "truecolor")
    monkeypatch.delenv("NO_COLOR", raising=False)
    # Nobody here waits between two keys; what depends on it has tests of its own.
    monkeypatch.setattr(typed_ahead, "REST", 0.0)
    monkeypatch.setattr(typed_ahead, "BURST", 0.0)
    monkeypatch.setattr(after_typing, "TYPING_RESTS", 0.0)

    @asynccontextmanager
    async def down(
        name: str | None = None, size: tuple[int, int] = (80, 24)
    ) -> AsyncIterator[Person]:
        door = Door(clock, BY, Path())
        if name is not None:
            opened = door.open(name)
            assert isinstance(opened, Opened), opened
        app = InterviewApp(door)
        try:
            async with app.run_test(size=size) as pilot:
                me = Person(pilot, door)
                await me.rests()
                yield me
        finally:
            if door.saver is not None:
                door.saver.close(10)
            door.leave()

    return down


@pytest.fixture
def write(tmp_path: Path, clock: Callable[[], dt.datetime], keeper: Keeper) -> Callable[..., Path]:
    """Return a writer of answers files, as somebody who answered earlier left them."""

    def make(name: str, texts: Mapping[str, str]) -> Path:
        path = tmp_path / name
        opened = open_session(str(path), clock, BY)
        assert isinstance(opened, Opened)
        with opened.lock:
            opened.session.keep_with(keeper)
            for address, text in texts.items():
                step = opened.session.jump(address)
                assert step is not None, f"{address} is not asked"
                opened.session.offer(step, text)
            opened.session.keep_with(opened.keeper)
            assert opened.session.save()
        return path

    return make


@pytest.fixture
def sample(tmp_path: Path, clock: Callable[[], dt.datetime]) -> Callable[[str], str]:
    """Return a maker of copies of the sample gardens, on the day they were written."""

    def make(name: str) -> str:
        for file in (Path(__file__).parents[2] / "sample_answers").iterdir():
            shutil.copy(file, tmp_path)
        return str(tmp_path / name)

    return make


@pytest.fixture
def finished() -> dict[str, str]:
    """The answers of a whole garden, by address, in the order they are asked."""
    sample = Path(__file__).parents[2] / "sample_answers" / "finished_us.yaml"
    return dict(store.load(sample)[0].answers.texts)


@pytest.fixture
def on_plain_lines(clock: Callable[[], dt.datetime]) -> Callable[[Path, Mapping[str, str]], str]:
    """Return a way to give the same answers on plain lines; returns the text of the file."""

    def go(path: Path, texts: Mapping[str, str]) -> str:
        opened = open_session(str(path), clock, BY)
        assert isinstance(opened, Opened)
        waiting: list[str] = []

        def ask(prompt: str) -> str:
            if not waiting:
                step = opened.session.step
                assert step is not None
                text = texts.get(step.address, ":skip")
                waiting.extend(text.splitlines() if step.question.kind.many else [text])
                if step.question.kind.many and text not in (":skip", "none"):
                    waiting.append("")
            return waiting.pop(0)

        with opened.lock:
            assert plain.run(opened.session, ask, lambda line: None)
        return path.read_text(encoding="utf-8")

    return go
