"""What stands in a shared file, or in its name, reaches no output as a code for the terminal."""

from __future__ import annotations

import contextlib
import io
import os
import subprocess
import sys
import unicodedata
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from interview.__main__ import main
from interview.asking.statuses import UNREADABLE
from interview.garden.opening import Opened, open_session
from interview.plain import interview as plain

pytestmark = pytest.mark.usefixtures("compiled_once")
ROOT = Path(__file__).parents[1]
SAMPLE = ROOT / "sample_answers" / "finished_us.yaml"
WAYS = ("--check", "--plan", "--card", "--figures", "--table", "--diff")
FOLDED = ("--plan", "--card")
STEERS = ("Cc", "Cf", "Cs", "Zl", "Zp")
"""Unicode Standard, chapter 4, table 4-4: control, format, surrogate, line and paragraph separator.
"""
FORGED = "/home/me/g.yaml:1: No faults."
PIECES = st.sampled_from(
    ["\x1b[2J", "\x9b1m", "\r", f"\n{FORGED}\n", f"\r{FORGED}\r", "\u202e", "\u2067", "\u200f",
     "\u2028", "\x85", "\ufeff", "\U000e0041", "\u3164", "\udcff", "\n", "a", "é", " "]
) | st.characters()  # fmt: skip
WORDS = st.lists(PIECES, min_size=1, max_size=6).map("".join)


def allowed(one: str) -> bool:
    """Tell whether an answers file that can be opened may hold the character, written out."""
    number = ord(one)
    nothing = 0xFDD0 <= number <= 0xFDEF or number & 0xFFFE == 0xFFFE
    return not nothing and (one in "\t\n\r\x85" or unicodedata.category(one) not in ("Cc", "Cs"))


IN_ANSWERS = WORDS.map(lambda text: "".join(filter(allowed, text))).filter(str.strip)
IN_NAMES = WORDS.map(
    lambda text: "".join(one for one in text if one not in "\0/" and not "\ud800" <= one < "\udc80")
).map(lambda text: text[:40].encode("utf-8", "replace").decode("utf-8"))


def steers(text: str) -> list[str]:
    return [c for c in text if unicodedata.category(c) in STEERS and c not in "\n\u200d"]


def hostile(words: list[str]) -> dict[str, Any]:
    """Return the answers of the sample with ``words`` wherever its maker may write freely."""
    tree = yaml.load(SAMPLE.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    end = tree.pop("end_of_answers")
    tree["start"] |= {"garden_name": words[0], words[1]: words[2], "rain_record": "rain.csv",
                      "has_rain_record": "yes", "rain_record_unit": "in"}  # fmt: skip
    tree["review"]["notes"] = words[2]
    tree["plants"] |= {"own_plants": "plants.csv", "favourites": [words[3]]}
    for section, group, key in (
        ("survey", "surfaces", "surface_name"), ("site", "spots", "spot_name"),
        ("soak", "holes", "hole_name"),
    ):  # fmt: skip
        tree[section][group][0][key] = words[3]
    tree |= {words[4]: {words[1]: "x"}, "half_typed": {"units": words[2], words[0]: [{"a": "b"}]}}
    return {**tree, "end_of_answers": end}


def quoted(text: str) -> str:
    """Return a text in the double quotes of YAML 1.2, 5.7, all but plain ASCII as escapes."""
    safe = (c if " " <= c <= "~" and c not in '"\\' else f"\\U{ord(c):08X}" for c in text)
    return '"' + "".join(safe) + '"'


def written(node: Any, indent: str = "") -> str:
    """Return a tree of texts as a file that holds each key on a line of its own."""
    if isinstance(node, str):
        return f" {quoted(node)}\n"
    if isinstance(node, list):
        return "\n" + "".join(f"{indent}-{written(one, indent + '  ')}" for one in node)
    lines = (f"{indent}{quoted(key)}:{written(one, indent + '  ')}" for key, one in node.items())
    return "\n" + "".join(lines)


@settings(max_examples=12, phases=[Phase.explicit, Phase.generate])
@given(st.lists(IN_ANSWERS, min_size=5, max_size=5, unique=True), IN_NAMES, WORDS)
def test_no_text_of_a_file_steers_the_terminal_or_forges_a_line(
    tmp_path_factory, words, name, cell
):
    file = tmp_path_factory.mktemp("g") / f"g{name}.yaml"
    file.write_text(written(hostile(words)))
    for beside, head in (("rain.csv", "date,rain"), ("plants.csv", "scientific_name,common_name")):
        cells = f"{head}\n2020-01-01,0.2\n{cell},{cell}\n2020-01-02,{cell}\n"
        (file.parent / beside).write_bytes(cells.encode("utf-8", "surrogateescape"))
    for way in WAYS:
        out, err = io.StringIO(), io.StringIO()
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            beside = [str(SAMPLE)] if way == "--diff" else []
            assert main([way, str(file), *beside]) in (0, 1)
        said = out.getvalue() + err.getvalue()
        assert said and steers(said) == []
        assert way not in FOLDED or max(map(len, out.getvalue().splitlines())) <= 76
        assert way != "--table" or len(out.getvalue().splitlines()) == 2
        assert not any(line.startswith(FORGED[:16]) for line in said.splitlines())


@pytest.mark.parametrize("name", ["g\x1b[2J\u202e.yaml", "g\udcff.yaml", "a\nTo go on: rm.yaml"])
def test_the_command_to_go_on_works_whatever_the_file_is_called(tmp_path, name):
    line = [sys.executable, "-m", "interview", "--plain", name]
    told = dict(cwd=tmp_path, env={**os.environ, "PYTHONPATH": str(ROOT)}, capture_output=True)
    first = subprocess.run(line, input=b"Maple\n:quit\n", check=True, **told)
    said = first.stdout.decode()
    assert steers(said) == []
    (command,) = (line for line in said.splitlines() if line.startswith("To go on: "))
    words = ["sh", "-c", command.removeprefix("To go on: ")]
    again = subprocess.run(words, input=b":answers\n:quit\n", check=True, **told)
    assert "garden_name: Maple" in again.stdout.decode()
    assert [one.name for one in tmp_path.glob("*.yaml")] == [name]


def test_names_of_files_that_are_not_there_are_told_harmlessly(capsys):
    assert main(["--plan", "a.yaml", "b\x1b[2J\u202e.yaml"]) == UNREADABLE
    err = capsys.readouterr().err
    assert "b<U+001B>[2J<U+202E>.yaml" in err and steers(err) == []


def test_the_plain_lines_show_what_a_shared_file_holds_harmlessly(tmp_path, clock):
    file = tmp_path / "g.yaml"
    tree = hostile(["a\nb", f"x\n{FORGED}", f"us\r{FORGED}\u202e", "roof\u2028", "stage\u2067"])
    tree["half_typed"]["notes"] = f"\r{FORGED}\u202e"
    file.write_text(written(tree))
    opened = open_session(str(file), clock, "test")
    assert isinstance(opened, Opened)
    heard: list[str] = list(opened.notices)
    lines = [":go units", ":answers", ":list", ":go notes", ":plan", ":card"]
    with opened.lock:
        plain.run(opened.session, lambda _: lines.pop(0) if lines else ":quit", heard.append)
    assert "half typed before" in "".join(heard)
    assert steers("\n".join(heard)) == []
    assert not any(one.startswith(FORGED) for said in heard for one in said.splitlines())
