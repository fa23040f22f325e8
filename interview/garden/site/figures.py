"""The figures of the spot, and the working behind each."""

from __future__ import annotations

from interview.asking.figure import PERCENT, Figure, Value
from interview.asking.question import Unanswered
from interview.garden.site import lines_questions as buried
from interview.garden.site.results import SiteResults
from interview.quantities.shown import SLOPE


def _none(found: SiteResults) -> Value:
    question = buried.wait_gap(found.answers)
    raise Unanswered(question, question.key)


FIGURES: tuple[Figure[SiteResults], ...] = (
    Figure("earliest_dig_day", "First day to dig", lambda p: p.dig_gate.earliest or _none(p),
           formula="the day after the last full business day of the wait",
           inputs=("lines_asked_on", "lines_business_days", "lines_holidays"),
           source_of=lambda p: buried.wait_source(p.answers)),
    Figure("marks_stale_after", "Last day the marks are good",
           lambda p: p.dig_gate.stale_after or _none(p),
           formula="the days of the marks, counted after the day of the request or of the marking",
           inputs=("lines_asked_on", "lines_finished_on", "lines_valid_days", "lines_valid_kind"),
           source_of=lambda p: buried.marks_source(p.answers)),
    Figure("slope", "Slope of the ground", lambda p: p.slope.fall, *PERCENT,
           "100 x average drop / run", ("slope_run", "slope_drop", "slope_drop_turned"),
           rounding=SLOPE),
)  # fmt: skip
