"""What is loaded and worked out before a page stands, and after Enter: counted, never timed."""

from __future__ import annotations

import ast
import json
import os
import re
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.app import App

from interview.garden.plan import Plan
from interview.screens import beside, words
from interview.screens.app import InterviewApp
from interview.screens.asked_page import LEFT_OUT
from interview.screens.live import LivePicture
from interview.screens.preview import Preview
from interview.screens.question_room import LAID_OUT

ROOT = Path(__file__).parents[2]
SAMPLE = ROOT / "sample_answers" / "finished_us.yaml"
AT_THE_FIRST_PAGE = """
import asyncio, json, sys
from interview.__main__ import main
from interview.screens import app, run

app.InterviewApp._begin = lambda self: self.exit()

async def first_page(door, name):
    async with app.InterviewApp(door, name).run_test() as pilot:
        await pilot.pause()

from interview.plain import clock
name = sys.argv[1] if len(sys.argv) > 1 else None
asyncio.run(first_page(app.Door(clock.now, "test"), name))
print(json.dumps(sorted(sys.modules)))
"""
AT_THE_FIRST_QUESTION = """
import asyncio, json, sys
from interview.plain import clock
from interview.screens import app, beside

async def first_question(door, name):
    beside.PlanSoFar.show = lambda *_: None
    async with app.InterviewApp(door, name).run_test() as pilot:
        while not getattr(pilot.app.screen, "_step", None):
            await pilot.pause()
            await pilot.app.workers.wait_for_complete()

asyncio.run(first_question(app.Door(clock.now, "test"), "new.yaml"))
print(json.dumps(sorted(sys.modules)))
"""


def loaded(script: str, folder: Path, *words: str) -> set[str]:
    """Return the modules that are loaded at the end of ``script``."""
    done = subprocess.run(
        [sys.executable, "-c", script, *words],
        capture_output=True,
        text=True,
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), "HOME": str(folder)},
        timeout=60,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return set(json.loads(done.stdout.splitlines()[-1]))


@pytest.mark.parametrize("name", [(), (str(SAMPLE),)], ids=["start page", "a garden"])
def test_the_first_page_stands_before_pint_yaml_and_any_garden(name, tmp_path) -> None:
    names = loaded(AT_THE_FIRST_PAGE, tmp_path, *name)
    assert "interview.screens.welcome" in names
    assert not names & {"pint", "yaml"}
    own = {one for one in names if one.startswith("interview.")}
    assert {one for one in own if one.startswith("interview.garden.")} == {
        "interview.garden.site",
        "interview.garden.site.cautions",
    }
    assert not {one for one in own if one.startswith(("interview.answers_file", "interview.sheet"))}
    drawn = {one for one in own if one.startswith("interview.drawing")}  # beside the keys
    assert len(own - drawn - {"interview.screens.picture"}) <= MOST_AT_THE_FIRST_PAGE


def test_the_version_is_looked_up_only_where_it_is_asked_for(tmp_path) -> None:
    # What reads it loads what reads e-mail and archives.
    script = """
import json, sys
from interview import __main__ as program
program._full_screen = lambda *_: 0
program.main(["oak.yaml"])
print(json.dumps(sorted(sys.modules)))
"""
    names = loaded(script, tmp_path)
    assert "argparse" in names
    assert not names & {"importlib.metadata", "email", "zipfile"}


def test_the_first_page_is_ready_before_anything_that_draws_its_picture(tmp_path) -> None:
    script = "import json, sys, interview.screens.app; print(json.dumps(sorted(sys.modules)))"
    names = loaded(script, tmp_path)
    assert "interview.screens.banner" in names
    assert not [one for one in names if one.startswith("interview.drawing")]


def test_what_looks_after_the_soak_tests_draws_nothing_while_none_is_shown(tmp_path) -> None:
    at_once = "import json, sys, interview.screens.soak_watch; "
    names = loaded(at_once + "print(json.dumps(sorted(sys.modules)))", tmp_path)
    assert "interview.garden.soak_due" in names
    assert not names & {"interview.drawing.scene", "interview.screens.soak_parts"}


