"""A session: offering answers, moving about, coming back, and telling of saves that failed."""

from __future__ import annotations

import datetime as dt

import pytest

from interview.asking import path, route
from interview.asking.question import UNKNOWN_TEXT, Status, Unanswered
from interview.asking.sitting import Doubt
from interview.reading import Refused


def test_an_answer_is_kept_saved_and_said_back(session_of, keeper):
    session = session_of()
    heard = session.offer(session.jump("rain_depth"), "1")
    assert (heard.kept, session.not_kept) == ("1 in", "")
    assert heard.echo.startswith("1 in")
    assert keeper.saves[-1] == ({"rain_depth": "1 in"}, "rain_depth")


def test_an_empty_text_takes_the_default_or_is_refused(session_of):
    session = session_of()
    session.offer(session.jump("country"), "us")
    assert session.offer(session.jump("rain_depth"), "  ").kept == "1 in"
    with pytest.raises(Refused, match="Nothing was written"):
        session.offer(session.jump("state"), "")


def test_a_refused_answer_changes_nothing(session_of, keeper):
    session = session_of()
    session.offer(session.jump("rain_depth"), "1 in")
    with pytest.raises(Refused):
        session.offer(session.jump("rain_depth"), "10 in")
    assert session.answers.texts == {"rain_depth": "1 in"}
    assert len(keeper.saves) == 1


def test_not_knowing_is_kept_in_one_way(subtests, session_of):
    for text in ["don't know yet", "idk", "?", "Not sure"]:
        with subtests.test(text=text):
            session = session_of()
            assert session.offer(session.jump("units"), text).kept == UNKNOWN_TEXT


def test_an_unlikely_answer_is_kept_when_it_is_given_again(session_of):
    session = session_of()
    session.offer(session.jump("measured_by"), "paces")
    session.offer(session.jump("walkers.1.pace_line"), "50 ft")
    step = session.jump("walkers.1.pace_counts")
    with pytest.raises(Doubt, match="again"):
        session.offer(step, "10; 20; 30")
    with pytest.raises(Doubt):
        session.offer(step, "10; 20; 31")
    assert step.address not in session.answers.texts
    session.offer(step, "10; 20; 31")
    assert session.answers.texts[step.address] == "10\n20\n31"


def test_reading_an_answer_keeps_nothing(session_of, keeper):
    session = session_of()
    heard = session.read(session.jump("rain_depth"), "25 mm")
    assert heard.kept == "25 mm" and keeper.saves == []


def test_an_answer_in_paces_says_what_it_waits_for(session_of):
    session = session_of()
    heard = session.offer(session.jump("spout_distance"), "12 paces")
    assert heard.kept == "12 paces"
    assert "waits for" in heard.echo


def test_a_shut_question_takes_no_answer(session_of):
    session = session_of()
    step = session.jump("holes.1.hole_depth")
    with pytest.raises(Refused, match="not yet asked"):
        session.offer(step, "20 in")
    with pytest.raises(Refused):
        session.offer(step, "don't know yet")


def test_going_on_passes_over_what_is_shut_and_stops_at_the_end(session_of):
    session = session_of()
    seen = [session.step.address]
    while session.go_on_open() is not None:
        seen.append(session.step.address)
    assert "holes.1.hole_depth" not in seen
    assert "measured_by" in seen
    assert seen[-1] == session.step.address == "storm_seen"


def test_jumping_to_what_does_not_apply_stays_where_it_is(session_of):
    session = session_of()
    assert session.jump("soil_lab") is None
    assert session.jump("nothing") is None
    assert session.step.address == "garden_name"


def test_a_session_comes_back_to_the_first_open_question_from_where_it_stopped(given, session_of):
    answers = given({"garden_name": "x", "rain_depth": "1 in"})
    assert session_of(answers).step.address == "state"
    assert session_of(answers, "units").step.address == "units"
    assert session_of(answers, "rain_depth").step.address == "has_rain_record"
    assert session_of(answers, "no.such.place").step.address == "state"


def test_a_session_with_everything_answered_stands_at_the_last_question(given, session_of, located):
    answers = given()
    for _ in range(4):
        for step in route.steps(answers):
            if step.address not in answers.texts:
                answers = answers.with_text(step.address, UNKNOWN_TEXT)
    session = session_of(answers)
    assert session.step.address == "storm_seen"


