"""The interview on plain lines, typed page by page along the path."""

from __future__ import annotations

import re

import pytest

from interview.asking import path, route
from interview.asking.question import UNKNOWN_TEXT
from interview.garden.stages import QUESTIONS


@pytest.fixture
def at(session_of, given):
    """Return a maker of sessions that stand at the page of an address, with answers given."""

    def make(address, texts=None, **answers):
        session = session_of(given(texts, **answers))
        named = [one.address for one in route.called(address, session.answers)]
        assert session.go_to((named or [address])[0]) is not None
        return session

    return make


def words(heard):
    return " ".join(heard.split())


# Boxes


def test_boxes_are_put_in_turn_and_kept_together(talk, keeper):
    heard, session, finished = talk("Maple corner", "mn", "roof", "2")
    assert not finished
    assert heard.index("What brings the water") < heard.index("How many downspouts")
    place = {"garden_name": "Maple corner", "state": "mn", "country": "us", "units": "us"}
    assert session.answers.texts == {
        **place, "surfaces.1.surface_kind": "roof", "surfaces.1.gutter_outlets": "2",
    }  # fmt: skip
    assert session.drafts == {}
    _, session, _ = talk("Maple corner", "mn", "roof")
    # What was given is not lost, though it is no answer yet.
    assert session.answers.texts == place
    assert session.drafts == {"surfaces.1.surface_kind": "roof"}
    assert len(keeper.saves) == 7


@pytest.mark.parametrize(
    ("lines", "kept"),
    [
        # The rows are put after the last box.
        (("2026-05-20", "T-0412"), {"lines_asked_on": "2026-05-20", "lines_ticket": "T-0412"}),
        (("2026-05-20", ":skip"), {"lines_asked_on": "2026-05-20", "lines_ticket": UNKNOWN_TEXT}),
    ],
)
def test_whoever_is_cut_off_at_the_rows_loses_no_box(talk, at, keeper, lines, kept):
    _, session, _ = talk(*lines, session=at("lines_asked_on", lines_requested="asked"))
    assert session.drafts == kept and "lines_asked_on" not in session.answers.texts
    assert len(keeper.saves) == len(lines)


def test_whoever_is_cut_off_where_one_box_is_doubted_loses_no_other(talk, at, located):
    heard, session, _ = talk("2026-05-27", "T-9", "", session=at("lines_asked_on", located))
    assert "Give the same answer again" in heard
    assert session.drafts["lines_ticket"] == "T-9"


def test_only_the_state_is_asked_of_a_garden_in_the_us(talk):
    heard, session, _ = talk("x", "minnesota")
    assert "Not in the US: type no." in heard and "= Minnesota" not in heard
    assert "Which country" not in heard and "Which units" not in heard
    assert session.answers.texts["country"] == "us" and session.answers.texts["units"] == "us"
    assert session.place.name == "water_from"


def test_the_units_are_told_as_the_country_just_given_spells_them(talk):
    heard, _, _ = talk("x", "no", "uk", "")
    assert "2 metres and millimetres" in heard
    heard, _, _ = talk("x", "no", "us", "")
    assert "2 meters and millimeters" in heard


def test_no_to_the_state_opens_the_country_and_the_units(talk):
    heard, session, _ = talk("x", "no", "", "new zealand", "")
    assert heard.index("Which state") < heard.index("Which country") < heard.index("Which units")
    assert "Enter takes: United States" not in heard and "Enter takes: meters" in heard
    assert session.answers.texts == {
        "garden_name": "x", "country": "new_zealand", "units": "metric",
    }  # fmt: skip
    assert session.place.name == "water_from"
    # Whoever has said no by mistake names the United States: the state is open again.
    _, session, _ = talk("x", "no", "us", "")
    assert session.answers.texts == {"garden_name": "x", "country": "us", "units": "us"}
    assert session.way.first_open().name == "place"


