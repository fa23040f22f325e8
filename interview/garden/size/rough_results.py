"""From answers to the first size: what is known of the soil, and how it may yet be built."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.answers import Answers
from interview.asking.question import Unanswered, waits_for
from interview.asking.results import Results, part
from interview.garden.form.choices import FloorShape
from interview.garden.place.results import PlaceResults
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.garden.size import answered
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.basin import FAST_SOIL_IN_H
from interview.garden.size.results import SizeResults
from interview.garden.size.rough import (
    Feel,
    Outcome,
    RoughSize,
    Settles,
    feel_of,
    rough_size,
    shallowest_pond,
)
from interview.garden.soak import hole_questions as digging
from interview.garden.soak.rates import published_rate
from interview.garden.soak.results import TEXTURE_OF
from interview.garden.survey.results import SurveyResults
from interview.quantities.guards import reaches
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude

FEEL_OF_SOIL = {"sand": Feel.GRITTY, "loam": Feel.FLOURY, "silt": Feel.FLOURY, "clay": Feel.STICKY}
"""How the soil feels by what it is said to be; loam is taken for the slower silt."""


@record(eq=False)
class RoughResults(Results):
    """The first size of the garden, from what drains here and the balance of the plan."""

    place: PlaceResults
    survey: SurveyResults
    size: SizeResults

    @part
    def tested(self) -> bool:
        """Whether the rate of the soil is known."""
        try:
            return self.size.soak.soil is not None
        except Unanswered:
            return False

    @part
    def feel(self) -> Feel:
        """How the soil feels: by the slowest handful of a test hole, or as it was said."""
        felt = [hole.get(digging.RIBBON) for hole in self.answers.items("holes")]
        textures = [TEXTURE_OF[one] for one in felt if one]
        if textures:
            return feel_of(min(textures, key=lambda one: magnitude(published_rate(one), "in/h")))
        return FEEL_OF_SOIL.get(self.answers.get(bed.SOIL_DUG) or "", Feel.UNKNOWN)

    def _open(self) -> Iterator[Settles]:
        """Yield what is still to be answered."""
        if self.feel is Feel.UNKNOWN:
            yield Settles.SOIL
        if self.size.ground is None:
            yield Settles.SLOPE
        if self.answers.get(site.CHILDREN) is None:
            yield Settles.CHILDREN
        yield Settles.SOAK_TEST

    def _ways(self, feel: Feel) -> tuple[Outcome, ...]:
        """Return how the garden may come to be built, first as the answers have it.

        Whether children play here decides the sides and the deepest pond, and the slope the rim:
        while it is open, either answer may come.
        """
        seen = [self.answers]
        if self.answers.get(site.CHILDREN) is None:
            seen += [self.answers.with_text(site.CHILDREN.key, word) for word in ("no", "yes")]
        return tuple(self._way(one, feel)._replace(lowest_freeboard=self._lawn_rim) for one in seen)

    @property
    def _lawn_rim(self) -> Quantity | None:
        """The rim that a level lawn would be; nothing where the slope or the rim is known."""
        if self.size.ground is not None or self.answers.get(shaping.FREEBOARD) is not None:
            return None
        lawn = self.answers.whole()
        spot = ground.chosen_spot(lawn)
        for question, words in ((ground.SLOPE_RUN, "10 ft"), (ground.SLOPE_DROP, "0 in")):
            lawn = lawn.with_text(spot.address(question), words)
        return lawn[shaping.FREEBOARD]

    def _way(self, answers: Answers, feel: Feel) -> Outcome:
        deepest = answered.deepest(answers)
        if self.tested:
            deepest = self.size.depth_under(deepest).depth
            shallowest = deepest
        else:
            shallowest = shallowest_pond(feel, self.place.system)
        return Outcome(shallowest, deepest, answers[shaping.SIDE_SLOPE], answers[shaping.FREEBOARD])

    @property
    def _may_be_fast(self) -> bool:
        """Whether the soil is, or may be, so fast that the storm decides the size."""
        if shaping.generous(self.answers):
            return False
        if self.tested:
            return reaches(magnitude(self.size.soak.soil.corrected, "in/h"), FAST_SOIL_IN_H.value)
        return self.feel in (Feel.GRITTY, Feel.UNKNOWN)

    @part
    def sized(self) -> RoughSize:
        """The first size; raises ``Unanswered`` while nothing drains here."""
        found = self._for(self.feel, self._may_be_fast)
        return found._replace(settles=() if self.tested else tuple(self._open()))

    @part
    def any_soil(self) -> RoughSize:
        """The first size if nothing is made of how the soil feels, for a test may contradict it.

        Raises ``Unanswered`` as ``sized`` does.
        """
        return self._for(Feel.UNKNOWN, not shaping.generous(self.answers))

    def _for(self, feel: Feel, fast: bool) -> RoughSize:
        answers, catchment = self.answers, self.survey.catchment
        shape = answered.floor_shape(answers)
        with waits_for(bed.DEEPEST_POND, answers):
            return rough_size(
                catchment.drains_here,
                catchment.weighted,
                self.size.rain_to_hold,
                self._ways(feel),
                feel=feel,
                tested=self.tested,
                fast=fast,
                lean=shaping.lean(answers),
                spout=answers.get(bed.SPOUT_DISTANCE),
                ground=self.size.ground,
                beds=answered.bed_count(answers),
                shape=FloorShape.ROUNDED if shape is FloorShape.OWN else shape,
                length_to_width=answers[shaping.LENGTH_TO_WIDTH],
                system=self.place.system,
            )
