"""Soft edges and swelling lines along a curve, from which every fold and strain line is built."""

from __future__ import annotations

import math

from fitdoctor.figure.curves import Along, fading, normals
from fitdoctor.figure.shapes import Field, Fill, Flat, Point, Polygon

THINNEST = 0.011
"The least opacity of one layer: thinner ones round to tinted steps even in 16 bits."
ENDS = 5
"Points at each end of a curve where a soft edge follows every one: that is where it fades."


def _rings(line: Polygon, edge: Along, reach: Along, fade: Along, count: int, both: bool) -> tuple[tuple[Polygon, ...], ...]:
    """The areas where fade(t) * (1 - r^2)^2 exceeds (j - 1/2) / count, r being the share of the reach."""
    across = normals(line)
    last = len(line) - 1
    picked = [i for i in range(last + 1) if i <= ENDS or i >= last - ENDS or i % 2 == 0]
    samples = [(fade(i / last), edge(i / last), reach(i / last), line[i], across[i]) for i in picked]
    rings = []
    for j in range(1, count + 1):
        level = (j - 0.5) / count
        rings.append(tuple(_runs(samples, level, both)))
    return tuple(rings)


def _runs(samples: list[tuple[float, float, float, Point, Point]], level: float, both: bool) -> list[Polygon]:
    """The stretches of one level, each as an area."""
    areas: list[Polygon] = []
    near: list[Point] = []
    away: list[Point] = []
    for strength, edge, reach, (x, y), (nx, ny) in [*samples, (0.0, 0.0, 0.0, (0.0, 0.0), (0.0, 0.0))]:
        if strength > level:
            half = reach * math.sqrt(max(0.0, 1 - math.sqrt(level / strength)))
            low = edge - half if both else edge
            away.append((x + nx * (edge + half), y + ny * (edge + half)))
            near.append((x + nx * low, y + ny * low))
            continue
        if len(near) > 1:
            areas.append((*near, *reversed(away)))
        near, away = [], []
    return areas


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
