"""A class of invented gardens in one run: reports one after another, each as it is alone."""

from __future__ import annotations

import csv
import io
import json
import os
import pty
import re
import signal
import subprocess
import sys
from collections.abc import Callable
from contextlib import chdir, suppress
from pathlib import Path

import pandas
import pytest
import yaml
from ruamel.yaml import YAML

from interview.__main__ import main
from interview.asking import own_fault
from interview.asking.long_work import LetGo
from interview.asking.statuses import (
    CLEAN,
    CRASHED,
    FAULTS,
    INTERRUPTED,
    UNREADABLE,
    UNWRITTEN,
)
from interview.garden import opening
from interview.garden.site.results import SiteResults
from interview.sheet import table

ROOT = Path(__file__).parents[1]
SAMPLES = ROOT / "sample_answers"
DAY = ("--today", "2026-05-28")
"""A day on which the marks of the samples are good."""


def garden(number: int) -> str:
    """Return an invented answers file: the rain it is to hold and the hole differ by number."""
    sample = "finished_metric" if number % 5 == 4 else "usual_us"
    text = (SAMPLES / f"{sample}.yaml").read_text(encoding="utf-8")
    rain = f"{15 + number} mm"
    for key, value in (
        ("garden_name", f"Yard {number} (invented)"),
        ("rain_depth", rain),
        ("has_rain_record", '"no"'),
    ):
        text, count = re.subn(rf"^  {key}: .*$", f"  {key}: {value}", text, flags=re.M)
        assert count == 1
    return text


