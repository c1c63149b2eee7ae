"""From the methods and what was measured to worked-out amounts, and from these to the words of the operations."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.carry import as_usual, from_block
from fitdoctor.amounts.marks import Calculation, Calculator, Length
from fitdoctor.case import Case
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import AmountSpec, Method
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.reason import Reason
from fitdoctor.units import parse_length

_LINED = ("full", "half", "yes")
_LINING = "lining-follows"
_PLAIN_NUMBER = re.compile(r"\d+(\.\d+)?")
_NO_ARTICLE = frozenset({"what", "how", "where", "from", "half"})
_PLACEHOLDER = re.compile(r"\{([a-z0-9][a-z0-9.-]*)\}")


@dataclass(frozen=True)
class WorkedAmount:
    """One amount of a method, worked out or waiting for a measurement.

    Attributes:
        name: the amount's name in the method.
        calculation: None where something needed is not measured.
        missing: ids of the measurements that are needed for it.
        because: how it was worked out, or why it could not be.
    """

    method: str
    name: str
    calculator: str
    calculation: Calculation | None
    missing: tuple[str, ...] = ()
    because: tuple[Reason, ...] = ()


def work_out_amounts(
    knowledge: Knowledge, case: Case, methods: Sequence[Method], usual: Mapping[str, float] | None = None
) -> tuple[WorkedAmount, ...]:
    """Every amount of the methods, in their order. What cannot be worked out yet says which measurements it waits for.

    Amounts for a lining are left out where the garment has none.

    Args:
        usual: by measurement, mm: what stands in for one that was not taken, before the standard block does.

    Raises:
        FitdoctorError: a measured length makes no sense, or an entry names what no calculator knows.
    """
    unlined = case.facts.get("lining") == "none"
    return tuple(
        _work_out(knowledge, case, method, name, spec, usual or {})
        for method in methods
        for name, spec in method.amounts.items()
        if not (unlined and spec.calculator == _LINING)
    )


def named_amounts(worked: Sequence[WorkedAmount], method: Method) -> Mapping[str, Length]:
    """The method's amounts by the names that texts and conditions use.

    ``name``, ``name.total``, ``name.each`` and ``name.effect`` for every amount; besides, without the name, ``total`` and ``each`` of the
    first amount and each effect of the first amount that has it. What is not worked out is not there.
    """
    named: dict[str, Length] = {}
    claimed: set[str] = set()
    for amount in (amount for amount in worked if amount.method == method.id):
        values = _values(amount.calculation) if amount.calculation else {}
        if "total" in values:
            named[amount.name] = values["total"]
        named |= {f"{amount.name}.{part}": length for part, length in values.items()}
        declared = dict.fromkeys(("total", "each", *CALCULATORS[amount.calculator].effects))
        named |= {part: values[part] for part in declared if part in values and part not in claimed}
        claimed |= set(declared)
    return named


def fill(text: str, worked: Sequence[WorkedAmount], method: Method, format_: Callable[[float], str]) -> str:
    """An operation's text with its amounts filled in; where one is not worked out, what to measure first.

    Args:
        format_: writes a length in mm as the shop does.
    """
    named = named_amounts(worked, method)
    waiting = {amount.name: amount for amount in worked if amount.method == method.id and amount.calculation is None}
    said: set[str] = set()

    def amount(found: re.Match[str]) -> str:
        name = found.group(1)
        if name in named:
            return format_(named[name].mm)
        waits = waiting.get(name.split(".")[0])
        first = waits.because[0].text if waits and waits.because else ""
        if not first or first in said:
            return "the amount" if first else "the measured amount"
        said.add(first)
        return f"the amount ({first})"

    return _PLACEHOLDER.sub(amount, text)


def _values(calculation: Calculation) -> dict[str, Length]:
    return {**calculation.effects, "total": calculation.total, "each": calculation.each}


def _work_out(knowledge: Knowledge, case: Case, method: Method, name: str, spec: AmountSpec, usual: Mapping[str, float]) -> WorkedAmount:
    calculator = CALCULATORS.get(spec.calculator)
    if calculator is None:
        raise FitdoctorError(f"‘{method.id}’ asks for a calculator ‘{spec.calculator}’ that there is not.", "Run fitdoctor check.")
    inputs = dict(_inputs(knowledge, case, calculator, spec, usual))
    missing = tuple(spec.inputs.get(need, need) for need in calculator.needs if need not in inputs)
    if missing:
        titles = " and ".join(_titled(knowledge, measurement) for measurement in missing)
        return WorkedAmount(method.id, name, calculator.name, None, missing, (Reason(f"measure {titles} first", missing[0]),))
    calculation = calculator.work_out(inputs, spec.options)
    if _lining_goes_with_it(case, method):
        calculation = _with_lining(calculation)
    return WorkedAmount(method.id, name, calculator.name, calculation, (), calculation.because)


def _inputs(
    knowledge: Knowledge, case: Case, calculator: Calculator, spec: AmountSpec, usual: Mapping[str, float]
) -> Iterator[tuple[str, Length]]:
    """Measured lengths, lengths written in the entry, and where a measurement was not taken what the shop or the standard block has."""
    for input_, value in spec.inputs.items():
        reading = case.measured.get(value)
        if reading is not None:
            tolerance = knowledge.measurements[value].tolerance_mm if value in knowledge.measurements else 0.0
            yield input_, Length(reading.mm, float(tolerance) if reading.give_mm is None else reading.give_mm)
        elif value not in knowledge.measurements:
            if (literal := _literal(value)) is not None:
                yield input_, literal
        elif input_ in calculator.block and input_ not in calculator.needs:
            titled = _titled(knowledge, value)
            yield input_, as_usual(usual[value], titled) if value in usual else from_block(calculator.block[input_], titled)


def _literal(value: str) -> Length | None:
    if _PLAIN_NUMBER.fullmatch(value):
        return Length(float(value))
    try:
        return Length(parse_length(value))
    except FitdoctorError:
        return None


def _titled(knowledge: Knowledge, measurement: str) -> str:
    entry = knowledge.measurements.get(measurement)
    title = entry.title if entry else measurement.replace("-", " ")
    begins = title.split(" ")[0].lower()
    article = "" if begins in _NO_ARTICLE else "the "
    return f"{article}{title[:1].lower()}{title[1:]}"


def _lining_goes_with_it(case: Case, method: Method) -> bool:
    """Whether the shell's amounts hold for the lining too: lined, worked on in the method, and not given an amount of its own there."""
    own = any(spec.calculator == _LINING for spec in method.amounts.values())
    worked_on = any(operation.layer == "lining" for operation in method.operations)
    return case.facts.get("lining") in _LINED and worked_on and not own


def _with_lining(calculation: Calculation) -> Calculation:
    lining = tuple(replace(mark, layer="lining") for mark in calculation.marks)
    because = (*calculation.because, Reason("The lining follows the shell by the same amounts."))
    return replace(calculation, marks=(*calculation.marks, *lining), because=because)
