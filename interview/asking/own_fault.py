"""A fault of the program in a part of a page: the part says so in its place, the rest is given."""

from __future__ import annotations

import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path
from typing import NamedTuple

from interview.asking.long_work import LetGo

PASSED_ON: tuple[type[Exception], ...] = (LetGo, BrokenPipeError)
"""What comes out of a page as it is: nobody is there to read it. The tests let every fault out."""
MOST_PARTS = 5
"""Parts at fault that are told by name."""


class Fault(NamedTuple):
    """One part that could not be made, and the place in the program, without any answer."""

    part: str
    where: str


_NOTED: ContextVar[list[Fault] | None] = ContextVar("noted", default=None)


@contextmanager
def noting() -> Iterator[list[Fault]]:
    """Gather the faults that are noted within; an outer list gets them too."""
    outer, found = _NOTED.get(), list[Fault]()
    token = _NOTED.set(found)
    try:
        yield found
    finally:
        _NOTED.reset(token)
        if outer is not None:
            outer += [one for one in found if one not in outer]


def note(part: str, trouble: Exception) -> str:
    """Note that ``part`` met a fault; return the sentence that stands in its place.

    Raises ``trouble`` again where it is no fault of the program.
    """
    if isinstance(trouble, PASSED_ON):
        raise trouble
    fault, noted = Fault(part, where(trouble)), _NOTED.get()
    if noted is not None and fault not in noted:
        noted.append(fault)
    return (
        f"{part[:1].upper()}{part[1:]} cannot be shown because of an error in the program "
        f"({fault.where}). The rest is given; your answers are safe."
    )


def where(trouble: BaseException) -> str:
    """Say what went wrong in the program and where, without any of the answers."""
    frames = traceback.extract_tb(trouble.__traceback__)
    place = f" at {Path(frames[-1].filename).name} line {frames[-1].lineno}" if frames else ""
    return f"{type(trouble).__name__}{place}"


def short(trouble: Exception) -> str:
    """Return what stands in the place of one value."""
    return f"not shown: an error in the program ({where(trouble)})"


def named(faults: list[Fault]) -> str:
    """Return the names of the first parts, and how many more there are."""
    parts = list(dict.fromkeys(one.part for one in faults))
    more = f" and {len(parts) - MOST_PARTS} more" if len(parts) > MOST_PARTS else ""
    return f"{', '.join(parts[:MOST_PARTS])}{more}"


def told(faults: list[Fault]) -> list[str]:
    """Say for each place in the program which parts met a fault there, and what to do."""
    lines = []
    for place in dict.fromkeys(one.where for one in faults):
        parts = named([one for one in faults if one.where == place])
        lines.append(f"error in the program ({place}) in: {parts}.")
    if lines:
        lines.append(
            "The rest is given and your answers are safe. Do not build by what is missing. Report "
            "the line above, with the version, to whoever gave you the program; until it is "
            "mended, try changing the answer you gave last."
        )
    return lines
