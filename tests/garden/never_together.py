"""What no plan may say, and what no plan may say together with something else.

Written with the eyes of a hydrologist, of who builds it, and of who gardens it afterwards.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import pairwise

from told_of_one import Complaints, Told, feet_of, flat

from interview.garden.planting.wetness import rating
from interview.garden.site import nearby_questions as nearby
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.garden.site.gate import gate_today
from interview.garden.site.locate import Cause
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.cover_questions import BERM_OUTSIDE, PLANT_SIZE
from interview.garden.size.zones import Zone
from interview.garden.summary import may_dig
from interview.quantities.units import magnitude

# What stands nowhere.

NOWHERE = {
    "a number that is none": r"\bnan\b|\binf\b|\bNone\b(?! of it drains)|-\.inf|\b1e[+-]?\d",
    "nought below nought": r"(?<![\w.])-0(?:\.0+)?(?![\w.])",
    "one of many": r"(?<![\d./:-] )(?<![\d./,:-])\b1 (?:bags|beds|plants|days|pieces|kinds|people|"
    r"loads|barrow-loads|holes|questions|things|answers|spots|surfaces|paces|clumps|drifts)\b",
    "many of one": r"\b(?:[2-9]|\d\d+) (?:bag|bed|plant|day|piece|kind|load|barrow-load)\b"
    r"(?! of \d| [a-z]+ly\b)",
    "nothing to buy": r"\b0 (?:bags|plants|pieces|loads|barrow-loads|beds|people|days)\b",
    "a word said twice": r"\b(?!had\b|that\b|no\b|in\b)([a-z]{2,}) \1\b",
    "points that meet": r"(?<!\.)\.\.(?!\.)|,\.|;\.|:\.|,,|;;| ,| ;|\(\)|\[\]",
    "a brace or a name of the program": r"\{[a-z_]*\}|<[a-z_]+ object|Grade\.|Zone\.",
}


def said_nowhere(told: Told) -> Complaints:
    """No text holds a number that is none, a plural of one, a word twice, points that meet."""
    for name, text in (*told.texts.items(), ("page", told.page_words)):
        prose = flat(without_drawings(text)) if name != "page" else text
        prose = re.sub(r"“[^”]*”", "“”", prose)  # what a person wrote, said back
        for what, pattern in NOWHERE.items():
            if name == "page" and what in ("a word said twice", "many of one"):
                # Its cells follow each other without a point.
                continue
            for at in re.finditer(pattern, prose):
                around = prose[max(0, at.start() - 40) : at.end() + 30]
                yield f"{name}: {what}: …{around}…"


def without_drawings(text: str) -> str:
    """A sheet without its drawings, sketches and tables, which are no sentences."""
    kept, drawn = [], False
    for line in text.splitlines():
        if re.match(
            r"(PLAN of|SECTION along|POND DEPTH|WATER LEFT|SHARE OF|DAYS OF|PLANTING SKETCH)", line
        ):
            drawn = True
        elif re.match(r"[A-Z][A-Z ,]+$", line):
            drawn = False
        if drawn or re.search(r"[─│┼╌░▒·~]|\S {3,}\S", line):
            kept.append("¶")
        else:
            kept.append(line)
    return "\n".join(kept)


def heads_lead_somewhere(told: Told) -> Complaints:
    """No heading or line that ends in a colon has nothing under it."""
    for name, text in told.texts.items():
        lines = text.splitlines()
        for at, (line, after) in enumerate(pairwise([*lines, ""])):
            if line.endswith(":") and not after.strip():
                yield f"{name}: nothing follows {line!r}"
            if re.fullmatch(r"-{4,}", line) and not "".join(lines[at + 1 : at + 3]).strip():
                yield f"{name}: an empty part {lines[at - 1]!r}"


_METRIC_UNIT = r"\d (?:mm|cm|m|m²|m³|L|kg|mm/h|L/s|°C)(?![\w²³/])"
_US_UNIT = (
    r"\d (?:in|ft|ft²|ft³|yd³|gal|gallons|lb|in/h|ft³/s|sq ft|cu ft|inch|inches|°F)(?![\w²³/])"
)
OTHER_UNITS_MAY = (
    "WHERE GUIDES DISAGREE", "SOURCES", "FORMULAS", "WORDS", "NOTES", "WHAT DRAINS HERE",
    "SHOPPING LIST", "CHEAPER WAYS", "WHAT RESTS ON MEMORY",
)  # fmt: skip
"""Parts that cite, or that tell what a person wrote in the units it was written in."""


def one_tape(told: Told) -> Complaints:
    """Where metric units are shown no other is; a US sheet has metric ones in brackets alone."""
    for name, text in told.texts.items():
        text = told.without(OTHER_UNITS_MAY, text)
        prose = flat(re.sub(r"\[[^\]]*\]", "", text))
        if told.metric:
            wrong = re.finditer(_US_UNIT, prose)
        else:
            wrong = re.finditer(_METRIC_UNIT, re.sub(r"\([^()]*\)", "", prose))
        for at in wrong:
            yield f"{name}: other units: …{prose[max(0, at.start() - 40) : at.end() + 20]}…"


# What is never said with something else.


OF_ANY_GARDEN = (
    "FORMULAS",
    "WHAT RESTS ON MEMORY",
    "SOURCES",
    "WORDS",
    "ASSUMED UNTIL YOU ANSWER",
    "WHERE GUIDES DISAGREE",
    "IF THE SOIL IS SLOW",
    "OPTIONS",
    "LEAN, USUAL, GENEROUS",
)


def _of_this_garden(told: Told, text: str) -> str:
    """A sheet without the parts that tell how any garden is worked out, or of other gardens."""
    return told.without(OF_ANY_GARDEN, text)


def never_both(told: Told) -> Complaints:
    """Pairs of sentences of which one makes the other false."""
    plan, texts = (
        told.plan,
        {"sheet": flat(_of_this_garden(told, told.short)), "card": flat(told.card)},
    )
    texts["working"] = flat(_of_this_garden(told, told.full))
    texts["page"] = told.page_words
    for name, text in texts.items():
        for one, other in PAIRS:
            if (a := re.search(one, text)) and (b := re.search(other, text)):
                yield f"{name}: {a[0]!r} and {b[0]!r}"
    sheet = texts["sheet"] + " " + texts["working"]
    for wanted, pattern, why in _by_answer(told):
        if not wanted and (at := re.search(pattern, sheet)):
            around = sheet[max(0, at.start() - 30) : at.end() + 50]
            yield f"{why}: …{around}…"
    if may_dig(plan).open and re.search(
        r"DO NOT DIG|No digging today|Digging is SHUT", " ".join(texts.values())
    ):
        yield "digging is open, and a page forbids it"


PAIRS = (
    (r"under water never", r"- Is under water for a few hours after a storm and then"),
    (r"Digging is OPEN", r"Digging is SHUT|SHUT: DO NOT DIG|Nothing may be dug today"),
    (r"[Nn]o problems found\.", r"\[(?:FIX|STOP)\]"),
    (r"TOO SMALL", r"Verdict: GOOD"),
    (r"No berm is needed", r"Build the berm|[Ss]od that is laid on the berm|outside of the berm"),
    (r"No berm is needed", r"crest of the berm|Crest of the berm|toe of the berm"),
    (r"The lawn is the rim", r"overflow notch|notch \d"),
    (r"the berm takes it all", r"To carry elsewhere"),
    (r"The soil you dig is just enough for the berm", r"berm soil:"),
    (r"\[ \] berm soil", r"The soil you dig (?:just )?makes the berm"),
    (r"never: no pond", r"Empties: +in "),
    (r"[Nn]o pipe that is sold|[Uu]se a channel instead", r"\[ \] pipe:"),
    (r"The plan has every answer", r"STILL TO FIND OUT"),
    (
        r"Write (?:6 in|150 mm)[^.]* as the deepest pond",
        r"make the pond deeper|allow a deeper pond",
    ),
    (r"soil can empty a pond of only", r"make the pond deeper|[Aa]llow a deeper pond"),
    (r"[Ss]end more roof", r"[Ss]end less (?:roof|water here, before)"),
    (r"[Mm]ake the pond shallower", r"make the pond deeper|allow a deeper pond"),
    (r"No pipe here", r"Connect the pipe last|by a buried pipe"),
    (r"digging will be shut", r"You mean to dig on [^.]*: the marks must still be good"),
    (r"[Mm]ake the bed smaller", r"[Ff]ind more room"),
    (r"DO NOT DIG|Digging is SHUT", r"Peg out, dig, plant and connect"),
    (r"[Aa]llow a deeper pond", r"- Shallower and larger:"),
)
"""Each is a fault where both stand on one page."""


def _by_answer(told: Told) -> Iterator[tuple[bool, str, str]]:
    """Yield whether an answer allows it, what is then said, and why it is absurd without."""
    plan = told.plan
    answers = plan.answers
    yield (
        bool(answers[bed.AMEND]),
        r"[Ww]ork in the compost|\] compost:|of compost\b",
        ("compost is not wanted"),
    )
    yield plan.earth.piped, r"\] pipe:|\bPipe: \d", "no pipe is laid"
    yield (
        plan.size.bed_count > 1,
        r"\beach bed\b|\bbeds, each\b|for all the beds|bed below",
        "one bed",
    )
    yield answers.get(site.CHILDREN) is not False, r"Small children use the yard", "no children"
    yield (
        answers.get(PLANT_SIZE) == "seed", r"\] seed of", "nothing is sown",
    )  # fmt: skip
    yield (
        answers.get(PLANT_SIZE) != "seed",
        r"step at the rim that holds|up to the rim: shredded|above it lay lifted sod",
        "the rim is sown, and no mulch lies there",
    )
    yield (
        answers[BERM_OUTSIDE] == "sod",
        r"Lay the lifted sod on it|stack it for the outside of the berm|laid back there",
        "no sod goes on the berm",
    )
    kidney = answers[shaping.FLOOR_SHAPE] == "kidney"
    yield kidney, r"hollow side is uphill|swing an arc", "no kidney"
    # The working tells of every spot looked at, not of the chosen one alone.
    near = [one.get(nearby.NEAR) for one in answers.items(ground.SPOTS.key)]
    if None not in near:
        for thing, words in (
            ("septic", r"the septic system: "),
            ("well", r"drinking-water well: "),
            ("basement", r"\b[Tt]he basement\b"),
        ):
            yield any(thing in one for one in near), words, f"no {thing} is near"
    yield (
        answers.get(bed.WATER_BY) != "lawn",
        r"\bchannel from the downspout\b",
        "no channel is laid",
    )
    spouts = told.numbers.get("spouts_here")
    yield (
        spouts != 0,
        r"\] elbow|\] strap|Connect the downspout|downspout last",
        "no downspout comes here",
    )
    gentler = answers[shaping.SIDE_SLOPE] > 2
    yield gentler, r"[Ss]teeper sides|sides steeper", "no side is steeper than 2:1"
    causes = set(gate_today(answers, plan.now.date()).causes)
    yield (
        causes != {Cause.PRIVATE},
        r"find out before you dig\. (?:In |Call |Ask )",
        "no service marks private lines",
    )
    yield (
        answers[bed.MULCH_DEPTH].m > 0,
        r"\] mulch:|Top up the mulch|\b0 (?:in|mm) of mulch|"
        r"step (?:at the rim |there )?that holds the mulch",
        ("there is no mulch"),
    )


def water_stands_and_all_is_well(told: Told) -> Complaints:
    """Where water stands over 48 hours, or in a worst case over 72, something is to be said."""
    n, plan = told.numbers, told.plan
    said = " ".join(one.said for one in plan.findings if one.asks)
    if n.get("storm_hours_on_floor", 0) > 48.5 and plan.verdict.value == "good":
        yield f"water stands {n['storm_hours_on_floor']:.0f} h and all is good"
    if n.get("empty_latest", 0) > 48.5 and plan.verdict.value == "good":
        yield f"the pond empties in {n['empty_latest']:.0f} h and all is good: {said}"
    held, wanted = n.get("rain_held"), plan.answers.text_at("rain_depth")
    if (
        held is not None
        and wanted
        and plan.verdict.value == "good"
        and n.get("storm_spill", 0) > 1e-3
    ):
        yield f"the storm to hold runs over by {n['storm_spill']:g} and all is good"


def plants_stand_where_they_live(told: Told) -> Complaints:
    """No plant of dry ground in long water, none of open water on the dry rim, none kept out."""
    plan = told.plan
    if "plants_total" not in told.numbers:
        return
    wishes = plan.planting.wishes
    hours = {zone.zone: magnitude(zone.site.hours, "h") for zone in plan.planting.chosen.zones}
    if not hours[Zone.FLOOR] >= hours[Zone.SIDE] >= hours[Zone.RIM]:
        yield f"the zones are not wet in their order: {hours}"
    for zone in plan.planting.chosen.zones:
        if zone.site.area.m < 0:
            yield f"the {zone.zone.value} has less than no ground"
        names = [pick.plant.scientific_name for pick in zone.picks]
        if len(names) != len(set(names)):
            yield f"a kind stands twice in the {zone.zone.value}"
        for pick in zone.picks:
            found = rating(pick.plant, wishes.list_region)
            code = found.name if found else ""
            excused = pick.against or pick.makeshift
            if code == "UPL" and hours[zone.zone] > 12 and not excused:
                wet = f"{hours[zone.zone]:.0f} h"
                yield f"{pick.plant.common_name} of dry ground stands {wet} in water"
            if code == "OBL" and zone.zone is Zone.RIM and hours[zone.zone] < 1 and not excused:
                yield f"{pick.plant.common_name} of open water stands on the dry rim"
            if pick.count < 1 and not zone.sown:
                yield f"{pick.count} of {pick.plant.common_name}"
            native = wishes.natives_only and wishes.region and not excused and not pick.plant.own
            if native and wishes.region not in pick.plant.regions:
                yield f"{pick.plant.common_name} is not native here"
            tall = wishes.rim_height if zone.zone is Zone.RIM else wishes.floor_height
            if (
                zone.zone is not Zone.SIDE
                and not excused
                and pick.plant.height_max_ft > magnitude(tall, "ft") + 1e-6
            ):
                yield f"{pick.plant.common_name} grows taller than is wanted"


def less_can_be_dug(told: Told) -> Complaints:
    """Nobody is told to dig less deep by more than is dug."""
    inches = {"in": 1.0, "mm": 1 / 25.4}
    dug = magnitude(told.plan.checks.dug_depth, "in")
    for at in re.finditer(r"Dig (?:(\d+) ft ?)?(?:([\d.]+) (in|mm) )?less deep", flat(told.short)):
        less = 12 * float(at[1] or 0) + float(at[2] or 0) * inches[at[3] or "in"]
        if less > dug:
            yield f"dig {less:.0f} in less deep, where {dug:.0f} in are dug"


def remedies_mend(told: Told) -> Complaints:
    """A bed that is advised for its slope is cut less deep uphill than the one that is too wide."""
    for one in told.plan.findings:
        then = re.search(r"Make it a floor of [^.]*?, cut (.+?) deep uphill", one.change)
        now = re.search(r"the cut uphill is (.+?) deep", one.said)
        if now and then and feet_of(then[1]) > feet_of(now[1]) - 0.04:
            yield f"{one.said} {one.change}"


def advice_can_be_followed(told: Told) -> Complaints:
    """What is to be done can be done: by its length, its weight, its day."""
    n, plan = told.numbers, told.plan
    foot = 0.3048 if told.metric else 1.0
    if "floor_width_drawn" in n and n["floor_width_drawn"] < 1.5 * foot:
        yield f"a floor of {n['floor_width_drawn']:g} is no wider than a spade or two"
    if (
        "deepest_dig" in n
        and n["deepest_dig"] > 48 * (25.4 if told.metric else 1)
        and plan.verdict.value == "good"
    ):
        yield f"digging {n['deepest_dig']:g} deep, and all is good"
    if (
        "crest_to_toe" in n
        and n["crest_to_toe"] > 18 * (25.4 if told.metric else 1)
        and plan.verdict.value != "stop"
    ):
        yield f"a berm of {n['crest_to_toe']:g}, and no stop"
    if (
        "notch_width" in n
        and "rim_length" in n
        and n["notch_width"] > n["rim_length"]
        and plan.verdict.value == "good"
    ):
        yield f"the notch {n['notch_width']:g} is wider than the garden, and all is good"
    if isinstance(n.get("days_one_slow"), int) and n["days_one_slow"] < n["days_two_slow"]:
        yield "two people take more days than one"
    if (
        isinstance(n.get("bank_elsewhere"), float)
        and n.get("soil_carried_off", 1) <= 0 < n["bank_elsewhere"]
    ):
        yield "a bank is made of no soil"
    past = re.search(r"The day you chose to dig: +.*\(past\)", told.short)
    if past and not re.search(r"To be dug on: .*\(past\)", told.card):
        yield "the card names a day to dig that is past as if it were to come"


CHECKS: tuple[Callable[[Told], Complaints], ...] = (
    said_nowhere,
    heads_lead_somewhere,
    one_tape,
    never_both,
    water_stands_and_all_is_well,
    plants_stand_where_they_live,
    less_can_be_dug,
    remedies_mend,
    advice_can_be_followed,
)
