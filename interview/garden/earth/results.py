"""What is dug, moved, bought and built."""

from __future__ import annotations

from dataclasses import dataclass

from interview.asking.question import waits_for
from interview.asking.results import Results, part
from interview.garden.earth import materials, overflow
from interview.garden.earth.earthwork import Earthwork, SlopedBasin, cut_and_fill
from interview.garden.earth.floor_level import FloorLevel, floor_level
from interview.garden.earth.level_berm import LevelBerm, level_berm
from interview.garden.earth.materials import BedSizes, Item, Soil, Soilwork
from interview.garden.earth.overflow import Notch, PipeChoice, PipeFall
from interview.garden.form.lie import Form
from interview.garden.place.results import PlaceResults
from interview.garden.site import spot_questions as ground
from interview.garden.site.results import SiteResults
from interview.garden.size import questions as bed
from interview.garden.size import results as size_plan
from interview.garden.size.price_lines import Price, prices_of
from interview.garden.size.results import SizeResults
from interview.garden.survey.results import SurveyResults
from interview.quantities.guards import times
from interview.quantities.units import Quantity, quantity, total


@dataclass(frozen=True)
class EarthResults(Results):
    """What is dug, moved, bought and built."""

    place: PlaceResults
    site: SiteResults
    survey: SurveyResults
    size: SizeResults

    @part
    def earthwork(self) -> Earthwork:
        """Cut and fill to the finished floor, before what is dug for mulch."""
        with waits_for(ground.SLOPE_DROP, ground.chosen_spot(self.answers)):
            return cut_and_fill(self._ground, self.floor_level.depth)

    @part
    def floor_level(self) -> FloorLevel:
        """How far below the lawn the floor is dug, and what sets it."""
        with waits_for(ground.SLOPE_DROP, ground.chosen_spot(self.answers)):
            return floor_level(self._ground, self.mulch_soil)

    @property
    def _ground(self) -> SlopedBasin:
        garden = self.size.garden
        return SlopedBasin(
            garden.floor_length,
            garden.floor_width,
            self.site.slope.fall,
            garden.depth,
            garden.freeboard,
            garden.side_slope,
            top_width=self.answers[bed.BERM_TOP],
        )

    @property
    def soil_to_keep(self) -> Quantity:
        """Tamped soil of a berm level all round, over the whole falling ground."""
        return self.level_berm.fill

    @part
    def level_berm(self) -> LevelBerm:
        """The soil of a berm level all round, beside what the digging of one bed gives."""
        with waits_for(ground.SLOPE_DROP, ground.chosen_spot(self.answers)):
            return level_berm(self._ground, self.earthwork.downhill_depth, self.mulch_soil)

    @part
    def mulch_soil(self) -> Quantity:
        """Soil dug from the floor to make room for the mulch."""
        return materials.layer(self.size.garden.floor_area, self.answers[bed.MULCH_DEPTH])

    @part
    def digging(self) -> Soilwork:
        """All the soil to move."""
        with waits_for(bed.BARROW, self.answers):
            return materials.soilwork(
                total(self.level_berm.cut, self.mulch_soil) * self.size.bed_count,
                Soil(self.answers[bed.SOIL_DUG]),
                self.answers[bed.BARROW],
            )

    @part
    def notch(self) -> Notch:
        """The overflow of a bed, for all that may reach it with the rain on the bed itself.

        It is a lip where the lawn is the rim, else a notch in the berm. Of beds in a row every
        notch is made as wide as that of the last, which passes it all.
        """
        row = size_plan.in_a_row(self.answers)
        served = times(self.survey.peak_area, 1 / self.size.bed_count)
        area = total(served, self.size.inside) * (self.size.bed_count if row else 1)
        flow = overflow.peak_flow(area, 1.0, self.answers[bed.PEAK_INTENSITY])
        # Ground that is not measured yet is taken to fall: a berm asks for the wider notch.
        lip = self.size.ground is not None and self.size.lie.form is Form.DUG_IN
        with waits_for(bed.FREEBOARD, self.answers):
            return overflow.notch(
                flow, self.answers[bed.FREEBOARD], lip=lip, metric=self.place.metric
            )

    @part
    def swale(self) -> Quantity | None:
        """The grass swale that leads the overflow out, where the lawn lies over the notch."""
        length = 0.0 if self.size.ground is None else self.size.lie.swale
        return quantity(length, "ft") if length > 0 else None

    @part
    def catchment_flow(self) -> Quantity:
        """The peak flow that comes from the catchment alone."""
        return overflow.peak_flow(self.survey.peak_area, 1.0, self.answers[bed.PEAK_INTENSITY])

    @part
    def pipe(self) -> PipeFall:
        """The fall of the ground for a covered pipe to the garden, and the fall it needs.

        Where none sold carries the flow it is that of the widest.
        """
        metric = self.place.metric
        with waits_for(bed.SPOUT_FALL, self.answers):
            return overflow.pipe_fall(
                self.answers[bed.SPOUT_DISTANCE],
                self.answers[bed.SPOUT_FALL],
                self.pipe_size.width or overflow.widest_pipe(metric),
                metric,
            )

    @part
    def pipe_size(self) -> PipeChoice:
        """The pipe from the downspout, at its least fall, for the catchment's peak flow."""
        return overflow.pipe_choice(self.catchment_flow, metric=self.place.metric)

    @property
    def piped(self) -> bool:
        """Whether the water comes in a buried pipe."""
        return self.answers[bed.WATER_BY] == "pipe"

    @property
    def prices(self) -> dict[str, Price]:
        """The unit prices that were given, by thing."""
        given: tuple[Price, ...] | None = self.answers.get(bed.PRICES)
        return prices_of(given or ())

    @part
    def shopping(self) -> tuple[Item, ...]:
        """What to buy."""
        garden = self.size.garden
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
                self.size.bed_count,
            ),
            self.place.metric,
        )
