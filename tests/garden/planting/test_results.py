"""The planting of whole plans: the sheet, the figures, the own plant file, the command line."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml

from interview.__main__ import main
from interview.garden.opening import open_session, plan_of
from interview.garden.planting.plant_list import builtin_places
from interview.garden.store import load
from interview.quantities.units import magnitude
from interview.sheet.figures_file import figures_text
from interview.sheet.report import plan_text

SAMPLES = Path(__file__).parents[3] / "sample_answers"
OWN = "scientific_name,common_name,kind,sun,zones,height_max_m,spacing_cm\n"
HERB = "Hortus novus,new herb,forb,full;part;shade,floor;side;rim,0.5,40\n"


@pytest.fixture
def sample(clock, tmp_path):
    """Return a maker of the finished garden's plan with some answers changed."""

    def make(plants="", folder=tmp_path, **changes):
        answers = load(SAMPLES / "finished_us.yaml")[0].answers
        for address, text in changes.items():
            answers = answers.with_text(address, text)
        return plan_of(answers, folder, clock.now, plants)

    return make


def part(plan, title, until):
    text = plan_text(plan)
    return text[text.index(f"\n{title}\n") : text.index(f"\n{until}\n")]


def said(text):
    return " ".join(text.split())


def names(plan):
    return [
        pick.plant.scientific_name for zone in plan.planting.chosen.zones for pick in zone.picks
    ]


def test_the_sheet_names_each_plant_with_its_code_size_bloom_and_distance(sample):
    plan = sample()
    sheet = said(part(plan, "PLANTS", "PLANTING SKETCH"))
    for zone in plan.planting.chosen.zones:
        for pick in zone.picks:
            assert f"[ ] {pick.count} x " in sheet
            star = "" if pick.plant.rests("spacing") else "*"
            apart = f"{pick.plant.spacing_in:g} in{star} apart"
            assert f"({pick.plant.scientific_name}), {apart}" in sheet
            assert not pick.plant.flower_color or f", {pick.plant.flower_color}" in sheet
    assert sheet.count("which suits it") == 0
    assert sheet.count("Codes that stand this:") == 3
    assert sheet.count("OBL almost always") == 1


def test_hours_under_water_are_told_for_each_zone_and_case(sample, tmp_path):
    days = "\n".join(f"2025-06-{day:02},{2.0 if day < 4 else 0}" for day in range(1, 29))
    (tmp_path / "rain.csv").write_text(f"date,rain\n{days}\n")
    plan = sample(
        has_rain_record="yes",
        rain_record="rain.csv",
        rain_record_unit="in",
        rain_date_column="date",
        rain_depth_column="rain",
    )
    record = plan.storms.zone_hours_record
    hours = [
        magnitude(one.floor, "h")
        for one in (plan.storms.zone_hours, plan.storms.zone_hours_again, record)
    ]
    assert hours[0] < hours[2]
    sheet = said(part(plan, "PLANTS", "PLANTING SKETCH"))
    assert f"{hours[0]:.0f} h in the storm it holds" in sheet
    assert f"{hours[1]:.0f} h at a stretch if it comes again next day" in sheet
    assert f"{hours[2]:.0f} h at the longest in your rainfall record" in sheet
    assert (
        plan.planting.chosen.zones[0].site.longest_when == "at the longest in your rainfall record"
    )
    figures = yaml.safe_load(figures_text(plan))["planting"]["zones"][0]
    assert figures["hours_record"] == pytest.approx(hours[2], rel=1e-6)


def test_a_record_that_cannot_be_read_does_not_hold_up_the_plants(sample):
    plan = sample(has_rain_record="yes", rain_record="gone.csv", rain_record_unit="in")
    assert plan.storms.zone_hours_record is None
    assert names(plan)


def test_a_swap_on_file_changes_that_plant_alone(sample):
    plan = sample(swap_out="closed bottle gentian for white turtlehead")
    before = sample(swap_out="none")
    changed = [pair for pair in zip(names(before), names(plan), strict=True) if pair[0] != pair[1]]
    assert changed == [("Gentiana andrewsii", "Chelone glabra")]
    assert "in place of closed bottle gentian" in said(plan_text(plan))


def test_a_favourite_that_cannot_be_placed_says_why_for_each_zone(sample):
    plan = sample(favourites="leadplant", sun="shade")
    sheet = said(part(plan, "PLANTS", "PLANTING SKETCH"))
    assert "Not placed: leadplant" in sheet
    assert all(f"{zone}: " in sheet for zone in ("Floor", "Side", "Rim"))
    assert plan.planting.why_plant("leadplant")[2].startswith("Rim: It wants full sun.")


def test_the_sketch_holds_every_plant_and_fits_the_sheet(sample):
    plan = sample()
    drawn = part(plan, "PLANTING SKETCH", "FIRST YEAR")
    assert all(len(line) <= 76 for line in drawn.splitlines())
    grid = [line for line in drawn.splitlines() if re.fullmatch(r"  +[A-Z]( +[A-Z])*", line)]
    assert sum(len(line.split()) for line in grid) == plan.planting.chosen.total


