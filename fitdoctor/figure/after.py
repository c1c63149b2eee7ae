"""After the remedy: the garment without the signs that were treated, the seams that were sewn anew in the thread's colour."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from fitdoctor.figure.arrows import basted
from fitdoctor.figure.choose import figure_of, symptom_drawing, views_of
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.curves import flatten, flip, parse
from fitdoctor.figure.diagrams import Diagram, strongest_sign
from fitdoctor.figure.marks import mark_shapes
from fitdoctor.figure.reach import Box
from fitdoctor.figure.shapes import Point, Shape, bounds
from fitdoctor.knowledge.entries import Cause, Figure, Method, Symptom, View
from fitdoctor.knowledge.knowledge import Knowledge

Moved = tuple[str, Sequence[Point], str]
"A mark: seam, stations along it, what is done there."
ROOM = 60.0
LEAST_WIDE = 380.0


def after_diagram(
    knowledge: Knowledge, cause: Cause, method: Method, garment: str, marks: Sequence[Moved] = (), facts: Mapping[str, str] | None = None
) -> Diagram | None:
    """The garment once a cause is treated, from the side on which its sign showed; None where that side is not drawn."""
    for view in _views(knowledge, cause, garment):
        figure, sign = figure_of(knowledge, garment, view), strongest_sign(knowledge, cause, garment, view)
        seams = sewn_anew(figure, (method,), marks) if figure else ()
        if figure and (sign or seams):
            scene = Scene(figure, facts={"garment": garment, **(facts or {})})
            return Diagram(scene, sign.crop if sign else _around(figure, method), seams)
    return None


def _views(knowledge: Knowledge, cause: Cause, garment: str) -> list[View]:
    """The sides of the garment, that of the surest sign first."""
    shown = [link for link in cause.shows_as if link.symptom in knowledge.symptoms]
    shown.sort(key=lambda link: -knowledge.strength(link.strength))
    fitting = [s for link in shown if knowledge.suits((s := knowledge.symptoms[link.symptom]).garments, garment)]
    return list(dict.fromkeys((*(symptom.view for symptom in fitting), *views_of(knowledge, garment))))


def after_scene(
    knowledge: Knowledge, garment: str, view: View, seen: Collection[Symptom], treated: Collection[Cause], facts: Mapping[str, str]
) -> Scene | None:
    """The whole garment from one side with only those signs left that no treated cause explains."""
    figure = figure_of(knowledge, garment, view)
    if figure is None:
        return None
    gone = {link.symptom for cause in treated for link in cause.shows_as}
    left = (symptom_drawing(knowledge, s, garment) for s in seen if s.view == view and s.id not in gone)
    return Scene(figure, tuple(drawing for drawing in left if drawing), facts={"garment": garment, **facts})


def sewn_anew(figure: Figure, methods: Sequence[Method], marks: Sequence[Moved] = ()) -> tuple[Shape, ...]:
    """The seams that were moved, at their new place where marks say it; the others that were opened, where they lie."""
    shapes: list[Shape] = [shape for at, stations, take in marks for shape in mark_shapes(figure, at, stations, take)]
    moved = {at for at, _, _ in marks}
    for name in dict.fromkeys(seam for method in methods for seam in _opened(method) if seam not in moved):
        seam = figure.seams.get(name)
        if seam is not None:
            line = flatten(parse(seam.points))
            shapes += [shape for side in ((line, flip(line)) if seam.both else (line,)) for shape in basted(side)]
    return tuple(shapes)


def _opened(method: Method) -> list[str]:
    """Seams that the method opens; a facing stands for the seam that it covers."""
    names = (name for operation in method.operations for name in (*operation.opens, *operation.closes))
    return [name.removesuffix("-facing") + "-seam" if name.endswith("-facing") else name for name in names]


def _around(figure: Figure, method: Method) -> Box:
    """The part of the figure in which the opened seams lie."""
    seams = [figure.seams[name] for name in _opened(method) if name in figure.seams]
    points = [point for seam in seams for line in [flatten(parse(seam.points))] for point in (*line, *(flip(line) if seam.both else ()))]
    left, top, right, bottom = bounds(tuple(points))
    wide = max(LEAST_WIDE, right - left + 2 * ROOM)
    return (left + right - wide) / 2, top - ROOM, wide, max(wide * 0.8, bottom - top + 2 * ROOM)
