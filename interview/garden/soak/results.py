"""From the answers about the test holes to the rates of the soil."""

from __future__ import annotations

from interview.asking.answers import Answers
from interview.asking.question import Unanswered
from interview.asking.results import Results, part
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import questions as soak
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.hole import Hole, HoleShape
from interview.garden.soak.rates import SoakTest, Texture, TextureCheck, soak_test, texture_check
from interview.garden.soak.reading_lines import EMPTIED, EMPTY, REFILLED
from interview.garden.soak.readings import CombinedRate, Reading, combine
from interview.quantities.evidence import Provenance, Source
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

TEXTURE_OF = {
    "falls_apart": Texture.SAND,
    "ball": Texture.LOAMY_SAND,
    "short_gritty": Texture.SANDY_LOAM,
    "short": Texture.LOAM,
    "short_smooth": Texture.SILT_LOAM,
    "medium_gritty": Texture.SANDY_CLAY_LOAM,
    "medium": Texture.CLAY_LOAM,
    "medium_smooth": Texture.SILTY_CLAY_LOAM,
    "long_gritty": Texture.SANDY_CLAY,
    "long": Texture.CLAY,
    "long_smooth": Texture.SILTY_CLAY,
}
"""The texture class of each thing a handful may do. Source: ``FEEL_KEY``."""


@record
class HoleReport:
    """One test hole: its test where there is one, or what it waits for."""

    number: int
    name: str
    test: SoakTest | None
    waits_for: Unanswered | None
    texture: TextureCheck | None
    set_aside: str = ""
    """Why the hole is shown but not used; empty where it counts."""

    @property
    def counts(self) -> bool:
        """Tell whether this hole has a rate that is used."""
        return self.test is not None and not self.set_aside


@record
class SoilRate:
    """The rates that stand for the soil, and where they come from."""

    drop_rate: Quantity | None
    """The fall in the hole; nothing where a report gave the rate."""
    mean_drop_rate: Quantity | None
    """All the fall over all the time."""
    lower_drop_rate: Quantity | None
    """What the depth goes by: in each hole the lower of the two."""
    corrected: Quantity
    """The rate through level ground alone."""
    standard_error: Quantity | None
    combined: CombinedRate | None
    source: Source


def hole_of(answers: Answers) -> Hole:
    """Return the test hole described by one item's answers; raises ``Unanswered``."""
    shape = HoleShape(answers[digging.HOLE_SHAPE])
    tapered = shape is HoleShape.TAPERED
    return Hole(
        shape,
        answers[digging.HOLE_WIDTH],
        answers[digging.HOLE_LENGTH] if shape is HoleShape.RECTANGULAR else None,
        answers[digging.HOLE_TOP_WIDTH] if tapered else None,
        answers[digging.HOLE_TOP_HEIGHT] if tapered else None,
    )


def readings_of(answers: Answers) -> list[Reading]:
    """Return the readings that count, timed from the start of the test."""
    began = answers[timing.TEST_START]
    found: list[Reading] = []
    at_mark = answers[timing.WATER_AT_MARK]
    level = magnitude(at_mark, "in")
    for event, deep in timing.depths(answers[timing.READINGS], at_mark):
        if deep is not None:
            # One depth written in two units may differ in the last bit of a float.
            inches = magnitude(deep, "in")
            level = inches if event.what == REFILLED else min(inches, level)
            deep = quantity(level, "in")
        elapsed = quantity((event.at - began).total_seconds(), "s")
        if event.what == REFILLED and found and found[-1].elapsed == elapsed:
            found[-1] = found[-1]._replace(refilled_to=deep)
        elif event.what == REFILLED:
            found.append(Reading(elapsed, None, refilled_to=deep))
        elif event.what == EMPTIED:
            found.append(Reading(elapsed, None, emptied=True, emptied_at=elapsed))
        else:
            found.append(Reading(elapsed, deep, emptied=event.what == EMPTY))
    return found