def test_a_new_garden_is_asked_its_first_question_without_pint_or_any_result(tmp_path) -> None:
    names = loaded(AT_THE_FIRST_QUESTION, tmp_path)
    assert "interview.screens.question" in names
    assert not names & {"pint", "yaml"}
    sums = {one for one in names if one.endswith((".results", ".findings", ".figures"))}
    # What stops the spot decides which questions of the hole are asked.
    assert sums <= {"interview.asking.results", "interview.garden.site.results"}
    assert not names & {"interview.garden.checks", "interview.garden.planting.choose"}
    # Nor the form of a bed, the shapes of pieces, their drawing, or the list of plants.
    assert not names & {
        "interview.garden.form.outline",
        "interview.garden.form.lie",
        "interview.garden.size.basin",
        "interview.garden.survey.shapes",
        "interview.garden.planting.record",
        "interview.garden.planting.plant_list",
        "interview.drawing.scene",
    }
    assert len([one for one in names if one.startswith("interview.")]) <= MOST_AT_THE_FIRST_QUESTION


MOST_AT_THE_FIRST_PAGE, MOST_AT_THE_FIRST_QUESTION = 47, 150
"""Modules of ours, rooms counted too; each takes about half a millisecond."""


def test_no_module_makes_a_quantity_as_it_is_loaded(tmp_path) -> None:
    script = """
import importlib, json, pkgutil, interview, sys
from interview.quantities import units

def refuse(*_):
    raise AssertionError("a quantity is made at import")

units._registry = refuse
for one in pkgutil.walk_packages(interview.__path__, "interview."):
    importlib.import_module(one.name)
print(json.dumps(sorted(sys.modules)))
"""
    assert "interview.garden.planting.results" in loaded(script, tmp_path)


def test_no_module_compiles_a_pattern_as_it_is_loaded(tmp_path) -> None:
    script = """
import importlib, json, pkgutil, re, sys
import textual.app, interview

compiled, made = [], re._compiler.compile

def noting(pattern, flags=0):
    frame = sys._getframe(1)
    while frame.f_globals["__name__"].partition(".")[0] == "re":
        frame = frame.f_back
    if frame.f_globals["__name__"].startswith("interview"):
        compiled.append((frame.f_globals["__name__"], frame.f_code.co_name))
    return made(pattern, flags)

re._compiler.compile = noting
for one in pkgutil.walk_packages(interview.__path__, "interview."):
    importlib.import_module(one.name)
print(json.dumps([module for module, name in compiled if name == "<module>"]))
"""
    assert loaded(script, tmp_path) == set()


@pytest.fixture
def worked_out(monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, str]]:
    """Every part of a record that is worked out from now on, as record and part."""
    found: list[tuple[str, str]] = []
    from interview.asking.results import Results, part

    get = part.__get__

    def noting(self: part[object], record: Results | None, owner: type | None = None) -> object:
        if record is not None and self._name not in record.gaps:
            found.append((type(record).__name__, self._name))
        return get(self, record, owner)

    monkeypatch.setattr(part, "__get__", noting)
    return found


async def test_an_answer_that_no_part_looks_at_has_none_worked_out(sit, sample, worked_out) -> None:
    async with sit(sample("finished_us.yaml"), (100, 30)) as person:
        await person.settles()
        for name in ("Elm lane", "Oak lane"):  # the first change has what it may change looked up
            await person.goes_to("garden_name")
            await person.settles()
            worked_out.clear()
            await person.press("ctrl+u")
            await person.enters(name)
            await person.settles()
        assert person.asked != "garden_name"
        assert worked_out == []
        await person.goes_to("rain_depth")
        await person.press("ctrl+u")
        await person.enters("1.3 in")
        await person.settles()
        assert ("SizeResults", "required") in worked_out
        assert not [name for name, _ in worked_out if name in ("SoakResults", "SiteResults")]


async def test_an_answer_makes_one_plan_and_none_on_the_way_of_the_keys(
    sit, sample, monkeypatch
) -> None:
    keys, threads, plans = threading.get_ident(), list[int](), list[Plan]()
    lines, made = words.plan_lines, Plan.after

    def noting(plan: Plan, *others: object) -> words.Beside:
        threads.append(threading.get_ident())
        return lines(plan, *others)

    def after(self: Plan, before: Plan) -> Plan:
        plans.append(self)
        return made(self, before)

    monkeypatch.setattr(beside.words, "plan_lines", noting)
    # What is typed has plans of its own, beside the keys too.
    for one in (Preview, LivePicture):
        monkeypatch.setattr(one, "follow", lambda *_: None)
    async with sit(sample("finished_us.yaml"), (100, 30)) as person:
        await person.settles()
        await person.goes_to("deepest_pond")
        await person.settles()
        monkeypatch.setattr(Plan, "after", after)
        threads.clear()
        await person.press("ctrl+u")
        await person.enters("5 in")
        await person.settles()
        of_answers = {
            id(one.answers) for one in plans if one.answers.texts["has_rain_record"] != "no"
        }
        assert len(of_answers) == 1
        assert threads and keys not in threads