def test_clearing_asks_again_and_putting_off_does_not(session_of):
    session = session_of()
    step = session.jump("units")
    session.put_off(step)
    assert route.standing(step, session.answers) is Status.UNKNOWN
    session.clear(step)
    assert route.standing(step, session.answers) is Status.OPEN


def test_removing_an_item_leaves_a_step_that_applies(session_of):
    session = session_of()
    session.offer(session.jump("spots.1.spot_name"), "back")
    session.offer(session.jump("spots.1.another_spot"), "yes")
    session.offer(session.jump("spots.2.spot_name"), "front")
    session.remove_item("spots", 1)
    assert session.answers.texts["spots.1.spot_name"] == "front"
    assert session.step in route.steps(session.answers)


def test_a_failed_save_is_told_and_the_answer_stays(session_of, keeper):
    session = session_of()
    keeper.refuses = "The disk is full. Free some room."
    session.offer(session.jump("units"), "metric")
    assert session.not_kept == "The disk is full. Free some room."
    assert session.answers.texts == {"units": "metric"}
    assert session.save() is False
    keeper.refuses = ""
    assert session.save() is True
    assert session.not_kept == ""
    assert keeper.saves[-1][0] == {"units": "metric"}


def test_the_plan_follows_every_answer(session_of, sized, figure):
    session = session_of()
    for address, text in sized.items():
        session.offer(session.jump(address), text)
    assert session.plan is session.plan
    before = figure("mid_area", session.plan)
    session.offer(session.jump("side_slope"), "2:1")
    assert figure("mid_area", session.plan) < before


def test_words_for_the_time_are_meant_at_the_moment_they_are_typed(session_of, clock, located):
    session = session_of()
    for address, text in located.items():
        session.offer(session.jump(address), text)
    session.offer(session.jump("holes.1.hole_dug_on"), "today")
    clock.forward(hours=3)
    session.offer(session.jump("holes.1.test_start"), "now")
    assert session.answers.texts["holes.1.hole_dug_on"] == "2026-05-28"
    assert session.answers.texts["holes.1.test_start"] == "2026-05-28T12:00:00-05:00"


def test_a_soak_test_runs_on_across_a_change_of_time_zone(session_of, clock, located):
    session = session_of()
    for address, text in {
        **located,
        "holes.1.hole_dug_on": "today",
        "holes.1.water_at_mark": "8 in",
        "holes.1.test_start": "now",
    }.items():
        session.offer(session.jump(address), text)
    clock.forward(hours=2)
    clock.now = clock.now.astimezone(dt.timezone(dt.timedelta(hours=-6)))
    session.offer(session.jump("holes.1.readings"), "now left 6 in")
    hole = session.answers.at("holes", 1)
    from interview.garden.soak.results import readings_of
    from interview.quantities.units import magnitude

    assert magnitude(readings_of(hole)[0].elapsed, "h") == pytest.approx(2)


@pytest.mark.parametrize(
    "address", ["garden_name", "units", "rain_depth", "country", "has_rain_record"]
)
def test_whoever_stops_at_a_question_gone_to_comes_back_to_it(session_of, given, keeper, address):
    answers = given(garden_name="Oak", units="us", rain_depth="1 in")
    session = session_of(answers, "rain_depth")
    assert session.step.address == "has_rain_record"
    session.jump(address)
    session.keep_place()
    kept = keeper.saves[-1][1] if keeper.saves else "rain_depth"
    assert session_of(answers, kept).step.address == address
    assert bool(keeper.saves) == (address != "has_rain_record"), (
        "nothing to keep where it leads there"
    )


def test_a_place_gone_to_is_left_behind_by_the_next_answer(session_of, given, keeper):
    session = session_of(given(garden_name="Oak", units="us"), "units")
    session.jump("garden_name")
    session.keep_place()
    session.offer(session.step, "Elm")
    assert session_of(session.answers, keeper.saves[-1][1]).step.address == "state"


def test_a_row_that_waits_for_a_day_says_so_until_the_day_is_given(session_of, given):
    asked = {"country": "us", "state": "mn", "lines_requested": "asked"}
    session = session_of(given(asked))
    step = next(one for one in path.steps(session.answers) if one.address == "lines_holidays")
    assert session.offered(step) is None
    assert session.not_yet(step) == "once the day you asked is given"
    session.go_to("lines_asked_on")
    typed = {"lines_asked_on": "2026-05-21"}  # a Thursday before Memorial Day
    assert session.offered(step, typed) == "2026-05-25"
    dated = session_of(given(asked, **typed))
    assert dated.not_yet(step) == "" and dated.offered(step)