@pytest.fixture(scope="module")
def class_of_thirty(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    folder = tmp_path_factory.mktemp("class")
    files = [folder / f"yard_{number:02}.yaml" for number in range(30)]
    for number, file in enumerate(files):
        file.write_text(garden(number), encoding="utf-8")
    files[7].write_bytes((SAMPLES / "halfway_soak_test.yaml").read_bytes())
    files[8].write_bytes((SAMPLES / "faulty_spelling.yaml").read_bytes())
    return files


@pytest.fixture
def told(capsys: pytest.CaptureFixture[str]) -> Callable[..., tuple[int, str, str]]:
    """Return a runner of the program: its exit status, its output, its errors."""

    def run(*words: str | Path) -> tuple[int, str, str]:
        status = main([str(word) for word in words])
        said = capsys.readouterr()
        return status, said.out, said.err

    return run


def test_the_check_of_a_class_is_that_of_each_file_under_its_name(told, class_of_thirty):
    status, out, err = told("--check", *class_of_thirty)
    assert status == FAULTS and err == ""
    parts = re.split(r"^(/\S+\.yaml)\n-+\n", out, flags=re.M)[1:]
    assert parts[::2] == [str(file) for file in class_of_thirty]
    for file, text in list(zip(class_of_thirty, parts[1::2], strict=True))[6:10]:
        assert text.removesuffix("\n").rstrip() == told("--check", file)[1].rstrip()


def test_the_figures_of_a_class_are_documents_that_name_their_file(told, class_of_thirty):
    status, out, _ = told("--figures", *DAY, *class_of_thirty[3:9])
    assert status == CLEAN
    documents = list(yaml.safe_load_all(out))
    assert list(YAML(typ="safe", pure=True).load_all(out)) == documents
    assert [one.pop("file") for one in documents] == [str(file) for file in class_of_thirty[3:9]]
    for file, document in zip(class_of_thirty[3:9], documents, strict=True):
        assert document == yaml.safe_load(told("--figures", *DAY, file)[1])


def test_the_figures_of_several_gardens_as_json_are_one_list(told, class_of_thirty):
    files = [class_of_thirty[1], class_of_thirty[0].with_name("nowhere.yaml"), class_of_thirty[7]]
    status, out, _ = told("--figures", "--json", *DAY, *files)
    trees = json.loads(out)
    assert status == UNREADABLE
    assert [tree.pop("file") for tree in trees] == [str(file) for file in files]
    assert trees[0] == json.loads(told("--figures", "--json", *DAY, files[0])[1])
    assert "no file" in trees[1]["unreadable"]


def test_the_table_of_a_class_agrees_with_the_figures_in_value_and_unit(told, class_of_thirty):
    keys = [key for key in table.USUAL if key in table.BY_KEY]
    assert len(keys) > 8
    status, out, _ = told("--table", *DAY, *class_of_thirty)
    assert status == CLEAN
    # pandas reads the file, as somebody with a spreadsheet would: a reader that is not ours.
    read = pandas.read_csv(io.StringIO(out), dtype=str, keep_default_na=False)
    assert [one.partition(" [")[0] for one in read.columns] == list(table.USUAL)
    assert list(read["file"]) == [str(file) for file in class_of_thirty]
    heads = dict(zip(table.USUAL, read.columns, strict=True))
    for row in (0, 7, 8, 13):
        tree = yaml.safe_load(told("--figures", *DAY, class_of_thirty[row])[1])
        assert read["verdict"][row] == tree["verdict"] and tree["units"] == "us"
        for key in keys:
            value, cell = tree["figures"][key]["value"], read[heads[key]][row]
            unit = tree["figures"][key].get("unit")
            assert heads[key] == (f"{key} [{unit}]" if unit else key) or value is None, key
            if isinstance(value, (int, float)):
                assert float(cell) == value, key
            else:
                assert cell == (value or ""), key
    assert list(read["open_questions"][7:9]) == ["53", "12"] and read["faults"][8] == "5"
    assert set(read["digging"]) == {"open", "shut"} and read["place"][4] == "United Kingdom"


def test_a_table_is_in_the_units_of_its_first_garden_for_all_of_them(told, class_of_thirty):
    metric, us = class_of_thirty[4], class_of_thirty[5]
    _, out, _ = told("--table", "--columns", "file,rain_held,pond_volume", metric, us)
    (head, first, second) = csv.reader(out.splitlines())
    assert head == ["file", "rain_held [mm]", "pond_volume [m³]"]
    own = yaml.safe_load(told("--figures", metric)[1])["figures"]
    other = yaml.safe_load(told("--figures", us)[1])["figures"]
    assert float(first[1]) == own["rain_held"]["value"]
    # NIST Special Publication 811 (2008), B.8: 25.4 mm to the inch, exactly.
    assert float(second[1]) == pytest.approx(other["rain_held"]["value"] * 25.4, rel=1e-7)
    assert other["pond_volume"]["unit"] == "ft³"
    assert float(second[2]) == pytest.approx(other["pond_volume"]["value"] * 0.3048**3)


@pytest.mark.parametrize("name", ["=1+1", "+1", "-1", "@SUM(A1)", " =1", "＝1+1"])
def test_no_name_is_a_formula_for_a_spreadsheet(told, tmp_path, name):
    # OWASP ASVS 5.0, requirement 1.2.10, read in a second copy: = + - @ are escaped with a single
    # quote where a cell begins with them; their full-width twins are from memory.
    file = tmp_path / "g.yaml"
    text = re.sub(r"(?m)^  garden_name: .*$", f'  garden_name: "{name}"', garden(0))
    file.write_text(text, encoding="utf-8")
    _, out, _ = told("--table", "--columns", "name,faults", file)
    assert list(csv.reader(out.splitlines()))[1] == [f"'{name.strip()}", "0"]


def test_names_with_commas_quotes_and_codes_stay_one_cell_of_one_line(told, tmp_path):
    file = tmp_path / 'a,"b\n=c.yaml'
    file.write_text(garden(0).replace("Yard 0 (invented)", '"A, \\"B\\", C"'), encoding="utf-8")
    _, out, _ = told("--table", "--columns", "file,name", file)
    assert len(out.splitlines()) == 2
    (cells,) = list(csv.reader(out.splitlines()))[1:]
    assert cells[0].endswith('a,"b<U+000A>=c.yaml') and cells[1] == 'A, "B", C'


def test_columns_are_asked_for_by_name_and_an_unknown_one_is_refused(told, class_of_thirty):
    _, out, _ = told("--table", "--columns", "pond_volume, name", class_of_thirty[0])
    assert out.startswith("pond_volume [ft³],name\n")
    status, out, err = told("--table", "--columns", "name,verdct", class_of_thirty[0])
    assert (status, out) == (UNREADABLE, "")
    assert 'no column "verdct"' in err and "Did you mean verdict?" in err
    assert told("--table", "--columns", "name,name", class_of_thirty[0])[0] == UNREADABLE
    assert told("--table", "--columns", "", class_of_thirty[0])[0] == UNREADABLE


def test_a_file_that_cannot_be_read_keeps_its_place_and_gives_the_status(told, class_of_thirty):
    nowhere, sound = class_of_thirty[0].with_name("nowhere.yaml"), class_of_thirty[1]
    status, out, err = told("--table", nowhere, sound)
    assert status == UNREADABLE and "nowhere.yaml" in err
    rows = list(csv.DictReader(out.splitlines()))
    assert [row["verdict"] for row in rows] == ["unreadable", "fix"]
    status, out, err = told("--figures", sound, nowhere, sound)
    assert status == UNREADABLE and err.count("\n") == 1
    assert ["unreadable" in one for one in yaml.safe_load_all(out)] == [False, True, False]
    assert told("--check", nowhere, sound)[0] == UNREADABLE
    status, out, _ = told("--table", "--columns", "file,verdict", nowhere, nowhere)
    assert (status, out) == (UNREADABLE, "file,verdict\n" + f"{nowhere},unreadable\n" * 2)


def piped(words: tuple[str, ...], typed: bytes, folder: Path) -> subprocess.CompletedProcess:
    return subprocess.run(
        [sys.executable, "-m", "interview", *words],
        input=typed,
        capture_output=True,
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        timeout=600,
        check=False,
    )


def test_the_standard_input_is_a_file_too(told, tmp_path):
    done = piped(("--figures", *DAY, "-"), garden(2).encode(), tmp_path)
    file = tmp_path / "g.yaml"
    file.write_text(garden(2), encoding="utf-8")
    assert (done.returncode, done.stderr) == (CLEAN, b"")
    assert done.stdout.decode() == told("--figures", *DAY, file)[1]
    done = piped(("--check", "-"), b"start: [us", tmp_path)
    assert (done.returncode, done.stdout) == (UNREADABLE, b"")
    assert done.stderr.startswith(b"rain-garden-interview: standard input: line ")


def test_plans_and_cards_of_several_gardens_begin_on_a_page_of_their_own(told, class_of_thirty):
    files = class_of_thirty[1:3]
    for way, title in (("--plan", "RAIN GARDEN PLAN: "), ("--card", "YARD CARD: ")):
        status, out, _ = told(way, *DAY, *files)
        assert status == CLEAN
        pages = out.split("\f")
        for file, page, number in zip(files, pages, (1, 2), strict=True):
            alone = told(way, *DAY, file)[1]
            assert alone.startswith(f"{title}Yard {number} (invented)")
            # A card that fills its page of 60 lines has no room for more.
            full = way == "--card" and alone.count("\n") > 58
            assert page == (alone if full else f"FILE: {file}\n\n{alone}")
            assert way == "--plan" or page.count("\n") <= 60


def test_with_output_each_of_several_gardens_has_a_file_in_the_folder(told, tmp_path):
    for folder in ("one", "two"):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / "g.yaml").write_text(garden(0), encoding="utf-8")
    files, place = [tmp_path / "one/g.yaml", tmp_path / "two/g.yaml"], tmp_path / "sheets"
    status, out, err = told("--sheet", *files)
    assert (status, out) == (UNREADABLE, "") and "--output" in err
    for _ in range(2):  # again over itself
        assert told("--sheet", *files, "--output", place) == (CLEAN, "", "")
    assert sorted(one.name for one in place.iterdir()) == ["g-2.html", "g.html"]
    assert "Yard 0 (invented)" in (place / "g.html").read_text(encoding="utf-8")
    assert told("--card", files[0], "--output", f"{place}/") == (CLEAN, "", "")
    assert (place / "g.card.txt").is_file()
    assert told("--plan", files[0], "--output", place) == (CLEAN, "", "")  # it is a folder
    assert (place / "g.plan.txt").is_file()
    status, _, err = told("--sheet", *files, "--output", files[0])
    assert status == UNWRITTEN and "is a file and no folder" in err
    assert files[0].read_text(encoding="utf-8") == garden(0)


