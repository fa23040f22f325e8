"""The two colour schemes. Every meaning is also in words, so none depends on colour."""

from __future__ import annotations

import os

from textual.theme import Theme

DARK = Theme(
    name="garden-dark",
    primary="#7fb685",
    secondary="#6fa8b8",
    accent="#d8b365",
    foreground="#e4e7e1",
    background="#171b18",
    surface="#1e2420",
    panel="#29312b",
    success="#8fc796",
    warning="#e3b866",
    error="#ec8f84",
    dark=True,
    variables={"foreground-muted": "#b6bdb4"},
)
LIGHT = Theme(
    name="garden-light",
    primary="#2f6b3c",
    secondary="#2b6478",
    accent="#8a5a00",
    foreground="#1d241f",
    background="#f7f8f4",
    surface="#ffffff",
    panel="#e3e8de",
    success="#276b34",
    warning="#8a5a00",
    error="#a32b20",
    dark=False,
    variables={"foreground-muted": "#454d46"},
)


def for_terminal() -> str:
    """Return the scheme for this terminal: light where it says that its ground is light."""
    # Terminals that set COLORFGBG write the background's number last; 7 and 15 are the whites.
    ground = os.environ.get("COLORFGBG", "").rpartition(";")[2]
    return LIGHT.name if ground in ("7", "15") else DARK.name
