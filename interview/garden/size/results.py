"""From answers to the size of the beds: the room there is, how many beds, and what governs."""

from __future__ import annotations

from dataclasses import replace

from interview.asking.question import Unanswered, waits_for
from interview.asking.results import part
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Lie, lie_of
from interview.garden.form.outline import own_outline
from interview.garden.site import spot_questions
from interview.garden.site.results import spot_slope
from interview.garden.size import answered, basin, room
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.basin import RequiredArea
from interview.garden.size.needed import NeededSize
from interview.quantities.guards import times
from interview.quantities.units import Quantity, magnitude, quantity, ratio, show

_FITS = 1 + 1e-6
"""So much over its room a bed still fits: it was fitted by halving, and rounded to a step."""


class SizeResults(NeededSize):
    """The basin that holds the rain, in its room and in its ground."""

    @part
    def needed_basin(self) -> Basin:
        """The basin that holds the rain, its floor rounded up to be pegged out.

        Where its length to width does not fit the room and another does, it is shaped to the room.
        """
        return self._shaped_to_room or self._by_its_ratio

    @part
    def _by_its_ratio(self) -> Basin:
        with waits_for(bed.DEEPEST_POND, self.answers):
            wanted = self._sized(self.required, self.answers[shaping.LENGTH_TO_WIDTH])
        return replace(wanted, bend=self._bend(wanted))

    def _sized(self, required: RequiredArea, length_to_width: float) -> Basin:
        """Return the smallest bed to peg out that is large enough; raises ValueError if none."""
        if not self.by_storms:
            return basin.drawn(required, self.place.system, self.ground)
        return basin.smallest(
            required.basin,
            self._enough(required.catchment),
            length_to_width=length_to_width,
            system=self.place.system,
        )

    def _bend(self, wanted: Basin) -> Quantity | None:
        """The bend of a kidney as it was answered, where so wide a bed can be bent so far."""
        bend: Quantity | None = self.answers.get(shaping.KIDNEY_BEND)
        if wanted.shape is not FloorShape.KIDNEY or bend is None:
            return None
        return max(bend, times(wanted.floor_width, 0.6))

    @property
    def needed(self) -> Basin:
        """One bed as it is needed: exactly, or as pegged where the storm decides the size."""
        return self._by_its_ratio if self.by_storms else self.required.basin

    @property
    def mid_area_needed(self) -> Quantity:
        """The area at half depth that all the beds need together."""
        return times(self.needed.mid_area, self.bed_count)

    @property
    def recommended(self) -> Quantity:
        """The same at two digits, up."""
        return basin.recommended_area(self.mid_area_needed, self.place.system)

    def as_long_as(self, length_to_width: float) -> Basin | None:
        """Return the basin that holds the rain with another length to width; nothing if none."""
        return self._held_basin(self.served, length_to_width)

    @property
    def halves(self) -> Basin | None:
        """Each of twice as many beds that hold the rain together; nothing if none does."""
        return self._held_basin(times(self.served, 0.5), self.answers[shaping.LENGTH_TO_WIDTH])

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
                length_to_width=self.answers[shaping.LENGTH_TO_WIDTH],
                system=system,
            )

    def outgrows(self, needed: Basin) -> bool:
        """Tell whether the footprint of a basin is larger than the room that was given."""
        if not answered.has_room(self.answers):
            return False
        if self.room_sides is None:
            taken = basin.footprint_area(needed, self.ground)
            return ratio(taken, self.answers[bed.ROOM_AREA]) > _FITS
        sides = basin.footprint_sides(needed, self.ground)
        return any(
            ratio(one, room) > _FITS for one, room in zip(sides, self.room_sides, strict=True)
        )

    @part
    def too_big(self) -> bool:
        """Whether the basin that is needed does not fit the room, nor one there that is enough."""
        if not self._past_room:
            return False
        return self.room is None or not self._enough(self.served)(self.room)

    @part
    def _past_room(self) -> bool:
        """Whether the basin that is needed does not fit the room, be it by its rounding alone."""
        return answered.has_room(self.answers) and self.outgrows(self.needed_basin)

    @property
    def size_governed_by(self) -> str:
        """What decides the size that is drawn."""
        if not self.as_worked_out:
            return "the floor you chose"
        if self._past_room:
            return "the room"
        if self._shaped_to_room is not None:
            return "the rain to hold, in the shape of the room"
        if self.by_storms:
            lean = shaping.lean(self.answers)
            return "the storm, with no margin" if lean else "the storm and the size for sandy soil"
        return "the narrowest floor" if self.required.enlarged else "the rain to hold"

    @property
    def room_trouble(self) -> str:
        """A sentence where the room is too small for the garden or for any; else nothing."""
        if not answered.has_room(self.answers):
            return ""
        try:
            if not self.too_big or (self.enough and not self.as_worked_out):
                return ""
            held = self.rain_held
        except Unanswered:
            return self.no_bed_fits
        unit = "mm" if self.place.metric else "in"
        rain = self.rain_to_hold
        return (
            f"It holds {show(held, unit, 2, 'down')} of the {show(rain, unit, 3)} of rain; there "
            "are options."
        )

    @property
    def no_bed_fits(self) -> str:
        """A sentence where the room is too narrow for any bed with these sides; else nothing."""
        try:
            _ = self.room
        except Unanswered as gap:
            return gap.why if gap.question is bed.ROOM_WIDTH and gap.why else ""
        return ""

    @property
    def as_worked_out(self) -> bool:
        """Whether the floor drawn is, to an inch, the one the plan has worked out."""
        sides = (
            (self.garden.floor_length, self.worked_out.floor_length),
            (self.garden.floor_width, self.worked_out.floor_width),
        )
        return all(abs(magnitude(one, "in") - magnitude(two, "in")) < 1 for one, two in sides)

    @property
    def worked_out(self) -> Basin:
        """The basin as needed, or as the room allows, whatever floor the person chose."""
        return self.room if self._past_room and self.room is not None else self.needed_basin

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
        with waits_for(shaping.OWN_OUTLINE, self.answers):
            stations = self.answers[shaping.OWN_OUTLINE]
            one = own_outline(stations)
            return replace(
                self.required.basin,
                floor_length=quantity(one.length, "ft"),
                floor_width=quantity(one.width, "ft"),
                shape=FloorShape.OWN,
                stations=stations,
            )

    @part
    def enough(self) -> bool:
        """Whether the garden is as large as it was to be: it holds its rain, or takes its storm."""
        return self._enough(self.served)(self.garden)

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

    @part
    def inside(self) -> Quantity:
        """The area whose rain falls into one bed: inside the crest and the cut edge."""
        return basin.inside(self.garden, self.ground)

    @part
    def over_all(self) -> tuple[Quantity, Quantity]:
        """How long and wide all is that is dug or built for one bed, toe to toe."""
        return basin.footprint_sides(self.garden, self.ground)

    @part
    def rain_held(self) -> Quantity:
        """The rain that just fills the garden."""
        return basin.rain_held(self.garden, self.served, self.inside)

    @property
    def share_of_rain(self) -> float:
        """The rain held as a part of the rain to hold."""
        return ratio(self.rain_held, self.rain_to_hold)
