"""Going on, back and to any page: to what is open, back to where one was, past what is shut."""

from __future__ import annotations

import datetime as dt

import pytest

from interview.asking.question import UNKNOWN_TEXT
from interview.asking.sitting import Doubt
from interview.asking.way import Standing
from interview.reading import Refused

ROOF = {
    "garden_name": "Elm",
    "country": "us",
    "state": "mn",
    "units": "us",
    "surfaces.1.surface_kind": "roof",
    "surfaces.1.gutter_outlets": "1",
}


def test_enter_goes_to_the_next_open_page_and_never_through_answered_ones(session_of, given):
    session = session_of(given({**ROOF, "soil_dug": "clay"}))
    assert session.start().name == "roof_size"
    session.take({"surfaces.1.pieces": "rectangle 30 ft by 14 ft"})
    assert session.forward().name == "rough_size"


def test_back_walks_over_answered_pages_and_enter_unchanged_comes_back(session_of, given):
    session = session_of(given(ROOF))
    assert session.start().name == "roof_size"
    assert session.backward().name == "water_from"
    assert session.backward().name == "place"
    session.take()
    assert session.forward().name == "roof_size"
    assert session.forward().name == "soil_feel"


def test_the_first_page_has_none_before_it(session_of):
    session = session_of()
    assert session.start().name == "name"
    assert session.backward() is None and session.place.name == "name"


def test_after_a_change_what_it_opened_comes_first_and_then_where_one_was(session_of, given):
    session = session_of(given(ROOF))
    session.start()
    session.go_to("surfaces.1.gutter_outlets")
    session.take({"surfaces.1.gutter_outlets": "2"})
    assert session.forward().name == "spouts_here"
    session.take({"surfaces.1.outlets_here": "1"})
    # Sharing has opened too, farther on; then back.
    assert session.forward().name == "sharing"
    session.take()
    assert session.forward().name == "roof_size"


def test_a_page_gone_to_and_left_unchanged_leads_back(session_of, given):
    session = session_of(given(ROOF))
    session.start()
    assert session.go_to("the_plan").name == "the_plan"
    assert session.forward().name == "roof_size"
    assert session.go_to("nothing") is None


def test_a_length_in_paces_leads_to_the_pacing_and_on(session_of, given):
    session = session_of(given(ROOF))
    session.start()
    session.take({"surfaces.1.pieces": "rectangle 12 paces by 5 paces"})
    assert session.answers.texts["measured_by"] == "paces"
    assert session.forward().name == "pacing_line"
    session.take({"walkers.1.pace_line": "50 ft"})
    assert session.forward().name == "paces"
    session.take({"walkers.1.pace_counts": "20; 20; 20"})
    assert session.forward().name == "soil_feel"


def test_back_from_the_pacing_is_the_length_and_a_tape_then_needs_none(session_of, given):
    session = session_of(given(ROOF))
    session.start()
    session.take({"surfaces.1.pieces": "rectangle 12 paces by 5 paces"})
    assert session.forward().name == "pacing_line"
    assert session.backward().name == "roof_size"
    assert session.forward().name == "pacing_line"
    assert session.backward().name == "roof_size"
    session.take({"surfaces.1.pieces": "rectangle 30 ft by 12 ft"})
    assert "measured_by" not in session.answers.texts
    assert session.forward().name == "soil_feel"


def test_back_within_the_pacing_is_the_page_before_of_the_same_walker(session_of, given):
    session = session_of(given(ROOF))
    session.start()
    session.take({"surfaces.1.pieces": "rectangle 12 paces by 5 paces"})
    session.forward()
    session.take({"walkers.1.pace_line": "50 ft"})
    assert session.forward().name == "paces"
    assert session.backward().name == "pacing_line"
    assert session.backward().name == "roof_size"


def test_pacing_stays_asked_where_a_pace_is_known_or_was_chosen(session_of, given, subtests):
    whose = {"walkers.1.pace_line": "50 ft", "walkers.1.pace_counts": "20; 20; 20"}
    for kept in ({"measured_by": "paces"}, {"measured_by": "paces", **whose}):
        with subtests.test(kept=kept):
            session = session_of(given({**ROOF, **kept}))
            session.go_to("roof_size")
            session.take({"surfaces.1.pieces": "rectangle 30 ft by 12 ft"})
            assert session.answers.texts["measured_by"] == "paces"