def test_a_fault_of_the_program_in_one_garden_leaves_the_others(
    told, class_of_thirty, monkeypatch, faults_come_out
):
    monkeypatch.setattr(own_fault, "PASSED_ON", (LetGo, BrokenPipeError))
    real = SiteResults.__dict__["dig_gate"]

    def broken(record):
        if record.answers.texts["garden_name"].startswith("Yard 1 "):
            raise KeyError("secret of the garden")
        return real.__get__(record)

    monkeypatch.setattr(SiteResults, "dig_gate", property(broken))
    status, out, err = told("--table", "--columns", "name,earliest_dig_day", *class_of_thirty[:3])
    assert status == CRASHED and "secret" not in err
    assert [row[1] for row in csv.reader(out.splitlines())][1::2] == ["2026-05-27", "2026-05-27"]
    assert err.count(f"{class_of_thirty[1]}: error in the program (KeyError") == 1


def test_a_garden_that_cannot_be_planned_at_all_leaves_the_others(
    told, class_of_thirty, monkeypatch, faults_come_out
):
    monkeypatch.setattr(own_fault, "PASSED_ON", (LetGo, BrokenPipeError))
    real = opening.plan_of

    def broken(answers, *more):
        if answers.texts["garden_name"].startswith("Yard 1 "):
            raise KeyError("secret of the garden")
        return real(answers, *more)

    monkeypatch.setattr(opening, "plan_of", broken)
    status, out, err = told("--table", "--columns", "name,verdict", *class_of_thirty[:3])
    assert status == CRASHED and "secret" not in err
    assert [row[1] for row in csv.reader(out.splitlines())][1:] == ["fix", "unreadable", "fix"]


