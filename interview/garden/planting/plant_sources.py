"""The lists that the facts about plants rest on, and what each carries."""

from __future__ import annotations

from interview.quantities.evidence import Provenance, Source

READ, COPY = Provenance.PUBLISHED, Provenance.SECONDARY

PLANT_SOURCES: dict[str, tuple[str, Source]] = {
    "USDA": (
        "USDA plant table",
        Source("PLANTS database, U.S. Department of Agriculture, characteristics, 2025", COPY),
    ),
    "ALB": (
        "Albemarle list",
        Source("Piedmont native plant database, Albemarle County, Virginia, 2023", COPY),
    ),
    "LBJ": (
        "Wildflower Center",
        Source("Native plants of North America, Wildflower Center, web pages", COPY),
    ),
    "SF": (
        "San Francisco list",
        Source("San Francisco plant list, in an open table of plants, undated", COPY),
    ),
    "WUCOLS": (
        "California water use list",
        Source("Water use of landscape species, WUCOLS, UC Davis, database, undated", READ),
    ),
    "WSU": (
        "Western Washington handbook",
        Source(
            "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013", READ
        ),
    ),
    "SCBC": (
        "Sunshine Coast list",
        Source("List of plants for wet ground, Sunshine Coast, British Columbia, undated", COPY),
    ),
    "STEP": (
        "Ontario stormwater guide",
        Source("Low Impact Development Planning and Design Guide, TRCA, Ontario, web pages", READ),
    ),
    "MPCA": (
        "Minnesota manual",
        Source(
            "Minnesota Stormwater Manual, Plants for swales, web page, after a list of 2003", READ
        ),
    ),
    "MDC": (
        "Missouri list",
        Source("Plants for Rain Gardens, Missouri Department of Conservation, web page", READ),
    ),
    "ILN": (
        "Illinois guide",
        Source("Native Plant Guide, Natural Resources Conservation Service, Illinois, p. 34", READ),
    ),
    "NYC": (
        "New York City guide",
        Source("Native Species Planting Guide, New York City Parks, 2nd edition, 2014", COPY),
    ),
    "UMN": (
        "Minnesota list",
        Source("Rain Garden Plants, Hausken and Thompson, Minnesota, undated", COPY),
    ),
    "MCMD": (
        "Montgomery County list",
        Source("Plants for rain gardens, Montgomery County, Maryland, undated", COPY),
    ),
    "EC": (
        "Environmental Concern list",
        Source("Plant list, Environmental Concern, Maryland, 2021", COPY),
    ),
    "MDRG": (
        "Maryland guide",
        Source("Using Native Plants for Rain Gardens and Wet Meadows, Maryland, undated", COPY),
    ),
    "NVRC": (
        "Northern Virginia list",
        Source("Northern Virginia handbook, list of plants, Council of Governments, 2012", COPY),
    ),
    "MSD": (
        "sewer district list",
        Source("List of plants of a sewer district, 10 March 2009, St. Louis by inference", COPY),
    ),
    "NGN": (
        "Natural Garden Natives",
        Source("Natural Garden Natives, a list of the nursery trade, undated", COPY),
    ),
    "EW": (
        "Edge of the Woods",
        Source("Salt-tolerant plants, Edge of the Woods, a list of the trade, undated", COPY),
    ),
    "JEP": (
        "Jepson flora",
        Source(
            "Jepson flora of California, barberries, as quoted by a web page on Mahonia: roots "
            "often toxic, leaflets spine-toothed",
            COPY,
        ),
    ),
    "CHES": (
        "USDA catalogue of 1898",
        Source(
            "V. K. Chesnut, Preliminary Catalogue of Plants Poisonous to Stock, U.S. Department "
            "of Agriculture, 1898, p. 421",
            COPY,
        ),
    ),
    "CPP": (
        "Canadian poisonous plants",
        Source(
            "Canadian Poisonous Plants Information System, black-eyed Susan, as a web page of "
            "2012 copies it",
            COPY,
        ),
    ),
    "CVT": (
        "veterinary toxicology",
        Source(
            "Glyceria, a page of a veterinary toxicology on the web pages of Provet, undated", COPY
        ),
    ),
    "HNW": (
        "Northwest native plant list",
        Source("Northwest Native Plant Database, W. Hansen, web page, 2012", READ),
    ),
    "PFAF": (
        "Plants For A Future",
        Source("Plants For A Future, database, known hazards, as web pages copy it", COPY),
    ),
    "RCP": (
        "Royal College of Physicians",
        Source(
            "Garden of the Royal College of Physicians, London, H. F. Oakeley, 2013, web page", READ
        ),
    ),
    "NMCD": (
        "Natural Medicines database",
        Source("Natural Medicines Comprehensive Database, as a web page of 2021 tells it", COPY),
    ),
    "MEDD": (
        "medical dictionary",
        Source("Black root, Medical Dictionary, The Free Dictionary, web page, undated", COPY),
    ),
    "CARL": (
        "Carleton arboretum",
        Source("Golden Alexander, Prairie Flower Gallery, Carleton College, web page", READ),
    ),
    "SAFE": (
        "Safe Plants",
        Source("Goat's Beard, Safe Plants, UK, web page, undated", READ),
    ),
    "TOXB": (
        "Toxic Botany",
        Source("Lizard's Tail, Toxic Botany, web page, undated", READ),
    ),
    "POLL": (
        "Pollinator Partnership",
        Source("Plants for pollinators, Pollinator Partnership, undated", COPY),
    ),
    "XER": (
        "Xerces Society",
        Source("Plants for pollinators, Xerces Society, undated", COPY),
    ),
    "NRCS": (
        "NRCS list of insects",
        Source("Insects by plant, Marion SWCD, NRCS and H. Holm, undated", COPY),
    ),
    "TAL": (
        "University of Delaware counts",
        Source("Caterpillars by genus of plant, Tallamy, University of Delaware, 2018", COPY),
    ),
}
"""What the codes in the column ``rests_on`` stand for: a short name, and the publication.

A code may be followed by a page, as ``WSU p. A-5``. A fact that is not named in that column is from
memory. How the values were taken, where the sources differ:

* Of the copies of the USDA table the one of 2025, which leaves cultivars out, goes before the
  others.
* Sun: a shade tolerance of none is full sun, of some full and part, tolerant part and shade, which
  does not exclude sun. A class of sun that no list carries is taken away; none is added but in the
  rows of ``plant_decisions.csv``.
* The lowest zone is that of the lowest temperature, or the list's own where that is milder.
* Spacing: a printed distance or width that holds the list's figure stands behind it. The USDA
  density is that of wild plantings: an outer bound, and no distance to plant at.
* Zones of other lists: regular or permanent flooding is the floor, seasonal the floor and the side,
  irregular the side, upland the rim.
* Drought and salt are the lower of what two sources say. Salt is of the soil, not of the road; a
  list of the trade alone stands for medium.
* Spread: moderate or faster in one source is some; fast in two is hard.
* Trade: the USDA entries have no date, so none of them rules a plant out.

``plant_decisions.csv`` holds every contradiction that was decided by hand: the field, what was
published, what is kept, and why.
"""
