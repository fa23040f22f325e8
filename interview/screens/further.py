"""The further pages that the question page and the plan lead to, loaded when first opened."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from textual.screen import Screen

from interview.garden.session import Session


class FurtherPages(Screen[Any]):
    """Opens the drawings, the trying out and the plants."""

    _session: Session
    _path: Path

    def action_draw(self) -> None:
        """Show the garden drawn to scale."""
        from interview.screens.garden import GardenScreen

        self.app.push_screen(GardenScreen(self._session))

    def action_ways(self) -> None:
        """Show the ways out where the room is too small."""
        from interview.screens.garden import WAYS, GardenScreen

        self.app.push_screen(GardenScreen(self._session, WAYS))

    def action_try_out(self) -> None:
        """Try other sizes out."""
        from interview.screens.try_out import TryOutScreen

        self.app.push_screen(TryOutScreen(self._session))

    def action_plants(self) -> None:
        """Show the plants."""
        from interview.screens.plants_page import PlantsScreen

        self.app.push_screen(PlantsScreen(self._session))
