"""The rows of the plants page: zones on the ground of their drawing, kinds with their months."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from textual.content import Content

from interview.drawing.paint import Tone
from interview.drawing.scene import Material
from interview.drawing.words import column_width, cut_to
from interview.garden.planting.choose import Pick, ZonePlan
from interview.garden.planting.laid_out import letters, mark_of
from interview.garden.planting.words import hazard_names, short_name
from interview.garden.size.zones import Zone
from interview.screens.materials import color_of
from interview.screens.palette import Palette

USUAL_MONTHS = tuple(range(3, 12))
"""March to November; a planting that blooms in other months is shown with the whole year."""
INITIALS = "JFMAMJJASOND"
GROUNDS = {Zone.FLOOR: Material.FLOOR, Zone.SIDE: Material.SIDE, Zone.RIM: Material.RIM}
IN_BLOOM, NOT = "▆", "·"
BROAD = 2
"""Columns of a month where there is room; else it has one."""
_LEAD = len("aa ✺ 100 × ")


class PlantRows(NamedTuple):
    """The rows of one planting in the room there is."""

    zones: Sequence[ZonePlan]
    columns: int
    palette: Palette
    broad: bool = True
    """Whether the window is wide enough for broad months."""

    @property
    def months(self) -> tuple[int, ...]:
        """The months shown."""
        bloom = {month for one in self._picks for month in one.plant.bloom_months}
        return USUAL_MONTHS if bloom <= set(USUAL_MONTHS) else tuple(range(1, 13))

    @property
    def _picks(self) -> list[Pick]:
        return [pick for zone in self.zones for pick in zone.picks]

    @property
    def month_columns(self) -> int:
        """The columns of a month: so many that no row of words need be folded for them."""
        room = max((self._words(one) for one in self._picks), default=0)
        fits = room + 1 + BROAD * len(self.months) <= self.columns
        return BROAD if self.broad and fits else 1

    def _words(self, pick: Pick) -> int:
        named = hazard_names(pick.plant)
        return _LEAD + column_width(short_name(pick.plant)) + (2 + len(named) if named else 0)

    def head(self) -> Content:
        """Return the initials of the months, over their columns; nothing where no kind is named."""
        if not self._picks:
            return Content()
        wide = self.month_columns
        row = "".join(INITIALS[month - 1].ljust(wide) for month in self.months)
        return Content.styled(row.rjust(self.columns + 1), "$muted")

    def zone(self, zone: ZonePlan, names: Sequence[str]) -> Content:
        """Return the head of a zone: the longest of ``names`` that has room, on its ground."""
        name = next((one for one in names if len(one) < self.columns), names[-1])
        ground = color_of(Tone(GROUNDS[zone.zone], 0.0), self.palette)
        return Content.styled(f" {name}".ljust(self.columns), f"$text bold on {ground}")

    def kind(self, pick: Pick) -> Content:
        """Return a kind: letter, mark, count, name, what may harm in a word, months of bloom.

        What may harm stands under the name where it has no room beside it.
        """
        scientific = pick.plant.scientific_name
        names = letters(self.zones)
        order = list(dict.fromkeys(one.plant.scientific_name for one in self._picks))
        place = list(names).index(scientific) if scientific in names else order.index(scientific)
        mark, bloom = mark_of(pick.plant, place)
        ink = color_of(bloom, self.palette)
        wide = self.month_columns
        room = self.columns - 1 - wide * len(self.months)
        name, harm = short_name(pick.plant), hazard_names(pick.plant)
        if column_width(name) > room - _LEAD:
            name = f"{cut_to(name, room - _LEAD - 1)[0].rstrip()}…"
        beside = bool(harm) and self._words(pick) <= room
        words = f"{name}  {harm}" if beside else name
        pieces: list[tuple[str, str] | str] = [
            (f"{names.get(scientific, ''):>2} ", "$muted"),
            (f"{mark} ", ink),
            f"{pick.count:>3} × " if pick.count else " seed ",
            (name, "bold"),
            (f"  {harm}" if beside else "", "$look"),
            " " * (room + 1 - _LEAD - column_width(words)),
            *self._strip(pick, ink, wide),
        ]
        if harm and not beside:
            pieces.append((f"\n{' ' * _LEAD}{harm}", "$look"))
        return Content.assemble(*pieces)

    def _strip(self, pick: Pick, ink: str, wide: int) -> Iterator[tuple[str, str]]:
        for month in self.months:
            if month in pick.plant.bloom_months:
                yield IN_BLOOM * wide, ink
            else:
                yield NOT.ljust(wide), "$muted"
