from __future__ import annotations

import msgspec
import pytest

from fitdoctor.errors import FitdoctorError
from fitdoctor.figure.bumps import both_sides, for_piece, move
from fitdoctor.figure.shapes import Field, Fill, Line, Shape, Spot, bounds
from fitdoctor.figure.strokes import KINDS, draw, each_side, mirror
from fitdoctor.knowledge.entries import Bump, Stroke


def stroke(**fields: object) -> Stroke:
    return msgspec.convert(fields, Stroke)


def fields(shapes: list[Shape], role: str) -> list[Field]:
    return [shape for shape in shapes if isinstance(shape, Field) and shape.role == role]


def middle_of(field: Field) -> tuple[float, float]:
    left, top, right, bottom = bounds(tuple(point for area in field.rings[-1] for point in area))
    return (left + right) / 2, (top + bottom) / 2


FOLD = stroke(stroke="fold", **{"from": [20, 100], "to": [120, 160]}, bow=8, depth=20)


def test_every_kind_of_stroke_in_the_records_can_be_drawn() -> None:
    kinds = msgspec.json.schema(Stroke)["$defs"]["Stroke"]["properties"]["stroke"]["enum"]
    assert set(kinds) == set(KINDS)


def test_a_fold_has_a_lit_and_a_shaded_side() -> None:
    shapes = draw(FOLD)
    lit, cast = middle_of(fields(shapes, "glow")[0]), middle_of(fields(shapes, "shade")[-1])
    assert lit[1] < cast[1]


def test_a_mirrored_fold_is_lit_from_the_same_side() -> None:
    shapes = draw(mirror(FOLD))
    lit, cast = middle_of(fields(shapes, "glow")[0]), middle_of(fields(shapes, "shade")[-1])
    assert lit[1] < cast[1]


def test_tension_is_thinner_than_surplus() -> None:
    def breadth(shape: Stroke) -> float:
        rings = [part.rings[0] for part in draw(shape) if isinstance(part, Field)]
        _, top, _, bottom = bounds(tuple(point for ring in rings for area in ring for point in area))
        return bottom - top

    surplus = stroke(stroke="fold", **{"from": [0, 0], "to": [200, 0]})
    strain = stroke(stroke="taut", **{"from": [0, 0], "to": [200, 0]})
    assert breadth(strain) < breadth(surplus) / 1.5


def test_a_fan_sends_its_lines_the_way_it_says() -> None:
    shapes = draw(stroke(stroke="fan", at=[0, 0], toward=90, n=5, spread=30, length=100))
    pens = [shape for shape in shapes if isinstance(shape, Fill)]
    assert len(pens) == 5
    assert all(bounds(pen.outline)[3] > 60 for pen in pens)


def test_a_dent_is_dark_towards_the_light() -> None:
    spots = [shape for shape in draw(stroke(stroke="dent", at=[0, 0], r=[20, 40])) if isinstance(shape, Spot)]
    dark = next(spot for spot in spots if spot.role == "shade")
    lit = next(spot for spot in spots if spot.role == "glow")
    assert dark.at < lit.at


def test_a_stroke_for_both_sides_is_drawn_twice_and_names_the_other_part() -> None:
    one, other = each_side(stroke(stroke="taut", **{"from": [10, 0], "to": [60, 20]}, on="sleeve.l", both=True))
    assert (one.on, other.on) == ("sleeve.l", "sleeve.r")
    assert other.from_ == (-10, 0)


def test_mirroring_twice_gives_the_stroke_again() -> None:
    assert mirror(mirror(FOLD)) == FOLD


def test_a_stroke_without_its_place_is_a_known_error() -> None:
    with pytest.raises(FitdoctorError, match="lacks its from"):
        draw(stroke(stroke="fold"))


def test_the_same_stroke_is_drawn_alike_every_time() -> None:
    assert draw(FOLD) == draw(FOLD)


def test_a_dotted_reference_is_a_dotted_line() -> None:
    assert all(isinstance(shape, Line) and shape.dash for shape in draw(stroke(stroke="dots", through=[[0, 0], [50, 0]])))


def test_a_bump_moves_most_at_its_middle_and_nothing_far_off() -> None:
    bump = Bump(at=(0, 100), r=(30, 30), move=(0, -20))
    near, far = move(((0, 100), (0, 400)), [bump])
    assert near == pytest.approx((0, 80))
    assert far == pytest.approx((0, 400))


def test_a_bump_for_both_sides_moves_them_apart() -> None:
    left, right = move(((-150, 400), (150, 400)), both_sides([Bump(at=(150, 400), r=(30, 60), move=(4, 0), both=True)]))
    assert left == pytest.approx((-154, 400))
    assert right == pytest.approx((154, 400))


def test_a_bump_on_a_part_moves_that_part_only() -> None:
    bump = Bump(at=(0, 0), r=(9, 9), move=(1, 1), on=("collar",))
    assert for_piece([bump], ("collar.r",)) == (bump,)
    assert for_piece([bump], ("body",)) == ()
