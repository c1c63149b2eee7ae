"""What a purchase is worth: price, work and risk against what the garment would be worth if it fitted."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import prod

from fitdoctor.rack.prospects import Prospect, View


@dataclass(frozen=True)
class Stake:
    """What is at stake, in the buyer's money.

    Attributes:
        worth: of the garment to the buyer if it fitted.
        rate_per_hour: of the buyer's own time or the shop's work; 0 counts no wages.
    """

    price: float
    worth: float
    rate_per_hour: float = 0.0


@dataclass(frozen=True)
class Outcome:
    """What buying comes to on average.

    Attributes:
        fits: chance that the garment can be made to fit.
        minutes: expected work where it can.
        work, risk: expected cost of the work; worth that is lost on average because it may not come to fit.
        gain: worth less price, work and risk; below 0 it is better left.
    """

    fits: float
    minutes: float
    work: float
    risk: float
    gain: float


def outcome(
    stake: Stake,
    chances: Mapping[str, float],
    prospects: Mapping[str, Prospect],
    rivals: Sequence[frozenset[str]],
    view: View,
    shared: float,
) -> Outcome:
    """What buying comes to, over what may be the matter and what may be met.

    Causes of one group are rivals for the same sight: that one of them is there and cannot be cured is at most the sum of the single
    chances (Boole), and the sum is taken. Causes of different groups are independent.

    Args:
        chances: cause -> chance that it is there.
        rivals: groups of causes that explain the same sights.
        shared: share of the single works that is left when seams opened for one serve the other.
    """
    stuck = {cause: chance * (1 - prospects[cause].cured[view]) for cause, chance in chances.items()}
    fits = prod(1 - min(1.0, sum(stuck.get(cause, 0.0) for cause in group)) for group in _groups(chances, rivals))
    minutes = shared * sum(_work(chances, prospects, view))
    work = fits * minutes / 60 * stake.rate_per_hour
    risk = (1 - fits) * stake.worth
    return Outcome(fits, minutes, work, risk, stake.worth - stake.price - work - risk)


def joined(rivals: Iterable[frozenset[str]], more: frozenset[str]) -> list[frozenset[str]]:
    """The groups after a new sight that these causes could bring on: what shares a cause with it becomes one group."""
    apart = [group for group in rivals if group.isdisjoint(more)]
    return [*apart, more.union(*(group for group in rivals if not group.isdisjoint(more)))]


def _groups(chances: Mapping[str, float], rivals: Sequence[frozenset[str]]) -> list[Iterable[str]]:
    grouped: frozenset[str] = frozenset().union(*rivals)
    return [*rivals, *((cause,) for cause in chances if cause not in grouped)]


def _work(chances: Mapping[str, float], prospects: Mapping[str, Prospect], view: View) -> Iterable[float]:
    """Minutes of each method, weighted with the chance that one of its causes is there; causes beyond cure ask for no work."""
    needed: dict[str, float] = {}
    minutes: dict[str, float] = {}
    for cause, chance in chances.items():
        prospect = prospects[cause]
        if prospect.cured[view] > 0:
            needed[prospect.method] = min(1.0, needed.get(prospect.method, 0.0) + chance)
            minutes[prospect.method] = max(prospect.minutes, minutes.get(prospect.method, 0.0))
    return (needed[method] * minutes[method] for method in needed)
