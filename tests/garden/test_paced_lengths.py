"""What a new calibration changes, and by how much."""

from __future__ import annotations

import pytest

from interview.asking import route
from interview.garden.paced_lengths import (
    change_words,
    changes_said,
    paced_changes,
    paced_lengths,
    whose_paces,
)
from interview.garden.survey.pacing_questions import PACE_COUNTS, WALKER_NAME
from interview.quantities.units import magnitude

ROOF = {
    "surfaces.1.surface_name": "roof",
    "surfaces.1.surface_kind": "roof",
    "surfaces.1.pieces": "rectangle 16 paces by 7 paces bob\nless rectangle 3 ft by 2 paces Ann",
    "spout_distance": "6 paces",
}


@pytest.fixture
def people(walkers):
    return {"units": "us", **walkers}


@pytest.fixture
def before(given, people):
    return given({**people, **ROOF})


def test_every_paced_length_is_found_with_its_walker(before):
    found = [(one.address, one.count, one.walker) for one in paced_lengths(before)]
    assert found == [
        ("surfaces.1.pieces", 16, ""),
        ("surfaces.1.pieces", 7, "bob"),
        ("surfaces.1.pieces", 2, "Ann"),
        ("spout_distance", 6, ""),
    ]
    lengths = [magnitude(one.length, "ft") for one in paced_lengths(before)]
    assert lengths == pytest.approx([40, 21, 5, 15])


def test_recalibration_changes_every_length_of_that_walker_and_no_other(before):
    after = before.with_text("walkers.1.pace_counts", "25; 25; 25")
    changes = paced_changes(before, after)
    assert [change.address for change in changes] == [
        "surfaces.1.pieces",
        "surfaces.1.pieces",
        "spout_distance",
    ]
    assert [magnitude(change.before, "ft") for change in changes] == pytest.approx([40, 5, 15])
    assert [magnitude(change.after, "ft") for change in changes] == pytest.approx([32, 4, 12])
    assert [change.percent for change in changes] == pytest.approx([-20] * 3)
    bob = before.with_text("walkers.2.pace_counts", "24; 24; 24")
    assert [change.label for change in paced_changes(before, bob)] == ["roof, piece 1, 7 paces bob"]


def test_the_change_is_said_in_words(before):
    after = before.with_text("walkers.1.pace_line", "60 ft")
    (change, *_) = paced_changes(before, after)
    assert change_words(change, after).startswith("roof, piece 1, 16 paces: was 40 ft")
    assert "now 48 ft" in change_words(change, after)
    assert change_words(change, after).endswith("(20 % longer)")


def test_nothing_changes_where_the_pace_stays_or_the_length_is_new(before, given):
    assert paced_changes(before, before) == []
    same = before.with_text("walkers.1.pace_counts", "20; 20; 20; 20")
    assert paced_changes(before, same) == []
    other = before.with_text("spout_distance", "8 paces")
    assert paced_changes(before, other) == []
    uncalibrated = before.without("walkers.1.pace_counts")
    assert paced_changes(uncalibrated, before) == [] or all(
        change.label.endswith("bob") for change in paced_changes(uncalibrated, before)
    )


def test_the_walks_are_said_back_with_pace_spread_and_error(given, people):
    view = given(people).at("walkers", 1)
    counts = PACE_COUNTS.read("19; 20; 19; 20", view)
    said = PACE_COUNTS.kind.echo(counts, view)
    assert said.startswith("19; 20; 19; 20: one pace is 2.56 ft, the counts differ by 5.1 %")
    assert "over 40 ft expect to be off by 1.6 ft either way" in said
    metric = given({**people, "units": "metric"}).at("walkers", 1)
    assert "one pace is 0.782 m" in PACE_COUNTS.kind.echo(counts, metric)
    assert "over 12 m" in PACE_COUNTS.kind.echo(counts, metric)


def test_two_people_have_two_names(given, people):
    view = given(people).at("walkers", 2)
    assert "that name already" in WALKER_NAME.objection("ANN", view)
    assert WALKER_NAME.objection("Cy", view) is None


def test_plain_lines_say_what_a_new_calibration_changes(before, session_of):
    from interview.plain import interview as plain

    session = session_of(before)
    said: list[str] = []
    lines = iter([":go walkers.1.pace_counts", ":clear", "25", "25", "25", "", "", ":quit"])
    plain.run(session, lambda _prompt: next(lines), said.append)
    heard = "\n".join(said)
    assert "one pace is 2 ft" in heard
    assert "Lengths in paces that this changes:" in heard
    assert "roof, piece 1, 16 paces: was 40 ft" in heard
    assert heard.count("(20 % shorter)") == 3


def test_the_area_that_a_new_pace_makes_is_told_last(before, given, people):
    after = before.with_text("walkers.1.pace_line", "60 ft")
    said = changes_said(before, after)
    assert said[-1] == "the area that drains here: was 830 ft², now 990 ft²"
    assert changes_said(before, before) == []
    yard = given({**people, "spout_distance": "6 paces"})
    assert len(changes_said(yard, yard.with_text("walkers.1.pace_line", "60 ft"))) == 1


def test_a_thing_without_a_name_is_told_by_its_number(given, people):
    texts = {**people, **ROOF}
    del texts["surfaces.1.surface_name"]
    assert next(paced_lengths(given(texts))).label == "surface 1, piece 1, 16 paces"


def test_of_several_walkers_it_is_said_whose_the_paces_without_a_name_are(before, subtests):
    step = route.step_at("surfaces.1.pieces", before)
    assert step is not None
    for text, told in (
        ("rectangle 20 paces, 10 paces", True),
        ("rectangle 20 paces Bob, 10 paces", True),
        ("rectangle 20 paces Bob, 10 paces Ann", False),
        ("rectangle 20 ft, 10 ft", False),
    ):
        with subtests.test(text=text):
            said = whose_paces(step, text, before)
            assert bool(said) is told
            assert not told or ("taken as Ann's" in said and "15 paces Bob" in said)
    alone = before.without_item("walkers", 2)
    assert whose_paces(step, "rectangle 20 paces, 10 paces", alone) == ""
