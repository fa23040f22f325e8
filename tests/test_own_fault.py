"""A error in the program itself: the part says so in its place, the rest is given."""

from __future__ import annotations

import io
import json
import re
from itertools import pairwise
from pathlib import Path

import pytest
import yaml
from jsonschema import Draft202012Validator

from interview.__main__ import main
from interview.asking import own_fault, route
from interview.asking.kinds import Note
from interview.asking.long_work import LetGo
from interview.asking.statuses import CRASHED
from interview.garden import checks, figures, session
from interview.garden.checks import Checks
from interview.garden.earth.results import EarthResults
from interview.garden.plan import Plan
from interview.garden.planting.results import PlantingResults
from interview.garden.site.results import SiteResults
from interview.garden.size.results import SizeResults
from interview.garden.soak.results import SoakResults
from interview.garden.store import load
from interview.garden.storms.results import StormsResults
from interview.garden.survey.results import SurveyResults
from interview.plain.commands import HELP
from interview.plain.streams import NotSaid
from interview.quantities.evidence import Grade
from interview.screens import shelf
from interview.sheet import card, check, worksheet
from interview.sheet.figures_file import figures_text, schema_text
from interview.sheet.report import plan_text

SAMPLE = Path(__file__).parents[1] / "sample_answers" / "finished_us.yaml"


@pytest.fixture(autouse=True)
def faults_are_told(faults_come_out, monkeypatch):
    """Treat a fault as it is treated for a person."""
    monkeypatch.setattr(own_fault, "PASSED_ON", (LetGo, BrokenPipeError))


def broken(*_):
    raise KeyError("secret of the garden")


def sample() -> Plan:
    return Plan(route.in_force(load(SAMPLE)[0].answers))


def headings(text: str) -> list[str]:
    return [one for one, under in pairwise(text.splitlines()) if re.fullmatch("-+", under)]


PROPERTIES = [
    (SurveyResults, "catchment"),
    (SoakResults, "soil"),
    (EarthResults, "lie"),
    (PlantingResults, "chosen"),
    (Checks, "findings"),
    (SizeResults, "garden"),
    (SiteResults, "dig_gate"),
    (Checks, "spots"),
]


@pytest.mark.parametrize(("record", "name"), PROPERTIES)
def test_any_part_of_the_plan_may_fail_and_every_heading_still_stands(
    record, name, monkeypatch, capsys
):
    way = ["--plan", "--working", str(SAMPLE)]
    assert main(way) == 0
    whole = capsys.readouterr().out
    monkeypatch.setattr(record, name, property(broken))
    assert main(way) == CRASHED
    said = capsys.readouterr()
    missing = set(headings(whole)) - set(headings(said.out))
    assert missing <= {"WHERE GUIDES DISAGREE", "IF THE SOIL IS SLOW", "OPTIONS"}
    assert "Also looked at, no problems found:" in said.out or name == "findings"
    assert "A PART IS MISSING (an error in the program): " in said.out
    assert "(KeyError at test_own_fault.py line " in " ".join(said.out.split())
    assert "KeyError at test_own_fault.py line " in said.err and "Report the line above" in said.err
    assert "secret" not in said.out + said.err
    assert all(len(line) <= 76 for line in said.out.splitlines())


@pytest.mark.parametrize(("record", "name"), PROPERTIES)
def test_the_printed_sheet_gives_the_rest_too(record, name, monkeypatch, capsys):
    monkeypatch.setattr(record, name, property(broken))
    for way in (["--sheet", "--working"], ["--card", "--html"], ["--plan"]):
        assert main([*way, str(SAMPLE)]) == CRASHED
        said = capsys.readouterr().out
        assert "A PART IS MISSING (an error in the program)" in said
        assert "secret" not in said and "Maple corner" in said
        assert way != ["--sheet", "--working"] or "<h2>Take care</h2>" in said


@pytest.mark.parametrize(("record", "name"), PROPERTIES)
def test_the_card_and_the_figures_give_the_rest_too(record, name, monkeypatch, capsys):
    monkeypatch.setattr(record, name, property(broken))
    assert main(["--card", str(SAMPLE)]) == CRASHED
    page = capsys.readouterr().out.splitlines()
    assert page[1] == "A PART IS MISSING (an error in the program): do not dig or build by this."
    assert page[0].startswith("YARD CARD: Maple corner") and len(page) <= card.ROWS
    assert any("1 MAY I DIG?" in line for line in page) and any(
        "TAKE CARE" in line for line in page
    )
    assert main(["--figures", str(SAMPLE)]) == CRASHED
    tree = yaml.safe_load(capsys.readouterr().out)
    assert set(tree["figures"]) == {one.key for one in figures.FIGURES}
    assert tree["faults"] and all("KeyError at" in one["at"] for one in tree["faults"])
    assert sum(one.get("value") is not None for one in tree["figures"].values()) > 5
    schema = Draft202012Validator(json.loads(schema_text()))
    assert [one.message[:200] for one in schema.iter_errors(tree)] == []


