"""Every key of every page: what it does, the words of the key line, and what its letter means.

A letter means one thing on all pages; so does a letter with Ctrl, and a function key.
"""

from __future__ import annotations

from typing import NamedTuple

from textual.binding import Binding, BindingType


class PageKey(NamedTuple):
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


def _back(keys: str = "escape", action: str = "dismiss", word: str = "back") -> PageKey:
    return PageKey(keys, action, word, means="back")


ALWAYS = (
    PageKey("f1", "app.keys", "help", means="help"),
    PageKey("ctrl+q", "app.leave", "quit", means="quit"),
)
"""The keys that stand at the right of every key line."""
WAYS_OF_TELLING = ("bell", "notice", "title", "desktop")
"""How one is told that a reading is due, by number; all that there are in ``Reminders``."""
_FURTHER = (
    PageKey("f3", "draw", "draw", means="draw"),
    PageKey("f4", "try_out", "try sizes"),
    PageKey("f5", "plants", "plants"),
)
PAGES: dict[str, tuple[PageKey, ...]] = {
    "welcome": (
        PageKey("enter", "open", "open it", bound=False),
        PageKey("a", "begin", "new garden", means="add"),
        PageKey("f10", "every_question", "every question", means="every question"),
    ),
    "opening": (),
    "mend": (
        PageKey("g", "choose('go_on')", "go on"),
        PageKey("l", "choose('again')", "read it again"),
        _back("escape", "choose('leave')", "leave it"),
    ),
    "question": (
        PageKey("enter", "go_on", "go on", bound=False),
        _back("escape,ctrl+b", "back"),
        PageKey("ctrl+t", "put_off", "don't know"),
        PageKey("f6", "mend", "open it", means="to what shuts it, and back"),
        PageKey("ctrl+n", "now", "now"),
        PageKey("ctrl+r", "save_again", "save again"),
        PageKey("f9", "ways", "options"),
        PageKey("ctrl+g", "go_to", "go to"),
        PageKey("ctrl+l", "plan", "plan"),
        *_FURTHER,
        PageKey("ctrl+o", "aside('how')", "how to", means="how"),
        PageKey("ctrl+y", "aside('why')", "why"),
        PageKey("f10", "every_question", means="every question"),
        PageKey("tab", "next_box(1)"),
        PageKey("shift+tab", "next_box(-1)"),
    ),
    "review": (
        PageKey("enter", "go", "go there", bound=False),
        _back("escape", "close"),
        PageKey("ctrl+g", "next_open", "next open", means="go to"),
        PageKey("f7", "clear", "take this answer away"),
        PageKey("f8", "remove", "remove this whole item"),
        PageKey("f10", "every_question", "every question", means="every question"),
    ),
    "plan": (
        _back("escape,q"),
        PageKey("ctrl+o", "working", "working", means="how"),
        PageKey("ctrl+s", "write", "write sheet", means="save"),
        PageKey("j", "jobs", "job list"),
        PageKey("c", "card", "yard card"),
        PageKey("h", "soak", "soak test", means="test hole"),
        PageKey("ctrl+g", "go_to", "go to"),
        *_FURTHER,
        PageKey("pageup", "page(-1)"),
        PageKey("pagedown", "page(1)"),
    ),
    "ways": (
        PageKey("enter", "take", "take it", bound=False),
        _back("escape,q"),
        PageKey("f9", "dismiss", means="options"),
    ),
    "working": (_back("escape,q"),),
    "help": (_back("escape,q"), PageKey("f1", "dismiss", means="help")),
    "meaning": (_back("escape,q"), PageKey("m", "dismiss", means="meaning")),
    "garden": (
        _back("escape,q"),
        PageKey("left", "turn(-1)", "before"),
        PageKey("right", "turn(1)", "next"),
        PageKey("f3", "dismiss", means="draw"),
        *(PageKey(str(place + 1), f"view({place})") for place in range(4)),
    ),
    "try": (
        _back("escape,q", "leave", "leave"),
        PageKey("left", "move(-1)", "less", bound=False),
        PageKey("right", "move(1)", "more", bound=False),
        PageKey("k", "keep", "keep"),
        PageKey("z", "reset", "this one back", means="take back"),
        PageKey("3", "three", "three sizes"),
        PageKey("e", "discard", "every one back"),
        PageKey("f4", "leave", means="try sizes"),
        PageKey("pageup", "page(-1)"),
        PageKey("pagedown", "page(1)"),
    ),
    "three": (
        PageKey("enter", "take", "try it"),
        _back("escape,q"),
        PageKey("left", "turn(-1)", "before"),
        PageKey("right", "turn(1)", "next"),
        PageKey("3", "dismiss"),
    ),
    "plants": (
        PageKey("enter", "swap", "swap out", bound=False),
        _back("escape", "leave"),
        PageKey("i", "favourite", "keep it in"),
        PageKey("z", "undo", "undo a swap", means="take back"),
        PageKey("ctrl+y", "why_not", "why not…?", means="why"),
        PageKey("f5", "leave", means="plants"),
    ),
    "pieces": (
        PageKey("enter", "change", "change", bound=False),
        _back("escape", "leave"),
        PageKey("a", "add", "add", means="add"),
        PageKey("o", "cut_out", "cut out"),
        PageKey("space", "turn", "turn"),
        PageKey("v", "move", "move"),
        PageKey("d", "copy", "duplicate"),
        PageKey("x,delete", "remove", "remove", means="take out"),
        PageKey("u", "north", "what is up"),
        PageKey("f3", "leave", means="draw"),
    ),
    "piece": (
        PageKey("enter", "next_side", "next", bound=False),
        _back("escape", "dismiss", "leave it"),
        PageKey("ctrl+s", "done", "take it", means="save"),
        PageKey("ctrl+p", "cut", "plus or minus"),
    ),
    "soak": (
        PageKey("enter", "correct", "correct"),
        _back("escape", "leave"),
        PageKey("w", "wetting", "filled now", means="filled or empty now"),
        PageKey("s", "start", "at fill level"),
        PageKey("r", "reading", "reading", means="reading now"),
        PageKey("ctrl+n", "reading", means="now"),
        PageKey("f", "refill", "refilled"),
        PageKey("a", "add", "add one", means="add"),
        PageKey("x", "strike", "strike out", means="take out"),
        PageKey("h", "next_hole", "next hole", means="test hole"),
        PageKey("p", "chart", "plot"),
        PageKey("m", "meaning", "meaning"),
        PageKey("b", "bell", "bell", means="bell"),
        PageKey("t", "shift", "move times"),
    ),
    "ask": (
        _back("escape", "answer(False)", "no"),
        PageKey("n", "answer(False)", means="no"),
        PageKey("y", "answer(True)", means="yes"),
        PageKey("left,right,up,down", "app.focus_next"),
    ),
    "reminders": (
        _back("escape,q", "close"),
        PageKey("b", "close", means="bell"),
        *(PageKey(str(at), f"switch('{name}')") for at, name in enumerate(WAYS_OF_TELLING, 1)),
        PageKey("0", "all"),
        PageKey("up", "app.focus_previous"),
        PageKey("down", "app.focus_next"),
    ),
    "swap": (_back(),),
    "changes": (_back("escape,enter,space"),),
    "list": (PageKey("ctrl+z", "bring_back", means="take back"),),
}


def bindings(page: str) -> list[BindingType]:
    """Return what a page listens for."""
    return [
        Binding(one.keys, one.action, one.word or one.means, show=False)
        for one in PAGES[page]
        if one.bound
    ]
