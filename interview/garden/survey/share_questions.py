"""Which surface it is, and which part of its water comes to the garden."""

from __future__ import annotations

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, both, chosen, distance
from interview.asking.kinds import Choice, Note, Simple, YesNo, as_typed
from interview.asking.measures import Count
from interview.asking.question import Member, Taken
from interview.garden.survey import pictures
from interview.quantities.units import plain_number, significant
from interview.reading import Refused, read_share


class ShareKind(Simple[float]):
    """A part of something, in percent, as people say it: all, half, 1/3, 60 %, none."""

    name = "share"

    def take(self, text: str, answers: Answers) -> Taken[float]:
        percent = float(read_share(text))
        if not 0 <= percent <= 100:
            raise Refused("A share is from none to all: write it from 0 to 100 %.")
        return as_typed(text, percent)

    def echo(self, value: float, answers: Answers) -> str:
        return f"{plain_number(significant(value, 4))} %"

    def hint(self, units: str) -> str:
        return "all, none, half, 1/3 or 60 %"


ROOF_CAUTION = "Measure roofs from the ground. No ladder near power lines."


def _named_twice(name: str, answers: Answers) -> str | None:
    for one in answers.items("surfaces"):
        other = (one.text_at(f"surfaces.{one.scope[1]}.surface_name") or "") if one.scope else ""
        if one.scope != answers.scope and other.casefold() == name.casefold():
            return "Another surface has that name already. Give each its own."
    return None


def _usual_name(answers: Answers) -> str | None:
    """Return the kind with the number, such as ``roof 1``."""
    if answers.scope is None:
        return None
    kind: str | None = answers.get(SURFACE_KIND)
    return f"{_NAMED_BY_KIND.get(kind or 'roof', 'surface')} {answers.scope[1]}"


_NAMED_BY_KIND = {"roof": "roof", "paved": "paving", "gravel": "gravel", "lawn": "lawn"}

SURFACE = Member("surfaces", "surface")

SURFACE_NAME = SURFACE.question(
    key="surface_name",
    label="Name of the surface",
    text="What do you call the surface that sends its water to the garden?",
    kind=Note(40, "south roof"),
    why="Only what truly drains here counts. Each surface is listed by its name.",
    find_out="Any short name will do, such as south roof or patio. Begin with the largest.",
    objection=_named_twice,
    default=_usual_name,
)

SURFACE_KIND = SURFACE.question(
    key="surface_kind",
    label="Kind of surface",
    text="What brings the water?",
    kind=Choice(
        (
            ("roof", "roof"),
            ("paved", "paving: concrete, asphalt, tight brick"),
            ("gravel", "gravel"),
            ("compacted", "hard-packed soil"),
            ("lawn", "lawn or garden uphill"),
        )
    ),
    why="Nearly all rain runs off a roof. A lawn keeps most of it.",
    find_out="Choose what is nearest.",
)


def _names_above(answers: Answers) -> dict[str, str]:
    """Return the names of the surfaces listed before this one, by their folded form.

    One that nobody has named has its usual name.
    """
    found = {}
    for one in answers.items("surfaces"):
        if one.scope and answers.scope and one.scope[1] < answers.scope[1]:
            name = one[SURFACE_NAME]
            found[name.casefold()] = name
    return found


def renamed(before: Answers, after: Answers) -> Answers:
    """Return ``after`` with each surface that falls on one whose name changed falling on it yet."""
    for one in before.items("surfaces"):
        assert one.scope is not None
        old, new = one[SURFACE_NAME], after.at(*one.scope)[SURFACE_NAME]
        for other in after.items("surfaces"):
            falls = other.text(FALLS_ON)
            if new != old and falls is not None and falls.casefold() == old.casefold():
                after = after.with_text(other.address(FALLS_ON), new)
    return after


def _not_above(name: str, answers: Answers) -> str | None:
    above = _names_above(answers)
    if not above or name.casefold() in (*NOT_ON_ANOTHER, *above):
        return None
    known = ", ".join(above.values())
    return f"No surface above this one has that name. Write no, or one of: {known}."


def _listed(answers: Answers) -> dict[str, str]:
    """Word the question with the names of the surfaces listed before this one."""
    names = ", ".join(_names_above(answers).values())
    return {"text": f"{FALLS_ON.text} Listed: {names}."} if names else {}


NOT_ON_ANOTHER = ("no", "none", "n")

