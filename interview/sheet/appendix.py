"""Where every number comes from: formulas, sources, and the words of the trade, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking import own_fault
from interview.garden import figures
from interview.garden.guides import guides
from interview.garden.plan import Plan
from interview.garden.site import lines_questions as buried
from interview.garden.size.rough_figures import SETTLED
from interview.garden.summary import wrap
from interview.quantities.evidence import Provenance, Source

GLOSSARY = (
    ("berm", "a low bank of tamped soil that holds the pond in on the downhill side"),
    ("corrected rate", "how fast the soil takes water through the bottom of the hole alone, "
                       "without the water that left through its walls"),
    ("curve number", "a number for soil and cover, 0 to 100, from which runoff is worked out"),
    ("drift", "a group of plants of one kind, set close together"),
    ("drop rate", "how fast the water fell in the test hole, walls and bottom together"),
    ("forb", "a flowering plant that is neither woody nor a grass"),
    ("freeboard", "the height of the rim above the full pond"),
    ("infiltration", "water soaking into soil"),
    ("notch", "the gap in the rim, lined with stone, over which a full pond spills"),
    ("rim", "the top edge of the garden, level all around"),
    ("runoff coefficient", "the part of the rain on a surface that runs off it: 0.95 of a roof"),
    ("standard error", "how far off a figure may be, from errors of measuring alone"),
    ("tamped", "pressed down in thin layers until a heel leaves no print"),
    ("variance", "the square of the standard error; its parts add up, so each part can be named"),
    ("weighted area", "the area that drains here, with each surface counted only by the part of "
                      "its rain that runs off"),
)  # fmt: skip
"""Words of the trade on the sheet, each with what it means."""


SYMBOLS = (
    "S weighted area, P rain to hold, d pond depth, b rim above the full pond, z level run of a "
    "side for a rise of one, k length over width, A area at half depth, Lf and Wf sides of the "
    "floor, Af its area, Pf its outline, V pond volume, h depth of water, t time, f corrected "
    "rate, i rain in an hour, kappa what the corners of the outline add, C part that runs off, Q "
    "flow, H depth of flow in the notch, L its width, Cw weir coefficient, n roughness of a pipe."
)
_LETTERS = {
    Provenance.ARITHMETIC: "",
    Provenance.PRACTICE: "[c]",
    Provenance.OURS: "[o]",
    Provenance.MEMORY: "[m]",
}
"""Marks of sources that name no publication."""


class Sources:
    """The sources of a plan, each with its number."""

    def __init__(self, plan: Plan) -> None:
        self._numbers: dict[str, int] = {}
        try:
            self._take(plan)
        except Exception as trouble:
            # Those left out get their numbers where they are first named.
            own_fault.note("the order of the sources", trouble)

    def _take(self, plan: Plan) -> None:
        for finding in plan.findings:
            self.mark(finding.source)
        self.mark(buried.tolerance_zone(plan.answers).source)
        for one in figures.found(plan):
            self.mark(one.source)
        for matter in guides(plan):
            for saying in matter.sayings:
                self.mark(saying.source)

    def mark(self, source: Source) -> str:
        """Return ``[3]``, the number of ``source``; a letter where it names nothing."""
        if not source.title:
            return _LETTERS.get(source.standing, "")
        return f"[{self._numbers.setdefault(str(source), len(self._numbers) + 1)}]"

    def lines(self) -> Iterator[str]:
        """Yield what the letters mean and the list of the sources by number."""
        told = "; ".join(
            f"{letter} {standing.value}"
            for standing, letter in _LETTERS.items()
            if standing in (Provenance.PRACTICE, Provenance.OURS, Provenance.MEMORY)
        )
        yield from wrap(f"No mark: arithmetic; {told}.")
        for title, number in self._numbers.items():
            yield from wrap(f"[{number}] {title}", "     ")


def formulas(plan: Plan, sources: Sources) -> Iterator[str]:
    """Yield every figure that is known: value, formula, number of its source."""
    yield from wrap(
        "Rates and depths of rain held are rounded down, times to empty up, to two digits. "
        "Unrounded: rain-garden-interview --figures FILE, or Working on the page of the plan."
    )
    for one in figures.found(plan):
        if one.value != SETTLED and one.waits_for is None and one.shown(plan.metric):
            how = f"; {one.figure.formula}" if one.figure.formula else ""
            mark = sources.mark(one.source)
            said = f"{one.figure.label}: {one.shown(plan.metric)}{how} {mark}"
            yield from wrap(said, "    ")
    yield from wrap(f"Letters: {SYMBOLS}", "    ")


def glossary() -> Iterator[str]:
    """Yield the words of the trade with what they mean."""
    for word, meaning in GLOSSARY:
        yield from wrap(f"{word}: {meaning}.", "    ")
