"""The graph: each link once as written, both ways on the page."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.graph import HEADINGS, EntryGraph, Link
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import read_knowledge
from fitdoctor.knowledge.references import references

Plain = dict[str, dict[str, dict[str, Any]]]


@pytest.fixture
def graph(small: Plain, written: Callable[[Plain], Path]) -> EntryGraph:
    small["symptoms"]["folds"]["mistaken_for"] = [{"symptom": "pulls", "tell_apart": "Pulls are fine and straight."}]
    return EntryGraph(read_knowledge([written(small)]))


def titles(graph: EntryGraph, kind: str, id_: str) -> dict[str, list[str]]:
    return {group.heading: [link.id for link in group.links] for group in graph.links_of(kind, id_)}


def test_a_cause_lists_what_it_says_and_what_is_said_of_it(graph: EntryGraph) -> None:
    assert titles(graph, "causes", "too-long") == {
        "Shows as": ["folds"],
        "Told by": ["pin"],
        "Measured by": ["tuck"],
        "Treated by": ["lower-waist"],
        "Occurs on": ["skirt"],
        "Sources": ["book"],
    }


def test_a_symptom_lists_its_causes_the_likelier_first_and_its_look_alikes_with_the_difference(graph: EntryGraph) -> None:
    groups = {group.heading: group.links for group in graph.links_of("symptoms", "folds")}
    assert [(link.id, link.word) for link in groups["Shown by"]] == [("too-long", "usually"), ("too-tight", "sometimes")]
    assert groups["Mistaken for"] == (Link("symptoms", "pulls", "Pulls.", note="Pulls are fine and straight."),)


def test_a_condition_that_watches_a_seam_is_linked_with_the_methods_that_open_it(small: Plain, written: Callable[[Plain], Path]) -> None:
    small["conditions"]["no-needle-holes"]["applies_to"] = {"seams": ["side-seam"]}
    graph = EntryGraph(read_knowledge([written(small)]))
    assert titles(graph, "conditions", "no-needle-holes")["Holds for"] == ["let-out", "lower-waist"]
    assert titles(graph, "methods", "let-out")["Depends on"] == ["no-needle-holes"]


def test_a_garment_a_method_is_not_for_is_not_said_to_suit(small: Plain, written: Callable[[Plain], Path]) -> None:
    small["garments"]["jeans"] = small["garments"]["skirt"] | {"id": "jeans", "title": "Jeans", "kind_of": "skirt"}
    small["methods"]["let-out"]["only_if"] = {"all": [{"not": {"garment": "jeans"}}, {"not": {"fact": "lining", "is": "lined"}}]}
    graph = EntryGraph(read_knowledge([written(small)]))
    assert titles(graph, "methods", "let-out")["Not where"] == ["jeans"]
    assert titles(graph, "methods", "let-out")["Suits where"] == ["lining"]
    assert titles(graph, "garments", "jeans")["Rules out"] == ["let-out"]


def test_what_is_denied_twice_is_asked_for(small: Plain, written: Callable[[Plain], Path]) -> None:
    small["methods"]["let-out"]["only_if"] = {"not": {"not": {"garment": "skirt"}}}
    graph = EntryGraph(read_knowledge([written(small)]))
    assert titles(graph, "methods", "let-out")["Suits where"] == ["skirt"]


def test_an_unknown_entry_is_a_known_error(graph: EntryGraph) -> None:
    with pytest.raises(FitdoctorError, match="no entry ‘twist’"):
        graph.links_of("symptoms", "twist")


def test_every_role_an_entry_speaks_in_has_a_heading_or_is_of_pictures_and_cases(knowledge: Knowledge) -> None:
    roles = {to.role for _, entry in knowledge.entries() for to in references(entry)}
    assert roles - HEADINGS.keys() <= {"shows-on", "drawn-on", "drawn-as", "drawn-with"}


def test_the_whole_knowledge_becomes_a_graph(knowledge: Knowledge) -> None:
    graph = EntryGraph(knowledge)
    for kind, entry in knowledge.entries():
        assert graph.links_of(kind, entry.id) or kind in ("features", "checks", "measurements", "conditions")
