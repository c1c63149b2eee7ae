"""A figure with what shows on it, as one display list."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

import msgspec

from fitdoctor.figure import pieces
from fitdoctor.figure.bumps import both_sides
from fitdoctor.figure.curves import through
from fitdoctor.figure.lines import edge_lit
from fitdoctor.figure.shapes import Clip, Point, Polygon, Shape
from fitdoctor.figure.strokes import ABOVE, draw, each_side
from fitdoctor.knowledge.entries import Bump, Drawing, Figure, Piece, Stroke

NOT_TOLD = "not-known"
DIMMED = 0.45
BEHIND, TOP = "behind", "top"


@dataclass(frozen=True)
class Scene:
    """What is to be painted: one figure, the drawings on it, and the facts of the garment."""

    figure: Figure
    drawings: tuple[Drawing, ...] = ()
    dimmed: tuple[Drawing, ...] = ()
    "Drawings shown more faintly than the others."
    facts: Mapping[str, str] = field(default_factory=dict)
    "Facts of the garment; `garment` is its kind."
    references: bool = True
    "Whether dotted lines show where an edge should lie."

    def key(self) -> tuple[object, ...]:
        """What tells this scene from any other, to keep its picture by."""
        return self.figure.id, self.drawings, self.dimmed, tuple(sorted(self.facts.items())), self.references


def compose(scene: Scene, figures: Mapping[str, Figure]) -> tuple[Shape, ...]:
    """The shapes of a scene in painting order; `figures` holds the wearers' bodies."""
    return _Composer(scene, figures).shapes()


def outlines(
    figure: Figure, facts: Mapping[str, str] | None = None, bumps: Sequence[Bump] = (), opened: Collection[str] = ()
) -> dict[str, Polygon]:
    """The outline of every painted part of a figure by its name, in painting order."""
    found: dict[str, Polygon] = {}
    for piece in figure.pieces:
        if piece.paint == "part" and is_painted(piece, facts or {}, opened):
            for name, right in zip(pieces.part_names(piece), pieces.sides(piece), strict=True):
                found[name] = pieces.curve(piece, True, bumps, right)
    return found


def holds(piece: Piece, facts: Mapping[str, str]) -> bool:
    """Whether the facts let the piece be painted."""
    if any(facts.get(fact, NOT_TOLD) in values for fact, values in piece.but_not.items()):
        return False
    return all(facts.get(fact, NOT_TOLD) in values for fact, values in piece.only.items())


def is_painted(piece: Piece, facts: Mapping[str, str], opened: Collection[str]) -> bool:
    """Whether facts and openings let the piece be painted."""
    if piece.closed and piece.closed in opened:
        return False
    if piece.opened and piece.opened not in opened:
        return False
    return holds(piece, facts)


def told(scene: Scene) -> dict[str, str]:
    """The facts of a scene, with those that its strokes stand for."""
    named = {stroke.on.split(".")[0] for drawing in (*scene.drawings, *scene.dimmed) for stroke in drawing.strokes}
    implied: dict[str, str] = {}
    for name in sorted(named):
        implied |= scene.figure.implies.get(name, {})
    return {**implied, **scene.facts}


def members(figure: Figure, name: str, parts: Iterable[str]) -> tuple[str, ...]:
    """The parts that a name stands for: itself, its two sides, or a group."""
    known = list(parts)
    found: list[str] = []
    for wanted in figure.groups.get(name, (name,)):
        found += [part for part in known if part == wanted or part.split(".")[0] == wanted]
    return tuple(found)


