"""The columns of a rainfall file: shown where they are asked, found by name, never one for two."""

from __future__ import annotations

import pytest

from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.storms.record_columns import (
    Column,
    ColumnUnclear,
    Head,
    find_columns,
    head_of,
)
from interview.garden.storms.record_text import head_rows, read_record
from interview.garden.summary import waiting
from interview.reading import Refused

DAYS = "2020-05-01,0.4,2\n2020-05-02,0,0\n2020-05-03,1.5,1\n"
FILE = {"has_rain_record": "yes", "rain_record": "rain.csv", "rain_record_unit": "in"}


@pytest.mark.parametrize(
    ("dates", "rain"), [("date", "date"), ("1", "1"), ("date", "1"), ("1", "Date"), (None, "date")]
)
def test_one_column_is_never_both_the_date_and_the_rain(dates, rain):
    with pytest.raises(ColumnUnclear) as refused:
        read_record(f"date,rain,snow\n{DAYS}", "in", dates, rain)
    assert refused.value.column is Column.DEPTH
    assert str(refused.value) == (
        "Column 1 is given for the date and for the rain. Write which one holds the rain. "
        "The first line has: date, rain, snow."
    )


def test_the_same_column_given_twice_is_refused_where_it_is_given(session_of, given):
    session = session_of(given(FILE, rain_date_column="When"))
    step = session.jump("rain_depth_column")
    with pytest.raises(Refused) as refused:
        session.offer(step, "when")
    assert str(refused.value) == (
        "That is the column you gave for the date. Write the one that holds the rain."
    )
    assert "rain_depth_column" not in session.answers.texts


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (f"date,rain_in,snow\n{DAYS}", "1 date, 2 rain_in, 3 snow"),
        (f"Station 12\n# by hand\ndate,rain_in,snow\n{DAYS}", "1 date, 2 rain_in, 3 snow"),
        (f'"date";"rain; all";\n{DAYS.replace(",", ";")}', "1 date, 2 rain; all, 3 without a name"),
        (DAYS, "1 2020-05-01, 2 0.4, 3 2"),
        ("\n\n", ""),
        (",".join(["date", *"x" * 20]) + "\n", ""),
    ],
)
def test_the_columns_of_a_file_are_told_by_number_and_heading(text, told):
    head = head_of(head_rows(text))
    assert str(head).startswith(told)
    assert head.named is (text != DAYS)
    if "x" in text and not told:
        assert str(head).endswith("12 x and 9 more")


def test_more_columns_than_are_told_are_counted():
    for count, end in [(12, "12 x"), (13, "12 x and 1 more"), (15, "12 x and 3 more")]:
        head = Head(("date", *"x" * (count - 1)), True)
        assert str(head).endswith(end), count
    long = Head(("d" * 31, "rain", "snow", "precip"), True)
    assert long.told(0) == f"1 {'d' * 30}"
    assert (long.named_so(Column.DATE), long.named_so(Column.DEPTH)) == ([], [1, 3])
    dated = Head(("rain", "date"), True)
    assert (dated.named_so(Column.DATE), dated.named_so(Column.DEPTH)) == ([1], [0])
    assert dated._replace(named=False).named_so(Column.DATE) == []


def test_columns_given_by_number_are_taken_from_the_first_line_that_has_them(subtests):
    heading, data = (1, ["date", "rain"]), (2, ["2020-05-01", "0.4"])
    for rows, found in [
        ([heading, data], (0, (0, 1))),
        ([data, data], (-1, (0, 1))),
        ([(1, ["2020-05-01"]), data], (0, (0, 1))),
        ([(1, ["date", "0.4"]), data], (0, (0, 1))),
        ([heading], (0, (0, 1))),
    ]:
        with subtests.test(rows=rows):
            assert find_columns(rows, "1", "2") == found
    for dates, rain, column, place in [("3", "1", Column.DATE, 3), ("1", "3", Column.DEPTH, 3)]:
        with pytest.raises(ColumnUnclear, match=f"no column {place}") as refused:
            find_columns([heading, data], dates, rain)
        assert refused.value.column is column


def test_what_the_first_lines_hold_is_told_where_a_column_is_not_found(subtests):
    long, broken = "x" * 31, (1, [""])
    for rows, given, said in [
        ([(1, ["a", "b"])], (None, "rain"), "named date. Write the name or the number of that "
         "column. The first line has: a, b."),
        ([broken, (2, ["a", "b"])], (None, "2"), "Line 2 has: a, b."),
        ([broken, broken], ("1", "1"), "which one holds the rain. The first line has: nothing."),
        ([(1, [long, "b"])], ("y" * 41, "2"), f"No column is named {'y' * 40}. The first line has: "
         f"{'x' * 30}, b."),
        ([(1, ["date", "x"]), (2, ["x", "rain"])], (None, None), "are not named in the same line. "
         "Correct the heading."),
    ]:  # fmt: skip
        with subtests.test(said=said), pytest.raises(ColumnUnclear) as refused:
            find_columns(rows, *given)
        assert str(refused.value).endswith(said)


@pytest.fixture
def talk(talk, session_of, given, tmp_path):
    """Return a runner: what was said of the file, or of the date column and then of the rain."""

    def run(head, *lines, **more):
        if head is not None:
            (tmp_path / "rain.csv").write_text(f"{head}\n{DAYS}" if head else DAYS)
        session = session_of(given(FILE, **more))
        if lines[0] == "rain_record":
            typed, address = (*lines[1:], "", ""), "rain_record"
        else:
            typed, address = (lines[0], ":go rain_depth_column", *lines[1:]), "rain_date_column"
        heard, session, _ = talk(*typed, session=session, at=address)
        return " ".join(heard.split()), session

    return run


