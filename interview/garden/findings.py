"""Everything found about the spot and the garden, for the verdict."""

from __future__ import annotations

from collections.abc import Iterator
from math import fsum, isfinite
from typing import TYPE_CHECKING

from interview.asking import own_fault
from interview.asking.model import Unanswered
from interview.garden import gate
from interview.garden.afterwards import questions as review
from interview.garden.earth import earthwork, overflow
from interview.garden.place import questions as start
from interview.garden.planting.care import after_storm
from interview.garden.site import questions as site
from interview.garden.site import siting, surroundings
from interview.garden.site.slope import DEPTH_ROWS, table_depth
from interview.garden.site.surroundings import Owner, Rules
from interview.garden.size import basin
from interview.garden.size import questions as bed
from interview.garden.size.depth import CORRECTED_RATE_HOURS, Governs
from interview.garden.soak import questions as soak
from interview.garden.soak import words as soak_words
from interview.garden.soak.rates import SETTLED_WITHIN, Band
from interview.garden.soak.texture import RAWLS_1982
from interview.garden.storms.record_text import DOUBT
from interview.garden.survey import questions as survey
from interview.garden.survey.catchment import whole_roof_finding
from interview.quantities.evidence import (
    ARITHMETIC,
    OURS,
    PRACTICE,
    Finding,
    Grade,
    Source,
    Standing,
)
from interview.quantities.shown import (
    LOW,
    depth_words,
    length_words,
    rate_words,
    sides_words,
    water_words,
)
from interview.quantities.units import Quantity, magnitude, plain_number, quantity, ratio, show

if TYPE_CHECKING:
    from interview.garden.plan import Plan

LOCATE_SOURCE = Source(
    "Best Practices Guide, Common Ground Alliance, practices 5.19 to 5.23, web page",
    Standing.PUBLISHED,
)
OWN_RAIN = 1.5
"""A pond less than this many times the rain mostly catches its own: a choice of this project."""
SOIL_SLACK = 0.05
"""Part of the berm's soil that may be lacking without a word: a choice of this project."""
TWO_HOLES_APART = 2.0
"""Holes this many times apart are worth a further hole: a choice of this project."""


def all_findings(plan: Plan) -> Iterator[Finding]:
    """Yield every finding; a part of the plan that waits for an answer yields none."""
    for part in (*_SAFETY, *_WORTH):
        try:
            yield from part(plan)
        except Unanswered:
            continue
        except Exception as trouble:
            # What was not looked at may hide a stop.
            name = part.__name__.strip("_").replace("_", " ")
            own_fault.note(f"the check of {name}", trouble)
            where = own_fault.where(trouble)
            said = f"The check of {name} was not made, for a fault of the program ({where})."
            grade = Grade.STOP if part in _SAFETY else Grade.FIX
            change = "Do not dig or build by this plan until the fault is mended."
            yield Finding("own_fault", grade, said, "", OURS, change)


def _lines(plan: Plan) -> Iterator[Finding]:
    reasons = gate.dig_reasons(plan.answers, plan.now.date())
    dug = any(
        hole.get(soak.HOLE_DEPTH) is not None and not gate.cleared_before(hole)
        for hole in plan.answers.items("holes")
    )
    if not reasons:
        until = plan.dig_gate.stale_after
        said = "The buried lines are located and answered."
        limit = f"the marks are good until {until}" if until else ""
        yield Finding("buried_lines", Grade.GOOD, said, limit, LOCATE_SOURCE)
        return
    grade = Grade.STOP if dug and not plan.answers.get(site.LINES_ANSWERED) else Grade.FIX
    yield Finding(
        "buried_lines",
        grade,
        "Nothing may be dug today: " + " ".join(reasons),
        "every line located, every owner answered, marks not stale",
        LOCATE_SOURCE,
        "Do not dig, not even the test hole, until this is mended.",
    )


def _dig_day(plan: Plan) -> Iterator[Finding]:
    day = plan.answers.get(review.DIG_DAY)
    if day is None or day <= plan.now.date():
        return
    reasons = gate.dig_reasons(plan.answers, day)
    if reasons:
        yield Finding(
            "dig_day",
            Grade.FIX,
            f"On {day}, the day you mean to dig, digging will be shut: " + " ".join(reasons),
            "marks still good on the day of digging",
            LOCATE_SOURCE,
            "Choose another day, or ask for new marks in time for it.",
        )


