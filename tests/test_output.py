"""Pages written to a named file: whole, and over nothing but an earlier page."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from interview.__main__ import main
from interview.asking.statuses import UNREADABLE, UNWRITTEN

SAMPLE = Path(__file__).parents[1] / "sample_answers" / "usual_us.yaml"


@pytest.fixture
def answers(tmp_path: Path) -> Path:
    file = tmp_path / "g.yaml"
    file.write_bytes(SAMPLE.read_bytes())
    return file


@pytest.mark.parametrize("way", ["--sheet", "--plan", "--card", "--figures"])
def test_a_page_is_written_whole_and_again_over_itself(answers, tmp_path, capsys, way):
    place = tmp_path / "page"
    assert main([way, str(answers), "--output", str(place)]) == 0
    first = place.read_text(encoding="utf-8")
    assert len(first) > 1000 and capsys.readouterr().out == ""
    place.write_text(first[:400], encoding="utf-8")
    assert main([way, str(answers), "--output", str(place)]) == 0
    assert len(place.read_text(encoding="utf-8")) == len(first)
    assert {path.name for path in tmp_path.iterdir()} == {"g.yaml", "page"}


def test_nothing_of_the_answers_is_written_over(answers, tmp_path, capsys):
    other = tmp_path / "other.yaml"
    other.write_bytes(SAMPLE.read_bytes())
    (tmp_path / "letter.html").write_text("<!doctype html><p>mine</p>")
    link = tmp_path / "link.html"
    link.symlink_to(answers)
    before = {path: path.read_bytes() for path in tmp_path.iterdir() if path.is_file()}
    names = ("g.yaml", "g.yaml.bak", "other.yaml", "letter.html", "link.html", "no/x")
    for name in names:
        assert main(["--sheet", str(answers), "--output", str(tmp_path / name)]) == UNWRITTEN, name
        said = capsys.readouterr()
        assert said.out == "" and len(said.err.splitlines()) == 1, name
        assert said.err.startswith("rain-garden-interview: not written: ")
    assert {path: path.read_bytes() for path in tmp_path.iterdir() if path.is_file()} == before


def test_an_option_without_its_way_is_refused_in_one_sentence(answers, capsys):
    for words in (
        ["--working", "--card", str(answers)],
        ["--html", "--plan", str(answers)],
        ["--output", "x.html", str(answers)],
        ["--check", str(answers), "--output", "x.html"],
    ):
        assert main(words) == UNREADABLE
        assert "goes with" in capsys.readouterr().err


def test_the_plan_is_what_to_take_outside_and_the_working_loses_nothing(answers, capsys):
    assert main(["--plan", str(answers)]) == 0
    short = capsys.readouterr().out
    assert main(["--plan", "--working", str(answers)]) == 0
    whole = capsys.readouterr().out
    assert 200 < len(short.splitlines()) < 288 < 1000 < len(whole.splitlines())
    assert all(len(line) <= 76 for line in short.splitlines())

    def flat(text: str) -> str:
        return " ".join(text.split())

    # Findings and plants stand in the short sheet in fewer words.
    told_shorter = ("WHAT WAS FOUND", "PLANTS")
    for title, lines in headed(short).items():
        assert title in headed(whole)
        if title not in told_shorter:
            for line in lines[:-5] if title == "NOTES" else lines:
                assert flat(line) in flat(whole), line


def headed(text: str) -> dict[str, list[str]]:
    """Return the lines under each heading."""
    lines, found = text.splitlines(), dict[str, list[str]]()
    title = ""
    for line, under in zip(lines, [*lines[1:], ""], strict=True):
        run_on = re.fullmatch(r"([A-Z, ]+) -{20,}", line)
        if run_on or (line and set(under) == {"-"} and len(under) == len(line)):
            title = run_on[1] if run_on else line
            found[title] = []
        elif title and set(line) != {"-"}:
            found[title].append(line)
    return found
