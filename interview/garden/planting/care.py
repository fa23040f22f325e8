"""Looking after the planting in its first year, and what to do when water stands too long."""

from __future__ import annotations

from typing import NamedTuple

from interview.garden.planting.stock import UW_STEP_3, PlantSize
from interview.garden.planting.wetness import DAY_HOURS, LONGEST_HOURS, USUAL_HOURS
from interview.quantities.evidence import PRACTICE, Brief, Finding, Grade, Provenance, Source
from interview.quantities.records import record
from interview.quantities.shown import HIGH
from interview.quantities.units import Quantity, magnitude, quantity


def _published(title: str) -> Source:
    return Source(title, Provenance.PUBLISHED)


BUNCOMBE = _published(
    "Rain Gardens Part IV: Regular Maintenance, Buncombe County Master Gardeners, NC, web page"
)
RI_DEM = _published("Maintaining a Rain Garden, Rhode Island DEM, web page")
BALTIMORE = _published("Rain garden maintenance checklist, Blue Water Baltimore, undated")
DELAWARE = _published("Garden Maintenance, Delaware Watersheds, web page")
CLEMSON = _published("Maintaining Your Rain Garden, Clemson HGIC, 2016")
CUT_BACK = Source(
    "Rain garden tip sheet for homeowners, undated, publisher not shown in the copy",
    Provenance.SECONDARY,
)


WHEN_TO_PLANT = (
    "Plant in early spring or early autumn; plugs any time in the season if you water them. Where "
    "winters freeze, set plants after the last frost of spring, or early enough that they root "
    "before the ground freezes. This program has no dates of frost: ask a nursery for those of "
    "your place."
)
WHEN_SOURCE = _published(
    "Rain gardens, Royal Horticultural Society, web page; Step 3, University of Wisconsin "
    "Extension, web page"
)
"""Of the seasons; what is said of frost is common practice, no source."""


@record
class CareTask:
    """One job and when it falls: months since planting, or a season by its frost and growth."""

    task: str
    when: str
    """When in words, which hold in either half of the world."""
    since_planting: tuple[int, ...]
    """Whole months since planting, 0 to 11; empty where the season decides."""
    source: Source
    mulched: bool = False
    """Whether it is a job of a garden with mulch alone."""

    def months(self, planted: int) -> list[int]:
        """Return the months of the calendar, 1 to 12, in a year planted in month ``planted``."""
        return [(planted - 1 + age) % 12 + 1 for age in self.since_planting]


CARE = (
    CareTask("Water twice a week, about 1 inch (25 mm) a week in all, unless rain does it or the "
             "ground is frozen.", "all year", tuple(range(0, 12)), UW_STEP_3),
    CareTask("Pull weeds every week while they are small.", "first 3 months", (0, 1, 2), RI_DEM),
    CareTask("Pull weeds at least once a month.", "from the fourth month on", tuple(range(3, 12)),
             BALTIMORE),
    CareTask("After each big storm, see that water comes in and spills out where it should.",
             "all year", tuple(range(0, 12)), BALTIMORE),
    CareTask("Replace plants that have died.", "after 6 and 12 months", (5, 11), BALTIMORE),
    CareTask("Clear silt and leaves from where water comes in.", "after 6 and 12 months", (5, 11),
             BUNCOMBE),
    CareTask("Do not feed the plants once they have taken root.", "from the third month on", (2,),
             BUNCOMBE),
    CareTask("Top up the mulch to 2 to 3 inches (50 to 75 mm).", "in spring, after the last frost",
             (), DELAWARE, mulched=True),
    CareTask("Cut dead stems back to near the ground.",
             "at the end of the first winter, before new growth", (), CUT_BACK),
    CareTask("Water deeply.", "in long dry spells", (), CLEMSON),
)  # fmt: skip


class EarlyCare(NamedTuple):
    """What one size of plant asks for in a part of its first two years, beside ``CARE``."""

    when: str
    task: str
    source: Source = PRACTICE


_CLOSING = EarlyCare(
    "Second year",
    "Pull weeds as often as in the first year, until the plants meet; from the third year on it is "
    "less. Water in long dry spells only.",
    UW_STEP_3,
)

