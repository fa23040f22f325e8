"""Which test holes belong to which spot, where several spots were looked at."""

from __future__ import annotations

from interview.asking.answers import Answers
from interview.garden.site import spot_questions as ground
from interview.garden.soak import questions as soak
from interview.garden.soak.hole_questions import HOLE_DEPTH

GONE = "it is at a spot that was taken out"
"""Why a hole does not count whose spot is no longer there."""


def dug(answers: Answers) -> list[Answers]:
    """Return the answers as seen from each hole that is dug."""
    return [one for one in answers.items(soak.HOLES.key) if one.text(HOLE_DEPTH) is not None]


def here(answers: Answers) -> list[Answers]:
    """Return those of the holes that are at the spot chosen."""
    return [one for one in dug(answers) if not soak.elsewhere(one)]


def moved(before: Answers, answers: Answers) -> Answers:
    """Return ``answers``, in which another spot is chosen, with each hole noted at its own.

    A hole whose spot was never said is at the one that was chosen. Where none is at the new spot
    another hole is asked for; where one is, and the further hole was not begun, none is.
    """
    left = ground.chosen_spot(before).scope
    for hole in dug(before):
        if left is not None and hole.text(soak.HOLE_SPOT) is None:
            answers = answers.with_text(hole.address(soak.HOLE_SPOT), str(left[1]))
    numbers = answers.numbers(soak.HOLES.key)
    if not numbers or not dug(answers):
        return answers
    last = answers.at(soak.HOLES.key, numbers[-1])
    wanted = "no" if here(answers) else "yes"
    if last.text(HOLE_DEPTH) is None or (wanted == "no" and last.text(soak.ANOTHER_HOLE) is None):
        return answers
    return answers.with_text(last.address(soak.ANOTHER_HOLE), wanted)


def spot_removed(answers: Answers, number: int) -> Answers:
    """Return ``answers``, from which a spot will be taken out: its holes count no longer."""
    chosen = ground.chosen_spot(answers).scope
    for hole in dug(answers):
        said = hole.get(soak.HOLE_SPOT)
        where = said if said is not None else chosen[1] if chosen else 0
        if where == number:
            answers = answers.without(hole.address(soak.HOLE_SPOT))
            answers = answers.with_text(hole.address(soak.HOLE_COUNTS), "no")
            # A reason that the person gave stays.
            if hole.get(soak.HOLE_SET_ASIDE_WHY) is None:
                answers = answers.with_text(hole.address(soak.HOLE_SET_ASIDE_WHY), GONE)
        elif said is not None and said > number:
            answers = answers.with_text(hole.address(soak.HOLE_SPOT), str(said - 1))
    return answers
