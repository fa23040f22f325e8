"""Each figure worked out again from the others, by the formula printed beside it and nothing else.

Every value comes from the list of figures alone; a formula that leaves something out cannot be
followed here.
"""

import math

import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

GARDENS = [
    {},
    {"spots.1.slope_drop": "1 in", "side_slope": "2.5:1", "mulch_depth": "2 in"},
    {"beds": "2", "beds_how": "side_by_side", "rain_depth": "1.25 in"},
    {"floor_length": "15 ft", "floor_width": "7 ft", "spots.1.slope_drop": "0"},
    {"room_length": "16 ft", "room_width": "11 ft"},
]


@pytest.fixture(params=range(len(GARDENS)))
def worked(request, plan_of, sized, level_spot, printed):
    """The figures by key, and the answers they were worked out from, in feet."""
    changed = GARDENS[request.param]
    texts = {**sized, **level_spot, "spots.1.slope_drop": "6 in", **changed}
    plan = plan_of(texts)
    listed = printed(plan)["figures"]
    given = {
        "P": float(changed.get("rain_depth", "1 in").split()[0]) / 12,
        "z": float(changed.get("side_slope", "3:1").split(":")[0]),
        "k": 2.0,
        "b": 4 / 12,
        "mulch": float(changed.get("mulch_depth", "3 in").split()[0]) / 12,
        "compost": 2 / 12,
        "top": 1.0,
        "hours": 6.0,
    }
    return {key: one.get("value") for key, one in listed.items()}, given


def near(value):
    return pytest.approx(value, rel=2e-6)


def test_the_areas(worked):
    v, a = worked
    big, p, z, k, b = v["weighted_area"], a["P"], a["z"], a["k"], a["b"]
    d, beds = v["pond_depth"] / 12, v["bed_count"]
    assert v["rule_of_thumb_area"] == near(v["catchment_area"] * p / d)
    assert v["weighted_rule_area"] == near(big * p / d)
    assert v["hand_check_area"] == near(big * p / (d - p))
    one, g = big / beds, z * (d + 2 * b)

    def balance(area):
        root = math.sqrt(area)
        return (
            (d - p) * area
            - p * g * (k + 1) / math.sqrt(k) * root
            - (p * (one + g**2) - z**2 * d**3 / 3)
        )

    area = brentq(balance, 1, 1e5, xtol=1e-10)
    assert v["mid_area"] == near(beds * area)
    assert v["needed_floor_length"] == near(math.sqrt(k * area) - z * d)
    assert v["needed_floor_width"] == near(math.sqrt(area / k) - z * d)
    assert v["needed_volume"] == near(area * d + z**2 * d**3 / 3)
    slope = (beds * brentq(lambda s: _needed(s, one * 1.001, a, d), 1, 1e5) - beds * area) / (
        big * 0.001
    )
    spread = 2 * slope * v["weighted_area_error"]
    assert v["area_high"] == pytest.approx(v["mid_area"] + spread, rel=1e-3)
    assert v["area_low"] == pytest.approx(v["mid_area"] - spread, rel=1e-3)


def _needed(area, one, a, d):
    p, z, k, b = a["P"], a["z"], a["k"], a["b"]
    g = z * (d + 2 * b)
    linear = p * g * (k + 1) / math.sqrt(k) * math.sqrt(area)
    return (d - p) * area - linear - (p * (one + g**2) - z**2 * d**3 / 3)


def test_the_sizes_and_the_rain_held(worked):
    v, a = worked
    long, wide, d = v["floor_length_drawn"], v["floor_width_drawn"], v["pond_depth"] / 12
    z, b = a["z"], a["b"]
    assert v["pond_length"] == near(long + 2 * z * d)
    assert v["rim_width"] == near(wide + 2 * z * (d + b))
    assert v["floor_area"] == near(long * wide)
    assert v["mid_area_drawn"] == near((long + z * d) * (wide + z * d))
    assert v["rim_area"] == near(v["rim_length"] * v["rim_width"])
    volume = d * (long * wide + z * d * (long + wide) + 4 / 3 * z**2 * d**2)
    assert v["pond_volume"] == near(volume)
    comes = v["weighted_area"] / v["bed_count"] + v["rim_area"]
    assert v["rain_held"] == near(12 * volume / comes)
    assert v["sending_area"] == near(comes)
    assert v["floor_perimeter"] == near(2 * (long + wide))
    assert v["corners"] == 4


