"""All calculators by name: one module a region, collected here."""

from __future__ import annotations

from fitdoctor.amounts import armhole, balance, darts, girth, hem, leg, neck, plain, seat, share, shoulder, sleeve, trouser_hem, waist
from fitdoctor.amounts.marks import Calculator

CALCULATORS: dict[str, Calculator] = {
    calculator.name: calculator
    for region in (waist, girth, share, seat, darts, neck, shoulder, armhole, sleeve, hem, trouser_hem, leg, balance, plain)
    for calculator in region.CALCULATORS
}
