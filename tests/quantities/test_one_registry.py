"""Threads that make the first quantities at the same time share one registry."""

from __future__ import annotations

import threading

import pint

from interview.quantities import units


def test_two_threads_that_ask_first_get_one_registry(monkeypatch):
    made: list[str] = []
    others: list[threading.Thread] = []
    asked = threading.Event()

    def ask() -> None:
        asked.set()
        found.append(units._registry())

    def registry(*_told, **_more):
        made.append(threading.current_thread().name)
        if len(made) == 1:
            others.append(threading.Thread(target=ask))
            others[0].start()
            asked.wait()
            # Nobody else can make one before this one is there.
            assert units._making.locked()
        return object()

    found: list[object] = []
    monkeypatch.setattr(units, "_made", [])
    monkeypatch.setattr(pint, "UnitRegistry", registry)
    first = units._registry()
    others[0].join()
    assert found == [first] and units._registry() is first
    assert len(made) == 1


def test_quantities_of_several_threads_can_be_summed(monkeypatch):
    monkeypatch.setattr(units, "_made", [])
    units._unit.cache_clear()
    units._factor.cache_clear()
    begun, found = threading.Barrier(4), list[units.Quantity]()

    def make() -> None:
        begun.wait()
        found.append(units.quantity(1.0, "ft"))

    threads = [threading.Thread(target=make) for _ in range(4)]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    try:
        assert units.magnitude(units.total(*found), "ft") == 4.0
    finally:
        units._unit.cache_clear()
        units._factor.cache_clear()
