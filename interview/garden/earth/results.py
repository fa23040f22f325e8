"""What is dug, moved, bought and built."""

from __future__ import annotations

from dataclasses import replace

from interview.asking.question import Unanswered, waits_for
from interview.asking.results import Results, part
from interview.garden.earth import materials, overflow, work
from interview.garden.earth.materials import BedSizes, Item, Soil
from interview.garden.earth.overflow import Notch, PipeChoice, PipeFall
from interview.garden.earth.work import Soilwork
from interview.garden.form.lie import COMPACTION, Form, Lie, lie_of, winged
from interview.garden.place.results import PlaceResults
from interview.garden.site.results import SiteResults
from interview.garden.size import answered
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.cover_questions import BERM_OUTSIDE, rim_sown
from interview.garden.size.price_lines import Price, prices_of
from interview.garden.size.results import SizeResults
from interview.garden.survey import share_questions as sharing
from interview.garden.survey.results import SurveyResults
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import times
from interview.quantities.records import record
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity, total

OVERBUILT = Cited(
    1.1, Source("a berm tamped by hand is built a tenth high, and settles", Provenance.OURS)
)
"""Soil of a berm on the day it is built over what it is to be: its settling is that from the soil
as it lay to 0.9 of it, so a berm a tenth high takes no more undisturbed soil than a settled one."""
BANK = {
    US: ((6.0, "in"), (12.0, "in")),
    METRIC: ((150.0, "mm"), (300.0, "mm")),
}
"""Height and width of the top of a low bank elsewhere that takes soil left over: ours."""
THIN_MULCH = {US: (2.0, "in"), METRIC: (50.0, "mm")}
"""The thinnest mulch of the guides: see ``garden/guides.MULCH_IN``."""
NOTHING = 0.01
"""Soil left over, as a part of what is dug, that is within the error of the sum: ours."""


