"""Lengths: millimetres inside; centimetres, millimetres, inches and fractions at the edge.

The only module that knows inches. 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from fitdoctor.errors import FitdoctorError

MM_PER_INCH = 25.4
UnitSystem = Literal["in", "cm"]

_INCH = Fraction("25.4")
_MM_PER_UNIT = {"mm": Fraction(1), "cm": Fraction(10), "in": _INCH, "inch": _INCH, "inches": _INCH, '"': _INCH, "″": _INCH}
_VULGAR = dict(zip("½¼¾⅛⅜⅝⅞⅓⅔", (" 1/2", " 1/4", " 3/4", " 1/8", " 3/8", " 5/8", " 7/8", " 1/3", " 2/3"), strict=True))
_LENGTH = re.compile(
    r"""\s*(?P<sign>[-−]?)\s*
        (?:(?P<whole>\d+)(?:\s+|-|\s+-\s+)(?P<num>\d+)\s*/\s*(?P<den>\d+)   # 1 1/2
          |(?P<fnum>\d+)\s*/\s*(?P<fden>\d+)                      # 3/4
          |(?P<dec>\d+(?:[.,]\d+)?|[.,]\d+))                      # 1.5, 1,5
        \s*(?P<unit>mm|cm|inches|inch|in\.?|"|″)?\s*""",
    re.VERBOSE,
)


def parse_length(text: str, default_unit: UnitSystem | Literal["mm"] = "in") -> float:
    """Read a length such as ``1 1/2 in``, ``3/4"``, ``1.5``, ``38 mm`` or ``3,8 cm``.

    Args:
        text: what was typed.
        default_unit: the unit meant where none is written.

    Returns:
        The length in mm; may be negative.

    Raises:
        FitdoctorError: the text is not a length.

    >>> parse_length("1 1/2 in")
    38.1
    >>> parse_length("38 mm")
    38.0
    """
    spelled = "".join(_VULGAR.get(sign, sign) for sign in text)
    found = _LENGTH.fullmatch(spelled)
    if not found:
        raise FitdoctorError(f"‘{text.strip()}’ is not a length.", "Write it as 1 1/2, 1.5 or 38 mm.")
    parts = found.groupdict()
    if "0" in (parts["den"], parts["fden"]):
        raise FitdoctorError(f"‘{text.strip()}’ divides by zero.", "Write it as 1 1/2, 1.5 or 38 mm.")
    if parts["num"]:
        value = Fraction(int(parts["whole"])) + Fraction(int(parts["num"]), int(parts["den"]))
    elif parts["fnum"]:
        value = Fraction(int(parts["fnum"]), int(parts["fden"]))
    else:
        value = Fraction(parts["dec"].replace(",", "."))
    unit = (parts["unit"] or default_unit).rstrip(".")
    mm = float(value * _MM_PER_UNIT[unit])
    return -mm if parts["sign"] else mm


@dataclass(frozen=True)
class Typeset:
    """A length ready to be set in type: 1 9/16 in is (1, 9, 16, "in"); 3.8 cm is ("3.8", 0, 1, "cm")."""

    whole: str
    numerator: int
    denominator: int
    unit: str
    negative: bool = False

    def __str__(self) -> str:
        fraction = f"{self.numerator}/{self.denominator}" if self.numerator else ""
        number = " ".join(part for part in (self.whole, fraction) if part) or "0"
        return f"{'−' if self.negative else ''}{number} {self.unit}"


def typeset_length(mm: float, unit: UnitSystem = "in", finest: int = 16) -> Typeset:
    """Round to the nearest 1/finest inch, or to the millimetre, and split for setting.

    Args:
        mm: the length in mm.
        unit: ``in`` or ``cm``.
        finest: the finest fraction of an inch shown, a power of two.
    """
    if unit == "cm":
        cm = round(abs(mm)) / 10
        return Typeset(f"{cm:g}", 0, 1, "cm", negative=mm < 0 and cm > 0)
    steps = round(abs(mm) / MM_PER_INCH * finest)
    whole, part = divmod(steps, finest)
    fraction = Fraction(part, finest)
    shown = str(whole) if whole or not part else ""
    return Typeset(shown, fraction.numerator, fraction.denominator, "in", negative=mm < 0 and steps > 0)


def format_length(mm: float, unit: UnitSystem = "in", finest: int = 16) -> str:
    """The length as plain text.

    >>> format_length(38.1)
    '1 1/2 in'
    >>> format_length(38.1, "cm")
    '3.8 cm'
    """
    return str(typeset_length(mm, unit, finest))


def speak_length(mm: float, unit: UnitSystem = "in", finest: int = 16) -> str:
    """The length as a screen reader should say it: ``1 and 9 over 16 inches``."""
    if unit == "cm":
        return f"{typeset_length(mm, unit).whole} centimetres"
    set_ = typeset_length(mm, unit, finest)
    fraction = f"{set_.numerator} over {set_.denominator}" if set_.numerator else ""
    words = " and ".join(part for part in (set_.whole, fraction) if part)
    return f"{words} {'inch' if words == '1' else 'inches'}"


def step_mm(unit: UnitSystem, finest: int = 16) -> float:
    """One step of the shop's step in mm."""
    return 1.0 if unit == "cm" else MM_PER_INCH / finest
