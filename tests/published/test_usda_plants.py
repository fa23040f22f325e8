"""Sixty species of the USDA plant table as it prints them, and what the plant list makes of them.

PLANTS database, U.S. Department of Agriculture, characteristics, read in a second copy of 2025 that
leaves cultivars out. Rows as printed: minimum temperature in degrees F; planting density per acre,
least and most; anaerobic tolerance; moisture use; drought tolerance; salinity tolerance; flower
color; vegetative spread; toxicity; a dash where there is no entry. What was decided against a row
is named in ``plant_decisions.csv``. Zones of hardiness: USDA Plant Hardiness Zone Map, 2023: each
spans 10 F, and zone 1 is -60 to -50 F. An acre is 43,560 square feet.
"""

import math

import pytest

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.provenance import decisions
from interview.garden.planting.record import DEGREES, PlantKind

PRINTED = {
    "Achillea millefolium": "-38 4800-19000 None Medium Medium Low White Slow Slight",
    "Amelanchier alnifolia": "-62 700-1700 None Medium Low Low White Moderate None",
    "Andropogon gerardii": "-46 - Medium Low High Medium Yellow Slow None",
    "Aquilegia formosa": "-23 1200-3450 Low Medium Medium None Red None None",
    "Artemisia ludoviciana": "-33 4800-10000 None Low High High White Moderate None",
    "Asclepias tuberosa": "-33 3450-7200 None Low High None Orange None None",
    "Baccharis pilularis": "22 700-1200 None Low High High White Moderate None",
    "Bouteloua curtipendula": "-43 - None Medium Medium Low Yellow None None",
    "Calamagrostis canadensis": "-33 3450-7000 High Medium Low None Green Slow None",
    "Caltha palustris": "-38 1700-4800 High High None None Yellow None None",
    "Carex amphibola": "-3 2700-4800 Medium Medium Low None Green None None",
    "Carex comosa": "-28 2700-4800 High High Low Low Green Moderate None",
    "Carex lurida": "-33 3450-4800 Medium Medium Low None Green None None",
    "Carex obnupta": "-3 3450-4800 None High Low Medium Yellow Moderate None",
    "Carex stricta": "-38 3450-4800 Medium Medium Low None Green None None",
    "Cephalanthus occidentalis": "-33 1746-2700 High High Medium Low White None None",
    "Conoclinium coelestinum": "-13 - Low Medium Medium None Blue None None",
    "Cornus amomum": "-38 1200-4800 Medium High Low None White Slow None",
    "Dasiphora fruticosa": "-28 1700-4800 None Low Low Medium Yellow Slow None",
    "Dichanthelium clandestinum": "-33 - Low Low High Low - None None",
    "Echinacea pallida": "-33 - None Medium Medium Low White None None",
    "Elymus canadensis": "-43 - Low Medium Medium Medium Yellow None None",
    "Elymus virginicus": "-28 - Medium Medium Medium None Yellow None None",
    "Eriogonum fasciculatum": "7 2700-7000 None Low High Medium White None None",
    "Eutrochium maculatum": "-28 1200-4800 Medium High Low None Purple Slow None",
    "Festuca idahoensis": "-38 - Low Medium Low None Yellow None None",
    "Frangula californica": "7 1200-2700 None Medium High Low Green Moderate None",
    "Gentiana andrewsii": "-38 - Low Medium Medium None Purple None None",
    "Geum triflorum": "-38 2700-4800 None Medium High None Purple None None",
    "Helenium autumnale": "-43 19212-27000 Low Medium Low Low Yellow None Severe",
    "Hibiscus laevis": "-13 1700-2700 High High Low None Purple None None",
    "Hymenocallis occidentalis": "-3 1200-4800 Medium High Low None White Slow None",
    "Ilex glabra": "-13 1200-2700 High High Low Medium White None None",
    "Iris fulva": "-24 2728-19360 High High Low None Red Moderate None",
    "Iris virginica": "12 2728-10912 High High None None Blue Moderate None",
    "Juncus balticus": "-43 - High High Low High Brown Rapid None",
    "Juncus tenuis": "-38 2700-4800 Low Medium Low Low Green None None",
    "Leymus triticoides": "-43 3000-11000 High High High High Yellow Rapid None",
    "Liatris spicata": "-18 2700-7000 Medium Medium Low Low Purple Slow None",
    "Linum lewisii": "-36 - None Medium Medium Low Blue None None",
    "Mahonia aquifolium": "-43 1700-4800 None Low High None Yellow None None",
    "Mertensia virginica": "-28 3450-19360 Low High Low None Blue None None",
    "Mirabilis multiflora": "-18 2700-4800 None Low High Low Purple None None",
    "Muhlenbergia capillaris": "7 11000-18000 Medium High Low High Red - None",
    "Nassella pulchra": "12 - None Medium Medium Low Yellow None None",
    "Osmunda cinnamomea": "-33 2700-3450 Medium Medium Medium Low Orange None None",
    "Panicum virgatum": "-43 - Medium Medium Medium Medium Yellow Slow None",
    "Penstemon digitalis": "-38 2700-4800 Low Low High Medium Purple Moderate None",
    "Phlox maculata": "-18 2700-4800 Medium Medium Medium None Red Slow None",
    "Pontederia cordata": "-23 2728-3700 High High None Low Blue None None",
    "Rhododendron viscosum": "-18 700-2700 Medium High Medium None Red None None",
    "Rudbeckia hirta": "-23 - None Medium Medium None Orange None None",
    "Sambucus canadensis": "-28 700-1700 Low Medium Medium None White None None",
    "Scirpus atrovirens": "-53 3450-4800 Medium Medium Low None Brown None None",
    "Silphium perfoliatum": "-49 - Low - Low - Yellow - None",
    "Solidago canadensis": "-43 4800-10000 Medium Medium Medium None Yellow Rapid None",
    "Sorghastrum nutans": "-8 - Low Medium Medium Medium Yellow Slow None",
    "Symphoricarpos orbiculatus": "-23 1700-4800 None High Medium Low White Moderate None",
    "Symphyotrichum puniceum": "-35 2700-11000 High High Low None Blue Slow None",
    "Vaccinium corymbosum": "-33 1200-1700 Medium Medium Low High White None None",
}

