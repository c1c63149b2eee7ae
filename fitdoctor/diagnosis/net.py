"""The numbers behind a diagnosis: causes above, findings below, joined by noisy-OR links with leaks.

P(a finding is absent | causes) = (1 - its leak) * product over the present causes of (1 - link). The links are "net": the effect
of that cause alone, the leak apart (Díez, Parameter adjustment in Bayes networks: the generalized noisy OR-gate, 1993).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Bools = npt.NDArray[np.bool_]
_LEAST = 1e-300


@dataclass(frozen=True, eq=False)
class Net:
    """A two-layer noisy-OR net.

    Attributes:
        priors: chance of each cause; 0 and 1 are allowed.
        links: one row a finding, one column a cause: how often the cause alone brings the finding on.
        leaks: how often each finding shows without any of the causes.
    """

    priors: Floats
    links: Floats
    leaks: Floats


@dataclass(frozen=True, eq=False)
class Absorbed:
    """The net after "no" findings were worked into the priors, which is exact: they factor over the causes. One row a case.

    Attributes:
        on: (rows, causes) chance that the cause is present, off: that it is absent; they add to 1.
        log_odds: (rows, causes) natural logarithm, free of rounding near 0 and 1.
        log_evidence: (rows,) natural logarithm of the chance of the "no" findings; -inf where they cannot be.
    """

    on: Floats
    off: Floats
    log_odds: Floats
    log_evidence: Floats


def absorb(net: Net, absent: Bools) -> Absorbed:
    """Work findings answered "no" into the priors.

    Args:
        absent: (rows, findings), True where the finding was answered "no".
    """
    with np.errstate(divide="ignore", invalid="ignore"):
        log_on = np.log(net.priors) + _log_silent(net.links, absent)
        log_off = np.log1p(-net.priors)
        each = np.logaddexp(log_on, log_off)
        cannot_be = np.isneginf(each)
        return Absorbed(
            on=np.where(cannot_be, net.priors, np.exp(log_on - each)),
            off=np.where(cannot_be, 1 - net.priors, np.exp(log_off - each)),
            log_odds=np.where(cannot_be, np.log(net.priors) - log_off, log_on - log_off),
            log_evidence=_log_silent(net.leaks[:, None], absent)[:, 0] + each.sum(axis=1),
        )


def rows_of(net: Net, *answered_no: Iterable[int]) -> Bools:
    """The rows that `absorb` takes, from the numbers of the findings answered "no"."""
    absent = np.zeros((len(answered_no), len(net.leaks)), dtype=bool)
    for row, findings in enumerate(answered_no):
        absent[row, list(findings)] = True
    return absent


def _log_silent(links: Floats, absent: Bools) -> Floats:
    """Logarithm of the chance that a cause brings none of these on; a link of 1 makes it -inf without spoiling other rows."""
    certain = links == 1
    gentle = np.log1p(-np.where(certain, 0.0, links))
    return np.where((absent @ certain.astype(float)) > 0, -np.inf, absent @ gentle)


@dataclass(frozen=True)
class Group:
    """Findings that hang together through causes they share, and those causes; other groups are independent of it."""

    findings: tuple[int, ...]
    causes: tuple[int, ...]


def groups(net: Net, yes: Iterable[int], on: Floats) -> tuple[Group, ...]:
    """Split the findings answered "yes" into groups that share no cause still possible.

    Args:
        on: chance of each cause; those at 0 join nothing.
    """
    parts: list[tuple[set[int], set[int]]] = []
    for finding in yes:
        causes = set(np.flatnonzero((net.links[finding] > 0) & (on > 0)).tolist())
        joined = [part for part in parts if part[1] & causes]
        parts = [part for part in parts if not part[1] & causes]
        parts.append(({finding}.union(*(part[0] for part in joined)), causes.union(*(part[1] for part in joined))))
    return tuple(Group(tuple(sorted(findings)), tuple(sorted(causes))) for findings, causes in parts)


def log_or_never(chances: Floats) -> Floats:
    """Logarithm with a floor, so that what cannot be still ranks below everything that can."""
    return np.log(np.maximum(chances, _LEAST))


def log_explained(log_unexplained: Floats) -> Floats:
    """From the logarithm of the chance that a finding stays unexplained to that of its being explained."""
    return log_or_never(-np.expm1(np.minimum(log_unexplained, 0.0)))
