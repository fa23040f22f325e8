"""Stage B: is the spot safe and legal to dig?"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from interview.asking.conditions import always_this, chosen, depth, distance, said_yes, ticked
from interview.asking.kinds import Choice, Count, Day, Note, Number, Several, Ticks, YesNo
from interview.asking.lands import land
from interview.asking.model import Answers, Group, Question, Stage
from interview.garden.place import questions as start
from interview.garden.site import locating_words as locating
from interview.garden.site import state_rules as notice
from interview.garden.site.cautions import LOCATE
from interview.garden.site.locating import CAREFUL, DEFAULT_BUSINESS_DAYS, Counted
from interview.garden.site.state_rules import ToleranceZone
from interview.quantities.evidence import OURS, Cited, Provenance, Source
from interview.quantities.units import Quantity, magnitude

YOUR_TICKET = Source("your ticket, or your own word", Provenance.YOURS)


def locating_service(answers: Answers) -> str:
    """Say whom to ask about buried lines where the garden is."""
    return locating.service(answers) or land(answers.country).service


def service_too(answers: Answers) -> dict[str, str]:
    """Word a question so that its caution names the locating service of the place."""
    return {"caution": f"{LOCATE} {locating_service(answers)}"}


_BUSINESS_DAYS = ("business days", "business day", "full business days", "working days")
LEVEL = tuple((word, (0.0, "in")) for word in ("level", "flat", "none", "no drop"))
NO_MARKS = tuple((word, (500.0, "ft")) for word in ("no marks", "no mark", "none"))
"""Where there is no mark the distance is the largest the question takes."""

_OUTLINE = (
    "Outline in white the test hole, the garden, the berm and the pipe route: all of it is digging."
)

LINES_REQUESTED: Question[str] = Question(
    key="lines_requested",
    label="Locate request",
    text="Have you asked to have the buried lines marked?",
    kind=Choice((("not_yet", "not yet"), ("asked", "yes, I have asked"))),
    why="Gas, power and cable lines can lie a hand deep. Hitting one can kill.",
    find_out="Ask the locating service of your country, or else each utility.",
    caution=LOCATE,
    more=_OUTLINE,
    wording=lambda a: _request_words(a),
)


def _request_words(answers: Answers) -> Mapping[str, Any]:
    colors = f"{_OUTLINE} Colors of the marks: {land(answers.country).paint}."
    asked = replace(LINES_REQUESTED, more=colors)
    return {
        **service_too(answers),
        "find_out": locating_service(answers),
        "more": colors,
        **locating.request_words(answers, asked),
    }


LINES_ASKED_ON = Question(
    key="lines_asked_on",
    label="Date of the locate request",
    text="On which day did you ask?",
    kind=Day(),
    why="The waiting time counts full business days after this day.",
    find_out="It is on the ticket or in your e-mail.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    objection=lambda day, a: (
        ("That day is still to come. Write the day on which you asked." if day > a.today else None)
        if a.today.year > 2000
        else None
    ),
)

LINES_TICKET = Question(
    key="lines_ticket",
    label="Ticket number",
    text="What is the ticket or reference number?",
    kind=Note(60, "2614-0399"),
    why="You quote it to renew the marks, and it belongs on the sheet you take outside.",
    find_out="The locate service gives it when you ask.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
)


def tolerance_zone(answers: Answers) -> ToleranceZone:
    """Return how near a mark only gentle hand digging may be, by the country and the state."""
    whole = answers.whole()
    return notice.tolerance_zone(whole.get(start.STATE) or "", whole.get(start.COUNTRY) or "us")


def near_a_mark(answers: Answers) -> str:
    """Say how near a mark only gentle hand digging may be."""
    words = tolerance_zone(answers).words(answers.metric)
    return f"Dig only gently, by hand, within {words} of any mark."


LINES_BUSINESS_DAYS: Question[int] = Question(
    key="lines_business_days",
    label="Business days to wait",
    text="How many full business days must you wait after asking?",
    kind=Count(1, 15, ("days", "day", *_BUSINESS_DAYS)),
    why="The marks are not complete before that.",
    find_out="It is on the ticket, which goes first. Most US states ask for 2 or 3; "
    f"{DEFAULT_BUSINESS_DAYS} are used when you don't know.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    default=locating.wait_offered,
    wording=lambda a: locating.wait_words(a, LINES_BUSINESS_DAYS),
)


def business_days(answers: Answers) -> int | None:
    """Return the business days to wait; ``None`` where only the ticket can tell them."""
    given = answers.get(LINES_BUSINESS_DAYS)
    offered = locating.wait_offered(answers)
    return given if given is not None or offered is None else int(offered)


def _holidays_offered(answers: Answers) -> str | None:
    return locating.holidays_offered(answers, answers.get(LINES_ASKED_ON), business_days(answers))


LINES_HOLIDAYS: Question[tuple[dt.date, ...]] = Question(
    key="lines_holidays",
    label="Holidays in the waiting time",
    text="Which public holidays fall in the waiting time?",
    kind=Several(Day(), 0, 20),
    why="A holiday is not a business day, so it makes the wait longer.",
    find_out="Look at a calendar. Write one date a line, or none.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    default=_holidays_offered,
    wording=lambda a: locating.holiday_words(
        a, a.get(LINES_ASKED_ON), business_days(a), LINES_HOLIDAYS
    ),
)

LINES_ANSWERED = Question(
    key="lines_answered",
    label="Every owner has answered",
    text="Has every owner named on the ticket marked its lines or said it has none there?",
    kind=YesNo(),
    why="Silence is not clearance: an owner who has not answered may still have a line there.",
    find_out="Check the ticket online or call the service and ask who has not answered.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    caution=LOCATE,
    wording=service_too,
)

LINES_FINISHED_ON = Question(
    key="lines_finished_on",
    label="Marks finished on",
    text="On which day was the last owner's answer in?",
    kind=Day(),
    why="Marks go stale. Their days are counted from here.",
    find_out="It is on the ticket's page. If you don't know, use the day you saw all the marks.",
    asks=said_yes(LINES_ANSWERED),
    when="every owner has answered",
    objection=lambda day, a: (
        "That is before you asked. Check one of the two dates."
        if (asked := a.get(LINES_ASKED_ON)) and day < asked
        else None
    ),
)

LINES_VALID_DAYS: Question[int] = Question(
    key="lines_valid_days",
    label="Days the marks stay good",
    text="For how many days do the marks stay good?",
    kind=Count(1, 60, ("days", "day")),
    why="After that you must ask again before you dig.",
    find_out="It is on the ticket, which goes first. Where neither you nor your state's rule says "
    f"more, {CAREFUL.days} {CAREFUL.counted.value} are used.",
    asks=said_yes(LINES_ANSWERED),
    when="every owner has answered",
    default=lambda a: str(locating.notice(a).marks.days),
    wording=lambda a: locating.life_words(a, LINES_VALID_DAYS),
)

COUNTED = {
    "working": Counted.FROM_MARKING,
    "calendar": Counted.CALENDAR,
    "from_request": Counted.FROM_REQUEST,
}
_COUNTED_KEYS = {counted: key for key, counted in COUNTED.items()}

LINES_VALID_KIND: Question[str] = Question(
    key="lines_valid_kind",
    label="How those days are counted",
    text="Are those working days, or days of the calendar?",
    kind=Choice(
        (
            ("working", "working days, from the day the marks were finished"),
            ("calendar", "calendar days, from the day you asked"),
            ("from_request", "from the day you asked, in working days"),
        )
    ),
    why="They can differ by a week.",
    find_out="The ticket says it, often as a last day.",
    asks=said_yes(LINES_ANSWERED),
    when="every owner has answered",
    default=lambda a: _COUNTED_KEYS[locating.notice(a).marks.counted],
    wording=lambda a: locating.read_words(a, LINES_VALID_KIND),
)


PRIVATE_LINES = Question(
    key="private_lines",
    label="Private lines",
    text="Are there lines of your own that the service does not mark?",
    kind=Choice(
        (
            ("none", "none, I am sure"),
            ("kept_clear", "yes, I know where they run and keep clear"),
            ("not_found", "maybe, I have not found out"),
        )
    ),
    why="Locators mark the utilities' lines, usually only to the meter.",
    find_out="Think of sprinklers, gas to a grill or pool, power to a shed or lights, a pet "
    "fence, septic pipes, propane, drains. Look for old drawings, or pay a private locator.",
    asks=chosen(LINES_REQUESTED, "asked"),
    when="the locate request was made",
    caution="Hand-dig gently near any line you know of. If you nick one, stop, go away and call.",
)

MARK_DISTANCE: Question[Quantity] = Question(
    key="mark_distance",
    label="Nearest mark to where you will dig",
    text="How far is the nearest painted mark or flag from anywhere you will dig? If there is none "
    "in the yard write no marks.",
    kind=replace(distance(500), said=NO_MARKS),
    why="A line may lie to either side of its mark, so a strip along it is not for digging.",
    find_out="Measure from the mark to the nearest edge of the garden, test hole or pipe route. "
    "If there is no mark in the yard write no marks: it then counts as 500 ft (150 m) off.",
    asks=said_yes(LINES_ANSWERED),
    when="every owner has answered",
    warns=near_a_mark,
    wording=lambda a: locating.read_words(a, MARK_DISTANCE),
)

_NEAR = (
    ("basement", "a building with a basement or crawl space", "foundation with a basement"),
    ("slab", "a building on a slab, with no basement", "building on a slab"),
    ("septic", "a septic tank or drain field", "nearest part of the septic system"),
    ("well", "a drinking-water well", "well"),
    ("property_line", "a property line", "property line"),
    ("pavement", "a walk, drive or road", "edge of the walk, drive or road"),
    ("retaining_wall", "a retaining wall", "retaining wall"),
    ("tree", "a large tree you want to keep", "trunk of the tree"),
    ("slope_crest", "the top of a bank or steep slope", "top of the bank"),
    ("water", "a stream, lake or wetland", "water's edge"),
)
"""What may be near a spot: key, words in the list, words in the question."""

LOCAL_RULES = Question(
    key="local_rules",
    label="Distances set by a local rule",
    text="For which of these do you know a distance that your local rules ask for?",
    kind=Ticks(tuple((key, name) for key, name, _ in _NEAR)),
    why="A local rule replaces the general distance, and the plan says so.",
    find_out="Ask the building, health or stormwater office. Answer none if you know of none.",
    default=always_this("none"),
    more="General distances come from rain garden guides of state universities and agencies, "
    "which do not agree with each other; local codes and licensed practice decide.",
)


def _local(key: str, words: str) -> Question[Quantity]:
    return Question(
        key=f"local_{key}",
        label=f"Local rule: {words}",
        text=f"What distance does your local rule ask for from the {words}?",
        kind=distance(above_zero=True),
        why="It replaces the general distance.",
        find_out="It is in the rule you know of.",
        asks=ticked(LOCAL_RULES, key),
        when=f"a local rule for the {words} is known",
    )


LOCAL: dict[str, Question[Quantity]] = {key: _local(key, words) for key, _, words in _NEAR}

SPOT_NAME = Question(
    key="spot_name",
    label="Name of the spot",
    text="What do you call this spot?",
    kind=Note(40, "back lawn"),
    why="You may record several spots and compare them.",
    find_out="Such as back lawn by the gate.",
    group="spots",
    default=lambda a: f"spot {a.scope[1]}" if a.scope else None,
)

STANDS = Question(
    key="stands_after_rain",
    label="Water stands after rain",
    text="After rain, does water stand at this spot for more than a day?",
    kind=Choice((("never", "never"), ("few", "a few times a year"), ("often", "often"))),
    why="A wet spot is a poor spot: standing water shows soil that will not drain.",
    find_out="Look a day after the next good rain.",
    group="spots",
)

NEAR = Question(
    key="near_spot",
    label="What is near the spot",
    text="Which of these are in the yard or next door, within about 200 ft (60 m)?",
    kind=Ticks(tuple((key, name) for key, name, _ in _NEAR)),
    why="Only the distances that matter for your yard are asked next.",
    find_out="Walk round the spot. Ask the health office for a drawing if there may be a septic "
    "system.",
    group="spots",
)


def _distance(key: str, words: str, caution: str) -> Question[Quantity]:
    return Question(
        key=f"{key}_distance",
        label=f"Distance to the {words}",
        text=f"How far is the {words} from the nearest edge of the garden?",
        kind=distance(),
        why="Water soaked in too close can do harm there, or is not allowed.",
        find_out="Measure level along the ground, to the rim of the garden and not its middle.",
        group="spots",
        asks=ticked(NEAR, key),
        when=f"{key} is ticked as near the spot",
        caution=caution,
    )


_NEAR_CAUTION = {
    "basement": "Keep the distance and watch the basement walls after the first storms.",
    "slab": "Keep the distance, with ground that falls away from the building.",
    "septic": "Never over or close to a septic system. Ask your health department.",
    "well": "Keep well back from a drinking-water well. Ask your health department.",
    "retaining_wall": "Wet soil pushes harder on a wall. Ask an engineer about a tall one.",
    "tree": "Cutting a root thicker than a thumb can kill or tip a tree. Ask an arborist.",
    "slope_crest": "Water soaked in near a bank can start a slide. Ask an engineer first.",
}
DISTANCES: dict[str, Question[Quantity]] = {
    key: _distance(key, words, _NEAR_CAUTION.get(key, "")) for key, _, words in _NEAR
}

SEPTIC_UPHILL = Question(
    key="septic_uphill",
    label="Garden uphill of the septic system",
    text="Is the spot uphill of the septic system?",
    kind=YesNo(),
    why="Water moves downhill under the ground too, so uphill needs twice the distance.",
    find_out="Look along the ground, or pour out a bucket and see. If unsure, say yes.",
    group="spots",
    asks=ticked(NEAR, "septic"),
    when="septic is ticked as near the spot",
    default=always_this("yes"),
)

WALL_HEIGHT = Question(
    key="wall_height",
    label="Height of the retaining wall",
    text="How high is the retaining wall?",
    kind=distance(50),
    why="Stay at least the wall's own height away from it.",
    find_out="Measure from the lower ground to the top of the wall.",
    group="spots",
    asks=ticked(NEAR, "retaining_wall"),
    when="retaining_wall is ticked as near the spot",
)

DRIP_LINE = Question(
    key="drip_line",
    label="Reach of the tree's branches",
    text="How far out from the trunk do the branches reach?",
    kind=distance(100),
    why="Most of the roots that matter are under the branches.",
    find_out="Stand under the tips of the branches and measure back to the trunk.",
    group="spots",
    asks=ticked(NEAR, "tree"),
    when="tree is ticked as near the spot",
)

SLOPE_RUN = Question(
    key="slope_run",
    label="Level length of the slope string",
    text="Stake a string from the uphill to the downhill edge of the spot and level it. How long "
    "is it?",
    kind=distance(100),
    why="The slope decides how deep to dig uphill and how high the berm is downhill.",
    find_out="Two stakes, a string and a line level. 10 to 15 ft (3 to 4.5 m) is a good length.",
    group="spots",
    objection=lambda run, _: "The string must be longer than zero." if run.m <= 0 else None,
    caution="Pushing a stake in is digging too. Until the lines are marked, stand the stakes in "
    "buckets of stones or use two chairs.",
)

SLOPE_DROP = Question(
    key="slope_drop",
    label="Drop at the downhill stake",
    text="How much lower is the ground at the downhill stake than at the uphill stake?",
    kind=replace(depth((-240, "in"), (240, "in")), said=LEVEL),
    why="Drop divided by run is the slope.",
    find_out="With the string level, measure from the string down to the ground at each stake; "
    "the difference is the drop. On flat ground write 0.",
    group="spots",
    objection=lambda drop, _: (
        "That is uphill. Swap the two stakes and write the drop without a minus."
        if drop.m < 0
        else None
    ),
)

DROPS_APART = Cited(0.5, OURS)
"""The two drops are doubted when they differ by more than this part of the larger one, and by more
than an inch."""


def _uneven_drops(turned: Quantity, answers: Answers) -> str | None:
    first = answers.get(SLOPE_DROP)
    if first is None:
        return None
    one, other = magnitude(first, "in"), magnitude(turned, "in")
    if abs(one - other) <= max(1.0, DROPS_APART.value * max(one, other)):
        return None
    return "The two drops differ widely. Look that the string is taut and level, and measure both."


SLOPE_TURNED = Question(
    key="slope_drop_turned",
    label="Drop with the level turned",
    text="Turn the level end for end on the string and level it again. What is the drop now?",
    kind=depth((0, "in"), (240, "in")),
    why="The average of the two takes out a level that reads crooked.",
    find_out="If you skip it, the first drop is used alone.",
    doubt=_uneven_drops,
    group="spots",
)

DOWNHILL = Question(
    key="downhill_direction",
    label="Downhill is toward",
    text="Which way is downhill?",
    kind=Choice(
        (
            ("n", "north"),
            ("ne", "northeast"),
            ("e", "east"),
            ("se", "southeast"),
            ("s", "south"),
            ("sw", "southwest"),
            ("w", "west"),
            ("nw", "northwest"),
            ("flat", "it is flat"),
        )
    ),
    why="It is drawn on the plan: the long side lies across it and the berm is downhill.",
    find_out="A phone has a compass.",
    group="spots",
)

WET_DEPTH = Question(
    key="wet_season_depth",
    label="Depth to wet-season water",
    text="How deep is it to water in the wet season, or to gray or rust-spotted soil?",
    kind=depth((0, "in"), (1200, "in")),
    why="There should be 2 ft (0.6 m) of drained soil below the dug bottom.",
    find_out="Ask a neighbor, read a well log or the soil survey, or look in the test hole. If "
    "none was seen, write the deepest you know to be dry.",
    group="spots",
)

ROCK_DEPTH = Question(
    key="rock_depth",
    label="Depth to rock",
    text="How deep is it to rock or a layer no spade goes through?",
    kind=depth((0, "in"), (1200, "in")),
    why="Water cannot soak into rock: there should be 2 ft (0.6 m) of soil below the dug bottom.",
    find_out="Neighbors, the soil survey, or the test hole once the lines are marked. If none "
    "was met, write how deep you know there is none.",
    group="spots",
    caution="Pushing a rod into the ground is digging too: only after the lines are marked.",
)

SLIDES = Question(
    key="unstable_ground",
    label="Unstable ground",
    text="Is there any slide, bluff or sinkhole nearby?",
    kind=Choice(
        (
            ("none", "none"),
            ("slides", "slides, or a bluff"),
            ("karst", "sinkholes or caves"),
        )
    ),
    why="Added water can start the ground moving.",
    find_out="Ask neighbors or the county; look for leaning trees and cracks.",
    group="spots",
    caution="On ground that may move an engineer decides, not this plan.",
)

SUN_HOURS = Question(
    key="sun_hours",
    label="Hours of sun in midsummer",
    text="How many hours of direct sun does the spot get on a summer day?",
    kind=Number(0, 16, tail=("hours", "hour", "hrs", "hr", "h", "hours a day", "hours of sun")),
    why="It chooses the plants.",
    find_out="Look at 9, 12, 3 and 6 o'clock on a clear day.",
    group="spots",
    default=always_this("5"),
)

CONTAMINATION = Question(
    key="contamination",
    label="What the ground has been",
    text="Has this ground ever been any of these?",
    kind=Ticks(
        (
            ("fuel", "a fuel tank or a spill"),
            ("paint", "under old painted walls, before 1978"),
            ("orchard", "an orchard"),
            ("industry", "a repair shop, industry or rail"),
            ("dump", "a place for dumping or burning"),
        )
    ),
    why="Soaking water carries old pollution down.",
    find_out="Ask former owners and neighbors; look at old maps or photographs.",
    group="spots",
    caution="Where pollution is suspected do not dig and do not soak water in. Near old painted "
    "walls the soil may hold lead.",
)


def _suspected(answers: Answers) -> bool:
    ticks = answers.get(CONTAMINATION)
    return bool(ticks)


SOIL_LAB = Question(
    key="soil_lab",
    label="Soil test for pollution",
    text="What did a laboratory test of that soil say?",
    kind=Choice(
        (
            ("clear", "below the limits"),
            ("above", "above the limits"),
            ("not_tested", "not tested"),
        )
    ),
    why="Only a test can tell.",
    find_out="A university extension office can name a laboratory.",
    group="spots",
    asks=_suspected,
    when="the ground may be polluted",
)

OVERFLOW_TO = Question(
    key="overflow_to",
    label="Where overflow goes",
    text="When the garden is full, where will the extra water go?",
    kind=Choice(
        (
            ("own_lawn", "over my own lawn"),
            ("street", "to the street or a roadside swale"),
            ("drain", "to a drain inlet"),
            ("neighbour", "toward a neighbor"),
            ("building", "back toward a building"),
            ("bank", "over a steep bank"),
            ("undecided", "not decided yet"),
        )
    ),
    why="Every garden overflows sometimes. It must do so at a place you choose.",
    find_out="Pour out a bucket at the downhill edge and follow the water.",
    group="spots",
    caution="Overflow must stay clear of buildings, neighbors and walks that ice over.",
)

ANOTHER_SPOT = Question(
    key="another_spot",
    label="Another spot",
    text="Do you want to record another spot to compare?",
    kind=YesNo(),
    why="If one spot fails, another may do.",
    find_out="Answer no to go on; you can come back.",
    group="spots",
    default=always_this("no"),
)

SPOTS = Group(
    "spots",
    "spot",
    (
        SPOT_NAME,
        STANDS,
        NEAR,
        DISTANCES["basement"],
        DISTANCES["slab"],
        DISTANCES["septic"],
        SEPTIC_UPHILL,
        DISTANCES["well"],
        DISTANCES["property_line"],
        DISTANCES["pavement"],
        DISTANCES["retaining_wall"],
        WALL_HEIGHT,
        DISTANCES["tree"],
        DRIP_LINE,
        DISTANCES["slope_crest"],
        DISTANCES["water"],
        SLOPE_RUN,
        SLOPE_DROP,
        SLOPE_TURNED,
        DOWNHILL,
        WET_DEPTH,
        ROCK_DEPTH,
        SLIDES,
        SUN_HOURS,
        CONTAMINATION,
        SOIL_LAB,
        OVERFLOW_TO,
    ),
    ANOTHER_SPOT,
    chosen="chosen_spot",
)

CHOSEN_SPOT = Question(
    key="chosen_spot",
    label="Spot chosen",
    text="Which spot will you use? Write its number.",
    kind=Count(1, 20, lead=("spot", "number", "no", "#")),
    why="The soak test and the plan are for this spot.",
    find_out="The plan so far shows what was found at each.",
    asks=lambda a: len(a.numbers("spots")) > 1,
    when="several spots are recorded",
    objection=lambda number, a: (
        None
        if number in a.numbers("spots")
        else "There is no spot with that number. The spots are numbered from 1."
    ),
    default=always_this("1"),
)

CHILDREN = Question(
    key="children",
    label="Small children in the yard",
    text="Are small children or pets ever in this yard?",
    kind=YesNo(),
    why="An open hole or a full pond is a danger to them, and some plants are poisonous.",
    find_out="Think of visitors and neighbors too. If unsure, say yes.",
    default=always_this("yes"),
    caution="A small child can drown in a very little water. Cover an open hole or fill it.",
)

PERMISSION = Question(
    key="permission",
    label="Right to dig here",
    text="Is this your own ground, or do you have written permission?",
    kind=Choice((("own", "my own"), ("written", "written permission"), ("no", "neither"))),
    why="Strips along the road, easements and rented ground need the owner's leave.",
    find_out="Your deed or plat shows easements and the right of way.",
)

RULES_CHECKED = Question(
    key="rules_checked",
    label="Permits and association rules",
    text="Have you asked about permits, association rules and easements?",
    kind=Choice(
        (
            ("not_needed", "asked: none needed"),
            ("granted", "asked: granted"),
            ("pending", "asked: waiting for an answer"),
            ("not_checked", "not asked yet"),
        )
    ),
    why="Some places rule on grading, on turning a downspout, or on tall plants.",
    find_out="Ask the building or planning office and the home association.",
)

STAGE = Stage(
    "site",
    "B",
    "May we dig here?",
    "Buried lines, distances, slope and ground: is the spot safe and legal?",
    (
        LINES_REQUESTED,
        LINES_ASKED_ON,
        LINES_TICKET,
        LINES_BUSINESS_DAYS,
        LINES_HOLIDAYS,
        LINES_ANSWERED,
        LINES_FINISHED_ON,
        LINES_VALID_DAYS,
        LINES_VALID_KIND,
        PRIVATE_LINES,
        MARK_DISTANCE,
        LOCAL_RULES,
        *LOCAL.values(),
        SPOTS,
        CHOSEN_SPOT,
        CHILDREN,
        PERMISSION,
        RULES_CHECKED,
    ),
    waits=lambda answers: answers.get(LINES_ANSWERED) is not True,
)


def chosen_spot(answers: Answers) -> Answers:
    """Return the answers as seen from the spot that was chosen."""
    numbers = answers.numbers("spots")
    wanted = answers.get(CHOSEN_SPOT) or (numbers[0] if numbers else 1)
    return answers.at("spots", wanted)


def holidays(answers: Answers) -> frozenset[dt.date]:
    """Return the holidays named in the locate questions."""
    days = answers.get(LINES_HOLIDAYS)
    return frozenset(days or ())


def assumed_holidays(answers: Answers) -> frozenset[dt.date] | None:
    """Return the holidays offered while none are named; ``None`` where none can be worked out."""
    if answers.get(LINES_HOLIDAYS) is not None:
        return frozenset()
    if _holidays_offered(answers) is None:
        return None
    days = answers[LINES_HOLIDAYS]
    return frozenset(days)


def counted(answers: Answers) -> Counted:
    """Return how the days of the marks are counted; a kind without a number decides nothing."""
    if answers.get(LINES_VALID_DAYS) is None:
        return locating.notice(answers).marks.counted
    return COUNTED[answers[LINES_VALID_KIND]]


def wait_gap(answers: Answers) -> Question[Any]:
    """Return the question whose answer the end of the wait is waiting for."""
    if answers.get(LINES_REQUESTED) != "asked":
        return LINES_REQUESTED
    if answers.get(LINES_ASKED_ON) is None:
        return LINES_ASKED_ON
    return LINES_HOLIDAYS if business_days(answers) is not None else LINES_BUSINESS_DAYS


def wait_source(answers: Answers) -> Source:
    """Return where the length of the wait comes from."""
    if answers.get(LINES_BUSINESS_DAYS) is not None:
        return YOUR_TICKET
    return locating.wait_source(answers)


def marks_source(answers: Answers) -> Source:
    """Return where the life of the marks comes from."""
    if answers.get(LINES_VALID_DAYS) is not None:
        return YOUR_TICKET
    return locating.notice(answers).marks_source
