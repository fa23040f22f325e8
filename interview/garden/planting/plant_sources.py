"""The lists that the facts about plants rest on, and what each carries."""

from __future__ import annotations

from interview.quantities.evidence import Provenance, Source

READ, COPY = Provenance.PUBLISHED, Provenance.SECONDARY

_LISTS = (
    ("USDA", "USDA plant table", COPY,
     "PLANTS database, U.S. Department of Agriculture, characteristics, 2025"),
    ("ALB", "Albemarle list", COPY,
     "Piedmont native plant database, Albemarle County, Virginia, 2023"),
    ("LBJ", "Wildflower Center", COPY,
     "Native plants of North America, Wildflower Center, web pages"),
    ("SF", "San Francisco list", COPY,
     "San Francisco plant list, in an open table of plants, undated"),
    ("WUCOLS", "California water use list", READ,
     "Water use of landscape species, WUCOLS, UC Davis, database, undated"),
    ("WSU", "Western Washington handbook", READ,
     "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013"),
    ("SCBC", "Sunshine Coast list", COPY,
     "List of plants for wet ground, Sunshine Coast, British Columbia, undated"),
    ("STEP", "Ontario stormwater guide", READ,
     "Low Impact Development Planning and Design Guide, TRCA, Ontario, web pages"),
    ("MPCA", "Minnesota manual", READ,
     "Minnesota Stormwater Manual, Plants for swales, web page, after a list of 2003"),
    ("MDC", "Missouri list", READ,
     "Plants for Rain Gardens, Missouri Department of Conservation, web page"),
    ("ILN", "Illinois guide", READ,
     "Native Plant Guide, Natural Resources Conservation Service, Illinois, p. 34"),
    ("NYC", "New York City guide", COPY,
     "Native Species Planting Guide, New York City Parks, 2nd edition, 2014"),
    ("UMN", "Minnesota list", COPY,
     "Rain Garden Plants, Hausken and Thompson, Minnesota, undated"),
    ("MCMD", "Montgomery County list", COPY,
     "Plants for rain gardens, Montgomery County, Maryland, undated"),
    ("EC", "Environmental Concern list", COPY,
     "Plant list, Environmental Concern, Maryland, 2021"),
    ("MDRG", "Maryland guide", COPY,
     "Using Native Plants for Rain Gardens and Wet Meadows, Maryland, undated"),
    ("NVRC", "Northern Virginia list", COPY,
     "Northern Virginia handbook, list of plants, Council of Governments, 2012"),
    ("MSD", "sewer district list", COPY,
     "List of plants of a sewer district, 10 March 2009, St. Louis by inference"),
    ("NGN", "Natural Garden Natives", COPY,
     "Natural Garden Natives, a list of the nursery trade, undated"),
    ("EW", "Edge of the Woods", COPY,
     "Salt-tolerant plants, Edge of the Woods, a list of the trade, undated"),
    ("JEP", "Jepson flora", COPY,
     "Jepson flora of California, barberries, as quoted by a web page on Mahonia: roots often "
     "toxic, leaflets spine-toothed"),
    ("CHES", "USDA catalogue of 1898", COPY,
     "V. K. Chesnut, Preliminary Catalogue of Plants Poisonous to Stock, U.S. Department of "
     "Agriculture, 1898, p. 421"),
    ("CPP", "Canadian poisonous plants", COPY,
     "Canadian Poisonous Plants Information System, black-eyed Susan, as a web page of 2012 "
     "copies it"),
    ("CVT", "veterinary toxicology", COPY,
     "Glyceria, a page of a veterinary toxicology on the web pages of Provet, undated"),
    ("HNW", "Northwest native plant list", READ,
     "Northwest Native Plant Database, W. Hansen, web page, 2012"),
    ("PFAF", "Plants For A Future", COPY,
     "Plants For A Future, database, known hazards, as web pages copy it"),
    ("RCP", "Royal College of Physicians", READ,
     "Garden of the Royal College of Physicians, London, H. F. Oakeley, 2013, web page"),
    ("NMCD", "Natural Medicines database", COPY,
     "Natural Medicines Comprehensive Database, as a web page of 2021 tells it"),
    ("MEDD", "medical dictionary", COPY,
     "Black root, Medical Dictionary, The Free Dictionary, web page, undated"),
    ("CARL", "Carleton arboretum", READ,
     "Golden Alexander, Prairie Flower Gallery, Carleton College, web page"),
    ("SAFE", "Safe Plants", READ, "Goat's Beard, Safe Plants, UK, web page, undated"),
    ("TOXB", "Toxic Botany", READ, "Lizard's Tail, Toxic Botany, web page, undated"),
    ("POLL", "Pollinator Partnership", COPY,
     "Plants for pollinators, Pollinator Partnership, undated"),
    ("XER", "Xerces Society", COPY, "Plants for pollinators, Xerces Society, undated"),
    ("NRCS", "NRCS list of insects", COPY,
     "Insects by plant, Marion SWCD, NRCS and H. Holm, undated"),
    ("TAL", "University of Delaware counts", COPY,
     "Caterpillars by genus of plant, Tallamy, University of Delaware, 2018"),
)  # fmt: skip

PLANT_SOURCES: dict[str, tuple[str, Source]] = {
    code: (short, Source(title, standing)) for code, short, standing, title in _LISTS
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
