"""The plan from code: the lines that are documented, and what they give."""

from __future__ import annotations

import datetime as dt
import textwrap
from pathlib import Path

import pandas
import pytest
import yaml

from interview.__main__ import main
from interview.plain import from_code as api

ROOT = Path(__file__).parents[2]
SET_IN = [line for line in api.__doc__.splitlines() if not line or line.startswith("    ")]
DOCUMENTED = textwrap.dedent("\n".join(SET_IN)).strip() + "\n"
DAY = dt.date(2026, 5, 28)


def test_the_documented_lines_run_and_are_the_same_in_both_places(monkeypatch, capsys):
    monkeypatch.chdir(ROOT)
    developers = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert DOCUMENTED in developers
    assert len([line for line in DOCUMENTED.splitlines() if " = " in line]) == 3
    names: dict[str, object] = {}
    exec(DOCUMENTED, names)
    main(["--figures", "sample_answers/finished_us.yaml"])
    told = yaml.safe_load(capsys.readouterr().out)["figures"]
    rows = names["rows"]
    assert set(rows) == set(told)
    for key, row in rows.items():
        value = told[key]["value"]
        near = pytest.approx(value, rel=1e-7) if isinstance(value, float) else value
        assert row.value == near and row.label == told[key]["label"], key
        assert row.waits_for == told[key].get("waits_for", "")
        assert row.unit == told[key].get("unit", "") or row.value is None, key


def test_they_make_a_table_in_pandas():
    garden = api.load(ROOT / "sample_answers" / "halfway_soak_test.yaml", today=DAY)
    frame = pandas.DataFrame(api.figures(garden.plan).values()).set_index("key")
    assert list(frame.columns) == ["label", "value", "unit", "waits_for"]
    assert frame.loc["pond_depth", ["value", "unit", "waits_for"]].to_list() == [6, "in", ""]
    assert frame.loc["pond_volume", "waits_for"] == "surfaces.1.surface_kind"


def test_the_day_decides_and_what_cannot_be_read_is_one_sentence(tmp_path):
    sample = ROOT / "sample_answers" / "usual_us.yaml"
    early, due = (api.load(sample, today=day).plan for day in (dt.date(2026, 5, 22), DAY))
    assert (early.now.date(), due.now.hour) == (dt.date(2026, 5, 22), 12)
    assert early.site.dig_gate.earliest == due.site.dig_gate.earliest == dt.date(2026, 5, 27)
    with pytest.raises(api.NotRead, match=r"There is no file .*nowhere\.yaml\."):
        api.load(tmp_path / "nowhere.yaml")
    faulty = api.load(ROOT / "sample_answers" / "faulty_spelling.yaml")
    assert [one.line for one in faulty.loaded.troubles] == sorted(
        one.line for one in faulty.loaded.troubles
    )
    assert len(faulty.loaded.troubles) == 4
