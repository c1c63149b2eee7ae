"""Legs tapered or widened about the crease, or swung inward or outward."""

from __future__ import annotations

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, shaped_by
from fitdoctor.amounts.curves import run_out
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Take
from fitdoctor.reason import Reason

_KNEE_SHARE = 0.8
"A leg brought in by 5/8 in at the bottom comes in 1/2 in at the knee, by a tailor's page."


def _taper(given: Given) -> Calculation:
    total, length, start = given.total, given.length("length"), given.word("from")
    take = given.in_or_out
    edge = total * 0.25
    amount = Amount(edge, total * 0.5, "each layer", shape=run_out)
    line = pieces.leg_edge(length.mm)
    where = f"at the hem, running out to nothing at the {start}"
    marks = tuple(mark_seam(seam, where, take, line, amount, ("hem", start)) for seam in ("inseam", "side-seam"))
    effects = {"front-each": edge, "back-each": edge, **_widths(given.measured("hem-girth"), given.length("front-less"))}
    because = (Reason("Front and back lose or gain alike on both sides of the crease, so the crease stays and the leg keeps its hang."),)
    return Calculation(marks, shaped_by(total, length), shaped_by(edge, length), effects, because=because)


def _widths(hem: Length | None, less: Length) -> dict[str, Length]:
    """Widths of a finished hem on each side of the crease, front and back: the front is narrower by `less` than the back."""
    if hem is None:
        return {}
    return {"front-half": at_least_zero(hem - less) * 0.25, "back-half": (hem + less) * 0.25}


def _swing(given: Given) -> Calculation:
    total, length, knee = given.total, given.length("length"), given.length("crotch-to-knee")
    each, at_knee = total * 0.5, min(0.9, knee.mm / length.mm)
    take: Take = "out" if given.word("toward") == "inside" else "in"
    opposite: Take = "in" if take == "out" else "out"
    amount = Amount(each, total, "each layer", shape=lambda share: _swung(share, at_knee))
    where = "at the bottom, about four fifths of it at the knee, nothing at the fork"
    ends = ("fork", "hem")
    inner = mark_seam("inseam", where, take, pieces.upright(length.mm), amount, ends)
    outer = mark_seam("side-seam", where, opposite, pieces.upright(length.mm), amount, ends)
    because = (
        Reason("The amount counts on the double, half of it on each layer."),
        Reason("One seam gives what the other takes, so the leg moves over and keeps its width."),
    )
    effects = {"knee-shift": each * _KNEE_SHARE}
    shaped, layer = shaped_by(total, length, knee), shaped_by(each, length, knee)
    return Calculation((inner, outer), shaped, layer, effects, because=because)


def _swung(share: float, at_knee: float) -> float:
    """Nothing at the fork, four fifths at the knee, all at the hem: smooth at the fork, straight below the knee."""
    slope = (1 - _KNEE_SHARE) / (1 - at_knee)
    if share >= at_knee:
        return _KNEE_SHARE + slope * (share - at_knee)
    t = share / at_knee
    return _KNEE_SHARE * (3 * t * t - 2 * t**3) + slope * at_knee * (t**3 - t * t)


CALCULATORS = (
    calculator(
        "leg-taper",
        _taper,
        block={"length": block.KNEE_TO_HEM, "front-less": block.FRONT_HEM_LESS},
        optional=("hem-girth",),
        effects=("front-each", "back-each", "front-half", "back-half"),
        options={"take": ("in", "out"), "from": ("knee", "thigh")},
    ),
    calculator(
        "leg-swing",
        _swing,
        block={"length": block.CROTCH_TO_KNEE + block.KNEE_TO_HEM, "crotch-to-knee": block.CROTCH_TO_KNEE},
        effects=("knee-shift",),
        options={"toward": ("inside", "outside")},
    ),
)
