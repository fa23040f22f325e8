"""What stands in for a character that an output cannot write."""

from __future__ import annotations

import html
import io
import os
import subprocess
import sys
import unicodedata
from pathlib import Path

import pytest
import yaml

from interview.__main__ import main
from interview.garden.opening import plan_of
from interview.garden.store import load
from interview.plain import streams
from interview.plain.stand_ins import STAND_INS, plain
from interview.quantities.units import unit_name
from interview.reading import read_area, read_volume
from interview.sheet.card import card_text
from interview.sheet.check import check_text
from interview.sheet.figures_file import figures_text
from interview.sheet.report import plan_text
from interview.sheet.worksheet import worksheet

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "sample_answers"
SAMPLE = SAMPLES / "usual_us.yaml"
SOUND = sorted(path for path in SAMPLES.glob("*.yaml") if not path.name.startswith("faulty_"))


def in_ascii(*words: str) -> str:
    """Return what the program writes to an output that takes ASCII alone."""
    done = subprocess.run(
        [sys.executable, "-m", "interview", *words],
        capture_output=True,
        cwd=ROOT,
        env={**os.environ, "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"},
        timeout=60,
        check=True,
    )
    assert done.stderr == b""
    return done.stdout.decode("ascii")


def test_a_unit_of_an_area_or_a_volume_is_written_as_it_is_read_back(subtests):
    for unit, read in (
        ("ft**2", read_area), ("m**2", read_area),
        ("ft**3", read_volume), ("yd**3", read_volume), ("m**3", read_volume),
    ):  # fmt: skip
        with subtests.test(unit=unit):
            shown = f"12 {unit_name(unit)}"
            assert not shown.isascii()
            assert plain(shown) == f"12 {unit.replace('**', '')}"
            assert read(plain(shown), None) == read(shown, None)
    assert plain("in² in³") == "in2 in3"


def test_fractions_signs_and_letters_have_plain_ones(subtests):
    for text, written in (
        ("9½ in", "9 1/2 in"), ("½ in", "1/2 in"), ("2 ⅜ in", "2 3/8 in"),
        ("3 × 4, ≥ 5, ≤ 6, 7–8 − 9", "3 x 4, >= 5, <= 6, 7-8 - 9"),
        ("45°", "45 deg"), ("95 °F", "95 degF"), ("12′ 9″", "12' 9''"),
        ("“Café” Straße… → naïve", "'Cafe' Strasse... > naive"), ("漢 🙂", "? ?"),
        ("\uff02 \uff3c", "? ?"), ("ﬁg", "fig"),
    ):  # fmt: skip
        with subtests.test(text=text):
            assert plain(text) == written


def test_no_stand_in_bends_a_quoted_text_and_none_of_a_drawing_moves_it():
    for one, written in STAND_INS.items():
        assert written.isascii() and written.isprintable() and not set(written) & set('",'), one
        assert "\\" not in written or one == "╲"
        drawn = unicodedata.name(one).startswith(("BOX", "BRAILLE")) or one in "░▒▓█▲▼●■✕↑↓←→‾≈·"
        assert len(written) == 1 or not drawn, one
    apart = [STAND_INS[one] for one in "═─╌·░▒▓█│"]
    assert len(set(apart)) == len(apart)


@pytest.mark.parametrize("path", SOUND, ids=lambda path: path.stem)
def test_every_character_of_every_output_has_a_stand_in(path, clock):
    loaded, _ = load(path)
    plan = plan_of(loaded.answers, SAMPLES, clock.now)
    texts = (plan_text(plan), card_text(plan), figures_text(plan), check_text("x", loaded))
    said = "".join((*texts, worksheet()))
    assert not said.isascii()
    assert {one for one in said if not one.isascii() and plain(one) == "?"} == set()
    wide = {line for line in plain(said).splitlines() if len(line) > 76}
    assert wide <= {plain(line) for line in said.splitlines() if len(line) > 76}


def test_an_ascii_output_says_square_feet_and_not_a_question_mark():
    said = in_ascii("--figures", str(SAMPLE))
    units = {one.get("unit") for one in yaml.safe_load(said)["figures"].values()}
    assert {"ft2", "ft3"} < units and "ft?" not in said


def test_a_page_of_html_keeps_every_character_by_its_number(capsys):
    main(["--sheet", str(SAMPLE)])
    whole = capsys.readouterr().out
    assert "▲" in whole and "²" in whole
    assert html.unescape(in_ascii("--sheet", str(SAMPLE))) == html.unescape(whole)


def test_an_encoding_that_has_a_character_writes_it():
    streams.mend()
    raw = io.BytesIO()
    stream = io.TextIOWrapper(raw, encoding="latin-1", errors=streams.STAND_INS)
    stream.write("12 ft², “½” ≥")
    stream.flush()
    assert raw.getvalue().decode("latin-1") == "12 ft², '½' >="
