"""What the garden holds as it was dug."""

from __future__ import annotations

from dataclasses import dataclass

from interview.asking.question import Unanswered
from interview.asking.results import Results, part
from interview.garden.afterwards import levels_questions as asked
from interview.garden.afterwards.as_built import AsBuilt, Levels
from interview.garden.earth.results import EarthResults
from interview.garden.place.results import PlaceResults
from interview.garden.size import questions as bed
from interview.garden.size.results import SizeResults
from interview.garden.soak.results import SoakResults
from interview.quantities.units import Quantity, quantity, total


@dataclass(frozen=True)
class BuiltResults(Results):
    """One bed as it was dug, held against the plan; waits while its levels are not read."""

    place: PlaceResults
    soak: SoakResults
    size: SizeResults
    earth: EarthResults

    @part
    def levels(self) -> Levels:
        """The readings of the bed."""
        answers = self.answers
        if not answers[asked.LEVELS_READ]:
            raise Unanswered(asked.LEVELS_READ, asked.LEVELS_READ.key)
        return Levels(
            answers[asked.FLOOR_READINGS],
            self.cover,
            answers[asked.NOTCH_READING],
            answers.get(asked.RIM_READING),
            answers.get(asked.INLET_READING),
        )

    @property
    def cover(self) -> Quantity:
        """The depth of what was still to be laid on the floor."""
        so_far, laid = self.answers[asked.FLOOR_COVER], [quantity(0.0, "in")]
        if so_far != "finished":
            laid.append(self.answers[bed.MULCH_DEPTH])
        if so_far == "bare" and self.answers[bed.AMEND]:
            laid.append(self.answers[bed.COMPOST_DEPTH])
        return total(*laid)

    @part
    def dug(self) -> AsBuilt:
        """The bed as it was dug."""
        return AsBuilt(self.levels, self.size.garden.stage)

    @part
    def rain_held(self) -> Quantity:
        """The rain that just fills it while nothing soaks in."""
        return self.dug.rain_held(total(self.size.served, self.size.inside))

    @part
    def hours_to_empty(self) -> Quantity:
        """How long the full pond stands in the lowest place of the floor."""
        return self.dug.hours_to_empty(self.soak.soil.corrected)

    @property
    def from_string(self) -> bool:
        """Whether the levels were read from the string of the plan."""
        return self.answers[asked.LEVELS_FROM] == "string"
