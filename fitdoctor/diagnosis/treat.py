"""Which causes to treat, where the fitter has not said so."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import numpy as np

from fitdoctor.diagnosis.ranking import Diagnosis, Explanation, RankedCause
from fitdoctor.knowledge.knowledge import Knowledge

TREAT_FROM = 0.5
TIED_WITHIN = 1.25
AHEAD_FROM = 0.3
AHEAD_BY = 2.0


SameWork = Callable[[str, str], bool]


def other_work(_cause: str, _rival: str) -> bool:
    """Two causes whose work is not compared."""
    return False


def same_work(knowledge: Knowledge, garment: str) -> SameWork:
    """Whether the first way to treat a cause treats its rival as well: then nothing hangs on which of them it is."""

    def same(cause: str, rival: str) -> bool:
        ways = knowledge.methods_for(cause, garment)
        return bool(ways) and rival in ways[0].treats

    return same


def likely(diagnosis: Diagnosis, same: SameWork = other_work) -> tuple[str, ...]:
    """The causes to treat, the likeliest first; "nothing is wrong" counts like any other and is then left alone.

    A cause is taken from `TREAT_FROM` on, unless a rival for the same sight has nearly the same odds (`TIED_WITHIN`): a tie is for
    the next check to part, where the work hangs on it (`same`). For a sight none of those taken can bring on, its leading cause is
    taken from `AHEAD_FROM` on if its odds are `AHEAD_BY` times those of the next that could. Nothing is taken that the whole
    explanations do not hold together with what was taken before: rivals for the same sight are not treated together.
    """
    taken: list[str] = []
    for cause in diagnosis.causes:
        fits = cause.probability >= TREAT_FROM and _goes_with(diagnosis.explanations, taken, cause.id, TREAT_FROM)
        if fits and not _tied(diagnosis, cause, same):
            taken.append(cause.id)
    for leader in _leaders(diagnosis, taken):
        if leader not in taken and _goes_with(diagnosis.explanations, taken, leader, AHEAD_FROM):
            taken.append(leader)
    return tuple(taken)


def _tied(diagnosis: Diagnosis, cause: RankedCause, same: SameWork) -> bool:
    """Whether a rival for the same sight, that is not thought to be there as well and wants other work, has nearly the same odds."""
    net = diagnosis.net
    for rival in diagnosis.causes:
        near = rival.id != cause.id and not same(cause.id, rival.id) and _odds(rival.probability) * TIED_WITHIN > _odds(cause.probability)
        shared = net.net.links[np.ix_(net.yes, [net.column[cause.id], net.column[rival.id]])].min(axis=1, initial=1.0)
        if near and (shared > 0).any() and not _goes_with(diagnosis.explanations, [cause.id], rival.id, TREAT_FROM):
            return True
    return False


def _leaders(diagnosis: Diagnosis, taken: Sequence[str]) -> Iterator[str]:
    """For each finding that is there and that none of the taken causes brings on: the cause clearly ahead, if there is one."""
    net = diagnosis.net
    for row in net.yes:
        able = [cause for cause in diagnosis.causes if net.net.links[row, net.column[cause.id]] > 0 and not cause.ruled_out]
        if able and not any(cause.id in taken for cause in able) and _clearly_ahead(able):
            yield able[0].id


def _clearly_ahead(ranked: Sequence[RankedCause]) -> bool:
    first = ranked[0].probability
    second = ranked[1].probability if len(ranked) > 1 else 0.0
    return first >= AHEAD_FROM and _odds(first) >= AHEAD_BY * _odds(second)


def _odds(chance: float) -> float:
    return chance / max(1e-12, 1 - chance)


def _goes_with(explanations: Sequence[Explanation], taken: Sequence[str], cause: str, least: float) -> bool:
    """Whether the cause has at least this chance in those explanations that hold all that was taken so far."""
    holding = [e for e in explanations if set(taken) <= set(e.causes)]
    together = sum(e.probability for e in holding if cause in e.causes)
    return not taken or together >= least * sum(e.probability for e in holding)
