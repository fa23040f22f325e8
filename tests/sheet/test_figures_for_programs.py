"""The figures for another program: YAML, the same tree as JSON, and the schema of both.

Read by PyYAML's safe loader (YAML 1.1), by ruamel.yaml's in Python (YAML 1.2) and by Python's json;
the schema and what it is held against by jsonschema. None of them knows of this project.
"""

from __future__ import annotations

import copy
import json
import math
from pathlib import Path

import pytest
import yaml
from jsonschema import Draft202012Validator
from ruamel.yaml import YAML

from interview.__main__ import main
from interview.asking.statuses import UNREADABLE, written_by
from interview.garden import figures
from interview.garden.opening import plan_of
from interview.garden.store import load
from interview.plain.stand_ins import plain
from interview.sheet import figures_blocks
from interview.sheet.figures_file import figures_json, figures_text, figures_tree, schema_text

SAMPLES = Path(__file__).parents[2] / "sample_answers"
READABLE = sorted(path for path in SAMPLES.glob("*.yaml") if path.stem != "faulty_twice")
FIRST_KEYS = [
    "verdict", "units", "figures", "holes", "surfaces", "variance_shares", "walkers", "storms",
    "record_by_size", "record_by_year", "record_by_month", "planting", "guides_disagree",
    "findings", "assumed",
]  # fmt: skip
"""The blocks that version 0.1.0 wrote, in its order."""


@pytest.fixture(scope="module")
def schema() -> Draft202012Validator:
    return Draft202012Validator(json.loads(schema_text()))


@pytest.fixture(scope="module")
def finished():
    return plan_at(SAMPLES / "finished_us.yaml")


def plan_at(path: Path):
    import datetime as dt

    now = dt.datetime(2026, 5, 28, 12, tzinfo=dt.UTC)
    return plan_of(load(path)[0].answers, SAMPLES, now)


def wrong(schema: Draft202012Validator, tree: object) -> list[str]:
    return [f"{list(one.absolute_path)}: {one.message[:200]}" for one in schema.iter_errors(tree)]


def test_the_schema_is_one(schema):
    Draft202012Validator.check_schema(schema.schema)


@pytest.mark.parametrize("path", READABLE, ids=lambda path: path.stem)
def test_every_sample_fits_the_schema_and_says_the_same_in_both_forms(path, schema):
    plan = plan_at(path)
    text = figures_text(plan)
    as_yaml, as_json = yaml.safe_load(text), json.loads(figures_json(plan))
    assert YAML(typ="safe", pure=True).load(text) == as_yaml
    assert wrong(schema, as_yaml) == []
    assert wrong(schema, as_json) == []
    assert as_json == as_yaml
    assert list(as_json) == list(as_yaml) == list(figures_tree(plan))
    assert [key for key in as_yaml if key in FIRST_KEYS] == FIRST_KEYS
    assert list(as_yaml["figures"]) == [one.key for one in figures.FIGURES]


def test_what_does_not_fit_is_found(schema, finished):
    whole = figures_tree(finished)
    assert wrong(schema, json.loads(json.dumps(whole))) == []

    def spoiled(*path, value="gone"):
        tree = copy.deepcopy(json.loads(json.dumps(whole)))
        node = tree
        for key in path[:-1]:
            node = node[key]
        if value == "gone":
            del node[path[-1]]
        else:
            node[path[-1]] = value
        return wrong(schema, tree)

    for path, value in (
        (("day",), "gone"), (("verdict",), "fine"), (("garden", "name"), None),
        (("figures", "floor_area"), "gone"), (("figures", "floor_area", "source"), "gone"),
        (("figures", "floor_area", "value"), None), (("figures", "new_figure"), {}),
        (("holes", 0, "drop_rate"), "fast"), (("holes", 0, "intervals", 0, "valid"), "gone"),
        (("surfaces", 0, "plan"), None), (("planting", "zones", 0, "plants", 0, "count"), 1.5),
        (("shopping", 0, "order"), None), (("costs", "total"), "gone"), (("new_block",), []),
        (("findings", 0, "grade"), "bad"), (("plants", 0, "zones", 0), "pond"),
    ):  # fmt: skip
        assert spoiled(*path, value=value), path


def test_every_measure_of_a_table_has_its_unit(finished):
    tree = figures_tree(finished)
    pure = {
        "side_share", "deviation_of_last_three", "share", "coefficient", "usual_coefficient",
        "curve_number", "by_curve_number", "spread", "share_caught", "part", "share_held",
        "overflow_days", "overflow_days_a_year", "days", "year", "month", "count", "beds",
        "bloom_months",
    }  # fmt: skip

    def measures(node, key=""):
        if isinstance(node, dict):
            return {one for name, value in node.items() for one in measures(value, name)}
        if isinstance(node, list):
            return {one for value in node for one in measures(value, key)}
        # A quantity whose unit is told nowhere is left as it is.
        return set() if node is None or isinstance(node, (str, bool)) else {key}

    for block in figures_blocks.UNITS:
        assert measures(tree[block]) - pure == set(tree["columns"][block]), block


def test_the_units_of_the_tables_are_those_of_the_figures_beside_them(finished):
    # The same measure stands among the figures, with its own unit.
    tree = figures_tree(finished)
    for key, column in (("catchment_area", "drains_here"), ("weighted_area", "weighted")):
        area = tree["figures"][key]
        assert area["unit"] == tree["columns"]["surfaces"][column]
        together = sum(one[column] for one in tree["surfaces"])
        assert math.isclose(together, area["value"], rel_tol=1e-6)


