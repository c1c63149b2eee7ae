"""Sets of causes drawn at random as often as the evidence makes them likely, where working out every row exactly would take too long.

The seed is fixed, so that the same case always gives the same answer.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from fitdoctor.diagnosis.gibbs import gibbs_sets
from fitdoctor.diagnosis.net import Bools, Floats, log_explained, log_or_never
from fitdoctor.diagnosis.sweep import EXACT_UP_TO, Masses, all_explained, look_back, start

Ints = npt.NDArray[np.int64]
_SEED = 20
_DRAWS = 6000


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
        log_weights = (log_or_never(on) - log_or_never(self.on)) @ self.sets.T + (log_or_never(off) - log_or_never(self.off)) @ ~self.sets.T
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
    sets = (gibbs_sets if len(leaks) > EXACT_UP_TO else swept_sets)(rng, on, off, links, leaks)
    return Drawn(sets, log_explained(sets @ log_or_never(1 - links.T) + log_or_never(1 - leaks)), on, off)


def swept_sets(rng: np.random.Generator, on: Floats, off: Floats, links: Floats, leaks: Floats, draws: int = _DRAWS) -> Bools:
    """Independent draws: the causes are gone through in order, each drawn by what the sweep from the end says is still to come."""
    behind = [all_explained(len(leaks))]
    for cause in reversed(range(len(on))):
        behind.append(off[cause] * behind[-1] + on[cause] * look_back(behind[-1], links[:, cause]))
    behind.reverse()
    first = start(leaks) * behind[0][0]
    if first.sum() == 0:
        return np.zeros((1, len(on)), dtype=bool)
    explained = rng.choice(len(first), size=draws, p=first / first.sum())
    sets = np.zeros((draws, len(on)), dtype=bool)
    for cause in range(len(on)):
        if_on = look_back(behind[cause + 1], links[:, cause])[0]
        present = rng.random(draws) * behind[cause][0, explained] < on[cause] * if_on[explained]
        sets[:, cause] = present
        explained[present] = _spread_draws(rng, explained[present], behind[cause + 1], links[:, cause])
    return sets


def _spread_draws(rng: np.random.Generator, explained: Ints, behind: Floats, links: Floats) -> Ints:
    """For a cause that is on: which of its findings it explains, drawn one after the other."""
    bits = np.flatnonzero(links).tolist()
    partly = [behind]
    for bit in bits:
        partly.append(look_back(partly[-1], np.where(np.arange(len(links)) == bit, links, 0.0)))
    for at in reversed(range(len(bits))):
        with_it = explained | (1 << bits[at])
        through = rng.random(len(explained)) * partly[at + 1][0, explained] < links[bits[at]] * partly[at][0, with_it]
        explained = np.where(through, with_it, explained)
    return explained
