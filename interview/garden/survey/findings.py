"""What speaks for and against: what drains here."""

from __future__ import annotations

from collections.abc import Iterator
from math import fsum

from interview.garden.survey import questions as survey
from interview.garden.survey import share_questions as sharing
from interview.garden.survey.catchment import whole_roof_finding
from interview.garden.survey.results import SurveyResults
from interview.quantities.evidence import Finding, Grade, Provenance, Source
from interview.quantities.units import Quantity, magnitude, quantity


def catchment_findings(found: SurveyResults) -> Iterator[Finding]:
    house = found.answers.get(survey.HOUSE_AREA)
    if house is not None:
        roofs = _roofs_by_gutter(found)
        together = [_all_roofs(roofs)] if len(roofs) > 1 else []
        for roof, spouts in [*roofs, *together]:
            finding = whole_roof_finding(roof, house, spouts)
            if finding is not None:
                yield finding
    if found.answers.get(survey.ROOF_HAZARD):
        yield Finding(
            "roof_hazard",
            Grade.FIX,
            "Runoff from this roof may carry metals or moss killer.",
            "nothing to eat is grown in it",
            Source("Ask Extension, 2015: zinc strips; from memory for the rest", Provenance.MEMORY),
            "Use another downspout, or grow nothing to eat here.",
        )


def _roofs_by_gutter(found: SurveyResults) -> list[tuple[Quantity, int]]:
    """Return the roof that drains here by each gutter, and its downspouts that come here.

    The roofs that fall on a roof go by its gutter.
    """
    gutters: dict[str, float] = {}
    spouts: dict[str, int] = {}
    leads: dict[str, str] = {}
    for area, view in zip(found.catchment.surfaces, found.answers.items("surfaces"), strict=True):
        if view[sharing.SURFACE_KIND] == "roof":
            # The lower roof is always listed first, so its own gutter is known by now.
            below = sharing.falls_on(view)
            leads[area.name] = gutter = leads.get(below, below) or area.name
            here = magnitude(area.drains_here, "ft**2")
            gutters[gutter] = gutters.get(gutter, 0.0) + here
            spouts.setdefault(gutter, sharing.outlets_here(view))
    return [(quantity(area, "ft**2"), spouts[name]) for name, area in gutters.items()]


def _all_roofs(roofs: list[tuple[Quantity, int]]) -> tuple[Quantity, int]:
    area = fsum(magnitude(roof, "ft**2") for roof, _ in roofs)
    return quantity(area, "ft**2"), sum(spouts for _, spouts in roofs)
