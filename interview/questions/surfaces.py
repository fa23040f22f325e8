"""Each surface whose water comes to the garden, and which part of it."""

from __future__ import annotations

from dataclasses import dataclass

from interview import reading
from interview.kinds import Choice, Count, Measure, Note, Number, Pitch, Simple, YesNo
from interview.model import Answers, Group, Question
from interview.piece_lines import PieceLine, Pieces
from interview.questions import pictures
from interview.questions.ask import always_this, both, chosen, distance
from interview.questions.pacing import named_pace
from interview.questions.shapes import biggest_cut, check_pieces
from interview.reading import Refused
from interview.units import plain_number

ROOF_CAUTION = "Measure roofs from the ground. No ladder near power lines."


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


def _names_above(answers: Answers) -> dict[str, str]:
    """Return the names of the surfaces listed before this one, by their folded form."""
    found = {}
    for one in answers.items("surfaces"):
        if one.scope and answers.scope and one.scope[1] < answers.scope[1]:
            name = one.get(SURFACE_NAME)
            if name is not None:
                found[name.casefold()] = name
    return found


def _not_above(name: str, answers: Answers) -> str | None:
    above = _names_above(answers)
    if not above or name.casefold() in (*NOT_ON_ANOTHER, *above):
        return None
    known = ", ".join(above.values())
    return f"No surface above this one has that name. Write no, or one of: {known}."


NOT_ON_ANOTHER = ("no", "none", "n")

FALLS_ON = Question(
    key="falls_on",
    label="Falls on another surface first",
    text="Does its water fall on one of the surfaces above first? Write that one's name, or no.",
    kind=Note(40),
    why="The water of an upper roof goes where that of the lower one goes, and divides alike.",
    find_out="List the lower surface first. All the water that falls on a lawn is counted, which "
    "is cautious.",
    group="surfaces",
    asks=lambda a: a.scope is not None and a.scope[1] > 1,
    when="another surface is listed already",
    objection=_not_above,
    default=always_this("no"),
    picture=pictures.FALLS_ON,
)


def falls_on(answers: Answers) -> str:
    """Return the name of the surface this one falls on, as it is listed, or nothing."""
    if not FALLS_ON.asks(answers):
        return ""
    name = answers[FALLS_ON].casefold()
    return "" if name in NOT_ON_ANOTHER else _names_above(answers).get(name, "")


def _has_gutter(answers: Answers) -> bool:
    return answers.get(SURFACE_KIND) == "roof" and not falls_on(answers)


GUTTER_OUTLETS = Question(
    key="gutter_outlets",
    label="Downspouts on this gutter",
    text="How many downspouts does this gutter have?",
    kind=Count(1, 12),
    why="Two downspouts share the water of one gutter.",
    find_out="Walk along the gutter and count every pipe that leaves it. A roof without a gutter "
    "counts as one.",
    group="surfaces",
    asks=_has_gutter,
    when="the surface is a roof that falls on no other surface",
    default=always_this("1"),
    caution=ROOF_CAUTION,
    picture=pictures.OUTLETS,
)


def _shared(answers: Answers) -> bool:
    return _has_gutter(answers) and (answers.get(GUTTER_OUTLETS) or 1) > 1


OUTLETS_HERE = Question(
    key="outlets_here",
    label="Downspouts of it that come here",
    text="How many of those downspouts come to this garden?",
    kind=Count(1, 12),
    why="Several downspouts may share one garden; then their water adds up.",
    find_out="Count those whose water you will lead here.",
    group="surfaces",
    asks=_shared,
    when="the gutter has more than one downspout",
    objection=lambda here, a: (
        "No more downspouts can come here than the gutter has. Check both counts."
        if here > (a.get(GUTTER_OUTLETS) or 1)
        else None
    ),
    default=always_this("1"),
    picture=pictures.OUTLETS_HERE,
)


def _divided(answers: Answers) -> bool:
    """Tell whether only some of a gutter's downspouts come here."""
    outlets = answers.get(GUTTER_OUTLETS) or 1
    return _shared(answers) and (answers.get(OUTLETS_HERE) or 1) < outlets


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
    asks=_divided,
    when="only some of the gutter's downspouts come here",
    default=always_this("equal"),
    picture=pictures.HIGH_POINT,
)

GUTTER_THIS_SIDE = Question(
    key="gutter_this_side",
    label="Gutter on this side of the high point",
    text="How long is the gutter from its high point to the end that drains here?",
    kind=distance(500),
    why="That part of the gutter drains here.",
    find_out="Measure along the wall below it, on the ground.",
    group="surfaces",
    asks=both(_divided, chosen(SHARE_KNOWN, "high_point")),
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
    asks=both(_divided, chosen(SHARE_KNOWN, "high_point")),
    when="the gutter's high point is known",
    objection=lambda whole, a: (
        "The whole gutter cannot be shorter than one side of it. Check the two lengths."
        if (part := a.get(GUTTER_THIS_SIDE)) is not None and whole < part
        else None
    ),
)

_PERCENT = both(_divided, chosen(SHARE_KNOWN, "percent"))


def _percent_asked(answers: Answers) -> bool:
    kind = answers.get(SURFACE_KIND)
    return _PERCENT(answers) or (kind not in (None, "roof") and not falls_on(answers))


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
    picture=pictures.PERCENT,
)

SPOUT_PERCENT = Question(
    key="spout_percent",
    label="Share of the downspout's own water",
    text="What part of the downspout's water will come to this garden?",
    kind=Number(0.1, 100, percent=True),
    why="One downspout may be divided between gardens, or fill a barrel first.",
    find_out="100 % unless its water is divided. With two like pipes from one spout, 50 %.",
    group="surfaces",
    asks=_has_gutter,
    when="the surface is a roof that falls on no other surface",
    default=always_this("100"),
    picture=pictures.SPOUT_SPLIT,
)

