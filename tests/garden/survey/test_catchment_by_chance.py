"""The first-order range against many surveys drawn by chance with the same errors.

Every input of one survey is drawn from its own normal spread, the same area is worked out from each
draw by plain arithmetic on arrays, and the spread of the answers is compared.
"""

import math

import numpy as np
import pytest
from measures import feet, ft

from interview.garden.survey.catchment import Share, Surface, catchment, equal_share
from interview.garden.survey.outlines import SidesRound
from interview.garden.survey.pacing import calibrate, paced
from interview.garden.survey.pieces import Piece, RoofPitch, side_error
from interview.garden.survey.shapes import Rectangle, ThreeSides, Trapezoid, Triangle
from interview.quantities.spread import TAPE_ERROR_IN
from interview.quantities.units import magnitude, quantity

DRAWS = 200_000
INCH = TAPE_ERROR_IN / 12


@pytest.fixture(scope="module")
def ann():
    return calibrate(ft(100), [39, 40, 39, 40, 40])


@pytest.fixture(scope="module")
def bob():
    return calibrate(ft(100), [34, 35, 35, 34])


@pytest.fixture
def luck():
    return np.random.default_rng(20260528)


class Drawn:
    """Lengths drawn by chance: each walker's pace is drawn once for all that walker measured."""

    def __init__(self, luck, *paces):
        self.luck = luck
        self.scale = {
            pace.counts: 1 + pace.relative_error * luck.standard_normal(DRAWS) for pace in paces
        }

    def taped(self, length):
        return length + INCH * self.luck.standard_normal(DRAWS)

    def paced(self, count, pace):
        found = paced(count, pace)
        own = feet(found.own_error) * self.luck.standard_normal(DRAWS)
        return feet(found.length) * self.scale[pace.counts] + own

    def share(self, part, error):
        return part * (1 + error * self.luck.standard_normal(DRAWS))


def walked(count, pace, who):
    found = paced(count, pace)
    return found.length, side_error(found, who)


def test_a_survey_of_two_walkers_several_shapes_and_a_roof_on_a_roof(ann, bob, luck):
    long, wide, hole = walked(24, ann, "Ann"), walked(10, ann, "Ann"), walked(4, bob, "Bob")
    low = Surface(
        "low roof",
        "roof",
        0.95,
        (
            Piece(Rectangle(long[0], wide[0]), errors=(long[1], wide[1])),
            Piece(Triangle(ft(14), ft(7)), count=2),
            Piece(
                Rectangle(hole[0], hole[0]), cut=True, errors=(hole[1], walked(4, bob, "Bob")[1])
            ),
        ),
        share=equal_share(2),
        level=1 / RoofPitch(6).factor,
    )
    high = Surface(
        "high roof", "roof", 0.95, (Piece(Trapezoid(ft(20), ft(12), ft(9))),), falls_on="low roof"
    )
    drive_sides = [walked(count, bob, "Bob") for count in (18, 6)]
    drive = Surface(
        "drive",
        "gravel",
        0.25,
        (Piece(Rectangle(*(s[0] for s in drive_sides)), errors=tuple(s[1] for s in drive_sides)),),
        share=Share(0.6, 0.15),
    )
    patio = Surface("patio", "paved", 0.95, (Piece(ThreeSides(ft(18), ft(21), ft(16))),))
    found = catchment([low, high, drive, patio], {"Ann": ann, "Bob": bob})

    draw = Drawn(luck, ann, bob)
    half = draw.share(0.5, 0.15)
    roof = draw.paced(24, ann) * draw.paced(10, ann)
    roof += 2 * draw.taped(14) * draw.taped(7) / 2
    roof -= draw.paced(4, bob) * draw.paced(4, bob)
    upper = (draw.taped(20) + draw.taped(12)) / 2 * draw.taped(9)
    gravel = draw.paced(18, bob) * draw.paced(6, bob)
    a, b, c = draw.taped(18), draw.taped(21), draw.taped(16)
    s = (a + b + c) / 2
    triangle = np.sqrt(s * (s - a) * (s - b) * (s - c))
    total = 0.95 * half * (roof / RoofPitch(6).factor + upper)
    total += 0.25 * draw.share(0.6, 0.15) * gravel + 0.95 * triangle
    assert magnitude(found.weighted, "ft**2") == pytest.approx(total.mean(), rel=0.005)
    assert magnitude(found.standard_error, "ft**2") == pytest.approx(total.std(), rel=0.03)
    inside = np.mean(
        (total > magnitude(found.low, "ft**2")) & (total < magnitude(found.high, "ft**2"))
    )
    assert inside == pytest.approx(0.954, abs=0.01)


def test_a_survey_that_only_paces(ann, luck):
    """Where the pace itself is most of the error, adding it squared piece by piece would show."""
    sure = calibrate(ft(100), [36, 40, 44])
    sides = [walked(count, sure, "") for count in (60, 60)]
    errors = tuple(side[1] for side in sides)
    pieces = tuple(Piece(Rectangle(*(s[0] for s in sides)), errors=errors) for _ in range(6))
    found = catchment([Surface("roof", "roof", 1.0, pieces)], sure)
    draw = Drawn(luck, sure)
    total = sum(draw.paced(60, sure) * draw.paced(60, sure) for _ in range(6))
    assert magnitude(found.standard_error, "ft**2") == pytest.approx(total.std(), rel=0.03)


def test_an_outline_walked_round_and_closed(luck):
    turns = tuple(quantity(turn, "degree") for turn in (90, 90, -90, 90, 90))
    lengths = (30, 12, 18, 9, 12, 21)
    shape = SidesRound(tuple(ft(x) for x in lengths), turns)
    found = catchment([Surface("roof", "roof", 1.0, (Piece(shape),))])
    draw = Drawn(luck)
    sides = [draw.taped(x) for x in lengths]
    heads = np.radians(np.cumsum([0, 90, 90, -90, 90, 90]))
    x = np.cumsum([side * math.cos(h) for side, h in zip(sides, heads, strict=True)], axis=0)
    y = np.cumsum([side * math.sin(h) for side, h in zip(sides, heads, strict=True)], axis=0)
    gone = np.cumsum(sides, axis=0)
    x, y = x - x[-1] * gone / gone[-1], y - y[-1] * gone / gone[-1]
    area = abs(sum(x[i - 1] * y[i] - x[i] * y[i - 1] for i in range(6))) / 2
    assert magnitude(found.standard_error, "ft**2") == pytest.approx(area.std(), rel=0.03)
