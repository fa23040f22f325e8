"""The lines that say what a surface is made of: how they are read, kept and placed."""

from __future__ import annotations

import pytest
from hypothesis import given as any_of
from hypothesis import strategies as st

from interview.asking.question import Unanswered
from interview.garden.stages import new_answers
from interview.garden.survey.piece_layout import Placed
from interview.garden.survey.piece_lines import placed_line
from interview.garden.survey.piece_words import take_ends, walked
from interview.garden.survey.surface_questions import PIECES
from interview.garden.survey.written_pieces import drawn_piece, piece_of
from interview.quantities.units import magnitude, quantity
from interview.reading import Refused


@pytest.fixture
def feet():
    return new_answers({"units": "us"}).at("surfaces", 1)


@pytest.fixture
def metres():
    return new_answers({"units": "metric"}).at("surfaces", 1)


def area(text, view):
    kept = PIECES.kind.settle(text, view)
    (line,) = PIECES.read(kept, view)
    return magnitude(piece_of(line).area, "ft**2")


def test_each_shape_is_read(subtests, feet):
    for text, square_feet in [
        ("rectangle 24 ft by 13 ft", 312),
        ("rectangle 24 by 13", 312),
        ("triangle 6 ft by 4 ft", 12),
        ("triangle sides 3 ft, 4 ft, 5 ft", 6),
        ("three sides 3 ft, 4 ft, 5 ft", 6),
        ("trapezoid 16 ft, 10 ft, height 4 ft", 52),
        ("trapezoid sides 16 ft, 10 ft, 5 ft, 5 ft", 52),
        ("circle across 8 ft", 50.265),
        ("half circle across 8 ft times 2", 50.265),
        ("quarter circle radius 4 ft", 12.566),
        ("circle part 8 ft, 120 deg", 16.755),
        ("circle part 8, 120", 16.755),
        ("offsets 3 ft, 2 ft, 5 ft, 4 ft", 24),
        ("round 20 ft right 8 ft right 20 ft right 8 ft", 160),
        ("round 20 left 8 left 12 right 6 left 8 left 14", 208),
        ("round 10 ft left 120 deg 10 ft left 120 deg 10 ft", 43.301),
        ("round 10 ft left 120 10 ft left 120, 10 ft", 43.301),
        ("less rectangle 3 ft by 2 ft times 2", -12),
    ]:
        with subtests.test(text=text, square_feet=square_feet):
            whole = "rectangle 90 ft by 90 ft\n" + text
            kept = PIECES.kind.settle(whole, feet)
            line = PIECES.read(kept, feet)[-1]
            assert magnitude(piece_of(line).area, "ft**2") == pytest.approx(square_feet, rel=1e-4)
            assert PIECES.kind.settle(kept, feet) == kept


def test_a_bare_number_keeps_the_unit_that_was_shown(metres, feet):
    text = "round 6 left 3 left 6 left 3 at 1, -2"
    kept = PIECES.kind.settle(text, metres)
    assert kept == "round 6 m left 3 m left 6 m left 3 m at 1 m, -2 m"
    assert area(kept, feet) == pytest.approx(area(text, metres))


def test_what_cannot_be_is_one_sentence_with_its_place(subtests, feet):
    for text, said in [
        ("three sides 10 ft, 4 ft, 5 ft", "make no triangle"),
        ("trapezoid sides 16 ft, 10 ft, 1 ft, 1 ft", "make no trapezoid"),
        ("round 20 ft right 8 ft right 12 ft right 8 ft", "do not come back"),
        ("round 20 ft right 8 ft", "three or more sides"),
        ("round 20 ft right 8 ft right", "not before the first or after the last"),
        ("round right 20 ft right 8 ft right 3 ft", "not before the first or after the last"),
        ("round 9 ft left 200 deg 9 ft left 9 ft", "up to 180 degrees"),
        ("circle part 20 ft, 400 deg", "up to 360 degrees"),
        ("rectangle 3 ft by 4 ft times 0", "1 or more"),
        ("rectangle 3 ft by 4 ft at 12 paces, 2 ft", "cannot be paced"),
        ("rectangle 3 ft", "needs 2 lengths"),
        ("blob 3 ft", "Start with a shape"),
        ("rectangle 10 ft by 4 ft; less rectangle 8 ft by 5 ft", "Piece 2: The cut-out is as big"),
        ("rectangle 10 ft by 10 ft; less rectangle 3 ft by 3 ft; circle -3 ft", "Piece 3"),
    ]:
        with subtests.test(text=text, said=said):
            with pytest.raises(Refused) as refused:
                PIECES.kind.settle(text, feet)
            assert said in str(refused.value)
            assert str(refused.value).startswith("Piece ")
            assert str(refused.value)[-1] in ".…"


