"""The colors of what a drawing is made of, for each kind of terminal.

A color of these carries no fact alone: each material has a texture of its own beside it, and words
stand on the plain ground of the page.
"""

from __future__ import annotations

from functools import lru_cache

from rich.style import Style

from interview.drawing.paint import Cell, Tint, Tone
from interview.drawing.scene import BLOOMS, Ink, Material
from interview.screens.palette import Palette

Shade = tuple[str, str]
"""The color of a material at its top and at its bottom."""

M = Material
# fmt: off
_DARK: dict[Material, Shade] = {
    M.SKY: ("#0f2230", "#1d3f52"), M.HOLE: ("#1a1410", "#120d0a"),
    M.LAWN: ("#2a5230", "#234629"), M.GRASS: ("#6bb050", "#4e8f3e"),
    M.SOIL: ("#7b5437", "#3d291c"), M.COMPOST: ("#4a3626", "#3b2a1e"),
    M.MULCH: ("#b0662f", "#96552a"), M.BERM: ("#b8935a", "#98753f"),
    M.STONE: ("#a9b3b4", "#8f9a9b"), M.WATER: ("#3aa0e0", "#145b98"),
    M.FLOOR: ("#124560", "#124560"), M.SIDE: ("#1d5648", "#1d5648"),
    M.RIM: ("#315629", "#315629"), M.ROOF: ("#b9634a", "#9c4e38"),
    M.WALL: ("#d9cdb6", "#c2b59b"), M.CUT: ("#33403a", "#33403a"),
}
_LIGHT: dict[Material, Shade] = {
    M.SKY: ("#d9edf8", "#f3fafc"), M.HOLE: ("#efe6da", "#e6dac9"),
    M.LAWN: ("#b4d69b", "#a8cd8e"), M.GRASS: ("#4f9638", "#4f9638"),
    M.SOIL: ("#a5784f", "#7a5334"), M.COMPOST: ("#6a5038", "#5b442f"),
    M.MULCH: ("#a9642f", "#935324"), M.BERM: ("#c09648", "#a8803a"),
    M.STONE: ("#8e999a", "#7a8586"), M.WATER: ("#3a8fce", "#1a5f98"),
    M.FLOOR: ("#b5dcee", "#b5dcee"), M.SIDE: ("#c3e8d2", "#c3e8d2"),
    M.RIM: ("#e0eebc", "#e0eebc"), M.ROOF: ("#cf7a62", "#bd6850"),
    M.WALL: ("#8a7d68", "#776b58"), M.CUT: ("#dfe4da", "#dfe4da"),
}
# Colors of the cube that xterm adds, so that none is rounded into another.
_DARK_256 = {
    M.SKY: "#00005f", M.HOLE: "#1c1c1c", M.LAWN: "#005f00", M.GRASS: "#5faf00",
    M.SOIL: "#5f5f00", M.COMPOST: "#3a3a3a", M.MULCH: "#af5f00", M.BERM: "#af875f",
    M.STONE: "#9e9e9e", M.WATER: "#0087d7", M.FLOOR: "#005f87", M.SIDE: "#005f5f",
    M.RIM: "#5f5f00", M.ROOF: "#af5f5f", M.WALL: "#d7d7af", M.CUT: "#444444",
}
_LIGHT_256 = {
    M.SKY: "#d7ffff", M.HOLE: "#eeeeee", M.LAWN: "#afd787", M.GRASS: "#5faf00",
    M.SOIL: "#af8787", M.COMPOST: "#5f5f5f", M.MULCH: "#af5f00", M.BERM: "#d7af5f",
    M.STONE: "#9e9e9e", M.WATER: "#0087d7", M.FLOOR: "#afd7ff", M.SIDE: "#afffd7",
    M.RIM: "#ffffaf", M.ROOF: "#d78787", M.WALL: "#8a8a8a", M.CUT: "#dadada",
}
# Of the 16, each as the color of its texture and that of its ground: too few to tell all apart.
_DARK_16 = {
    M.SKY: ("#000000", "#000000"), M.HOLE: ("#000000", "#000000"),
    M.LAWN: ("#00aa00", "#000000"), M.GRASS: ("#000000", "#00aa00"),
    M.SOIL: ("#aa5500", "#000000"), M.COMPOST: ("#aaaaaa", "#555555"),
    M.MULCH: ("#000000", "#aa0000"), M.BERM: ("#000000", "#aa5500"),
    M.STONE: ("#000000", "#aaaaaa"), M.WATER: ("#55ffff", "#0000aa"),
    M.FLOOR: ("#55ffff", "#0000aa"), M.SIDE: ("#000000", "#555555"),
    M.RIM: ("#000000", "#000000"), M.ROOF: ("#000000", "#aa0000"),
    M.WALL: ("#000000", "#aaaaaa"), M.CUT: ("#aaaaaa", "#555555"),
}
_LIGHT_16 = {
    **_DARK_16,
    M.SKY: ("#ffffff", "#ffffff"), M.HOLE: ("#ffffff", "#ffffff"),
    M.LAWN: ("#00aa00", "#ffffff"), M.SOIL: ("#aa5500", "#ffffff"),
    M.FLOOR: ("#0000aa", "#55ffff"), M.SIDE: ("#000000", "#00aaaa"),
    M.RIM: ("#000000", "#ffffff"),
}
_TEXTURE_16 = {
    M.SKY: " ", M.HOLE: " ", M.LAWN: ",", M.GRASS: '"', M.SOIL: "░", M.COMPOST: "▓",
    M.MULCH: "▒", M.BERM: " ", M.STONE: "o", M.WATER: "≈", M.FLOOR: " ", M.SIDE: " ",
    M.RIM: " ", M.ROOF: "╱", M.WALL: " ", M.CUT: "╳",
}
_BLOOMS = {
    "garden-dark": {
        "blue": "#93b3f8", "gold": "#f5d04e", "green": "#86cf72", "pink": "#f08fb4",
        "red": "#ff9584", "straw": "#d9c27a", "violet": "#c6a8f4", "white": "#f4f4ea",
    },
    "garden-light": {
        "blue": "#2f55c0", "gold": "#7d5400", "green": "#24661f", "pink": "#b8326a",
        "red": "#b02a1c", "straw": "#5f4c17", "violet": "#7a45c0", "white": "#54615a",
    },
    "garden-dark-256": {
        "blue": "#afd7ff", "gold": "#ffd75f", "green": "#afff87", "pink": "#ffafd7",
        "red": "#ffafaf", "straw": "#d7d787", "violet": "#d7afff", "white": "#ffffff",
    },
    "garden-light-256": {
        "blue": "#00005f", "gold": "#5f5f00", "green": "#005f00", "pink": "#87005f",
        "red": "#870000", "straw": "#5f5f00", "violet": "#5f0087", "white": "#444444",
    },
    "garden-dark-16": dict.fromkeys(BLOOMS, "#ffffff"),
    "garden-light-16": dict.fromkeys(BLOOMS, "#000000"),
}
# fmt: on
MATERIALS: dict[str, dict[Material, Shade]] = {
    "garden-dark": _DARK,
    "garden-light": _LIGHT,
    "garden-dark-256": {one: (color, color) for one, color in _DARK_256.items()},
    "garden-light-256": {one: (color, color) for one, color in _LIGHT_256.items()},
    "garden-dark-16": {one: (ground, ground) for one, (_, ground) in _DARK_16.items()},
    "garden-light-16": {one: (ground, ground) for one, (_, ground) in _LIGHT_16.items()},
}
TEXTURE_SHADE = 0.22
"""How far the texture of a material is from its color, toward white or black."""


