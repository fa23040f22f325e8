"""The palettes as themes, and which of them a terminal gets."""

from __future__ import annotations

import os
from dataclasses import fields

from textual.theme import Theme

from interview.screens import palette
from interview.screens.palette import PALETTES, Palette


def _theme(one: Palette) -> Theme:
    meanings = {part.name: str(getattr(one, part.name)) for part in fields(one)}
    del meanings["name"], meanings["dark"], meanings["depth"]
    return Theme(
        name=one.name,
        primary=one.focus,
        secondary=one.edge,
        accent=one.look,
        foreground=one.text,
        background=one.ground,
        surface=one.surface,
        panel=one.panel,
        success=one.good,
        warning=one.look,
        error=one.stop,
        dark=one.dark,
        # Left to itself Textual would mix shades of its own, which no check holds to a contrast.
        variables={
            **meanings,
            "foreground-muted": one.muted,
            "text-muted": one.muted,
            "text-disabled": one.muted,
        },
    )


THEMES = {one.name: _theme(one) for one in PALETTES}
DARK, LIGHT = THEMES[palette.DARK.name], THEMES[palette.LIGHT.name]
OF = {one.name: one for one in PALETTES}


def for_terminal(depth: str | None = "truecolor") -> str:
    """Return the theme for this terminal: light where it says that its ground is light.

    ``depth`` is how many colors it has, by rich: ``truecolor``, ``256``, ``standard`` or another
    word for few; none where it shows no color at all, and then any theme does.
    """
    # Terminals that set COLORFGBG write the background's number last; 7 and 15 are the whites.
    ground = os.environ.get("COLORFGBG", "").rpartition(";")[2]
    dark = ground not in ("7", "15")
    wanted = depth if depth in ("truecolor", "256", None) else "standard"
    fits = (one for one in PALETTES if one.dark is dark and one.depth == (wanted or "truecolor"))
    return next(fits).name


def other(name: str) -> str:
    """Return the theme of the same depth that is light where ``name`` is dark, or dark."""
    now = OF[name]
    return next(o.name for o in PALETTES if o.depth == now.depth and o.dark is not now.dark)
