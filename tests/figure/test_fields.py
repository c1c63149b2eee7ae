from __future__ import annotations

from itertools import pairwise

import pytest

from fitdoctor.figure.curves import bowed, fading
from fitdoctor.figure.fields import band, lens, soft
from fitdoctor.figure.shapes import bounds

LINE = bowed((0, 0), (200, 0), 0)


def test_rings_lie_within_one_another() -> None:
    field = band(LINE, lambda _: 0.0, lambda _: 20.0, "shade", 0.5, 8, fading(0.3, 0.3))
    boxes = [bounds(tuple(point for area in ring for point in area)) for ring in field.rings]
    for outer, inner in pairwise(boxes):
        assert outer[0] <= inner[0]
        assert outer[2] >= inner[2]
        assert outer[3] - outer[1] >= inner[3] - inner[1]


def test_a_band_reaches_both_sides_and_a_soft_edge_one() -> None:
    both = band(LINE, lambda _: 0.0, lambda _: 20.0, "shade", 0.5).rings[0][0]
    one = soft(LINE, lambda _: 0.0, lambda _: 20.0, "shade", 0.5).rings[0][0]
    assert bounds(both)[1] < -15
    assert bounds(both)[3] > 15
    assert bounds(one)[1] == pytest.approx(0)
    assert bounds(one)[3] > 15


def test_a_fading_field_runs_to_a_point() -> None:
    area = band(LINE, lambda _: 0.0, lambda _: 20.0, "shade", 0.5, 8, fading(0.3, 0.3)).rings[0][0]
    left = min(x for x, _ in area)
    assert {round(y, 6) for x, y in area if x == left} == {0.0}


def test_no_layer_is_thinner_than_what_rounds_cleanly() -> None:
    field = soft(LINE, lambda _: 0.0, lambda _: 9.0, "shade", 0.05, 12)
    assert field.strength / len(field.rings) == pytest.approx(0.011, rel=0.2)


def test_a_lens_dies_at_both_ends() -> None:
    pen = lens(LINE, 2.0, "ink", 0.8, (0.3, 0.3)).outline
    middle = [y for x, y in pen if abs(x - 100) < 1]
    assert max(middle) - min(middle) == pytest.approx(2.0)
    assert {round(y, 9) for x, y in pen if x in (0, 200)} == {0.0}
