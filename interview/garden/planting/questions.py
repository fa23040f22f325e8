"""Stage F: what to plant, by how wet it stands."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from interview.asking.answers import Answers
from interview.asking.conditions import always_this, by_units
from interview.asking.kinds import Choice, Note, Several, Ticks, YesNo
from interview.asking.lands import US
from interview.asking.measures import Measure
from interview.asking.question import Question, Stage, Unanswered
from interview.garden.place import questions as start
from interview.garden.planting.hardiness import ZoneOfTheMap
from interview.garden.planting.regions import ListRegion, PlantRegion, State
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.garden.size.cover_questions import BERM_OUTSIDE, PLANT_SIZE


def home_place(answers: Answers) -> State | None:
    """Return the state the garden is in, or nothing where it is not known."""
    state = (start.us_state(answers) or "").upper()
    if not state:
        return None
    from interview.garden.planting.plant_list import builtin_places

    return next((place for place in builtin_places() if place.code == state), None)


def _home(answers: Answers) -> str | None:
    """Return the plant region of the state."""
    country = answers.get(start.COUNTRY)
    if country not in (None, "us"):
        return "outside"
    place = home_place(answers)
    if place is None:
        return None
    return place.plant_region.name.lower() if place.plant_region else "outside"


def _lists(answers: Answers) -> tuple[ListRegion, ...]:
    """Return the wetland list regions that the state lies in."""
    place = home_place(answers)
    return place.list_regions if place else ()


REGION = Question(
    key="plant_region",
    label="Plant region",
    text="Which plant region is the garden in?",
    kind=Choice(
        (
            *((one.name.lower(), one.value) for one in PlantRegion),
            ("outside", "none of these"),
        )
    ),
    why="The plan picks plants native there. Their wetland rating, how wet they like to stand, is "
    "the one given for that region.",
    find_out="The state sets it. Change it if you live near the edge of two regions.",
    wording=start.abroad(
        text="Which plant region of the US is the garden in, if any?",
        find_out="The list covers the US alone: none of these, unless you live at its border.",
    ),
    default=_home,
)


def list_words(answers: Answers) -> Mapping[str, Any]:
    """Say for each list that the state lies in whether anything confirms it."""
    place = home_place(answers)
    if place is None or not place.list_regions:
        return {}
    told = "; ".join(f"{one.value}: {place.list_standing(one)}" for one in place.list_regions)
    return {"more": f"The lists of {place.name}. {told}."}


LIST_REGION = Question(
    key="wetland_list_region",
    label="Wetland list region",
    text="Which of the wetland plant lists covers the garden?",
    kind=Choice(tuple((one.name.lower(), one.value) for one in ListRegion)),
    why="A plant's wetland rating, how wet it likes to stand, may differ between the lists.",
    find_out="Choose by the lie of the land: coast and plain, hills, or mountains.",
    asks=lambda a: (a.get(REGION) or _home(a)) not in (None, "outside") and len(_lists(a)) != 1,
    when="the garden has a plant region, and its state is unknown or lies in several lists",
    default=lambda a: _lists(a)[0].name.lower() if _lists(a) else None,
    wording=list_words,
)


SUN_WORDS = {
    "full": "sun for 6 hours or more",
    "part": "sun for 3 to 6 hours",
    "shade": "less than 3 hours",
}


def _sun(answers: Answers) -> str | None:
    return sun_for(ground.chosen_spot(answers)[ground.SUN_HOURS])


def sun_for(hours: float) -> str:
    """Return the sun that a bed has with so many hours of it a day, a key of ``SUN_WORDS``."""
    return "full" if hours >= 6 else "part" if hours >= 3 else "shade"


def _other_sun(sun: str, answers: Answers) -> str | None:
    """Doubt a bed that is sunnier or shadier than the spot it lies in."""
    try:
        given = ground.chosen_spot(answers).get(ground.SUN_HOURS)
    except Unanswered:
        return None
    usual = None if given is None else _sun(answers)
    if usual in (None, sun):
        return None
    return f"For the spot you gave {SUN_WORDS[str(usual)]}."


def unlisted(answers: Answers) -> bool:
    """Tell whether the packaged list has no plants for the garden's place."""
    return (answers.get(REGION) or _home(answers)) == "outside"


