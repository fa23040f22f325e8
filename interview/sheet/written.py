"""A page written to a file that was named: nothing but an earlier such page is written over."""

from __future__ import annotations

from pathlib import Path

from interview import answers_file as af
from interview.reading.foreign import shown

OURS = (
    b'<!doctype html>\n<html lang="en"><head><meta charset="utf-8">'
    b'<meta name="generator" content="rain-garden-interview">',
    b"RAIN GARDEN PLAN: ",
    b"YARD CARD: ",
    b"verdict: ",
    b"format: rain-garden-figures",
    b'{\n "format": "rain-garden-figures"',
)
"""How the pages of this program begin: HTML, plan, card, figures (the first ones too) and JSON."""


class NotOurs(ValueError):
    """What is at the path is not to be written over; the message says what to do."""


def put_page(name: str, text: str, answers: Path) -> None:
    """Write ``text`` to the file ``name``, whole or not at all.

    Raises ``NotOurs`` where an answers file, or anything but a page of this program, is there, and
    ``answers_file.NotSaved`` where the file cannot be written.
    """
    path = Path(name)
    if not name or "\0" in name:
        raise NotOurs("this is not the name of a file; check the path.")
    if af.belongs_to(answers, path):
        raise NotOurs(f"{shown(name)} belongs to the answers; choose another name.")
    expect = None
    if path.exists():
        if not path.is_file():
            raise NotOurs(f"{shown(name)} is no plain file; choose another name.")
        try:
            there = path.read_bytes()
        except OSError as trouble:
            raise NotOurs(f"{shown(name)}: {af.reason(trouble)}") from trouble
        if not there.startswith(OURS):
            raise NotOurs(
                f"{shown(name)} is there and is no page of this program; choose another name."
            )
        expect = af.Fingerprint.of(there)
    af.put(path, text.encode("utf-8"), expect=expect)
