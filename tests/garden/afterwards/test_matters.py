"""What is advised from year to year: each sentence with its source, or as common practice."""

from interview.garden.afterwards.advice import SALT, _matter
from interview.garden.planting.care import _published
from interview.quantities.evidence import PRACTICE, Provenance


def test_a_sentence_without_a_source_of_its_own_is_common_practice():
    made = _matter("Salt", "Keep it off the bed.", ("Salt burns.", SALT))
    assert made.topic == "Salt"
    assert made.says == (("Keep it off the bed.", PRACTICE), ("Salt burns.", SALT))


def test_a_page_on_care_that_was_read_is_published():
    assert _published("A page").standing is Provenance.PUBLISHED
    assert str(_published("A page")) == "A page"
