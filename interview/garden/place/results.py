"""What follows from the place of the garden."""

from __future__ import annotations

from interview.asking.results import Results
from interview.quantities.units import METRIC, US


class PlaceResults(Results):
    """The units shown."""

    @property
    def system(self) -> str:
        """The units shown: ``us`` or ``metric``."""
        return METRIC if self.answers.metric else US

    @property
    def metric(self) -> bool:
        """Whether metric units are shown."""
        return self.answers.metric