def test_one_figure_at_fault_says_so_and_the_others_are_as_before(monkeypatch):
    plan = sample()
    before = yaml.safe_load(figures_text(plan))["figures"]
    one = figures.BY_KEY["pond_depth"]
    monkeypatch.setattr(
        figures,
        "FIGURES",
        tuple(
            figures.Figure(one.key, one.label, broken) if figure is one else figure
            for figure in figures.FIGURES
        ),
    )
    after = yaml.safe_load(figures_text(plan))["figures"]
    assert after["pond_depth"]["value"] is None
    assert "KeyError at test_own_fault.py" in after["pond_depth"]["fault"]
    del before["pond_depth"], after["pond_depth"]
    assert after == before


def test_a_safety_check_that_failed_is_a_stop_and_the_card_gives_no_measures(monkeypatch, capsys):
    monkeypatch.setattr(checks, "permission_findings", broken)
    main(["--card", str(SAMPLE)])
    page = capsys.readouterr().out
    assert "3 WHAT STOPS IT" in page and "PEG OUT" not in page
    assert sample().verdict is Grade.STOP


@pytest.mark.parametrize(
    ("broken_part", "kept"),
    [("_open", "set aside"), ("_aside", "open: ")],
)
def test_the_check_says_which_part_failed(broken_part, kept, monkeypatch, capsys, tmp_path):
    file = tmp_path / "g.yaml"
    head = "format: rain-garden-interview\nformat_version: '1.0'\nstart:\n"
    file.write_text(f"{head}  country: uk\n  state: vt\n  unitz: us\nend_of_answers: true\n")
    monkeypatch.setattr(check, broken_part, broken)
    assert main(["--check", str(file)]) == CRASHED
    said = capsys.readouterr()
    assert "start.unitz" in said.out and kept in said.out and "1 fault." in said.out
    assert "cannot be shown because of an error in the program (KeyError at" in said.out


def test_a_rain_file_that_meets_a_fault_is_no_clean_check(monkeypatch, capsys):
    monkeypatch.setattr(StormsResults, "record", property(broken))
    assert main(["--check", str(SAMPLE)]) == CRASHED
    said = capsys.readouterr()
    assert "The rainfall file cannot be shown" in said.out and "No faults." not in said.out


def test_the_worksheet_gives_the_other_questions(monkeypatch, capsys):
    real = worksheet._asked
    monkeypatch.setattr(
        worksheet,
        "_asked",
        lambda question: broken() if question.key == "units" else real(question),
    )
    assert main(["--questions"]) == CRASHED
    out = capsys.readouterr().out
    assert "The question units cannot be shown" in out and "\nrain_depth\n" in out


def test_an_answer_whose_reading_fails_needs_attention_and_the_rest_is_read(
    monkeypatch, capsys, tmp_path
):
    real = Note.take
    monkeypatch.setattr(Note, "take", lambda self, text, answers: broken() if text == "Maple corner"
                        else real(self, text, answers))  # fmt: skip
    assert main(["--check", str(SAMPLE)]) == CRASHED
    out = capsys.readouterr().out
    assert (
        ": start.garden_name: This could not be read because of an error in the program "
        "(KeyError at" in out
    )


FAULTY = ["offered", "shut", "find_out", "remark", "forward", "backward", "go_to", "read", "clear"]


@pytest.mark.parametrize("name", FAULTY)
def test_no_fault_ends_the_plain_interview(name, monkeypatch, session_of, talk):
    typed = ("Maple", ":how", ":back", ":go units", "us", ":clear", ":list", ":plan", ":help")
    all_typed, interview = [], session_of()
    with own_fault.noting() as faults:
        monkeypatch.setattr(session.Session, name, broken)
        heard, _, finished = talk(*typed, lambda: all_typed.append(True), session=interview)
    assert all_typed and not finished
    assert faults and "because of an error in the program (KeyError at test_own_fault.py" in heard
    assert "RAIN GARDEN PLAN" in heard and heard.count(HELP) == 1
    assert "secret" not in heard


def test_after_a_fault_the_plain_interview_goes_on_and_its_status_tells(
    monkeypatch, tmp_path, capsys
):
    monkeypatch.setattr(session.Session, "find_out", broken)
    monkeypatch.setattr("sys.stdin", io.StringIO("Maple\n:how\nus\nmn\nus\n"))
    file = tmp_path / "g.yaml"
    assert main(["--plain", str(file)]) == CRASHED
    said = capsys.readouterr()
    assert "Your answers are in" in said.out and "error in the program (KeyError" in said.err
    assert "garden_name: Maple" in file.read_text() and "units: us" in file.read_text()


def test_a_save_that_meets_a_fault_is_told_as_not_saved_and_tried_again(session_of, keeper):
    interview = session_of()
    real = keeper.keep
    keeper.keep = broken
    interview.offer(interview.step, "Maple")
    assert "error in the program (KeyError" in interview.not_kept
    keeper.keep = real
    assert interview.save() and interview.not_kept == ""
    assert keeper.saves[-1][0] == {"garden_name": "Maple"}


def test_nobody_left_to_hear_is_no_fault_of_the_program(monkeypatch):
    def gone(*_):
        raise NotSaid("The disk is full.")

    monkeypatch.setattr(EarthResults, "lie", property(gone))
    for page in (plan_text, card.card_text, figures_text):
        with pytest.raises(NotSaid):
            page(sample())


def test_the_start_page_stands_though_one_garden_meets_a_fault(monkeypatch, clock):
    monkeypatch.setattr(shelf, "due", broken)
    assert "KeyError" in shelf.summary(SAMPLE, clock()).due
