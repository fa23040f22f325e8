"""Rows kept as they were painted, until others are set."""

from __future__ import annotations

from textual.strip import Strip

from interview.screens.parts import Laid


class Strips(Laid):
    """Shows rows on the ground of the page. What draws is not loaded with it."""

    strips: tuple[Strip, ...] = ()

    def keep(self, strips: list[Strip]) -> bool:
        """Show these rows; tell whether any differs."""
        if (kept := tuple(strips)) == self.strips:
            return False
        self.strips = kept
        self.refresh()
        return True

    @property
    def text(self) -> str:
        """What is shown, without its colors."""
        return "\n".join(strip.text.rstrip() for strip in self.strips)

    def render_line(self, y: int) -> Strip:
        """Return one row, on the ground of the page to its end."""
        ground = self.rich_style
        if y >= len(self.strips):
            return Strip.blank(self.size.width, ground)
        strip = self.strips[y].adjust_cell_length(self.size.width, ground)
        # Rows without a color of their own have that of the page, not of the terminal behind it.
        return strip.apply_style(ground) if self.app.no_color else strip