def test_a_state_that_is_none_is_refused_with_what_to_write_outside_the_us(subtests, talk):
    for typed, meant in (("Germany", "number from 1 to"), ("n", "Nebraska")):
        with subtests.test(typed=typed):
            heard, session, _ = talk("x", typed)
            refused = " ".join(heard.split()).partition(f'! "{typed}"')[2]
            assert meant in refused and "Outside the United States write no." in refused
            assert "state" not in session.answers.texts
    for typed in ("NZ", "New Zealand", "outside the US", "other"):
        with subtests.test(typed=typed):
            assert talk("x", typed)[1].answers.texts["state"] == "no"


def test_a_refused_box_is_asked_again_and_the_others_are_kept(talk):
    heard, session, _ = talk("x", "furlong", "mn")
    assert '! "furlong" is not on the list.' in heard
    assert heard.count("Which state") == 1
    assert session.answers.texts["state"] == "mn"


def test_a_box_refused_with_the_others_is_asked_again_alone(talk, at):
    session = at("overflow_to")
    heard, session, _ = talk("own_lawn", "40 ft", "x", "30 ft", session=session)
    assert "spots.1.overflow_line_distance" in session.answers.texts
    assert heard.count("where will the extra water go") == 1


def test_an_empty_line_takes_the_value_offered(talk):
    heard, session, _ = talk("")
    assert "Enter takes: My rain garden" in heard
    assert session.answers.texts == {"garden_name": "My rain garden"}


def test_an_empty_line_where_nothing_is_offered_is_refused(talk, at):
    heard, session, _ = talk("", "never", session=at("stands_after_rain"))
    assert "! Nothing was written." in heard
    assert session.answers.texts == {"spots.1.stands_after_rain": "never"}


def test_no_safety_question_is_ever_offered(talk, at):
    for key in ("children", "permission", "private_lines", "roof_hazard"):
        session = at(key, lines_requested="asked", **{"lines_asked_on": "2026-05-20"})
        heard, session, _ = talk("", session=session)
        assert "Enter takes" not in heard.rpartition("==")[2], key
        assert key not in session.answers.texts


def test_an_empty_line_skips_what_may_be_skipped(talk, at):
    heard, session, _ = talk("", session=at("dig_day"))
    assert "Enter skips" in heard
    assert session.answers.texts["dig_day"] == UNKNOWN_TEXT


def test_an_empty_line_at_an_answered_question_keeps_it(talk, given, session_of):
    heard, session, _ = talk(":go garden_name", "", session=session_of(given(garden_name="x")))
    assert "kept: x; Enter keeps it" in heard
    assert session.answers.texts == {"garden_name": "x"}


def test_an_unlikely_answer_is_kept_when_it_is_given_twice(talk, at, located):
    typed = ("2026-05-27", "", "")
    heard, session, _ = talk(*typed, session=at("lines_asked_on", located))
    assert "That is a later request" in words(heard) and "Give the same answer again" in heard
    assert session.answers.texts["lines_asked_on"] == "2026-05-20"
    _, session, _ = talk(*typed, *typed, session=at("lines_asked_on", located))
    assert session.answers.texts["lines_asked_on"] == "2026-05-27"


def test_skipping_keeps_that_it_is_not_known_and_says_how_to_find_out(talk, at):
    heard, session, _ = talk(":skip", session=at("stands_after_rain"))
    assert f"= {UNKNOWN_TEXT}. To find out: " in heard
    assert session.answers.texts["spots.1.stands_after_rain"] == UNKNOWN_TEXT


# Rows


def test_a_number_changes_one_row_and_enter_takes_the_rest(talk, at, roof):
    session = at("rough_size", roof("rectangle 30 ft by 14 ft"))
    heard, session, _ = talk("1", "2 in", "", session=session)
    assert "1 Rain to hold: 1 in" in heard and "1 Rain to hold: 2 in" in heard
    assert session.answers.texts["rain_depth"] == "2 in"
    assert session.taken == ["rough_size"]


def test_taking_a_usual_page_stores_no_answer(talk, at, roof):
    texts = roof("rectangle 30 ft by 14 ft")
    _, session, _ = talk("", session=at("rough_size", texts))
    assert session.taken == ["rough_size"]
    assert session.answers.texts == texts


