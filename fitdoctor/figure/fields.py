"""Soft edges and swelling lines along a curve, from which every fold and strain line is built."""

from __future__ import annotations

import math
from dataclasses import dataclass

from fitdoctor.figure.curves import Along, fading, normals
from fitdoctor.figure.shapes import Field, Fill, Flat, Point, Polygon

THINNEST = 0.011
"The least opacity of one layer: thinner ones round to tinted steps even in 16 bits."
ENDS = 5
"Points at each end of a curve where a soft edge follows every one: that is where it fades."


@dataclass(frozen=True, slots=True)
class _Sample:
    """The curve at one place: how strong the field is there, where its middle or edge runs, how far it reaches."""

    strength: float
    edge: float
    reach: float
    x: float
    y: float
    nx: float
    ny: float

    def at(self, away: float) -> Point:
        return self.x + self.nx * away, self.y + self.ny * away


def _rings(line: Polygon, edge: Along, reach: Along, fade: Along, count: int, both: bool) -> tuple[tuple[Polygon, ...], ...]:
    """The areas where fade(t) * (1 - r^2)^2 exceeds (j - 1/2) / count, r being the share of the reach."""
    across = normals(line)
    last = len(line) - 1
    picked = [i for i in range(last + 1) if i <= ENDS or i >= last - ENDS or i % 2 == 0]
    samples = [_Sample(fade(i / last), edge(i / last), reach(i / last), *line[i], *across[i]) for i in picked]
    return tuple(tuple(_runs(samples, (j - 0.5) / count, both)) for j in range(1, count + 1))


def _runs(samples: list[_Sample], level: float, both: bool) -> list[Polygon]:
    """The stretches of one level, each as an area that runs to a point where the field sinks below the level."""
    areas: list[Polygon] = []
    near: list[Point] = []
    away: list[Point] = []
    before: _Sample | None = None
    for sample in samples:
        above = sample.strength > level
        if before is not None and above != (before.strength > level):
            tip = _crossing(before, sample, level)
            near.append(tip)
            away.append(tip)
        if above:
            half = sample.reach * math.sqrt(max(0.0, 1 - math.sqrt(level / sample.strength)))
            away.append(sample.at(sample.edge + half))
            near.append(sample.at(sample.edge - half if both else sample.edge))
        elif near:
            areas.append((*near, *reversed(away)))
            near, away = [], []
        before = sample
    if len(near) > 1:
        areas.append((*near, *reversed(away)))
    return areas


def _crossing(one: _Sample, other: _Sample, level: float) -> Point:
    """Where between two samples the field has just this level."""
    share = (level - one.strength) / (other.strength - one.strength)
    (x0, y0), (x1, y1) = one.at(one.edge), other.at(other.edge)
    return x0 + share * (x1 - x0), y0 + share * (y1 - y0)


def _count(wanted: int, strength: float) -> int:
    return max(3, min(round(wanted * 1.5), round(strength / THINNEST)))


def soft(line: Polygon, start: Along, end: Along, role: str, strength: float, count: int = 8, fade: Along | None = None) -> Field:
    """Shade or light on one side of a line, densest at `start` and gone at `end` (mm across)."""
    strength = min(strength, 0.97)
    rings = _rings(line, start, lambda t: end(t) - start(t), fade or fading(0, 0), _count(count, strength), both=False)
    return Field(rings, role, strength)


def band(line: Polygon, middle: Along, half: Along, role: str, strength: float, count: int = 7, fade: Along | None = None) -> Field:
    """Shade or light on both sides of a line that runs `middle` mm beside the curve."""
    strength = min(strength, 0.97)
    return Field(_rings(line, middle, half, fade or fading(0, 0), _count(count, strength), both=True), role, strength)


def lens(line: Polygon, width: float, role: str, alpha: float, fade: tuple[float, float]) -> Fill:
    """A pen stroke that swells and dies: never a line of one width with blunt ends."""
    grows = fading(*fade)
    last = len(line) - 1
    sides: tuple[list[Point], list[Point]] = ([], [])
    for i, ((x, y), (nx, ny)) in enumerate(zip(line, normals(line), strict=True)):
        half = width / 2 * grows(i / last)
        sides[0].append((x - nx * half, y - ny * half))
        sides[1].append((x + nx * half, y + ny * half))
    return Fill((*sides[0], *reversed(sides[1])), Flat(role, alpha))
