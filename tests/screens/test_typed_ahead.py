"""Keys pressed before a question could be read, and keys that only go to a choice."""

from __future__ import annotations

import pytest
from textual import events
from textual.message import Message

from interview.screens import typed_ahead
from interview.screens.typed_ahead import TypedAhead


@pytest.fixture
def ahead() -> TypedAhead:
    """A question that is on the screen since second 10, after an Enter at 9.9."""
    keys = TypedAhead()
    assert keys.heeds("enter", False, 9.9)
    keys.turned(10.0)
    return keys


def test_what_was_pressed_before_the_question_showed_is_not_for_it(subtests, ahead):
    for key in ["a", "8", "enter", "space", "backspace", "ctrl+t", "paste"]:
        with subtests.test(key=key):
            assert not ahead.heeds(key, len(key) == 1, 9.99)
            assert ahead.heeds(key, len(key) == 1, 11.0)


def test_keys_that_only_move_about_are_never_held_back(ahead) -> None:
    for key in ("escape", "ctrl+g", "ctrl+q", "f1", "down"):
        assert ahead.heeds(key, False, 9.99)


def test_a_burst_that_runs_on_into_the_question_is_left_out_until_it_pauses(ahead) -> None:
    at = 9.99
    for key in "metric":
        assert not ahead.heeds(key, True, at)
        at += 0.01
    assert not ahead.heeds("enter", False, at)
    assert ahead.heeds("m", True, at + 0.06)
    assert ahead.heeds("e", True, at + 0.061)


def test_text_that_follows_an_unhurried_key_at_once_is_for_the_question(ahead) -> None:
    """A line that is emptied and sent anew in one piece, as over a slow connection."""
    at = 11.0
    assert ahead.heeds("ctrl+u", False, at)
    for key in "40 by 30":
        at += 0.001
        assert ahead.heeds(key, True, at)


def test_enter_held_down_answers_one_question_alone(ahead) -> None:
    at = 10.0
    for _ in range(100):
        assert not ahead.heeds("enter", False, at)
        at += 0.033
    assert ahead.heeds("enter", False, at + 0.2)


def test_dont_know_yet_held_down_puts_off_one_question_alone() -> None:
    keys = TypedAhead()
    assert keys.heeds("ctrl+t", False, 1.0)
    keys.turned(1.05)
    assert not keys.heeds("ctrl+t", False, 1.1)
    assert keys.heeds("ctrl+t", False, 1.5)


def test_within_one_question_enter_is_free_once_it_had_its_distance(ahead) -> None:
    assert ahead.heeds("f", True, 10.5)
    assert ahead.heeds("enter", False, 10.6)
    assert ahead.heeds("g", True, 10.61)
    assert ahead.heeds("enter", False, 10.62)


async def test_a_paste_handed_over_as_keys_answers_one_question_and_says_so(
    sit, monkeypatch
) -> None:
    async with sit("garden.yaml") as person:
        monkeypatch.setattr(typed_ahead, "REST", 3600.0)
        monkeypatch.setattr(typed_ahead, "BURST", 3600.0)
        await person.press(*"Oak", "enter")
        await person.press(*"mn", "enter", *"1", "enter")
        assert person.session.answers.texts == {"garden_name": "Oak"}
        assert person.asked == "state"
        assert "pressed before this question appeared were ignored" in person.sees_words()
        monkeypatch.setattr(typed_ahead, "REST", 0.0)
        monkeypatch.setattr(typed_ahead, "BURST", 0.0)
        await person.press(*"mn")
        assert person.asked == "state"
        await person.press("enter")
        assert person.asked == "surfaces.1.surface_kind"
        assert person.session.answers.texts["state"] == "mn"
        assert "were ignored" not in person.sees_words()


async def test_a_paste_that_was_sent_before_the_question_showed_is_left_out(sit) -> None:
    async with sit("garden.yaml") as person:
        early = events.Paste("Elm")
        early.time = Message().time - 3600
        person.app._driver.process_message(early)
        await person.rests()
        assert person.app.focused.value == ""
        assert "were ignored" in person.told


async def test_a_number_or_a_letter_only_goes_to_a_choice(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("units")
        for key, place in (("2", 1), ("f", 0), ("1", 0), ("m", 1)):
            await person.press(key)
            assert person.asked == "units"
            assert person.app.focused.highlighted == place
        assert "A number or the arrows choose one; then press Enter." in person.sees_words()
        await person.press("enter")
        assert person.session.answers.texts["units"] == "metric"


async def test_a_page_that_is_being_turned_has_no_field_yet(sit, sample) -> None:
    """Keys reach the page while the old field is taken away and while the next one is made."""
    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("surfaces.1.surface_kind")
        slot, old = person.app.screen._slot, person.app.screen.field
        gone = slot.remove_children()
        assert person.app.screen.field is None
        await gone
        new = type(old)(old.asked, old._options)
        made = slot.mount(new)
        assert person.app.screen.field is None
        await made
        assert person.app.screen.field is new


async def test_choices_gone_over_on_the_way_back_are_passed_over(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("surfaces.1.surface_kind")
        await person.press(*["down", "escape"] * 3)
        await person.settles()
        assert person.page == "QuestionScreen" and person.asked != "surfaces.1.surface_kind"
