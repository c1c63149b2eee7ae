"""What closed jobs teach."""

from __future__ import annotations

import math

import msgspec
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.case import Case
from fitdoctor.diagnosis.closing import closed_job, nearest_word, overlay, printed_chances
from fitdoctor.diagnosis.learning import ClosedJob, Learned, Printed, Tally, apply, beta_mean, learn, learn_all
from fitdoctor.knowledge.entries import Cause, LengthMm, When
from tests.diagnosis.small_knowledge import SCALE, cause, small_knowledge

FOLDS = ("symptom", "folds")


def test_the_mean_of_the_beta_is_the_textbooks() -> None:
    # Gelman et al., Bayesian Data Analysis, placenta previa: uniform prior, 437 girls in 980 births.
    assert beta_mean(Tally(437, 980), 0.5, weight=2) == pytest.approx(0.44603, abs=5e-6)


def test_without_jobs_the_printed_chances_stay() -> None:
    printed = Printed({("long", FOLDS): 0.8}, {FOLDS: 0.01}, {"long": 0.12})
    assert apply(Learned(), printed, "trousers") == printed


def test_one_cause_without_a_leak_is_plain_counting() -> None:
    printed = Printed({("long", FOLDS): 0.8}, {FOLDS: 0.0}, {"long": 0.12})
    jobs = [ClosedJob("trousers", frozenset({"long"}), {FOLDS: answer}) for answer in ("yes", "yes", "no", "yes")]
    learned = learn_all(Learned(), jobs, {"trousers": printed})
    assert learned.links["long", FOLDS] == Tally(3, 4)
    assert learned.strength("long", FOLDS, 0.8) == pytest.approx((20 * 0.8 + 3) / 24)
    assert learned.priors["long", "trousers"] == Tally(4, 4)


def test_several_causes_and_the_leak_share_a_finding_by_who_brought_it_on() -> None:
    printed = Printed({("a", FOLDS): 0.6, ("b", FOLDS): 0.3}, {FOLDS: 0.1}, {"a": 0.1, "b": 0.1, "c": 0.1})
    learned = learn(Learned(), ClosedJob("trousers", frozenset({"a", "b", "c"}), {FOLDS: "yes"}), printed)
    there = 1 - 0.4 * 0.7 * 0.9
    assert learned.links["a", FOLDS].yes == pytest.approx(0.6 / there)
    assert learned.links["b", FOLDS].yes == pytest.approx(0.3 / there)
    assert learned.leaks[FOLDS].yes == pytest.approx(0.1 / there)
    assert ("c", FOLDS) not in learned.links


def test_a_no_lowers_every_confirmed_cause_that_could_have_shown_it() -> None:
    printed = Printed({("a", FOLDS): 0.6, ("b", FOLDS): 0.3}, {FOLDS: 0.1}, {})
    learned = learn(Learned(), ClosedJob("trousers", frozenset({"a", "b"}), {FOLDS: "no"}), printed)
    assert learned.links == {("a", FOLDS): Tally(0, 1), ("b", FOLDS): Tally(0, 1)}


@given(st.floats(0, 1), st.integers(0, 500), st.floats(0, 1))
def test_a_learned_chance_lies_between_the_printed_and_the_counted(printed: float, times: int, share: float) -> None:
    mean = beta_mean(Tally(times * share, times), printed)
    assert min(printed, share) - 1e-9 <= mean <= max(printed, share) + 1e-9


def test_two_thousand_jobs_of_another_shop_bring_the_true_chances_within_reach() -> None:
    rng = np.random.default_rng(5)
    findings = [("symptom", f"f{n}") for n in range(6)]
    causes = [f"c{n}" for n in range(4)]
    true_links = {(c, f): float(rng.uniform(0.2, 0.95)) for c in causes for f in findings if rng.random() < 0.6}
    printed = Printed({key: 0.55 for key in true_links}, dict.fromkeys(findings, 0.01), dict.fromkeys(causes, 0.1))
    true = Printed(true_links, dict.fromkeys(findings, 0.03), dict.fromkeys(causes, 0.3))
    jobs = [simulated(rng, true) for _ in range(2000)]
    after = apply(learn_all(Learned(), jobs, {"trousers": printed}), printed, "trousers")
    tests = [simulated(rng, true) for _ in range(1000)]
    before, now, best = (sum(log_score(model, job) for job in tests) / len(tests) for model in (printed, after, true))
    assert before < now - 0.1
    assert now == pytest.approx(best, rel=0.02)


def simulated(rng: np.random.Generator, model: Printed) -> ClosedJob:
    present = frozenset(cause for cause, prior in model.priors.items() if rng.random() < prior)
    answers = {f: "yes" if rng.random() < chance_of(model, f, present) else "no" for f in model.leaks}
    return ClosedJob("trousers", present, answers)  # type: ignore[arg-type]


def chance_of(model: Printed, finding: tuple[str, str], present: frozenset[str]) -> float:
    absent = math.prod(1 - model.links.get((cause, finding), 0.0) for cause in present)
    return 1 - absent * (1 - model.leaks[finding])


def log_score(model: Printed, job: ClosedJob) -> float:
    """Logarithm of the chance the model gives to the whole job: its causes and its findings."""
    causes = sum(math.log(prior if cause in job.confirmed else 1 - prior) for cause, prior in model.priors.items())
    seen = {f: chance_of(model, f, job.confirmed) for f in job.answers}
    return causes + sum(math.log(seen[f] if answer == "yes" else 1 - seen[f]) for f, answer in job.answers.items())


def test_a_closed_case_teaches_what_was_answered_and_nothing_else() -> None:
    knowledge = small_knowledge()
    case = Case(garment="trousers", seen=("folds",), looked=("back",), answers={"pin": "yes", "pad": "not-known"})
    job = closed_job(knowledge, case, ["long", "of-another-garment"])
    assert job.confirmed == {"long"}
    assert job.answers == {FOLDS: "yes", ("symptom", "bag"): "no", ("check", "pin"): "yes"}
    assert printed_chances(knowledge, "trousers").links["long", FOLDS] == 0.8


def test_the_overlay_holds_only_entries_whose_words_changed_and_reads_back() -> None:
    knowledge = small_knowledge()
    learned = Learned(links={("long", FOLDS): Tally(10, 100)}, priors={("flat", "trousers"): Tally(12, 100)})
    laid_over = overlay(knowledge, learned)
    assert set(laid_over) == {("causes", "long")}
    assert laid_over["causes", "long"]["shows_as"][0]["strength"] == "sometimes"
    assert msgspec.convert(laid_over["causes", "long"], Cause).shows_as[1] == knowledge.causes["long"].shows_as[1]


def test_lengths_keep_their_unit_in_the_overlay() -> None:
    knowledge = small_knowledge()
    rule = When(not_=When(measurement="tuck", exceeds=LengthMm(6)))
    knowledge.causes["long"] = cause("long", {"folds": "usually"}, impossible_if=(rule,))
    laid_over = overlay(knowledge, Learned(links={("long", FOLDS): Tally(0, 100)}))
    assert laid_over["causes", "long"]["impossible_if"] == [{"not": {"measurement": "tuck", "exceeds": "6 mm"}}]


def test_the_nearest_word_is_nearest_in_odds() -> None:
    assert nearest_word(0.9, SCALE["strength"], "seldom") == "nearly-always"
    assert nearest_word(0.02, SCALE["leak"], "leak") == "leak"
    assert nearest_word(0.5, SCALE["strength"], "not-of-this-scale") == "not-of-this-scale"
