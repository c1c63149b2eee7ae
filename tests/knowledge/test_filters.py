"""Narrowing what is looked up: what passes a filter says so itself, or what it is linked with says so."""

from __future__ import annotations

import pytest

from fitdoctor.knowledge.filters import Facets, Filter
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import references
from fitdoctor.knowledge.search import SearchIndex
from fitdoctor.knowledge.watching import watched

PUNCHED = "dart-ends-not-punched"


@pytest.fixture(scope="module")
def facets(knowledge: Knowledge) -> Facets:
    return Facets(knowledge)


@pytest.fixture(scope="module")
def index(knowledge: Knowledge) -> SearchIndex:
    return SearchIndex(knowledge)


def passing(facets: Facets, kind: str, **fields: str) -> set[str]:
    return {id_ for _, id_ in facets.passing(Filter(kind, **fields))}


def test_no_filter_lets_every_entry_and_source_pass(facets: Facets, knowledge: Knowledge) -> None:
    everything = {(kind, entry.id) for kind, entry in knowledge.entries()} | {("sources", id_) for id_ in knowledge.sources}
    assert facets.passing(Filter()) == everything
    assert not Filter()
    assert Filter(region="seat")


def test_what_holds_for_the_wider_kind_passes_for_the_narrower(facets: Facets, knowledge: Knowledge) -> None:
    for_jeans = passing(facets, "symptoms", garment="jeans")
    assert for_jeans == set(knowledge.symptoms_of("jeans"))
    assert any("jeans" not in knowledge.symptoms[id_].garments for id_ in for_jeans)


def test_a_check_that_names_no_garment_is_for_those_of_the_causes_that_name_it(facets: Facets, knowledge: Knowledge) -> None:
    checks = passing(facets, "checks", garment="skirt")
    for check in checks:
        naming = [c for c in knowledge.causes.values() if any(answer.check == check for answer in c.answers)]
        named = knowledge.checks[check].garments
        assert knowledge.suits(named, "skirt") if named else any(c.id in knowledge.causes_of("skirt") for c in naming)
    assert 0 < len(checks) < len(knowledge.checks)


def test_every_zone_lies_in_one_region_and_every_region_has_zones_that_are_there(knowledge: Knowledge) -> None:
    zones = {zone.id for garment in knowledge.garments.values() for zone in garment.zones}
    named = [zone for region in knowledge.regions.values() for zone in region.zones]
    assert sorted(named) == sorted(zones)


def test_a_cause_lies_where_it_shows_surest_and_a_method_with_the_causes_it_treats(facets: Facets, knowledge: Knowledge) -> None:
    for cause in passing(facets, "causes", region="seat"):
        shown = knowledge.causes[cause].shows_as
        most = max(knowledge.strength(s.strength) for s in shown)
        zones = {knowledge.symptoms[s.symptom].zone for s in shown if knowledge.strength(s.strength) == most}
        assert zones & set(knowledge.regions["seat"].zones)
    seat = passing(facets, "causes", region="seat")
    assert passing(facets, "methods", region="seat") == {m.id for m in knowledge.methods.values() if seat & set(m.treats)}


def test_a_condition_lies_in_the_regions_of_the_methods_it_holds_for(facets: Facets, knowledge: Knowledge) -> None:
    methods = {method.id for method in watched(knowledge, knowledge.conditions[PUNCHED])}
    for region in knowledge.regions:
        assert (PUNCHED in passing(facets, "conditions", region=region)) == bool(methods & passing(facets, "methods", region=region))


def test_a_cloth_leads_to_the_conditions_that_speak_of_it_and_to_what_they_touch(facets: Facets, knowledge: Knowledge) -> None:
    assert "leather-few-resews" in passing(facets, "conditions", cloth="leather")
    assert PUNCHED not in passing(facets, "conditions", cloth="leather")
    touched = {m.id for m in watched(knowledge, knowledge.conditions["lace-is-cut-round-its-motifs"])}
    assert touched
    assert touched <= passing(facets, "methods", cloth="lace")
    assert facets.cloths() <= {value.id for value in knowledge.features["cloth"].values}
    assert all(facets.passing(Filter(cloth=cloth)) for cloth in facets.cloths())


def test_a_source_passes_with_what_cites_it(facets: Facets, knowledge: Knowledge) -> None:
    jackets = facets.passing(Filter(garment="jacket"))
    citing = {to.id for kind, e in knowledge.entries() if (kind, e.id) in jackets for to in references(e) if to.kind == "sources"}
    assert passing(facets, "sources", garment="jacket") == citing & set(knowledge.sources)


def test_filters_narrow_one_another(facets: Facets) -> None:
    both = facets.passing(Filter("methods", "skirt", "waist"))
    assert both == facets.passing(Filter("methods", "skirt")) & facets.passing(Filter(region="waist"))
    assert both


def test_a_search_finds_only_what_passes_and_keeps_its_order(index: SearchIndex) -> None:
    only = Filter(garment="skirt", region="waist")
    narrowed = [(hit.kind, hit.id) for hit in index.search("too tight", only, most=500)]
    whole = [(hit.kind, hit.id) for hit in index.search("too tight", most=2000)]
    assert narrowed == [key for key in whole if key in index.facets.passing(only)]
    assert narrowed


def test_browsing_lists_all_that_passes_by_kind_and_title(index: SearchIndex) -> None:
    only = Filter(region="legs")
    hits = index.browse(only)
    assert {(hit.kind, hit.id) for hit in hits} == index.facets.passing(only)
    kinds = [hit.kind for hit in hits]
    assert kinds == sorted(kinds, key=kinds.index)
    titles = [hit.title.lower() for hit in hits if hit.kind == "symptoms"]
    assert titles == sorted(titles)
