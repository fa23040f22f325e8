"""The tests may be run in parts, one beside the other."""

from __future__ import annotations

import pytest


def test_the_parts_are_all_the_tests_and_each_is_in_one_alone(request) -> None:
    plugins = request.config.pluginmanager.get_plugins()
    (parted,) = {one.parted for one in plugins if hasattr(one, "parted")}
    items = list(range(11))
    assert parted(items, "1/1") == (items, [])
    for of in (2, 3, 12):
        parts = [parted(items, f"{number}/{of}") for number in range(1, of + 1)]
        assert sorted(one for mine, _ in parts for one in mine) == items
        assert all(sorted(mine + others) == items for mine, others in parts)
        assert max(len(mine) for mine, _ in parts) - min(len(mine) for mine, _ in parts) <= 1
    for wrong in ("0/2", "3/2"):
        with pytest.raises(pytest.UsageError):
            parted(items, wrong)
