"""The kind of answer that lists an outline by offsets from a string, one station a line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from interview import reading
from interview.asking.answers import Answers
from interview.asking.kinds import Simple
from interview.asking.question import Taken
from interview.quantities.shown import length_words
from interview.quantities.units import METRIC, US, magnitude, quantity, unit_name
from interview.reading import Amount, Refused

if TYPE_CHECKING:
    from interview.garden.form.outline import Station  # few draw an outline of their own

EXAMPLE = {US: "4 ft, 3 ft, 2 1/2 ft", METRIC: "1 m, 0.9 m, 0.8 m"}
FARTHEST_FT = 200.0


class StationLine(Simple["Station"]):
    """Along the string, to the edge uphill, to the edge downhill."""

    name = "station"

    def take(self, text: str, answers: Answers) -> Taken[Station]:
        units = answers.units
        unit = "ft" if units == US else "m"
        parts = [" ".join(part.split()) for part in text.split(",")]
        if len(parts) != 3 or not all(parts):
            raise Refused(
                "Write three lengths parted by commas: along the string, uphill, downhill, such "
                f"as {EXAMPLE[units]}."
            )
        kept, feet = [], []
        for part in parts:
            amount = reading.read_taped_length(part, unit)
            kept.append(f"{part} {unit_name(unit)}" if amount.bare else part)
            feet.append(_feet(amount))
        if max(feet) > FARTHEST_FT:
            raise Refused("That is too far from the string: 200 ft (60 m) is the most.")
        from interview.garden.form.outline import Station

        return Taken(", ".join(kept), Station(*feet))

    def echo(self, value: Station, answers: Answers) -> str:
        along, up, down = (
            length_words(quantity(one, "ft"), answers.metric)
            for one in (value.along, value.uphill, value.downhill)
        )
        return f"at {along}: {up} uphill, {down} downhill"

    def hint(self, units: str) -> str:
        return f"along the string, uphill, downhill, such as 0, 0, 0; {EXAMPLE[units]}"


def _feet(amount: Amount) -> float:
    return magnitude(quantity(float(amount.number), amount.unit), "ft")


def wrong_stations(stations: tuple[Station, ...], _answers: Answers) -> str | None:
    """Return the sentence that refuses stations which make no outline, or nothing."""
    if not stations:
        return None
    from interview.garden.form.outline import own_outline

    try:
        own_outline(stations)
    except ValueError as trouble:
        return str(trouble)
    return None
