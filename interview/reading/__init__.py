"""Typed text read into exact values, and values written back as text.

Every reader raises ``Refused`` and nothing else for any text whatever, and reads no text that
could honestly mean two things.

Decided here:

- A bare number is stored with the unit that was shown, so changing the units shown changes
  nothing.
- Obvious speech around a number (``reading/spoken``) is kept in the words a reader of version 0.1
  takes: of a range the end that the question calls careful, else it is asked which. A guess close
  to what a finding asks for is doubted once, and at the nearest mark none is taken.
- An at-least is kept as the number, which is the careful reading of it, and said back so.
- A number without a unit for the depth to water or rock is asked about when it is typed; in a
  file it is inches, as it always was.
- Text from outside (answers, keys, names, cells of files) is shown by ``reading.foreign``, line
  by line: what would steer a terminal, forge a line or hide is written as its number.
- 8:05 without am or pm is taken where only one of the two lies between the reading before it and
  now; else it is asked back. ``08:05`` is always of the morning.
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
    said_day,
)
from interview.reading.instants import read_instant, write_instant
from interview.reading.lengths import Paces, convert_length, is_bare, read_length, read_taped_length
from interview.reading.measures import read_area, read_rate, read_volume
from interview.reading.numbers import decimal_comma, read_count, read_number
from interview.reading.slopes import read_percent, read_pitch, read_ratio, read_share
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
    "COUNT", "LARGER", "MEASURE", "MOST_CHARACTERS", "SMALLER", "Amount", "Hearing", "Paces",
    "Refused", "SaidDay", "Spoken", "Suggested", "When", "begins_speech", "convert_length",
    "decimal_comma", "decimal_text", "echo_area", "echo_date", "echo_duration", "echo_instant",
    "echo_length", "echo_rate", "echo_volume", "is_bare", "is_unknown", "is_usual", "plain",
    "read_area", "read_choice", "read_clock", "read_count", "read_date", "read_day",
    "read_duration", "read_instant", "read_length", "read_number", "read_percent", "read_pitch",
    "read_rate", "read_ratio", "read_share", "read_taped_length", "read_ticks", "read_volume",
    "read_yes_no", "said_day", "shown", "write_instant",
]  # fmt: skip
