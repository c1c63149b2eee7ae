"""What a purchase is worth."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.assess import Choice
from fitdoctor.rack.foresight import worth_of_telling
from fitdoctor.rack.prospects import VIEWS, Prospect, View
from fitdoctor.rack.stake import Outcome, Stake, joined, outcome

CHANCES = st.floats(0, 1)
CAUSES = st.lists(st.tuples(CHANCES, CHANCES, st.floats(0, 300)), min_size=1, max_size=5)


def prospect(cause: str, cured: float, minutes: float, method: str = "") -> Prospect:
    return Prospect(
        cause, method or f"for-{cause}", Choice(cause, (), None), dict.fromkeys(VIEWS, cured), minutes, minutes, 0.0, (), frozenset()
    )


def come_to(stake: Stake, causes: list[tuple[float, float, float]], rivals: bool, view: View = "likely") -> Outcome:
    names = [f"c{number}" for number in range(len(causes))]
    prospects = {name: prospect(name, cured, minutes) for name, (_, cured, minutes) in zip(names, causes, strict=True)}
    chances = {name: chance for name, (chance, _, _) in zip(names, causes, strict=True)}
    return outcome(stake, chances, prospects, [frozenset(names)] if rivals else [], view, 1.0)


def test_price_work_and_risk_are_taken_from_the_worth() -> None:
    found = come_to(Stake(30, 100, 20), [(1.0, 0.5, 60)], rivals=False)
    assert (found.fits, found.minutes, found.work, found.risk, found.gain) == (0.5, 60, 10, 50, 10)


def test_nothing_the_matter_leaves_worth_less_price() -> None:
    assert outcome(Stake(30, 100, 20), {}, {}, [], "likely", 1.0).gain == 70


def test_of_two_rivals_beyond_cure_one_is_there_for_certain() -> None:
    assert come_to(Stake(0, 100), [(0.5, 0, 0), (0.5, 0, 0)], rivals=True).fits == 0


def test_two_causes_that_have_nothing_to_do_with_each_other_are_independent() -> None:
    assert come_to(Stake(0, 100), [(0.5, 0, 0), (0.5, 0, 0)], rivals=False).fits == 0.25


def test_one_method_for_two_causes_is_done_once() -> None:
    prospects = {name: prospect(name, 1.0, 60, "let-out") for name in ("a", "b")}
    assert outcome(Stake(0, 100), {"a": 1.0, "b": 1.0}, prospects, [], "likely", 1.0).minutes == 60


@given(CAUSES, st.booleans(), st.floats(0, 1000), st.floats(0, 1000), st.floats(0, 100))
def test_no_purchase_is_worth_more_than_a_garment_that_fits(
    causes: list[tuple[float, float, float]], rivals: bool, price: float, worth: float, rate: float
) -> None:
    found = come_to(Stake(price, worth, rate), causes, rivals)
    assert 0 <= found.fits <= 1
    assert found.gain <= worth - price + 1e-6
    assert found.gain == pytest.approx(worth - price - found.work - found.risk)


@given(CAUSES, st.booleans(), CHANCES)
def test_a_better_cure_never_makes_it_worse(causes: list[tuple[float, float, float]], rivals: bool, better: float) -> None:
    improved = [(chance, max(cured, better), minutes) for chance, cured, minutes in causes]
    assert come_to(Stake(10, 100), improved, rivals).gain >= come_to(Stake(10, 100), causes, rivals).gain - 1e-9


@given(st.lists(st.tuples(st.floats(0.01, 1), st.floats(-100, 100)), min_size=1, max_size=5))
def test_to_be_told_never_costs_and_is_worth_something_only_where_it_turns_the_choice(answers: list[tuple[float, float]]) -> None:
    worth = worth_of_telling(answers)
    assert worth >= -1e-9
    if all(gain >= 0 for _, gain in answers) or all(gain <= 0 for _, gain in answers):
        assert worth == pytest.approx(0, abs=1e-9)
    elif min(abs(gain) for _, gain in answers) > 0.1:
        assert worth > 0


@given(st.lists(st.frozensets(st.sampled_from("abcdefgh"), min_size=1, max_size=3), max_size=4), st.frozensets(st.sampled_from("abcdefgh")))
def test_groups_of_rivals_stay_apart_after_a_new_sight(groups: list[frozenset[str]], able: frozenset[str]) -> None:
    apart: list[frozenset[str]] = []
    for group in groups:
        apart = joined(apart, group)
    after = joined(apart, able)
    assert sum(len(group) for group in after) == len(frozenset().union(*after))
    assert any(able <= group for group in after)
