"""Sleeves lengthened, or shortened at the hem or at the cap."""

from __future__ import annotations

import numpy as np

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import shaped_by
from fitdoctor.amounts.curves import Polyline, as_points, polyline_length
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.hem import let_down_effects
from fitdoctor.amounts.marking import Amount, mark_lines, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Mark, Take
from fitdoctor.reason import Reason

_ENDS = ("front fold", "elbow seam")


def _sleeve_length(given: Given) -> Calculation:
    total, way = given.total, given.word("take")
    because = [Reason("What the hem is deep, less what is let down, is left to turn up; where that is too little the edge is faced.")]
    if way == "shorten-at-cap":
        return _shorter_at_cap(given)
    take: Take = "lower" if way == "lengthen" else "raise"
    edge = pieces.level(block.SLEEVE_HEM_HALF)
    marks = [mark_seam("sleeve-hem", "the new edge, all round the sleeve", take, edge, Amount(total, total, "in all"), _ENDS)]
    if way == "shorten":
        marks.append(_cutting_line(edge, total, given.length("new-hem")))
    if given.word("vent") == "buttons":
        marks.append(_vent(given, edge[-1] + np.array([0.0, total.mm if way == "lengthen" else -total.mm])))
    depth = given.measured("hem-depth")
    new_hem = given.length("new-hem")
    effects = let_down_effects(total, depth, new_hem) if way == "lengthen" else _taken_up(total, depth, new_hem)
    return Calculation(tuple(marks), total, total, effects, because=tuple(because))


def _cutting_line(edge: Polyline, total: Length, hem: Length) -> Mark:
    """Where a shortened sleeve is cut: a hem below the new edge, measured from the old one."""
    new = as_points(edge - np.array([0.0, total.mm - hem.mm]))
    old = as_points(edge - np.array([0.0, total.mm]))
    where = "the cutting line, a hem's depth below the new edge"
    stations = ((0.0, hem.mm), (polyline_length(edge), hem.mm))
    return mark_lines("sleeve-hem", where, "cut", Amount(hem, hem, "in all"), stations, (old, new), _ENDS)


def _vent(given: Given, corner: Polyline) -> Mark:
    """The buttons of the cuff: the lowest above the new edge, the others at even spacing above it."""
    lowest, spacing = given.length("button-from-edge"), given.length("button-spacing")
    ways_up = [lowest.mm + n * spacing.mm for n in range(given.number("buttons"))]
    x, y = float(corner[0]), float(corner[1])
    line = ((x, y), (x, y - ways_up[-1] - lowest.mm))
    where = "the lowest button, above the new edge; the others stand above it at even spacing"
    stations = tuple((way, 0.0) for way in ways_up)
    ends = ("new edge", "top of the vent")
    return mark_lines("sleeve-vent", where, "mark", Amount(lowest, lowest, "in all"), stations, (line, line), ends)


def _shorter_at_cap(given: Given) -> Calculation:
    total, armhole, height = given.total, given.length("armhole-length"), given.length("cap-height")
    line = pieces.sleeve_cap_for(armhole.mm, height.mm)
    shaped = shaped_by(total, armhole, height)
    where, ends = "off the cap all the way round; the hem stays", ("back underarm", "front underarm")
    mark = mark_seam("armhole-seam", where, "cut", line, Amount(total, total, "in all"), ends)
    because = (Reason("Vent and buttons keep their place; the cap is drawn anew below the old one."),)
    nothing = Length(0.0)
    return Calculation((mark,), shaped, shaped, {"hem-short-by": nothing, "cloth-short-by": nothing}, because=because)


def _taken_up(total: Length, depth: Length | None, new_hem: Length) -> dict[str, Length]:
    nothing = Length(0.0)
    left = {"hem-left": depth + total} if depth is not None else {}
    return {**left, "hem-short-by": nothing, "cloth-short-by": nothing, "new-hem": new_hem}


CALCULATORS = (
    calculator(
        "sleeve-length",
        _sleeve_length,
        block={
            "new-hem": block.SLEEVE_HEM,
            "button-from-edge": block.BUTTON_FROM_EDGE,
            "button-spacing": block.BUTTON_SPACING,
            "armhole-length": block.ARMHOLE,
            "cap-height": block.CAP_HEIGHT,
        },
        optional=("hem-depth",),
        effects=("hem-left", "hem-short-by", "cloth-short-by", "new-hem"),
        options={"take": ("lengthen", "shorten", "shorten-at-cap"), "vent": ("none", "buttons"), "buttons": ("4", "1", "2", "3", "5")},
    ),
)
