"""What rests on memory: the part of the sheet, and the script that lists it by field."""

from __future__ import annotations

import datetime as dt
import re
import subprocess
import sys
from pathlib import Path

import pytest

from interview.garden.opening import plan_of
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.plant_sources import PLANT_SOURCES
from interview.garden.planting.provenance import (
    FACTS,
    HAZARDS,
    NOT_KNOWN,
    decided,
    from_memory,
    standing,
)
from interview.garden.planting.words import short_name
from interview.garden.store import load
from interview.quantities.evidence import Provenance
from interview.screens.plant_notes import about
from interview.sheet.figures_file import figures_text
from interview.sheet.memory import memory
from interview.sheet.report import plan_text

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "sample_answers"
MAY = dt.datetime(2026, 5, 28, 9, tzinfo=dt.UTC)


def plan(name="finished_us", **changes):
    answers = load(SAMPLES / f"{name}.yaml")[0].answers
    for address, text in changes.items():
        answers = answers.with_text(address, text)
    return plan_of(answers, SAMPLES, MAY).without_record


@pytest.fixture(scope="module")
def finished():
    return plan()


def said(lines):
    return " ".join(" ".join(lines).split())


def test_the_sheet_names_for_each_fact_the_plants_for_which_it_is_from_memory(finished):
    text = said(memory(finished))
    wishes = finished.planting.wishes
    plants = [pick.plant for zone in finished.planting.chosen.zones for pick in zone.picks]
    for fact, words in FACTS.items():
        names = [
            short_name(plant)
            for plant in plants
            if fact in from_memory(plant, wishes.region, wishes.list_region)
        ]
        if len(names) == len(plants):
            assert f"- {words}: every kind" in text
        elif names:
            told = text.split(f"- {words}: {len(names)} of {len(plants)}: ")[1].split(" - ")[0]
            assert all(name in told for name in names[:6])
        else:
            assert words in text.split("or not told at all, for every kind: ")[1]
    assert "- warmest zone: every kind" in text and "Corrected rate" in text


def test_abroad_the_facts_are_called_in_the_words_of_the_country(finished):
    assert "color" in said(memory(finished))
    region = finished.planting.wishes.region.name.lower()
    here = plan(country="uk", plant_region=region, wetland_list_region="ncne")
    text = said(memory(here)).partition("The lists behind")[0]
    assert "flower colour" in text and "color" not in text


def test_the_sheet_names_the_plants_whose_hazards_one_list_alone_carries(finished):
    text = said(memory(finished))
    plants = [pick.plant for zone in finished.planting.chosen.zones for pick in zone.picks]
    for fact in HAZARDS:
        names = [short_name(one) for one in plants if len(one.rests(fact)) == 1]
        head = f"One list alone, held against no other, for {FACTS[fact]}: "
        assert (head in text) == bool(names), fact
        if 0 < len(names) < len(plants):
            told = text.split(head)[1].split(".")[0]
            assert all(name in told for name in names[:6])
    assert "for toxicity: " in text


def test_the_sheet_tells_what_was_decided_by_hand_about_what_is_planted(finished):
    text = said(memory(finished))
    plants = [pick.plant for zone in finished.planting.chosen.zones for pick in zone.picks]
    found = [one for plant in plants for one in decided(plant) if one.field != "copies"]
    assert found
    for one in found:
        assert " ".join(f"{one.published}; kept {one.kept}: {one.why}.".split()) in text


def test_the_part_stands_in_the_working_alone_and_before_the_plants_are_known():
    assert "\nWHAT RESTS ON MEMORY\n" in plan_text(plan())
    lines = list(memory(plan("halfway_soak_test")))
    assert lines and not any("kinds of the plant list" in line for line in lines)


def test_a_garden_of_ones_own_plants_alone_has_no_facts_from_memory():
    assert not any("kinds of the plant list" in line for line in memory(plan("finished_metric")))


def test_the_notes_of_a_plant_tell_what_each_fact_rests_on(finished):
    zone = finished.planting.chosen.zones[0]
    for pick in zone.picks:
        notes = str(about(finished, zone, pick)).split("What this rests on\n")[1]
        told = notes.replace("\n", " ")
        assert "from memory, not checked" in told and "read in a second copy" in told
        assert all(words in told for words in FACTS.values())
        for one in decided(pick.plant):
            assert one.why in told


def test_the_figures_tell_for_each_fact_what_it_rests_on(finished):
    text = figures_text(finished)
    for pick in (pick for zone in finished.planting.chosen.zones for pick in zone.picks):
        plant = pick.plant
        row = text.split(f'- scientific_name: "{plant.scientific_name}"')[1].split("- scient")[0]
        told = dict(re.findall(r"^ {12}(\w+): \"(.*)\"$", row, re.MULTILINE))
        assert set(told) == set(FACTS)
        for fact in set(FACTS) - {"indicator", "native"}:
            codes = [code.partition(" ")[0] for code in plant.rests(fact)]
            assert all(PLANT_SOURCES[code][0] in told[fact] for code in codes)
            assert codes or told[fact] in ("from memory, not checked", NOT_KNOWN)


def test_the_script_lists_by_field_how_many_plants_rest_on_memory():
    script = [sys.executable, str(ROOT / ".ci" / "unverified")]
    asked = [*script, "--names", "zones"]
    done = subprocess.run(asked, capture_output=True, text=True, check=True, timeout=60)
    rest = [one for one in builtin_plants() if standing(one, "zones") == Provenance.MEMORY.value]
    head, *names = done.stdout.splitlines()[1:]
    assert f" {len(rest)} " in head
    assert [name.strip() for name in names] == [one.scientific_name for one in rest]
    wrong = subprocess.run([*script, "roots"], capture_output=True, text=True, timeout=60)
    assert wrong.returncode == 1 and "There is no field roots" in wrong.stderr