@pytest.mark.parametrize(
    ("head", "dates", "rain"),
    [
        ("date,rain,snow", "By its name it is 1 date.", "By its name it is 2 rain."),
        (
            "when,wet,snow",
            "None is named as the date: write which it is.",
            "None is named as the rain: write which it is.",
        ),
        (
            "day,rain,prcp",
            "By its name it is 1 day.",
            "More than one may be the rain: write which it is.",
        ),
    ],
)
def test_the_questions_show_the_headings_of_the_file(talk, head, dates, rain):
    heard, _ = talk(head, "1")
    shown = f"The file's columns: 1 {head.replace(',', ', 2 ', 1).replace(',snow', ', 3 snow')}"
    shown = shown.replace(",prcp", ", 3 prcp")
    assert f"{shown}. {dates}" in heard
    assert f"{shown}. {rain}" in heard
    # What is wrong with the other column is said where that one is asked.
    assert "! Date column" not in heard


def test_a_file_without_headings_shows_its_first_line(talk):
    heard, _ = talk("", "1")
    assert heard.count("its first line holds: 1 2020-05-01, 2 0.4, 3 2. Write a number.") == 2


def test_enter_alone_finds_both_columns_by_their_names(talk):
    heard, session = talk("date,rain,snow", "", "")
    assert heard.count("Enter takes: by its name") == 2
    assert session.answers.texts["rain_date_column"] == start.BY_NAME
    assert session.answers.texts["rain_depth_column"] == start.BY_NAME
    assert len(session.plan.storms.record.days) == 3
    assert "!" not in heard.replace("!!", "")


@pytest.mark.parametrize("said", ["skip", "Skip it", "none", "by its name", "don't know yet"])
def test_a_column_that_was_skipped_in_words_is_found_by_its_name(plan_of, tmp_path, said):
    (tmp_path / "rain.csv").write_text(f"date,rain,snow\n{DAYS}")
    plan: Plan = plan_of({**FILE, "rain_date_column": said, "rain_depth_column": said})
    assert len(plan.storms.record.days) == 3


def test_a_column_the_file_has_not_is_said_at_once_and_kept(talk):
    heard, session = talk("when,rain,snow", "", "depth")
    assert "None is named as the date: write which it is." in heard
    assert "! Rain column of the rainfall file: No column is named depth." not in heard
    assert session.answers.texts["rain_depth_column"] == "depth"
    heard, _ = talk("when,rain,snow", "when", "1")
    assert "! Rain column of the rainfall file: Column 1 is given for the date and" in heard


def test_a_file_that_is_not_there_is_said_at_once(talk):
    heard, session = talk(None, "rain_record", "rian.csv")
    assert "! Rainfall file: There is no file" in heard and "rian.csv. Check its path." in heard
    assert session.answers.texts["rain_record"] == "rian.csv"
    heard, _ = talk("date,rain,snow", "rain_record", "rain.csv")
    assert "! Rainfall file" not in heard


def test_one_column_for_both_in_a_file_by_hand_is_found_by_name_and_told(plan_of, given, tmp_path):
    (tmp_path / "rain.csv").write_text(f"date,rain,snow\n{DAYS}")
    answers = given({**FILE, "rain_date_column": "date"}).with_text("rain_depth_column", "date")
    assert answers.fault(start.RECORD_DEPTHS).startswith("That is the column you gave for the date")
    plan = plan_of(answers)
    assert len(plan.storms.record.days) == 3
    assert "rain_depth_column" not in {question.key for question, *_ in waiting(plan)}


@pytest.fixture
def with_file(session_of, given, tmp_path):
    """Return a sitting at the page of the rainfall file, which has these headings."""

    def begin(headings):
        (tmp_path / "rain.csv").write_text(f"{headings}\n{DAYS}")
        session = session_of(given(country="us", state="mn", has_rain_record="yes"))
        session.go_to("rain_record")
        return session

    return begin


PATH_AND_UNIT = {"rain_record": "rain.csv", "rain_record_unit": "in"}


def keys(steps):
    return [one.question.key for one in steps]


def test_columns_that_the_headings_do_not_tell_are_asked_on_the_page_of_the_file(with_file):
    session = with_file("Tag,Regen,Schnee")
    assert keys(session.boxes()) == ["rain_record", "rain_record_unit"]
    assert keys(session.boxes(PATH_AND_UNIT)) == [
        "rain_record", "rain_record_unit", "rain_date_column", "rain_depth_column",
    ]  # fmt: skip
    session.take(PATH_AND_UNIT)
    assert session.forward().name == "rain_record"
    assert session.step.question.key == "rain_date_column" and session.offered(session.step) is None
    assert "The file's columns: 1 Tag, 2 Regen, 3 Schnee." in session.worded(session.step).text
    session.take({"rain_date_column": "Tag", "rain_depth_column": "2"})
    assert session.forward().name != "rain_record"
    assert session.plan.storms.record.days


def test_a_column_the_headings_tell_is_not_asked(with_file):
    session = with_file("date,Regen,Schnee")
    assert keys(session.boxes(PATH_AND_UNIT))[2:] == ["rain_depth_column"]
    session = with_file("date,rain,snow")
    assert keys(session.boxes(PATH_AND_UNIT))[2:] == []
    session.take(PATH_AND_UNIT)
    assert session.forward().name != "rain_record"


def test_a_column_that_is_not_known_yet_is_passed_by_with_an_empty_line(with_file):
    session = with_file("Tag,rain,snow")
    session.take(PATH_AND_UNIT)
    assert session.forward().name == "rain_record"
    session.take()
    assert session.answers.texts["rain_date_column"] == "don't know yet"
    assert session.forward().name != "rain_record"
