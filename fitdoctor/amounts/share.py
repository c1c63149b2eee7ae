"""An amount shared over several seams as evenly as their limits allow."""

from __future__ import annotations

import math

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, carry, shaped_by
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.amounts.runs import run_of, run_options
from fitdoctor.amounts.split import share_evenly
from fitdoctor.errors import FitdoctorError
from fitdoctor.reason import Reason

_NOTHING_MM = 1e-6


def _share(given: Given) -> Calculation:
    seams = given.word("seams").split()
    if not seams:
        raise FitdoctorError("‘share-seams’ does not say which seams move.", "Name them: one word a seam, pairs named twice.")
    limits = [given.measured(f"limit-{n}") for n in range(1, len(seams) + 1)]
    bounds = [math.inf if limit is None else limit.mm for limit in limits]
    shares = [_share_of(n, given.total, limits, bounds) for n in range(len(seams))]
    left = _left_over(given.total, limits)
    layers = [share * 0.5 for share in shares]
    marks = tuple(_shared_mark(seam, members, layers, given) for seam, members in _alike(seams, shares))
    most = max(range(len(seams)), key=lambda n: shares[n].mm)
    because = [Reason("Equal amounts from each seam keep the proportions; half of each on each layer.")]
    if left.mm > 0:
        because.append(Reason("The limits of the seams leave a part without a place."))
    effects = {"per-seam": shares[most], "per-layer": layers[most], "waist-change": given.total - left, "unplaced": left}
    sizes = () if given.word("shape") == "even" else (given.length("length"),)
    return Calculation(marks, shaped_by(given.total, *sizes), shaped_by(layers[most], *sizes), effects, left.mm, tuple(because))


def _share_of(n: int, total: Length, limits: list[Length | None], bounds: list[float]) -> Length:
    """One seam's share with its give or take: how the total's and each limit's reach it through the sharing."""
    known = [limit for limit in limits if limit is not None]

    def share(total_mm: float, *limit_mm: float) -> float:
        moved = iter(limit_mm)
        return share_evenly(max(0.0, total_mm), [b if math.isinf(b) else max(0.0, next(moved)) for b in bounds]).amounts[n]

    return carry(share, total, *known)


def _left_over(total: Length, limits: list[Length | None]) -> Length:
    if any(limit is None for limit in limits):
        return Length(0.0)
    room = Length(0.0)
    for limit in limits:
        room = room + limit if limit else room
    left = total - room
    return at_least_zero(left) if left.mm + left.give_mm > _NOTHING_MM else Length(0.0)


def _alike(seams: list[str], shares: list[Length]) -> list[tuple[str, list[int]]]:
    """Seams of one name that take the same, together: left and right."""
    groups: dict[tuple[str, float], list[int]] = {}
    for n, (seam, share) in enumerate(zip(seams, shares, strict=True)):
        groups.setdefault((seam, round(share.mm, 6)), []).append(n)
    return [(seam, members) for (seam, _), members in groups.items()]


def _shared_mark(seam: str, members: list[int], layers: list[Length], given: Given) -> Mark:
    layer, number, run = layers[members[0]], len(members), run_of(given)
    which = {1: "the seam", 2: "both seams"}.get(number, "each of the seams")
    amount = Amount(layer, layer * (2 * number), "each layer", shape=run.shape)
    line = pieces.upright(given.length("length").mm)
    return mark_seam(seam, f"{run.words}, on {which}", given.in_or_out, line, amount, run.ends)


CALCULATORS = (
    calculator(
        "share-seams",
        _share,
        block={"length": block.GIRTH_SEAM},
        optional=("limit-1",),
        effects=("per-seam", "per-layer", "waist-change", "unplaced"),
        options={"seams": open_option("side-seam side-seam"), "take": ("in", "out"), **run_options()},
    ),
)
