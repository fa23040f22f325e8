"""The shape of a basin and its berm on sloping ground, in feet."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

_STRIPS = 400


@dataclass(frozen=True)
class Section:
    """A basin cut across the slope; heights are above the floor, lengths in feet."""

    length: float
    width: float
    fall: float
    """Fall of the ground for a level run of one."""
    height: float
    """Top of the berm above the floor."""
    inner: float
    outer: float
    top: float

    def berm_height(self, depth: float) -> float:
        """Return the top of the berm above the ground at the downhill edge of the floor."""
        return max(0.0, self.height - depth)

    def cut(self, depth: float) -> float:
        """Return the soil over the floor, the uphill face and the two ends.

        The ends are taken at the mean depth; the corners and the downhill face are left out.
        """
        uphill = depth + self.fall * self.width
        mean = (depth + uphill) / 2
        face = self.inner * uphill**2 / (1 - self.inner * self.fall) / 2
        return self.length * (self.width * mean + face) + self.width * self.inner * mean**2

    def berm_area(self, depth: float) -> float:
        """Return the cross-section of the berm: inner face, top, and outer face to its toe."""
        high = self.berm_height(depth)
        inside = self.inner * high
        edge = inside + self.top
        drop = high + self.fall * edge
        toe = self.outer * drop / (1 - self.outer * self.fall)
        under_face = (high * inside + self.fall * inside**2) / 2
        under_top = self.top * high + self.fall * (edge**2 - inside**2) / 2
        return under_face + under_top + drop * toe / 2

    def berm_length(self, depth: float) -> float:
        """Return the length of full section: the downhill side and two half-counted returns."""
        high = self.berm_height(depth)
        steep = self.fall * self.width > high
        returns = high / self.fall if steep else self.width
        return self.length + 2 * self.inner * self.height + returns

    def fill(self, depth: float) -> float:
        """Return the soil in the berm."""
        return self.berm_area(depth) * self.berm_length(depth)

    def bank(self, out: float) -> float:
        """Return the height of the finished surface ``out`` beyond the edge of the floor."""
        if out <= self.inner * self.height:
            return out / self.inner
        beyond = out - self.inner * self.height - self.top
        return self.height - max(0.0, beyond) / self.outer

    def _fill_beyond(self, start: float, ground: float) -> float:
        """Return the area of fill from ``start`` outward over level ``ground``."""
        crest, edge = self.inner * self.height, self.inner * self.height + self.top
        toe = edge + self.outer * (self.height - ground)
        begin = max(start, self.inner * max(0.0, ground))
        if ground >= self.height or begin >= toe:
            return 0.0
        stops = sorted({begin, *(x for x in (crest, edge, toe) if x > begin)})
        heights = [self.bank(x) - ground for x in stops]
        pairs = zip(stops, stops[1:], heights, heights[1:], strict=False)
        return sum((b - a) * (p + q) / 2 for a, b, p, q in pairs)

    def _cut_beyond(self, start: float, ground: float) -> float:
        """Return the area of cut from ``start`` outward under level ``ground``."""
        rest = ground - start / self.inner
        return self.inner * rest * rest / 2 if rest > 0 else 0.0

    def cut_slice(self, down: float, depth: float) -> float:
        """Return the cut per foot of slope, ``down`` the slope from the uphill floor edge."""
        ground = depth + self.fall * (self.width - down)
        away = max(0.0, -down, down - self.width)
        flat = max(0.0, ground - away / self.inner) * (self.length + 2 * away)
        return flat + 2 * self._cut_beyond(away, ground)

    def fill_slice(self, down: float, depth: float) -> float:
        """Return the fill per foot of slope, ``down`` the slope from the uphill floor edge."""
        ground = depth + self.fall * (self.width - down)
        away = max(0.0, down - self.width)
        flat = max(0.0, self.bank(away) - ground) * (self.length + 2 * away) if away else 0.0
        return flat + 2 * self._fill_beyond(away, ground)


def ground_cut(section: Section, depth: float) -> float:
    """Return the cut over the whole ground, corners square, by strips across the slope."""
    up = section.inner * (depth + section.fall * section.width)
    up /= 1 - section.inner * section.fall
    run = section.inner * depth
    return sum(
        _sum_strips(start, end, lambda y: section.cut_slice(y, depth))
        for start, end in ((-up, 0.0), (0.0, section.width), (section.width, section.width + run))
    )


def ground_volumes(section: Section, depth: float) -> tuple[float, float]:
    """Return cut and fill over the whole ground, corners square, by strips across the slope.

    There is no fill uphill of the floor: the ground itself holds the pond there.
    """
    rim = section.inner * section.height + section.top
    drop = section.berm_height(depth) + section.fall * rim
    toe = rim + section.outer * drop / (1 - section.outer * section.fall)
    fill = _sum_strips(0.0, section.width, lambda y: section.fill_slice(y, depth))
    fill += _sum_strips(section.width, section.width + toe, lambda y: section.fill_slice(y, depth))
    return ground_cut(section, depth), fill


def _sum_strips(start: float, end: float, slice_at: Callable[[float], float]) -> float:
    width = (end - start) / _STRIPS
    return width * sum(slice_at(start + (place + 0.5) * width) for place in range(_STRIPS))
