"""What to buy where a plant is sold out: like it, and nothing that carries a warning."""

from __future__ import annotations

import pytest

from interview.garden.planting.choice import Bed, Candidate, stand_in
from interview.garden.planting.choose import choose
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import PlantKind, Sun
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.wetness import ZoneSite, fits_after
from interview.garden.planting.wishes import Swap, Wishes, unsuited
from interview.garden.planting.words import doubts, hazard_names, hazards
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

HOMES = {
    PlantRegion.NE: ListRegion.NCNE,
    PlantRegion.SE: ListRegion.AGCP,
    PlantRegion.MW: ListRegion.MW,
    PlantRegion.GP: ListRegion.GP,
    PlantRegion.MT: ListRegion.AW,
    PlantRegion.PN: ListRegion.WMVC,
    PlantRegion.CA: ListRegion.AW,
}
FLOWERING = (PlantKind.FORB, PlantKind.SHRUB)
HOURS = {Zone.FLOOR: 20.0, Zone.SIDE: 8.0, Zone.RIM: 0.0}
SITES = {zone: ZoneSite(quantity(90, "ft**2"), quantity(wet, "h")) for zone, wet in HOURS.items()}


def named(name):
    return next(one for one in builtin_plants() if one.scientific_name == name)


def picks(wishes):
    plan = choose(builtin_plants(), wishes, SITES)
    return [(zone.zone, pick) for zone in plan.zones for pick in zone.picks]


def may_stand_in(gone, other, zone, wishes, garden):
    """Whether the whole list allows ``other`` in the place of ``gone``, like it or not so like."""
    return (
        other.at_home(wishes.region)
        and other.scientific_name not in garden
        and not (hazards(other) or other.regulated_in or other.introduced_in(wishes.region))
        and other.grasslike == gone.grasslike
        and (other.kind is PlantKind.SHRUB) == (gone.kind is PlantKind.SHRUB)
        and not unsuited(other, wishes)
        and fits_after(other, zone, HOURS[zone], wishes.list_region).ok
    )


def is_like(gone, other):
    months = set(gone.bloom_months) & set(other.bloom_months)
    flowers = gone.kind in FLOWERING and gone.bloom_months
    return (months or not flowers) and 0.5 <= other.height_max_ft / gone.height_max_ft <= 2


@pytest.mark.parametrize("region", HOMES, ids=lambda one: one.name)
@pytest.mark.parametrize("sun", [Sun.FULL, Sun.PART])
def test_a_stand_in_is_of_the_same_zone_sun_height_and_months_and_carries_no_warning(region, sun):
    listed = HOMES[region]
    # Nothing is kept out, so that what carries a warning might come in.
    wishes = Wishes(region, listed, sun)
    found = picks(wishes)
    garden = {pick.plant.scientific_name for _, pick in found}
    for zone, pick in found:
        gone, other = pick.plant, pick.substitute
        allowed = [one for one in builtin_plants() if may_stand_in(gone, one, zone, wishes, garden)]
        # There is one wherever the list has any, and a near one wherever it has a near one.
        assert (other in allowed) if allowed else other is None
        if any(is_like(gone, one) for one in allowed):
            assert is_like(gone, other)
    assert len([pick for _, pick in found if pick.substitute]) >= 4


def test_every_stand_in_can_be_swapped_in(subtests):
    wishes = Wishes(PlantRegion.MW, ListRegion.MW)
    for zone, pick in picks(wishes):
        if pick.substitute is None:
            continue
        with subtests.test(plant=pick.plant.scientific_name):
            swap = Swap(pick.plant.scientific_name, pick.substitute.scientific_name)
            plan = choose(builtin_plants(), wishes._replace(swaps=(swap,)), SITES)
            (now,) = [one for one in plan.zones if one.zone is zone]
            (mine,) = [one for one in now.picks if one.instead_of == pick.plant]
            assert mine.plant == pick.substitute and not mine.against


def test_stand_ins_differ_while_there_are_enough():
    found = [pick.substitute for _, pick in picks(Wishes(PlantRegion.MW, ListRegion.MW))]
    named_once = [one for one in found if one is not None]
    assert len(set(one.scientific_name for one in named_once)) >= 0.8 * len(named_once)


# Weeds by law


def test_plants_that_a_state_lists_as_noxious_are_marked_and_say_so():
    # USDA PLANTS, state noxious weed lists as of January 2015, read in a second copy.
    listed = {one.scientific_name: one.regulated_in for one in builtin_plants() if one.regulated_in}
    assert listed == {
        "Amorpha fruticosa": ("CT", "WA"),
        "Iris douglasiana": ("CA",),
        "Iris missouriensis": ("CA",),
        "Silphium perfoliatum": ("CT",),
    }
    said = " ".join(doubts(named("Amorpha fruticosa"), PlantRegion.GP, ListRegion.GP))
    assert "noxious weeds of CT and WA named it in 2015" in said


# Hazards by name


def test_a_hazard_is_named_and_not_only_called_a_caution():
    plant = named("Carex brevior")._replace(toxic=False, usda_toxicity="", spreads="no")
    for changes, words in (
        ({}, ""),
        ({"toxic": True}, "toxic"),
        ({"toxic": True, "usda_toxicity": "slight"}, "mildly toxic"),
        ({"usda_toxicity": "moderate"}, "moderately toxic"),
        ({"usda_toxicity": "severe", "thorny": True}, "severely toxic, thorny"),
        ({"spreads": "yes"}, "spreads hard"),
        ({"spreads": "some"}, ""),
    ):
        assert hazard_names(plant._replace(**changes)) == words
    for one in builtin_plants():
        assert bool(hazard_names(one)) == bool(hazards(one)) == one.warned


def test_the_likest_that_is_left_stands_in(subtests):
    """Where none is about as tall and flowers alike, each likeness decides over those below it."""
    gone = next(
        one for one in builtin_plants()
        if one.kind is PlantKind.FORB and one.bloom_months == (6, 7, 8) and not one.warned
    )._replace(spreads="no", regulated_in=(), native_caution="")  # fmt: skip
    like = gone._replace(scientific_name="Bb bb")
    far = gone.height_max_ft * 3
    for why, worse, more in [
        ("bloom", like._replace(bloom_months=(4,)), {}),
        ("height", like._replace(height_max_ft=far), {}),
        ("elsewhere", like, {"elsewhere": True}),
        ("kind", like._replace(kind=PlantKind.FERN), {}),
        ("fewer months", like._replace(bloom_months=(8, 9)), {}),
        ("spreads", like._replace(spreads="some"), {}),
    ]:
        with subtests.test(why=why):
            rival = worse._replace(scientific_name="Aa aa")
            bed = Bed(Zone.FLOOR, 90.0, 40, 20.0)
            bed.candidates = [Candidate(rival, "", 0.0, **more), Candidate(like, "", 9.0)]
            assert stand_in(gone, bed, [], PlantRegion.MW, near=False) == like
            assert stand_in(gone, bed, [like], PlantRegion.MW, near=False) == rival
            alike = None if why in ("bloom", "height") else rival
            assert stand_in(gone, bed, [like], PlantRegion.MW) == alike
