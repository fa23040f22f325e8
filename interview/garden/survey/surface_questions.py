"""Each surface whose water comes to the garden: how it is measured, and its pieces."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from interview import reading
from interview.asking.answers import Answers
from interview.asking.conditions import always_this, both, chosen
from interview.asking.kinds import Choice, Simple, YesNo, as_typed
from interview.asking.measures import Measure, Pitch
from interview.asking.question import Group, Taken
from interview.garden.survey import pictures
from interview.garden.survey.pacing_questions import named_pace
from interview.garden.survey.piece_lines import PieceLine, Pieces
from interview.garden.survey.share_questions import (
    FALLS_ON,
    GUTTER_OUTLETS,
    GUTTER_THIS_SIDE,
    GUTTER_WHOLE,
    OUTLETS_HERE,
    ROOF_CAUTION,
    SHARE_KNOWN,
    SHARE_PERCENT,
    SPOUT_PERCENT,
    SURFACE,
    SURFACE_KIND,
    SURFACE_NAME,
    VALLEY,
)
from interview.quantities.units import plain_number
from interview.reading import LARGER, Refused

BASIS = SURFACE.question(
    key="surface_basis",
    label="Measured level or along the slope",
    text="Will you measure the roof level, on the ground, or along its slope?",
    kind=Choice((("level", "level, on the ground"), ("slope", "along the slope"))),
    why="Rain falls straight down. So what counts is the roof as seen from straight above.",
    find_out="On the ground you measure level. Measure along the slope only on a drawing or a "
    "photo.",
    asks=chosen(SURFACE_KIND, "roof"),
    when="the surface is a roof",
    default=always_this("level"),
    caution=ROOF_CAUTION,
    picture=pictures.SLOPE_LENGTH,
)

PITCH = SURFACE.question(
    key="surface_pitch",
    label="Pitch of the roof",
    text="How steep is the roof (its pitch)?",
    kind=Pitch(),
    why="It turns the length along the slope into the level one.",
    find_out="Stand at the gable end, the wall under the point of the roof. Hold up a level and "
    "see how far the roof rises in 12 along.",
    asks=both(chosen(SURFACE_KIND, "roof"), chosen(BASIS, "slope")),
    when="the lengths are measured along the slope of a roof",
)


ROOF_SIDES = SURFACE.question(
    key="roof_sides",
    label="Sides of the ridge that are measured",
    text="Will you measure one side of the roof, or both? They meet at the top, the ridge.",
    kind=Choice(
        (
            ("one", "only the side that falls to this gutter"),
            ("both", "the whole roof, where its two sides are much alike"),
            ("all", "the whole roof, where all of it falls to this gutter"),
        )
    ),
    why="Of two like sides only the one over this gutter drains here: half.",
    find_out="The whole roof is easy to pace around the house. A lean-to has only one side. All of "
    "a flat roof, or of a hip roof whose one gutter runs all round, falls to its gutter.",
    asks=chosen(SURFACE_KIND, "roof"),
    when="the surface is a roof",
    default=always_this("one"),
    picture=pictures.RIDGE,
)

LAWN_COVER = SURFACE.question(
    key="lawn_cover",
    label="Thickness of the grass",
    text="How much of that ground is covered with grass or plants?",
    kind=Choice(
        (
            ("lawn_good", "over three quarters"),
            ("lawn_fair", "half to three quarters"),
            ("lawn_poor", "under half"),
            ("bare", "bare soil"),
        )
    ),
    why="Thin grass lets more water run off.",
    find_out="Look straight down in several places.",
    asks=chosen(SURFACE_KIND, "lawn"),
    when="the surface is lawn",
    default=always_this("lawn_good"),
)


class LocalPart(Simple[float | None]):
    """A runoff coefficient from a local rule, or the usual reckoning."""

    name = "number or the word usual"

    def take(self, text: str, answers: Answers) -> Taken[float | None]:
        if text.strip().casefold() == "usual":
            return as_typed(text, None)
        part = float(reading.read_number(text))
        if not 0 <= part <= 1:
            raise Refused("That is outside the limits: it must be from 0 to 1, or usual.")
        return as_typed(text, part)

    def echo(self, value: float | None, answers: Answers) -> str:
        return "usual" if value is None else plain_number(value, 6)

    def hint(self, units: str) -> str:
        return "usual, or a number from 0 to 1"


RUNOFF_LOCAL = SURFACE.question(
    key="runoff_local",
    label="Local runoff coefficient",
    text="Does a local rule say what part of the rain runs off such a surface?",
    kind=LocalPart(),
    why="That number, the runoff coefficient, then stands in place of the usual one.",
    find_out="Stormwater offices print it by kind of surface, such as 0.95 where 95 % runs off. "
    "Write usual if you know of none.",
    default=always_this("usual"),
)


def _possible(pieces: tuple[PieceLine, ...], answers: Answers) -> None:
    """Refuse pieces that cannot be built, such as sides that make no triangle."""
    from interview.garden.survey.written_pieces import check_pieces  # it knows every shape

    try:
        check_pieces(pieces, lambda walker: named_pace(answers.whole(), walker))
    except ValueError as wrong:
        raise Refused(str(wrong)) from None


def _likely_pieces(pieces: tuple[PieceLine, ...], answers: Answers) -> str | None:
    from interview.garden.survey.written_pieces import biggest_cut

    place = biggest_cut(pieces)
    if place is not None:
        return f"Piece {place}, a cut-out, is larger than any one piece. Check its measures."
    added = sum(piece.count for piece in pieces if not piece.cut)
    if answers.get(SURFACE_KIND) == "roof" and answers.get(VALLEY) and added == 1:
        return "A valley brings the water of two slopes, and only one piece is here. Add the other."
    return None


_ROOF_HOW = (
    "Along the wall: its length plus the overhang at both ends. Across: from the wall to below the "
    "ridge, the top of the roof, plus the overhang. Paces will do: 16 paces, or 15 paces Ann."
)
_ALL_ROUND = (
    " If one gutter runs all round, on a hip or a flat roof, measure the whole roof, and say so "
    "on the page of the usual answers."
)


def _wording(answers: Answers) -> dict[str, str]:
    """Word the question for a roof, of one side or whole."""
    if answers.get(SURFACE_KIND) != "roof":
        return {}
    measured = {"both": "the whole roof, both its sides", "all": "the whole roof"}
    whole = measured.get(answers.get(ROOF_SIDES) or "")
    part = whole or "this side of the roof"
    how = _ROOF_HOW.replace("to below the ridge, the top of the roof,", "to the far wall")
    return {
        "text": f"How big is {part}? Measure it on the ground, in simple shapes called pieces.",
        "find_out": how.replace("the overhang. Paces", "both overhangs. Paces")
        if whole
        else _ROOF_HOW + _ALL_ROUND,
        "why": "The pieces add up to the area. What is not roof is taken off with the word less.",
        "caution": ROOF_CAUTION,
    }


PIECES = SURFACE.question(
    key="pieces",
    label="Pieces of the surface",
    text="How big is it? Split it into simple shapes, called pieces, and measure each.",
    kind=Pieces(Measure("length", "ft", "m", None, None, paced=True, careful=LARGER), _possible),
    why="The pieces add up to the area. What does not belong to it is taken off with the word "
    "less.",
    find_out="Measure along the edges. An L shape is two rectangles, or one less its missing "
    "corner. Paces will do: 16 paces, or 15 paces Ann.",
    doubt=_likely_pieces,
    wording=_wording,
    more="An L shape is two rectangles, or one less its missing corner. "
    "Shapes: rectangle a by b; triangle base by height; triangle sides a, b, c; trapezoid "
    "a, b, height h; trapezoid sides a, b, c, d; circle across; half circle across; quarter circle "
    "radius; circle part across, 120 deg; offsets spacing, y0, y1, ...; round 20 ft right 8 ft "
    "right 20 ft right 8 ft, a turn being square or left 45 deg. Add times 2 for two alike. Add at "
    "3 ft, 2 ft and turned 90 for the drawing: the lower left of the piece; the area stays.",
    picture=pictures.PIECES,
)

NORTH_WAYS = {
    "up": 0.0, "up_right": 45.0, "right": 90.0, "down_right": 135.0,
    "down": 180.0, "down_left": 225.0, "left": 270.0, "up_left": 315.0,
}  # fmt: skip
"""Degrees clockwise from the top of the drawing."""
NOT_DRAWN = "not_drawn"

SURFACE_NORTH = SURFACE.question(
    key="surface_north",
    label="North on the drawing",
    text="On the drawing of these pieces, which way is north?",
    kind=Choice(
        (
            (NOT_DRAWN, "leave it out"),
            *((way, way.replace("_", " and ")) for way in NORTH_WAYS),
        )
    ),
    why="The drawing then shows it, so you can turn the sheet the right way outside.",
    find_out="Use the compass of a phone. In the northern half of the world your shadow points "
    "north at noon.",
    asks=lambda a: any(piece.at is not None for piece in a.get(PIECES) or ()),
    when="the pieces were moved into place on the drawing",
    default=always_this(NOT_DRAWN),
)

ANOTHER_SURFACE = SURFACE.question(
    key="another_surface",
    label="Another surface",
    text="Does another surface drain to the garden?",
    kind=YesNo(),
    why="An upper roof, a patio or a drive may send its water here too.",
    find_out="Watch in the next rain.",
    default=always_this("no"),
)

SURFACES = Group(
    SURFACE,
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
        BASIS,
        PITCH,
        ROOF_SIDES,
        PIECES,
        SURFACE_NORTH,
        RUNOFF_LOCAL,
    ),
    ANOTHER_SURFACE,
)


def may_be_a_roof(answers: Answers) -> bool:
    """Tell whether water may come from a roof: of one surface that is known, or not yet known."""
    kinds = {one.get(SURFACE_KIND) for one in answers.items(SURFACES.key)}
    return not kinds or bool(kinds & {"roof", None})


def no_roof(**words: str) -> Callable[[Answers], Mapping[str, str]]:
    """Put ``words`` where all the water comes from surfaces that have no downspout."""

    def worded(answers: Answers) -> Mapping[str, str]:
        return {} if may_be_a_roof(answers) else words

    return worded
