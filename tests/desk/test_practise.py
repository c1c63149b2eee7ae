"""Practise, by the mouse and by the keyboard."""

from __future__ import annotations

import csv
import dataclasses
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QWidget

from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.practice.answer_choice import AnswerChoice
from fitdoctor.desk.tokens import TARGET
from fitdoctor.practice.exercise import Amount, Order
from fitdoctor.practice.judging import right_answer
from fitdoctor.practice.keeping import open_record, practice_file
from fitdoctor.practice.scope import Scope
from tests.desk.test_reading_the_desk import SMALLEST_LINK, Longer, clipped, too_wide

if TYPE_CHECKING:
    from tests.desk.reading_chair import Reader
    from tests.desk.school_bench import MakeTrainee, Trainee

pytest_plugins = ["tests.desk.school_bench"]

SETS = ("jacket back lines", "trousers cause", "skirt check", "trousers amount", "jacket verdict", "trousers order", "dress garment")


def tag_of(trainee: Trainee, letter: str) -> str:
    widget = trainee.shown(f"practise-answer-{letter}")
    assert isinstance(widget, AnswerChoice)
    return widget.tag_word


def test_the_place_opens_on_an_exercise_with_the_focus_on_its_first_answer(trainee: Trainee) -> None:
    assert trainee.window.place == "practise"
    assert trainee.said("practise-number").startswith("Exercise 1 of 10 · ")
    assert trainee.said("practise-question") == trainee.question.ask
    focus = QApplication.focusWidget()
    assert focus is not None
    assert focus.objectName() == "practise-answer-a"


def test_a_right_answer_by_its_letter_and_enter_goes_on(trainee: Trainee) -> None:
    trainee.take_set("jacket back lines")
    right = trainee.choice("right")
    trainee.press_key(right)
    assert trainee.said("practise-headline").startswith("Yes. ")
    assert tag_of(trainee, right) == "your answer, right"
    assert trainee.said("practise-comes-back") == "This one comes back in 10 minutes."
    before = trainee.question
    trainee.keys(Qt.Key.Key_Return)
    trainee.wait()
    assert trainee.question is not before
    assert trainee.said("practise-number").startswith("Exercise 2 of 2")
    assert trainee.there("practise-feedback") is None


def test_a_mistake_by_the_mouse_names_the_look_alike_and_shows_both(trainee: Trainee) -> None:
    trainee.take_set("jacket back lines")
    wrong, right = trainee.choice("wrong"), trainee.choice("right")
    trainee.click(f"practise-answer-{wrong}")
    assert trainee.said("practise-headline") == "Not this time. Look at how the line lies."
    assert (tag_of(trainee, wrong), tag_of(trainee, right)) == ("your answer", "the line here")
    assert trainee.sitting.feedback is not None
    confused = trainee.sitting.feedback.told.confused
    assert len(confused) == 2
    trainee.press("practise-both")
    for id_ in confused:
        assert trainee.said(f"practise-both-{id_}-words") == trainee.sitting.knowledge.symptoms[id_].title
        assert trainee.shown(f"practise-both-{id_}").isVisible()
    assert trainee.there("practise-figure") is None


def test_an_answer_given_cannot_be_given_again(trainee: Trainee) -> None:
    trainee.take_set("jacket back lines")
    trainee.press_key(trainee.choice("wrong"))
    headline = trainee.said("practise-headline")
    trainee.press_key(trainee.choice("right"))
    assert trainee.said("practise-headline") == headline
    assert len(trainee.sitting.record.answers) == 1


def test_after_the_answer_the_way_it_comes_about_is_drawn(trainee: Trainee) -> None:
    trainee.take_set("trousers cause", seed="5")
    assert trainee.there("practise-why") is None
    trainee.press_key(trainee.choice("right"))
    why = trainee.shown("practise-why")
    assert trainee.said("practise-why-words") == why.accessibleName()
    assert trainee.said("practise-sources").startswith("Who says so: ")


def test_the_handbook_page_opens_and_escape_comes_back(trainee: Trainee) -> None:
    trainee.take_set("jacket back lines")
    trainee.press_key(trainee.choice("right"))
    entry = trainee.question.entry
    trainee.press("practise-page")
    assert trainee.window.place == "look-up"
    assert trainee.look_up.trail.here == entry
    trainee.keys(Qt.Key.Key_Escape)
    assert trainee.window.place == "practise"
    assert trainee.said("practise-headline").startswith("Yes. ")


def test_an_amount_is_typed_and_judged_on_enter(trainee: Trainee) -> None:
    trainee.take_set("trousers amount")
    question = trainee.question
    assert isinstance(question, Amount)
    field = QApplication.focusWidget()
    assert isinstance(field, QLineEdit)
    trainee.type(f"{question.right_mm} mm")
    trainee.keys(Qt.Key.Key_Return)
    assert trainee.said("practise-headline").startswith("Yes. ")


def test_an_amount_not_typed_is_not_judged(trainee: Trainee) -> None:
    trainee.take_set("trousers amount")
    trainee.keys(Qt.Key.Key_Return)
    trainee.press("practise-give")
    assert trainee.sitting.feedback is None


