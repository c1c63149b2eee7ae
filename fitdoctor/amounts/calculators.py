"""All calculators by name: one module a region, collected here."""

from __future__ import annotations

from fitdoctor.amounts import balance, darts, girth, hem, leg, neck, plain, seat, shoulder, sleeve, waist
from fitdoctor.amounts.marks import Calculator

CALCULATORS: dict[str, Calculator] = {
    calculator.name: calculator
    for region in (waist, girth, seat, darts, neck, shoulder, sleeve, hem, leg, balance, plain)
    for calculator in region.CALCULATORS
}