def test_the_rows_behind_the_last_one_are_shown_when_they_are_wanted(talk, at, roof):
    for typed in ("more", "2", ":more"):
        session = at("rough_size", roof("rectangle 30 ft by 14 ft"))
        heard, session, _ = talk(typed, "2", "no", "", session=session)
        assert "2 more (1)" in heard
        assert session.answers.texts["has_rain_record"] == "no", typed


def test_a_row_is_told_of_by_its_number(talk, at, roof):
    session = at("rough_size", roof("rectangle 30 ft by 14 ft"))
    heard, _, _ = talk(":why", ":why 1", "9", session=session)
    assert "Write the number of a row after it, such as :why 1." in heard
    assert path.steps(session.answers)[0] and session.rows()[0].question.why[:20] in heard
    assert "Write one of the numbers, or an empty line to go on." in heard


# Verdicts and their ways


NEAR = {"spots.1.near_spot": "basement"}


def test_a_verdict_is_said_right_after_the_answer(talk, at):
    heard, _, _ = talk("14 ft 6 in", session=at("basement_distance", NEAR))
    assert "Fine: 14 ft 6 in; 10 ft needed, 20 ft cautious." in heard


def test_a_verdict_against_stays_with_numbered_ways(talk, at):
    session = at("basement_distance", NEAR)
    heard, session, _ = talk("8 ft", session=session)
    assert "! TOO NEAR: 8 ft, 10 ft needed." in heard
    assert "1 Move the hose 2 ft, measure again" in heard and "3 Keep it" in heard
    assert session.place.name == "basement_distance"
    heard, session, _ = talk("8 ft", "2", session=at("basement_distance", NEAR))
    assert session.step.address == "spots.1.another_spot"
    assert "Another spot" in heard or "another spot" in heard
    session = at("basement_distance", NEAR)
    _, session, _ = talk("8 ft", "12 ft", session=session)
    assert session.answers.texts["spots.1.basement_distance"] == "12 ft"
    for keep in ("3", ""):
        _, session, _ = talk("8 ft", keep, session=at("basement_distance", NEAR))
        assert session.place.name != "basement_distance"
        assert session.answers.texts["spots.1.basement_distance"] == "8 ft"


def test_the_first_day_to_dig_is_said_with_the_day_of_the_request(talk, at):
    session = at("lines_asked_on", lines_requested="asked", state="mn")
    heard, _, _ = talk("today", "", "", session=session)
    assert "First day to dig: " in heard


# A page that is shut


def test_a_shut_page_gives_its_reason_and_numbered_ways(talk, at):
    heard, session, _ = talk("20 in", session=at("holes.1.hole_depth"))
    assert "Not yet: Depth of the hole. You have not yet asked" in words(heard)
    assert "1 Ask for the lines to be marked" in heard and "Enter: meanwhile " in heard
    assert "Write one of the numbers" in heard
    assert "holes.1.hole_depth" not in session.answers.texts


def test_a_way_of_a_shut_page_leads_to_its_answer_and_back(talk, at):
    heard, session, _ = talk("1", "not yet", session=at("holes.1.hole_depth"))
    assert session.answers.texts == {"lines_requested": "not_yet"}
    assert session.step.address == "holes.1.hole_depth"
    assert heard.count("Not yet: ") == 2


def test_enter_at_a_shut_page_goes_on_with_what_is_open(talk, at):
    _, session, _ = talk("", session=at("holes.1.hole_depth"))
    assert session.place.name != "hole"


def test_the_way_to_what_shuts_a_question_is_one_command_there_and_back(talk, at):
    session = at("holes.1.hole_depth")
    heard, session, _ = talk(":mend", ":mend", ":mend", "not yet", session=session)
    assert "(Then back to 'Depth of the hole'.)" in heard
    assert session.answers.texts == {"lines_requested": "not_yet"}
    assert session.step.address == "holes.1.hole_depth"
    heard, _, _ = talk(":go garden_name", ":mend", session=session)
    assert "! Nothing is shut here that an answer would open." in heard


# Commands


