"""Every kind of page in each usual window: whole, nothing over it, and one sees where one is.

The first page, the soak test, sizes and plants have such tests beside the others of theirs too.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

import pytest
from textual.geometry import Region
from textual.widget import Widget
from textual.widgets import Button, Input, OptionList, Static

from interview.screens.frame import KeyLine
from interview.screens.palette import CURSOR, POINTER
from interview.screens.usual_rows import UsualRows
from tests.screens.test_pages import HOSE, ROOF, go
from tests.screens.test_soak_page import HOLE

SIZES = [(60, 20), (80, 24), (100, 30), (160, 45)]
PAGES = {
    "plan": (("ctrl+l",), "▲ FIX Some things must be changed or found out first."),
    "figures": (("ctrl+l", "ctrl+o"), "First day to dig: "),
    "drawings": (("f3", "3"), "[3 Pond]"),
    "three sizes": (("f4", "3"), "generous"),
    "every answer": (("ctrl+g",), "pages done"),
    "keys": (("f1",), "Your answers are kept in"),
}
"""The keys that open a page, and words of the state it is in."""
DIALOGS = {
    "swap": (("f5", "down", "enter"), "In place of"),
    "why not": (("f5", "ctrl+y"), "Which plant? By common or scientific name."),
    "take an answer away": (("ctrl+g", "down", "f7"), "Take away the answer to"),
}
"""The same of what is asked in between, which has no key line of its own or stands over it."""
QUESTIONS = {
    "rain_depth": "How much rain should the garden hold",
    "state": "Which state is the garden in?",
    "spots.1.near_spot": "Which of these lie within about",
    "spots.1.slope_run": "Stretch a level string between two",
    "surfaces.1.pieces": "How big is this side of the roof?",
    "favourites": "Are there plants you want to have in it?",
    "prices": "What do the materials cost where you buy them?",
    "holes.1.hole_width": "How wide is the hole?",
    "levels_read": "Is the garden dug, and have you read its levels?",
}
"""A question of each kind, and words of it."""
BEGUN = {
    "usual_bed": "Enter takes all; a number or an arrow, then Enter, changes one.",
    "end_of_today": "Not all of the first day's work is done yet.",
    "hole": "SHUT: You have not yet asked for the buried lines to be marked.",
    "basement_distance": "Keep the distance and watch the basement walls",
}
"""Pages of a garden that is begun: usual values, what is told, shut, beside the yard."""
TESTED = {
    "soak": ((), "Cover the hole and take the next reading at"),
    "reading": (("r",), "How deep is the water now?"),
    "reminders": (("b",), "When a reading is due, tell me by:"),
    "meaning": (("m",), "walls all round"),
}
"""Keys on the page of a soak test with a reading, and words of what they open."""
PIECES = "Plan area so far: 775 ft²; 388 ft² of it drains here."


def seen(widget: Widget) -> tuple[Region, Region]:
    """Return the part of a widget that no box around it hides, and all of it."""
    place = widget.screen.find_widget(widget)
    return place.region.intersection(place.clip), place.region


def leaves(page: Widget) -> Iterator[Widget]:
    """Yield what stands on the page and holds nothing else."""
    for one in page.walk_children(Widget):
        shown = all(above.display for above in one.ancestors_with_self)
        if shown and not one.displayed_children and one.id != "too_small" and one.size.area:
            yield one


def faults(page: Widget) -> Iterator[str]:
    """Yield what is cut off or lies over something else."""
    there = []
    for one in leaves(page):
        part, whole = seen(one)
        around = [above for above in one.ancestors if isinstance(above, Widget)]
        scrolls = any(above.max_scroll_y or above.max_scroll_x for above in around)
        if not scrolls and part != whole:
            yield f"{one!r} is cut off: {part} of {whole}"
        if isinstance(one, (Static, Button)):
            lines = one.get_content_height(page.size, page.size, one.content_size.width)
            if lines > one.content_size.height:
                yield f"{one!r} has {lines} lines and room for {one.content_size.height}"
        if part.area:
            there.append((one, part))
    for (one, part), (other, over) in combinations(there, 2):
        if part.overlaps(over):
            yield f"{one!r} lies over {other!r}"


def where_one_is(person) -> bool:
    """Tell whether what has the focus is in sight, and marked as no other part of its page is."""
    focused = person.app.focused
    if focused is None or not seen(focused)[0].area:
        return False
    if isinstance(focused, Input):
        return focused.styles.border_left[0] in ("heavy", "thick")
    top, _ = seen(focused)
    rows = [row[top.x : top.right] for row in person.sees().splitlines()[top.y : top.bottom]]
    marked = sum(any(mark in row for mark in (CURSOR, POINTER)) for row in rows)
    if isinstance(focused, UsualRows) and focused.marked is None:
        return focused.styles.border_left[0] == "thick"
    if isinstance(focused, (OptionList, Button, KeyLine)):
        return marked == 1
    # What is only read takes all keys that scroll it: there is nothing else on its page.
    return focused.max_scroll_y >= 0


async def looked_at(person, words: str, where: str, keyed: bool = True) -> list[str]:
    """Return what is wrong in each window; without ``keyed`` the last line may be another's."""
    said = []
    for size in SIZES:
        await person.pilot.resize_terminal(*size)
        await person.settles()
        page = person.app.screen
        said += [f"{where} {size}: {one}" for one in faults(page)]
        rows = person.sees().splitlines()
        ends = rows[-1].rstrip().endswith("F1 help  ^Q quit") or not keyed
        if not ends or any(len(row) > size[0] for row in rows):
            said.append(f"{where} {size}: {rows[-1]!r}")
        told = [str(one.render()) for one in leaves(page) if isinstance(one, Static)]
        if words not in f"{person.sees_words()} {' '.join(' '.join(told).split())}":
            said.append(f"{where} {size}: “{words}” is not seen")
        if not where_one_is(person):
            said.append(f"{where} {size}: the focus is not seen")
    return said


