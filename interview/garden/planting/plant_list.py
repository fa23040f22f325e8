"""Reads the plant list and the list of states from CSV text."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache, partial
from importlib.resources import files
from typing import TypeVar

from interview.garden.planting.record import (
    COLORS,
    DEGREES,
    TRADE,
    WILDLIFE,
    Indicator,
    Plant,
    PlantKind,
    Sun,
)
from interview.garden.planting.regions import ListRegion, PlantRegion, State
from interview.garden.size.zones import Zone
from interview.quantities.evidence import Provenance, Source
from interview.reading.csv_reader import SHOWN, Row, RowFault, split_rows
from interview.reading.echo import word_list

Record = TypeVar("Record")

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")

NEEDED = (
    "scientific_name", "common_name", "kind", "regions", "height_max_ft", "spacing_in", "sun",
    "zones",
)  # fmt: skip
"""Columns a row must fill in; every other cell may be left empty."""

OWN_NEEDED = ("scientific_name", "common_name", "kind", "sun", "zones")
"""Columns that a row of the gardener's own file must fill in."""

OWN_ONLY = ("height_max_m", "spacing_cm", "wetland_any")
"""Columns of the gardener's own file alone: metric sizes, and one rating for any place."""

_RATED = {one: f"wetland_{one.name}" for one in ListRegion}

OPTIONAL = (
    "other_names", "native_checked", "native_unchecked", "native_caution", "height_min_ft",
    "bloom_start", "bloom_end", *_RATED.values(), "indicator_status",
    "indicator_source", "rated_by_two", "rated_by_one", "rated_upl_or_unlisted", "rating_conflict",
    "hardiness_min", "hardiness_max", "toxic", "usda_toxicity", "spreads", "thorny", "over_8ft",
    "needs_long_wet", "remarks", "usda_symbol", "standing_water", "moisture", "drought", "salt",
    "flower_color", "trade", "wildlife", "absent_in", "regulated_in", "rests_on",
)  # fmt: skip

EARLIER = (
    "zone_source", "hardiness_source", "salt_tolerant", "usda_drought", "usda_height_ft",
    "usda_height_check", "usda_bloom", "usda_bloom_check", "verified_fields",
)  # fmt: skip
"""Columns of the list of version 0.1, which a gardener's own file may be a copy of."""

PLACE_COLUMNS = (
    "code", "name", "plant_region", "list_regions", "source", "lists_confirmed", "lists_source",
    "lists_standing", "zone_coldest", "zone_warmest", "zone_common", "zone_source",
)  # fmt: skip

UNSAID = "from memory, not checked"
"""What stands for a source that a row leaves empty."""

OWN_SOURCE = "your own plant file"
OWN_LIMIT = 2_000_000
"""Most characters of a plant file that is read: ten thousand plants."""


def _months(row: Row) -> tuple[int, ...]:
    first, last = (row.text(column)[:3].title() for column in ("bloom_start", "bloom_end"))
    for column, word in (("bloom_start", first), ("bloom_end", last)):
        if word not in MONTHS and (first or last):
            row.fault(column, f"Write a month such as May for {column}, or leave both empty.")
            return ()
    return _from_to(first, last) if first else ()


@cache
def _from_to(first: str, last: str) -> tuple[int, ...]:
    """Return the numbers of the months from one to another, over the turn of the year."""
    start, end = MONTHS.index(first), MONTHS.index(last)
    return tuple((start + step) % 12 + 1 for step in range((end - start) % 12 + 1))


def _ratings(row: Row) -> tuple[tuple[ListRegion, Indicator], ...]:
    found = ((region, row.members(column, Indicator, True)) for region, column in _RATED.items())
    return tuple((region, rated[0]) for region, rated in found if rated)


def _words(row: Row, column: str, allowed: tuple[str, ...]) -> tuple[str, ...]:
    """Return the words of a cell, each one of ``allowed``."""
    found = tuple(word.lower() for word in row.many(column))
    if strange := next((word for word in found if word not in allowed), ""):
        row.fault(
            column, f"Write {word_list(allowed, 'or')} for {column}, not “{strange[:SHOWN]}”."
        )
        return ()
    return found


