"""Sixty natives of the Virginia Piedmont as a county prints them, beside the plant list.

Piedmont native plant database, Albemarle County, Virginia, read in a second copy of 2023. Heights
and months of the list were written before it was read, so it is a check from outside. Rows as
printed: height in feet, months of bloom, mature width in inches, whether it spreads rapidly, sun; a
dash where it says nothing. A range agrees where it overlaps ours; what does not is a decision in
``plant_decisions.csv`` or named below. A width is no distance to plant at, and stands behind one
only where it holds it.
"""

import calendar

import pytest

from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.provenance import decisions

PRINTED = {
    "Acorus americanus": "1-6 Apr-Jun - - -",
    "Amorpha fruticosa": "4-16 Apr-Jun 72-180 rapid -",
    "Andropogon gerardii": "3-6 Aug-Sep 24-30 rapid -",
    "Aquilegia canadensis": "1-2 Apr-May 12-18 - -",
    "Aronia melanocarpa": "5-6 Apr-May 60-120 - part;shade",
    "Asclepias incarnata": "2-4 May-Jun 24-48 - -",
    "Baptisia australis": "3-5 Apr-Jun 36 - -",
    "Carex crinita": "2-4 Jun-Aug 18-36 - -",
    "Carex pensylvanica": "1-3 May-Jul - - -",
    "Ceanothus americanus": "1-3 Apr-Sep 12-36 - full;part;shade",
    "Chasmanthium latifolium": "2-4 Jun-Sep - rapid -",
    "Clethra alnifolia": "6-12 Jul-Aug - - full;part;shade",
    "Coreopsis lanceolata": "1.5-3 Apr-Jul - rapid full",
    "Coreopsis verticillata": "1-3 May-Oct 18-24 - full;part",
    "Dichanthelium clandestinum": "1.5-4.5 May-Oct - - full;part",
    "Elymus virginicus": "1.5-3 May-Jun 12-24 - full;part;shade",
    "Eryngium yuccifolium": "4-6 May-Jun - - full",
    "Eutrochium fistulosum": "2-9 Jul-Oct 24-48 - -",
    "Geranium maculatum": "1.5-2.5 Apr-Jun 12-18 rapid full;part;shade",
    "Helenium flexuosum": "1-3 Aug-Oct 12-24 - full;part",
    "Heliopsis helianthoides": "3-5 Jun-Sep - rapid -",
    "Hibiscus moscheutos": "3-7 Jul-Sep 3-48 - -",
    "Hypericum prolificum": "2-5 Jun-Aug 24-48 - full;part",
    "Ilex verticillata": "6-20 May-Jul 72-96 - part;shade",
    "Iris virginica": "1-3 May-Jun 12-36 - full;part",
    "Juncus acuminatus": "0.5-3.33 Mar-May - - -",
    "Juncus tenuis": "0.5-2 May-Jun 6-12 - full;part;shade",
    "Lindera benzoin": "6-12 Mar-May 72-144 - full;part;shade",
    "Lobelia siphilitica": "1-4 Aug-Oct 12-18 - full;part;shade",
    "Mimulus ringens": "1-3 May-Sep 9-12 - full;part",
    "Monarda fistulosa": "2.5-4 Jun-Jul - rapid -",
    "Monarda punctata": "0.5-3 Apr-Aug - - full",
    "Muhlenbergia capillaris": "2-3 Sep-Nov 24-36 - full;part;shade",
    "Packera aurea": "1-3 Apr-Aug 12-24 rapid full;part;shade",
    "Penstemon digitalis": "2-4 May-Aug 12-36 - -",
    "Phlox paniculata": "3-4 Jun-Aug 48-96 - full;part",
    "Physostegia virginiana": "2-4 Jun-Sep 18-36 rapid -",
    "Pontederia cordata": "1-3 Jun-Sep - - full;part",
    "Pycnanthemum tenuifolium": "1-2 Jun-Sep 12-24 rapid full;part",
    "Rhexia virginica": "1-3 May-Sep - - full;part",
    "Rhus aromatica": "5-6 Mar-May 72-120 - part;shade",
    "Rosa palustris": "3-6 Jun-Aug 60-84 - full;part",
    "Rudbeckia hirta": "1-3 Jun-Oct 12-36 - -",
    "Sagittaria latifolia": "1-3 Jul-Sep - - -",
    "Sambucus canadensis": "4-12 May-Jun 72-144 rapid -",
    "Schizachyrium scoparium": "2-3 Aug-Oct - - full;part",
    "Scirpus atrovirens": "4-5 Jun-Jul 36-48 - full",
    "Senna marilandica": "3-6 Jul-Aug - - full;part",
    "Sisyrinchium angustifolium": "0.5-1.5 Mar-Jul - - full;part",
    "Solidago speciosa": "2-5 Aug-Oct - - full;part",
    "Spiraea alba": "2-6 Jun-Aug 36-48 - full;part",
    "Symphoricarpos orbiculatus": "2-5 Jun-Jul 48-96 rapid full;part",
    "Symphyotrichum laeve": "1.5-3 Aug-Oct - rapid full;part",
    "Symphyotrichum novi-belgii": "1-3 Jul-Oct - rapid full;part",
    "Symphyotrichum puniceum": "1.5-6 Jul-Aug - - full;part",
    "Tiarella cordifolia": "0.17-0.5 Apr-Jun 6-36 rapid part;shade",
    "Tripsacum dactyloides": "3-6 May-Jun - - full;part",
    "Verbena hastata": "2-5 Jun-Sep - - -",
    "Viburnum dentatum": "6-10 May-Jul 48-96 - part;shade",
    "Xanthorhiza simplicissima": "0.083-0.25 Apr-May 1-6 - part;shade",
}

