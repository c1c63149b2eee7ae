"""An entry as a page: what it says, links both ways, sources, what is said differently, the cases."""

from __future__ import annotations

import json

import pytest

from fitdoctor.cli import DONE, INPUT_HAS_PROBLEMS, main
from fitdoctor.errors import FitdoctorError
from fitdoctor.handbook import Page, entry_page, find_entry, page_json, page_text
from fitdoctor.knowledge.graph import EntryGraph
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import references
from fitdoctor.shop import Shop


@pytest.fixture(scope="module")
def graph(knowledge: Knowledge) -> EntryGraph:
    return EntryGraph(knowledge)


def linked(page: Page, heading: str) -> set[str]:
    return {link.id for group in page.links if group.heading == heading for link in group.links}


def test_every_entry_and_source_has_a_page_that_says_something(knowledge: Knowledge, graph: EntryGraph) -> None:
    for kind, entry in knowledge.entries():
        page = entry_page(knowledge, kind, entry.id, graph)
        assert page.title == entry.title
        assert page.sections, (kind, entry.id)
        assert all(line for section in page.sections for line in section.lines)
        assert page_text(page).startswith(entry.title)
    for source in knowledge.sources:
        assert entry_page(knowledge, "sources", source, graph).sections


def test_links_lead_there_and_back(knowledge: Knowledge, graph: EntryGraph) -> None:
    method = knowledge.methods["take-in-waist-at-centre-back"]
    assert set(method.treats) <= linked(entry_page(knowledge, "methods", method.id, graph), "Treats")
    for cause in method.treats:
        assert method.id in linked(entry_page(knowledge, "causes", cause, graph), "Treated by")


def test_a_condition_says_what_it_forbids_why_how_to_see_it_and_what_to_do_instead(knowledge: Knowledge, graph: EntryGraph) -> None:
    condition = next(c for c in knowledge.conditions.values() if c.at_the_rack and c.instead and c.effect == "forbids")
    page = entry_page(knowledge, "conditions", condition.id, graph)
    said = {section.heading: " ".join(section.lines) for section in page.sections}
    assert said["What it does"].startswith("Forbids the work.")
    assert said["Why"] == condition.because
    assert condition.at_the_rack in said["How to see it"]
    assert said["What to do instead"] == condition.instead


def test_limits_on_the_same_amount_stand_side_by_side(knowledge: Knowledge, graph: EntryGraph) -> None:
    for kind, id_ in (("methods", "take-in-waist-at-centre-back"), ("conditions", "centre-back-limit")):
        page = entry_page(knowledge, kind, id_, graph)
        entries = [{said.entry for said in matter.said} for matter in page.opposed]
        assert {"centre-back-limit", "back-pockets-crowd"} in entries


def test_look_alikes_stand_side_by_side_with_what_tells_them_apart(knowledge: Knowledge, graph: EntryGraph) -> None:
    symptom = next(s for s in knowledge.symptoms.values() if s.mistaken_for)
    matter = entry_page(knowledge, "symptoms", symptom.id, graph).opposed[0]
    assert [said.says for said in matter.said] == [other.tell_apart for other in symptom.mistaken_for]


def test_sources_of_every_link_stand_on_the_page(knowledge: Knowledge, graph: EntryGraph) -> None:
    cause = max(knowledge.causes.values(), key=lambda c: len(c.shows_as))
    cited = {source for shows in cause.shows_as for source in shows.sources}
    assert cited <= {source.id for source in entry_page(knowledge, "causes", cause.id, graph).sources}


def test_the_cases_that_speak_of_an_entry_are_named(knowledge: Knowledge, graph: EntryGraph) -> None:
    case = next(c for c in knowledge.cases.values() if c.expect.causes)
    page = entry_page(knowledge, "causes", case.expect.causes[0], graph)
    assert case.id in {used.case for used in page.used_in}
    assert all(any(to.id == page.id for to in references(knowledge.cases[used.case])) for used in page.used_in)


def test_lengths_stand_in_the_shop_s_unit(knowledge: Knowledge, graph: EntryGraph) -> None:
    measurement = next(iter(knowledge.measurements))
    inches = page_text(entry_page(knowledge, "measurements", measurement, graph, Shop(unit="in")))
    metric = page_text(entry_page(knowledge, "measurements", measurement, graph, Shop(unit="cm")))
    assert inches != metric
    assert " cm" in metric


def test_an_entry_is_found_by_its_id_by_its_kind_and_id_and_by_an_earlier_id(knowledge: Knowledge) -> None:
    assert find_entry(knowledge, "shoulders-too-narrow") == ("causes", "shoulders-too-narrow")
    assert find_entry(knowledge, "causes/shoulders-too-narrow") == ("causes", "shoulders-too-narrow")
    for (kind, before), now in knowledge.renamed.items():
        assert find_entry(knowledge, f"{kind}/{before}") == (kind, now)


def test_a_slip_in_an_id_is_answered_with_what_was_perhaps_meant(knowledge: Knowledge) -> None:
    with pytest.raises(FitdoctorError, match="shoulders-too-narrow"):
        find_entry(knowledge, "shoulders-too-narow")


def test_show_prints_a_page_and_its_json_is_plain(knowledge: Knowledge, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["show", "centre-back-limit"]) == DONE
    assert "What the work needs" in capsys.readouterr().out
    assert main(["show", "centre-back-limit", "--json"]) == DONE
    found = json.loads(capsys.readouterr().out)
    assert found == json.loads(json.dumps(page_json(entry_page(knowledge, "conditions", "centre-back-limit"))))
    assert main(["show", "nothing-of-that-name"]) == INPUT_HAS_PROBLEMS
