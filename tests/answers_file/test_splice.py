"""Editing a hand-edited answers file: the answer changes, everything else stays."""

from __future__ import annotations

import copy
import random
import re
from collections import Counter

import pytest

from interview.answers_file import CannotSplice, Unwritable, parse, render, same, splice, splicing

SAID = {
    "garden_name": "What do you call this garden?",
    "hole_width": "How wide is the hole?",
    "hole_depth": "How deep is the hole, from the grass down to its bottom, at the deepest place?"
    " Lay a stick across and measure down from that.",
    "readings": "What did you read?",
    "sun": "How many hours of sun?",
}
TEXT = """\
# Mine: keep this safe
format: rain-garden-interview
format_version: "1.2"
stopped_at: hole_depth

# about the start
start:
  # asked my neighbour about this
  # What do you call this garden?
  garden_name: 'Maple corner'   # she liked it
  # after the name
  units: us
  later_key: {a: [b, c], d: "e"}  # from a newer program
soak:   # two holes
  # before the holes
  holes:
    # the first hole
    - # How wide is the hole?
      hole_width: 8 in  # with the post-hole digger
      # inside the first hole
      readings:
      # the list starts
      - 2026-05-21T09:00:00-05:00 left 6 7/8 in
      # between the readings
      - "2026-05-21T10:00:00-05:00 left 6 in"  # kids bumped it
      # the list ends
    # the second hole
    - hole_width: 9 in
      note: |
        a block # not a comment
          of text
      roots: no   # few
  # after the holes
  ribbon: >-
    two
    inches
unknown_stage:
    deep:   {x: 1}
    list:
    - - a   # nested
      - b
# before the end
end_of_answers: true
# the last line
"""


def notes(path) -> str:
    return SAID.get(path[-1], "") if path else "Answers of a rain garden interview."


def all_comments(text: str) -> Counter[str]:
    found = re.findall(r"(?:^|\s)(#[^\r\n]*)", re.sub("# not a comment|a # b", "", text))
    return Counter(one.strip() for one in found)


def comments(text: str) -> Counter[str]:
    """Every comment that is not one of the program's own."""
    own = " ".join(SAID.values())
    found = all_comments(text)
    return Counter({one: n for one, n in found.items() if one.strip("# ") not in own})


def tree_of(text: str) -> dict:
    return parse(text.encode()).tree


def changed(**values) -> dict:
    tree = copy.deepcopy(tree_of(TEXT))
    tree["start"].update(values)
    return tree


def test_the_same_answers_leave_the_same_bytes():
    for end in ("\n", "\r\n", "\r"):
        text = TEXT.replace("\n", end)
        assert splice(text, tree_of(text), notes) == text
        assert splice(text.rstrip(), tree_of(text), notes) == text.rstrip()


def test_one_changed_answer_changes_one_line_and_keeps_its_quotes_and_comment():
    new = splice(TEXT, changed(garden_name="Oak corner"), notes)
    assert new == TEXT.replace("'Maple corner'", '"Oak corner"')
    new = splice(TEXT, changed(units="metric"), notes)
    assert new == TEXT.replace("units: us", "units: metric")


def test_line_ends_are_kept_in_changed_and_new_lines(subtests):
    for end in ["\n", "\r\n", "\r"]:
        with subtests.test(end=end):
            text = TEXT.replace("\n", end)
            new = splice(text, changed(garden_name="Oak", sun="6 h", units="us"), notes)
            assert new.replace(end, "") == splice(
                TEXT, changed(garden_name="Oak", sun="6 h"), notes
            ).replace("\n", "")
            assert splice(text.rstrip(end), changed(units="si"), notes).endswith("# the last line")


def test_an_unknown_stage_is_byte_identical_after_fifty_saves():
    text, stage = TEXT, TEXT[TEXT.index("unknown_stage") : TEXT.index("# before the end")]
    for number in range(50):
        text = splice(text, {**tree_of(text), "stopped_at": f"key {number}"}, notes)
        assert stage in text
    assert comments(text) == comments(TEXT)


def test_a_new_answer_goes_below_the_one_before_it_with_its_question():
    tree = tree_of(TEXT)
    tree["start"] = {
        "garden_name": "Maple corner", "sun": "6 h", "units": "us",
        "later_key": tree["start"]["later_key"],
    }  # fmt: skip
    new = splice(TEXT, tree, notes)
    line = "  garden_name: 'Maple corner'   # she liked it\n"
    assert new == TEXT.replace(line, line + "  # How many hours of sun?\n  sun: 6 h\n")