def test_the_commands_answer_and_stay_at_the_question(subtests, talk):
    for command, said in [
        (":why", "The name heads your plan"),
        (":how", "Any short name will do"),
        (":help", "  :skip"),
        (":what", "  :skip"),
        (":plan", "RAIN GARDEN PLAN"),
        (":waiting", "The plan still waits for"),
        (":answers", "  garden_name: "),
        (":list", "Nothing was put off."),
        (":go nowhere", "There is no question 'nowhere'"),
        (":go chosen_spot", "There is no question 'chosen_spot' that applies now"),
        (":remove", "not part of a list"),
    ]:
        with subtests.test(command=command, said=said):
            heard, session, _ = talk(command)
            assert said in heard.partition("What do you call this garden?")[2]
            assert session.step.address == "garden_name"
            assert session.answers.texts == {}


def test_a_reply_is_said_alone_and_the_question_only_when_it_is_wanted(talk):
    heard, _, _ = talk(":why", ":how", ":what")
    assert heard.count("What do you call this garden?") == 1
    heard, _, _ = talk("x", "furlongs", "furlongs", ":again")
    assert heard.count("Which state") == 2


def test_words_that_are_commands_are_no_names_of_a_garden(talk):
    for word in ("help", "back", "list", "later", "go dig_day"):
        _, session, _ = talk(word)
        assert "garden_name" not in session.answers.texts, word
    _, session, _ = talk("go wild")
    assert session.answers.texts["garden_name"] == "go wild"


def test_what_was_put_off_is_listed_with_how_to_find_it_out(talk, at):
    heard, _, _ = talk(":skip", "list", session=at("stands_after_rain"))
    listed = heard.rpartition(" 1 ")[2]
    assert "(go stands_after_rain)" in heard and len(listed) > 20


def test_going_to_a_question_and_clearing_it(talk):
    _, session, _ = talk("x", ":go rain_depth", "2 in", ":go rain_depth", ":clear", ":quit")
    assert session.answers.texts == {"garden_name": "x"}
    assert session.step.address == "rain_depth"


def test_a_whole_item_may_be_removed(talk, at):
    session = at("surfaces.1.surface_kind", {"surfaces.1.surface_kind": "roof"})
    talk(":remove", session=session)
    assert session.answers.texts == {}


def test_what_does_not_apply_is_listed_as_set_aside(talk, given, session_of):
    answers = given({"country": "us", "state": "vt"}).with_text("country", "uk")
    heard, _, _ = talk(":answers", session=session_of(answers))
    assert "state: vt (set aside: does not apply now)" in heard


def test_every_question_may_be_put_on_a_page_of_its_own(talk, at, roof):
    session = at("rough_size", roof("rectangle 30 ft by 14 ft"))
    heard, session, _ = talk(":every", ":go rain_depth", "", session=session)
    assert "every question is a page of its own" in heard
    assert session.every_question and session.answers.texts["rain_depth"] == "1 in"
    _, session, _ = talk(":every", session=session)
    assert not session.every_question


def test_a_failed_save_is_told_at_once(talk, keeper):
    keeper.refuses = "The disk is full."
    heard, _, _ = talk("x")
    assert "! NOT SAVED: The disk is full." in heard


def test_no_line_said_holds_a_bare_control_character(talk):
    heard, _, _ = talk("x", ":plan", ":answers", ":quit")
    assert all(char.isprintable() or char == "\n" for char in heard)


# The end


def test_the_end_of_the_input_says_where_it_stopped(talk):
    for typed in ((), ("later",), (":quit",)):
        heard, _, finished = talk("x", *typed)
        assert re.search(r"^Stopped at: Place \(\d of \d\d pages done\)\.$", heard, re.M)
        assert not finished


def test_skipping_everything_reaches_the_end_and_the_plan(talk):
    heard, session, finished = talk(*[":skip"] * 90)
    assert finished
    assert "Not asked yet, from 'Day the hole is dug' on:" in heard or "Not asked yet" in heard
    assert heard.count("RAIN GARDEN PLAN") == 1
    unasked = [one for one in route.open_steps(session.answers) if one.question.digs]
    assert unasked and all(session.shut(step) for step in unasked)


