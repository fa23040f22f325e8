"""Storms and years of rain, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.question import Unanswered
from interview.garden.pictures import pond_pictures
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting.plant_list import MONTHS
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.storms.charts import bars
from interview.garden.storms.rain_days import LONG_YEARS, PERCENTS
from interview.garden.storms.rainfall_record import RecordPart, RecordReplay
from interview.garden.storms.record_text import Record
from interview.garden.summary import wrap
from interview.garden.survey.results import varies
from interview.quantities.evidence import OURS, Cited
from interview.quantities.shown import LOW, PLAIN, area_words, water_words
from interview.quantities.units import magnitude, plain_number, ratio, show
from interview.sheet.common import drawn, figure_lines

CHART_ROWS = 20
ROW_CHART_ROWS = 14
"""Lines of the chart of each bed of a row."""
MOST_BAD_LINES = 5
MOST_GAPS = 3
MOST_YEARS = 40
"""Years drawn one by one; of a longer record the last ones are."""
HELD_EASILY = Cited(0.5, OURS)
"""A storm that fills the pond to no more than this part of its depth is held easily."""
WELL_BELOW = Cited(0.85, OURS)
"""Up to this part of the pond's depth it is asked why the pond is deeper than the storm needs."""


def storms(plan: Plan) -> Iterator[str]:
    """Yield what storms from small to large do to the garden."""
    deep = "mm" if plan.metric else "in"
    shape = bed.STORM_SHAPE.kind.echo(plan.answers[bed.STORM_SHAPE], plan.answers)
    hours = magnitude(plan.answers[bed.STORM_HOURS], "h")
    ladder = plan.storms.ladder
    first = " (the bed the water reaches first; what leaves the last)" if _row(plan) else ""
    yield from wrap(f"Rain {shape}, over {hours:g} h, on an empty garden{first}:")
    yield f"{'rain ' + deep:>10}{'deepest pond':>15}{'hours wet':>12}{'caught':>10}{'spilled':>12}"
    volume = "L" if plan.metric else "gal"
    for row in ladder:
        spilled = magnitude(row.spill_volume, volume)
        peak, wet = magnitude(row.peak, deep), magnitude(row.hours_on_floor, "h")
        yield (
            f"{magnitude(row.rain, deep):>10.4g}{PLAIN.write(peak):>12} {deep}"
            f"{PLAIN.write(wet):>12}{LOW.write(100 * row.share_caught):>9}%"
            f"{PLAIN.write(spilled):>8} {volume}"
        )
    yield ""
    yield from _standing(plan)
    yield ""
    charts = pond_pictures(plan)
    for place, chart in enumerate(charts):
        yield from [""] * bool(place)
        rows = CHART_ROWS if len(charts) == 1 else ROW_CHART_ROWS
        yield from drawn(chart, rows)
    yield from _held_easily(plan)


def _held_easily(plan: Plan) -> Iterator[str]:
    """Say why a pond that this storm does not fill is dug all the same."""
    peak, full = plan.storms.held_storm.peak, plan.size.garden.depth
    part = ratio(peak, full)
    if _row(plan) or plan.answers[shaping.HOW_LARGE] == "lean" or part > WELL_BELOW.value:
        return
    stands = f"the water stands {water_words(peak, plan.metric)} deep at the most"
    yield ""
    if part <= HELD_EASILY.value:
        yield from wrap(
            f"Held easily: {stands}, because the soil takes much of it while it rains. The size "
            "does not count on that. A smaller garden would do: see lean under LEAN, USUAL, "
            "GENEROUS."
        )
    elif not plan.size.by_storms:
        yield from wrap(
            f"Why the pond is deeper than that: {stands}, as the soil takes some while it rains. "
            "The size does not count on that, and so has room for slower soil and larger storms. "
            "Lean goes without that room: see LEAN, USUAL, GENEROUS."
        )


def _row(plan: Plan) -> bool:
    return plan.storms.beds.in_series


def _standing(plan: Plan) -> Iterator[str]:
    """Yield how long each height stands under water, and the same storm again next day."""
    rain = show(plan.answers[start.RAIN_DEPTH], "mm" if plan.metric else "in", 3)
    yield f"Hours under water in a storm of {rain}, and when it comes again next day"
    yield f"(the longest at a stretch):{'once':>20}{'again':>10}"
    once, again = plan.storms.zone_hours, plan.storms.zone_hours_again
    for name, first, later in (
        ("floor", once.floor, again.floor),
        ("half way up the side", once.side, again.side),
        ("edge of the full pond, where the rim begins", once.rim, again.rim),
    ):
        yield f"  {name:<44}{_hours(magnitude(first, 'h'))}{_hours(magnitude(later, 'h'))}"
    short, long = (
        PLAIN.write(magnitude(one.hours_on_floor, "h"))
        for one in (plan.storms.held_storm, plan.storms.held_storm_floor_only)
    )
    if short != long:
        yield from wrap(
            f"Water stands on the floor for {short} to {long} hours: {short} if it soaks into all "
            f"the ground under water, {long} if it soaks into the level floor alone.",
            "  ",
        )
    yield from figure_lines(plan, "again_peak", "again_hours_on_floor", "again_caught")


def _hours(hours: float) -> str:
    return f"{PLAIN.write(hours):>7} h "


