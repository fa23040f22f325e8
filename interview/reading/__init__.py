"""Typed text read into exact values, and values written back as text.

Every reader raises ``Refused`` and nothing else for any text whatever, and reads no text that
could honestly mean two things.
"""

from interview.reading.choices import read_choice, read_ticks, read_yes_no
from interview.reading.days import SaidDay, When, read_day
from interview.reading.durations import read_duration
from interview.reading.echo import (
    decimal_text,
    echo_area,
    echo_date,
    echo_duration,
    echo_instant,
    echo_length,
    echo_rate,
    echo_volume,
)
from interview.reading.instants import read_instant, write_instant
from interview.reading.lengths import Paces, convert_length, is_bare, read_length, read_taped_length
from interview.reading.measures import read_area, read_rate, read_volume
from interview.reading.numbers import decimal_comma, read_count, read_number
from interview.reading.shares import read_share
from interview.reading.slopes import read_percent, read_pitch, read_ratio
from interview.reading.spoken import COUNT, LARGER, MEASURE, SMALLER, Hearing, Spoken, begins_speech
from interview.reading.terms import Amount
from interview.reading.text import (
    MOST_CHARACTERS,
    Refused,
    Suggested,
    is_unknown,
    is_usual,
    plain,
    shown,
)
from interview.reading.times import read_clock, read_date

__all__ = [
    "COUNT",
    "LARGER",
    "MEASURE",
    "MOST_CHARACTERS",
    "SMALLER",
    "Amount",
    "Hearing",
    "Paces",
    "Refused",
    "SaidDay",
    "Spoken",
    "Suggested",
    "When",
    "begins_speech",
    "convert_length",
    "decimal_comma",
    "decimal_text",
    "echo_area",
    "echo_date",
    "echo_duration",
    "echo_instant",
    "echo_length",
    "echo_rate",
    "echo_volume",
    "is_bare",
    "is_unknown",
    "is_usual",
    "plain",
    "read_area",
    "read_choice",
    "read_clock",
    "read_count",
    "read_date",
    "read_day",
    "read_duration",
    "read_instant",
    "read_length",
    "read_number",
    "read_percent",
    "read_pitch",
    "read_rate",
    "read_ratio",
    "read_share",
    "read_taped_length",
    "read_ticks",
    "read_volume",
    "read_yes_no",
    "shown",
    "write_instant",
]
