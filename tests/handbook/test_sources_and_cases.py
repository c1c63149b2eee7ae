"""Pages of their own for sources and solved cases: who says so and where it is used; what was said, seen and done."""

from __future__ import annotations

import pytest

from fitdoctor.cli import DONE, main
from fitdoctor.errors import FitdoctorError
from fitdoctor.handbook import Page, entry_page, find_entry, page_text
from fitdoctor.knowledge.graph import EntryGraph
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import references

SOURCE = "usda-fitting-dresses-hips"


@pytest.fixture(scope="module")
def graph(knowledge: Knowledge) -> EntryGraph:
    return EntryGraph(knowledge)


def said(page: Page) -> dict[str, str]:
    return {section.heading: " ".join(section.lines) for section in page.sections}


def test_a_source_says_who_when_what_was_read_and_where_it_is_found(knowledge: Knowledge, graph: EntryGraph) -> None:
    source = knowledge.sources[SOURCE]
    page = entry_page(knowledge, "sources", SOURCE, graph)
    assert page.title == source.title
    assert said(page)["Who says so"] == source.by
    assert said(page)["Address"] == source.address
    assert said(page)["What of it was read"] == source.note
    assert all(text for text in said(page).values())


def test_a_source_lists_every_entry_that_cites_it_kind_by_kind(knowledge: Knowledge, graph: EntryGraph) -> None:
    page = entry_page(knowledge, "sources", SOURCE, graph)
    citing = {(kind, e.id) for kind, e in knowledge.entries() for to in references(e) if (to.kind, to.id) == ("sources", SOURCE)}
    assert {(link.kind, link.id) for group in page.links for link in group.links} == citing
    assert all(len({link.kind for link in group.links}) == 1 for group in page.links)


def test_a_case_says_what_was_said_seen_answered_and_what_it_came_to(knowledge: Knowledge) -> None:
    case = next(c for c in knowledge.cases.values() if c.words and c.facts and c.answers and c.measured and c.expect.methods)
    page = entry_page(knowledge, "cases", case.id)
    assert said(page)["What was said"] == case.words
    linked = {link.id for group in page.links for link in group.links}
    assert {*case.seen, *case.answers, *case.measured, *case.expect.causes, *case.expect.methods, case.garment} <= linked
    for id_, value in case.facts.items():
        title = next(v.title for v in knowledge.features[id_].values if v.id == value)
        assert title.lower() in said(page)["What is known of it"]


def test_every_case_has_a_page_that_prints(knowledge: Knowledge) -> None:
    for case in knowledge.cases.values():
        page = entry_page(knowledge, "cases", case.id)
        assert page_text(page).startswith(case.title)
        assert page.links
        assert page.sources


def test_cases_named_on_a_page_have_pages(knowledge: Knowledge, graph: EntryGraph) -> None:
    page = entry_page(knowledge, "causes", "hips-too-small", graph)
    assert page.used_in
    for used in page.used_in:
        linked = {link.id for group in entry_page(knowledge, "cases", used.case).links for link in group.links}
        assert "hips-too-small" in linked


def test_a_case_is_found_by_its_id_but_an_entry_of_that_id_comes_first(knowledge: Knowledge, capsys: pytest.CaptureFixture[str]) -> None:
    assert find_entry(knowledge, "printed-20") == ("cases", "printed-20")
    ids = {entry.id: kind for kind, entry in knowledge.entries()}
    both = next(case for case in knowledge.cases if case in ids)
    assert find_entry(knowledge, both) == (ids[both], both)
    assert find_entry(knowledge, f"cases/{both}") == ("cases", both)
    assert main(["show", "printed-20"]) == DONE
    assert knowledge.cases["printed-20"].title in capsys.readouterr().out


def test_a_case_that_is_not_there_is_a_known_error(knowledge: Knowledge) -> None:
    with pytest.raises(FitdoctorError, match="no solved case ‘hips-to-smal’"):
        entry_page(knowledge, "cases", "hips-to-smal")


def test_a_method_that_is_not_for_jeans_does_not_name_them_as_suited(knowledge: Knowledge, graph: EntryGraph) -> None:
    method = next(m for m in knowledge.methods.values() if m.only_if and m.only_if.not_ and m.only_if.not_.garment == "jeans")
    page = entry_page(knowledge, "methods", method.id, graph)
    groups = {group.heading: {link.id for link in group.links} for group in page.links}
    assert groups["Not where"] == {"jeans"}
    assert "jeans" not in groups.get("Suits where", set())
    assert "not jeans" in said(page)["When"]