def test_a_class_costs_by_its_number_and_each_garden_no_more_than_alone(
    told, class_of_thirty, calls_of
):
    def table_of(*files: Path) -> int:
        return calls_of(lambda: told("--table", *files))

    one, other = class_of_thirty[10:12]
    table_of(one)
    assert table_of(one, other, one, other) < 2.1 * table_of(one, other)


COUNTED = (
    "import sys\n"
    "count = 0\n"
    "def heard(frame, event, what):\n"
    "    global count\n"
    "    count += event in ('call', 'c_call')\n"
    "sys.setprofile(heard)\n"
    "from interview.__main__ import main\n"
    "main(sys.argv[1:])\n"
    "sys.setprofile(None)\n"
    "print(count, file=sys.stderr)\n"
)


def test_twenty_gardens_take_under_a_third_of_a_process_each(
    compiled_once, class_of_thirty, tmp_path
):
    def calls(files: list[Path]) -> int:
        done = subprocess.run(
            [sys.executable, "-c", COUNTED, "--table", *map(str, files)],
            capture_output=True,
            text=True,
            cwd=tmp_path,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            timeout=600,
            check=True,
        )
        return int(done.stderr.split()[-1])

    assert calls(class_of_thirty[10:30]) < 20 * calls(class_of_thirty[10:11]) / 3


