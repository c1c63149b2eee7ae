"""Draws are the same everywhere and fair."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.practice.lots import Lots


def test_the_draws_of_a_seed_never_change() -> None:
    lots = Lots("class", 7)
    assert [lots.below(1000) for _ in range(6)] == [758, 424, 478, 308, 39, 352]
    assert "".join(Lots("class", 7).shuffled("abcdefgh")) == "dfeabhcg"


def test_parts_of_a_seed_are_kept_apart() -> None:
    assert Lots("a", "b").below(10**9) != Lots("ab").below(10**9)


@given(st.lists(st.integers()), st.integers())
def test_mixing_loses_and_invents_nothing(things: list[int], seed: int) -> None:
    assert sorted(Lots(seed).shuffled(things)) == sorted(things)


@given(st.integers(1, 50), st.integers())
def test_a_number_below_an_end_lies_below_it(end: int, seed: int) -> None:
    assert 0 <= Lots(seed).below(end) < end


def test_every_order_of_three_comes_up_alike_often() -> None:
    lots = Lots("orders")
    counts = [0] * 6
    orders = ["abc", "acb", "bac", "bca", "cab", "cba"]
    for _ in range(6000):
        counts[orders.index("".join(lots.shuffled("abc")))] += 1
    assert all(abs(count - 1000) < 120 for count in counts), "four standard deviations"
