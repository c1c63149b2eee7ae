"""From methods and measured lengths to named amounts and filled texts."""

from __future__ import annotations

import re

import pytest

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.work_out import fill, named_amounts, work_out_amounts
from fitdoctor.case import Case, Measured
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import AmountSpec, LengthMm, Measurement, Method, Operation
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.units import format_length

TUCK = Measurement(
    id="tuck",
    title="Tuck at centre back",
    how=("Pin it.",),
    of="garment-on-wearer",
    sense="depth-or-all",
    usual_mm=(LengthMm(5), LengthMm(25)),
    possible_mm=(LengthMm(2), LengthMm(60)),
    tolerance_mm=LengthMm(3),
)
ARC = Measurement(
    id="arc",
    title="Back waist, centre to side",
    how=("Measure.",),
    of="garment",
    sense="length",
    usual_mm=(LengthMm(150), LengthMm(250)),
    possible_mm=(LengthMm(80), LengthMm(400)),
    tolerance_mm=LengthMm(3),
)
KNOWLEDGE = Knowledge(measurements={"tuck": TUCK, "arc": ARC})
LINING_STEP = Operation(id="lining", do="Take the lining by {lining.each}.", minutes=(1, 2, 3), layer="lining", needs_lining=True)


def method(**amounts: AmountSpec) -> Method:
    step = Operation(id="mark", do="Mark {tuck} at centre back, {tuck.each} each, {tuck.rise-change} off the rise.", minutes=(1, 2, 3))
    return Method(
        id="lower", title="Lower", treats=("c",), garments=("skirt",), stage="waist", amounts=amounts, operations=(step, LINING_STEP)
    )


LOWER = method(tuck=AmountSpec(calculator="waist-crescent", inputs={"total": "tuck", "along": "arc"}))
WITH_LINING = method(
    tuck=AmountSpec(calculator="waist-crescent", inputs={"total": "tuck", "along": "9 in"}),
    lining=AmountSpec(calculator="lining-follows", inputs={"total": "tuck", "parts": "3"}),
)


def case(facts: dict[str, str] | None = None, **mm: float) -> Case:
    return Case(garment="skirt", facts=facts or {}, measured={name: Measured(value) for name, value in mm.items()})


def test_a_measurement_brings_its_own_tolerance() -> None:
    (worked,) = work_out_amounts(KNOWLEDGE, case(tuck=19), [LOWER])
    assert worked.calculation is not None
    assert worked.calculation.total.give_mm == 3


def test_a_reading_with_its_own_give_keeps_it() -> None:
    exact = Case(garment="skirt", measured={"tuck": Measured(19, 0.5)})
    (worked,) = work_out_amounts(KNOWLEDGE, exact, [LOWER])
    assert worked.calculation is not None
    assert worked.calculation.total.give_mm == 0.5


def test_what_is_needed_and_not_measured_is_asked_for() -> None:
    (worked,) = work_out_amounts(KNOWLEDGE, case(), [LOWER])
    assert worked.calculation is None
    assert worked.missing == ("tuck",)


def test_a_stand_in_names_the_measurement_to_take() -> None:
    (worked,) = work_out_amounts(KNOWLEDGE, case(tuck=19), [LOWER])
    assert worked.calculation is not None
    assert worked.calculation.total.assumed == "from a standard block: measure the back waist, centre to side for the exact figure"


def test_what_the_shop_usually_has_goes_before_the_standard_block_and_after_what_was_measured() -> None:
    usual = {"arc": 210.0, "tuck": 40.0}
    (worked,) = work_out_amounts(KNOWLEDGE, case(tuck=19), [LOWER], usual)
    assert worked.calculation is not None
    assert worked.calculation.total.mm == 19
    assert worked.calculation.marks[0].stations[-1][0] == pytest.approx(210, abs=0.05)
    assert worked.calculation.total.assumed == "as this shop usually has it: measure the back waist, centre to side for the exact figure"
    (measured,) = work_out_amounts(KNOWLEDGE, case(tuck=19, arc=200), [LOWER], usual)
    assert measured.calculation is not None
    assert measured.calculation.total.assumed == ""


def test_the_amount_that_is_altered_is_measured_and_never_taken_as_usual() -> None:
    (worked,) = work_out_amounts(KNOWLEDGE, case(), [LOWER], {"tuck": 40.0})
    assert worked.missing == ("tuck",)


