"""Shoulder seams turned by a wedge, shoulders narrowed."""

from __future__ import annotations

import math

import numpy as np

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.armhole import to_the_notch, under_the_notch
from fitdoctor.amounts.carry import at_least_zero, carry, shaped_by, stand_ins
from fitdoctor.amounts.curves import as_points, straight_out, ways
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.marking import ENDS, Amount, mark_lines, mark_seam, shares_of_way
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.errors import FitdoctorError
from fitdoctor.reason import Reason


def _wedge(given: Given) -> Calculation:
    height, length, end = given.total, given.length("shoulder-length"), given.word("end")
    take = given.in_or_out
    layers = {"both": 2, "one": 1}[given.words.get("layers") or ("both" if end == "armhole" else "one")]
    line = pieces.sloping_shoulder(length.mm)
    amount = Amount(height, height * layers, "each layer" if layers == 2 else "in all", shape=straight_out)
    if end == "armhole":
        amount = Amount(height, amount.total, amount.convention, shape=lambda t: t)
    other = "neck" if end == "armhole" else "armhole"
    marks = [mark_seam("shoulder-seam", f"at the {end} end, running out to nothing at the {other}", take, line, amount)]
    sizes = [length]
    if given.word("armhole") == "lowered":
        sizes.append(given.length("armhole-length"))
        marks.append(_lowered(height, sizes[-1]))
    nothing = Length(0.0)
    effects = {
        "slope-change": height,
        "armhole-change": height if end == "armhole" else nothing,
        "neckline-change": height if end == "neck" else nothing,
    }
    turned = math.degrees(math.atan2(height.mm, length.mm))
    because = (
        Reason(f"The seam turns by {turned:.1f}° about its {other} end."),
        Reason(_WEDGE_BECAUSE[end]),
    )
    shaped = shaped_by(height, *sizes)
    return Calculation(tuple(marks), shaped, shaped, effects, because=because)


def _lowered(height: Length, round_: Length) -> Mark:
    """The underarm moved down by what the wedge has taken off the armhole above."""
    amount = Amount(height, height * 2, "each layer", shape=under_the_notch)
    where = "at the bottom of the armhole, running out at the notches"
    return mark_seam("armhole-seam", where, "lower", pieces.armhole_for(round_.mm / 2), amount)


_WEDGE_BECAUSE = {
    "armhole": "The front and the back armhole each change by the height of the wedge: move the underarm by as much.",
    "neck": "The neckline changes by the height of the wedge at that layer; the armhole stays.",
}


def armhole_longer_each_mm(inward_mm: float, shoulder_length_mm: float, drop_mm: float) -> float:
    """What the front, and again the back, armhole gains when the shoulder end moves in along a sloping seam: s · sin(slope)."""
    return inward_mm * drop_mm / shoulder_length_mm


def _narrowed(given: Given) -> Calculation:
    inward, length, drop = given.total, given.length("shoulder-length"), _drop(given)
    if drop.mm >= length.mm:
        raise FitdoctorError("The drop of the shoulder seam is not less than its length.", "Measure both again.")
    if inward.mm >= length.mm:
        raise FitdoctorError("More is to come off the shoulder than the seam is long.", "Measure both again.")
    longer = carry(armhole_longer_each_mm, inward, length, drop) * 2
    effects = {"armhole-longer": longer, "cap-must-give": longer, "shoulder-width-change": inward * 2}
    gives = given.measured("cap-can-give")
    if gives is not None:
        effects["cap-short-by"] = at_least_zero(longer - gives)
    round_ = given.length("armhole-length")
    effects |= {"armhole-new": round_ + longer, "sleeve-must-gain": inward}
    mark = _new_armhole(inward, math.asin(drop.mm / length.mm), round_)
    because = (
        Reason("The shoulder end rises as it moves in along the slope of the seam: the front and the back armhole each gain that rise."),
        Reason("The sleeve is set again on its old seam line, so its cap must give what the armhole has gained."),
    )
    shaped = shaped_by(inward, length, drop, round_)
    return Calculation((mark,), shaped, shaped, effects, because=because)


def _new_armhole(inward: Length, slope: float, round_: Length) -> Mark:
    """The armhole moved in along the shoulder seam, so that the new one begins on that seam."""
    line = pieces.armhole_for(round_.mm / 2)
    way = ways(line)
    left = np.array([to_the_notch(s / way[-1]) for s in way])
    new = line - left[:, None] * inward.mm * np.array([math.cos(slope), math.sin(slope)])
    stations = tuple((float(t * way[-1]), inward.mm * to_the_notch(float(t))) for t in shares_of_way(float(way[-1])))
    where = "at each shoulder end, running out into the old armhole at the notches"
    amount = Amount(inward, inward * 2, "each side")
    return mark_lines("armhole-seam", where, "in", amount, stations, (as_points(line), as_points(new)), ENDS["armhole-seam"])


def _drop(given: Given) -> Length:
    """The measured drop, else the standard slope over the seam's own length."""
    drop = given.measured("shoulder-slope-drop")
    if drop is not None:
        return drop
    length, stand_in = given.length("shoulder-length"), given.length("shoulder-slope-drop")
    share = stand_in.mm / block.SHOULDER
    return Length(length.mm * share, length.give_mm * share, stand_ins(stand_in, length))


CALCULATORS = (
    calculator(
        "shoulder-wedge",
        _wedge,
        block={"shoulder-length": block.SHOULDER, "armhole-length": block.ARMHOLE},
        effects=("slope-change", "armhole-change", "neckline-change"),
        options={"end": ("armhole", "neck"), "take": ("in", "out"), "layers": ("both", "one"), "armhole": ("kept", "lowered")},
    ),
    calculator(
        "shoulder-narrowed",
        _narrowed,
        block={"shoulder-length": block.SHOULDER, "shoulder-slope-drop": block.SHOULDER_DROP, "armhole-length": block.ARMHOLE},
        optional=("cap-can-give",),
        effects=("armhole-longer", "armhole-new", "cap-must-give", "cap-short-by", "shoulder-width-change", "sleeve-must-gain"),
    ),
)