def test_a_box_that_an_answer_opens_keeps_the_page(session_of, given, located):
    session = session_of(given({**located, "lines_answered": "no"}).without("lines_finished_on"))
    session.go_to("lines_answered")
    session.take({"lines_answered": "yes"})
    assert session.answers.texts["lines_answered"] == "yes"
    assert session.forward().name == "answered"
    assert [one.address for one in session.boxes()][-1] == "lines_finished_on"
    with pytest.raises(Refused, match="Nothing was written"):
        session.take()
    assert session.at_fault == "lines_finished_on"


def test_the_boxes_show_what_the_words_so_far_would_open(session_of):
    session = session_of()
    session.go_to("water_from")
    assert [one.question.key for one in session.boxes()] == ["surface_kind"]
    words = {"surfaces.1.surface_kind": "roof"}
    assert [one.question.key for one in session.boxes(words)][-1] == "gutter_outlets"
    assert len(session.boxes({"surfaces.1.surface_kind": "no such"})) == 1
    assert session.answers.texts == {}


def test_the_path_is_looked_through_once_until_an_answer_a_page_or_the_day_changes(
    session_of, given, monkeypatch
):
    session, looked = session_of(given(ROOF)), []
    shut = type(session).shut
    monkeypatch.setattr(
        type(session), "shut", lambda self, step: (looked.append(step.address), shut(self, step))[1]
    )

    def looks() -> bool:
        looked.clear()
        session.way.progress()
        return bool(looked)

    assert looks() and not looks()
    session.start()
    session.take({"surfaces.1.pieces": "rectangle 30 ft by 14 ft"})
    assert looks() and not looks()
    session.taken.append("rough_size")
    assert session.way.taken == (*session.taken,) and looks() and not looks()
    now = session.now
    session._now = lambda: now + dt.timedelta(days=1)
    assert looks() and not looks()


