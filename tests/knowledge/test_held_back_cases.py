"""One solved case in four is kept out of sight, and which ones is nobody's choice."""

from __future__ import annotations

from pathlib import Path

import pytest

from fitdoctor.evaluate import is_held_back
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import read_knowledge


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    return read_knowledge([Path(__file__).parents[2] / "knowledge"])


def test_the_flag_of_every_case_agrees_with_the_rule(knowledge: Knowledge) -> None:
    assert [c.id for c in knowledge.cases.values() if c.held_back != is_held_back(c.id)] == []


def test_about_one_case_in_four_is_held_back_by_chance() -> None:
    share = sum(is_held_back(f"case-{number}") for number in range(2000)) / 2000
    assert 0.22 < share < 0.28


@pytest.mark.parametrize(("case", "held"), [("printed-04", True), ("printed-40", True), ("printed-03", False), ("blind-anything", True)])
def test_printed_and_blind_cases_go_by_their_name(case: str, held: bool) -> None:
    assert is_held_back(case) is held


def test_no_case_that_was_seen_calls_itself_blind(knowledge: Knowledge) -> None:
    blind = [c for c in knowledge.cases.values() if c.id.startswith("blind-")]
    assert len(blind) >= 25
    assert all(knowledge.places[("cases", c.id)].file.parent.name == "held-back" for c in blind)
