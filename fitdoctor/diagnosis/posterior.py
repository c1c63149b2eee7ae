"""The posterior of every cause; in rows where findings are left out or added one at a time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from fitdoctor.diagnosis.drawn import draw
from fitdoctor.diagnosis.net import Absorbed, Bools, Floats, Group, Net, absorb, groups, rows_of
from fitdoctor.diagnosis.sweep import EXACT_UP_TO, Masses, all_explained, one_left_out, sweep

_NUMBERS_AT_ONCE = 2_000_000
_ROWS_UP_TO = 10


@dataclass(frozen=True, eq=False)
class Posterior:
    """What the findings say. The last axis is the causes; before it stands an axis of rows where several cases were asked for.

    Attributes:
        chances: of each cause, in [0, 1]; the priors where the findings cannot all be (log_evidence is then -inf).
        log_odds: of each cause, natural logarithm, free of rounding near 0 and 1.
        log_evidence: natural logarithm of the chance of all findings; where estimated, only in proportion between rows.
        groups: the "yes" findings that hang together.
        estimated: True where a group was too large to be worked out exactly.
    """

    chances: Floats
    log_odds: Floats
    log_evidence: Floats
    groups: tuple[Group, ...]
    estimated: bool


def posterior(net: Net, yes: Sequence[int], no: Sequence[int]) -> Posterior:
    """The chance of every cause, given the findings answered yes and no; the others have no effect."""
    rows = posteriors(net, yes, rows_of(net, no))
    return Posterior(rows.chances[0], rows.log_odds[0], rows.log_evidence[0], rows.groups, rows.estimated)


def posteriors(net: Net, yes: Sequence[int], absent: Bools, exact_up_to: int = EXACT_UP_TO) -> Posterior:
    """The same for many cases at once that differ in what was answered "no".

    Args:
        absent: (rows, findings), True where the finding was answered "no".
        exact_up_to: groups with more "yes" findings are estimated.
    """
    absorbed = absorb(net, absent)
    parts = groups(net, yes, absorbed.on.max(axis=0, initial=0.0))
    chances, log_odds, log_evidence = absorbed.on.copy(), absorbed.log_odds.copy(), absorbed.log_evidence.copy()
    for group in parts:
        causes = list(group.causes)
        masses = _group_masses(net, absorbed, group, exact_up_to)
        chances[:, causes], log_odds[:, causes] = _chances(masses), _log_odds(masses)
        with np.errstate(divide="ignore"):
            log_evidence += np.log(masses.evidence)
    cannot_be = np.isneginf(log_evidence)
    if cannot_be.any():
        prior = absorb(net, rows_of(net, ()))
        chances[cannot_be], log_odds[cannot_be] = prior.on, prior.log_odds
    return Posterior(chances, log_odds, log_evidence, parts, any(len(group.findings) > exact_up_to for group in parts))


def odds_without(net: Net, yes: Sequence[int], no: Sequence[int]) -> dict[int, Floats]:
    """Log-odds of every cause with one finding left out, by finding.

    Exact, but for a "no" beside a group of more than `_ROWS_UP_TO` findings, where only its direct effect on its own causes is counted,
    and for groups that are estimated.
    """
    whole = posterior(net, yes, no)
    without = dict(_without_yes(net, no, whole))
    if any(len(group.findings) > _ROWS_UP_TO for group in whole.groups):
        with np.errstate(divide="ignore", invalid="ignore"):
            return without | {finding: whole.log_odds - np.log1p(-net.links[finding]) for finding in no}
    if no:
        rows = posteriors(net, yes, rows_of(net, *([other for other in no if other != finding] for finding in no)))
        without |= dict(zip(no, rows.log_odds, strict=True))
    return without


def _without_yes(net: Net, no: Sequence[int], whole: Posterior) -> Iterator[tuple[int, Floats]]:
    absorbed = absorb(net, rows_of(net, no))
    for group in whole.groups:
        on, off, links, leaks = _part(net, absorbed, group)
        if len(leaks) > EXACT_UP_TO:
            masses = draw(on[0], off[0], links, leaks).masses_without_each_finding()
        else:
            masses = sweep(on, off, links, leaks, one_left_out(len(leaks)))
        for finding, row in zip(group.findings, _log_odds(masses), strict=True):
            odds = whole.log_odds.copy()
            odds[list(group.causes)] = row
            yield finding, odds


def _group_masses(net: Net, absorbed: Absorbed, group: Group, exact_up_to: int) -> Masses:
    """Evidence of one group together with each of its causes on and off; rows that are alike for this group are worked out once."""
    on, off, links, leaks = _part(net, absorbed, group)
    if len(leaks) > exact_up_to:
        return draw(on.max(axis=0), off.max(axis=0), links, leaks).masses(on, off)
    both, back = np.unique(np.hstack([on, off]), axis=0, return_inverse=True)
    on, off = np.hsplit(both, 2)
    step = max(1, _NUMBERS_AT_ONCE // (2 ** len(leaks) * max(1, on.shape[1])))
    found = [sweep(on[at : at + step], off[at : at + step], links, leaks, all_explained(len(leaks))) for at in range(0, len(on), step)]
    rows = back.reshape(-1)
    joined = (np.concatenate([getattr(part, name) for part in found])[rows] for name in ("on", "off", "evidence"))
    return Masses(*joined)


def _part(net: Net, absorbed: Absorbed, group: Group) -> tuple[Floats, Floats, Floats, Floats]:
    causes, findings = list(group.causes), list(group.findings)
    return absorbed.on[:, causes], absorbed.off[:, causes], net.links[np.ix_(findings, causes)], net.leaks[findings]


def _log_odds(masses: Masses) -> Floats:
    with np.errstate(divide="ignore", invalid="ignore"):
        odds: Floats = np.log(masses.on) - np.log(masses.off)
    return odds


def _chances(masses: Masses) -> Floats:
    with np.errstate(invalid="ignore"):
        chances: Floats = masses.on / (masses.on + masses.off)
    return chances