_UNLISTED = {
    "text": "Do you have a plant file for your place? Type its name, or none.",
    "why": "The packaged list has no plants for your place: it covers regions of the US only. With "
    "a file of your own the plan names plants; without one it tells what to look for in them.",
}
OWN_PLANTS = Question(
    key="own_plants",
    label="Your own plant file",
    text="Do you have a plant file of your own to choose from too? Type its name, or none.",
    kind=Note(400, "my_plants.csv, or none"),
    why="A club or a teacher may know plants for your place that the packaged list lacks.",
    find_out="Type the path of a CSV file, looked for beside your answers file; or none. The "
    "README tells its columns.",
    default=always_this("none"),
    wording=lambda a: _UNLISTED if unlisted(a) else {},
    more="Its plants are added to the packaged list. A line for a species of that list replaces "
    "the packaged line. It is read again each time the plan is made, and never changed.",
)


def usual_zone(answers: Answers) -> str | None:
    """Return the hardiness zone of most places in the garden's state; nothing elsewhere."""
    place = home_place(answers) if answers.country == US else None
    return place.zone_common or None if place else None


def _zone_words(answers: Answers) -> Mapping[str, Any]:
    """Tell the zones of the state, or that no map of another country is held."""
    if answers.country != US:
        return {
            "find_out": "Ask a nursery for the USDA zone of your place, such as 8b; no map of your "
            "country is held here. Skip it if there is none."
        }
    place = home_place(answers)
    if place is None:
        return {}
    zones = f"zones {place.zone_coldest} to {place.zone_warmest}"
    said = f"{place.name} has {zones}."
    if place.zone_common:
        said = (
            f"The ZIP codes of {place.name} lie in {zones}, the most of them in "
            f"{place.zone_common}; high ground may be colder."
        )
    return {
        "find_out": f"{said} Look at a USDA zone map, or ask a nursery, and write it as the "
        "map has it.",
        "more": f"{HARDINESS.more} Zones of the state: {place.zone_source}.",
    }


HARDINESS = Question(
    key="hardiness_zone",
    label="Hardiness zone",
    text="Which plant hardiness zone are you in, if you know it?",
    kind=ZoneOfTheMap(),
    why="Plants that your winters would kill are left out.",
    find_out="Look at a USDA zone map, or ask a nursery. Write it as the map has it, such as 5b "
    "or 6.",
    wording=_zone_words,
    more="The warmest zones in the packaged plant list are from memory, and so are some of the "
    "coldest. Without a zone no plant is left out for its winters; natives of your region stand "
    "most of them.",
)

SUN = Question(
    key="sun",
    label="Sun at the bed",
    text="How sunny is the bed?",
    kind=Choice(tuple(SUN_WORDS.items())),
    why="The plan picks plants by it.",
    find_out="It follows the hours of sun you gave for the spot.",
    doubt=_other_sun,
    default=_sun,
)

TALLEST_FLOOR = Question(
    key="tallest_floor",
    label="Tallest plant in the middle",
    text="How tall may plants grow in the middle of the garden?",
    kind=Measure("length", "ft", "m", (0.5, "ft"), (30, "ft")),
    why="Tall plants hide windows and views.",
    find_out="Hold up the tape and look.",
    default=by_units("5 ft", "1.5 m"),
)

TALLEST_RIM = Question(
    key="tallest_rim",
    label="Tallest plant on the rim",
    text="How tall may plants grow on the rim?",
    kind=Measure("length", "ft", "m", (0.5, "ft"), (30, "ft")),
    why="Low plants on the rim let you see in.",
    find_out="Knee to waist high suits most places.",
    default=by_units("3 ft", "0.9 m"),
)

NATIVES_ONLY = Question(
    key="natives_only",
    label="Natives only",
    text="Should all plants be native to the region?",
    kind=YesNo(),
    why="Natives feed local insects and birds and need less care.",
    find_out="Yes is usual. Local lists of invasive plants decide in any case.",
    more="The plant list knows what is native by region. For some plants it tells as well, from "
    "memory, in which states of the region they do not grow wild; those are left out there. With "
    "no, plants from elsewhere may come in, but only after the natives.",
    default=always_this("yes"),
)