def _chosen_spot(plan: Plan) -> Iterator[Finding]:
    chosen = site.chosen_spot(plan.answers)
    number = chosen.scope[1] if chosen.scope else 1
    for spot in plan.spots:
        if spot.number == number:
            yield from spot.findings
            if chosen.get(site.NEAR) is None:
                yield Finding(
                    "near_spot",
                    Grade.FIX,
                    "What lies near the spot is not known yet.",
                    "distances to buildings, septic parts, wells and the rest",
                    PRACTICE,
                    "Walk round it and answer the list.",
                )


def _permission(plan: Plan) -> Iterator[Finding]:
    answers = plan.answers
    owner = answers.get(site.PERMISSION)
    owners = {"own": Owner.OWN, "written": Owner.WRITTEN, "no": Owner.NO}
    yield surroundings.ownership_finding(owners[owner] if owner else None)
    asked = answers.get(site.RULES_CHECKED)
    rules = {
        "not_needed": Rules.CLEAR,
        "granted": Rules.CLEAR,
        "pending": Rules.PENDING,
        "not_checked": Rules.NOT_ASKED,
    }
    yield surroundings.permit_finding(rules[asked] if asked else None)
    yield surroundings.children_finding(answers.get(site.CHILDREN))


def _holes(plan: Plan) -> Iterator[Finding]:
    for view, hole in zip(plan.answers.items("holes"), plan.holes, strict=True):
        smell = view.get(soak.HOLE_SMELL)
        if smell in gate.BLOCKING_SMELLS:
            yield Finding(
                f"hole_{hole.number}_smell",
                Grade.STOP,
                f"{hole.name} smells of {smell}.",
                "no smell of gas, fuel or sewage",
                PRACTICE,
                "Stop, keep away, and call the utility or the health department.",
            )
        elif smell == "rotten_egg":
            yield Finding(
                f"hole_{hole.number}_smell",
                Grade.FIX,
                f"{hole.name} smells of rotten eggs: the soil has been wet for long.",
                "",
                PRACTICE,
                "Look for a higher spot.",
            )
        if view.get(soak.HOLE_SEEPS):
            yield Finding(
                f"hole_{hole.number}_seeps",
                Grade.STOP,
                f"Water seeps into {hole.name}: that is groundwater.",
                "2 ft (0.6 m) of drained soil below the dug bottom",
                siting.BELOW_FLOOR_FT.source,
                "Choose a higher spot, or dig less deep.",
            )
        yield from _test(plan, hole.number)
    combined = plan.soil.combined
    if combined is not None and combined.spread > TWO_HOLES_APART:
        yield Finding(
            "holes_apart",
            Grade.FIX,
            f"The fastest hole is {plain_number(combined.spread, 2)} times the slowest."
            if isfinite(combined.spread)
            else "One hole takes water and another takes none at all.",
            "within about a factor of two",
            OURS,
            "Test another hole where the marks allow it, or move toward the faster one.",
        )


def _test(plan: Plan, number: int) -> Iterator[Finding]:
    hole = next(one for one in plan.holes if one.number == number)
    test = hole.test
    if test is None:
        return
    if hole.set_aside:
        yield Finding(
            f"hole_{number}_set_aside",
            Grade.GOOD,
            f"{hole.name} is set aside and not used: {hole.set_aside}.",
            "",
            PRACTICE,
        )
        return
    fall = rate_words(test.drop_rate, plan.metric)
    alone = rate_words(test.corrected, plan.metric)
    said = f"{hole.name}: the water drops {fall}, by the bottom alone {alone}: {test.band.value}."
    bad = {Band.NO_FALL: Grade.STOP, Band.MARGINAL: Grade.FIX}
    yield Finding(
        f"hole_{number}_rate",
        bad.get(test.band, Grade.GOOD),
        said,
        "a pond of 10 in (250 mm) emptied in time by both checks drains well; less than 3 in "
        "(75 mm) is marginal",
        OURS,
        "Make the pond shallower, work in compost and test again, or choose another spot."
        if test.band in bad
        else "",
    )
    if not test.steady and len([row for row in test.intervals if row.valid]) >= 3:
        yield Finding(
            f"hole_{number}_settled",
            Grade.FIX if test.still_wetting else Grade.GOOD,
            f"{hole.name}: the rate has not settled yet.",
            "the last three intervals within 10 % of their average",
            SETTLED_WITHIN.source,
            "Take more readings; the soil may still be wetting.",
        )
    doubt = "" if hole.texture is None else soak_words.doubt(test, hole.texture, plan.metric)
    if hole.texture is not None and doubt and not hole.texture.far_apart:
        yield Finding(
            f"hole_{number}_texture",
            Grade.FIX,
            f"{hole.name}: {test.band.value} by its test, {hole.texture.texture.value} by feel.",
            "within a factor of two, or no worse by the table than by the test",
            RAWLS_1982,
            "Test another hole before you trust this one.",
        )
    if hole.texture is not None and hole.texture.far_apart:
        yield Finding(
            f"hole_{number}_texture",
            Grade.FIX,
            f"{hole.name}: {hole.texture.texture.value} by feel does not go with the rate tested.",
            "within a factor of ten of the table",
            RAWLS_1982,
            "Look again: roots, cracks or an animal's run make it fast; smeared walls slow.",
        )


