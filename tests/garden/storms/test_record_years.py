"""A rainfall file, from its bytes to the years on the sheet."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given as sampled
from hypothesis import settings
from hypothesis import strategies as st

from interview.answers_file.named_files import lines_of
from interview.garden.storms.record_columns import LONGEST_LINE, Column, ColumnUnclear
from interview.garden.storms.record_text import read_record
from interview.garden.summary import waiting
from interview.quantities.units import magnitude
from interview.sheet.report import plan_text

DAYS = "2020-05-01,0.4\n2020-05-02,0\n2020-05-03,1.5\n"


def depths(record):
    return [(day.isoformat(), round(magnitude(depth, "in"), 6)) for day, depth in record.days]


def pieces_of(data, size):
    return (data[place : place + size] for place in range(0, len(data), size))


THREE = [("2020-05-01", 0.4), ("2020-05-02", 0.0), ("2020-05-03", 1.5)]


# Columns


@pytest.mark.parametrize(
    ("head", "date_column", "depth_column"),
    [
        ("date,rain", None, None),
        ("when,how much", "when", "how much"),
        ("When,How Much", " when ", "HOW MUCH"),
        ("when,how much", "1", "2"),
        ("date,snow water", None, "2"),
        ("no,heading", "1", "2"),
    ],
)
def test_columns_are_found_by_name_or_are_those_given(head, date_column, depth_column):
    assert depths(read_record(f"{head}\n{DAYS}", "in", date_column, depth_column)) == THREE


def test_a_file_without_a_heading_is_read_where_both_columns_are_numbers():
    assert depths(read_record(DAYS, "in", "1", "2")) == THREE


@pytest.mark.parametrize(
    ("head", "dates", "rain", "column", "said"),
    [
        ("when,rain", None, None, Column.DATE, "No column is named date"),
        ("date,wetness", None, None, Column.DEPTH, "No column is named rain"),
        ("date,rain,prcp", None, None, Column.DEPTH, "The columns rain and prcp could all"),
        ("date,rain", "day", None, Column.DATE, "No column is named day. The first line has: da"),
        ("date,rain", "1", "7", Column.DEPTH, "The rain file has no column 7"),
    ],
)
def test_a_column_that_cannot_be_told_is_asked_for(head, dates, rain, column, said):
    with pytest.raises(ColumnUnclear) as refused:
        read_record(f"{head}\n{DAYS}", "in", dates, rain)
    assert refused.value.column is column
    assert str(refused.value).startswith(said)
    assert str(refused.value).endswith(".")


# Odd files


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "latin-1", "cp1252"])
def test_a_file_is_read_in_the_usual_encodings(encoding):
    data = f"# Zürich\ndate,rain\n{DAYS}".encode(encoding)
    for size in (1, 7, len(data)):
        lines = list(lines_of(pieces_of(data, size), LONGEST_LINE))
        assert lines[0] == "# Zürich"
        assert depths(read_record(lines, "in")) == THREE


@pytest.mark.parametrize("data", [b"\x00\x01\x02", b"PK\x03\x04\x00\x00", b"\xff\xfe\x00"])
def test_a_file_that_is_no_text_is_refused(data):
    with pytest.raises(ValueError, match="not text"):
        list(lines_of([data], LONGEST_LINE))


def test_lines_of_comment_are_passed_over_wherever_they_stand():
    assert depths(read_record(f"# a, b; c; d; e\ndate,rain\n{DAYS}# end\n", "in")) == THREE


def test_a_stray_quotation_mark_spoils_its_own_line_alone():
    record = read_record(f'date,rain\n2020-04-30,"0.7\n{DAYS}', "in")
    assert depths(record) == THREE
    assert [(bad.line, bad.why) for bad in record.bad_lines] == [
        (2, "The line is not plain CSV text of at most 10,000 characters.")
    ]


def test_quoted_cells_are_read():
    assert depths(read_record('"date","rain"\n"2020-05-01","0.4"\n', "in")) == THREE[:1]


def test_dates_out_of_order_are_used_and_named():
    record = read_record("date,rain\n2020-05-03,1.5\n2020-05-01,0.4\n2020-05-02,0\n", "in")
    assert depths(record) == THREE
    assert record.disordered == (3,)


def test_a_day_given_twice_is_named_and_its_first_depth_stands():
    record = read_record(f"date,rain\n{DAYS}2020-05-01,9\n", "in")
    assert depths(record) == THREE
    assert [(bad.line, bad.why) for bad in record.bad_lines] == [
        (5, "2020-05-01 is already on line 2.")
    ]


def test_a_file_far_longer_than_any_record_is_refused_at_once():
    with pytest.raises(ValueError, match="more than 300 years"):
        read_record("date,rain\n" + "x\n" * 130_000, "in")


def test_an_empty_file_is_named_so():
    with pytest.raises(ValueError, match="is empty"):
        read_record("", "in")


def test_a_file_that_has_not_changed_is_not_read_twice(plan_of, sized, tmp_path):
    (tmp_path / "rain.csv").write_text(f"date,rain\n{DAYS}")
    asked = {"has_rain_record": "yes", "rain_record": "rain.csv", "rain_record_unit": "in"}
    plan, later = (plan_of({**sized, **asked, "mulch_depth": deep}) for deep in ("2 in", "3 in"))
    assert plan.storms.record is later.storms.record
    (tmp_path / "rain.csv").write_text(f"date,rain\n{DAYS}2020-06-01,1\n")
    assert plan_of({**sized, **asked}).storms.record != plan.storms.record


@settings(max_examples=80, deadline=None)
@sampled(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused_in_a_sentence(data):
    try:
        read_record(lines_of([data], LONGEST_LINE), "mm")
    except ValueError as refused:
        assert str(refused).endswith(".")
        assert len(str(refused)) < 500
        assert str(refused).isprintable()


# The plan


@pytest.fixture
def with_record(plan_of, sized, tmp_path):
    def make(text, **more):
        (tmp_path / "rain.csv").write_text(text)
        asked = {"has_rain_record": "yes", "rain_record": "rain.csv", "rain_record_unit": "in"}
        return plan_of({**sized, **asked, **more})

    return make


YEAR = "date,rain\n" + "".join(
    f"{dt.date(2021, 1, 1) + dt.timedelta(days=place)},{(0.1, 0, 0, 2.5)[place % 4]}\n"
    for place in range(365)
)


def test_a_larger_floor_holds_more_and_runs_over_on_fewer_days(with_record, figure):
    plan = with_record(YEAR)
    tried = plan.storms.years_by_size
    assert [one.part for one in tried] == [0.5, 0.75, 1.0, 1.5, 2.0]
    held = [one.replay.share_held for one in tried]
    assert held == sorted(held) and held[0] < held[-1]
    days = [len(one.replay.overflow_days) for one in tried]
    assert days == sorted(days, reverse=True)
    floor = magnitude(plan.size.garden.floor_area, "ft**2")
    for one in tried:
        assert magnitude(one.garden.floor_area, "ft**2") == pytest.approx(one.part * floor)
    assert tried[2].replay is plan.storms.real_years
    assert [len(one.replay.spells) for one in tried] == [0, 0, 3, 0, 0]
    assert figure("record_overflow_days", plan) == days[2]
    assert figure("record_overflow_days_a_year", plan) == pytest.approx(days[2] * 365.25 / 365)


def test_the_list_of_figures_tells_the_years_by_size_by_year_and_by_month(with_record, printed):
    listed = printed(with_record(YEAR))
    assert [row["part"] for row in listed["record_by_size"]] == [0.5, 0.75, 1, 1.5, 2]
    assert [row["year"] for row in listed["record_by_year"]] == [2021]
    assert [row["month"] for row in listed["record_by_month"]] == list(range(1, 13))
    held = listed["figures"]["record_share_held"]["value"]
    assert listed["record_by_size"][2]["share_held"] == pytest.approx(held / 100)


def test_without_a_record_there_are_no_years(plan_of, sized, printed):
    listed = printed(plan_of(sized))
    assert listed["record_by_size"] == []
    assert "You gave no rainfall record" in plan_text(plan_of(sized))


def test_the_sheet_names_all_that_is_wrong_with_the_file(with_record):
    text = YEAR.replace("2021-03-05,2.5\n", "").replace("2021-03-06,0.1", "2021-03-06,T")
    text += "2021-06-01,lots\n2020-12-31,0.3\n"
    sheet = plan_text(with_record(text))
    assert "2020-12-31 to 2021-12-31: 365 days." in sheet
    assert "Missing: 1 day (2021-03-05)." in sheet
    assert "Traces of rain: 1 day, counted as none." in sheet
    assert "Out of order: line" in sheet
    assert "is not used: 2021-06-01 is already on line" in sheet
    assert [line for line in sheet.splitlines() if len(line) > 76] == []


def test_the_years_and_months_are_drawn_as_bars(with_record):
    sheet = plan_text(with_record(YEAR))
    lines = sheet.splitlines()
    assert any(line.startswith("2021 █") and line.endswith("%") for line in lines)
    assert [line for line in lines if line.startswith("Jul ")]


def test_a_column_that_cannot_be_told_is_a_question_the_plan_waits_for(with_record):
    plan = with_record(YEAR.replace("date,rain", "when,rain"))
    gaps = {question.key: why for question, _, why in waiting(plan)}
    assert gaps["rain_date_column"].startswith("No column is named date")
    named = with_record(YEAR.replace("date,rain", "when,rain"), rain_date_column="when")
    assert waiting(named) == waiting(with_record(YEAR))
    assert named.storms.real_years == with_record(YEAR).storms.real_years


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "is empty"),
        ("date,rain\n", "No day with a depth"),
        ("date,rain_mm\n2020-01-01,3\n", "says millimeters, but you said inches"),
    ],
)
def test_a_file_that_cannot_be_used_is_said_in_one_sentence_on_the_sheet(with_record, text, said):
    sheet = " ".join(plan_text(with_record(text)).split())
    assert said in sheet
    assert "Traceback" not in sheet


def test_a_year_beyond_belief_is_a_finding(with_record):
    plan = with_record("date,rain\n" + "".join(f"2021-01-{day:02},25\n" for day in range(1, 20)))
    found = {finding.key: finding for finding in plan.findings}
    assert found["record_unit"].grade.value == "fix"
    assert "CHECK THE UNIT" in plan_text(plan)


def test_lines_that_are_not_used_are_a_finding(with_record):
    found = {one.key: one for one in with_record(YEAR + "never,1\n").findings}
    assert "line 367" in found["record_lines"].said
