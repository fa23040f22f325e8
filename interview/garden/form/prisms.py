"""Soil between two straight lines, along a strip whose width changes evenly; all in feet."""

from __future__ import annotations


def prism(
    start: float, end: float, first: float, last: float, width: float, spread: float
) -> float:
    """Integrate a straight line times ``width + spread q``: Simpson's rule is exact for it.

    The line goes from the height ``first`` at ``q = start`` to ``last`` at ``end``.
    """
    middle = (start + end) / 2
    return (
        (end - start)
        / 6
        * (
            first * (width + spread * start)
            + 2 * (first + last) * (width + spread * middle)
            + last * (width + spread * end)
        )
    )


def parts(
    start: float, end: float, first: float, last: float, width: float, spread: float
) -> tuple[float, float]:
    """Return the volumes over and under the straight line of ``prism``, of its arguments, in feet.

    Where a strip narrows past nothing, as on the hollow side of a small kidney, what its
    neighbors count twice comes off the same of the two.
    """
    if end <= start:
        return 0.0, 0.0
    if first * last < 0:
        turn = start + (end - start) * first / (first - last)
        a = prism(start, turn, first, 0.0, width, spread)
        b = prism(turn, end, 0.0, last, width, spread)
        return (a, -b) if first > 0 else (b, -a)
    whole = prism(start, end, first, last, width, spread)
    return (whole, 0.0) if first + last > 0 else (0.0, -whole)
