"""Federal holidays against a published calendar of twenty years.

The reference is ``USFederalHolidayCalendar`` of pandas, written from the list of the US Office of
Personnel Management. The four days by name are from memory of that list.
"""

from __future__ import annotations

from datetime import date

from pandas.tseries.holiday import USFederalHolidayCalendar

from interview.garden.site.locate import federal_holidays, federal_in_wait


def test_every_holiday_of_the_year_is_kept_on_the_day_of_the_calendar(subtests):
    for year in range(2021, 2041):
        with subtests.test(year=year):
            first, last = date(year, 1, 1), date(year, 12, 31)
            expected = USFederalHolidayCalendar().holidays(str(first), str(last))
            assert list(federal_holidays(first, last)) == [one.date() for one in expected]


def test_a_holiday_at_the_weekend_is_kept_on_friday_or_monday(subtests):
    for day, name in [
        (date(2026, 7, 3), "Independence Day"),
        (date(2027, 7, 5), "Independence Day"),
        (date(2027, 12, 31), "New Year's Day"),
        (date(2026, 11, 26), "Thanksgiving Day"),
    ]:
        with subtests.test(day=day, name=name):
            assert federal_holidays(day, day) == {day: name}


def test_christmas_and_new_year_lengthen_the_wait_between_them():
    found = federal_in_wait(date(2026, 12, 23), 6)
    assert list(found) == [date(2026, 12, 25), date(2027, 1, 1)]


def test_a_holiday_after_the_wait_or_on_the_day_of_the_request_is_not_in_it():
    assert not federal_in_wait(date(2026, 5, 18), 3)
    assert not federal_in_wait(date(2026, 5, 25), 3)
    assert list(federal_in_wait(date(2026, 5, 20), 3)) == [date(2026, 5, 25)]
