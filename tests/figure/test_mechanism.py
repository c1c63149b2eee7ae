from __future__ import annotations

from itertools import combinations

import msgspec

from fitdoctor.figure.arrows import tape
from fitdoctor.figure.choose import figure_of
from fitdoctor.figure.diagrams import measure_diagram, why_diagram
from fitdoctor.figure.explain import apart, broken, mechanism, plate_size
from fitdoctor.figure.shapes import Line, Words, bounds
from fitdoctor.knowledge.entries import MechanismArrow
from fitdoctor.knowledge.knowledge import Knowledge

BOX = (-250.0, 330.0, 500.0, 500.0)


def arrow(**fields: object) -> MechanismArrow:
    return msgspec.convert(fields, MechanismArrow)


def test_an_arrow_for_both_sides_is_drawn_twice_and_named_once() -> None:
    shapes = mechanism([arrow(kind="stack", **{"from": [138, 456]}, to=[138, 552], both=True, says="sinks")], BOX)
    assert len([shape for shape in shapes if isinstance(shape, Words)]) == 1
    xs = [x for shape in shapes if isinstance(shape, Line) for x, _ in shape.points]
    assert min(xs) < -130
    assert max(xs) > 130


def test_words_stand_apart_and_within_the_picture() -> None:
    plates = [Words((240.0, 340.0), ("longer than", "the wearer"), "pull"), Words((236.0, 344.0), ("stacks on", "the seat"), "hang")]
    one, other = apart(plates, BOX)
    for plate in (one, other):
        wide, high = plate_size(plate)
        assert BOX[0] <= plate.at[0] - wide / 2
        assert plate.at[0] + wide / 2 <= BOX[0] + BOX[2]
        assert BOX[1] <= plate.at[1] - high / 2
    assert abs(one.at[0] - other.at[0]) > 50 or abs(one.at[1] - other.at[1]) > 20


def test_a_line_of_words_has_at_most_three() -> None:
    assert broken("the back is longer than the wearer") == ("the back is", "longer than the", "wearer")


def test_a_tape_runs_from_where_to_where() -> None:
    shapes = tape([(0, 449), (0, 712)])
    lines = [shape for shape in shapes if isinstance(shape, Line)]
    assert lines[0].points == ((0, 449), (0, 712))
    assert len(lines) == 4


def test_every_arrow_of_every_cause_lies_in_its_picture(knowledge: Knowledge) -> None:
    for cause in knowledge.causes.values():
        for garment in cause.how_common:
            diagram = why_diagram(knowledge, cause, garment) if garment in knowledge.garments else None
            if diagram is None:
                continue
            x, y, wide, high = diagram.crop
            for shape in diagram.overlay:
                if isinstance(shape, Line):
                    left, top, right, bottom = bounds(shape.points)
                    assert x <= left <= right <= x + wide, cause.id
                    assert y <= top <= bottom <= y + high, cause.id


def test_every_measurement_with_a_line_has_its_diagram(knowledge: Knowledge) -> None:
    bare = []
    for measurement in knowledge.measurements.values():
        for garment in measurement.garments:
            drawn = measurement.line and figure_of(knowledge, garment, measurement.view)
            if drawn and measure_diagram(knowledge, measurement, garment) is None:
                bare.append((measurement.id, garment, measurement.view))
    assert not bare


def test_every_cause_says_in_arrows_and_words_why_the_cloth_does_that(knowledge: Knowledge) -> None:
    silent = [cause.id for cause in knowledge.causes.values() if not any(arrow.says for arrow in cause.mechanism)]
    assert not silent


def test_words_get_out_of_the_arrows_way() -> None:
    """Two plates that would lie on an arrow move beside it; without the arrow they stay."""
    plate = Words((0.0, 560.0), ("too short",), "pull")
    line = [(0.0, 400.0 + 10 * step) for step in range(33)]
    (moved,), (stays,) = apart([plate], BOX, line), apart([plate], BOX)
    assert stays.at == plate.at
    assert abs(moved.at[0]) > plate_size(plate)[0] / 2


def test_words_of_one_picture_never_lie_on_one_another(knowledge: Knowledge) -> None:
    for cause in knowledge.causes.values():
        diagram = why_diagram(knowledge, cause, next(iter(cause.how_common)))
        plates = [shape for shape in diagram.overlay if isinstance(shape, Words)] if diagram else []
        for one, other in combinations(plates, 2):
            (w1, h1), (w2, h2) = plate_size(one), plate_size(other)
            beside = abs(one.at[0] - other.at[0]) >= (w1 + w2) / 2 or abs(one.at[1] - other.at[1]) >= (h1 + h2) / 2
            assert beside, (cause.id, one.lines, other.lines)