def _by_drop(plan: Plan) -> str:
    if plan.soil.drop_rate is None:
        return ""
    unit = "mm" if plan.metric else "in"
    return f"{show(plan.depth.drop_limit, unit, 2, 'down')} by the drop and "


def _depth(plan: Plan) -> Iterator[Finding]:
    depth = plan.depth
    unit = "mm" if plan.metric else "in"
    if depth.too_shallow:
        yield Finding(
            "pond_depth",
            Grade.STOP,
            f"The soil empties only {show(depth.limit, unit, 2, 'down')} of pond in time.",
            "3 in (75 mm) of pond or more",
            OURS,
            "Work in compost and test again, find faster soil, or plant a wetland bed instead.",
        )
    if depth.caution:
        yield Finding(
            "custom_depth",
            Grade.FIX,
            "By the corrected rate this pond takes more than 48 hours to empty.",
            "empty within 48 hours through the bottom alone",
            CORRECTED_RATE_HOURS.source,
            "Choose both checks, or make the pond shallower.",
        )
    if depth.governs is Governs.CAP and not depth.too_shallow:
        yield Finding(
            "pond_depth",
            Grade.GOOD,
            f"The soil would empty {_by_drop(plan)}"
            f"{show(depth.corrected_limit, unit, 2, 'down')} by the corrected rate; your own "
            "limit decides.",
            "",
            OURS,
        )
    wanted = plan.answers[bed.DEEPEST_POND]
    if magnitude(depth.cap, "in") < magnitude(wanted, "in") - 1e-9:
        yield Finding(
            "pond_and_engineer",
            Grade.FIX,
            f"A pond of {show(wanted, unit, 3)} was wanted; the plan keeps to "
            f"{show(depth.cap, unit, 3)} until an engineer says it may be deeper.",
            "12 in (300 mm) without an engineer's word",
            OURS,
            "Ask an engineer, or write 12 in (300 mm) or less as the deepest pond wanted.",
        )
    if plan.answers[site.CHILDREN] and magnitude(depth.depth, "in") > 6 + 1e-9:
        yield Finding(
            "pond_and_children",
            Grade.FIX,
            "The pond is deeper than 6 in (150 mm) where small children may play.",
            "6 in (150 mm) is deep enough near small children",
            OURS,
            "Write 6 in (150 mm) as the deepest pond wanted, or fence the garden.",
        )


def _size(plan: Plan) -> Iterator[Finding]:
    if ratio(plan.garden.depth, plan.answers[start.RAIN_DEPTH]) < OWN_RAIN:
        yield Finding(
            "own_rain",
            Grade.FIX,
            "The pond is hardly deeper than the rain to hold, so the garden mostly catches its "
            "own rain and grows very large.",
            "a pond of one and a half times the rain, or more",
            OURS,
            "Hold less rain, allow a deeper pond, or send less roof here.",
        )
    share = plan.share_of_rain
    held = water_words(plan.rain_held, plan.metric, LOW)
    if share >= 1 - 1e-9:
        yield Finding(
            "rain_held", Grade.GOOD, f"The garden holds {held} of rain.", "the rain to hold",
            ARITHMETIC,
        )  # fmt: skip
    else:
        yield Finding(
            "rain_held",
            Grade.FIX,
            f"The garden as drawn holds {held} of rain, "
            f"{LOW.write(100 * share)} % of what was asked.",
            "the rain to hold",
            ARITHMETIC,
            "Find more room, steeper sides, a second garden, or send less roof here. A smaller "
            "garden still takes most of the year's rain.",
        )
    if plan.too_big and plan.room is not None:
        needed = plan.needed_basin
        yield Finding(
            "room",
            Grade.FIX,
            "The garden that is needed does not fit the room.",
            f"room {sides_words(plan.room.rim_length, plan.room.rim_width, plan.metric)}, needed "
            f"{sides_words(needed.rim_length, needed.rim_width, plan.metric)}",
            ARITHMETIC,
            "The plan draws what fits.",
        )
    if basin.split_advised(plan.garden.mid_area):
        yield Finding(
            "split",
            Grade.FIX,
            "One garden over 300 ft² (28 m²) is hard to keep level.",
            "100 to 300 ft² (10 to 28 m²) a garden",
            basin.SPLIT_ABOVE_FT2.source,
            "Answer 2 beds, side by side or one below the other; the ways out have their sizes.",
        )