@pytest.mark.parametrize("name", PAGES)
async def test_a_page_is_whole_in_every_usual_window(sit, sample, name: str) -> None:
    keys, words = PAGES[name]
    async with sit(sample("finished_us.yaml"), size=(80, 24)) as person:
        await person.goes_to("garden_name")
        for key in keys:
            await person.press(key)
            await person.settles()
        said = await looked_at(person, words, name)
    assert not said, "\n".join(said)


async def test_the_page_of_the_pieces_is_whole_in_every_usual_window(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(80, 24)) as person:
        await person.goes_to("surfaces.1.pieces")
        await person.press("f3")
        await person.settles()
        said = await looked_at(person, PIECES, "pieces")
    assert not said, "\n".join(said)


@pytest.mark.parametrize("name", DIALOGS)
async def test_what_is_asked_in_between_is_whole_in_every_usual_window(sit, sample, name) -> None:
    keys, words = DIALOGS[name]
    async with sit(sample("finished_us.yaml"), size=(80, 24)) as person:
        await person.goes_to("garden_name")
        for key in keys:
            await person.press(key)
            await person.settles()
        said = await looked_at(person, words, name, keyed=False)
    assert not said, "\n".join(said)


@pytest.mark.parametrize("address", QUESTIONS)
async def test_a_question_of_each_kind_is_whole_in_every_usual_window(
    sit, sample, address: str
) -> None:
    async with sit(sample("finished_us.yaml"), size=(80, 24)) as person:
        await person.goes_to(address)
        said = await looked_at(person, QUESTIONS[address], address)
    assert not said, "\n".join(said)


@pytest.mark.parametrize("name", BEGUN)
async def test_a_page_of_a_garden_begun_is_whole_in_every_usual_window(
    sit, write, name: str
) -> None:
    async with sit(str(write("garden.yaml", {**ROOF, **HOSE})), size=(80, 24)) as person:
        await go(person, name)
        said = await looked_at(person, BEGUN[name], name)
    assert not said, "\n".join(said)


@pytest.mark.parametrize("name", TESTED)
async def test_what_a_soak_test_opens_is_whole_in_every_usual_window(
    sit, write, located, clock, name: str
) -> None:
    keys, words = TESTED[name]
    async with sit(str(write("garden.yaml", {**located, **HOLE})), size=(80, 24)) as person:
        clock.forward(hours=1)
        await person.press("r")
        await person.enters("7 in")
        await person.press(*keys)
        said = await looked_at(person, words, name, keyed=name != "reminders")
    assert not said, "\n".join(said)


async def test_the_form_of_a_piece_is_whole_in_every_usual_window(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(80, 24)) as person:
        await person.goes_to("surfaces.1.pieces")
        await person.press("f3")
        await person.settles()
        await person.press("enter")
        said = await looked_at(person, "rectangle", "piece")
    assert not said, "\n".join(said)


async def test_the_page_of_a_damaged_file_is_whole_in_every_usual_window(sit, sample) -> None:
    sample("faulty_values.yaml")
    async with sit("faulty_values.yaml", size=(80, 24)) as person:
        await person.settles()
        said = await looked_at(person, "read it again", "mend")
    assert not said, "\n".join(said)


async def test_the_page_of_the_options_is_whole_in_every_usual_window(sit, write, sized) -> None:
    room = {"room_length": "16 ft", "room_width": "11 ft"}
    async with sit(str(write("garden.yaml", {**sized, **room})), size=(80, 24)) as person:
        await person.goes_to("room_length")
        await person.press("f9")
        await person.settles()
        said = await looked_at(person, "Enter takes one of:", "options")
    assert not said, "\n".join(said)
