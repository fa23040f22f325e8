"""The figures of the soak test, and the working behind each."""

from __future__ import annotations

from interview.asking.figure import RATE, Figure, Value
from interview.garden.soak.hole import INVERSE_AUGER_HOLE
from interview.garden.soak.results import SoakResults
from interview.quantities.evidence import OURS, Provenance, Source
from interview.quantities.shown import LOW
from interview.quantities.units import Quantity

SOAK = Source(
    "common way of soak tests: the fall in the hole since it was filled, divided by the time",
    Provenance.PRACTICE,
)


def _measured(rate: Quantity | None) -> Value:
    return "not measured" if rate is None else rate


def _rate_error(found: SoakResults) -> Value:
    error = found.soil.standard_error
    return "not known" if error is None else error


FIGURES: tuple[Figure[SoakResults], ...] = (
    Figure("drop_rate", "Drop rate in the hole", lambda p: _measured(p.soil.drop_rate), *RATE,
           "average over the readings of drop since the fill / time since the fill",
           ("readings", "water_at_mark", "test_start"), SOAK, LOW),
    Figure("mean_drop_rate", "Whole drop divided by the whole time",
           lambda p: _measured(p.soil.mean_drop_rate), *RATE, "sum of the drops / sum of the times",
           ("readings", "water_at_mark", "test_start"), rounding=LOW),
    Figure("lower_drop_rate", "Drop rate that limits the depth",
           lambda p: _measured(p.soil.lower_drop_rate), *RATE,
           "the lower of the two in each hole: soil slows as it wets",
           ("drop_rate", "mean_drop_rate"), OURS, LOW),
    Figure("corrected_rate", "Corrected rate, through the bottom alone", lambda p: p.soil.corrected,
           *RATE,
           "f = (L / t) ln((h0 + L) / (h1 + L)), L = bottom area / perimeter; the lower of all "
           "intervals and the last three", ("readings", "hole_shape", "hole_width"),
           INVERSE_AUGER_HOLE, LOW),
    Figure("corrected_rate_error", "Standard error (likely error) of that rate", _rate_error, *RATE,
           "reading and width errors carried into f by its derivatives",
           ("readings", "ruler_mark")),
)  # fmt: skip
