"""Gardens that a yard may hold, by seeded chance, and a share of odd ones.

``Chance`` of ``tests/conftest.py`` answers whatever a question takes; here roof, soil, slope and
the rest are such as a yard has, and one part fits the other: readings fall as water in a hole
does, a country has its tape, a bed its room. All of it is invented.
"""

from __future__ import annotations

import datetime as dt
import math
import random
from collections.abc import Callable
from typing import Any

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.kinds import Note
from interview.asking.question import UNKNOWN_TEXT, Unanswered
from interview.asking.route import Step
from interview.garden.site.spot_questions import SLOPE_RUN
from interview.quantities.units import magnitude
from interview.reading import Refused

ODD = 0.2
"""Of how many gardens some answers are whatever a question takes."""
TROUBLED = 0.3
"""Of how many gardens the spot may have what stops one: the others are sound, their soil apart."""
SAFE = {"lines_requested", "lines_answered", "private_lines", "permission", "children"}
STATES = [
    "mn",
    "or",
    "ny",
    "tx",
    "ca",
    "fl",
    "oh",
    "ga",
    "wa",
    "co",
    "me",
    "va",
    "wi",
    "il",
    "nc",
    "nj",
    "pa",
    "az",
    "ut",
    "ks",
]
NEAR = {
    "basement": (12, 40),
    "slab": (7, 30),
    "septic": (60, 150),
    "well": (110, 200),
    "property_line": (6, 40),
    "pavement": (6, 30),
    "retaining_wall": (25, 60),
    "tree": (26, 60),
    "slope_crest": (110, 200),
    "water": (60, 150),
}
"""What lies near, and how far off it mostly is, in feet."""
PRICES = (
    "mulch 38 per yd3\ncompost 6 per bag\nstone 5 per bag\nplants 4 each",
    "mulch 4.50 per bag\nplants 3.75 each",
    "stone 60 per yd3\nmulch 35 per yd3\ncompost 40 per yd3\nplants 5 each\nelbow 6 each",
    "plants 2.20 each\nberm soil 30 per yd3",
    "pipe 12 each\nelbow 5 each\nstrap 2 each\nplants 4 each\nbend 3 each\nadapter 4 each",
)
METRIC_PRICES = (
    "mulch 50 per m3\nplants 3 each",
    "mulch £6 per bag\ncompost £5 per bag\nstone £4 per bag\nplants £2.50 each",
    "stone 80 per m3\nmulch 45 per m3\ncompost 60 per m3\nplants 4 each",
)


