"""Stage D: how much hard surface drains to the garden."""

from __future__ import annotations

from interview.calc.pacing import Pace, calibrate, pace_findings
from interview.kinds import Choice, Count, Measure, Note, Number, Pitch, Several, YesNo
from interview.model import Answers, Group, Question, Stage, Unanswered
from interview.piece_lines import PieceLine, Pieces
from interview.questions.ask import always_this, both, chosen, distance
from interview.questions.shapes import check_pieces
from interview.reading import Refused
from interview.units import Quantity

ROOF_CAUTION = "Measure roofs from the ground. No ladder near power lines."

MEASURED_BY = Question(
    key="measured_by",
    label="How lengths are measured",
    text="Will you measure with a tape alone, or pace some lengths?",
    kind=Choice((("tape", "tape alone"), ("paces", "paces, or both"))),
    why="Paces are fine once your pace is known; the plan carries their error honestly.",
    find_out="A tape is best up to its length; paces are quick for the rest.",
    default=always_this("tape"),
)

_PACING = chosen(MEASURED_BY, "paces")

WALKER_NAME = Question(
    key="walker_name",
    label="Who paces",
    text="Whose pace is this?",
    kind=Note(30),
    why="Two people have two paces. A length is then written as 15 paces Ann.",
    find_out="A first name or initials.",
    group="walkers",
    asks=_PACING,
    when="some lengths are paced",
    default=lambda a: f"walker {a.scope[1]}" if a.scope else None,
)

PACE_LINE = Question(
    key="pace_line",
    label="Length of the pacing line",
    text="Lay the tape straight on ground like that of the survey. How long is the line?",
    kind=Measure("length", "ft", "m", (10, "ft"), (660, "ft")),
    why="Walking a known length tells how long your pace is.",
    find_out="50 to 200 ft (15 to 60 m) is a good length. Lay a short tape end over end.",
    group="walkers",
    asks=_PACING,
    when="some lengths are paced",
)


def _likely_pace(counts: tuple[float, ...], answers: Answers) -> str | None:
    """Return a warning about unlikely walks."""
    line = answers.get(PACE_LINE)
    if line is None:
        return None
    try:
        pace = calibrate(line, counts)
    except ValueError:
        return None
    return " ".join(f"{one.said} {one.change}".strip() for one in pace_findings(pace)) or None


def _possible_pace(counts: tuple[float, ...], answers: Answers) -> str | None:
    """Return why no pace can be got from the walks."""
    line = answers.get(PACE_LINE)
    if line is None:
        return None
    try:
        calibrate(line, counts)
    except ValueError as wrong:
        return str(wrong)
    return None


PACE_COUNTS = Question(
    key="pace_counts",
    label="Paces counted",
    text="Walk the line several times at your usual stride. How many paces was each walk?",
    kind=Several(Number(3, 400), 1, 20),
    why="Several walks show how even your pace is.",
    find_out="Three walks or more. Count every step, or every second step: the same way now and "
    "when you measure. Half paces may be written as 19.5.",
    group="walkers",
    asks=_PACING,
    when="some lengths are paced",
    objection=_possible_pace,
    doubt=_likely_pace,
)

ANOTHER_WALKER = Question(
    key="another_walker",
    label="Another person paces",
    text="Does somebody else pace lengths too?",
    kind=YesNo(),
    why="Each person's pace is kept apart.",
    find_out="Answer no if you are alone.",
    group="walkers",
    asks=_PACING,
    when="some lengths are paced",
    default=always_this("no"),
)

WALKERS = Group(
    "walkers", "person who paces", (WALKER_NAME, PACE_LINE, PACE_COUNTS), ANOTHER_WALKER
)


def walker_pace(answers: Answers, name: str = "") -> Pace:
    """Return the calibrated pace of the walker called ``name``, or of the first one.

    Raises ``Unanswered`` where the pace is not calibrated yet, ``Refused`` for a strange name.
    """
    people = answers.items("walkers")
    if not _PACING(answers.whole()):
        why = "A length is given in paces: answer paces here, then walk a known length."
        raise Unanswered(MEASURED_BY, "measured_by", why=why)
    if not people:
        raise Unanswered(PACE_COUNTS, "walkers.1.pace_counts")
    wanted = name.strip().casefold()
    names = [str(one[WALKER_NAME]).casefold() for one in people]
    if wanted and wanted not in names:
        known = ", ".join(str(one[WALKER_NAME]) for one in people)
        raise Refused(f"Nobody called {name} has a calibrated pace. Known: {known}.")
    person = people[names.index(wanted)] if wanted else people[0]
    try:
        counts = person[PACE_COUNTS]
        return calibrate(person[PACE_LINE], counts)
    except ValueError as wrong:
        raise Refused(str(wrong)) from None


def pace_of(answers: Answers, name: str) -> Quantity:
    """Return the length of one pace of ``name``."""
    return walker_pace(answers.whole(), name).length