FALLS_ON = SURFACE.question(
    key="falls_on",
    label="Falls on another surface first",
    text="Does it run onto another surface first? Type its name, or no.",
    kind=Note(40, "upper roof, or no"),
    why="Water from an upper roof goes where the water of the lower roof goes, and is shared out "
    "in the same way.",
    find_out="List the lower surface first. Water that runs onto a lawn is counted in full, to be "
    "on the careful side.",
    asks=lambda a: a.scope is not None and a.scope[1] > 1,
    when="another surface is listed already",
    objection=_not_above,
    wording=_listed,
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


_SPOUTS = (
    "downspouts", "downspout", "downpipes", "downpipe", "spouts", "spout", "outlets", "outlet",
)  # fmt: skip

GUTTER_OUTLETS = SURFACE.question(
    key="gutter_outlets",
    label="Downspouts on this gutter",
    text="How many downspouts does this gutter have?",
    kind=Count(1, 12, _SPOUTS),
    why="Two downspouts share the water of one gutter.",
    find_out="A downspout is a pipe that takes the gutter's water down. Walk along the gutter and "
    "count every one. A roof without a gutter counts as one.",
    asks=_has_gutter,
    when="the surface is a roof that falls on no other surface",
    default=always_this("1"),
    caution=ROOF_CAUTION,
    picture=pictures.OUTLETS,
)


def _shared(answers: Answers) -> bool:
    return _has_gutter(answers) and (answers.get(GUTTER_OUTLETS) or 1) > 1


OUTLETS_HERE = SURFACE.question(
    key="outlets_here",
    label="Downspouts of it that come here",
    text="How many of those downspouts come to this garden?",
    kind=Count(1, 12, _SPOUTS),
    why="Several downspouts may share one garden. Then their water adds up.",
    find_out="Count those whose water you will lead here.",
    asks=_shared,
    when="the gutter has more than one downspout",
    objection=lambda here, a: (
        "No more downspouts can come here than the gutter has. Check both counts."
        if (outlets := a.get(GUTTER_OUTLETS)) is not None and here > outlets
        else None
    ),
    default=always_this("1"),
    picture=pictures.OUTLETS_HERE,
)


def outlets_here(answers: Answers) -> int:
    """Return how many downspouts of a roof's gutter come here, 1 where only one is there."""
    return answers[OUTLETS_HERE] if _shared(answers) else 1


def _divided(answers: Answers) -> bool:
    """Tell whether only some of a gutter's downspouts come here."""
    outlets = answers.get(GUTTER_OUTLETS) or 1
    return _shared(answers) and (answers.get(OUTLETS_HERE) or 1) < outlets


SHARE_KNOWN = SURFACE.question(
    key="share_known",
    label="How the gutter's water divides",
    text="Do you know how much of this gutter's water comes to this downspout?",
    kind=Choice(
        (
            ("equal", "no, share it equally"),
            ("high_point", "I found the high point of the gutter"),
            ("percent", "I can say what part, such as 1/3 or 40 %"),
        )
    ),
    why="Water runs both ways from the gutter's high point. A wrong guess here is the largest "
    "error of the whole survey.",
    find_out="Look along the gutter from the ground, or watch both downspouts in the rain.",
    asks=_divided,
    when="only some of the gutter's downspouts come here",
    default=always_this("equal"),
    picture=pictures.HIGH_POINT,
)

GUTTER_THIS_SIDE = SURFACE.question(
    key="gutter_this_side",
    label="Gutter on this side of the high point",
    text="How long is the gutter from its high point to the end that drains here?",
    kind=distance(500),
    why="That part of the gutter drains here.",
    find_out="Measure along the wall below it, on the ground.",
    asks=both(_divided, chosen(SHARE_KNOWN, "high_point")),
    when="the gutter's high point is known",
)

GUTTER_WHOLE = SURFACE.question(
    key="gutter_whole",
    label="Whole gutter",
    text="How long is the whole gutter?",
    kind=distance(500, above_zero=True),
    why="This side divided by the whole is the share.",
    find_out="Measure along the wall below it, on the ground.",
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


SHARE_PERCENT = SURFACE.question(
    key="share_percent",
    label="Share that comes here",
    text="What part of its water comes to the garden?",
    kind=ShareKind(),
    why="Only that part is counted.",
    find_out="Pour out a bucket in several places and watch where it goes.",
    asks=_percent_asked,
    when="the surface is not a roof, or a percentage is given for a shared gutter",
    default=always_this("all"),
    picture=pictures.PERCENT,
    wording=lambda a: (
        {
            "text": "What part of the gutter's water comes to the garden?",
            "find_out": "Watch the downspouts in a good rain and compare.",
            "picture": pictures.HIGH_POINT,
        }
        if a.get(SURFACE_KIND) == "roof"
        else {}
    ),
)

SPOUT_PERCENT = SURFACE.question(
    key="spout_percent",
    label="Share of the downspout's own water",
    text="What part of the downspout's water will come to this garden?",
    kind=ShareKind(),
    why="One downspout may be divided between gardens, or fill a barrel first.",
    find_out="All of it, unless you divide its water. Two equal pipes from one downspout take half "
    "each.",
    asks=_has_gutter,
    when="the surface is a roof that falls on no other surface",
    default=always_this("all"),
    picture=pictures.SPOUT_SPLIT,
)

VALLEY = SURFACE.question(
    key="roof_valley",
    label="Valley into this gutter",
    text="Does a valley of the roof, where two slopes meet, pour into this gutter?",
    kind=YesNo(),
    why="A valley brings the water of both its slopes, so both are measured.",
    find_out="Look for an inside corner of the house. Take each slope up to its own ridge, the "
    "top of the roof.",
    asks=chosen(SURFACE_KIND, "roof"),
    when="the surface is a roof",
    default=always_this("no"),
    picture=pictures.VALLEY,
)
