"""Seat and crotch: an inseam tapered, the crotch curve sewn lower."""

from __future__ import annotations

import numpy as np

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import carry, shaped_by
from fitdoctor.amounts.curves import in_and_out, normals, offset, polyline_length, run_out, ways
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Take
from fitdoctor.reason import Reason

_THIGH_SHARE = 0.15
"The thigh is measured a little below the crotch: this share of the way to the knee."
_DEEPEST = 0.5


def _inseam(given: Given) -> Calculation:
    total, length, panel = given.total, given.length("length"), given.word("panel")
    take: Take = "in" if given.word("take") == "in" else "out"
    where = f"on the {panel} only, at the crotch, running out to nothing at the knee"
    mark = mark_seam("inseam", where, take, pieces.inseam(length.mm), Amount(total, total, "in all", shape=run_out))
    less = "shorter" if take == "in" else "longer"
    because = (
        Reason(f"The whole amount is marked on the {panel} panel; the other panel keeps its line."),
        Reason(f"The {panel} rise becomes {less} by the whole amount, the thigh by what is left of it there."),
    )
    shaped = shaped_by(total, length)
    effects = {"back-rise-change": total, "thigh-change": total * run_out(_THIGH_SHARE)}
    return Calculation((mark,), shaped, shaped, effects, because=because)


def _scoop(given: Given) -> Calculation:
    depth, half = given.total, given.length("half-width")
    shape = in_and_out(_DEEPEST)
    where = "at the lowest part of the back crotch curve, running into the old seam at the fork and below the seat"
    mark = mark_seam("crotch-seam", where, "lower", pieces.crotch_bottom(half.mm), Amount(depth, depth, "in all", shape=shape))
    longer = carry(crotch_longer_mm, depth, half)
    because = (
        Reason("The new curve is measured along itself: it is longer than the old one, so the seam lies easier under the body."),
        Reason("What it costs the thigh is how far the curve moves sideways into the panel. Small steps: what is cut cannot be put back."),
    )
    shaped = shaped_by(depth, half)
    return Calculation((mark,), shaped, shaped, {"crotch-longer": longer, "thigh-change": carry(_thigh_mm, depth, half)}, because=because)


def crotch_longer_mm(depth_mm: float, half_width_mm: float) -> float:
    """How much longer the crotch curve gets, by arc length of both curves."""
    old = pieces.crotch_bottom(half_width_mm)
    return polyline_length(offset(old, _scooped(old, depth_mm))) - polyline_length(old)


def _thigh_mm(depth_mm: float, half_width_mm: float) -> float:
    old = pieces.crotch_bottom(half_width_mm)
    return float(np.max(np.abs(_scooped(old, depth_mm) * normals(old)[:, 0])))


def _scooped(old: np.ndarray, depth_mm: float) -> np.ndarray:
    way = ways(old)
    return np.array([depth_mm * in_and_out(_DEEPEST)(s / way[-1]) for s in way])


CALCULATORS = (
    calculator(
        "inseam-taper",
        _inseam,
        block={"length": block.CROTCH_TO_KNEE},
        effects=("back-rise-change", "thigh-change"),
        options={"panel": ("back", "front"), "take": ("in", "out")},
    ),
    calculator("crotch-scoop", _scoop, block={"half-width": block.SCOOP_HALF}, effects=("crotch-longer", "thigh-change")),
)
