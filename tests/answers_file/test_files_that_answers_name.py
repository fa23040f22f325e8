"""Files that answers name, whoever made them: read once, in little memory, or refused in words."""

from __future__ import annotations

import datetime as dt
import os
import tracemalloc
from itertools import repeat
from pathlib import Path

import pytest

from interview.answers_file import disk, own_files
from interview.answers_file.named_files import NoFile, lines_of
from interview.garden.form.basin import Basin
from interview.garden.opening import text_opener
from interview.garden.pond.pool import pool
from interview.garden.storms.rainfall_record import replay
from interview.garden.storms.record_columns import HEAD_ROWS, LONGEST_LINE, MOST_LINES
from interview.garden.storms.record_text import WETTEST_DAY_MM, head_rows, read_record
from interview.quantities.units import magnitude, quantity
from interview.sheet.card import card_text
from interview.sheet.check import faults_beside
from interview.sheet.figures_file import figures_text
from interview.sheet.report import plan_text

DAYS = "date,rain\n2020-05-01,0.4\n2020-05-02,0\n2020-05-03,1.5\n"
ASKED = {"has_rain_record": "yes", "rain_record": "rain.csv", "rain_record_unit": "in"}
PIECE = b"x" * disk.PIECE


@pytest.fixture
def with_file(plan_of, sized, tmp_path):
    def make(text, **more):
        (tmp_path / "rain.csv").write_text(text)
        return plan_of({**sized, **ASKED, **more})

    return make


@pytest.fixture
def read_count(monkeypatch):
    """Count the bytes that are read of other people's files."""
    counts = []
    whole = disk.pieces

    def counted(path, limit):
        for piece in whole(path, limit):
            counts.append(len(piece))
            yield piece

    monkeypatch.setattr(disk, "pieces", counted)
    return counts


# Lines that no record holds


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("9999-12-31,1", "9999-12-31 is not in the years 1600 to 2399."),
        ("0001-01-01,1", "0001-01-01 is not in the years 1600 to 2399."),
        (f"2020-05-04T{'0' * 90},1", "A date or a depth has no more than 100 characters."),
        (f"2020-05-04,{'1' * 170}", "A date or a depth has no more than 100 characters."),
        (
            "2020-05-04," + "1" * 80,
            f"{'1' * 40} in is more rain than ever fell in a day (71.8 in).",
        ),
        (f"2020-05-04,0.{'0' * 97}1", ""),
        ("2020-05-04,71.8", ""),
        ("2020-05-04,71.9", "71.9 in is more rain than ever fell in a day (71.8 in)."),
    ],
)
def test_a_line_that_cannot_be_is_passed_over_by_number_on_every_page(with_file, line, why):
    plan = with_file(DAYS + line + "\n")
    assert [(bad.line, bad.why) for bad in plan.storms.record.bad_lines] == (
        [(5, why)] if why else []
    )
    assert faults_beside(plan) == ([f"rain.csv:5: {why}"] if why else [])
    assert "2020-05-01 to" in plan_text(plan)
    assert card_text(plan) and "record_by_year" in figures_text(plan)


def test_the_wettest_day_ever_measured_is_taken_in_either_unit():
    # World Meteorological Organization, archive of extremes: 1.825 m (71.8 in) in 24 hours.
    assert WETTEST_DAY_MM.value == 1825
    taken = read_record("date,rain\n2020-05-01,1825\n2020-05-02,1826\n", "mm")
    assert [(round(magnitude(depth, "mm")), day.day) for day, depth in taken.days] == [(1825, 1)]
    assert [bad.line for bad in taken.bad_lines] == [3]


def test_the_last_day_of_the_calendar_can_be_carried_through_a_garden():
    days = [(dt.date(9999, 12, 30), quantity(1, "in")), (dt.date.max, quantity(1, "in"))]
    basin = Basin(quantity(15, "ft"), quantity(7, "ft"), quantity(6, "in"), 3, quantity(4, "in"))
    bed = pool(basin.stage, quantity(360, "ft**2"), basin.rim_area, quantity(0.25, "in/h"))
    done = replay(days, bed)
    assert done.last == dt.date.max
    assert magnitude(done.inflow_volume, "ft**3") == pytest.approx(100)


# However large


def counted(pieces, taken):
    for piece in pieces:
        taken.append(len(piece))
        yield piece