def years(plan: Plan) -> Iterator[str]:
    """Yield what the years of the rainfall record would have brought."""
    if not plan.answers[start.HAS_RECORD]:
        yield from wrap(
            "You gave no rainfall record, so the plan could not try a year of real rain."
        )
        return
    replay, record = plan.storms.real_years, plan.storms.record
    yield from _about(record, replay)
    yield from _deep(plan)
    yield from _reckoned(plan)
    yield from figure_lines(
        plan,
        "record_share_held",
        "record_overflow_days",
        "record_overflow_days_a_year",
        "record_longest_wet",
    )
    yield from wrap(
        "A share of the water is not a share of the storms: most rainy days bring little, and "
        "most of what runs over falls on a few days of much rain.",
    )
    yield ""
    yield from by_size(plan)
    yield ""
    yield from _charts(replay)


def _about(record: Record, replay: RecordReplay) -> Iterator[str]:
    """Yield what the record holds and all that was wrong with it."""
    yield f"{replay.first} to {replay.last}: {_days(replay.days)}."
    if record.doubt:
        yield from wrap(f"CHECK THE UNIT. {record.doubt}")
    if record.gaps:
        longest = sorted(record.gaps, key=lambda gap: (-gap.days, gap.first))[:MOST_GAPS]
        told = "; ".join(
            f"{gap.first}" if gap.days == 1 else f"{gap.first} to {gap.last}" for gap in longest
        )
        more = " and others" if len(record.gaps) > MOST_GAPS else ""
        yield from wrap(
            f"Missing: {_days(record.missing_days)} ({told}{more}). The pond drains over them; no "
            "rain is counted, in or out.",
            "  ",
        )
    else:
        yield "No day is missing."
    if record.traces:
        yield from wrap(f"Traces of rain: {_days(len(record.traces))}, counted as none.", "  ")
    if record.disordered:
        lines = _numbers(record.disordered)
        yield from wrap(f"Out of order: {lines}. All are used, by their dates.", "  ")
    for bad in record.bad_lines[:MOST_BAD_LINES]:
        yield from wrap(f"Line {bad.line} is not used: {bad.why}", "  ")
    rest = len(record.bad_lines) - MOST_BAD_LINES
    if rest > 0:
        yield f"{rest} more lines are not used."


def _deep(plan: Plan) -> Iterator[str]:
    """Yield how deep the rain of most rain days is, to choose the rain to hold by."""
    depths = (f"record_depth_{percent}" for percent in PERCENTS)
    yield from figure_lines(plan, "record_rain_days", *depths, "record_days_within")
    try:
        days = plan.storms.days_of_rain
    except Unanswered:
        return
    short = ""
    if days.short:
        short = (
            f" The file covers {PLAIN.write(days.years)} years: take them as a guide, for about "
            f"{LONG_YEARS.value} are wanted [{LONG_YEARS.source}]."
        )
    yield from wrap(
        "These depths are worked out from your file: they are not published, and no rule asks for "
        f"them. To hold one of them, answer Rain to hold with it.{short}",
        "  ",
    )


def _reckoned(plan: Plan) -> Iterator[str]:
    """Yield how a day's rain is spread over the day, and how much of it runs off."""
    shape = bed.STORM_SHAPE.kind.echo(plan.answers[bed.STORM_SHAPE], plan.answers)
    hours = magnitude(plan.answers[bed.STORM_HOURS], "h")
    over = "" if plan.answers[bed.STORM_SHAPE] == "type_ii" else f", over its first {hours:g} h"
    part = (
        "the part that runs off is worked out for each day's own depth, by curve number where you "
        "chose it and for lawn"
        if varies(plan.answers)
        else "the same part of it runs off whatever the depth"
    )
    yield from wrap(f"Each day's rain comes as your storm does ({shape}{over}); {part}.", "  ")


def _days(count: int) -> str:
    return "1 day" if count == 1 else f"{count} days"


def _numbers(lines: tuple[int, ...]) -> str:
    told = ", ".join(str(line) for line in lines[:MOST_BAD_LINES])
    more = f" and {len(lines) - MOST_BAD_LINES} more" if len(lines) > MOST_BAD_LINES else ""
    return f"line {told}{more}" if len(lines) == 1 else f"lines {told}{more}"


def by_size(plan: Plan) -> Iterator[str]:
    """Yield how the years would have gone with less and with more floor."""
    yield "The same years with a smaller and with a larger floor, all else the same:"
    yield f"{'floor':>12}{'floor area':>14}{'runoff held':>14}{'overflow days a year':>23}"
    for sized in plan.storms.years_by_size:
        name = "as drawn" if sized.part == 1 else f"{plain_number(sized.part)} times"
        floor = area_words(sized.garden.floor_area * plan.size.bed_count, plan.metric)
        held = LOW.write(100 * sized.replay.share_held)
        days = PLAIN.write(sized.replay.overflow_days_a_year)
        yield f"{name:>12}{floor:>14}{held:>12} %{days:>23}"


def _charts(replay: RecordReplay) -> Iterator[str]:
    """Yield the share held by year, and the days of overflow by month, as bars."""
    parts = replay.years[-MOST_YEARS:]
    held = [(str(part.number), _held(part)) for part in parts]
    title = "SHARE OF THE RUNOFF HELD, by year"
    yield from drawn(bars(held, "%", title), len(held) + 3)
    if len(replay.years) > MOST_YEARS:
        yield f"(the last {MOST_YEARS} years of {len(replay.years)})"
    yield ""
    spilled = [(MONTHS[one.number - 1], float(one.overflow_days)) for one in replay.months]
    title = "DAYS OF OVERFLOW, by month, over all the years"
    yield from drawn(bars(spilled, "", title), len(spilled) + 3)


def _held(part: RecordPart) -> float:
    return LOW.number(100 * part.share_held)
