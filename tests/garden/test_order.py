"""Every condition, default and objection looks only at questions asked before it on the path."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.path import each_question
from interview.asking.question import Unanswered
from interview.garden.stages import INTERVIEW, STAGES, every_question, new_answers, question_at
from interview.reading import Refused

PLACES = {page.key: place for place, page in enumerate(each_question(INTERVIEW))}
# A length in paces may be written anywhere; it waits for the pace.
PACING = {"walker_name", "pace_line", "pace_counts", "measured_by"}
# What is said at the hole holds until its depth is given; so long it may be asked for.
OWN = {"hole_depth": {"hole_depth"}}
UNTIL = {"test_to_learn": {"hole_depth"}}
# A file may name another country at once: then no state is asked for.
AT_ONCE = {"state": {"country"}}
# A floor pegged in a file of version 0.1 was pegged for an inch of rain, though nobody answered it;
# one that is pegged now keeps the rain it was shown as words, so what was shown stays.
PEGGED = {"rain_depth": {"floor_length", "floor_width"}}
# What is said beside the pieces goes by the usual of the roof until a row says otherwise.
ROWS = {"pieces": {"roof_valley", "roof_sides", "surface_basis"}}

# Another surface is meant by its name, which has a usual one until a row says otherwise.
NAMED = {"falls_on": {"surface_name"}}


class Watched(Mapping):
    """Texts that note which questions were looked at."""

    def __init__(self, texts):
        self.texts = texts
        self.seen = set()

    def __getitem__(self, address):
        self.seen.add(address.split(".")[-1])
        return self.texts[address]

    def __iter__(self):
        return iter(self.texts)

    def __len__(self):
        return len(self.texts)

    def get(self, address, default=None):
        self.seen.add(address.split(".")[-1])
        return self.texts.get(address, default)


def filled(seed, chance, given):
    """Return a garden with nearly every question answered."""
    luck, answers = chance(seed), given()
    for _ in range(3):
        for step in route.steps(answers):
            if step.address in answers.texts:
                continue
            text = luck.text(step, answers)
            view = step.view(answers)
            try:
                kept = step.question.kind.settle(text, view)
                step.question.read(kept, view)
            except (Refused, Unanswered):
                continue
            answers = answers.with_text(step.address, kept)
    return answers


@pytest.fixture(params=range(6))
def garden(request, chance, given):
    return given() if request.param == 0 else filled(request.param, chance, given)


def looked_at(call, address, texts, now):
    """Return the keys that ``call`` looks at for the question at ``address``."""
    watched = Watched(dict(texts))
    question, number = question_at(address)
    answers = new_answers({}, now)
    answers = type(answers)(watched, answers.interview, now)
    call(question, answers.at(question.group, number) if number else answers)
    return watched.seen


def every_address():
    for question in every_question():
        yield f"{question.group}.1.{question.key}" if question.group else question.key


@pytest.fixture(autouse=True)
def names_untold(monkeypatch):
    """Leave sentences as they are: telling them looks for the names a person gave, everywhere."""
    monkeypatch.setattr(Answers, "told", lambda _, said: said)


@pytest.mark.parametrize("what", ["asks", "default", "wording"])
def test_conditions_and_defaults_look_back_only(garden, what):
    for address in every_address():
        key = address.split(".")[-1]
        seen = looked_at(
            lambda question, view: getattr(question, what)(view), address, garden.texts, garden.now
        )
        late = {one for one in seen if PLACES[one] >= PLACES[key]} - PACING
        late -= ROWS.get(key, set()) | OWN.get(key, set()) if what == "wording" else set()
        late -= UNTIL.get(key, AT_ONCE.get(key, set())) if what == "asks" else set()
        late -= PEGGED.get(key, set()) if what == "default" else set()
        assert not late, f"{what} of {key} looks at {late}"


@pytest.mark.parametrize("what", ["objection", "doubt"])
def test_objections_and_doubts_look_back_only(garden, what):
    for address, text in garden.texts.items():
        key = address.split(".")[-1]

        def weigh(question, view, text=text):
            try:
                value = question.kind.read(text, view)
            except (Refused, Unanswered):
                return
            getattr(question, what)(value, view)

        seen = looked_at(weigh, address, garden.texts, garden.now) - {key}
        late = {one for one in seen if PLACES[one] >= PLACES[key]} - PACING
        late -= ROWS.get(key, set()) if what == "doubt" else NAMED.get(key, set())
        assert not late, f"{what} of {key} looks at {late}"


def test_setting_answers_aside_does_not_change_which_questions_apply(subtests, chance, given):
    for seed in range(12):
        with subtests.test(seed=seed):
            garden, luck = filled(seed, chance, given), chance(seed + 100)
            for _ in range(6):
                choices = [
                    s
                    for s in route.steps(garden)
                    if s.question.kind.name in ("one choice", "yes or no", "any of a list")
                ]
                step = luck.rng.choice(choices)
                garden = garden.with_text(step.address, luck.text(step, garden))
                before = [step.address for step in route.steps(garden)]
                after = [step.address for step in route.steps(route.in_force(garden))]
                assert before == after, step.address


def test_a_state_set_aside_with_its_country_asks_nothing_more(given):
    answers = given({"country": "us", "state": "vt", "plant_region": "northeast"})
    abroad = answers.with_text("country", "canada")
    before = [step.address for step in route.steps(abroad)]
    after = [step.address for step in route.steps(route.in_force(abroad))]
    assert before == after


def test_the_watch_sees_a_look_ahead(garden):
    seen = looked_at(
        lambda question, view: view.text(question_at("notes")[0]), "units", {}, garden.now
    )
    assert seen == {"notes"}


def test_the_conditions_of_a_stage_never_look_into_a_later_stage(garden):
    stage_of = {q.key: place for place, stage in enumerate(STAGES) for q in stage.questions()}
    for address in every_address():
        key = address.split(".")[-1]
        seen = looked_at(
            lambda question, view: question.asks(view), address, garden.texts, garden.now
        )
        assert all(stage_of[one] <= stage_of[key] for one in seen)
