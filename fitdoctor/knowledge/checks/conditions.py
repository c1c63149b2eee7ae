"""Conditions that can never strike, and trees that are not written as trees."""

from __future__ import annotations

from collections.abc import Iterator

from fitdoctor.knowledge.checks.links import all_entries
from fitdoctor.knowledge.checks.methods import amounts_of
from fitdoctor.knowledge.checks.rule import Finding, Look, rule
from fitdoctor.knowledge.entries import When
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.references import tests, trees
from fitdoctor.knowledge.watching import watched

_TESTS = ("all", "any", "not_", "fact", "check", "symptom", "garment", "amount", "measurement")


@rule("tree")
def tree_not_written_as_a_tree(look: Look) -> Iterator[Finding]:
    """A node of a tree must have exactly one test, with what that test needs."""
    for kind, entry in all_entries(look.knowledge):
        for node, path in trees(entry):
            text = _miswritten(node)
            if text:
                yield Finding(kind, entry.id, text, path)


@rule("condition-on-nothing")
def condition_that_watches_nothing(look: Look) -> Iterator[Finding]:
    """A condition that no method on any of its garments ever meets."""
    for condition in look.knowledge.conditions.values():
        if not condition.applies_to.all and not list(watched(look.knowledge, condition)):
            text = "this watches nothing: no method names it, opens its seams or is named in applies_to, on a garment of its own"
            yield Finding("conditions", condition.id, text)


@rule("condition-never")
def condition_that_nobody_meets(look: Look) -> Iterator[Finding]:
    """A condition whose tree can never come true."""
    for condition in look.knowledge.conditions.values():
        if condition.when is not None and not _can_hold(look.knowledge, condition.when):
            yield Finding("conditions", condition.id, "this can never come true", ("when",))


@rule("condition-amount")
def condition_on_an_amount_nothing_gives(look: Look) -> Iterator[Finding]:
    """A condition that turns on an amount which none of the methods it watches works out."""
    for condition in look.knowledge.conditions.values():
        names = [amounts_of(method, look.calculators) for method in watched(look.knowledge, condition)]
        if None in names or not names:
            continue
        known = {name for some in names if some for name in some}
        for node, path in tests(condition.when, ("when",)):
            if node.amount and node.amount not in known:
                text = f"no method this watches works out ‘{node.amount}’{did_you_mean(node.amount, known)}"
                yield Finding("conditions", condition.id, text, (*path, "amount"))


def _miswritten(node: When) -> str:
    named = [name for name in _TESTS if getattr(node, name)]
    if len(named) != 1:
        written = ", ".join(name.rstrip("_") for name in named) or "none"
        return f"a tree has exactly one test here, not {len(named)} ({written}); join several with all or any"
    bounded, has_bounds = named[0] in ("amount", "measurement"), node.exceeds is not None or node.below is not None
    if bounded != has_bounds:
        return f"‘{named[0]}’ needs exceeds or below" if bounded else "exceeds and below belong to an amount or a measurement"
    if node.is_ and named[0] not in ("fact", "check"):
        return "‘is’ belongs to a fact or a check"
    return "‘fact’ needs is" if named[0] == "fact" and not node.is_ else ""


def _can_hold(knowledge: Knowledge, when: When) -> bool:
    if when.any:
        return any(_can_hold(knowledge, branch) for branch in when.any)
    if when.all:
        return all(_can_hold(knowledge, branch) for branch in when.all) and not _at_odds(when.all)
    entry = knowledge.measurements.get(when.measurement)
    if entry is None:
        return True
    over = when.exceeds is None or when.exceeds < entry.possible_mm[1]
    return over and (when.below is None or when.below > entry.possible_mm[0])


def _at_odds(branches: tuple[When, ...]) -> bool:
    """Two branches that must both hold want the same fact or answer to be different things."""
    wanted: dict[str, set[str]] = {}
    for branch in branches:
        of = branch.fact or branch.check
        if of:
            values = {*(branch.is_ or ("yes",))}
            wanted[of] = wanted.get(of, values) & values
    return any(not values for values in wanted.values())