def test_the_first_year_tells_drowned_from_parched_and_what_to_do_after_storms(sample):
    text = said(plan_text(sample()).split("\nFIRST YEAR\n")[1])
    for words in ("Drowned:", "Parched:", "gone within 24 h", "still there after 72 h"):
        assert words in text


def test_the_first_year_names_months_only_by_the_day_of_digging(subtests, sample):
    weeds, frost = "Pull weeds every week while they are small.", "after the last frost"
    for dug, country, when, cold in [
        ("don't know yet", "us", "first 3 months", False),
        ("2026-05-30", "us", "May to Jul", False),
        ("2026-12-05", "us", "first 3 months", True),
        ("2026-12-05", "new_zealand", "Dec to Feb", False),
        ("2026-07-04", "new_zealand", "first 3 months", True),
        ("2026-12-05", "other", "Dec to Feb", False),
    ]:
        with subtests.test(dug=dug, country=country):
            plan = sample(country=country, dig_day=dug)
            told = said(plan_text(plan).split("\nFIRST YEAR\n")[1].split("The first two years")[0])
            assert f"{when}: {weeds}" in told
            assert ("cold months" in told) is cold
            assert told.count(frost) == 2 + cold and "This program has no dates of frost" in told


def test_the_figures_tell_every_plant_and_where_its_facts_come_from(sample):
    plan = sample()
    listed = yaml.safe_load(figures_text(plan))["planting"]
    told = [row for zone in listed["zones"] for row in zone["plants"]]
    assert [row["scientific_name"] for row in told] == names(plan)
    assert sum(row["count"] for row in told) == plan.planting.chosen.total
    for row in told:
        assert {"hardiness_max", "thorns"} <= set(row["from_memory"])
        for fact in row["sources"]:
            assert ("memory" in row["sources"][fact]) == (fact in row["from_memory"])
    used = {code for row in told for code in re.findall(r"\b[A-Z]{2,4}\d\d\b", str(row["sources"]))}
    assert used <= set(listed["rating_lists"])


def test_a_toxic_plant_that_is_let_in_carries_its_caution(sample):
    # The star is for what is from memory: of the lobelia a catalogue says so.
    for name, star in (("Lobelia cardinalis", ""), ("Iris versicolor", "*")):
        sheet = said(part(sample(favourites=name), "PLANTS", "PLANTING SKETCH"))
        after = sheet.split(f"({name})")[1].split("[ ]")[0]
        assert f"TOXIC: Can harm people or pets if eaten or touched{star}." in after
        assert "It is toxic or can irritate." in after
        assert "Check your local list of invasive plants before you buy." in sheet


def test_a_plant_that_the_gardeners_state_calls_introduced_is_left_out(sample):
    plan = sample(swap_out="none")
    assert plan.planting.wishes.place == next(one for one in builtin_places() if one.code == "MN")
    assert "calls it introduced" in plan.planting.why_plant("Penstemon digitalis")[1]
    assert "introduced per" not in plan_text(plan)


# The person's own plant file


def test_an_own_plant_file_lies_beside_the_answers_file(sample, tmp_path):
    (tmp_path / "mine.csv").write_text(OWN + HERB)
    plan = sample(own_plants="mine.csv", favourites="new herb")
    assert "Hortus novus" in names(plan)
    assert len(plan.planting.plants) == 319
    assert "Your own plant file, plants read: 1." in plan_text(plan)
    row = figures_text(plan).split('"Hortus novus"')[1].split("scientific_name")[0]
    assert 'spacing: "your own plant file"' in row and "from_memory: []" in row


def test_a_remark_of_an_own_plant_file_stands_on_the_sheet_and_is_no_caution(sample, tmp_path):
    head = OWN.rstrip("\n") + ",toxic,remarks\n"
    (tmp_path / "mine.csv").write_text(head + HERB.rstrip("\n") + ",yes,smells of honey\n")
    plan = sample(own_plants="mine.csv", favourites="new herb", keep_out="none")
    sheet = said(part(plan, "PLANTS", "PLANTING SKETCH"))
    after = sheet.split("(Hortus novus)")[1].split("[ ]")[0]
    caution = "TOXIC: Can harm people or pets if eaten or touched."
    assert f"{caution} Your plant file remarks: smells of honey." in after


def test_faults_of_an_own_plant_file_are_told_by_line_and_the_rest_is_used(sample, tmp_path):
    bad = HERB.replace("novus", "malus").replace("0.5,40", "tall,40")
    (tmp_path / "mine.csv").write_text(OWN + HERB + bad * 7)
    plan = sample(own_plants="mine.csv", favourites="new herb")
    sheet = said(plan_text(plan))
    assert "Your own plant file has 7 faults; lines with a fault are left out." in sheet
    assert "line 3: height_max_m: Write a plain number" in sheet
    assert "and 2 more; --check lists them all" in sheet
    assert "Hortus novus" in names(plan)


