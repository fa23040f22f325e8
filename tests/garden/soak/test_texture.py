"""Texture by feel, held against the tested rate."""

from interview.garden.soak import hole_questions as digging
from interview.garden.soak.rates import Texture, texture_check
from interview.garden.soak.results import TEXTURE_OF
from interview.quantities.units import quantity


def test_more_than_three_times_apart_is_flagged(subtests):
    for rate, far in [(0.70, True), (0.69, False), (0.68, False), (0.077, False), (0.076, True)]:
        with subtests.test(rate=rate, far=far):
            assert texture_check(quantity(rate, "cm/h"), Texture.CLAY_LOAM).far_apart is far


# Thien, A flow diagram for teaching texture-by-feel analysis, Journal of Agronomic Education 8,
# 1979, from memory: a ribbon under 1 in, 1 to 2 in, over 2 in; then gritty, smooth or neither.
KEY = {
    "falls_apart": Texture.SAND,
    "ball": Texture.LOAMY_SAND,
    "short_gritty": Texture.SANDY_LOAM,
    "short_smooth": Texture.SILT_LOAM,
    "short": Texture.LOAM,
    "medium_gritty": Texture.SANDY_CLAY_LOAM,
    "medium_smooth": Texture.SILTY_CLAY_LOAM,
    "medium": Texture.CLAY_LOAM,
    "long_gritty": Texture.SANDY_CLAY,
    "long_smooth": Texture.SILTY_CLAY,
    "long": Texture.CLAY,
}


def test_each_thing_a_handful_may_do_names_the_texture_of_the_key():
    assert [one for one, _ in digging.RIBBON.kind.options if KEY.get(one) != TEXTURE_OF[one]] == []
    assert set(KEY) == set(TEXTURE_OF)


def test_two_steps_lead_to_every_answer_and_to_no_other():
    kind = digging.RIBBON.kind
    ways = {
        kind.joined(first, sort)
        for first, _ in kind.first
        for sort, _ in (kind.sorts if kind.has_sorts(first) else [("", "")])
    }
    assert ways == set(KEY)
    assert all(kind.joined(*kind.parted(key)) == key for key in KEY)
    assert len({label for _, label in kind.first}) == 5


def test_a_number_is_that_of_the_step_and_a_whole_answer_is_taken_at_once(subtests):
    kind = digging.RIBBON.kind
    for typed, begun, meant in [
        ("1", "", ("falls_apart", False)),
        ("3", "", ("short", True)),
        ("a ribbon over 2 in", "", ("long", True)),
        ("short", "", ("short", False)),
        ("medium_smooth", "", ("medium_smooth", False)),
        ("1", "long", ("long_gritty", False)),
        ("smooth", "medium", ("medium_smooth", False)),
        ("3", "long", ("long", False)),
        ("ball", "long", ("ball", False)),
    ]:
        with subtests.test(typed=typed, begun=begun):
            assert kind.at_step(typed, begun) == meant


def test_a_number_in_a_file_is_still_that_of_the_whole_list(given):
    # As version 0.1 read it: the third of the eleven.
    assert digging.RIBBON.kind.read("3", given({})) == "short_gritty"
