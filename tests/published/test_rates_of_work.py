"""Published rates of work by hand, and of rest in heat.

1. Textbook on Roads and Pavements, 1908, Earthworks, web copy: men load 1 1/2 to 2 cubic yards of
   loosened soil an hour into wagons.
2. A contractor in a forum of the trade, web page: about 7 bank cubic yards a day for each man
   digging in sand, so under 1 an hour.
3. A restoration crew, web log, 2006: 188 plants by 5 people in 1.75 hours, 21.5 each an hour.
4. Heat Stress: Work/Rest Schedules, NIOSH Mining, US CDC, web page, heavy work: 45 minutes and 15
   at 95 and 96 °F, 40 and 20 at 97 °F, none at 94 °F.

A first-timer is not quicker than people who do it every day.
"""

import pytest

from interview.garden.earth.work import BARROW_FT3, BARROWS, DIG_YD3, HEAT, PLANTS, Span


def test_nobody_digs_quicker_than_a_laborer():
    slow, quick = DIG_YD3.value
    assert 0 < slow < quick < 7 / 8


def test_nobody_moves_more_by_barrow_than_a_laborer_loads():
    slow, quick = BARROWS.value
    assert slow * BARROW_FT3 / 27 < quick * BARROW_FT3 / 27 < 1.5


def test_nobody_plants_quicker_than_a_crew():
    slow, quick = PLANTS.value
    assert 0 < slow < quick <= 188 / 5 / 1.75


def test_heavy_work_in_heat_has_the_rests_of_the_schedule():
    degrees, work, rest = HEAT.value
    assert (degrees, work, rest) == (95, 45, 15)
    assert Span(3, 9).in_heat == Span(pytest.approx(4), pytest.approx(12))