def _hardiness(row: Row) -> tuple[int, int] | None:
    low = row.number("hardiness_min", 1, 13, 0)
    high = row.number("hardiness_max", 1, 13, 0)
    if not low or not high:
        return None
    if low > high:
        row.fault("hardiness_min", "Write the colder zone first: the smaller number.")
    return int(low), int(high)


def _size(row: Row, own: bool, us: tuple[str, float, float], metric: tuple[str, float]) -> float:
    """Return a size in the US unit; a row of one's own file may give it in the metric one."""
    column, low, high = us
    other, factor = metric
    if own and row.cells.get(other):
        return row.number(other, low * factor, high * factor, low * factor) / factor
    if own and not row.cells.get(column):
        row.fault(column, f"Fill in {column} or {other}; every plant needs one of them.")
    return row.number(column, low, high, low)


def _plant(row: Row, own: bool = False) -> Plant:
    tallest = _size(row, own, ("height_max_ft", 0.1, 60), ("height_max_m", 0.3048))
    shortest = row.number("height_min_ft", 0.1, 60, tallest)
    if shortest > tallest:
        row.fault("height_min_ft", "Make height_min_ft no more than the greatest height.")
    kind = row.members("kind", PlantKind, False) or (PlantKind.FORB,)
    salt = row.word("salt_tolerant", ("yes", "no"), "")
    salt = {"yes": "medium", "no": "none"}.get(salt, "")
    unsaid = OWN_SOURCE if own else UNSAID
    anywhere = row.members("wetland_any", Indicator, True)
    return Plant(
        scientific_name=row.text("scientific_name"),
        common_name=row.text("common_name"),
        other_names=row.many("other_names"),
        kind=kind[0],
        regions=row.members("regions", PlantRegion, True),
        native_checked=row.members("native_checked", PlantRegion, True),
        native_caution=row.text("native_caution"),
        height_min_ft=shortest,
        height_max_ft=tallest,
        spacing_in=_size(row, own, ("spacing_in", 3, 240), ("spacing_cm", 2.54)),
        sun=row.members("sun", Sun, False),
        bloom_months=_months(row),
        zones=row.members("zones", Zone, False),
        ratings=_ratings(row),
        indicator_status=row.text("indicator_status") or unsaid,
        indicator_source=row.many("indicator_source") or ((OWN_SOURCE,) if own else ()),
        rated_by_two=row.members("rated_by_two", ListRegion, True),
        rated_by_one=row.members("rated_by_one", ListRegion, True),
        rated_upl_or_unlisted=row.members("rated_upl_or_unlisted", ListRegion, True),
        rating_conflict=row.text("rating_conflict"),
        hardiness=_hardiness(row),
        toxic=row.yes("toxic"),
        usda_toxicity=row.word("usda_toxicity", ("none", "slight", "moderate", "severe"), ""),
        spreads=row.word("spreads", ("no", "some", "yes"), "no"),
        thorny=row.yes("thorny"),
        over_8ft=row.yes("over_8ft") or tallest > 8,
        needs_long_wet=row.yes("needs_long_wet"),
        remarks=row.text("remarks"),
        standing_water=row.word("standing_water", DEGREES, ""),
        moisture=_words(row, "moisture", DEGREES[1:]),
        drought=row.word("drought", DEGREES, row.word("usda_drought", DEGREES, "")),
        salt=row.word("salt", DEGREES, salt),
        flower_color=row.word("flower_color", COLORS, ""),
        trade=row.word("trade", TRADE, ""),
        wildlife=_words(row, "wildlife", WILDLIFE),
        absent_in=row.many("absent_in"),
        regulated_in=row.many("regulated_in"),
        rests_on="" if own else row.text("rests_on"),
        zone_source=(row.text("zone_source") or OWN_SOURCE) if own else "",
        hardiness_source=(row.text("hardiness_source") or OWN_SOURCE) if own else "",
        own=own,
        any_rating=anywhere[0] if anywhere else None,
    )


