"""The likeliest whole explanations: which causes together account for what is seen.

An explanation says of every suspect whether it is present; causes less likely than `SUSPECT_FROM` are left open (summed over).
The search is best first. What a half-decided set is worth is the exact chance of all its completions together, so no completion can be
worth more and the first ones to come out are the likeliest. Half-decided sets of one length exclude each other, so at most
suspects / floor of them are ever opened, floor being the smallest chance still wanted.
"""

from __future__ import annotations

import heapq
import itertools
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from fitdoctor.diagnosis.drawn import draw
from fitdoctor.diagnosis.net import Absorbed, Floats, Group, Net, absorb, rows_of
from fitdoctor.diagnosis.posterior import Posterior
from fitdoctor.diagnosis.sweep import all_explained, look_back, spread, start

SUSPECT_FROM = 0.05
FLOOR = 0.005
_SEARCH_UP_TO = 12


@dataclass(frozen=True)
class Account:
    """One explanation: the causes present, by number, and the chance that exactly these of the suspects are present."""

    causes: tuple[int, ...]
    chance: float


def explanations(
    net: Net, no: Sequence[int], found: Posterior, most: int = 8, suspect_from: float = SUSPECT_FROM, floor: float = FLOOR
) -> tuple[Account, ...]:
    """The likeliest explanations of all "yes" findings together, best first; those under the floor are left out.

    Args:
        no: the findings answered "no"; found: the posterior given them and the "yes" findings.
    """
    absorbed = absorb(net, rows_of(net, no))
    joint = [Account((), 1.0)]
    for group in found.groups:
        own = list(itertools.islice(_of_group(net, absorbed, group, found.chances, suspect_from, floor), most))
        both = (Account(tuple(sorted(a.causes + b.causes)), a.chance * b.chance) for a in joint for b in own)
        joint = sorted(both, key=lambda account: (-account.chance, account.causes))[:most]
    return tuple(account for account in joint if account.causes or account.chance < 1)


def _of_group(net: Net, absorbed: Absorbed, group: Group, chances: Floats, suspect_from: float, floor: float) -> Iterator[Account]:
    suspects = sorted((cause for cause in group.causes if chances[cause] >= suspect_from), key=lambda cause: -chances[cause])
    if len(group.findings) > _SEARCH_UP_TO:
        return _drawn(net, absorbed, group, suspects, floor)
    return _searched(net, absorbed, group, suspects, floor)


def _searched(net: Net, absorbed: Absorbed, group: Group, suspects: Sequence[int], floor: float) -> Iterator[Account]:
    links, on, off = net.links[list(group.findings)], absorbed.on[0], absorbed.off[0]
    behind = [all_explained(len(group.findings))]
    unlikely = [cause for cause in group.causes if cause not in suspects]
    for cause in (*unlikely, *reversed(suspects)):
        behind.append(off[cause] * behind[-1] + on[cause] * look_back(behind[-1], links[:, cause]))
    ahead = behind[len(unlikely) :][::-1]
    beginning = start(net.leaks[list(group.findings)])[None]
    whole = float((beginning * ahead[0]).sum())
    ticket = itertools.count()
    open_: list[tuple[float, int, tuple[int, ...], int, Floats]] = [(-whole, next(ticket), (), 0, beginning)]
    while open_:
        worth, _, present, decided, carried = heapq.heappop(open_)
        if -worth < floor * whole or whole == 0:
            return
        if decided == len(suspects):
            yield Account(present, -worth / whole)
            continue
        cause = suspects[decided]
        for with_it, now in (((), off[cause] * carried), ((cause,), on[cause] * spread(carried, links[:, cause]))):
            value = float((now * ahead[decided + 1]).sum())
            heapq.heappush(open_, (-value, next(ticket), present + with_it, decided + 1, now))


def _drawn(net: Net, absorbed: Absorbed, group: Group, suspects: Sequence[int], floor: float) -> Iterator[Account]:
    """The same from sets drawn at random, where the group is too large to search."""
    causes, findings = list(group.causes), list(group.findings)
    sets = draw(absorbed.on[0, causes], absorbed.off[0, causes], net.links[np.ix_(findings, causes)], net.leaks[findings]).sets
    columns = sets[:, [causes.index(cause) for cause in suspects]]
    for present, times in Counter(map(tuple, columns.tolist())).most_common():
        if times >= floor * len(sets):
            yield Account(tuple(cause for cause, is_on in zip(suspects, present, strict=True) if is_on), times / len(sets))