def _named_twice(name: str, answers: Answers) -> str | None:
    for one in answers.items("surfaces"):
        other = one.texts.get(f"surfaces.{one.scope[1]}.surface_name", "") if one.scope else ""
        if one.scope != answers.scope and other.casefold() == name.casefold():
            return "Another surface has that name already. Give each its own."
    return None


SURFACE_NAME = Question(
    key="surface_name",
    label="Name of the surface",
    text="Name a surface whose water comes to the garden.",
    kind=Note(40),
    why="Only what truly drains here counts, and each surface is listed.",
    find_out="Such as south roof or patio.",
    group="surfaces",
    objection=_named_twice,
)

SURFACE_KIND = Question(
    key="surface_kind",
    label="Kind of surface",
    text="What kind of surface is it?",
    kind=Choice(
        (
            ("roof", "roof"),
            ("paved", "paving: concrete, asphalt, tight brick"),
            ("gravel", "gravel"),
            ("compacted", "hard-packed soil"),
            ("lawn", "lawn or garden uphill"),
        )
    ),
    why="Nearly all rain runs off a roof; a lawn keeps most of it.",
    find_out="Choose what is nearest.",
    group="surfaces",
)

GUTTER_OUTLETS = Question(
    key="gutter_outlets",
    label="Downspouts on this gutter",
    text="How many downspouts does this gutter have?",
    kind=Count(1, 12),
    why="Two downspouts share the water of one gutter.",
    find_out="Walk along the gutter and count every pipe that leaves it.",
    group="surfaces",
    asks=chosen(SURFACE_KIND, "roof"),
    when="the surface is a roof",
    default=always_this("1"),
    caution=ROOF_CAUTION,
)


def _shared(answers: Answers) -> bool:
    return answers.get(SURFACE_KIND) == "roof" and (answers.get(GUTTER_OUTLETS) or 1) > 1


SHARE_KNOWN = Question(
    key="share_known",
    label="How the gutter's water divides",
    text="Do you know how much of this gutter's water comes to this downspout?",
    kind=Choice(
        (
            ("equal", "no, share it equally"),
            ("high_point", "I found the high point of the gutter"),
            ("percent", "I can give a percentage"),
        )
    ),
    why="Water runs both ways from the gutter's high point. A guess here is the widest error of "
    "the whole survey.",
    find_out="Sight along the gutter from the ground, or watch both spouts in the rain.",
    group="surfaces",
    asks=_shared,
    when="the gutter has more than one downspout",
    default=always_this("equal"),
)

GUTTER_THIS_SIDE = Question(
    key="gutter_this_side",
    label="Gutter on this side of the high point",
    text="How long is the gutter from its high point to this downspout's end?",
    kind=distance(500),
    why="That part of the gutter drains here.",
    find_out="Measure along the wall below it, on the ground.",
    group="surfaces",
    asks=both(_shared, chosen(SHARE_KNOWN, "high_point")),
    when="the gutter's high point is known",
)

GUTTER_WHOLE = Question(
    key="gutter_whole",
    label="Whole gutter",
    text="How long is the whole gutter?",
    kind=distance(500, above_zero=True),
    why="This side divided by the whole is the share.",
    find_out="Measure along the wall below it, on the ground.",
    group="surfaces",
    asks=both(_shared, chosen(SHARE_KNOWN, "high_point")),
    when="the gutter's high point is known",
    objection=lambda whole, a: (
        "The whole gutter cannot be shorter than one side of it. Check the two lengths."
        if (part := a.get(GUTTER_THIS_SIDE)) is not None and whole < part
        else None
    ),
)

_PERCENT = both(_shared, chosen(SHARE_KNOWN, "percent"))


def _percent_asked(answers: Answers) -> bool:
    kind = answers.get(SURFACE_KIND)
    return _percent_roof(answers) or (kind is not None and kind != "roof")


def _percent_roof(answers: Answers) -> bool:
    return _PERCENT(answers)


SHARE_PERCENT = Question(
    key="share_percent",
    label="Share that comes here",
    text="What part of this surface's water comes to the garden?",
    kind=Number(0.1, 100, percent=True),
    why="Only that part is counted.",
    find_out="Pour out a bucket in several places and watch where it goes. 100 % if all of it.",
    group="surfaces",
    asks=_percent_asked,
    when="the surface is not a roof, or a percentage is given for a shared gutter",
    default=always_this("100"),
)

BASIS = Question(
    key="surface_basis",
    label="Measured level or along the slope",
    text="Are its lengths measured level, on the ground, or along the slope of the roof?",
    kind=Choice((("level", "level, on the ground"), ("slope", "along the slope"))),
    why="Rain falls straight down, so the plan area counts: the shadow the roof casts at noon.",
    find_out="From the ground you measure level. Along the slope only from a drawing or a photo.",
    group="surfaces",
    asks=chosen(SURFACE_KIND, "roof"),
    when="the surface is a roof",
    default=always_this("level"),
    caution=ROOF_CAUTION,
)

