"""What every question owes the person: its words, its reason, and honest limits."""

from __future__ import annotations

import re

from interview.asking.question import UNKNOWN_TEXT, Status, always
from interview.garden.stages import GROUPS, QUESTIONS, STAGES, every_question, new_answers
from interview.reading import Refused

ALL = list(every_question())
MOST_TEXT = 240
MOST_WORDS = 30
BANNED = ("invalid", "please", "sorry", "oops", "infiltration", "kindly", "simply", "obviously")
# Two names of published things hold a word that the rest of the interview does not use.
NAMED_IN_REPORTS = {"known_rate": "field infiltration rate"}


def said(question) -> dict[str, str]:
    """Return every text that is shown with a question."""
    texts = {
        "label": question.label,
        "text": question.text,
        "why": question.why,
        "find_out": question.find_out,
        "caution": question.caution,
        "more": question.more,
        "when": question.when,
    }
    for key, label in getattr(question.kind, "options", ()):
        texts[f"option {key}"] = label
    return texts


def item_view(question, answers=None):
    answers = answers or new_answers()
    return answers.at(question.group, 1) if question.group else answers


def test_no_two_questions_share_a_key():
    keys = [question.key for question in ALL]
    assert sorted(keys) == sorted(set(keys))
    stages = [stage.key for stage in STAGES]
    assert not set(keys) & set(stages)
    assert all(re.fullmatch(r"[a-z][a-z0-9_]*", key) for key in keys)


def test_no_two_labels_are_alike():
    labels = [question.label.casefold() for question in ALL]
    assert sorted(labels) == sorted(set(labels))


def test_every_question_says_what_why_and_how_to_find_out(subtests):
    for question in ALL:
        with subtests.test(key=question.key):
            assert question.label and not question.label.endswith(".")
            assert question.text[-1] in "?."
            assert question.why.strip() and question.why.rstrip()[-1] in ".?"
            assert question.find_out.strip() and question.find_out.rstrip()[-1] in ".?"
            assert len(question.text) <= MOST_TEXT
            assert question.caution == "" or question.caution.endswith(".")


def test_sentences_are_short(subtests):
    for question in ALL:
        with subtests.test(key=question.key):
            for name, text in said(question).items():
                for sentence in re.split(r"(?<=[.?!:;])\s+", text):
                    if name == "more":
                        continue
                    assert len(sentence.split()) <= MOST_WORDS, sentence


def test_the_words_are_plain(subtests):
    for question in ALL:
        with subtests.test(key=question.key):
            for name, text in said(question).items():
                text = text.replace(NAMED_IN_REPORTS.get(question.key, "\0"), "")
                for word in BANNED:
                    assert not re.search(rf"\b{word}\b", text, re.IGNORECASE), (name, word)
                assert "!" not in text


def test_a_question_that_is_not_always_asked_says_when(subtests):
    for question in ALL:
        with subtests.test(key=question.key):
            if question.asks is always:
                assert question.when == "always"
            else:
                assert question.when not in ("", "always")


def test_a_question_of_a_group_with_a_condition_of_its_own_words_it(subtests):
    for group in GROUPS.values():
        with subtests.test(group=group):
            assert [question for question in ALL if question.group == group.key] == list(group)
            for question in group:
                own = question.asks is not group.member.asks
                assert own == (question.when != group.member.when), question.key


def test_limits_are_said_where_there_are_any(subtests):
    for question in ALL:
        with subtests.test(key=question.key):
            kind = question.kind
            bounded = (
                any(getattr(kind, name, None) is not None for name in ("at_least", "at_most"))
                and not kind.many
            )
            for units in ("us", "metric"):
                if bounded:
                    assert kind.limits(units).startswith("it must be ")
                assert kind.name
                assert kind.hint(units)


def test_an_honest_default_can_be_read_and_kept(subtests):
    for question in ALL:
        for units in ("us", "metric"):
            with subtests.test(key=question.key, units=units):
                two_spots = {"spots.1.spot_name": "here", "spots.2.spot_name": "there"}
                view = item_view(question, new_answers({"units": units, **two_spots}))
                default = question.default(view)
                if default is None:
                    continue
                value = question.read(default, view)
                kept = question.kind.settle(default, view)
                assert question.read(kept, view) == value
                assert question.kind.settle(kept, view) == kept
                assert question.kind.echo(value, view)


def test_not_knowing_yet_is_always_an_answer(subtests, given):
    for question in ALL:
        with subtests.test(key=question.key):
            view = item_view(question)
            address = view.address(question)
            unsure = new_answers({address: UNKNOWN_TEXT})
            assert item_view(question, unsure).standing(question) is Status.UNKNOWN
            assert item_view(question, unsure).fault(question) is None


def test_junk_is_refused_in_one_plain_sentence(subtests, chance):
    for question in ALL:
        with subtests.test(key=question.key):
            view = item_view(question)
            for junk in chance(1).JUNK:
                try:
                    kept = question.kind.settle(junk, view)
                    question.read(kept, view)
                except Refused as refused:
                    assert str(refused)[-1] in ".…?)"
                    assert "Traceback" not in str(refused)
                except Exception as trouble:
                    # A list of readings or a paced length waits for an earlier answer.
                    assert type(trouble).__name__ == "Unanswered"


def test_whatever_is_taken_reads_back_the_same(subtests, chance, clock):
    for question in ALL:
        with subtests.test(key=question.key):
            luck = chance(7)
            for units in ("us", "metric"):
                answers = new_answers({"units": units}, clock.now)
                view = item_view(question, answers)
                for _ in range(12):
                    text = luck._of(question.kind, view)
                    try:
                        kept = question.kind.settle(text, view)
                        value = question.read(kept, view)
                    except Refused:
                        continue
                    except Exception as trouble:
                        assert type(trouble).__name__ == "Unanswered"
                        continue
                    assert question.kind.settle(kept, view) == kept
                    later = item_view(question, new_answers({"units": units}))
                    assert question.read(kept, later) == value
                    other = "metric" if units == "us" else "us"
                    turned = item_view(question, new_answers({"units": other}))
                    assert question.read(kept, turned) == value, (
                        "the units shown changed a kept answer"
                    )


def test_every_choice_can_be_told_from_the_others(subtests):
    for question in ALL:
        with subtests.test(key=question.key):
            options = getattr(question.kind, "options", ())
            view = item_view(question)
            for place, (key, label) in enumerate(options, 1):
                wanted = key if not question.kind.name.startswith("any") else (key,)
                assert question.kind.read(key, view) == wanted
                assert question.kind.read(label, view) == wanted
                assert question.kind.read(str(place), view) == wanted


def test_only_questions_about_the_hole_dig():
    assert {question.group for question in ALL if question.digs} == {"holes"}
    assert QUESTIONS["hole_dug_on"].digs is False
