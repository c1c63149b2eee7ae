from __future__ import annotations

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.figure.marks import mark_place, mark_shapes
from fitdoctor.figure.shapes import Fill
from fitdoctor.figure.transfer import carry, mapping
from fitdoctor.figure.zones import clip
from fitdoctor.knowledge.entries import Drawing
from fitdoctor.knowledge.knowledge import Knowledge


def test_the_waist_of_trousers_comes_to_the_waist_of_a_skirt(knowledge: Knowledge) -> None:
    home, other = knowledge.figures["trousers-back"], knowledge.figures["skirt-back"]
    known = mapping(home, other)
    assert known is not None
    y, left, right = home.levels["waist"]
    assert known.point((right, y)) == pytest.approx((other.levels["waist"][2], other.levels["waist"][0]))
    assert known.point((left, y))[0] == pytest.approx(other.levels["waist"][1])
    assert known.point((0, y))[0] == pytest.approx(0)


@given(st.floats(-250, 250), st.floats(300, 1500))
def test_carrying_over_and_back_gives_the_place_again(knowledge: Knowledge, x: float, y: float) -> None:
    home, other = knowledge.figures["jacket-back"], knowledge.figures["dress-back"]
    there, back = mapping(home, other), mapping(other, home)
    assert there is not None
    assert back is not None
    assert back.point(there.point((x, y))) == pytest.approx((x, y), abs=1e-6)


def test_a_drawing_stays_as_it_is_on_its_own_figure(knowledge: Knowledge) -> None:
    drawing = msgspec.convert({"crop": [-250, 330, 500, 560], "strokes": [{"stroke": "spot", "at": [0, 505]}]}, Drawing)
    home = knowledge.figures["trousers-back"]
    assert carry(drawing, home, home) is drawing


def test_a_drawing_of_the_back_is_not_carried_to_a_front(knowledge: Knowledge) -> None:
    drawing = msgspec.convert({"crop": [-250, 330, 500, 560]}, Drawing)
    assert carry(drawing, knowledge.figures["trousers-back"], knowledge.figures["skirt-front"]) is None


def test_cutting_keeps_what_lies_within() -> None:
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    left = ((-5.0, -5.0), (5.0, -5.0), (5.0, 15.0), (-5.0, 15.0))
    assert {(x, y) for x, y in clip(square, left)} == {(0, 0), (5, 0), (5, 10), (0, 10)}
    assert clip(square, tuple(reversed(left)))
    assert clip(square, tuple((x + 100, y) for x, y in left)) == ()


def test_a_lowered_waist_seam_is_deepest_at_centre_back_and_runs_out_at_the_sides(knowledge: Knowledge) -> None:
    figure = knowledge.figures["trousers-back"]
    stations = ((0.0, 28.0), (75.0, 14.0), (150.0, 0.0))
    fills = [shape for shape in mark_shapes(figure, "back-waist-seam", stations, "lower") if isinstance(shape, Fill)]
    assert len(fills) == 2
    place = mark_place(figure, "back-waist-seam", stations, "lower")
    assert place is not None
    assert place[0] == pytest.approx(0, abs=1)
    assert place[1] > 449 + 28


def test_taking_in_goes_into_the_cloth_and_letting_out_away_from_it(knowledge: Knowledge) -> None:
    figure = knowledge.figures["jacket-back"]
    stations = ((0.0, 10.0), (500.0, 10.0))
    inside, outside = (mark_place(figure, "side-seam", stations, take) for take in ("in", "out"))
    assert inside is not None
    assert outside is not None
    assert inside[0] < outside[0]


def test_a_seam_the_figure_does_not_show_has_no_mark(knowledge: Knowledge) -> None:
    assert mark_shapes(knowledge.figures["dress-front"], "lining-hem", ((0, 5), (9, 5)), "in") == ()