ZONES_PRINTED = {1: (-60, -50), 3: (-40, -30), 4: (-30, -20), 6: (-10, 0), 9: (20, 30)}
"""Zones of the map with the span of each, in degrees F."""

PER_ACRE = {12: 43_560, 24: 10_890, 36: 4_840, 48: 2_722.5, 72: 1_210}
"""Plants an acre on a square grid, by the inches between them: 43,560 over the square of feet."""


def zone_of(lowest_f: float) -> int:
    """Return the hardiness zone in which a temperature falls; what is colder still is in zone 1."""
    return max(1, math.floor((lowest_f + 60) / 10) + 1)


def apart_at(plants_per_acre: float) -> float:
    """Return the distance between plants in inches, on a square grid of so many an acre."""
    return 12 * math.sqrt(43_560 / plants_per_acre)


def test_a_lowest_temperature_falls_in_the_zone_of_the_map():
    for zone, (low, high) in ZONES_PRINTED.items():
        assert zone_of(low) == zone_of(high - 0.1) == zone
        assert zone_of(high) == zone + 1
    assert zone_of(-79) == 1


def test_a_number_an_acre_is_a_distance():
    for inches, many in PER_ACRE.items():
        assert apart_at(many) == pytest.approx(inches, rel=1e-9)


DECIDED = {(one.scientific_name, one.field) for one in decisions()}


@pytest.mark.parametrize("name", PRINTED)
def test_the_list_holds_what_is_printed_or_a_decision(name):
    plant = next(one for one in builtin_plants() if one.scientific_name == name)
    row = PRINTED[name].split()
    lowest, density, air, moisture, drought, salt, color, spread, toxic = map(str.lower, row)
    if (name, "hardiness_min") not in DECIDED:
        # The milder of the two is kept, and a difference of two zones is decided by hand.
        assert 0 <= plant.hardiness[0] - zone_of(float(lowest)) <= 1
    if (name, "standing_water") not in DECIDED:
        assert plant.standing_water == air
    assert plant.drought == drought
    assert moisture == "-" or plant.moisture == (moisture,)
    # The lower of two sources is kept.
    assert salt == "-" or DEGREES.index(plant.salt) <= DEGREES.index(salt)
    flowers = plant.kind in (PlantKind.FORB, PlantKind.SHRUB)
    if flowers and (name, "flower_color") not in DECIDED:
        assert color == "-" or plant.flower_color == color
    if spread in ("moderate", "rapid"):
        assert plant.spreads != "no"
    if toxic in ("slight", "moderate", "severe"):
        assert plant.toxic and plant.usda_toxicity == toxic
    if "USDA" in plant.rests("spacing") and (name, "spacing_in") not in DECIDED:
        least, most = map(float, density.split("-"))
        assert apart_at(most) * 0.95 <= plant.spacing_in <= apart_at(least) * 1.05


def test_the_sample_is_large_enough():
    assert len(PRINTED) == 60
