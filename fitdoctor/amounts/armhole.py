"""The armhole cut or let out at one place, the sleeve cap raised or lowered, the sleeve turned in the armhole."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import carry, shaped_by
from fitdoctor.amounts.curves import Polyline, as_points, in_and_out, polyline_length, run_out
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.marking import Amount, Shape, mark_lines, mark_seam, new_line
from fitdoctor.amounts.marks import Calculation, Length, Mark, Take
from fitdoctor.reason import Reason

NOTCH_SHARE = 0.6
"The notches stand at this share of the way from the shoulder down to the underarm."
_TAKES: tuple[Take, ...] = ("in", "out", "lower", "cut", "raise")


def to_the_notch(share: float) -> float:
    """All of it at the shoulder, nothing from the notch on."""
    return run_out(share / NOTCH_SHARE)


def under_the_notch(share: float) -> float:
    """Nothing down to the notch, all of it at the underarm."""
    return run_out((1 - share) / (1 - NOTCH_SHARE))


def _front_curve(share: float) -> float:
    return in_and_out(0.5)((share - NOTCH_SHARE) / (1 - NOTCH_SHARE)) if share > NOTCH_SHARE else 0.0


def _front_and_underarm(share: float) -> float:
    return run_out(1 - (share - NOTCH_SHARE / 2) / (NOTCH_SHARE / 2))


_ARMHOLE: dict[str, tuple[Shape, int, str]] = {
    "underarm": (under_the_notch, 2, "at the bottom of the armhole, running out at the notches"),
    "shoulder": (to_the_notch, 2, "at the shoulder end, running out into the old armhole at the notches"),
    "front": (_front_curve, 1, "at the front curve of the armhole, running out at notch and underarm"),
    "front-and-underarm": (_front_and_underarm, 1, "along the front curve and the underarm, running out above the notch"),
}
"Place on the armhole -> how it runs from shoulder to underarm, how many of the two halves move, where."


def _armhole(given: Given) -> Calculation:
    total, round_ = given.total, given.length("armhole-length")
    shape, halves, where = _ARMHOLE[given.word("place")]
    take = next(take for take in _TAKES if take == given.word("take"))

    def change(total_mm: float, round_mm: float) -> float:
        line = pieces.armhole_for(round_mm / 2)
        moved = new_line(line, take, Amount(Length(total_mm), Length(total_mm), "", shape=shape))
        return abs(polyline_length(moved) - polyline_length(line)) * halves

    changed = carry(change, total, round_)
    line = pieces.armhole_for(round_.mm / 2)
    mark = mark_seam("armhole-seam", where, take, line, Amount(total, total * 2, "each side", shape=shape))
    because = (Reason("The new armhole is measured along its curve; the cap has to fill what it gains."),)
    shaped = shaped_by(total, round_)
    return Calculation((mark,), shaped, shaped, {"armhole-change": changed}, because=because)


def _crown(share: float) -> float:
    return to_the_notch(abs(share - 0.5) * 2)


_CAP: dict[str, tuple[Shape, str]] = {
    "crown": (_crown, "at the top of the sleeve cap, running out at the notches"),
    "underarm": (lambda share: under_the_notch(abs(share - 0.5) * 2), "at the underarm of the sleeve, running out at the notches"),
}
"Place on the cap -> how it runs from the back underarm over the crown to the front underarm, where."
_CAP_ENDS = ("back underarm", "front underarm")


def _cap(given: Given) -> Calculation:
    total, round_, height = given.total, given.length("armhole-length"), given.length("cap-height")
    shape, where = _CAP[given.word("place")]
    take = next(take for take in _TAKES if take == given.word("take"))
    amount = Amount(total, total * 2, "each side", shape=shape)

    def change(total_mm: float, round_mm: float, height_mm: float) -> float:
        line = pieces.sleeve_cap_for(round_mm, height_mm)
        moved = new_line(line, take, Amount(Length(total_mm), Length(total_mm), "", shape=shape))
        return abs(polyline_length(moved) - polyline_length(line))

    mark = mark_seam("armhole-seam", where, take, pieces.sleeve_cap_for(round_.mm, height.mm), amount, _CAP_ENDS)
    effects = {"cap-change": carry(change, total, round_, height), "cap-height-change": total}
    because = (Reason("The cap is drawn anew from notch to notch; its length changes by what is measured along both curves."),)
    shaped = shaped_by(total, round_, height)
    return Calculation((mark,), shaped, shaped, effects, because=because)


def _pitch(given: Given) -> Calculation:
    shift, round_, height = given.total, given.length("armhole-length"), given.length("cap-height")
    toward, other = (given.word("toward"), {"back": "front", "front": "back"}[given.word("toward")])
    degrees = 360 * shift.mm / round_.mm
    on_cap = f"on the cap, every mark moved toward the {toward}: the whole sleeve turns by {degrees:.1f}°"
    on_body = f"on the armhole: the sleeve's old marks come to lie so far toward the {other}, its crown before all"
    line = pieces.sleeve_cap_for(round_.mm, height.mm)
    body = pieces.both_halves(pieces.armhole_for(round_.mm / 2))
    sign = -1.0 if toward == "back" else 1.0
    marks = (_turned(on_cap, line, shift, sign), replace(_turned(on_body, body, shift, -sign), grain=(1.0, 0.0)))
    because = (
        Reason(f"The sleeve turns by {degrees:.1f}° of the armhole's round; every notch moves by as much along the seam."),
        Reason(f"Below the shoulder it swings to the {toward}, so its crown moves to the {other} and its seam leaves the side seam."),
    )
    shaped = shaped_by(shift, round_, height)
    return Calculation(marks, shaped, shaped, {"notch-shift": shift}, because=because)


def _turned(where: str, line: Polyline, shift: Length, sign: float) -> Mark:
    """A mark whose notches move along the seam: back notch, crown, front notch."""
    length = polyline_length(line)
    ways = [length * share for share in np.array([1 - NOTCH_SHARE, 1.0, 1 + NOTCH_SHARE]) / 2]
    points = as_points(line)
    stations = tuple((float(way), shift.mm) for way in ways)
    return mark_lines("armhole-seam", where, "mark", Amount(shift, shift, "in all"), stations, (points, points), _CAP_ENDS, sign * shift.mm)


CALCULATORS = (
    calculator(
        "armhole-move",
        _armhole,
        block={"armhole-length": block.ARMHOLE},
        effects=("armhole-change",),
        options={"place": ("underarm", "shoulder", "front", "front-and-underarm"), "take": ("lower", "in", "out", "cut", "raise")},
    ),
    calculator(
        "cap-move",
        _cap,
        block={"armhole-length": block.ARMHOLE, "cap-height": block.CAP_HEIGHT},
        effects=("cap-change", "cap-height-change"),
        options={"place": ("crown", "underarm"), "take": ("out", "in", "lower", "cut", "raise")},
    ),
    calculator(
        "sleeve-pitch",
        _pitch,
        block={"armhole-length": block.ARMHOLE, "cap-height": block.CAP_HEIGHT},
        effects=("notch-shift",),
        options={"toward": ("back", "front")},
    ),
)
