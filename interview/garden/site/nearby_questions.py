"""What is near a spot, how far it is, and the distances that local rules ask for."""

from __future__ import annotations

from interview.asking.conditions import always_this, distance, ticked
from interview.asking.kinds import Ticks, YesNo
from interview.asking.question import Member, Question
from interview.quantities.units import Quantity
from interview.reading import LARGER, SMALLER

_NEAR = (
    (
        "basement",
        "a building with a basement or crawl space",
        "nearest wall with a basement or crawl space",
    ),
    ("slab", "a building on a slab, with no basement", "nearest wall of the building on a slab"),
    ("septic", "a septic tank or drain field", "nearest part of the septic system"),
    ("well", "a drinking-water well", "well"),
    ("property_line", "a property line", "property line"),
    ("pavement", "a walk, drive or road", "edge of the walk, drive or road"),
    ("retaining_wall", "a retaining wall", "retaining wall"),
    ("tree", "a large tree you want to keep", "trunk of the tree"),
    ("slope_crest", "the top of a bank or steep slope", "top of the bank"),
    ("water", "a stream, lake or wetland", "water's edge"),
)
"""What may be near a spot: key, words in the list, words in the question."""

LOCAL_RULES = Question(
    key="local_rules",
    label="Distances set by a local rule",
    text="Do local rules set a minimum distance from any of these?",
    kind=Ticks(tuple((key, name) for key, name, _ in _NEAR)),
    why="A local rule replaces the general distance, and the plan says so.",
    find_out="Ask the building, health or stormwater office. Answer none if you know of none.",
    default=always_this("none"),
    more="General distances come from rain garden guides of state universities and agencies, "
    "which do not agree with each other; local codes and licensed professionals decide.",
)


def _local(key: str, words: str) -> Question[Quantity]:
    return Question(
        key=f"local_{key}",
        label=f"Local rule: {words}",
        text=f"By local rule, how far must the garden be from the {words}?",
        kind=distance(above_zero=True),
        why="It takes the place of the usual distance.",
        find_out="Look in the rule, or ask the office that made it.",
        asks=ticked(LOCAL_RULES, key),
        when=f"a local rule for the {words} is known",
    )


LOCAL: dict[str, Question[Quantity]] = {key: _local(key, words) for key, _, words in _NEAR}

SPOT = Member("spots", "spot")

NEAR = SPOT.question(
    key="near_spot",
    label="What is near the spot",
    text="Which of these lie within about 200 ft (60 m) of the spot, in your yard or next door?",
    kind=Ticks(tuple((key, name) for key, name, _ in _NEAR)),
    why="You are asked next how far away each of them is, and no others.",
    find_out="Walk around the spot. If there may be a septic system, ask the health office for "
    "its drawing.",
)


def _distance(key: str, words: str, caution: str) -> Question[Quantity]:
    return SPOT.question(
        key=f"{key}_distance",
        label=f"Distance to the {words}",
        text=f"How far is the {words} from the hose?",
        kind=distance(careful=SMALLER),
        why="Soaking water too close can do damage or break a rule.",
        find_out="The hose lies around the place where the garden may be. Measure level, to the "
        "nearest part of the hose.",
        asks=ticked(NEAR, key),
        when=f"{key} is ticked as near the spot",
        caution=caution,
    )


_NEAR_CAUTION = {
    "basement": "Keep the distance and watch the basement walls after the first storms.",
    "slab": "Keep the distance, with ground that falls away from the building.",
    "septic": "Never over or close to a septic system. Ask your health department.",
    "well": "Keep well back from a drinking-water well. Ask your health department.",
    "retaining_wall": "Wet soil pushes harder on a wall. Ask an engineer about a tall one.",
    "tree": "Cutting a root thicker than a thumb can kill or tip a tree. Ask an arborist.",
    "slope_crest": "Water soaked in near a bank can start a slide. Ask an engineer first.",
}
DISTANCES: dict[str, Question[Quantity]] = {
    key: _distance(key, words, _NEAR_CAUTION.get(key, "")) for key, _, words in _NEAR
}

SEPTIC_UPHILL = SPOT.question(
    key="septic_uphill",
    label="Garden uphill of the septic system",
    text="Is the spot uphill of the septic system?",
    kind=YesNo(),
    why="Water moves downhill under the ground too, so uphill needs twice the distance.",
    find_out="Look along the ground, or pour out a bucket and see. If unsure, say yes.",
    asks=ticked(NEAR, "septic"),
    when="septic is ticked as near the spot",
    default=always_this("yes"),
)

WALL_HEIGHT = SPOT.question(
    key="wall_height",
    label="Height of the retaining wall",
    text="How high is the retaining wall?",
    kind=distance(50, careful=LARGER),
    why="Stay at least as far away from the wall as it is high.",
    find_out="Measure from the lower ground to the top of the wall.",
    asks=ticked(NEAR, "retaining_wall"),
    when="retaining_wall is ticked as near the spot",
)

DRIP_LINE = SPOT.question(
    key="drip_line",
    label="Reach of the tree's branches",
    text="How far out from the trunk do the branches reach?",
    kind=distance(100, careful=LARGER),
    why="Most of the roots that matter are under the branches.",
    find_out="Stand under the tips of the branches and measure back to the trunk.",
    asks=ticked(NEAR, "tree"),
    when="tree is ticked as near the spot",
)
