"""Shoulder seams turned by a wedge, shoulders narrowed, sleeves turned in the armhole."""

from __future__ import annotations

import math

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, carry, shaped_by, stand_ins
from fitdoctor.amounts.curves import run_out, straight_out
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Take
from fitdoctor.errors import FitdoctorError
from fitdoctor.reason import Reason


def _wedge(given: Given) -> Calculation:
    height, length, end = given.total, given.length("shoulder-length"), given.word("end")
    take: Take = "in" if given.word("take") == "in" else "out"
    layers = {"both": 2, "one": 1}[given.words.get("layers") or ("both" if end == "armhole" else "one")]
    line = pieces.shoulder(length.mm, length.mm * block.SHOULDER_DROP / block.SHOULDER)
    amount = Amount(height, height * layers, "each layer" if layers == 2 else "in all", shape=straight_out)
    if end == "armhole":
        amount = Amount(height, amount.total, amount.convention, shape=lambda t: t)
    other = "neck" if end == "armhole" else "armhole"
    mark = mark_seam("shoulder-seam", f"at the {end} end, running out to nothing at the {other}", take, line, amount)
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
    shaped = shaped_by(height, length)
    return Calculation((mark,), shaped, shaped, effects, because=because)


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
    end = pieces.shoulder(length.mm, drop.mm)[-1]
    old = pieces.armhole((float(end[0]), float(end[1])), block.ARMHOLE_DEPTH, block.ARMHOLE_HOLLOW)
    where = "at each shoulder end, running out into the old armhole at the notches"
    mark = mark_seam("armhole-seam", where, "in", old, Amount(inward, inward * 2, "each side", shape=_to_the_notch))
    because = (
        Reason("The shoulder end rises as it moves in along the slope of the seam: the front and the back armhole each gain that rise."),
        Reason("The sleeve is set again on its old seam line, so its cap must give what the armhole has gained."),
    )
    shaped = shaped_by(inward, length, drop)
    return Calculation((mark,), shaped, shaped, effects, because=because)


def _to_the_notch(share: float) -> float:
    return run_out(share / _NOTCH_SHARE)


_NOTCH_SHARE = 0.6
"The notches stand at this share of the way from the shoulder down to the underarm."


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
        block={"shoulder-length": block.SHOULDER},
        effects=("slope-change", "armhole-change", "neckline-change"),
        options={"end": ("armhole", "neck"), "take": ("in", "out"), "layers": ("both", "one")},
    ),
    calculator(
        "shoulder-narrowed",
        _narrowed,
        block={"shoulder-length": block.SHOULDER, "shoulder-slope-drop": block.SHOULDER_DROP},
        optional=("cap-can-give",),
        effects=("armhole-longer", "cap-must-give", "cap-short-by", "shoulder-width-change"),
    ),
)
