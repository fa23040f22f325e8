"""The whole interview in its written order."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from interview.asking.answers import Answers, Interview
from interview.asking.question import Question, Stage
from interview.garden import path
from interview.garden.afterwards import questions as review
from interview.garden.place import questions as start
from interview.garden.planting import questions as planting
from interview.garden.site import questions as site
from interview.garden.size import questions as bed
from interview.garden.soak import questions as soak
from interview.garden.survey import pacing_questions as walking
from interview.garden.survey import questions as survey

STAGES: tuple[Stage, ...] = (
    start.STAGE,
    site.STAGE,
    soak.STAGE,
    survey.STAGE,
    bed.STAGE,
    planting.STAGE,
    review.STAGE,
)


def _units_of(answers: Answers) -> str:
    return answers.whole().get(start.UNITS) or "us"


def _country_of(answers: Answers) -> str:
    return answers.whole().get(start.COUNTRY) or "us"


INTERVIEW = Interview(STAGES, _units_of, walking.pace_of, _country_of, path.PATH, path.OPTIONAL)
QUESTIONS, GROUPS = INTERVIEW.questions, INTERVIEW.groups
STAGE_OF = INTERVIEW.stage_of
question_at, new_answers = INTERVIEW.question_at, INTERVIEW.answers


def every_question() -> Iterator[Question[Any]]:
    """Yield every question in order."""
    return iter(QUESTIONS.values())
