"""Legs tapered or widened about the crease."""

from __future__ import annotations

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, shaped_by
from fitdoctor.amounts.curves import run_out
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Take
from fitdoctor.reason import Reason
from fitdoctor.units import MM_PER_INCH

_FRONT_LESS_MM = MM_PER_INCH
"Front and back hem of one leg: (hem - 1 in) / 4 and (hem + 1 in) / 4 on each side of the crease, by a tailor's rule."


def _taper(given: Given) -> Calculation:
    total, length, start = given.total, given.length("length"), given.word("from")
    take: Take = "in" if given.word("take") == "in" else "out"
    edge = total * 0.25
    amount = Amount(edge, total * 0.5, "each layer", shape=run_out)
    line = pieces.leg_edge(length.mm)
    where = f"at the hem, running out to nothing at the {start}"
    marks = tuple(mark_seam(seam, where, take, line, amount, ("hem", start)) for seam in ("inseam", "side-seam"))
    effects = {"front-each": edge, "back-each": edge, **_widths(given.measured("hem-girth"))}
    because = (Reason("Front and back lose or gain alike on both sides of the crease, so the crease stays and the leg keeps its hang."),)
    return Calculation(marks, shaped_by(total, length), shaped_by(edge, length), effects, because=because)


def _widths(hem: Length | None) -> dict[str, Length]:
    """Widths of a finished hem on each side of the crease, front and back."""
    if hem is None:
        return {}
    less = Length(_FRONT_LESS_MM)
    return {"front-half": at_least_zero(hem - less) * 0.25, "back-half": (hem + less) * 0.25}


CALCULATORS = (
    calculator(
        "leg-taper",
        _taper,
        block={"length": block.KNEE_TO_HEM},
        optional=("hem-girth",),
        effects=("front-each", "back-each", "front-half", "back-half"),
        options={"take": ("in", "out"), "from": ("knee", "thigh")},
    ),
)