def test_a_crossing_outline_is_refused(feet):
    with pytest.raises(Refused, match="cross each other"):
        PIECES.kind.settle(
            "round 10 ft left 135 deg 14.14 ft right 135 10 ft right 135 deg 14.14 ft", feet
        )


def test_the_words_of_a_turn_may_be_short_or_long():
    assert walked("20 ft right 12 ft 6 in left 45 deg 3 ft") == (
        ["20 ft", "12 ft 6 in", "3 ft"],
        (-90.0, 45.0),
    )
    assert walked("16 paces Ann right 12 1/2 ft")[0] == ["16 paces Ann", "12 1/2 ft"]


def test_what_follows_the_measures_may_stand_in_any_order():
    ends = {
        take_ends("rectangle 3 ft by 4 ft" + tail)
        for tail in (
            " times 2 at 1 ft, 2 ft turned 90",
            " turned 90 deg at 1 ft by 2 ft times 2",
            " at 1 ft, 2 ft times 2 turned 450 degrees".replace("450", "90"),
        )
    }
    assert {words for words, _ in ends} == {"rectangle 3 ft by 4 ft"}
    assert {(end.count, end.at, end.turned) for _, end in ends} == {(2, ("1 ft", "2 ft"), 90.0)}


@any_of(st.floats(-80, 80), st.floats(-80, 80), st.integers(0, 359), st.booleans())
def test_the_area_never_depends_on_where_a_piece_is_put(right, up, turned, metric):
    view = new_answers({"units": "metric" if metric else "us"}).at("surfaces", 1)
    for text in ("less triangle 6 ft by 4 ft times 2", "round 6 ft left 3 ft left 6 ft left 3 ft"):
        there = placed_line(text, quantity(right, "ft"), quantity(up, "ft"), turned, metric)
        lines = PIECES.kind.read(f"rectangle 30 ft by 20 ft\n{there}", view)
        assert PIECES.kind.settle(there.replace("less ", ""), view)
        plain = PIECES.kind.read(f"rectangle 30 ft by 20 ft\n{text}", view)
        assert piece_of(lines[1]).area == piece_of(plain[1]).area
        put = drawn_piece(lines[1])
        assert isinstance(put, Placed)
        assert magnitude(put.x, "ft") == pytest.approx(right, abs=0.02)
        assert magnitude(put.y, "ft") == pytest.approx(up, abs=0.02)
        assert put.turned == turned


def test_a_piece_put_again_keeps_one_place(feet):
    once = placed_line("rectangle 8 ft by 4 ft", quantity(1, "ft"), quantity(2, "ft"), 0, False)
    twice = placed_line(once, quantity(3, "ft"), quantity(2.5, "ft"), 90, False)
    assert once == "rectangle 8 ft by 4 ft at 1 ft, 2 ft"
    assert twice == "rectangle 8 ft by 4 ft at 3 ft, 2.5 ft turned 90 deg"
    assert not isinstance(drawn_piece(PIECES.read("rectangle 8 ft by 4 ft", feet)[0]), Placed)


def test_a_cut_out_larger_than_every_piece_is_doubted(feet):
    pieces = PIECES.read(
        "rectangle 10 ft by 8 ft\nrectangle 10 ft by 8 ft\nless rectangle 10 ft by 9 ft", feet
    )
    assert "Piece 3, a cut-out, is larger than any one piece" in PIECES.doubt(pieces, feet)
    fine = PIECES.read("rectangle 10 ft by 8 ft\nless rectangle 3 ft by 3 ft", feet)
    assert PIECES.doubt(fine, feet) is None


def test_a_valley_with_one_slope_is_doubted(given):
    view = given({"surfaces.1.surface_kind": "roof", "surfaces.1.roof_valley": "yes"}).at(
        "surfaces", 1
    )
    one = PIECES.read("rectangle 10 ft by 8 ft", view)
    two = PIECES.read("rectangle 10 ft by 8 ft times 2", view)
    assert "two slopes" in PIECES.doubt(one, view)
    assert PIECES.doubt(two, view) is None


def test_a_gap_that_the_paces_explain_is_taken_and_the_same_gap_by_tape_is_not(given):
    pacing = {
        "measured_by": "paces",
        "walkers.1.pace_line": "50 ft",
        "walkers.1.pace_counts": "19; 20; 19; 20",
    }
    view = given({"units": "us", **pacing}).at("surfaces", 1)
    assert PIECES.kind.settle("round 8 paces left 4 paces left 6.8 paces left 4 paces", view)
    with pytest.raises(Refused, match="come back"):
        PIECES.kind.settle("round 20.5 ft left 10.3 ft left 17.4 ft left 10.3 ft", view)