KEEP_OUT = Question(
    key="keep_out",
    label="Plants to keep out",
    text="Which sorts of plants do you want to keep out?",
    kind=Ticks(
        (
            ("toxic", "poisonous or irritating"),
            ("thorny", "thorny or sharp"),
            ("aggressive", "strong spreaders"),
            ("large", "over 8 ft (2.4 m) tall"),
        )
    ),
    why="Children and pets chew plants. A small garden is soon overrun by strong spreaders.",
    find_out="Answer none to keep every choice open.",
    more="What the plant list marks as a strong spreader is planted only where you ask for it by "
    "name, ticked or not.",
    default=lambda a: "toxic, aggressive, large" if a[site.CHILDREN] else "aggressive, large",
    caution="Some good rain garden plants are poisonous when eaten. The list marks those known.",
)

BLOOM = Question(
    key="bloom",
    label="Seasons of bloom",
    text="In which seasons do you want flowers?",
    kind=Ticks((("spring", "spring"), ("summer", "summer"), ("autumn", "autumn"))),
    why="Bloom in all three feeds bees from spring to autumn.",
    find_out="All three unless you have other plans.",
    default=always_this("spring, summer, autumn"),
)

ROAD_SALT = Question(
    key="road_salt",
    label="Road salt",
    text="Does water with road salt come to the garden?",
    kind=YesNo(),
    why="Salt kills many plants.",
    find_out="Think of the drive and the street in winter.",
    default=always_this("no"),
)

PREFER = Question(
    key="prefer_plants",
    label="Plants that come first",
    text="Where several plants suit the bed equally well, which should come first?",
    kind=Ticks(
        (
            ("insects", "those for bees, butterflies and other insects"),
            ("birds", "those for birds"),
            ("trade", "those that are widely sold"),
        )
    ),
    why="Often many plants suit a bed. Then your wish decides.",
    find_out="Leave it at none unless one of these matters to you.",
    default=always_this("none"),
    more="It goes by the lists behind the plant list. They do not tell of every plant: one that "
    "none of them names comes later, though it may do as well.",
)

FAVOURITES = Question(
    key="favourites",
    label="Plants you want",
    text="Are there plants you want to have in it?",
    kind=Several(Note(60, "swamp milkweed"), 0, 20),
    why="Each is placed where it can grow; if it cannot, the plan says why.",
    find_out="Write one per line, by common or scientific name; or none.",
    default=always_this("none"),
)

SWAP_OUT = Question(
    key="swap_out",
    label="Plants to swap",
    text="Would you swap any of the proposed plants for others?",
    kind=Several(Note(120, "swamp verbena for swamp milkweed"), 0, 30),
    why="Only the plants you name are changed. The rest of the planting stays.",
    find_out="Look at the plan. Write the plant to leave out, or “this for that”, one per line; "
    "or none.",
    default=always_this("none"),
    more="For example “swamp verbena” leaves it out and lets the program choose what takes its "
    "place. “Swamp verbena for swamp milkweed” names what takes its place.",
)

STAGE = Stage(
    "plants",
    "F",
    "Plants",
    (
        REGION,
        LIST_REGION,
        OWN_PLANTS,
        HARDINESS,
        SUN,
        TALLEST_FLOOR,
        TALLEST_RIM,
        NATIVES_ONLY,
        KEEP_OUT,
        BLOOM,
        ROAD_SALT,
        PREFER,
        FAVOURITES,
        PLANT_SIZE,
        BERM_OUTSIDE,
        SWAP_OUT,
    ),
)


def own_plants_path(answers: Answers) -> str:
    """Return the path of the person's own plant file, or nothing."""
    path = answers[OWN_PLANTS]
    return "" if path.casefold() in ("none", "no") else path


def plant_region(answers: Answers) -> PlantRegion | None:
    """Return the plant region chosen, or nothing outside the regions of the list."""
    region = answers[REGION]
    return None if region == "outside" else PlantRegion[region.upper()]


def list_region(answers: Answers) -> ListRegion | None:
    """Return the wetland list region, or nothing outside the regions of the list."""
    region = plant_region(answers)
    if region is None:
        return None
    lists = _lists(answers)
    if len(lists) == 1:
        return lists[0]
    return ListRegion[answers[LIST_REGION].upper()]
