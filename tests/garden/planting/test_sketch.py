"""The planting sketch: every plant drawn once, in drifts, within the width of the sheet."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from interview.garden.planting.choose import choose
from interview.garden.planting.count import drifts
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.sketch import BAND, MOST_DOWN, _grid, sketch
from interview.garden.planting.wetness import ZoneSite
from interview.garden.planting.wishes import Wishes
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

MW = Wishes(PlantRegion.MW, ListRegion.MW)


def floor_of(area=94.0):
    sites = {Zone.FLOOR: ZoneSite(quantity(area, "ft**2"), quantity(20, "h"))}
    return choose(builtin_plants(), MW, sites).zones[0]


FLOOR = floor_of()


def with_counts(*counts):
    picks = tuple(
        replace(pick, count=count) for pick, count in zip(FLOOR.picks, counts, strict=False)
    )
    return FLOOR._replace(picks=picks)


def letters(found):
    return [cell for row in found.rows for cell in row if cell != " "]


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(1, 60), min_size=1, max_size=5), st.floats(0.05, 400))
def test_every_plant_is_drawn_once(counts, shape):
    found = sketch(with_counts(*counts), shape)
    assert found.plants_a_letter == 1
    drawn = letters(found)
    assert sorted({*drawn}) == list("ABCDE"[: len(counts)])
    assert [drawn.count(letter) for letter in "ABCDE"[: len(counts)]] == counts


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(1, 9000), min_size=1, max_size=5), st.floats(0.05, 400))
def test_a_sketch_of_any_garden_fits_the_sheet(counts, shape):
    found = sketch(with_counts(*counts), shape)
    assert 1 <= len(found.rows) <= MOST_DOWN.value
    assert all(len(row) <= 71 for row in found.rows)
    each = found.plants_a_letter
    drawn = letters(found)
    for letter, count in zip("ABCDE", counts, strict=False):
        assert drawn.count(letter) == -(-count // each)


def test_a_drift_is_a_clump_of_neighbours():
    found = sketch(with_counts(7, 7, 7), 3.0)
    cells = {
        (row, column // 2): cell
        for row, text in enumerate(found.rows)
        for column, cell in enumerate(text)
        if cell != " "
    }
    for letter in "ABC":
        mine = {place for place, cell in cells.items() if cell == letter}
        seen, ahead = set(), [min(mine)]
        while ahead:
            row, column = ahead.pop()
            seen.add((row, column))
            near = {(row + 1, column), (row - 1, column), (row, column + 1), (row, column - 1)}
            ahead += list((near & mine) - seen)
        assert seen == mine
        assert len({row for row, _ in mine}) <= BAND.value


def test_plants_are_laid_band_by_band_there_and_back():
    """By hand: bands of three rows, column by column, every other column and band the other way."""
    assert _grid("ABCDEFGHIJKL", 3.0) == ("A D E H I L", "B C F G J K")
    assert _grid("ABCDEFGHIJKLMNOPQRSTUVWX", 2 / 3) == (
        "A F G L", "B E H K", "C D I J",
        "X S R M", "W T Q N", "V U P O",
    )  # fmt: skip
    assert _grid("AB", 0.05) == ("A", "B")


def test_the_drifts_of_the_kinds_are_spread_evenly_among_each_other():
    """By hand: of n drifts each stands in the middle of its nth part of the zone."""
    for counts, order in [
        ((10, 3), [("A", 7), ("B", 3), ("A", 3)]),
        ((15, 7), [("A", 7), ("A", 5), ("B", 7), ("A", 3)]),
        ((3, 15), [("B", 7), ("A", 3), ("B", 5), ("B", 3)]),
    ]:
        assert list(sketch(with_counts(*counts), 2.0).order) == order


def test_in_a_narrow_deep_zone_a_drift_is_not_a_line():
    found = sketch(with_counts(7, 7, 7, 7, 7), 0.3)
    assert len(found.rows) > 2 * BAND.value
    for letter in "ABCDE":
        rows = [row for row, text in enumerate(found.rows) if letter in text]
        # A drift may run on from the end of one band into the next.
        assert max(rows) - min(rows) < 2 * BAND.value


def test_the_legend_names_each_kind_its_number_and_its_drifts():
    found = sketch(with_counts(22, 10, 1), 2.0)
    first = FLOOR.picks[0].plant.common_name.partition(" (")[0]
    assert found.legend[0] == f"A  22 {first}: 2 drifts of 7, one of 5, one of 3"
    assert found.legend[1].endswith(": one drift of 7, one of 3")
    assert found.legend[2].endswith(": by itself")
    assert sketch(with_counts(2), 2.0).legend[0].endswith(": one group")
    assert drifts(22) == (7, 7, 5, 3)


def test_a_longer_zone_is_drawn_longer():
    long, square = (sketch(FLOOR, shape) for shape in (8.0, 1.0))
    assert len(long.rows) < len(square.rows)
    assert max(map(len, long.rows)) > max(map(len, square.rows))


def test_a_zone_without_plants_has_no_sketch():
    assert sketch(FLOOR._replace(picks=()), 2.0) is None
