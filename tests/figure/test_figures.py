"""The figures and drawings as they ship."""

from __future__ import annotations

import pytest

from fitdoctor.figure.choose import figure_of, symptom_drawing, views_of
from fitdoctor.figure.compose import members, outlines
from fitdoctor.figure.reach import Box, anchor, framed
from fitdoctor.figure.shapes import Point, bounds
from fitdoctor.figure.strokes import KINDS
from fitdoctor.figure.zones import zone_areas
from fitdoctor.knowledge.entries import Drawing, Garment, Symptom
from fitdoctor.knowledge.knowledge import Knowledge

LEAST_TARGET = 26.0
"Mm of a zone's narrower side: at the smallest window (about 0.4 px a mm enlarged twice) still more than 20 px."
BESIDE = 60.0
"Mm a stroke may begin outside its crop: a fold may run out of the picture, but not lie beyond it."


def zones_of(knowledge: Knowledge, garment: Garment) -> list[tuple[str, str]]:
    found: list[tuple[str, str]] = []
    entry: Garment | None = garment
    while entry is not None:
        found += [(zone.view, zone.id) for zone in entry.zones]
        entry = knowledge.garments.get(entry.kind_of)
    return found


def test_every_zone_of_every_garment_has_an_area_on_its_figure(knowledge: Knowledge) -> None:
    missing = []
    for garment in knowledge.garments.values():
        for view, zone in zones_of(knowledge, garment):
            figure = figure_of(knowledge, garment.id, view)  # type: ignore[arg-type]
            if figure is None or not zone_areas(figure).get(zone):
                missing.append((garment.id, view, zone))
    assert not missing


def test_every_zone_is_large_enough_to_be_hit(knowledge: Knowledge) -> None:
    small = []
    for figure in knowledge.figures.values():
        for zone, areas in zone_areas(figure).items():
            sizes = [bounds(area) for area in areas]
            if max(min(right - left, bottom - top) for left, top, right, bottom in sizes) < LEAST_TARGET:
                small.append((figure.id, zone))
    assert not small


def test_every_garment_has_its_figures(knowledge: Knowledge) -> None:
    for garment in knowledge.garments.values():
        assert {"front", "back"} <= set(views_of(knowledge, garment.id)), garment.id


def test_every_symptom_is_drawn_on_every_garment_it_shows_on(knowledge: Knowledge) -> None:
    bare = [
        (symptom.id, garment)
        for symptom in knowledge.symptoms.values()
        for garment in symptom.garments
        if figure_of(knowledge, garment, symptom.view) is not None and symptom_drawing(knowledge, symptom, garment) is None
    ]
    assert not bare


def drawn(knowledge: Knowledge) -> list[tuple[Symptom, Drawing]]:
    return [(symptom, drawing) for symptom in knowledge.symptoms.values() for drawing in symptom.draw]


def test_every_symptom_draws_something(knowledge: Knowledge) -> None:
    assert not [symptom.id for symptom, drawing in drawn(knowledge) if not drawing.strokes and not drawing.outline and not drawing.opens]


def within(place: Point, crop: Box) -> bool:
    x, y, wide, high = crop
    return x - BESIDE <= place[0] <= x + wide + BESIDE and y - BESIDE <= place[1] <= y + high + BESIDE


def test_every_stroke_lies_in_its_crop(knowledge: Knowledge) -> None:
    outside = []
    for symptom, drawing in drawn(knowledge):
        for stroke in drawing.strokes:
            given = (stroke.from_, stroke.to, stroke.at, *stroke.through, *stroke.near, *stroke.far)
            places = [place for place in given if place]
            sides = [places, [(-px, py) for px, py in places]] if stroke.both else [places]
            if not any(all(within(place, drawing.crop) for place in side) for side in sides):
                outside.append((symptom.id, stroke.stroke))
    assert not outside


def test_every_stroke_names_a_part_of_its_figure(knowledge: Knowledge) -> None:
    unknown = set()
    for symptom, drawing in drawn(knowledge):
        owner = (drawing.garments or symptom.garments)[0]
        figure = figure_of(knowledge, owner, symptom.view)
        assert figure is not None
        facts = {fact: value for implied in figure.implies.values() for fact, value in implied.items()}
        parts = outlines(figure, facts, opened=drawing.opens)
        for stroke in drawing.strokes:
            if stroke.on not in ("", "behind", "top") and not members(figure, stroke.on, parts):
                unknown.add((symptom.id, stroke.on, figure.id))
    assert not unknown


def test_every_opening_a_drawing_opens_is_on_its_figure(knowledge: Knowledge) -> None:
    unknown = set()
    for symptom, drawing in drawn(knowledge):
        owner = (drawing.garments or symptom.garments)[0]
        figure = figure_of(knowledge, owner, symptom.view)
        assert figure is not None
        known = {piece.opened or piece.closed for piece in figure.pieces}
        unknown |= {(symptom.id, name) for name in drawing.opens if name not in known}
    assert not unknown


def test_a_leader_line_ends_on_the_picture(knowledge: Knowledge) -> None:
    assert not [symptom.id for symptom, drawing in drawn(knowledge) if not within(anchor(drawing), drawing.crop)]


@pytest.mark.parametrize("aspect", [0.9, 2.5])
def test_a_frame_has_the_ratio_asked_for(knowledge: Knowledge, aspect: float) -> None:
    for _, drawing in drawn(knowledge):
        _, _, wide, high = framed(drawing, aspect)
        assert wide / high == pytest.approx(aspect)


def test_the_vocabulary_is_used_in_full_or_known(knowledge: Knowledge) -> None:
    used = {stroke.stroke for _, drawing in drawn(knowledge) for stroke in drawing.strokes}
    assert used <= set(KINDS)


def test_every_wearer_is_a_figure_and_every_seam_known(knowledge: Knowledge) -> None:
    seams = {seam.id for garment in knowledge.garments.values() for seam in garment.seams}
    for figure in knowledge.figures.values():
        assert all(name in knowledge.figures for name in figure.wearer), figure.id
        assert set(figure.seams) <= seams, (figure.id, set(figure.seams) - seams)