def sides_of(piece) -> list[float]:
    return [pytest.approx(magnitude(side.length, "ft")) for side in piece.sides]


def test_the_shapes_a_piece_may_have(subtests, feet):
    for line, shape, sides in [
        ("rectangle 24 ft by 13 ft", "rectangle", [24, 13]),
        ("Rectangle 24 x 13", "rectangle", [24, 13]),
        ("rectangle 24x13", "rectangle", [24, 13]),
        ("rectangle 24 ft 6 in by 13' 3\"", "rectangle", [24.5, 13.25]),
        ("rectangle: 24 ft, 13 ft", "rectangle", [24, 13]),
        ("triangle base 14 ft height 7 ft", "triangle", [14, 7]),
        ("triangle 14 ft by 7 ft", "triangle", [14, 7]),
        ("triangle sides 5, 4, 3", "three sides", [5, 4, 3]),
        ("trapezoid 8, 5, height 3", "trapezoid", [8, 5, 3]),
        ("trapezoid 8 ft and 5 ft height 3 ft", "trapezoid", [8, 5, 3]),
        ("circle across 6 ft", "circle", [6]),
        ("half circle across 6 ft", "half circle", [6]),
        ("quarter circle radius 3 ft", "quarter circle", [3]),
        ("offsets every 2 ft, 0 ft, 3 ft, 4 ft, 0 ft", "offsets", [2, 0, 3, 4, 0]),
    ]:
        with subtests.test(line=line, shape=shape, sides=sides):
            (piece,) = PIECES.read(line, feet)
            assert piece.shape == shape
            assert sides_of(piece) == sides
            (again,) = PIECES.read(PIECES.kind.settle(line, feet), feet)
            assert again == piece


def test_a_piece_may_be_cut_out_and_counted_twice(feet):
    first, second = PIECES.read("rectangle 24 by 13\nless triangle 6 ft by 4 ft times 2", feet)
    assert (first.cut, first.count) == (False, 1)
    assert (second.cut, second.count) == (True, 2)
    assert PIECES.kind.echo((first, second), feet) == "1 piece, 1 cut out"


def test_bare_lengths_are_kept_with_their_unit_and_do_not_follow_the_units_shown(feet, given):
    text = PIECES.kind.settle("rectangle 24 by 13; less rectangle 2 by 3 times 2", feet)
    assert text.splitlines() == ["rectangle 24 ft, 13 ft", "less rectangle 2 ft, 3 ft times 2"]
    metric = given({"units": "metric"}).at("surfaces", 1)
    assert PIECES.read(text, metric) == PIECES.read(text, feet)


def test_a_paced_side_waits_for_the_pace_and_is_kept(feet, given):
    assert (
        PIECES.kind.settle("rectangle 16 paces by 7 paces", feet) == "rectangle 16 paces by 7 paces"
    )
    with pytest.raises(Unanswered):
        PIECES.read("rectangle 16 paces by 7 paces", feet)
    walked = given(
        {
            "units": "us",
            "measured_by": "paces",
            "walkers.1.walker_name": "Ann",
            "walkers.1.pace_line": "50 ft",
            "walkers.1.pace_counts": "20; 20; 20",
        }
    ).at("surfaces", 1)
    (piece,) = PIECES.read("rectangle 16 paces Ann by 10 ft", walked)
    assert sides_of(piece) == [40, 10]
    assert (piece.sides[0].paces, piece.sides[0].walker) == (16, "Ann")
    with pytest.raises(Refused, match="Nobody called Bob"):
        PIECES.read("rectangle 16 paces Bob by 10 ft", walked)


def test_pieces_that_cannot_be_are_refused_by_number(subtests, feet):
    for text, words in [
        ("none", "At least one piece"),
        ("an ell 24 ft by 13 ft", "Start with a shape"),
        ("rectangle 24 ft", "needs 2 lengths"),
        ("rectangle 24 ft by 0 ft", "longer than zero"),
        ("rectangle 24 ft by 2000 ft", "longer than 1000 ft"),
        ("triangle sides 9, 4, 3", "Piece 1: "),
        ("rectangle 5 by 5\nless rectangle 6 by 6", "Piece 2: "),
        ("less rectangle 6 by 6", "Piece 1: "),
        ("rectangle 5 by 5 times 0", "1 or more"),
        ("\n".join(["rectangle 5 ft by 5 ft"] * 61), "more than 60 pieces"),
    ]:
        with subtests.test(text=text, words=words):
            with pytest.raises(Refused) as refused:
                PIECES.kind.settle(text, feet)
            assert words in str(refused.value)
