"""How it stood before a look that found nothing: what there was to find, and how likely finding nothing was."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from fitdoctor.diagnosis.case_net import CaseNet
from fitdoctor.diagnosis.net import Floats, rows_of
from fitdoctor.diagnosis.posterior import Posterior, posteriors

_EXACT_UP_TO = 7
"""Findings of one group up to which it is worked out exactly."""


@dataclass(frozen=True, eq=False)
class Before:
    """A net with the findings of one look not looked for.

    Attributes:
        found: what the rest says.
        nothing: chance that the look finds nothing.
        if_nothing, if_something: chances of the causes then; of something it is not told which.
    """

    net: CaseNet
    found: Posterior
    nothing: float
    if_nothing: Floats
    if_something: Floats


def before_looks(net: CaseNet, looks: Sequence[Sequence[int]]) -> list[Before]:
    """The net as it stood before each of these looks, given by the rows it found absent; what rules causes out stays."""
    if not looks:
        return []
    left = [tuple(row for row in net.no if row not in set(look)) for look in looks]
    rows = posteriors(net.net, net.yes, rows_of(net.net, net.no, *left), _EXACT_UP_TO)
    with np.errstate(invalid="ignore"):
        nothing = np.clip(np.nan_to_num(np.exp(rows.log_evidence[0] - rows.log_evidence[1:])), 0.0, 1.0)
    return [_before(net, rows, at, no, float(chance)) for at, (no, chance) in enumerate(zip(left, nothing, strict=True), 1)]


def _before(net: CaseNet, rows: Posterior, at: int, no: tuple[int, ...], nothing: float) -> Before:
    now, if_nothing = rows.chances[at], rows.chances[0]
    something = 1 - nothing
    if_something = np.clip((now - nothing * if_nothing) / something, 0.0, 1.0) if something > 1e-9 else now
    found = Posterior(now, rows.log_odds[at], rows.log_evidence[at], rows.groups, rows.estimated)
    return Before(replace(net, no=no), found, nothing, if_nothing, if_something)
