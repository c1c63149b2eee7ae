"""Sharing over seams: water filling against a general solver, rounding by the largest remainder."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import linprog, minimize

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.marks import Length
from fitdoctor.amounts.rounding import round_calculation
from fitdoctor.amounts.split import round_shares, share_evenly
from fitdoctor.errors import FitdoctorError
from fitdoctor.units import MM_PER_INCH

limits = st.lists(st.one_of(st.floats(0, 50), st.just(math.inf)), min_size=1, max_size=7)
totals = st.floats(0, 200)


@given(totals, limits)
def test_nothing_is_dropped_and_no_seam_goes_past_its_limit(total: float, limits: list[float]) -> None:
    shares = share_evenly(total, limits)
    assert sum(shares.amounts) + shares.unplaced == pytest.approx(total)
    assert all(-1e-12 <= amount <= limit + 1e-9 for amount, limit in zip(shares.amounts, limits, strict=True))
    assert shares.unplaced == pytest.approx(max(0.0, total - sum(limits)), abs=1e-9)


@given(totals, limits)
def test_seams_with_like_limits_take_alike(total: float, limits: list[float]) -> None:
    amounts = share_evenly(total, [*limits, *limits]).amounts
    assert amounts[: len(limits)] == pytest.approx(amounts[len(limits) :])


@given(totals, limits, st.randoms(use_true_random=False))
def test_the_order_of_the_seams_changes_nothing(total: float, limits: list[float], random: object) -> None:
    order = list(range(len(limits)))
    random.shuffle(order)  # type: ignore[attr-defined]
    amounts, mixed = share_evenly(total, limits).amounts, share_evenly(total, [limits[n] for n in order]).amounts
    assert mixed == pytest.approx([amounts[n] for n in order])


@pytest.mark.parametrize("seed", range(25))
def test_sharing_agrees_with_a_general_solver(seed: int) -> None:
    # scipy.optimize.minimize (SLSQP): the shares nearest to even in the sense of least squares, within the limits.
    random = np.random.default_rng(seed)
    bounds = random.uniform(2, 40, random.integers(2, 7))
    total = random.uniform(0.1, bounds.sum())
    even = total / len(bounds)
    solved = minimize(
        lambda x: float(np.sum((x - even) ** 2)),
        x0=bounds * total / bounds.sum(),
        bounds=[(0, b) for b in bounds],
        constraints={"type": "eq", "fun": lambda x: float(np.sum(x) - total)},
        options={"ftol": 1e-10, "maxiter": 500},
    )
    assert solved.success
    assert share_evenly(total, list(bounds)).amounts == pytest.approx(solved.x, abs=1e-3)


@pytest.mark.parametrize("seed", range(40))
def test_no_other_share_loads_the_fullest_seam_less(seed: int) -> None:
    # scipy.optimize.linprog: the least possible most that any seam takes, some seams without a limit, more wanted than there is room.
    random = np.random.default_rng(seed)
    number = int(random.integers(2, 8))
    bounds = [math.inf if random.random() < 0.3 else float(random.uniform(0, 40)) for _ in range(number)]
    total = float(random.uniform(0.1, 120))
    shares = share_evenly(total, bounds)
    placed = total - shares.unplaced
    solved = linprog(
        c=[0.0] * number + [1.0],
        A_ub=np.hstack((np.eye(number), -np.ones((number, 1)))),
        b_ub=np.zeros(number),
        A_eq=np.array([[1.0] * number + [0.0]]),
        b_eq=[placed],
        bounds=[*((0, None if math.isinf(bound) else bound) for bound in bounds), (0, None)],
    )
    assert solved.success
    assert max(shares.amounts) == pytest.approx(solved.fun, abs=1e-6)
    assert placed == pytest.approx(min(total, sum(bounds)))


def test_sharing_over_no_seam_is_refused() -> None:
    with pytest.raises(FitdoctorError):
        share_evenly(10, [])


steps = st.sampled_from([1.0, MM_PER_INCH / 8, MM_PER_INCH / 16])


@given(st.floats(0, 30), st.floats(0, 30), st.integers(0, 3), st.integers(0, 2), steps)
def test_rounding_keeps_the_total_and_like_seams_alike(pair: float, single: float, pairs: int, singles: int, step: float) -> None:
    amounts = [single] * singles + [pair] * (2 * pairs)
    names = [f"single-{n}" for n in range(singles)] + [f"pair-{n // 2}" for n in range(2 * pairs)]
    rounded = round_shares(amounts, step, names)
    assert sum(rounded.amounts) + rounded.unplaced == pytest.approx(round(sum(amounts) / step) * step)
    assert rounded.unplaced >= 0
    for n in range(pairs):
        left, right = rounded.amounts[singles + 2 * n : singles + 2 * n + 2]
        assert left == right
    assert all(abs(after - before) < step + 1e-6 for after, before in zip(rounded.amounts, amounts, strict=True))


def test_an_inch_over_three_seams_is_chalked_without_losing_any() -> None:
    # By hand: 16 sixteenths over 2 layers of one seam and 4 layers of two seams; 2 each leaves 4, one more for each layer of the two.
    options = {"seams": "centre-back-seam side-seam side-seam", "take": "in"}
    exact = CALCULATORS["share-seams"].work_out({"total": Length(MM_PER_INCH)}, options)
    rounded = round_calculation(exact, MM_PER_INCH / 16)
    assert [mark.each_mm / MM_PER_INCH for mark in rounded.marks] == pytest.approx([2 / 16, 3 / 16])
    assert sum(mark.total_mm for mark in rounded.marks) == pytest.approx(MM_PER_INCH)
    assert rounded.unplaced_mm == 0


def test_a_rounded_mark_moves_its_line_with_it() -> None:
    exact = CALCULATORS["waist-crescent"].work_out({"total": Length(20.3)}, {})
    mark = round_calculation(exact, 1.0).marks[0]
    assert mark.each_mm == 20
    assert math.dist(mark.old[0], mark.new[0]) == pytest.approx(20)


def test_limits_send_the_rest_to_the_other_seams_and_say_what_is_left() -> None:
    options = {"seams": "centre-back-seam side-seam side-seam", "take": "in"}
    inputs = {"total": Length(60.0), "limit-1": Length(30.0), "limit-2": Length(10.0), "limit-3": Length(10.0)}
    calculation = CALCULATORS["share-seams"].work_out(inputs, options)
    assert {mark.at: mark.total_mm for mark in calculation.marks} == pytest.approx({"centre-back-seam": 30, "side-seam": 20})
    assert calculation.unplaced_mm == pytest.approx(10)


def test_sides_that_measure_differently_are_marked_apart() -> None:
    inputs = {"total": Length(30.0), "limit-1": Length(10.0), "limit-2": Length(25.0)}
    calculation = CALCULATORS["share-seams"].work_out(inputs, {"seams": "side-seam side-seam"})
    assert sorted(mark.total_mm for mark in calculation.marks) == pytest.approx([10, 20])
