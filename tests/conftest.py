"""What every test stands on: no real home, a fixed time zone, a clock that stands still."""

from __future__ import annotations

import datetime as dt
import time
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

from interview import figures, route
from interview.figures_file import figures_text
from interview.model import Answers
from interview.opening import text_opener
from interview.plan import Plan
from interview.questions import new_answers, question_at
from interview.session import NotKept, Session

ZONE = dt.timezone(dt.timedelta(hours=-5))
MORNING = dt.datetime(2026, 5, 28, 9, 0, tzinfo=ZONE)
"""A Thursday in the time zone of the tests, Chicago in summer."""

Texts = Mapping[str, str]


@pytest.fixture(autouse=True)
def away_from_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Point every folder of the person at a temporary one, and fix the time zone."""
    home = tmp_path / "home"
    monkeypatch.setenv("HOME", str(home))
    for name, place in (
        ("XDG_CONFIG_HOME", "config"),
        ("XDG_STATE_HOME", "state"),
        ("XDG_DATA_HOME", "data"),
        ("XDG_CACHE_HOME", "cache"),
    ):
        monkeypatch.setenv(name, str(home / place))
    monkeypatch.setenv("TZ", "America/Chicago")
    time.tzset()
    yield
    monkeypatch.undo()
    time.tzset()


class Clock:
    """A clock that only moves when it is told to."""

    def __init__(self, now: dt.datetime = MORNING) -> None:
        self.now = now

    def __call__(self) -> dt.datetime:
        return self.now

    def forward(self, **by: float) -> None:
        self.now += dt.timedelta(**by)


@pytest.fixture
def clock() -> Clock:
    return Clock()


class MemoryKeeper:
    """Keeps every save in a list; refuses them with a sentence while ``refuses`` holds one."""

    def __init__(self) -> None:
        self.saves: list[tuple[dict[str, str], str]] = []
        self.refuses = ""

    def keep(self, answers: Answers, stopped_at: str) -> None:
        if self.refuses:
            raise NotKept(self.refuses)
        self.saves.append((dict(answers.texts), stopped_at))


@pytest.fixture
def keeper() -> MemoryKeeper:
    return MemoryKeeper()


@pytest.fixture
def given(clock: Clock) -> Callable[..., Answers]:
    """Return a maker of answers: each text is read and settled by its own question.

    Addresses with dots go in a mapping: ``given({"holes.1.hole_width": "8 in"}, units="us")``.
    """

    def make(texts: Texts | None = None, **more: str) -> Answers:
        answers = new_answers({}, clock.now)
        for address, text in {**(texts or {}), **more}.items():
            found = question_at(address)
            assert found is not None, address
            question, number = found
            view = answers.at(question.group, number) if number else answers
            kept = question.kind.settle(text, view)
            question.read(kept, view)
            answers = answers.with_text(address, kept)
        return answers

    return make


@pytest.fixture
def plan_of(given: Callable[..., Answers], clock: Clock, tmp_path: Path) -> Callable[..., Plan]:
    """Return a maker of plans from answers, or from what ``given`` takes."""

    def make(texts: Answers | Texts | None = None, **more: str) -> Plan:
        answers = texts if isinstance(texts, Answers) else given(texts, **more)
        return Plan(route.in_force(answers), clock.now, text_opener(tmp_path))

    return make


@pytest.fixture
def session_of(clock: Clock, keeper: MemoryKeeper, tmp_path: Path) -> Callable[..., Session]:
    """Return a maker of sessions that save to ``keeper``."""

    def make(answers: Answers | None = None, stopped_at: str = "") -> Session:
        return Session(
            answers or new_answers(), keeper, clock, stopped_at, open_text=text_opener(tmp_path)
        )

    return make


@pytest.fixture
def typed(session_of: Callable[..., Session]) -> Callable[..., Session]:
    """Return a typist: each text is offered to a session at its address, as a person would."""

    def make(*texts: Texts) -> Session:
        session = session_of()
        for address, text in {a: t for one in texts for a, t in one.items()}.items():
            step = session.jump(address)
            assert step is not None, f"{address} is not asked"
            session.offer(step, text)
        return session

    return make


@pytest.fixture
def figure() -> Callable[[str, Plan], Any]:
    """Return a reader of one figure of a plan, as a bare number in the unit shown."""

    def read(key: str, plan: Plan) -> Any:
        found = figures.find(figures.BY_KEY[key], plan)
        if found.waits_for is not None:
            raise AssertionError(f"{key} waits for {found.waits_for.address}")
        return found.number(plan.metric)

    return read


@pytest.fixture
def printed() -> Callable[[Plan], Any]:
    """Return a reader of the list of figures as another program would read it."""
    return lambda plan: yaml.safe_load(figures_text(plan))


@pytest.fixture
def located() -> dict[str, str]:
    """Answers of somebody who may dig from Tuesday 26 May 2026."""
    return {
        "lines_requested": "asked",
        "lines_asked_on": "2026-05-20",
        "lines_ticket": "W-1174",
        "lines_business_days": "3",
        "lines_holidays": "none",
        "lines_answered": "yes",
        "lines_finished_on": "2026-05-22",
        "lines_valid_days": "10",
        "private_lines": "none",
        "mark_distance": "500 ft",
    }


@pytest.fixture
def level_spot() -> dict[str, str]:
    """Answers about one good, level spot."""
    return {
        "spots.1.stands_after_rain": "never",
        "spots.1.near_spot": "none",
        "spots.1.slope_run": "10 ft",
        "spots.1.slope_drop": "0 in",
        "spots.1.wet_season_depth": "100 in",
        "spots.1.rock_depth": "100 in",
        "spots.1.unstable_ground": "none",
        "spots.1.contamination": "none",
        "spots.1.overflow_to": "own_lawn",
    }


@pytest.fixture
def hole(located: dict[str, str]) -> Callable[..., dict[str, str]]:
    """Return a maker of one soak test: a hole, its water and its readings."""

    def make(
        shape: str, width: str, water: str, readings: str, number: int = 1, **more: str
    ) -> dict[str, str]:
        at = f"holes.{number}."
        return {
            **located,
            at + "hole_dug_on": "2026-05-27",
            at + "hole_depth": "20 in",
            at + "hole_shape": shape,
            at + "hole_width": width,
            **{at + key: text for key, text in more.items()},
            at + "water_at_mark": water,
            at + "test_start": "2026-05-27 10:00",
            at + "readings": readings,
        }

    return make


@pytest.fixture
def roof() -> Callable[..., dict[str, str]]:
    """Return a maker of one roof whose gutter has one downspout."""

    def make(*pieces: str, number: int = 1, **more: str) -> dict[str, str]:
        at = f"surfaces.{number}."
        return {
            at + "surface_name": f"roof {number}",
            at + "surface_kind": "roof",
            **{at + key: text for key, text in more.items()},
            at + "pieces": "\n".join(pieces),
        }

    return make


@pytest.fixture
def sized(roof: Callable[..., dict[str, str]]) -> dict[str, str]:
    """Answers for 570 square feet of weighted roof, 1 in of rain, a pond of 6 in."""
    return {
        "units": "us",
        "rain_depth": "1 in",
        "rate_from": "report",
        "known_rate": "0.25 in/h",
        **roof("rectangle 20 ft by 30 ft"),
        "deepest_pond": "6 in",
        "side_slope": "3:1",
        "length_to_width": "2:1",
        "freeboard": "4 in",
    }
