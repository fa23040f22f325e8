"""A sitting of an interview that is about no garden: going on, coming back, what is kept."""

from collections.abc import Callable

import pytest

from interview.asking.answers import Interview
from interview.asking.conditions import chosen
from interview.asking.kinds import Note, YesNo
from interview.asking.question import Question, Stage
from interview.asking.sitting import Doubt, Sitting
from interview.asking.walk import LOOKED_AT
from interview.reading import Refused

ASIDE = {"why": "To know.", "find_out": "Ask."}
AGE = Question(key="age", label="Age", text="How old is it?", kind=Note(), **ASIDE)
DOG = Question(key="dog", label="Dog", text="Is it a dog?", kind=YesNo(), **ASIDE)
NAME = Question(key="name", label="Name", text="What is it called?", kind=Note(),
                asks=chosen(DOG, True), when="it is a dog", **ASIDE)  # fmt: skip
PARK = Question(key="park", label="Park", text="Where does it run?", kind=Note(), **ASIDE)
PETS = Interview(
    (Stage("pets", "A", "Pets", (AGE, DOG, NAME, PARK)),),
    lambda _: "us",
    lambda _answers, _name: pytest.fail("no pace is asked for"),
)


class Leashed(Sitting):
    """The park is shut until the dog has a name; a long name is doubted."""

    def shut(self, step):
        shut = step.question is PARK and "name" not in self.answers.texts
        return ["Name the dog first."] if shut else []

    def ways(self, step):
        return [self._at("name")] if self.shut(step) else []

    def _doubt(self, step, value):
        return "That is long." if len(str(value)) > 9 else ""


@pytest.fixture
def sit(clock, keeper) -> Callable[..., Leashed]:
    return lambda texts, stopped_at="": Leashed(PETS.answers(texts), keeper, clock, stopped_at)


def test_each_answer_is_saved_with_the_place_and_leads_to_the_next(sit, keeper):
    sitting = sit({"age": "3"})
    assert sitting.offer(sitting.step, "y").echo == "yes"
    assert sitting.go_on_open().address == "name"
    sitting.offer(sitting.step, "Rex")
    assert keeper.saves[-1] == ({"age": "3", "dog": "yes", "name": "Rex"}, "name")
    assert sitting.go_on_open().address == "park"


def test_what_is_taken_is_half_typed_no_more_by_the_time_it_is_saved(clock):
    drafts, saved = {"age": "3 yea", "name": "Re"}, []

    class Noting:
        def keep(self, _answers, _stopped_at):
            saved.append(dict(drafts))

    sitting = Leashed(PETS.answers({}), Noting(), clock, drafts=drafts)
    sitting.begin_at("age")
    sitting.take({"age": "3"})
    assert saved == [{"name": "Re"}]


def test_what_is_shut_is_passed_over_and_takes_no_answer(sit, keeper):
    sitting = sit({"age": "3", "dog": "yes"})
    assert sitting.go_on_open() is None and "Name the dog" in sitting.passed_over
    with pytest.raises(Refused, match="Name the dog"):
        sitting.offer(sitting.jump("park"), "the lake")
    assert keeper.saves == []


def test_a_question_gone_to_may_be_opened_by_another_and_both_are_come_back_to(sit):
    sitting = sit({"dog": "yes"})
    assert sitting.step.address == "age"
    assert sitting.visit("park").address == "park"
    assert sitting.mend().address == "name"
    sitting.offer(sitting.step, "Rex")
    assert sitting.go_on_open().address == "park"
    sitting.offer(sitting.step, "the lake")
    assert sitting.go_on_open().address == "age"


def test_an_unlikely_answer_is_kept_when_it_is_given_twice(sit):
    sitting = sit({"age": "3", "dog": "yes"})
    with pytest.raises(Doubt, match=r"That is long\. Give the same"):
        sitting.offer(sitting.step, "Bartholomew")
    assert sitting.offer(sitting.step, "Bartholomew").kept == "Bartholomew"


def test_whoever_stopped_at_an_answered_question_comes_back_to_it(sit, keeper):
    known = {"age": "3", "dog": "yes"}
    sitting = sit(known)
    sitting.jump("age")
    sitting.keep_place()
    assert keeper.saves == [(known, "age" + LOOKED_AT)]
    assert sit(known, keeper.saves[-1][1]).step.address == "age"
    assert sit(known, "age").step.address == "name"