def test_how_far_a_long_run_is_stands_on_the_errors_each_hundred(told, tmp_path):
    file = tmp_path / "g.yaml"
    file.write_text(
        "format: rain-garden-interview\nformat_version: '1.0'\nstart:\n  garden_name: Yard\n"
        "end_of_answers: true\n"
    )
    status, out, err = told("--table", "--columns", "name", *[file] * 201)
    assert status == CLEAN and out == "name\n" + "Yard\n" * 201
    assert err.splitlines() == [
        f"rain-garden-interview: {done} of 201 files are done" for done in (100, 200)
    ]
    assert told("--table", "--columns", "name", *[file] * 100)[2] == ""


def test_on_a_terminal_one_line_tells_how_far_it_is_and_no_page_is_thrown(class_of_thirty):
    own, theirs = pty.openpty()
    with subprocess.Popen(
        [sys.executable, "-m", "interview", "--card", *class_of_thirty[:2]],
        stdin=subprocess.DEVNULL,
        stdout=theirs,
        stderr=theirs,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    ) as program:
        os.close(theirs)
        seen = b""
        with suppress(OSError):  # the end, as Linux tells it
            while piece := os.read(own, 65536):
                seen += piece
        os.close(own)
    assert program.returncode == CLEAN
    assert b"\r\x1b[K1 of 2\r\x1b[K" in seen and b"\r\x1b[K2 of 2\r\x1b[K" in seen
    assert seen.count(b"YARD CARD: ") == 2 and b"\f" not in seen


@pytest.mark.parametrize("name", ["SIGINT", "SIGTERM"])
def test_a_request_to_end_leaves_no_garden_half_reported_on(
    told, class_of_thirty, tmp_path, monkeypatch, name
):
    files, number, read = class_of_thirty[:3], getattr(signal, name), []
    sheets = tmp_path / "sheets"
    real = opening.read_garden

    def ended_in_the_second(file, *more):
        read.append(file)
        if len(read) == 2:
            signal.raise_signal(number)
        return real(file, *more)

    monkeypatch.setattr(opening, "read_garden", ended_in_the_second)
    said = "rain-garden-interview: stopped after 2 of 3 files; what is given of them is whole\n"
    for way, readings in (
        (("--table", "--columns", "name"), lambda out: out.splitlines()[1:]),
        (("--figures", "--json"), json.loads),
        (("--figures",), lambda out: list(yaml.safe_load_all(out))),
        (
            ("--sheet", "--output", sheets),
            lambda _: [*sheets.iterdir()],
        ),
    ):
        read.clear()
        status, out, err = told(*way, *files)
        assert (status, err) == (128 + number, said)
        assert len(readings(out)) == 2, way


def test_ctrl_c_ends_the_wait_for_the_standard_input(class_of_thirty):
    with subprocess.Popen(
        [
            sys.executable,
            "-m",
            "interview",
            "--table",
            "--columns",
            "name",
            class_of_thirty[0],
            "-",
        ],
        bufsize=0,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    ) as program:
        given = [program.stdout.readline() for _ in ("head", "first garden")]
        program.send_signal(signal.SIGINT)
        out, err = program.communicate(timeout=600)
    assert program.returncode == INTERRUPTED
    assert err == (
        b"rain-garden-interview: stopped after 1 of 2 files; what is given of them is whole\n"
    )
    assert (given, out) == ([b"name\n", b"Yard 0 (invented)\n"], b"")


def test_today_moves_gate_and_verdict_and_is_stored_nowhere(told, tmp_path):
    file = tmp_path / "g.yaml"
    file.write_text(garden(0), encoding="utf-8")
    digging = {}
    for day in ("2026-05-22", "2026-05-28", "2026-06-30"):
        _, out, _ = told("--table", "--columns", "digging", "--today", day, file)
        digging[day] = out.split()[1]
        plan = told("--plan", "--today", day, file)[1]
        assert f" {day} 12:00." in plan.splitlines()[2]
    assert digging == {"2026-05-22": "shut", "2026-05-28": "open", "2026-06-30": "shut"}
    assert file.read_text(encoding="utf-8") == garden(0)
    assert [one.name for one in tmp_path.iterdir()] == ["g.yaml"]
    status, out, err = told("--plan", "--today", "5/6/2026", file)
    assert (status, out) == (UNREADABLE, "") and "two things" in err
    assert told("--plan", "--today", "", file)[0] == UNREADABLE