VALLEY = Question(
    key="roof_valley",
    label="Valley into this gutter",
    text="Does a valley of the roof, where two slopes meet, pour into this gutter?",
    kind=YesNo(),
    why="A valley brings the water of both its slopes, so both are measured.",
    find_out="Look for an inside corner of the house. Take each slope up to its own ridge.",
    group="surfaces",
    asks=chosen(SURFACE_KIND, "roof"),
    when="the surface is a roof",
    default=always_this("no"),
    picture=pictures.VALLEY,
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
    picture=pictures.SLOPE_LENGTH,
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


ROOF_SIDES = Question(
    key="roof_sides",
    label="Sides of the ridge that are measured",
    text="Will your pieces cover one side of the ridge, or the whole roof with both its sides?",
    kind=Choice(
        (
            ("one", "only the side that falls to this gutter"),
            ("both", "the whole roof: both sides, much alike"),
        )
    ),
    why="Only the part from the ridge down to this gutter drains here: of two like sides, half.",
    find_out="The whole roof is easy to pace round the house; a lean-to has only one side.",
    group="surfaces",
    asks=chosen(SURFACE_KIND, "roof"),
    when="the surface is a roof",
    default=always_this("one"),
    picture=pictures.RIDGE,
)

LAWN_COVER = Question(
    key="lawn_cover",
    label="Thickness of the grass",
    text="How much of it is covered with grass or plants?",
    kind=Choice(
        (
            ("lawn_good", "over three quarters"),
            ("lawn_fair", "half to three quarters"),
            ("lawn_poor", "under half"),
            ("bare", "bare soil"),
        )
    ),
    why="Thin grass lets more water run off.",
    find_out="Look down between your feet in several places.",
    group="surfaces",
    asks=chosen(SURFACE_KIND, "lawn"),
    when="the surface is lawn",
    default=always_this("lawn_good"),
)


@dataclass(frozen=True)
class LocalPart(Simple[float | None]):
    """A runoff coefficient from a local rule, or the usual reckoning."""

    name = "number or the word usual"

    def read(self, text: str, answers: Answers) -> float | None:
        if text.strip().casefold() == "usual":
            return None
        part = float(reading.read_number(text))
        if not 0 <= part <= 1:
            raise Refused("That is outside the limits: it must be from 0 to 1, or usual.")
        return part

    def echo(self, value: float | None, answers: Answers) -> str:
        return "usual" if value is None else plain_number(value, 6)

    def hint(self, units: str) -> str:
        return "usual, or a number from 0 to 1"


RUNOFF_LOCAL = Question(
    key="runoff_local",
    label="Local runoff coefficient",
    text="Does your local rule give its own runoff coefficient for this surface?",
    kind=LocalPart(),
    why="It is the part of the rain that runs off, and stands in place of the usual one.",
    find_out="Stormwater offices print it by kind of surface. Write usual if none is given.",
    group="surfaces",
    default=always_this("usual"),
)


def _possible(pieces: tuple[PieceLine, ...], answers: Answers) -> None:
    """Refuse pieces that cannot be built, such as sides that make no triangle."""
    try:
        check_pieces(pieces, lambda walker: named_pace(answers.whole(), walker))
    except ValueError as wrong:
        raise Refused(str(wrong)) from None


def _likely_pieces(pieces: tuple[PieceLine, ...], answers: Answers) -> str | None:
    place = biggest_cut(pieces)
    if place is not None:
        return f"Piece {place}, a cut-out, is larger than any one piece. Check its measures."
    added = sum(piece.count for piece in pieces if not piece.cut)
    if answers.get(SURFACE_KIND) == "roof" and answers.get(VALLEY) and added == 1:
        return "A valley brings the water of two slopes, and only one piece is here. Add the other."
    return None


PIECES = Question(
    key="pieces",
    label="Pieces of the surface",
    text="Cut the surface into simple pieces and measure each. Only the part from the ridge down "
    "to this gutter counts.",
    kind=Pieces(Measure("length", "ft", "m", None, None, paced=True), _possible),
    why="Pieces add up to the area; what is not roof is cut out with the word less.",
    find_out="Wall length plus the overhang at both ends, by wall to ridge plus the overhang. An "
    "ell is two rectangles, or one less a cut-out. Lengths may be paced: 16 paces, or 15 paces "
    "Ann.",
    group="surfaces",
    caution=ROOF_CAUTION,
    doubt=_likely_pieces,
    more="Shapes: rectangle a by b; triangle base by height; triangle sides a, b, c; trapezoid "
    "a, b, height h; trapezoid sides a, b, c, d; circle across; half circle across; quarter circle "
    "radius; circle part across, 120 deg; offsets spacing, y0, y1, ...; round 20 ft right 8 ft "
    "right 20 ft right 8 ft, a turn being square or left 45 deg. Add times 2 for two alike. Add at "
    "3 ft, 2 ft and turned 90 for the drawing: the lower left of the piece; the area stays.",
    picture=pictures.PIECES,
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
        FALLS_ON,
        GUTTER_OUTLETS,
        OUTLETS_HERE,
        SHARE_KNOWN,
        GUTTER_THIS_SIDE,
        GUTTER_WHOLE,
        SHARE_PERCENT,
        SPOUT_PERCENT,
        VALLEY,
        LAWN_COVER,
        RUNOFF_LOCAL,
        BASIS,
        PITCH,
        ROOF_SIDES,
        PIECES,
    ),
    ANOTHER_SURFACE,
)
