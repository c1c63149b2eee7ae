"""Plane curves of seams against scipy, shapely and closed forms."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.special import ellipe
from shapely import LineString

from fitdoctor.amounts import pieces
from fitdoctor.amounts.curves import (
    along,
    bezier,
    held_then_out,
    in_and_out,
    offset,
    polyline_length,
    quarter_ellipse_length,
    run_out,
    straight,
    straight_out,
    ways,
)
from fitdoctor.amounts.neck import neckline_longer_mm
from fitdoctor.amounts.seat import crotch_longer_mm
from fitdoctor.units import MM_PER_INCH

sizes = st.floats(1, 500)
shares = st.floats(0, 1)
coordinates = st.floats(-300, 300)
points = st.tuples(coordinates, coordinates)
XY = tuple[float, float]


@given(sizes, sizes)
def test_a_quarter_ellipse_is_as_long_as_the_complete_elliptic_integral_says(a: float, b: float) -> None:
    # scipy.special.ellipe: complete elliptic integral of the second kind, a quarter of the circumference is a E(1 - b²/a²).
    big, small = max(a, b), min(a, b)
    assert quarter_ellipse_length(a, b) == pytest.approx(big * ellipe(1 - (small / big) ** 2), rel=1e-8)


def test_the_dropped_neckline_of_the_worked_example() -> None:
    # Quarter ellipses of half width 3 in: 3.2769 in at depth 7/8 in, 3.5557 in at 1 3/8 in (scipy.special.ellipe).
    assert quarter_ellipse_length(3, 0.875) == pytest.approx(3.2769, abs=5e-5)
    assert quarter_ellipse_length(3, 1.375) == pytest.approx(3.5557, abs=5e-5)
    assert neckline_longer_mm(0.5 * MM_PER_INCH, 3 * MM_PER_INCH, 0.875 * MM_PER_INCH) / MM_PER_INCH == pytest.approx(0.2788, abs=5e-5)


@given(points, points, points, points)
def test_the_length_of_a_bezier_agrees_with_scipy(p0: XY, p1: XY, p2: XY, p3: XY) -> None:
    assume(math.dist(p0, p3) > 1)
    curve = bezier(p0, p1, p2, p3)

    def speed(t: float) -> float:
        return float(np.hypot(*curve.derivative(np.array([t]))[0]))

    expected, error = quad(speed, 0, 1, limit=200)
    assert curve.length() == pytest.approx(expected, abs=1e-5 + 10 * error)


def test_the_run_out_has_its_known_values() -> None:
    # Cubic with zero slope at both ends, d (1 - 3t² + 2t³): exact at the quarters.
    assert [run_out(t) for t in (0, 0.25, 0.5, 0.75, 1)] == [1, 0.84375, 0.5, 0.15625, 0]


@pytest.mark.parametrize("shape", [run_out, straight_out, held_then_out(0.3)], ids=["smooth", "straight", "held"])
@given(t=shares, later=shares)
def test_a_taper_falls_from_all_to_nothing(shape: object, t: float, later: float) -> None:
    assert callable(shape)
    assert (shape(0.0), shape(1.0)) == (1.0, 0.0)
    assert 0 <= shape(max(t, later)) <= shape(min(t, later)) + 1e-12 <= 1 + 1e-12


def test_a_smooth_taper_meets_the_old_seam_without_a_corner() -> None:
    step = 1e-6
    for shape, end in (
        (run_out, 0.0),
        (run_out, 1 - step),
        (held_then_out(0.3), 1 - step),
        (in_and_out(0.5), 0.0),
        (in_and_out(0.5), 1 - step),
    ):
        assert (shape(end + step) - shape(end)) / step == pytest.approx(0, abs=1e-4)


def test_in_and_out_is_nothing_at_the_ends_and_all_at_its_peak() -> None:
    shape = in_and_out(0.4)
    assert (shape(0), shape(0.4), shape(1)) == pytest.approx((0, 1, 0))


@given(st.floats(40, 400), st.floats(1, 20))
def test_a_parallel_line_agrees_with_shapely(length: float, by: float) -> None:
    line = pieces.waist(length)
    assume(by < length / 10)
    parallel = LineString(line).offset_curve(-by)
    ours = LineString(offset(line, np.full(len(line), -by)))
    assert ours.hausdorff_distance(parallel) < 0.05 or ours.hausdorff_distance(LineString(line).offset_curve(by)) < 0.05


@given(st.floats(50, 500))
def test_pieces_are_as_long_as_they_were_measured(length: float) -> None:
    for piece in (pieces.waist, pieces.inseam, pieces.seat_seam, pieces.side_to_hip, pieces.upright, pieces.level):
        assert LineString(piece(length)).length == pytest.approx(length, rel=2e-4)


@given(st.floats(60, 200), st.floats(0, 59))
def test_a_shoulder_has_its_length_and_its_drop(length: float, drop: float) -> None:
    seam = pieces.shoulder(length, drop)
    assert polyline_length(seam) == pytest.approx(length)
    assert seam[-1][1] - seam[0][1] == pytest.approx(drop, abs=1e-9)


def test_the_cap_triangle_of_the_drafting_book() -> None:
    # Sleeve triangle, a drafting book of the 1950s (upper body notes, geometry 14): armhole lines 9.25 and 9.75 in. At cap height 6 in
    # the parts are 7.04 and 7.69 in; an inch less height makes the sleeve 1.43 in wider.
    def width(height: float) -> float:
        return sum(pieces.cap_part_mm((line - 0.25) * MM_PER_INCH, height * MM_PER_INCH) for line in (9.25, 9.75)) / MM_PER_INCH

    assert pieces.cap_part_mm(9 * MM_PER_INCH, 6 * MM_PER_INCH) / MM_PER_INCH == pytest.approx(7.04, abs=0.01)
    assert width(6) == pytest.approx(14.73, abs=0.01)
    assert width(5) - width(6) == pytest.approx(1.43, abs=0.02)


@given(st.floats(0.5, 30), st.floats(40, 90))
def test_a_scooped_crotch_is_longer_and_the_deeper_the_longer(depth: float, half: float) -> None:
    assert 0 < crotch_longer_mm(depth, half) < crotch_longer_mm(depth * 1.5, half)


@given(shares)
def test_points_along_a_line_stand_at_their_way(share: float) -> None:
    line = straight((0, 0), (30, 40))
    assert along(line, np.array([share]))[0] == pytest.approx([30 * share, 40 * share])
    assert ways(line)[-1] == pytest.approx(50)
