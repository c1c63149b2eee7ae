"""Hems of trouser legs: finished line, folds and cutting line with their slant, each leg for itself, and the flare of the turn-up."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, carry, shaped_by
from fitdoctor.amounts.curves import Polyline, as_points
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.marking import Amount, mark_lines
from fitdoctor.amounts.marks import Calculation, Length, Mark, Take
from fitdoctor.reason import Reason

_CREASES = ("front crease", "back crease")
_LINES = {
    "plain": ("finished line", "cutting line"),
    "cuff": ("finished line", "first fold, the top of the cuff inside", "second fold", "cutting line"),
    "faced": ("finished line", "cutting line, where the facing is sewn on"),
}
_FOUR_EDGES = 4


def _trouser_hem(given: Given) -> Calculation:
    finish, slant = given.word("finish"), given.length("slant")
    step = given.length({"plain": "hem-depth", "cuff": "cuff-depth", "faced": "facing-seam"}[finish])
    lines = _LINES[finish]
    needed = step * (len(lines) - 1)
    if finish == "cuff":
        needed = at_least_zero(needed - given.length("inside-less"))
    half = _half_hem(given)
    edge = pieces.trouser_hem(half.mm, slant.mm)
    marks = [mark for leg, inseam in _legs(given) for mark in _one_leg(leg, inseam, (lines, step, needed), edge, slant)]
    effects = {"cloth-needed": needed, "slant": slant}
    below = given.measured("cloth-below")
    if below is not None:
        effects["cloth-short-by"] = at_least_zero(needed - below)
    narrowing = _narrowing(given)
    if narrowing.mm > 0:
        effects["hem-flare"] = _flare(step, narrowing)
        marks.append(_turn_up(finish, step, needed, effects["hem-flare"]))
    because = (
        Reason("Each line lies below the finished line by whole depths of the hem or cuff; the last is where the cloth is cut."),
        Reason("The back of the hem is lower than the front by the slant; every line runs parallel."),
    )
    return Calculation(tuple(marks), shaped_by(needed, slant, step, half), shaped_by(step, slant, half), effects, because=because)


def _half_hem(given: Given) -> Length:
    """From crease to crease: as measured, else half of the girth at the hem."""
    girth = given.measured("hem-girth")
    return girth * 0.5 if girth is not None and given.measured("half-hem") is None else given.length("half-hem")


def _legs(given: Given) -> Iterator[tuple[str, Length]]:
    """Both legs by one length, or each by its own."""
    right, left = given.length("finished-inseam"), given.measured("left-inseam")
    if left is None or left.mm == right.mm:
        yield "", right
        return
    yield "right leg: ", right
    yield "left leg: ", left


def _one_leg(leg: str, inseam: Length, below: tuple[tuple[str, ...], Length, Length], edge: Polyline, slant: Length) -> Iterator[Mark]:
    """The finished line, then each line below it: names of the lines, their step, where the last one lies."""
    names, step, needed = below
    points, across = as_points(edge), float(edge[-1][0])
    where = f"{leg}finished line, the whole inseam from the crotch down; the back slants lower"
    stations = ((0.0, 0.0), (across, slant.mm))
    yield mark_lines("hem", where, "mark", Amount(inseam, inseam, "in all"), stations, (points, points), _CREASES)
    for n, name in enumerate(names[1:], 1):
        last = n == len(names) - 1
        down = needed if last else step * n
        take: Take = "cut" if last else "mark"
        new = tuple((x, y + down.mm) for x, y in points)
        amount = Amount(down, down, "in all")
        yield mark_lines(
            "hem", f"{leg}{name}, below the finished line", take, amount, ((0.0, down.mm), (across, down.mm)), (points, new), _CREASES
        )


def _narrowing(given: Given) -> Length:
    """What the girth of a leg loses for every mm toward its hem, mm; 0 where it does not taper or was not measured."""
    knee, hem = given.measured("knee-girth"), given.measured("hem-girth")
    if knee is None or hem is None:
        return Length(0.0)
    down = given.length("knee-to-hem")
    return at_least_zero(carry(lambda at_knee, at_hem, way: (at_knee - at_hem) / way, knee, hem, down))


def _flare(step: Length, narrowing: Length) -> Length:
    return carry(lambda deep, less: deep * less, step, narrowing)


def _turn_up(finish: str, step: Length, needed: Length, flare: Length) -> Mark:
    """Both seams of the turn-up on one layer: outward where it lies against the leg above, so mirrored at every fold."""
    out = flare * (1 / _FOUR_EDGES)
    folds = [0.0, step.mm, 2 * step.mm, needed.mm] if finish == "cuff" else [0.0, needed.mm]
    wide = [0.0, out.mm] if finish != "cuff" else [0.0, out.mm, 0.0, out.mm * (needed.mm - 2 * step.mm) / step.mm]
    way = np.linspace(0.0, needed.mm, 61)
    by = np.interp(way, folds, wide)
    old, new = np.column_stack((0 * way, way)), np.column_stack((by, way))
    where = "side seam and inseam of the turn-up, straight below the old line, sloping out as the leg widens above"
    stations = tuple(zip(folds, wide, strict=True))
    ends = ("finished line", "cutting line")
    amount = Amount(out, out * _FOUR_EDGES, "each layer")
    return mark_lines("inseam", where, "out", amount, stations, (as_points(old), as_points(new)), ends)


def _turn_up_alone(given: Given) -> Calculation:
    depth, narrowing = given.total, _narrowing(given)
    flare = _flare(depth, narrowing)
    mark = _turn_up("plain", depth, depth, flare)
    because = (Reason("The turned-up part must be as wide as the leg it lies against: it mirrors the leg's taper below the fold."),)
    effects = {"hem-flare": flare, "per-edge": flare * (1 / _FOUR_EDGES)}
    return Calculation((mark,), flare, effects["per-edge"], effects, because=because)


CALCULATORS = (
    calculator(
        "turn-up-flare",
        _turn_up_alone,
        needs=("total", "knee-girth", "hem-girth"),
        block={"knee-to-hem": block.KNEE_TO_HEM},
        effects=("hem-flare", "per-edge"),
    ),
    calculator(
        "trouser-hem",
        _trouser_hem,
        needs=("finished-inseam",),
        block={
            "slant": block.HEM_SLANT,
            "hem-depth": block.TROUSER_HEM,
            "cuff-depth": block.CUFF,
            "inside-less": 0.0,
            "facing-seam": block.HEM_FACED,
            "half-hem": block.TROUSER_HEM_HALF,
            "knee-to-hem": block.KNEE_TO_HEM,
        },
        optional=("left-inseam", "cloth-below", "knee-girth", "hem-girth"),
        effects=("cloth-needed", "cloth-short-by", "slant", "hem-flare"),
        options={"finish": ("plain", "cuff", "faced")},
    ),
)
