"""Marks without a region of their own: an amount at a seam, a piece set in, lining that follows the shell, buttons moved."""

from __future__ import annotations

from dataclasses import replace

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import shaped_by
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Take
from fitdoctor.amounts.runs import run_of, run_options
from fitdoctor.reason import Reason

_TAKES: tuple[Take, ...] = ("mark", "in", "out", "lower", "raise", "add", "cut")


def _plain(given: Given) -> Calculation:
    parts = given.number("parts")
    each = given.total * (1 / parts)
    take = next(take for take in _TAKES if take == given.word("take"))
    at, run, even = given.word("at"), run_of(given), given.word("shape") == "even"
    length = given.length("length")
    where = given.word("where") if even else ", ".join(filter(None, (run.words, given.words.get("where"))))
    amount = Amount(each, given.total * given.number("sides"), given.word("convention"), shape=run.shape)
    mark = mark_seam(at, where, take, pieces.seam_line(at, length.mm), amount, None if even else run.ends)
    because = (Reason("Shared alike over the parts." if parts > 1 else "As measured."),)
    shaped, part = (given.total, each) if even else (shaped_by(given.total, length), shaped_by(each, length))
    return Calculation((mark,), shaped, part, {"each": each}, because=because)


def _set_in(given: Given) -> Calculation:
    """A piece set in: a wedge or, pointed at both ends, a lozenge; half of it is drawn, from its middle line."""
    parts, seam, length = given.number("parts"), given.length("seam"), given.length("length")
    each, run = given.total * (1 / parts), run_of(given)
    amount = Amount(each, given.total, "each piece", layer_share=0.5, shape=run.shape)
    mark = mark_seam(given.word("at"), f"{run.words}, in {given.word('where')}", "add", pieces.upright(length.mm), amount, run.ends)
    because = (Reason("The piece is cut wider than what it gives by its own seam at either side."),)
    shaped, piece = shaped_by(given.total, length), shaped_by(each, length)
    effects = {"each": each, "cut-width": each + seam * 2, "cut-length": length + seam * 2}
    return Calculation((mark,), shaped, piece, effects, because=because)


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
            "sides": ("1", "2"),
            "convention": ("in all", "each side", "each layer", "each dart", "each seam"),
            **run_options(),
        },
    ),
    calculator(
        "set-in-piece",
        _set_in,
        block={"length": block.PIECE, "seam": block.PIECE_SEAM},
        effects=("each", "cut-width", "cut-length"),
        options={
            "at": open_option("side-seam"),
            "where": open_option("the seam"),
            "parts": ("1", "2", "3", "4"),
            **run_options("tapered"),
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