def test_a_file_that_names_its_country_is_asked_for_a_state_only_in_the_us(session_of, given):
    abroad = session_of(given({"country": "uk", "units": "metric"}))
    assert abroad.jump("state") is None and abroad.way.place_of("country").name == "abroad"
    assert "place" not in [one.name for one in abroad.way.places]
    here = session_of(given({"country": "us", "units": "metric", "state": "vt"}))
    names = [one.name for one in here.way.places]
    assert "place" in names and "abroad" not in names
    # The country and the units of such a garden are found by their names all the same.
    assert here.go_to("units").name == "abroad" and here.step.address == "units"
    unsure = session_of(given({"country": "us", "state": "vt"}))
    assert "abroad" in [one.name for one in unsure.way.places]


def test_a_state_given_to_a_metric_garden_leaves_its_units(session_of, given):
    session = session_of(given({"units": "metric"}))
    session.offer(session.jump("state"), "vt")
    assert session.answers.texts == {"units": "metric", "state": "vt", "country": "us"}
    session.offer(session.jump("state"), "no")
    assert session.answers.texts == {"state": "no"}
    assert session.answers.country == "us" and not session.answers.metric


@pytest.fixture
def two_spots(located):
    """Return a garden with two spots looked at, its outline laid out at the first."""
    return {
        **located, "room_length": "30 ft", "room_width": "16 ft", "spout_distance": "22 ft",
        "spots.1.spot_name": "front", "spots.1.another_spot": "yes", "spots.2.spot_name": "back",
        "spots.2.near_spot": "none", "chosen_spot": "1",
    }  # fmt: skip


def test_another_spot_asks_for_its_own_outline_and_offers_the_old_one(session_of, given, two_spots):
    session = session_of(given(two_spots))
    session.go_to("chosen_spot")
    with pytest.raises(Doubt, match="the nearest mark has to be measured from there"):
        session.take({"chosen_spot": "2"})
    session.take({"chosen_spot": "2"})
    gone = ("room_length", "room_width", "spout_distance", "mark_distance")
    assert not set(gone) & session.answers.texts.keys()
    assert session.drafts == {
        "room_length": "30 ft", "room_width": "16 ft", "spout_distance": "22 ft",
    }  # fmt: skip
    # At once to the outline, then to the way from the downspout and to the nearest mark, and on.
    assert session.forward().name == "outline"
    assert [session.offered(one) for one in session.boxes()] == ["30 ft", "16 ft"]
    session.take()
    assert session.answers.texts["room_length"] == "30 ft"
    assert session.forward().name == "spout_distance"
    session.take({"spout_distance": "35 ft"})
    assert not session.drafts
    # What is asked of the spot chosen alone is new too.
    assert session.forward().name == "below.2"
    session.take({"spots.2.wet_season_depth": "5 ft", "spots.2.rock_depth": "5 ft"})
    assert session.forward().name == "sun_hours.2"
    session.take({"spots.2.sun_hours": "6"})
    assert session.forward().name == "marks"
    assert session.offered(session.step) is None and "mark_distance" not in session.drafts
    session.take({"mark_distance": "20 ft"})
    assert session.forward().name not in ("chosen_spot", "outline")


def test_the_same_spot_chosen_again_asks_for_nothing(session_of, given, two_spots):
    session = session_of(given(two_spots))
    session.go_to("chosen_spot")
    session.take({"chosen_spot": "1"})
    assert session.answers.texts["room_length"] == "30 ft" and not session.drafts


def test_with_the_spot_chosen_goes_its_outline(session_of, given, two_spots):
    session = session_of(given(two_spots))
    session.remove_item("spots", 1)
    assert session.answers.texts["spots.1.spot_name"] == "back"
    assert not {"room_length", "spout_distance", "mark_distance"} & session.answers.texts.keys()
    assert session.drafts["room_length"] == "30 ft"
    other = session_of(given(two_spots))
    other.remove_item("spots", 2)
    assert other.answers.texts["room_length"] == "30 ft" and not other.drafts


