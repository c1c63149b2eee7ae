"""The posterior against textbook tables, counting over all sets of causes, and another program for Bayesian nets."""

from __future__ import annotations

import itertools
import math
import warnings
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitdoctor.diagnosis.drawn import swept_sets
from fitdoctor.diagnosis.gibbs import gibbs_sets
from fitdoctor.diagnosis.net import Bools, Floats, Net
from fitdoctor.diagnosis.posterior import odds_without, posterior, posteriors

with warnings.catch_warnings():  # its binding cannot bear a warning turned into an error while it is imported
    warnings.simplefilter("ignore")
    import pyagrum

gum: Any = pyagrum

# Russell & Norvig, Artificial Intelligence: A Modern Approach, noisy-OR table for fever: inhibitors cold .6, flu .2, malaria .1.
FEVER = np.array([[0.4, 0.8, 0.9]])
FEVER_TABLE = {(): 0.0, (2,): 0.9, (1,): 0.8, (1, 2): 0.98, (0,): 0.4, (0, 2): 0.94, (0, 1): 0.88, (0, 1, 2): 0.988}


def certain(causes: tuple[int, ...], of: int) -> Floats:
    priors = np.zeros(of)
    priors[list(causes)] = 1.0
    return priors


def random_net(rng: np.random.Generator, causes: int, findings: int, *, hard: bool = False) -> Net:
    links = rng.uniform(0.05, 0.97, (findings, causes)) * (rng.random((findings, causes)) < 0.4)
    priors = rng.uniform(0.005, 0.6, causes)
    leaks = rng.uniform(0.005, 0.2, findings)
    if hard:
        links[rng.random(links.shape) < 0.08] = 1.0
        priors[rng.random(causes) < 0.15] = 0.0
        priors[rng.random(causes) < 0.1] = 1.0
        leaks[rng.random(findings) < 0.2] = 0.0
    return Net(priors, links, leaks)


def counted(net: Net, yes: list[int], no: list[int]) -> tuple[Floats, float]:
    """Posterior and chance of the evidence by adding up every set of causes."""
    total, with_it = 0.0, np.zeros(len(net.priors))
    for present in itertools.product((0, 1), repeat=len(net.priors)):
        on = np.array(present, dtype=bool)
        chance = float(np.prod(np.where(on, net.priors, 1 - net.priors)))
        absent = (1 - net.leaks) * np.prod(1 - net.links[:, on], axis=1)
        chance *= float(np.prod(1 - absent[yes]) * np.prod(absent[no]))
        total += chance
        with_it[on] += chance
    return with_it / total if total else net.priors, total


@pytest.mark.parametrize(("present", "fever"), FEVER_TABLE.items())
def test_the_textbook_table_of_noisy_or_comes_out(present: tuple[int, ...], fever: float) -> None:
    net = Net(certain(present, 3), FEVER, np.zeros(1))
    seen, not_seen = posterior(net, [0], []), posterior(net, [], [0])
    assert math.exp(seen.log_evidence) == pytest.approx(fever, abs=1e-12)
    assert math.exp(not_seen.log_evidence) == pytest.approx(1 - fever, abs=1e-12)


def test_fever_with_even_priors_gives_the_derived_posteriors() -> None:
    found = posterior(Net(np.full(3, 0.5), FEVER, np.zeros(1)), [0], [])
    assert found.chances == pytest.approx([0.544837, 0.619565, 0.646739], abs=1e-6)


@pytest.mark.parametrize(("present", "chance"), [((), 0.1), ((0,), 0.28), ((1,), 0.46), ((0, 1), 0.568)])
def test_the_leak_is_one_more_cause(present: tuple[int, ...], chance: float) -> None:
    # Díez & Druzdzel, Canonical probabilistic models for knowledge engineering: net links, leak .1, links .2 and .4.
    net = Net(certain(present, 2), np.array([[0.2, 0.4]]), np.array([0.1]))
    assert math.exp(posterior(net, [0], []).log_evidence) == pytest.approx(chance, abs=1e-12)


