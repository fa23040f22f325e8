"""The colors of the full screen by what they mean, for each kind of terminal; no color says alone.

Chosen here by eye and held by a check to the contrast that the W3C asks for ("Web Content
Accessibility Guidelines 2.1", 2018): 4.5 to 1 for words (1.4.3), 3 to 1 for edges, marks and what
is drawn (1.4.11), on every ground they stand on.
"""

from __future__ import annotations

from interview.quantities.records import record

GROUNDS = ("ground", "surface", "panel", "cursor")
"""What words stand on: the page, a field or card, the first and last line, the row one is at."""
INKS = ("text", "muted", "focus", "good", "look", "stop", "due", "water")
"""What words are written in: plain, beside the point, where one is, four verdicts, a figure."""
LINES = ("edge",)
"""What is drawn beside words."""
MATERIALS = ("soil", "berm", "mulch", "plants", "stone")
"""What a drawing is made of, beside ``water``; each has a texture of its own."""


@record
class Palette:
    """One set of colors, each written as ``#rrggbb``."""

    name: str
    dark: bool
    depth: str
    """What a terminal must be able to show: ``truecolor``, ``256`` or ``standard``."""
    ground: str
    surface: str
    panel: str
    cursor: str
    filled: str
    """The part of a stage that is answered; the same as ``panel`` where no shade is to be had."""
    text: str
    muted: str
    edge: str
    focus: str
    good: str
    look: str
    stop: str
    due: str
    water: str
    soil: str
    berm: str
    mulch: str
    plants: str
    stone: str


# fmt: off
DARK = Palette(
    "garden-dark", True, "truecolor",
    ground="#0f1713", surface="#17221c", panel="#22312a", cursor="#1f4a57", filled="#1d4a30",
    text="#eef3ea", muted="#b4c3b8", edge="#7f9b8b", focus="#7ed3f7",
    good="#8fdb93", look="#f6bd55", stop="#ff9f92", due="#ffe08a", water="#6ac1f2",
    soil="#b5835c", berm="#c9a468", mulch="#cf8149", plants="#7cc25f", stone="#a9b3b4",
)
LIGHT = Palette(
    "garden-light", False, "truecolor",
    ground="#fbfaf4", surface="#ffffff", panel="#e4eadd", cursor="#cfe6ef", filled="#c6e4c4",
    text="#18231d", muted="#46544b", edge="#64776b", focus="#00587c",
    good="#1c6630", look="#744400", stop="#a3221a", due="#634700", water="#0f5c90",
    soil="#80552f", berm="#8a6a1c", mulch="#8f4f1c", plants="#35751f", stone="#5f6d70",
)
# The 240 colors that xterm adds to the 16: a cube of 00 5f 87 af d7 ff, then grays.
DARK_256 = Palette(
    "garden-dark-256", True, "256",
    ground="#121212", surface="#1c1c1c", panel="#303030", cursor="#005f87", filled="#005f00",
    text="#eeeeee", muted="#d0d0d0", edge="#b2b2b2", focus="#87ffff",
    good="#afffaf", look="#ffd787", stop="#ffd7d7", due="#ffffaf", water="#afd7ff",
    soil="#d7af87", berm="#d7af5f", mulch="#d78700", plants="#87d75f", stone="#b2b2b2",
)
LIGHT_256 = Palette(
    "garden-light-256", False, "256",
    ground="#ffffff", surface="#ffffff", panel="#e4e4e4", cursor="#d7ffff", filled="#d7ffaf",
    text="#121212", muted="#444444", edge="#585858", focus="#005f87",
    good="#005f00", look="#5f5f00", stop="#870000", due="#5f0087", water="#00005f",
    soil="#875f00", berm="#5f5f00", mulch="#870000", plants="#005f00", stone="#585858",
)
# Exactly the 16 of the table that names are rounded to, so that nothing is rounded into another.
DARK_16 = Palette(
    "garden-dark-16", True, "standard",
    ground="#000000", surface="#000000", panel="#000000", cursor="#0000aa", filled="#000000",
    text="#ffffff", muted="#aaaaaa", edge="#aaaaaa", focus="#55ffff",
    good="#55ff55", look="#ffff55", stop="#ffffff", due="#ffff55", water="#55ffff",
    soil="#aaaaaa", berm="#ffff55", mulch="#ff5555", plants="#55ff55", stone="#ffffff",
)
LIGHT_16 = Palette(
    "garden-light-16", False, "standard",
    ground="#ffffff", surface="#ffffff", panel="#ffffff", cursor="#aaaaaa", filled="#ffffff",
    text="#000000", muted="#000000", edge="#000000", focus="#0000aa",
    good="#000000", look="#000000", stop="#000000", due="#0000aa", water="#0000aa",
    soil="#aa5500", berm="#555555", mulch="#aa0000", plants="#000000", stone="#555555",
)
# fmt: on
PALETTES = (DARK, LIGHT, DARK_256, LIGHT_256, DARK_16, LIGHT_16)

MARKS = {"good": "✓", "look": "▲", "stop": "■", "due": "○"}
"""The mark that stands before the word of a verdict: it says the same where there is no color."""
HERE, BEGUN, OPEN, SHUT = "◆", "◐", "○", "✕"
"""The marks of a stage, with those of ``MARKS``: where one is, partly answered, to come, shut."""
CURSOR, POINTER = "▸", "▹"
"""Before the row that Enter takes; before the row one is at while Enter takes none yet."""
