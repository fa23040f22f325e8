"""Neighbors, rules, owners and children: the surroundings of the spot."""

from __future__ import annotations

from enum import Enum

from interview.quantities.evidence import OURS, Brief, Finding, Grade, Provenance, Source

_OVERFLOW = Source(
    "Step 2: Determine the Location of the Rain Garden, Alabama Extension, web page; City of "
    "Mississauga, Ontario, web page",
    Provenance.PUBLISHED,
)
_PERMITS = Source(
    "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. 10",
    Provenance.PUBLISHED,
)
_DROWNING = Source(
    "Water Safety: Identifying High-Risk Situations, Stanford Children's Health, web page",
    Provenance.PUBLISHED,
)


class Destination(Enum):
    """Where extra water goes when the garden is full."""

    OWN_LAWN = "your own lawn or bed"
    STREET = "the street, a swale (a shallow grass ditch) or a drain that may take it"
    UNDECIDED = "not decided"
    NEIGHBOR = "a neighbor"
    BUILDING = "a building"
    STEEP_BANK = "a steep bank"
    SEPTIC = "a septic system"


def overflow_finding(where: Destination | None) -> Finding:
    """Return whether the overflow has a safe way out."""
    limit = "over your own ground to a place where water may go"
    if where in (Destination.OWN_LAWN, Destination.STREET):
        said = f"The overflow goes to {where.value}."
        return Finding("overflow_way", Grade.GOOD, said, limit, _OVERFLOW)
    if where in (None, Destination.UNDECIDED):
        said = "You have not decided where the overflow goes."
        change = "Pour out a bucket at the low side and watch where it runs."
        return Finding("overflow_way", Grade.FIX, said, limit, _OVERFLOW, change)
    said = f"The overflow would reach {where.value}."
    change = "Put the notch (the low place in the rim) on another side, or choose another spot."
    return Finding("overflow_way", Grade.STOP, said, limit, _OVERFLOW, change)


class Rules(Enum):
    """What the permit office, the association and easements said."""

    CLEAR = "asked: nothing needed, or granted"
    PENDING = "asked: waiting"
    NOT_ASKED = "not asked"
    REFUSED = "refused"


def permit_finding(rules: Rules | None) -> Finding:
    """Return whether permits, association rules and rights of way were asked about."""
    limit = "ask before you dig; most small gardens need no permit"
    if rules is Rules.CLEAR:
        return Finding("permits", Grade.GOOD, "You have asked about the rules.", limit, _PERMITS)
    if rules is Rules.REFUSED:
        said, change = "The office or the association said no.", "Ask what they would allow."
        return Finding("permits", Grade.STOP, said, limit, _PERMITS, change)
    if rules is Rules.PENDING:
        said, change = "You are waiting for an answer about the rules.", "Wait for the answer."
    else:
        said = (
            "You have not asked yet about permits, association rules and easements (others' "
            "rights to use your ground)."
        )
        change = "Ask the building office about reshaping the ground and moving a downspout."
    return Finding("permits", Grade.FIX, said, limit, _PERMITS, change)


class Owner(Enum):
    """Who owns the ground."""

    OWN = "it is your own ground"
    WRITTEN = "you have written permission"
    NO = "neither"


def ownership_finding(owner: Owner | None) -> Finding:
    """Return whether the person may dig there at all."""
    limit = "your own ground, or written permission"
    if owner in (Owner.OWN, Owner.WRITTEN):
        said = f"You have the right to make a garden here: {owner.value}."
        return Finding("ownership", Grade.GOOD, said, limit, OURS)
    if owner is None:
        said, change = (
            "You have not said who owns the ground.",
            "Say who owns the ground. The deed or plat (the map of the lot) tells.",
        )
        return Finding("ownership", Grade.FIX, said, limit, OURS, change)
    said, change = "The ground is not yours to dig.", "Get written permission first."
    return Finding("ownership", Grade.STOP, said, limit, OURS, change)


CHILDREN_IN = 6.0
"""A pond deeper than this, in inches, is a fault near small children: a choice of ours."""


def children_finding(present: bool | None) -> Finding:
    """Return the care to take where small children use the yard; unknown counts as yes."""
    limit = "a small child can drown in 1 in (25 mm) of water"
    if present is False:
        said = "No small children use the yard."
        return Finding("children", Grade.GOOD, said, limit, _DROWNING)
    said = "Small children may use the yard." if present is None else "Small children use the yard."
    change = (
        "Cover or fill the test hole whenever you leave it. A pond of 6 in (150 mm) is deep enough."
    )
    brief = Brief("Fine: cover the hole, and keep the pond to 6 in (150 mm).")
    return Finding("children", Grade.GOOD, said, limit, _DROWNING, change, brief)
