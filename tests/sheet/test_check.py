"""The check of a file: faults by line, then what is open."""

from __future__ import annotations

import pytest

from interview import answers_file as af
from interview.__main__ import main
from interview.garden.stages import new_answers
from interview.garden.store import interpret
from interview.sheet import check
from interview.sheet.check import check_text

HEAD = "format: rain-garden-interview\nformat_version: '1.0'\n"


def checked(text: str, name: str = "g.yaml") -> list[str]:
    return check_text(name, interpret(af.parse((HEAD + text).encode()))).splitlines()


def test_a_sound_file_has_no_faults():
    lines = checked("start:\n  units: us\nend_of_answers: true\n")
    assert lines[:2] == ["No faults.", f"1 answers; {len(lines) - 2} questions open."] or (
        lines[0] == "No faults."
    )
    assert "  open: garden_name: Name of the garden (open; counts as My rain garden)" in lines
    assert not any("units" in line for line in lines)


def test_faults_come_first_by_line_with_a_near_name():
    lines = checked("start:\n  unitz: us\n  rain_depth: 9 in\nend_of_answers: true\n")
    assert lines[0].startswith("g.yaml:4: start.unitz: ")
    assert lines[0].endswith("Did you mean units?")
    assert lines[1].startswith("g.yaml:5: start.rain_depth: That is too large")
    assert lines[2] == "2 faults."


def test_one_fault_is_counted_in_the_singular():
    assert "1 fault." in checked("start:\n  rain_depth: 9 in\nend_of_answers: true\n")


def test_what_is_not_known_yet_is_open_and_said_so():
    lines = checked("start:\n  units: don't know yet\nend_of_answers: true\n")
    assert "  open: units: Units shown (don't know yet)" in lines


def test_what_does_not_apply_is_set_aside():
    lines = checked("start:\n  country: uk\n  state: vt\nend_of_answers: true\n")
    assert "  set aside: state: does not apply now" in lines


def test_a_file_cut_off_is_a_fault():
    assert any("end_of_answers" in line for line in checked("start:\n  units: us\n"))


def test_a_name_that_could_harm_a_terminal_is_shown_safely():
    lines = checked("start:\n  rain_depth: 9 in\nend_of_answers: true\n", "a\x1b[2Jb.yaml")
    assert "\x1b" not in "\n".join(lines)


def test_a_stage_written_as_words_is_told(tmp_path):
    lines = checked("start: us\nend_of_answers: true\n")
    assert lines[0].startswith("g.yaml:3: start: ")


@pytest.mark.parametrize(
    ("rain", "said"),
    [
        (b"", "rain.csv: "),
        (b"\x00\x01\xff\xfe", "rain.csv: "),
        (None, "rain.csv: "),
        (b"date,rain_in\n2024-01-01,0.2\n2024-01-02,wet\n", "rain.csv:3: "),
    ],
)
def test_the_faults_of_a_rainfall_file_count_as_faults(tmp_path, capsys, rain, said):
    file = tmp_path / "g.yaml"
    file.write_text(
        f'{HEAD}start:\n  has_rain_record: "yes"\n  rain_record: rain.csv\n'
        "  rain_record_unit: in\nend_of_answers: true\n"
    )
    if rain is not None:
        (tmp_path / "rain.csv").write_bytes(rain)
    assert main(["--check", str(file)]) == 1
    found = capsys.readouterr().out.splitlines()
    assert found[0].startswith(said) and len(found[0]) > len(said) + 10
    assert "1 fault." in found


def test_a_good_rainfall_file_is_no_fault(tmp_path, capsys):
    file = tmp_path / "g.yaml"
    file.write_text(
        f'{HEAD}start:\n  has_rain_record: "yes"\n  rain_record: rain.csv\n'
        "  rain_record_unit: in\nend_of_answers: true\n"
    )
    (tmp_path / "rain.csv").write_text("date,rain_in\n2024-01-01,0.2\n2024-01-02,0\n")
    assert main(["--check", str(file)]) == 0
    assert "No faults." in capsys.readouterr().out


def test_one_answer_is_told_as_one():
    assert check._open(new_answers({"units": "us"}))[0].startswith("1 answer; ")
