"""Distances to keep from buildings, lines, wells and the rest."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from types import MappingProxyType
from typing import NamedTuple

from interview.garden.site.locating import DEFAULT_ZONE_SOURCE
from interview.quantities.evidence import MEMORY, Brief, Finding, Grade, Provenance, Source
from interview.quantities.guards import not_negative, positive, reaches
from interview.quantities.records import record
from interview.quantities.units import (
    Quantity,
    feet_and_inches,
    magnitude,
    plain_number,
    quantity,
    round_down,
    round_up,
)

NEARER_THAN_CAUTIOUS = ": far enough, but under the cautious distance."
"""How a distance ends that is kept, and is under the cautious one."""


class Distance(NamedTuple):
    """One distance as each session shows it; the metric one is its own round number."""

    feet: float
    meters: float

    def shown(self, metric: bool) -> Quantity:
        """Return the distance in the unit of the session."""
        return quantity(self.meters, "m") if metric else quantity(self.feet, "ft")


@record
class Setback:
    """A distance to keep between the garden and something in the yard."""

    key: str
    words: str
    usual: Distance
    """The distance to keep when no local rule is known."""
    cautious: Distance
    below: Grade
    """What it means to be nearer than ``usual``."""
    source: Source
    cautious_source: Source
    stop_under: Distance | None = None
    """Nearer than this it is a stop, whatever ``below`` says."""
    remedy: str = ""
    """What can be done besides moving."""
    measured_from: str = "The garden"
    move: str = "Move the hose {}, measure again"
    """What to do where it is too near, with the distance that is missing."""


_published = partial(Source, standing=Provenance.PUBLISHED)
_WSU = "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. 13"
_MPCA = (
    "Minimum setback requirements, Minnesota Stormwater Manual, Minnesota Pollution Control "
    "Agency, web page"
)
_UW = "Step 1: Sizing and Siting the Rain Garden, University of Wisconsin-Extension, web page"
_HANDOUT = (
    "Rain Gardens for the Disconnected Downspout, Portland area handout, undated, publisher not "
    "shown"
)
_PORTLAND = Source(_HANDOUT, Provenance.SECONDARY)
_SOUTHERN = (
    "Backyard rain gardens, NC Extension Master Gardener article, Brunswick Beacon; text compiled "
    "by Clemson Extension, 2009: 25 ft"
)

_ITEMS = (
    Setback(
        "foundation_deep", "the wall with a basement or crawl space",
        Distance(10, 3), Distance(20, 5), Grade.STOP, _published(_WSU),
        _published("Central Ohio rain garden program, web page: 10 to 20 ft"),
    ),
    Setback(
        "foundation_slab", "the building on a slab",
        Distance(10, 3), Distance(15, 4.5), Grade.FIX,
        _published(f"{_UW}: 10 ft, slab or not"), MEMORY,
        stop_under=Distance(5, 1.5),
        remedy=(
            "Between 5 and 10 ft (1.5 and 3 m) is allowed only where the ground falls away from "
            "the house."
        ),
    ),
    Setback(
        "septic", "the septic system, garden beside or below it",
        Distance(25, 7.5), Distance(50, 15), Grade.STOP,
        Source(_SOUTHERN, Provenance.SECONDARY), _published(_MPCA),
        remedy="Ask the health department where the tank, field and reserve field lie.",
    ),
    Setback(
        "septic_uphill", "the septic system, garden uphill of it",
        Distance(50, 15), Distance(100, 30), Grade.STOP, _published(_WSU), MEMORY,
        remedy="Ask the health department where the tank, field and reserve field lie.",
    ),
    Setback(
        "well", "the drinking-water well",
        Distance(50, 15), Distance(100, 30), Grade.STOP, _published(_MPCA),
        _published(f"{_MPCA}: 100 ft from a sensitive well"),
        remedy="Ask the health department.",
    ),
    Setback(
        "property_line", "the property line",
        Distance(5, 1.5), Distance(10, 3), Grade.FIX, _PORTLAND, _published(_MPCA),
    ),
    Setback(
        "pavement", "the sidewalk, driveway or road edge",
        Distance(3, 0.9), Distance(5, 1.5), Grade.FIX, _PORTLAND, MEMORY,
    ),
    Setback(
        "retaining_wall", "the retaining wall",
        Distance(3, 0.9), Distance(10, 3), Grade.FIX,
        Source(f"{_HANDOUT}: 3 ft; the wall's own height from memory", Provenance.SECONDARY),
        MEMORY,
    ),
    Setback(
        "tree", "the trunk of the large tree",
        Distance(10, 3), Distance(10, 3), Grade.FIX,
        _published(
            "Stormwater and your home, City of Mississauga, Ontario, web page: 3 m from trees; "
            f"{_UW}: not under a big tree"
        ),
        MEMORY,
        remedy="Or ask an arborist; a cut root thicker than a thumb can kill a tree.",
    ),
    Setback(
        "slope_crest", "the top of the steep slope",
        Distance(50, 15), Distance(200, 60), Grade.STOP, _published(_WSU),
        _published(f"{_MPCA}: 200 ft from the crest"),
        remedy="Or ask a geotechnical engineer.",
    ),
    Setback(
        "water", "the stream, lake or wetland",
        Distance(25, 7.5), Distance(100, 30), Grade.FIX, MEMORY, MEMORY,
        remedy="Ask about a permit.",
    ),
    Setback(
        "buried_line", "the nearest mark of a buried line",
        Distance(2, 0.6), Distance(10, 3), Grade.STOP,
        DEFAULT_ZONE_SOURCE,
        _published(
            "Pick the right location, CRC Watersheds Association, Pennsylvania, web page: 10 ft "
            "from utilities"
        ),
    ),
    Setback(
        "overflow_outlet", "the property line",
        Distance(10, 3), Distance(25, 7.5), Grade.FIX,
        _published("Village code of Kenilworth, Illinois, section 0-0-0-8028: 10 ft"),
        _published(
            "Village code of Kenilworth, Illinois, section 0-0-0-8028: 25 ft from a sidewalk"
        ),
        measured_from="The overflow's way",
        move="Lead the overflow {} farther away, measure again",
    ),
    Setback(
        "overflow_building", "the nearest building",
        Distance(10, 3), Distance(10, 3), Grade.STOP,
        _published(f"{_WSU}: 10 ft, there of the bed"),
        Source(
            "International Residential Code, section R401.3, undated, read in a second copy: 6 in "
            "of fall in the first 10 ft",
            Provenance.SECONDARY,
        ),
        remedy="The ground must fall away from the building: 6 in (150 mm) in 10 ft (3 m).",
        measured_from="The overflow's way",
        move="Lead the overflow {} farther away, measure again",
    ),
)  # fmt: skip

SETBACKS: Mapping[str, Setback] = MappingProxyType({item.key: item for item in _ITEMS})
"""Every setback by its key, in the order the yard is walked."""

FIND_PACE = "Walk a known length to find the length of your pace, or use a tape."

DRIP_LINE_MARGIN = Distance(5, 1.5)
"""How far past the drip line the cautious distance to a tree lies: from memory."""


def setback_limits(
    item: Setback,
    metric: bool = False,
    wall_height: Quantity | None = None,
    drip_line: Quantity | None = None,
) -> tuple[Quantity, Quantity]:
    """Return the usual and the cautious distance to keep.

    Lengths in, lengths out, in the unit of ``metric``. ``wall_height`` is the height of a
    retaining wall, which asks for that much too; ``drip_line`` the distance from a trunk to the
    edge of its crown. Neither makes the distance less than the table's. Raises ValueError for
    one below zero. Sources: those of ``item``; past the drip line ``DRIP_LINE_MARGIN``.
    """
    usual, cautious = item.usual.shown(metric), item.cautious.shown(metric)
    if item.key == "retaining_wall" and wall_height is not None:
        not_negative(wall_height, "ft", "The height of the wall must be zero or more.")
        usual = max(usual, wall_height)
    if item.key == "tree" and drip_line is not None:
        not_negative(drip_line, "ft", "The distance to the drip line must be zero or more.")
        usual = max(usual, drip_line)
        cautious = drip_line + DRIP_LINE_MARGIN.shown(metric)
    return usual, max(usual, cautious)


def left_of(measured: Quantity, reaches_out: Quantity) -> Quantity:
    """Return what is left of a distance once the garden reaches out beyond where it was measured.

    Both are lengths; nought at the least.
    """
    return max(measured - reaches_out, quantity(0.0, "ft"))


def setback_finding(
    item: Setback,
    measured: Quantity | None,
    local_rule: Quantity | None = None,
    metric: bool = False,
    wall_height: Quantity | None = None,
    drip_line: Quantity | None = None,
    paced: bool = False,
    reaches_out: Quantity | None = None,
) -> Finding:
    """Return what ``measured``, a distance, means beside what ``setback_limits`` asks.

    ``reaches_out`` is how far the garden reaches beyond the edge that was measured from; it is
    taken off.

    ``wall_height`` and ``drip_line`` are as there. Good at or past the usual distance, with a word
    about the cautious one; nearer, fix or stop as the item says. A ``local_rule`` replaces the
    usual and the cautious distance, and the finding says so. ``None`` for ``measured`` is a fix:
    not known yet, or ``paced`` and waiting for the pace. Raises ValueError for a distance below
    zero or a local rule that is not more than zero.
    """
    usual, cautious = setback_limits(item, metric, wall_height, drip_line)
    limit, source = usual, item.source
    told = f"usual {distance_words(usual, metric)}, cautious {distance_words(cautious, metric)}"
    if local_rule is not None:
        positive(local_rule, "ft", "Give a local rule of more than zero, or leave it empty.")
        limit = cautious = local_rule
        source = Source("local rule", Provenance.YOURS)
        told = f"your local rule, {distance_words(local_rule, metric)}, in place of the {told}"
    key = f"{item.key}_distance"
    if measured is None and paced:
        said = (
            f"The distance from {item.words} to {_start(item)} is in paces, and the length of the "
            "pace is not known yet."
        )
        return Finding(key, Grade.FIX, said, told, source, FIND_PACE)
    if measured is None:
        said = f"The distance from {item.words} to {_start(item)} is not measured yet."
        return Finding(key, Grade.FIX, said, told, source, "Measure it.")
    not_negative(measured, "ft", "A distance must be zero or more.")
    found = distance_words(measured, metric)
    said = f"{item.measured_from} is {found} from {item.words}"
    if reaches_out is not None and magnitude(reaches_out, "ft") > 1e-9:
        measured = left_of(measured, reaches_out)
        past = distance_words(reaches_out, metric, up=True)
        found = f"{distance_words(measured, metric)} left of {found}"
        said += (
            f", but the garden reaches up to {past} beyond the place you measured from, so only "
            f"{distance_words(measured, metric)} is left (lay it out again and measure)"
        )
    feet = magnitude(measured, "ft")
    needed = f"{distance_words(limit, metric)} needed"
    if local_rule is not None:
        needed += " by your local rule"
    if reaches(feet, magnitude(limit, "ft")):
        wide = "" if cautious <= limit else f", {distance_words(cautious, metric)} cautious"
        brief = Brief(f"Fine: {found}; {needed}{wide}.")
        return _far_enough(key, said, measured, cautious, told, source, metric, brief)
    more = distance_words(limit - measured, metric, up=True)
    brief = Brief(
        f"TOO NEAR: {found}, {needed}.",
        f"STOP here: {found} to {item.words}, {needed}.",
        item.move.format(more),
    )
    grade = _grade_below(item, feet, local_rule is not None, metric)
    change = f"Move it {more} farther away. {item.remedy}".rstrip()
    return Finding(key, grade, f"{said}: too near.", told, source, change, brief)


def _start(item: Setback) -> str:
    """Return where the distance is measured from, as it stands inside a sentence."""
    return item.measured_from[:1].lower() + item.measured_from[1:]


def _far_enough(
    key: str,
    said: str,
    measured: Quantity,
    cautious: Quantity,
    told: str,
    source: Source,
    metric: bool,
    brief: Brief,
) -> Finding:
    more = cautious - measured
    if reaches(magnitude(measured, "ft"), magnitude(cautious, "ft")):
        return Finding(key, Grade.GOOD, f"{said}: far enough.", told, source, brief=brief)
    change = (
        f"Move it {distance_words(more, metric, up=True)} farther away to meet the cautious "
        "distance too."
    )
    said = f"{said}{NEARER_THAN_CAUTIOUS}"
    return Finding(key, Grade.GOOD, said, told, source, change, brief._replace(near=True))


def _grade_below(item: Setback, feet: float, local: bool, metric: bool) -> Grade:
    if item.stop_under is None or local:
        return item.below
    floor = magnitude(item.stop_under.shown(metric), "ft")
    return item.below if reaches(feet, floor) else Grade.STOP


def distance_words(value: Quantity, metric: bool, up: bool = False) -> str:
    """Write a distance to half an inch or a centimetre.

    ``value`` is a length. A measured one is rounded down and a move ``up``, so that neither
    flatters.
    """
    turn = round_up if up else round_down
    if metric:
        return f"{plain_number(magnitude(turn(value, 0.01, 'm'), 'm'))} m"
    return feet_and_inches(turn(value, 1.0 if up else 0.5, "in"))