@pytest.fixture
def tested_at_one(two_spots):
    """Return the same garden with a soak test made at the first spot."""
    return {
        **two_spots, "holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "18 in",
        "holes.1.hole_smell": "earth", "holes.1.hole_seeps": "no", "holes.1.hole_shape": "round",
        "holes.1.hole_width": "8 in", "holes.1.soaked_already": "yes",
        "holes.1.water_at_mark": "8 in", "holes.1.test_start": "2026-05-27 10:00 -05:00",
        "holes.1.readings": "+1h left 7 in\n+2h left 6 in", "holes.1.hole_left": "filled",
        "holes.1.another_hole": "no",
    }  # fmt: skip


def test_a_soak_test_stays_with_the_spot_it_was_made_at(session_of, given, tested_at_one):
    session = session_of(given(tested_at_one))
    assert session.plan.soak.soil.corrected.m > 0
    before = {key: text for key, text in session.answers.texts.items() if key.startswith("holes.")}
    session.go_to("chosen_spot")
    with pytest.raises(Doubt, match="the soak test stays with the one you leave"):
        session.take({"chosen_spot": "2"})
    session.take({"chosen_spot": "2"})
    found = {key: text for key, text in session.answers.texts.items() if key.startswith("holes.")}
    assert found == before | {"holes.1.another_hole": "yes", "holes.1.hole_spot": "1"}
    with pytest.raises(Unanswered, match="hole_spot") as waits:
        _ = session.plan.soak.soil
    assert "Test one at the spot chosen" in waits.value.why
    (hole,) = session.plan.soak.holes
    assert hole.set_aside == "it is at spot 1, not at the one chosen" and hole.test is not None
    assert "hole.2" in [place.name for place in session.way.places]
    # Back at the first spot it counts as it did, and no further hole is asked for.
    session.offer(session.jump("chosen_spot"), "1")
    assert session.plan.soak.soil.corrected.m > 0 and not session.plan.soak.holes[0].set_aside
    assert "hole.2" not in [place.name for place in session.way.places]


def test_a_hole_said_to_be_at_the_new_spot_counts_there(session_of, given, tested_at_one):
    session = session_of(given({**tested_at_one, "holes.1.hole_spot": "2"}))
    with pytest.raises(Unanswered):
        _ = session.plan.soak.soil
    session.go_to("chosen_spot")
    with pytest.raises(Doubt) as doubt:
        session.take({"chosen_spot": "2"})
    assert "soak test" not in str(doubt.value)
    session.take({"chosen_spot": "2"})
    assert session.plan.soak.soil.corrected.m > 0
    assert "hole.2" not in [place.name for place in session.way.places]


def test_water_that_seeps_in_at_the_old_spot_stops_nothing_at_the_new(given, plan_of):
    two = {"spots.1.spot_name": "a", "spots.2.spot_name": "b", "holes.1.hole_depth": "18 in"}
    wet = {**two, "holes.1.hole_seeps": "yes", "holes.1.hole_spot": "1"}
    for chosen, stops in (("1", True), ("2", False)):
        keys = [one.key for one in plan_of({**wet, "chosen_spot": chosen}).findings]
        assert ("hole_1_seeps" in keys) is stops


def test_with_a_spot_go_its_holes_and_later_ones_keep_theirs(session_of, given, tested_at_one):
    session = session_of(given({**tested_at_one, "holes.1.hole_spot": "2", "chosen_spot": "2"}))
    session.remove_item("spots", 1)
    assert session.answers.texts["holes.1.hole_spot"] == "1"
    assert session.plan.soak.soil.corrected.m > 0
    gone = session_of(given(tested_at_one))
    gone.remove_item("spots", 1)
    assert gone.plan.soak.holes[0].set_aside == "it is at a spot that was taken out"
    aside = {"holes.1.hole_counts": "no", "holes.1.hole_set_aside_why": "dug into an old trench"}
    named = session_of(given({**tested_at_one, **aside}))
    named.remove_item("spots", 1)
    assert named.answers.texts["holes.1.hole_set_aside_why"] == "dug into an old trench"


