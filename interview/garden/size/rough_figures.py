"""The figures of the first size, which stand until the soil is tested."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.figure import AREA, DIST, SIDE, Figure, Value
from interview.garden.size.rough import FACTOR_SOURCE, USUAL_POND_SOURCE, RoughSize
from interview.garden.size.rough_results import RoughResults
from interview.garden.size.size_factors import SIZE_FACTOR_TABLE
from interview.quantities.evidence import OURS
from interview.quantities.shown import HIGH, LOW, depth_words, length_words
from interview.quantities.units import Quantity

SETTLED = "settled by the soak test"
"""Stands for the first size once the rate of the soil is known."""


def _until_tested(get: Callable[[RoughSize], Quantity]) -> Callable[[RoughResults], Value]:
    return lambda found: SETTLED if found.tested else get(found.sized)


_ANSWERS = ("rain_depth", "soil_dug", "children", "deepest_pond", "slope", "side_slope")

FIGURES: tuple[Figure[RoughResults], ...] = (
    Figure("rough_depth", "First size: depth of the pond", _until_tested(lambda p: p.depth), *DIST,
           "6 in (150 mm), or the deepest wanted where that is less; so deep that the rain goes in",
           ("rain_depth", "deepest_pond"), USUAL_POND_SOURCE, words=depth_words),
    Figure("rough_area", "First size: area", _until_tested(lambda p: p.middle), *AREA,
           "area at half depth that is needed, as after the test, with this depth",
           ("weighted_area", "rough_depth", *_ANSWERS)),
    Figure("rough_area_low", "First size: at the least", _until_tested(lambda p: p.low), *AREA,
           "the least of: that area at each depth from e to D, in every way still open; factor x "
           "catchment area x rain / 1 in (25.4 mm), 0.15 gritty, 0.25 floury, 0.32 sticky, 0.15 "
           "unknown; on soil that may be fast the smallest floor whose full pond has the area for "
           "sandy soil; e what the slowest soil that feels so empties in 48 h at a third of its "
           "published rate, 3 to 6 in (80 to 150 mm); D the deepest pond wanted",
           ("catchment_area", "weighted_area", *_ANSWERS), SIZE_FACTOR_TABLE, LOW),
    Figure("rough_area_high", "First size: at the most", _until_tested(lambda p: p.high), *AREA,
           "the most of: that area at each depth from e to D; factor x catchment area x rain / 1 "
           "in (25.4 mm), 0.19 gritty, 0.34 floury, 0.43 sticky, 0.43 unknown; the rain scales the "
           "factors, which is ours", ("catchment_area", "weighted_area", *_ANSWERS), FACTOR_SOURCE,
           HIGH),
    Figure("rough_outline_length", "First size: room along the level line",
           _until_tested(lambda p: p.length), *SIDE,
           "toe to toe on the slope measured, level ground until then, of the longest bed at e or "
           "D, up to 1/4 ft (100 mm)", ("rough_area_high", "slope"), OURS, words=length_words),
    Figure("rough_outline_width", "First size: room up and down the slope",
           _until_tested(lambda p: p.width), *SIDE,
           "toe to toe on the slope measured, level ground until then, of the widest bed at e or "
           "D, up to 1/4 ft (100 mm)", ("rough_area_high", "slope"), OURS, words=length_words),
)  # fmt: skip
