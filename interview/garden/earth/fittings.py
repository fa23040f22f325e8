"""What is bought by the piece to bring the water from the downspout to the garden."""

from __future__ import annotations

from interview.garden.earth.materials import Item
from interview.quantities.evidence import Provenance, Source
from interview.quantities.units import METRIC, US, Quantity, quantity, round_up

DISCONNECTING = Source(
    "Water Wise Tip: Disconnecting Your Downspout, Global Green, web page: cut about 9 in above "
    "the old drain, cap that, elbow over the downspout, secure it, splash block",
    Provenance.PUBLISHED,
)
PIPE_PIECE = {US: (10.0, "ft"), METRIC: (3.0, "m")}
"""Length of a piece of drain pipe as it is sold: common practice, no source."""
PIPED = Source(
    "an adapter, a bend and a strap for each downspout, a wye to join each further one, a guard "
    "at the outlet",
    Provenance.PRACTICE,
)
BY_WISH = Source(
    "a diverter for each downspout, to turn the water away in winter", Provenance.PRACTICE
)


def spout_parts(spouts: int, pipe: Quantity | None, metric: bool = False) -> tuple[Item, ...]:
    """Return the parts for ``spouts`` downspouts, and for a buried pipe of the length ``pipe``.

    A roof without a gutter has none. The pipe is bought in whole pieces; of what comes in a pipe
    nothing falls on a splash stone.
    """
    counts: list[tuple[str, int, str, Source]]
    if pipe is None:
        counts = [
            ("elbow", spouts, "slid over the downspout where it is cut, to turn it away from the "
             "wall; cut it with a hacksaw about 9 in (230 mm) above the ground", DISCONNECTING),
            ("strap", spouts, "holds the downspout to the wall above the cut", DISCONNECTING),
            ("splash stone", spouts, "a slab or block under the elbow, at the head of the way to "
             "the garden", DISCONNECTING),
        ]  # fmt: skip
    else:
        counts = [
            ("adapter", spouts, "from the downspout, where it is cut, to the pipe", PIPED),
            ("strap", spouts, "holds the downspout to the wall above the cut", PIPED),
            ("bend", spouts, "turns the pipe along its trench", PIPED),
            ("wye", max(0, spouts - 1), "joins a further downspout to the pipe", PIPED),
            ("guard", 1, "a grate at the end of the pipe that keeps animals out", PIPED),
        ]
    items = [_counted(*one) for one in counts if one[1] > 0]
    if pipe is not None and pipe.m > 0:
        items.insert(0, _pipe(pipe, spouts, metric))
    return tuple(items)


def wished_parts(spouts: int) -> tuple[Item, ...]:
    """Return the parts that not everybody wants, bought only where a price is given for them."""
    counts: list[tuple[str, int, str, Source]] = [
        ("diverter", spouts, "in the downspout: turns the water back to the old drain, or onto "
         "the lawn, while ice, salt or work keeps the garden shut", BY_WISH),
        ("cap", spouts, "shuts the old drain, where the downspout went into one", DISCONNECTING),
    ]  # fmt: skip
    return tuple(_counted(*one) for one in counts if one[1] > 0)


def _counted(name: str, count: int, note: str, source: Source) -> Item:
    pieces = quantity(float(count), "")
    return Item(name, pieces, pieces, note, source, piece=quantity(1.0, ""))


def _pipe(length: Quantity, spouts: int, metric: bool) -> Item:
    step, unit = PIPE_PIECE[METRIC if metric else US]
    note = "smooth drain pipe, from the downspout to the stone before the bed"
    if spouts > 1:
        note += "; what leads each further downspout to its wye comes on top: measure it"
    whole = round_up(length, step, unit)
    return Item("pipe", length, whole, note, PIPED, piece=quantity(step, unit))