def test_boxes_are_kept_together_or_not_at_all(session_of, keeper):
    session = session_of()
    session.go_to("slope")
    with pytest.raises(Refused):
        session.take({"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "many"})
    assert session.at_fault == "spots.1.slope_drop"
    assert session.answers.texts == {} and keeper.saves == []
    session.take({"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "2 in"})
    assert len(keeper.saves) == 1


def test_two_doubted_boxes_are_each_doubted_once(session_of):
    session = session_of()
    session.go_to("outline")
    words = {"room_length": "400 ft", "room_width": "300 ft"}
    tries = 0
    while tries < 5:
        tries += 1
        try:
            session.take(words)
            break
        except Doubt:
            continue
    assert tries <= 3
    assert session.answers.texts["room_width"] == "300 ft"


def test_a_usual_page_with_a_row_of_no_usual_value_asks_for_it(session_of, given):
    session = session_of(given({"country": "canada", "lines_requested": "asked"}))
    session.go_to("ticket")
    with pytest.raises(Refused, match="Nothing was written"):
        session.take({"lines_asked_on": "2026-05-20"})
    assert session.at_fault == "lines_holidays"
    session.take({"lines_asked_on": "2026-05-20", "lines_holidays": "none"})
    assert session.taken == ["ticket"]
    assert session.answers.texts["lines_ticket"] == UNKNOWN_TEXT


def test_what_is_shut_is_shown_once_with_its_reason_and_then_passed(session_of, given):
    session = session_of(given(ROOF))
    for place in session.way.places:
        if place.page.visit in ("today", "lines day"):
            session.taken += [place.name] if place.page.usual else []
            for step in session.way.boxes(place):
                if step.address not in session.answers.texts:
                    session.put_off(step)
    session.offer(session.jump("lines_requested"), "not_yet")
    session.go_to("sun_hours")
    session._came_from = ""
    shut = session.forward()
    assert shut.name == "hole" and session.way.standing(shut) is Standing.SHUT
    assert "not yet asked" in session.shut(session.step)[0]
    assert session.ways(session.step)[0].address == "lines_requested"
    assert session.forward().name == "usual_bed"


def test_the_way_over_the_answer_that_opens_a_shut_page_leads_back_to_it(
    session_of, given, located
):
    session = session_of(given({**located, "mark_distance": "1 ft"}))
    assert session.go_to("holes.1.hole_depth").name == "hole"
    assert session.mend().address == "mark_distance"
    assert session.place.name == "marks"
    session.take({"mark_distance": "20 ft"})
    assert session.forward().name == "hole"
    assert session.way.standing(session.place) is Standing.OPEN


def test_the_end_of_a_visit_is_told_though_its_rows_were_taken(session_of, given):
    session = session_of(given({"lines_requested": "not_yet"}))
    session.taken.append("end_of_today")
    session.go_to("share_percent")
    session.go_to("end_of_today")
    assert session.way.standing(session.place) is Standing.DONE
    before = session.way.before(session.place)
    assert session.way.after(before).name == "end_of_today"


def test_waiting_is_told_until_every_owner_has_answered(session_of, given, located):
    waiting = given({**located, "lines_answered": "no"})
    assert "waiting" in [one.name for one in session_of(waiting).way.places]
    assert "waiting" not in [one.name for one in session_of(given(located)).way.places]


def test_a_sitting_comes_back_to_the_page_it_was_left_at(session_of, given, located, keeper):
    answers = given({**located, "lines_answered": "no"})
    session = session_of(answers)
    session.go_to("waiting")
    session.save()
    assert keeper.saves[-1][1] == "waiting"
    again = session_of(answers, "waiting")
    assert again.start().name in ("waiting", "hole")


def test_whoever_puts_everything_off_comes_to_the_plan(session_of, clock):
    session = session_of()
    place, seen = session.start(), []
    while place is not None and len(seen) < 120:
        seen.append(place.name)
        if not session.shut(session.step) if session.step else True:
            for step in session.way.wanted(place):
                session.put_off(step)
            session.take()
        place = session.forward()
    assert seen[-1] == "the_plan"
    assert len(seen) == len(set(seen))


@pytest.mark.parametrize("seed", range(4))
def test_after_any_answer_there_is_an_open_page_an_end_or_where_one_was(
    seed, session_of, chance, located, given, clock
):
    luck = chance(seed)
    session = session_of(given(located) if seed % 2 else None)
    session.start()
    for _ in range(60):
        left = session.place
        words = {one.address: luck.text(one, session.answers) for one in session.boxes()}
        try:
            session.take(words)
        except (Refused, Doubt):
            for step in session.boxes():
                if not session.shut(step):
                    session.put_off(step)
        was = session._came_from
        place = session.forward()
        if place is None:
            assert session.place.name == "the_plan" and session.way.first_open() is None
        else:
            standing = session.way.standing(place)
            assert standing is not Standing.DONE or place.page.tells or place.name == was
            assert place != left or session.way.is_open(place)
        turn = luck.rng.random()
        if turn < 0.1:
            session.backward()
        elif turn < 0.2:
            session.go_to(luck.rng.choice(session.way.places).name)
        clock.now += dt.timedelta(minutes=1)


def test_a_change_says_what_it_did(session_of, sized, typed):
    session = typed(sized)
    assert session.changed == ""
    session.offer(session.jump("rain_depth"), "2 in")
    assert session.changed.startswith("This changes: ") and ", now " in session.changed
    session.offer(session.jump("rain_depth"), "2 in")
    assert session.changed == ""


def test_a_removed_item_takes_its_pages_along(session_of, given):
    session = session_of(given({"surfaces.1.surface_kind": "roof",
                                "surfaces.1.another_surface": "yes",
                                "surfaces.2.surface_kind": "roof"}))  # fmt: skip
    session.taken += ["usual_roofs", "usual_roofs.2, not roof_sides", "usual_bed"]
    session.remove_item("surfaces", 1)
    assert session.taken == ["usual_roofs, not roof_sides", "usual_bed"]
