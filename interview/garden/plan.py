"""The plan: every part worked out from the answers and the parts before it.

A part that lacks an answer raises ``Unanswered`` naming the question, so that every reader of the
plan can say what it still waits for.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

from interview.answers_file.named_files import NamedFile, NoFile
from interview.asking.lands import Half, land
from interview.asking.long_work import cached_property, telling
from interview.asking.model import NO_CLOCK, Answers, Question, Unanswered
from interview.garden import gate
from interview.garden.earth import earthwork, materials, overflow
from interview.garden.earth.earthwork import Earthwork
from interview.garden.earth.floor_level import FloorLevel, floor_level
from interview.garden.earth.level_berm import LevelBerm, level_berm
from interview.garden.earth.materials import BedSizes, Item, Soil, Soilwork
from interview.garden.earth.overflow import Notch, PipeChoice, PipeFall
from interview.garden.earth.price_lines import Price, prices_of
from interview.garden.findings import all_findings
from interview.garden.place import questions as start
from interview.garden.planting import plant_file as plant_plan
from interview.garden.planting import questions as planting
from interview.garden.planting.choice import Season
from interview.garden.planting.choose import PlantingPlan, choose, planting_zones
from interview.garden.planting.plant_file import PlantFile
from interview.garden.planting.plant_list import builtin_plants, with_own
from interview.garden.planting.record import Plant, Sun, Zone
from interview.garden.planting.wetness import ZoneHours, longest_wet
from interview.garden.planting.why import why_plant
from interview.garden.planting.wishes import KeepOut, Wishes, read_swap
from interview.garden.site import questions as site
from interview.garden.site import results as site_plan
from interview.garden.site.locate import DigGate
from interview.garden.site.results import SpotReport
from interview.garden.site.siting import verdict
from interview.garden.site.slope import Slope
from interview.garden.size import basin
from interview.garden.size import questions as bed
from interview.garden.size import results as size_plan
from interview.garden.size.basin import Basin, RequiredArea
from interview.garden.size.depth import DepthRule, Governs, PondDepth, pond_depth
from interview.garden.size.results import SizedYears
from interview.garden.size.size_factors import PublishedSize, published_size
from interview.garden.soak import results as soak_plan
from interview.garden.soak.results import HoleReport, SoilRate
from interview.garden.storms import beds, rainfall_record
from interview.garden.storms import record_help as rain_plan
from interview.garden.storms.beds import Beds, GardenStorm
from interview.garden.storms.hyetographs import StormShape, again, storm
from interview.garden.storms.pool import Pool
from interview.garden.storms.rainfall_record import RecordReplay
from interview.garden.storms.record_columns import Column, ColumnUnclear
from interview.garden.storms.record_text import Record
from interview.garden.storms.routing import LADDER, LadderRow, RoutedStorm
from interview.garden.survey import questions as survey
from interview.garden.survey import results as survey_plan
from interview.garden.survey.catchment import Catchment
from interview.quantities.evidence import Finding, Grade
from interview.quantities.guards import times
from interview.quantities.spread import Spread, propagate
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity, ratio, show, total

NO_DROP = 1000.0
"""Stands for a drop that limits nothing, as a multiple of the corrected rate."""


def no_files(path: str) -> NamedFile:
    """Raise ``NoFile``: no file may be read here."""
    raise NoFile(f"{path} is not read here.")


@contextmanager
def _waits_for(question: Question[Any], answers: Answers) -> Iterator[None]:
    """Turn a calculation's refusal into waiting for a better answer to ``question``."""
    try:
        yield
    except ValueError as wrong:
        raise Unanswered(question, answers.address(question), why=str(wrong)) from None


