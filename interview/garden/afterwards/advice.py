"""What a garden asks of its owner beyond its planting: while digging, each year, and when to call.

Every sentence stands with its source, or is marked as common practice or a choice of ours.
"""

from __future__ import annotations

from typing import NamedTuple

from interview.quantities.evidence import OURS, PRACTICE, Provenance, Source

MOSQUITO_EGGS = Source(
    "Rain Gardens and Mosquitoes, Rutgers Cooperative Extension fact sheet FS1175, undated, as "
    "quoted on another web page",
    Provenance.SECONDARY,
)
MOSQUITO_SOONEST = Source(
    "Washington State University on mosquitoes, undated, as told by Sightline", Provenance.SECONDARY
)
MOSQUITO_GARDEN = Source(
    "Rain Gardens: A How-to Manual for Homeowners, GWQ037, University of Wisconsin-Extension and "
    "Wisconsin DNR, 2003, questions at the end",
    Provenance.PUBLISHED,
)
MELTING_SNOW = Source(
    "Melting Snow: It's Stormwater Too, Pittsburgh Water and Sewer Authority, web page",
    Provenance.PUBLISHED,
)
SALT = Source(
    "Tips of storing and using salt during the winter months, wleb.org (western Lake Erie basin), "
    "web page",
    Provenance.PUBLISHED,
)
INLET_SILT = Source(
    "Rain Gardens Part IV: Regular Maintenance, Buncombe County Master Gardeners, NC, web page",
    Provenance.PUBLISHED,
)
LOOK_YEARLY = Source(
    "Rain garden maintenance checklist, Blue Water Baltimore, undated", Provenance.PUBLISHED
)


class Matter(NamedTuple):
    """One matter: its name, and what is said of it, each sentence with its source."""

    topic: str
    says: tuple[tuple[str, Source], ...]


def _matter(topic: str, *says: str | tuple[str, Source]) -> Matter:
    """Return a matter; a sentence without a source is common practice."""
    return Matter(topic, tuple((one, PRACTICE) if isinstance(one, str) else one for one in says))


WHILE_DIGGING = (
    _matter(
        "Tree roots",
        "Cut a root thinner than a thumb clean with a saw or loppers; do not tear it.",
        "Leave one over 2 in (50 mm) whole: a tree that loses it may sicken, or fall. Go "
        "round it, or ask an arborist first.",
        "Many roots mean that you are under the tree: move the garden.",
    ),
    _matter(
        "Frozen or soaked ground",
        "Wait: wet ground smears under the spade, and a berm of frozen clods slumps in the thaw.",
    ),
    _matter(
        "Something unexpected",
        "A pipe or wire without a mark, a smell, rubbish or a hollow: stop, leave it as it "
        "is, and call before you go on.",
    ),
)
"""What may be met on dig day."""

BEFORE_PLANTING = (
    _matter(
        "Try it with water",
        "Let an inch (25 mm) of water from a hose run onto the floor: it must cover all of "
        "it alike. Where it stays dry, rake the soil down; where it is deep, fill.",
        "Pour a bucket at the notch: the water must run out over its stone and down the "
        "apron, with none under the stone or beside it.",
    ),
    _matter(
        "Water the plants in",
        "Soak each plant as soon as it is set, until the soil closes round its roots, "
        "even where rain is on its way.",
    ),
)
"""What is tried and done between digging and planting."""

EVERY_YEAR = (
    _matter(
        "Mosquitoes",
        (
            "Their eggs hatch in a day or two, and the young live in standing water for 7 to "
            "12 days more.",
            MOSQUITO_EGGS,
        ),
        ("In heat the first may fly after 4 days.", MOSQUITO_SOONEST),
        ("A garden that empties in hours raises none.", MOSQUITO_GARDEN),
        (
            "A pond still there on the third day is a fault, and on the fourth it may raise "
            "them: see After a storm. Empty saucers, barrels and clogged gutters too.",
            OURS,
        ),
    ),
    _matter(
        "Leaves and silt",
        ("Rake back the mulch at the inlet, take out the silt, and clear the way in.", INLET_SILT),
        "A hollow of stone a hand deep where the water comes in traps leaves and grit in "
        "one place. Empty it in spring and when the leaves are down.",
    ),
    _matter(
        "The overflow",
        (
            "Once a year, and after large storms, see where it came out and where it went.",
            LOOK_YEARLY,
        ),
        "From the notch follow bent grass and washed mulch to their end. It must not turn "
        "back to the house, cut a channel, or reach a neighbor.",
    ),
    _matter(
        "Winter",
        "Leave dead stems standing until spring: they hold snow, and insects live in them.",
        "Where ice builds up on a path or near the house, turn the downspout back to its "
        "old way until the thaw, if that was safe.",
    ),
    _matter(
        "Frozen ground",
        ("Ground that is frozen at the surface takes little meltwater.", MELTING_SNOW),
        "Water may then stand for days or leave by the notch: that is no fault. Keep the "
        "notch and the downspout free of ice, and children off the ice.",
    ),
    _matter(
        "Snow and road salt",
        ("Pile snow on flat ground that does not pond.", MELTING_SNOW),
        "Not in the garden: a heap packs its floor, breaks its plants, and leaves salt and grit.",
        ("Clear the snow first, salt no more than melts the ice, and mix in sand.", SALT),
        "Keep a salted drive or road from draining here: salt harms soil and plants.",
    ),
    _matter(
        "A soak test again",
        (
            "Once a year, in the same season, time how fast a full pond falls, with a ruler in "
            "the floor. Write it beside last year's.",
            OURS,
        ),
        (
            "Where it falls at less than half the corrected rate, clear the silt and loosen "
            "the floor. Where that does not help, test the soil again.",
            OURS,
        ),
    ),
)
"""What each year brings."""

CALL = (
    _matter(
        "A wall or floor of the house turns damp",
        "Turn the downspout away the same day, then call somebody who looks after drains and "
        "foundations.",
    ),
    _matter(
        "Ground cracks, sinks or slides, or the berm leaks at its foot",
        "Keep away, turn the water off the garden, and call an engineer.",
    ),
    _matter(
        "A line is nicked, or you smell gas",
        "Leave, light nothing, and call the emergency number from a distance.",
    ),
    _matter(
        "Sewage smells, or a septic field turns wet",
        "Stop the water coming here and call the health department.",
    ),
    _matter(
        "Water reaches a neighbor, a sidewalk or the street",
        "Turn the downspout back to its old way until the overflow has one that harms "
        "nobody; your town can say what it allows.",
    ),
    _matter(
        "A pond stands over 72 hours after you have mended it",
        "Ask the university extension office, or somebody who tests soil for a living.",
    ),
    _matter("A large tree leans, or its crown thins", "Keep from under it and call an arborist."),
)
"""What to see, and whom to call."""
