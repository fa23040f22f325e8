"""From answers to the depth of the pond and the size that is needed."""

from __future__ import annotations

from typing import Any

from interview.asking.question import Unanswered, waits_for
from interview.asking.results import Results, part
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground
from interview.garden.place import questions as start
from interview.garden.place.results import PlaceResults
from interview.garden.pond.hyetographs import StormShape, storm
from interview.garden.pond.pool import pool
from interview.garden.pond.routing import route
from interview.garden.size import answered, basin
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.basin import RequiredArea
from interview.garden.size.size_factors import PublishedSize, published_size
from interview.garden.soak.depth import NO_POND_HERE, DepthRule, Governs, PondDepth, pond_depth
from interview.garden.soak.results import SoakResults
from interview.garden.survey import surface_questions as surfacing
from interview.garden.survey.results import SurveyResults
from interview.quantities.guards import reaches, times
from interview.quantities.records import record
from interview.quantities.spread import Spread, propagate
from interview.quantities.units import Quantity, magnitude, quantity, ratio

NO_DROP = 1000.0
"""Stands for a drop that limits nothing, as a multiple of the corrected rate."""


@record(eq=False)
class NeededSize(Results):
    """How deep the pond may be, and how large the garden must be."""

    place: PlaceResults
    soak: SoakResults
    survey: SurveyResults

    @part
    def depth(self) -> PondDepth:
        """The pond depth and what governs it."""
        return self.depth_under(answered.deepest(self.answers))

    def depth_under(self, cap: Quantity) -> PondDepth:
        """Return the depth that the soil allows where no pond deeper than ``cap`` is wanted."""
        rule = {
            "both": DepthRule.BOTH,
            "strict": DepthRule.STRICT,
            "custom": DepthRule.CUSTOM,
        }[self.answers[bed.DRAIN_RULE]]
        soil = self.soak.soil
        drop = soil.lower_drop_rate
        if drop is None and rule is DepthRule.CUSTOM:
            rule = DepthRule.STRICT
        with waits_for(bed.DEEPEST_POND, self.answers):
            return pond_depth(
                # Without a hole there is no drop to hold the depth against.
                times(soil.corrected, NO_DROP) if drop is None else drop,
                soil.corrected,
                rule=rule,
                cap=cap,
                step=self.place.system,
            )

    @property
    def bed_count(self) -> int:
        """How many beds the garden is made as."""
        return answered.bed_count(self.answers)

    @property
    def served(self) -> Quantity:
        """The weighted area that one bed is sized for: an even part of the whole."""
        return times(self.survey.catchment.weighted, 1 / self.bed_count)

    def _pond_wanted(self) -> None:
        """Raise ``Unanswered`` where the soil, and not a wish, leaves no pond worth sizing."""
        depth, rain = self.depth, self.answers[start.RAIN_DEPTH]
        little = magnitude(depth.depth, "in") <= 0 or ratio(depth.depth, rain) <= 1
        if depth.soil_refuses and little:
            why = f"This soil takes too little water for a pond. {NO_POND_HERE}"
            raise Unanswered(bed.DRAIN_RULE, bed.DRAIN_RULE.key, why=why)
        if depth.governs is not Governs.CAP and ratio(depth.depth, rain) <= 1:
            why = (
                "The pond this soil can empty is no deeper than the rain to hold: hold less rain, "
                "or improve the soil and test again."
            )
            raise Unanswered(start.RAIN_DEPTH, start.RAIN_DEPTH.key, why=why)

    @part
    def ground(self) -> Ground | None:
        """The ground of the chosen spot, with what is laid in; nothing while not measured."""
        return answered.ground_of_spot(self.answers, self.place.system)

    @property
    def rain_to_hold(self) -> Quantity:
        """The rain that the pond is to hold while nothing soaks in."""
        rain = self.answers[start.RAIN_DEPTH]
        return times(rain, basin.GENEROUS_RAIN.value) if shaping.generous(self.answers) else rain

    def required_for(self, served: Quantity, length_to_width: float | None = None) -> RequiredArea:
        """Return the area of one bed that ``served``, a weighted area, drains to.

        ``length_to_width`` is the one answered unless given. Raises ValueError as
        ``basin.required_area`` does.
        """
        shape = answered.floor_shape(self.answers)
        return basin.required_area(
            served,
            self.rain_to_hold,
            self.depth.depth,
            self.answers[shaping.SIDE_SLOPE],
            self.answers[shaping.FREEBOARD],
            # An outline of one's own is sized as if it were rounded.
            shape=FloorShape.ROUNDED if shape is FloorShape.OWN else shape,
            length_to_width=length_to_width or self.answers[shaping.LENGTH_TO_WIDTH],
            system=self.place.system,
        )

    @part
    def required(self) -> RequiredArea:
        """The area of one bed, of several that hold the rain together at the pond depth."""
        self._pond_wanted()
        with waits_for(bed.DEEPEST_POND, self.answers):
            return self.required_for(self.served)

    @property
    def by_storms(self) -> bool:
        """Whether the size is that which a storm does not fill while the soil takes its part.

        So for a lean garden, and on fast soil for a usual one.
        """
        return shaping.lean(self.answers) or (self.fast_soil and not shaping.generous(self.answers))

    @property
    def fast_soil(self) -> bool:
        """Whether the soil soaks so fast that the storm, not the pond, decides the size."""
        rate = magnitude(self.soak.soil.corrected, "in/h")
        return reaches(rate, basin.FAST_SOIL_IN_H.value)

    def _enough(self, served: Quantity) -> basin.Enough:
        """Return what tells whether one bed for ``served``, a weighted area, is large enough."""
        still = basin.holds(served, self.rain_to_hold, self.ground)
        if not self.by_storms:
            return still
        least = None if shaping.lean(self.answers) else self._sandy
        return lambda one: (
            still(one)
            or (
                (least is None or reaches(magnitude(one.edge_area, "ft**2"), least))
                and self.takes_the_storm(one, served)
            )
        )

    @property
    def _sandy(self) -> float:
        """The published size for sandy soil as the area of one full pond, in square feet."""
        spout = self.answers.get(bed.SPOUT_DISTANCE) or quantity(0.0, "ft")
        return magnitude(self._published(spout).sandy, "ft**2") / self.bed_count

    def takes_the_storm(self, one: Basin, served: Quantity) -> bool:
        """Tell whether nothing runs over in the storm of the rain to hold.

        The worse of the storm chosen and NRCS Type II over 24 hours.
        """
        rate = self.soak.soil.corrected
        if magnitude(rate, "in/h") <= 0:
            return False
        pond = pool(one.stage, served, basin.inside(one, self.ground), rate)
        rain, hours = self.answers[start.RAIN_DEPTH], self.answers[bed.STORM_HOURS]
        shapes = {StormShape[self.answers[bed.STORM_SHAPE].upper()], StormShape.TYPE_II}
        return all(
            magnitude(route(pond, storm(shape, rain, hours)).spill_volume, "ft**3") <= 0
            for shape in sorted(shapes, key=lambda shape: shape.value)
        )

    @property
    def rule_of_thumb(self) -> Quantity:
        """The area by the custom: what drains here, times rain, by depth."""
        with waits_for(bed.DEEPEST_POND, self.answers):
            return basin.rule_of_thumb_area(
                self.survey.catchment.drains_here, self.answers[start.RAIN_DEPTH], self.depth.depth
            )

    @property
    def hand_check(self) -> Quantity:
        """The area with upright sides that holds the rain, its own included."""
        rain, depth = self.answers[start.RAIN_DEPTH], self.depth.depth
        with waits_for(bed.DEEPEST_POND, self.answers):
            return basin.rule_of_thumb_area(self.survey.catchment.weighted, rain, depth - rain)

    @part
    def area_range(self) -> Spread:
        """The area needed, in square feet, with two standard uncertainties and what drives it."""
        count = self.bed_count

        def needed(inputs: Any) -> float:
            served = quantity(inputs["the survey"] / count, "ft**2")
            return magnitude(self.required_for(served).mid_area * count, "ft**2")

        survey_error = magnitude(self.survey.catchment.standard_error, "ft**2")
        weighted = magnitude(self.survey.catchment.weighted, "ft**2")
        with waits_for(surfacing.PIECES, self.survey.first_surface()):
            return propagate(needed, {"the survey": (weighted, survey_error)})

    @part
    def published(self) -> PublishedSize:
        """What the published size factors say, for comparison."""
        with waits_for(bed.SPOUT_DISTANCE, self.answers):
            return self._published(self.answers[bed.SPOUT_DISTANCE])

    def _published(self, spout: Quantity) -> PublishedSize:
        drains, depth = self.survey.catchment.drains_here, self.depth.depth
        return published_size(drains, depth, spout, self.place.metric)
