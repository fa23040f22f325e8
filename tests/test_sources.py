"""Every source says what it is, and claims no more than was read."""

from __future__ import annotations

import gc
import importlib
import pkgutil
import re

import pytest

import interview
from interview.garden.earth.materials import BULKING, Soil
from interview.garden.guidance import STEEPEST_PERCENT
from interview.garden.site.siting import SLOPE_STOP
from interview.garden.survey.runoff import COEFFICIENTS, GRAVEL
from interview.quantities.evidence import Provenance, Source


@pytest.fixture(scope="module")
def sources() -> set[Source]:
    """Every source that stands in any module of the program."""
    for module in pkgutil.walk_packages(interview.__path__, "interview."):
        if not module.name.endswith("__main__"):
            importlib.import_module(module.name)
    gc.unfreeze()  # a page shown by an earlier test has what was loaded left out of the collection
    return {one for one in gc.get_objects() if isinstance(one, Source)}


READ = (Provenance.PUBLISHED, Provenance.SECONDARY)
PLACED = r"\b(19|20)\d\d\b|web pages?|undated|p\. \w|section \d|Code \d|table \d|example \d"
"""A year, a page, a section; or the word that there is none."""
UNSURE = r"from memory|as told|as kept|as quoted|not shown|second|summar"


def test_there_are_many_sources_to_look_at(sources):
    assert len([one for one in sources if one.standing in READ]) > 60


def test_what_was_read_names_a_publication_and_its_date_or_place(sources):
    bare = [
        one.title
        for one in sources
        if one.standing in READ and not (len(one.title) > 25 and re.search(PLACED, one.title))
    ]
    assert not bare


def test_what_was_not_read_in_the_publication_itself_is_not_called_published(sources):
    claims = [
        one.title
        for one in sources
        if one.standing is Provenance.PUBLISHED and re.search(UNSURE, one.title)
    ]
    assert not claims


def test_a_second_copy_is_said_on_the_sheet():
    found = Source("Step 6, Alabama Extension, web page", Provenance.SECONDARY)
    assert str(found).endswith("(published, read in a second copy)")


def test_gravel_is_not_laid_at_the_door_of_the_rule_for_compacted_cover():
    assert "compacted cover" in COEFFICIENTS.title and "gravel" not in COEFFICIENTS.title
    assert GRAVEL.standing is Provenance.OURS


def test_the_slope_that_stops_names_only_what_was_read():
    assert "Penn State" not in SLOPE_STOP.source.title
    penn = [one for one in STEEPEST_PERCENT if "Penn State" in one.source.title]
    assert [one.source.standing for one in penn] == [Provenance.SECONDARY]


def test_the_bulking_of_each_soil_says_where_it_comes_from():
    assert BULKING[Soil.SAND].source.standing is Provenance.SECONDARY
    assert BULKING[Soil.LOAM].source.standing is Provenance.MEMORY
    assert BULKING[Soil.CLAY].source.standing is Provenance.OURS