EARLY: dict[PlantSize, tuple[EarlyCare, ...]] = {
    PlantSize.KINDS: (_CLOSING,),
    PlantSize.POT: (_CLOSING,),
    PlantSize.PLUG: (
        EarlyCare(
            "First two weeks",
            "Water plugs every other day unless it rains: so small a root dries out in two days. "
            "Put the mulch down first and set them through it, so that none is buried.",
        ),
        EarlyCare(
            "First year",
            "Plugs stay small and few flower: mark where they stand, or they are pulled as weeds.",
        ),
        _CLOSING,
    ),
    PlantSize.LARGE_POT: (
        EarlyCare(
            "On the day",
            "Loosen or cut roots that go round the pot, and set the top of the root ball level "
            "with the soil, not under the mulch.",
        ),
        EarlyCare(
            "First year",
            "A large root ball dries out in the middle while the soil around it is damp: water at "
            "the stem.",
        ),
        EarlyCare(
            "Second year",
            "The gaps of 18 in (450 mm) close late: keep them mulched and weeded through the year.",
        ),
    ),
    PlantSize.SEED: (
        EarlyCare(
            "Sowing",
            "Sow the rim in late autumn or early spring on bare raked soil, tread it in, and cover "
            "it with a thin layer of clean straw, not with mulch. The plugs below it are "
            "watered every other day for two weeks.",
        ),
        EarlyCare(
            "First year",
            "Keep the seed damp for the first month. Cut the rim back to 6 in (150 mm) whenever it "
            "is 12 in (300 mm) high: that cuts the weeds and spares the seedlings.",
        ),
        EarlyCare(
            "Second year",
            "Cut the rim once more in spring, sow bare spots again, and pull weeds you know for "
            "sure. Most kinds flower from the second or third year on.",
        ),
    ),
}
"""What each size of plant asks for in its first two years."""


class Sign(NamedTuple):
    """What a plant in trouble looks like, and what to do."""

    trouble: str
    look: str
    remedy: str
    source: Source = Source("", Provenance.MEMORY)


SIGNS = (
    Sign(
        "Drowned",
        "Leaves turn yellow and hang while the soil is wet; the stem is soft and dark at its foot; "
        "the soil smells sour.",
        "Lift it and set it one zone higher, and put a plant that stands more water in its place.",
    ),
    Sign(
        "Parched",
        "Leaves hang in the morning too, curl, or go brown and crisp at the edges; the soil is dry "
        "a finger deep.",
        "Water it deeply twice a week and mulch it; if that fails, set it one zone lower.",
    ),
    Sign(
        "Neither",
        "Leaves hang at noon only and stand again by evening.",
        "Wait: new plants do that in heat.",
    ),
)
"""How to tell a drowned plant from a parched one."""


def after_storm(hours: Quantity) -> Finding:
    """Return what ``hours`` of standing water after a storm means, and what to do.

    ``hours`` is a time. Up to 24 h good; to 48 h watch; to 72 h clear and loosen; over 72 h mend.
    Sources: the 48 h limit of the Royal Horticultural Society, the
    72 h limit of Monterey Bay LID, raking from a homeowner's tip sheet; the rest from memory.
    """
    stood = magnitude(hours, "h")
    said = f"Water stood for about {stood:.0f} h."
    most = f"{USUAL_HOURS.value:g} h at the most"
    took = f"{HIGH.write(stood)} h"
    fine, slow = Brief(f"Fine: {took}; {most}."), Brief(f"TOO LONG: {took}, {most}.")
    if stood <= DAY_HOURS.value:
        return Finding("drained", Grade.GOOD, said, "gone in 24 h", DAY_HOURS.source, brief=fine)
    if stood <= USUAL_HOURS.value:
        return Finding(
            "drained",
            Grade.GOOD,
            said,
            "gone in 48 h",
            USUAL_HOURS.source,
            "Keep it as it is, and time the next storm; 24 h is the aim.",
            fine._replace(near=True),
        )
    if stood <= LONGEST_HOURS.value:
        return Finding(
            "drained_slowly",
            Grade.FIX,
            said,
            "gone in 48 h",
            USUAL_HOURS.source,
            "Clear silt where water comes in, rake or poke the floor loose, do not step on it, "
            "and time the next storm.",
            slow,
        )
    return Finding(
        "drained_too_slowly",
        Grade.FIX,
        said,
        "gone in 72 h",
        LONGEST_HOURS.source,
        "Dig out the top layer, a hand deep, loosen the soil below, send less water here, and test "
        "the soil again; if that fails, plan the garden again.",
        slow,
    )


def after_storm_steps() -> tuple[tuple[str, str], ...]:
    """Return for each span of hours that water stands, in words, what to do."""
    day, usual, longest = (round(one.value) for one in (DAY_HOURS, USUAL_HOURS, LONGEST_HOURS))
    spans = (
        (f"gone within {day} h", day),
        (f"gone in {day} to {usual} h", usual),
        (f"gone in {usual} to {longest} h", longest),
        (f"still there after {longest} h", longest + 1),
    )
    good = "Good: nothing to do."
    return tuple((said, after_storm(quantity(hours, "h")).change or good) for said, hours in spans)
