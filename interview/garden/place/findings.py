"""What is to be known of the rain that a garden begun with version 0.1 only assumed."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.answers import Answers
from interview.asking.lands import US
from interview.asking.question import Status
from interview.garden.place import questions as start
from interview.garden.place.rain import CUSTOM, usual_rain
from interview.garden.place.results import PlaceResults
from interview.quantities.evidence import Finding, Grade
from interview.reading import is_unknown

_ASKED_BEFORE, _ASKED_SINCE = "deepest_pond", "spots.1.overflow_building_distance"
"""Later addresses: what version 0.1 asked of every garden, and what is asked only since."""


def _begun_before(answers: Answers) -> bool:
    text = answers.text_at(_ASKED_BEFORE)
    return text is not None and not is_unknown(text) and answers.text_at(_ASKED_SINCE) is None


def rain_findings(found: PlaceResults) -> Iterator[Finding]:
    """Yield what changed of the rain to hold, or would, since a depth of the state was read."""
    answers = found.answers
    state = start.us_state(answers)
    read = usual_rain(state) if answers.country == US else CUSTOM
    if read.words == CUSTOM.words or answers.standing(start.RAIN_DEPTH) is Status.ANSWERED:
        return
    name = start.STATE.kind.echo(state or start.NOT_US, answers)
    if start.usual_rain(answers) is CUSTOM:
        said = (
            f"The floor was pegged for {CUSTOM.words} of rain, which was assumed; for {name} "
            f"{read.words} has been read since."
        )
        change = (
            f"Answer Rain to hold: {CUSTOM.us} keeps the garden as it is, {read.us} plans it for "
            "more rain."
        )
        if read.depth_in < CUSTOM.depth_in:
            change = (
                f"Answer Rain to hold: {CUSTOM.us} keeps the garden as it is, {read.us} plans it "
                "for less rain."
            )
    elif _begun_before(answers):
        said = (
            f"The rain to hold, which you did not answer, is {read.words} now, as read for {name}; "
            f"version 0.1 took {CUSTOM.words}."
        )
        change = f"Answer {CUSTOM.us} to Rain to hold if you want the garden as it was."
    else:
        return
    yield Finding("rain_of_the_state", Grade.GOOD, said, "", read.source, change)
