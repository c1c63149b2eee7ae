"""Put the operations in order."""

from __future__ import annotations

from collections.abc import Sequence

from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.knowledge.entries import Method
from fitdoctor.plan import PlannedOperation
from fitdoctor.practice.amounts import measured_case
from fitdoctor.practice.bench import Bench
from fitdoctor.practice.exercise import Exercise, Level, Order, Picture, Skill
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.scope import Scope

_STEPS = 4
_METHODS: dict[Level, int] = {"easy": 1, "moderate": 1, "hard": 2}


def order_exercise(bench: Bench, lots: Lots, scope: Scope, garment: str, focus: Skill | None = None) -> Exercise | None:
    """The work on one cause, or on two at once, out of order.

    Args:
        focus: a method.
    """
    ways = [
        (cause, method)
        for cause in scope.causes(bench.knowledge, garment)
        for method in bench.knowledge.methods_for(cause, garment)
        if method.kind == "alteration" and len(method.operations) >= 2
    ]
    first = [way for way in ways if focus is None or way[1].id in focus.ids]
    if not first:
        return None
    chosen = [lots.one(first)]
    if _METHODS[scope.level] > 1:
        chosen += [way for way in lots.shuffled(ways) if way[0] != chosen[0][0] and way[1].stage != chosen[0][1].stage][:1]
    case = Case(garment=garment, treat=tuple(cause for cause, _ in chosen), methods={cause: method.id for cause, method in chosen})
    for _, method in chosen:
        case = measured_case(bench, lots, case, method)
    question = order_question(bench, lots, bench.assess(case))
    return Exercise("", "order", scope.level, case, (question,), case.treat) if question else None


def order_question(bench: Bench, lots: Lots, assessment: Assessment) -> Order | None:
    """Four operations whose order is settled; None where there are fewer."""
    steps = _settled(bench, lots, assessment.plan.operations)
    if len(steps) < _STEPS or not assessment.methods:
        return None
    method = bench.knowledge.methods[assessment.methods[0]]
    titles = [bench.knowledge.methods[id_].title for id_ in assessment.methods]
    order = tuple(step.id for step in steps)
    picture = Picture(mechanism=assessment.treat[0])
    return Order(
        kind="order",
        ask="In what order is it done?",
        given=(bench.knowledge.garment(assessment.case.garment).title, *titles),
        skill=Skill("method", method.id),
        right="What lies over a seam is opened first and closed last; what is tried on is only basted.",
        entry=("methods", method.id),
        picture=picture,
        shows=picture,
        sources=method.sources,
        steps=tuple(_mixed(lots, [(step.id, step.text) for step in steps])),
        order=order,
    )


def _settled(bench: Bench, lots: Lots, plan: Sequence[PlannedOperation]) -> list[PlannedOperation]:
    """Operations each of which must come after the one before: by its method, or because its stage is a later one."""
    kept: list[PlannedOperation] = []
    spare = max(0, len(plan) - _STEPS)
    for step in plan:
        if spare and kept and lots.happens(spare / len(plan)):
            spare -= 1
            continue
        if len(kept) < _STEPS and all(_must_follow(bench, before, step) for before in kept):
            kept.append(step)
    return kept


def _must_follow(bench: Bench, before: PlannedOperation, after: PlannedOperation) -> bool:
    if before.stage != after.stage:
        return True
    method, _, step = after.id.partition(".")
    earlier, _, first = before.id.partition(".")
    return method == earlier and first in _all_before(bench.knowledge.methods[method], step)


def _all_before(method: Method, step: str) -> set[str]:
    """The operations of a method that come before one of them; without a word of its own, the one above it does."""
    ids = [operation.id for operation in method.operations]
    after = {op.id: op.after or tuple(ids[max(0, at - 1) : at]) for at, op in enumerate(method.operations)}
    found: set[str] = set()
    open_ = list(after.get(step, ()))
    while open_:
        id_ = open_.pop()
        if id_ not in found:
            found.add(id_)
            open_.extend(after.get(id_, ()))
    return found


def _mixed(lots: Lots, steps: list[tuple[str, str]]) -> list[tuple[str, str]]:
    """The steps out of order."""
    mixed = lots.shuffled(steps)
    return mixed if mixed != steps else [*steps[1:], steps[0]]
