"""Expected information gain, in bits.

What is counted is the sum of the entropies of the single causes, because each cause is its own decision (treat it or not): a check that
sends one of two rivals off settles two such questions and counts for both. The entropy of the causes taken together would count it
once, and it would need a sum over all sets of causes for every possible check.
"""

from __future__ import annotations

import numpy as np

from fitdoctor.diagnosis.net import Floats


def entropy_bits(chances: Floats) -> Floats:
    """Entropy of yes-or-no questions with these chances of yes, each 0 to 1."""
    with np.errstate(divide="ignore", invalid="ignore"):
        parts = [np.where(part > 0, -part * np.log2(part), 0.0) for part in (chances, 1 - chances)]
    return np.asarray(parts[0] + parts[1])


def expected_gain_bits(before: Floats, answers: Floats, after: Floats) -> Floats:
    """How many bits of entropy asking takes away on average; never below 0.

    Args:
        before: (causes,) chances now.
        answers: (questions, answers) chance of each answer.
        after: (questions, answers, causes) chances after each answer.
    """
    left = (answers[..., None] * entropy_bits(after)).sum(axis=(-1, -2))
    gained: Floats = np.maximum(0.0, entropy_bits(before).sum() - left)
    return gained
