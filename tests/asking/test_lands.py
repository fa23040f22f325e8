"""What is told of measures, words and services, by the units and the country of a garden."""

from __future__ import annotations

import re

import pytest

from interview.asking import route
from interview.asking.lands import land, rows, tell
from interview.garden import figures
from interview.garden.place import questions as start
from interview.garden.site import lines_questions as buried
from interview.garden.site import spot_questions as ground
from interview.garden.soak import hole_questions as digging
from interview.garden.stages import every_question
from interview.garden.summary import so_far, waiting_text
from interview.garden.survey import share_questions as sharing
from interview.quantities.evidence import Provenance
from interview.reading import Refused
from interview.sheet.card import card_text
from interview.sheet.first_year import care
from interview.sheet.report import plan_text

GARDENS = 4
"""Gardens by chance; raised by hand now and then."""
US_MEASURE = re.compile(
    r"""(?<![\w.])\d[\d./]*(?:[ ]\d+/\d+)?[ -]?
        (?:in(?![ ](?:\d|z\b|all\b))|ft|feet|foot|yd|yards?|inch(?:es)?|gal|gallons?|acres?|lb)\b
      | \b(?:inch(?:es)?|feet|yards|gallons?|pounds?|(?:cu|sq|per)[ ](?:ft|in|yd))\b
      | \b(?:ft|yd)[²³23^]|\bin/h\b
      | \b(?:an?|[Ee]very|half\ an|top\ few)[ ](?:inch|foot|yard)(?:es)?\b(?![ ]of[ ]a)
      | \d[ ]?°?F\b""",
    re.VERBOSE,
)
"""A measure in feet, inches, yards, gallons or pounds; not ``6 in 12``, the pitch of a roof."""


def us_measures(said):
    """Return each sentence of ``said`` that names a US measure."""
    return [line for line in said if US_MEASURE.search(line)]


NAMED_SOURCE = re.compile(r"\[[^\]]{12,}\]")
JUNK = (
    "", "?", "x 3", "-1", "0", "1e9", "999999999", "10 10", "left", "9:5 1", "10:30", "0.0001",
    "rectangle", "rectangle 3 by 4 by 5", "round 1", "circle 2 3", "offsets 1 2", "1/0", "3 by x",
    "mulch", "mulch 3", "edging 3", "edging 3 per x",
)  # fmt: skip
"""Texts that one question or another refuses."""


def sentences_of(step, session):
    """Yield all that the page of one question may say, but for what the person wrote.

    An answer is said back in both systems, so that a wrong unit shows; that is no sentence.
    """
    view, question = step.view(session.answers), step.worded(session.answers)
    if question.key in ("units", "rain_record_unit"):
        return
    yield from (question.label, question.text, question.why, question.find_out, question.more)
    yield session.find_out(step)
    yield question.caution_in(view)
    yield question.kind.hint(view.units)
    yield question.kind.limits(view.units)
    yield from (label for _, label in getattr(question.kind, "options", ()))
    yield step.question.default(view) or ""
    for junk in JUNK:
        try:
            session.read(step, junk)
        except Refused as refused:
            yield str(refused)


LISTS = re.compile(r"The lists behind what was read:\n(?:(?:- |  ).*\n)*")
"""The titles of the lists of plants, which stand as they are printed."""


def sheet_sentences(sheet):
    """Yield the paragraphs of a plan but for the list of sources, which says what is printed."""
    kept, _, rest = sheet.partition("\nSOURCES\n")
    kept += rest.partition("\nWORDS\n")[2]
    kept = LISTS.sub("", kept)
    paragraphs = re.split(r"\n(?=\S|  [-\[]|$)", kept)
    yield from (NAMED_SOURCE.sub("", " ".join(one.split())) for one in paragraphs)


def everything_told(session):
    """Yield all that plan, card, workings and the lines beside a question say."""
    plan = session.plan
    yield from sheet_sentences(plan_text(plan))
    yield from card_text(plan).splitlines()
    yield waiting_text(plan)
    yield from (f"{one.label} {one.value} {one.waits_for}" for one in so_far(plan))
    for figure in figures.FIGURES:
        yield from (one for one in figures.working(figure.key, plan) if "source:" not in one)


