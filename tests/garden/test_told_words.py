"""The words of findings, refusals and pages: one word for one thing, and nothing twice to read."""

from __future__ import annotations

import ast
import re
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest

from interview.asking.lands import tell
from interview.sheet.report import plan_text

PACKAGE = Path(str(files("interview")))
READ_TWICE = (
    "Question by question", "for which the garden is tried out", "For which of these do you know",
    "What distance does your local rule ask", r"\bshall\b", "so much along for one up",
    "How many times as long as wide", "hardest rain", "floor will you peg out",
    "rate through level ground does", "Does its water first fall", "Water soaked in too close",
    "It chooses the plants", "owner's leave", r"\brule on\b", "takes hours for it", "wet through",
    "The custom takes", "but not cautious", "speaks against it", "Whose ground it is is",
    "arrows mark one", "with nothing typed", "Keys typed before", "were left out",
    "No way out needed", r"\bWays out\b", "one a line", "fault of its own",
    "differ a hundredfold", "a wish of yours", "feeds bees the year", "learn of the soil",
    "deeper by the water", "Two people have two paces", "are used when you don't", "Two like pipes",
)  # fmt: skip
"""What readers who were new to it had to read twice, and so is said otherwise."""
OF_A_HOLE = r"\b(?:to|at|below|since) the (?:fill )?mark\b|\bfill mark\b"
"""A mark is paint on the ground; the water of a test hole stands at the fill level."""
EXPLAINED = {
    "swale": "shallow grass ditch",
    "easement": "rights to use your ground",
    "plat": "map of",
    "line level": "small level that hangs on the string",
    "curve number": "grades soil and cover",
    "Type II": "one sharp burst",
    "FACW": "grows in wetlands",
    "standard error": "likely error",
}
"""Each term of the trade on the plan, and a part of the words that say what it is."""
NEAR = 120
"""So many characters before or after the term, which is the same sentence or the next."""


@cache
def sentences() -> tuple[str, ...]:
    """Every text of the program but for what explains its own code."""
    found = []
    for module in PACKAGE.rglob("*.py"):
        tree = ast.parse(module.read_text(encoding="utf-8"))
        alone = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
        for node in ast.walk(tree):
            if isinstance(node, ast.JoinedStr):
                parts = [one.value for one in node.values if isinstance(one, ast.Constant)]
                found.append("…".join(map(str, parts)))
            elif isinstance(node, ast.Constant) and id(node) not in alone:
                found.append(str(node.value))
    return tuple(found)


@pytest.mark.parametrize("phrase", [*READ_TWICE, OF_A_HOLE])
def test_nothing_is_said_that_must_be_read_twice(phrase):
    wrong = re.compile(phrase, re.IGNORECASE)
    assert [one for one in sentences() if wrong.search(one)] == []


def test_a_term_of_the_trade_is_explained_where_it_first_stands_on_the_plan(
    subtests, plan_of, level_spot, hole, sized
):
    tested = {key: text for key, text in sized.items() if key not in ("rate_from", "known_rate")}
    readings = "+1h left 7 in; +2h left 6 in; +3h left 5 in"
    texts = {
        **level_spot,
        **hole("round", "8 in", "8 in", readings),
        **tested,
        "storm_shape": "type_ii",
        "spots.1.overflow_to": "street",
    }
    sheet = " ".join(plan_text(plan_of(texts)).split())
    seen = 0
    for term, meaning in EXPLAINED.items():
        if first := re.search(rf"\b{term}", sheet, re.IGNORECASE):
            seen += 1
            with subtests.test(term=term):
                assert meaning in sheet[max(0, first.start() - NEAR) : first.end() + NEAR]
    assert seen >= len(EXPLAINED) - 2


def test_a_season_is_named_as_people_there_name_it():
    assert tell("Kinds in flower in autumn: 0.") == "Kinds in flower in fall: 0."
    assert tell("The water falls in autumn.", "uk") == "The water falls in autumn."
