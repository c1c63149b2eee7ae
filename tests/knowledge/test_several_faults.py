"""Several faults in one breath: the best of each part stands near the top. Sources are found by title, author and short name."""

from __future__ import annotations

import pytest

from fitdoctor.knowledge.filters import Filter
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge
from fitdoctor.knowledge.search import SearchIndex
from fitdoctor.knowledge.several import brought_together, parts_of


@pytest.fixture(scope="module")
def index(knowledge: Knowledge) -> SearchIndex:
    return SearchIndex(knowledge)


@pytest.mark.parametrize(
    ("said", "parts"),
    [
        ("collar gaps on one side", ["collar gaps on one side"]),
        ("tight over bust and waist", ["tight over bust waist"]),
        ("The seat is tight across, but the band gapes behind.", ["The seat is tight across", "the band gapes behind."]),
        ("Hem dips behind", ["Hem dips behind"]),
        ("", []),
    ],
)
def test_a_sentence_is_parted_where_both_sides_say_enough(said: str, parts: list[str]) -> None:
    assert list(parts_of(said)) == parts


def test_the_best_of_each_part_comes_before_the_second_of_the_first() -> None:
    whole = {1: 4.0, 2: 3.9, 3: 2.5}
    together = brought_together(whole, [{1: 5.0, 2: 4.9}, {3: 4.0}])
    assert sorted(together, key=lambda find: -together[find]) == [1, 3, 2]


def test_without_parts_everything_keeps_its_place_and_scores_only_fall() -> None:
    whole = {find: 100.0 - find for find in range(80)}
    together = brought_together(whole, [{5: 1.0}])
    order = sorted(together, key=lambda find: -together[find])
    assert order[0] == 5
    assert [find for find in order if find != 5] == [find for find in range(80) if find != 5]
    assert brought_together({}, [{}, {}]) == {}


@pytest.mark.parametrize(
    ("said", "symptoms"),
    [
        ("trousers too tight on my bum and the collar of the jacket stands off my neck", "strain-across-seat collar-stands-off-neck"),
        ("my knees bag, and the waistband stands away at the back", "knees-bagged back-band-stands-away"),
        ("the zip of my skirt is wavy but also the skirt keeps turning round to the side", "zip-ripples skirt-turns-round"),
    ],
)
def test_two_faults_in_one_breath_are_both_among_the_first_four(index: SearchIndex, said: str, symptoms: str) -> None:
    found = [hit.id for hit in index.search(said, most=4)]
    assert set(symptoms.split()) <= set(found), found


def test_every_source_is_found_by_its_title(index: SearchIndex, knowledge: Knowledge) -> None:
    sources = {id_: source for id_, source in knowledge.sources.items() if id_ != COMMON_PRACTICE}
    alike = {source.title for source in sources.values()}
    missed = [i for i, s in sources.items() if s.title not in [hit.title for hit in index.search(s.title, Filter("sources"), most=3)]]
    assert len(alike) > 150
    assert missed == []


def test_a_source_is_found_by_who_made_it_and_by_its_short_name(index: SearchIndex) -> None:
    assert index.search("hertzer 1892", most=1)[0].id.startswith("hertzer")
    assert index.search("usda fitting hips")[0].id == "usda-fitting-dresses-hips"


def test_a_cloth_is_found_in_what_turns_on_it(index: SearchIndex) -> None:
    assert "velvet-pile-runs-one-way" in [hit.id for hit in index.search("velvet", Filter("conditions"), most=4)]
