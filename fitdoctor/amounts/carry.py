"""Give or take carried through a formula, and what stands in for a measurement."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from fitdoctor.amounts.marks import Length

_NUDGE_MM = 1e-4
_MEASURE, _EXACT = ": measure ", " for the exact figure"


def carry(formula: Callable[..., float], *lengths: Length) -> Length:
    """The formula's value at the lengths, with its give or take to first order: the sum of |slope| × give over the lengths."""
    here = [length.mm for length in lengths]
    give = sum(abs(_slope(formula, here, n)) * length.give_mm for n, length in enumerate(lengths) if length.give_mm)
    return Length(formula(*here), give, stand_ins(*lengths))


def stand_ins(*lengths: Length) -> str:
    """What was not measured among these lengths, said once for each place it comes from."""
    found: dict[str, dict[str, None]] = {}
    for said in (said for length in lengths if length.assumed for said in length.assumed.split("; ")):
        source, names = said.removesuffix(_EXACT).split(_MEASURE, 1)
        found.setdefault(source, {}).update(dict.fromkeys(re.split(r", (?=the )| and (?=the )", names)))
    return "; ".join(f"{source}{_MEASURE}{_listed(list(names))}{_EXACT}" for source, names in found.items())


def _listed(names: list[str]) -> str:
    *before, last = names
    return f"{', '.join(before)} and {last}" if before else last


def shaped_by(total: Length, *lengths: Length) -> Length:
    """The total, saying which stand-ins shape its marks."""
    return replace(total, assumed=stand_ins(total, *lengths))


def at_least_zero(length: Length) -> Length:
    """The length with what lies below 0 cut off, of its give or take too: short by less than nothing is not short at all."""
    most = max(0.0, length.mm + length.give_mm)
    mm = max(0.0, length.mm)
    return Length(mm, most - mm, length.assumed)


def from_block(mm: float, name: str) -> Length:
    """A stand-in from the standard block."""
    return Length(mm, 0.0, f"from a standard block{_MEASURE}{name}{_EXACT}")


def as_usual(mm: float, name: str) -> Length:
    """A stand-in that the shop has set for itself."""
    return Length(mm, 0.0, f"as this shop usually has it{_MEASURE}{name}{_EXACT}")


def _slope(formula: Callable[..., float], here: list[float], n: int) -> float:
    up, down = list(here), list(here)
    up[n] += _NUDGE_MM
    down[n] -= _NUDGE_MM
    return (formula(*up) - formula(*down)) / (2 * _NUDGE_MM)
