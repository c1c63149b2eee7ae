"""How likely it is that the work finds what it needs, while nobody knows."""

from __future__ import annotations

import pytest

from fitdoctor.amounts.marks import Length
from fitdoctor.case import Case
from fitdoctor.conditions import ConditionState, condition_states
from fitdoctor.knowledge.entries import Feature, FeatureValue
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.likelihood import feature_chances, met_chance
from fitdoctor.shop import Shop
from tests.rack.small_rack import small_knowledge


def seams_state(knowledge: Knowledge, case: Case) -> ConditionState:
    states = condition_states(knowledge, case, knowledge.methods["let-out"], dict[str, Length](), 0.0, Shop())
    return next(state for state in states if state.condition == "seams-hold")


def test_the_usual_value_weighs_as_usual_and_the_others_share_the_rest() -> None:
    values = tuple(FeatureValue(id=name, title=name) for name in ("a", "b", "c"))
    feature = Feature(id="f", title="F", ask="?", garments=("skirt",), values=values, usual="b")
    assert feature_chances(small_knowledge(), feature) == pytest.approx({"a": 0.1, "b": 0.8, "c": 0.1})


def test_without_a_usual_value_all_weigh_alike() -> None:
    values = tuple(FeatureValue(id=name, title=name) for name in "abcd")
    feature = Feature(id="f", title="F", ask="?", garments=("skirt",), values=values)
    assert set(feature_chances(small_knowledge(), feature).values()) == {0.25}


def test_a_condition_on_one_feature_is_met_as_often_as_its_other_values() -> None:
    knowledge = small_knowledge()
    assert met_chance(knowledge, seams_state(knowledge, Case(garment="skirt"))) == pytest.approx(0.8)


def test_chances_of_all_features_of_the_shipped_knowledge_sum_to_one(knowledge: Knowledge) -> None:
    for feature in knowledge.features.values():
        assert sum(feature_chances(knowledge, feature).values()) == pytest.approx(1)


def test_every_chance_of_a_condition_not_known_lies_between_none_and_certain(knowledge: Knowledge) -> None:
    for method in knowledge.methods.values():
        for garment in method.garments:
            for state in condition_states(knowledge, Case(garment=garment), method, {}, 0.0, Shop()):
                if state.state in ("not-known", "borderline"):
                    assert 0 <= met_chance(knowledge, state) <= 1, state.condition
