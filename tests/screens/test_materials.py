"""The colors of drawings: told apart, and their plants and lines seen on them."""

from itertools import pairwise

import pytest

from interview.drawing.paint import Cell, Tone
from interview.drawing.scene import BLOOMS, Ink, Material
from interview.screens.materials import MATERIALS, color_of, style_of
from interview.screens.palette import PALETTES
from tests.screens.test_contrast import contrast, rgb

ZONES = (Material.FLOOR, Material.SIDE, Material.RIM)
by_palette = pytest.mark.parametrize("palette", PALETTES, ids=lambda one: one.name)


@by_palette
def test_every_material_has_its_color(palette):
    assert set(MATERIALS[palette.name]) == set(Material)


@by_palette
def test_a_flower_is_seen_on_every_zone(palette):
    # WCAG 2.1, 1.4.11: what is drawn has 3 to 1 on what it stands on.
    for zone in ZONES:
        for bloom in BLOOMS:
            ground = color_of(Tone(zone, 0.0), palette)
            assert contrast(rgb(color_of(bloom, palette)), rgb(ground)) >= 3, (zone, bloom)


@by_palette
def test_zones_beside_each_other_are_not_of_one_color(palette):
    colors = [color_of(Tone(zone, 0.0), palette) for zone in (*ZONES, Material.BERM)]
    assert all(one != other for one, other in pairwise(colors))


@by_palette
def test_a_word_stands_on_the_ground_of_the_page(palette):
    char, style = style_of(Cell("x", Ink.TEXT), palette)
    assert (char, style.bgcolor.name) == ("x", palette.ground)


@by_palette
def test_a_texture_differs_from_its_material(palette):
    for material in (Material.SOIL, Material.MULCH, Material.WATER):
        _, style = style_of(Cell("·", Tone(material, 0.5, True), Tone(material, 0.5)), palette)
        assert style.color.name != style.bgcolor.name, material
