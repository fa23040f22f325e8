"""Whatever is typed or pasted, a reader gives a value or a plain refusal, and quickly."""

from __future__ import annotations

import datetime as dt
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from interview import reading
from interview.reading import Amount, Paces, Refused, echo_length, read_length

NOW = dt.datetime(2026, 11, 1, 12, 0, tzinfo=ZoneInfo("America/Chicago"))
OPTIONS = (("well", "Well"), ("septic", "Septic tank"), ("wall", "Retaining wall"))

READERS = {
    "length": lambda text: read_length(text, "ft"),
    "length without a unit": lambda text: read_length(text, None),
    "duration": lambda text: reading.read_duration(text, None),
    "clock": reading.read_clock,
    "date": lambda text: reading.read_date(text, NOW.date()),
    "instant": lambda text: reading.read_instant(text, NOW),
    "later instant": lambda text: reading.read_instant(text, NOW, NOW - dt.timedelta(hours=20)),
    "number": lambda text: reading.read_number(text),
    "count": reading.read_count,
    "percent": reading.read_percent,
    "pitch": reading.read_pitch,
    "ratio": reading.read_ratio,
    "area": lambda text: reading.read_area(text, "ft**2"),
    "volume": lambda text: reading.read_volume(text, None),
    "rate": lambda text: reading.read_rate(text, "mm/h"),
    "yes or no": reading.read_yes_no,
    "choice": lambda text: reading.read_choice(text, OPTIONS),
    "ticks": lambda text: reading.read_ticks(text, OPTIONS),
}
BANNED = ("invalid", "please", "sorry", "oops", "error", "forbidden")

_WORDS = """
    0 1 2 3 9 12 30 59 60 64 99 900 1000 2026 999999999 1234567890 . , ' " '' / - -- + * ** x by :
    % ° ½ ⅞ ⁄ ² ³ ′ ″ ’ ” − × ~ < > ? ( ) _ e e9 0x in ft m cm mm yd mi h hr min s d day p paces Ann
    am pm a.m. noon now today yesterday first second may 2026-11-01 01:30 T Z +05:30 sq cu per acre
    L gal deg nan inf ∞ ٣ ५ ５ ㎡ and to of ; none well ſ ß İ é 𝟗 ᛫
"""
_UNSEEN = ["\t", "\n", "\u00a0", "\u200b", "\u202e", "\x00", "\x1b", "\ud800", "\U0001f327"]
_PIECES = st.sampled_from([*_WORDS.split(), " ", "  ", *_UNSEEN])
_NASTY = st.lists(_PIECES, max_size=14).map("".join) | st.text(max_size=70)


@settings(max_examples=500)
@given(_NASTY, st.sampled_from(sorted(READERS)))
def test_any_text_is_read_or_plainly_refused(text, kind):
    try:
        READERS[kind](text)
    except Refused as refused:
        said = refused.said
        assert said == str(refused)
        assert 10 <= len(said) <= 180
        assert said.isprintable()
        outside_quotes = " ".join(said.split('"')[::2]).casefold()
        assert not any(word in outside_quotes.split() for word in BANNED)
        assert said[-1] in ".?…"


@settings(max_examples=500)
@given(_NASTY)
def test_any_length_that_is_read_is_echoed_and_reads_back(text):
    try:
        found = read_length(text, "ft")
    except Refused:
        return
    if isinstance(found, Paces):
        return
    assert isinstance(found, Amount)
    assert found.number >= 0
    for system in ("us", "metric"):
        said = echo_length(found, system)
        assert echo_length(reading.read_taped_length(said, None), system) == said


@settings(max_examples=500)
@given(_NASTY)
def test_any_text_can_be_cleaned_and_asked_whether_it_is_unknown(text):
    reading.plain(text)
    reading.is_unknown(text)
    reading.decimal_comma(text)
    assert reading.shown(text).isprintable()


@pytest.fixture
def work_of(calls_of):
    """Return a counter of the calls that one reader makes of one text until it refuses it."""

    def refused(kind, text):
        with pytest.raises(Refused):
            READERS[kind](text)

    def counted(kind, text):
        refused(kind, text)  # the patterns are compiled as they are first met
        return calls_of(lambda: refused(kind, text))

    return counted


def test_twice_the_text_is_refused_with_at_most_twice_the_work(subtests, work_of):
    for text in [
        "9**9**9 " * 8, "1" * 64, "1/" * 32, "9 " * 32, "1,111" + ",111" * 14 + ",1", "'" * 64,
        "1-" * 32, "⁄" * 64, "1⁄1" * 21, "a" * 64, " a" * 32, "1:" * 32,
    ]:  # fmt: skip
        for kind in READERS:
            with subtests.test(kind=kind, text=text):
                assert work_of(kind, text) <= 2.5 * work_of(kind, text[:32]) + 100


def test_a_text_too_long_is_refused_unread_however_long_it_is(subtests, work_of):
    for text in ["1", "1 ", " ", "½", "a", "1/", "0x" + "f" * 500]:
        for kind in READERS:
            with subtests.test(kind=kind, text=text[:3]):
                for characters in (20_000, 1_000_000):
                    assert work_of(kind, text * (characters // len(text))) < 100


def test_reading_needs_no_units_registry_and_no_yaml():
    import subprocess
    import sys

    code = (
        "import sys, interview.reading; "
        "print([name for name in ('pint', 'yaml', 'textual', 'rich') if name in sys.modules])"
    )
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert out.stdout.strip() == "[]"
