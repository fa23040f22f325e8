"""The result of a soak test in words for somebody who has never run one."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from interview.garden.soak.depth import (
    DEEPEST_IN,
    SHALLOWEST_IN,
    DepthRule,
    Governs,
    PondDepth,
    pond_depth,
)
from interview.garden.soak.rates import (
    FAR_APART,
    SETTLED_WITHIN,
    Band,
    SoakTest,
    TextureCheck,
    Trend,
    soil_band,
)
from interview.garden.soak.readings import CombinedRate, HolesRule
from interview.garden.soak.results import HoleReport
from interview.quantities.shown import HIGH, LOW, rate_words, water_words
from interview.quantities.units import (
    METRIC,
    US,
    Quantity,
    magnitude,
    plain_number,
    quantity,
    show,
    significant,
)
from interview.reading import foreign

BAND_WORDS = {
    Band.VERY_FAST: "The water goes very fast, as in sand. Choose plants that can stand drought.",
    Band.WELL_DRAINING: "The soil drains well: good ground for a rain garden.",
    Band.WORKABLE: "The soil is workable: the pond will be shallower, and the garden wider.",
    Band.MARGINAL: (
        "The soil is marginal (very slow). Improve it and test again, or move the garden; the "
        "plan says how."
    ),
    Band.NO_FALL: "The water did not fall, so no rain garden can be made here in this soil.",
}
LONGEST_H = 1000.0


def verdict(test: SoakTest, felt: TextureCheck | None, metric: bool) -> str:
    """Say what the soil is good for, and beside it the doubt that its feel casts on that."""
    said = BAND_WORDS[test.band]
    return said if felt is None else f"{said} {doubt(test, felt, metric)}".rstrip()


def doubt(test: SoakTest, felt: TextureCheck, metric: bool) -> str:
    """Say that soil of this feel is mostly worse than it was tested to be, where it is."""
    order = list(Band)
    usual = soil_band(felt.published * 2, felt.published)
    if felt.times <= FAR_APART or order.index(usual) <= order.index(test.band):
        return ""
    return (
        f"But it felt like {felt.texture.value}, for which a table gives "
        f"{rate_words(felt.published, metric)} through the bottom alone ({usual.value}). Test "
        "another hole before you trust this one."
    )


_SCALE_IN = (0.3, 30.0)
"""Ponds at the ends of the scale: a tenth of the least that is dug, three times the deepest."""
_NO_CAP_IN = 1e6
_SCALE_OF = "pond emptied in time:"


def scale_part(pond: float) -> float:
    """Return the place, by the logarithm, of a soil that empties a ``pond`` of so many inches.

    Nought is the slow end of the scale, one the fast end; beyond them it is the end.
    """
    low, high = map(math.log, _SCALE_IN)
    return min(max((math.log(max(pond, 1e-9)) - low) / (high - low), 0.0), 1.0)


def pond_emptied(test: SoakTest) -> float:
    """Return the pond, in inches, that both checks let the soil of a test empty in time."""
    cap = quantity(_NO_CAP_IN, "in")
    return magnitude(pond_depth(test.lower_drop_rate, test.corrected, cap=cap).limit, "in")


def scale_lines(test: SoakTest, columns: int, metric: bool) -> tuple[str, str]:
    """Return a scale from slow to fast with the soil on it, and what its two marks are."""
    ends = ("slow ", " fast")
    wide = max(columns - sum(map(len, ends)), 12) - 1
    marks = (SHALLOWEST_IN.value, DEEPEST_IN.value)
    line = ["─"] * (wide + 1)
    for at in (0, wide, *(round(scale_part(one) * wide) for one in marks)):
        line[at] = "┼"
    line[round(scale_part(pond_emptied(test)) * wide)] = "●"
    under = " " * len(ends[0]) + _SCALE_OF
    for one in marks:
        words = water_words(quantity(one, "in"), metric)
        at = len(ends[0]) + round(scale_part(one) * wide) - len(words) // 2
        under = (under if len(under) < at else "").ljust(at) + words
    return f"{ends[0]}{''.join(line)}{ends[1]}", under


READING_DIGITS = 3
"""A rate of one reading has a digit more than a result, so that its working can be followed."""


def reading_rate(value: Quantity, metric: bool) -> str:
    """Write the rate of one reading, without its unit."""
    number = magnitude(value, "mm/h" if metric else "in/h")
    return plain_number(significant(number, READING_DIGITS))


def _deep(value: Quantity, metric: bool) -> str:
    return water_words(value, metric, LOW)


def _hours(value: Quantity) -> str:
    hours = magnitude(value, "h")
    if not math.isfinite(hours):
        return "never"
    if hours > LONGEST_H:
        return f"over {LONGEST_H:.0f} h"
    return f"{HIGH.write(hours)} h"


def water_picture(test: SoakTest) -> list[str]:
    """Return a small picture of where the water of this hole went, 60 columns at most."""
    if test.band is Band.NO_FALL:
        return []
    walls = round(100 * test.side_share)
    pad = " " * 18
    return [
        pad + "│                    │",
        pad + "│≈≈≈≈≈≈ water ≈≈≈≈≈≈≈│",
        f"{'walls all round':>15} ←─│                    │─→",
        f"{f'{walls} %':>15} ←─│                    │─→",
        pad + "└────────────────────┘",
        pad + "    ↓     ↓     ↓",
        pad + f"    bottom {100 - walls} %",
    ]


def why_narrow(test: SoakTest, metric: bool) -> str:
    """Say why this hole fell faster than the floor of a garden would."""
    if test.band is Band.NO_FALL:
        return "The water did not fall, so there is nothing to say about walls and bottom."
    walls = round(100 * test.side_share)
    last = ", here from the last three readings" if test.corrected < test.corrected_all else ""
    return (
        f"The water fell {rate_words(test.drop_rate, metric)} (the drop rate), but {walls} % of it "
        "left sideways, through the walls. A hole is narrow and has much wall. A garden is wide, "
        "and nearly all its water leaves through the floor. Through the bottom alone the soil "
        f"takes {rate_words(test.corrected, metric)} (the corrected rate{last}). A pond on this "
        "soil would fall about that fast."
    )


CORRECTED_MEANS = (
    "Corrected rate: how fast the bottom alone takes water, as the floor of a garden would. The "
    "water that left through the walls is not counted."
)
"""Stands where a table of readings is met first."""


def trend_words(test: SoakTest) -> str:
    """Say which way the rate is going, and how sure that is."""
    count = sum(row.valid for row in test.intervals)
    if test.trend is Trend.TOO_FEW:
        return f"Too few readings yet to tell whether the rate has settled ({count} that count)."
    apart = plain_number(100 * (test.deviation or 0.0), 2)
    within = plain_number(100 * SETTLED_WITHIN.value)
    head = f"the last three corrected rates are within {apart} % of their average"
    if test.settled_by_ruler:
        said = f"Settled: {head}, which is as close as your ruler can show."
    elif test.settled:
        said = f"Settled: {head} ({within} % is the limit)."
    else:
        way = {Trend.FALLING: "falling, so the soil is still getting wet", Trend.RISING: "rising"}
        said = (
            f"Not settled: {head} ({within} % is the limit), and they are "
            f"{way.get(test.trend, 'going up and down')}."
        )
    return f"{said} {_less_water(test)}".rstrip()


def _less_water(test: SoakTest) -> str:
    """Say why drops that get smaller do not speak against a settled rate."""
    last = [magnitude(row.drop_rate, "in/h") for row in test.intervals if row.valid][-3:]
    if not test.settled or not last[-1] < last[0]:
        return ""
    return (
        "The drops still get smaller, and they must: less water stands in the hole, so less wall "
        "is wet."
    )


def error_words(test: SoakTest, metric: bool) -> str:
    """Say how sure the corrected rate is: twice its standard uncertainty to each side."""
    unit = "mm/h" if metric else "in/h"
    rate, error = magnitude(test.corrected, unit), 2 * magnitude(test.standard_error, unit)
    low = LOW.write(max(0.0, rate - error))
    high = HIGH.write(rate + error)
    return (
        f"As well as a ruler and a tape can tell, the corrected rate is between {low} and {high} "
        f"{unit}: two standard errors (likely errors of measuring) to each side. Soil a few steps "
        "away may differ more than that."
    )


def texture_words(check: TextureCheck, metric: bool) -> str:
    """Say whether the tested rate goes with the soil as it felt."""
    table = show(check.published, "mm/h" if metric else "in/h")
    said = f"By feel it is {check.texture.value}; a table gives {table}"
    if not check.far_apart:
        return f"{said}, which agrees with the test."
    if check.times > 1:
        return (
            f"{said}, and the test is {plain_number(check.times, 2)} times that. Look again: water "
            "may leave along roots, cracks or an animal's tunnel."
        )
    return (
        f"{said}, and the test is far below it. Look again: a smeared wall, packed ground or a "
        "hard layer may hold the water back."
    )


def choices(
    drop: Quantity, corrected: Quantity, cap: Quantity | None, metric: bool
) -> list[tuple[DepthRule, PondDepth]]:
    """Return what each of the three rules for the depth would give."""
    step = METRIC if metric else US
    return [
        (rule, pond_depth(drop, corrected, rule=rule, cap=cap, step=step)) for rule in DepthRule
    ]


RULE_WORDS = {
    DepthRule.BOTH: "both checks",
    DepthRule.STRICT: "strict: corrected rate, 24 h",
    DepthRule.CUSTOM: "shortcut: drop alone, 24 h",
}


def depth_lines(
    drop: Quantity,
    corrected: Quantity,
    cap: Quantity | None,
    metric: bool,
    chosen: DepthRule | None = None,
) -> Iterator[str]:
    """Yield the depth each check allows and what each rule would give, lines under 76 columns."""
    found = choices(drop, corrected, cap, metric)
    both = found[0][1]
    yield f"Check 1, drop in the hole in 24 h:    {_deep(both.drop_limit, metric)} of pond"
    yield f"Check 2, corrected rate in 48 h:      {_deep(both.corrected_limit, metric)} of pond"
    yield f"{'  If the rule were':<31}{'pond':>8}  {'empty in':<15} set by"
    for rule, pond in found:
        mark = "*" if rule is chosen else " "
        by = "deepest wanted" if pond.governs is Governs.CAP else pond.governs.value
        yield (
            f"{mark} {RULE_WORDS[rule]:<29}{_deep(pond.depth, metric):>8}  {_span(pond):<15} {by}"
        )
    if chosen is not None:
        yield "* the rule you chose"
    if found[2][1].caution:
        yield "The shortcut alone would leave water standing for more than 48 h here."


def _span(pond: PondDepth) -> str:
    if magnitude(pond.depth, "in") == 0:
        return "-"
    soonest = _hours(pond.soonest_empty).removesuffix(" h")
    return f"{soonest} to {_hours(pond.latest_empty)}"


def holes_lines(holes: Sequence[HoleReport], both: CombinedRate, metric: bool) -> Iterator[str]:
    """Yield a line for each hole with its rates, and which one governs and why."""
    unit = "mm/h" if metric else "in/h"
    yield f"{'hole':<26}{'drop ' + unit:>12}{'corrected ' + unit:>18}"
    for hole in holes:
        if hole.test is None:
            continue
        drop, rate = (
            rate_words(one, metric).removesuffix(f" {unit}")
            for one in (hole.test.drop_rate, hole.test.corrected)
        )
        note = "  set aside" if hole.set_aside else governs_mark(hole, both)
        yield f"{foreign.shown(hole.name)[:25]:<26}{drop:>12}{rate:>18}{note}"
    yield governs_words(both)


def governs_mark(hole: HoleReport, both: CombinedRate) -> str:
    """Return a mark where the corrected rate of ``hole`` is the one that governs."""
    same = hole.counts and hole.test is not None and hole.test.corrected == both.corrected
    return "  used" if same else ""


def governs_words(both: CombinedRate) -> str:
    """Say which hole governs and why."""
    if math.isinf(both.spread):
        apart = "one takes water and another none"
    else:
        apart = f"the fastest is {plain_number(both.spread, 2)} times the slowest"
    if both.rule is HolesRule.ONLY:
        return "Only one hole counts, so the plan uses its rate."
    if both.rule is HolesRule.SLOWEST:
        return (
            "Of two holes the plan uses the slower, because nothing shows which one is right; "
            f"{apart}."
        )
    return (
        "Of three or more holes the plan uses the middle rate, so one odd hole does not decide; "
        f"{apart}."
    )
