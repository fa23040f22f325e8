"""The plan: the subjects' records, each worked out from the answers and the records before it.

A part that lacks an answer raises ``Unanswered`` naming the question, so that every reader of the
plan can say what it still waits for.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from dataclasses import field, replace
from typing import TYPE_CHECKING

from interview.answers_file.named_files import NamedFile, no_files
from interview.asking.answers import NO_CLOCK, Answers, changed
from interview.asking.long_work import cached_property
from interview.garden.place import questions as start
from interview.quantities.evidence import Finding, Grade
from interview.quantities.records import record

if TYPE_CHECKING:
    from interview.garden.afterwards.results import BuiltResults
    from interview.garden.checks import Checks
    from interview.garden.earth.results import EarthResults
    from interview.garden.place.results import PlaceResults
    from interview.garden.planting.results import PlantingResults
    from interview.garden.site.results import SiteResults
    from interview.garden.size.results import SizeResults
    from interview.garden.size.rough_results import RoughResults
    from interview.garden.soak.results import SoakResults
    from interview.garden.storms.results import StormsResults
    from interview.garden.survey.results import SurveyResults

RECORDS = (
    "place",
    "site",
    "soak",
    "survey",
    "size",
    "rough",
    "storms",
    "earth",
    "planting",
    "built",
    "checks",
)
"""The subjects' records, each after those it is made from."""


@record(eq=False)
class Plan:
    """The plan of one garden, from the answers in force."""

    answers: Answers
    now: dt.datetime = NO_CLOCK
    open_text: Callable[[str], NamedFile] = field(default=no_files, compare=False)
    """Looks up a file that an answer names; raises ``NoFile``."""
    plants_path: str = ""
    """A plant file given for this run, used in place of the one an answer names."""

    def after(self, before: Plan) -> Plan:
        """Return this plan with every record of ``before`` taken over that holds for it too."""
        gone, taken = changed(before.answers, self.answers), set[str]()
        for name in RECORDS:
            old = before.__dict__.get(name)
            if old is not None and getattr(self, name).take_over(old, gone, taken):
                taken.add(name)
        return self

    def with_answers(self, answers: Answers) -> Plan:
        """Return the plan of other answers, with the same clock and files, this one's work kept."""
        return replace(self, answers=answers).after(self)

    @property
    def system(self) -> str:
        """The units shown: ``us`` or ``metric``."""
        return self.place.system

    @property
    def metric(self) -> bool:
        """Whether metric units are shown."""
        return self.place.metric

    @cached_property
    def place(self) -> PlaceResults:
        """The units shown."""
        from interview.garden.place.results import PlaceResults

        return PlaceResults(self.answers)

    @cached_property
    def site(self) -> SiteResults:
        """The dig gate and the slope."""
        from interview.garden.site.results import SiteResults

        return SiteResults(self.answers, self.now.date())

    @cached_property
    def soak(self) -> SoakResults:
        """The test holes and the rates of the soil."""
        from interview.garden.soak.results import SoakResults

        return SoakResults(self.answers)

    @cached_property
    def survey(self) -> SurveyResults:
        """The surfaces that drain here."""
        from interview.garden.survey.results import SurveyResults

        return SurveyResults(self.answers)

    @cached_property
    def size(self) -> SizeResults:
        """The depth and the basin."""
        from interview.garden.size.results import SizeResults

        return SizeResults(self.answers, self.place, self.soak, self.survey)

    @cached_property
    def rough(self) -> RoughResults:
        """The first size, before the soil is tested."""
        from interview.garden.size.rough_results import RoughResults

        return RoughResults(self.answers, self.place, self.survey, self.size)

    @cached_property
    def storms(self) -> StormsResults:
        """Storms and years of rain in the garden."""
        from interview.garden.storms.results import StormsResults

        return StormsResults(
            self.answers,
            self.place,
            self.soak,
            self.survey,
            self.size,
            open_text=self.open_text,
        )

    @cached_property
    def earth(self) -> EarthResults:
        """What is dug, moved, bought and built."""
        from interview.garden.earth.results import EarthResults

        return EarthResults(self.answers, self.place, self.site, self.survey, self.size)

    @cached_property
    def planting(self) -> PlantingResults:
        """Which plants, how many, and where."""
        from interview.garden.planting.results import PlantingResults

        return PlantingResults(
            self.answers,
            self.size,
            self.storms,
            self.earth,
            self.plants_path,
            open_text=self.open_text,
        )

    @cached_property
    def built(self) -> BuiltResults:
        """What the garden holds as it was dug."""
        from interview.garden.afterwards.results import BuiltResults

        return BuiltResults(self.answers, self.place, self.soak, self.size, self.earth)

    @cached_property
    def checks(self) -> Checks:
        """What ties a later subject back to an earlier one, and everything found."""
        from interview.garden.checks import Checks

        return Checks(
            self.answers,
            self.site,
            self.soak,
            self.survey,
            self.size,
            self.storms,
            self.earth,
            self.planting,
            self.built,
            self.now.date(),
        )

    @cached_property
    def without_record(self) -> Plan:
        """The same plan as if there were no rainfall record."""
        return self.with_answers(self.answers.with_text(start.HAS_RECORD.key, "no"))

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Everything found about the spot chosen and the garden, worst first."""
        return self.checks.findings

    @property
    def verdict(self) -> Grade:
        """The worst of the findings."""
        return self.checks.verdict
