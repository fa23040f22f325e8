"""The figures of what drains here, and the working behind each."""

from __future__ import annotations

from interview.asking.figure import AREA, Figure
from interview.garden.place import questions as start
from interview.garden.survey.results import PEAK_SOURCE, SurveyResults
from interview.quantities.evidence import Provenance, Source

RUNOFF = Source(
    "District of Columbia Municipal Regulations, title 21, section 520: 0.95 impervious, 0.25 "
    "compacted cover, gravel counted as such by choice; TR-55, USDA-NRCS, 1986, Table 2-2a, for "
    "lawn and curve numbers",
    Provenance.SECONDARY,
)

FIGURES: tuple[Figure[SurveyResults], ...] = (
    Figure("catchment_area", "Area that drains here", lambda p: p.catchment.drains_here, *AREA,
           "sum of plan area x share", ("surfaces",)),
    Figure("weighted_area", "Area weighted by runoff", lambda p: p.catchment.weighted, *AREA,
           "S = sum of plan area x share x part that runs off", ("surfaces", "runoff_by"), RUNOFF),
    Figure("weighted_area_error", "Standard error (likely error) of that area",
           lambda p: p.catchment.standard_error, *AREA,
           "first-order propagation of tape, pace, share", ("surfaces",)),
    Figure("widest_error", "What widens the range most", lambda p: p.catchment.driver or "nothing",
           formula="largest share of the variance"),
    Figure("weighted_area_low", "Area weighted by runoff, low end", lambda p: p.catchment.low,
           *AREA, "two standard uncertainties below", ("weighted_area", "weighted_area_error")),
    Figure("weighted_area_high", "Area weighted by runoff, high end", lambda p: p.catchment.high,
           *AREA, "two standard uncertainties above", ("weighted_area", "weighted_area_error")),
    Figure("catchment_volume", "Water that comes in the rain to hold",
           lambda p: p.catchment.brings(p.answers[start.RAIN_DEPTH]), "gal", "L",
           "S x P, without the rain on the garden itself", ("weighted_area", "rain_depth")),
    Figure("peak_area", "Area weighted by runoff in the heaviest rain", lambda p: p.peak_area,
           *AREA,
           "sum of plan area x share x part: 0.95 hard, 0.85 gravel and compacted, 0.35 lawn, or "
           "that of the rain to hold where it is more", ("surfaces",), PEAK_SOURCE),
)  # fmt: skip