class Yard:
    """The texts of one garden; ``chance`` answers the odd ones."""

    def __init__(self, seed: int, chance: Any) -> None:
        self.rng = random.Random(f"yard {seed}")
        self.chance = chance
        rng = self.rng
        self.odd = rng.choice((0.03, 0.1, 0.3)) if rng.random() < ODD else 0.0
        self.usual = rng.choice((0.0, 0.0, 0.4, 0.8, 1.0))
        """How often what has a usual value is left at it."""
        self.unsure = rng.choice((0.0, 0.0, 0.0, 0.02, 0.1))
        self.country = rng.choice(
            ("us",) * 6 + ("canada", "uk", "australia", "new_zealand", "other")
        )
        self.metric = (rng.random() < 0.05) == (self.country == "us")
        self.troubled = rng.random() < TROUBLED
        self.slope = rng.choice((0.0, 0.5, 0.9, 2.0, 4.0, 6.0, 8.0, 9.5, 11.0))
        self.slope *= rng.uniform(0.8, 1.08) * (1.3 if self.troubled else 1.0)
        self.rate = min(12.0, max(0.02, math.exp(rng.gauss(-0.8, 1.1))))
        """What the bottom takes, in/h."""
        self.roof = rng.choice((120, 250, 400, 600, 800, 1200, 2500))
        self.dug = dt.datetime(2026, 5, 27, rng.randint(7, 12), 0)
        self.hole_width = rng.choice((6, 8, 10, 12))
        self.water = rng.choice((6, 8, 8, 10))

    def answers(self, answers: Answers) -> Answers:
        """Answer what is asked, each question as this garden has it."""
        for _ in range(5):
            before = answers
            for step in route.steps(answers):
                if step.address not in answers.texts:
                    answers = self._answer(step, answers)
            if answers is before:
                break
        return answers

    def _answer(self, step: Step, answers: Answers) -> Answers:
        key, view, rng = step.question.key, step.view(answers), self.rng
        odd = rng.random() < self.odd and not isinstance(step.question.kind, Note)
        if not odd and key not in SAFE and rng.random() < self.unsure:
            return answers.with_text(step.address, UNKNOWN_TEXT)
        made = _TEXTS.get(key)
        if view.assumed(step.question) is not None and rng.random() < self.usual:
            return answers
        if made is None and isinstance(step.question.kind, Note):
            made = _a_name
        text = self.chance.text(step, answers) if odd or made is None else made(self, view)
        if text is None:
            return answers
        kept = text
        try:
            if text != UNKNOWN_TEXT:
                kept = step.question.kind.settle(text, view)
                step.question.read(kept, view)
        except Refused:
            return answers
        except Unanswered:
            pass
        return answers.with_text(step.address, kept)

    # Words of a length, in the unit of this garden's tape.
    def ft(self, low: float, high: float) -> str:
        """A length to pace or tape."""
        feet = self.rng.uniform(low, high)
        if self.metric:
            return f"{feet * 0.3048:.2f} m"
        return f"{feet:.1f} ft" if self.rng.random() < 0.5 else f"{int(feet)} ft"

    def inch(self, *of: float) -> str:
        """A depth, one of some."""
        deep = self.rng.choice(of)
        return f"{deep * 25:.0f} mm" if self.metric else f"{deep:g} in"

    def one(self, *of: str) -> str:
        """One of some."""
        return self.rng.choice(of)

    def sound(self, well: str, *ill: str) -> str:
        """What a sound spot has, or of a troubled one perhaps another."""
        return self.one(well, well, well, *ill) if self.troubled else well

    def near(self) -> str:
        """Some of what may lie near, or none."""
        return ", ".join(self.rng.sample(list(NEAR), self.rng.randint(0, 3))) or "none"

    def off(self, thing: str) -> str:
        """How far a thing lies off."""
        return (
            self.ft(2, 40) if self.troubled and self.rng.random() < 0.3 else self.ft(*NEAR[thing])
        )

    def readings(self) -> str:
        """Levels as water falls in a round hole, read with a ruler."""
        rng, walls = self.rng, self.hole_width / 4
        step = rng.choice((20, 30, 60))
        noise, level, minutes, said = rng.choice((0.0, 0.02, 0.2)), float(self.water), 0, []
        for _ in range(rng.choice((3, 4, 5, 6))):
            minutes += step
            rate = self.rate * math.exp(rng.gauss(0, noise))
            level = (level + walls) * math.exp(-rate * step / 60 / walls) - walls
            if level <= 0.1:
                said.append(f"+{minutes} min empty")
                minutes += 5
                said.append(f"+{minutes} min refilled to {self.depth(self.water)}")
                level = float(self.water)
                continue
            said.append(f"+{minutes} min left {self.depth(level)}")
        return "\n".join(said)

    def depth(self, inches: float) -> str:
        """A depth read with a ruler."""
        if self.metric:
            return f"{inches * 25.4:.0f} mm"
        return f"{round(inches * 8) / 8:g} in"

    def pieces(self, kind: str) -> str:
        """The pieces of one surface."""
        rng, area = self.rng, self.roof * self.rng.uniform(0.5, 1.1)
        if kind != "roof":
            area *= rng.choice((0.15, 0.3, 0.8))
        wide = math.sqrt(area / rng.uniform(1.0, 2.5))
        long, wide = (f"{self._side(one)}" for one in (area / wide, wide))
        lines = [f"rectangle {long} by {wide}"]
        if rng.random() < 0.3:
            lines.append(f"triangle {self._side(14)} by {self._side(7)}")
        if rng.random() < 0.15:
            lines.append(f"less rectangle {self._side(3)} by {self._side(2.5)}")
        return "\n".join(lines)

    def _side(self, feet: float) -> str:
        return f"{feet * 0.3048:.2f} m" if self.metric else f"{feet:.1f} ft"

    def outline(self) -> str:
        """Stations of an outline of one's own, along the string, up and down from it."""
        rng, along, feet = self.rng, 0.0, [(0.0, 0.0, 0.0)]
        for _ in range(rng.randint(2, 5)):
            along += rng.choice((2, 3, 4))
            feet.append((along, rng.choice((1.5, 2, 3, 4)), rng.choice((1.5, 2, 3))))
        feet.append((along + 2, 0.0, 0.0))
        scale, unit = (0.3, "m") if self.metric else (1.0, "ft")
        return "\n".join(", ".join(f"{one * scale:.4g} {unit}" for one in row) for row in feet)

    def drop(self, view: Answers) -> str:
        """The fall along the string that fits the slope of this yard."""
        run = view.get(SLOPE_RUN)
        feet = 10.0 if run is None else magnitude(run, "ft")
        inches = feet * 12 * self.slope / 100
        return f"{inches * 25.4:.0f} mm" if self.metric else f"{inches:.2f} in"

    def floor(self) -> list[str]:
        """Readings of the floor as dug, from the string."""
        return [self.depth(self.rng.uniform(13, 17)) for _ in range(self.rng.randint(2, 5))]


