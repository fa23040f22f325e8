"""What every test stands on: no real home, a fixed time zone, a clock that stands still."""

from __future__ import annotations

import datetime as dt
import gc
import random
import signal
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any, ClassVar

import pytest
import yaml
from hypothesis import settings

from interview.asking import kinds, measures, own_fault, route
from interview.asking.answers import Answers
from interview.asking.keeping import NotKept
from interview.asking.question import UNKNOWN_TEXT, Unanswered
from interview.asking.route import Step
from interview.garden import figures
from interview.garden.opening import text_opener
from interview.garden.plan import Plan
from interview.garden.session import Session
from interview.garden.size import price_lines, shape_questions
from interview.garden.soak import reading_lines as lines
from interview.garden.stages import new_answers, question_at
from interview.garden.survey import piece_lines
from interview.garden.survey import share_questions as surface_share
from interview.garden.survey import surface_questions as surfaces
from interview.plain import interview as plain
from interview.quantities.units import magnitude, quantity
from interview.reading import Refused
from interview.sheet.figures_file import figures_text

settings.register_profile("house", deadline=None, derandomize=True)
settings.load_profile("house")

ZONE = dt.timezone(dt.timedelta(hours=-5))
MORNING = dt.datetime(2026, 5, 28, 9, 0, tzinfo=ZONE)
"""A Thursday in the time zone of the tests, Chicago in summer."""

Texts = Mapping[str, str]


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--part", default="1/1", metavar="N/M", help="run the Nth of M equal parts")


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    mine, others = parted(items, config.getoption("part"))
    items[:] = mine
    config.hook.pytest_deselected(items=others)


def parted(items: list[Any], part: str) -> tuple[list[Any], list[Any]]:
    """Return the Nth of M parts of ``items``, as ``N/M`` says it, and the rest.

    Neighbors take about as long as each other, so each part takes its turn.
    """
    number, of = map(int, part.split("/"))
    if not 1 <= number <= of:
        raise pytest.UsageError(f"there is no part {part}")
    return items[number - 1 :: of], [o for at, o in enumerate(items) if at % of != number - 1]


# Looked for as often as Python does by itself, garbage takes a tenth of the time of all the tests.
gc.set_threshold(20_000)


