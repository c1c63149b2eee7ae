"""Waist seams lowered or raised, and a waist fitted while the hip stays."""

from __future__ import annotations

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import shaped_by
from fitdoctor.amounts.curves import even, run_out, straight_out
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, Shape, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Mark, Take
from fitdoctor.reason import Reason

_DART_SHARE = 0.5
"A waist dart stands about midway between the centre and the side seam."
# Share of the difference between waist and hip that each edge or dart takes; they add up to 1 over 4 side edges, 2 front and 2 back darts.
_SIDE_SHARE, _FRONT_DART_SHARE, _BACK_DART_SHARE = 0.13, 0.08, 0.16


def _crescent(given: Given) -> Calculation:
    total, along = given.total, given.length("along")
    take: Take = "lower" if given.word("take") == "lower" else "raise"
    at = given.word("at")
    centre = "centre front" if at.startswith("front") else "centre back"
    shape, words, why = _MOST[given.word("most")]
    mark = mark_seam(at, words.format(centre=centre), take, pieces.waist(along.mm), Amount(total, total, "in all", shape=shape))
    shaped = shaped_by(total, along)
    changes = "shorter" if take == "lower" else "longer"
    says = f"The rise at {centre} becomes {changes} by what is marked there, the darts by what is left of it where they stand."
    effects = {"rise-change": total * shape(0.0), "side-change": total * shape(1.0), "dart-shorter": total * shape(_DART_SHARE)}
    return Calculation((mark,), shaped, shaped, effects, because=(Reason(why), Reason(says)))


_MOST: dict[str, tuple[Shape, str, str]] = {
    "centre": (
        run_out,
        "at {centre}, running out smoothly at the side seams",
        "What is left of the amount runs out smoothly: level with the old seam at the centre and again at the side seam.",
    ),
    "side": (
        lambda t: run_out(1 - t),
        "at the side seam, running out smoothly at {centre}",
        "What is left of the amount runs out smoothly: level with the old seam at the side seam and again at the centre.",
    ),
    "all": (even, "even from {centre} to the side seams", "The new seam runs beside the old one, as far from it all the way."),
}


def _shaping(given: Given) -> Calculation:
    total, words = given.total, given.word("darts")
    counts = {
        "side-seam": (4, _SIDE_SHARE),
        "front-dart": (2 if words in ("both", "front") else 0, _FRONT_DART_SHARE),
        "back-dart": (2 if words in ("both", "back") else 0, _BACK_DART_SHARE),
    }
    whole = sum(number * share for number, share in counts.values())
    parts = {seam: total * (share / whole) for seam, (number, share) in counts.items() if number}
    marks = tuple(_shaped(seam, part, counts[seam][0], given) for seam, part in parts.items())
    because = (Reason("The waist is fitted at the side seams and in the darts by the shares of a common draft; the hip keeps its girth."),)
    nothing = Length(0.0)
    effects = {"per-seam": parts["side-seam"], "per-dart": parts.get("back-dart", parts.get("front-dart", nothing))}
    length = given.length("length")
    return Calculation(marks, shaped_by(total, length), shaped_by(parts["side-seam"], length), effects, because=because)


def _shaped(seam: str, part: Length, number: int, given: Given) -> Mark:
    if seam == "side-seam":
        line = pieces.side_to_hip(given.length("length").mm)
        edges = Amount(part, part * number, "each layer", shape=run_out)
        return mark_seam(seam, "at the waist, running out at the hip", "in", line, edges, ("waist", "hip"))
    line = pieces.upright(block.DART)
    amount = Amount(part, part * number, "each dart", layer_share=0.5, shape=straight_out)
    return mark_seam(seam, "at the waist, running out at the point", "in", line, amount)


CALCULATORS = (
    calculator(
        "waist-crescent",
        _crescent,
        block={"along": block.BACK_WAIST_QUARTER},
        effects=("rise-change", "side-change", "dart-shorter"),
        options={"at": open_option("back-waist-seam"), "take": ("lower", "raise"), "most": ("centre", "side", "all")},
    ),
    calculator(
        "waist-hip-shaping",
        _shaping,
        block={"length": block.SIDE_TO_HIP},
        effects=("per-seam", "per-dart"),
        options={"darts": ("both", "back", "front", "none")},
    ),
)
