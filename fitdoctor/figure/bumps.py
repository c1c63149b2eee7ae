"""Changes of the outline: cloth that droops, swings, kicks up or stands away."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

import msgspec

from fitdoctor.figure.shapes import Polygon
from fitdoctor.knowledge.entries import Bump


def other_side(part: str) -> str:
    """The name of the same part on the other side of the body: `sleeve.l` for `sleeve.r`."""
    base, dot, side = part.rpartition(".")
    return f"{base}.{'r' if side == 'l' else 'l'}" if dot and side in ("l", "r") else part


def both_sides(bumps: Iterable[Bump]) -> tuple[Bump, ...]:
    """The bumps with those meant for both sides also mirrored."""
    out: list[Bump] = []
    for bump in bumps:
        out.append(bump)
        if bump.both:
            at, move_by = (-bump.at[0], bump.at[1]), (-bump.move[0], bump.move[1])
            out.append(msgspec.structs.replace(bump, at=at, move=move_by, on=tuple(other_side(name) for name in bump.on)))
    return tuple(out)


def for_piece(bumps: Sequence[Bump], names: Iterable[str]) -> tuple[Bump, ...]:
    """The bumps that move a piece known by these names; one that names no part moves all cloth."""
    known = set(names)
    known |= {name.split(".")[0] for name in known}
    return tuple(bump for bump in bumps if not bump.on or known.intersection(bump.on))


def move(points: Polygon, bumps: Sequence[Bump]) -> Polygon:
    """The points shifted by the sum of the bumps: p += move * exp(-((x-cx)/rx)^2 - ((y-cy)/ry)^2)."""
    if not bumps:
        return points
    out = []
    for x, y in points:
        dx = dy = 0.0
        for bump in bumps:
            weight = math.exp(-(((x - bump.at[0]) / bump.r[0]) ** 2) - ((y - bump.at[1]) / bump.r[1]) ** 2)
            dx += weight * bump.move[0]
            dy += weight * bump.move[1]
        out.append((x + dx, y + dy))
    return tuple(out)
