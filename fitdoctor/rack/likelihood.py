"""How likely it is that a condition not known yet strikes; every number comes from the words of scale.yaml."""

from __future__ import annotations

from collections.abc import Collection
from math import prod

from fitdoctor.conditions import ConditionState
from fitdoctor.knowledge.entries import Feature, When
from fitdoctor.knowledge.knowledge import Knowledge

USUAL_VALUE = "usually"
"""How often a feature has the value that is named as usual; the others share the rest."""
_PAST_LIMIT = "sometimes"
"""How often work past a limit still turns out well."""
_NOTHING_KNOWN = 0.5


def feature_chances(knowledge: Knowledge, feature: Feature) -> dict[str, float]:
    """The chance of each value of a feature nobody has looked at: a weight for the order of questions, never an answer."""
    values = [value.id for value in feature.values]
    if feature.usual not in values or len(values) == 1:
        return dict.fromkeys(values, 1 / len(values))
    usual = knowledge.strength(USUAL_VALUE)
    return {value: usual if value == feature.usual else (1 - usual) / (len(values) - 1) for value in values}


def met_chance(knowledge: Knowledge, state: ConditionState) -> float:
    """The chance that what the work needs is there, so far as it is not known."""
    if state.state == "borderline":
        return _NOTHING_KNOWN
    if state.condition.startswith("suits-"):
        only_if = knowledge.methods[state.condition.removeprefix("suits-")].only_if
        return _true(knowledge, only_if, state.missing) if only_if else 1.0
    condition = knowledge.conditions.get(state.condition)
    return 1 - _true(knowledge, condition.when, state.missing) if condition and condition.when else _NOTHING_KNOWN


def past_limit(knowledge: Knowledge) -> float:
    """The chance that work past a limit turns out well all the same."""
    return knowledge.strength(_PAST_LIMIT)


def _true(knowledge: Knowledge, when: When, missing: Collection[str]) -> float:
    """The chance that a tree holds; parts that are settled have not settled the tree and are left out."""
    chances = [_leaf(knowledge, when)] if _name(when) or when.garment else []
    if when.all:
        chances.append(prod(_true(knowledge, part, missing) for part in when.all if _open(part, missing)))
    if when.any:
        chances.append(1 - prod(1 - _true(knowledge, part, missing) for part in when.any if _open(part, missing)))
    if when.not_ is not None:
        chances.append(1 - _true(knowledge, when.not_, missing))
    return prod(chances)


def _leaf(knowledge: Knowledge, when: When) -> float:
    feature = knowledge.features.get(when.fact)
    if feature is None:
        return _NOTHING_KNOWN
    chances = feature_chances(knowledge, feature)
    return sum(chances.get(value, 0.0) for value in when.is_)


def _name(when: When) -> str:
    return when.fact or when.check or when.symptom or when.amount or when.measurement


def _open(when: When, missing: Collection[str]) -> bool:
    inner = (*when.all, *when.any, *((when.not_,) if when.not_ else ()))
    return any(_open(part, missing) for part in inner) or _name(when) in missing