def _earth(plan: Plan) -> Iterator[Finding]:
    yield earthwork.berm_finding(plan.earth, plan.metric)
    yield _berm_soil(plan)
    yield _uphill_side(plan)
    yield from _ground_taken(plan)
    said = table_depth(plan.slope)
    yield Finding("slope_and_depth", Grade.GOOD, said, "", DEPTH_ROWS.source)


def _uphill_side(plan: Plan) -> Finding:
    """Say how high the ground uphill stands; the floor is dug so that it holds the full pond."""
    garden, unit = plan.garden, "mm" if plan.metric else "in"
    fall = magnitude(plan.slope.fall, "percent") / 100
    reach = magnitude(plan.earth.uphill_depth, unit) / (1 - garden.side_slope * fall)
    high = depth_words(quantity(reach, unit), plan.metric)
    rim = magnitude(garden.rim_height, unit)
    key, limit = "uphill_side", "the rim is level all round, uphill too"
    said = f"The ground on the uphill side reaches {high} above the floor"
    if reach >= rim - 1e-6:
        return Finding(key, Grade.GOOD, f"{said}, as high as the rim.", limit, ARITHMETIC)
    low = depth_words(quantity(rim - reach, unit), plan.metric)
    return Finding(
        key,
        Grade.GOOD,
        f"{said}, {low} lower than the rim.",
        limit,
        ARITHMETIC,
        f"Carry the berm round the uphill side too, {low} high there, with a gap lined with stone "
        "where the water comes in.",
    )


def _berm_soil(plan: Plan) -> Finding:
    """Say whether the digging gives the soil of a berm that is level all round."""
    berm, unit = plan.level_berm, "m**3" if plan.metric else "ft**3"
    key, source = "berm_soil", earthwork.COMPACTION_SOURCE
    limit = "a berm level all round, uphill too, tamped to 0.9"
    if magnitude(berm.lacking, unit) > SOIL_SLACK * magnitude(berm.fill, unit):
        return Finding(
            key,
            Grade.FIX,
            f"A berm level all round takes {show(berm.fill, unit, 2, 'up')} of tamped soil; the "
            f"digging lacks {show(berm.lacking, unit, 2, 'up')} for it.",
            limit,
            source,
            "Bring that soil in, or set the rim lower; deeper, the overflow would lie under the "
            "lawn. Keep all the soil until the berm stands.",
        )
    return Finding(
        key,
        Grade.GOOD,
        "The soil you dig makes a berm level all round.",
        limit,
        source,
        "Keep all the soil until the berm stands.",
    )


def _ground_taken(plan: Plan) -> Iterator[Finding]:
    """Say where the berm does not fit the room beside the rim."""
    width = plan.answers.get(bed.ROOM_WIDTH)
    if width is None:
        return
    unit = "m" if plan.metric else "ft"
    berm = magnitude(plan.earth.berm_height, unit) * earthwork.OUTER_SLOPE
    berm += magnitude(plan.answers[bed.BERM_TOP], unit)
    taken = magnitude(plan.garden.rim_width, unit) + berm
    if taken <= magnitude(width, unit) * (1 + 1e-9):
        return
    yield Finding(
        "ground_taken",
        Grade.FIX,
        f"With its berm the garden reaches {length_words(quantity(taken, unit), plan.metric)} up "
        "and down the slope.",
        f"room of {length_words(width, plan.metric)}",
        ARITHMETIC,
        f"Leave {length_words(quantity(berm, unit), plan.metric)} downhill of the rim for the "
        "berm, or make the floor narrower.",
    )


