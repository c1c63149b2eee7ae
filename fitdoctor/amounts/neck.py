"""The back neck dropped and the neckline brought back to its old length at the shoulder seams; the front neck cut lower."""

from __future__ import annotations

import numpy as np

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import carry, shaped_by
from fitdoctor.amounts.curves import along, as_points, polyline_length, quarter_ellipse_length, run_out
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_lines, mark_seam, shares_of_way
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.reason import Reason

_SHORT_OF_ARMHOLE = 0.8
"The shoulder seam is taken in over this share of its length from the neck: it runs out about 1 in short of the armhole."


def neckline_longer_mm(drop_mm: float, half_width_mm: float, depth_mm: float) -> float:
    """What half of the back neckline gains when it is dropped at centre back: the difference of two quarter ellipses."""
    return quarter_ellipse_length(half_width_mm, depth_mm + drop_mm) - quarter_ellipse_length(half_width_mm, depth_mm)


def _neck_drop(given: Given) -> Calculation:
    drop, width, depth = given.total, given.length("half-neck-width"), given.length("back-neck-depth")
    shoulder = given.length("shoulder-length")
    longer = carry(neckline_longer_mm, drop, width, depth)
    taken = Amount(longer, longer * 2, "each side", layer_share=0.5, shape=run_out)
    seam = pieces.shoulder(shoulder.mm * _SHORT_OF_ARMHOLE, block.SHOULDER_DROP * shoulder.mm * _SHORT_OF_ARMHOLE / block.SHOULDER)
    where = "at the neck end of each shoulder seam, half on the back and half on the front, running out short of the armhole"
    shoulders = mark_seam("shoulder-seam", where, "in", seam, taken, ("neck", "short of the armhole"))
    marks = (_neck_mark(given.word("at"), drop, width.mm, depth.mm, "centre back"), shoulders)
    because = (
        Reason("Half of the back neckline is a quarter ellipse; old and new are measured along the curve."),
        Reason("Each shoulder seam gives up at its neck end what its half of the neckline has gained, so the collar fits again."),
        Reason("The seam taken in at the neck end squares the shoulder."),
    )
    seat = carry(lambda width_mm, depth_mm: 2 * quarter_ellipse_length(width_mm, depth_mm), width, depth)
    effects = {"neckline-longer": longer, "shoulder-take-in": longer, "collar-move": drop, "collar-seat": seat}
    shaped = shaped_by(drop, width, depth, shoulder)
    return Calculation(marks, shaped, shaped, effects, because=because)


def _neck_lower(given: Given) -> Calculation:
    down, width, depth = given.total, given.length("half-neck-width"), given.length("front-neck-depth")
    longer = carry(neckline_longer_mm, down, width, depth)
    mark = _neck_mark(given.word("at"), down, width.mm, depth.mm, "centre front")
    because = (Reason("Half of the neckline is taken as a quarter ellipse; old and new are measured along the curve."),)
    shaped = shaped_by(down, width, depth)
    return Calculation((mark,), shaped, shaped, {"neckline-longer": longer * 2}, because=because)


def _neck_mark(at: str, drop: Length, width_mm: float, depth_mm: float, centre: str) -> Mark:
    """The neckline lowered straight down: all of it at the centre, nothing at the shoulder seams."""
    old, new = pieces.back_neck(width_mm, depth_mm), pieces.back_neck(width_mm, depth_mm + drop.mm)
    length = polyline_length(old)
    shares = shares_of_way(length)
    across = along(old, shares)[:, 0]
    down = drop.mm * np.sqrt(np.maximum(0.0, 1 - (across / width_mm) ** 2))
    stations = tuple((float(t * length), float(d)) for t, d in zip(shares, down, strict=True))
    where = f"at {centre}, straight down, running out at the shoulder seams"
    lines = (as_points(old), as_points(new))
    return mark_lines(at, where, "lower", Amount(drop, drop, "in all"), stations, lines, (centre, "shoulder seam"))


CALCULATORS = (
    calculator(
        "neck-drop",
        _neck_drop,
        block={"half-neck-width": block.HALF_NECK_WIDTH, "back-neck-depth": block.BACK_NECK_DEPTH, "shoulder-length": block.SHOULDER},
        effects=("neckline-longer", "shoulder-take-in", "collar-move", "collar-seat"),
        options={"at": open_option("collar-seam")},
    ),
    calculator(
        "neck-lower",
        _neck_lower,
        block={"half-neck-width": block.HALF_NECK_WIDTH, "front-neck-depth": block.FRONT_NECK_DEPTH},
        effects=("neckline-longer",),
        options={"at": open_option("neckline-seam")},
    ),
)
