"""What every field has in common. A field gives text; what it means is the session's to say."""

from __future__ import annotations

from typing import Any, NamedTuple

from textual.message import Message

from interview.asking.question import Kind
from interview.reading import is_unknown
from interview.screens.parts import Stacked


class Asked(NamedTuple):
    """What a field needs to know of its question."""

    kind: Kind[Any]
    kept: str | None
    """The words kept, or nothing."""
    default: str | None
    """What Enter alone takes while there is no answer."""
    examples: str
    """How an answer is written."""
    shut: bool = False
    typed: str = ""
    """The words kept as one would type them here, where the file writes them otherwise."""

    @property
    def text(self) -> str:
        """The words kept, where they are an answer."""
        return "" if self.kept is None or is_unknown(self.kept) else self.kept

    @property
    def placeholder(self) -> str:
        """What stands in the empty field."""
        if self.kept is not None and is_unknown(self.kept):
            return "don't know yet; Enter leaves it so"
        return f"Enter alone takes {self.default}" if self.default else ""


class Field(Stacked):
    """Where an answer is given."""

    class Given(Message):
        """The person pressed Enter: the text is to be kept."""

        def __init__(self, field: Field, text: str) -> None:
            super().__init__()
            self.field = field
            self.text = text

    class Typed(Message):
        """The text so far, to be said back; nothing is kept."""

        def __init__(self, text: str) -> None:
            super().__init__()
            self.text = text

    def __init__(self, asked: Asked) -> None:
        super().__init__(id="field", disabled=asked.shut)
        self.asked = asked

    @property
    def text(self) -> str:
        """The answer as it stands in the field."""
        raise NotImplementedError

    @property
    def how(self) -> str:
        """Which keys answer, where they are not plain typing."""
        return ""

    @property
    def draft(self) -> str:
        """What is half typed, in words that ``restore`` takes and a file can hold."""
        return self.text

    def restore(self, draft: str) -> None:
        """Put back what was half typed."""

    @property
    def typed(self) -> str:
        """The line that is typed beside a list and not taken into it yet."""
        return ""

    def carry(self, typed: str) -> None:
        """Take over the line that was typed while the list beside it was changed elsewhere."""

    def begin(self) -> None:
        """Take the focus."""
        for child in self.query("Input, OptionList, Button"):
            child.screen.set_focus(child)
            return

    def offer_anew(self) -> None:
        """Let what is typed next take the place of the answer kept, where it is a figure."""

    @property
    def lines(self) -> int:
        """About how many lines of the screen it takes."""
        return 3

    def lines_in(self, width: int) -> int:
        """About how many lines it takes where it is ``width`` columns wide."""
        return self.lines

    def give(self) -> None:
        """Hand the answer over."""
        self.post_message(self.Given(self, self.text))
