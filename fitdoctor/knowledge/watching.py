"""Which methods a condition holds for."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from fitdoctor.knowledge.entries import Condition, Method
from fitdoctor.knowledge.knowledge import Knowledge


def watched(knowledge: Knowledge, condition: Condition) -> Iterator[Method]:
    """The methods a condition holds for, on some garment that both are for."""
    return (method for method in knowledge.methods.values() if watches(knowledge, condition, method))


def watches(knowledge: Knowledge, condition: Condition, method: Method) -> bool:
    """Whether a condition holds for a method, on some garment that both are for."""
    return _touches(condition, method) and _meet(knowledge, condition, method)


def _touches(condition: Condition, method: Method) -> bool:
    to = condition.applies_to
    named = condition.id in method.conditions or method.id in to.methods
    return to.all or named or (to.let_out and bool(method.cloth_needed)) or (bool(to.seams) and _works_on(method, to.seams))


def _works_on(method: Method, seams: Collection[str]) -> bool:
    return any(seam in seams for operation in method.operations for seam in (*operation.opens, *operation.closes))


def _meet(knowledge: Knowledge, condition: Condition, method: Method) -> bool:
    return any(knowledge.suits(condition.garments, g) and knowledge.suits(method.garments, g) for g in knowledge.garments)
