"""What covers the ground: asked with the plants, but it decides what is dug, mulched and turfed."""

from __future__ import annotations

from interview.asking.answers import Answers
from interview.asking.conditions import always_this
from interview.asking.kinds import Choice
from interview.asking.question import Question

PLANT_SIZE = Question(
    key="plant_size",
    label="What is planted",
    text="What will you plant: plugs, pots or seed?",
    kind=Choice(
        (
            ("kinds", "pots of any size, each kind at its own distance"),
            ("plug", "plugs, small and cheap, 12 in (300 mm) apart"),
            ("pot", "small pots of 1 quart (1 L), 12 in (300 mm) apart"),
            ("large_pot", "large pots of 1 gallon (4 L), 18 in (450 mm) apart"),
            ("seed", "seed on the rim, plugs below it"),
        )
    ),
    why="It decides how many you buy, what they cost, and the care of the first two years.",
    find_out="Ask the nursery what it sells and for how much. Each kind at its own distance fits "
    "most gardens; fewer and larger pots cost less work, plugs less money.",
    default=always_this("kinds"),
    more="A plug is a young plant with a root no bigger than a thumb, sold in trays. Seed is sown "
    "on the rim alone: on the floor and the sides the water washes it out. Shrubs keep the "
    "distance that the plant list gives them.",
)

BERM_OUTSIDE = Question(
    key="berm_outside",
    label="Outside of the berm",
    text="What will grow on the top and the outside of the berm?",
    kind=Choice(
        (
            ("sod", "its own sod, laid back"),
            ("grass", "grass seed"),
            ("plants", "plants of the rim"),
        )
    ),
    why="Bare soil washes off. Plants are bought for it only if you choose plants.",
    find_out="The sod you lift costs nothing and holds the soil from the first day. Lay it green "
    "side up and tread it down.",
    default=always_this("sod"),
    more="Grass seed needs a cover of straw and water until it is up. Where the lawn is the rim "
    "there is no berm, and the answer changes nothing.",
)


def rim_sown(answers: Answers) -> bool:
    """Tell whether seed is sown on the rim: on bare soil, so that no mulch lies there."""
    return answers[PLANT_SIZE] == "seed"