def _place(row: Row) -> State:
    region = row.members("plant_region", PlantRegion, True)
    said = row.text("lists_source")
    return State(
        code=row.text("code").upper(),
        name=row.text("name"),
        plant_region=region[0] if region else None,
        list_regions=row.members("list_regions", ListRegion, True),
        source=row.text("source") or UNSAID,
        lists_confirmed=row.members("lists_confirmed", ListRegion, True),
        lists_source=Source(said, Provenance(row.text("lists_standing"))) if said else None,
        zone_coldest=row.text("zone_coldest"),
        zone_warmest=row.text("zone_warmest"),
        zone_common=row.text("zone_common"),
        zone_source=Source(row.text("zone_source"), Provenance.SECONDARY),
    )


def _records(
    text: str,
    known: tuple[str, ...],
    needed: tuple[str, ...],
    make: Callable[[Row], Record],
) -> tuple[tuple[Record, ...], tuple[RowFault, ...]]:
    key = needed[0]
    rows, faults = split_rows(text, known, needed)
    found: dict[str, Record] = {}
    for row in rows:
        record = make(row)
        name = row.cells.get(key, "").casefold()
        if name and name in found:
            row.fault(key, f"“{row.cells[key][:SHOWN]}” is in the list twice; keep one line of it.")
        if not row.faults:
            found[name] = record
        faults += row.faults
    return tuple(found.values()), tuple(sorted(faults, key=lambda one: one.line))


def read_plants(text: str) -> tuple[tuple[Plant, ...], tuple[RowFault, ...]]:
    """Return the plants of a CSV text, and the faults; a faulty row is left out.

    The first line names the columns. ``NEEDED`` cells must be filled in; the others may be empty
    or absent, and what ``rests_on`` does not name is taken as memory.
    """
    return _records(text, (*NEEDED, *OPTIONAL, *EARLIER), NEEDED, _plant)


def read_own_plants(text: str) -> tuple[tuple[Plant, ...], tuple[RowFault, ...]]:
    """Return the plants of a gardener's own CSV text, and the faults; a faulty row is left out.

    The columns are those of the packaged list and ``OWN_ONLY``; a row must fill in ``OWN_NEEDED``
    and a height and a spacing in either unit. No region means at home wherever the file is used;
    no rating means that its zones are trusted. Lines that begin with ``#`` are comments.
    """
    if len(text) > OWN_LIMIT:
        return (), (
            RowFault(1, "", "This is too long for a plant list; keep the plants you need."),
        )
    known = (*NEEDED, *OPTIONAL, *EARLIER, *OWN_ONLY)
    return _records(text, known, OWN_NEEDED, partial(_plant, own=True))


def with_own(packaged: Sequence[Plant], own: Sequence[Plant]) -> tuple[Plant, ...]:
    """Return the plants of both lists; one's own row replaces the packaged row of that species."""
    mine = {plant.scientific_name.casefold() for plant in own}
    kept = (
        plant
        for plant in packaged
        if mine.isdisjoint(one.casefold() for one in (plant.scientific_name, *plant.other_names))
    )
    return (*own, *kept)


def read_places(text: str) -> tuple[tuple[State, ...], tuple[RowFault, ...]]:
    """Return the states of a CSV text, and the faults."""
    return _records(text, PLACE_COLUMNS, PLACE_COLUMNS[:2], _place)


@cache
def builtin_plants() -> tuple[Plant, ...]:
    """Return the packaged plant list, read once; raises ValueError if it is damaged."""
    return _whole(*read_plants(_packaged("plants.csv")))


@cache
def builtin_places() -> tuple[State, ...]:
    """Return the packaged list of states, read once; raises ValueError if it is damaged."""
    return _whole(*read_places(_packaged("places.csv")))


def _packaged(name: str) -> str:
    return (files("interview.garden.planting") / name).read_text(encoding="utf-8")


def _whole(records: tuple[Record, ...], faults: tuple[RowFault, ...]) -> tuple[Record, ...]:
    if faults:
        line, _, said = faults[0]
        raise ValueError(f"Line {line} of the packaged list is damaged. {said}")
    return records
