"""What each way of running loads: the plain ways never load the full screen."""

from __future__ import annotations

import ast
import json
import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

pytestmark = pytest.mark.usefixtures("compiled_once")
ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "interview"
MOST_LINES = 400
SAMPLE = ROOT / "sample_answers" / "finished_us.yaml"
TELL = (
    "import json, sys\n"
    "from interview.__main__ import main\n"
    "try:\n"
    "    main(sys.argv[1:])\n"
    "except SystemExit:\n"
    "    pass\n"
    "print(json.dumps(sorted(name.partition('.')[0] for name in sys.modules)), file=sys.stderr)\n"
    "print(json.dumps(sorted(sys.modules)), file=sys.stderr)\n"
)


def loaded_by(*words: str, folder: Path) -> set[str]:
    """Return the names of all modules loaded by one run of the program."""
    done = subprocess.run(
        [sys.executable, "-c", TELL, *words],
        input=":quit\n",
        capture_output=True,
        text=True,
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        timeout=60,
        check=False,
    )
    lines = done.stderr.strip().splitlines()
    return set(json.loads(lines[-1])) | set(json.loads(lines[-2]))


@pytest.mark.parametrize(
    "words",
    [
        ("--plain", "new.yaml"),
        ("--plan", str(SAMPLE)),
        ("--figures", str(SAMPLE)),
        ("--check", str(SAMPLE)),
        ("--questions",),
        ("--version",),
        ("--help",),
    ],
    ids=lambda words: words[0].strip("-"),
)
def test_a_plain_way_never_loads_the_full_screen(words, tmp_path):
    names = loaded_by(*words, folder=tmp_path)
    assert not names & {"textual", "rich"}
    assert not {name for name in names if name.startswith("interview.screens.")}


@pytest.mark.parametrize("word", ["--version", "--help"])
def test_asking_for_help_loads_no_units_and_no_yaml(word, tmp_path):
    assert not loaded_by(word, folder=tmp_path) & {"pint", "yaml"}


def test_the_figures_load_no_interview_and_no_picture(tmp_path):
    names = loaded_by("--figures", str(SAMPLE), folder=tmp_path)
    mine = {name.removeprefix("interview.") for name in names}
    assert not {name for name in mine if name.startswith(("drawing.", "plain.interview"))}
    assert mine.isdisjoint({"asking.walk", "garden.session", "garden.soak_due"})


def imported(path: Path) -> set[str]:
    """Return the first names of everything a file imports, wherever in the file."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Import):
            names |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            names.add(node.module.partition(".")[0])
    return names


def test_only_the_screens_know_the_terminal_one_file_pint_and_one_yaml():
    for path in sorted(p for p in PACKAGE.rglob("*.py") if "screens" not in p.parts):
        names = imported(path)
        assert not names & {"textual", "rich"}, path
        assert ("pint" in names) == (path == PACKAGE / "quantities" / "units.py"), path
        assert ("yaml" in names) == (path == PACKAGE / "answers_file" / "composing.py"), path


def test_every_data_class_is_a_record_which_takes_next_to_nothing_to_define():
    makers = {
        path.name
        for path in PACKAGE.rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.ImportFrom) and node.module == "dataclasses"
        if "dataclass" in [alias.name for alias in node.names]
    }
    assert makers == {"records.py"}


def test_the_front_door_holds_the_command_line_the_way_from_code_and_rooms_alone():
    front = {"__init__.py", "__main__.py"}
    assert {path.name for path in PACKAGE.glob("*.py")} == front


def test_a_class_name_stands_for_one_thing():
    places: dict[str, list[str]] = {}
    for path in PACKAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.ClassDef):
                places.setdefault(node.name, []).append(str(path.relative_to(PACKAGE)))
    assert {name: files for name, files in places.items() if len(files) > 1} == {}


def test_every_room_is_installed():
    told = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["setuptools"]
    rooms = {path.parent.relative_to(ROOT) for path in PACKAGE.rglob("__init__.py")}
    named = {".".join(room.parts) for room in rooms}
    # What is made of another folder holds no module.
    assert set(told["packages"]) - set(told["package-dir"]) == named


def test_no_module_is_longer_than_may_be_read_at_a_sitting():
    long = {path: len(path.read_text().splitlines()) for path in PACKAGE.rglob("*.py")}
    assert {path: lines for path, lines in long.items() if lines > MOST_LINES} == {}
