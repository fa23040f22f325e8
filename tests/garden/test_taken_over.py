"""A plan that takes over what did not change says what a fresh plan says, after any edits."""

from __future__ import annotations

from pathlib import Path

import pytest

from interview.asking import route
from interview.asking.answers import NO_CLOCK
from interview.asking.question import UNKNOWN_TEXT, Unanswered
from interview.garden.figures import found
from interview.garden.plan import RECORDS, Plan
from interview.garden.stages import new_answers
from interview.garden.store import load
from interview.reading import Refused

SAMPLES = Path(__file__).parents[2] / "sample_answers"
BATCHES, EDITS = 4, 25
"""Enough to be quick, and raised by hand now and then."""


def sample(name, now=NO_CLOCK):
    return new_answers(load(SAMPLES / name)[0].answers.texts, now)


def edited(luck, answers):
    """Return ``answers`` with one of them changed, put off or taken away, all by chance."""
    step = luck.rng.choice(route.steps(answers))
    way = luck.rng.random()
    if way < 0.1:
        return answers.without(step.address)
    if way < 0.15:
        return answers.with_text(step.address, UNKNOWN_TEXT)
    view = step.view(answers)
    try:
        return answers.with_text(
            step.address, step.question.kind.settle(luck.text(step, answers), view)
        )
    except (Refused, Unanswered):
        return answers


def said(plan):
    """Return every figure and finding of a plan."""
    figures = [
        (one.figure.key, one.number(plan.metric), one.waits_for and one.waits_for.address)
        for one in found(plan)
    ]
    return figures, plan.findings


@pytest.mark.parametrize("batch", range(BATCHES))
def test_what_is_taken_over_is_what_a_fresh_plan_works_out(batch, chance, clock):
    luck = chance(batch)
    answers = sample(f"finished_{('us', 'metric')[batch % 2]}.yaml", clock.now)
    plan = None
    for _ in range(EDITS):
        answers = edited(luck, answers)
        later = Plan(route.in_force(answers), answers.now)
        plan = later.after(plan) if plan else later
        fresh = Plan(route.in_force(new_answers(answers.texts, answers.now)), answers.now)
        assert said(plan) == said(fresh)


def test_a_name_changes_no_record_and_a_rain_depth_leaves_the_soil_alone():
    answers = sample("finished_us.yaml")
    plan = Plan(route.in_force(answers))
    said(plan)
    named = Plan(route.in_force(answers.with_text("garden_name", "Oak"))).after(plan)
    # Of a tested soil the first size looks at no answer itself.
    assert all(getattr(named, name).reads for name in RECORDS if name not in ("place", "rough"))
    assert named.size.__dict__["garden"] is plan.size.__dict__["garden"]
    wetter = Plan(route.in_force(answers.with_text("rain_depth", "1.5 in"))).after(plan)
    assert wetter.soak.__dict__["soil"] is plan.soak.__dict__["soil"]
    assert "garden" not in wetter.size.__dict__


def test_values_of_other_answers_are_kept_and_those_that_hang_on_a_change_are_not():
    answers = sample("finished_us.yaml")
    plan = Plan(route.in_force(answers))
    said(plan)
    kept = plan.answers.with_text("rain_depth", "1.5 in")._values
    assert any(name.startswith("holes.1.readings=") for name in kept)
    assert not any("rain_depth" in one.reads for one in kept.values())
    metric = plan.answers.with_text("units", "metric")._values
    assert not any(name.startswith("holes.1.readings=") for name in metric)


def test_what_words_supposed_bring_about_is_worked_out_once_and_kept_with_them(
    session_of, monkeypatch
) -> None:
    session, followed, steps = session_of(sample("finished_us.yaml")), [], route._steps
    address = "surfaces.1.outlets_here"
    session.go_to(address)
    words = {address: "2"}
    assert session.answers.texts[address] == "1"
    monkeypatch.setattr(route, "_steps", lambda of: followed.append(of) or steps(of))
    boxes = [session.boxes(words), session.boxes(dict(words))]
    session.offered(session.step, words)
    session.take(words)
    assert [session.boxes()] * 2 == boxes
    assert session.answers.texts[address] == "2" and len(followed) == 1
    # Other words, or the same beside other answers, are supposed anew.
    assert session.supposing({address: "1"}).texts[address] == "1"
    assert session.supposing(words) is not session.supposing({address: "1"})
