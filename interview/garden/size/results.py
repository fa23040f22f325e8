"""From answers to the size of the beds: the room there is, how many beds, and what governs."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from interview.asking.question import Unanswered, waits_for
from interview.asking.results import Results, part
from interview.garden.form.basin import Basin
from interview.garden.form.lie import Ground, Lie, lie_of
from interview.garden.form.outline import FloorShape, own_outline
from interview.garden.place import questions as start
from interview.garden.place.results import PlaceResults
from interview.garden.pond.hyetographs import StormShape, storm
from interview.garden.pond.pool import pool
from interview.garden.pond.routing import route
from interview.garden.site import spot_questions
from interview.garden.site.results import spot_slope
from interview.garden.size import answered, basin, room
from interview.garden.size import questions as bed
from interview.garden.size.basin import RequiredArea
from interview.garden.size.size_factors import PublishedSize, published_size
from interview.garden.soak.depth import NO_POND_HERE, DepthRule, Governs, PondDepth, pond_depth
from interview.garden.soak.results import SoakResults
from interview.garden.survey import questions as survey
from interview.garden.survey.results import SurveyResults
from interview.quantities.guards import reaches, times
from interview.quantities.spread import Spread, propagate
from interview.quantities.units import Quantity, magnitude, quantity, ratio, show

NO_DROP = 1000.0
"""Stands for a drop that limits nothing, as a multiple of the corrected rate."""


@dataclass(frozen=True)
class SizeResults(Results):
    """How deep the pond may be, and the basin that holds the rain."""

    place: PlaceResults
    soak: SoakResults
    survey: SurveyResults

    @part
    def depth(self) -> PondDepth:
        """The pond depth and what governs it."""
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
                cap=answered.deepest(self.answers),
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
                "or mend the soil and test again."
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
        return times(rain, basin.GENEROUS_RAIN.value) if bed.generous(self.answers) else rain

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
            self.answers[bed.SIDE_SLOPE],
            self.answers[bed.FREEBOARD],
            # An outline of one's own is sized as if it were rounded.
            shape=FloorShape.ROUNDED if shape is FloorShape.OWN else shape,
            length_to_width=length_to_width or self.answers[bed.LENGTH_TO_WIDTH],
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
        return bed.lean(self.answers) or (self.fast_soil and not bed.generous(self.answers))

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
        least = None if bed.lean(self.answers) else self._sandy
        return lambda one: (
            still(one)
            or (
                (least is None or reaches(magnitude(one.edge_area, "ft**2"), least))
                and self.takes_the_storm(one, served)
            )
        )

    @part
    def enough(self) -> bool:
        """Whether the garden is as large as it was to be: it holds its rain, or takes its storm."""
        return self._enough(self.served)(self.garden)

    @property
    def _sandy(self) -> float:
        """The published size for sandy soil as the area of one full pond, in square feet."""
        spout = self.answers.get(bed.SPOUT_DISTANCE) or quantity(0.0, "ft")
        drains = self.survey.catchment.drains_here
        whole = published_size(drains, self.depth.depth, spout).sandy
        return magnitude(whole, "ft**2") / self.bed_count

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
    def mid_area_needed(self) -> Quantity:
        """The area at half depth that all the beds need together."""
        one = self._by_its_ratio.mid_area if self.by_storms else self.required.mid_area
        return times(one, self.bed_count)

    @property
    def recommended(self) -> Quantity:
        """The same at two digits, up."""
        return basin.recommended_area(self.mid_area_needed, self.place.system)

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
        with waits_for(survey.PIECES, self.survey.first_surface()):
            return propagate(needed, {"the survey": (weighted, survey_error)})

    @part
    def published(self) -> PublishedSize:
        """What the published size factors say, for comparison."""
        with waits_for(bed.SPOUT_DISTANCE, self.answers):
            return published_size(
                self.survey.catchment.drains_here,
                self.depth.depth,
                self.answers[bed.SPOUT_DISTANCE],
                self.place.metric,
            )

    @part
    def needed_basin(self) -> Basin:
        """The basin that holds the rain, its floor rounded up to be pegged out.

        Where its length to width does not fit the room and another does, it is shaped to the room.
        """
        return self._shaped_to_room or self._by_its_ratio

    @part
    def _by_its_ratio(self) -> Basin:
        with waits_for(bed.DEEPEST_POND, self.answers):
            wanted = self._sized(self.required, self.answers[bed.LENGTH_TO_WIDTH])
        return replace(wanted, bend=self._bend(wanted))

    def _sized(self, required: RequiredArea, length_to_width: float) -> Basin:
        """Return the smallest bed to peg out that is large enough; raises ValueError if none."""
        return basin.smallest(
            required.basin,
            self._enough(required.catchment),
            length_to_width=length_to_width,
            system=self.place.system,
            start=None if self.by_storms else required.basin.floor_width,
        )

    def _bend(self, wanted: Basin) -> Quantity | None:
        """The bend of a kidney as it was answered, where so wide a bed can be bent so far."""
        bend: Quantity | None = self.answers.get(bed.KIDNEY_BEND)
        if wanted.shape is not FloorShape.KIDNEY or bend is None:
            return None
        return max(bend, times(wanted.floor_width, 0.6))

    def as_long_as(self, length_to_width: float) -> Basin | None:
        """Return the basin that holds the rain with another length to width; nothing if none."""
        return self._held_basin(self.served, length_to_width)

    @property
    def halves(self) -> Basin | None:
        """Each of twice as many beds that hold the rain together; nothing if none does."""
        return self._held_basin(times(self.served, 0.5), self.answers[bed.LENGTH_TO_WIDTH])

    def _held_basin(self, served: Quantity, length_to_width: float) -> Basin | None:
        try:
            return self._sized(self.required_for(served, length_to_width), length_to_width)
        except ValueError:
            return None

    @property
    def room_sides(self) -> tuple[Quantity, Quantity] | None:
        """The room as a length and a width; nothing where it was not given so."""
        length, width = self.answers.get(bed.ROOM_LENGTH), self.answers.get(bed.ROOM_WIDTH)
        return None if length is None or width is None else (length, width)

    @part
    def _shaped_to_room(self) -> Basin | None:
        """The basin longer or narrower than asked for, where that lets it fit; else nothing."""
        wanted, sides = self._by_its_ratio, self.room_sides
        if sides is None or not self.outgrows(wanted):
            return None
        return room.shaped_to_room(
            wanted, sides, self._enough(self.served), self.place.system, self.ground
        )

    @part
    def room(self) -> Basin | None:
        """The largest bed whose footprint fits the room; nothing where no room was given."""
        if not answered.has_room(self.answers):
            return None
        self._pond_wanted()
        with waits_for(bed.ROOM_WIDTH, self.answers):
            template, system = self.required.basin, self.place.system
            if self.room_sides is not None:
                return room.fit_to_room(*self.room_sides, template, self.ground, system=system)
            return room.fit_to_area(
                self.answers[bed.ROOM_AREA],
                template,
                self.ground,
                length_to_width=self.answers[bed.LENGTH_TO_WIDTH],
                system=system,
            )

    def outgrows(self, needed: Basin) -> bool:
        """Tell whether the footprint of a basin is larger than the room that was given."""
        if not answered.has_room(self.answers):
            return False
        if self.room_sides is None:
            taken = basin.footprint_area(needed, self.ground)
            return ratio(taken, self.answers[bed.ROOM_AREA]) > 1 + 1e-6
        sides = basin.footprint_sides(needed, self.ground)
        return any(
            ratio(one, room) > 1 + 1e-6 for one, room in zip(sides, self.room_sides, strict=True)
        )

    @part
    def too_big(self) -> bool:
        """Whether the basin that is needed does not fit the room."""
        return answered.has_room(self.answers) and self.outgrows(self.needed_basin)

    @property
    def size_governed_by(self) -> str:
        """What decides the size that is drawn."""
        if not self._as_worked_out:
            return "the floor you chose"
        if self.too_big:
            return "the room"
        if self._shaped_to_room is not None:
            return "the rain to hold, in the shape of the room"
        if self.by_storms:
            lean = bed.lean(self.answers)
            return "the storm, with no margin" if lean else "the storm and the size for sandy soil"
        return "the narrowest floor" if self.required.enlarged else "the rain to hold"

    @property
    def room_trouble(self) -> str:
        """A sentence where the room is too small for the garden or for any; else nothing."""
        if not answered.has_room(self.answers):
            return ""
        try:
            if not self.too_big:
                return ""
            held = self.held_by(self.worked_out)
        except Unanswered as gap:
            return gap.why if gap.question is bed.ROOM_WIDTH and gap.why else ""
        unit = "mm" if self.place.metric else "in"
        rain = self.answers[start.RAIN_DEPTH]
        return (
            f"It holds {show(held, unit, 2, 'down')} of the {show(rain, unit, 3)} of rain; there "
            "are ways out."
        )

    @property
    def _as_worked_out(self) -> bool:
        """Whether the floor drawn is, to an inch, the one the plan has worked out."""
        sides = (
            (self.garden.floor_length, self.worked_out.floor_length),
            (self.garden.floor_width, self.worked_out.floor_width),
        )
        return all(abs(magnitude(one, "in") - magnitude(two, "in")) < 1 for one, two in sides)

    @property
    def worked_out(self) -> Basin:
        """The basin as needed, or as the room allows, whatever floor the person chose."""
        return self.room if self.too_big and self.room is not None else self.needed_basin

    @part
    def garden(self) -> Basin:
        """The basin to dig: as pegged by the person, or as needed, or as the room allows."""
        shape = answered.floor_shape(self.answers)
        if shape is FloorShape.OWN:
            return self._own
        length = self.answers.get(bed.FLOOR_LENGTH)
        width = self.answers.get(bed.FLOOR_WIDTH)
        if length is None and width is None:
            return self.worked_out
        with waits_for(bed.FLOOR_LENGTH, self.answers):
            pegged = replace(
                self.worked_out,
                floor_length=self.worked_out.floor_length if length is None else length,
                floor_width=self.worked_out.floor_width if width is None else width,
                bend=None,
            )
            return replace(pegged, bend=self._bend(pegged))

    @property
    def _own(self) -> Basin:
        """The basin of the person's own outline; raises ``Unanswered`` while it has none."""
        with waits_for(bed.OWN_OUTLINE, self.answers):
            stations = self.answers[bed.OWN_OUTLINE]
            one = own_outline(stations)
            return replace(
                self.required.basin,
                floor_length=quantity(one.length, "ft"),
                floor_width=quantity(one.width, "ft"),
                shape=FloorShape.OWN,
                stations=stations,
            )

    @part
    def lie(self) -> Lie:
        """How the garden lies in its ground; raises ``Unanswered`` while that is not measured."""
        spot = spot_questions.chosen_spot(self.answers)
        garden, _ = self.garden, spot_slope(spot)
        with waits_for(spot_questions.SLOPE_DROP, spot):
            if self.ground is None:
                raise ValueError("The ground is as steep as the sides: no berm can meet it here.")
            return lie_of(garden, self.ground)

    @property
    def reaches_out(self) -> Quantity:
        """How far the garden reaches beyond the edge that distances were measured from.

        That edge is the outline laid out, which is the room; where none was given it is the crest,
        so that the outside of the berm lies beyond it. Nought while the garden is not known.
        """
        try:
            lie = self.lie
        except Unanswered:
            return quantity(0.0, "ft")
        if self.room_sides is not None:
            length, width = (magnitude(side, "ft") for side in self.room_sides)
            past = max(lie.footprint_length - length, lie.footprint_width - width) / 2
        elif answered.has_room(self.answers):
            room = magnitude(self.answers[bed.ROOM_AREA], "ft**2")
            past = 0.0 if lie.footprint_area <= room else lie.beyond_crest
        else:
            past = lie.beyond_crest
        return quantity(max(0.0, past), "ft")

    @property
    def inside(self) -> Quantity:
        """The area whose rain falls into one bed: inside the crest and the cut edge."""
        return basin.inside(self.garden, self.ground)

    @property
    def footprint_area(self) -> Quantity:
        """The area of all that is dug or built for one bed."""
        return basin.footprint_area(self.garden, self.ground)

    def held_by(self, garden: Basin) -> Quantity:
        """Return the rain that just fills a bed of this garden."""
        return basin.rain_held(garden, self.served, basin.inside(garden, self.ground))

    @part
    def rain_held(self) -> Quantity:
        """The rain that just fills the garden."""
        return self.held_by(self.garden)

    @property
    def share_of_rain(self) -> float:
        """The rain held as a part of the rain to hold."""
        return ratio(self.rain_held, self.rain_to_hold)
