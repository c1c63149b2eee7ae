"""An estimate for groups of "yes" findings too large to sweep: the likeliest sets of causes, collected by a beam and weighed.

Sets that were not visited are missing from the sums, so what comes out is labelled as an estimate.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fitdoctor.diagnosis.net import Bools, Floats
from fitdoctor.diagnosis.sweep import Masses

WIDTH = 600
"""Sets kept of each size."""
_MOST_CAUSES = 12
_NEVER = -700.0
_FAR_BELOW = 12.0
"""Where the best set of a size is this much (natural logarithm) below the best of all, larger sets are not looked for."""


@dataclass(frozen=True, eq=False)
class Collected:
    """Sets of causes that may explain the findings.

    Attributes:
        sets: (sets, causes).
        explained: (sets, findings) natural logarithm of the chance that the set explains the finding.
    """

    sets: Bools
    explained: Floats

    def masses(self, on: Floats, off: Floats) -> Masses:
        """Evidence together with each cause on and off: (rows, causes), for the rows of chances given."""
        return self._weighed(self.log_weights(on, off))

    def masses_without_each_finding(self, on: Floats, off: Floats) -> Masses:
        """The same for the first row of chances, with one finding left out in each row of the result."""
        return self._weighed(self.log_weights(on, off)[:1] - self.explained.T)

    def log_weights(self, on: Floats, off: Floats) -> Floats:
        """Natural logarithm of the chance of each set together with the evidence: (rows, sets)."""
        weights: Floats = _log(on) @ self.sets.T + _log(off) @ ~self.sets.T + self.explained.sum(axis=1)
        return weights

    def _weighed(self, log_weights: Floats) -> Masses:
        weights = np.exp(log_weights)
        return Masses(weights @ self.sets, weights @ ~self.sets, weights.sum(axis=1))


def collect(on: Floats, off: Floats, links: Floats, leaks: Floats, width: int = WIDTH) -> Collected:
    """Collect the likeliest sets of causes that explain the findings of one group, level by level of their size.

    Args:
        on, off: (causes,) chance that the cause is present, absent; links: (findings, causes); leaks: (findings,).
        width: sets kept of each size.
    """
    silent, silent_leak = _log(1 - links.T), _log(1 - leaks)
    free = (on > 0) & (off > 0)
    odds = np.where(free, _log(on) - _log(off), 0.0)
    level: Bools = (off == 0)[None]
    kept, best_of_all = [level], float(_score(level, odds, silent, silent_leak)[0])
    for _ in range(min(_MOST_CAUSES, int(free.sum()))):
        level, best = _larger(level, free, odds, width, silent, silent_leak)
        kept.append(level)
        best_of_all = max(best_of_all, best)
        if best < best_of_all - _FAR_BELOW:
            break
    sets = np.concatenate(kept)
    return Collected(sets, _explained(sets, silent, silent_leak))


def _larger(level: Bools, free: Bools, odds: Floats, width: int, silent: Floats, silent_leak: Floats) -> tuple[Bools, float]:
    """The best sets with one cause more, and the score of the best of them."""
    wider = np.unique((level[:, None] | np.eye(len(free), dtype=bool))[~level & free], axis=0)
    score = _score(wider, odds, silent, silent_leak)
    best = np.argsort(-score, kind="stable")[:width]
    return wider[best], float(score[best[0]])


def _score(sets: Bools, odds: Floats, silent: Floats, silent_leak: Floats) -> Floats:
    score: Floats = sets @ odds + _explained(sets, silent, silent_leak).sum(axis=1)
    return score


def _explained(sets: Bools, silent: Floats, silent_leak: Floats) -> Floats:
    return _log(-np.expm1(sets @ silent + silent_leak))


def _log(chances: Floats) -> Floats:
    """Logarithm with a floor, so that what cannot be still ranks."""
    return np.log(np.maximum(chances, np.exp(_NEVER)))