def _water(plan: Plan) -> Iterator[Finding]:
    yield overflow.head_finding(plan.notch, plan.answers[bed.FREEBOARD], plan.metric)
    if plan.answers[bed.WATER_BY] == "pipe":
        yield overflow.pipe_finding(plan.pipe)


def _roofs_by_gutter(plan: Plan) -> list[tuple[Quantity, int]]:
    """Return the roof that drains here by each gutter, and its downspouts that come here.

    The roofs that fall on a roof go by its gutter.
    """
    gutters: dict[str, float] = {}
    spouts: dict[str, int] = {}
    leads: dict[str, str] = {}
    for area, view in zip(plan.catchment.surfaces, plan.answers.items("surfaces"), strict=True):
        if view[survey.SURFACE_KIND] == "roof":
            # The lower roof is always listed first, so its own gutter is known by now.
            below = survey.falls_on(view)
            leads[area.name] = gutter = leads.get(below, below) or area.name
            here = magnitude(area.drains_here, "ft**2")
            gutters[gutter] = gutters.get(gutter, 0.0) + here
            spouts.setdefault(gutter, survey.outlets_here(view))
    return [(quantity(area, "ft**2"), spouts[name]) for name, area in gutters.items()]


def _all_roofs(roofs: list[tuple[Quantity, int]]) -> tuple[Quantity, int]:
    area = fsum(magnitude(roof, "ft**2") for roof, _ in roofs)
    return quantity(area, "ft**2"), sum(spouts for _, spouts in roofs)


def _catchment(plan: Plan) -> Iterator[Finding]:
    house = plan.answers.get(survey.HOUSE_AREA)
    if house is not None:
        roofs = _roofs_by_gutter(plan)
        together = [_all_roofs(roofs)] if len(roofs) > 1 else []
        for roof, spouts in [*roofs, *together]:
            finding = whole_roof_finding(roof, house, spouts)
            if finding is not None:
                yield finding
    if plan.answers[survey.ROOF_HAZARD]:
        yield Finding(
            "roof_hazard",
            Grade.FIX,
            "Runoff from this roof may carry metals or moss killer.",
            "nothing to eat is grown in it",
            Source("Ask Extension, 2015: zinc strips; from memory for the rest", Standing.MEMORY),
            "Use another downspout, or grow nothing to eat here.",
        )


def _record(plan: Plan) -> Iterator[Finding]:
    if not plan.answers[start.HAS_RECORD]:
        return
    record = plan.record
    if record.doubt:
        yield Finding(
            "record_unit",
            Grade.FIX,
            record.doubt,
            "a year of rain between 4 and 200 in (100 and 5000 mm)",
            DOUBT,
            "Look at the heading of the file and answer the unit again.",
        )
    if record.bad_lines:
        first, count = record.bad_lines[0], len(record.bad_lines)
        many = (
            f"{count} lines of the rainfall file are"
            if count > 1
            else ("1 line of the rainfall file is")
        )
        yield Finding(
            "record_lines",
            Grade.GOOD,
            f"{many} not used, the first on line {first.line}: {first.why}",
            "",
            OURS,
            "Mend the lines named with the years of rain, or leave their days missing.",
        )


def _planting(plan: Plan) -> Iterator[Finding]:
    if found := plan.plant_file.finding():
        yield found
    yield from plan.planting.findings


def _after(plan: Plan) -> Iterator[Finding]:
    hours = plan.answers.get(review.STORM_EMPTY)
    if hours is not None:
        yield after_storm(hours)
    if plan.answers.get(review.STORM_OVERFLOW) == "elsewhere":
        yield Finding(
            "overflow_elsewhere",
            Grade.FIX,
            "Water left the garden somewhere other than the notch.",
            "the notch is the lowest place of the rim",
            PRACTICE,
            "Raise the rim there, or lower the notch, and check with a level.",
        )
    plants = plan.answers.get(review.STORM_PLANTS)
    if plants in ("drowned", "dry"):
        wetter = plants == "dry"
        yield Finding(
            "plants_after_storm",
            Grade.FIX,
            "Plants look drowned." if not wetter else "Plants look dry.",
            "each plant at the height that suits it",
            PRACTICE,
            "Move them lower, and water in the first year."
            if wetter
            else "Move them higher and see why the water stands.",
        )


_SAFETY = (_lines, _dig_day, _chosen_spot, _permission, _holes, _depth)
"""Checks that may stop the digging."""
_WORTH = (_size, _earth, _water, _catchment, _record, _planting, _after)
