"""Words, spelling and services by country, from one table, and sentences told in them.

Sentences are written once, with American words and with measures as ``2 ft (0.6 m)``; only where
an American word means something else too is another one written.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Mapping
from enum import Enum
from functools import cache, lru_cache
from importlib.resources import files

from interview.quantities.evidence import Provenance, Source
from interview.quantities.records import record
from interview.quantities.shown import in_metric

US = "us"


class Half(Enum):
    """The half of the world, by which the months of the seasons go."""

    NORTH = "north"
    SOUTH = "south"
    UNKNOWN = ""


@record
class Land:
    """What is held of one country."""

    half: Half
    service: str
    """Whom to ask about buried lines; says so where nothing is held."""
    paint: str
    """What the colors of the marks mean; says so where nothing is held."""
    gives: str
    """What the owners of lines give whoever asks: ``marks``, ``plans`` or either."""
    marks: str
    """What counts as a mark of a line, and what to do where plans alone are given."""
    wait: int | None
    """Business days to wait for the owners; None where no rule of the country was read."""
    wait_source: Source
    wait_said: str
    """What was read of the wait."""
    words: Mapping[str, str]
    """The words used here, by the written ones in small letters."""


@cache
def rows() -> tuple[dict[str, str], ...]:
    """Return the rows of the table as they stand."""
    table = (files("interview.asking") / "lands.csv").read_text(encoding="utf-8")
    return tuple(csv.DictReader(table.splitlines()))


@cache
def land(country: str) -> Land:
    """Return what is held of ``country``, by its id; raises KeyError where it has no column."""
    held = {row["term"]: row[country] for row in rows()}
    words = {term: word for term, word in held.items() if not term.startswith("@")}
    found = next(row for row in rows() if row["term"] == "@wait")
    return Land(
        Half(held["@half"]),
        held["@service"],
        held["@paint"],
        held["@gives"],
        held["@marks"],
        None if held["@wait"] == "none" else int(held["@wait"]),
        Source(found["source"], Provenance(found["standing"])),
        held["@wait_said"],
        words,
    )


def stands(words: str, country: str = US, metric: bool = False) -> bool:
    """Tell whether a sentence needs no other words in ``country``."""
    return not metric and country == US and not _terms(US)[0].search(words)


@lru_cache(maxsize=8192)
def tell(words: str, country: str = US, metric: bool = False) -> str:
    """Return a sentence in the words of ``country``, with metric measures alone if ``metric``."""
    if metric:
        words = in_metric(words)
    terms, put = _terms(country)
    return terms.sub(put, words)


@cache
def _terms(country: str) -> tuple[re.Pattern[str], Callable[[re.Match[str]], str]]:
    """Return what finds the words that differ, the longest first, and what puts the others in."""
    held = land(country).words
    if country == US:
        held = {term: word for term, word in held.items() if word != term}
    longest_first = sorted(held, key=len, reverse=True)
    found = re.compile(rf"\b({'|'.join(map(re.escape, longest_first))})\b", re.IGNORECASE)

    def put(match: re.Match[str]) -> str:
        old, new = match[0], held[match[0].lower()]
        if new == old.lower():
            return old
        return new[:1].upper() + new[1:] if old[:1].isupper() else new

    return found, put