@pytest.mark.parametrize("way", ["--check", "--figures", "--plan", "--card", "--sheet", "--table"])
def test_strict_ends_with_1_where_a_file_has_faults_or_a_plan_is_not_finished(
    told, class_of_thirty, way
):
    sound, halfway, faulty = class_of_thirty[0], class_of_thirty[7], class_of_thirty[8]
    assert told(way, sound)[0] == told(way, "--strict", sound)[0] == CLEAN
    assert told(way, halfway)[0] == CLEAN
    status, _, err = told(way, "--strict", halfway)
    assert status == FAULTS and "not finished: the plan waits for " in err
    assert told(way, faulty)[0] == (FAULTS if way == "--check" else CLEAN)
    assert told(way, "--strict", faulty)[0] == FAULTS


def test_a_rain_file_at_fault_is_a_fault_for_strict(told, tmp_path):
    file = tmp_path / "g.yaml"
    file.write_text(
        garden(0).replace('has_rain_record: "no"', 'has_rain_record: "yes"'), encoding="utf-8"
    )
    assert told("--plan", file)[0] == CLEAN
    assert told("--plan", "--strict", file)[0] == FAULTS


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--plain", "a.yaml", "b.yaml"), "one FILE at a time"),
        (("a.yaml", "b.yaml"), "one FILE at a time"),
        (("--plain", "-"), "- is none"),
        (("--check", "-", "-"), "once"),
        (("--diff", "a.yaml"), "two answers FILEs"),
        (("--diff", "a.yaml", "b.yaml", "c.yaml"), "two answers FILEs"),
        (("--card", "--html", "a.yaml", "b.yaml"), "--output"),
        (("--columns", "name", "--check", "a.yaml"), "goes with --table"),
        (("--today", "2026-05-28", "--plain", "a.yaml"), "go with a report"),
        (("--strict", "a.yaml"), "go with a report"),
        (("--table", "--output", "x.csv", "a.yaml"), "goes with"),
        (("--figures", "--schema", "--today", "2026-05-28"), "go with a report"),
        (("--figures", "--schema", "--strict"), "go with a report"),
        (("--blank", "--plants", "x.csv"), "goes with a garden"),
        (("--questions", "--plants", "x.csv"), "goes with a garden"),
    ],
)
def test_what_does_not_go_together_is_refused_in_one_sentence(told, words, said):
    status, out, err = told(*words)
    assert (status, out) == (UNREADABLE, "")
    assert said in err and len(err.splitlines()) == 1


def test_files_may_stand_on_both_sides_of_an_option(told, class_of_thirty):
    one, other = class_of_thirty[0], class_of_thirty[1]
    words = ("--table", one, "--columns", "name", "--", other)
    assert told(*words)[1] == "name\nYard 0 (invented)\nYard 1 (invented)\n"


def test_after_two_dashes_each_word_is_a_file_though_it_begin_with_a_dash(told, tmp_path):
    for name in ("-dash.yaml", "--plan", "b.yaml"):
        (tmp_path / name).write_text(garden(0), encoding="utf-8")
    with chdir(tmp_path):
        status, out, err = told(
            "--table", "b.yaml", "--columns", "file", "--", "-dash.yaml", "--plan"
        )
    assert (status, out, err) == (CLEAN, "file\nb.yaml\n'-dash.yaml\n'--plan\n", "")


def test_no_line_of_the_help_is_wider_than_a_terminal_of_80_columns(told, monkeypatch, capsys):
    monkeypatch.setenv("COLUMNS", "80")
    with pytest.raises(SystemExit):
        told("--help")
    assert [line for line in capsys.readouterr().out.splitlines() if len(line) > 80] == []
