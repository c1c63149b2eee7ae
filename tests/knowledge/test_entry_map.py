"""The map of an entry: the chain from what shows to what the work needs, near ones first, in few rows."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.graph import COLUMNS, LEFT_OUT_OF_MAPS, EntryGraph, EntryMap
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import read_knowledge

Plain = dict[str, dict[str, dict[str, Any]]]
PUNCHED = "dart-ends-not-punched"


@pytest.fixture
def small_graph(small: Plain, written: Callable[[Plain], Path]) -> EntryGraph:
    small["symptoms"]["folds"]["mistaken_for"] = [{"symptom": "pulls", "tell_apart": "Pulls are fine and straight."}]
    return EntryGraph(read_knowledge([written(small)]))


@pytest.fixture(scope="module")
def graph(knowledge: Knowledge) -> EntryGraph:
    return EntryGraph(knowledge)


def columns(found: EntryMap) -> list[list[str]]:
    inside = [[node for node in found.nodes if node.column == column] for column in range(len(COLUMNS))]
    return [[node.id for node in sorted(nodes, key=lambda node: node.row)] for nodes in inside]


def test_from_what_shows_the_chain_is_read_to_the_right(small_graph: EntryGraph) -> None:
    found = small_graph.around("symptoms", "pulls")
    shown, causes, methods, needs = columns(found)
    assert set(shown) == {"pulls", "folds"}
    assert causes == ["too-tight"]
    assert methods == ["let-out"]
    assert set(needs) == {"girth", "seam-cloth"}
    assert {(e.start[1], e.end[1]) for e in found.edges} >= {("too-tight", "pulls"), ("folds", "pulls"), ("let-out", "too-tight")}


def test_from_a_condition_the_chain_is_read_to_the_left(small_graph: EntryGraph) -> None:
    found = small_graph.around("conditions", "no-needle-holes")
    shown, causes, methods, needs = columns(found)
    assert (methods, causes) == (["lower-waist"], ["too-long"])
    assert set(shown) == {"folds", "pin"}
    assert needs[0] == "no-needle-holes"
    assert {node.id: node.steps for node in found.nodes}["folds"] == 3


def test_a_look_alike_stands_on_the_map_but_not_what_follows_from_it_alone(small_graph: EntryGraph) -> None:
    found = small_graph.around("symptoms", "pulls")
    assert "too-long" not in {node.id for node in found.nodes}, "only the folds show it"


def test_the_likelier_cause_is_nearer_and_bears_its_word(graph: EntryGraph, knowledge: Knowledge) -> None:
    symptom = "level-folds-under-back-band"
    strength = {s.strength for c in knowledge.causes.values() for s in c.shows_as if s.symptom == symptom}
    words = [node.word for node in graph.around("symptoms", symptom).nodes if node.kind == "causes"]
    assert words
    assert set(words) <= strength


def test_every_map_can_be_read_at_one_look_and_says_what_it_leaves_out(graph: EntryGraph, knowledge: Knowledge) -> None:
    for kind, entry in list(knowledge.entries())[::7]:
        if kind in LEFT_OUT_OF_MAPS:
            continue
        found = graph.around(kind, entry.id)
        assert len(found.nodes) <= 32
        assert max(Counter(node.column for node in found.nodes).values()) <= 8
        assert next(node for node in found.nodes if node.steps == 0).key == (kind, entry.id)
        for column, nodes in enumerate(columns(found)):
            assert len(set(nodes)) == len(nodes)
            assert {node.row for node in found.nodes if node.column == column} == set(range(len(nodes)))
        keys = {node.key for node in found.nodes}
        assert all({edge.start, edge.end} <= keys for edge in found.edges)


def test_near_ones_are_kept_before_far_ones(graph: EntryGraph, knowledge: Knowledge) -> None:
    found = graph.around("conditions", PUNCHED)
    touched = {link.id for group in graph.links_of("conditions", PUNCHED) if group.heading == "Holds for" for link in group.links}
    assert touched == {node.id for node in found.nodes if node.kind == "methods"}
    crowded = next(s for s in knowledge.symptoms if graph.around("symptoms", s).more.get("conditions"))
    kept = graph.around("symptoms", crowded)
    assert kept.more["conditions"] > 0


def test_the_kinds_of_a_column_stand_together_the_chain_above(graph: EntryGraph) -> None:
    found = graph.around("causes", "hips-too-small")
    for column, kinds in enumerate(COLUMNS):
        order = [node.kind for node in sorted(found.nodes, key=lambda node: node.row) if node.column == column]
        assert order == sorted(order, key=kinds.index)


def test_a_question_about_the_garment_leads_to_what_it_decides(graph: EntryGraph) -> None:
    found = graph.around("features", "dart-ends")
    assert PUNCHED in {node.id for node in found.nodes}
    assert any(node.kind == "methods" for node in found.nodes)


@pytest.mark.parametrize("kind", LEFT_OUT_OF_MAPS)
def test_what_everything_is_tied_to_has_no_map(graph: EntryGraph, knowledge: Knowledge, kind: str) -> None:
    with pytest.raises(FitdoctorError, match="no map"):
        graph.around(kind, next(iter(getattr(knowledge, kind))))
