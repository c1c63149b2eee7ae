"""Methods that cannot be carried out as written: operations in a circle, unknown calculators, inputs, amounts."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from graphlib import CycleError, TopologicalSorter
from itertools import pairwise
from math import isfinite

from fitdoctor.amounts.marks import Calculator
from fitdoctor.knowledge.checks.rule import Finding, Look, rule
from fitdoctor.knowledge.entries import AmountSpec, Method
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.references import Path_, is_measurement

ALWAYS = ("total", "each")
"""What every calculator gives."""

LIMIT = "limit-"
"""limit-1, limit-2, …: how far each seam may go, in the order of its seams."""

_PLACEHOLDER = re.compile(r"\{([^{}]*)\}")


@rule("circle")
def operations_in_a_circle(look: Look) -> Iterator[Finding]:
    """Operations that wait for each other."""
    for method in look.knowledge.methods.values():
        known = {operation.id for operation in method.operations}
        waits = {operation.id: known & {*operation.after} for operation in method.operations}
        try:
            TopologicalSorter(waits).prepare()
        except CycleError as error:
            yield Finding("methods", method.id, f"these operations wait for each other: {' → '.join(error.args[1])}", ("operations",))


@rule("after")
def operation_waits_for_nothing(look: Look) -> Iterator[Finding]:
    """`after` names an operation that the method does not have, or two operations have one id."""
    for method in look.knowledge.methods.values():
        known = [operation.id for operation in method.operations]
        for number, operation in enumerate(method.operations):
            if operation.id in known[:number]:
                yield Finding("methods", method.id, f"two operations are called ‘{operation.id}’", ("operations", number, "id"))
            for place, before in enumerate(operation.after):
                if before not in known:
                    text = f"there is no operation ‘{before}’ here{did_you_mean(before, known)}"
                    yield Finding("methods", method.id, text, ("operations", number, "after", place))


@rule("input")
def input_that_nothing_gives(look: Look) -> Iterator[Finding]:
    """An input of a calculator that is neither a length, a number nor a measurement."""
    known = look.knowledge.measurements
    for method in look.knowledge.methods.values():
        for name, spec in method.amounts.items():
            for input_, value in spec.inputs.items():
                if is_measurement(value) and value not in known and value not in look.unsound:
                    text = f"no measurement gives ‘{value}’{did_you_mean(value, known)}"
                    yield Finding("methods", method.id, text, ("amounts", name, "inputs", input_))


@rule("calculator")
def calculator_asked_wrongly(look: Look) -> Iterator[Finding]:
    """A calculator that is not there, an input or option it does not know, or an input it needs and does not get."""
    if look.calculators is None:
        return
    for method in look.knowledge.methods.values():
        for name, spec in method.amounts.items():
            if spec.calculator in look.calculators:
                for path, text in _asked_wrongly(spec, look.calculators[spec.calculator]):
                    yield Finding("methods", method.id, text, ("amounts", name, *path))
            else:
                text = f"there is no calculator ‘{spec.calculator}’{did_you_mean(spec.calculator, look.calculators)}"
                yield Finding("methods", method.id, text, ("amounts", name, "calculator"))


@rule("amount")
def amount_that_nothing_works_out(look: Look) -> Iterator[Finding]:
    """A text, a let-out or a tree refers to an amount that no calculator of the method gives."""
    for method in look.knowledge.methods.values():
        named = amounts_of(method, look.calculators)
        if named is None:
            continue
        for word, path in _amounts_named(method):
            if word not in named:
                yield Finding("methods", method.id, f"no calculator here gives ‘{word}’{did_you_mean(word, named)}", path)


@rule("range")
def numbers_out_of_order(look: Look) -> Iterator[Finding]:
    """Minutes that do not rise from low to high, a usual range outside the possible one."""
    for method in look.knowledge.methods.values():
        for number, operation in enumerate(method.operations):
            if not _rises(*operation.minutes):
                yield Finding("methods", method.id, "minutes must rise: low, likely, high", ("operations", number, "minutes"))
    for condition in look.knowledge.conditions.values():
        if condition.minutes and not _rises(*condition.minutes):
            yield Finding("conditions", condition.id, "minutes must rise: low, likely, high", ("minutes",))
    for entry in look.knowledge.measurements.values():
        if not _rises(entry.possible_mm[0], *entry.usual_mm, entry.possible_mm[1]):
            yield Finding("measurements", entry.id, "the usual range must lie within the possible one, low before high", ("usual",))


def amounts_of(method: Method, calculators: Mapping[str, Calculator] | None) -> frozenset[str] | None:
    """Every name by which an amount of the method can be called; None where its calculators are not at hand."""
    names: set[str] = set()
    for name, spec in method.amounts.items():
        if calculators is None or spec.calculator not in calculators:
            return None
        given = (*ALWAYS, *calculators[spec.calculator].effects)
        names |= {name, *given, *(f"{name}.{effect}" for effect in given)}
    return frozenset(names)


def _asked_wrongly(spec: AmountSpec, calculator: Calculator) -> Iterator[tuple[Path_, str]]:
    inputs = {*calculator.needs, *calculator.block, *calculator.optional}
    for input_ in spec.inputs:
        if input_ not in inputs and not input_.startswith(LIMIT):
            yield ("inputs", input_), f"‘{calculator.name}’ takes no input ‘{input_}’{did_you_mean(input_, inputs)}"
    for needed in calculator.needs:
        if needed not in spec.inputs:
            yield ("inputs",), f"‘{calculator.name}’ needs the input ‘{needed}’"
    for option, word in spec.options.items():
        if option not in calculator.options:
            yield ("options", option), f"‘{calculator.name}’ has no option ‘{option}’{did_you_mean(option, calculator.options)}"
        elif calculator.options[option] and word not in calculator.options[option]:
            allowed = calculator.options[option]
            yield ("options", option), f"‘{option}’ is one of {', '.join(allowed)}, not ‘{word}’{did_you_mean(word, allowed)}"


def _amounts_named(method: Method) -> Iterator[tuple[str, Path_]]:
    for number, operation in enumerate(method.operations):
        for name in ("do", "care"):
            for found in _PLACEHOLDER.finditer(getattr(operation, name)):
                yield found[1], ("operations", number, name)
    for name in ("lining", "pressing", "because", "preferred"):
        for found in _PLACEHOLDER.finditer(getattr(method, name)):
            yield found[1], (name,)
    for number, need in enumerate(method.cloth_needed):
        yield need.amount, ("cloth_needed", number, "amount")


def _rises(*values: float) -> bool:
    return all(isfinite(v) for v in values) and all(a <= b for a, b in pairwise(values))