def test_a_measured_size_leaves_nothing_assumed() -> None:
    (worked,) = work_out_amounts(KNOWLEDGE, case(tuck=19, arc=200), [LOWER])
    assert worked.calculation is not None
    assert worked.calculation.total.assumed == ""
    assert worked.calculation.marks[0].stations[-1][0] == pytest.approx(200, abs=0.05)


def test_texts_are_filled_as_the_shop_writes_lengths() -> None:
    worked = work_out_amounts(KNOWLEDGE, case(tuck=19.05), [LOWER])
    text = fill(LOWER.operations[0].do, worked, LOWER, format_length)
    assert text == "Mark 3/4 in at centre back, 3/4 in each, 3/4 in off the rise."


def test_a_text_without_its_amount_says_what_to_measure() -> None:
    worked = work_out_amounts(KNOWLEDGE, case(), [LOWER])
    assert fill("Mark {tuck}.", worked, LOWER, format_length) == "Mark the amount (measure the tuck at centre back first)."


def test_what_to_measure_first_is_said_once_in_a_sentence() -> None:
    worked = work_out_amounts(KNOWLEDGE, case(), [LOWER])
    text = fill("Mark {tuck.each} on each, in all {tuck}.", worked, LOWER, format_length)
    assert text == "Mark the amount (measure the tuck at centre back first) on each, in all the amount."


def test_a_text_that_names_no_amount_of_the_method_speaks_of_the_measured_amount() -> None:
    assert fill("Mark {other}.", (), LOWER, format_length) == "Mark the measured amount."


def test_conditions_find_the_first_amount_by_its_bare_name() -> None:
    named = named_amounts(work_out_amounts(KNOWLEDGE, case(tuck=18), [WITH_LINING]), WITH_LINING)
    assert named["total"] == named["tuck"] == named["tuck.total"]
    assert named["lining.each"].mm == pytest.approx(3)
    assert named["per-layer"] == named["lining.per-layer"]


def test_a_first_amount_not_worked_out_lends_its_bare_name_to_no_other() -> None:
    swapped = method(
        tuck=AmountSpec(calculator="waist-crescent", inputs={"total": "tuck"}),
        more=AmountSpec(calculator="plain", inputs={"total": "1 in"}),
    )
    named = named_amounts(work_out_amounts(KNOWLEDGE, case(), [swapped]), swapped)
    assert "total" not in named
    assert "more" in named


def test_an_unlined_garment_has_no_lining_to_mark() -> None:
    worked = work_out_amounts(KNOWLEDGE, case({"lining": "none"}, tuck=18), [WITH_LINING])
    assert [amount.name for amount in worked] == ["tuck"]


@pytest.mark.parametrize(("lining", "layers"), [("full", {"shell", "lining"}), ("none", {"shell"})])
def test_a_lining_without_an_amount_of_its_own_follows_the_shell(lining: str, layers: set[str]) -> None:
    (worked,) = work_out_amounts(KNOWLEDGE, case({"lining": lining}, tuck=18), [LOWER])
    assert worked.calculation is not None
    assert {mark.layer for mark in worked.calculation.marks} == layers
    assert len({mark.each_mm for mark in worked.calculation.marks}) == 1


def test_an_unknown_calculator_is_a_known_error() -> None:
    with pytest.raises(FitdoctorError, match="no-such"):
        work_out_amounts(KNOWLEDGE, case(), [method(tuck=AmountSpec(calculator="no-such", inputs={}))])


def _measured_in_the_middle(knowledge: Knowledge, garment: str) -> Case:
    measured = {id_: Measured(sum(entry.usual_mm) / 2) for id_, entry in knowledge.measurements.items()}
    return Case(garment=garment, facts={"lining": "full"}, measured=measured)


def test_every_amount_of_the_shipped_methods_is_worked_out_and_every_text_filled(knowledge: Knowledge) -> None:
    for entry in knowledge.methods.values():
        worked = work_out_amounts(knowledge, _measured_in_the_middle(knowledge, entry.garments[0]), [entry])
        assert all(amount.calculation for amount in worked), entry.id
        named = named_amounts(worked, entry)
        asked = {found for operation in entry.operations for found in re.findall(r"\{([^}]+)\}", operation.do)}
        asked |= {need.amount for need in entry.cloth_needed}
        assert asked <= set(named), entry.id


def test_nothing_measured_stops_no_method(knowledge: Knowledge) -> None:
    for entry in knowledge.methods.values():
        for amount in work_out_amounts(knowledge, Case(garment=entry.garments[0]), [entry]):
            needs = {entry.amounts[amount.name].inputs.get(need) for need in CALCULATORS[amount.calculator].needs}
            assert set(amount.missing) <= needs
