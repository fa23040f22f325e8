"""The shape of the garden: a level floor, sloping sides, and room above the pond."""

from __future__ import annotations

import math
from functools import cached_property

from interview.garden.form.choices import FloorShape
from interview.garden.form.outline import Outline, Station
from interview.garden.pond.stage import StageCurve
from interview.quantities.guards import not_negative, positive
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity


@record
class Basin:
    """A basin with a level floor and sides of one slope all round.

    Lengths, but for ``side_slope``, which is run over rise. ``depth`` is the full pond over the
    finished floor and ``freeboard`` the height from there to the crest of the berm, or to the lawn
    that is its rim. ``bend`` is the radius of a kidney's middle line, ``stations`` an outline of
    one's own. Raises ValueError for a floor or depth that is not more than zero, or a slope or
    freeboard below zero.
    """

    floor_length: Quantity
    floor_width: Quantity
    depth: Quantity
    side_slope: float
    freeboard: Quantity
    shape: FloorShape = FloorShape.RECTANGLE
    bend: Quantity | None = None
    stations: tuple[Station, ...] = ()

    def __post_init__(self) -> None:
        for value in (self.floor_length, self.floor_width):
            positive(value, "ft", "The floor of the garden must be longer and wider than zero.")
        positive(self.depth, "ft", "The pond must be deeper than zero.")
        not_negative(self.freeboard, "ft", "The rim cannot be lower than the full pond.")
        if not 0 <= self.side_slope < math.inf:
            raise ValueError("The sides cannot lean inward, so use a slope of zero or more.")
        # An outline that cannot be is told when the basin is made, not when it is drawn.
        self.outline  # noqa: B018

    @cached_property
    def outline(self) -> Outline:
        """The outline of the floor, in feet."""
        return Outline(
            self.shape,
            magnitude(self.floor_length, "ft"),
            magnitude(self.floor_width, "ft"),
            None if self.bend is None else magnitude(self.bend, "ft"),
            self.stations,
        )

    def length_at(self, height: Quantity) -> Quantity:
        """Length of the basin at a height above the floor; of a kidney along its middle line."""
        return self._grown(self.floor_length, height)

    def width_at(self, height: Quantity) -> Quantity:
        """Width of the basin at a height above the floor; of a kidney across its middle line."""
        return self._grown(self.floor_width, height)

    def area_at(self, height: Quantity) -> Quantity:
        """Plan area at a height above the floor; raises ValueError below the floor or over the rim.

        A pond of this depth covers it.
        """
        return quantity(self.outline.area_at(self.side_slope * self._height(height)), "ft**2")

    def volume_to(self, height: Quantity) -> Quantity:
        """Water held by a pond of this depth, exactly; raises ValueError as ``area_at`` does."""
        self._height(height)
        return self.stage.volume_to(height)

    def _height(self, height: Quantity) -> float:
        feet = magnitude(height, "ft")
        rim = magnitude(self.depth, "ft") + magnitude(self.freeboard, "ft")
        if not -1e-9 <= feet <= rim + 1e-9:
            raise ValueError("That height is not between the floor and the rim of the garden.")
        return feet

    def _grown(self, floor: Quantity, height: Quantity) -> Quantity:
        return quantity(magnitude(floor, "ft") + 2 * self.side_slope * self._height(height), "ft")

    @property
    def rim_height(self) -> Quantity:
        """Height of the rim above the floor."""
        return quantity(magnitude(self.depth, "ft") + magnitude(self.freeboard, "ft"), "ft")

    @property
    def floor_area(self) -> Quantity:
        """Area of the level floor."""
        return self.area_at(quantity(0.0, "ft"))

    @property
    def mid_area(self) -> Quantity:
        """Area at half the pond's depth: the area a garden is known by."""
        return self.area_at(quantity(magnitude(self.depth, "ft") / 2, "ft"))

    @property
    def edge_length(self) -> Quantity:
        """Length of the full pond."""
        return self.length_at(self.depth)

    @property
    def edge_width(self) -> Quantity:
        """Width of the full pond."""
        return self.width_at(self.depth)

    @property
    def edge_area(self) -> Quantity:
        """Area of the full pond."""
        return self.area_at(self.depth)

    @property
    def rim_length(self) -> Quantity:
        """Length inside the rim."""
        return self.length_at(self.rim_height)

    @property
    def rim_width(self) -> Quantity:
        """Width inside the rim."""
        return self.width_at(self.rim_height)

    @property
    def rim_area(self) -> Quantity:
        """Area inside the rim: all rain on it lands in the garden."""
        return self.area_at(self.rim_height)

    @property
    def volume(self) -> Quantity:
        """Water held by the full pond."""
        return self.volume_to(self.depth)

    @cached_property
    def stage(self) -> StageCurve:
        """Its curve of area by depth."""
        around = quantity(self.outline.perimeter, "ft")
        return StageCurve(self.floor_area, around, self.outline.corner, self.side_slope, self.depth)