def mixed(one: str, other: str, part: float) -> str:
    """Return the color ``part`` of the way from one ``#rrggbb`` to another."""
    pairs = ((int(one[at : at + 2], 16), int(other[at : at + 2], 16)) for at in (1, 3, 5))
    return "#" + "".join(f"{round(a + (b - a) * part):02x}" for a, b in pairs)


def _texture_16(material: Material, palette: Palette) -> str:
    return (_DARK_16 if palette.dark else _LIGHT_16)[material][0]


def color_of(tint: Tint, palette: Palette) -> str:
    """Return the color of a cell's tint."""
    match tint:
        case Tone(material, part, texture):
            top, bottom = MATERIALS[palette.name][material]
            plain = top if palette.depth != "truecolor" else mixed(top, bottom, part)
            if not texture:
                return plain
            if palette.depth == "standard":
                return _texture_16(material, palette)
            if palette.depth == "256":
                return palette.ground
            # Darker on what is light, lighter on what is dark.
            bright = int(plain[3:5], 16) > 0x60
            return mixed(plain, "#000000" if bright else "#ffffff", TEXTURE_SHADE)
        case Ink():
            return str(getattr(palette, tint.value))
        case str():
            return _BLOOMS[palette.name][tint]


@lru_cache(8192)
def style_of(cell: Cell, palette: Palette) -> tuple[str, Style]:
    """Return the character and the style of a cell; where 16 colors are all, with its texture."""
    fore = palette.text if cell.fore is None else color_of(cell.fore, palette)
    if cell.back is None:
        return cell.char, Style(color=fore, bgcolor=palette.ground, bold=cell.bold)
    back = color_of(cell.back, palette)
    if isinstance(cell.back, Ink):
        return cell.char, Style(color=palette.ground, bgcolor=back, bold=True)
    if palette.depth == "standard" and (
        cell.fore is None or (isinstance(cell.fore, Tone) and cell.fore.texture)
    ):
        fore = _texture_16(cell.back.material, palette)
        return _TEXTURE_16[cell.back.material], Style(color=fore, bgcolor=back)
    return cell.char, Style(color=fore, bgcolor=back, bold=cell.bold)
