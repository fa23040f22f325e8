"""Every word can be read: contrast by WCAG, in both schemes, on selected rows as on all others."""

from __future__ import annotations

import pytest

from interview.screens import themes

LEAST = 4.5
"""Contrast ratio of text: W3C, Web Content Accessibility Guidelines 2.2 (2023), 1.4.3."""


def luminance(colour) -> float:
    """Return the relative luminance of a colour, by the definition of WCAG 2.2."""

    def linear(part: int) -> float:
        share = part / 255
        return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(part) for part in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other) -> float:
    """Return the contrast ratio of two colours, by the definition of WCAG 2.2."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_ratio_is_that_of_the_guidelines():
    # WCAG 2.2: the ratio runs from 1:1 to 21:1; #767676 is the lightest gray on white that passes.
    assert contrast((0, 0, 0), (255, 255, 255)) == pytest.approx(21)
    assert contrast((118,) * 3, (255,) * 3) >= LEAST > contrast((119,) * 3, (255,) * 3)


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
        await look(person, said, "button with the focus")
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
