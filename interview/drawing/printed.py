"""How materials, hatches and plants look in print: black marks on tints too light to carry a fact.

All lengths are millimetres.
"""

from __future__ import annotations

from typing import NamedTuple

from interview.drawing.scene import Hatch, Material

MOST_INK = 0.15
"""The most of any ink that a tint takes: a drawing is as plain where the printer lays none."""
_LINE = 'fill="none" stroke="black" stroke-width="0.14"'


class PrintFill(NamedTuple):
    """How an area is filled: a tint, and marks that repeat on it."""

    tint: str = ""
    wide: float = 0.0
    """Width of the tile that repeats; nought where the tint is all."""
    high: float = 0.0
    marks: str = ""

    def pattern(self, name: str) -> str:
        """Return its pattern called ``name``; nothing where the tint is all."""
        if not self.marks:
            return ""
        size = f'width="{self.wide:g}" height="{self.high:g}"'
        ground = f'<rect {size} fill="{self.tint}"/>' if self.tint else ""
        return (
            f'<pattern id="{name}" {size} patternUnits="userSpaceOnUse">'
            f"{ground}{self.marks}</pattern>"
        )


HATCHES = {
    Hatch.CUT: PrintFill("", 2, 2, '<path d="M0 2 L2 0" stroke="black" stroke-width="0.18"/>'),
    Hatch.MULCH: PrintFill("", 1.6, 1.6, f'<path d="M0 0 L1.6 1.6 M0 1.6 L1.6 0" {_LINE}/>'),
    Hatch.COMPOST: PrintFill(
        "", 1.2, 1.2, '<path d="M0 0 L1.2 1.2 M0 0.6 h1.2" stroke="black" stroke-width="0.16"/>'
    ),
    Hatch.DRAINS: PrintFill(
        "", 2.6, 2.6, '<path d="M0.4 1.3 h1" stroke="black" stroke-width="0.2"/>'
    ),
    Hatch.FILL: PrintFill("", 1.6, 1.6, '<circle cx="0.8" cy="0.8" r="0.22" fill="black"/>'),
}
MATERIALS = {
    Material.GRASS: PrintFill(
        "#e6eedd", 1.4, 3, f'<path d="M0.3 1.3 l0.3 -1 M0.9 1.6 l-0.2 -1" {_LINE}/>'
    ),
    Material.SOIL: PrintFill(
        "#f4efe7", 5, 4.4, '<path d="M1 1 h0.3 M3.6 3.1 h0.3" stroke="black" stroke-width="0.22"/>'
    ),
    Material.COMPOST: PrintFill(
        "#efe8e0",
        2,
        1.4,
        '<path d="M0 0.7 h1.1 M1.2 0.1 l0.5 0.4" stroke="black" stroke-width="0.16"/>',
    ),
    Material.MULCH: PrintFill(
        "#efe4d9", 2.8, 2, f'<path d="M0.3 0.5 l1 -0.3 M1.6 1.4 l0.9 0.3 M0.5 1.7 h0.7" {_LINE}/>'
    ),
    Material.BERM: PrintFill(
        "#f4ecda",
        1.9,
        1.9,
        '<circle cx="0.5" cy="0.5" r="0.17" fill="black"/>'
        '<circle cx="1.45" cy="1.45" r="0.17" fill="black"/>',
    ),
    Material.STONE: PrintFill(
        "#f4f4f2",
        2.6,
        2.2,
        f'<ellipse cx="0.9" cy="0.8" rx="0.75" ry="0.55" {_LINE}/>'
        f'<ellipse cx="2" cy="1.75" rx="0.5" ry="0.36" {_LINE}/>',
    ),
    Material.WATER: PrintFill(
        "#dfebf4",
        7,
        3.6,
        f'<path d="M1 1.2 q0.6 -0.5 1.2 0 t1.2 0 M4.4 3 q0.5 -0.4 1 0 t1 0" {_LINE}/>',
    ),
    Material.FLOOR: PrintFill("#e1ecf4"),
    Material.SIDE: PrintFill("#e9f3ec"),
    Material.RIM: PrintFill("#f5f6e8"),
    Material.ROOF: PrintFill("#f5e8e3", 2, 2, f'<path d="M0 2 L2 0" {_LINE}/>'),
    Material.WALL: PrintFill(
        "#ece8df", 1, 1, '<path d="M0 1 L1 0" stroke="black" stroke-width="0.25"/>'
    ),
    Material.LAWN: PrintFill("#f2f7ec"),
    Material.CUT: PrintFill("#ffffff", 2, 2, f'<path d="M0 0 L2 2 M0 2 L2 0" {_LINE}/>'),
    Material.HOLE: PrintFill("#ffffff"),
}
"""The sky is the paper."""
EDGED = (Material.STONE, Material.ROOF, Material.WALL)
"""Materials whose areas get a thin line round them where they have none."""

_THIN = 'stroke="black" stroke-width="0.2"'


def _open(path: str) -> str:
    return f'<path d="{path}" fill="none" {_THIN}/>'


def _closed(path: str, fill: str = "white") -> str:
    return f'<path d="{path}" fill="{fill}" {_THIN}/>'


_SPRIGS = {
    "ψ": _open("M0 0.9 V-0.9 M0 0.9 Q-0.3 0 -0.8 -0.5 M0 0.9 Q0.3 0 0.8 -0.5"),
    "♠": _open("M0 0.9 V-0.9 M-0.7 -0.5 L0 0 L0.7 -0.5 M-0.7 0.2 L0 0.6 L0.7 0.2"),
    "♣": _closed("M-0.9 0 A0.9 0.9 0 1 1 0.9 0 A0.9 0.9 0 1 1 -0.9 0 M-0.5 0 H0.5 M0 -0.5 V0.5"),
    "✿": _closed("M-0.62 0 A0.62 0.62 0 1 1 0.62 0 A0.62 0.62 0 1 1 -0.62 0"),
    "✽": _open("M-0.75 0 H0.75 M-0.38 -0.65 L0.38 0.65 M-0.38 0.65 L0.38 -0.65"),
    "✺": _closed("M0 -0.8 L0.75 0.6 H-0.75 Z"),
    "✦": _closed("M0 -0.8 L0.7 0 L0 0.8 L-0.7 0 Z", "black"),
    "●": '<circle r="0.5" fill="black"/>',
}
_OTHER = _open("M-0.6 -0.6 L0.6 0.6 M-0.6 0.6 L0.6 -0.6")


def sprig(char: str) -> str:
    """Return the mark of a plant round the point 0 0, 2 mm wide at the most."""
    return _SPRIGS.get(char, _OTHER)
