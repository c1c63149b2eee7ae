"""Darts let out, deepened or re-pointed, and darts in the back neckline."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

import numpy as np

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, carry, shaped_by
from fitdoctor.amounts.curves import along, as_points, straight_out
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, dart_lines, mark_lines, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.reason import Reason

DEEPEST_SHARE = 0.25
"""Deepest dart without a bubble at its point, as a share of its length. Drafting rules have a front skirt dart at most 2 cm wide and about
8 cm long, which is a quarter; for other darts the same by common practice."""
_ENDS = ("wide end", "point")
_FAN_DEGREES = 10.0
"Back neck darts lean outward at their points."


def _intake(given: Given) -> Calculation:
    number, length = given.number("darts"), given.length("length")
    each = given.total * (1 / number)
    take = given.in_or_out
    amount = Amount(each, given.total, "each dart", layer_share=0.5, shape=straight_out)
    mark = mark_seam(given.word("at"), "at the wide end, running out to nothing at the point", take, pieces.upright(length.mm), amount)
    because = [Reason("The whole is shared evenly over the darts; half of each dart's part on each side of its fold.")]
    too_deep = _too_deep(each, length) if take == "in" else Length(0.0)
    if too_deep.mm > 0:
        because.append(Reason(_TOO_DEEP))
    effects = {"intake-change": each, "per-side": each * 0.5, "waist-change": given.total, "split-needed": too_deep}
    shaped = shaped_by(each, length)
    return Calculation((mark,), shaped_by(given.total, length), shaped, effects, because=tuple(because))


_TOO_DEEP = "A dart deeper than a quarter of its length stands off in a bubble at its point: split it in two, or make it longer."


def _too_deep(intake: Length, length: Length) -> Length:
    """What the intake has too much for the length; 0 where the dart can lie flat at its point."""
    return at_least_zero(intake - length * DEEPEST_SHARE)


def _split(given: Given) -> Calculation:
    whole, length, apart = given.total, given.length("length"), given.length("apart")
    each = whole * 0.5
    amount = Amount(each, whole, "each dart", layer_share=0.5, shape=straight_out)
    where = "two darts in place of one, on either side of the old place, running out to nothing at their points"
    mark = mark_seam(given.word("at"), where, "in", pieces.upright(length.mm), amount, _ENDS)
    too_deep = _too_deep(each, length)
    because = [Reason("Each of the two darts takes half; the waist keeps its girth.")]
    if too_deep.mm > 0:
        because.append(Reason(_TOO_DEEP))
    effects = {"per-side": each * 0.5, "apart": apart, "from-old": apart * 0.5, "split-needed": too_deep}
    shaped = shaped_by(each, length, apart)
    return Calculation((mark,), shaped_by(whole, length, apart), shaped, effects, because=tuple(because))


_MOVED = {"shorten": "moved back along the fold", "lengthen": "moved on along the fold", "aside": "moved across the fold"}


def _repoint(given: Given) -> Calculation:
    move, length, way = given.total, given.length("length"), given.word("move")
    point = {"shorten": (0.0, max(0.0, length.mm - move.mm)), "lengthen": (0.0, length.mm + move.mm), "aside": (move.mm, length.mm)}[way]
    new = at_least_zero(carry(_NEW_LENGTH[way], move, length))
    lines = (((0.0, 0.0), (0.0, length.mm)), ((0.0, 0.0), point))
    where = f"the point of the dart, {_MOVED[way]}"
    amount = Amount(move, move, "in all")
    mark = mark_lines(given.word("at"), where, "mark", amount, ((0.0, 0.0), (length.mm, move.mm)), lines, _ENDS)
    because = (Reason("Both stitching lines run straight from the wide end to the new point; the intake stays."),)
    shaped = shaped_by(move, length)
    return Calculation((mark,), shaped, shaped, {"new-length": new}, because=because)


_NEW_LENGTH: dict[str, Callable[[float, float], float]] = {
    "shorten": lambda move, length: length - move,
    "lengthen": lambda move, length: length + move,
    "aside": lambda move, length: math.hypot(move, length),
}


def _neck_darts(given: Given) -> Calculation:
    number, length, half = given.number("darts"), given.length("length"), given.length("half-shoulder")
    each = given.total * (1 / number)
    too_deep = _too_deep(each, length)
    place = half * (1 / 2 if number == 2 else 1 / 3)
    because = [
        Reason("The darts stand equally far from centre back, the way to the shoulder seam parted alike, and fan outward at their points."),
        Reason("The facing is shaped to the new neckline after the darts are sewn."),
    ]
    if too_deep.mm > 0:
        because.append(Reason(_TOO_DEEP))
    marks = _fan(each, length, number, half)
    edge = at_least_zero(half - given.total * 0.5)
    effects = {"per-dart": each, "per-side": each * 0.5, "split-needed": too_deep, "place-from-centre": place, "facing-edge": edge}
    shaped, part = shaped_by(given.total, length, half), shaped_by(each, length, half)
    return Calculation(marks, shaped, part, effects, because=tuple(because))


def _fan(each: Length, length: Length, number: int, half: Length) -> tuple[Mark, ...]:
    """One dart on each side, or two that fan out: the outer one leans twice as far."""
    if number == 2:
        return (_neck_dart(each, length, half, 1 / 2, 1),)
    return tuple(_neck_dart(each, length, half, n / 3, n) for n in (1, 2))


def _neck_dart(each: Length, length: Length, half: Length, place: float, lean: int) -> Mark:
    """A dart at a share of the way from centre back along the neckline, with its like on the other side."""
    edge = pieces.back_neck_for(half.mm)
    (x, y), turn = along(edge, np.array([place]))[0], math.radians(_FAN_DEGREES * lean)
    fold, legs = dart_lines((float(x), float(y)), (math.sin(turn), math.cos(turn)), length.mm, each.mm)
    stations = tuple((length.mm * n / 4, each.mm * (1 - n / 4)) for n in range(5))
    which = {1 / 2: "", 1 / 3: "the inner one ", 2 / 3: "the outer one "}[place]
    where = f"at the neckline, {which}on each side of centre back, leaning outward by {_FAN_DEGREES * lean:.0f}°, nothing at the point"
    amount = Amount(each, each * 2, "each dart", layer_share=0.5)
    mark = mark_lines("back-neck-dart", where, "in", amount, stations, (fold, legs), _ENDS)
    return replace(mark, edge=as_points(edge))


CALCULATORS = (
    calculator(
        "dart-intake",
        _intake,
        block={"length": block.DART},
        effects=("intake-change", "per-side", "waist-change", "split-needed"),
        options={"take": ("in", "out"), "darts": ("2", "1", "3", "4", "6", "8"), "at": open_option("back-dart")},
    ),
    calculator(
        "dart-split",
        _split,
        block={"length": block.DART, "apart": block.DARTS_APART},
        effects=("per-side", "apart", "from-old", "split-needed"),
        options={"at": open_option("back-dart")},
    ),
    calculator(
        "dart-repoint",
        _repoint,
        block={"length": block.DART},
        effects=("new-length",),
        options={"at": open_option("back-dart"), "move": ("shorten", "lengthen", "aside")},
    ),
    calculator(
        "back-neck-darts",
        _neck_darts,
        block={"length": block.BACK_NECK_DART, "half-shoulder": block.HALF_BACK_NECKLINE},
        effects=("per-dart", "per-side", "split-needed", "place-from-centre", "facing-edge"),
        options={"darts": ("2", "4")},
    ),
)
