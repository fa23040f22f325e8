"""The kind of answer that lists prices, one short line each, such as ``mulch 38 per yd3``."""

from __future__ import annotations

import re
from collections.abc import Sequence

from interview import reading
from interview.asking.answers import Answers
from interview.asking.kinds import Simple, as_typed
from interview.asking.question import Taken
from interview.quantities.records import record
from interview.quantities.shown import in_metric
from interview.quantities.units import US, plain_number, unit_name
from interview.reading import Refused, shown

BAG, EACH = "bag", "each"
BY_VOLUME, BY_LENGTH, BY_PLANT = ("mulch", "compost", "stone"), ("edging", "pipe"), ("plants",)
BERM_SOIL = "berm soil"
BY_PIECE = ("elbow", "strap", "splash stone", "adapter", "bend", "wye", "guard", "diverter", "cap")
BY_TON, BY_SCALE = ("stone",), ("seed", "grass seed")
"""What a yard may sell by the ton, and what is weighed on a small scale."""
THINGS = (*BY_VOLUME, BERM_SOIL, *BY_LENGTH, *BY_PLANT, *BY_SCALE, *BY_PIECE)
HIGHEST = 100_000.0
"""A price above this is a slip of the keys."""
EXAMPLE = "mulch 38 per yd3"

_THING = (
    r"(?P<thing>berm soil|grass seed|splash (?:stone|block)s?|[^\W\d_]+)\s*"
    r"[:=]?\s*(?P<sign>[a-z]{0,3}[$€£¥])?\s*(?P<rest>.*)"
)
_PER = r"(?:per\b|/|an?\b|for (?:an?|one|each)\b)\s*(?P<unit>.*)"
_ONE = {
    "plant": "plants",
    "stones": "stone",
    "edgings": "edging",
    "pipes": "pipe",
    "soil": BERM_SOIL,
    "splash block": "splash stone",
    "splash blocks": "splash stone",
    "seeds": "seed",
    **{f"{piece}s": piece for piece in BY_PIECE},
}
_TONS = {
    **dict.fromkeys(("ton", "tons", "short ton", "us ton"), "ton"),
    **dict.fromkeys(("tonne", "tonnes", "metric ton", "t"), "t"),
}
_SCALE = {
    **dict.fromkeys(("oz", "ounce", "ounces"), "oz"),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds"), "lb"),
    **dict.fromkeys(("g", "gram", "grams", "gramme"), "g"),
    **dict.fromkeys(("kg", "kilo", "kilogram"), "kg"),
}


@record
class Price:
    """What one thing costs."""

    thing: str
    amount: float
    unit: str
    """``bag``, ``each``, or one of our unit words such as ``yd**3``, ``ft``, ``t`` or ``oz``."""
    sign: str = ""
    """The money sign, where one was written."""

    @property
    def words(self) -> str:
        """The price as it was understood."""
        per = "each" if self.unit == EACH else f"for one {unit_name(self.unit)}"
        return f"{self.thing} {self.sign}{plain_number(self.amount)} {per}"


def read_price(text: str) -> Price:
    """Return the price written in ``text``; raises ``Refused`` with one sentence."""
    clean = reading.plain(text).casefold()
    if len(clean) > 80:
        raise Refused(f"That is too long for one price. Write it like {EXAMPLE}.")
    match = re.fullmatch(_THING, clean)
    thing = _ONE.get(match["thing"], match["thing"]) if match else ""
    if match is None or thing not in THINGS:
        raise Refused(f"Begin with {', '.join(THINGS)}; such as {EXAMPLE}.")
    found = re.match(r"(?P<number>[\d.,]*\d)\s*(?P<how>.*)", match["rest"])
    if found is None:
        raise Refused(f"Write the price in digits after {thing}, such as {EXAMPLE}.")
    amount = float(reading.read_number(found["number"], example="38"))
    if amount > HIGHEST:
        raise Refused(f"A price of {plain_number(amount)} is too high. Check it.")
    return Price(thing, amount, _unit(thing, found["how"]), (match["sign"] or "").upper())


def _unit(thing: str, how: str) -> str:
    each = how in (EACH, "") or _per(how) in ("plant", "one", "piece", EACH)
    if thing in (*BY_PLANT, *BY_PIECE):
        if each:
            return EACH
        many = thing if thing in BY_PLANT else f"{thing}s"
        raise Refused(f"{many.capitalize()} are priced each. Write it like {thing} 4 each.")
    if thing == "pipe" and how and each:
        return EACH
    unit = _per(how)
    by_length, bagged = thing in BY_LENGTH, thing in BY_VOLUME
    wanted = f"{thing} 2 per ft" if by_length else f"{thing} 38 per yd3"
    if bagged:
        wanted += f" or {thing} 4 per bag"
    if thing in BY_TON:
        wanted += f" or {thing} 45 per ton"
    if thing in BY_SCALE:
        wanted = f"{thing} 8 per oz"
    if not unit:
        raise Refused(f"Write what the price is for, such as {wanted}.")
    if bagged and unit in (BAG, "bags", "sack"):
        return BAG
    weighed = _TONS.get(unit) if thing in BY_TON else None
    if thing in BY_SCALE:
        weighed = _SCALE.get(unit)
    if weighed is not None:
        return weighed
    if thing in BY_SCALE:
        raise Refused(f"{shown(unit)} does not fit {thing}. Write it like {wanted}.")
    try:
        read = reading.read_length if by_length else reading.read_volume
        return _measured(read(f"1 {unit}", None))
    except Refused:
        raise Refused(f"{shown(unit)} does not fit {thing}. Write it like {wanted}.") from None


def _measured(amount: object) -> str:
    if not isinstance(amount, reading.Amount) or amount.number != 1:
        raise Refused("Write one unit.")
    return amount.unit


def _per(how: str) -> str:
    match = re.fullmatch(_PER, how)
    return match["unit"].strip() if match else ""


class PriceLine(Simple[Price]):
    """One price."""

    name = "price"

    def take(self, text: str, answers: Answers) -> Taken[Price]:
        return as_typed(text, read_price(text))

    def echo(self, value: Price, answers: Answers) -> str:
        return value.words

    def hint(self, units: str) -> str:
        said = f"such as {EXAMPLE}, compost 6 per bag, pipe 2 per ft, elbow 7 each"
        return said if units == US else in_metric(said)


def prices_of(prices: Sequence[Price]) -> dict[str, Price]:
    """Return the prices by thing; raises ``Refused`` for two of one thing or two kinds of money."""
    found: dict[str, Price] = {}
    for price in prices:
        if price.thing in found:
            raise Refused(f"There are two prices of {price.thing}. Keep one of them.")
        found[price.thing] = price
    if len({price.sign for price in found.values() if price.sign}) > 1:
        raise Refused("The prices are in two kinds of money. Write them all in one.")
    return found


def wrong_prices(prices: tuple[Price, ...], _answers: Answers) -> str | None:
    """Return the sentence that refuses prices which do not go together, or nothing."""
    try:
        prices_of(prices)
    except Refused as refused:
        return str(refused)
    return None
