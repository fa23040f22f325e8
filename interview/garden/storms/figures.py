"""The figures of storms and years of rain, and the working behind each."""

from __future__ import annotations

from interview.asking.figure import AREA, DIST, HOURS, PERCENT, VOLUME, Figure, Value
from interview.garden.place import questions as start
from interview.garden.pond.hyetographs import StormShape
from interview.garden.storms.rain_days import METHOD, PERCENTS
from interview.garden.storms.results import StormsResults
from interview.quantities.evidence import Provenance, Source
from interview.quantities.shown import LOW
from interview.quantities.units import quantity

LEVEL_POOL = Source(
    "level-pool balance on the stage-area curve, by fourth-order Runge-Kutta steps within each "
    "part of the storm",
    Provenance.ARITHMETIC,
)


def _caught(
    key: str, label: str, rain: float, shape: StormShape | None = None
) -> Figure[StormsResults]:
    """Return the figure of the share caught of a storm of so many times the rain to hold."""

    def share(found: StormsResults) -> Value:
        depth = found.answers[start.RAIN_DEPTH] * rain
        return quantity(100 * found.garden_storm(depth, shape).share_caught, "percent")

    return Figure(
        key, label, share, *PERCENT, "1 - spill / inflow", ("rain_depth",), LEVEL_POOL, LOW
    )


def _days_within(found: StormsResults) -> Value:
    share = found.days_of_rain.share_within(found.answers[start.RAIN_DEPTH])
    return quantity(100 * share, "percent")


def _depth_of_days(percent: int) -> Figure[StormsResults]:
    """Return the figure of the depth that ``percent`` of the rain days do not pass."""
    return Figure(
        f"record_depth_{percent}",
        f"No more rain on {percent} % of its rain days",
        lambda p: p.days_of_rain.depth(percent),
        *DIST,
        f"depth at the rank (n - 1) x {percent / 100:g} of the n rain days by depth, from rank 0, "
        "interpolated",
        ("record_rain_days",),
        METHOD,
    )


FIGURES: tuple[Figure[StormsResults], ...] = (
    Figure("sending_area", "Area that sends water to a bed", lambda p: p.pool.sending_area, *AREA,
           "S1 + area inside; S1 = S / beds, but all of S for the first of beds in a row",
           ("weighted_area", "inside_area")),
    Figure("corners", "What the corners add as the pond widens", lambda p: p.pool.stage.corners,
           formula="kappa: 4 for an outline with square corners, pi for a round one"),
    Figure("storm_peak", "Deepest pond in the storm held", lambda p: p.held_storm.peak, *DIST,
           "greatest h of A(h) dh/dt = i(t) x area that sends water - f A(h), from empty; h from 0 "
           "to d; A(h) = Af + Pf z h + kappa (z h)^2; i(t) the storm shape over its hours",
           ("sending_area", "floor_area", "floor_perimeter", "corners", "corrected_rate",
            "storm_hours"), LEVEL_POOL),
    Figure("storm_hours_on_floor", "Hours of water on the floor in the storm held",
           lambda p: p.held_storm.hours_on_floor, *HOURS,
           "A(h) dh/dt = i(t) x area that sends water - f A(h), until empty: all ground under "
           "water soaks", ("storm_peak",), LEVEL_POOL),
    Figure("storm_hours_floor_only", "Hours of water, if the level floor alone takes it",
           lambda p: p.held_storm_floor_only.hours_on_floor, *HOURS,
           "A(h) dh/dt = i(t) x area that sends water - f Af, until empty",
           ("storm_hours_on_floor",), LEVEL_POOL),
    Figure("emptying_floor_only", "Hours a full pond takes to empty by its level floor alone",
           lambda p: p.pool.hours_to_empty_by_floor, *HOURS, "V / (f Af)",
           ("pond_volume", "floor_area", "corrected_rate")),
    Figure("storm_spill", "Spilled in the storm held", lambda p: p.all_held_storm.spill_volume,
           *VOLUME,
           "sum of (i(t) x area that sends water - f A(d)) dt while the pond is full, of every bed "
           "water leaves the garden from", ("sending_area", "pond_depth", "corrected_rate"),
           LEVEL_POOL),
    Figure("side_hours", "Hours under water half way up the side", lambda p: p.zone_hours.side,
           *HOURS, "time h is d / 2 or more", ("storm_peak",), LEVEL_POOL),
    Figure("rim_hours", "Hours under water at the edge of the full pond",
           lambda p: p.zone_hours.rim, *HOURS, "time h is d: while the pond is full",
           ("storm_peak",), LEVEL_POOL),
    Figure("again_peak", "Deepest pond, if that storm comes again", lambda p: p.storm_again.peak,
           *DIST, "the storm held, and again 24 h after it began", ("storm_peak",), LEVEL_POOL),
    Figure("again_hours_on_floor", "Hours of water on the floor in both storms",
           lambda p: p.storm_again.hours_on_floor, *HOURS,
           "the storm held, and again 24 h after it began", ("storm_hours_on_floor",), LEVEL_POOL),
    Figure("again_caught", "Caught of both storms together",
           lambda p: quantity(100 * p.all_storm_again.share_caught, "percent"), *PERCENT,
           "1 - spill / inflow", ("rain_depth",), LEVEL_POOL, LOW),
    _caught("caught_at_one_and_a_half", "Caught of a storm half as large again", 1.5),
    _caught("caught_at_twice", "Caught of a storm twice as large", 2),
    _caught("caught_uniform_at_one_and_a_half", "Caught of that storm, if its rain is even", 1.5,
            StormShape.UNIFORM),
    Figure("record_rain_days", "Rain days in the record", lambda p: p.days_of_rain.count,
           formula="days with more than 0.1 in (2.5 mm)", inputs=("rain_record",), source=METHOD),
    *map(_depth_of_days, PERCENTS),
    Figure("record_days_within", "Rain days with no more than the rain to hold", _days_within,
           *PERCENT,
           "rain days of that depth or less / all rain days; of the days, not of the year's water",
           ("rain_depth", "record_rain_days"), METHOD, LOW),
    Figure("record_share_held", "Share of the record's runoff held",
           lambda p: quantity(100 * p.real_years.share_held, "percent"), *PERCENT,
           "1 - spill / inflow over all the days: each day's rain in the shape of the storm over "
           "its first storm hours, S by that day's own depth of rain, water left at night carried "
           "over", ("rain_record",), LEVEL_POOL, LOW),
    Figure("record_overflow_days", "Days of overflow in the record",
           lambda p: len(p.real_years.overflow_days),
           formula="days on which any water leaves the garden", inputs=("rain_record",)),
    Figure("record_overflow_days_a_year", "Days of overflow a year",
           lambda p: p.real_years.overflow_days_a_year,
           formula="days of overflow x 365.25 / days in the record",
           inputs=("record_overflow_days",)),
    Figure("record_missing_days", "Days missing from the record", lambda p: p.record.missing_days,
           formula="days between the first and the last of which nothing is said",
           inputs=("rain_record",)),
    Figure("record_longest_wet", "Longest time water stood, in the record",
           lambda p: p.real_years.longest_wet_spell, *HOURS,
           "longest unbroken time with water on the floor of the bed the water reaches first",
           inputs=("rain_record",)),
)  # fmt: skip
