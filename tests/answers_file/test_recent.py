"""The list of files used lately never stands in the way."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from interview.answers_file import recent


@pytest.fixture
def environ(tmp_path: Path) -> dict[str, str]:
    return {"XDG_STATE_HOME": str(tmp_path / "state")}


def test_the_latest_file_stands_first_and_each_only_once(environ, tmp_path: Path) -> None:
    for name in ("a.yaml", "b.yaml", "a.yaml"):
        recent.remember(tmp_path / name, environ)
    assert recent.recent(environ) == [tmp_path / "a.yaml", tmp_path / "b.yaml"]


def test_the_list_stays_short(environ, tmp_path: Path) -> None:
    for number in range(30):
        recent.remember(tmp_path / f"{number}.yaml", environ)
    assert len(recent.recent(environ)) == recent.LIMIT
    assert recent.recent(environ)[0].name == "29.yaml"


def test_names_that_are_not_utf8_come_back_as_they_were(environ, tmp_path: Path) -> None:
    odd = tmp_path / os.fsdecode(b"g\xff.yaml")
    recent.remember(odd, environ)
    assert recent.recent(environ) == [odd]


def test_without_a_state_folder_the_list_is_in_the_home_folder(tmp_path: Path) -> None:
    for base in ({}, {"XDG_STATE_HOME": "relative/path"}):
        found = recent.place({**base, "HOME": str(tmp_path)})
        assert found == tmp_path / ".local/state/rain-garden-interview/recent"


@pytest.mark.parametrize("fault", ["folder", "pipe", "huge", "noise", "file in the way"])
def test_whatever_stands_there_nothing_is_raised(environ, tmp_path: Path, fault: str) -> None:
    place = recent.place(environ)
    assert place is not None
    if fault == "file in the way":
        place.parents[1].write_text("in the way")
    else:
        place.parent.mkdir(parents=True)
    match fault:
        case "folder":
            place.mkdir()
        case "pipe":
            os.mkfifo(place)
        case "huge":
            place.write_bytes(b"/x\n" * 100_000)
        case "noise":
            place.write_bytes(b"\0\xff\n\nnot a path\n/a\0b\n")
    assert recent.recent(environ) == []
    recent.remember(tmp_path / "a.yaml", environ)
    recent.remember("a\nb.yaml", environ)
    recent.remember("a\0b", environ)
    assert all(path.name == "a.yaml" for path in recent.recent(environ))
