"""What storms and years of rain do to the garden."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from interview.answers_file.named_files import NoFile, ReadsFiles
from interview.asking.long_work import telling
from interview.asking.question import Unanswered, waits_for
from interview.asking.results import part
from interview.garden.form.basin import Basin
from interview.garden.place import questions as start
from interview.garden.place.results import PlaceResults
from interview.garden.pond.hyetographs import StormShape, again, storm
from interview.garden.pond.pool import Pool
from interview.garden.pond.routing import RoutedStorm
from interview.garden.size import answered
from interview.garden.size import questions as bed
from interview.garden.size.basin import inside
from interview.garden.size.results import SizeResults
from interview.garden.soak.results import SoakResults
from interview.garden.storms import beds, rainfall_record
from interview.garden.storms import record_help as rain_plan
from interview.garden.storms.beds import LADDER, Beds, GardenStorm, LadderRow
from interview.garden.storms.rain_days import RainDays, rain_days
from interview.garden.storms.rainfall_record import RecordReplay
from interview.garden.storms.record_columns import Column, ColumnUnclear
from interview.garden.storms.record_text import Record
from interview.garden.storms.wet_zones import ZoneHours, longest_wet
from interview.garden.survey import results as survey_plan
from interview.garden.survey.results import SurveyResults
from interview.quantities.records import record
from interview.quantities.units import Quantity, quantity

SIZES = (0.5, 0.75, 1.0, 1.5, 2.0)
"""Floor areas tried on a rainfall record, as parts of the floor that is drawn."""


class SizedYears(NamedTuple):
    """The years of the record in a garden with another floor."""

    part: float
    """Its floor area over that of the garden drawn."""
    garden: Basin
    """One bed of it."""
    replay: RecordReplay


@record(eq=False)
class StormsResults(ReadsFiles):
    """What storms and years of rain do to the garden."""

    place: PlaceResults
    soak: SoakResults
    survey: SurveyResults
    size: SizeResults

    @part
    def beds(self) -> Beds:
        """The beds as the balance of a storm sees them."""
        return self.beds_like(self.size.garden)

    def beds_like(self, garden: Basin, weighted: Quantity | None = None) -> Beds:
        """Return as many beds of another size, or for another weighted area, for trying out."""
        with waits_for(bed.DEEPEST_POND, self.answers):
            return beds.beds_of(
                garden.stage,
                self.survey.catchment.weighted if weighted is None else weighted,
                inside(garden, self.size.ground),
                self.soak.soil.corrected,
                self.size.bed_count,
                answered.in_a_row(self.answers),
            )

    @property
    def pool(self) -> Pool:
        """The bed the water reaches first as the balance of a storm sees it."""
        return self.beds.pool

    @property
    def storm_shape(self) -> StormShape:
        """The shape of the storm tried out."""
        return StormShape[self.answers[bed.STORM_SHAPE].upper()]

    def garden_storm(
        self, rain: Quantity, shape: StormShape | None = None, floor_only: bool = False
    ) -> GardenStorm:
        """Return what a storm of ``rain`` does to all the beds together.

        ``floor_only`` lets water out through their level floors alone.
        """
        falls = storm(shape or self.storm_shape, rain, self.answers[bed.STORM_HOURS])
        return self._beds_in(rain).route(falls, floor_only)

    def storm_through(self, garden: Basin, rain: Quantity) -> GardenStorm:
        """Return what a storm of ``rain`` does to as many beds of another size."""
        falls = storm(self.storm_shape, rain, self.answers[bed.STORM_HOURS])
        return self.beds_like(garden, self.survey.weighted_in(rain)).route(falls)

    def _beds_in(self, rain: Quantity) -> Beds:
        """Return the beds with what runs off in a storm of ``rain``: more of a lawn in a large."""
        if not self._varies:
            return self.beds
        return self.beds_like(self.size.garden, self.survey.weighted_in(rain))

    @part
    def _varies(self) -> bool:
        """Whether the part that runs off changes with the depth of rain."""
        return survey_plan.varies(self.answers)

    @part
    def all_held_storm(self) -> GardenStorm:
        """The storm of the rain to hold, in all the beds."""
        return self.garden_storm(self.answers[start.RAIN_DEPTH])

    @property
    def held_storm(self) -> RoutedStorm:
        """The storm of the rain to hold, in the bed the water reaches first."""
        return self.all_held_storm.wettest

    @part
    def held_storm_floor_only(self) -> RoutedStorm:
        """The same, soaking through the level floor alone: how long water stands at the longest."""
        return self.garden_storm(self.answers[start.RAIN_DEPTH], floor_only=True).wettest

    @part
    def all_storm_again(self) -> GardenStorm:
        """The same storm, and again a day later, in all the beds."""
        hours = self.answers[bed.STORM_HOURS]
        once = storm(self.storm_shape, self.answers[start.RAIN_DEPTH], hours)
        return self.beds.route(again(once))

    @property
    def storm_again(self) -> RoutedStorm:
        """The same storm, and again a day later, in the bed the water reaches first."""
        return self.all_storm_again.wettest

    @part
    def ladder(self) -> tuple[LadderRow, ...]:
        """What storms from small to large do to the garden."""
        return self.ladder_of(self.storm_shape)

    def ladder_of(self, shape: StormShape) -> tuple[LadderRow, ...]:
        """Return the ladder with another shape of rain."""
        depths, unit = LADDER[self.place.system]
        return tuple(self.garden_storm(quantity(one, unit), shape).row for one in depths)

    @part
    def zone_hours(self) -> ZoneHours:
        """Hours under water at the floor, half way up the side and at the full pond."""
        held = self.held_storm
        deep = self.size.garden.depth
        return ZoneHours(held.hours_on_floor, held.time_above(deep / 2), held.time_above(deep))

    @property
    def zone_heights(self) -> tuple[Quantity, Quantity, Quantity]:
        """Heights over the floor at which floor, side and rim are judged."""
        deep = self.size.garden.depth
        return quantity(0.0, "in"), deep / 2, deep

    @part
    def zone_hours_again(self) -> ZoneHours:
        """Hours at a stretch under water when the same storm comes again next day."""
        pieces = self.storm_again.pieces
        return ZoneHours(*(longest_wet(pieces, height) for height in self.zone_heights))

    @part
    def zone_hours_record(self) -> ZoneHours | None:
        """Longest hours at a stretch under water in the record; nothing where none can be read."""
        if not self.answers[start.HAS_RECORD]:
            return None
        try:
            return ZoneHours(*self.real_years.spells)
        except Unanswered:
            return None

    @property
    def has_long_sums(self) -> bool:
        """Whether years of rain are still to be read and carried through the garden."""
        if "zone_hours_record" in self.__dict__:
            return False
        return self.answers[start.HAS_RECORD] and self.answers.get(start.RECORD_PATH) is not None

    @part
    def record(self) -> Record:
        """The daily rainfall record."""
        answers = self.answers
        path, _ = answers[start.RECORD_PATH], answers[start.RECORD_UNIT]
        with waits_for(start.RECORD_PATH, answers):
            try:
                return rain_plan.record_of(answers, self.file_of(path))
            except NoFile as trouble:
                raise ValueError(str(trouble)) from None
            except ColumnUnclear as unclear:
                dated = unclear.column is Column.DATE
                asked = start.RECORD_DATES if dated else start.RECORD_DEPTHS
                raise Unanswered(asked, answers.address(asked), why=str(unclear)) from None

    @part
    def days_of_rain(self) -> RainDays:
        """How deep the rain of the record's rain days is."""
        with waits_for(start.RECORD_PATH, self.answers):
            return rain_days(self.record.days)

    @part
    def real_years(self) -> RecordReplay:
        """The garden through the years of the record."""
        return self.years_in(self.size.garden, self.zone_heights[1:])

    def years_in(self, garden: Basin, heights: Sequence[Quantity] | None = None) -> RecordReplay:
        """Return the years of the record in as many beds of another size.

        ``heights`` over the floor are those whose wet spells are wanted, with the floor's own.
        """
        tried = self.beds_like(garden)

        def pool_at(rain: Quantity) -> Pool:
            return tried.for_area(self.survey.weighted_in(rain))

        with waits_for(start.RECORD_PATH, self.answers):
            return rainfall_record.replay(
                self.record.days,
                tried.pool,
                self.answers[bed.STORM_HOURS],
                rain_to_hold=self.answers[start.RAIN_DEPTH],
                heights=heights,
                beds_below=tried.below,
                shape=self.storm_shape,
                tell=telling("Carrying the rain of the record through the garden"),
                pool_at=pool_at if self._varies else None,
            )

    @part
    def years_by_size(self) -> tuple[SizedYears, ...]:
        """The years of the record with less and with more floor, to weigh a larger garden."""
        found = []
        for scale in SIZES:
            garden = answered.resized(self.size.garden, scale)
            years = self.real_years if scale == 1 else self.years_in(garden)
            found.append(SizedYears(scale, garden, years))
        return tuple(found)
