"""The further pages that the question page and the plan lead to, loaded when first opened."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from textual.screen import Screen

from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing


class FurtherPages(Screen[Any]):
    """Opens the drawings, the trying out, the plants and the soak test."""

    _session: Session
    _path: Path

    def action_draw(self) -> None:
        """Show the garden drawn to scale."""
        from interview.screens.garden import GardenScreen

        self.app.push_screen(GardenScreen(self._session))

    @property
    def _tests(self) -> list[Step]:
        """The readings of every hole whose timed test has begun."""
        from interview.screens.soak_watch import holes

        answers = self._session.answers
        return [one for one in holes(self._session) if one.view(answers).get(timing.TEST_START)]

    def action_soak(self) -> None:
        """Show the soak test that was begun last, with its readings and its plot."""
        from interview.screens.soak_timer import SoakScreen

        if tests := self._tests:
            self.app.push_screen(SoakScreen(self._session, tests[-1]))

    def action_try_out(self) -> None:
        """Try other sizes out."""
        from interview.screens.try_out import TryOutScreen

        self.app.push_screen(TryOutScreen(self._session))

    def action_plants(self) -> None:
        """Show the plants."""
        from interview.screens.plants_page import PlantsScreen

        self.app.push_screen(PlantsScreen(self._session))
