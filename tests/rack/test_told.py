"""What was told makes the rack, and any of it can be taken back."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.case import Case
from fitdoctor.rack.answer import next_question
from fitdoctor.rack.question import CANNOT_TELL, Rack, answered
from fitdoctor.rack.told import Told, after, told_to, without
from tests.rack.small_rack import small_knowledge

START = Rack(30, 100, 0, Case(garment="skirt"))
SOMETHING = Told(kind="side", id="back", value="yes", seconds=15)
NAMED = Told(kind="symptom", id="back", value="strain", seconds=15)
SEEN = Told(kind="seen", id="strain")
STIFF = Told(kind="check", id="stiff", value="no", seconds=30)


def test_told_one_by_one_or_all_at_once_is_the_same_rack() -> None:
    by_hand = answered(answered(answered(START, "side", "back", "yes", 15), "symptom", "back", "strain", 15), "check", "stiff", "no", 30)
    assert after(START, [SOMETHING, NAMED, STIFF]) == by_hand
    assert by_hand.spent_seconds == 60


def test_the_answer_to_a_question_is_told_with_its_seconds() -> None:
    ask = next_question(small_knowledge(), START)
    assert ask is not None
    one = told_to(ask, "yes", "Look at the back: something does")
    assert (one.kind, one.id, one.value, one.seconds) == ("side", "back", "yes", ask.seconds)


def test_what_was_seen_without_being_asked_counts_as_seen_once() -> None:
    assert after(START, [SEEN, SEEN]).case.seen == ("strain",)


def test_what_was_seen_names_what_shows_on_a_side() -> None:
    assert after(START, [SOMETHING]).to_be_named == "back"
    assert after(START, [SOMETHING, SEEN]).to_be_named == ""


def test_what_cannot_be_told_is_put_aside_and_comes_back_when_taken_back() -> None:
    told = (Told(kind="check", id="stiff", value=CANNOT_TELL),)
    assert "check/stiff" in after(START, told).aside
    assert after(START, without(told, 0)) == START


def test_a_side_and_what_was_named_there_are_taken_back_together() -> None:
    told = (STIFF, SOMETHING, NAMED)
    assert without(told, 1) == without(told, 2) == (STIFF,)
    assert without(told, 0) == (SOMETHING, NAMED)
    assert without((SOMETHING, SEEN), 1) == ()


@given(st.lists(st.sampled_from([STIFF, SEEN, Told(kind="side", id="front", value="no"), Told(kind="feature", id="seams", value="none")])))
def test_the_last_answer_taken_back_is_the_rack_before_it(told: list[Told]) -> None:
    for place in range(len(told)):
        assert after(START, without(told[: place + 1], place)) == after(START, told[:place])
