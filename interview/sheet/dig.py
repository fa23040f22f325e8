"""Dig day, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from interview.asking.question import Unanswered
from interview.garden.afterwards import questions as review
from interview.garden.earth.materials import STONE_LAYER, stone_size_words
from interview.garden.earth.overflow import PipeFall, no_pipe_sold_finding, no_pipe_words
from interview.garden.earth.profile import level_lines, string_height
from interview.garden.earth.results import BANK
from interview.garden.pictures import levels, section_picture
from interview.garden.plan import Plan
from interview.garden.site import cautions
from interview.garden.site import lines_questions as buried
from interview.garden.site import spot_questions as ground
from interview.garden.size import questions as bed
from interview.garden.size.answered import in_a_row, is_mulched
from interview.garden.size.cover_questions import BERM_OUTSIDE, rim_sown
from interview.garden.soak import hole_questions as digging
from interview.garden.summary import may_dig, wrap
from interview.quantities.shown import depth_words, length_words
from interview.quantities.units import magnitude, quantity, show
from interview.reading import said_day
from interview.sheet.common import drawn, figure_lines, told_lines

SECTION_ROWS = 24
GREENED = {
    "sod": "Lay the lifted sod on it the same day.",
    "grass": "Sow grass on its top and its outside the same day.",
    "plants": "Plant its top and its outside as the rim.",
}
"""What to do with the berm as soon as it stands, by what grows there."""
TOLD_ABOVE = ("Dig from the old ground", "The berm stands")
"""Notes of the section that stand in words above it on the sheet."""


def dig(plan: Plan) -> Iterator[str]:
    """Yield whether to dig, what to dig, and the list for dig day."""
    yield from _may(plan)
    yield from _how_deep(plan)
    yield from figure_lines(
        plan,
        "floor_depth_governed_by",
        "soil_dug_total",
        "soil_loose",
        "barrow_loads",
        "crest_to_toe",
        "berm_soil",
    )
    yield from told_lines(plan, "berm_built", "berm_bank_soil", "sod_lifted", "sod_laid")
    yield from wrap("Sod that is not laid again rots to good soil, heaped grass side down.", "  ")
    yield from _surplus(plan, "soil_spare", "channel_soil", "soil_carried_off", "barrows_off")
    yield from _less_surplus(plan)
    yield ""
    drawing = section_picture(plan)
    notes = tuple(note for note in drawing.notes if not note.startswith(TOLD_ABOVE))
    yield from drawn(replace(drawing, notes=notes), SECTION_ROWS)
    yield ""
    yield from level_lines(levels(plan), plan.metric)
    yield ""
    yield from _water(plan)
    yield from figure_lines(plan, "peak_flow", "notch_head")
    yield ""
    yield from _day_list(plan)


def in_short(plan: Plan) -> Iterator[str]:
    """Yield what is needed of ``dig`` with the spade in hand: no section, no other ways."""
    yield from _may(plan, cited=False)
    yield from _how_deep(plan)
    yield from _surplus(plan, "channel_soil", "soil_carried_off", "barrows_off")
    yield ""
    yield from level_lines(levels(plan), plan.metric)
    yield ""
    yield from _water(plan)
    yield from _day_list(plan)


def _day_list(plan: Plan) -> Iterator[str]:
    for place, line in enumerate(cautions.dig_day(_day(plan)), 1):
        yield from wrap(f"[ ] {place:>2}. {plan.answers.told(line)}", "        ")


def _may(plan: Plan, cited: bool = True) -> Iterator[str]:
    """Yield first of all whether a spade may go in, until when, and how near to a mark."""
    now = may_dig(plan)
    if now.open:
        yield "Digging is OPEN: the lines are located, and every owner has answered."
    else:
        head = "STOP: do not dig here." if now.word == "STOP" else "Digging is SHUT today:"
        yield from wrap(f"{head} {' '.join(now.reasons)}", "  ")
    ticket = plan.answers.get(buried.LINES_TICKET)
    if ticket:
        yield from wrap(f"Locate ticket: {ticket}", "  ")
    yield from figure_lines(plan, "earliest_dig_day", "marks_stale_after")
    day = plan.answers.get(review.DIG_DAY)
    if day:
        past = " (past)" if day < plan.now.date() else ""
        yield from wrap(f"{'The day you chose to dig:':<46}{said_day(day)}{past}", " " * 46)
    source = f" [{buried.tolerance_zone(plan.answers).source}]" if cited else ""
    yield from wrap(
        f"Within {plan.site.tolerance} of a mark dig only gently, by hand; what your ticket says "
        f"goes before this.{source}",
        "  ",
    )


def _day(plan: Plan) -> cautions.DayCaution:
    try:
        berm = plan.earth.lie.crest_to_toe > 0
    except Unanswered:
        berm = True
    return cautions.DayCaution(
        plan.site.tolerance,
        plan.answers[bed.AMEND],
        plan.earth.pipe_fits,
        "10 mm" if plan.metric else "half an inch",
        berm,
        plan.earth.own_berm,
        plan.answers[BERM_OUTSIDE] == "sod",
        is_mulched(plan.answers),
        rim_sown(plan.answers),
        plan.answers.get(digging.RATE_FROM) != "report",
        plan.earth.spouts_here > 0,
        plan.earth.way == "channel",
    )


def _how_deep(plan: Plan) -> Iterator[str]:
    lie, metric = plan.earth.lie, plan.metric
    if plan.size.bed_count > 1:
        yield from wrap(
            f"{plan.size.bed_count} beds: the depths and the berm are of one bed; all the soil, "
            "the loads and the hours are of all."
        )
        if not in_a_row(plan.answers):
            yield from wrap(
                plan.answers.told(
                    "Share the water out evenly: where the way in forks set a level stone across "
                    "it, so that it runs over alike on both sides, or lead a downspout to each "
                    "bed. What lies past the fork is not on the shopping list."
                ),
                "  ",
            )
    yield from wrap(f"How it is set into the ground: {lie.form.value}", "  ")
    yield from wrap(
        "Before you dig, drive stakes outside the work and tie a second string to them, the level "
        "string, at the height of the "
        f"{'crest' if lie.crest_to_toe > 0 else 'lawn that is the rim'}: "
        f"{string_height(lie, metric)} where the floor's uphill edge will be. Every height is "
        "measured down from it.",
        "  ",
    )
    laid = lie.ground.mulch + lie.ground.compost
    up = depth_words(quantity(lie.deepest_dig, "ft"), metric)
    down = depth_words(quantity(lie.floor_below + laid, "ft"), metric)
    deep = f"{up} below the lawn"
    if up != down:
        deep += f" at the uphill edge, {down} at the downhill edge"
    mulched = is_mulched(plan.answers)
    mulch = depth_words(plan.answers[bed.MULCH_DEPTH], metric)
    layers = [f"{mulch} of mulch"] if mulched else []
    if plan.answers[bed.AMEND]:
        layers.append(f"{depth_words(plan.answers[bed.COMPOST_DEPTH], metric)} of compost")
    room = f" (this leaves room for {' and '.join(layers)})" if layers else ""
    sown = lie.ground.bare_rim
    sides = (
        f" Cut the sides {'up to the full pond ' if sown else ''}{mulch} below their finished "
        f"slope too, with an upright step {'there' if sown else 'at the rim'} that holds the "
        "mulch: no edging is needed."
    )
    bare = " Above it cut the rim to its finished slope: seed lies on bare soil." if sown else ""
    dug = f"{deep}{room}.{f'{sides}{bare}' if mulched else ''}"
    yield from wrap(f"Dig the floor level: {dug}", "  ")
    if plan.earth.rim_turfed:
        yield from wrap(
            "Lean, with mulch to the full pond only: above it lay lifted sod in the cut, its top "
            "level with the mulch, and set the plants of the rim into it.",
            "  ",
        )
    if lie.crest_to_toe <= 0:
        yield from wrap("No berm is needed: the lawn is the rim all round.", "  ")
        return
    high = depth_words(quantity(lie.crest_to_toe, "ft"), metric)
    yield from wrap(
        f"Build the berm, a low bank, on the downhill side: {high} from its crest to its outer "
        "foot at the highest, its crest level, running out to nothing at the uphill ends; none "
        "uphill. Roughen the ground under it, tamp it in thin layers, and build it a tenth higher "
        f"than it is to stand. {GREENED[plan.answers[BERM_OUTSIDE]]} Keep what stays bare "
        "under straw or a jute net until it is green.",
        "  ",
    )
    if not plan.earth.own_berm:
        yield from wrap(
            "Do not build the berm of the sand you dig: it leaks and washes out. Take the clay "
            "loam or silt on the shopping list.",
            "  ",
        )


def _surplus(plan: Plan, *keys: str) -> Iterator[str]:
    """Yield what is left over and carried off, by these figures."""
    if magnitude(plan.earth.carried_off, "ft**3") <= 0:
        yield from wrap(f"{'Left over for elsewhere:':<46}nothing: the berm takes it all", " " * 46)
        return
    yield from told_lines(plan, *keys)
    yield from wrap("Keep it off trunks, walls and the overflow's way.", "  ")


def _less_surplus(plan: Plan) -> Iterator[str]:
    """Yield the ways to carry off less than is left over."""
    if magnitude(plan.earth.carried_off, "ft**3") <= 0:
        return
    less = ("soil_spare_bare", "soil_spare_thin", "soil_spare_thin_bare", "soil_spare_winged")
    ways = list(told_lines(plan, *less))
    if ways:
        yield from wrap("Less is left over, before it swells, if it is built otherwise:", "  ")
        yield from ways
    bank = list(told_lines(plan, "bank_elsewhere"))
    if bank:
        high, top = (depth_words(quantity(*one), plan.metric) for one in BANK[plan.system])
        yield from wrap(
            f"Or shape it elsewhere on your ground: a bank {high} high, {top} across its top, its "
            "sides 3:1, sown, where no water runs:",
            "  ",
        )
        yield from bank


def _water(plan: Plan) -> Iterator[str]:
    """Yield how the water gets in, over the notch or the lip, and where it goes then."""
    metric, made, garden = plan.metric, plan.earth.notch, plan.size.garden
    wide, full = length_words(made.width, metric), depth_words(garden.depth, metric)
    if made.lip:
        yield from wrap(
            f"The lawn is the rim. On the side where the overflow is to leave, cut a level lip "
            f"{wide} wide, {depth_words(garden.freeboard, metric)} below the lawn and {full} above "
            "the finished floor, of sod or stone.",
            "  ",
        )
        yield from wrap("Lay a pad of stone where the water comes in.", "  ")
    else:
        yield from wrap(
            f"Cut the overflow notch {wide} wide, downhill or at an end where the ground falls "
            f"away: the top of its stone lies {full} above the finished floor, on a sill of tamped "
            "soil. Loose stone alone would leak.",
            "  ",
        )
        long, across = (
            length_words(side, metric) for side in (plan.earth.apron_length, made.width)
        )
        thick = quantity(*STONE_LAYER[plan.system].value)
        yield from wrap(
            f"Lay stone from the notch over the top and down the outside of the berm to a little "
            f"beyond its foot: {long} long, {across} wide and {depth_words(thick, metric)} thick, "
            f"{stone_size_words(metric)}, set in so that its top is level with the ground beside "
            "it; lay a pad of stone where the water comes in too.",
            "  ",
        )
    if plan.earth.swale is not None:
        yield from wrap(
            "The lawn downhill lies higher than the notch: lead the overflow out in a grass swale "
            f"{length_words(plan.earth.swale, metric)} long.",
            "  ",
        )
    yield from wrap(_goes(plan), "  ")
    yield from wrap(
        plan.answers.told(
            "All the way it must stay 10 ft (3 m) or more from every building, on ground that "
            "falls away from it, 6 in (150 mm) in the first 10 ft (3 m)."
        ),
        "  ",
    )
    if plan.earth.piped:
        yield from _pipe(plan)


def _goes(plan: Plan) -> str:
    spot = ground.chosen_spot(plan.answers)
    goes = spot.get(ground.OVERFLOW_TO)
    what = "lip" if plan.earth.notch.lip else "notch"
    if goes is None or goes == "undecided":
        end = "it is not decided where: choose a way that harms nobody before you dig"
    else:
        end = ground.OVERFLOW_TO.kind.echo(goes, spot)
    if plan.storms.beds.in_series:
        return f"From each {what} the water runs to the bed below; from the last {end}."
    return f"From the {what} the water goes {end}." if goes else f"From the {what}, {end}."


_IN_ITS_PLACE = (
    "The stone, the soil and the hours of this plan are for the stone channel; one of grass takes "
    "none of them."
)


def _pipe(plan: Plan) -> Iterator[str]:
    """Yield the size of the pipe and where it comes out, or why there is none."""
    choice, metric = plan.earth.pipe_size, plan.metric
    flow = "L/s" if metric else "ft**3/s"
    came = show(plan.earth.roof_flow, flow, 3, "up")
    if choice.width is None:
        said = no_pipe_sold_finding(plan.earth.roof_flow, metric).said.rstrip(".")
        yield from wrap(f"{said}: use a channel. {_IN_ITS_PLACE}", "  ")
        return
    try:
        fall: PipeFall | None = plan.earth.pipe
    except Unanswered:
        fall = None
    if fall is not None and not fall.enough:
        yield from wrap(f"{no_pipe_words(fall, metric)} {_IN_ITS_PLACE}", "  ")
        return
    steep = "11 mm to the meter" if metric else "1/8 in to the foot"
    yield from wrap(
        f"Pipe: {depth_words(choice.width, metric)} inside, smooth, falling {steep} or more, "
        f"carries {show(choice.smooth, flow, 3, 'down')} when full, and {came} comes at the peak. "
        f"Corrugated, it carries {show(choice.corrugated, flow, 3, 'down')}.",
        "  ",
    )
    deep = plan.answers.told("6 in (150 mm)")
    yield from wrap(
        f"Keep {deep} of soil over it. It comes out in the open before the bed: stone from there "
        "to the floor.",
        "  ",
    )
    if fall is not None:
        yield from wrap(
            f"Fall of the ground it needs: {show(fall.needed, 'mm' if metric else 'in', 3, 'up')}; "
            f"there is: {depth_words(fall.available, metric)}.",
            "  ",
        )
