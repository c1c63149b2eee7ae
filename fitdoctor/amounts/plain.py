"""Marks that need no curve: an amount at a seam, lining that follows the shell, buttons moved."""

from __future__ import annotations

from dataclasses import replace

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Take
from fitdoctor.reason import Reason

_TAKES: tuple[Take, ...] = ("mark", "in", "out", "lower", "raise", "add", "cut")


def _plain(given: Given) -> Calculation:
    parts = given.number("parts")
    each = given.total * (1 / parts)
    take = next(take for take in _TAKES if take == given.word("take"))
    line = pieces.level(given.length("length").mm)
    mark = mark_seam(given.word("at"), given.word("where"), take, line, Amount(each, given.total, given.word("convention")))
    because = (Reason("Shared alike over the parts." if parts > 1 else "As measured."),)
    return Calculation((mark,), given.total, each, {"each": each}, because=because)


def _lining(given: Given) -> Calculation:
    parts = max(1, round(given.length("parts").mm))
    seam = given.total * (1 / parts)
    layer = seam * 0.5
    where = "at the lining seams beside those of the shell" if parts > 1 else "at the lining seam beside that of the shell"
    line = pieces.upright(given.length("length").mm)
    mark = mark_seam(given.word("at"), where, "mark", line, Amount(layer, given.total, "each layer"))
    because = (Reason("The lining follows the shell by the same amounts, so that it neither pulls nor hangs."),)
    effects = {"per-layer": layer, "per-seam": seam}
    return Calculation((replace(mark, layer="lining"),), given.total, layer, effects, because=because)


def _buttons(given: Given) -> Calculation:
    total = given.total
    row = pieces.upright(block.BUTTON_ROW)
    mark = mark_seam(given.word("at"), "each button, level with its buttonhole", "mark", row, Amount(total, total, "in all"))
    because = (Reason("The buttons move by the whole amount; the buttonholes stay."),)
    return Calculation((mark,), total, total, {"button-shift": total}, because=because)


CALCULATORS = (
    calculator(
        "plain",
        _plain,
        block={"length": block.PLAIN},
        effects=("each",),
        options={
            "at": open_option("side-seam"),
            "where": open_option("along the seam"),
            "take": _TAKES,
            "parts": ("1", "2", "3", "4", "6", "8"),
            "convention": ("in all", "each side", "each layer", "each dart", "each seam"),
        },
    ),
    calculator(
        "lining-follows",
        _lining,
        block={"parts": 1.0, "length": block.GIRTH_SEAM},
        effects=("per-layer", "per-seam"),
        options={"at": open_option("lining-seam")},
    ),
    calculator("button-move", _buttons, effects=("button-shift",), options={"at": open_option("buttons")}),
)