@dataclass(frozen=True)
class Plan:
    """The plan of one garden, from the answers in force."""

    answers: Answers
    now: dt.datetime = NO_CLOCK
    open_text: Callable[[str], NamedFile] = field(default=no_files, compare=False)
    """Looks up a file that an answer names; raises ``NoFile``."""
    plants_path: str = ""
    """A plant file given for this run, used in place of the one an answer names."""

    @property
    def system(self) -> str:
        """The units shown: ``us`` or ``metric``."""
        return METRIC if self.answers.metric else US

    @property
    def metric(self) -> bool:
        """Whether metric units are shown."""
        return self.answers.metric

    # Site

    @cached_property
    def dig_gate(self) -> DigGate:
        """Whether digging may start today, and from which day."""
        return gate.gate_today(self.answers, self.now.date())

    @property
    def tolerance(self) -> str:
        """The strip on each side of a mark that is only for gentle hand digging, in words."""
        return site.tolerance_zone(self.answers).words(self.metric)

    @cached_property
    def spots(self) -> tuple[SpotReport, ...]:
        """What was found at each spot."""
        return tuple(
            site_plan.spot_report(spot, self.dug_depth) for spot in self.answers.items("spots")
        )

    @property
    def dug_depth(self) -> Quantity:
        """Return the deepest digging, or the cap and the mulch while it is not known."""
        mulch = self.answers[bed.MULCH_DEPTH]
        try:
            return total(self.earth.deepest_cut, mulch)
        except Unanswered:
            return total(size_plan.deepest(self.answers), mulch)

    @cached_property
    def slope(self) -> Slope:
        """The slope of the ground at the spot chosen."""
        return site_plan.spot_slope(site.chosen_spot(self.answers))

    # Soak test

    @cached_property
    def holes(self) -> tuple[HoleReport, ...]:
        """Each test hole that has any answer."""
        return tuple(soak_plan.hole_report(hole) for hole in self.answers.items("holes"))

    @cached_property
    def soil(self) -> SoilRate:
        """The rates that stand for the soil of the garden."""
        return soak_plan.soil_rate(self.answers, self.holes)

    # Depth

    @cached_property
    def depth(self) -> PondDepth:
        """The pond depth and what governs it."""
        rule = {
            "both": DepthRule.BOTH,
            "strict": DepthRule.STRICT,
            "custom": DepthRule.CUSTOM,
        }[self.answers[bed.DRAIN_RULE]]
        soil = self.soil
        if soil.drop_rate is None and rule is DepthRule.CUSTOM:
            rule = DepthRule.STRICT
        with _waits_for(bed.DEEPEST_POND, self.answers):
            return pond_depth(
                # Without a hole there is no drop to hold the depth against.
                times(soil.corrected, NO_DROP) if soil.drop_rate is None else soil.drop_rate,
                soil.corrected,
                rule=rule,
                cap=size_plan.deepest(self.answers),
                step=self.system,
            )

    # Catchment

    @cached_property
    def catchment(self) -> Catchment:
        """The surfaces that drain here, and their weighted area."""
        return survey_plan.catchment_of(self.answers)

    # Size

    @property
    def bed_count(self) -> int:
        """How many beds the garden is made as."""
        return size_plan.bed_count(self.answers)

    @property
    def served(self) -> Quantity:
        """The weighted area that one bed is sized for: an even part of the whole."""
        return times(self.catchment.weighted, 1 / self.bed_count)

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

    @cached_property
    def required(self) -> RequiredArea:
        """The area of one bed, of several that hold the rain together at the pond depth."""
        self._pond_wanted()
        with _waits_for(bed.DEEPEST_POND, self.answers):
            return basin.required_area(
                self.served,
                self.answers[start.RAIN_DEPTH],
                self.depth.depth,
                self.answers[bed.SIDE_SLOPE],
                self.answers[bed.FREEBOARD],
                length_to_width=self.answers[bed.LENGTH_TO_WIDTH],
                system=self.system,
            )

    @property
    def mid_area_needed(self) -> Quantity:
        """The area at half depth that all the beds need together."""
        return times(self.required.mid_area, self.bed_count)

    @property
    def recommended(self) -> Quantity:
        """The same at two digits, up."""
        return basin.recommended_area(self.mid_area_needed, self.system)

    @property
    def rule_of_thumb(self) -> Quantity:
        """The area by the custom: what drains here, times rain, by depth."""
        with _waits_for(bed.DEEPEST_POND, self.answers):
            return basin.rule_of_thumb_area(
                self.catchment.drains_here, self.answers[start.RAIN_DEPTH], self.depth.depth
            )

    @property
    def hand_check(self) -> Quantity:
        """The area with upright sides that holds the rain, its own included."""
        rain, depth = self.answers[start.RAIN_DEPTH], self.depth.depth
        with _waits_for(bed.DEEPEST_POND, self.answers):
            return basin.rule_of_thumb_area(self.catchment.weighted, rain, depth - rain)

    @cached_property
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

        survey_error = magnitude(self.catchment.standard_error, "ft**2")
        weighted = magnitude(self.catchment.weighted, "ft**2")
        with _waits_for(survey.PIECES, self._first_surface()):
            return propagate(needed, {"the survey": (weighted, survey_error)})

    def _first_surface(self) -> Answers:
        return self.answers.at("surfaces", 1)

    @cached_property
    def published(self) -> PublishedSize:
        """What the published size factors say, for comparison."""
        with _waits_for(bed.SPOUT_DISTANCE, self.answers):
            return published_size(
                self.catchment.drains_here,
                self.depth.depth,
                self.answers[bed.SPOUT_DISTANCE],
            )

    @cached_property
    def needed_basin(self) -> Basin:
        """The basin that holds the rain, its floor rounded up to be pegged out.

        Where its length to width does not fit the room and another does, it is shaped to the room.
        """
        return self._shaped_to_room or self._by_its_ratio

    @cached_property
    def _by_its_ratio(self) -> Basin:
        return basin.drawn(self.required, self.system)

    @cached_property
    def _shaped_to_room(self) -> Basin | None:
        """The basin longer or narrower than asked for, where that lets it fit; else nothing."""
        wanted, room = self._by_its_ratio, self.room
        if room is None or not size_plan.outgrows(wanted, room, self.answers):
            return None
        rain = self.answers[start.RAIN_DEPTH]
        return basin.shaped_to_room(wanted, room, self.served, rain, self.system)

    @cached_property
    def room(self) -> Basin | None:
        """The largest bed that fits the room of one bed, or nothing where no room was given."""
        if not size_plan.has_room(self.answers):
            return None
        self._pond_wanted()
        with _waits_for(bed.ROOM_WIDTH, self.answers):
            return size_plan.room_basin(self.answers, self.depth.depth, self.system)

    @cached_property
    def too_big(self) -> bool:
        """Whether the basin that is needed does not fit the room."""
        if self.room is None:
            return False
        return size_plan.outgrows(self.needed_basin, self.room, self.answers)

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
        if not size_plan.has_room(self.answers):
            return ""
        try:
            if not self.too_big:
                return ""
            held = basin.rain_held(self.worked_out, self.served)
        except Unanswered as gap:
            return gap.why if gap.question is bed.ROOM_WIDTH and gap.why else ""
        unit = "mm" if self.metric else "in"
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

    @cached_property
    def garden(self) -> Basin:
        """The basin to dig: as pegged by the person, or as needed, or as the room allows."""
        length = self.answers.get(bed.FLOOR_LENGTH)
        width = self.answers.get(bed.FLOOR_WIDTH)
        if length is None and width is None:
            return self.worked_out
        with _waits_for(bed.FLOOR_LENGTH, self.answers):
            return Basin(
                self.worked_out.floor_length if length is None else length,
                self.worked_out.floor_width if width is None else width,
                self.depth.depth,
                self.answers[bed.SIDE_SLOPE],
                self.answers[bed.FREEBOARD],
            )

    @cached_property
    def rain_held(self) -> Quantity:
        """The rain that just fills the garden."""
        return basin.rain_held(self.garden, self.served)

    # Storms

    @cached_property
    def beds(self) -> Beds:
        """The beds as the balance of a storm sees them."""
        return self.beds_like(self.garden)

    def beds_like(self, garden: Basin, weighted: Quantity | None = None) -> Beds:
        """Return as many beds of another size, or for another weighted area, for trying out."""
        with _waits_for(bed.DEEPEST_POND, self.answers):
            return beds.beds_of(
                garden,
                self.catchment.weighted if weighted is None else weighted,
                self.soil.corrected,
                self.bed_count,
                size_plan.in_a_row(self.answers),
            )

    @property
    def pool(self) -> Pool:
        """The bed the water reaches first as the balance of a storm sees it."""
        return self.beds.pool

    @property
    def storm_shape(self) -> StormShape:
        """The shape of the storm tried out."""
        return StormShape[self.answers[bed.STORM_SHAPE].upper()]

    def garden_storm(self, rain: Quantity, shape: StormShape | None = None) -> GardenStorm:
        """Return what a storm of ``rain`` does to all the beds together."""
        hours = self.answers[bed.STORM_HOURS]
        return self._beds_in(rain).route(storm(shape or self.storm_shape, rain, hours))

    def _beds_in(self, rain: Quantity) -> Beds:
        """Return the beds with what runs off in a storm of ``rain``: more of a lawn in a large."""
        if not survey_plan.varies(self.answers):
            return self.beds
        return self.beds_like(self.garden, self._weighted_in(rain))

    def storm_of(self, rain: Quantity, shape: StormShape | None = None) -> RoutedStorm:
        """Return what a storm of ``rain`` does to the bed the water reaches first."""
        return self.garden_storm(rain, shape).wettest

    @cached_property
    def all_held_storm(self) -> GardenStorm:
        """The storm of the rain to hold, in all the beds."""
        return self.garden_storm(self.answers[start.RAIN_DEPTH])

    @property
    def held_storm(self) -> RoutedStorm:
        """The storm of the rain to hold, in the bed the water reaches first."""
        return self.all_held_storm.wettest

    @cached_property
    def all_storm_again(self) -> GardenStorm:
        """The same storm, and again a day later, in all the beds."""
        hours = self.answers[bed.STORM_HOURS]
        once = storm(self.storm_shape, self.answers[start.RAIN_DEPTH], hours)
        return self.beds.route(again(once))

    @property
    def storm_again(self) -> RoutedStorm:
        """The same storm, and again a day later, in the bed the water reaches first."""
        return self.all_storm_again.wettest

    @cached_property
    def ladder(self) -> tuple[LadderRow, ...]:
        """What storms from small to large do to the garden."""
        return self.ladder_of(self.storm_shape)

    def ladder_of(self, shape: StormShape) -> tuple[LadderRow, ...]:
        """Return the ladder with another shape of rain."""
        depths, unit = LADDER[self.system]
        return tuple(self.garden_storm(quantity(one, unit), shape).row for one in depths)

    @cached_property
    def zone_hours(self) -> ZoneHours:
        """Hours under water at the floor, half way up the side and at the full pond."""
        held = self.held_storm
        deep = self.garden.depth
        return ZoneHours(held.hours_on_floor, held.time_above(deep / 2), held.time_above(deep))

    @property
    def _zone_heights(self) -> tuple[Quantity, Quantity, Quantity]:
        """Heights over the floor at which floor, side and rim are judged."""
        deep = self.garden.depth
        return quantity(0.0, "in"), deep / 2, deep

    @cached_property
    def zone_hours_again(self) -> ZoneHours:
        """Hours at a stretch under water when the same storm comes again next day."""
        pieces = self.storm_again.pieces
        return ZoneHours(*(longest_wet(pieces, height) for height in self._zone_heights))

    @cached_property
    def zone_hours_record(self) -> ZoneHours | None:
        """Longest hours at a stretch under water in the record; nothing where none can be read."""
        if not self.answers[start.HAS_RECORD]:
            return None
        try:
            return ZoneHours(*(spell.hours for spell in self.real_years.spells))
        except Unanswered:
            return None

    # A real year

    @property
    def has_long_sums(self) -> bool:
        """Whether years of rain are still to be read and carried through the garden."""
        if "zone_hours_record" in self.__dict__:
            return False
        return self.answers[start.HAS_RECORD] and self.answers.get(start.RECORD_PATH) is not None

    @property
    def without_record(self) -> Plan:
        """The same plan as if there were no rainfall record."""
        return replace(self, answers=self.answers.with_text(start.HAS_RECORD.key, "no"))

    @cached_property
    def record(self) -> Record:
        """The daily rainfall record."""
        answers = self.answers
        path, _ = answers[start.RECORD_PATH], answers[start.RECORD_UNIT]
        with _waits_for(start.RECORD_PATH, answers):
            try:
                return rain_plan.record_of(answers, self.open_text(path))
            except NoFile as trouble:
                raise ValueError(str(trouble)) from None
            except ColumnUnclear as unclear:
                dated = unclear.column is Column.DATE
                asked = start.RECORD_DATES if dated else start.RECORD_DEPTHS
                raise Unanswered(asked, answers.address(asked), why=str(unclear)) from None

    @cached_property
    def real_years(self) -> RecordReplay:
        """The garden through the years of the record."""
        return self.years_in(self.garden)

    def years_in(self, garden: Basin) -> RecordReplay:
        """Return the years of the record in as many beds of another size."""
        tried = self.beds_like(garden)

        def gain(rain: Quantity) -> float:
            return tried.gain_for(self._weighted_in(rain))

        with _waits_for(start.RECORD_PATH, self.answers):
            return rainfall_record.replay(
                self.record.days,
                tried.pool.gain,
                tried.pool.full_depth,
                tried.pool.rate,
                self.answers[bed.STORM_HOURS],
                rain_to_hold=self.answers[start.RAIN_DEPTH],
                heights=self._zone_heights[1:],
                beds_below=tried.count - 1 if tried.in_series else 0,
                own=tried.own,
                shape=self.storm_shape,
                tell=telling("Carrying the rain of the record through the garden"),
                kappa_at=gain if survey_plan.varies(self.answers) else None,
            )

    def _weighted_in(self, rain: Quantity) -> Quantity:
        """Return the area weighted by what runs off in a ``rain``, each depth worked out once."""
        return self._weighted_by_inches(magnitude(rain, "in"))

    @cached_property
    def _weighted_by_inches(self) -> Callable[[float], Quantity]:
        weighted = survey_plan.weighted_by_rain(self.answers, self.catchment)
        return cache(lambda inches: weighted(quantity(inches, "in")))

    @cached_property
    def years_by_size(self) -> tuple[SizedYears, ...]:
        """The years of the record with less and with more floor, to weigh a larger garden."""
        found = []
        for part in size_plan.SIZES:
            garden = size_plan.resized(self.garden, part)
            years = self.real_years if part == 1 else self.years_in(garden)
            found.append(SizedYears(part, garden, years))
        return tuple(found)

    # Earth

    @cached_property
    def earth(self) -> Earthwork:
        """Cut and fill to the finished floor, before what is dug for mulch."""
        with _waits_for(site.SLOPE_DROP, site.chosen_spot(self.answers)):
            return earthwork.cut_and_fill(self._ground, self.floor_level.depth)

    @cached_property
    def floor_level(self) -> FloorLevel:
        """How far below the lawn the floor is dug, and what sets it."""
        with _waits_for(site.SLOPE_DROP, site.chosen_spot(self.answers)):
            return floor_level(self._ground, self.mulch_soil)

    @property
    def _ground(self) -> earthwork.Basin:
        garden = self.garden
        return earthwork.Basin(
            garden.floor_length,
            garden.floor_width,
            self.slope.fall,
            garden.depth,
            garden.freeboard,
            garden.side_slope,
            top_width=self.answers[bed.BERM_TOP],
        )

    @property
    def soil_to_keep(self) -> Quantity:
        """Tamped soil of a berm level all round, over the whole falling ground."""
        return self.level_berm.fill

    @cached_property
    def level_berm(self) -> LevelBerm:
        """The soil of a berm level all round, beside what the digging of one bed gives."""
        with _waits_for(site.SLOPE_DROP, site.chosen_spot(self.answers)):
            return level_berm(self._ground, self.earth.downhill_depth, self.mulch_soil)

    @cached_property
    def mulch_soil(self) -> Quantity:
        """Soil dug from the floor to make room for the mulch."""
        return materials.layer(self.garden.floor_area, self.answers[bed.MULCH_DEPTH])

    @cached_property
    def digging(self) -> Soilwork:
        """All the soil to move."""
        with _waits_for(bed.BARROW, self.answers):
            return materials.soilwork(
                total(self.level_berm.cut, self.mulch_soil) * self.bed_count,
                Soil(self.answers[bed.SOIL_DUG]),
                self.answers[bed.BARROW],
            )

    @cached_property
    def notch(self) -> Notch:
        """The overflow notch of a bed, for all that may reach it with the rain on the bed itself.

        Of beds in a row every notch is made as wide as that of the last, which passes it all.
        """
        row = size_plan.in_a_row(self.answers)
        served = times(self.peak_area, 1 / self.bed_count)
        area = total(served, self.garden.rim_area) * (self.bed_count if row else 1)
        flow = overflow.peak_flow(area, 1.0, self.answers[bed.PEAK_INTENSITY])
        return overflow.notch(flow, metric=self.metric)

    @cached_property
    def catchment_flow(self) -> Quantity:
        """The peak flow that comes from the catchment alone."""
        return overflow.peak_flow(self.peak_area, 1.0, self.answers[bed.PEAK_INTENSITY])

    @cached_property
    def peak_area(self) -> Quantity:
        """The area that drains here, weighted by what runs off in the hardest rain."""
        return survey_plan.catchment_of(self.answers, survey_plan.peak_part).weighted

    @cached_property
    def pipe(self) -> PipeFall:
        """The fall of the pipe or channel to the garden."""
        with _waits_for(bed.SPOUT_FALL, self.answers):
            return overflow.pipe_fall(
                self.answers[bed.SPOUT_DISTANCE],
                self.answers[bed.SPOUT_FALL],
                self.earth.uphill_depth,
                self.garden.depth,
            )

    @cached_property
    def pipe_size(self) -> PipeChoice:
        """The pipe from the downspout, at its least fall, for the catchment's peak flow."""
        return overflow.pipe_choice(self.catchment_flow, metric=self.metric)

    @property
    def piped(self) -> bool:
        """Whether the water comes in a buried pipe."""
        return self.answers[bed.WATER_BY] == "pipe"

    @property
    def prices(self) -> dict[str, Price]:
        """The unit prices that were given, by thing."""
        lines: tuple[str, ...] | None = self.answers.get(bed.PRICES)
        return prices_of(lines or ())

    @cached_property
    def shopping(self) -> tuple[Item, ...]:
        """What to buy."""
        garden = self.garden
        amended = self.answers[bed.AMEND]
        return materials.shopping_list(
            BedSizes(
                garden.floor_area,
                garden.rim_area,
                garden.rim_length,
                garden.rim_width,
                self.answers[bed.MULCH_DEPTH],
                self.answers[bed.COMPOST_DEPTH] if amended else None,
                self.notch.width,
                self.answers[bed.SPOUT_DISTANCE] if self.piped else None,
                self.bed_count,
            ),
            self.metric,
        )

    # Plants

    @cached_property
    def plant_file(self) -> PlantFile:
        """The gardener's own plant file: the one of this run, or the one an answer names."""
        path = self.plants_path or planting.own_plants_path(self.answers)
        if not path:
            return PlantFile()
        try:
            return plant_plan.plant_file(path, self.open_text(path))
        except NoFile as trouble:
            return PlantFile(path, trouble=str(trouble))

    @cached_property
    def plants(self) -> tuple[Plant, ...]:
        """Every plant that may be chosen: the packaged list and the gardener's own."""
        listed = with_own(builtin_plants(), self.plant_file.plants)
        if land(self.answers.country).half is not Half.SOUTH:
            return listed
        return tuple(replace(one, southern=True) for one in listed)

    @cached_property
    def wishes(self) -> Wishes:
        """What the gardener wants of the planting."""
        answers = self.answers
        keep_out, bloom = answers[planting.KEEP_OUT], answers[planting.BLOOM]
        return Wishes(
            region=planting.plant_region(answers),
            list_region=planting.list_region(answers),
            sun=Sun(answers[planting.SUN]),
            floor_height=answers[planting.TALLEST_FLOOR],
            rim_height=answers[planting.TALLEST_RIM],
            natives_only=answers[planting.NATIVES_ONLY],
            keep_out=frozenset(KeepOut[one.upper()] for one in keep_out),
            bloom=frozenset(Season[one.upper()] for one in bloom),
            road_salt=answers[planting.ROAD_SALT],
            favourites=answers[planting.FAVOURITES],
            swaps=tuple(read_swap(words) for words in answers[planting.SWAP_OUT]),
            hardiness_zone=answers.get(planting.HARDINESS),
            place=planting.home_place(answers),
        )

    @cached_property
    def planting(self) -> PlantingPlan:
        """Which plants, how many, and where."""
        garden = self.garden
        worse = [("when the same storm comes again next day", self.zone_hours_again)]
        if self.zone_hours_record is not None:
            worse.append(("at the longest in your rainfall record", self.zone_hours_record))
        zones = planting_zones(
            garden.floor_area, garden.edge_area, garden.rim_area, self.zone_hours, worse
        )
        return choose(self.plants, self.wishes, zones)

    def zone_shape(self, zone: Zone) -> float:
        """Length over width of the floor, or of the side or rim as it is walked round."""
        garden = self.garden
        if zone is Zone.FLOOR:
            return ratio(garden.floor_length, garden.floor_width)
        inner, outer, area = {
            Zone.SIDE: (
                garden.floor_width,
                garden.edge_width,
                garden.edge_area - garden.floor_area,
            ),
            Zone.RIM: (garden.edge_width, garden.rim_width, garden.rim_area - garden.edge_area),
        }[zone]
        across = (outer - inner) / 2
        return ratio(area, across * across)

    def why_plant(self, name: str) -> tuple[str, ...]:
        """Say for each zone why the plant of that name is in or out."""
        said = why_plant(name, self.planting, self.plants, self.wishes)
        return tuple(map(self.answers.told, said))

    # Findings and the verdict

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """Everything found about the spot chosen and the garden, worst first."""
        order = {Grade.STOP: 0, Grade.FIX: 1, Grade.GOOD: 2}
        found = (one.told(self.answers.told) for one in all_findings(self))
        return tuple(sorted(found, key=lambda one: order[one.grade]))

    @cached_property
    def verdict(self) -> Grade:
        """The worst of the findings."""
        return verdict(self.findings)

    @property
    def share_of_rain(self) -> float:
        """The rain held as a part of the rain to hold."""
        return ratio(self.rain_held, self.answers[start.RAIN_DEPTH])
