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

    A method that treats several causes is done once; causes beyond cure ask for no work.

    Causes of one group are rivals for the same sight: that one of them is there and cannot be cured is at most the sum of the single
    chances (Boole), and the sum is taken. Causes of different groups are independent.

    Args:
        chances: cause -> chance that it is there.
        rivals: groups of causes that explain the same sights.
        shared: share of the single works that is left when seams opened for one serve the other.
    """
    stuck: dict[str, float] = {}
    needed: dict[str, float] = {}
    minutes: dict[str, float] = {}
    for cause, chance in chances.items():
        prospect = prospects[cause]
        cured, method = prospect.cured[view], prospect.method
        stuck[cause] = chance * (1 - cured)
        if cured > 0:
            needed[method] = min(1.0, needed.get(method, 0.0) + chance)
            minutes[method] = max(prospect.minutes, minutes.get(method, 0.0))
    together = shared * sum(needed[method] * minutes[method] for method in needed)
    fits = _none_stuck(stuck, rivals)
    work = fits * together / 60 * stake.rate_per_hour
    risk = (1 - fits) * stake.worth
    return Outcome(fits, together, work, risk, stake.worth - stake.price - work - risk)


def joined(rivals: Iterable[frozenset[str]], more: frozenset[str]) -> list[frozenset[str]]:
    """The groups after a new sight that these causes could bring on: what shares a cause with it becomes one group."""
    apart = [group for group in rivals if group.isdisjoint(more)]
    return [*apart, more.union(*(group for group in rivals if not group.isdisjoint(more)))]


def _none_stuck(stuck: dict[str, float], rivals: Sequence[frozenset[str]]) -> float:
    """The chance that no cause is there that cannot be cured."""
    alone = dict(stuck)
    chance = 1.0
    for group in rivals:
        chance *= 1 - min(1.0, sum(alone.pop(cause) for cause in group.intersection(stuck)))
    return chance * prod(1 - one for one in alone.values())