DUG = {"holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "20 in"}
AT_TEN = {"holes.1.test_start": "2026-05-27 10:00 -05:00"}
GUTTER = {"surfaces.1.surface_kind": "roof", "surfaces.1.gutter_outlets": "4"}
# Address, the answers there are, the text that one of them does not fit, words of what is said.
UNFIT = (
    (
        "holes.1.first_fill_start",
        {**DUG, **AT_TEN, "holes.1.first_fill_start": "2026-05-27 08:00 -05:00"},
        "2026-05-27 10:01 -05:00",
        "“Timed test: filled to the fill level”: Wednesday 27 May 2026 10:00",
    ),
    (
        "holes.1.test_start",
        {
            **DUG,
            **AT_TEN,
            "holes.1.water_at_mark": "8 in",
            "holes.1.readings": "2026-05-27 10:30 -05:00 left 7 in",
        },
        "2026-05-27 11:00 -05:00",
        "Reading 1: its time is before the start of the test",
    ),
    ("holes.1.hole_depth", {**DUG, "holes.1.water_at_mark": "8 in"}, "7 in", "than the hole"),
    ("surfaces.1.gutter_outlets", {**GUTTER, "surfaces.1.outlets_here": "3"}, "2", "3"),
)


def test_an_answer_beside_which_a_kept_one_cannot_be_is_doubted_at_once(
    subtests, session_of, given, located
):
    for address, texts, text, words in UNFIT:
        with subtests.test(address=address, text=text):
            session = session_of(given({**located, **texts}))
            before = dict(session.answers.texts)
            step = session.jump(address)
            with pytest.raises(Doubt) as doubt:
                session.offer(step, text)
            assert words in str(doubt.value) and "again" in str(doubt.value)
            assert session.answers.texts == before
            assert session.offer(step, text).kept == session.answers.texts[address]


def test_two_answers_of_a_page_are_put_right_together_without_a_doubt(session_of, given):
    sides = {"gutter_this_side": "12 ft", "gutter_whole": "30 ft"}
    at = {f"surfaces.1.{key}": text for key, text in sides.items()}
    session = session_of(given({**GUTTER, "surfaces.1.share_known": "high_point", **at}))
    session.go_to("surfaces.1.gutter_this_side")
    with pytest.raises(Doubt, match="This does not fit “Whole gutter”"):
        session.take({"surfaces.1.gutter_this_side": "40 ft"})
    assert session.at_fault == "surfaces.1.gutter_this_side"
    session.take({"surfaces.1.gutter_this_side": "40 ft", "surfaces.1.gutter_whole": "50 ft"})
    assert session.answers.texts["surfaces.1.gutter_whole"] == "50 ft"


def test_an_answer_that_takes_another_away_is_not_held_against_it(session_of, given, located):
    """A later request leaves the old day of finishing without meaning, and says so itself."""
    session = session_of(given(located))
    step = session.jump("lines_asked_on")
    with pytest.raises(Doubt, match="That is a later request"):
        session.offer(step, "2026-05-25")
    session.offer(step, "2026-05-25")
    assert session.answers.texts["lines_asked_on"] == "2026-05-25"


def test_the_day_to_wait_for_is_told_to_whoever_went_to_ask_for_the_marks(session_of, given):
    begun = {"garden_name": "Elm", "country": "us", "state": "mn"}
    session = session_of(given({**begun, "lines_requested": "not_yet"}))
    session.go_to("dig_day")
    session.go_to("lines_requested")
    session.take({"lines_requested": "asked"})
    assert session.forward().name == "ticket"
    session.take({"lines_asked_on": "today"})
    seen = []
    while (place := session.forward()).name not in ("waiting", "dig_day") and len(seen) < 9:
        seen.append(place.name)
        session.put_off(session.step)
    assert place.name == "waiting", seen


def test_a_surface_nobody_has_named_can_be_fallen_on_by_its_usual_name(typed):
    roofs = {
        "country": "us",
        "surfaces.1.surface_kind": "roof",
        "surfaces.1.pieces": "30 ft by 14 ft",
        "surfaces.1.another_surface": "yes",
        "surfaces.2.surface_kind": "roof",
        "surfaces.2.falls_on": "Roof 1",
    }
    session = typed(roofs)
    step = session.jump("surfaces.2.falls_on")
    assert "Listed: roof 1." in session.worded(step).text
    with pytest.raises(Refused, match="Write no, or one of: roof 1"):
        session.offer(step, "porch")
    # Which roof it is stays said under another name.
    session.offer(session.jump("surfaces.1.surface_name"), "south roof")
    assert session.answers.texts["surfaces.2.falls_on"] == "south roof"
    assert session.jump("surfaces.2.gutter_outlets") is None
