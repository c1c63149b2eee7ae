"""What to ask next: gain of information, minutes, and when to stop."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitdoctor.case import Answer, Case
from fitdoctor.diagnosis.diagnose import diagnose
from fitdoctor.diagnosis.gain import entropy_bits, expected_gain_bits
from fitdoctor.diagnosis.next_checks import foresee, next_checks, settled
from fitdoctor.diagnosis.posterior import posterior
from tests.diagnosis.small_knowledge import method, small_knowledge

KNOWLEDGE = small_knowledge()
SEEN = st.sets(st.sampled_from(["folds", "bag", "drag", "hem-up"]))
ANSWERS = st.dictionaries(st.sampled_from(["pin", "pad"]), st.sampled_from(["yes", "no"]))

# Mitchell, Machine Learning (1997), table 3.2: outlook, temperature, humidity, wind, play tennis.
TENNIS = [row.split() for row in """
sunny hot high weak no
sunny hot high strong no
overcast hot high weak yes
rain mild high weak yes
rain cool normal weak yes
rain cool normal strong no
overcast cool normal strong yes
sunny mild high weak no
sunny cool normal weak yes
rain mild normal weak yes
sunny mild normal strong yes
overcast mild high strong yes
overcast hot normal weak yes
rain mild high strong no
""".strip().splitlines()]  # fmt: skip


def test_the_entropy_of_the_tennis_days_is_the_textbooks() -> None:
    assert entropy_bits(np.array(9 / 14)) == pytest.approx(0.940, abs=5e-4)


@pytest.mark.parametrize(("column", "gain"), [(0, 0.2467), (2, 0.1518), (3, 0.0481), (1, 0.0292)])
def test_the_gain_of_each_tennis_attribute_is_the_textbooks(column: int, gain: float) -> None:
    values = sorted({row[column] for row in TENNIS})
    days = [[row for row in TENNIS if row[column] == value] for value in values]
    answers = np.array([[len(some) / len(TENNIS) for some in days]])
    after = np.array([[[sum(row[-1] == "yes" for row in some) / len(some)] for some in days]])
    assert expected_gain_bits(np.array([9 / 14]), answers, after) == pytest.approx([gain], abs=5e-5)


def test_entropy_is_0_where_the_answer_is_certain() -> None:
    assert entropy_bits(np.array([0.0, 1.0, 0.5])) == pytest.approx([0, 0, 1])


@settings(max_examples=30, deadline=None)
@given(SEEN, ANSWERS)
def test_foreseen_chances_are_those_that_come_true(seen: set[str], answers: dict[str, Answer]) -> None:
    found = diagnose(KNOWLEDGE, Case(garment="trousers", seen=tuple(seen), answers=answers))
    net = found.net
    rows = [row for row in range(len(net.findings)) if row not in (*net.yes, *net.no)]
    ahead = foresee(net, found.posterior, rows)
    for at, row in enumerate(rows):
        if_yes, if_no = posterior(net.net, (*net.yes, row), net.no), posterior(net.net, net.yes, (*net.no, row))
        assert ahead.if_yes[at] == pytest.approx(if_yes.chances, abs=1e-9)
        assert ahead.if_no[at] == pytest.approx(if_no.chances, abs=1e-9)
        assert ahead.yes[at] == pytest.approx(np.exp(if_yes.log_evidence - found.posterior.log_evidence), abs=1e-9)


def test_the_check_that_parts_the_rivals_comes_first_and_says_so() -> None:
    case = Case(garment="trousers", seen=("folds",))
    first = next(ask for ask in next_checks(KNOWLEDGE, case, diagnose(KNOWLEDGE, case)) if ask.kind == "check")
    assert first.id == "pin"
    assert "‘Cause long’ (yes) from ‘Cause flat’ (no)" in first.because.text
    assert first.because.sources == ("book",)


def test_a_check_five_times_as_long_comes_later_for_the_same_gain() -> None:
    case = Case(garment="trousers", seen=("folds",))
    asks = next_checks(KNOWLEDGE, case, diagnose(KNOWLEDGE, case))
    by_id = {ask.id: ask for ask in asks}
    assert by_id["pin"].gain_bits == pytest.approx(by_id["pad"].gain_bits)
    assert [ask.id for ask in asks].index("pin") < [ask.id for ask in asks].index("pad")


def test_what_was_answered_looked_at_or_given_up_is_not_asked_again() -> None:
    case = Case(garment="trousers", seen=("folds",), looked=("back",), answers={"pin": "not-known", "pad": "no"})
    assert {ask.id for ask in next_checks(KNOWLEDGE, case, diagnose(KNOWLEDGE, case))} == {"drag"}


def test_in_the_hand_nothing_is_asked_that_needs_the_wearer() -> None:
    case = Case(garment="trousers")
    found = diagnose(KNOWLEDGE, case)
    assert [ask.id for ask in next_checks(KNOWLEDGE, case, found, "garment")] == ["tape"]
    assert {ask.id for ask in next_checks(KNOWLEDGE, case, found, "rack") if ask.kind == "check"} == {"sit"}


def test_it_is_settled_when_no_answer_changes_the_work() -> None:
    open_case = Case(garment="trousers", seen=("folds",))
    assert not settled(KNOWLEDGE, open_case, diagnose(KNOWLEDGE, open_case))
    done = Case(garment="trousers", seen=("folds",), looked=("back", "front", "side"), answers={"pin": "yes", "pad": "no"})
    assert settled(KNOWLEDGE, done, diagnose(KNOWLEDGE, done))


def test_it_is_settled_when_both_rivals_want_the_same_work() -> None:
    case = Case(garment="trousers", seen=("folds",), looked=("back", "front"))
    assert not settled(KNOWLEDGE, case, diagnose(KNOWLEDGE, case))
    knowledge = small_knowledge()
    knowledge.methods.clear()
    knowledge.methods["one-for-both"] = method("one-for-both", ("long", "flat"))
    assert settled(knowledge, case, diagnose(knowledge, case))
