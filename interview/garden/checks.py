"""What ties a later subject back to an earlier one: the spots against what is dug there."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from typing import Any

from interview.asking import own_fault
from interview.asking.question import Unanswered
from interview.asking.results import Results, part
from interview.garden import gate
from interview.garden.afterwards import questions as review
from interview.garden.afterwards.findings import after_findings, built_findings
from interview.garden.afterwards.results import BuiltResults
from interview.garden.earth.findings import earth_findings, water_findings
from interview.garden.earth.results import EarthResults
from interview.garden.place.findings import rain_findings
from interview.garden.planting.findings import planting_findings
from interview.garden.planting.results import PlantingResults
from interview.garden.site import gate as site_gate
from interview.garden.site import lines_questions as buried
from interview.garden.site import nearby_questions as nearby
from interview.garden.site import results as site_plan
from interview.garden.site import spot_questions as ground
from interview.garden.site.findings import permission_findings
from interview.garden.site.results import SiteResults, SpotReport
from interview.garden.site.setbacks import distance_words, left_of
from interview.garden.site.siting import verdict
from interview.garden.size import answered
from interview.garden.size import questions as bed
from interview.garden.size.findings import depth_findings, size_findings
from interview.garden.size.results import SizeResults
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import questions as soak
from interview.garden.soak.findings import holes_findings
from interview.garden.soak.results import SoakResults
from interview.garden.storms.findings import record_findings
from interview.garden.storms.results import StormsResults
from interview.garden.survey.findings import catchment_findings
from interview.garden.survey.results import SurveyResults
from interview.quantities.evidence import OURS, PRACTICE, Brief, Finding, Grade, Provenance, Source
from interview.quantities.guards import reaches
from interview.quantities.records import record
from interview.quantities.shown import depth_words
from interview.quantities.units import Quantity, magnitude, quantity, total
from interview.reading import said_day

LOCATE_SOURCE = Source(
    "Best Practices Guide, Common Ground Alliance, practices 5.19 to 5.23, web page",
    Provenance.PUBLISHED,
)


@record(eq=False)
class Checks(Results):
    """The spots held against what is dug there, and everything found about the garden."""

    site: SiteResults
    soak: SoakResults
    survey: SurveyResults
    size: SizeResults
    storms: StormsResults
    earth: EarthResults
    planting: PlantingResults
    built: BuiltResults
    today: dt.date

    @part
    def spots(self) -> tuple[SpotReport, ...]:
        """What was found at each spot."""
        return tuple(
            site_plan.spot_report(spot, self.dug_depth, self.size.reaches_out)
            for spot in self.answers.items("spots")
        )

    @property
    def dug_depth(self) -> Quantity:
        """The deepest digging; the cap, the mulch and the compost while it is not known."""
        laid = [self.answers[bed.MULCH_DEPTH]]
        if self.answers[bed.AMEND]:
            laid.append(self.answers[bed.COMPOST_DEPTH])
        try:
            return quantity(self.earth.lie.deepest_dig, "ft")
        except Unanswered:
            return total(answered.deepest(self.answers), *laid)

    @part
    def findings(self) -> tuple[Finding, ...]:
        """Everything found about the spot chosen and the garden, worst first."""
        told = (one.told(self.answers.told) for one in _all_findings(self))
        return tuple(sorted(told, key=lambda one: -one.grade.trouble))

    @part
    def verdict(self) -> Grade:
        """The worst of the findings."""
        return verdict(self.findings)


_Check = tuple[str, Callable[[Any], Iterator[Finding]], Any]


def _all_findings(found: Checks) -> Iterator[Finding]:
    """Yield every finding; a part of the plan that waits for an answer yields none."""
    safety: tuple[_Check, ...] = (
        ("lines", _lines, found),
        ("marks", mark_reach_findings, found),
        ("dig day", dig_day_findings, found),
        ("chosen spot", _chosen_spot, found),
        ("permission", permission_findings, found.site),
        ("holes", holes_findings, found.soak),
        ("hole depth", hole_depth_findings, found),
        ("depth", depth_findings, found.size),
    )
    worth: tuple[_Check, ...] = (
        ("rain", rain_findings, found.storms.place),
        ("size", size_findings, found.size),
        ("earth", earth_findings, found.earth),
        ("water", water_findings, found.earth),
        ("catchment", catchment_findings, found.survey),
        ("record", record_findings, found.storms),
        ("planting", planting_findings, found.planting),
        ("levels as dug", built_findings, found.built),
        ("after", after_findings, found.answers),
    )
    for name, check, known in (*safety, *worth):
        try:
            yield from check(known)
        except Unanswered:
            continue
        except Exception as trouble:
            # What was not looked at may hide a stop.
            own_fault.note(f"the check of {name}", trouble)
            where = own_fault.where(trouble)
            said = f"The check of {name} was not made because of an error in the program ({where})."
            grade = Grade.STOP if (name, check, known) in safety else Grade.FIX
            change = "Do not dig or build by this plan until the error is mended."
            yield Finding("own_fault", grade, said, "", OURS, change)


def _lines(found: Checks) -> Iterator[Finding]:
    reasons = site_gate.dig_reasons(found.answers, found.today)
    dug = any(
        hole.get(digging.HOLE_DEPTH) is not None and not gate.cleared_before(hole)
        for hole in found.answers.items("holes")
    )
    if not reasons:
        until = found.site.dig_gate.stale_after
        said = "The buried lines are located, and every owner has answered."
        limit = f"the marks are good until {said_day(until)}" if until else ""
        yield Finding("buried_lines", Grade.GOOD, said, limit, LOCATE_SOURCE)
        return
    grade = Grade.STOP if dug and not found.answers.get(buried.LINES_ANSWERED) else Grade.FIX
    yield Finding(
        "buried_lines",
        grade,
        "Nothing may be dug today: " + " ".join(reasons),
        "every line located, every owner answered, marks still good",
        LOCATE_SOURCE,
        "Do not dig, not even the test hole, until this is settled.",
    )


def mark_reach_findings(found: Checks) -> Iterator[Finding]:
    """Say where the garden reaches toward a mark beyond the edge that was measured from."""
    near = found.answers.get(buried.MARK_DISTANCE)
    beyond = found.size.reaches_out
    if near is None or magnitude(beyond, "ft") <= 1e-9:
        return
    zone = buried.tolerance_zone(found.answers)
    left = left_of(near, beyond)
    if reaches(magnitude(left, "m"), magnitude(zone.shown(found.answers.metric), "m")):
        return
    past = distance_words(beyond, found.answers.metric, up=True)
    yield Finding(
        "mark_reach",
        Grade.FIX,
        f"The garden reaches up to {past} beyond the edge you measured from, so the digging may "
        f"come within {zone.words(found.answers.metric)} of a mark.",
        f"{zone.words(found.answers.metric)} from any mark",
        zone.source,
        (
            "Lay the whole garden out, to the outer foot of the berm, and measure to the nearest "
            "mark again."
        ),
    )


def hole_depth_findings(found: Checks) -> Iterator[Finding]:
    """Yield for each hole here that it does not reach into the soil under the garden's floor."""
    metric = found.answers.metric
    for hole in found.answers.items(soak.HOLES.key):
        deep, floor = hole.get(digging.HOLE_DEPTH), hole.get(digging.FLOOR_DEPTH)
        floor = found.dug_depth if floor is None else floor
        aside = hole.get(soak.HOLE_COUNTS) is False or soak.elsewhere(hole)
        if deep is None or aside or magnitude(deep, "m") > magnitude(floor, "m"):
            continue
        number = hole.scope[1] if hole.scope else 1
        dug, below = depth_words(deep, metric), depth_words(floor, metric)
        yield Finding(
            f"hole_{number}_depth",
            Grade.FIX,
            f"Hole {number} is {dug} deep, and the garden is dug to {below}: the soil tested "
            "will be dug away.",
            "the hole is deeper than the garden is dug, by the water of the test",
            PRACTICE,
            "Dig the hole deeper, then soak and time it.",
            Brief(f"Too shallow: {dug}, and the garden is dug to {below}. Dig the hole deeper."),
        )


def dig_day_findings(found: Checks) -> Iterator[Finding]:
    """Yield that digging will be shut on the day that is meant for it."""
    day = found.answers.get(review.DIG_DAY)
    if day is None or day <= found.today:
        return
    reasons = site_gate.dig_reasons(found.answers, day)
    if reasons:
        yield Finding(
            "dig_day",
            Grade.FIX,
            f"On {said_day(day)}, the day you mean to dig, digging will be shut: "
            + " ".join(reasons),
            "marks that are still good on the day you dig",
            LOCATE_SOURCE,
            "Choose another day, or ask for new marks in time for it.",
        )


def _chosen_spot(found: Checks) -> Iterator[Finding]:
    chosen = ground.chosen_spot(found.answers)
    number = chosen.scope[1] if chosen.scope else 1
    for spot in found.spots:
        if spot.number == number:
            yield from spot.findings
            if chosen.get(nearby.NEAR) is None:
                yield Finding(
                    "near_spot",
                    Grade.FIX,
                    "What lies near the spot is not known yet.",
                    "distances to buildings, septic parts, wells and the rest",
                    PRACTICE,
                    "Walk around it and tick what lies near.",
                )
