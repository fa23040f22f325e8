"""Records are held against the data classes of the standard library, and counted."""

from __future__ import annotations

import dataclasses
import importlib
import pkgutil
import subprocess
import sys

import pytest

import interview
from interview.quantities import records

COMPILED = {"Answers"}
"""What an answer is must stand at run time too."""


def made(decorate):
    """Return four classes, made by ``decorate``: two records, one that changes, one by identity."""

    @decorate(frozen=True)
    class Bed:
        """A bed."""

        name: str
        size: float = 1.5
        plants: list[str] = dataclasses.field(default_factory=list, compare=False, repr=False)

        def __post_init__(self) -> None:
            if self.size < 0:
                raise ValueError("no such bed")

    @decorate(frozen=True)
    class Raised(Bed):
        """A bed over the ground."""

        height: int = dataclasses.field(default=1, kw_only=True)

    @decorate
    class Count:
        """A count."""

        so_far: int = 0

    @decorate(frozen=True, eq=False)
    class Place:
        """A place."""

        name: str

    return Bed, Raised, Count, Place


def told(classes):
    """Return all that a program sees of these classes."""
    Bed, Raised, Count, Place = classes
    ones = [Bed("a"), Bed("a", 1.5, ["x"]), Bed("b"), Raised("a"), Raised("a", height=1)]
    ones += [Raised("a", height=2), Count(), Count(1), Place("a"), Place("a"), 3]
    return {
        "equal": [[one == other for other in ones] for one in ones],
        "hash": [hash(one) == hash(other) for one in ones[:6] for other in ones[:6]],
        "by value": [hash(one) != object.__hash__(one) for one in ones[:6]],
        "identity": [hash(one) == object.__hash__(one) for one in ones[8:10]],
        "no hash": Count.__hash__ is None,
        "written": [repr(one).partition("<locals>.")[2] for one in ones[:8]],
        "replaced": repr(dataclasses.replace(ones[3], size=2.0)).partition("<locals>.")[2],
        "fields": [[one.name for one in dataclasses.fields(cls)] for cls in classes],
    }


def test_records_are_told_apart_kept_and_written_as_those_of_the_library() -> None:
    assert told(made(records.dataclass)) == told(made(dataclasses.dataclass))


@pytest.mark.parametrize("given", [(), ("a", 1.0, [], 2), ("a", -1.0)])
def test_what_a_record_cannot_be_made_of_is_refused(given) -> None:
    for decorate in (records.dataclass, dataclasses.dataclass):
        with pytest.raises((TypeError, ValueError)):
            made(decorate)[0](*given)


def test_a_method_of_its_own_is_left_to_a_record() -> None:
    @records.dataclass(frozen=True)
    class Named:
        name: str

        def __eq__(self, other: object) -> bool:
            return True

        def __repr__(self) -> str:
            return "own"

    assert Named("a") == 3
    assert repr(Named("a")) == "own"


def test_hardly_a_class_has_its_methods_compiled_at_each_start() -> None:
    """The library compiles six for a frozen one; with two hundred that can be felt."""
    for one in pkgutil.walk_packages(interview.__path__, "interview."):
        importlib.import_module(one.name)
    found = {
        cls.__name__
        for name, module in list(sys.modules.items())
        if name.startswith("interview.")
        for cls in vars(module).values()
        if isinstance(cls, type) and cls.__module__ == name and dataclasses.is_dataclass(cls)
        if "__repr__" in vars(cls) and vars(cls)["__repr__"].__module__ != records.__name__
    }
    assert found == COMPILED


def test_a_drawing_for_print_loads_nothing_of_the_network() -> None:
    script = "import sys, interview.drawing.vector; print(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert not {"urllib.request", "http.client", "email.message"} & set(done.stdout.split())
