"""Where published guides disagree: what each says, what it would mean here, and which is followed.

Nothing here decides anything: the plan's own numbers come from elsewhere.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from interview.garden.site.siting import SLOPE_GOOD, SLOPE_STOP, SLOPE_STOP_SLIDES
from interview.garden.site.slope import DEPTH_ROWS, Slope, table_depth
from interview.garden.size.size_factors import SIZE_FACTOR_TABLE, SIZE_ROW_WORDS, PublishedSize
from interview.garden.soak.depth import TOO_FAST_IN_H, DepthRule
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import not_negative, positive, reaches, within
from interview.quantities.shown import slope_words
from interview.quantities.units import Quantity, plain_number, quantity, show


def _published(title: str) -> Source:
    return Source(title, Provenance.PUBLISHED)


DRAWDOWN_HOURS: tuple[Cited[float], ...] = (
    Cited(
        24.0,
        _published("Iowa Stormwater Education Program and Colorado Stormwater Center, web pages"),
    ),
    Cited(36.0, _published("Maintaining Your Rain Garden, Clemson HGIC, 2016: act after 36 h")),
    Cited(
        48.0,
        _published("NebGuide G1758, University of Nebraska-Lincoln; Kitsap County, WA, app. G.3.1"),
    ),
    Cited(72.0, _published("North Carolina backyard stormwater practices guide, section 5.1")),
)
"""Longest time in which the water is to be gone."""

AREA_SHARES: tuple[Cited[float], ...] = (
    Cited(
        0.10, _published("Ellerbe Creek Watershed Association, Durham, North Carolina, web page")
    ),
    Cited(
        1 / 6,
        _published(
            "Rain garden design guide, University of Rhode Island and University of Connecticut, "
            "undated: area over 6 for 6 in of depth"
        ),
    ),
    Cited(
        0.20,
        Source(
            "Greentips, Union of Concerned Scientists, April 2009, as kept by Surfrider San Diego",
            Provenance.SECONDARY,
        ),
    ),
    Cited(0.30, _published("Upstream Matters, Georgia watershed guide, web page")),
)
"""Garden over the area that drains to it, whatever the soil."""

LEAST_RATES_IN_H: tuple[Cited[float], ...] = (
    Cited(0.25, _published("Rainscaping guide, Missouri Botanical Garden, web page")),
    Cited(0.3, _published("LID sample design, City of Los Angeles, web page")),
    Cited(
        1.0,
        Source(
            "Bioretention, Prince George's County, Maryland, undated, as quoted by folhc.org: the "
            "ideal",
            Provenance.SECONDARY,
        ),
    ),
)
"""Least rate at which the soil is to take water."""
OTHER_SLOPE_ROWS = Cited(
    ((1.0, 4.0, 4.0), (4.0, 8.0, 6.0), (8.0, 12.0, 8.0)),
    Source(
        "How to Build a Rain Garden, hand-out, undated, publisher not shown in the copy",
        Provenance.SECONDARY,
    ),
)
"""Another slope table: from and to percent, and the depth in inches."""

MM_AN_INCH = 25.0
"""For the round metric numbers told beside a printed table: a choice of this project."""

STEEPEST_PERCENT: tuple[Cited[float], ...] = (
    Cited(5.0, _published("Infiltration: design tips, Water Sensitive SA, web page")),
    Cited(
        10.0,
        _published(
            "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, "
            "p. 13; Rain gardens, Royal Horticultural Society, web page"
        ),
    ),
    Cited(
        12.0,
        Source(
            "Penn State Extension, 2019, 10 to 12 %, as told by PA Environment Digest, April 2019",
            Provenance.SECONDARY,
        ),
    ),
    SLOPE_STOP,
)
"""Steepest ground for a garden, in percent."""

DEPTHS_IN: tuple[Cited[tuple[float, float]], ...] = (
    Cited(
        (4.0, 8.0),
        _published(
            "Rain Gardens: A How-to Manual for Homeowners, GWQ037, UW-Extension and "
            "Wisconsin DNR, 2003"
        ),
    ),
    Cited(
        (6.0, 12.0),
        _published(
            "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013"
        ),
    ),
    Cited((0.0, 12.0), _published("Blue Thumb Guide to Raingardens, p. 12")),
    Cited((0.0, 18.0), _published("LID sample design, City of Los Angeles, web page")),
)
"""Depths of pond, from and to."""


class Saying(NamedTuple):
    """What one guide says, and what that would mean for this garden."""

    says: str
    here: str
    source: Source


class Guidance(NamedTuple):
    """One matter on which guides disagree."""

    key: str
    """A short lower-case name, stable between versions."""
    topic: str
    sayings: tuple[Saying, ...]
    followed: str
    """Which one the plan follows, one sentence or two."""

    def told(self, tell: Callable[[str], str]) -> Guidance:
        """Return the same matter with its sentences put into other words by ``tell``."""
        sayings = tuple(
            one._replace(says=tell(one.says), here=tell(one.here)) for one in self.sayings
        )
        return self._replace(sayings=sayings, followed=tell(self.followed))


_RULES = {
    DepthRule.BOTH: "The plan follows two limits at once: the drop in the hole over 24 h, and the "
    "corrected rate over 48 h.",
    DepthRule.STRICT: "The plan follows the strict rule you chose: the corrected rate over 24 h.",
    DepthRule.CUSTOM: "The plan follows the shortcut you chose: the drop in the hole over 24 h.",
}


def drawdown(rate: Quantity, rule: DepthRule, metric: bool = False) -> Guidance:
    """Return how deep a pond each published drain-down limit would allow at the corrected rate."""
    not_negative(rate, "in/h", "The soak rate cannot be below zero. Check the soak test.")
    unit = "mm" if metric else "in"
    sayings = tuple(
        Saying(
            f"gone in {plain_number(limit.value)} h",
            f"a pond of {show(rate * quantity(limit.value, 'h'), unit, 2, 'down')} through the "
            "bottom alone",
            limit.source,
        )
        for limit in DRAWDOWN_HOURS
    )
    return Guidance("drawdown", "How soon the water must be gone", sayings, _RULES[rule])


def sizes(
    drains_here: Quantity,
    published: PublishedSize | None,
    recommended: Quantity,
    metric: bool = False,
) -> Guidance:
    """Return the areas that shares and tables give beside the area that was worked out."""
    positive(drains_here, "ft**2", "No surface drains here yet, so add one first.")
    unit = "m**2" if metric else "ft**2"
    sayings = [
        Saying(
            f"{100 * share.value:.0f} % of what drains here",
            show(drains_here * share.value, unit, 2),
            share.source,
        )
        for share in AREA_SHARES
    ]
    if published is not None:
        low, high = (show(one, unit, 2) for one in (published.sandy, published.clayey))
        gap = "" if published.covered else " (no row covers this depth; the shallower one is used)"
        sayings.append(
            Saying(
                f"a factor by soil, {SIZE_ROW_WORDS[published.row]}{gap}",
                f"{low} on sand to {high} on clay",
                SIZE_FACTOR_TABLE,
            )
        )
    return Guidance(
        "size",
        "How large the garden must be",
        tuple(sayings),
        f"The plan follows none of these: it works out {show(recommended, unit, 2, 'up')} from the "
        "water that comes and the pond that holds it.",
    )


def slope_depths(slope: Slope) -> Guidance:
    """Return what two published tables of depth by slope say of this slope."""
    percent = slope.percent
    rows = OTHER_SLOPE_ROWS.value
    here = [row for row in rows if reaches(percent, row[0]) and within(percent, row[1])]
    depths = " or ".join(f"{row[2]:.0f} in ({row[2] * MM_AN_INCH:.0f} mm)" for row in here)
    return Guidance(
        "slope_depth",
        "How deep a garden by the slope of the ground",
        (
            Saying(
                "under 4 %, 5 to 7 %, 8 to 12 %: nothing for 4 to 5 % and 7 to 8 %",
                table_depth(slope),
                DEPTH_ROWS.source,
            ),
            Saying(
                "1 to 4 %: 4 in (100 mm), 4 to 8 %: 6 in (150 mm), 8 to 12 %: 8 in (200 mm)",
                f"{depths} for {slope_words(slope.fall)}"
                if depths
                else f"nothing for {slope_words(slope.fall)}",
                OTHER_SLOPE_ROWS.source,
            ),
        ),
        "The plan follows neither. The soil decides how deep the pond is, and the slope how deep "
        "you dig.",
    )


def steepest(slope: Slope) -> Guidance:
    """Return whether each published limit of slope lets a garden stand on this ground."""
    sayings = tuple(
        Saying(
            f"{plain_number(limit.value)} % or less",
            "this ground is flat enough"
            if within(slope.percent, limit.value)
            else "this ground is too steep",
            limit.source,
        )
        for limit in STEEPEST_PERCENT
    )
    return Guidance(
        "steepest",
        "How steep the ground may be",
        sayings,
        f"The plan follows the last: care past {SLOPE_GOOD.value:g} %, stop past "
        f"{SLOPE_STOP.value:g} %; past {SLOPE_STOP_SLIDES.value:g} % where the ground may slide.",
    )


def least_rates(
    corrected: Quantity, drop_rate: Quantity | None = None, metric: bool = False
) -> Guidance:
    """Return whether the soil meets each published least rate, in the hole and through the bottom.

    Guides seldom say which of the two they mean; a test in the hole is what most describe.
    """
    sentence = "The soak rate cannot be below zero. Check the soak test."
    bottom = not_negative(corrected, "in/h", sentence)
    hole = None if drop_rate is None else not_negative(drop_rate, "in/h", sentence)
    unit = "mm/h" if metric else "in/h"
    sayings = [
        Saying(
            f"{show(quantity(least.value, 'in/h'), unit, 2)} or more",
            _met(least.value, bottom, hole),
            least.source,
        )
        for least in LEAST_RATES_IN_H
    ]
    fast = quantity(TOO_FAST_IN_H.value, "in/h")
    sayings.append(
        Saying(
            f"not over {show(fast, unit, 2)}",
            "this soil is slower" if within(bottom, TOO_FAST_IN_H.value) else "this soil is faster",
            TOO_FAST_IN_H.source,
        )
    )
    return Guidance(
        "least_rate",
        "How fast the soil must take water",
        tuple(sayings),
        "The plan follows none of these as a limit: slower soil gets a shallower pond, down to 3 "
        "in (75 mm).",
    )


def _met(least: float, bottom: float, hole: float | None) -> str:
    if reaches(bottom, least):
        return "this soil meets it, through the bottom alone too"
    if hole is not None and reaches(hole, least):
        return "the drop in the hole meets it, the corrected rate does not"
    return "this soil does not meet it"


def pond_depths(depth: Quantity, metric: bool = False) -> Guidance:
    """Return whether the pond lies within each published range of depths."""
    sentence = "The pond must be deeper than zero."
    # Metric ponds are held against the round metric numbers told beside the printed inches.
    found = (
        positive(depth, "mm", sentence) / MM_AN_INCH if metric else positive(depth, "in", sentence)
    )
    unit = "mm" if metric else "in"
    sayings = []
    for span in DEPTHS_IN:
        low, high = (show(quantity(end, "in"), unit, 2) for end in span.value)
        inside = reaches(found, span.value[0]) and within(found, span.value[1])
        sayings.append(
            Saying(
                f"{low} to {high}" if span.value[0] else f"{high} or less",
                "this pond lies within" if inside else "this pond lies outside",
                span.source,
            )
        )
    return Guidance(
        "pond_depth",
        "How deep the pond may be",
        tuple(sayings),
        "The plan follows the soil and your own limit, and asks for an engineer over 12 in "
        "(300 mm).",
    )
