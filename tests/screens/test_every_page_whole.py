"""Every page opened from a question, in each usual window: whole, and one sees where one is.

The pages of the questions, of the soak test, of sizes, of plants and the first page have such tests
beside the others of theirs.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

import pytest
from textual.geometry import Region
from textual.widget import Widget
from textual.widgets import Button, Input, OptionList, Static

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
    if isinstance(focused, OptionList):
        top, _ = seen(focused)
        rows = person.sees().splitlines()[top.y : top.bottom]
        return sum("▸" in row[top.x : top.right] for row in rows) == 1
    if isinstance(focused, Input):
        return focused.styles.border_left[0] in ("heavy", "thick")
    # What is only read takes all keys that scroll it: there is nothing else on its page.
    return focused.max_scroll_y >= 0


async def looked_at(person, words: str, where: str) -> list[str]:
    said = []
    for size in SIZES:
        await person.pilot.resize_terminal(*size)
        await person.settles()
        page = person.app.screen
        said += [f"{where} {size}: {one}" for one in faults(page)]
        rows = person.sees().splitlines()
        if not rows[-1].rstrip().endswith("F1 help  ^Q quit") or any(
            len(row) > size[0] for row in rows
        ):
            said.append(f"{where} {size}: {rows[-1]!r}")
        told = [str(one.render()) for one in leaves(page) if isinstance(one, Static)]
        if words not in " ".join((person.sees_words(), *" ".join(told).split())):
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
