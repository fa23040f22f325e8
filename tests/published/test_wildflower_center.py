"""Sixty species as the Wildflower Center describes them, beside the plant list.

Native plants of North America, Wildflower Center, web pages, read in a second copy. The months of
the list were written before they were read. Rows as printed: months of bloom, colors of the flower,
sun; a dash where nothing is said. Months agree where they overlap; a color is one of those named.
"""

import calendar

import pytest

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.provenance import decisions
from interview.garden.planting.record import PlantKind

PRINTED = {
    "Achillea millefolium": "Apr-Sep white/pink -",
    "Amelanchier alnifolia": "Apr-Jun white full;part;shade",
    "Amorpha fruticosa": "Apr-Jun orange/blue/purple/violet -",
    "Aquilegia formosa": "May-Aug red/yellow full;part",
    "Asclepias fascicularis": "Jun-Sep white/pink/green/purple full;part",
    "Asclepias speciosa": "May-Sep pink/green/purple full",
    "Baccharis pilularis": "Jul-Oct white/yellow full;part",
    "Calamagrostis canadensis": "Jun-Aug green -",
    "Camassia quamash": "Apr-Jun blue full",
    "Carex barbarae": "Jul-Aug - full;part",
    "Carex stipata": "Apr-Aug - -",
    "Cornus sericea": "May-Jun white full;part",
    "Deschampsia cespitosa": "Jun yellow full;part;shade",
    "Dicentra formosa": "Mar-Jul pink/purple full;part;shade",
    "Diplacus aurantiacus": "Mar-Aug orange -",
    "Distichlis spicata": "Apr-Oct yellow full;part",
    "Elymus glaucus": "Jun-Jul yellow part",
    "Epilobium canum": "Aug-Oct red -",
    "Erigeron glaucus": "Apr-Aug white/yellow/blue/purple full;part",
    "Eriogonum fasciculatum": "May-Oct white/pink full",
    "Festuca californica": "Mar-Jul yellow part",
    "Festuca idahoensis": "Apr-Jul yellow full;part",
    "Fragaria chiloensis": "Apr-Jun white full;part;shade",
    "Gaillardia aristata": "Jul-Sep red/yellow full",
    "Helenium bigelovii": "Jul-Aug yellow -",
    "Heuchera micrantha": "May-Jul white full;part;shade",
    "Holodiscus discolor": "May-Aug white full;part;shade",
    "Iris douglasiana": "Mar-May blue full;part",
    "Iris tenax": "Apr-Jun white/pink/yellow/purple part",
    "Koeleria macrantha": "Apr-Jun yellow full;part",
    "Leymus triticoides": "Apr-May yellow full;part",
    "Lilium pardalinum": "May-Jul red/orange/yellow part",
    "Lobelia cardinalis": "May-Oct red -",
    "Lonicera involucrata": "Mar-Aug red/orange/yellow full;part;shade",
    "Lupinus polyphyllus": "May pink/blue/purple full;part",
    "Mahonia aquifolium": "Mar-May yellow part;shade",
    "Mahonia repens": "Apr-Jul yellow full;part",
    "Mimulus cardinalis": "May-Sep red/orange full;part",
    "Mimulus guttatus": "Apr-Sep red/yellow full;part;shade",
    "Muhlenbergia rigens": "Apr-Sep yellow full;part",
    "Physocarpus capitatus": "May-Jul white full;part;shade",
    "Potentilla gracilis": "Jun-Jul yellow full",
    "Rhododendron occidentale": "Apr-Aug white/pink/orange/yellow part",
    "Rhus trilobata": "Mar-Apr white/yellow full;part",
    "Ribes sanguineum": "Mar-Apr white/red/pink full;part;shade",
    "Rosa californica": "May-Aug pink full;part;shade",
    "Rosa nutkana": "May-Jul pink full;part;shade",
    "Rosa woodsii": "May-Jul pink full;part;shade",
    "Rudbeckia californica": "Jun-Nov yellow/green -",
    "Rudbeckia hirta": "Jun-Oct yellow -",
    "Salvia spathacea": "Mar-May pink full;part",
    "Shepherdia argentea": "Apr-May white/yellow full",
    "Sisyrinchium bellum": "Mar-May blue/purple full;part",
    "Solidago canadensis": "Sep-Nov yellow full;part",
    "Sphaeralcea ambigua": "Feb-Nov orange full",
    "Spiraea douglasii": "Jun-Sep pink part",
    "Symphoricarpos albus": "Jun-Jul white/pink full;part;shade",
    "Symphyotrichum chilense": "Jul-Sep yellow/violet -",
    "Tellima grandiflora": "Apr-Jul white/pink/green/brown full;part;shade",
    "Tolmiea menziesii": "May-Aug green/purple shade",
}

DECIDED = {(one.scientific_name, one.field) for one in decisions()}
MONTHS = list(calendar.month_abbr)
SAME = {"violet": "purple", "lavender": "purple"}
"""Colors that the list writes in another word."""
NOT_FOLLOWED = {
    "Camassia quamash",
    "Festuca californica",
    "Lilium pardalinum",
    "Rhododendron occidentale",
    "Spiraea douglasii",
    "Tolmiea menziesii",
}
"""Species for which the sun printed was not followed: the list's own, or another source's."""


def months(words):
    first, _, last = words.partition("-")
    start, end = MONTHS.index(first), MONTHS.index(last or first)
    return {(start + step - 1) % 12 + 1 for step in range((end - start) % 12 + 1)}


@pytest.mark.parametrize("name", PRINTED)
def test_the_list_agrees_with_the_center_or_a_decision_says_why_not(name):
    plant = next(one for one in builtin_plants() if one.scientific_name == name)
    bloom, colors, sun = PRINTED[name].split()
    if plant.bloom_months and (name, "bloom") not in DECIDED:
        assert months(bloom) & set(plant.bloom_months)
    named = {SAME.get(one, one) for one in colors.split("/")}
    if colors != "-" and plant.kind in (PlantKind.FORB, PlantKind.SHRUB):
        assert plant.flower_color in named
    if sun != "-" and (name, "sun") not in DECIDED:
        follows = {one.value for one in plant.sun} <= set(sun.split(";"))
        assert follows is (name not in NOT_FOLLOWED)


def test_the_sample_is_large_enough():
    assert len(PRINTED) == 60
