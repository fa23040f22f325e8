"""Published worked examples of the area that drains to a rain garden; printed numbers are exact.

1. "How to size a rain garden", Illinois Department of Natural Resources: roof 50 by 15 ft.
2. Rhode Island and Connecticut extension, simple method: 50 by 30 ft house, half the roof.
3. Georgia watershed guide: 800 ft2 and two downspouts.
4. Metric example after the Wisconsin manual: half of 5 by 5 m, and a 2 by 3 m piece of lawn.
5. Rain Gardens: A How-to Manual for Homeowners, GWQ037, UW-Extension and Wisconsin DNR, p. 8: four
   downspouts, a quarter each; the 60 by 40 ft example is from memory.
6. Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. 26.
"""

import pytest

from interview.garden.survey.catchment import Surface, catchment, equal_share
from interview.garden.survey.pieces import Piece
from interview.garden.survey.shapes import Rectangle
from interview.quantities.units import magnitude, quantity


def drains(outlets, *sizes, unit="ft"):
    surfaces = [
        Surface(
            f"surface {place}",
            "roof",
            1.0,
            (Piece(Rectangle(quantity(long, unit), quantity(wide, unit))),),
            share=equal_share(shared),
        )
        for place, ((long, wide), shared) in enumerate(zip(sizes, outlets, strict=True))
    ]
    return magnitude(catchment(surfaces).drains_here, f"{unit}**2")


def test_drainage_area(subtests):
    for outlets, sizes, unit, printed in [
        ((1,), ((50, 15),), "ft", 750),
        ((2,), ((50, 30),), "ft", 750),
        ((2,), ((40, 20),), "ft", 400),
        ((2, 1), ((5, 5), (2, 3)), "m", 18.5),
        ((4,), ((60, 40),), "ft", 600),
        ((1,), ((16, 24.5),), "ft", 392),
    ]:
        with subtests.test(outlets=outlets, sizes=sizes, unit=unit, printed=printed):
            assert drains(outlets, *sizes, unit=unit) == pytest.approx(printed, rel=1e-12)
