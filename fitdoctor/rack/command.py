"""What the command line says at the rack."""

from __future__ import annotations

import json
from collections.abc import Sequence
from math import isfinite

from fitdoctor.case import Case
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.answer import answer_at
from fitdoctor.rack.comparison import compare, rack_json
from fitdoctor.rack.question import Rack
from fitdoctor.rack.simulation import simulate
from fitdoctor.rack.text import comparison_text, rack_text, simulation_json, simulation_text
from fitdoctor.shop import Shop


def racks_of(cases: Sequence[Case], prices: Sequence[float], worths: Sequence[float], rate: float, hurry: bool = False) -> list[Rack]:
    """The buyers of these garments.

    Args:
        prices, worths: one for each case, or one for all.

    Raises:
        FitdoctorError: a number is missing, below nothing or not a number.
    """
    if not cases:
        raise FitdoctorError("No case is given.", "Name one or more case files, or --simulate.")
    pairs = zip(_for_each(cases, prices, "price"), _for_each(cases, worths, "worth"), cases, strict=True)
    if not (isfinite(rate) and rate >= 0):
        raise FitdoctorError(f"An hour cannot cost {rate:g}.", "Give --rate as an amount of money.")
    return [Rack(price, worth, rate, case, hurry=hurry) for price, worth, case in pairs]


def answers_said(knowledge: Knowledge, racks: Sequence[Rack], shop: Shop, as_json: bool) -> str:
    """The answers, and with several garments the comparison."""
    answers = [answer_at(knowledge, rack, shop) for rack in racks]
    if as_json:
        plain = [rack_json(answer) for answer in answers]
        return json.dumps(plain[0] if len(plain) == 1 else plain, indent=1, ensure_ascii=False)
    said = [rack_text(answer) for answer in answers]
    return "\n\n".join([*said, comparison_text(compare(answers))] if len(answers) > 1 else said)


def simulation_said(knowledge: Knowledge, as_json: bool) -> str:
    """The figures of the simulated buyers."""
    found = simulate(knowledge)
    return json.dumps(simulation_json(found), indent=1) if as_json else simulation_text(found)


def _for_each(cases: Sequence[Case], amounts: Sequence[float], name: str) -> list[float]:
    if not amounts:
        raise FitdoctorError(f"The rack needs to know the {name}.", f"Say it with --{name}, one for each case or one for all.")
    if len(amounts) not in (1, len(cases)):
        raise FitdoctorError(
            f"{len(amounts)} amounts are given as --{name} for {len(cases)} cases.", "Give one for each case, or one for all."
        )
    if not all(isfinite(amount) and amount >= 0 for amount in amounts):
        raise FitdoctorError(f"--{name} must be an amount of money, 0 or more.", "Give it as a plain number.")
    return list(amounts) * (len(cases) // len(amounts))
