"""Whole explanations against counting over all sets of causes."""

from __future__ import annotations

import itertools

import numpy as np
import pytest

from fitdoctor.diagnosis.explain import explanations
from fitdoctor.diagnosis.net import Net
from fitdoctor.diagnosis.posterior import posterior


def random_net(seed: int, causes: int, findings: int) -> Net:
    rng = np.random.default_rng(seed)
    links = rng.uniform(0.05, 0.97, (findings, causes)) * (rng.random((findings, causes)) < 0.5)
    return Net(rng.uniform(0.01, 0.4, causes), links, rng.uniform(0.005, 0.1, findings))


def counted(net: Net, yes: list[int], no: list[int], causes: list[int]) -> dict[tuple[int, ...], float]:
    """Chance of each set of the causes named, the others added up."""
    chances: dict[tuple[int, ...], float] = {}
    for present in itertools.product((0, 1), repeat=len(net.priors)):
        on = np.array(present, dtype=bool)
        absent = (1 - net.leaks) * np.prod(1 - net.links[:, on], axis=1)
        chance = float(np.prod(np.where(on, net.priors, 1 - net.priors)) * np.prod(1 - absent[yes]) * np.prod(absent[no]))
        key = tuple(cause for cause in causes if present[cause])
        chances[key] = chances.get(key, 0.0) + chance
    total = sum(chances.values())
    return {key: chance / total for key, chance in chances.items()}


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("suspect_from", [0.0, 0.15])
def test_the_best_explanations_are_those_that_counting_finds(seed: int, suspect_from: float) -> None:
    net = random_net(seed, 8, 6)
    yes, no = [0, 1, 2, 3], [4]
    found = posterior(net, yes, no)
    suspects = [c for group in found.groups for c in group.causes if found.chances[c] >= suspect_from]
    every = counted(net, yes, no, sorted(suspects))
    best = sorted(every.values(), reverse=True)[:5]
    accounts = explanations(net, no, found, most=5, suspect_from=suspect_from, floor=0.0)
    assert [account.chance for account in accounts] == pytest.approx(best, abs=1e-12)
    assert all(every[account.causes] == pytest.approx(account.chance) for account in accounts)


def test_independent_groups_are_explained_together() -> None:
    net = Net(np.array([0.1, 0.1]), np.array([[0.8, 0.0], [0.0, 0.8]]), np.array([0.01, 0.01]))
    accounts = explanations(net, [], posterior(net, [0, 1], []))
    assert accounts[0].causes == (0, 1)
    assert accounts[0].chance == pytest.approx((0.1 * (0.01 + 0.99 * 0.8) / (0.9 * 0.01 + 0.1 * (0.01 + 0.99 * 0.8))) ** 2)


def test_many_findings_are_explained_by_drawing() -> None:
    links = np.zeros((14, 3))
    links[:, 0], links[:7, 1], links[7:, 2] = 0.8, 0.8, 0.8
    net = Net(np.array([0.05, 0.05, 0.05]), links, np.full(14, 0.01))
    found = posterior(net, list(range(14)), [])
    every = counted(net, list(range(14)), [], [c for c in range(3) if found.chances[c] >= 0.02])
    for account in explanations(net, [], found):
        assert account.chance == pytest.approx(every[account.causes], abs=0.05)


def test_nothing_seen_needs_no_explanation() -> None:
    net = random_net(1, 4, 4)
    assert explanations(net, [0], posterior(net, [], [0])) == ()