def test_a_line_without_end_takes_no_memory(subtests):
    for pieces in [
        repeat(PIECE, 160),
        repeat(PIECE.replace(b"xx", b"x,"), 160),
        repeat(b"\xf0\x9f\x8c\xa7" * (disk.PIECE // 4), 160),
        repeat(b'"' * disk.PIECE, 160),
    ]:
        with subtests.test(pieces=pieces):
            taken: list[int] = []
            tracemalloc.start()
            try:
                lines = list(lines_of(counted(pieces, taken), LONGEST_LINE))
                _, most = tracemalloc.get_traced_memory()
            finally:
                tracemalloc.stop()
            assert sum(taken) == 160 * disk.PIECE > 10_000_000
            assert [len(line) for line in lines] == [LONGEST_LINE + 1]
            assert most < 1_500_000


def test_a_record_with_a_line_too_long_is_read_without_that_line():
    text = DAYS.replace("2020-05-02,0", "2020-05-02,0" + ",1" * LONGEST_LINE)
    record = read_record(text, "in")
    assert [day.day for day, _ in record.days] == [1, 3]
    assert [(bad.line, bad.why) for bad in record.bad_lines] == [
        (3, "The line is not plain CSV text of at most 10,000 characters.")
    ]


def test_a_heading_too_long_is_refused_in_a_short_sentence(subtests):
    for head, said in [
        ("date,rain" + ",c" * 1_000_000, "No column is named date"),
        ("x" * 1_000_000, "No column is named date"),
        ("date,rain\n" + '"' * 1_000_000, "No day with a depth of rain could be read"),
    ]:
        with subtests.test(head=head, said=said):
            with pytest.raises(ValueError) as refused:
                read_record(head + "\n2020-05-01\n", "in")
            assert str(refused.value).startswith(said)
            assert len(str(refused.value)) < 300


def test_no_more_lines_are_taken_than_a_record_can_have():
    taken: list[int] = []
    days = (f"{dt.date(1700, 1, 1) + dt.timedelta(days=place)},0" for place in range(10**6))
    lines = (taken.append(1) or line for line in days)
    with pytest.raises(ValueError, match="more than 120,000 lines"):
        read_record(lines, "in", "1", "2")
    assert len(taken) == MOST_LINES + 1


def test_three_hundred_years_of_days_are_read():
    days = [dt.date(1700, 1, 1) + dt.timedelta(days=place) for place in range(MOST_LINES - 1)]
    record = read_record(["date,rain", *(f"{day},0.1" for day in days)], "in")
    assert len(record.days) == MOST_LINES - 1 > 300 * 365.25
    assert not record.bad_lines and not record.gaps


def test_the_headings_are_found_without_reading_on():
    taken: list[int] = []
    lines = (taken.append(1) or line for line in repeat("2020-05-01,1"))
    assert len(head_rows(lines)) == HEAD_ROWS
    assert len(taken) == HEAD_ROWS


@pytest.mark.parametrize(
    "text",
    [
        DAYS,
        DAYS.replace("date", "when"),
        DAYS.replace("rain", "rain_mm"),
        "date,rain\n" + "never,1\n" * 5000,
    ],
    ids=["good", "column unclear", "other unit", "no day"],
)
def test_a_file_is_read_once_for_each_change_whatever_is_in_it(
    with_file, plan_of, sized, read_count, text
):
    first = with_file(text)
    for plan in (first, plan_of({**sized, **ASKED, "mulch_depth": "2 in"})):
        plan_text(plan), card_text(plan), figures_text(plan), faults_beside(plan)
    assert sum(read_count) == len(text)
    longer = text + "2021-01-01,0.5\n"
    plan_text(with_file(longer))
    assert sum(read_count) == len(text) + len(longer)


def test_a_change_that_leaves_the_size_is_seen(with_file, tmp_path):
    before = with_file(DAYS).storms.record
    state = (tmp_path / "rain.csv").stat()
    changed = with_file(DAYS.replace("1.5", "2.5"))
    os.utime(tmp_path / "rain.csv", ns=(state.st_atime_ns, state.st_mtime_ns + 1))
    assert (tmp_path / "rain.csv").stat().st_size == state.st_size
    assert changed.storms.record != before


# Whatever lies at the path


@pytest.mark.parametrize("at", ["folder", "pipe", "/dev/zero", "link"])
def test_what_is_no_plain_file_is_not_opened(tmp_path, monkeypatch, at):
    (tmp_path / "folder").mkdir()
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "link").symlink_to(tmp_path / "pipe")
    monkeypatch.setattr(os, "open", None)
    assert own_files.read(tmp_path / at, 100) == b""
    with pytest.raises(disk.NotRegular):
        next(disk.pieces(tmp_path / at, 100))
    with pytest.raises(NoFile) as refused:
        text_opener(tmp_path)(at)
    assert str(refused.value).endswith("Name a plain file, saved as CSV.")


def test_a_pipe_put_in_the_place_of_a_file_is_not_waited_for(tmp_path, monkeypatch):
    (tmp_path / "rain.csv").write_text(DAYS)
    found = text_opener(tmp_path)("rain.csv")
    (tmp_path / "rain.csv").unlink()
    os.mkfifo(tmp_path / "rain.csv")
    monkeypatch.setattr(disk, "look", lambda path: None)
    with pytest.raises(NoFile, match="Name a plain file"):
        found.text(100)


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="has no such files")
def test_what_the_system_makes_up_as_it_is_read_is_empty(tmp_path, monkeypatch):
    # Files such as /proc/kmsg are regular, of size 0, and wait for ever.
    taken: list[int] = []
    monkeypatch.setattr(os, "read", lambda number, count: taken.append(count) or b"")
    assert text_opener(tmp_path)("/proc/self/status").text(100) == ""
    assert own_files.read(Path("/proc/self/status"), 100) == b""
    assert not taken


def test_a_file_that_grows_is_read_to_where_it_ended(tmp_path):
    place = tmp_path / "rain.csv"
    place.write_bytes(b"a" * 3 * disk.PIECE)
    read = 0
    with place.open("ab") as growing:
        for piece in disk.pieces(place, 10**9):
            read += len(piece)
            growing.write(b"b" * 2 * disk.PIECE)
            growing.flush()
    assert read == 3 * disk.PIECE


def test_small_files_of_the_program_are_read_up_to_their_limit(tmp_path):
    (tmp_path / "kept").write_bytes(b"1234")
    assert own_files.read(tmp_path / "kept", 4) == b"1234"
    assert own_files.read(tmp_path / "kept", 3) == b""