def test_no_sentence_of_a_metric_garden_has_us_measures(subtests, chance, given, session_of):
    for country in ("us", "uk", "new_zealand"):
        with subtests.test(country=country):
            found, asked = set(), {}
            for place in range(GARDENS):
                answers = chance(50 + place).answers(given(units="metric", country=country))
                session = session_of(answers)
                found.update(us_measures(everything_told(session)))
                asked |= {step.question.key: (step, session) for step in route.steps(answers)}
            for step, session in asked.values():
                found.update(us_measures(sentences_of(step, session)))
            assert "\n".join(sorted(found)) == ""


COUNTRIES = [key for key, _ in start.COUNTRY.kind.options]
ABROAD = [one for one in COUNTRIES if one != "us"]
SPELLINGS = (
    ("color", "colour"), ("neighbor", "neighbour"), ("gray", "grey"), ("favor", "favour"),
    ("millimeter", "millimetre"), ("centimeter", "centimetre"), ("meters", "metres"),
    ("liter", "litre"), ("mold", "mould"), ("plow", "plough"), ("fiber", "fibre"),
    ("leveled", "levelled"), ("labeled", "labelled"), ("canceled", "cancelled"),
    ("organiz", "organis"), ("recogniz", "recognis"), ("fertiliz", "fertilis"),
    ("aluminum", "aluminium"), ("curb", "kerb"), ("license ", "licence"),
    ("catalog\\b", "catalogue"), ("inquir", "enquir"), ("toward\\b", "towards"),
    ("grill", "barbecue"), ("behavior", "behaviour"), ("odor", "odour"), ("vapor", "vapour"),
)  # fmt: skip
"""How words begin in American and in British spelling: from memory."""
AMERICAN_SPELLING = re.compile(rf"\b(?:{'|'.join(one for one, _ in SPELLINGS)})", re.IGNORECASE)
BRITISH_SPELLING = re.compile(
    rf"\b(?:centre|{'|'.join(one for _, one in SPELLINGS)})", re.IGNORECASE
)


def wrongly_spelled(country, said):
    """Return each sentence of ``said`` that is not spelled as in ``country``."""
    wrong = BRITISH_SPELLING if country == "us" else AMERICAN_SPELLING
    return [one for one in said if one and not one.startswith(KEYS) and wrong.search(one)]


KEYS = ("any of: ", "one of: ", "[")
"""How a hint begins that gives the keys of choices, which never change."""


def american_words(country):
    """Return what finds the words of the table that another word stands for in ``country``."""
    other = [term for term, word in land(country).words.items() if word != term]
    also = r"\b811\b|\b1978\b|\bUS states\b|\byour state\b"
    return re.compile(rf"\b(?:{'|'.join(other)})\b(?! card)|{also}", re.IGNORECASE)


def test_every_country_that_may_be_chosen_has_a_column_of_words():
    for row in rows():
        assert set(COUNTRIES) < set(row), row["term"]
        for country in COUNTRIES:
            assert row[country] or (row["term"], country) == ("@half", "other")


def test_every_row_says_what_stands_behind_it():
    standings = {one.value for one in Provenance}
    assert [row["term"] for row in rows() if row["standing"] not in standings] == []
    # What was read somewhere names where.
    read = [row for row in rows() if row["standing"].startswith("published")]
    assert read and all(row["source"] for row in read)


def test_a_sentence_told_twice_stays_as_it_is(subtests):
    for country in COUNTRIES:
        with subtests.test(country=country):
            for row in rows():
                once = tell(f"Ask the {row['term']}.", country)
                assert tell(once, country) == once


def test_a_word_keeps_its_capital_and_the_name_of_the_card():
    said = "Downspouts of the yard: see the yard card. Property line."
    assert tell(said, "uk") == "Downpipes of the home garden: see the yard card. Boundary."
    assert tell(said, "canada") == said
    assert tell("YARD CARD: Maple corner", "uk") == "YARD CARD: Maple corner"


