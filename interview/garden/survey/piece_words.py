"""The words of a piece beside its lengths: turns, angles, how many, and where it is drawn."""

from __future__ import annotations

import re

from interview import reading
from interview.quantities.records import record
from interview.quantities.units import plain_number
from interview.reading import Refused

SQUARE = 90.0
"""A turn without degrees, in degrees."""
_NUMBER = r"\d{1,3}(?:\.\d{1,3})?"
_DEGREES = r"\s*(?:degrees?|degs?|°)?"
_TIMES = r"(?i)[\s,]+times\s+(\d{1,3})$"
_TURNED = rf"(?i)[\s,]+turned\s+(-?{_NUMBER}){_DEGREES}$"
_AT = r"(?i)[\s,]+at\s+([^,]+?)(?:\s*,\s+|\s+by\s+|\s+and\s+)([^,]+)$"
_TURN = r"(?i)[\s,]+(right|left)(?![^\W_])[\s,]*"
_ANGLE = rf"(?i)({_NUMBER})(?:\s*(?:degrees?|degs?|°)[\s,]*|[\s,]+)(\S.*)"
ROUND_GOOD = "Write it as round 20 ft right 30 ft right 20 ft right 30 ft."


@record
class Ends:
    """What may stand after the measures of a piece."""

    count: int = 1
    at: tuple[str, str] | None = None
    turned: float = 0.0


def take_ends(words: str) -> tuple[str, Ends]:
    """Return ``words`` less what stands after the measures, and that; raises ``Refused``."""
    count: int | None = None
    at: tuple[str, str] | None = None
    turned: float | None = None
    while True:
        if count is None and (match := re.search(_TIMES, words)):
            count = int(match[1])
        elif turned is None and (match := re.search(_TURNED, words)):
            turned = float(match[1]) % 360
        elif at is None and (match := re.search(_AT, words)):
            at = match[1].strip(), match[2].strip()
        else:
            break
        words = words[: match.start()]
    if count == 0:
        raise Refused("How many times it counts must be 1 or more.")
    return words, Ends(1 if count is None else count, at, turned or 0.0)


def walked(text: str) -> tuple[list[str], tuple[float, ...]]:
    """Return the sides of an outline and the turns between, left more than zero.

    Raises ``Refused`` for a turn that stands before the first side or after the last.
    """
    first, *more = re.split(_TURN, f" {text.strip()}")
    sides, turns = [first.strip()], []
    for way, words in zip(more[::2], more[1::2], strict=True):
        angle, side = _turn_and_side(words.strip())
        sides.append(side)
        turns.append(angle if way.lower() == "left" else -angle)
    if not all(sides):
        raise Refused(
            f"A turn goes between two sides, not before the first or after the last. {ROUND_GOOD}"
        )
    return sides, tuple(turns)


def _turn_and_side(words: str) -> tuple[float, str]:
    if _reads(words):
        return SQUARE, words
    match = re.fullmatch(_ANGLE, words)
    if match is None or not (_reads(match[2]) or _is_degrees(words)):
        return SQUARE, words
    return read_angle(match[1], 180.0), match[2]


def _is_degrees(words: str) -> bool:
    return bool(re.match(rf"{_NUMBER}\s*(?:deg|°)", words, re.IGNORECASE))


def _reads(words: str) -> bool:
    try:
        reading.read_length(words, "ft")
    except Refused:
        return False
    return True


def read_angle(text: str, most: float) -> float:
    """Return an angle over zero, up to ``most`` degrees; raises ``Refused``."""
    match = re.fullmatch(rf"(?:angle\s+)?({_NUMBER}){_DEGREES}", text.strip(), re.IGNORECASE)
    if match is None or not 0 < float(match[1]) <= most or float(match[1]) == 180.0 == most:
        raise Refused(f"An angle is over 0 and up to {most:g} degrees, such as 45 deg.")
    return float(match[1])


def turn_words(turn: float) -> str:
    """Write one turn: its side, and its degrees unless it is square."""
    way = "left" if turn > 0 else "right"
    return way if abs(turn) == SQUARE else f"{way} {plain_number(abs(turn))} deg"
