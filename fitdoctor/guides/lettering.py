"""Lengths set on a guide: built-up fractions, both units."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fitdoctor.amounts.marks import Point
from fitdoctor.guides.shapes import Anchor, Text, text_width
from fitdoctor.units import MM_PER_INCH, UnitSystem, format_length, typeset_length


@dataclass(frozen=True)
class Ruler:
    """What the shop measures with: its unit, and the finest fraction of an inch it marks."""

    unit: UnitSystem = "in"
    finest: int = 16

    @property
    def every_mm(self) -> float:
        """How far apart the stations of a seam stand: 1 in, or 2 cm."""
        return MM_PER_INCH if self.unit == "in" else 20.0


def both_units(mm: float, finest: int = 16) -> str:
    """A length as plain words in both units, kept on one line: 3/4 in · 1.9 cm."""
    return f"{format_length(mm, 'in', finest)} · {format_length(mm, 'cm')}".replace(" ", "\u00a0")


def set_length(at: Point, mm: float, unit: UnitSystem, size: float, anchor: Anchor, finest: int = 16) -> Iterator[Text]:
    """A length in type, its fraction built up, as a row of texts."""
    set_ = typeset_length(mm, unit, finest)
    number = set_.whole or ("" if set_.numerator else "0")
    small = size * 0.7
    row: list[tuple[str, float, float]] = [(number, size, 0.0)] if number else []
    if set_.numerator:
        row += [(str(set_.numerator), small, 0.30), ("/", size, 0.0), (str(set_.denominator), small, 0.0)]
    row.append((f" {set_.unit}", size, 0.0))
    width = sum(text_width(words, letter) for words, letter, _ in row)
    x = at[0] - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor]
    for words, letter, raised in row:
        yield Text((x, at[1] - raised * size), words, letter)
        x += text_width(words, letter)


def both_lengths(at: Point, mm: float, anchor: Anchor, finest: int = 16, size: float = 3.2) -> Iterator[Text]:
    """The length in both units, one below the other."""
    yield from set_length(at, mm, "in", size, anchor, finest)
    yield from set_length((at[0], at[1] + size * 1.15), mm, "cm", size * 0.85, anchor, finest)
