"""The figures of the garden as it was dug, and the working behind each."""

from __future__ import annotations

from interview.asking.figure import DIST, HOURS, PERCENT, VOLUME, Figure, Value
from interview.garden.afterwards.as_built import above
from interview.garden.afterwards.results import BuiltResults
from interview.quantities.shown import HIGH, LOW, Rounding, depth_words
from interview.quantities.units import quantity

WHOLE = Rounding(places=0)
"""Of what was planned: a twentieth more than all of it is not told as all."""


def _rim(found: BuiltResults) -> Value:
    levels = found.first.levels
    return "not read" if levels.rim is None else above(levels.rim, levels.notch)


FIGURES: tuple[Figure[BuiltResults], ...] = (
    Figure("built_depth", "Pond as dug, from the floor to where it spills",
           lambda p: p.first.dug.depth, *DIST,
           "mean of the floor readings - compost and mulch to come - the notch reading, or the "
           "lowest rim reading where that is more; 0 or more",
           ("floor_readings", "floor_cover", "notch_reading", "rim_reading"), words=depth_words),
    Figure("built_volume", "Water held as dug, one bed", lambda p: p.first.dug.volume, *VOLUME,
           "V = Af h + Pf z h^2 / 2 + k z^2 h^3 / 3, h the pond as dug; floor and sides as planned",
           ("built_depth", "floor_area", "floor_perimeter", "side_slope", "corners")),
    Figure("built_share", "That as a part of what was planned",
           lambda p: quantity(100 * p.first.dug.share, "percent"), *PERCENT,
           "water held as dug / full pond volume", ("built_volume", "pond_volume"), rounding=WHOLE),
    Figure("built_rain_held", "Rain it holds as dug", lambda p: p.first.rain_held, *DIST,
           "water held as dug / (S / beds + area inside)",
           ("built_volume", "weighted_area", "inside_area"), rounding=LOW),
    Figure("built_empty", "Time to empty as dug, at the corrected rate",
           lambda p: p.first.hours_to_empty, *HOURS,
           "pond over the lowest floor reading / corrected rate",
           ("built_depth", "floor_readings", "corrected_rate"), rounding=HIGH),
    Figure("built_floor_spread", "Highest and lowest floor reading apart",
           lambda p: p.first.levels.floor_spread, *DIST, "largest - smallest floor reading",
           ("floor_readings",), words=depth_words),
    Figure("built_rim", "Lowest place of the rim above the notch", _rim, *DIST,
           "notch reading - lowest rim reading; below 0 the pond spills there",
           ("notch_reading", "rim_reading"), words=depth_words),
    Figure("built_all_volume", "Water held as dug, all beds", lambda p: p.volume, *VOLUME,
           "sum of the water held as dug, bed by bed", ("built_volume", "beds")),
    Figure("built_all_share", "That as a part of what was planned for all",
           lambda p: quantity(100 * p.share, "percent"), *PERCENT,
           "water held as dug, all beds / (full pond volume x beds)",
           ("built_all_volume", "pond_volume", "beds"), rounding=WHOLE),
)  # fmt: skip
