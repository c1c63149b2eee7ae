"""Explaining pictures: why a cause shows, how a check is done, where a measurement is taken."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import msgspec

from fitdoctor.figure.arrows import tape
from fitdoctor.figure.choose import drawing_on, figure_of, symptom_drawing
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.explain import mechanism
from fitdoctor.figure.reach import Box, fitted
from fitdoctor.figure.shapes import Point, Shape, bounds
from fitdoctor.figure.transfer import mapping
from fitdoctor.knowledge.entries import Cause, Check, Drawing, Figure, Measurement, MechanismArrow, Symptom, View
from fitdoctor.knowledge.knowledge import Knowledge

RATIO = 1.15
"Width by height of the picture that words are placed for; one that is wider has room to spare."
ROOM = 70.0
"Mm kept free round arrows and tape, so that their words have room."


@dataclass(frozen=True)
class Diagram:
    """A scene, the part of it to show, and what lies over it."""

    scene: Scene
    crop: Box
    overlay: tuple[Shape, ...] = ()


def why_diagram(knowledge: Knowledge, cause: Cause, garment: str, facts: Mapping[str, str] | None = None) -> Diagram | None:
    """The sign of a cause with the arrows that explain it; None where it has no arrows or no figure."""
    views = [arrow.view for arrow in cause.mechanism]
    if not views:
        return None
    view = max(views, key=views.count)
    figure = figure_of(knowledge, garment, view)
    if figure is None:
        return None
    home = figure_of(knowledge, next(iter(cause.how_common), garment), view)
    arrows = tuple(_carried(arrow, home, figure) for arrow in cause.mechanism if arrow.view == view)
    sign = strongest_sign(knowledge, cause, garment, view)
    scene = Scene(figure, (sign,) if sign else (), facts={"garment": garment, **(facts or {})})
    box = fitted(_around(_ends(arrows), sign.crop if sign else None), RATIO)
    return Diagram(scene, box, mechanism(arrows, box))


def _carried(arrow: MechanismArrow, home: Figure | None, other: Figure) -> MechanismArrow:
    """The arrow where it lies on another garment's figure."""
    known = mapping(home, other) if home is not None and home.id != other.id else None
    return arrow if known is None else msgspec.structs.replace(arrow, from_=known.point(arrow.from_), to=known.point(arrow.to))


def strongest_sign(knowledge: Knowledge, cause: Cause, garment: str, view: View) -> Drawing | None:
    """The drawing of the sign the cause shows most surely from this side."""
    shown = [link for link in cause.shows_as if link.symptom in knowledge.symptoms]
    shown.sort(key=lambda link: -knowledge.strength(link.strength))
    for link in shown:
        symptom = knowledge.symptoms[link.symptom]
        if symptom.view == view and knowledge.suits(symptom.garments, garment):
            return symptom_drawing(knowledge, symptom, garment)
    return None


def _ends(arrows: Sequence[MechanismArrow]) -> list[Point]:
    ends = [end for arrow in arrows for end in (arrow.from_, arrow.to)]
    return ends + [(-x, y) for arrow in arrows if arrow.both for x, y in (arrow.from_, arrow.to)]


def _around(points: Sequence[Point], crop: Box | None = None) -> Box:
    """A box round the points with room for words, and round a crop as well."""
    left, top, right, bottom = bounds(tuple(points))
    left, top, right, bottom = left - ROOM, top - ROOM, right + ROOM, bottom + ROOM
    if crop:
        x, y, wide, high = crop
        left, top, right, bottom = min(left, x), min(top, y), max(right, x + wide), max(bottom, y + high)
    return left, top, right - left, bottom - top


def check_diagram(
    knowledge: Knowledge, check: Check, garment: str, facts: Mapping[str, str] | None = None, seen: Sequence[Symptom] = ()
) -> Diagram | None:
    """How a check is done, on the garment in hand; None where it has no drawing for it.

    Args:
        seen: what was noted on the garment; drawn faintly where it shows on the same side.
    """
    figure = figure_of(knowledge, garment, check.view)
    drawing = drawing_on(knowledge, check.draw, check.garments, garment, check.view)
    if figure is None or drawing is None:
        return None
    signs = (symptom_drawing(knowledge, symptom, garment) for symptom in seen if symptom.view == check.view)
    scene = Scene(figure, (drawing,), tuple(sign for sign in signs if sign), {"garment": garment, **(facts or {})})
    return Diagram(scene, drawing.crop)


def measure_diagram(knowledge: Knowledge, measurement: Measurement, garment: str) -> Diagram | None:
    """From where to where a measurement is taken, as a tape on the garment; None where nothing is drawn."""
    figure = figure_of(knowledge, garment, measurement.view)
    if figure is None or not (measurement.line or measurement.draw):
        return None
    drawing = drawing_on(knowledge, measurement.draw, measurement.garments, garment, measurement.view)
    home = figure_of(knowledge, next(iter(measurement.garments), garment), measurement.view)
    known = mapping(home, figure) if home is not None and home.id != figure.id else None
    line = tuple(known.point(point) for point in measurement.line) if known else measurement.line
    scene = Scene(figure, (drawing,) if drawing else (), facts={"garment": garment})
    if not measurement.line:
        return Diagram(scene, drawing.crop if drawing else figure.box)
    return Diagram(scene, _wide(_around(line, drawing.crop if drawing else None)), tape(line))


def _wide(box: Box, least: float = 380.0) -> Box:
    """The box at least so wide and high that a landmark is in the picture."""
    x, y, wide, high = box
    more_x, more_y = max(0.0, least - wide), max(0.0, least * 0.7 - high)
    return x - more_x / 2, y - more_y / 2, wide + more_x, high + more_y
