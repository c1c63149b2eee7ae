from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.figure.curves import beside, bowed, fading, flatten, flip, mirrored, normals, parse, shade_side, whole, wobble
from fitdoctor.figure.shapes import Polygon

places = st.tuples(st.floats(-300, 300), st.floats(0, 1500))


def length(points: Polygon) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(points))


def test_a_corner_is_written_with_c() -> None:
    first, second = parse("10,-20c 3.5,4")
    assert (first.x, first.y, first.corner) == (10, -20, True)
    assert (second.x, second.y, second.corner) == (3.5, 4, False)


def test_a_curve_passes_through_its_points() -> None:
    points = flatten(parse("0,0 40,10 90,0"), steps=12)
    assert points[0] == (0, 0)
    assert points[12] == pytest.approx((40, 10))
    assert points[24] == pytest.approx((90, 0))


def test_two_corners_give_a_straight_side() -> None:
    line = flatten(parse("0,0c 100,50c"))
    assert all(y == pytest.approx(x / 2) for x, y in line)


def test_points_on_a_circle_give_nearly_the_circle() -> None:
    # circumference of a circle, 2 pi r: twelve smooth points come within half a percent
    turns = (math.tau * i / 12 for i in range(12))
    text = " ".join(f"{100 * math.cos(t):.3f},{100 * math.sin(t):.3f}" for t in turns)
    ring = flatten(parse(text), closed=True)
    assert length(ring) == pytest.approx(math.tau * 100, rel=0.005)


def test_a_half_outline_becomes_symmetrical() -> None:
    outline = flatten(whole(parse("0,0c 50,10c 40,90c 0,100c")), closed=True)
    assert {(round(x, 6), round(y, 6)) for x, y in outline} == {(round(x, 6) + 0.0, round(y, 6)) for x, y in flip(outline)}


def test_mirroring_twice_gives_the_points_again() -> None:
    knots = parse("1,2 3,4c 5,6")
    assert mirrored(mirrored(knots)) == knots


@given(places, places, st.floats(-60, 60))
def test_a_bowed_line_keeps_its_ends_and_reaches_its_bow(start: tuple[float, float], end: tuple[float, float], bow: float) -> None:
    line = bowed(start, end, bow)
    assert line[0] == pytest.approx(start)
    assert line[-1] == pytest.approx(end)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    if math.dist(start, end) > 1:
        assert math.dist(line[len(line) // 2], middle) == pytest.approx(abs(bow), abs=1e-6)


def test_a_positive_bow_hangs_down_when_drawn_from_left_to_right() -> None:
    line = bowed((0, 0), (100, 0), 12)
    assert line[16][1] == pytest.approx(12)


@given(places, places, st.floats(-30, 30))
def test_normals_are_of_unit_length(start: tuple[float, float], end: tuple[float, float], bow: float) -> None:
    if math.dist(start, end) > 1:
        assert all(math.hypot(*n) == pytest.approx(1) for n in normals(bowed(start, end, bow)))


def test_shade_falls_to_the_lower_right() -> None:
    assert shade_side(bowed((0, 0), (100, 0), 0)) == 1
    assert shade_side(bowed((100, 0), (0, 0), 0)) == -1


def test_a_fold_fades_at_both_ends_and_a_flute_only_at_the_top() -> None:
    fold, flute = fading(0.34, 0.34), fading(0.5, 0)
    assert fold(0) == fold(1) == 0
    assert fold(0.5) == 1
    assert flute(0) == 0
    assert flute(1) == 1


def test_irregularity_is_the_same_every_time_and_never_more_than_a_half() -> None:
    assert [wobble(i, 3) for i in range(50)] == [wobble(i, 3) for i in range(50)]
    assert all(-0.5 <= wobble(i, k) <= 0.5 for i in range(50) for k in range(9))
    assert len({wobble(i) for i in range(50)}) == 50


def test_a_parallel_keeps_its_distance() -> None:
    line = bowed((0, 0), (0, 100), 0)
    assert all(x == pytest.approx(-7) for x, _ in beside(line, 7))
