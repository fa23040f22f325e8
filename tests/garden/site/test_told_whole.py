"""What a distance, a depth or a state's row is told as, word for word, and the edges of a rule."""

import csv
from datetime import date
from importlib.resources import files

import pytest
from measures import ft, inch

from interview.garden.site.locate import federal_holidays, federal_in_wait
from interview.garden.site.locating import Life, StateNotice, states
from interview.garden.site.setbacks import FIND_PACE, SETBACKS, setback_finding
from interview.garden.site.siting import Below, below_floor_finding
from interview.garden.site.slope import ground_slope, level_finding
from interview.quantities.evidence import Grade, Provenance
from interview.quantities.units import quantity

WALL, LINE, TREE = (SETBACKS[key] for key in ("foundation_deep", "property_line", "tree"))


def test_a_row_of_the_table_is_told_as_it_stands_in_the_file(subtests):
    text = (files("interview.garden.site") / "locating.csv").read_text(encoding="utf-8")
    kinds = {"working": (True, True), "calendar": (False, True), "not said": (False, False)}
    standings = {
        "published": Provenance.PUBLISHED,
        "second copy": Provenance.SECONDARY,
        "carried over, not read again": Provenance.CARRIED,
        "": None,
    }

    def life(days, kind):
        return Life(int(days), *kinds[kind]) if days else None

    rows = list(csv.DictReader(text.splitlines()))
    assert len(rows) == 51
    for row in rows:
        with subtests.test(row["code"]):
            found = states()[row["code"]]
            hand = StateNotice(
                row["code"], row["state"], int(row["wait"]),
                int(row["longest_wait"]) if row["longest_wait"] else None,
                row["wait_words"], row["call_day"],
                life(row["life"], row["life_kind"]), row["life_from"],
                life(row["begin"], row["begin_kind"]),
                float(row["strip"]) if row["strip"] else None,
                row["hand"], row["hand_words"], row["phone"], row["website"], row["note"],
                row["sources"],
                *(standings[row[f"{part}_standing"]] for part in ("wait", "life", "strip", "hand")),
            )  # fmt: skip
            assert found == hand


def test_the_source_of_a_wait_or_a_strip_is_the_states_own_where_its_own_holds():
    own = StateNotice("XX", "Ruritania", 3, pages="law", strip_in=24.0)
    assert own.wait_source.title.startswith("Ruritania")
    assert own.zone_source.title.startswith("Ruritania")
    assert own._replace(wait=5).wait_source.title.startswith("Ruritania")
    assert own._replace(longest_wait=10).wait_source.title.startswith("Ruritania")
    for other in (own._replace(wait=2), own._replace(wait=None)):
        assert other.wait_source.title.startswith("MISS DIG")
    for other in (own._replace(strip_in=23.0), own._replace(strip_in=None)):
        assert other.zone_source.title.startswith("USA North")


def test_days_without_a_kind_stay_so_where_they_are_just_the_careful_ones():
    life = Life(14, False, kind_said=False)
    assert str(StateNotice("XX", "Ruritania", 3, life=life).marks) == "14 days"


def test_the_federal_holidays_of_a_wait_over_new_year_are_those_of_both_years():
    """Worked on a calendar: Thursday 24 December 2026, 5 days: 28, 29, 30, 31 and 4 January."""
    assert list(federal_in_wait(date(2026, 12, 24), 5)) == [date(2026, 12, 25), date(2027, 1, 1)]
    # A Saturday's first of January is kept on Friday, in the year before.
    assert list(federal_holidays(date(2027, 12, 30), date(2027, 12, 31))) == [date(2027, 12, 31)]


@pytest.mark.parametrize(
    ("item", "measured", "more", "said", "line"),
    [
        (WALL, ft(12), {}, "far enough, but under the cautious distance.",
         "Fine: 12 ft; 10 ft needed, 20 ft cautious."),
        (TREE, ft(12), {}, "far enough.", "Fine: 12 ft; 10 ft needed."),
        (LINE, ft(6), {"local_rule": ft(4)}, "far enough.",
         "Fine: 6 ft; 4 ft needed by your local rule."),
        (LINE, ft(6), {"local_rule": ft(8)}, "too near.",
         "TOO NEAR: 6 ft, 8 ft needed by your local rule."),
        (LINE, ft(11), {"reaches_out": inch(6.2)}, "far enough.",
         "Fine: 10 ft 5 1/2 in left of 11 ft; 5 ft needed, 10 ft cautious."),
        (LINE, ft(11), {"reaches_out": ft(0)}, "far enough.",
         "Fine: 11 ft; 5 ft needed, 10 ft cautious."),
    ],
)  # fmt: skip
def test_a_distance_is_told_in_one_line(item, measured, more, said, line):
    found = setback_finding(item, measured, **more)
    assert found.brief.line == line
    assert found.said.endswith(said)


def test_a_distance_reached_over_is_told_up_to_the_next_inch_and_what_is_left():
    found = setback_finding(LINE, ft(11), reaches_out=inch(6.2))
    assert found.said == (
        "The garden is 11 ft from the property line, but the garden reaches up to 7 in beyond the "
        "place you measured from, so only 10 ft 5 1/2 in is left (lay it out again and measure): "
        "far enough."
    )


def test_a_wall_too_near_is_told_with_the_way_on():
    found = setback_finding(WALL, ft(8))
    assert found.grade is Grade.STOP
    assert found.brief == (
        "TOO NEAR: 8 ft, 10 ft needed.",
        "STOP here: 8 ft to the wall with a basement or crawl space, 10 ft needed.",
        "Move the hose 2 ft, measure again",
        False,
    )


def test_a_distance_in_paces_waits_for_the_pace_and_another_for_the_tape():
    waits, unknown = setback_finding(WALL, None, paced=True), setback_finding(WALL, None)
    assert (waits.change, unknown.change) == (FIND_PACE, "Measure it.")
    assert "is in paces" in waits.said and unknown.said.endswith("is not measured yet.")
    assert "is in paces" not in setback_finding(WALL, ft(12), paced=True).said


def test_rock_is_by_its_own_source_and_the_least_dug_by_its_own_unit():
    rock, water = (below_floor_finding(what, inch(60), inch(12)) for what in reversed(Below))
    assert (rock.source.title[:20], water.source.title[:13]) == (
        "Rain Gardens, Elk Co", "Newspaper and",
    )  # fmt: skip
    # 2.97 in are left to dig: less than 3 in, more than 75 mm.
    near = below_floor_finding(Below.WATER, inch(26.97), inch(12))
    assert near.change == "Choose another spot."
    by_mm = below_floor_finding(
        Below.WATER, quantity(600 + 75.5, "mm"), quantity(300, "mm"), metric=True
    )
    assert by_mm.change == "Dig 230 mm less deep, or choose another spot."


def test_readings_far_apart_are_told_with_what_to_do():
    found = level_finding(ground_slope(ft(10), inch(6), inch(7)))
    assert found.change == "Read both again with a tight string."
