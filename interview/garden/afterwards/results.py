"""What the garden holds as it was dug."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from interview.asking.question import Unanswered
from interview.asking.results import Results, part
from interview.garden.afterwards import levels_questions as asked
from interview.garden.afterwards.as_built import AsBuilt, Levels
from interview.garden.afterwards.levels_questions import BedLevels
from interview.garden.earth.results import EarthResults
from interview.garden.place.results import PlaceResults
from interview.garden.size import questions as bed
from interview.garden.size.results import SizeResults
from interview.garden.soak.results import SoakResults
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity, total


@record
class BuiltBed:
    """One bed as it was dug, held against the plan; all beds are planned alike."""

    number: int
    """Of the bed, from 1."""
    levels: Levels
    dug: AsBuilt
    sending: Quantity
    """The area that sends all its rain into it, its own inside included."""
    rate: Quantity
    """The corrected rate of its soil."""

    @cached_property
    def rain_held(self) -> Quantity:
        """The rain that just fills it while nothing soaks in."""
        return self.dug.rain_held(self.sending)

    @cached_property
    def hours_to_empty(self) -> Quantity:
        """How long the full pond stands in the lowest place of the floor."""
        return self.dug.hours_to_empty(self.rate)


@record(eq=False)
class BuiltResults(Results):
    """The beds as they were dug, held against the plan; waits while no levels are read."""

    place: PlaceResults
    soak: SoakResults
    size: SizeResults
    earth: EarthResults

    @part
    def first(self) -> BuiltBed:
        """The first bed, or the only one."""
        return self._bed(asked.BED_LEVELS[0])

    @part
    def beds(self) -> tuple[BuiltBed, ...]:
        """Every bed whose levels were read."""
        return tuple(self._read())

    @part
    def every(self) -> tuple[BuiltBed, ...]:
        """All the beds; waits for those that are not read."""
        return tuple(self._bed(one) for one in self.asked)

    @property
    def asked(self) -> tuple[BedLevels, ...]:
        """The questions of each bed that there is."""
        return asked.BED_LEVELS[: self.size.bed_count]

    def _read(self) -> Iterator[BuiltBed]:
        for one in self.asked:
            try:
                yield self._bed(one)
            except Unanswered as gap:
                if gap.question not in one.every:
                    raise

    def _bed(self, questions: BedLevels) -> BuiltBed:
        answers = self.answers
        if not answers[asked.LEVELS_READ]:
            raise Unanswered(asked.LEVELS_READ, asked.LEVELS_READ.key)
        levels = Levels(
            answers[questions.floor],
            self.cover(questions),
            answers[questions.notch],
            answers.get(questions.rim),
            answers.get(questions.inlet),
        )
        dug = AsBuilt(levels, self.size.garden.stage)
        sending = total(self.size.served, self.size.inside)
        return BuiltBed(questions.number, levels, dug, sending, self.soak.soil.corrected)

    def cover(self, questions: BedLevels) -> Quantity:
        """Return the depth of what was still to be laid on the floor of a bed."""
        so_far, laid = self.answers[questions.cover], [quantity(0.0, "in")]
        if so_far != "finished":
            laid.append(self.answers[bed.MULCH_DEPTH])
        if so_far == "bare" and self.answers[bed.AMEND]:
            laid.append(self.answers[bed.COMPOST_DEPTH])
        return total(*laid)

    @part
    def volume(self) -> Quantity:
        """The water that all the beds hold together."""
        return total(*(one.dug.volume for one in self.every))

    @property
    def share(self) -> float:
        """That over what was planned for them."""
        planned = sum(magnitude(one.dug.planned.volume, "ft**3") for one in self.every)
        return magnitude(self.volume, "ft**3") / planned

    @property
    def from_string(self) -> bool:
        """Whether the levels were read from the string of the plan."""
        return self.answers[asked.LEVELS_FROM] == "string"
