"""An invented simple garden, page by page: what somebody types who takes all that is usual.

``ANSWERS`` holds for the name of each page what is typed into its boxes, by key; a box that is not
named is left empty, and a page that is not named is left by Enter alone. Numbers are invented.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Protocol

from interview.asking.path import Place
from interview.garden.session import Session


class Clock(Protocol):
    """What tells the time of the sitting, and can be set."""

    now: dt.datetime


FIRST_DAY = dt.date(2026, 5, 19)
"""A Tuesday."""
DIG_DAY = dt.date(2026, 5, 28)
"""The day of the hole: the marks are in, and still good."""

ANSWERS: Mapping[str, Mapping[str, str]] = {
    "place": {"state": "mn"},
    "water_from": {"surface_kind": "roof"},
    "roof_size": {"pieces": "rectangle 30 ft by 14 ft"},
    "soil_feel": {"soil_dug": "loam"},
    "after_rain": {"stands_after_rain": "never"},
    "slope": {"slope_run": "10 ft", "slope_drop": "2 in"},
    "outline": {"room_length": "30 ft", "room_width": "16 ft"},
    "near": {"near_spot": "basement, property_line, pavement"},
    "basement_distance": {"basement_distance": "24 ft"},
    "property_line_distance": {"property_line_distance": "30 ft"},
    "pavement_distance": {"pavement_distance": "18 ft"},
    "spout_distance": {"spout_distance": "22 ft"},
    "overflow": {
        "overflow_to": "own_lawn",
        "overflow_building_distance": "40 ft",
        "overflow_line_distance": "30 ft",
    },
    "unstable": {"unstable_ground": "none"},
    "pollution": {"contamination": "none"},
    "children": {"children": "no"},
    "permission": {"permission": "own"},
    "rules": {"rules_checked": "not_needed"},
    "ask_for_marks": {"lines_requested": "asked"},
    "roof_hazard": {"roof_hazard": "no"},
    "ticket": {"lines_asked_on": "2026-05-19"},
    "private_lines": {"private_lines": "none"},
    "below": {"wet_season_depth": "100 in", "rock_depth": "100 in"},
    "sun_hours": {"sun_hours": "6"},
    "answered": {"lines_answered": "yes", "lines_finished_on": "2026-05-22"},
    "marks": {"mark_distance": "30 ft"},
    "hole": {"hole_depth": "16 in"},
    "smell": {"hole_smell": "earth"},
    "seeping": {"hole_seeps": "no"},
    "hole_shape": {"hole_shape": "round", "hole_width": "8 in"},
    "timer": {
        "first_fill_start": "2026-05-28 8:00",
        "first_fill_empty": "2026-05-28 9:00",
        "second_fill_start": "2026-05-28 9:05",
        "second_fill_empty": "2026-05-28 10:15",
        "water_at_mark": "6 in",
        "test_start": "2026-05-28 10:20",
        "readings": "2026-05-28 10:50 left 5 1/2 in\n2026-05-28 11:20 left 5 in\n"
        "2026-05-28 11:50 left 4 1/2 in",
    },
    "hole_left": {"hole_left": "covered"},
    "dig_day": {"dig_day": "2026-05-30"},
}


def words_at(session: Session) -> dict[str, str]:
    """Return what is typed at the place reached, by address."""
    place = session.place
    assert place is not None
    typed = ANSWERS.get(place.page.key, {})
    interview = session.answers.interview
    return {next(place.addresses((key,), interview)): text for key, text in typed.items()}


def walk(session: Session, clock: Clock, until: str = "the_plan") -> Iterator[Place]:
    """Go from page to page, yielding each before it is left, up to the one named ``until``.

    The clock is set to the day of the hole while the marks are waited for.
    """
    place = session.start()
    while place is not None:
        yield place
        if place.name == until:
            return
        if place.name == "waiting":
            clock.now = clock.now.replace(month=DIG_DAY.month, day=DIG_DAY.day, hour=12)
        session.take(words_at(session))
        place = session.forward()
