"""What is held of each state: its wetland lists, confirmed or marked, and its hardiness zones."""

from __future__ import annotations

import re

import pytest

from interview.garden.place.questions import COUNTRY, STATES
from interview.garden.planting.plant_list import builtin_places
from interview.garden.planting.regions import ListRegion
from interview.garden.stages import QUESTIONS, new_answers
from interview.garden.suggest import value_for
from interview.quantities.evidence import Provenance
from interview.sheet.report import plan_text


def place(code):
    return next(one for one in builtin_places() if one.code == code)


def ranked(zone):
    """Order zones by cold: 4b is 10 °F warmer than 3b, and 4a lies half way between."""
    assert re.fullmatch(r"(1[0-3]|[1-9])[ab]", zone)
    return 2 * int(zone[:-1]) + (zone[-1] == "b")


def test_every_state_has_a_range_of_zones_and_its_commonest_lies_in_it(subtests):
    assert {one.code for one in builtin_places()} == {one[:2] for one in STATES.split(",")}
    for one in builtin_places():
        with subtests.test(state=one.code):
            assert ranked(one.zone_coldest) <= ranked(one.zone_warmest)
            assert one.zone_source.standing is Provenance.SECONDARY
            if one.zone_common:
                low, most, high = map(ranked, (one.zone_coldest, one.zone_common, one.zone_warmest))
                assert low <= most <= high
    assert [one.code for one in builtin_places() if not one.zone_common] == ["AK", "HI"]


def test_a_list_is_confirmed_by_a_text_or_marked_as_from_memory(subtests):
    for one in builtin_places():
        with subtests.test(state=one.code):
            assert set(one.lists_confirmed) <= set(one.list_regions)
            assert bool(one.lists_confirmed) is (one.lists_source is not None)
            for region in one.list_regions:
                said = one.list_standing(region)
                assert ("from memory" in said) is (region not in one.lists_confirmed)


def test_the_zone_of_the_state_is_offered_and_kept_only_by_enter(session_of, plan_of, given):
    asked = QUESTIONS["hardiness_zone"]
    for texts, zone in [
        ({"state": "mn", "country": "us"}, "4b"),
        ({"state": "co", "country": "us"}, "6a"),
        ({"state": "ak", "country": "us"}, None),
        ({"country": "uk"}, None),
        ({}, None),
    ]:
        plan = plan_of(texts)
        assert value_for(asked, plan) == zone and asked.default(plan.answers) is None
    words = asked.worded(given({"state": "mn", "country": "us"}))
    assert "lie in zones 3a to 5a, the most of them in 4b" in words.find_out
    assert "Alaska has zones 1a to 8b." in asked.worded(given({"state": "ak"})).find_out
    assert "USDA Plant Hardiness Zone Map, 2023" in words.more
    assert "4b" not in asked.worded(given({"country": "uk"})).find_out
    session = session_of(given({"state": "mn", "country": "us", "units": "us"}))
    session.go_to("usual_plants")
    session.take()
    assert session.answers.text_at("hardiness_zone") == "4b"
    assert session.answers[asked] == 4


@pytest.mark.parametrize(
    ("words", "shown"), [("5b", "5b"), ("zone 5A", "5a"), ("USDA 5 b", "5b"), ("5", "5")]
)
def test_a_zone_is_counted_by_its_number_and_shown_as_the_map_has_it(session_of, words, shown):
    session = session_of()
    step = session.jump("hardiness_zone")
    assert session.offer(step, words).echo == shown
    zone = session.answers[step.question]
    assert zone == 5 and f"{zone}" == str(zone) == shown


def test_a_zone_that_was_put_off_or_given_stays(session_of, given):
    for text in ("don't know yet", "3a"):
        answers = given({"state": "mn", "country": "us"}).with_text("hardiness_zone", text)
        session = session_of(answers)
        session.go_to("usual_plants")
        session.take()
        assert session.answers.text_at("hardiness_zone") == text


def test_the_page_says_whether_the_lists_of_the_state_are_confirmed(given):
    asked = QUESTIONS["wetland_list_region"]
    said = asked.worded(given({"state": "va"})).more
    assert "Norfolk District" in said
    assert "Atlantic and Gulf Coastal Plain: from memory" in said
    assert place("MN").lists_confirmed == (ListRegion.NCNE, ListRegion.MW, ListRegion.GP)
    assert asked.worded(given({"country": "uk"})).more == ""


def test_the_sheet_marks_a_list_that_nothing_confirms(plan_of, sized, located, level_spot):
    for state, listed, said in [
        ("co", "gp", "wetland list: Great Plains (from memory, not checked)"),
        ("mn", "mw", "wetland list: Midwest (Minnesota Board of Water and Soil Resources"),
    ]:
        texts = {"country": "us", "state": state, "sun": "full", "wetland_list_region": listed}
        sheet = plan_text(plan_of({**located, **level_spot, **sized, **texts}))
        assert said in " ".join(sheet.split())


def test_a_file_of_ones_own_comes_first_where_the_packaged_list_has_none(
    subtests, session_of, given
):
    for texts, first in [
        ({"country": "uk", "units": "metric"}, True),
        ({"country": "new_zealand", "units": "metric"}, True),
        ({"state": "ak", "country": "us", "units": "us"}, True),
        ({"state": "mn", "country": "us", "units": "us", "plant_region": "outside"}, True),
        ({"state": "mn", "country": "us", "units": "us"}, False),
        ({"state": "co", "country": "us", "units": "us"}, False),
    ]:
        with subtests.test(texts=texts):
            session = session_of(given(texts))
            session.go_to("usual_plants")
            boxes, more = (
                [one.address for one in rows] for rows in (session.boxes(), session.more())
            )
            assert boxes == (["own_plants"] if first else [])
            assert ("own_plants" in more) is not first
            asked = QUESTIONS["own_plants"].worded(session.answers)
            assert ("covers regions of the US only" in asked.why) is first
            session.take({"own_plants": "mine.csv"} if first else {})
            assert session.answers.text_at("own_plants") == ("mine.csv" if first else None)


def test_without_any_list_the_sheet_tells_the_traits_of_wet_and_dry(plan_of, sized):
    said = " ".join(plan_text(plan_of({**sized, "country": "uk", "units": "metric"})).split())
    assert "The plant list covers parts of the United States only" in said
    for zone in ("FLOOR", "SIDE", "RIM"):
        assert re.search(rf"{zone}[^:]*: .*?Sold for (moist or wet|dry or average) ground", said)


def test_outside_the_us_the_plant_regions_are_said_to_be_those_of_the_us(subtests):
    for country, _ in COUNTRY.kind.options:
        with subtests.test(country=country):
            asked = QUESTIONS["plant_region"].worded(new_answers({"country": country}))
            assert ("of the US" in asked.text) == (country != "us")
