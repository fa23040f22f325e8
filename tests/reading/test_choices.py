"""Yes or no, choices from a list, and not knowing yet."""

from __future__ import annotations

import pytest

from interview.reading import Refused, Suggested, is_unknown, read_choice, read_ticks, read_yes_no

OPTIONS = (
    ("well", "Drinking-water well"),
    ("septic", "Septic tank"),
    ("wall", "Retaining wall, old"),
    ("not_sure", "Something else"),
)


def refusal(read, text, *rest) -> str:
    with pytest.raises(Refused) as caught:
        read(text, *rest)
    return caught.value.said


def test_yes_is_read(subtests):
    for text in ["yes", "Yes", "YES", "on", "true", "y", "Y", " yes\n"]:
        with subtests.test(text=text):
            assert read_yes_no(text) is True


def test_no_is_read(subtests):
    for text in ["no", "No", "NO", "off", "false", "n"]:
        with subtests.test(text=text):
            assert read_yes_no(text) is False


def test_anything_else_is_neither_yes_nor_no(subtests):
    for text in ["maybe", "1", "0", "~", "", "yes no"]:
        with subtests.test(text=text):
            assert refusal(read_yes_no, text)


def test_a_choice_is_named_by_id_label_number_or_beginning(subtests):
    for text, key in [
        ("well", "well"), ("WELL ", "well"), ("drinking-water well", "well"), ("2", "septic"),
        ("sept", "septic"), ("Retaining wall, old", "wall"), ("not sure", "not_sure"),
        ("not-sure", "not_sure"), ("some", "not_sure"), ("d", "well"),
    ]:  # fmt: skip
        with subtests.test(text=text, key=key):
            assert read_choice(text, OPTIONS) == key


def test_a_beginning_of_two_options_is_refused_showing_both():
    said = refusal(read_choice, "w", OPTIONS)
    assert "Drinking-water well" in said
    assert "Retaining wall, old" in said


def test_a_misspelt_choice_is_refused_with_the_nearest_name():
    assert "Did you mean Septic tank?" in refusal(read_choice, "setpic tank", OPTIONS)


def test_a_word_of_one_label_alone_is_suggested_and_never_taken(subtests):
    soils = (
        ("sand", "sandy: gritty"),
        ("loam", "smooth, like flour"),
        ("clay", "sticky, a ribbon"),
    )
    for text, meant in [
        ("cley", "clay"), ("lom", "loam"), ("ribon", "clay"), ("it is floury", "loam"),
        ("girtty", "sand"),
    ]:  # fmt: skip
        with subtests.test(text=text):
            with pytest.raises(Suggested) as near:
                read_choice(text, soils)
            assert near.value.meant == meant
    for text in ["ribon or floury", "no ribbon", "moat"]:
        with subtests.test(text=text):
            with pytest.raises(Refused) as refused:
                read_choice(text, soils)
            assert not isinstance(refused.value, Suggested)


def test_a_word_near_yes_or_no_is_asked_back(subtests):
    for text, meant in [("yeah", "yes"), ("Yess!", "yes"), ("nope", "no"), ("not yet", "no")]:
        with subtests.test(text=text):
            with pytest.raises(Suggested) as near:
                read_yes_no(text)
            assert near.value.meant == meant
    with pytest.raises(Refused) as refused:
        read_yes_no("maybe")
    assert not isinstance(refused.value, Suggested)


def test_what_names_no_option_is_refused(subtests):
    for text in ["0", "5", "99", "-1", "", "  ", "we\u200bll", "\u202ewell", "-"]:
        with subtests.test(text=text):
            assert refusal(read_choice, text, OPTIONS)


def test_ticks_come_back_in_the_order_of_the_list(subtests):
    for text, keys in [
        ("1, 3", ("well", "wall")), ("3,1", ("well", "wall")), ("1 3", ("well", "wall")),
        ("well, septic", ("well", "septic")), ("well and septic", ("well", "septic")),
        ("septic; septic", ("septic",)), ("none", ()), ("None of these", ()),
        ("Retaining wall, old", ("wall",)), ("2", ("septic",)),
    ]:  # fmt: skip
        with subtests.test(text=text, keys=keys):
            assert read_ticks(text, OPTIONS) == keys


def test_ticks_that_name_no_option_are_refused(subtests):
    for text in ["", ",", "none, 1", "1, 9", "well, moat"]:
        with subtests.test(text=text):
            assert refusal(read_ticks, text, OPTIONS)


def test_an_option_named_none_is_ticked():
    assert read_ticks("none", (*OPTIONS, ("none", "None of these"))) == ("none",)


def test_not_knowing_yet_is_understood(subtests):
    for text in [
        "don't know yet", "Don’t know yet.", "dont know", "not sure", "unknown", "?", "skip",
        "not_sure", "idk", "DON'T  KNOW",
    ]:  # fmt: skip
        with subtests.test(text=text):
            assert is_unknown(text)


def test_other_words_are_not_taken_for_not_knowing(subtests):
    for text in ["", "12", "no", "not", "sure", "12?", "?" * 1000]:
        with subtests.test(text=text):
            assert not is_unknown(text)


def test_a_choice_that_was_nearly_written_is_named_with_the_text_to_take():
    with pytest.raises(Suggested) as one:
        read_choice("setpic tank", OPTIONS)
    assert read_choice(one.value.meant, OPTIONS)
    labels = [label for _, label in OPTIONS]
    with pytest.raises(Suggested) as several:
        read_ticks(f"{labels[0]}, setpic tank", OPTIONS)
    assert read_ticks(several.value.meant, OPTIONS) == read_ticks(
        f"{labels[0]}, Septic tank", OPTIONS
    )