def test_an_order_of_keys_decides_before_the_order_of_the_tree():
    places = ["garden_name", "units", "sun", "later_key"]

    def order(path):
        return places.index(path[-1]) if path[-1] in places else 99

    new = splice(TEXT, changed(sun="6 h"), notes, order)
    assert "  units: us\n  # How many hours of sun?\n  sun: 6 h\n  later_key" in new


def test_a_new_stage_goes_before_the_end_marker():
    tree = {"plants": {"sun": "6 h"}, **tree_of(TEXT)}
    tree.pop("format"), tree.pop("format_version")
    new = splice("\n".join(TEXT.splitlines()[1:]), tree, notes)
    assert same(tree_of(new), {**tree, "format_version": "1.2"})
    assert new.index("plants:") < new.index("end_of_answers")


def test_a_missing_end_marker_is_put_last():
    text = TEXT.replace("end_of_answers: true\n", "")
    new = splice(text, tree_of(text), notes)
    assert parse(new.encode()).troubles[1:] == [] and "end_of_answers: true\n# before" in new


def test_keys_in_an_order_of_the_hand_stay_in_it():
    text = TEXT.replace("  units: us\n", "").replace("# about", "units2: x\n# about")
    assert splice(text, tree_of(text), notes) == text


def test_a_deleted_answer_takes_only_the_programs_own_comment_with_it():
    tree = changed()
    del tree["start"]["garden_name"]
    new = splice(TEXT, tree, notes)
    assert "What do you call this garden?" not in new and "garden_name" not in new
    assert "  # asked my neighbour about this\n  # she liked it\n  # after the name\n" in new
    assert comments(new) == comments(TEXT)


def test_the_programs_words_elsewhere_are_taken_for_the_persons_own():
    apart = TEXT.replace("  garden_name", "\n  garden_name")
    tree = changed()
    del tree["start"]["garden_name"]
    assert "  # What do you call this garden?\n\n" in splice(apart, tree, notes)


def test_an_edit_that_would_read_back_wrong_is_not_handed_out(monkeypatch):
    monkeypatch.setattr(splicing, "written", lambda text, quoted=False: "something else")
    with pytest.raises(CannotSplice):
        splice(TEXT, changed(units="metric"), notes)


def test_a_key_left_empty_by_hand_stays_and_can_be_filled():
    text = TEXT.replace("  units: us\n", "  units:  # ask Ann\n  sun: ~\n")
    tree = tree_of(text)
    del tree["start"]["units"], tree["start"]["sun"]
    assert splice(text, tree, notes) == text
    tree["start"].update(units="us", sun="6 h")
    assert "  units: us  # ask Ann\n  sun: 6 h\n" in splice(text, tree, notes)


def test_a_reading_is_added_at_the_end_of_its_list():
    tree = changed()
    tree["soak"]["holes"][0]["readings"].append("2026-05-21T11:00:00-05:00 left 5 in")
    new = splice(TEXT, tree, notes)
    bumped = "# kids bumped it\n"
    added = "      - 2026-05-21T11:00:00-05:00 left 5 in\n"
    assert new == TEXT.replace(bumped, bumped + added)


def test_comments_inside_a_list_survive_a_deletion_in_it():
    tree = changed()
    first = copy.deepcopy(tree)
    del first["soak"]["holes"][0]["readings"][0]
    line = "      - 2026-05-21T09:00:00-05:00 left 6 7/8 in\n"
    assert splice(TEXT, first, notes) == TEXT.replace(line, "")
    del tree["soak"]["holes"][0]["readings"][1]
    new = splice(TEXT, tree, notes)
    assert comments(new) == comments(TEXT) and "left 6 in" not in new
    tree["soak"]["holes"].pop(0)
    new = splice(new, tree, notes)
    assert comments(new) == comments(TEXT) and same(tree_of(new), tree)


def test_the_first_answer_of_an_item_can_go_and_come_back():
    tree = changed()
    del tree["soak"]["holes"][0]["hole_width"], tree["soak"]["holes"][1]["hole_width"]
    new = splice(TEXT, tree, notes)
    assert same(tree_of(new), tree) and comments(new) == comments(TEXT)
    tree["soak"]["holes"][0]["hole_width"] = "7 in"
    again = splice(new, tree, notes)
    assert same(tree_of(again), tree) and comments(again) == comments(TEXT)


