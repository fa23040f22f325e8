"""Gardens that a yard may hold: no sheet of one says what another denies, or what is absurd.

``.ci/gardens`` does the same with many.
"""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace

import cross_statements as crossed
import never_together as apart
import told_alike as alike
from any_yard import Yard
from told_of_one import Told

GARDENS = 20
WHOLE_EVERY = 10
"""Of how many one has its working read too, which takes as long as the rest."""
SAMPLES = Path(__file__).parents[2] / "sample_answers"
CHECKS = (*crossed.CHECKS, *alike.CHECKS, *apart.CHECKS)


def test_no_page_of_a_garden_denies_another(subtests, chance, given, clock):
    from interview.garden.opening import plan_of

    for seed in range(GARDENS):
        with subtests.test(garden=seed):
            answers = Yard(seed, chance(seed)).answers(given())
            told = Told(plan_of(answers, SAMPLES, clock.now), seed % WHOLE_EVERY == 0)
            for check in CHECKS:
                assert list(check(told)) == [], check.__name__


def _numbers(key, change):
    def doctor(told):
        told.numbers[key] = change(told.numbers[key])

    return doctor


def _words(name, old, new):
    def doctor(told):
        text = getattr(told, name)
        assert old in text, old
        told.__dict__[name] = text.replace(old, new)

    return doctor


def _advises(change):
    """A bed is too wide for its slope, and another is advised."""

    def doctor(told):
        said = "The lawn rises 1 in across the floor and the cut uphill is 8 in deep."
        told.plan = SimpleNamespace(findings=(SimpleNamespace(said=said, change=change),))

    return doctor


def _upside_down(told):
    """The plants of the floor stand on the rim, and those of the rim on the floor."""
    found = told.plan.planting
    floor, side, rim = found.chosen.zones
    zones = (floor._replace(picks=rim.picks), side, rim._replace(picks=floor.picks))
    chosen = SimpleNamespace(zones=zones)
    told.plan = SimpleNamespace(planting=SimpleNamespace(wishes=found.wishes, chosen=chosen))


DOCTORED = {
    "figures_are_told_to_programs": _numbers("pond_depth", lambda one: one + 1),
    "page_has_the_figures": _words("page", "<b>188</b>", "<b>189</b>"),
    "levels_are_told_alike": _words("card", "stone    6 in down", "stone    7 in down"),
    "pegs_are_told_alike": _words("card", "both ways 7 ft 6 in", "both ways 8 ft 6 in"),
    "kinds_are_told_alike": _words("short", "11 x Gray's sedge", "12 x Gray's sedge"),
    "times_and_dates_are_told_alike": _words(
        "card", "until Tue 9 Jun 2026", "until Mon 8 Jun 2026"
    ),
    "spared_money_is_told_alike": _words("short", "half next year: 94", "half next year: 294"),
    "sizes_come_in_order": _words("full", "dig              120 ft³", "dig              190 ft³"),
    "hands_make_days": _words("full", "4 people finish it", "2 people finish it"),
    "table_has_the_figures": _numbers("rain_held", lambda one: one + 1),
    "storms_are_told_alike": _words("full", "   1         4.5 in", "   1         5.4 in"),
    "distances_are_told_alike": _words("card", "a property line 9 ft", "a property line 8 ft"),
    "pages_fit": _words("short", "DO NEXT", f"DO NEXT {'.' * 80}"),
    "lines_within_lines": _numbers("pond_length", lambda one: one * 2),
    "water_falls_with_height": _numbers("side_hours", lambda one: one + 90),
    "depth_is_allowed": _numbers("depth_by_corrected", lambda one: one / 9),
    "soil_adds_up": _numbers("soil_spare", lambda one: one * 1.2),
    "depths_add_up": _numbers("deepest_dig", lambda one: one + 1),
    "levels_add_up": _words("short", "6 in  6 in down", "6 in  7 in down"),
    "lists_add_up": _words("short", "Together: 1094.00", "Together: 1049.00"),
    "hours_add_up": _numbers("work_hours_slow", lambda one: one + 1),
    "one_size_everywhere": _words("short", "15 ft by 7 ft 6 in", "16 ft by 7 ft 6 in"),
    "pegs_make_the_size": _words("short", "both ways 7 ft 6 in ", "both ways 8 ft 6 in "),
    "plants_are_counted_alike": _words("short", "plants: 188 in all", "plants: 189 in all"),
    "card_tells_the_same": _words("card", "70 barrow-loads", "71 barrow-loads"),
    "sizes_tell_the_same": _words("full", "148              188", "188              148"),
    "drawings_are_to_scale": _numbers("inside_area", lambda one: one * 1.05),
    "charts_tell_the_same": _words("full", "The pond is 4.5 in deep", "The pond is 5.4 in deep"),
    "verdict_agrees": _words("card", "SHUT: DO NOT DIG", "OPEN: DO NOT DIG"),
    "too_small_is_too_small": _words("short", "Slope:", "TOO SMALL. It holds 2 in of the 1 in"),
    "said_nowhere": _words("short", "31 bags of", "1 bags of"),
    "heads_lead_somewhere": _words("short", "Locate ticket", "\nLocate ticket:\n\nticket"),
    "one_tape": _words("short", "10 1/2 in from its", "300 mm from its"),
    "never_both": _words("short", "Build the berm,", "No berm is needed. Build the berm,"),
    "water_stands_and_all_is_well": _numbers("storm_hours_on_floor", lambda one: one + 90),
    "plants_stand_where_they_live": _upside_down,
    "remedies_mend": _advises("Make it a floor of 9 ft by 9 ft, cut 9 in deep uphill."),
    "less_can_be_dug": _words("short", "Slope:", "Dig 9 ft less deep"),
    "advice_can_be_followed": _numbers("floor_width_drawn", lambda one: 0.5),
}
"""What is said of the finished sample made false in one place, by the check that has to see it."""


def test_every_check_speaks_where_something_is_false(subtests):
    import datetime as dt

    from interview.garden.opening import plan_of
    from interview.garden.store import load
    from interview.quantities.evidence import Grade

    answers = load(SAMPLES / "finished_us.yaml")[0].answers
    now = dt.datetime.fromisoformat("2026-11-29T12:00:00-06:00")
    plan = plan_of(answers, SAMPLES, now)
    for check in CHECKS:
        with subtests.test(check=check.__name__):
            told = Told(plan)
            assert list(check(told)) == []
            DOCTORED[check.__name__](told)
            if check.__name__ == "water_stands_and_all_is_well":
                plan.checks.__dict__["verdict"] = Grade.GOOD
            assert list(check(told)) != []


def _three_sizes(depths, wide=("7 ft", "7 ft", "8 ft")):
    rows = {
        "": ("lean", "usual", "generous"),
        "a bed's floor, long": ("4 ft",) * 3,
        "a bed's floor, wide": ("2 ft",) * 3,
        "a bed's over all, long": ("9 ft",) * 3,
        "a bed's over all, wide": wide,
        "deepest in that storm": depths,
    }
    lines = (f"{name:<25}" + "".join(f"{one:<17}" for one in row) for name, row in rows.items())
    text = "\n".join(lines)
    return list(alike.sizes_come_in_order(SimpleNamespace(part=lambda title: text)))


def test_the_three_sizes_of_several_beds_are_held_as_those_of_one():
    assert _three_sizes(("3.3 in", "3.3 in", "3.5 in")) == []
    assert _three_sizes(("3.3 in", "3.3 in", "3.3 in"), ("8 ft", "7 ft", "8 ft")) != []