DECIDED = {(one.scientific_name, one.field) for one in decisions()}
MONTHS = list(calendar.month_abbr)
NOT_FOLLOWED = {
    "Ilex verticillata",
    "Rhus aromatica",
    "Viburnum dentatum",
}
"""Species that the USDA plant table gives more sun than is printed here."""


def span(words):
    low, _, high = words.partition("-")
    return float(low), float(high or low)


def months(words):
    first, _, last = words.partition("-")
    start, end = MONTHS.index(first), MONTHS.index(last or first)
    return {(start + step - 1) % 12 + 1 for step in range((end - start) % 12 + 1)}


@pytest.mark.parametrize("name", PRINTED)
def test_the_list_agrees_with_the_county_or_a_decision_says_why_not(name):
    plant = next(one for one in builtin_plants() if one.scientific_name == name)
    height, bloom, width, spread, sun = PRINTED[name].split()
    if (name, "height_max_ft") not in DECIDED:
        low, high = span(height)
        overlaps = low <= plant.height_max_ft and high >= plant.height_min_ft
        assert overlaps is ("ALB" in plant.rests("height"))
    if (name, "bloom") not in DECIDED:
        assert months(bloom) & set(plant.bloom_months)
    if width != "-" and (name, "spacing_in") not in DECIDED:
        low, high = span(width)
        assert ("ALB" in plant.rests("spacing")) is (low <= plant.spacing_in <= high)
    if spread == "rapid":
        assert plant.spreads != "no"
    if sun != "-" and (name, "sun") not in DECIDED:
        follows = {one.value for one in plant.sun} <= set(sun.split(";"))
        assert follows is (name not in NOT_FOLLOWED)


COLORS = {
    "Coreopsis tripteris": "yellow",
    "Diervilla lonicera": "red/orange/yellow/pink",
    "Eupatorium perfoliatum": "white",
    "Heliopsis helianthoides": "yellow",
    "Hibiscus laevis": "white/pink/red",
    "Lindera benzoin": "yellow",
    "Lobelia cardinalis": "red",
    "Oenothera fruticosa": "yellow",
    "Penstemon digitalis": "white",
    "Physocarpus opulifolius": "white/pink",
    "Rosa carolina": "white/pink",
    "Rosa palustris": "pink/purple",
    "Symphyotrichum novae-angliae": "pink/purple",
    "Tiarella cordifolia": "white/pink",
}
"""Colors of the flower by the county's letters, each flower's eye left out."""


@pytest.mark.parametrize("name", COLORS)
def test_a_flower_has_a_color_that_the_county_gives_it(name):
    plant = next(one for one in builtin_plants() if one.scientific_name == name)
    assert plant.flower_color in COLORS[name].split("/")


def test_the_sample_is_large_enough():
    assert len(PRINTED) == 60
