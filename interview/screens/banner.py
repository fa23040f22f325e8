"""The picture over the start page, painted beside the keys once the page stands."""

from __future__ import annotations

from typing import Any

from textual import work
from textual.geometry import Size
from textual.strip import Strip

from interview.screens.palette import Palette
from interview.screens.strips import Strips
from interview.screens.themes import OF


class Banner(Strips):
    """A rain garden cut through; its rows are blank until they are painted."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._wanted: tuple[Size, str] | None = None

    def on_mount(self) -> None:
        self.app.theme_changed_signal.subscribe(self, lambda _: self._look())

    def on_resize(self) -> None:
        self.call_after_refresh(self._look)

    def _look(self) -> None:
        wanted = (self.size, self.app.theme)
        if self.size.width and self.size.height and wanted != self._wanted:
            self._wanted = wanted
            self._paint(wanted, None if self.app.no_color else OF[self.app.theme])

    @work(thread=True, group="opening", description="")
    def _paint(self, wanted: tuple[Size, str], palette: Palette | None) -> None:
        # What draws is loaded here: the page must not wait for it.
        from interview.drawing.front import front
        from interview.drawing.layout import LEAST_ROWS
        from interview.screens.picture import fitted

        (width, height), _ = wanted
        # In few rows the ground under the pond is left out.
        rows = max(height, LEAST_ROWS)
        strips = fitted(front(rows), width, rows, palette)[:height]
        self.app.call_later(self._painted, wanted, strips)

    def _painted(self, wanted: tuple[Size, str], strips: list[Strip]) -> None:
        if wanted == self._wanted:
            self.keep(strips)
