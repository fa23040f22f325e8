"""The figures of what is moved and bought, and the working behind each."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.figure import AREA, SIDE, VOLUME, Figure, Value
from interview.garden.earth.fittings import BY_WISH, DISCONNECTING, PIPED
from interview.garden.earth.materials import STONE_LAYER, STONE_LB_FT3, Item, stone_uses
from interview.garden.earth.results import OVERBUILT, EarthResults
from interview.garden.form.lie import COMPACTION
from interview.quantities.evidence import ARITHMETIC, OURS, PRACTICE, Provenance, Source
from interview.quantities.guards import times
from interview.quantities.shown import HIGH, Rounding, length_words
from interview.quantities.units import US

YARD = ("yd**3", "m**3")
NONE = "none"
HEAPED = Rounding(3)
"""Loose soil, told so finely that the barrows come out of the number that is told."""
BULKED = Source(
    "sand 1.15 and dense clay 1.30, construction estimating text, examples 9-3 and 9-2, title not "
    "shown in the copy; loam 1.25 and clay 1.43, US Army FM 5-434; clay 1.35 to 1.40 "
    "chosen between",
    Provenance.MEMORY,
)


def _of(name: str, get: Callable[[Item], Value | None]) -> Callable[[EarthResults], Value]:
    """Return what ``get`` finds of one thing on the shopping list; none where it is not there."""

    def found(earth: EarthResults) -> Value:
        listed = (*earth.shopping, *earth.by_wish)
        value = next((get(item) for item in listed if item.name == name), None)
        return NONE if value is None else value

    return found


def _stone(use: str) -> Callable[[EarthResults], Value]:
    def found(earth: EarthResults) -> Value:
        return stone_uses(earth.bed_sizes, earth.place.metric).get(use, NONE)

    return found


def _spare(*, thin: bool, bare: bool) -> Callable[[EarthResults], Value]:
    def found(earth: EarthResults) -> Value:
        lie = earth.laid(thin=thin, bare=bare)
        return "no less" if lie is None else times(earth.spare_of(lie), earth.size.bed_count)

    return found


def _heap(
    name: str, formula: str, *inputs: str, source: Source
) -> tuple[Figure[EarthResults], ...]:
    """Return the volume of a thing, its order from a yard, and its bags where it is bagged."""
    key, label = name.replace(" ", "_"), name.capitalize()
    made = [
        Figure(f"{key}_volume", label, _of(name, lambda item: item.amount), *VOLUME, formula,
               inputs, source, HIGH),
        Figure(f"{key}_bought", f"{label} to order loose", _of(name, lambda item: item.buy), *YARD,
               "volume, up to 1/2 yd³ (0.1 m³)", (f"{key}_volume",), PRACTICE, HIGH),
    ]  # fmt: skip
    if name != "berm soil":
        made.append(
            Figure(f"{key}_bags", f"{label} in bags instead", _of(name, lambda item: item.bags),
                   formula="volume / what a bag holds, up: mulch 2 ft³ (50 L), compost 1 ft³ "
                   "(50 L), stone 0.5 ft³ (15 L)", inputs=(f"{key}_volume",), source=PRACTICE)
        )  # fmt: skip
    return tuple(made)


def _pieces(
    name: str, label: str, formula: str, source: Source, *inputs: str
) -> Figure[EarthResults]:
    key = name.replace(" ", "_")
    return Figure(f"{key}_pieces", label, _of(name, lambda item: item.pieces), formula=formula,
                  inputs=inputs or ("spouts_here", "water_by"), source=source)  # fmt: skip


SOIL: tuple[Figure[EarthResults], ...] = (
    Figure(
        "berm_bank_soil",
        "Undisturbed soil that the berms take",
        lambda p: times(p.berm_bank, p.size.bed_count),
        *VOLUME,
        "berm / 0.9 x beds",
        ("berm_soil", "beds"),
        COMPACTION.source,
    ),
    Figure(
        "berm_built",
        "Berms as built, a tenth high",
        lambda p: p.berm_built,
        *VOLUME,
        "1.1 x berm x beds: tamped by hand the soil lies about as it lay, and settles to 0.9",
        ("berm_soil", "beds"),
        OVERBUILT.source,
    ),
    Figure(
        "channel_soil",
        "Soil from the channel of stone, as it lies",
        lambda p: p.channel_soil,
        *VOLUME,
        "the volume of its stone",
        ("stone_channel",),
        ARITHMETIC,
    ),
    Figure(
        "soil_carried_off",
        "To carry elsewhere, loose",
        lambda p: p.carried_off,
        *VOLUME,
        "(soil left over + channel) x 1.15 for sand, 1.25 for loam, 1.40 for clay",
        ("soil_spare", "channel_soil", "soil_dug"),
        BULKED,
        HEAPED,
    ),
    Figure(
        "barrows_off",
        "Wheelbarrow loads of it",
        lambda p: p.loads_off,
        formula="loose volume / barrow, up",
        inputs=("soil_carried_off", "barrow"),
    ),
    Figure(
        "barrows_in",
        "Wheelbarrow loads brought in",
        lambda p: p.loads_of("mulch", "compost", "stone", "berm soil"),
        formula="volume / barrow, up, of mulch, of compost, of stone, of soil for the berm",
        inputs=("mulch_volume", "compost_volume", "stone_volume", "berm_soil_volume", "barrow"),
    ),
    Figure(
        "soil_spare_bare",
        "Left over without compost",
        _spare(thin=False, bare=True),
        *VOLUME,
        "the same with no room dug for compost",
        ("soil_spare", "compost_depth"),
        COMPACTION.source,
    ),
    Figure(
        "soil_spare_thin",
        "Left over with 2 in (50 mm) of mulch",
        _spare(thin=True, bare=False),
        *VOLUME,
        "the same with room dug for 2 in (50 mm) of mulch",
        ("soil_spare", "mulch_depth"),
        COMPACTION.source,
    ),
    Figure(
        "soil_spare_thin_bare",
        "Left over with both",
        _spare(thin=True, bare=True),
        *VOLUME,
        "the same with 2 in (50 mm) of mulch and no compost",
        ("soil_spare", "mulch_depth", "compost_depth"),
        COMPACTION.source,
    ),
    Figure(
        "bank_elsewhere",
        "Length of a low bank that takes it all",
        lambda p: p.bank_elsewhere,
        *SIDE,
        "0.9 x (soil left over + channel) / (h (12 in (300 mm) + 3 h)), h = 6 in (150 mm)",
        ("soil_spare", "channel_soil"),
        OURS,
        words=length_words,
    ),
    Figure(
        "sod_lifted",
        "Sod to lift",
        lambda p: p.sod_lifted,
        *AREA,
        "area of all that is dug or built x beds",
        ("footprint_area", "beds"),
        ARITHMETIC,
        HIGH,
    ),
    Figure(
        "sod_laid",
        "Sod of it to lay again",
        lambda p: p.sod_laid,
        *AREA,
        "(area of all that is dug or built - area inside the crest and the cut edge, where sod is "
        "laid back on the berm, + area inside - area under mulch, of a lean garden that is not "
        "sown) x beds",
        (
            "footprint_area",
            "inside_area",
            "mulched_area",
            "berm_outside",
            "how_large",
            "plant_size",
            "beds",
        ),
        ARITHMETIC,
    ),
)

FIGURES: tuple[Figure[EarthResults], ...] = (
    *SOIL,
    Figure(
        "mulched_area",
        "Area under mulch",
        lambda p: p.mulched,
        *AREA,
        "area inside the crest and the cut edge, of one bed; the full pond of a lean garden, or "
        "where seed is sown on the rim",
        ("inside_area", "how_large", "plant_size"),
        OURS,
    ),
    *_heap("mulch", "area under mulch x mulch depth x beds", "mulched_area", "mulch_depth", "beds",
           source=ARITHMETIC),
    *_heap("compost", "floor area x compost depth x beds", "floor_area", "compost_depth", "beds",
           source=ARITHMETIC),
    Figure(
        "stone_inlet",
        "Stone where the water comes in",
        _stone("inlet"),
        *VOLUME,
        "3 x 2 ft (0.9 x 0.6 m) x 6 in (150 mm) x beds",
        ("beds",),
        STONE_LAYER[US].source,
        HIGH,
    ),
    Figure(
        "stone_apron",
        "Stone below the notch",
        _stone("apron"),
        *VOLUME,
        "notch width x (top + 3 x crest to toe + 1 ft (0.3 m)) x 6 in (150 mm) x beds; a lip in "
        "the lawn has none",
        ("notch_width", "crest_to_toe", "berm_top", "beds"),
        STONE_LAYER[US].source,
        HIGH,
    ),
    Figure(
        "stone_channel",
        "Stone of the channel from the downspout",
        _stone("channel"),
        *VOLUME,
        "way from the downspout x 18 in (450 mm) x 6 in (150 mm) x downspouts, at least one, for "
        "all the beds together; also where a pipe is wanted and cannot be",
        ("spout_distance", "water_by", "spouts_here"),
        STONE_LAYER[US].source,
        HIGH,
    ),
    *_heap("stone", "inlet + apron + channel", "stone_inlet", "stone_apron", "stone_channel",
           source=PRACTICE),
    Figure(
        "stone_weight",
        "Weight of the stone, about",
        _of("stone", lambda item: item.weighs),
        "lb",
        "kg",
        "stone x its loose weight, from its source",
        ("stone_volume",),
        STONE_LB_FT3.source,
        HIGH,
    ),
    *_heap("berm soil", "soil that the berms take x 1.40, loose; none where the soil dug makes "
           "them", "berm_bank_soil", "soil_dug", source=BULKED),
    Figure(
        "spouts_here",
        "Downspouts to lead here",
        lambda p: p.spouts_here,
        formula="sum over the gutters of the downspouts that come here",
        inputs=("outlets_here",),
    ),
    _pieces("elbow", "Elbows under the downspouts", "1 a downspout, but for a pipe",
            DISCONNECTING),
    _pieces("strap", "Straps above the cut", "1 a downspout", DISCONNECTING),
    _pieces("splash stone", "Splash stones", "1 a downspout, but for a pipe", DISCONNECTING),
    _pieces("pipe", "Pieces of pipe", "way from the downspout / 10 ft (3 m), up", PIPED,
            "spout_distance", "pipe_width"),
    _pieces("adapter", "Adapters from downspout to pipe", "1 a downspout, for a pipe", PIPED),
    _pieces("bend", "Bends of the pipe", "1 a downspout, for a pipe", PIPED),
    _pieces("wye", "Wyes that join pipes", "1 for each downspout after the first, for a pipe",
            PIPED),
    _pieces("guard", "Guards at the outlet", "1 for a pipe", PIPED),
    _pieces("diverter", "Winter diverters, by wish", "1 a downspout, by wish", BY_WISH),
    _pieces("cap", "Caps on old drains, by wish", "1 a downspout, by wish", DISCONNECTING),
)  # fmt: skip