# What is said, and what is not


def test_yes_takes_the_choice_that_was_meant(talk, at):
    heard, session, _ = talk("ohoi", "yes", session=at("state", country="us"))
    assert "Did you mean Ohio?" in heard
    assert session.answers.texts["state"] == "oh"


def test_yes_stands_for_the_choice_meant_only_just_after_it_was_named(talk, at):
    for between in (":why", "no", "zzz"):
        session = at("stands_after_rain")
        _, session, _ = talk("nevr", between, "yes", session=session)
        assert "spots.1.stands_after_rain" not in session.answers.texts


def test_yes_takes_the_whole_of_what_was_ticked(talk, at):
    _, session, _ = talk("basement, proprety line", "yes", session=at("near_spot"))
    assert session.answers.texts["spots.1.near_spot"] == "basement, property_line"


def test_nothing_is_near_a_spot_until_somebody_says_none(talk, at):
    for key in ("near_spot", "contamination"):
        heard, session, _ = talk("", session=at(key))
        assert "Nothing is chosen. Choose each one that is there, or none of these" in " ".join(
            heard.split()
        )
        assert f"spots.1.{key}" not in session.answers.texts
        _, session, _ = talk("", "none of these", session=at(key))
        assert session.answers.texts[f"spots.1.{key}"] == "none"


def test_options_are_said_once_and_a_long_list_only_when_it_is_wanted(talk, at):
    heard, _, _ = talk("x", "no", "uk")
    units = heard.partition("Which units")[2]
    units = units.replace("Enter takes: metres and millimetres", "")
    assert units.count("metres and millimetres") == 1 and "metric:" not in units
    assert "Wyoming" not in heard
    heard, _, _ = talk("x", ":options")
    assert "Wyoming" in heard


def test_a_caution_is_said_in_full_once_and_short_after(talk, at, located):
    session = at("hole_depth", located)
    full = "anyone can break an ankle"
    heard, session, _ = talk("20 in", "", ":go hole_depth", "", "", session=session)
    assert heard.count("CAUTION: Dig only gently") == 2
    assert words(heard).count(full) == 1


def test_a_thing_is_called_by_the_name_it_was_given(talk, at):
    session = at("stands_after_rain", {"spots.1.spot_name": "the back lawn"})
    heard, _, _ = talk(session=session)
    assert "Spot 1, the back lawn: Choose a place" in heard


def test_a_new_garden_is_greeted_in_three_lines(talk):
    heard, _, _ = talk()
    greeting = heard.partition("Today, no digging")[0]
    assert greeting.count("\n") == 3 and ":remove" not in heard


def test_coming_back_says_what_is_due_and_how_far_the_garden_is(talk, given, session_of):
    answers = given(garden_name="Maple corner", country="us").with_text("state", "skip")
    heard, _, _ = talk(session=session_of(answers))
    assert heard.startswith("Maple corner: ") and "to a first size." in heard
    assert re.search(r"Start [12] of [78]", heard)
    assert "1 answer to find out" in heard
    assert ":remove" not in heard and len(heard.partition("\n\n")[0].splitlines()) <= 6


def test_no_picture_is_drawn_unless_it_is_asked_for(talk, at):
    drawn = QUESTIONS["pieces"].picture.splitlines()[1].strip()
    assert drawn
    heard, _, _ = talk(":how", session=at("pieces"))
    assert drawn not in heard
    heard, _, _ = talk(":picture", session=at("pieces"))
    assert drawn in heard


# Going elsewhere and coming back


def test_after_a_visit_one_is_back_where_one_was(talk):
    for typed in ("y", ""):
        _, session, _ = talk("x", ":go garden_name", typed)
        assert session.place.name == "place"


def test_a_visit_to_what_comes_later_leads_back_too(talk):
    _, session, _ = talk("x", ":go notes", "Ask the neighbor.")
    assert session.place.name == "place"
    assert session.answers.texts["notes"] == "Ask the neighbor."


def test_what_stands_on_no_page_may_be_gone_to_all_the_same(talk):
    _, session, _ = talk("x", ":go hard_digging", "")
    assert session.step is not None