def test_an_order_is_given_by_pressing_the_operations_one_after_another(trainee: Trainee) -> None:
    trainee.take_set("trousers order")
    question = trainee.question
    assert isinstance(question, Order)
    shown = [id_ for id_, _ in question.steps]
    letters = ["abcd"[shown.index(id_)] for id_ in question.order]
    trainee.click(f"practise-answer-{letters[1]}")
    assert tag_of(trainee, letters[1]) == "place 1"
    trainee.click(f"practise-answer-{letters[1]}")
    assert tag_of(trainee, letters[1]) == "", "pressed again it is taken back"
    for letter in letters:
        trainee.press_key(letter)
    assert [tag_of(trainee, letter) for letter in letters] == ["place 1", "place 2", "place 3", "place 4"]
    trainee.keys(Qt.Key.Key_Return)
    assert trainee.said("practise-headline").startswith("Yes. ")


def test_a_whole_garment_goes_through_its_questions(trainee: Trainee) -> None:
    trainee.take_set("trousers garment", count=1)
    exercise = trainee.sitting.exercise
    assert exercise is not None
    for question in exercise.questions:
        assert trainee.said("practise-question") == question.ask
        trainee.sitting.answer(right_answer(question))
        trainee.settle()
        trainee.press("practise-next")
    assert trainee.sitting.finished
    asked = len(exercise.questions)
    assert trainee.said("practise-question") == f"{asked} questions answered, {asked} right."
    trainee.press("practise-next")
    trainee.wait()
    assert trainee.sitting.set is None
    assert trainee.said("practise-number").startswith("Exercise 1 of 10")


def test_answers_are_kept_and_the_margin_counts_them(school: MakeTrainee) -> None:
    first = school()
    first.take_set("jacket back lines")
    first.press_key(first.choice("wrong"))
    assert first.said("practise-today") == "1 question answered, 0 right."
    (answer,) = open_record().answers
    assert (answer.kind, answer.mark, answer.set, answer.seed) == ("lines", "wrong", "jacket back moderate lines", "4")
    second = school()
    assert second.said("practise-today") == "1 question answered, 0 right."
    second.press("practise-pair-1")
    second.wait()
    assert second.question.skill.id == "|".join(sorted(answer.confused))
    assert second.said("practise-number").startswith("Exercise 1 of 4")


def test_a_damaged_record_is_set_aside_and_said(school: MakeTrainee) -> None:
    practice_file().parent.mkdir(parents=True, exist_ok=True)
    practice_file().write_bytes(b"{")
    trainee = school()
    shown = trainee.window.message.shown()
    assert shown
    assert "The record of your answers was damaged; it is kept as " in str(shown[0])


def test_a_set_is_chosen_by_the_keyboard_and_is_the_set_of_its_seed(trainee: Trainee) -> None:
    trainee.press("practise-set")
    trainee.click("practise-set-garment-waistcoat")
    trainee.click("practise-set-kind-lines")
    trainee.click("practise-set-count-5")
    seed = trainee.shown("practise-seed")
    seed.setFocus()
    QTest.keyClicks(seed, "7")
    trainee.keys(Qt.Key.Key_Return)
    trainee.wait()
    made = trainee.sitting.set
    assert made is not None
    assert (made.scope.words, made.seed, len(made.exercises)) == ("waistcoat moderate lines", "17", 5)
    assert trainee.said("practise-code").startswith(f"Seed 17, code {made.code}.")
    assert trainee.said("practise-number").startswith("Exercise 1 of 5")


def test_a_place_of_the_garment_can_be_chosen(trainee: Trainee) -> None:
    trainee.press("practise-set")
    trainee.click("practise-set-garment-trousers")
    trainee.click("practise-set-region-back seat")
    scope = trainee.practise.set.scope()
    assert (scope.garment, scope.region) == ("trousers", ("back", "seat"))
    trainee.click("practise-set-garment-waistcoat")
    assert trainee.practise.set.scope().region == (), "the waistcoat has no such place"


def test_how_it_goes_is_drawn_said_and_saved(trainee: Trainee, tmp_path: Path) -> None:
    trainee.take_set("jacket back lines")
    trainee.press_key(trainee.choice("wrong"))
    trainee.keys(Qt.Key.Key_Return)
    trainee.press_key(trainee.choice("right"))
    trainee.press("practise-results")
    assert trainee.shown("practise-curve").accessibleName().startswith("After 2 answers")
    assert " taken for " in trainee.shown("practise-table").accessibleName()
    trainee.practise.save(tmp_path / "out.csv")
    with (tmp_path / "out.csv").open(encoding="utf-8-sig", newline="") as file:
        assert [row["mark"] for row in csv.DictReader(file)] == ["wrong", "right"]
    trainee.keys(Qt.Key.Key_Escape)
    assert trainee.there("practise-question") is not None


