"""A length that was typed: what can be doubted about it, and what was perhaps meant. No Qt."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fitdoctor.shop import Shop
from fitdoctor.units import step_mm

MM_PER_CM = 10.0


@dataclass(frozen=True)
class Doubt:
    """A length outside what is usual: whether it is even possible, and a likelier reading of the same figures."""

    mm: float
    possible: bool
    too_much: bool
    meant_mm: float | None = None


def doubt(mm: float, usual: tuple[float, float], possible: tuple[float, float], shop: Shop) -> Doubt | None:
    """What can be doubted about a length in mm; None where it is usual."""
    if usual[0] <= mm <= usual[1]:
        return None
    meant = next((other for other in _slips(mm, shop) if usual[0] <= other <= usual[1]), None)
    fits = possible[0] <= mm <= possible[1]
    return Doubt(mm, fits, mm > usual[1], meant)


def _slips(mm: float, shop: Shop) -> Iterator[float]:
    """The same figures as sixteenths, eighths, another unit, or with the point moved by one place."""
    if shop.unit == "in":
        sixteenth = step_mm("in", 16)
        figure = mm / (16 * sixteenth)
        if abs(figure - round(figure)) < 1e-9:
            yield figure * sixteenth
            yield figure * 2 * sixteenth
        yield figure
        yield figure * MM_PER_CM
    else:
        yield mm / MM_PER_CM
        yield mm * MM_PER_CM
