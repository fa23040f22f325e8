"""HTML put together so that no text can become markup."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from interview.reading.foreign import shown


class Markup(str):
    """Text that is HTML already; all other text is escaped where it is put in."""

    __slots__ = ()


def text(words: str) -> Markup:
    """Return ``words`` as text of a page: nothing in them is markup, steers or hides."""
    return Markup("\n".join(escape(shown(line)) for line in words.split("\n")))


def joined(parts: Iterable[str], between: str = "\n") -> Markup:
    """Return parts one after the other, those that are text escaped."""
    return Markup(between.join(one if isinstance(one, Markup) else text(one) for one in parts))


def tag(name: str, *parts: str, **attributes: str) -> Markup:
    """Return an element with ``parts`` inside; ``class_`` is its class, ``data_x`` is data-x.

    An attribute without a value is left out.
    """
    said = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{text(value)}"'
        for key, value in attributes.items()
        if value
    )
    return Markup(f"<{name}{said}>{joined(parts, '')}</{name}>")


def items(name: str, lines: Iterable[str], **attributes: str) -> Markup:
    """Return a list ``name`` (ol, ul) of ``lines``; nothing where there are none."""
    found = [tag("li", one) for one in lines]
    return tag(name, *found, **attributes) if found else Markup()


def row(cells: Iterable[str], cell: str = "td") -> Markup:
    """Return a row of a table."""
    return tag("tr", *(tag(cell, one) for one in cells))
