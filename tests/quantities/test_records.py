"""Records are as the frozen data classes of the standard library, which are the reference."""

from __future__ import annotations

import dataclasses
import inspect

import pytest

from interview.quantities.records import record


def made_by(decorate, lone):
    @decorate
    class Plot:
        """What is made by both ways."""

        name: str
        wide: float = 2.0
        beds: list[str] = dataclasses.field(default_factory=list)
        seen: int = dataclasses.field(default=0, compare=False, repr=False)
        note: str = dataclasses.field(default="", kw_only=True)

        def __post_init__(self) -> None:
            if self.wide < 0:
                raise ValueError("a width below nought")

    @decorate
    class Sloped(Plot):
        """One that inherits."""

        fall: float = 0.5

    @lone
    class Lone:
        """One that equals itself alone."""

        name: str

    return Plot, Sloped, Lone


OURS = made_by(record, record(eq=False))
THEIRS = made_by(dataclasses.dataclass(frozen=True), dataclasses.dataclass(frozen=True, eq=False))
WAYS = [
    ((), {}),
    (("a",), {}),
    (("a", 3.0, ["b"], 4), {}),
    (("a",), {"wide": 5.0, "note": "n"}),
    ((), {"name": "a", "beds": ["x"]}),
    (("a", 1.0, [], 2, "n"), {}),
    (("a",), {"name": "b"}),
    (("a",), {"deep": 1}),
    ((), {"deep": 1}),
    (("a", -1.0), {}),
    (("a", 1.0, [], 2, "n", 0.2), {}),
    (("a", 1.0, [], 2, 0.2), {"note": "n"}),
]


def outcome(cls, given, named):
    try:
        one = cls(*given, **named)
    except (TypeError, ValueError) as trouble:
        return type(trouble)
    return {part.name: getattr(one, part.name) for part in dataclasses.fields(one)}


@pytest.mark.parametrize("place", [0, 1], ids=["plain", "inherited"])
@pytest.mark.parametrize("given, named", WAYS)
def test_a_record_takes_and_refuses_what_a_frozen_data_class_does(place, given, named):
    assert outcome(OURS[place], given, named) == outcome(THEIRS[place], given, named)


def test_records_are_told_and_compared_as_frozen_data_classes_are():
    for plot, sloped, lone in (OURS, THEIRS):
        one = plot("a", 3.0, [], 1)
        assert one == plot("a", 3.0, [], 2) != plot("a", 4.0)
        assert one != sloped("a", 3.0) and one != "a"
        assert repr(one).endswith("Plot(name='a', wide=3.0, beds=[], note='')")
        assert hash(plot("a", 1.0, ())) == hash(plot("a", 1.0, (), 9))
        assert lone("a") != lone("a") and len({lone("a"), lone("a")}) == 2
        assert plot("a").beds is not plot("a").beds


def test_no_field_of_a_record_can_be_set_again_and_a_changed_copy_can_be_made():
    one = OURS[1]("a", note="n")
    with pytest.raises(dataclasses.FrozenInstanceError):
        one.name = "b"
    with pytest.raises(dataclasses.FrozenInstanceError):
        del one.name
    assert dataclasses.replace(one, fall=1.0) == OURS[1]("a", fall=1.0, note="n")
    with pytest.raises(ValueError, match="below"):
        dataclasses.replace(one, wide=-1.0)


@pytest.mark.parametrize("decorate", [record(frozen=False), dataclasses.dataclass])
def test_a_record_that_is_not_frozen_can_be_set_and_is_no_key(decorate):
    @decorate
    class Bed:
        """A bed that fills."""

        wide: float
        filled: list[str] = dataclasses.field(default_factory=list)

    one, other = Bed(1.0), Bed(2.0)
    other.wide = 1.0
    assert one == other
    del other.wide
    with pytest.raises(TypeError):
        hash(one)


def test_no_signature_is_written_out_for_a_record_without_a_line_of_its_own(monkeypatch):
    looked = []
    monkeypatch.setattr(inspect, "signature", lambda *of: looked.append(of))

    @record
    class Silent:
        name: str

    assert Silent("a").name == "a" and not looked
