"""A list in a file written as a list or as one text with commas: both mean the same."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml

from interview import answers_file as af
from interview.asking.kinds import Ticks
from interview.garden import store
from interview.garden.stages import QUESTIONS, every_question
from interview.sheet.figures_file import figures_text

SAMPLES = Path(__file__).parents[2] / "sample_answers"
FINISHED = sorted(SAMPLES.glob("finished_*.yaml"))
HEAD = "format: rain-garden-interview\nformat_version: '1.0'\n"
LISTS = {q.key for q in every_question() if q.kind.many}
TICKS = {q.key for q in every_question() if isinstance(q.kind, Ticks)}


def read(text: str) -> store.Loaded:
    return store.interpret(af.parse((HEAD + text + "end_of_answers: true\n").encode()))


def written_the_other_way(path: Path) -> tuple[str, set[str]]:
    """Return a sample with each list as one text and each text of several as a list, and which."""
    tree, met = yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader), set()

    def turned(node, key=""):
        if isinstance(node, dict):
            return {name: turned(value, name) for name, value in node.items()}
        if key in LISTS and isinstance(node, list):
            met.add(key)
            return ", ".join(node)
        if key in TICKS and isinstance(node, str):
            met.add(key)
            return re.split(r",\s*", node)
        return [turned(one) for one in node] if isinstance(node, list) else node

    return yaml.safe_dump(turned(tree), sort_keys=False, width=10_000), met


@pytest.mark.parametrize("path", FINISHED, ids=lambda path: path.stem)
def test_a_sample_with_its_lists_the_other_way_reads_the_same(path):
    text, met = written_the_other_way(path)
    turned, loaded = store.interpret(af.parse(text.encode())), store.load(path)[0]
    assert turned.troubles == []
    assert turned.answers.texts == loaded.answers.texts
    assert {"near_spot", "bloom", "readings", "pieces"} <= met


def test_every_kind_of_list_is_read_from_one_text_with_commas(subtests):
    walker = "survey:\n  walkers:\n    - pace_line: 50 ft\n      pace_counts: "
    surface = "survey:\n  surfaces:\n    - pieces: "
    sides = "triangle sides 14 ft, 12 ft, 7 ft"
    for body, address, lines in (
        ("site:\n  lines_holidays: ", "lines_holidays", ["2026-05-25", "2026-07-03"]),
        ("site:\n  lines_holidays: ", "lines_holidays", ["May 25, 2026", "July 3, 2026"]),
        (walker, "walkers.1.pace_counts", ["19", "20", "19.5"]),
        (surface, "surfaces.1.pieces", [sides, "less rectangle 2 ft by 3 ft"]),
        ("bed:\n  prices: ", "prices", ["mulch 38 per yd3", "plants 4 each"]),
        ("review:\n  floor_readings: ", "floor_readings", ["12 1/4 in", "12 3/8 in", "12 in"]),
        ("review:\n  floor_readings: ", "floor_readings", ["31,5 cm", "31,8 cm"]),
        ("plants:\n  favourites: ", "favourites", ["swamp milkweed", "blue flag"]),
        ("plants:\n  swap_out: ", "swap_out", ["blue flag for sweet flag", "a for b"]),
    ):
        with subtests.test(address=address, lines=lines):
            loaded = read(f"{body}{', '.join(lines)}\n")
            assert loaded.troubles == []
            assert loaded.answers.texts[address] == "\n".join(lines)


def test_a_list_in_brackets_may_hold_items_with_commas_of_their_own(subtests, tmp_path):
    pieces = "survey:\n  surfaces:\n    - pieces: "
    outline = "bed:\n  floor_outline: "
    sides = "triangle sides 14 ft, 12 ft, 7 ft"
    for body, address, items in (
        (pieces, "surfaces.1.pieces", [sides, "less rectangle 2 ft by 3 ft"]),
        (pieces, "surfaces.1.pieces", ["rectangle 24 ft by 13 ft", "offsets 3 ft, 0, 4 ft, 6 ft"]),
        (pieces, "surfaces.1.pieces", ["rectangle 9 ft by 4 ft at 3 ft, 2 ft", sides]),
        (outline, "floor_outline", ["0, 0, 0", "4 ft, 3 ft, 2 ft", "9, 0, 0"]),
    ):
        with subtests.test(items=items):
            line = f"{body}[{', '.join(items)}]\n"
            loaded = read(line)
            assert loaded.troubles == []
            assert loaded.answers.texts[address] == "\n".join(items)
            path = tmp_path / "g.yaml"
            path.write_text(f"{HEAD}{line}end_of_answers: true\n")
            loaded, mark = store.load(path)
            keeper = store.FileKeeper(path, "test", loaded, mark)
            keeper.keep(loaded.answers.with_text("notes", "more"), "")
            assert line in path.read_text()
    cut_short = read(f"{pieces}[triangle sides 14 ft, 12 ft]\n")
    assert cut_short.answers.texts["surfaces.1.pieces"] == "triangle sides 14 ft\n12 ft"
    assert "needs 3 lengths" in cut_short.troubles[0].sentence


def test_an_item_that_holds_commas_may_be_a_list_itself():
    loaded = read(
        "bed:\n  floor_outline:\n    - [0, 0, 0]\n    - [4 ft, 3 ft, 2 ft]\n    - [9, 0, 0]\n"
    )
    assert loaded.troubles == []
    assert loaded.answers.texts["floor_outline"] == "0, 0, 0\n4 ft, 3 ft, 2 ft\n9, 0, 0"


def test_a_name_with_a_comma_stays_whole_within_a_list():
    loaded = read("plants:\n  favourites:\n    - Aster, white\n    - blue flag\n")
    assert loaded.answers.texts["favourites"] == "Aster, white\nblue flag"


def test_a_comma_without_a_space_may_be_a_decimal_one_and_parts_nothing():
    loaded = read("review:\n  floor_readings: 3,5,4,5\n")
    assert [one.key for one in loaded.troubles] == ["review.floor_readings"]
    assert loaded.answers.get(QUESTIONS["floor_readings"]) is None


def test_options_are_listed_by_id_and_by_label():
    for listed in (
        "[slab, tree]",
        '["a building on a slab, with no basement", tree]',
        "[a building on a slab, with no basement, tree]",
    ):
        loaded = read(f"site:\n  spots:\n    - near_spot: {listed}\n")
        assert loaded.troubles == []
        view = loaded.answers.at("spots", 1)
        assert view[QUESTIONS["near_spot"]] == ("slab", "tree")


def test_an_empty_list_is_never_taken_for_none():
    loaded = read("site:\n  spots:\n    - near_spot: []\n")
    assert loaded.answers.texts == {}
    assert [one.key for one in loaded.troubles] == ["site.spots.1.near_spot"]
    assert "Write none" in loaded.troubles[0].sentence


def test_one_answer_may_stand_alone_in_a_list_and_two_may_not():
    loaded = read("start:\n  units: [metric]\n  state: [oh, mn]\n")
    assert loaded.answers.texts == {"units": "metric"}
    assert [one.key for one in loaded.troubles] == ["start.state"]


BY_HAND = """\
site:
  lines_holidays: 2026-05-25, 2026-07-03
  spots:
    - near_spot: [basement, tree]
plants:
  favourites: swamp milkweed, blue flag
"""


def test_a_list_by_hand_stays_as_it_is_when_another_answer_is_kept(tmp_path):
    path = tmp_path / "g.yaml"
    path.write_text(f"{HEAD}{BY_HAND}end_of_answers: true\n")
    loaded, mark = store.load(path)
    keeper = store.FileKeeper(path, "test", loaded, mark)
    keeper.keep(loaded.answers.with_text("notes", "more"), "")
    for line in BY_HAND.splitlines():
        assert line in path.read_text().splitlines()
    again, _ = store.load(path)
    assert again.answers.texts == {**loaded.answers.texts, "notes": "more"}
    keeper.keep(again.answers.with_text("lines_holidays", "2026-05-25"), "")
    assert store.load(path)[0].answers.texts["lines_holidays"] == "2026-05-25"


def test_the_figures_are_those_of_the_list_written_the_usual_way(clock):
    from interview.garden.opening import plan_of

    text, _ = written_the_other_way(FINISHED[1])
    plans = [
        plan_of(loaded.answers, SAMPLES, clock.now)
        for loaded in (store.interpret(af.parse(text.encode())), store.load(FINISHED[1])[0])
    ]
    assert figures_text(plans[0]) == figures_text(plans[1])
