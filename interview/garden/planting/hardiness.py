"""A plant hardiness zone, with the half of it that the map names."""

from __future__ import annotations

from interview.asking.answers import Answers
from interview.asking.measures import Count
from interview.asking.question import Taken
from interview.quantities.records import record

_HALVES = ("a", "b")


class HardinessZone(int):
    """The number of a zone, which is what plants are held against; shown as the map has it."""

    half = ""
    """``a`` for its colder half, ``b`` for the warmer one; empty where it was not said."""

    def __str__(self) -> str:
        return f"{int(self)}{self.half}"


@record(eq=False)
class ZoneOfTheMap(Count):
    """A zone such as ``5b``, ``6`` or ``zone 7a``."""

    at_least: int = 1
    at_most: int = 13
    tail: tuple[str, ...] = _HALVES
    lead: tuple[str, ...] = ("usda", "hardiness", "zone", "z")
    such: str = "5b or 6"

    def take(self, text: str, answers: Answers) -> Taken[int]:
        taken = super().take(text, answers)
        zone = HardinessZone(taken.value)
        zone.half = next((one for one in _HALVES if taken.kept.casefold().endswith(one)), "")
        return taken._replace(found=zone)