def test_of(answers: Answers) -> SoakTest:
    """Return the soak test of one hole; raises ``Unanswered``."""
    hole = hole_of(answers)
    at_mark = answers[timing.WATER_AT_MARK]
    readings = readings_of(answers)
    try:
        return soak_test(hole, at_mark, readings, reading_error=answers[timing.RULER])
    except ValueError as wrong:
        raise Unanswered(
            timing.READINGS, answers.address(timing.READINGS), why=str(wrong)
        ) from None


def set_aside(answers: Answers) -> str:
    """Return why one hole is not used; nothing where it counts."""
    if spot := soak.elsewhere(answers):
        return f"it is at spot {spot}, not at the one chosen"
    if answers.get(soak.HOLE_COUNTS) is not False:
        return ""
    return answers.get(soak.HOLE_SET_ASIDE_WHY) or "no reason given yet"


def hole_report(answers: Answers) -> HoleReport:
    """Return the report on one hole."""
    number = answers.scope[1] if answers.scope else 1
    name = answers[digging.HOLE_NAME]
    aside = set_aside(answers)
    try:
        test = test_of(answers)
    except Unanswered as gap:
        return HoleReport(number, name, None, gap, None, aside)
    return HoleReport(number, name, test, None, as_felt(answers, test), aside)


def as_felt(answers: Answers, test: SoakTest) -> TextureCheck | None:
    """Return the test held against the soil as it felt; nothing where that was not said."""
    felt = answers.get(digging.RIBBON)
    return texture_check(test.corrected, TEXTURE_OF[felt]) if felt else None


def soil_rate(answers: Answers, holes: tuple[HoleReport, ...]) -> SoilRate:
    """Return the rates that govern; raises ``Unanswered``.

    Holes that are set aside are passed over. The error is that of the hole that governs, and
    nothing where the rate lies between two holes.
    """
    if answers.get(digging.RATE_FROM) == "report":
        by = answers.get(digging.KNOWN_RATE_BY) or "a report you gave"
        rate = answers[digging.KNOWN_RATE]
        return SoilRate(None, None, None, rate, None, None, Source(by, Provenance.YOURS))
    used = [hole for hole in holes if not hole.set_aside]
    tests = [hole.test for hole in used if hole.test is not None]
    if not tests:
        raise _gap(answers, holes, used)
    both = combine(tests)
    source = Source("soak test in the yard", Provenance.YOURS)
    error = next((one.standard_error for one in tests if one.corrected == both.corrected), None)
    return SoilRate(
        both.drop_rate,
        both.mean_drop_rate,
        both.lower_drop_rate,
        both.corrected,
        error,
        both,
        source,
    )


def _gap(answers: Answers, holes: tuple[HoleReport, ...], used: list[HoleReport]) -> Unanswered:
    """What the rate waits for, where no hole gives one."""
    for hole in used:
        if hole.waits_for:
            return hole.waits_for
    if holes and all(soak.elsewhere(view) for view in answers.items("holes")):
        why = "The hole you tested is at another spot. Test one at the spot chosen."
        address = f"holes.{holes[-1].number}.{soak.HOLE_SPOT.key}"
        return Unanswered(soak.HOLE_SPOT, address, why=why)
    if holes:
        why = "Every hole you tested is set aside. Test another hole, or use one of these."
        address = f"holes.{holes[-1].number}.{soak.HOLE_COUNTS.key}"
        return Unanswered(soak.HOLE_COUNTS, address, why=why)
    return Unanswered(digging.HOLE_DEPTH, "holes.1.hole_depth")


class SoakResults(Results):
    """What the soak tests say of the soil."""

    @part
    def holes(self) -> tuple[HoleReport, ...]:
        """Each test hole that has any answer."""
        return tuple(hole_report(hole) for hole in self.answers.items("holes"))

    @part
    def soil(self) -> SoilRate:
        """The rates that stand for the soil of the garden."""
        return soil_rate(self.answers, self.holes)
