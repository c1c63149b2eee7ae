"""Amounts in whole steps of the shop's rule, totals and symmetry kept."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.amounts.split import round_shares
from fitdoctor.amounts.work_out import WorkedAmount

_NOTHING_MM = 1e-6


def round_worked(worked: Sequence[WorkedAmount], step_mm: float) -> tuple[WorkedAmount, ...]:
    """The worked amounts with every mark in whole steps, as they are chalked.

    Args:
        step_mm: the shop's step, such as 1/16 in.
    """
    return tuple(
        replace(amount, calculation=round_calculation(amount.calculation, step_mm)) if amount.calculation else amount for amount in worked
    )


def round_calculation(calculation: Calculation, step_mm: float) -> Calculation:
    """Marks in whole steps: the parts of all marks together keep the total by the largest remainder, like parts stay alike.

    What a step would put on one of two like parts only is added to what has no place.
    """
    parts = [_parts(mark) for mark in calculation.marks]
    amounts = [mark.each_mm for mark, number in zip(calculation.marks, parts, strict=True) for _ in range(number)]
    names = [f"{n}" for n, number in enumerate(parts) for _ in range(number)]
    if not _one_whole(calculation):
        shares = [round(amount / step_mm) * step_mm for amount in amounts]
        left = 0.0
    else:
        rounded = round_shares(amounts, step_mm, names)
        shares, left = list(rounded.amounts), rounded.unplaced
    marks = tuple(_scaled(mark, shares[names.index(f"{n}")], parts[n]) for n, mark in enumerate(calculation.marks))
    each = Length(marks[0].each_mm, calculation.each.give_mm, calculation.each.assumed) if marks else calculation.each
    unplaced = calculation.unplaced_mm + (left if left > _NOTHING_MM else 0.0)
    return replace(calculation, marks=marks, each=each, unplaced_mm=unplaced)


def _one_whole(calculation: Calculation) -> bool:
    """Whether the marks share one total between them."""
    placed = sum(mark.total_mm for mark in calculation.marks)
    return abs(placed + calculation.unplaced_mm - calculation.total.mm) < _NOTHING_MM


def _parts(mark: Mark) -> int:
    """How many like parts a mark stands for: layers, sides, darts."""
    return max(1, round(mark.total_mm / mark.each_mm)) if mark.each_mm > _NOTHING_MM else 1


def _scaled(mark: Mark, each_mm: float, parts: int) -> Mark:
    """The mark with another amount; its lines move in proportion."""
    if mark.each_mm <= _NOTHING_MM:
        return mark
    factor = each_mm / mark.each_mm
    moved = zip(mark.old, mark.new, strict=True) if len(mark.old) == len(mark.new) else ()
    return replace(
        mark,
        each_mm=each_mm,
        total_mm=each_mm * parts,
        along_mm=mark.along_mm * factor,
        stations=tuple((way, offset * factor) for way, offset in mark.stations),
        new=tuple((x0 + (x1 - x0) * factor, y0 + (y1 - y0) * factor) for (x0, y0), (x1, y1) in moved) or mark.new,
    )
