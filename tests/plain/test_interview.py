"""The interview on plain lines, typed through from beginning to end."""

from __future__ import annotations

from interview.asking import route
from interview.asking.question import UNKNOWN_TEXT
from interview.plain import interview as plain


def test_each_answer_is_said_back_and_the_next_question_comes(talk):
    heard, session, finished = talk("Maple corner", "us", "oh")
    assert not finished
    assert "= Maple corner" in heard and "= United States" in heard
    assert session.answers.texts == {"garden_name": "Maple corner", "country": "us", "state": "oh"}
    assert session.step.address == "units"


def test_a_refused_answer_is_explained_and_the_question_waits(talk):
    heard, session, _ = talk("x", "furlongs", "us")
    assert '! "furlongs" is not on the list.' in heard
    assert heard.count("[country]") == 1
    assert session.answers.texts["country"] == "us"


def test_an_empty_line_takes_the_value_offered(talk, session_of):
    session = session_of()
    session.jump("rain_depth")
    heard, session, _ = talk("", session=session)
    assert "Enter alone takes: 1 in" in heard
    assert session.answers.texts["rain_depth"] == "1 in"


def test_an_empty_line_where_nothing_is_offered_is_refused(talk):
    heard, session, _ = talk("", "us", "", "oh")
    assert heard.count("! Nothing was written.") == 1
    assert session.answers.texts == {
        "garden_name": "My rain garden", "country": "us", "state": "oh"
    }  # fmt: skip


def test_an_empty_line_at_an_answered_question_keeps_it(talk):
    heard, session, _ = talk("x", ":back", "", "uk")
    assert "kept: x" in heard
    assert session.answers.texts == {"garden_name": "x", "country": "uk"}


def test_a_list_ends_with_an_empty_line(talk, session_of):
    session = session_of()
    session.offer(session.jump("lines_requested"), "asked")
    session.jump("lines_holidays")
    talk("2026-05-25", "2026-07-03", "", session=session)
    assert session.answers.texts["lines_holidays"] == "2026-05-25\n2026-07-03"


def test_skipping_keeps_that_it_is_not_known_and_says_how_to_find_out(talk):
    heard, session, _ = talk("x", "uk", ":skip")
    assert f"= {UNKNOWN_TEXT}. To find out: Look at your tape measure." in heard
    assert session.answers.texts["units"] == UNKNOWN_TEXT


def test_the_commands_answer_and_stay_at_the_question(subtests, talk):
    for command, words in [
        (":why", "The name heads your plan"),
        (":how", "Any short name will do"),
        (":help", "  :skip"),
        (":what", "  :skip"),
        (":plan", "RAIN GARDEN PLAN"),
        (":waiting", "The plan still waits for"),
        (":list", "  garden_name: "),
        (":go nowhere", "There is no question 'nowhere'"),
        (":go state", "There is no question 'state' that applies now"),
        (":remove", "not part of a list"),
    ]:
        with subtests.test(command=command, words=words):
            heard, session, _ = talk(command)
            assert words in heard.partition("[garden_name]")[2]
            assert session.step.address == "garden_name"
            assert session.answers.texts == {}


def test_going_to_a_question_and_clearing_it(talk):
    _, session, _ = talk("x", ":go rain_depth", "2 in", ":go rain_depth", ":clear", ":quit")
    assert session.answers.texts == {"garden_name": "x"}
    assert session.step.address == "rain_depth"


def test_a_whole_item_may_be_removed(talk, session_of):
    session = session_of()
    session.offer(session.jump("surfaces.1.surface_name"), "roof")
    session.jump("surfaces.1.surface_name")
    talk(":remove", session=session)
    assert session.answers.texts == {}


def test_what_does_not_apply_is_listed_as_set_aside(talk, given, session_of):
    answers = given({"country": "us", "state": "vt"}).with_text("country", "uk")
    heard, _, _ = talk(":list", session=session_of(answers))
    assert "state: vt (set aside: does not apply now)" in heard


def test_what_is_shut_is_said_at_its_question(talk, session_of):
    session = session_of()
    session.jump("holes.1.hole_depth")
    heard, session, _ = talk("20 in", session=session)
    assert "SHUT: You have not yet asked" in heard
    assert "holes.1.hole_depth" not in session.answers.texts