class _Composer:
    """Holds the moved outlines while the pieces are painted in order."""

    def __init__(self, scene: Scene, figures: Mapping[str, Figure]) -> None:
        self.scene, self.figures, self.figure = scene, figures, scene.figure
        self.facts = told(scene)
        shown = (*scene.drawings, *scene.dimmed)
        self.bumps = both_sides(bump for drawing in shown for bump in drawing.outline)
        self.opened = {name for drawing in shown for name in drawing.opens}
        self.parts = outlines(self.figure, self.facts, self.bumps, self.opened)
        self.strokes = [self._placed(stroke) for stroke in self._all_strokes()]

    def _all_strokes(self) -> Iterable[Stroke]:
        for drawing in self.scene.drawings:
            yield from (side for stroke in drawing.strokes for side in each_side(stroke))
        for drawing in self.scene.dimmed:
            for stroke in drawing.strokes:
                yield from each_side(msgspec.structs.replace(stroke, k=stroke.k * DIMMED))

    def _placed(self, stroke: Stroke) -> tuple[str, Stroke]:
        """Where a stroke is painted: behind the garment, above it, or on a part."""
        if stroke.stroke in ABOVE:
            return TOP, stroke
        if stroke.stroke == "gape" and stroke.on in ("", BEHIND):
            return (self._main() if self._lies_on_cloth(stroke) else BEHIND), stroke
        if stroke.on in (BEHIND, TOP):
            return stroke.on, stroke
        known = members(self.figure, stroke.on, self.parts) if stroke.on else ()
        return (stroke.on if known else self._main()), stroke

    def _main(self) -> str:
        return self.figure.main

    def _lies_on_cloth(self, stroke: Stroke) -> bool:
        """Whether a gape opens within the cloth as it hangs at rest, as a pocket mouth does."""
        rest = outlines(self.figure, self.facts, opened=self.opened)
        far = through(stroke.far)
        at = far[len(far) // 2]
        near = through(stroke.near)
        beyond = (2 * at[0] - near[len(near) // 2][0], 2 * at[1] - near[len(near) // 2][1])
        return any(contains(rest[name], beyond) for name in members(self.figure, self._main(), rest))

    def shapes(self) -> tuple[Shape, ...]:
        """Everything, in order."""
        out: list[Shape] = []
        for piece in self.figure.pieces:
            if is_painted(piece, self.facts, self.opened):
                out += self._piece(piece)
        return (*out, *self._on_top())

    def _piece(self, piece: Piece) -> list[Shape]:
        if piece.paint == "wearer":
            bodies = (Scene(self.figures[name], facts=self.facts) for name in self.figure.wearer)
            return [shape for body in bodies for shape in compose(body, self.figures)]
        if piece.paint == "gapes":
            return [shape for place, stroke in self.strokes if place == BEHIND for shape in draw(stroke)]
        if piece.paint == "strokes":
            return self._strokes_on(piece.on)
        shapes = self._part(piece) if piece.paint == "part" else pieces.detail(piece, self.bumps)
        return self._clipped(shapes, members(self.figure, piece.on, self.parts)) if piece.on else shapes

    def _part(self, piece: Piece) -> list[Shape]:
        shapes: list[Shape] = []
        for name in pieces.part_names(piece):
            shapes += pieces.part(piece, self.parts[name])
        return shapes

    def _strokes_on(self, place: str) -> list[Shape]:
        """The strokes that name any of the parts of this place, each seen only on the parts that it names."""
        here = members(self.figure, place, self.parts)
        shapes: list[Shape] = []
        for wanted, stroke in self.strokes:
            if wanted in (BEHIND, TOP):
                continue
            on = [name for name in members(self.figure, wanted, self.parts) if name in here]
            if on:
                shapes += self._clipped(draw(stroke), on)
        return shapes

    def _clipped(self, shapes: list[Shape], names: Sequence[str]) -> list[Shape]:
        return [Clip(tuple(self.parts[name] for name in names), tuple(shapes))] if shapes else []

    def _on_top(self) -> list[Shape]:
        shapes: list[Shape] = []
        for place, stroke in self.strokes:
            if place == BEHIND and stroke.stroke == "gape":
                shapes.append(_lip(stroke))
            elif place == TOP and (stroke.stroke != "dots" or self.scene.references):
                shapes += draw(stroke)
        return shapes


def _lip(gape: Stroke) -> Shape:
    """The light on an edge that stands off."""
    near, far = through(gape.near), through(gape.far)
    middle = len(near) // 2
    dx, dy = near[middle][0] - far[len(far) // 2][0], near[middle][1] - far[len(far) // 2][1]
    length = (dx * dx + dy * dy) ** 0.5 or 1.0
    lip = tuple((x + 2.5 * dx / length, y + 2.5 * dy / length) for x, y in near[2:-2])
    return edge_lit(lip, 2.6, 0.8)


def contains(outline: Polygon, point: Point) -> bool:
    """Whether a point lies within an outline (even-odd rule)."""
    x, y = point
    inside = False
    for (x0, y0), (x1, y1) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if (y0 > y) != (y1 > y) and x < (x1 - x0) * (y - y0) / (y1 - y0) + x0:
            inside = not inside
    return inside
