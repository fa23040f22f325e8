"""Whole gardens typed on plain lines in the order of the path, and how much is said on the way."""

from __future__ import annotations

import pytest
import simple_way as simple

from interview.plain import interview as plain
from interview.sheet.figures_file import figures_text

MOST_LINES = 350
"""Lines said and prompts up to the plan in a simple garden: a choice of ours."""
MOST_PROMPTS = 120
METRIC = {"pieces": "rectangle 9 m by 4.3 m", "slope_run": "3 m", "slope_drop": "5 cm"}
"""Lengths of the same garden on a metric tape; the others are read in their own units."""


class Typist:
    """Types the answers of the simple way, page by page, and counts what is said.

    It looks at the page reached as a person does, and at nothing that the plain lines keep.
    """

    def __init__(self, session, clock, typed=None):
        self.session, self.clock, self.typed = session, clock, typed or {}
        self.said, self.prompts, self.left, self.at = [], [], [], ""

    def ask(self, prompt):
        self.prompts.append(prompt)
        assert len(self.prompts) < MOST_PROMPTS, f"it stays at {self.session.place.name}"
        name = self.session.place.name
        if name == "waiting":
            self.clock.now = self.clock.now.replace(day=simple.DIG_DAY.day, hour=12)
        if name != self.at:
            self.at, self.left = name, self._lines()
        return self.left.pop(0) if self.left else ""

    def _lines(self):
        """Return what is typed at the page reached: box by box, then Enter for the rows."""
        session, given, lines = self.session, {}, []
        words = {
            address: self.typed.get(address.split(".")[-1], text)
            for address, text in simple.words_at(session).items()
        }
        for key, text in self.typed.items():
            if key in session.place.page.keys:
                (address,) = session.place.addresses((key,), session.answers.interview)
                words[address] = text
        page = session.place.page
        while True:
            put = [one for one in session.boxes(given) if one.address not in given]
            # What has no usual value in this country is asked like a box.
            rows = session.place.steps(page.usual, session.supposing(given))
            put += [
                one
                for one in rows
                if one.address in words
                and one.address not in given
                and session.offered(one, given) is None
            ]
            if not put:
                return lines
            step = put[0]
            text = words.get(step.address, "")
            lines += [*text.splitlines(), ""] if step.question.kind.many else [text]
            given[step.address] = text or session.offered(step, given) or "don't know yet"

    def counted(self):
        """Return the lines said before the plan, but empty ones, and the prompts."""
        told = "\n".join(self.said).partition("\nRAIN GARDEN PLAN")[0]
        return sum(1 for line in told.splitlines() if line.strip()) + len(self.prompts)


@pytest.fixture
def begun(session_of, clock):
    clock.now = clock.now.replace(day=simple.FIRST_DAY.day)
    return session_of


def through(session, clock, **typed):
    """Go the whole way on plain lines; return the typist."""
    typist = Typist(session, clock, typed)
    assert plain.run(session, typist.ask, typist.said.append)
    return typist


def test_the_simple_way_to_the_plan_is_short(begun, clock):
    typist = through(begun(), clock)
    lines = typist.counted()
    assert lines < MOST_LINES, f"{lines} lines and prompts to the plan"
    assert "! " not in "\n".join(typist.said).partition("\nRAIN GARDEN PLAN")[0]


def test_a_garden_typed_on_plain_lines_is_the_garden_of_the_pages(begun, clock):
    session = begun()
    through(session, clock)
    clock.now = clock.now.replace(day=simple.FIRST_DAY.day, hour=9)
    other = begun()
    for _ in simple.walk(other, clock):
        pass
    assert session.answers.texts == other.answers.texts
    assert session.taken == other.taken
    assert figures_text(session.plan) == figures_text(other.plan)


def test_answers_piped_in_the_order_of_the_path_make_the_same_garden(begun, clock):
    """A pipe cannot look at the pages: the lines are gathered on one way and typed on another."""
    session, lines = begun(), []
    typist = Typist(session, clock)

    def ask(prompt):
        lines.append(typist.ask(prompt))
        return lines[-1]

    plain.run(session, ask, typist.said.append)
    clock.now = clock.now.replace(day=simple.DIG_DAY.day, hour=12)
    piped, rest = begun(), iter(lines)

    def read(_prompt):
        try:
            return next(rest)
        except StopIteration:
            raise EOFError from None

    clock.now = clock.now.replace(day=simple.DIG_DAY.day, hour=12)
    # The day is that of the hole, so that the wait is over when its page is reached.
    assert plain.run(piped, read, lambda _: None)
    assert piped.answers.texts == session.answers.texts


@pytest.mark.parametrize(
    ("land", "units", "more"),
    [
        ("other", "metric", {**METRIC, "garden_name": "Wiesenrand"}),
        ("new_zealand", "metric", METRIC),
    ],
    ids=["Germany", "New Zealand"],
)
def test_another_country_and_metric_walk_the_same_path(begun, clock, land, units, more):
    session = begun()
    typist = through(
        session,
        clock,
        state="no",
        country=land,
        units=units,
        lines_business_days="3",
        lines_valid_days="14",
        lines_valid_kind="calendar",
        lines_holidays="none",
        **more,
    )
    heard = "\n".join(typist.said)
    assert session.plan.metric and session.plan.size.garden
    assert session.place.name == "the_plan"
    before = heard.partition("\nRAIN GARDEN PLAN")[0]
    if land != "us":
        assert "811" not in before and "state" not in session.answers.texts
    pages = {place.name for place in session.way.places} - {"abroad"} | {"place"}
    clock.now = clock.now.replace(day=simple.FIRST_DAY.day, hour=9)
    usual = begun()
    for _ in simple.walk(usual, clock):
        pass
    assert pages == {place.name for place in usual.way.places}


def test_the_day_ends_with_what_was_found_and_a_way_to_stop(begun, clock, talk):
    session = begun()
    for place in simple.walk(session, clock, until="end_of_today"):
        assert place
    heard, _, finished = talk("later", session=session)
    assert "That is all for today." in heard and "Distances: 5 fine." in heard
    assert "Taken as usual: Rain to hold: 1 in;" in heard
    assert "Stopped at: End of today" in heard and not finished


def test_the_plan_on_plain_lines_has_its_drawings_in_words(begun, clock, talk):
    session = begun()
    heard = "\n".join(through(session, clock).said).partition("\nRAIN GARDEN PLAN")[2]
    said = " ".join(heard.split())
    assert "The water comes in by a stone channel in the middle of the uphill side." in said
    assert "is in the downhill side." in said and "From one end to the other, in drifts:" in said
    drawn = [line for line in heard.splitlines() if len(line) - len(line.lstrip("│ ")) > 40]
    assert drawn == [] and not set("│─╭╮╰╯┌┐└┘█▀▄░") & set(heard)
    pictured, _, _ = talk(":picture plan", session=session)
    assert set("│─╭╮╰╯┌┐└┘█▀▄░·") & set(pictured)