def test_no_american_word_is_told_abroad(subtests, chance, given, session_of):
    for country in ["canada", "uk", "australia", "other"]:
        with subtests.test(country=country):
            american, found, asked = american_words(country), set(), {}
            for place in range(2):
                answers = chance(70 + place).answers(given(units="metric", country=country))
                session = session_of(answers)
                found.update(one for one in everything_told(session) if american.search(one))
                asked |= {step.question.key: (step, session) for step in route.steps(answers)}
            for step, session in asked.values():
                found.update(one for one in sentences_of(step, session) if american.search(one))
            assert "\n".join(sorted(found)) == ""


def test_every_garden_is_told_in_the_spelling_of_its_country(subtests, chance, given, session_of):
    for country, units in [("us", "us"), ("us", "metric"), ("uk", "metric"), ("australia", "us")]:
        with subtests.test(country=country, units=units):
            found, asked = [], {}
            for place in range(2):
                answers = chance(90 + place).answers(given(units=units, country=country))
                session = session_of(answers)
                told = list(everything_told(session))
                found += wrongly_spelled(country, told)
                if country == "us":
                    # A choice keeps its key, which is the other word.
                    found += [one for one in told if re.search(r"\bautumn\b", one)]
                asked |= {step.question.key: (step, session) for step in route.steps(answers)}
            for step, session in asked.values():
                found += wrongly_spelled(country, sentences_of(step, session))
            assert "\n".join(sorted(set(found))) == ""


def test_what_is_written_for_every_garden_is_spelled_the_american_way(session_of, given):
    session = session_of(given(units="us", country="us"))
    for question in every_question():
        said = [question.label, question.text, question.why, question.find_out, question.more]
        said += [label for _, label in getattr(question.kind, "options", ())]
        assert [one for one in said if BRITISH_SPELLING.search(one)] == [], question.key
    assert not BRITISH_SPELLING.search(plan_text(session.plan))


def test_the_service_of_the_country_is_named_where_lines_are_asked_about(
    subtests, given, session_of
):
    for country, service in [
        # Services that locate lines, read in stored copies of their web pages.
        ("us", "811"),
        ("canada", "Click Before You Dig"),
        ("uk", "LinesearchbeforeUdig"),
        ("australia", "Before You Dig Australia"),
        ("new_zealand", "beforeUdig"),
        ("other", "This program knows no service for your country"),
    ]:
        with subtests.test(country=country, service=service):
            session = session_of(given(country=country))
            for address in ("lines_requested", "holes.1.hole_dug_on"):
                step = session.jump(address)
                caution = step.worded(session.answers).caution_in(step.view(session.answers))
                assert service in caution and "not even the test hole" in caution
                assert ("811" in caution) == (country == "us")
            assert service in plan_text(session.plan).replace("\n", " ").replace("   ", "")
            assert ("811" in card_text(session.plan)) == (country == "us")


def test_the_colors_of_marks_are_told_only_where_they_are_held(given, session_of):
    for country in COUNTRIES:
        session = session_of(given(country=country))
        more = session.jump("lines_requested").worded(session.answers).more
        assert ("red electric" in more) == (country in ("us", "canada"))


def test_names_that_a_person_gave_stand_as_they_were_given(given, plan_of, hole):
    texts = hole("round", "200 mm", "200 mm", "+1h left 190 mm", hole_name="downspout, 2 ft (1 m)")
    plan = plan_of({"units": "metric", "country": "uk", **texts, "spots.1.spot_name": "back yard"})
    assert any("downspout, 2 ft (1 m)" in one.said for one in plan.findings)
    assert "back yard" in plan_text(plan)


@pytest.mark.parametrize(
    "label", ["a ribbon under 1 in (25 mm), gritty", "a ribbon under 25 mm, gritty"]
)
def test_a_choice_is_read_by_its_label_in_either_way_of_telling_it(label, given):
    view = given(units="metric", country="uk").at("holes", 1)
    assert digging.RIBBON.read(label, view) == "short_gritty"
    assert digging.RIBBON.kind.echo("short_gritty", view) == "a ribbon under 25 mm, gritty"