def test_an_own_plant_file_is_read_once_for_each_change(sample, tmp_path):
    (tmp_path / "mine.csv").write_text(OWN + HERB)
    read = sample(own_plants="mine.csv").planting.plant_file
    assert sample(own_plants="mine.csv", favourites="new herb").planting.plant_file is read
    (tmp_path / "mine.csv").write_text(OWN + HERB + HERB.replace("novus", "alter"))
    assert len(sample(own_plants="mine.csv").planting.plant_file.plants) == 2


def test_an_own_plant_file_that_is_not_there_is_said_and_the_packaged_list_used(sample):
    plan = sample(own_plants="gone.csv")
    assert "own_plants" in [finding.key for finding in plan.findings]
    assert "There is no file" in said(part(plan, "PLANTS", "PLANTING SKETCH"))
    assert names(plan) == names(sample())


@pytest.mark.parametrize("text", ["none", "None", "no", "don't know yet"])
def test_no_own_plant_file_is_no_fault(sample, text):
    plan = sample(own_plants=text)
    assert plan.planting.plant_file.path == "" and plan.planting.plant_file.finding() is None


def test_a_plant_file_of_this_run_takes_the_place_of_the_one_on_file(sample, tmp_path):
    (tmp_path / "mine.csv").write_text(OWN + HERB)
    (tmp_path / "other.csv").write_text(OWN + HERB.replace("novus", "alter"))
    plan = sample(str(tmp_path / "other.csv"), own_plants="mine.csv")
    assert [plant.scientific_name for plant in plan.planting.plant_file.plants] == ["Hortus alter"]


def test_outside_the_list_the_traits_are_told_and_own_plants_named(clock):
    loaded, _ = load(SAMPLES / "finished_metric.yaml")
    named = plan_of(loaded.answers, SAMPLES, clock.now)
    assert names(named) and all(one.own for one in named.planting.plant_file.plants)
    bare = plan_of(loaded.answers.with_text("own_plants", "none"), SAMPLES, clock.now)
    assert names(bare) == []
    sheet = said(plan_text(bare))
    assert "no kinds are named here" in sheet and "No plants that want wet roots." in sheet
    assert "PLANTING SKETCH" not in plan_text(bare)


# The command line


def test_an_interview_going_on_uses_the_plant_file_of_this_run(folder, clock):
    (folder / "mine.csv").write_text(OWN + HERB)
    opened = open_session(
        "gardens/g.yaml", clock, "a test", plants=str((folder / "mine.csv").absolute())
    )
    with opened.lock:
        assert "Hortus novus" in names(opened.session.plan)
        opened.session.jump("own_plants")
        opened.session.offer(opened.session.step, "none")
        assert "Hortus novus" in names(opened.session.plan)


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A folder with the finished garden, from which the program is run."""
    monkeypatch.chdir(tmp_path)
    text = (SAMPLES / "finished_us.yaml").read_text()
    (tmp_path / "gardens").mkdir()
    (tmp_path / "gardens" / "g.yaml").write_text(
        text.replace("favourites: none", "favourites: new herb")
    )
    rain = (SAMPLES / "invented_rain.csv").read_bytes()
    (tmp_path / "gardens" / "invented_rain.csv").write_bytes(rain)
    return tmp_path


@pytest.mark.parametrize("way", ["--plan", "--figures"])
def test_a_plant_file_is_named_on_the_command_line_from_where_one_stands(folder, capsys, way):
    (folder / "mine.csv").write_text(OWN + HERB)
    assert main([way, "gardens/g.yaml"]) == 0
    assert "Hortus novus" not in capsys.readouterr().out
    assert main([way, "gardens/g.yaml", "--plants", "mine.csv"]) == 0
    assert "Hortus novus" in capsys.readouterr().out


def test_the_check_lists_the_faults_of_the_plant_file_by_line(folder, capsys):
    (folder / "mine.csv").write_text(OWN + HERB + HERB.replace("forb", "flower"))
    assert main(["--check", "gardens/g.yaml"]) == 0
    capsys.readouterr()
    assert main(["--check", "gardens/g.yaml", "--plants", "mine.csv"]) == 1
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith(f"{folder / 'mine.csv'}:3: kind: Write forb, shrub,")
    assert lines[1].startswith(f"{folder / 'mine.csv'}:3: scientific_name: ")
    assert "2 faults." in lines
    assert main(["--check", "gardens/g.yaml", "--plants", "gone.csv"]) == 1
    assert "There is no file" in capsys.readouterr().out.splitlines()[0]


def test_the_check_finds_the_plant_file_that_the_answers_name(folder, capsys):
    file = folder / "gardens" / "g.yaml"
    file.write_text(file.read_text().replace("own_plants: none", "own_plants: mine.csv"))
    (folder / "gardens" / "mine.csv").write_text(OWN.replace("zones", "zone") + HERB)
    assert main(["--check", "gardens/g.yaml"]) == 1
    assert "mine.csv:1: zones: The first line must name" in capsys.readouterr().out