async def test_of_plans_wanted_while_one_is_worked_out_the_last_alone_is(
    sit, sample, monkeypatch
) -> None:
    gate, seen, lines = threading.Event(), list[str](), words.plan_lines

    def waiting(plan: Plan, *others: object) -> words.Beside:
        gate.wait(20)
        seen.append(plan.answers.texts["garden_name"])
        return lines(plan, *others)

    async with sit(sample("usual_us.yaml"), (100, 30)) as person:
        await person.settles()
        panel = person.app.screen.query_one(beside.PlanSoFar)
        monkeypatch.setattr(beside.words, "plan_lines", waiting)
        step = person.session.step
        for name in ("one", "two", "three"):
            person.session._answers = person.session._answers.with_text("garden_name", name)
            panel.show(person.session)
        gate.set()
        await person.settles()
        assert person.session.step == step
        assert seen == ["one", "three"]


@pytest.mark.parametrize("fault", [None, ValueError("broken")])
async def test_as_a_garden_opens_the_plan_so_far_stands_before_its_picture_is_drawn(
    sit, sample, monkeypatch, fault
) -> None:
    order, lines, begin = list[str](), words.plan_lines, LivePicture._draw

    def told(plan: Plan, *others: object) -> words.Beside:
        order.append("plan")
        if fault is not None:
            raise fault
        return lines(plan, *others)

    def drawn(picture: LivePicture, *wanted: object) -> None:
        order.append("picture")
        begin(picture, *wanted)

    monkeypatch.setattr(beside.words, "plan_lines", told)
    monkeypatch.setattr(LivePicture, "_draw", drawn)
    garden = Path(sample("finished_us.yaml"))
    garden.write_text(re.sub(r"  spout_distance: .*\n", "", garden.read_text()))
    async with sit(str(garden), (160, 45)) as person:
        await person.settles()
        assert order[0] == "plan" and "picture" in order


async def test_a_page_turn_paints_once_and_typing_little(sit, sample, monkeypatch) -> None:
    sent: list[str] = []
    async with sit(sample("usual_us.yaml"), (100, 30)) as person:
        await person.goes_to("garden_name")
        await person.settles()
        monkeypatch.setattr(App, "_display", counting(App._display, sent), raising=True)
        await person.press("x")
        typed = sum(map(len, sent))
        sent.clear()
        await person.press("enter")
        await person.settles()
        assert person.asked != "garden_name"
        assert 0 < typed < TYPED
        assert 0 < sum(map(len, sent)) < TURNED


TYPED, TURNED = 400, 2_500
"""Characters for the terminal that a typed key and a page turn may take."""


def counting(display: Callable[..., None], sent: list[str]) -> Callable[..., None]:
    """Return ``display`` of an application that notes what it would write to the terminal."""

    def noted(app: App[None], screen: object, renderable: object) -> None:
        if renderable is not None and hasattr(renderable, "render_segments"):
            sent.append(renderable.render_segments(app.console))
        display(app, screen, renderable)

    return noted


async def test_a_new_page_is_styled_once(sit, sample, monkeypatch) -> None:
    from textual.css.stylesheet import Stylesheet

    from interview.screens.help import HelpScreen

    styled: list[object] = []
    apply = Stylesheet.apply

    def noting(sheet: Stylesheet, node: object, **how: object) -> None:
        styled.append(node)
        apply(sheet, node, **how)

    monkeypatch.setattr(Stylesheet, "apply", noting)
    async with sit(sample("usual_us.yaml"), (100, 30)) as person:
        await person.settles()
        await person.press("f1")
        assert isinstance(person.app.screen, HelpScreen)
        assert styled.count(person.app.screen.query_one("#strip")) == 1


@pytest.mark.parametrize(("garden", "most"), [("usual_us.yaml", 18), ("finished_us.yaml", 27)])
async def test_a_page_turn_styles_only_what_changes(sit, sample, monkeypatch, garden, most) -> None:
    # To another field, and to rows that are laid out in another way.
    from textual.css.stylesheet import Stylesheet

    styled: list[object] = []
    apply = Stylesheet.apply

    def noting(sheet: Stylesheet, node: object, **how: object) -> None:
        styled.append(node)
        apply(sheet, node, **how)

    async with sit(sample(garden), (100, 30)) as person:
        await person.goes_to("garden_name")
        await person.settles()
        monkeypatch.setattr(Stylesheet, "apply", noting)
        await person.press("x", "enter")
        await person.settles()
        assert person.asked != "garden_name"
        assert 0 < len(styled) <= most


