"""Sets of causes drawn by Gibbs sampling, for groups of "yes" findings too large to sweep.

The chains start from the likeliest sets, found by a beam, because a chain that changes one cause at a time seldom walks from one good
explanation to its rival.
"""

from __future__ import annotations

import numpy as np

from fitdoctor.diagnosis.net import Bools, Floats, log_explained, log_or_never

_CHAINS = 400
_SWEEPS = 30
_WARM_UP = 6
_BEAM = 60
_MOST_CAUSES = 12


def gibbs_sets(rng: np.random.Generator, on: Floats, off: Floats, links: Floats, leaks: Floats) -> Bools:
    """Draw sets of causes given that all findings of one group are there: (draws, causes).

    Args:
        on, off: (causes,) chance that the cause is present, absent; links: (findings, causes); leaks: (findings,).
    """
    silent, silent_leak = log_or_never(1 - links.T), log_or_never(1 - leaks)
    odds = log_or_never(on) - log_or_never(off)
    sets = _starts(rng, on, off, silent, silent_leak)
    free = np.flatnonzero((on > 0) & (off > 0)).tolist()
    drawn: list[Bools] = []
    for round_ in range(_SWEEPS):
        unexplained = sets @ silent + silent_leak
        for cause in free:
            _redraw(rng, sets, unexplained, cause, odds[cause], silent[cause])
        if round_ >= _WARM_UP:
            drawn.append(sets.copy())
    return np.concatenate(drawn)


def _redraw(rng: np.random.Generator, sets: Bools, unexplained: Floats, cause: int, odds: float, silent: Floats) -> None:
    """Draw one cause anew in every chain, the others kept; `sets` and `unexplained` are brought up to date in place."""
    touched = np.flatnonzero(silent)
    without = unexplained[:, touched] - np.outer(sets[:, cause], silent[touched])
    with_it = without + silent[touched]
    leaning = odds + (log_explained(with_it) - log_explained(without)).sum(axis=1)
    sets[:, cause] = rng.random(len(sets)) * (1 + np.exp(-np.clip(leaning, -700, 700))) < 1
    unexplained[:, touched] = np.where(sets[:, [cause]], with_it, without)


def _starts(rng: np.random.Generator, on: Floats, off: Floats, silent: Floats, silent_leak: Floats) -> Bools:
    """One starting set a chain, from the likeliest sets of each size."""
    free = (on > 0) & (off > 0)
    odds = np.where(free, log_or_never(on) - log_or_never(off), 0.0)
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
    score: Floats = sets @ odds + log_explained(sets @ silent + silent_leak).sum(axis=1)
    return score
