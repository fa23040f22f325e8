"""Notifications of the desktop, made by the terminal from an escape sequence.

There is no one sequence. OSC 9 is iTerm2's; OSC 777 is rxvt-unicode's, which foot, WezTerm,
Ghostty and some builds of VTE took up; OSC 99 is kitty's, described on its page "Desktop
notifications". A terminal that is not known to take one is sent none: a sequence it does not know
could be printed. Inside tmux and screen none is sent, as they hold back what they do not know
unless they are told to pass it through.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from enum import Enum

from interview.reading.foreign import shown

VTE_SILENT = 4600
"""From this version on VTE takes OSC 777 or drops it silently."""
LONGEST = 200
_END = "\x1b\\"


class Desktop(Enum):
    """The sequence a terminal takes."""

    NONE = ""
    OSC_9 = "9"
    OSC_777 = "777"
    OSC_99 = "99"


_PROGRAMS = {
    "iterm.app": Desktop.OSC_9,
    "wezterm": Desktop.OSC_777,
    "ghostty": Desktop.OSC_777,
}
_TERMS = (
    ("xterm-kitty", Desktop.OSC_99),
    ("xterm-ghostty", Desktop.OSC_777),
    ("foot", Desktop.OSC_777),
    ("rxvt-unicode", Desktop.OSC_777),
    ("wezterm", Desktop.OSC_777),
)
_HELD_BACK = ("screen", "tmux", "linux", "dumb", "unknown")


def desktop_of(environ: Mapping[str, str] = os.environ) -> Desktop:
    """Return the sequence that this terminal takes, by what it says of itself."""
    term = environ.get("TERM", "").casefold()
    if not term or term.startswith(_HELD_BACK) or environ.get("TMUX") or environ.get("STY"):
        return Desktop.NONE
    for start, found in _TERMS:
        if term.startswith(start):
            return found
    program = environ.get("TERM_PROGRAM", "").casefold()
    if program in _PROGRAMS:
        return _PROGRAMS[program]
    vte = environ.get("VTE_VERSION", "")
    if vte.isascii() and vte.isdigit() and int(vte[:9]) >= VTE_SILENT:
        return Desktop.OSC_777
    return Desktop.NONE


def sequence(desktop: Desktop, title: str, body: str) -> str:
    """Return what to write for a notification; nothing where the terminal has none.

    Nothing in ``title`` or ``body`` can end the sequence or begin another.
    """
    title, body = _safe(title), _safe(body)
    match desktop:
        case Desktop.OSC_9:
            # A text that began with a number would be one of ConEmu's commands of the same name.
            return f"\x1b]9;{title}: {body}{_END}"
        case Desktop.OSC_777:
            return f"\x1b]777;notify;{title.replace(';', ',')};{body}{_END}"
        case Desktop.OSC_99:
            return (
                f"\x1b]99;i=rain-garden:d=0;{title}{_END}"
                f"\x1b]99;i=rain-garden:d=1:p=body;{body}{_END}"
            )
        case Desktop.NONE:
            return ""


def _safe(text: str) -> str:
    return shown(text)[:LONGEST]
