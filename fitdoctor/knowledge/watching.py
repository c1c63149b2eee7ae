"""Which methods a condition holds for."""

from __future__ import annotations

from collections.abc import Iterator

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
    seams = {seam for operation in method.operations for seam in (*operation.opens, *operation.closes)}
    named = condition.id in method.conditions or method.id in to.methods
    return to.all or named or not seams.isdisjoint(to.seams) or (to.let_out and bool(method.cloth_needed))


def _meet(knowledge: Knowledge, condition: Condition, method: Method) -> bool:
    return any(knowledge.suits(condition.garments, g) and knowledge.suits(method.garments, g) for g in knowledge.garments)