def test_us_gardens_are_told_of_both_measures(given):
    told = ground.WET_DEPTH.worded(given(units="us").at("spots", 1)).why
    assert "2 ft (0.6 m)" in told


OWN_PLANTS = """\
scientific_name,common_name,kind,sun,zones,height_max_m,spacing_cm,bloom_start,bloom_end
Hortus unus,first herb,forb,full;part,floor;side;rim,0.5,40,Oct,Jan
Hortus duo,second herb,forb,full;part,floor;side;rim,0.5,40,Oct,Jan
Hortus tres,third herb,forb,full;part,floor;side;rim,0.5,40,Oct,Jan
"""


@pytest.mark.parametrize(
    ("country", "lacking"),
    [
        # October and November are spring in the south, December and January summer.
        ("new_zealand", ["autumn"]),
        ("australia", ["autumn"]),
        ("uk", ["spring", "summer"]),
    ],
)
def test_seasons_of_bloom_go_by_the_half_of_the_world(country, lacking, sized, plan_of, tmp_path):
    (tmp_path / "own.csv").write_text(OWN_PLANTS)
    plan = plan_of({**sized, "country": country, "own_plants": "own.csv"})
    assert plan.planting.chosen.total
    noted = re.findall(r"in flower in (\w+): (\d)", " ".join(plan.planting.chosen.notes))
    assert [season for season, count in noted if count == "0"] == lacking


def test_where_the_half_of_the_world_is_not_held_no_season_is_told_by_its_months(plan_of):
    for country in COUNTRIES:
        said = " ".join(
            " ".join(care(plan_of({"country": country, "dig_day": "2026-12-05"}))).split()
        )
        assert ("cold months" in said) == (country in ("us", "canada", "uk"))
        assert "in spring, after the last frost: " in said and "northern" not in said


def test_where_plans_are_given_a_line_on_a_plan_counts_as_a_mark(subtests, given, session_of):
    """UK: no marking on the ground; Australia: plans only indicative. Stored web pages of both."""
    for country, gives in [
        ("us", "to be marked"),
        ("canada", "marks of"),
        ("uk", "plans of"),
        ("australia", "plans of"),
        ("new_zealand", "plans or marks of"),
        ("other", "plans or marks of"),
    ]:
        with subtests.test(country=country):
            session = session_of(given(country=country, lines_requested="asked"))
            asked = session.jump("lines_requested").worded(session.answers)
            assert gives in asked.text and "buried lines" in asked.text
            for question in (buried.LINES_ANSWERED, buried.MARK_DISTANCE):
                caution = question.worded(session.answers).caution_in(session.answers)
                assert ("counts as a mark" in caution) == (country != "us")
            far = buried.MARK_DISTANCE.worded(session.answers).find_out
            assert ("only where no plan shows a line" in far) == (country != "us")


def test_the_wait_of_a_country_says_what_was_read_and_what_is_taken(subtests, given):
    for country, said, days in [
        ("canada", "Ontario asks for 5 business days", "5"),
        ("uk", "Most members answer at once", "3"),
        ("australia", "within 1 business day", "3"),
        ("new_zealand", "Nothing was read", "3"),
        ("other", "Nothing was read", "3"),
    ]:
        with subtests.test(country=country):
            answers = given(country=country, lines_requested="asked")
            asked = buried.LINES_BUSINESS_DAYS.worded(answers)
            assert said in asked.find_out and f"takes {days} when" in asked.find_out
            assert asked.default(answers) == days
            assert ("least asked in the US" in asked.find_out) == (country != "canada")


def test_a_count_is_taken_with_the_word_of_the_country(given, roof):
    view = given(roof("rectangle 7 m by 8 m"), country="uk").at("surfaces", 1)
    assert sharing.GUTTER_OUTLETS.read("2 downpipes", view) == 2