def _a_name(yard: Yard, view: Answers) -> str:
    return f"{yard.one('north', 'south', 'back')} {view.scope[1] if view.scope else 1}"


def _day(of: tuple[str, ...]) -> Callable[[Yard, Answers], str]:
    return lambda y, _: y.one(*of)


_TEXTS: dict[str, Callable[[Yard, Answers], str | None]] = {
    "garden_name": lambda y, _: y.one("Maple corner", "Fern bank", "Low bed", "No. 12"),
    "units": lambda y, _: "metric" if y.metric else "us",
    "country": lambda y, _: y.country,
    "state": lambda y, _: y.one(*STATES) if y.country == "us" else "no",
    "rain_depth": lambda y, _: y.inch(0.5, 0.75, 1, 1, 1, 1.25, 1.5, 2),
    "has_rain_record": lambda y, _: y.one("yes", *("no",) * 9),
    "rain_record": lambda y, _: "invented_rain.csv",
    "rain_record_unit": lambda y, _: "in",
    "rain_date_column": lambda y, _: UNKNOWN_TEXT,
    "rain_depth_column": lambda y, _: "rain_in",
    "lines_requested": lambda y, _: y.sound("asked", "not_yet"),
    "lines_asked_on": _day(("2026-05-20", "2026-05-20", "2026-05-18", "2026-05-26", "2026-04-20")),
    "lines_ticket": lambda y, _: "T-0412 (invented)",
    "lines_business_days": lambda y, _: y.one("2", "3", "3", "5"),
    "lines_holidays": lambda y, _: y.one("2026-05-25", "none"),
    "lines_answered": lambda y, _: y.sound("yes", "no"),
    "lines_finished_on": _day(("2026-05-22", "2026-05-26", "2026-05-27", "2026-04-28")),
    "lines_valid_days": lambda y, _: y.one("10", "14", "28"),
    "lines_valid_kind": lambda y, _: y.one("working", "calendar", "from_request"),
    "private_lines": lambda y, _: y.one("none", "none", "kept_clear", "kept_clear", "not_found"),
    "mark_distance": lambda y, _: y.ft(2, 60),
    "local_rules": lambda y, _: y.one("none", "none", "none", "basement", "septic, tree"),
    "stands_after_rain": lambda y, _: y.sound(y.one("never", "never", "few"), "often"),
    "near_spot": lambda y, _: y.near(),
    "septic_uphill": lambda y, _: y.sound("no", "yes"),
    "wall_height": lambda y, _: y.ft(1, 6),
    "drip_line": lambda y, _: y.ft(4, 25),
    "slope_run": lambda y, _: y.ft(8, 30),
    "slope_drop": lambda y, view: y.drop(view),
    "slope_drop_turned": lambda y, view: y.drop(view),
    "downhill_direction": lambda y, _: y.one("n", "e", "s", "sw", "flat" if y.slope < 1 else "w"),
    "wet_season_depth": lambda y, _: y.inch(*((20, 30, 40) if y.troubled else (60, 72, 96, 120))),
    "rock_depth": lambda y, _: y.inch(*((36, 48, 96) if y.troubled else (60, 96, 120))),
    "unstable_ground": lambda y, _: y.sound("none", "slides", "karst"),
    "contamination": lambda y, _: y.sound("none", "paint", "fuel"),
    "overflow_to": lambda y, _: y.sound(
        y.one("own_lawn", "own_lawn", "own_lawn", "street", "drain", "undecided"), "neighbour"
    ),
    "overflow_building_distance": lambda y, _: y.ft(6 if y.troubled else 11, 60),
    "overflow_line_distance": lambda y, _: y.ft(6, 40),
    "another_spot": lambda y, _: y.one(*("no",) * 9, "yes"),
    "permission": lambda y, _: y.one(*("own",) * 9, "written"),
    "rate_from": lambda y, _: y.one("test", "test", "report"),
    "known_rate": lambda y, _: (
        f"{y.rate * 25.4:.1f} mm/h" if y.metric else f"{max(0.01, y.rate):.2f} in/h"
    ),
    "known_rate_by": lambda y, _: "soil engineer",
    "hole_dug_on": lambda y, _: f"{y.dug:%Y-%m-%d}",
    "hole_depth": lambda y, _: y.inch(14, 15, 18, 20, 24),
    "test_to_learn": lambda y, _: "yes",
    "floor_depth": lambda y, _: y.inch(8, 10, 12),
    "hole_smell": lambda y, _: y.sound("earth", "earth", "rotten_egg"),
    "hole_seeps": lambda y, _: y.sound("no", "yes"),
    "hole_shape": lambda y, _: "round",
    "hole_width": lambda y, _: y.depth(y.hole_width),
    "hard_digging": lambda y, _: y.one(*("no",) * 9, "yes"),
    "soaked_already": lambda y, _: "yes",
    "water_at_mark": lambda y, _: y.depth(y.water),
    "test_start": lambda y, _: f"{y.dug:%Y-%m-%d %H:%M}",
    "read_as": lambda y, _: "left",
    "ruler_mark": lambda y, _: "3 mm" if y.metric else "1/8 in",
    "readings": lambda y, _: y.readings(),
    "hole_left": lambda y, _: y.one("filled", "filled", "covered", "open"),
    "hole_counts": lambda y, _: y.one(*("yes",) * 12, "no"),
    "another_hole": lambda y, _: y.one("no", "no", "no", "yes"),
    "measured_by": lambda y, _: y.one("tape", "tape", "tape", "paces"),
    "walker_name": lambda y, _: "Ann",
    "pace_line": lambda y, _: "20 m" if y.metric else "50 ft",
    "pace_counts": lambda y, _: y.one("20; 20; 20", "19; 20; 19; 21"),
    "another_walker": lambda y, _: "no",
    "surface_kind": lambda y, view: (
        "roof"
        if not view.scope or view.scope[1] == 1
        else y.one("roof", "paved", "gravel", "compacted", "lawn")
    ),
    "falls_on": lambda y, _: "no",
    "gutter_outlets": lambda y, _: y.one("1", "1", "2", "2", "3"),
    "outlets_here": lambda y, _: "1",
    "share_known": lambda y, _: "equal",
    "share_percent": lambda y, _: y.one("all", "half", "100 %", "60 %"),
    "spout_percent": lambda y, _: y.one("all", "all", "all", "half"),
    "roof_valley": lambda y, _: y.one("no", "no", "no", "yes"),
    "surface_basis": lambda y, _: y.one("level", "level", "slope"),
    "roof_sides": lambda y, _: y.one("one", "one", "both", "all"),
    "pieces": lambda y, view: y.pieces(
        view.text_at(f"surfaces.{view.scope[1] if view.scope else 1}.surface_kind") or "roof"
    ),
    "surface_north": lambda y, _: "not_drawn",
    "runoff_local": lambda y, _: y.one("usual", "usual", "usual", "0.9"),
    "another_surface": lambda y, _: y.one("no", "no", "yes"),
    "runoff_by": lambda y, _: y.one("coefficient", "coefficient", "coefficient", "curve_number"),
    "house_area": lambda y, _: "140 m2" if y.metric else "1500 sq ft",
    "roof_hazard": lambda y, _: y.one(*("no",) * 9, "yes"),
    "room_length": lambda y, _: y.one(UNKNOWN_TEXT, *(y.ft(12, 60) for _ in range(6))),
    "room_width": lambda y, _: y.ft(8, 35),
    "room_area": lambda y, _: "40 m2" if y.metric else "400 sq ft",
    "beds": lambda y, _: y.one("1", "1", "1", "1", "2", "2", "3", "4"),
    "spout_distance": lambda y, _: y.ft(4, 45),
    "spout_fall": lambda y, _: y.inch(2, 4, 7, 12, 24),
    "deepest_pond": lambda y, _: y.inch(3, 4, 6, 6, 6, 8, 9, 12, 14),
    "drain_rule": lambda y, _: y.one("both", "both", "both", "strict", "custom"),
    "side_slope": lambda y, _: y.one("2:1", "3:1", "3:1", "4:1", "1.5", "5:1"),
    "kidney_bend": lambda y, _: y.one(UNKNOWN_TEXT, y.ft(6, 20)),
    "floor_outline": lambda y, _: y.outline(),
    "length_to_width": lambda y, _: y.one("1", "1.5", "2:1", "2:1", "3:1", "5:1"),
    "freeboard": lambda y, _: y.inch(1, 2, 2, 4, 4, 6, 8),
    "berm_top": lambda y, _: y.inch(6, 8, 12, 12, 18),
    "compost_depth": lambda y, _: y.inch(1, 2, 2, 3),
    "mulch_depth": lambda y, _: y.inch(0, 2, 2, 3, 3, 4),
    "storm_hours": lambda y, _: y.one("2 h", "6 h", "6 h", "12 h", "24 h"),
    "peak_intensity": lambda y, _: (
        y.one("60 mm/h", "120 mm/h", "180 mm/h")
        if y.metric
        else y.one("3 in/h", "5 in/h", "7 in/h")
    ),
    "floor_length": lambda y, _: y.one(*(UNKNOWN_TEXT,) * 5, y.ft(8, 24)),
    "floor_width": lambda y, view: (
        y.ft(3, 10) if view.text_at("floor_length") not in (None, UNKNOWN_TEXT) else UNKNOWN_TEXT
    ),
    "barrow": lambda y, _: "85 L" if y.metric else y.one("3 cu ft", "6 cu ft"),
    "prices": lambda y, _: y.one("none", *(METRIC_PRICES if y.metric else PRICES)),
    "plant_region": lambda y, _: (
        y.one("ne", "se", "mw", "gp", "mt", "pn", "ca") if y.country == "us" else "outside"
    ),
    "own_plants": lambda y, _: y.one(*("none",) * 9, "own_plants.csv"),
    "hardiness_zone": lambda y, _: y.one("3", "4", "5", "6", "7", "8", "9"),
    "tallest_floor": lambda y, _: y.ft(2, 7),
    "tallest_rim": lambda y, _: y.ft(1.5, 5),
    "favourites": lambda y, _: y.one("none", "none", "none", "swamp milkweed", "blue flag"),
    "swap_out": lambda y, _: y.one(
        "none", "none", "none", "prairie ironweed for New England aster"
    ),
    "dig_day": _day(("2026-05-28", "2026-05-30", "2026-06-06", "2026-07-01", "2026-11-14")),
    "notes": lambda y, _: y.one("none", "Invented for practice."),
    "levels_read": lambda y, _: y.one(*("no",) * 5, "yes"),
    "floor_readings": lambda y, _: "\n".join(y.floor()),
    "notch_reading": lambda y, _: y.depth(y.rng.uniform(4, 10)),
    "rim_reading": lambda y, _: y.depth(y.rng.uniform(-1, 3)),
    "inlet_reading": lambda y, _: y.depth(y.rng.uniform(2, 8)),
    "storm_seen": lambda y, _: y.one(*("no",) * 7, "yes"),
    "storm_rain": lambda y, _: y.inch(0.5, 1, 2),
    "storm_empty_after": lambda y, _: y.one("10 h", "30 h", "60 h", "90 h"),
}
for _thing in NEAR:
    _TEXTS[f"{_thing}_distance"] = lambda y, _, thing=_thing: y.off(thing)  # type: ignore[misc]
