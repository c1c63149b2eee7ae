"""Search: what people say leads to the entry, with slips, half words and words of no trade."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from fitdoctor.knowledge.filters import Filter
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import read_knowledge
from fitdoctor.knowledge.search import SearchIndex, search
from tests.knowledge.bench_search import made_up

Plain = dict[str, dict[str, dict[str, Any]]]

# Said as a customer says it; any of the symptoms will do.
SAID = [
    ("collar gaps on one side", "collar-gaps-on-one-side"),
    ("baggy bum", "seat-hangs-empty cupping-under-seat"),
    ("twisted leg", "leg-twists"),
    ("skirt rides up", "skirt-climbs-over-hips front-rides-up-walking"),
    ("jeans gape at the back of the waist", "back-band-stands-away"),
    ("shirt pulls across the back when I reach for the wheel", "bodice-strain-across-back"),
    ("my jacket lifts off the neck at the back", "collar-stands-off-neck"),
    ("the suit coat makes an X when buttoned", "x-at-button"),
    ("my shirt collar disappears under the jacket collar", "collar-hides-shirt-collar"),
    ("seam of my jeans ends up on my shin", "leg-twists"),
    ("the crotch is half way to my knees", "crotch-hangs-low"),
    ("muffin top", "band-cuts-in"),
    ("lines like cat whiskers at the front of the trousers", "smile-lines-at-crotch"),
    ("sleeve falls over my hands", "sleeve-too-long"),
    ("dress straps keep falling off my shoulders", "straps-slip"),
    ("the zip on the back of my skirt is wavy", "zip-ripples"),
    ("skirt keeps spinning to the side", "skirt-turns-round"),
    ("skirt shorter at the back than the front", "hem-rises-at-centre-back"),
    ("lumps of cloth at the back just below the waistband of my skirt", "level-folds-under-back-band"),
    ("can see down my top when I lean forward", "front-neck-gapes"),
    ("pokey bit at the end of the dart", "dart-tip-dimples"),
    ("dress neckline stands up at the back of my neck", "back-neck-stands-away"),
    ("shoulder seams hang down on my arms", "armhole-droops-off-shoulder shoulder-overhangs"),
    ("i keep stepping on the back of my trousers", "hem-treads-at-heel"),
    ("trousers too tight on my bum", "strain-across-seat"),
    ("underwear shows when i sit down", "back-band-gapes-seated"),
    ("jacket balloons out at the small of the back", "back-stands-off-waist loose-at-back-waist"),
    ("dent under the shoulder on the sleeve", "divot-at-sleeve-head"),
    ("horizontal wrinkle across the top of my back under the suit collar", "fold-below-collar"),
    ("the pockets on my trousers stick out like ears", "side-pockets-gape"),
    ("blouse comes up when i lift my arm", "bodice-lifts-with-arm"),
    ("the vents at the back of my jacket are open when standing", "vent-spreads"),
    ("lapels bulge out when jacket is buttoned", "lapels-bow"),
    ("trousers bunch up around my shoes", "breaks-over-shoe"),
    ("one trouser leg is longer than the other", "hems-uneven-left-right"),
    ("blouse buttons pop open across chest", "buttons-gap-at-bust"),
    ("bra straps show because neckline is too wide", "neckline-stands-off-at-sides"),
    ("wedgie", "cutting-in-at-centre-back-seam"),
]


@pytest.fixture(scope="module")
def index(knowledge: Knowledge) -> SearchIndex:
    return SearchIndex(knowledge)


@pytest.mark.parametrize(("said", "symptoms"), SAID, ids=[said for said, _ in SAID])
def test_what_people_say_finds_the_symptom_among_the_first_three(index: SearchIndex, said: str, symptoms: str) -> None:
    found = [hit.id for hit in index.search(said, most=3)]
    assert set(symptoms.split()) & set(found), found


@pytest.mark.parametrize(
    ("slip", "symptom"),
    [
        ("collr stands of neck", "collar-stands-off-neck"),
        ("wrinkels under the waistband at the back", "level-folds-under-back-band"),
        ("collar coverrd by jakcet", "collar-hides-shirt-collar"),
        ("bagy knees", "knees-bagged"),
        ("neckline gapps", "front-neck-gapes"),
    ],
)
def test_slips_of_typing_are_forgiven(index: SearchIndex, slip: str, symptom: str) -> None:
    assert symptom in [hit.id for hit in index.search(slip, most=3)]


def test_words_of_solved_cases_lead_to_their_symptoms(knowledge: Knowledge, index: SearchIndex) -> None:
    led = {c.id: [hit.id for hit in index.search(c.words, most=3)] for c in knowledge.cases.values() if c.words and c.words_lead_to}
    missed = sorted(id_ for id_, found in led.items() if not set(knowledge.cases[id_].words_lead_to) & set(found))
    assert len(missed) <= 0.1 * len(led), missed


def test_every_symptom_is_found_by_its_own_title_and_other_names(knowledge: Knowledge, index: SearchIndex) -> None:
    names = [(s.id, name) for s in knowledge.symptoms.values() for name in (s.title, *s.also_called)]
    missed = [(id_, name) for id_, name in names if id_ not in [hit.id for hit in index.search(name, Filter("symptoms"), most=3)]]
    assert len(missed) <= 0.02 * len(names), missed


@pytest.mark.parametrize(
    ("begun", "symptom"), [("collar stan", "collar-stands-off-neck"), ("bagg", "knees-bagged"), ("skirt tur", "skirt-turns-round")]
)
def test_half_a_word_finds_while_typing(index: SearchIndex, begun: str, symptom: str) -> None:
    assert symptom in [hit.id for hit in index.search(begun, Filter("symptoms"))]


def test_a_search_for_one_kind_finds_only_that_kind(index: SearchIndex) -> None:
    assert {hit.kind for hit in index.search("back waist", Filter("methods"))} == {"methods"}


def test_a_search_for_one_garment_finds_what_holds_for_it(index: SearchIndex, knowledge: Knowledge) -> None:
    hits = index.search("hem lower on one side", Filter("symptoms", garment="jeans"))
    assert hits
    assert all(knowledge.suits(knowledge.symptoms[hit.id].garments, "jeans") for hit in hits)


def test_the_garment_that_is_named_comes_first(index: SearchIndex, knowledge: Knowledge) -> None:
    for garment in ("skirt", "jacket"):
        first = index.search(f"the vent of my {garment} spreads open", Filter("symptoms"))[0]
        assert garment in knowledge.symptoms[first.id].garments


def test_a_find_says_which_words_it_was_found_by(index: SearchIndex) -> None:
    assert index.search("muffin top")[0].why == "muffin top"


def test_nothing_said_finds_nothing(index: SearchIndex) -> None:
    assert index.search("") == index.search("  ?! ") == index.search("the of a") == ()


def test_words_that_nobody_knows_find_nothing(index: SearchIndex) -> None:
    assert index.search("xyzzy qwrtpf ") == ()


def test_the_finds_come_best_first_and_no_more_than_asked_for(index: SearchIndex) -> None:
    hits = index.search("folds at the back", most=5)
    assert len(hits) == 5
    assert [hit.score for hit in hits] == sorted((hit.score for hit in hits), reverse=True)


def test_lay_words_of_a_shops_own_are_understood(small: Plain, written: Callable[[Plain], Path]) -> None:
    folder = written(small)
    assert not search(read_knowledge([folder]), "wibbly ")
    (folder / "words.yaml").write_text("wibbly: [rolls]\n")
    assert search(read_knowledge([folder]), "wibbly ")[0].id == "folds"


def test_among_a_thousand_entries_the_one_that_says_it_comes_first() -> None:
    knowledge = made_up(1000)
    index = SearchIndex(knowledge)
    for symptom in list(knowledge.symptoms.values())[::100]:
        assert index.search(symptom.look, most=1)[0].id == symptom.id


@pytest.mark.parametrize(
    ("said", "garment", "symptom", "not_before"),
    [
        ("no room in the bust", "blouse", "bust-strain-lines", "cups-empty"),
        ("very wide around the waist", "skirt", "skirt-hangs-loose", "band-cuts-in"),
        ("slacks that are too large", "slacks", "seat-hangs-empty", "strain-across-seat"),
        ("the dress is too small", "dress", "strain-at-dress-hip", "slack-at-dress-waist"),
    ],
)
def test_what_is_tight_comes_before_what_is_loose_and_the_other_way_round(
    index: SearchIndex, said: str, garment: str, symptom: str, not_before: str
) -> None:
    found = [hit.id for hit in index.search(said, Filter(kind="symptoms", garment=garment), most=40)]
    assert symptom in found
    assert not_before not in found[: found.index(symptom)]
