"""What is pictured beside which page; to know it, nothing is loaded that a picture is made of."""

from __future__ import annotations

from enum import Enum

from interview.asking.path import Place


class Scene(Enum):
    """What is measured at a page, as a picture shows it."""

    YARD = "the spot with what is near it"
    STRING = "the level string over the ground that falls"
    HOLE = "the test hole cut through"
    PIECES = "the pieces of a roof or of other ground, from above"
    SECTION = "the garden cut along the slope"
    ABOVE = "the garden from above"
    ROOM = "the room that a first size asks for"


_YARD = ("outline", "room_area", "spout_distance", "chosen_spot", "marks")
_NOT_IN_THE_YARD = ("below", "sun_hours", "unstable", "pollution", "soil_lab")
"""Pages of a spot where nothing is measured from above."""
_ABOVE = ("peg_out", "dig_day", "over_twelve", "usual_plants", "the_plan")
_SECTION = ("pipe_fall", "usual_bed")
_NO_HOLE_YET = ("to_learn", "hole_cleared")
_PIECES = ("roof_size", "roof_pitch", "sharing", "high_point", "share", "usual_roofs")


def scene_of(place: Place | None) -> Scene | None:
    """Return what is pictured at ``place``; nothing where no thing is measured."""
    if place is None:
        return None
    page = place.page
    match page.key:
        case "slope":
            return Scene.STRING
        case "rough_size":
            return Scene.ROOM
        case key if key in _SECTION:
            return Scene.SECTION
        case key if key in _ABOVE:
            return Scene.ABOVE
        case key if key in _YARD or key.startswith("local_"):
            return Scene.YARD
        case key if key in _PIECES:
            return Scene.PIECES
        case key if page.group == "holes" and key not in _NO_HOLE_YET:
            return Scene.HOLE
        case key if page.group == "spots" and key not in _NOT_IN_THE_YARD:
            return Scene.YARD
    return None
