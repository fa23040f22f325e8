"""Texture by feel, held against the tested rate."""

import pytest

from interview.garden.soak import hole_questions as digging
from interview.garden.soak.results import TEXTURE_OF
from interview.garden.soak.texture import Ball, Rub, Texture, texture_by_feel, texture_check
from interview.quantities.units import quantity


@pytest.mark.parametrize(
    ("ball", "ribbon", "rub", "texture"),
    [
        (Ball.FALLS_APART, None, Rub.GRITTY, Texture.SAND),
        (Ball.NO_RIBBON, None, Rub.NEITHER, Texture.LOAMY_SAND),
        (Ball.RIBBON, 0.99, Rub.GRITTY, Texture.SANDY_LOAM),
        (Ball.RIBBON, 0.5, Rub.SMOOTH, Texture.SILT_LOAM),
        (Ball.RIBBON, 0.5, Rub.NEITHER, Texture.LOAM),
        (Ball.RIBBON, 1.0, Rub.GRITTY, Texture.SANDY_CLAY_LOAM),
        (Ball.RIBBON, 1.5, Rub.SMOOTH, Texture.SILTY_CLAY_LOAM),
        (Ball.RIBBON, 2.0, Rub.NEITHER, Texture.CLAY_LOAM),
        (Ball.RIBBON, 2.1, Rub.GRITTY, Texture.SANDY_CLAY),
        (Ball.RIBBON, 3.0, Rub.SMOOTH, Texture.SILTY_CLAY),
        (Ball.RIBBON, 3.0, Rub.NEITHER, Texture.CLAY),
    ],
)
def test_ball_ribbon_and_rub_name_the_texture(ball, ribbon, rub, texture):
    length = None if ribbon is None else quantity(ribbon, "in")
    assert texture_by_feel(ball, length, rub) is texture


def test_a_ribbon_needs_its_length():
    with pytest.raises(ValueError, match="longest ribbon"):
        texture_by_feel(Ball.RIBBON)


@pytest.mark.parametrize(
    ("rate", "far"), [(0.70, True), (0.68, False), (0.077, False), (0.076, True)]
)
def test_more_than_three_times_apart_is_flagged(rate, far):
    assert texture_check(quantity(rate, "cm/h"), Texture.CLAY_LOAM).far_apart is far


@pytest.mark.parametrize("option", [one for one, _ in digging.RIBBON.kind.options])
def test_each_thing_a_handful_may_do_names_the_texture_of_the_key(option):
    if option in ("falls_apart", "ball"):
        ball = Ball.FALLS_APART if option == "falls_apart" else Ball.NO_RIBBON
        assert texture_by_feel(ball) is TEXTURE_OF[option]
        return
    length, _, rub = option.partition("_")
    inches = {"short": 0.9, "medium": 1.5, "long": 2.1}[length]
    feel = Rub(rub or "neither")
    assert texture_by_feel(Ball.RIBBON, quantity(inches, "in"), feel) is TEXTURE_OF[option]