def test_a_block_of_text_is_replaced_whole():
    tree = changed()
    tree["soak"]["holes"][1]["note"] = "short\nand # sweet"
    tree["soak"]["ribbon"] = "3 in"
    new = splice(TEXT, tree, notes)
    assert '      note: "short\\nand # sweet"\n      roots' in new
    assert "  ribbon: 3 in\nunknown_stage" in new


def test_a_value_may_become_a_list_and_a_list_a_value():
    tree = changed(units=["us", "metric"])
    tree["soak"]["holes"] = "none yet"
    new = splice(TEXT, tree, notes)
    assert same(tree_of(new), tree) and comments(new) == comments(TEXT)


def test_a_changed_value_in_braces_is_spliced_and_a_new_key_rewrites_only_that_key():
    tree = changed()
    tree["start"]["later_key"] = {"a": ["b", "c"], "d": "f"}
    assert splice(TEXT, tree, notes) == TEXT.replace('d: "e"', 'd: "f"')
    tree["start"]["later_key"]["g"] = "h"
    new = splice(TEXT, tree, notes)
    assert same(tree_of(new), tree) and comments(new) == comments(TEXT)


def test_a_file_all_in_braces_cannot_be_spliced_in_new_keys():
    text = (
        '{"format": "rain-garden-interview", "format_version": "1.0", "start": {"a": "b"}, '
        '"end_of_answers": "true"}'
    )
    tree = tree_of(text)
    tree["start"]["a"] = "c"
    assert splice(text, tree, notes) == text.replace('"b"', '"c"')
    tree["soak"] = {"x": "y"}
    with pytest.raises(CannotSplice):
        splice(text, tree, notes)
    with pytest.raises(CannotSplice):
        splice("- a\n", tree, notes)
    with pytest.raises(CannotSplice):
        splice("a: [\n", tree, notes)


def test_an_answer_no_file_can_keep_is_said_to_be_so():
    with pytest.raises(Unwritable):
        splice(TEXT, changed(units="\x1b"), notes)


WORDS = ["us", "8 in", "no", "a # b", "x: y", "", "12' 9\"", "\n", "é 🌧", "- a", "2026-05-21", "'"]


def leaf(chance: random.Random):
    return chance.choice(WORDS) or "z"


def shake(chance: random.Random, node, depth=0):
    """One random change somewhere in the tree."""
    if isinstance(node, list):
        match chance.randrange(4):
            case 0 if len(node) > 1:
                del node[chance.randrange(len(node))]
            case 1:
                fresh = leaf(chance) if not node or isinstance(node[0], str) else {
                    chance.choice(list(SAID)): leaf(chance)
                }  # fmt: skip
                node.insert(chance.randrange(len(node) + 1), fresh)
            case _ if node:
                at = chance.randrange(len(node))
                if isinstance(node[at], str):
                    node[at] = leaf(chance)
                else:
                    shake(chance, node[at], depth + 1)
        return
    key = chance.choice([*node, *SAID, "fresh"])
    value = node.get(key)
    if isinstance(value, dict | list) and value and chance.random() < 0.85:
        shake(chance, value, depth + 1)
    elif key in node and chance.random() < 0.25 and (depth or len(node) > 4):
        del node[key]
    elif key in node and isinstance(value, str):
        node[key] = leaf(chance)
    else:
        node[key] = [leaf(chance)] if chance.random() < 0.3 else leaf(chance)


def test_two_thousand_random_edits_read_back_and_keep_every_comment():
    chance = random.Random(11)
    done = 0
    for _ in range(100):
        text = TEXT if chance.random() < 0.8 else TEXT.replace("\n", "\r\n")
        for _ in range(20):
            tree = tree_of(text)
            frame = {k: tree.pop(k) for k in ("format", "format_version", "end_of_answers")}
            shake(chance, tree)
            wanted = {**frame, **tree}
            new = splice(text, wanted, notes)
            assert same(tree_of(new), wanted)
            assert comments(new) == comments(text), (text, new)
            text, done = new, done + 1
    assert done == 2000


def test_a_program_written_file_edited_for_long_equals_one_written_anew():
    """Only the program's own comments are in it, so nothing may pile up."""
    chance = random.Random(5)
    tree = {"start": {"garden_name": "x", "units": "us"}, "soak": {"holes": [{"hole_width": "8"}]}}
    text = render(tree, notes)
    for _ in range(300):
        shake(chance, tree["soak"] if chance.random() < 0.5 else tree["start"])
        text = splice(text, tree, notes)
    assert same(tree_of(text), tree)
    assert all_comments(text) == all_comments(render(tree, notes))
