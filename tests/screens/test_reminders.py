"""How one is told that a reading is due: what is remembered, and what the terminal is sent."""

from __future__ import annotations

import os
import re

from hypothesis import given as every
from hypothesis import strategies as st

from interview.answers_file import reminders
from interview.answers_file.reminders import NAMES, Reminders
from interview.screens.desktop import Desktop, desktop_of, sequence


def test_all_ways_of_telling_are_on_until_one_is_switched():
    assert reminders.kept() == Reminders(True, True, True, True)
    assert reminders.keep(Reminders().switched("bell").switched("desktop"))
    assert reminders.kept() == Reminders(bell=False, notice=True, title=True, desktop=False)


def test_each_is_kept_apart_from_the_others(subtests):
    for name in NAMES:
        with subtests.test(name=name):
            chosen = Reminders().all_set(False).switched(name)
            reminders.keep(chosen)
            assert reminders.kept() == chosen
            assert chosen.any_on and not Reminders().all_set(False).any_on


def test_a_file_that_is_not_ours_leaves_everything_on(subtests):
    for text in [b"", b"\xff\xfe", b"bell=maybe\nwhat=off", b"bell=off " * 999]:
        with subtests.test(text=text):
            place = reminders.place()
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(text)
            assert reminders.kept() == Reminders()


def test_a_choice_that_cannot_be_kept_is_told():
    place = reminders.place()
    place.mkdir(parents=True)
    assert not reminders.keep(Reminders())
    assert reminders.kept() == Reminders()
    assert reminders.place({"XDG_CONFIG_HOME": "here", "HOME": "/home/ann"}).is_absolute()


def test_a_pipe_of_that_name_is_not_waited_for():
    place = reminders.place()
    place.parent.mkdir(parents=True)
    os.mkfifo(place)
    assert reminders.kept() == Reminders()


def test_a_notification_goes_only_to_a_terminal_known_to_take_it(subtests):
    for environ, desktop in [
        ({"TERM": "xterm-256color", "TERM_PROGRAM": "iTerm.app"}, Desktop.OSC_9),
        ({"TERM": "xterm-256color", "TERM_PROGRAM": "WezTerm"}, Desktop.OSC_777),
        ({"TERM": "xterm-ghostty"}, Desktop.OSC_777),
        ({"TERM": "foot-extra"}, Desktop.OSC_777),
        ({"TERM": "rxvt-unicode-256color"}, Desktop.OSC_777),
        ({"TERM": "xterm-kitty"}, Desktop.OSC_99),
        ({"TERM": "xterm-256color", "VTE_VERSION": "7600"}, Desktop.OSC_777),
        ({"TERM": "xterm-256color", "VTE_VERSION": "4205"}, Desktop.NONE),
        ({"TERM": "xterm-256color", "VTE_VERSION": "new"}, Desktop.NONE),
        ({"TERM": "xterm-256color"}, Desktop.NONE),
        ({"TERM": "xterm-256color", "TERM_PROGRAM": "Apple_Terminal"}, Desktop.NONE),
        ({}, Desktop.NONE),
        ({"TERM": "linux", "VTE_VERSION": "7600"}, Desktop.NONE),
        ({"TERM": "dumb", "TERM_PROGRAM": "iTerm.app"}, Desktop.NONE),
        ({"TERM": "tmux-256color", "TERM_PROGRAM": "iTerm.app"}, Desktop.NONE),
        ({"TERM": "screen.xterm-kitty"}, Desktop.NONE),
        ({"TERM": "xterm-kitty", "TMUX": "tmux-1000/default,1,0"}, Desktop.NONE),
        ({"TERM": "foot", "STY": "4711.pts-1"}, Desktop.NONE),
    ]:
        with subtests.test(environ=environ, desktop=desktop):
            assert desktop_of(environ) is desktop


@every(st.text(), st.text(), st.sampled_from(Desktop))
def test_no_name_of_a_hole_can_end_a_sequence_or_begin_another(title, body, desktop):
    sent = sequence(desktop, title, body)
    if desktop is Desktop.NONE:
        assert sent == ""
        return
    whole = re.compile(rf"(?:\x1b\]{desktop.value};[^\x00-\x1f\x7f-\x9f]*\x1b\\)+")
    assert whole.fullmatch(sent)


def test_the_sequences_are_those_their_terminals_describe():
    assert sequence(Desktop.OSC_9, "Soak test", "hole 1") == "\x1b]9;Soak test: hole 1\x1b\\"
    assert sequence(Desktop.OSC_777, "a;b", "c;d") == "\x1b]777;notify;a,b;c;d\x1b\\"
    assert sequence(Desktop.OSC_99, "a", "b").count("i=rain-garden") == 2


async def test_the_ways_of_being_told_stand_under_each_other(sit, write, located) -> None:
    texts = {**located, "holes.1.hole_depth": "15 in", "holes.1.water_at_mark": "8 in"}
    path = write("garden.yaml", {**texts, "holes.1.test_start": "now", "holes.1.read_as": "left"})
    async with sit(str(path)) as person:
        assert person.page == "SoakScreen"
        await person.press("b")
        rows = person.sees().splitlines()
        places = [next(r for r in rows if f" {at}  o" in r.replace("▸", " ")) for at in "1234"]
        assert len({row.replace("▸", " ").index("  o") for row in places}) == 1
