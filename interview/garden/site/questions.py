"""Stage B: is the spot safe and legal to dig?"""

from __future__ import annotations

from interview.asking.conditions import always_this
from interview.asking.kinds import Choice, YesNo
from interview.asking.question import Question, Stage
from interview.garden.site import lines_questions as buried
from interview.garden.site.nearby_questions import LOCAL, LOCAL_RULES
from interview.garden.site.spot_questions import CHOSEN_SPOT, SPOTS

CHILDREN = Question(
    key="children",
    label="Small children in the yard",
    text="Are small children or pets ever in this yard?",
    kind=YesNo(),
    why="An open hole or a full pond is a danger to them, and some plants are poisonous.",
    find_out="Think of visitors and neighbors too. If unsure, say yes.",
    default=always_this("yes"),
    caution="A small child can drown in a very little water. Cover an open hole or fill it.",
)

PERMISSION = Question(
    key="permission",
    label="Right to dig here",
    text="Is this your own ground, or do you have written permission?",
    kind=Choice((("own", "my own"), ("written", "written permission"), ("no", "neither"))),
    why="Strips along the road, rented ground and easements need the owner's permission. An "
    "easement is somebody's right to use a strip of your ground.",
    find_out="Look at your deed or plat (the map of your lot). It shows easements and the strip "
    "kept for the road.",
)

RULES_CHECKED = Question(
    key="rules_checked",
    label="Permits and association rules",
    text="Have you asked about permits, easements and the rules of a home association?",
    kind=Choice(
        (
            ("not_needed", "asked: none needed"),
            ("granted", "asked: granted"),
            ("pending", "asked: waiting for an answer"),
            ("not_checked", "not asked yet"),
        )
    ),
    why="Some places have rules on grading (reshaping the ground), on moving a downspout, or on "
    "tall plants.",
    find_out="Ask the building or planning office, and the home association if there is one.",
)

STAGE = Stage(
    "site",
    "B",
    "May we dig here?",
    (
        buried.LINES_REQUESTED,
        buried.LINES_ASKED_ON,
        buried.LINES_TICKET,
        buried.LINES_BUSINESS_DAYS,
        buried.LINES_HOLIDAYS,
        buried.LINES_ANSWERED,
        buried.LINES_FINISHED_ON,
        buried.LINES_VALID_DAYS,
        buried.LINES_VALID_KIND,
        buried.PRIVATE_LINES,
        buried.MARK_DISTANCE,
        LOCAL_RULES,
        *LOCAL.values(),
        SPOTS,
        CHOSEN_SPOT,
        CHILDREN,
        PERMISSION,
        RULES_CHECKED,
    ),
    waits=lambda answers: answers.get(buried.LINES_ANSWERED) is not True,
)
