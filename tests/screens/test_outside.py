"""Pastes that hold codes for a terminal, and shared files that do, on the full screen."""

from __future__ import annotations

import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from interview.screens.outside import BEGIN, END, CleanTyping


def keys(*chunks: str) -> str:
    typed = CleanTyping()
    return "".join(typed.decode(chunk.encode()) for chunk in chunks)


def test_what_is_pasted_comes_whole_and_without_codes(subtests):
    for pasted, left in [
        ("\x1b[31mred\x1b[0m 6 in", "red 6 in"),
        ("\x1b\ryes\r", "\nyes"),
        ("6 in\x1b", "6 in"),
        ("6 in\x1b[201~\ryes\r", "6 in\nyes"),
        ("Oak\rElm", "Oak\nElm"),
    ]:
        with subtests.test(pasted=pasted, left=left):
            whole = f"a{BEGIN}{pasted}{END}\x1b[A"
            assert keys(whole).rstrip("\n") == f"a{BEGIN}{left}{END}\x1b[A"


@given(st.text(), st.text(st.sampled_from("a\x1b[201~\r\u202e]")), st.integers(0, 60))
def test_a_paste_may_come_in_pieces(before, pasted, cut):
    before, pasted = before.encode("utf-8", "replace").decode(), pasted.replace(END, "")
    whole = f"{before.replace(chr(27), '')}{BEGIN}{pasted}{END}z"
    assert keys(*whole) == keys(whole) == keys(whole[:cut], whole[cut:])
    assert keys(whole).count("\x1b") == 2 and "\r" not in keys(whole).partition(BEGIN)[2]


def test_keys_pass_at_once_with_bytes_that_are_no_text_marked():
    typed = CleanTyping()
    assert [typed.decode(part) for part in (b"\x1b", b"[", b"A", b"\xff", b"\xc3", b"\xa9")] == [
        "\x1b", "[", "A", "\ufffd", "", "é",
    ]  # fmt: skip


async def test_a_pasted_code_leaves_only_its_words_in_the_field(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.pastes("\x1b[31mOak\x1b[0m\u202e lane\x1b]0;x\x07")
        assert person.app.focused.value == "Oak lane"
        await person.press("enter")
        assert person.session.answers.texts == {"garden_name": "Oak lane"}


def steers(text: str) -> list[str]:
    # Unicode Standard, chapter 4, table 4-4.
    return [c for c in text if unicodedata.category(c) in ("Cc", "Cf", "Zl", "Zp") and c != "\n"]


HOSTILE = r"""format: rain-garden-interview
format_version: "1.0"
start:
  garden_name: "Oak\nlane"
  "x\u202E\nline 1  start.units": "us"
half_typed:
  units: "us\u202E\r"
  notes: "a\u2067b"
end_of_answers: true
"""


async def test_no_page_draws_what_a_shared_file_would_steer_with(sit, tmp_path) -> None:
    (tmp_path / "garden.yaml").write_text(HOSTILE)
    async with sit() as person:
        assert "Oak<U+000A>lane" in person.sees() and steers(person.sees()) == []
        await person.press("up", "enter")
        assert person.page == "MendScreen"
        assert "start.x<U+202E><U+000A>line 1  start.units" in person.sees()
        await person.press("g")
        await person.goes_to("notes")
        assert "ab" in "".join(person.sees().split()) and steers(person.sees()) == []
        await person.press("ctrl+g")
        assert steers(person.sees()) == []
