"""What a newcomer reads first: its picture, its commands, its keys."""

from __future__ import annotations

import re
import shlex
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from interview.__main__ import parser
from interview.asking.statuses import STATUSES
from interview.garden.opening import plan_of
from interview.garden.pictures import planted_picture
from interview.garden.store import load
from interview.screens.help import KEYS

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
FIRST, _, MORE = README.partition("\n---\n")
FROM_ANOTHER = {"--sheet"}
"""Ways of printing that need not be there yet."""


def _read(text: str) -> str:
    """Return what is read, without commands and addresses."""
    return re.sub(r"```.*?```|\]\([^)]*\)", "", text, flags=re.DOTALL)


def test_the_first_part_is_short_and_opens_with_the_job():
    # Half of the 592 that there were while it held all a newcomer could want.
    assert 200 < len(re.findall(r"[\w'+’.-]*\w[\w'+’.-]*", _read(FIRST))) <= 296
    assert README.startswith("# Rain garden interview\n\nYou want the rain from part of your roof")
    for word in ("About an hour of typing over four visits", "811", "an invented garden"):
        assert word in FIRST


def test_the_picture_is_in_the_folder_and_shows_the_garden_of_the_sample(clock):
    (name,) = re.findall(r"!\[[^\]]+\]\(([^)]+)\)", README)
    picture = ET.parse(ROOT / name).getroot()
    assert picture.tag == "{http://www.w3.org/2000/svg}svg"
    assert not [one for one in picture.iter() if one.tag.endswith(("script", "image", "style"))]
    assert "href" not in (ROOT / name).read_text(encoding="utf-8")
    assert "invented" in picture[0].text
    folder = ROOT / "sample_answers"
    plan = plan_of(load(folder / "finished_us.yaml")[0].answers, folder, clock.now)
    assert picture[1].text == planted_picture(plan).description


def test_every_command_of_it_is_one_that_the_program_takes(subtests):
    known = {option for one in parser()._actions for option in one.option_strings}
    named = set(re.findall(r"(?<![\w-])--[a-z]+", README)) - {"--editable"} - FROM_ANOTHER
    assert len(named) > 6 and named <= known
    (start, test) = re.findall(r"```sh\n(.*?)```", README, re.DOTALL)
    assert test.startswith("python3 -m venv") and test.endswith("pytest\n")
    for line in start.splitlines():
        with subtests.test(line=line):
            last = shlex.split(line.rpartition("&&")[2])
            assert last[0] == ".venv/bin/rain-garden-interview"
            given = parser().parse_args(last[1:])
            assert all((ROOT / file).is_file() for file in given.files)


def test_the_exit_statuses_are_one_table_here_and_in_the_help():
    told = re.findall(r"^\| (\d\S*) \| (.*) \|$", MORE, re.MULTILINE)
    assert tuple(told) == STATUSES
    shown = parser().format_help().splitlines()
    for number, meaning in STATUSES:
        assert f"  {number:<6} {meaning}" in shown


@pytest.mark.parametrize("key", re.findall(r"(?:Ctrl\+[A-Z]|F\d+)", FIRST))
def test_every_key_it_names_is_among_the_keys_of_the_program(key):
    assert re.search(rf"^\s*.*{re.escape(key.replace('Ctrl+', '^'))}\b", KEYS, re.MULTILINE)
