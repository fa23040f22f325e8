"""Text from outside as it is shown, pasted, and written into a command."""

from __future__ import annotations

import os
import shutil
import subprocess
import unicodedata

from hypothesis import given, settings
from hypothesis import strategies as st

from interview.reading.foreign import harmless, lines_shown, shell_word, shown

STEERS = ("Cc", "Cf", "Cs", "Zl", "Zp")
"""Unicode Standard, chapter 4, table 4-4: control, format, surrogate, line and paragraph separator.
"""
TURNS = ("LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI")
"""UAX 9, table 4: explicit directional formatting characters."""
CODES = ["\x1b[2J", "\x1b]0;title\x07", "\x9b31m", "\r", "\n", "\u202e", "\u2066", "\u200b"]
_PIECES = (
    st.sampled_from([*CODES, *"aé%'! \\", "\x85", "\u2028", "\u3164", "\udcff"]) | st.characters()
)
ANY = st.lists(_PIECES, max_size=12).map("".join)
SHELLS = [name for name in ("sh", "dash", "bash") if shutil.which(name)]


def steers(text: str) -> list[str]:
    """Return the characters of ``text`` that steer a terminal, but what joins an emoji."""
    return [
        one
        for one in text
        if unicodedata.category(one) in STEERS or unicodedata.bidirectional(one) in TURNS
        if one != "\u200d"
    ]


@settings(max_examples=400)
@given(ANY)
def test_any_text_is_shown_on_one_line_and_steers_nothing(text):
    assert steers(shown(text)) == []
    assert shown(shown(text)) == shown(text)
    assert len(lines_shown(text).split("\n")) == text.count("\n") + 1


def test_what_cannot_be_seen_is_written_as_its_number(subtests):
    for text, said in [
        ("g\x1b[2J.yaml", "g<U+001B>[2J.yaml"),
        ("a\r\nb", "a<U+000D><U+000A>b"),
        ("exe\u202efdp", "exe<U+202E>fdp"),
        ("\udcff", "<U+DCFF>"),
        ("a\x9bb", "a<U+009B>b"),
        ("no\u3164thing", "no<U+3164>thing"),
        ("a\u2028b", "a<U+2028>b"),
        ("plain\u200d", "plain<U+200D>"),
        ("a\ufe0f", "a<U+FE0F>"),
        ("Café 東京 ❤\ufe0f\u200d🔥 👩\u200d🌾", "Café 東京 ❤\ufe0f\u200d🔥 👩\u200d🌾"),
    ]:
        with subtests.test(text=text, said=said):
            assert shown(text) == said


def test_a_code_that_is_pasted_goes_with_its_tail(subtests):
    for pasted, left in [
        ("\x1b[31m6 in\x1b[0m", "6 in"),
        ("\x1b]0;a title\x076 in", "6 in"),
        ("\x1b]8;;http://x\x1b\\6 in\x1b]8;;\x1b\\", "6 in"),
        ("\x1bP1$r0m\x1b\\6 in", "6 in"),
        ("\x9b1;31m6 in", "6 in"),
        ("\x1b(B6 in", "6 in"),
        ("\x1b\x1b[31m6 in", "6 in"),
        ("6 in\x1b[", "6 in"),
        ("\x1b]0;never ended\n6 in", "\n6 in"),
        ("\x1b\r6 in", "\n6 in"),
        ("\u202e12\u00a0ft", "12 ft"),
        ("12\tft\r\n3 ft", "12 ft\n3 ft"),
        ("José 東京", "José 東京"),
    ]:
        with subtests.test(pasted=pasted, left=left):
            assert harmless(pasted) == left


@settings(max_examples=400)
@given(ANY)
def test_nothing_that_is_left_of_a_paste_steers(text):
    assert [one for one in steers(harmless(text)) if one != "\n"] == []


NAMES = ANY.filter(lambda name: name and "\0" not in name).map(
    # What a name on disk can be: any bytes, of which those that are no text are half characters.
    lambda name: (
        os.fsdecode(os.fsencode(name.encode("utf-8", "surrogateescape")[:200]))
        if all(not "\ud800" <= one <= "\udfff" or "\udc80" <= one <= "\udcff" for one in name)
        else "half"
    )
)


def test_a_name_comes_out_of_the_shell_as_it_went_in(subtests):
    for name in [
        "g.yaml", "a b's.yaml", "g\x1b[2J.yaml", "\udcff\udc80.yaml", "%s\\n!\x07.yaml", "a\n\nb",
        "é\u202e$x`", "\x1b1.yaml", "-n\x1b",
    ]:  # fmt: skip
        for shell in SHELLS:
            with subtests.test(shell=shell, name=name):
                word = shell_word(name)
                assert steers(word) == []
                done = subprocess.run(
                    [shell, "-c", f"printf '%s' {word}"], capture_output=True, check=True
                )
                assert done.stdout == os.fsencode(name)


@settings(max_examples=60)
@given(st.lists(NAMES, min_size=12, max_size=12))
def test_any_name_comes_out_of_bash_as_it_went_in(names):
    words = [shell_word(name, encoding) for name in names for encoding in ("utf-8", "ascii")]
    assert all(steers(word) == [] for word in words)
    assert all(word.isascii() for word in words[1::2])
    done = subprocess.run(
        ["bash", "-c", f"printf '%s\\0' {' '.join(words)}"], capture_output=True, check=True
    )
    assert done.stdout.split(b"\0")[:-1] == [os.fsencode(name) for name in names for _ in "ab"]


def test_a_line_end_at_the_end_of_a_name_is_kept():
    done = subprocess.run(
        ["bash", "-c", f"printf '%s' {shell_word('g' + chr(10))}"], capture_output=True, check=True
    )
    assert done.stdout == b"g\n"