def test_the_way_to_what_shuts_a_question_is_one_command_there_and_back(talk, session_of):
    session = session_of()
    session.jump("holes.1.hole_depth")
    heard, session, _ = talk(":mend", ":mend", ":mend", "not yet", session=session)
    assert "To change: “Locate request”. Type :mend to go there and come back." in heard
    assert "(Then back to 'Depth of the hole'.)" in heard
    assert session.answers.texts == {"lines_requested": "not_yet"}
    assert session.step.address == "holes.1.hole_depth"
    heard, _, _ = talk(":go units", ":mend", session=session)
    assert "! Nothing is shut here that an answer would open." in heard


def test_a_failed_save_is_told_at_once(talk, keeper):
    keeper.refuses = "The disk is full."
    heard, _, _ = talk("x")
    assert "! NOT SAVED: The disk is full." in heard


def test_skipping_everything_reaches_the_end_and_the_plan(talk):
    heard, session, finished = talk(*[":skip"] * 300)
    assert finished
    assert "That was the last question." in heard
    assert "Not asked yet, from 'Day the hole is dug' on:" in heard
    assert "RAIN GARDEN PLAN" in heard
    assert all(session.shut(step) for step in route.open_steps(session.answers))


def test_a_whole_garden_can_be_typed_on_plain_lines(
    talk, session_of, located, level_spot, roof, clock
):
    answers = {
        "garden_name": "Maple corner", "units": "us", "country": "us", "state": "Vermont",
        **located, **level_spot, "children": "no",
        "permission": "own", "rules_checked": "not_needed",
        "holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "20 in",
        "holes.1.floor_depth": "10 in", "holes.1.hole_smell": "earth", "holes.1.hole_seeps": "no",
        "holes.1.hole_shape": "round", "holes.1.hole_width": "8 in",
        "holes.1.soaked_already": "yes",
        "holes.1.water_at_mark": "8 in", "holes.1.test_start": "2026-05-27 10:00",
        "holes.1.read_as": "left",
        "holes.1.readings": "+1h left 6 7/8 in; +2h left 5 3/4 in; +3h left 4 7/8 in",
        "holes.1.hole_left": "covered",
        **roof("rectangle 20 ft by 30 ft"),
        "spout_distance": "20 ft", "spout_fall": "6 in",
    }  # fmt: skip
    said = []
    session = session_of()

    def ask(prompt: str) -> str:
        if prompt == ". ":
            return ""
        offered = session.offered(session.step)
        return answers.get(session.step.address) or ("" if offered else ":skip")

    assert plain.run(session, ask, said.append)
    plan = session.plan
    assert plan.verdict.value in ("good", "fix")
    assert "  ! " not in "\n".join(said)
    assert plan.size.garden and plan.planting.chosen.total > 0


def test_no_line_said_holds_a_bare_control_character(talk):
    heard, _, _ = talk("x", ":plan", ":list", ":quit")
    assert all(char.isprintable() or char == "\n" for char in heard)


# What is said, and what is not


def test_a_question_is_read_once_and_again_when_it_is_wanted(talk):
    heard, _, _ = talk("x", "uk", ":why", ":how", "furlongs", "furlongs")
    assert heard.count("Which units are on your tape") == 1
    heard, _, _ = talk("x", "uk", "furlongs", ":again")
    assert heard.count("Which units are on your tape") == 2


def test_yes_takes_the_choice_that_was_meant(talk, given, session_of):
    session = session_of(given(country="us"))
    session.jump("state")
    heard, session, _ = talk("ohoi", "yes", session=session)
    assert "Did you mean Ohio?" in heard and "= Ohio" in heard
    assert session.answers.texts["state"] == "oh"


def test_yes_stands_for_the_choice_meant_only_just_after_it_was_named(talk, given, session_of):
    for between in (":why", "no", "zzz"):
        session = session_of(given(country="us"))
        session.jump("state")
        _, session, _ = talk("ohoi", between, "yes", session=session)
        assert "state" not in session.answers.texts


def test_yes_takes_the_whole_of_what_was_ticked(talk, session_of):
    session = session_of()
    session.jump("spots.1.near_spot")
    _, session, _ = talk("basement, proprety line", "yes", session=session)
    assert session.answers.texts["spots.1.near_spot"] == "basement, property_line"


