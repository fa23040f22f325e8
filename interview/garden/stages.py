"""The whole interview in its written order."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

from interview.asking.model import NO_CLOCK, Answers, Customs, Group, Question, Stage
from interview.garden.afterwards import questions as review
from interview.garden.place import questions as start
from interview.garden.planting import questions as planting
from interview.garden.site import questions as site
from interview.garden.size import questions as bed
from interview.garden.soak import questions as soak
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

QUESTIONS: dict[str, Question[Any]] = {q.key: q for stage in STAGES for q in stage.questions()}
GROUPS: dict[str, Group] = {
    part.key: part for stage in STAGES for part in stage.parts if isinstance(part, Group)
}
STAGE_OF: dict[str, Stage] = {q.key: stage for stage in STAGES for q in stage.questions()}
STAGE_OF_GROUP: dict[str, Stage] = {
    part.key: stage for stage in STAGES for part in stage.parts if isinstance(part, Group)
}


def _units_of(answers: Answers) -> str:
    return answers.whole().get(start.UNITS) or "us"


def _country_of(answers: Answers) -> str:
    return answers.whole().get(start.COUNTRY) or "us"


CUSTOMS = Customs(_units_of, survey.pace_of, _country_of)


def new_answers(texts: Mapping[str, str] | None = None, now: dt.datetime = NO_CLOCK) -> Answers:
    """Return answers holding ``texts`` by address."""
    return Answers(dict(texts or {}), CUSTOMS, now)


def question_at(address: str) -> tuple[Question[Any], int] | None:
    """Return the question kept at ``address`` and its item number (0 outside groups)."""
    parts = address.split(".")
    if len(parts) == 1:
        question = QUESTIONS.get(parts[0])
        return (question, 0) if question and not question.group else None
    if len(parts) == 3 and parts[1].isdigit():
        question = QUESTIONS.get(parts[2])
        if question and question.group == parts[0]:
            return question, int(parts[1])
    return None


def every_question() -> Iterator[Question[Any]]:
    """Yield every question in order."""
    for stage in STAGES:
        yield from stage.questions()
