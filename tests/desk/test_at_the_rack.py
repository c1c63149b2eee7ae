"""At the rack, walked as a buyer would: by the mouse, and by the keyboard alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractButton

from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.rack.answer_button import LEAST, RackAnswerButton
from fitdoctor.rack.answer import answer_at

if TYPE_CHECKING:
    import pytest

    from tests.desk.rack_rail import Buyer

pytest_plugins = ["tests.desk.rack_rail"]


def test_a_garment_to_which_nothing_shows_is_bought(buyer: Buyer) -> None:
    buyer.look_at("trousers", "8", "40", "Black dress trousers")
    assert "Black dress trousers, £8.00" in buyer.said("rack-garment")
    assert buyer.go_on(buyer.nothing_else) == "Buy"
    assert buyer.said("rack-reason")
    assert buyer.said("rack-sum-worth-amount") == "£40.00"
    assert buyer.said("rack-sum-price-amount") == "− £8.00"
    assert "ahead" in buyer.said("rack-sum-gain-amount")


def test_beside_a_buy_stands_what_is_never_altered_and_why(buyer: Buyer) -> None:
    buyer.look_at("trousers", "8", "40")
    buyer.go_on(buyer.nothing_else)
    said = " ".join(buyer.said(f"rack-cautions-{number}") for number in (1, 2, 3, 4))
    for kind in ("sleepwear", "ompression", "flame-resistant"):
        assert kind in said
    buyer.press("rack-cautions-why")
    assert "Who says so" in shown(buyer)


def test_short_trousers_are_bought_only_if_there_is_cloth_for_a_hem(buyer: Buyer) -> None:
    buyer.look_at("trousers", "8", "40")
    buyer.see("too short", "trousers-too-short")
    assert buyer.go_on(buyer.nothing_else) == "Buy, if …"
    answer = buyer.hand.answer()
    assert answer is not None
    needs = [state.needs.rstrip(".").lower() for state in answer.only_if]
    assert buyer.said("rack-if-1").rstrip(".").lower() == needs[0]
    assert buyer.said("rack-at-home-1") == answer.at_home
    assert f"£{answer.sum.left_over:.2f} is left over" in buyer.said("rack-reason")


def test_a_price_above_the_worth_is_left_without_a_question(buyer: Buyer) -> None:
    buyer.look_at("trousers", "50", "40")
    assert buyer.said("rack-decision") == "Leave it"
    assert "£40.00" in buyer.said("rack-reason")
    assert buyer.there("rack-fit") is None
    assert "lost" in buyer.said("rack-sum-gain-amount")


def test_a_jacket_a_size_too_small_is_left_for_a_larger_one(buyer: Buyer) -> None:
    buyer.look_at("jacket", "25", "40")
    buyer.see("strains all round", "strains-all-round")
    yes = {"check": "yes", "side": "no"}
    assert buyer.go_on(lambda question: yes.get(question.kind, "not-known")) == "Leave it"
    assert "larger" in buyer.said("rack-other-size-1")


def test_one_question_stands_there_at_a_time_and_cannot_tell_is_as_large_as_the_rest(buyer: Buyer) -> None:
    buyer.look_at("trousers", "25", "40")
    for _ in range(4):
        if buyer.hand.question() is None:
            break
        buttons = [b for b in buyer.window.findChildren(RackAnswerButton) if b.isVisible()]
        assert buttons[-1].value == "not-known"
        assert min(b.height() for b in buttons) >= LEAST
        assert len({b.width() for b in buttons}) == 1
        buyer.answer("not-known")


def test_it_shows_what_the_core_says(buyer: Buyer) -> None:
    buyer.look_at("jacket", "15", "45")
    buyer.see("one sleeve longer", "one-sleeve-longer")
    garment = buyer.hand.garment
    assert garment is not None
    core = answer_at(buyer.job.knowledge, garment.rack, buyer.job.shop)
    assert buyer.hand.answer() is not None
    assert buyer.said("rack-sum-left-amount").lstrip("− ") == f"£{abs(core.sum.left_over):.2f}"
    if core.question:
        assert buyer.said("rack-question") == core.question.ask


def shown(buyer: Buyer) -> str:
    return "\n".join(words.said() for words in buyer.window.findChildren(Words) if words.isVisible())


# ---- taking back


def test_back_takes_the_last_answer_back_and_undo_and_redo_go_the_same_way(buyer: Buyer) -> None:
    buyer.look_at("trousers", "25", "40")
    first = buyer.question()
    buyer.answer("no")
    assert buyer.question().mark != first.mark
    buyer.press("rack-back")
    assert buyer.question().mark == first.mark
    assert buyer.there("rack-back") is None, "there is nothing before the first question"
    buyer.answer("no")
    buyer.key(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert buyer.question().mark == first.mark
    buyer.key(Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    assert buyer.question().mark != first.mark


def test_an_earlier_answer_is_changed_without_losing_the_later_ones(buyer: Buyer) -> None:
    buyer.look_at("trousers", "25", "40")
    buyer.answer("no")
    second = buyer.question()
    buyer.answer("not-known")
    buyer.press("rack-told-1-change")
    garment = buyer.hand.garment
    assert garment is not None
    assert [one.id for one in garment.told] == [second.id]


def test_a_question_skipped_comes_back_when_the_others_are_asked(buyer: Buyer) -> None:
    buyer.look_at("trousers", "25", "40")
    first = buyer.question()
    buyer.press("rack-skip")
    assert buyer.question().mark != first.mark
    marks = []
    while (question := buyer.hand.question()) is not None:
        marks.append(question.mark)
        buyer.answer(buyer.nothing_else(question))
    assert first.mark in marks or buyer.said("rack-decision") == "Leave it"


# ---- the keyboard alone


def test_the_whole_way_by_the_keyboard(buyer: Buyer) -> None:
    buyer.key(Qt.Key.Key_1, Qt.KeyboardModifier.ControlModifier)
    buyer.key(Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert buyer.there("page-rack") is not None
    assert buyer.focus().startswith("rack-kind-")
    for _ in range(20):
        if buyer.focus() == "rack-kind-trousers":
            break
        buyer.key(Qt.Key.Key_Right)
    buyer.key(Qt.Key.Key_Return)
    assert buyer.focus() == "rack-price"
    buyer.type("25")
    buyer.tab_to("rack-worth")
    buyer.type("40")
    buyer.tab_to("rack-go")
    buyer.key(Qt.Key.Key_Space)
    assert buyer.hand.question() is not None
    for _ in range(10):
        question = buyer.hand.question()
        if question is None:
            break
        assert buyer.focus().startswith("rack-answer-")
        buyer.key({"side": Qt.Key.Key_2}.get(question.kind, Qt.Key.Key_Question))
    assert buyer.said("rack-decision") == "Buy"
    assert buyer.focus() == "rack-next-garment"
    buyer.key(Qt.Key.Key_Escape)
    assert buyer.focus().startswith("rack-kind-")


def test_arrows_go_through_the_answers_and_enter_gives_one(buyer: Buyer) -> None:
    buyer.look_at("trousers", "25", "40")
    first = buyer.question()
    assert buyer.focus() == f"rack-answer-{first.answers[0].value}"
    buyer.key(Qt.Key.Key_Right)
    assert buyer.focus() == f"rack-answer-{first.answers[1].value}"
    buyer.key(Qt.Key.Key_Return)
    garment = buyer.hand.garment
    assert garment is not None
    assert [one.value for one in garment.told] == [first.answers[1].value]
    assert buyer.focus() == f"rack-answer-{buyer.question().answers[0].value}", "the focus goes to the next question"


def test_what_shows_is_pointed_at_by_keys_and_escape_goes_back_to_the_question(buyer: Buyer) -> None:
    buyer.look_at("trousers", "25", "40")
    buyer.press("rack-see")
    assert buyer.focus() == "rack-see-find"
    buyer.key(Qt.Key.Key_Escape)
    assert buyer.focus().startswith("rack-answer-")
    buyer.press("rack-see")
    zone = next(b.objectName() for b in buyer.window.findChildren(QAbstractButton) if b.isVisible() and "see-zone" in b.objectName())
    buyer.tab_to(zone)
    buyer.key(Qt.Key.Key_Return)
    assert buyer.focus().startswith("rack-see-")
    buyer.key(Qt.Key.Key_Return)
    garment = buyer.hand.garment
    assert garment is not None
    assert len(garment.rack.case.seen) == 1


def test_a_change_of_the_decision_is_said_aloud(buyer: Buyer, monkeypatch: pytest.MonkeyPatch) -> None:
    aloud: list[str] = []
    monkeypatch.setattr(QAccessible, "updateAccessibility", lambda event: aloud.append(getattr(event, "message", str)()))
    buyer.look_at("trousers", "25", "40")
    buyer.go_on(buyer.nothing_else)
    assert any(said.startswith("As things stand: Buy.") for said in aloud)


# ---- in a hurry


def test_in_a_hurry_no_more_than_ten_seconds_are_asked_for(buyer: Buyer) -> None:
    buyer.describe("jacket", "20", "45")
    buyer.press("rack-hurry")
    assert "in a hurry" in buyer.said("rack-garment")
    seconds = 0.0
    while (question := buyer.hand.question()) is not None:
        seconds += question.seconds
        buyer.answer(buyer.nothing_else(question) if question.kind != "symptom" else question.answers[0].value)
    assert seconds <= 10
    assert "hurry" in buyer.said("rack-remark")
    buyer.press("rack-everything")
    garment = buyer.hand.garment
    assert garment is not None
    assert not garment.hurry
