"""Simulated buyers against a checklist."""

from __future__ import annotations

from dataclasses import replace

import pytest

from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.simulation import Round, simulate, simulated_rounds, summed
from fitdoctor.rack.text import simulation_json, simulation_text


@pytest.fixture(scope="module")
def rounds(knowledge: Knowledge) -> list[Round]:
    """One case in sixteen."""
    return simulated_rounds(replace(knowledge, cases={id_: knowledge.cases[id_] for id_ in sorted(knowledge.cases)[::16]}))


def test_half_the_questions_of_a_checklist_are_enough_for_the_same_decision(rounds: list[Round]) -> None:
    found = summed(rounds)
    assert found.cases >= 15
    assert found.questions <= found.checklist_questions / 2
    assert found.same_decision >= 0.9
    assert set(simulation_json(found)) == {"cases", "questions", "checklist_questions", "ratio", "same_decision"}
    assert f"{found.questions} questions" in simulation_text(found)


def test_all_kinds_of_decision_occur(rounds: list[Round]) -> None:
    assert {one.told_all for one in rounds} >= {"BUY", "LEAVE_IT", "BUY_IF"}


def test_nobody_is_asked_more_than_a_dozen_questions(rounds: list[Round]) -> None:
    assert max(one.questions for one in rounds) <= 12


def test_a_knowledge_without_cases_simulates_nobody() -> None:
    assert simulate(Knowledge()).cases == 0
