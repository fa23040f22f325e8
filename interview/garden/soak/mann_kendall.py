"""The Mann-Kendall test: do values in order go down by more than chance would have them?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from interview.quantities.evidence import Cited, Provenance, Source

MANN_KENDALL = Source(
    "Mann, Nonparametric Tests Against Trend, Econometrica 13, 1945; exact distribution re-derived "
    "here by counting orders, equal values included",
    Provenance.MEMORY,
)
LEVEL = Cited(0.05, Source("a one-sided level of 5 percent", Provenance.PRACTICE))
FEWEST = 4
"""With three values even a steady fall comes up by chance one time in six."""


@dataclass(frozen=True)
class Downward:
    """What the order of the values says."""

    score: int
    """Pairs that rose less pairs that fell."""
    chance: float
    """How often values in no order at all would score this low or lower."""
    told: bool
    """True where there were values enough to tell."""

    @property
    def falling(self) -> bool:
        """Tell whether chance alone would do this 5 times in a hundred or less."""
        return self.told and self.chance <= LEVEL.value


def downward(values: Sequence[float]) -> Downward:
    """Return the one-sided exact test for a fall of ``values``, in the order they came.

    Raises ValueError where there is no value. Source: ``MANN_KENDALL``, ``LEVEL``.
    """
    if not values:
        raise ValueError("There is no rate yet, so take a reading first.")
    score = sum((later > earlier) - (later < earlier) for earlier, later in combinations(values, 2))
    ways = _orders_by_falls(sorted(Counter(values).values()))
    pairs = len(ways) - 1
    falls = (pairs - score) // 2
    chance = sum(ways[falls:]) / sum(ways)
    return Downward(score, chance, len(values) >= FEWEST and pairs > 0)


def _orders_by_falls(counts: Sequence[int]) -> list[int]:
    """Return how many orders have 0, 1, 2 ... falling pairs, for values met ``counts`` times.

    This is the Gaussian multinomial coefficient, built by one group of equal values at a time.
    """
    ways, placed = [1], 0
    for count in counts:
        placed += count
        ways = _times(ways, _gaussian(placed, count))
    return ways


def _gaussian(total: int, chosen: int) -> list[int]:
    """Return the coefficients of the Gaussian binomial of ``total`` over ``chosen``."""
    # Row by row: G(n, k) = G(n - 1, k - 1) + q^k G(n - 1, k).
    row: list[list[int]] = [[1]] + [[] for _ in range(chosen)]
    for _ in range(total):
        fresh = [row[0]]
        for k in range(1, chosen + 1):
            shifted = [0] * k + row[k] if row[k] else []
            fresh.append(_plus(row[k - 1], shifted))
        row = fresh
    return row[chosen]


def _plus(one: list[int], other: list[int]) -> list[int]:
    longer, shorter = (one, other) if len(one) >= len(other) else (other, one)
    return [n + (shorter[i] if i < len(shorter) else 0) for i, n in enumerate(longer)]


def _times(one: list[int], other: list[int]) -> list[int]:
    found = [0] * (len(one) + len(other) - 1)
    for i, a in enumerate(one):
        for j, b in enumerate(other):
            found[i + j] += a * b
    return found
