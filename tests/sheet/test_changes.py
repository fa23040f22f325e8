"""Two gardens beside each other: the answers that differ, and only the figures that follow."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml

from interview.__main__ import main
from interview.asking.statuses import CLEAN, FAULTS, UNREADABLE

SAMPLES = Path(__file__).parents[2] / "sample_answers"
USUAL = (SAMPLES / "usual_us.yaml").read_text(encoding="utf-8")
LINE = re.compile(
    r"  (\w+): (.+): (.+?) -> (.+?)"
    r"(?: \(([+-][\d.e+-]+)(?: ([^,)]+))?(?:, (\S+) %)?\))?"
)


@pytest.fixture
def beside(tmp_path, capsys):
    """Return the changes that a change of the answers brings, and both trees of figures."""
    rain = SAMPLES / "invented_rain.csv"
    (tmp_path / rain.name).write_bytes(rain.read_bytes())

    def compare(old: str, new: str, text: str = USUAL):
        files = [tmp_path / "a.yaml", tmp_path / "b.yaml"]
        assert text.count(old) == 1
        for file, words in zip(files, (text, text.replace(old, new)), strict=True):
            file.write_text(words, encoding="utf-8")
        trees = []
        for file in files:
            main(["--figures", "--today", "2026-05-28", str(file)])
            trees.append(yaml.safe_load(capsys.readouterr().out))
        assert main(["--diff", "--today", "2026-05-28", *map(str, files)]) == CLEAN
        answers, _, figures = capsys.readouterr().out.partition("FIGURES\n")
        return answers.splitlines(), figures.splitlines(), trees

    return compare


@pytest.mark.parametrize(
    ("old", "new", "address"),
    [
        ("rain_depth: 1 in", "rain_depth: 30 mm", "rain_depth"),
        ("tree_distance: 25 ft", "tree_distance: 24 ft", "spots.1.tree_distance"),
        ("deepest_pond: 6 in", "deepest_pond: 4 in", "deepest_pond"),
    ],
)
def test_one_answer_apart_names_that_answer_and_only_figures_that_changed(
    beside, old, new, address
):
    answers, figures, (before, after) = beside(old, new)
    assert answers == ["ANSWERS", f"  {address}: {old.split(': ')[1]} -> {new.split(': ')[1]}"]
    # Both gardens are worked out anew, each alone, and read by another YAML reader.
    told = {key: after["figures"][key]["value"] for key in after["figures"]}
    was = {key: before["figures"][key]["value"] for key in before["figures"]}
    wanted = [key for key in told if told[key] != was[key]]
    found = [LINE.fullmatch(line) for line in figures]
    assert [one[1] for one in found] == wanted
    assert bool(wanted) == (address != "spots.1.tree_distance")
    for one in found:
        key = one[1]
        assert one[2] == before["figures"][key]["label"]
        unit = before["figures"][key].get("unit")
        for value, words in ((was[key], one[3]), (told[key], one[4])):
            if isinstance(value, str):
                assert words == value
                continue
            number, _, named = words.partition(" ")
            assert float(number) == value and named == (unit or "")
        if isinstance(was[key], (int, float)) and isinstance(told[key], (int, float)):
            step = told[key] - was[key]
            assert float(one[5]) == pytest.approx(step, rel=0.006, abs=1e-9), key
            assert (one[6] or "") == ("points" if unit == "%" else unit or ""), key
            if one[7]:
                assert float(one[7]) == pytest.approx(100 * step / abs(was[key]), rel=0.006), key


def test_a_figure_that_waits_says_for_what_and_the_verdict_is_told(beside):
    answers, figures, _ = beside("  tree_distance: 25 ft", "  tree_distance: 4 ft")
    assert answers[1] == "  spots.1.tree_distance: 25 ft -> 4 ft"
    assert figures == []
    _, figures, _ = beside("unstable_ground: none", "unstable_ground: slides")
    assert figures == ["  verdict: fix -> stop"]
    _, figures, _ = beside("slope_run: 15 ft", "slope_run: don't know yet")
    (line,) = (line for line in figures if line.startswith("  slope: "))
    assert line.endswith(" % -> waits for spots.1.slope_run")


def test_of_a_list_only_the_lines_that_differ_are_told(beside):
    line = "2026-05-28T12:00:00-05:00 left 4"
    answers, figures, _ = beside(f"{line} 1/8 in", f"{line} 1/4 in")
    assert answers == ["ANSWERS", "  holes.1.readings:", f"    - {line} 1/8 in",
                       f"    + {line} 1/4 in"]  # fmt: skip
    assert any(line.startswith("  corrected_rate: ") for line in figures)


def test_other_words_of_the_same_value_are_no_difference(tmp_path, capsys):
    before, after = (tmp_path / name for name in ("a.yaml", "b.yaml"))
    one = other = USUAL.replace("rain_depth: 1 in", "rain_depth: 1.2 in")
    for old, new in (
        ("rain_depth: 1.2 in", "rain_depth: 0.1 ft"),  # by floats 1.2000000000000002 in
        ("deepest_pond: 6 in", "deepest_pond: 6.00 in"),
        ("tree_distance: 25 ft", "tree_distance: 7.62 m"),
        ("units: us", "units: US"),
        ("basement, property_line, tree", "tree, basement, property_line"),
        ("floor_width: don't know yet", "floor_width: don't know"),
        ("left 4 1/8 in", "left 4.125 in"),
    ):
        assert one.count(old) == 1, old
        other = other.replace(old, new)
    before.write_text(one, encoding="utf-8")
    after.write_text(other, encoding="utf-8")
    assert main(["--diff", str(before), str(after)]) == CLEAN
    assert capsys.readouterr() == ("", "")


def test_of_a_list_a_line_in_other_words_is_not_told(beside):
    line = "2026-05-28T12:00:00-05:00 left 4"
    both = f"left 6 7/8 in{USUAL.partition('left 6 7/8 in')[2].partition('left 4 1/8 in')[0]}left 4"
    answers, figures, _ = beside(f"{both} 1/8 in", f"{both.replace('6 7/8', '6.875')} 1/4 in")
    assert answers == ["ANSWERS", "  holes.1.readings:", f"    - {line} 1/8 in",
                       f"    + {line} 1/4 in"]  # fmt: skip
    assert figures


def test_two_files_alike_say_nothing_and_an_unreadable_one_is_refused(tmp_path, capsys):
    sample, nowhere = str(SAMPLES / "usual_us.yaml"), str(tmp_path / "nowhere.yaml")
    assert main(["--diff", sample, sample]) == CLEAN
    assert capsys.readouterr() == ("", "")
    assert main(["--diff", sample, nowhere]) == UNREADABLE
    said = capsys.readouterr()
    assert said.out == "" and "There is no file" in said.err
    assert main(["--diff", "--strict", sample, str(SAMPLES / "not_here.yaml")]) == FAULTS
    assert "not finished" in capsys.readouterr().err


def test_a_list_by_lines_in_one_file_and_by_semicolons_in_the_other_is_one_answer(beside):
    lines = "pieces:\n        - rectangle 16 paces by 7 paces\n        - triangle 14 ft by 7 ft\n"
    words = "pieces: rectangle 16 paces by 7 paces; triangle 14 ft by 7 ft\n"
    rest = "        - less rectangle 2.5 ft by 4 ft\n"
    assert beside(lines, words, USUAL.replace(rest, ""))[:2] == ([], [])
