"""What speaks for and against: the soil."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from interview.garden.site import siting
from interview.garden.soak import hole_questions as digging
from interview.garden.soak.depth import NO_POND_HERE
from interview.garden.soak.hole_questions import BLOCKING_SMELLS
from interview.garden.soak.questions import elsewhere
from interview.garden.soak.rates import RAWLS_1982, SETTLED_WITHIN, Band
from interview.garden.soak.results import SoakResults
from interview.quantities.evidence import OURS, PRACTICE, Brief, Finding, Grade
from interview.quantities.shown import rate_words
from interview.quantities.units import plain_number

TWO_HOLES_APART = 2.0
"""Holes this many times apart are worth a further hole: a choice of this project."""

_CALL = "call the emergency number from upwind"


def holes_findings(found: SoakResults) -> Iterator[Finding]:
    for view, hole in zip(found.answers.items("holes"), found.holes, strict=True):
        smell = view.get(digging.HOLE_SMELL)
        if smell in BLOCKING_SMELLS:
            yield Finding(
                f"hole_{hole.number}_smell",
                Grade.STOP,
                f"{hole.name} smells of {smell}.",
                "no smell of gas, fuel or sewage",
                PRACTICE,
                f"Leave at once, use no phone or switch there, and {_CALL}."
                if smell == "gas"
                else "Stop, keep away, and call the health department.",
            )
        elif smell == "rotten_egg":
            yield Finding(
                f"hole_{hole.number}_smell",
                Grade.FIX,
                f"{hole.name} smells of rotten eggs: gas, or soil that is long wet.",
                "",
                PRACTICE,
                f"If it may be gas, leave and {_CALL}; else look for a higher spot.",
                Brief(
                    f"Rotten eggs: it may be gas. Leave, and {_CALL}, unless you are sure that it "
                    "is only wet soil."
                ),
            )
        if view.get(digging.HOLE_SEEPS) and not elsewhere(view):
            yield Finding(
                f"hole_{hole.number}_seeps",
                Grade.STOP,
                f"Water seeps into {hole.name}: that is groundwater.",
                "2 ft (0.6 m) of drained soil below the dug bottom",
                siting.BELOW_FLOOR_FT.source,
                "Choose a higher spot, or dig less deep.",
            )
        yield from _test(found, hole.number)
    combined = found.soil.combined
    if combined is not None and combined.spread > TWO_HOLES_APART:
        yield Finding(
            "holes_apart",
            Grade.FIX,
            f"The fastest hole is {plain_number(combined.spread, 2)} times the slowest."
            if isfinite(combined.spread)
            else "One hole takes water and another takes none at all.",
            "the fastest hole is at most about twice as fast as the slowest",
            OURS,
            "Test another hole where you may dig, or move toward the faster one.",
        )


def _test(found: SoakResults, number: int) -> Iterator[Finding]:
    hole = next(one for one in found.holes if one.number == number)
    test = hole.test
    if test is None:
        return
    if hole.set_aside:
        yield Finding(
            f"hole_{number}_set_aside",
            Grade.GOOD,
            f"{hole.name} is set aside and not used: {hole.set_aside}.",
            "",
            PRACTICE,
        )
        return
    fall = rate_words(test.drop_rate, found.answers.metric)
    alone = rate_words(test.corrected, found.answers.metric)
    said = (
        f"{hole.name}: the water drops {fall}, through the bottom alone {alone}: {test.band.value}."
    )
    none = test.band is Band.NO_FALL
    line = f"STOP: {test.band.value}." if none else f"Water drops {fall}: {test.band.value}."
    bad = {Band.NO_FALL: Grade.STOP, Band.MARGINAL: Grade.FIX}
    yield Finding(
        f"hole_{number}_rate",
        bad.get(test.band, Grade.GOOD),
        said,
        "soil drains well if it can empty a pond of 10 in (250 mm) in time by both checks; it is "
        "marginal if it cannot empty 3 in (75 mm)",
        OURS,
        NO_POND_HERE if test.band in bad else "",
        Brief(line),
    )
    if not test.settled and len([row for row in test.intervals if row.valid]) >= 3:
        yield Finding(
            f"hole_{number}_settled",
            Grade.FIX if test.still_wetting else Grade.GOOD,
            f"{hole.name}: the rate has not settled yet.",
            "the last three rates are within 10 % of their average",
            SETTLED_WITHIN.source,
            "Take more readings; the soil may still be wetting.",
        )
    if hole.texture is not None and hole.texture.far_apart:
        yield Finding(
            f"hole_{number}_texture",
            Grade.FIX,
            (
                f"{hole.name}: {hole.texture.texture.value} by feel does not fit the rate that was "
                "tested."
            ),
            "between a third of the rate in the table and three times it",
            RAWLS_1982,
            "Look again: roots, cracks or an animal's hole make the test too fast, and smeared "
            "walls make it too slow.",
        )
