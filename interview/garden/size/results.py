"""From answers to the size of the beds: the room there is, how many beds, and what governs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from interview.asking.answers import Answers
from interview.asking.question import Unanswered, waits_for
from interview.asking.results import Results, part
from interview.garden.place import questions as start
from interview.garden.place.results import PlaceResults
from interview.garden.size import basin
from interview.garden.size import questions as bed
from interview.garden.size.basin import Basin, RequiredArea
from interview.garden.size.size_factors import PublishedSize, published_size
from interview.garden.soak.depth import DepthRule, Governs, PondDepth, pond_depth
from interview.garden.soak.results import SoakResults
from interview.garden.survey import questions as survey
from interview.garden.survey.results import SurveyResults
from interview.quantities.guards import times
from interview.quantities.spread import Spread, propagate
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity, ratio, show

NO_DROP = 1000.0
"""Stands for a drop that limits nothing, as a multiple of the corrected rate."""

DEEPEST_UNASKED = {US: (12.0, "in"), METRIC: (300.0, "mm")}
"""Deepest pond without an engineer's word: a choice of this project."""


def deepest(answers: Answers) -> Quantity:
    """Return the deepest pond wanted, or the deepest there may be without an engineer's word."""
    wanted = answers[bed.DEEPEST_POND]
    if not bed.wants_over_twelve(answers) or answers[bed.ENGINEER]:
        return wanted
    return min(wanted, quantity(*DEEPEST_UNASKED[METRIC if answers.metric else US]))


def bed_count(answers: Answers) -> int:
    """Return how many beds the garden is made as."""
    return answers[bed.BEDS]


def in_a_row(answers: Answers) -> bool:
    """Tell whether each bed takes what the one above it spills."""
    return bed_count(answers) > 1 and answers[bed.BEDS_HOW] == "in_a_row"


def has_room(answers: Answers) -> bool:
    """Tell whether the room was given, as a rectangle or as an area."""
    sides = (answers.get(bed.ROOM_LENGTH), answers.get(bed.ROOM_WIDTH))
    return None not in sides or answers.get(bed.ROOM_AREA) is not None


def room_basin(answers: Answers, depth: Quantity, system: str) -> Basin | None:
    """Return the largest basin that fits the room; nothing where no room was given.

    Raises ValueError where the room is too small for any floor.
    """
    slope, freeboard = answers[bed.SIDE_SLOPE], answers[bed.FREEBOARD]
    length, width = answers.get(bed.ROOM_LENGTH), answers.get(bed.ROOM_WIDTH)
    if length is not None and width is not None:
        return basin.fit_to_room(length, width, depth, slope, freeboard, system=system)
    area = answers.get(bed.ROOM_AREA)
    if area is None:
        return None
    along = answers[bed.LENGTH_TO_WIDTH]
    return basin.fit_to_area(area, depth, slope, freeboard, length_to_width=along, system=system)


def outgrows(needed: Basin, room: Basin, answers: Answers) -> bool:
    """Tell whether a basin is larger than the room: in a side, or in its area inside the rim."""
    if answers.get(bed.ROOM_LENGTH) is None or answers.get(bed.ROOM_WIDTH) is None:
        return ratio(needed.rim_area, room.rim_area) > 1 + 1e-9
    return (
        ratio(needed.floor_length, room.floor_length) > 1 + 1e-9
        or ratio(needed.floor_width, room.floor_width) > 1 + 1e-9
    )