def test_lengths_follow_the_unit_of_the_shop(trainee: Trainee) -> None:
    trainee.sitting.practise(Scope("trousers", kinds=("amount",)))
    trainee.wait()
    assert any(line.endswith(" in") for line in trainee.question.given)
    before = trainee.question.skill
    trainee.window.change(unit="cm")
    trainee.wait()
    assert trainee.question.skill == before
    assert any(line.endswith(" cm") for line in trainee.question.given)


def test_a_set_goes_on_where_it_was_when_the_unit_changes(trainee: Trainee) -> None:
    trainee.take_set("trousers amount", count=3)
    trainee.sitting.answer(right_answer(trainee.question))
    trainee.settle()
    trainee.press("practise-next")
    before, code = trainee.question.skill, trainee.sitting.set and trainee.sitting.set.code
    trainee.window.change(unit="cm")
    trainee.wait()
    assert trainee.said("practise-number").startswith("Exercise 2 of 3")
    assert trainee.question.skill == before
    assert trainee.sitting.set is not None
    assert trainee.sitting.set.code == code


def test_knowledge_read_anew_is_what_is_asked_from_then_on(trainee: Trainee) -> None:
    job = trainee.fitting.job
    fewer = dataclasses.replace(job.knowledge, symptoms={**job.knowledge.symptoms})
    trainee.sitting.practise(Scope("waistcoat", kinds=("lines",)))
    trainee.wait()
    trainee.press_key("a")
    job.take(fewer)
    trainee.window.rebuild(trainee.window.look)
    trainee.wait()
    assert trainee.sitting.bench.knowledge is fewer
    assert trainee.sitting.feedback is None
    assert trainee.said("practise-question") == trainee.question.ask


def test_the_picture_does_not_tell_the_answer_before_it_is_given(trainee: Trainee) -> None:
    trainee.take_set("jacket back lines")
    figure = trainee.shown("practise-figure")
    titles = [trainee.sitting.knowledge.symptoms[id_].title for id_ in trainee.question.picture.seen]
    told = f"{figure.accessibleName()} {figure.accessibleDescription()} {trainee.said('practise-caption')}"
    assert titles
    assert all(title not in told for title in titles)
    assert figure.accessibleDescription()


@pytest.mark.parametrize(
    ("theme", "percent", "size"), [("light", 100, (1280, 800)), ("dark", 200, (1280, 800)), ("light", 100, (960, 600))]
)
def test_nothing_is_clipped_before_or_after_an_answer(school: MakeTrainee, theme: str, percent: int, size: tuple[int, int]) -> None:
    trainee = school(theme, percent, size)
    top: Any = trainee
    for words in SETS:
        trainee.take_set(words, count=1)
        assert clipped(top) == [], words
        trainee.sitting.answer(right_answer(trainee.question))
        trainee.settle()
        assert clipped(top) == [], words
        assert too_wide(top) == [], words
        assert visible_in_scroll(trainee, "practise-next") or percent == 200, words
    for sheet in ("results", "set"):
        trainee.practise.turn_to(sheet)
        trainee.settle()
        assert clipped(top) == [], sheet
        assert too_wide(top) == [], sheet


def visible_in_scroll(reader: Reader, name: str) -> bool:
    widget = reader.there(name)
    return widget is not None and not widget.visibleRegion().isEmpty()


SHEETS = ("exercise", "answered", "results", "set")


def turn_to(trainee: Trainee, sheet: str) -> None:
    """A page of the place with something on it."""
    trainee.take_set("jacket back lines")
    trainee.press_key(trainee.choice("wrong"))
    if sheet == "exercise":
        trainee.keys(Qt.Key.Key_Return)
    elif sheet != "answered":
        trainee.practise.turn_to(sheet)
    trainee.settle()


@pytest.mark.parametrize("sheet", SHEETS)
def test_everything_on_a_page_has_a_name_of_its_own_and_is_large_enough(trainee: Trainee, sheet: str) -> None:
    turn_to(trainee, sheet)
    page = trainee.practise.stack
    buttons = [w for w in page.findChildren(QAbstractButton) if w.isVisible()]
    assert buttons
    for button in buttons:
        least = SMALLEST_LINK if button.property("role") == "quiet" else TARGET - 2
        assert button.accessibleName(), button.objectName()
        assert button.height() >= least, button.objectName()
    names = [w.objectName() for w in page.findChildren(QWidget) if w.isVisible() and w.objectName() and "qt_" not in w.objectName()]
    assert [name for name, times in Counter(names).items() if times > 1] == []
    assert len([w for w in buttons if w.property("role") == "go"]) <= 1


@pytest.mark.parametrize("sheet", SHEETS)
def test_a_translation_shows_on_the_page_and_nothing_is_clipped(school: MakeTrainee, sheet: str) -> None:
    translator = Longer()
    QCoreApplication.installTranslator(translator)
    try:
        trainee = school()
        turn_to(trainee, sheet)
        top: Any = trainee
        assert clipped(top) == []
        assert too_wide(top) == []
        said = [w.text() for w in trainee.practise.stack.findChildren(Words) if w.isVisible()]
        assert any("[" in text for text in said)
    finally:
        QCoreApplication.removeTranslator(translator)