PITCH = Question(
    key="surface_pitch",
    label="Pitch of the roof",
    text="How steep is it?",
    kind=Pitch(),
    why="It turns the length along the slope into the level one.",
    find_out="Hold a level against the gable end from the ground: rise in 12 of run.",
    group="surfaces",
    asks=both(chosen(SURFACE_KIND, "roof"), chosen(BASIS, "slope")),
    when="the lengths are measured along the slope of a roof",
)


def _possible(pieces: tuple[PieceLine, ...]) -> None:
    """Refuse pieces that cannot be built, such as sides that make no triangle."""
    try:
        check_pieces(pieces)
    except ValueError as wrong:
        raise Refused(str(wrong)) from None


PIECES = Question(
    key="pieces",
    label="Pieces of the surface",
    text="Cut the surface into simple pieces and measure each. Only the part from the ridge down "
    "to this gutter counts.",
    kind=Pieces(Measure("length", "ft", "m", None, None, paced=True), _possible),
    why="Pieces add up to the area; what is not roof is cut out with the word less.",
    find_out="Wall length plus the overhang at both ends, by wall to ridge plus the overhang. An "
    "ell is two rectangles, or one less a cut-out. Lengths may be paced: 16 paces.",
    group="surfaces",
    caution=ROOF_CAUTION,
    more="Shapes: rectangle a by b; triangle base by height; triangle sides a, b, c; trapezoid "
    "a, b, height h; circle across; half circle across; quarter circle radius; offsets spacing, "
    "y0, y1, ... Add times 2 for two alike.",
)

ANOTHER_SURFACE = Question(
    key="another_surface",
    label="Another surface",
    text="Does another surface drain to the garden?",
    kind=YesNo(),
    why="An upper roof, a patio or a drive may send its water here too.",
    find_out="Watch in the next rain.",
    group="surfaces",
    default=always_this("no"),
)

SURFACES = Group(
    "surfaces",
    "surface",
    (
        SURFACE_NAME,
        SURFACE_KIND,
        GUTTER_OUTLETS,
        SHARE_KNOWN,
        GUTTER_THIS_SIDE,
        GUTTER_WHOLE,
        SHARE_PERCENT,
        BASIS,
        PITCH,
        PIECES,
    ),
    ANOTHER_SURFACE,
)

RUNOFF_BY = Question(
    key="runoff_by",
    label="How runoff is reckoned",
    text="How shall the runoff of each surface be reckoned?",
    kind=Choice(
        (
            ("coefficient", "by a coefficient for each kind"),
            ("curve_number", "by curve number (TR-55)"),
        )
    ),
    why="Some offices ask for curve numbers. For roofs the two differ by about a sixth at 1 inch.",
    find_out="Use the coefficient unless your office says otherwise.",
    default=always_this("coefficient"),
)


def _grouped(answers: Answers) -> bool:
    return answers.get(RUNOFF_BY) == "curve_number" or any(
        one.get(SURFACE_KIND) == "lawn" for one in answers.items("surfaces")
    )


SOIL_GROUP = Question(
    key="soil_group",
    label="Hydrologic soil group",
    text="Which hydrologic soil group is the yard's soil?",
    kind=Choice(
        (
            ("a", "A: sand, loamy sand"),
            ("b", "B: loam, silt loam"),
            ("c", "C: sandy clay loam"),
            ("d", "D: clay"),
        )
    ),
    why="The curve number of lawn, gravel and packed soil depends on it.",
    find_out="The soil survey names it. If unsure, D gives the most runoff.",
    asks=_grouped,
    when="runoff is reckoned by curve number, or a surface is lawn",
    default=always_this("d"),
)

HOUSE_AREA = Question(
    key="house_area",
    label="Area the house covers",
    text="About how much ground does the whole house cover?",
    kind=Measure("area", "ft**2", "m**2", (10, "ft**2"), (50000, "ft**2")),
    why="One downspout seldom drains more than half of it: a check against counting the whole "
    "roof.",
    find_out="Length by width of the house, such as 1200 sq ft. Skip it if you like.",
)

ROOF_HAZARD = Question(
    key="roof_hazard",
    label="Metal or treated roof",
    text="Does the roof have copper, zinc strips, treated shakes or moss killer?",
    kind=YesNo(),
    why="Their runoff harms plants and soil. Grow nothing to eat there.",
    find_out="Look from the ground, or ask who roofed it.",
    default=always_this("no"),
)

STAGE = Stage(
    "survey",
    "D",
    "What drains here",
    "Measure the roof and paving whose water comes to the garden. Nothing is dug.",
    (MEASURED_BY, WALKERS, SURFACES, RUNOFF_BY, SOIL_GROUP, HOUSE_AREA, ROOF_HAZARD),
)