def resized(garden: Basin, part: float) -> Basin:
    """Return a basin whose floor has ``part`` times the area, its shape kept."""
    side = part**0.5
    return Basin(
        garden.floor_length * side,
        garden.floor_width * side,
        garden.depth,
        garden.side_slope,
        garden.freeboard,
    )


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
        if soil.drop_rate is None and rule is DepthRule.CUSTOM:
            rule = DepthRule.STRICT
        with waits_for(bed.DEEPEST_POND, self.answers):
            return pond_depth(
                # Without a hole there is no drop to hold the depth against.
                times(soil.corrected, NO_DROP) if soil.drop_rate is None else soil.drop_rate,
                soil.corrected,
                rule=rule,
                cap=deepest(self.answers),
                step=self.place.system,
            )

    @property
    def bed_count(self) -> int:
        """How many beds the garden is made as."""
        return bed_count(self.answers)

    @property
    def served(self) -> Quantity:
        """The weighted area that one bed is sized for: an even part of the whole."""
        return times(self.survey.catchment.weighted, 1 / self.bed_count)

    def _pond_wanted(self) -> None:
        """Raise ``Unanswered`` where the soil, and not a wish, leaves no pond worth sizing."""
        depth, rain = self.depth, self.answers[start.RAIN_DEPTH]
        if magnitude(depth.depth, "in") <= 0:
            why = "This soil takes too little water for any pond: test again, or another spot."
            raise Unanswered(bed.DRAIN_RULE, bed.DRAIN_RULE.key, why=why)
        if depth.governs is not Governs.CAP and ratio(depth.depth, rain) <= 1:
            why = (
                "The pond this soil can empty is no deeper than the rain to hold: hold less rain, "
                "or mend the soil and test again."
            )
            raise Unanswered(start.RAIN_DEPTH, start.RAIN_DEPTH.key, why=why)

    @part
    def required(self) -> RequiredArea:
        """The area of one bed, of several that hold the rain together at the pond depth."""
        self._pond_wanted()
        with waits_for(bed.DEEPEST_POND, self.answers):
            return basin.required_area(
                self.served,
                self.answers[start.RAIN_DEPTH],
                self.depth.depth,
                self.answers[bed.SIDE_SLOPE],
                self.answers[bed.FREEBOARD],
                length_to_width=self.answers[bed.LENGTH_TO_WIDTH],
                system=self.place.system,
            )

    @property
    def mid_area_needed(self) -> Quantity:
        """The area at half depth that all the beds need together."""
        return times(self.required.mid_area, self.bed_count)

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
        depth, count = self.depth.depth, self.bed_count

        def needed(inputs: Any) -> float:
            return magnitude(
                basin.required_area(
                    quantity(inputs["the survey"] / count, "ft**2"),
                    self.answers[start.RAIN_DEPTH],
                    depth,
                    self.answers[bed.SIDE_SLOPE],
                    self.answers[bed.FREEBOARD],
                    length_to_width=self.answers[bed.LENGTH_TO_WIDTH],
                ).mid_area
                * count,
                "ft**2",
            )

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
            )

    @part
    def needed_basin(self) -> Basin:
        """The basin that holds the rain, its floor rounded up to be pegged out.

        Where its length to width does not fit the room and another does, it is shaped to the room.
        """
        return self._shaped_to_room or self._by_its_ratio

    @part
    def _by_its_ratio(self) -> Basin:
        return basin.drawn(self.required, self.place.system)

    @part
    def _shaped_to_room(self) -> Basin | None:
        """The basin longer or narrower than asked for, where that lets it fit; else nothing."""
        wanted, room = self._by_its_ratio, self.room
        if room is None or not outgrows(wanted, room, self.answers):
            return None
        rain = self.answers[start.RAIN_DEPTH]
        return basin.shaped_to_room(wanted, room, self.served, rain, self.place.system)

    @part
    def room(self) -> Basin | None:
        """The largest bed that fits the room of one bed, or nothing where no room was given."""
        if not has_room(self.answers):
            return None
        self._pond_wanted()
        with waits_for(bed.ROOM_WIDTH, self.answers):
            return room_basin(self.answers, self.depth.depth, self.place.system)

    @part
    def too_big(self) -> bool:
        """Whether the basin that is needed does not fit the room."""
        if self.room is None:
            return False
        return outgrows(self.needed_basin, self.room, self.answers)

    @property
    def size_governed_by(self) -> str:
        """What decides the size that is drawn."""
        if not self._as_worked_out:
            return "the floor you chose"
        if self.too_big:
            return "the room"
        if self._shaped_to_room is not None:
            return "the rain to hold, in the shape of the room"
        return "the narrowest floor" if self.required.enlarged else "the rain to hold"

    @property
    def room_trouble(self) -> str:
        """A sentence where the room is too small for the garden or for any; else nothing."""
        if not has_room(self.answers):
            return ""
        try:
            if not self.too_big:
                return ""
            held = basin.rain_held(self.worked_out, self.served)
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
        length = self.answers.get(bed.FLOOR_LENGTH)
        width = self.answers.get(bed.FLOOR_WIDTH)
        if length is None and width is None:
            return self.worked_out
        with waits_for(bed.FLOOR_LENGTH, self.answers):
            return Basin(
                self.worked_out.floor_length if length is None else length,
                self.worked_out.floor_width if width is None else width,
                self.depth.depth,
                self.answers[bed.SIDE_SLOPE],
                self.answers[bed.FREEBOARD],
            )

    @part
    def rain_held(self) -> Quantity:
        """The rain that just fills the garden."""
        return basin.rain_held(self.garden, self.served)

    @property
    def share_of_rain(self) -> float:
        """The rain held as a part of the rain to hold."""
        return ratio(self.rain_held, self.answers[start.RAIN_DEPTH])