@record(eq=False)
class EarthResults(Results):
    """What is dug, moved, bought and built."""

    place: PlaceResults
    site: SiteResults
    survey: SurveyResults
    size: SizeResults

    @property
    def lie(self) -> Lie:
        """How one bed lies in its ground, dug and built."""
        return self.size.lie

    @part
    def cut(self) -> Quantity:
        """Undisturbed soil to dig for one bed, with the room for mulch and compost."""
        return quantity(self.lie.soil.cut, "ft**3")

    @part
    def fill(self) -> Quantity:
        """Tamped soil in the berm of one bed."""
        return quantity(self.lie.soil.fill, "ft**3")

    @part
    def berm_bank(self) -> Quantity:
        """Undisturbed soil that the berm of one bed takes."""
        return times(self.fill, 1 / COMPACTION.value)

    @property
    def own_berm(self) -> bool:
        """Whether the soil that is dug makes the berm: sand leaks and washes out."""
        return Soil(self.answers[bed.SOIL_DUG]) is not Soil.SAND

    @part
    def left_over(self) -> Quantity:
        """Undisturbed soil of all the beds that no berm takes."""
        soil = self.lie.soil
        spare = soil.left_over if self.own_berm else soil.cut
        if spare < NOTHING * soil.cut:
            # Where the soil of the berm sets the depth, what the search leaves over is not soil.
            spare = 0.0
        return quantity(spare * self.size.bed_count, "ft**3")

    def spare_of(self, lie: Lie) -> Quantity:
        """Undisturbed soil that the berm of a bed does not take, were it to lie so."""
        soil = lie.soil
        return quantity(max(0.0, soil.left_over if self.own_berm else soil.cut), "ft**3")

    @part
    def berm_built(self) -> Quantity:
        """Tamped soil of all the berms on the day, a tenth high."""
        return times(self.fill, OVERBUILT.value * self.size.bed_count)

    @part
    def winged(self) -> Lie | None:
        """The bed with a berm that runs on up the slope at its ends, where that digs less."""
        return winged(self.lie)

    def laid(self, *, thin: bool, bare: bool) -> Lie | None:
        """Return the bed with the thinnest usual mulch, or no compost, where that digs less."""
        ground, least = self.lie.ground, magnitude(quantity(*THIN_MULCH[self.place.system]), "ft")
        mulch = min(ground.mulch, least) if thin else ground.mulch
        compost = 0.0 if bare else ground.compost
        if mulch > ground.mulch - 1e-9 and compost >= ground.compost:
            return None
        return lie_of(self.size.garden, replace(ground, mulch=mulch, compost=compost))

    @part
    def laid_thin(self) -> Lie | None:
        """The bed with the thinnest usual mulch and no compost, where that digs less."""
        return self.laid(thin=True, bare=True)

    @part
    def bank_elsewhere(self) -> Quantity:
        """Length of a low bank elsewhere, its sides as the berm's outside, for all carried off."""
        high, top = (magnitude(quantity(*one), "ft") for one in BANK[self.place.system])
        across = high * (top + self.lie.ground.outer * high)
        spare = magnitude(total(self.left_over, self.channel_soil), "ft**3")
        return quantity(spare * COMPACTION.value / across, "ft")

    @part
    def sod_lifted(self) -> Quantity:
        """Lawn over all that is dug or built, of all the beds."""
        return quantity(self.lie.footprint_area * self.size.bed_count, "ft**2")

    @part
    def sod_laid(self) -> Quantity:
        """Sod laid again: outside the crest where nothing else grows, and on a lean rim."""
        inside, laid = self.lie.inside_area, 0.0
        if self.answers[BERM_OUTSIDE] == "sod":
            laid += max(0.0, self.lie.footprint_area - inside)
        if self.rim_turfed:
            laid += max(0.0, inside - magnitude(self.mulched, "ft**2"))
        return quantity(laid * self.size.bed_count, "ft**2")

    @part
    def channel_soil(self) -> Quantity:
        """Undisturbed soil dug where the channels of stone lie."""
        none = quantity(0.0, "ft**3")
        return materials.stone_uses(self.bed_sizes, self.place.metric).get("channel", none)

    @part
    def carried_off(self) -> Quantity:
        """Loose soil that goes elsewhere: what no berm takes, and that of the channel."""
        return materials.loosen(
            total(self.left_over, self.channel_soil), Soil(self.answers[bed.SOIL_DUG])
        )

    def loads(self, loose: Quantity) -> int:
        """Return the barrows that a heap fills."""
        with waits_for(bed.BARROW, self.answers):
            return work.loads(loose, self.answers[bed.BARROW])

    @part
    def loads_off(self) -> int:
        """Barrows of soil that goes elsewhere."""
        return self.loads(self.carried_off)

    def loads_of(self, *names: str) -> int:
        """Return the barrows of what is bought, each thing by itself."""
        return sum(self.loads(item.amount) for item in self.shopping if item.name in names)

    @property
    def trench(self) -> Quantity:
        """Length of the trench for a buried pipe."""
        far: Quantity = self.answers[bed.SPOUT_DISTANCE] if self.pipe_fits else quantity(0.0, "ft")
        return far

    @part
    def digging(self) -> Soilwork:
        """All the soil to move."""
        with waits_for(bed.BARROW, self.answers):
            return work.soilwork(
                times(self.cut, self.size.bed_count),
                Soil(self.answers[bed.SOIL_DUG]),
                self.answers[bed.BARROW],
            )

    @part
    def notch(self) -> Notch:
        """The overflow of a bed, for all that may reach it with the rain on the bed itself.

        It is a lip where the lawn is the rim, else a notch in the berm. Of beds in a row every
        notch is made as wide as that of the last, which passes it all.
        """
        row = answered.in_a_row(self.answers)
        served = times(self.survey.peak_area, 1 / self.size.bed_count)
        area = total(served, self.size.inside) * (self.size.bed_count if row else 1)
        flow = overflow.peak_flow(area, 1.0, self.answers[bed.PEAK_INTENSITY])
        # Ground that is not measured yet is taken to fall: a berm asks for the wider notch.
        lip = self.size.ground is not None and self.size.lie.form is Form.DUG_IN
        with waits_for(shaping.FREEBOARD, self.answers):
            return overflow.notch(
                flow, self.answers[shaping.FREEBOARD], lip=lip, metric=self.place.metric
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
    def roof_flow(self) -> Quantity:
        """The peak flow from the roofs, which is what a pipe from the downspout takes."""
        area, rain = self.survey.peak_roofs, self.answers[bed.PEAK_INTENSITY]
        return overflow.peak_flow(area, 1.0, rain)

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
        """The pipe from the downspout, at its least fall, for the peak flow of the roofs."""
        return overflow.pipe_choice(self.roof_flow, metric=self.place.metric)

    @property
    def piped(self) -> bool:
        """Whether the water comes in a buried pipe."""
        return self.answers[bed.WATER_BY] == "pipe"

    @property
    def pipe_fits(self) -> bool:
        """Whether a buried pipe is wanted, and not known to lack fall or to be too narrow."""
        if not self.piped:
            return False
        try:
            return self.pipe_size.width is not None and self.pipe.enough
        except Unanswered:
            return True

    @property
    def way(self) -> str:
        """How the water comes in: where the pipe that is wanted cannot be, by a stone channel."""
        answered: str = self.answers[bed.WATER_BY]
        return "channel" if self.piped and not self.pipe_fits else answered

    @property
    def prices(self) -> dict[str, Price]:
        """The unit prices that were given, by thing."""
        given: tuple[Price, ...] | None = self.answers.get(bed.PRICES)
        return prices_of(given or ())

    @property
    def mulched(self) -> Quantity:
        """The area of one bed under mulch: all inside the crest and the cut edge, or the pond."""
        return self.size.garden.edge_area if self.mulch_to_pond else self.size.inside

    @property
    def mulch_to_pond(self) -> bool:
        """Whether mulch lies up to the full pond only: above it lies sod, or seed on bare soil."""
        return shaping.lean(self.answers) or rim_sown(self.answers)

    @property
    def rim_turfed(self) -> bool:
        """Whether sod is laid into the cut above the mulch."""
        mulched = answered.is_mulched(self.answers) and not rim_sown(self.answers)
        return shaping.lean(self.answers) and mulched

    @property
    def apron_length(self) -> Quantity:
        """Length of the stone below the notch: over the top, down the berm and a foot beyond."""
        lie = self.lie
        beyond = magnitude(quantity(*materials.BEYOND_TOE[self.place.system]), "ft")
        built = lie.ground.top + lie.ground.outer * lie.crest_to_toe if lie.crest_to_toe else 0.0
        return quantity(built + beyond, "ft")

    @property
    def stone_way(self) -> Quantity | None:
        """Length of a channel of stone from the downspout; nothing where there is none."""
        if self.way != "channel":
            return None
        far: Quantity | None = self.answers.get(bed.SPOUT_DISTANCE)
        return far

    @part
    def bed_sizes(self) -> BedSizes:
        """The sizes that decide what is bought by the heap."""
        return BedSizes(
            floor_area=self.size.garden.floor_area,
            mulch_area=self.mulched,
            mulch_depth=self.answers[bed.MULCH_DEPTH],
            mulch_to="full pond" if self.mulch_to_pond else "rim",
            compost_depth=self.answers[bed.COMPOST_DEPTH] if self.answers[bed.AMEND] else None,
            # A lip in the lawn is of turf.
            notch_width=None if self.notch.lip else self.notch.width,
            apron_length=self.apron_length,
            channel_length=self.stone_way,
            # Water off paving or a roof without a gutter comes in one.
            channels=max(1, self.spouts_here),
            beds=self.size.bed_count,
            berm_soil=None if self.own_berm else self.berm_bank,
        )

    @part
    def spouts_here(self) -> int:
        """Downspouts that come here; a roof that falls on another surface has none of its own."""
        return sum(
            sharing.outlets_here(view)
            for view in self.answers.items("surfaces")
            if view[sharing.SURFACE_KIND] == "roof" and not sharing.falls_on(view)
        )

    @part
    def shopping(self) -> tuple[Item, ...]:
        """What to buy, and of what is by wish that which has a price."""
        metric = self.place.metric
        pipe = self.answers[bed.SPOUT_DISTANCE] if self.pipe_fits else None
        return (
            *materials.shopping_list(self.bed_sizes, metric),
            *materials.spout_parts(self.spouts_here, pipe, metric),
            *(one for one in materials.wished_parts(self.spouts_here) if one.name in self.prices),
        )

    @part
    def by_wish(self) -> tuple[Item, ...]:
        """What not everybody wants, and nobody has given a price for."""
        return tuple(
            one for one in materials.wished_parts(self.spouts_here) if one.name not in self.prices
        )