@pytest.mark.parametrize("seed", range(60))
def test_the_sweep_agrees_with_counting_every_set_of_causes(seed: int) -> None:
    rng = np.random.default_rng(seed)
    net = random_net(rng, int(rng.integers(1, 9)), int(rng.integers(1, 9)), hard=seed % 2 == 0)
    answers = rng.integers(0, 3, len(net.leaks))
    yes, no = np.flatnonzero(answers == 1).tolist(), np.flatnonzero(answers == 2).tolist()
    found = posterior(net, yes, no)
    expected, evidence = counted(net, yes, no)
    assert found.chances == pytest.approx(expected, abs=1e-12)
    assert math.exp(found.log_evidence) == pytest.approx(evidence, rel=1e-10, abs=1e-300)


@pytest.mark.parametrize("seed", range(200))
def test_random_nets_agree_with_an_independent_program(seed: int) -> None:
    rng = np.random.default_rng(1000 + seed)
    net = random_net(rng, int(rng.integers(2, 13)), int(rng.integers(2, 10)))
    answers = rng.integers(0, 3, len(net.leaks))
    yes, no = np.flatnonzero(answers == 1).tolist(), np.flatnonzero(answers == 2).tolist()
    assert posterior(net, yes, no).chances == pytest.approx(independent(net, yes, no), abs=1e-9)


def independent(net: Net, yes: list[int], no: list[int]) -> list[float]:
    bn = gum.BayesNet()
    for cause, prior in enumerate(net.priors):
        bn.add(gum.LabelizedVariable(f"c{cause}", "", 2))
        bn.cpt(f"c{cause}").fillWith([1 - prior, prior])
    for finding, leak in enumerate(net.leaks.tolist()):
        bn.addNoisyORNet(gum.LabelizedVariable(f"f{finding}", "", 2), leak)
        for cause in np.flatnonzero(net.links[finding]).tolist():
            bn.addWeightedArc(f"c{cause}", f"f{finding}", float(net.links[finding, cause]))
    engine = gum.LazyPropagation(bn)
    engine.setEvidence({f"f{f}": 1 for f in yes} | {f"f{f}": 0 for f in no})
    engine.makeInference()
    return [float(engine.posterior(f"c{cause}")[1]) for cause in range(len(net.priors))]


def test_sixteen_findings_seen_lose_no_digits() -> None:
    rng = np.random.default_rng(7)
    net = Net(np.full(6, 0.02), rng.uniform(0.1, 0.9, (16, 6)), np.full(16, 0.001))
    yes = list(range(16))
    assert posterior(net, yes, []).chances == pytest.approx(counted(net, yes, [])[0], rel=1e-11)


def test_impossible_findings_give_the_priors_and_no_evidence() -> None:
    net = Net(np.array([0.3, 1.0]), np.array([[0.0, 1.0]]), np.zeros(1))
    found = posterior(net, [], [0])
    assert found.log_evidence == -math.inf
    assert found.chances == pytest.approx([0.3, 1.0])


def test_a_finding_no_cause_can_show_and_no_leak_lets_through_is_impossible() -> None:
    assert posterior(Net(np.array([0.3]), np.zeros((1, 1)), np.zeros(1)), [0], []).log_evidence == -math.inf


def test_a_finding_only_the_leak_explains_changes_nothing() -> None:
    found = posterior(Net(np.array([0.3]), np.zeros((1, 1)), np.array([0.05])), [0], [])
    assert found.chances == pytest.approx([0.3])
    assert math.exp(found.log_evidence) == pytest.approx(0.05)


