"""What the page costs while one types: nothing is laid out for a key, and once for a change."""

from __future__ import annotations

import pytest
from textual._compositor import Compositor
from textual.css.stylesheet import Stylesheet

from interview.asking.long_work import give_way
from interview.screens.page import FramedApp


@pytest.fixture
def counted(monkeypatch):
    """Return a counter of the calls of a method, from now on."""

    def count(cls: type, name: str) -> list[object]:
        calls, method = list[object](), getattr(cls, name)

        def noting(*args, **how):
            calls.append(args)
            return method(*args, **how)

        monkeypatch.setattr(cls, name, noting)
        return calls

    return count


async def test_a_typed_key_neither_lays_out_nor_styles_the_page(sit, counted) -> None:
    async with sit("new.yaml", size=(100, 30)) as person:
        await person.settles()
        layouts, styles = counted(Compositor, "reflow"), counted(Stylesheet, "update_nodes")
        await person.press("Z")
        assert "Z" in person.sees()
        assert not layouts and not styles


async def test_a_change_lays_the_page_out_once(sit, sample, counted) -> None:
    async with sit(sample("finished_us.yaml"), size=(100, 30)) as person:
        await person.goes_to("garden_name")
        await person.settles()
        layouts = counted(Compositor, "reflow")
        person.app.screen.query_one("#hint").say("A hint of another height.\n" * 3)
        await person.settles()
        assert person.sees().count("A hint of another height.") == 3
        assert len(layouts) == 1


async def test_the_sums_beside_the_keys_wait_until_a_key_is_seen(sit, monkeypatch) -> None:
    async with sit("new.yaml", size=(100, 30)) as person:
        await person.settles()
        goes_on, display = list[bool](), FramedApp._display

        def noting(app, *painted):
            goes_on.append(app._painted.is_set())
            display(app, *painted)

        monkeypatch.setattr(FramedApp, "_display", noting)
        await person.press("Z")
        assert goes_on and not goes_on[0]
        await person.settles()
        assert person.app._painted.is_set()


async def test_a_sum_goes_on_where_a_key_paints_nothing(sit) -> None:
    async with sit("new.yaml") as person:
        await person.settles()
        person.app.paint_first()
        with person.app.beside_keys():
            give_way()
        assert person.app._painted.is_set()