@pytest.mark.parametrize("floor_only", [False, True])
def test_the_storm(worked, floor_only):
    """Routed again step by step: a triangle of rain over six hours, in feet."""
    v, a = worked
    rain, hours, f, full = a["P"], a["hours"], v["corrected_rate"] / 12, v["pond_depth"] / 12

    def intensity(t):
        return max(0.0, 2 * rain / hours * (1 - abs(2 * t / hours - 1)))

    def area(h):
        wider = a["z"] * max(h, 0.0)
        return v["floor_area"] + v["floor_perimeter"] * wider + v["corners"] * wider**2

    def change(t, y):
        net = intensity(t) * v["sending_area"] - f * (v["floor_area"] if floor_only else area(y[0]))
        stays = (y[0] <= 0 and net < 0) or (y[0] >= full and net > 0)
        speed = 0.0 if stays else net / area(y[0])
        return [speed, 1.0 if y[0] > 0 else 0.0, max(0.0, net) * (y[0] >= full)]

    found = solve_ivp(change, (0, 90), [0, 0, 0], max_step=0.005, rtol=1e-6)
    if floor_only:
        assert v["storm_hours_floor_only"] == pytest.approx(found.y[1][-1], abs=0.1)
        empty = v["pond_volume"] / (f * v["floor_area"])
        assert v["emptying_floor_only"] == near(empty)
        return
    assert v["storm_peak"] / 12 == pytest.approx(found.y[0].max(), abs=0.002)
    assert v["storm_hours_on_floor"] == pytest.approx(found.y[1][-1], abs=0.1)
    spill = found.y[2][-1] * v["bed_count"]
    assert v["storm_spill"] == pytest.approx(spill, rel=0.02, abs=0.2)


def test_the_digging(worked):
    v, a = worked
    s, z, top = v["slope"] / 100, a["z"], a["top"]
    long, wide, d = v["floor_length_drawn"], v["floor_width_drawn"], v["pond_depth"] / 12
    high = d + a["b"]
    t, u = v["downhill_floor_depth"] / 12, v["uphill_floor_depth"] / 12
    assert u == near(t + s * wide)
    assert v["floor_by_uphill"] / 12 == pytest.approx(max(0, d * (1 - z * s) - s * wide))
    assert v["floor_deepest"] / 12 == near(d + s * z * high)
    deepest = max(v["floor_by_berm"], v["floor_by_level_berm"], v["floor_by_uphill"])
    assert v["downhill_floor_depth"] == near(min(deepest, v["floor_deepest"]))

    def cut(depth):
        up = depth + s * wide
        mean = (depth + up) / 2
        face = z * up**2 / (2 * (1 - z * s))
        return long * (wide * mean + face) + wide * z * mean**2

    def berm(depth):
        h = high - depth
        e = z * h
        x = e + top
        section = (h * e + s * e**2) / 2 + top * h + s * (x**2 - e**2) / 2
        section += 3 * (h + s * x) ** 2 / (2 * (1 - 3 * s))
        returns = min(wide, h / s) if s else wide
        return section * (long + 2 * z * high + returns)

    assert v["cut_volume"] == near(cut(t))
    assert v["berm_volume"] == near(berm(t))
    assert v["berm_height"] / 12 == near(high - t)
    by_berm = brentq(lambda depth: 0.9 * cut(depth) - berm(depth), 0, high)
    assert v["floor_by_berm"] / 12 == pytest.approx(by_berm, rel=1e-6)
    mulch = v["floor_area"] * a["mulch"]
    assert v["mulch_dug"] == near(mulch)
    assert v["soil_dug_total"] == near((v["cut_whole"] + mulch) * v["bed_count"])
    spare = v["soil_dug_total"] - v["soil_to_keep"] / 0.9 * v["bed_count"]
    assert v["soil_spare"] == pytest.approx(max(0, spare), rel=1e-5, abs=1e-4)
    assert v["soil_loose"] == near(1.25 * v["soil_dug_total"])
    assert v["barrow_loads"] == math.ceil(v["soil_loose"] / 3 - 1e-9)
    assert v["hours_quick"] == near(v["soil_dug_total"] / 27 / 0.5)


def test_the_hole_is_the_volume_between_the_ground_and_the_faces(worked):
    """Summed again cell by cell, as its formula says."""
    v, a = worked
    s, z = v["slope"] / 100, a["z"]
    long, wide = v["floor_length_drawn"], v["floor_width_drawn"]
    t, cell, reach = v["downhill_floor_depth"] / 12, 0.05, 8.0
    total = 0.0
    for i in range(round((wide + 2 * reach) / cell)):
        down = (i + 0.5) * cell - reach
        ground = t + s * (wide - down)
        along = max(0.0, -down, down - wide)
        for j in range(round((long / 2 + reach) / cell)):
            aside = max(0.0, (j + 0.5) * cell - long / 2)
            total += max(0.0, ground - max(along, aside) / z)
    assert v["cut_whole"] == pytest.approx(2 * total * cell**2, rel=5e-3)


def test_the_overflow_and_the_shopping(worked):
    v, a = worked
    flow = 7 / 12 / 3600 * v["peak_area"]
    assert v["catchment_flow"] == near(flow)
    over = 7 / 12 / 3600 * (v["peak_area"] / v["bed_count"] + v["rim_area"])
    assert v["peak_flow"] == near(over)
    width = max(1.0, over / (2.6 * (2 / 12) ** 1.5))
    assert v["notch_width"] == near(math.ceil(width * 2 - 1e-9) / 2)
    assert v["notch_head"] / 12 == near((over / (2.6 * v["notch_width"])) ** (2 / 3))
    beds = v["bed_count"]
    assert v["mulch_volume"] == near(v["rim_area"] * a["mulch"] * beds)
    assert v["compost_volume"] == near(v["floor_area"] * a["compost"] * beds)
    assert v["stone_volume"] == near((6 + 4 * v["notch_width"]) * 4 / 12 * beds)
    assert v["edging_length"] == near(2 * (v["rim_length"] + v["rim_width"]) * beds)
