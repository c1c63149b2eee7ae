"""How a check is done is drawn: what the hands do lies over the cloth, in the thread's colour, in sight."""

from __future__ import annotations

import pytest

from fitdoctor.figure.compose import Scene, compose
from fitdoctor.figure.diagrams import check_diagram
from fitdoctor.figure.hands import HANDS
from fitdoctor.figure.reach import reaches
from fitdoctor.figure.shapes import Clip, Fill, Flat, Line, Shape
from fitdoctor.figure.strokes import draw
from fitdoctor.knowledge.entries import Stroke
from fitdoctor.knowledge.knowledge import Knowledge

MOST_UNDRAWN = 0.03
"Share of checks that may wait for their picture: questions of history have none."


def stroke(kind: str) -> Stroke:
    return Stroke(stroke=kind, from_=(0, 0), to=(100, 0), at=(50, 0))  # type: ignore[arg-type]


def roles(shapes: list[Shape]) -> set[str]:
    found: set[str] = set()
    for shape in shapes:
        if isinstance(shape, Clip):
            found |= roles(list(shape.shapes))
        elif isinstance(shape, Fill | Line) and isinstance(shape.ink, Flat):
            found.add(shape.ink.role)
    return found


@pytest.mark.parametrize("kind", HANDS)
def test_the_hands_are_drawn_in_the_threads_colour_cased_in_the_papers(kind: str) -> None:
    assert roles(draw(stroke(kind))) <= {"guide", "bg"}
    assert "guide" in roles(draw(stroke(kind)))


@pytest.mark.parametrize("kind", HANDS)
def test_no_two_things_the_hands_do_are_drawn_alike(kind: str) -> None:
    assert all(draw(stroke(kind)) != draw(stroke(other)) for other in HANDS if other != kind)


def test_what_the_hands_do_lies_over_everything_that_is_cloth(knowledge: Knowledge) -> None:
    figure = knowledge.figures["jacket-back"]
    check = knowledge.checks["level-pinch-at-centre-back-waist-clears"]
    plain = len(compose(Scene(figure, facts={"garment": "jacket"}), knowledge.figures))
    shapes = compose(Scene(figure, (check.draw[0],), facts={"garment": "jacket"}), knowledge.figures)
    assert roles(list(shapes[plain:])) <= {"guide", "bg"}
    assert shapes[:plain] == compose(Scene(figure, facts={"garment": "jacket"}), knowledge.figures)


def test_nearly_every_check_shows_how_it_is_done(knowledge: Knowledge) -> None:
    undrawn = [check.id for check in knowledge.checks.values() if not check.draw]
    assert len(undrawn) <= MOST_UNDRAWN * len(knowledge.checks), undrawn


def test_a_check_is_drawn_on_every_garment_whose_causes_ask_it(knowledge: Knowledge) -> None:
    """On the garment's own figure; one that lacks the view or the levels to carry the drawing over goes without."""
    asked = [
        (knowledge.checks[answer.check], garment)
        for cause in knowledge.causes.values()
        for answer in cause.answers
        for garment in cause.how_common
        if answer.check in knowledge.checks and knowledge.checks[answer.check].draw
    ]
    lacking = {(check.id, garment) for check, garment in asked if check_diagram(knowledge, check, garment) is None}
    assert len(lacking) <= 0.04 * len(set((check.id, garment) for check, garment in asked)), sorted(lacking)


def test_all_that_the_hands_do_is_in_the_picture(knowledge: Knowledge) -> None:
    for check in knowledge.checks.values():
        for drawing in check.draw:
            x, y, wide, high = drawing.crop
            for reach in reaches(drawing):
                assert all(x <= px <= x + wide and y <= py <= y + high for px, py in reach.line), check.id


def test_what_was_noted_is_seen_faintly_under_the_hands(knowledge: Knowledge) -> None:
    check, sign = knowledge.checks["clear-when-pinned-level"], knowledge.symptoms["level-folds-under-back-band"]
    shown = check_diagram(knowledge, check, "trousers", seen=[sign])
    alone = check_diagram(knowledge, check, "trousers")
    assert shown is not None
    assert alone is not None
    assert len(shown.scene.dimmed) == 1
    assert not alone.scene.dimmed
