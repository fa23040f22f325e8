"""The invented garden to look around in: made of the sample, harming no file."""

from __future__ import annotations

import tomllib
from pathlib import Path

from interview.garden import invented, store

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "sample_answers"


def test_the_copy_is_the_sample_byte_for_byte_with_the_rain_it_names(tmp_path: Path) -> None:
    path = invented.copied(tmp_path)
    assert path.read_bytes() == (SAMPLES / invented.GARDEN).read_bytes()
    assert (tmp_path / invented.RAIN).read_bytes() == (SAMPLES / invented.RAIN).read_bytes()
    loaded, _ = store.load(path)
    assert loaded.troubles == [] and b"Invented for practice" in path.read_bytes()
    assert loaded.answers.texts["rain_record"] == invented.RAIN


def test_the_samples_themselves_are_what_an_installed_program_has() -> None:
    # The installed folder is made from this one as it is packed: there is no second copy.
    told = tomllib.loads((ROOT / "pyproject.toml").read_text())["tool"]["setuptools"]
    assert told["package-dir"] == {"interview.sample_answers": "sample_answers"}
    assert "interview.sample_answers" in told["packages"]
    assert set(told["package-data"]["interview.sample_answers"]) == {
        invented.GARDEN,
        invented.RAIN,
    }


def test_an_installed_program_takes_its_own_files(tmp_path: Path, monkeypatch) -> None:
    installed = tmp_path / "interview" / "sample_answers"
    installed.mkdir(parents=True)
    (installed / invented.GARDEN).write_text("installed")
    monkeypatch.setattr(invented, "files", lambda _: tmp_path / "interview")
    assert invented.packaged(invented.GARDEN).read_text() == "installed"


def test_a_second_copy_gets_a_free_name_and_shares_the_rain(tmp_path: Path) -> None:
    first, second = invented.copied(tmp_path), invented.copied(tmp_path)
    assert (first.name, second.name) == ("invented_garden.yaml", "invented_garden-2.yaml")
    assert len(list(tmp_path.glob("*.csv"))) == 1


def test_a_file_of_rain_of_ones_own_is_left_and_the_copy_names_another(tmp_path: Path) -> None:
    own = tmp_path / invented.RAIN
    own.write_text("mine")
    path = invented.copied(tmp_path)
    assert own.read_text() == "mine"
    named = store.load(path)[0].answers.texts["rain_record"]
    assert named == "invented_rain-2.csv"
    assert (tmp_path / named).read_bytes() == (SAMPLES / invented.RAIN).read_bytes()