@pytest.fixture(scope="session")
def compiled_once(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Where Python is told to keep nothing compiled, let the programs that tests start share it."""
    with pytest.MonkeyPatch.context() as patch:
        if sys.dont_write_bytecode:
            patch.delenv("PYTHONDONTWRITEBYTECODE", raising=False)
            patch.setenv("PYTHONPYCACHEPREFIX", str(tmp_path_factory.mktemp("compiled")))
            every = (
                "import interview.plain.interview, interview.screens.run, interview.sheet.report"
            )
            subprocess.run([sys.executable, "-c", every], cwd=Path(__file__).parents[1], check=True)
        yield


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


@pytest.fixture(autouse=True)
def faults_come_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let every fault of the program out, which a person would be told of in its place."""
    monkeypatch.setattr(own_fault, "PASSED_ON", (Exception,))


class Clock:
    """A clock that only moves when it is told to."""

    def __init__(self, now: dt.datetime = MORNING) -> None:
        self.now = now

    def __call__(self) -> dt.datetime:
        return self.now

    def forward(self, **by: float) -> None:
        self.now += dt.timedelta(**by)


@pytest.fixture
def hears() -> Callable[[], None]:
    """Return what a child does first, so that requests to end reach it.

    Under nohup or in the background they are ignored, and a child inherits that.
    """

    def listen() -> None:
        for number in (signal.SIGINT, signal.SIGHUP, signal.SIGQUIT):
            signal.signal(number, signal.SIG_DFL)

    return listen


@pytest.fixture
def calls_of() -> Callable[[Callable[[], object]], int]:
    """Return a counter of the calls, of Python and of C, that a piece of work makes.

    It stands for the time the work takes, and is the same on any machine, however busy.
    """

    def count(work: Callable[[], object]) -> int:
        calls, before = Counter[str](), sys.getprofile()
        sys.setprofile(lambda _frame, event, _what: calls.update((event,)))
        try:
            work()
        finally:
            sys.setprofile(before)
        return calls["call"] + calls["c_call"]

    return count


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
        "lines_valid_kind": "working",
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
        "spots.1.overflow_building_distance": "40 ft",
        "spots.1.overflow_line_distance": "30 ft",
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
def walkers() -> dict[str, str]:
    """Answers of two people who pace: Ann 2.5 ft and Bob 3 ft."""
    return {
        "measured_by": "paces",
        "walkers.1.walker_name": "Ann",
        "walkers.1.pace_line": "50 ft",
        "walkers.1.pace_counts": "20; 20; 20",
        "walkers.1.another_walker": "yes",
        "walkers.2.walker_name": "Bob",
        "walkers.2.pace_line": "60 ft",
        "walkers.2.pace_counts": "20; 20; 20",
    }


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


@pytest.fixture
def talk(session_of: Callable[..., Session]) -> Callable[..., tuple[str, Session, bool]]:
    """Return a runner of the plain interview: what was said, the session, whether it finished.

    It types the lines, once it has gone to ``at``; a line that can be called is called instead.
    """

    def run(
        *lines: str | Callable[[], object], session: Session | None = None, at: str = ""
    ) -> tuple[str, Session, bool]:
        session, said = session or session_of(), list[str]()
        left = [f":go {at}", *lines] if at else list(lines)

        def ask(_prompt: str) -> str:
            for line in iter(lambda: left.pop(0) if left else None, None):
                if isinstance(line, str):
                    return line
                line()
            raise EOFError

        finished = plain.run(session, ask, said.append)
        return "\n".join(said), session, finished

    return run


class Chance:
    """Texts that a person might type for any question, drawn from a seeded stream."""

    NOTES = (
        "Maple corner", "null", "~", "yes", "none", "no", "12", "- a: b # c", "'quoted'", '"q"',
        "{x: [1, 2]}", "naïve 日本", "a\nsecond: line\n# third", "&anchor *alias", "%", "@ `x`",
        "trailing:", "2026-05-20", "1e3", "...", "---", "| bar", "> fold", "Null",
    )  # fmt: skip
    LIKELY: ClassVar[dict[str, tuple[str, ...]]] = {
        "slope_run": ("10 ft", "4 m"),
        "slope_drop": ("0", "3 in", "100 mm", "9 in", "1 ft"),
        "slope_drop_turned": ("3 in", "90 mm", "9 in"),
        "hole_depth": ("20 in", "500 mm"),
        "hole_width": ("8 in", "200 mm"),
        "hole_length": ("14 in", "40 cm"),
        "hole_top_width": ("11 in", "300 mm"),
        "hole_top_height": ("10 in", "250 mm"),
        "water_at_mark": ("8 in", "203.2 mm"),
        "test_start": ("2026-05-27 10:00",),
        "known_rate": ("0.3 in/h", "13 mm/h", "2 in/h"),
        "rain_depth": ("0.5 in", "1 in", "25 mm", "1.5 in"),
        "deepest_pond": ("4 in", "6 in", "250 mm", "12 in"),
        "pace_line": ("50 ft", "20 m"),
        "pace_counts": ("19; 20; 19; 20",),
        "room_length": ("16 ft", "12 m"),
        "room_width": ("11 ft", "8 m"),
        "floor_length": ("15 ft", "4.5 m"),
        "floor_width": ("7 ft", "1.8 m"),
        "another_spot": ("no", "no", "yes"),
        "another_hole": ("no", "no", "yes"),
        "another_surface": ("no", "no", "yes"),
        "chosen_spot": ("1", "2"),
        "gutter_this_side": ("10 ft",),
        "gutter_whole": ("24 ft", "9 m"),
    }
    JUNK = ("", " ", "?", "x", "-1", "1/0", "1e99", "9" * 40, "\x00", "none", "now", ";", "\n\n")

    def __init__(self, seed: int, now: dt.datetime) -> None:
        self.rng = random.Random(seed)
        self.now = now

    def answers(self, answers: Answers) -> Answers:
        """Answer most of what applies, each question by what it takes."""
        careless = self.rng.choice((0, 0, 0.02, 0.1, 0.5))
        unsure = self.rng.choice((0, 0, 0.01, 0.1))
        for _ in range(3):
            for step in route.steps(answers):
                if self.rng.random() < careless or step.address in answers.texts:
                    continue
                text = UNKNOWN_TEXT if self.rng.random() < unsure else self.text(step, answers)
                kept, view = text, step.view(answers)
                try:
                    if text != UNKNOWN_TEXT:
                        kept = step.question.kind.settle(text, view)
                        step.question.read(kept, view)
                except Refused:
                    continue
                except Unanswered:
                    pass
                answers = answers.with_text(step.address, kept)
        return answers

    def text(self, step: Step, answers: Answers) -> str:
        """Return a text that its question is likely to take."""
        likely = self.LIKELY.get(step.question.key)
        if likely and self.rng.random() < 0.9:
            return self.rng.choice(likely)
        return self._of(step.question.kind, step.view(answers))

    def _of(self, kind: Any, view: Answers) -> str:
        rng = self.rng
        match kind:
            case kinds.YesNo():
                return rng.choice(("yes", "no"))
            case kinds.Choice():
                return str(rng.choice(kind.options)[0])
            case kinds.Ticks():
                picked = rng.sample([key for key, _ in kind.options], rng.randint(0, 3))
                return ", ".join(picked) or "none"
            case kinds.Note() | price_lines.PriceLine():
                return rng.choice(self.NOTES)
            case kinds.Clearance():
                return rng.choice(("yes", "no", "ticket T-0412"))
            case measures.Measure():
                return self._measure(kind, view)
            case surfaces.LocalPart():
                return rng.choice(("usual", "0.7", "0", "1"))
            case surface_share.ShareKind():
                return rng.choice(("all", "half", "1/3", "60 %", "none", "12.5"))
            case measures.Number() | measures.Ratio():
                high = min(kind.at_most, 1e4)
                return f"{rng.uniform(kind.at_least, high):.3g}"
            case measures.Count():
                return str(rng.randint(kind.at_least, min(kind.at_most, 25)))
            case measures.Pitch():
                return rng.choice(("6 in 12", "35 deg", "50 %", "0 in 12"))
            case kinds.Day():
                day = self.now.date() + dt.timedelta(days=rng.choice((-30, -9, -8, -6, -2, 0, 5)))
                return day.isoformat()
            case kinds.Moment():
                return (
                    f"2026-05-2{rng.randint(4, 7)} {rng.randint(0, 23):02}:{rng.randint(0, 59):02}"
                )
            case kinds.Several(each=shape_questions.StationLine()):
                return self._stations()
            case kinds.Several():
                count = rng.choice((kind.at_least, 1, 3, 4))
                return "\n".join(self._of(kind.each, view).replace("\n", " ") for _ in range(count))
            case lines.Readings():
                return self._readings()
            case piece_lines.Pieces():
                return self._pieces()
        raise AssertionError(kind)

    def _measure(self, kind: measures.Measure, view: Answers) -> str:
        rng = self.rng
        if kind.dimension == "length" and rng.random() < 0.05:
            return f"{rng.randint(1, 40)} paces"
        unit = rng.choice((kind.us, kind.metric))
        ends = [
            magnitude(quantity(*(end or (fall, kind.us))), unit)
            for end, fall in ((kind.at_least, 0.1), (kind.at_most, 100.0))
        ]
        low, high = max(ends[0], 0.0), ends[1]
        drawn = rng.choice((low, high, rng.uniform(low, high), low + (high - low) * 0.05))
        number = f"{drawn:.3f}"
        bare = unit == kind.unit(view.units) and rng.random() < 0.5
        spelt = {"ft**2": "sq ft", "m**2": "m2", "ft**3": "cu ft"}.get(unit, unit)
        return number if bare else f"{number} {spelt}"

    def _readings(self) -> str:
        rng = self.rng
        lines_, minutes, deep = [], 0, 8.0
        for _ in range(rng.randint(1, 7)):
            minutes += rng.randint(5, 90)
            if rng.random() < 0.15:
                deep = 8.0
                lines_.append(f"+{minutes} min refilled to {deep} in")
                continue
            deep = round(max(0.0, deep - rng.choice((0.0, 0.125, 0.5, 1.5, 4.0))), 3)
            said = "empty" if deep == 0 and rng.random() < 0.5 else f"left {deep} in"
            lead = "struck " if rng.random() < 0.05 else ""
            lines_.append(f"{lead}+{minutes} min {said}")
        return "\n".join(lines_)

    def _stations(self) -> str:
        rng, along = self.rng, 0
        lines_ = [f"0, {rng.randint(0, 3)}, {rng.randint(0, 3)}"]
        for _ in range(rng.randint(1, 5)):
            # Now and then no farther along, which no outline is.
            along += rng.choice((0, 1, 2, 2, 3, 3, 4, 4, 5, 5))
            lines_.append(f"{along}, {rng.randint(0, 4)}, {rng.randint(0, 4)}")
        return "\n".join(lines_)

    def _pieces(self) -> str:
        rng = self.rng

        def side() -> str:
            if rng.random() < 0.05:
                return "12 paces"
            return rng.choice((f"{rng.randint(3, 60)} ft", f"{rng.randint(1, 20)} m"))

        found = []
        for place in range(rng.randint(1, 3)):
            one, two = side(), side()
            shape = rng.choice(
                (
                    f"rectangle {one} by {two}",
                    f"triangle {one} by {two}",
                    f"trapezoid {one}, {two}, height 10 ft",
                    f"circle across {one}",
                    f"half circle across {one} times 2",
                )
            )
            found.append(f"less rectangle 2 ft by 2 ft\n{shape}" if place == 1 else shape)
        return "\n".join(found)


@pytest.fixture
def chance(clock: Clock) -> Callable[[int], Chance]:
    """Return a maker of seeded chance."""
    return lambda seed: Chance(seed, clock.now)
