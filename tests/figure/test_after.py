"""The picture after the remedy: without the sign that was treated, with the seams that were sewn anew."""

from __future__ import annotations

import pytest

from fitdoctor.figure.after import after_diagram, after_scene, sewn_anew
from fitdoctor.figure.choose import figure_of
from fitdoctor.figure.diagrams import strongest_sign
from fitdoctor.figure.shapes import Line
from fitdoctor.knowledge.knowledge import Knowledge

CAUSE, METHOD, SEAM = "back-longer-than-wearer", "lower-back-waist-seam", "back-waist-seam"
STATIONS = ((0.0, 28.0), (150.0, 0.0))


def test_the_sign_is_gone_and_the_seam_is_basted_in_the_threads_colour(knowledge: Knowledge) -> None:
    diagram = after_diagram(knowledge, knowledge.causes[CAUSE], knowledge.methods[METHOD], "slacks")
    assert diagram is not None
    assert diagram.scene.drawings == ()
    dashed = [shape for shape in diagram.overlay if isinstance(shape, Line) and shape.dash]
    assert dashed


def test_it_is_seen_from_the_side_and_as_near_as_the_sign_was(knowledge: Knowledge) -> None:
    sign = strongest_sign(knowledge, knowledge.causes[CAUSE], "slacks", "back")
    diagram = after_diagram(knowledge, knowledge.causes[CAUSE], knowledge.methods[METHOD], "slacks")
    assert sign is not None
    assert diagram is not None
    assert diagram.crop == sign.crop
    assert diagram.scene.figure.view == "back"


def test_a_mark_moves_the_line_and_takes_the_place_of_the_old_one(knowledge: Knowledge) -> None:
    figure = figure_of(knowledge, "slacks", "back")
    assert figure is not None
    method = knowledge.methods[METHOD]
    old = [s.points for s in sewn_anew(figure, [method]) if isinstance(s, Line)]
    new = [s.points for s in sewn_anew(figure, [method], [(SEAM, STATIONS, "lower")]) if isinstance(s, Line)]
    middle_old, middle_new = (max(y for line in lines for x, y in line if abs(x) < 5) for lines in (old, new))
    assert middle_new > middle_old + 5


def test_only_what_no_treated_cause_explains_is_left_on_the_whole_figure(knowledge: Knowledge) -> None:
    treated = knowledge.causes[CAUSE]
    own = knowledge.symptoms[treated.shows_as[0].symptom]
    explained = {link.symptom for link in treated.shows_as}
    other = next(s for s in knowledge.symptoms.values() if "trousers" in s.garments and s.view == "back" and s.id not in explained)
    before = after_scene(knowledge, "slacks", "back", [own, other], [], {})
    after = after_scene(knowledge, "slacks", "back", [own, other], [treated], {})
    assert before is not None
    assert after is not None
    assert len(before.drawings) == 2
    assert len(after.drawings) == 1


@pytest.mark.parametrize("view", ["front", "back", "side"])
def test_a_garment_without_that_view_has_no_picture(knowledge: Knowledge, view: str) -> None:
    assert (after_scene(knowledge, "shirt", view, [], [], {}) is None) == (view == "side")  # type: ignore[arg-type]


def test_every_alteration_that_opens_a_drawn_seam_shows_it(knowledge: Knowledge) -> None:
    for method in knowledge.methods.values():
        opened = {seam for operation in method.operations for seam in operation.opens}
        for cause in method.treats:
            entry = knowledge.causes.get(cause)
            garment = next((g for g in method.garments if entry and knowledge.suits(tuple(entry.how_common), g)), None)
            diagram = after_diagram(knowledge, entry, method, garment) if entry and garment else None
            if diagram and opened & set(diagram.scene.figure.seams):
                assert diagram.overlay, method.id