@pytest.mark.parametrize("seed", range(20))
def test_leaving_a_finding_out_is_the_same_as_never_asking(seed: int) -> None:
    rng = np.random.default_rng(seed)
    net = random_net(rng, 7, 8)
    yes, no = [0, 1, 2, 3], [4, 5]
    without = odds_without(net, yes, no)
    assert set(without) == {*yes, *no}
    for finding, odds in without.items():
        asked_less = posterior(net, [f for f in yes if f != finding], [f for f in no if f != finding])
        assert odds == pytest.approx(asked_less.log_odds, abs=1e-9)


@pytest.mark.parametrize("seed", range(6))
def test_the_estimate_for_crowded_groups_stays_near_the_exact_chances(seed: int) -> None:
    rng = np.random.default_rng(seed)
    sparse = rng.random((11, 30)) < 0.15
    net = Net(rng.choice([0.008, 0.025, 0.06, 0.12], 30), sparse * rng.choice([0.1, 0.3, 0.55, 0.8, 0.95], (11, 30)), np.full(11, 0.01))
    yes, nothing_no = list(range(11)), np.zeros((1, 11), dtype=bool)
    exact = posteriors(net, yes, nothing_no)
    estimated = posteriors(net, yes, nothing_no, exact_up_to=4)
    assert estimated.estimated
    assert not exact.estimated
    assert np.abs(exact.chances - estimated.chances).max() < 0.05


def test_more_than_sixteen_findings_in_one_group_are_labelled_as_estimated() -> None:
    rng = np.random.default_rng(3)
    net = Net(np.full(9, 0.05), rng.uniform(0.3, 0.9, (20, 9)), np.full(20, 0.01))
    found = posterior(net, list(range(20)), [])
    assert found.estimated
    assert found.chances == pytest.approx(counted(net, list(range(20)), [])[0], abs=0.03)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000), st.permutations(range(6)))
def test_the_order_of_findings_does_not_matter(seed: int, order: list[int]) -> None:
    net = random_net(np.random.default_rng(seed), 6, 6, hard=True)
    plain, mixed = posterior(net, [0, 1, 2], [3, 4]), posterior(
        Net(net.priors, net.links[order], net.leaks[order]), sorted(order.index(f) for f in (0, 1, 2)), [order.index(4), order.index(3)]
    )
    assert mixed.chances == pytest.approx(plain.chances, abs=1e-12)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000))
def test_chances_stay_between_0_and_1_and_unasked_findings_have_no_effect(seed: int) -> None:
    rng = np.random.default_rng(seed)
    net = random_net(rng, 8, 7, hard=True)
    found = posterior(net, [0, 1], [2])
    assert ((found.chances >= 0) & (found.chances <= 1)).all()
    fewer = posterior(Net(net.priors, net.links[:3], net.leaks[:3]), [0, 1], [2])
    assert fewer.chances == pytest.approx(found.chances, abs=1e-12)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000))
def test_a_yes_never_lowers_the_only_cause_it_is_linked_to(seed: int) -> None:
    net = random_net(np.random.default_rng(seed), 6, 6)
    links = net.links.copy()
    links[5] = 0.0
    links[5, 2] = 0.7
    net = Net(net.priors, links, net.leaks)
    assert posterior(net, [0, 1, 5], [2]).chances[2] >= posterior(net, [0, 1], [2]).chances[2] - 1e-12


@pytest.mark.parametrize("drawing", [swept_sets, gibbs_sets])
def test_sets_drawn_at_random_have_the_exact_chances(drawing: Callable[..., Bools]) -> None:
    rng = np.random.default_rng(11)
    sparse = rng.random((9, 20)) < 0.25
    net = Net(rng.choice([0.025, 0.06, 0.12], 20), sparse * rng.choice([0.3, 0.55, 0.8, 1.0], (9, 20)), np.full(9, 0.01))
    group = posterior(net, list(range(9)), [])
    sets = drawing(np.random.default_rng(1), net.priors, 1 - net.priors, net.links, net.leaks)
    linked = net.links.any(axis=0)
    assert sets[:, linked].mean(axis=0) == pytest.approx(group.chances[linked], abs=0.03)