def test_the_head_names_garden_day_format_and_program(finished):
    tree = yaml.safe_load(figures_text(finished, written_by()))
    assert tree["format"] == "rain-garden-figures"
    assert tree["written_by"] == written_by()
    assert tree["garden"] == {"name": "Maple corner", "country": "us", "state": "mn"}
    assert tree["day"] == "2026-05-28"


def test_plants_and_prices_add_up(finished):
    tree = figures_tree(finished)
    bought = {one["name"]: one for one in tree["shopping"]}
    assert sum(one["count"] for one in tree["plants"]) == bought["plants"]["order"]
    # mulch 38 per yd3, compost 6 and stone 5 a bag, plants 4 each, as the sample says
    assert bought["mulch"]["cost"] == 38 * bought["mulch"]["order"]
    assert bought["compost"]["cost"] == 6 * bought["compost"]["bags"]
    assert bought["stone"]["cost"] == 5 * bought["stone"]["bags"]
    assert bought["plants"]["cost"] == 4 * bought["plants"]["order"]
    costs = [one["cost"] for one in tree["shopping"] if one["cost"] is not None]
    assert tree["costs"]["total"] == sum(costs)
    assert tree["costs"]["without_price"] == ["elbow", "strap", "splash stone"]


def test_any_name_and_any_number_read_back_from_both(given):
    names = ('a "b" \\ c', "Café ╲ ½ 🙂", "yes", "- x: y #z", "1e3", "'a' # b")
    for name in names:
        plan = plan_at(SAMPLES / "halfway_soak_test.yaml").with_answers(
            given({"garden_name": name})
        )
        assert yaml.safe_load(figures_text(plan))["garden"]["name"] == name
        assert json.loads(figures_json(plan))["garden"]["name"] == name
        assert figures_json(plan).isascii()
        assert ("╲" in yaml.safe_load(plain(figures_text(plan)))["garden"]["name"]) == ("╲" in name)


def test_a_number_is_a_number_to_either_version_of_yaml():
    from interview.sheet.figures_file import _inline

    for number in (1e-5, 1.5e-7, 1e20, -2.5e-9, 3, 0.25, 12345678.0, math.inf):
        read = yaml.safe_load(_inline(number))
        assert isinstance(read, (int, float)) and math.isclose(read, number, rel_tol=1e-7), number


def test_any_name_is_a_key_to_either_version_of_yaml(finished, monkeypatch):
    names = {"on": 1, "No": 2, "null": 3, "a b": 4, "surfaces.1.share": 5, "1e3": 6, 'x": {': 7}
    monkeypatch.setattr(
        "interview.sheet.figures_file._PARTS",
        ((("variance_shares",), lambda plan: {"variance_shares": names}),),
    )
    assert yaml.safe_load(figures_text(finished))["variance_shares"] == names


def test_a_time_without_end_is_in_both(finished, monkeypatch):
    monkeypatch.setattr(
        "interview.sheet.figures_file._PARTS",
        ((("assumed",), lambda plan: {"assumed": {"x": math.inf}}),),
    )
    assert yaml.safe_load(figures_text(finished))["assumed"]["x"] == math.inf
    assert json.loads(figures_json(finished))["assumed"]["x"] == "inf"


def test_the_command_line_gives_json_and_the_schema_without_a_file(capsys, tmp_path):
    sample = str(SAMPLES / "halfway_soak_test.yaml")
    assert main(["--figures", "--schema"]) == 0
    printed = json.loads(capsys.readouterr().out)
    assert set(printed["properties"]["figures"]["properties"]) == set(figures.BY_KEY)
    kept = tmp_path / "schema.json"
    assert main(["--figures", "--schema", "--output", str(kept)]) == 0
    assert json.loads(kept.read_text(encoding="utf-8")) == printed
    assert main(["--figures", "--json", sample]) == 0
    tree = json.loads(capsys.readouterr().out)
    assert wrong(Draft202012Validator(printed), tree) == []
    page = tmp_path / "f.json"
    for _ in range(2):
        assert main(["--figures", "--json", sample, "--output", str(page)]) == 0
    assert json.loads(page.read_text()) == tree
    assert main(["--json", "--plan", sample]) == UNREADABLE
    assert "goes with --figures" in capsys.readouterr().err


def test_the_list_of_what_is_bought_holds_seed_by_weight_as_the_sheet_does(schema, finished):
    sown = {"plant_size": "seed", "berm_outside": "grass"}
    plan = finished.with_answers(finished.answers.with_texts({**finished.answers.texts, **sown}))
    tree = json.loads(figures_json(plan))
    assert wrong(schema, tree) == []
    rows = {one["name"]: one for one in tree["shopping"]}
    assert {"seed", "grass seed"} <= rows.keys()
    for name in ("seed", "grass seed"):
        most = tree["figures"][f"{name.replace(' ', '_')}_most"]
        assert rows[name]["unit"] == "lb" and rows[name]["pieces"] is None
        # 16 ounces to the pound: National Institute of Standards and Technology, Handbook 44.
        part = 16 if most["unit"] == "oz" else 1
        assert rows[name]["order"] == pytest.approx(most["value"] / part, rel=1e-6)
    assert set(tree["costs"]["without_price"]) <= rows.keys()
