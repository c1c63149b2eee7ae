"""Girth taken in or let out: centre back seam, side seams, and an amount shared over several seams."""

from __future__ import annotations

import math
from collections.abc import Callable

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, carry, shaped_by
from fitdoctor.amounts.curves import Polyline, even, held_then_out, in_and_out, run_out, straight_out
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Mark, Take
from fitdoctor.amounts.split import share_evenly
from fitdoctor.errors import FitdoctorError
from fitdoctor.reason import Reason

_HIP_SHARE = {"crotch": 0.62, "straight": 0.8, "hem": 0.35}
"Where the hip level crosses a centre back seam, as a share of its length from the waist."
_LOWER_END = {"crotch": "fork", "straight": "lower end", "hem": "hem"}
_NOTHING_MM = 1e-6
_BAND_SHARE = 0.12
"The waistband's part of a seat seam: the new line runs parallel through it."


def _take(given: Given) -> Take:
    return "in" if given.word("take") == "in" else "out"


def _centre_back(given: Given) -> Calculation:
    half, blend = given.total * 0.5, given.word("blend")
    length = given.length("seat-seam" if blend == "crotch" and given.measured("length") is None else "length")
    line, shape, run = _centre_back_line(blend, length.mm, given.word("full-to"))
    amount = Amount(half, given.total, "each side", shape=shape)
    mark = mark_seam(given.word("at"), f"at the top, {run}", _take(given), line, amount, ("top", _LOWER_END[blend]))
    hip = given.total * shape(_HIP_SHARE[blend])
    because = (Reason("Half of the whole is marked on each side of the seam."), Reason(f"The new line is {run}."))
    shaped, each = shaped_by(given.total, length), shaped_by(half, length)
    effects = {"waist-change": given.total, "hip-change": hip, "per-side": half}
    return Calculation((mark,), shaped, each, effects, because=because)


def _centre_back_line(blend: str, length_mm: float, full_to: str) -> tuple[Polyline, Callable[[float], float], str]:
    if blend == "crotch":
        hold = _HIP_SHARE["crotch"] if full_to == "hip" else _BAND_SHARE
        held = "parallel to the hip" if full_to == "hip" else "parallel through the band"
        return pieces.seat_seam(length_mm), held_then_out(hold), f"{held}, then running out into the crotch curve"
    if blend == "hem":
        return pieces.upright(length_mm), even, "even down to the hem"
    return pieces.upright(length_mm), straight_out, "a straight line that runs out into the old seam"


def _side_seams(given: Given) -> Calculation:
    edge, length, tapered = given.total * 0.25, given.length("length"), given.word("shape") == "tapered"
    where = "at the top of each side seam, running out below" if tapered else "even along each side seam"
    amount = Amount(edge, given.total, "each layer", shape=run_out if tapered else even)
    mark = mark_seam(given.word("at"), where, _take(given), pieces.side_to_hip(length.mm), amount)
    because = (Reason("Two seams of two layers: a quarter of the whole on each layer."),)
    effects = {"per-edge": edge, "waist-change": given.total, "hip-change": given.total * amount.shape(1.0)}
    return Calculation((mark,), shaped_by(given.total, length), shaped_by(edge, length), effects, because=because)


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
    return Calculation(marks, given.total, layers[most], effects, left.mm, tuple(because))


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
    layer, number = layers[members[0]], len(members)
    run = given.word("shape")
    shape = {"even": even, "waist": in_and_out(0.5), "tapered": run_out}[run]
    along = {"even": "even along", "waist": "at the waist, running out above and below, on", "tapered": "at the top, running out below, on"}
    which = {1: "the seam", 2: "both seams"}.get(number, "each of the seams")
    amount = Amount(layer, layer * (2 * number), "each layer", shape=shape)
    return mark_seam(seam, f"{along[run]} {which}", _take(given), pieces.upright(given.length("length").mm), amount)


CALCULATORS = (
    calculator(
        "centre-back-seam",
        _centre_back,
        block={"length": block.CENTRE_BACK, "seat-seam": block.SEAT_SEAM},
        effects=("waist-change", "hip-change", "per-side"),
        options={
            "take": ("in", "out"),
            "at": open_option("centre-back-seam"),
            "blend": ("crotch", "straight", "hem"),
            "full-to": ("waist", "hip"),
        },
    ),
    calculator(
        "side-seams",
        _side_seams,
        block={"length": block.SIDE_TO_HIP},
        effects=("per-edge", "waist-change", "hip-change"),
        options={"take": ("in", "out"), "shape": ("even", "tapered"), "at": open_option("side-seam")},
    ),
    calculator(
        "share-seams",
        _share,
        block={"length": block.GIRTH_SEAM},
        optional=("limit-1",),
        effects=("per-seam", "per-layer", "waist-change", "unplaced"),
        options={"seams": open_option("side-seam side-seam"), "take": ("in", "out"), "shape": ("even", "waist", "tapered")},
    ),
)
