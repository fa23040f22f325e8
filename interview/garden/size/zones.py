"""The parts of the garden by how wet they are."""

from enum import Enum


class Zone(Enum):
    """A part of the garden, from the wettest to the driest."""

    FLOOR = "floor"
    SIDE = "side"
    RIM = "rim"
