"""Girth taken in or let out at the centre back seam or at the side seams."""

from __future__ import annotations

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, shaped_by
from fitdoctor.amounts.curves import Polyline, even, held_then_out, in_and_out, straight_out
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length
from fitdoctor.amounts.runs import Run, run_of, run_options
from fitdoctor.reason import Reason

_HIP_SHARE = {"crotch": 0.62, "straight": 0.8, "middle": 0.8, "hem": 0.35}
"Where the hip level crosses a centre back seam, as a share of its length from the waist."
_LOWER_END = {"crotch": "fork", "straight": "lower end", "middle": "lower end", "hem": "hem"}
_BAND_SHARE = 0.12
"The waistband's part of a seat seam: the new line runs parallel through it."


def _centre_back(given: Given) -> Calculation:
    half, blend = given.total * 0.5, given.word("blend")
    length = given.length("seat-seam" if blend == "crotch" and given.measured("length") is None else "length")
    line, run = _centre_back_run(given, blend, length.mm)
    amount = Amount(half, given.total, "each side", shape=run.shape)
    mark = mark_seam(given.word("at"), run.words, given.in_or_out, line, amount, run.ends)
    because = (Reason("Half of the whole is marked on each side of the seam."), Reason(f"The new line is {_SAYS[blend]}."))
    shaped, each = shaped_by(given.total, length), shaped_by(half, length)
    return Calculation((mark,), shaped, each, _centre_back_effects(given, run, half), because=because)


_SAYS = {
    "crotch": "smooth, and meets the old one where that turns into the crotch curve",
    "straight": "a straight line that runs out into the old seam",
    "middle": "one smooth curve that meets the old seam above and below",
    "hem": "as far from the old one all the way down",
}


def _centre_back_run(given: Given, blend: str, length_mm: float) -> tuple[Polyline, Run]:
    top, full, foot = given.word("top"), given.word("full-at"), given.word("foot")
    ends = (top.removeprefix("at ").removeprefix("the "), foot.removeprefix("at ").removeprefix("the ") if foot else _LOWER_END[blend])
    if blend == "crotch":
        shape, words = _INTO_THE_CROTCH[given.word("full-to")]
        return pieces.seat_seam(length_mm), Run(shape, words, ends)
    line = pieces.upright(length_mm)
    if blend == "hem":
        return line, Run(even, f"even from {top.removeprefix('at ')} to the hem", ends)
    if blend == "middle":
        return line, Run(in_and_out(0.5), f"{full}, running out to nothing {top} and {foot or 'below'}", ends)
    return line, Run(straight_out, f"{top}, running out to nothing {foot or 'in a straight line'}", ends)


_INTO_THE_CROTCH = {
    "waist": (held_then_out(_BAND_SHARE), "at the top, parallel through the band, then running out into the crotch curve"),
    "hip": (held_then_out(_HIP_SHARE["crotch"]), "at the top, parallel to the hip, then running out into the crotch curve"),
    "seat": (in_and_out(_HIP_SHARE["crotch"]), "at the seat, running out to nothing at the band and in the crotch curve"),
}


def _centre_back_effects(given: Given, run: Run, half: Length) -> dict[str, Length]:
    """What the seam changes where it is crossed: at the neck where it begins there, else at waist and hip."""
    at_top = given.total * run.shape(0.0)
    if given.word("top") == "at the neck":
        return {"neckline-change": at_top, "waist-change": given.total * run.shape(1.0), "per-side": half}
    return {"waist-change": at_top, "hip-change": given.total * run.shape(_HIP_SHARE[given.word("blend")]), "per-side": half}


def _side_seams(given: Given) -> Calculation:
    room, length, run = given.measured("limit"), given.length("length"), run_of(given)
    unplaced = at_least_zero(given.total - room * 2) if room else Length(0.0)
    placed = given.total - unplaced if unplaced.mm > 0 else given.total
    edge = placed * 0.25
    amount = Amount(edge, placed, "each layer", shape=run.shape)
    words = f"{run.words}, on each side seam"
    mark = mark_seam(given.word("at"), words, given.in_or_out, pieces.side_to_hip(length.mm), amount, run.ends)
    because = [Reason("Two seams of two layers: a quarter of the whole on each layer.")]
    if unplaced.mm > 0:
        because.append(Reason("The limit of a seam, as a pocket sets it, leaves a part without a place."))
    effects = {"per-edge": edge, "waist-change": placed * run.shape(0.0), "hip-change": placed * run.shape(1.0), "unplaced": unplaced}
    return Calculation((mark,), shaped_by(given.total, length), shaped_by(edge, length), effects, unplaced.mm, tuple(because))

CALCULATORS = (
    calculator(
        "centre-back-seam",
        _centre_back,
        block={"length": block.CENTRE_BACK, "seat-seam": block.SEAT_SEAM},
        effects=("waist-change", "hip-change", "neckline-change", "per-side"),
        options={
            "take": ("in", "out"),
            "at": open_option("centre-back-seam"),
            "blend": ("crotch", "straight", "middle", "hem"),
            "full-to": ("waist", "hip", "seat"),
            "top": open_option("at the top"),
            "full-at": open_option("at the middle"),
            "foot": open_option(""),
        },
    ),
    calculator(
        "side-seams",
        _side_seams,
        block={"length": block.SIDE_TO_HIP},
        optional=("limit",),
        effects=("per-edge", "waist-change", "hip-change", "unplaced"),
        options={"take": ("in", "out"), "at": open_option("side-seam"), **run_options(top="at the waist", foot="at the hip")},
    ),
)