def test_options_are_said_once(talk):
    heard, _, _ = talk("x", "uk")
    units = heard.partition("[units]")[2]
    assert units.count("metres and") == 1 and "one of: " not in units


def test_a_thing_is_called_by_the_name_it_was_given(talk, session_of):
    session = session_of()
    session.jump("spots.1.spot_name")
    heard, _, _ = talk("the back lawn", session=session)
    assert "Spot 1, the back lawn: Turn the level" in heard


def test_help_is_no_name_of_a_garden(talk):
    heard, session, _ = talk("help", "?")
    assert heard.count(":quit ") == 2
    assert session.answers.texts == {"garden_name": UNKNOWN_TEXT}


def test_coming_back_says_how_far_the_garden_is_and_not_every_command(talk, given, session_of):
    session = session_of(given(garden_name="Maple corner", units="us").with_text("country", "skip"))
    heard, _, _ = talk(session=session)
    assert heard.startswith("Maple corner: 3 of ")
    assert "1 of them put off" in heard
    assert ":remove" not in heard


# Going elsewhere and coming back


def test_after_a_visit_one_is_back_where_one_was(talk):
    _, session, _ = talk("x", "us", ":go garden_name", "y")
    assert session.step.address == "state"
    _, session, _ = talk("x", "us", ":go country", "")
    assert session.step.address == "state"


def test_a_visit_to_what_comes_later_leads_back_too(talk):
    _, session, _ = talk("x", ":go notes", "Ask the neighbor.")
    assert session.step.address == "country"
    assert session.answers.texts["notes"] == "Ask the neighbor."


def test_questions_that_a_visit_opens_are_asked_before_one_is_back(talk, given, session_of):
    session = session_of(given(garden_name="x", units="us", country="uk"))
    assert session.step.address == "surfaces.1.surface_kind"
    _, session, _ = talk(":go country", "us", session=session)
    assert session.step.address == "state"
    _, session, _ = talk("oh", ":skip", session=session)
    assert session.answers.texts["wetland_list_region"] == UNKNOWN_TEXT
    assert session.step.address == "surfaces.1.surface_kind"


def test_answers_given_before_are_not_walked_through_again(talk, given, session_of):
    session = session_of(given(garden_name="x", country="us", units="us", soil_dug="clay"))
    session.offer(session.jump("surfaces.1.surface_kind"), "gravel")
    session.jump("state")
    _, session, _ = talk("oh", "rectangle 9 ft by 8 ft", "", session=session)
    assert session.step.address == "rain_depth"


def test_the_first_open_question_is_one_command_away(talk):
    _, session, _ = talk("x", ":go notes", ":open")
    assert session.step.address == "country"


def test_a_name_that_several_things_share_is_asked_for_in_full(talk, session_of, given):
    answers = given({"spots.1.another_spot": "yes", "spots.2.slope_run": "4 m"})
    heard, session, _ = talk(":go slope_run", session=session_of(answers))
    assert "There are 2 of these. Write which one: spots.1.slope_run, spots.2.slope_run." in heard
    session.jump("spots.2.spot_name")
    _, session, _ = talk(":go slope_run", session=session)
    assert session.step.address == "spots.2.slope_run"


# What an answer does is said at once


def test_a_verdict_is_said_with_the_answer_that_brings_it(
    subtests, talk, session_of, given, located
):
    for typed, words in [
        (("spots.1.near_spot", "basement", "spots.1.basement_distance", "8 ft"), "too near"),
        (("mark_distance", "1 ft"), "A mark is within"),
        (("dig_day", "2026-07-20"), "On Monday 2026-07-20 digging is shut"),
        (
            (
                *("spots.1.slope_run", "10 ft", "spots.1.slope_drop", "6 in"),
                *("spots.1.slope_drop_turned", "8 in", "8 in"),
            ),
            "The two readings differ by",
        ),
    ]:
        with subtests.test(typed=typed, words=words):
            session = session_of(given(located, **{"children": "no"}))
            heard = ""
            for text in typed:
                if session.jump(text) is None:
                    said, session, _ = talk(text, session=session)
                    heard += said
            assert words in " ".join(heard.split())
