"""From a case to ranked causes with reasons."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitdoctor.case import Answer, Case
from fitdoctor.diagnosis.diagnose import diagnose, likely
from fitdoctor.diagnosis.learning import Learned, Tally
from fitdoctor.diagnosis.ranking import chance_word, weight_word
from fitdoctor.diagnosis.treat import same_work
from tests.diagnosis.small_knowledge import cause, check, method, small_knowledge, symptom

KNOWLEDGE = small_knowledge()


def chances(case: Case) -> dict[str, float]:
    return {ranked.id: ranked.probability for ranked in diagnose(KNOWLEDGE, case).causes}


def test_rivals_share_what_is_seen_and_a_check_parts_them() -> None:
    even = chances(Case(garment="trousers", seen=("folds",)))
    assert even["long"] == pytest.approx(even["flat"])
    pinned = chances(Case(garment="trousers", seen=("folds",), answers={"pin": "yes"}))
    assert pinned["long"] > 0.9 > 0.3 > pinned["flat"]


def test_one_sight_gives_the_chance_worked_out_by_hand() -> None:
    case = Case(garment="trousers", seen=("hem-up",), not_seen=(), looked=())
    with_it, without = 0.06 * (1 - 0.99 * 0.05), 0.94 * 0.01
    assert chances(case)["short"] == pytest.approx(with_it / (with_it + without))


def test_a_view_looked_over_counts_what_is_not_seen_as_absent() -> None:
    seen_only = chances(Case(garment="trousers", seen=("folds",)))
    looked = chances(Case(garment="trousers", seen=("folds",), looked=("back",)))
    assert looked["flat"] < seen_only["flat"]
    assert looked == pytest.approx(chances(Case(garment="trousers", seen=("folds",), not_seen=("bag",))))


def test_not_known_and_not_asked_are_the_same() -> None:
    asked = Case(garment="trousers", seen=("folds",), answers={"pin": "not-known"})
    assert chances(asked) == pytest.approx(chances(Case(garment="trousers", seen=("folds",))))


def test_what_cannot_be_is_ruled_out_with_its_reason_and_stands_last() -> None:
    found = diagnose(KNOWLEDGE, Case(garment="trousers", seen=("folds", "bag"), facts={"lining": "full"}))
    flat = found.causes[-1]
    assert (flat.id, flat.probability, flat.word) == ("flat", 0.0, "ruled out")
    assert flat.ruled_out is not None
    assert "lining: full" in flat.ruled_out.text
    assert diagnose(KNOWLEDGE, Case(garment="trousers", facts={"lining": "none"})).cause("flat").ruled_out is None  # type: ignore[union-attr]


def test_two_faults_come_out_as_two() -> None:
    case = Case(garment="trousers", seen=("folds", "hem-up"), answers={"pin": "yes", "tape": "yes"})
    found = diagnose(KNOWLEDGE, case)
    assert set(found.explanations[0].causes) == {"long", "short"}
    assert set(likely(found)) == {"long", "short"}


def test_evidence_is_the_change_of_log_odds_when_the_finding_is_left_out() -> None:
    case = Case(garment="trousers", seen=("folds",), answers={"pin": "yes", "pad": "no"})
    long = diagnose(KNOWLEDGE, case).cause("long")
    less = diagnose(KNOWLEDGE, Case(garment="trousers", seen=("folds",), answers={"pad": "no"})).cause("long")
    assert long is not None
    assert less is not None
    odds = [math.log(c.probability / (1 - c.probability)) for c in (long, less)]
    pin = next(e for e in long.speaks_for if e.finding == "pin")
    assert pin.weight == pytest.approx(odds[0] - odds[1])
    assert (pin.word, pin.linked, pin.answer) == ("strongly", True, "yes")
    pad = next(e for e in long.speaks_for if e.finding == "pad")
    assert not pad.linked


def test_reasons_carry_their_sources_and_open_signs_are_named() -> None:
    long = diagnose(KNOWLEDGE, Case(garment="trousers", seen=("folds",), answers={"pin": "no"})).cause("long")
    assert long is not None
    assert {("book",)} == {reason.sources for reason in long.because[1:]}
    assert [e.finding for e in long.speaks_against] == ["pin"]
    assert [(n.finding, n.kind) for n in long.not_looked] == [("drag", "symptom")]


def test_nothing_is_wrong_competes_like_any_cause() -> None:
    case = Case(garment="trousers", seen=("bag",), answers={"sit": "yes", "pad": "no"}, looked=("back",))
    assert likely(diagnose(KNOWLEDGE, case)) == ("creases",)


def test_rivals_for_one_sight_are_not_treated_together() -> None:
    knowledge = small_knowledge()
    knowledge.causes.update({"flat": cause("flat", {"folds": "usually"}, {"pin": "usually"})})
    found = diagnose(knowledge, Case(garment="trousers", seen=("folds",), answers={"pin": "yes"}))
    assert {c.id for c in found.causes if c.probability > 0.3} == {"long", "flat"}
    assert likely(found) == ("long",)


def test_even_rivals_are_not_decided_by_order() -> None:
    assert likely(diagnose(KNOWLEDGE, Case(garment="trousers", seen=("folds",)))) == ()


def test_rivals_whose_first_way_treats_both_want_the_same_work() -> None:
    knowledge = small_knowledge()
    assert not same_work(knowledge, "trousers")("long", "flat")
    knowledge.methods["lower-waist"] = method("lower-waist", ("long", "flat"))
    same = same_work(knowledge, "trousers")
    assert same("long", "flat")
    assert not same("long", "short")


def test_a_clean_garment_has_nothing_to_treat() -> None:
    found = diagnose(KNOWLEDGE, Case(garment="trousers", looked=("front", "back", "side")))
    assert likely(found) == ()
    assert found.explanations == ()


def test_a_sight_that_no_cause_brings_on_is_said() -> None:
    knowledge = small_knowledge()
    knowledge.symptoms["odd"] = symptom("odd")
    found = diagnose(knowledge, Case(garment="trousers", seen=("odd", "unheard-of")))
    assert "Sight of odd" in found.note
    assert "unheard-of" in found.note


def test_a_common_fault_of_which_nothing_shows_stands_behind_a_rare_one_that_fits() -> None:
    knowledge = small_knowledge()
    knowledge.symptoms["odd"] = symptom("odd")
    knowledge.causes["odd-one"] = cause("odd-one", {"odd": "seldom"}, common="rare")
    found = diagnose(knowledge, Case(garment="trousers", seen=("odd",)))
    assert [c.id for c in found.causes][:1] == ["odd-one"]
    assert found.causes[0].probability < found.causes[1].probability


def test_links_that_hold_for_other_garments_are_left_out() -> None:
    knowledge = small_knowledge()
    knowledge.checks["pin"] = check("pin")
    for_coats = cause("short", {"hem-up": "usually"})
    shows = tuple(type(s)(symptom=s.symptom, strength=s.strength, sources=s.sources, garments=("coat",)) for s in for_coats.shows_as)
    knowledge.causes["short"] = type(for_coats)(**{f: getattr(for_coats, f) for f in for_coats.__struct_fields__} | {"shows_as": shows})
    found = diagnose(knowledge, Case(garment="trousers", seen=("hem-up",))).cause("short")
    assert found is not None
    assert found.probability == pytest.approx(0.12)


def test_what_the_book_learned_changes_the_chances() -> None:
    learned = Learned(links={("long", ("symptom", "folds")): Tally(0, 200)})
    case = Case(garment="trousers", seen=("folds",))
    printed, after = (diagnose(KNOWLEDGE, case, book).cause("long") for book in (None, learned))
    assert printed is not None
    assert after is not None
    assert after.probability < printed.probability


def test_chances_are_said_in_fixed_words() -> None:
    words = [chance_word(chance) for chance in (0.95, 0.9, 0.7, 0.3, 0.1, 0.0)]
    assert words == ["nearly certain", "nearly certain", "likely", "may be", "less likely", "hardly"]


def test_weights_are_said_in_three_words() -> None:
    assert [weight_word(nats) for nats in (-3, 1, -0.2)] == ["strongly", "somewhat", "slightly"]


FINDINGS = st.permutations(["folds", "bag", "drag", "hem-up"])
ANSWERS = st.dictionaries(st.sampled_from(["pin", "pad", "tape", "sit"]), st.sampled_from(["yes", "no", "not-known"]))


@settings(max_examples=40, deadline=None)
@given(FINDINGS, ANSWERS, st.integers(0, 4))
def test_the_order_in_which_things_were_noted_does_not_matter(order: list[str], answers: dict[str, Answer], seen: int) -> None:
    case = Case(garment="trousers", seen=tuple(order[:seen]), answers=answers)
    mixed = Case(garment="trousers", seen=tuple(reversed(order[:seen])), answers=dict(reversed(list(answers.items()))))
    first, second = diagnose(KNOWLEDGE, case), diagnose(KNOWLEDGE, mixed)
    assert {c.id: c.probability for c in first.causes} == pytest.approx({c.id: c.probability for c in second.causes})
    assert all(0 <= c.probability <= 1 for c in first.causes)
