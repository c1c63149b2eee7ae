"""The order in which things are tried."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.rack.trials import order_of_trials

TRIALS = [(0.45, 90.0), (0.25, 20.0), (0.20, 50.0), (0.10, 5.0)]
"""(chance, cost): the worked example of a search, after the rule of Kadane & Simon (1977)."""


def chance(trial: tuple[float, float]) -> float:
    return trial[0]


def cost(trial: tuple[float, float]) -> float:
    return trial[1]


def expected_cost(
    trials: Sequence[tuple[float, float]], chance: Callable[[tuple[float, float]], float], cost: Callable[[tuple[float, float]], float]
) -> float:
    """Going through the trials in this order, where exactly one of them will succeed."""
    spent, expected = 0.0, 0.0
    for trial in trials:
        spent += cost(trial)
        expected += chance(trial) * spent
    return expected


def test_the_likeliest_for_its_cost_comes_first() -> None:
    ordered = order_of_trials(TRIALS, chance, cost)
    assert expected_cost(ordered, chance, cost) == pytest.approx(91.5)


def test_chance_alone_and_cost_alone_take_longer() -> None:
    by_chance = sorted(TRIALS, key=lambda t: -t[0])
    by_cost = sorted(TRIALS, key=lambda t: t[1])
    assert expected_cost(by_chance, chance, cost) == pytest.approx(116.5)
    assert expected_cost(by_cost, chance, cost) == pytest.approx(96.0)


@given(st.lists(st.tuples(st.floats(0.01, 1), st.floats(0.1, 100)), min_size=1, max_size=6))
def test_no_other_order_is_cheaper(trials: list[tuple[float, float]]) -> None:
    best = min(expected_cost(order, chance, cost) for order in permutations(trials))
    assert expected_cost(order_of_trials(trials, chance, cost), chance, cost) == pytest.approx(best)
