"""The command line: its ways, its exit statuses, and where its words go."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
import yaml

from interview.__main__ import main
from interview.answers_file import Lock
from interview.asking.statuses import IN_USE, UNREADABLE

ROOT = Path(__file__).parents[1]
SAMPLE = ROOT / "sample_answers" / "finished_us.yaml"


def run(*words: str, folder: Path, typed: str = "", **env: str) -> subprocess.CompletedProcess:
    return subprocess.run(
        [sys.executable, "-m", "interview", *words],
        input=typed,
        capture_output=True,
        text=True,
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), **env},
        timeout=60,
        check=False,
    )


def test_a_plain_interview_is_kept_and_gone_on_with(tmp_path):
    first = run("--plain", "g.yaml", folder=tmp_path, typed="Maple corner\nus\nmn\nus\n:quit\n")
    assert first.returncode == 0
    assert "Your answers are in g.yaml." in first.stdout
    go_on = r"^To go on: .*(rain-garden-interview|-m interview) --plain g\.yaml$"
    assert re.search(go_on, first.stdout, re.M)
    assert "garden_name: Maple corner" in (tmp_path / "g.yaml").read_text()
    second = run("--plain", "g.yaml", folder=tmp_path, typed="roof\n1\n")
    assert "What brings the water?" in second.stdout
    assert "What do you call this garden?" not in second.stdout
    assert "surface_kind: roof" in (tmp_path / "g.yaml").read_text()


def test_what_is_left_at_the_end_is_not_looked_through(tmp_path):
    asked = (
        "import atexit, gc; atexit.register(lambda: print(gc.get_freeze_count() > 1000));"
        "from interview.__main__ import main; main(['--blank'])"
    )
    done = subprocess.run(
        [sys.executable, "-c", asked], capture_output=True, text=True, cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT)}, timeout=60, check=True,
    )  # fmt: skip
    assert done.stdout.endswith("end_of_answers: true\nTrue\n")


def test_the_plan_goes_to_the_output_and_faults_to_the_errors(tmp_path):
    file = tmp_path / "g.yaml"
    file.write_text(
        "format: rain-garden-interview\nformat_version: '1.0'\nstart:\n  units: feeet\n"
        "end_of_answers: true\n"
    )
    done = run("--plan", "g.yaml", folder=tmp_path)
    assert done.returncode == 0
    assert done.stdout.startswith("RAIN GARDEN PLAN: My rain garden")
    assert "line 4: start.units:" in done.stderr
    assert "feeet" not in done.stdout


def test_the_figures_are_yaml(tmp_path):
    done = run("--figures", str(SAMPLE), folder=tmp_path)
    assert done.returncode == 0
    assert yaml.safe_load(done.stdout)["figures"]["pond_depth"]["unit"] == "in"


def test_no_name_stands_twice_in_the_figures(tmp_path, capsys):
    assert main(["--figures", str(SAMPLE)]) == 0
    names = capsys.readouterr().out.split("\nassumed:\n")[1].splitlines()
    keys = [line.split(":")[0] for line in names]
    assert any(key.strip().startswith("surfaces.2.") for key in keys)
    assert len(keys) == len(set(keys))


@pytest.mark.parametrize(
    ("text", "status"),
    [
        ("start:\n  units: us\nend_of_answers: true\n", 0),
        ("start:\n  units: parsecs\nend_of_answers: true\n", 1),
        ("start:\n  units: [us\n", 2),
        ("", 2),
    ],
    ids=["sound", "faulty", "unreadable", "empty"],
)
def test_the_check_says_by_its_status_how_the_file_is(tmp_path, capsys, text, status):
    file = tmp_path / "g.yaml"
    head = "format: rain-garden-interview\nformat_version: '1.0'\n" if text else ""
    file.write_text(head + text)
    assert main(["--check", str(file)]) == status
    said = capsys.readouterr()
    assert (said.err == "") == (status < 2)
    assert str(file) in said.out + said.err or status == 0


def test_a_check_never_changes_the_file(tmp_path, capsys):
    file = tmp_path / "g.yaml"
    file.write_bytes(SAMPLE.read_bytes())
    before = file.stat().st_mtime_ns
    for way in ("--check", "--plan", "--figures"):
        main([way, str(file)])
    assert file.read_bytes() == SAMPLE.read_bytes()
    assert file.stat().st_mtime_ns == before
    assert [path.name for path in tmp_path.iterdir()] == ["g.yaml"]


@pytest.mark.parametrize("way", ["--check", "--plan", "--figures"])
@pytest.mark.parametrize("name", ["not_there.yaml", ".", "\x00"])
def test_a_file_that_is_not_there_is_refused_in_one_sentence(
    tmp_path, monkeypatch, capsys, way, name
):
    monkeypatch.chdir(tmp_path)
    assert main([way, name]) == UNREADABLE
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith("rain-garden-interview: ")
    assert len(said.err.splitlines()) == 1


@pytest.mark.parametrize("way", ["--check", "--plan", "--figures"])
def test_a_report_without_a_file_asks_for_one(capsys, way):
    assert main([way]) == UNREADABLE
    assert "name the answers FILE" in capsys.readouterr().err


def test_the_full_screen_wants_a_terminal(tmp_path):
    done = run("g.yaml", folder=tmp_path)
    assert done.returncode != 0
    assert "--plain" in done.stderr
    assert not (tmp_path / "g.yaml").exists()


def test_two_ways_at_once_are_refused(capsys):
    with pytest.raises(SystemExit) as left:
        main(["--plan", "--check", "x.yaml"])
    assert left.value.code == 2
    assert "not allowed with" in capsys.readouterr().err


def test_a_file_that_is_open_elsewhere_is_refused(tmp_path):
    file = tmp_path / "g.yaml"
    with Lock.take(file, since="2026-05-28 08:00"):
        done = run("--plain", "g.yaml", folder=tmp_path, typed="Maple corner\n")
    assert done.returncode == IN_USE
    assert not file.exists()


def test_a_reader_that_goes_away_ends_it_quietly(tmp_path):
    command = f"{sys.executable} -m interview --plan {SAMPLE} | head -n 1"
    done = subprocess.run(
        ["bash", "-o", "pipefail", "-c", command],
        capture_output=True,
        text=True,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        timeout=60,
        check=False,
    )
    assert done.stdout.startswith("RAIN GARDEN PLAN")
    assert "Traceback" not in done.stderr


def test_an_ascii_terminal_is_written_to_all_the_same(tmp_path):
    done = run("--plan", str(SAMPLE), folder=tmp_path, PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert done.returncode == 0
    assert done.stdout.isascii() and "ft?" not in done.stdout and "ft3" in done.stdout
    assert "Traceback" not in done.stderr


def test_the_worksheet_has_every_question(capsys):
    from interview.garden.stages import every_question

    assert main(["--questions"]) == 0
    sheet = capsys.readouterr().out
    for question in every_question():
        assert re.search(rf"^{question.key}\b", sheet, re.MULTILINE), question.key
    assert [line for line in sheet.splitlines() if len(line) > 76] == []


def test_the_version_is_one_line(capsys):
    with pytest.raises(SystemExit) as left:
        main(["--version"])
    assert left.value.code == 0
    assert re.fullmatch(r"rain-garden-interview \S.*\n", capsys.readouterr().out)


def test_the_worksheet_tells_the_path_in_order_and_which_questions_are_of_safety(capsys):
    from interview.garden.path import PATH, SAFETY

    main(["--questions"])
    sheet = capsys.readouterr().out
    keys = [key for page in PATH for key in page.keys]
    at = [re.search(rf"^{key}\b", sheet, re.MULTILINE).start() for key in keys]
    assert at == sorted(at)
    for key, start, end in zip(keys, at, [*at[1:], len(sheet)], strict=True):
        told = sheet[start:end]
        assert ("a safety question" in told) == (key in SAFETY), key
        assert "  asked: " in told
