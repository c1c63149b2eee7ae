"""Sharing an amount over seams as evenly as their limits allow, and rounding the shares to the shop's step."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from fitdoctor.errors import FitdoctorError


@dataclass(frozen=True)
class Shares:
    """What each seam takes, and what found no place; both in the unit of the total."""

    amounts: tuple[float, ...]
    unplaced: float


def share_evenly(total: float, limits: Sequence[float]) -> Shares:
    """Water filling: every seam takes the same, but none more than its limit; what a full seam cannot take goes to the others.

    This is the share nearest to even in the sense of least squares. Seams with like limits take like amounts.

    Args:
        total: what is to be placed; not negative.
        limits: the most each seam can take; math.inf where nothing binds.

    Raises:
        FitdoctorError: no seam, or a negative amount.
    """
    if not limits or total < 0 or min(limits) < 0:
        raise FitdoctorError("An amount can be shared only over seams that can move.", "Name at least one seam; no amount is below 0.")
    level, left, open_ = 0.0, total, len(limits)
    for limit in sorted(limits):
        needed = (limit - level) * open_
        if needed >= left:
            level += left / open_
            left = 0.0
            break
        left -= needed
        level, open_ = limit, open_ - 1
    return Shares(tuple(min(limit, level) for limit in limits), left)


def round_shares(amounts: Sequence[float], step: float, names: Sequence[str]) -> Shares:
    """Round to whole steps by the largest remainder, so that the total stays the nearest whole number of steps.

    Seams of the same name that take the same are a pair (left and right) and stay alike; a step that only half of a pair could take goes
    to a single seam, or is returned as not placed.

    Args:
        step: the shop's step, such as 1/16 in.
        names: the seam of each amount.
    """
    groups: dict[tuple[str, float], list[int]] = {}
    for n, (name, amount) in enumerate(zip(names, amounts, strict=True)):
        groups.setdefault((name, round(amount, 9)), []).append(n)
    steps = {key: math.floor(key[1] / step + 1e-9) for key in groups}
    left = round(sum(amounts) / step) - sum(steps[key] * len(members) for key, members in groups.items())
    raised = _raised([(len(groups[key]), key[1] / step - steps[key]) for key in groups], left)
    rounded = [0.0] * len(amounts)
    for members, key, up in zip(groups.values(), groups, raised, strict=True):
        left -= up * len(members)
        for n in members:
            rounded[n] = (steps[key] + up) * step
    return Shares(tuple(rounded), left * step)


def _raised(groups: Sequence[tuple[int, float]], left: int) -> tuple[int, ...]:
    """Which groups (how many alike, remainder) go up a step: those that use up most of what is left, then those with most remainder."""
    fitting = (
        ups for ups in product((0, 1), repeat=len(groups)) if sum(up * size for up, (size, _) in zip(ups, groups, strict=True)) <= left
    )

    def worth(ups: tuple[int, ...]) -> tuple[int, float]:
        chosen = [group for up, group in zip(ups, groups, strict=True) if up]
        return sum(size for size, _ in chosen), sum(size * remainder for size, remainder in chosen)

    return max(fitting, key=worth, default=(0,) * len(groups))