def test_answers_given_before_are_not_walked_through_again(talk, given, session_of):
    session = session_of(given(garden_name="x", country="us", units="us"))
    heard, session, _ = talk("oh", session=session)
    assert "Which country" not in heard and "Which units" not in heard
    assert session.place.name == "water_from"


def test_the_first_open_page_is_one_command_away(talk):
    _, session, _ = talk("x", ":go notes", ":open")
    assert session.place.name == "place"


def test_a_page_is_gone_to_by_its_title(talk):
    _, session, _ = talk("x", "go the usual for the bed")
    assert session.place.name == "usual_bed"


def test_a_name_that_several_things_share_is_asked_for_in_full(talk, session_of, given):
    answers = given({"spots.1.another_spot": "yes", "spots.2.slope_run": "4 m"})
    heard, session, _ = talk(":go slope_run", session=session_of(answers))
    assert "There are 2 of these. Write which one: spots.1.slope_run, spots.2.slope_run." in words(
        heard
    )
    session.go_to("spots.2.stands_after_rain")
    _, session, _ = talk(":go slope_run", session=session)
    assert session.step.address == "spots.2.slope_run"


def test_another_spot_is_laid_out_anew_with_the_old_outline_offered(talk, session_of, given):
    spots = {
        "country": "us", "state": "mn", "room_length": "30 ft", "room_width": "16 ft",
        "spots.1.spot_name": "front", "spots.1.another_spot": "yes", "spots.2.spot_name": "back",
    }  # fmt: skip
    heard, session, _ = talk("2", "", "14 ft", session=session_of(given(spots)), at="chosen_spot")
    assert "Enter takes: 30 ft" in heard and "half typed" not in heard
    assert session.answers.texts["room_length"] == "30 ft"
    assert session.answers.texts["room_width"] == "14 ft"


def test_another_way_out_is_chosen_by_its_number_and_kept(
    talk, session_of, given, sized, level_spot
):
    room = {"garden_name": "x", "country": "us", "state": "mn", "room_length": "16 ft"}
    falls = {**level_spot, "spots.1.slope_drop": "5 in"}  # on level ground no bed is below another
    answers = given({**sized, **falls, **room, "room_width": "11 ft"})
    heard, session, _ = talk("", "", "2", session=session_of(answers), at="floor_length")
    (row,) = re.findall(r"^  (\d+) 2 beds one below the other", heard, re.M)
    heard, session, _ = talk("", "", "2", row, session=session_of(answers), at="floor_length")
    texts = session.answers.texts
    assert texts["beds"] == "2" and texts["beds_how"] == "in_a_row"
    assert "= Number of beds: 2" in heard and "(was 7 ft 9 in)" in heard
    # The floor pegged for one bed would keep its size.
    assert "floor_length" not in texts and session.place.name == "peg_out"
    assert heard.count("How long will you make the floor?") == 2


# A choice in two steps


def test_how_long_a_ribbon_is_and_how_it_feels_are_asked_one_after_the_other(talk, at, hole):
    session = at("holes.1.ribbon", hole("round", "8 in", "6 in", "11:00 left 5 in"))
    heard, session, _ = talk(":go holes.1.ribbon", "3", "", "4", "9", "2", session=session)
    said = words(heard)
    assert "1 it falls apart" in said and "5 a ribbon over 2 in" in said
    assert "under 1 in (25 mm), gritty" not in said
    assert said.count("How does it feel? 1 gritty 2 smooth") == 2
    assert "Write a number from 1 to 3." in said
    assert session.answers.texts["holes.1.ribbon"] == "medium_smooth"


def test_a_whole_answer_of_a_choice_in_two_steps_is_taken_in_one_line(talk, at, hole):
    texts = hole("round", "8 in", "6 in", "11:00 left 5 in")
    for whole in ("long_gritty", "short", "ball"):
        heard, session, _ = talk(":go holes.1.ribbon", whole, session=at("holes.1.ribbon", texts))
        assert "How does it feel" not in heard
        assert session.answers.texts["holes.1.ribbon"] == whole
