"""The check of a file: faults by line, then what is open."""

from __future__ import annotations

from interview import answers_file as af
from interview.check import check_text
from interview.store import interpret

HEAD = "format: rain-garden-interview\nformat_version: '1.0'\n"


def checked(text: str, name: str = "g.yaml") -> list[str]:
    return check_text(name, interpret(af.parse((HEAD + text).encode()))).splitlines()


def test_a_sound_file_has_no_faults():
    lines = checked("start:\n  units: us\nend_of_answers: true\n")
    assert lines[:2] == ["No faults.", f"1 answers; {len(lines) - 2} questions open."] or (
        lines[0] == "No faults."
    )
    assert "  open: garden_name: Name of the garden (open)" in lines
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
