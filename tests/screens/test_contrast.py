"""Every word can be read: contrast by WCAG, in every palette, on the row one is at as on others."""

from __future__ import annotations

from dataclasses import fields

import pytest
from rich._palettes import EIGHT_BIT_PALETTE, STANDARD_PALETTE
from rich.color import Color, ColorSystem

from interview.screens import palette, themes
from interview.screens.palette import GROUNDS, INKS, LINES, MATERIALS, PALETTES

LEAST = 4.5
"""Contrast ratio of text: W3C, Web Content Accessibility Guidelines 2.1 (2018), 1.4.3."""
LEAST_OF_LINES = 3.0
"""Contrast ratio of what is drawn and of the focus: the same, 1.4.11."""


def luminance(colour) -> float:
    """Return the relative luminance of a colour, by the definition of WCAG 2.1."""

    def linear(part: int) -> float:
        share = part / 255
        return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(part) for part in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other) -> float:
    """Return the contrast ratio of two colours, by the definition of WCAG 2.1."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_ratio_is_that_of_the_guidelines():
    # WCAG 2.1: the ratio runs from 1:1 to 21:1; #767676 is the lightest gray on white that passes.
    assert contrast((0, 0, 0), (255, 255, 255)) == pytest.approx(21)
    assert contrast((118,) * 3, (255,) * 3) >= LEAST > contrast((119,) * 3, (255,) * 3)


def rgb(written: str) -> tuple[int, ...]:
    return tuple(Color.parse(written).get_truecolor())


def test_every_ink_of_every_palette_can_be_read_on_every_ground(subtests):
    for one in PALETTES:
        grounds = [*GROUNDS, "filled"]
        pairs = [(ink, ground, LEAST) for ink in INKS for ground in grounds]
        pairs += [(ink, ground, LEAST_OF_LINES) for ink in LINES for ground in grounds]
        pairs += [(ink, ground, LEAST_OF_LINES) for ink in MATERIALS for ground in GROUNDS[:2]]
        # A badge is written in the color of the page on the color of its verdict.
        pairs += [("ground", ink, LEAST) for ink in ("good", "look", "stop", "due")]
        for ink, ground, least in pairs:
            with subtests.test(f"{one.name}: {ink} on {ground}"):
                ratio = contrast(rgb(getattr(one, ink)), rgb(getattr(one, ground)))
                assert ratio >= least


def test_the_row_one_is_at_can_be_told_from_the_others_by_its_ground_or_its_mark():
    assert palette.CURSOR != palette.POINTER != " "
    assert all(one.cursor not in (one.ground, one.surface) for one in PALETTES)


def test_verdicts_and_stages_are_told_apart_with_no_color():
    stages = [palette.HERE, palette.BEGUN, palette.OPEN, palette.SHUT]
    for signs in (
        [*palette.MARKS.values()],
        [*stages, palette.MARKS["good"], palette.MARKS["stop"]],
    ):
        assert len(set(signs)) == len(signs)


def test_a_palette_for_few_colors_comes_out_of_the_terminal_as_it_was_chosen(subtests):
    # Rounding is that of rich, which Textual writes to the terminal with; what a number stands for
    # is rich's table of xterm's colors.
    tables = {
        "standard": (ColorSystem.STANDARD, STANDARD_PALETTE, 0),
        # Some grays come out one step of the ramp, 10 of 255, darker or lighter.
        "256": (ColorSystem.EIGHT_BIT, EIGHT_BIT_PALETTE, 10),
    }
    for one in PALETTES:
        if one.depth not in tables:
            continue
        system, table, near = tables[one.depth]
        for part in fields(one)[3:]:
            written = getattr(one, part.name)
            with subtests.test(f"{one.name}: {part.name}"):
                shown = table[Color.parse(written).downgrade(system).number]
                assert all(abs(a - b) <= near for a, b in zip(shown, rgb(written), strict=True))


@pytest.mark.parametrize(
    ("term", "colorterm", "ground", "name"),
    [
        ("xterm-256color", "truecolor", None, "garden-dark"),
        ("xterm-256color", "truecolor", "0;15", "garden-light"),
        ("xterm-256color", "", None, "garden-dark-256"),
        ("xterm", "", None, "garden-dark-16"),
        ("xterm", "", "0;7", "garden-light-16"),
        ("dumb", "", None, "garden-dark"),
    ],
)
async def test_the_palette_is_that_of_the_terminal(
    sit, monkeypatch, term, colorterm, ground, name
) -> None:
    monkeypatch.setenv("TERM", term)
    monkeypatch.setenv("COLORTERM", colorterm)
    if ground:
        monkeypatch.setenv("COLORFGBG", ground)
    else:
        monkeypatch.delenv("COLORFGBG", raising=False)
    async with sit("garden.yaml") as person:
        assert person.app.theme == name
        shown = person.app.theme_variables
        for part in fields(themes.OF[name])[3:]:
            assert shown[part.name].lower() == getattr(themes.OF[name], part.name), part.name
        await person.press("f2")
        assert person.app.theme != name
        assert themes.OF[person.app.theme].depth == themes.OF[name].depth


def faint(person) -> list[str]:
    """Return the words on the screen that are too near to their ground in color."""
    found = []
    for strip in person.app.screen._compositor.render_strips():
        for text, style, _ in strip:
            if not any(letter.isalnum() for letter in text) or style is None:
                continue
            fore, back = style.color, style.bgcolor
            assert fore is not None and back is not None
            pair = [tuple(one.get_truecolor()) for one in (fore, back)]
            if style.reverse:
                pair.reverse()
            ratio = contrast(*pair)
            if ratio < LEAST:
                found.append(f"{ratio:.1f} {pair} {text.strip()!r}")
    return found


async def look(person, said: list[str], where: str) -> None:
    """Note what is faint in either scheme, the one shown first: a change of scheme takes long."""
    names = [theme.name for theme in (themes.DARK, themes.LIGHT)]
    assert person.app.theme in names
    for name in sorted(names, key=lambda name: name != person.app.theme):
        person.app.theme = name
        await person.settles()
        said += [f"{name}, {where}: {one}" for one in faint(person)]


async def test_every_word_of_every_page_stands_out_from_its_ground(sit, sample, clock):
    said: list[str] = []
    async with sit(sample("finished_us.yaml"), size=(110, 36)) as person:
        await look(person, said, "question")
        await person.press("tab")
        await look(person, said, "plan with the focus")
        await person.press("tab")
        await look(person, said, "key line with the focus")
        for key in ("ctrl+g", "f3", "f4", "f5", "ctrl+l", "f1"):
            await person.press(key)
            await person.settles()
            for _ in range(3 if key == "ctrl+g" else 1):
                await look(person, said, person.page)
                await person.press("up")
            await person.press("tab")
            await look(person, said, f"{person.page}, the next part")
            await person.press("escape")
        for address in ("holes.1.readings", "keep_out", "lines_holidays", "rain_depth"):
            await person.goes_to(address)
            await look(person, said, address)
            await person.press("up")
            await look(person, said, f"{address}, in the list")
        await person.enters("99 in")
        await look(person, said, "a refused answer")
        await person.goes_to("holes.1.readings")
        await person.press("f3")
        await person.settles()
        await look(person, said, person.page)
        await person.press("r")
        await person.press("enter")
        await look(person, said, f"{person.page}, its line")
    assert not said, "\n".join(sorted(set(said)))


async def test_every_word_of_a_begun_garden_stands_out_from_its_ground(sit, sample, clock):
    clock.forward(hours=9)
    said: list[str] = []
    async with sit(sample("halfway_soak_test.yaml"), size=(110, 36)) as person:
        await look(person, said, person.page)
        await person.press("escape")
        await look(person, said, "question")
        await person.press("ctrl+g")
        for _ in range(4):
            await look(person, said, person.page)
            await person.press("down")
    async with sit(size=(80, 24)) as person:
        await look(person, said, person.page)
    assert not said, "\n".join(sorted(set(said)))
