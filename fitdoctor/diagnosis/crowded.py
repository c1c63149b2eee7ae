"""An estimate for groups of "yes" findings too large to sweep: sets of causes drawn at random as often as the evidence makes them likely.

Gibbs sampling with a fixed seed, so that the same case always gives the same answer. The chains start from the likeliest sets, found by
a beam, because a chain that changes one cause at a time seldom walks from one good explanation to its rival.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from fitdoctor.diagnosis.net import Bools, Floats
from fitdoctor.diagnosis.sweep import Masses

_CHAINS = 400
_SWEEPS = 30
_WARM_UP = 6
_BEAM = 60
_MOST_CAUSES = 12
_SEED = 20
_NEVER = -700.0


@dataclass(frozen=True, eq=False)
class Drawn:
    """Sets of causes drawn under one row of chances; other rows and left-out findings weigh them anew.

    Attributes:
        sets: (draws, causes).
        explained: (draws, findings) natural logarithm of the chance that the set explains the finding.
        on, off: (causes,) the chances they were drawn under.
    """

    sets: Bools
    explained: Floats
    on: Floats
    off: Floats

    def masses(self, on: Floats, off: Floats) -> Masses:
        """Each cause on and off for the rows of chances given, (rows, causes); evidence only in proportion between the rows."""
        log_weights = (_log(on) - _log(self.on)) @ self.sets.T + (_log(off) - _log(self.off)) @ ~self.sets.T
        return self._weighed(np.exp(log_weights))

    def masses_without_each_finding(self) -> Masses:
        """The same under the chances drawn under, with one finding left out in each row."""
        return self._weighed(np.exp(-np.maximum(self.explained, -30.0)).T)

    def _weighed(self, weights: Floats) -> Masses:
        parts = weights / len(self.sets)
        return Masses(parts @ self.sets, parts @ ~self.sets, parts.sum(axis=1))


def draw(on: Floats, off: Floats, links: Floats, leaks: Floats) -> Drawn:
    """Draw sets of causes given that all findings of one group are there.

    Args:
        on, off: (causes,) chance that the cause is present, absent; links: (findings, causes); leaks: (findings,).
    """
    rng = np.random.default_rng(_SEED)
    silent, silent_leak = _log(1 - links.T), _log(1 - leaks)
    odds = _log(on) - _log(off)
    sets = _starts(rng, on, off, silent, silent_leak)
    free = np.flatnonzero((on > 0) & (off > 0)).tolist()
    drawn: list[Bools] = []
    for round_ in range(_SWEEPS):
        unexplained = sets @ silent + silent_leak
        for cause in free:
            _redraw(rng, sets, unexplained, cause, odds[cause], silent[cause])
        if round_ >= _WARM_UP:
            drawn.append(sets.copy())
    together = np.concatenate(drawn)
    return Drawn(together, _explained(together @ silent + silent_leak), on, off)


def _redraw(rng: np.random.Generator, sets: Bools, unexplained: Floats, cause: int, odds: float, silent: Floats) -> None:
    """Draw one cause anew in every chain, the others kept; `sets` and `unexplained` are brought up to date in place."""
    touched = np.flatnonzero(silent)
    without = unexplained[:, touched] - np.outer(sets[:, cause], silent[touched])
    with_it = without + silent[touched]
    leaning = odds + (_explained(with_it) - _explained(without)).sum(axis=1)
    sets[:, cause] = rng.random(len(sets)) * (1 + np.exp(-np.clip(leaning, _NEVER, -_NEVER))) < 1
    unexplained[:, touched] = np.where(sets[:, [cause]], with_it, without)


def _starts(rng: np.random.Generator, on: Floats, off: Floats, silent: Floats, silent_leak: Floats) -> Bools:
    """One starting set a chain, from the likeliest sets of each size."""
    free = (on > 0) & (off > 0)
    odds = np.where(free, _log(on) - _log(off), 0.0)
    level: Bools = (off == 0)[None]
    kept, scores = [level], [_score(level, odds, silent, silent_leak)]
    for _ in range(min(_MOST_CAUSES, int(free.sum()))):
        wider = np.unique((level[:, None] | np.eye(len(free), dtype=bool))[~level & free], axis=0)
        score = _score(wider, odds, silent, silent_leak)
        best = np.argsort(-score, kind="stable")[:_BEAM]
        level = wider[best]
        kept.append(level)
        scores.append(score[best])
    weights = np.concatenate(scores)
    chances = np.exp(weights - weights.max())
    return np.concatenate(kept)[rng.choice(len(chances), size=_CHAINS, p=chances / chances.sum())]


def _score(sets: Bools, odds: Floats, silent: Floats, silent_leak: Floats) -> Floats:
    score: Floats = sets @ odds + _explained(sets @ silent + silent_leak).sum(axis=1)
    return score


def _explained(unexplained: Floats) -> Floats:
    return _log(-np.expm1(np.minimum(unexplained, 0.0)))


def _log(chances: Floats) -> Floats:
    """Logarithm with a floor, so that what cannot be still ranks."""
    return np.log(np.maximum(chances, np.exp(_NEVER)))
