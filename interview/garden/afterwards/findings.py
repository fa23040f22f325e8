"""What speaks for and against: what the first storms showed."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.answers import Answers
from interview.garden.afterwards import questions as review
from interview.garden.planting.care import after_storm
from interview.quantities.evidence import (
    PRACTICE,
    Finding,
    Grade,
)


def after_findings(answers: Answers) -> Iterator[Finding]:
    hours = answers.get(review.STORM_EMPTY)
    if hours is not None:
        yield after_storm(hours)
    if answers.get(review.STORM_OVERFLOW) == "elsewhere":
        yield Finding(
            "overflow_elsewhere",
            Grade.FIX,
            "Water left the garden somewhere other than the notch.",
            "the notch is the lowest place of the rim",
            PRACTICE,
            "Raise the rim there, or lower the notch, and check with a level.",
        )
    plants = answers.get(review.STORM_PLANTS)
    if plants in ("drowned", "dry"):
        wetter = plants == "dry"
        yield Finding(
            "plants_after_storm",
            Grade.FIX,
            "Plants look drowned." if not wetter else "Plants look dry.",
            "each plant at the height that suits it",
            PRACTICE,
            "Move them lower, and water in the first year."
            if wetter
            else "Move them higher and see why the water stands.",
        )
