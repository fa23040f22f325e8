"""Every key of every page: what it does, the words of the key line, and what its letter means.

A letter means one thing on all pages; so does a letter with Ctrl, and a function key.
"""

from __future__ import annotations

from dataclasses import dataclass

from textual.binding import Binding, BindingType

from interview.answers_file.reminders import NAMES


@dataclass(frozen=True)
class Key:
    """One use of one key, or of several that do the same."""

    keys: str
    """Their names, with commas between them; the first one is shown."""
    action: str
    word: str = ""
    """What the key line says it does; a key without words is not on it."""
    means: str = ""
    """What it means on every page; the same as ``word`` where nothing is said."""
    bound: bool = True
    """Whether the page listens for it; else a list or a field of the page does."""

    @property
    def shown(self) -> str:
        """The key in the one notation that is used: ``Esc``, ``^T``, ``F1``, ``R``, ``→``."""
        return notation(self.keys.partition(",")[0])


_NAMES = {"escape": "Esc", "enter": "Enter", "left": "←", "right": "→", "space": "Space"}


def notation(key: str) -> str:
    """Return the name of a key as every page writes it."""
    if key.startswith("ctrl+"):
        return f"^{key.removeprefix('ctrl+').upper()}"
    return _NAMES.get(key) or key.upper()


def _back(keys: str = "escape", action: str = "dismiss", word: str = "back") -> Key:
    return Key(keys, action, word, means="back")


ALWAYS = (
    Key("f1", "app.keys", "help", means="help"),
    Key("ctrl+q", "app.leave", "quit", means="quit"),
)
"""The keys that stand at the right of every key line."""
_FURTHER = (
    Key("f3", "draw", "draw", means="draw"),
    Key("f4", "try_out", "try sizes"),
    Key("f5", "plants", "plants"),
)
PAGES: dict[str, tuple[Key, ...]] = {
    "welcome": (
        Key("enter", "open", "open it", bound=False),
        Key("a", "begin", "new garden", means="add"),
    ),
    "mend": (
        Key("g", "choose('go_on')", "go on"),
        Key("l", "choose('again')", "read it again"),
        _back("escape", "choose('leave')", "leave it"),
    ),
    "question": (
        Key("enter", "go_on", "go on", bound=False),
        _back("escape,ctrl+b", "back"),
        Key("ctrl+t", "put_off", "don't know"),
        Key("f6", "mend", "open it", means="to what shuts it, and back"),
        Key("ctrl+n", "now", "now"),
        Key("ctrl+r", "save_again", "save again"),
        Key("f9", "ways", "ways out"),
        Key("ctrl+g", "go_to", "go to"),
        Key("ctrl+l", "plan", "plan"),
        *_FURTHER,
        Key("ctrl+o", "aside('how')", "how to", means="how"),
        Key("ctrl+y", "aside('why')", "why"),
    ),
    "review": (
        Key("enter", "go", "go there", bound=False),
        _back("escape", "close"),
        Key("ctrl+g", "next_open", "next open", means="go to"),
        Key("f7", "clear", "take this answer away"),
        Key("f8", "remove", "remove this whole item"),
    ),
    "plan": (
        _back("escape,q"),
        Key("ctrl+o", "working", "working", means="how"),
        Key("ctrl+s", "write", "write sheet", means="save"),
        Key("c", "card", "yard card"),
        *_FURTHER,
    ),
    "working": (_back("escape,q"),),
    "help": (_back("escape,q"), Key("f1", "dismiss", means="help")),
    "meaning": (_back("escape,q"), Key("m", "dismiss", means="meaning")),
    "garden": (
        _back("escape,q"),
        Key("left", "turn(-1)", "before"),
        Key("right", "turn(1)", "next"),
        Key("f3", "dismiss", means="draw"),
        *(Key(str(place + 1), f"view({place})") for place in range(4)),
    ),
    "try": (
        _back("escape,q", "leave", "leave"),
        Key("left", "move(-1)", "less", bound=False),
        Key("right", "move(1)", "more", bound=False),
        Key("k", "keep", "keep"),
        Key("z", "reset", "this one back", means="take back"),
        Key("e", "discard", "every one back"),
        Key("f4", "leave", means="try sizes"),
        Key("pageup", "page(-1)"),
        Key("pagedown", "page(1)"),
    ),
    "plants": (
        Key("enter", "swap", "swap out", bound=False),
        _back("escape", "leave"),
        Key("i", "favourite", "keep it in"),
        Key("z", "undo", "undo a swap", means="take back"),
        Key("ctrl+y", "why_not", "why not…?", means="why"),
        Key("f5", "leave", means="plants"),
    ),
    "pieces": (
        Key("enter", "change", "change", bound=False),
        _back("escape", "leave"),
        Key("a", "add", "add", means="add"),
        Key("o", "cut_out", "cut out"),
        Key("space", "turn", "turn"),
        Key("v", "move", "move"),
        Key("d", "copy", "duplicate"),
        Key("x,delete", "remove", "remove", means="take out"),
        Key("u", "north", "what is up"),
        Key("f3", "leave", means="draw"),
    ),
    "piece": (
        Key("enter", "next_side", "next", bound=False),
        _back("escape", "dismiss", "leave it"),
        Key("ctrl+s", "done", "take it", means="save"),
        Key("ctrl+p", "cut", "plus or minus"),
    ),
    "soak": (
        Key("enter", "correct", "correct"),
        _back("escape", "leave"),
        Key("w", "wetting", "filled now", means="filled or empty now"),
        Key("s", "start", "now at the mark"),
        Key("r", "reading", "reading", means="reading now"),
        Key("ctrl+n", "reading", means="now"),
        Key("f", "refill", "refilled"),
        Key("a", "add", "add one", means="add"),
        Key("x", "strike", "strike out", means="take out"),
        Key("h", "next_hole", "next hole"),
        Key("p", "chart", "plot"),
        Key("m", "meaning", "meaning"),
        Key("b", "bell", "bell", means="bell"),
        Key("t", "shift", "shift times"),
    ),
    "ask": (
        _back("escape", "answer(False)", "no"),
        Key("n", "answer(False)", means="no"),
        Key("y", "answer(True)", means="yes"),
        Key("left,right,up,down", "app.focus_next"),
    ),
    "reminders": (
        _back("escape,q", "close"),
        Key("b", "close", means="bell"),
        *(Key(str(at), f"switch('{name}')") for at, name in enumerate(NAMES, 1)),
        Key("0", "all"),
        Key("up", "app.focus_previous"),
        Key("down", "app.focus_next"),
    ),
    "swap": (_back(),),
    "changes": (_back("escape,enter,space"),),
    "list": (Key("ctrl+z", "bring_back", means="take back"),),
}


def bindings(page: str) -> list[BindingType]:
    """Return what a page listens for."""
    return [
        Binding(one.keys, one.action, one.word or one.means, show=False)
        for one in PAGES[page]
        if one.bound
    ]
