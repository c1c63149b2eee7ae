"""Seat and crotch: an inseam tapered, the crotch curve sewn lower."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, carry, shaped_by
from fitdoctor.amounts.curves import in_and_out, normals, offset, polyline_length, run_out, ways
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.reason import Reason

_THIGH_SHARE = 0.15
"The thigh is measured a little below the crotch: this share of the way to the knee."
_DEEPEST = 0.5


def _inseam(given: Given) -> Calculation:
    total, length, panel = given.total, given.length("length"), given.word("panel")
    take = given.in_or_out
    each, foot = total * (0.5 if panel == "both" else 1.0), given.word("foot")
    where = f"{_ON_PANEL[panel]}, at the crotch, running out to nothing {foot}"
    amount = Amount(each, total, "each side" if panel == "both" else "in all", shape=run_out)
    mark = mark_seam("inseam", where, take, pieces.inseam(length.mm), amount, ("crotch", foot.removeprefix("at the ")))
    less = "shorter" if take == "in" else "longer"
    because = (Reason(_WHICH_PANEL[panel]), Reason(f"The rise becomes {less} by the whole amount, the thigh by what is left of it there."))
    effects = {"back-rise-change": Length(0.0) if panel == "front" else each, "thigh-change": total * run_out(_THIGH_SHARE)}
    return Calculation((mark,), shaped_by(total, length), shaped_by(each, length), effects, because=because)


_ON_PANEL = {"back": "on the back only", "front": "on the front only", "both": "on back and front alike"}
_WHICH_PANEL = {
    "back": "The whole amount is marked on the back panel; the front keeps its line.",
    "front": "The whole amount is marked on the front panel; the back keeps its line.",
    "both": "Half of the amount is marked on each panel, so the seam keeps its place.",
}


def _scoop(given: Given) -> Calculation:
    depth, half = given.total, given.length("half-width")
    marks = tuple(_scoop_steps(depth, half, given.length("step")))
    stop = at_least_zero(depth - given.length("stop"))
    longer = carry(crotch_longer_mm, depth, half)
    because: tuple[Reason, ...] = (
        Reason("The new curve is measured along itself: it is longer than the old one, so the seam lies easier under the body."),
        Reason("What it costs the thigh is how far the curve moves sideways into the panel. Small steps: what is cut cannot be put back."),
    )
    if stop.mm > 0:
        says = "Sources stop at 1 cm: beyond it try again from the beginning, with more length or width across the fork."
        because = (*because, Reason(says))
    shaped = shaped_by(depth, half)
    effects = {"crotch-longer": longer, "thigh-change": carry(_thigh_mm, depth, half), "past-the-stop": stop}
    return Calculation(marks, shaped, shaped, effects, because=because)


def _scoop_steps(depth: Length, half: Length, step: Length) -> Iterator[Mark]:
    """A mark for every step, each from the old seam, the last one as deep as was measured."""
    line, shape = pieces.crotch_bottom(half.mm), in_and_out(_DEEPEST)
    number = max(1, math.ceil(depth.mm / step.mm - 1e-6)) if step.mm else 1
    for n in range(1, number + 1):
        down = depth if n == number else step * n
        which = f"step {n} of {number}, " if number > 1 else ""
        where = f"{which}at the lowest part of the crotch curve, running into the old seam at the fork and below the seat"
        yield mark_seam("crotch-seam", where, "lower", line, Amount(down, down, "in all", shape=shape))


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
        options={"panel": ("back", "front", "both"), "take": ("in", "out"), "foot": open_option("at the knee")},
    ),
    calculator(
        "crotch-scoop",
        _scoop,
        block={"half-width": block.SCOOP_HALF, "step": block.SCOOP_STEP, "stop": block.SCOOP_STOP},
        effects=("crotch-longer", "thigh-change", "past-the-stop"),
    ),
)
