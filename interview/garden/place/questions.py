"""Stage A: the garden's name, the units, the place, and the rain to hold."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, said_yes
from interview.asking.kinds import Choice, Note, YesNo
from interview.asking.lands import US
from interview.asking.measures import Measure
from interview.asking.question import Question, Stage, Status
from interview.garden.place.rain import CUSTOM, Basis, RainDepth, also_read
from interview.garden.place.rain import usual_rain as rain_of
from interview.reading import is_unknown

STATES = (
    "AL Alabama,AK Alaska,AZ Arizona,AR Arkansas,CA California,CO Colorado,CT Connecticut,"
    "DE Delaware,DC District of Columbia,FL Florida,GA Georgia,HI Hawaii,ID Idaho,IL Illinois,"
    "IN Indiana,IA Iowa,KS Kansas,KY Kentucky,LA Louisiana,ME Maine,MD Maryland,"
    "MA Massachusetts,MI Michigan,MN Minnesota,MS Mississippi,MO Missouri,MT Montana,"
    "NE Nebraska,NV Nevada,NH New Hampshire,NJ New Jersey,NM New Mexico,NY New York,"
    "NC North Carolina,ND North Dakota,OH Ohio,OK Oklahoma,OR Oregon,PA Pennsylvania,"
    "RI Rhode Island,SC South Carolina,SD South Dakota,TN Tennessee,TX Texas,UT Utah,"
    "VT Vermont,VA Virginia,WA Washington,WV West Virginia,WI Wisconsin,WY Wyoming"
)

GARDEN_NAME = Question(
    key="garden_name",
    label="Name of the garden",
    text="What do you call this garden?",
    kind=Note(40, "Maple corner"),
    why="The name heads your plan and your file. It need not be an address.",
    find_out="Any short name will do, such as Maple corner.",
    default=always_this("My rain garden"),
)

UNITS = Question(
    key="units",
    label="Units shown",
    text="Which units are on your tape: feet and inches, or metric?",
    kind=Choice((("us", "feet and inches"), ("metric", "meters and millimeters"))),
    why="Every figure is shown in these units. You may still type any length in either.",
    find_out="Look at your tape measure.",
)

COUNTRY = Question(
    key="country",
    label="Country",
    text="Which country is the garden in?",
    kind=Choice(
        (
            ("us", "United States"),
            ("canada", "Canada"),
            ("uk", "United Kingdom"),
            ("australia", "Australia"),
            ("new_zealand", "New Zealand"),
            ("other", "another country"),
        )
    ),
    why="It decides whom to ask about buried lines, and which plants are native.",
    find_out="Choose another country if yours is not listed. Local rules then matter more.",
)

NOT_US = "no"
"""The answer to the state that opens the country."""

_ABROAD = (
    "none", "not us", "not in the us", "abroad", "canada", "australia", "new zealand", "uk",
    "united kingdom", "great britain", "england", "scotland", "wales", "northern ireland",
    "ireland", "nz", "outside the us", "another country", "other", "overseas",
)  # fmt: skip
"""What is typed for the state by who has none; the country is asked for next."""

STATE = Question(
    key="state",
    label="State",
    text="Which state is the garden in? Name or two letters. Not in the US: type no.",
    kind=Choice(
        (
            *((one[:2].lower(), one[3:]) for one in STATES.split(",")),
            (NOT_US, "not in the United States"),
        ),
        said=tuple((words, NOT_US) for words in _ABROAD),
        beside="Outside the United States write no.",
    ),
    why="States differ in how long you wait for the buried lines to be marked, and in which "
    "plants are native.",
    find_out="Type the state's name or its two letters. The plan is then in US units; to change "
    "that, go to Units shown.",
    # A file may name another country at once.
    asks=lambda a: a.get(COUNTRY) in (None, US),
    when="no other country is chosen",
)


def us_state(answers: Answers) -> str | None:
    """Return the two letters of the state the garden is in, or nothing."""
    state = answers.get(STATE)
    return None if state == NOT_US else state


def placed(before: Answers, after: Answers) -> Answers:
    """Return ``after`` with what a state or a country just given says of the other.

    A state has the United States for its country, shown in its units; ``no`` asks for both anew,
    and has said all it can once there is a country.
    """
    state, country = after.get(STATE), after.get(COUNTRY)
    if (state, country) == (before.get(STATE), before.get(COUNTRY)) or state is None:
        return after
    if state != NOT_US:
        for question in (COUNTRY, UNITS):
            if after.text(question) is None:
                after = after.with_text(question.key, US)
        return after
    if before.get(STATE) != NOT_US:
        return after.without(COUNTRY.key).without(UNITS.key) if country == US else after
    return after if country is None else after.without(STATE.key)


def abroad(**fields: str) -> Callable[[Answers], Mapping[str, str]]:
    """Return fields of a question that are worded so outside the United States."""
    return lambda answers: {} if answers.country == US else fields


PEGGED = ("floor_length", "floor_width")
"""Keys of the floor as it was pegged out, which is asked far later."""


def usual_rain(answers: Answers) -> RainDepth:
    """Return the depth of rain that is taken until there is an answer.

    A floor pegged out without a word about the rain was pegged for the custom, as in version 0.1.
    """
    pegged = (answers.text_at(key) for key in PEGGED)
    if any(text is not None and not is_unknown(text) for text in pegged):
        return CUSTOM
    return rain_of(us_state(answers)) if answers.country == US else CUSTOM


def _rain_words(answers: Answers) -> Mapping[str, Any]:
    """Say what was read of the state, or that nothing is held of another country."""
    if answers.country != US:
        return {
            "why": "It sets the size: the garden takes this much without spilling. This program "
            "knows no usual depth for your country.",
            "find_out": "Ask your county. A weather service may tell the depth that 9 of 10 "
            "rainy days do not reach. 1 in (25 mm) is usual in the US.",
            "more": "In most regions of the US 9 of 10 rainy days bring 0.8 to 1.2 in (20 to 30 "
            "mm) or less (Center for Watershed Protection).",
        }
    state, usual = us_state(answers), rain_of(us_state(answers))
    read = [one for one in (usual, *also_read(state)) if one is not CUSTOM]
    if not read:
        return {}
    name = STATE.kind.echo(state, answers) if state else ""
    words = {"more": " ".join([RAIN_DEPTH.more, *(_read(one, name) for one in read)])}
    if usual is CUSTOM:
        return words
    return {
        **words,
        "why": f"It sets the size. {_in_short(usual, name)}.",
        "find_out": "Ask your local stormwater office, which looks after rain drains. If it names "
        f"none, take {usual.words}.",
    }


def _in_short(usual: RainDepth, name: str) -> str:
    if usual.basis is Basis.PERCENTILE:
        share = "9 of 10" if usual.percent == 90 else f"{usual.percent} % of"
        return f"{name}: {share} storms bring {usual.words} or less {usual.where}"
    by = "a rule asks" if usual.basis is Basis.RULE else "a state manual asks"
    return f"{name}: {by} large sites {usual.where} for {usual.words}; a home may follow it"


def rain_of_the_state(answers: Answers) -> list[str]:
    """Say where the rain that is assumed comes from, with its source; nothing for the custom."""
    usual = usual_rain(answers)
    if usual is CUSTOM or answers.standing(RAIN_DEPTH) is Status.ANSWERED:
        return []
    name = STATE.kind.echo(us_state(answers) or NOT_US, answers)
    return [f"{_in_short(usual, name)} [{usual.source}]."]


def _read(one: RainDepth, name: str) -> str:
    said = f"Read for {name}: {one.words}; {one.kind} [{one.source}]."
    return f"{said} {one.note}".rstrip()


RAIN_DEPTH = Question(
    key="rain_depth",
    label="Rain to hold",
    text="How much rain should the garden hold before it overflows?",
    kind=Measure(
        "length",
        "in",
        "mm",
        (0.25, "in"),
        (4, "in"),
        such=("1 in, 3/4 in or 25 mm", "25 mm or 2.5 cm"),
    ),
    why="It sets the size. In much of the US, 9 of 10 rainy days bring 0.8 to 1.2 in (20 to 30 "
    "mm) or less.",
    find_out="Ask your local stormwater office, which looks after rain drains. If it names none, "
    "1 in (25 mm) is usual.",
    default=lambda a: a.by_units(usual_rain(a).us, usual_rain(a).metric),
    more="0.8 to 1.2 in (20 to 30 mm) is the 90 percent event in most US regions (Center for "
    "Watershed Protection): 90 of 100 rainy days bring no more. That is 90 percent of the days, "
    "not of the year's water.",
    wording=_rain_words,
)


def rain_standing(answers: Answers) -> str:
    """Say what stands behind the rain to hold: an answer, or what was read of the state."""
    state = us_state(answers) if answers.country == US else None
    read = [one for one in (rain_of(state), *also_read(state)) if one is not CUSTOM]
    told = " ".join(_read(one, STATE.kind.echo(state or NOT_US, answers)) for one in read)
    if answers.standing(RAIN_DEPTH) is Status.ANSWERED:
        return f"The rain to hold is as you answered. {told}".rstrip()
    usual = usual_rain(answers)
    why = f"{usual.kind} [{usual.source}]" if usual is CUSTOM else "from what was read"
    return f"The rain to hold is assumed, {usual.words}, {why}. {told}".rstrip()


HAS_RECORD = Question(
    key="has_rain_record",
    label="Daily rainfall record",
    text="Do you have a file of daily rainfall for your place?",
    kind=YesNo(),
    why="With one, the plan can say how the garden would have done in real years.",
    find_out="A weather service often gives one as a CSV file, with a date and a depth for each "
    "day. You can do without: then answer no.",
    default=always_this("no"),
)

RECORD_PATH = Question(
    key="rain_record",
    label="Rainfall file",
    text="Where is the rainfall file?",
    kind=Note(400, "rain.csv"),
    why="It is read again each time the plan is made, and never changed.",
    find_out="Type its folder and name. A name alone is looked for beside your answers file.",
    asks=said_yes(HAS_RECORD),
    when="there is a rainfall record",
)

RECORD_UNIT = Question(
    key="rain_record_unit",
    label="Unit of the rainfall file",
    text="Are the depths in that file inches or millimeters?",
    kind=Choice((("in", "inches"), ("mm", "millimeters"))),
    why="A wrong guess would be 25 times off, so you are asked.",
    find_out="Look at the heading of the column, or at the page the file came from.",
    asks=said_yes(HAS_RECORD),
    when="there is a rainfall record",
)

BY_NAME = "by its name"
"""Stands for a column that is found by its usual names."""
_FOUND = (BY_NAME, "skip", "skip it", "none")


def column_named(question: Question[str], answers: Answers) -> str | None:
    """Return the name or number given for a column; nothing where it is found by its name."""
    given = answers.get(question)
    return None if given is None or given.casefold() in _FOUND else given


def _not_the_date(given: str, answers: Answers) -> str | None:
    dates = column_named(RECORD_DATES, answers)
    if dates is None or _column(given) != _column(dates):
        return None
    return "That is the column you gave for the date. Write the one that holds the rain."


def _column(given: str) -> str:
    """Return a name or a number of a column as it is compared."""
    bare = " ".join(given.split()).casefold()
    return bare.lstrip("0") if bare.isascii() and bare.isdigit() else bare


RECORD_DATES = Question(
    key="rain_date_column",
    label="Date column of the rainfall file",
    text="Which column of that file holds the date?",
    kind=Note(60, "date, or 1 for the first"),
    why="Files name their columns in many ways.",
    find_out="Press Enter alone, and a column named date or day is found. Else write its name, or "
    "its number counted from the left.",
    asks=said_yes(HAS_RECORD),
    when="there is a rainfall record",
    default=always_this(BY_NAME),
)

RECORD_DEPTHS = Question(
    key="rain_depth_column",
    label="Rain column of the rainfall file",
    text="Which column of that file holds the day's rain?",
    kind=Note(60, "rain_in, or 2 for the second"),
    why="Some files hold rain, snow and more side by side.",
    find_out="Press Enter alone, and a column named rain, precipitation or prcp is found. Else "
    "write its name, or its number counted from the left.",
    asks=said_yes(HAS_RECORD),
    when="there is a rainfall record",
    objection=_not_the_date,
    default=always_this(BY_NAME),
)

STAGE = Stage(
    "start",
    "A",
    "Start",
    (
        GARDEN_NAME,
        UNITS,
        COUNTRY,
        STATE,
        RAIN_DEPTH,
        HAS_RECORD,
        RECORD_PATH,
        RECORD_UNIT,
        RECORD_DATES,
        RECORD_DEPTHS,
    ),
)
