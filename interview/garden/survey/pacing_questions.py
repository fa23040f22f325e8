"""Whose pace measures, and how long it is."""

from __future__ import annotations

from collections.abc import Sequence

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, chosen
from interview.asking.kinds import Choice, Note, Several, YesNo
from interview.asking.measures import Measure, Number
from interview.asking.question import Group, Member, Question, Unanswered
from interview.garden.survey.pacing import Pace, calibrate, expected_error, pace_findings
from interview.garden.survey.pictures import PACING_LINE
from interview.quantities.units import Quantity, plain_number, quantity, show, significant
from interview.reading import Refused

MEASURED_BY = Question(
    key="measured_by",
    label="How lengths are measured",
    text="Will you measure with a tape alone, or pace some lengths?",
    kind=Choice((("tape", "tape alone"), ("paces", "paces, or both"))),
    why="Paces are fine once your pace is known. The plan shows how far off they may be.",
    find_out="A tape is best up to its length; paces are quick for the rest.",
    default=always_this("tape"),
)

_PACING = chosen(MEASURED_BY, "paces")

WALKER = Member("walkers", "person who paces", asks=_PACING, when="some lengths are paced")


def _walker_twice(name: str, answers: Answers) -> str | None:
    for one in answers.items("walkers"):
        other = (one.text_at(f"walkers.{one.scope[1]}.walker_name") or "") if one.scope else ""
        if one.scope != answers.scope and other.casefold() == name.casefold():
            return "Another person has that name already. Give each their own."
    return None


WALKER_NAME = WALKER.question(
    key="walker_name",
    label="Who paces",
    text="Whose pace is this?",
    kind=Note(30, "Ann"),
    why="No two people pace alike. With a name you can write a length as 15 paces Ann.",
    find_out="A first name or initials.",
    default=lambda a: f"walker {a.scope[1]}" if a.scope else None,
    objection=_walker_twice,
)

PACE_LINE = WALKER.question(
    key="pace_line",
    label="Length of the test walk",
    text="Lay the tape out straight, on ground like yours. How long is this test walk?",
    kind=Measure("length", "ft", "m", (10, "ft"), (660, "ft")),
    why="Walking a known length tells how long your pace is.",
    find_out="50 to 200 ft (15 to 60 m) is a good length. Lay a short tape down several times.",
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
    return (
        " ".join(f"{one.said} {one.change}".strip() for one in pace_findings(pace, answers.metric))
        or None
    )


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


class Walks(Several[float]):
    """The counts of several walks; said back with the pace they make."""

    name = "list of number"

    def echo(self, value: Sequence[float], answers: Answers) -> str:
        counts = "; ".join(plain_number(one, 6) for one in value)
        line = answers.get(PACE_LINE)
        if line is None:
            return counts
        try:
            pace = calibrate(line, value)
        except ValueError:
            return counts
        return f"{counts}: {pace_words(pace, answers.metric)}"


def pace_words(pace: Pace, metric: bool, length: Quantity | None = None) -> str:
    """Say a pace, its spread, and the error to expect over ``length``, or 40 ft or 12 m."""
    far = length or (quantity(12.0, "m") if metric else quantity(40.0, "ft"))
    unit = "m" if metric else "ft"
    return (
        f"one pace is {show(pace.length, unit, 3)}, the counts differ by "
        f"{plain_number(significant(100 * pace.spread, 2))} %; over {show(far, unit, 2)} expect to "
        f"be off by {show(expected_error(pace, far), unit, 2)} either way"
    )


PACE_COUNTS = WALKER.question(
    key="pace_counts",
    label="Paces counted",
    text="Walk beside the tape three times or more, at your usual stride. How many paces was each "
    "walk?",
    kind=Walks(Number(3, 400, tail=("paces", "pace")), 1, 20),
    picture=PACING_LINE,
    why="Several walks show how even your pace is.",
    find_out="Write one walk per line; half paces may be written as 19.5. You may count every "
    "step, or every second step, if you do the same here and when you measure.",
    objection=_possible_pace,
    doubt=_likely_pace,
)

ANOTHER_WALKER = WALKER.question(
    key="another_walker",
    label="Another person paces",
    text="Does somebody else pace lengths too?",
    kind=YesNo(),
    why="Each person's pace is kept apart.",
    find_out="Answer no if you are alone.",
    default=always_this("no"),
)

WALKERS = Group(WALKER, (WALKER_NAME, PACE_LINE, PACE_COUNTS), ANOTHER_WALKER)


def walker_pace(answers: Answers, name: str = "") -> Pace:
    """Return the calibrated pace of the walker called ``name``, or of the first one.

    Raises ``Unanswered`` where the pace is not calibrated yet, ``Refused`` for a strange name.
    """
    return named_pace(answers, name)[1]


def named_pace(answers: Answers, name: str = "") -> tuple[str, Pace]:
    """Return the name of a walker as it is listed, and the pace, as ``walker_pace`` does."""
    people = answers.items("walkers")
    if not _PACING(answers.whole()):
        why = "A length is given in paces: answer paces here, then walk a known length."
        raise Unanswered(MEASURED_BY, "measured_by", why=why)
    if not people:
        raise Unanswered(PACE_COUNTS, "walkers.1.pace_counts")
    wanted = name.strip().casefold()
    names = [str(one[WALKER_NAME]) for one in people]
    folded = [one.casefold() for one in names]
    if wanted and wanted not in folded:
        raise Refused(f"Nobody called {name} has a calibrated pace. Known: {', '.join(names)}.")
    place = folded.index(wanted) if wanted else 0
    person = people[place]
    try:
        counts = person[PACE_COUNTS]
        return names[place], calibrate(person[PACE_LINE], counts)
    except ValueError as wrong:
        raise Refused(str(wrong)) from None


def pace_of(answers: Answers, name: str) -> Quantity:
    """Return the length of one pace of ``name``."""
    return walker_pace(answers.whole(), name).length