def test_no_work_beside_the_keys_is_described_by_what_it_is_given() -> None:
    # Textual would write all of it out, whole plans too, while a key waits.
    bare = []
    for path in sorted((ROOT / "interview" / "screens").glob("*.py")):
        for one in ast.walk(ast.parse(path.read_text())):
            if not isinstance(one, ast.FunctionDef) or len(one.args.args) < 2:
                continue
            for way in one.decorator_list:
                if isinstance(way, ast.Call) and ast.unparse(way.func) == "work":
                    told = [word.arg for word in way.keywords]
                    bare += [] if "description" in told else [f"{path.name}: {one.name}"]
    assert bare == []


def test_every_part_whose_style_hangs_on_how_the_page_is_laid_out_is_styled_with_it(subtests):
    sheet = (ROOT / "interview/screens/question.tcss").read_text()
    selectors = [one for rule in sheet.split("}") for one in rule.partition("{")[0].split(",")]
    for name, ids in LAID_OUT.items():
        with subtests.test(name):
            hanging = [one.split()[-1] for one in selectors if f".{name}" in one]
            parts = {re.sub(r"[.:](?!entry)\w+", "", one) for one in hanging}
            of_field = {".entry", "Line"} if name == "dense" else set()
            assert parts == {f"#{one}" for one in ids} | of_field


async def test_a_page_that_another_covers_is_left_alone(sit, sample, monkeypatch) -> None:
    # Textual would paint all of the page on top anew.
    from textual.css.query import NoMatches

    async with sit(sample("halfway_soak_test.yaml"), (100, 30)) as person:
        await person.settles()
        below, top = person.app.screen_stack[-2:]
        with pytest.raises(NoMatches):
            top.query_one("#testing")
        shown: list[object] = []
        monkeypatch.setattr(type(below), "show_saved", lambda page: shown.append(page))
        monkeypatch.setattr(type(top), "show_saved", lambda page: shown.append(page))
        person.app._show_saved()
        assert shown == [top]
        monkeypatch.setattr(type(below), "_words", lambda page, *_: shown.append(page))
        below.show_testing()
        assert shown == [top]
        await person.press("escape")
        person.app.screen.show_testing()
        assert below in shown


async def test_what_is_typed_while_a_garden_is_opened_is_left_out_and_told(
    tmp_path, clock, monkeypatch
) -> None:
    from textual import events

    from interview.screens.app import Door
    from interview.screens.question import QuestionScreen

    gate = threading.Event()
    door = Door(clock, "test")
    opened = door.open
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(door, "open", lambda *words: (gate.wait(20), opened(*words))[1])
    app = InterviewApp(door, "new.yaml")
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.pause()
        for key in ("O", "enter"):
            app._driver.process_message(events.Key(key, key if len(key) == 1 else None))
        await pilot.pause()
        gate.set()
        await app.workers.wait_for_complete()
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, QuestionScreen)
        assert door.opened.session.answers.texts == {}
        assert LEFT_OUT.split(".")[0] in app.screen.told
    door.saver.close(10)
    door.leave()


async def test_a_fault_while_a_garden_is_opened_ends_the_program(clock, tmp_path, monkeypatch):
    from interview.screens.app import Door

    monkeypatch.chdir(tmp_path)
    door = Door(clock, "test")

    def broken(*_: object) -> None:
        raise KeyError("secret of the garden")

    monkeypatch.setattr(door, "open", broken)
    app = InterviewApp(door, "new.yaml")
    with pytest.raises(KeyError):
        async with app.run_test() as pilot:
            for _ in range(20):
                await pilot.pause()
    assert isinstance(app._exception, KeyError)


async def test_the_style_sheet_is_read_once_before_the_first_page(clock, monkeypatch) -> None:
    from textual.css.stylesheet import Stylesheet

    from interview.screens.app import Door

    read: list[bool] = []
    reparse = Stylesheet.reparse
    monkeypatch.setattr(Stylesheet, "reparse", lambda self: (read.append(True), reparse(self))[1])
    monkeypatch.setattr(InterviewApp, "_begin", lambda self: None)
    app = InterviewApp(Door(clock, "test"))
    async with app.run_test() as pilot:
        await pilot.pause()
        assert read == []
        ground = app.screen.styles.background
        app.action_shade()
        await pilot.pause()
        assert read
        assert app.screen.styles.background != ground
