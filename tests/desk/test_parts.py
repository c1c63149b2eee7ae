"""The parts one by one: by mouse and by keyboard."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.parts.answers import AnswerRow
from fitdoctor.desk.parts.bar import LikelihoodBar
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.parts.depth_or_all import DepthOrAll
from fitdoctor.desk.parts.doubt import doubt
from fitdoctor.desk.parts.foot import PageFoot
from fitdoctor.desk.parts.length_field import LengthField
from fitdoctor.desk.parts.message_bar import MessageBar
from fitdoctor.desk.parts.operation_list import OperationList, Stage, Step
from fitdoctor.desk.parts.tag import LOOKS, StateTag
from fitdoctor.desk.parts.tape import StepTape
from fitdoctor.desk.parts.tape_entry import TapeEntry
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.desk.step_names import TITLES, StepState
from fitdoctor.shop import Shop
from fitdoctor.units import MM_PER_INCH

INCH = MM_PER_INCH
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def look(qapp: object) -> Look:
    del qapp
    return look_of(dark=False)


Show = Callable[..., QWidget]


@pytest.fixture
def show(qtbot: QtBot) -> Iterator[Show]:
    """Shows parts one under another in a window that lives as long as the test."""
    hosts: list[QWidget] = []

    def shown(*parts: QWidget, width: int = 640) -> QWidget:
        host = QWidget()
        column = QVBoxLayout(host)
        for part in parts:
            column.addWidget(part)
        qtbot.addWidget(host)
        host.resize(width, 400)
        host.show()
        host.activateWindow()
        qtbot.waitUntil(host.isActiveWindow)
        hosts.append(host)
        return host

    yield shown
    hosts.clear()


# ---- answers


def answers(look: Look, given: str = "") -> AnswerRow:
    return AnswerRow(look, "check", [("yes", "Yes, they go"), ("no", "No, they stay"), ("not-known", "Cannot tell")], given, "ask")


def test_an_answer_is_given_and_taken_back(show: Show, qtbot: QtBot, look: Look) -> None:
    row = answers(look)
    show(row)
    with qtbot.waitSignal(row.answered) as said:
        QTest.mouseClick(row.buttons[1], LEFT)
    assert said.args == ["check", "no"]
    with qtbot.waitSignal(row.answered) as said:
        QTest.mouseClick(row.buttons[1], LEFT)
    assert said.args == ["check", ""]


def test_no_answer_is_ready_made_and_all_weigh_the_same(show: Show, look: Look) -> None:
    row = answers(look)
    show(row)
    assert not any(button.isChecked() for button in row.buttons)
    assert len({(button.size(), button.role) for button in row.buttons}) == 1


def test_answers_stand_below_one_another_where_they_do_not_fit(show: Show, qtbot: QtBot, look: Look) -> None:
    row = answers(look)
    host = show(row, width=220)
    qtbot.waitUntil(lambda: row.buttons[1].y() > row.buttons[0].y())
    host.resize(900, 400)
    qtbot.waitUntil(lambda: row.buttons[1].y() == row.buttons[0].y())


# ---- keyboard


def test_a_group_is_one_stop_and_arrows_go_through_it(show: Show, look: Look) -> None:
    before, row, after = Button(look, "Before", "before"), answers(look), Button(look, "After", "after")
    host = show(before, row, after)
    before.setFocus()
    stops = []
    for _ in range(2):
        QTest.keyClick(host.focusWidget(), Qt.Key.Key_Tab)
        stops.append(host.focusWidget().objectName())
    assert stops == ["ask-yes", "after"]
    QTest.keyClick(after, Qt.Key.Key_Backtab)
    for wanted in ("ask-no", "ask-not-known", "ask-yes"):
        QTest.keyClick(host.focusWidget(), Qt.Key.Key_Right)
        assert host.focusWidget().objectName() == wanted
    assert not any(button.isChecked() for button in row.buttons), "arrows only move"


@pytest.mark.parametrize("key", [Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_space_and_enter_press(show: Show, qtbot: QtBot, look: Look, key: Qt.Key) -> None:
    button = Button(look, "Measure ›", "go", "go")
    show(button)
    with qtbot.waitSignal(button.clicked):
        QTest.keyClick(button, key)


def test_the_ring_shows_for_the_keyboard_and_not_for_the_mouse(show: Show, look: Look) -> None:
    one, other = Button(look, "One", "one"), Button(look, "Other", "other")
    show(one, other)
    QTest.mouseClick(one, LEFT)
    one.setFocus(Qt.FocusReason.MouseFocusReason)
    assert not one.ringed
    QTest.keyClick(one, Qt.Key.Key_Tab)
    assert other.ringed
    assert not one.ringed


def test_of_an_exclusive_group_one_at_most_is_chosen(look: Look) -> None:
    controls = [Control(look, f"c{number}", "x") for number in range(3)]
    for control in controls:
        control.setCheckable(True)
    ControlGroup(controls, exclusive=True)
    controls[0].setChecked(True)
    controls[2].setChecked(True)
    assert [control.isChecked() for control in controls] == [False, False, True]


# ---- lengths


@pytest.mark.parametrize(("typed", "mm"), [("9/16", 9 * INCH / 16), ("1 1/2", 1.5 * INCH), ("38 mm", 38.0), ("3.8cm", 38.0)])
def test_a_length_is_read_as_it_is_typed(show: Show, look: Look, typed: str, mm: float) -> None:
    field = LengthField(look, Shop(), "length", "Tuck")
    show(field)
    read: list[float] = []
    field.lengthTyped.connect(read.append)
    QTest.keyClicks(field.edit, typed)
    assert read[-1] == pytest.approx(mm)
    assert not field.field.wrong


def test_what_is_no_length_yet_is_marked_and_changes_nothing(show: Show, look: Look) -> None:
    field = LengthField(look, Shop(), "length", "Tuck")
    show(field)
    said: list[str] = []
    field.notRead.connect(said.append)
    QTest.keyClicks(field.edit, "1 1/")
    assert said[-1] == "1 1/"
    assert field.field.wrong


def test_plus_and_minus_step_by_the_shops_step(show: Show, look: Look) -> None:
    field = LengthField(look, Shop(), "length", "Tuck")
    show(field)
    field.show_length(INCH)
    QTest.keyClick(field.edit, Qt.Key.Key_Plus)
    assert field.mm == pytest.approx(INCH + INCH / 16)
    QTest.keyClick(field.edit, Qt.Key.Key_Minus)
    QTest.keyClick(field.edit, Qt.Key.Key_Minus)
    assert field.mm == pytest.approx(INCH - INCH / 16)
    QTest.mouseClick(field.more, LEFT)
    assert field.mm == pytest.approx(INCH)
    QTest.keyClick(field.edit, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    assert field.mm == pytest.approx(2 * INCH)


def test_a_length_never_goes_below_nothing(show: Show, look: Look) -> None:
    field = LengthField(look, Shop(unit="cm"), "length", "Tuck")
    show(field)
    QTest.mouseClick(field.less, LEFT)
    assert field.mm == 0.0


def test_a_tape_is_clicked_and_stepped_by_arrows(show: Show, look: Look) -> None:
    tape = TapeEntry(look, Shop(), "tape", "Tuck, on a tape")
    show(tape)
    pointed: list[float] = []
    tape.lengthPointed.connect(pointed.append)
    tape.lengthPointed.connect(tape.show_length)
    QTest.mouseClick(tape, LEFT, Qt.KeyboardModifier.NoModifier, QPoint(tape.width() // 2, 20))
    assert pointed[-1] == pytest.approx(INCH, abs=INCH / 16)
    QTest.keyClick(tape, Qt.Key.Key_Right)
    assert pointed[-1] == pytest.approx(pointed[-2] + INCH / 16)
    tape.show_length(31.5 * INCH)
    assert tape.accessibleDescription() == "31 and 1 over 2 inches"


def test_between_depth_and_in_all_nothing_is_chosen_beforehand(show: Show, qtbot: QtBot, look: Look) -> None:
    choice = DepthOrAll(look, "sense")
    show(choice)
    assert not any(c.isChecked() for c in choice.choices)
    with qtbot.waitSignal(choice.senseChosen) as chosen:
        QTest.mouseClick(choice.choices[0], LEFT)
    assert chosen.args == ["depth"]


@pytest.mark.parametrize(
    ("mm", "meant"),
    [
        (9 * INCH, 9 * INCH / 16),  # the sixteenths typed as inches
        (5 * INCH, 5 * INCH / 16),
        (25 * INCH, 25.0),  # millimetres typed as inches
    ],
)
def test_a_doubtful_length_is_read_the_likelier_way(mm: float, meant: float) -> None:
    found = doubt(mm, usual=(0.15 * INCH, 1.5 * INCH), possible=(0.0, 4 * INCH), shop=Shop())
    assert found is not None
    assert found.meant_mm == pytest.approx(meant)
    assert found.too_much


def test_a_usual_length_is_not_doubted() -> None:
    assert doubt(20.0, (5.0, 40.0), (0.0, 100.0), Shop()) is None


def test_a_length_moved_by_one_place_is_found_out_in_centimetres() -> None:
    found = doubt(190.0, (5.0, 40.0), (0.0, 100.0), Shop(unit="cm"))
    assert found is not None
    assert (found.possible, found.meant_mm) == (False, 19.0)


# ---- the frame


def states(stands: str = "2 things noted") -> list[StepState]:
    return [StepState(step, title, stands, "basted") for step, title in TITLES.items()]


def test_any_step_can_be_taken_at_any_time(show: Show, qtbot: QtBot, look: Look) -> None:
    tape = StepTape(look, states())
    show(tape, width=1280)
    for button in tape.buttons:
        assert button.isEnabled()
        with qtbot.waitSignal(tape.stepWanted) as wanted:
            QTest.mouseClick(button, LEFT)
        assert wanted.args == [button.state.id]


def test_the_tape_becomes_one_line_where_it_does_not_fit(show: Show, qtbot: QtBot, look: Look) -> None:
    tape = StepTape(look, states())
    host = show(tape, width=1280)
    tape.show_steps(states(), "narrow")
    assert tape.buttons[0].isVisible()
    host.resize(700, 400)
    qtbot.waitUntil(lambda: not tape.buttons[0].isVisible())
    words = tape.findChild(Words, "tape-where")
    assert isinstance(words, Words)
    assert words.text() == "3 of 7  Narrow it down"


def test_a_step_says_how_it_stands(look: Look) -> None:
    tape = StepTape(look, states())
    assert tape.buttons[2].accessibleName() == "Step 3 of 7, Narrow it down, 2 things noted, something open"


def test_the_foot_names_the_pages_it_turns_to(show: Show, look: Look) -> None:
    foot = PageFoot(look)
    show(foot)
    foot.show_turns("What shows", "Measure")
    names = {button.objectName(): button.accessibleName() for button in foot.findChildren(Control)}
    assert names["foot-back"] == "‹ What shows"
    assert names["foot-on"] == "Measure ›"


def test_a_message_stays_until_it_is_closed_and_offers_a_way_out(show: Show, look: Look) -> None:
    bar = MessageBar(look)
    show(bar)
    done: list[str] = []
    bar.say("The settings could not be kept.", button="Choose another folder", act=lambda: done.append("chosen"))
    assert bar.isVisible()
    button = bar.findChild(Button, "message-button")
    assert isinstance(button, Button)
    QTest.mouseClick(button, LEFT)
    assert done == ["chosen"]
    assert not bar.isVisible()


# ---- states


def test_every_state_is_told_by_sign_and_edge_and_not_by_colour_alone() -> None:
    assert len({(tag.sign, tag.edge) for state, tag in LOOKS.items() if state not in ("plain", "yours")}) == 5
    assert LOOKS["not-known"].edge == "basted"
    assert [state for state, tag in LOOKS.items() if tag.edge == "doubled"] == ["stops"]


def test_a_tag_and_a_bar_say_what_they_show(look: Look) -> None:
    assert StateTag(look, "met", "met").accessibleName() == "met"
    assert LikelihoodBar(look, 0.74, "likely").accessibleName() == "likely, about 7 in 10"
    assert LikelihoodBar(look, None, "ruled out").accessibleName() == "ruled out"


def test_the_whole_row_of_a_box_can_be_pressed(show: Show, look: Look) -> None:
    tick = TickBox(look, "Nothing else shows on the back", "over")
    show(tick)
    QTest.mouseClick(tick, LEFT, Qt.KeyboardModifier.NoModifier, QPoint(tick.width() - 5, 20))
    assert tick.isChecked()


def test_the_box_ticks_off_and_the_rest_of_the_row_takes_in_hand(show: Show, qtbot: QtBot, look: Look) -> None:
    work = OperationList(look, "plan-step")
    steps = (Step("m.open", 1, "Open the seam.", "waist seam", "10", try_on=False), Step("m.try", 2, "Try on. Look.", "", "5", try_on=True))
    work.show_stages([Stage("Waist", "15 min", steps)], done=(), in_hand="m.open")
    show(work, width=700)
    row = work.step_rows()[0]
    with qtbot.waitSignal(work.ticked) as ticked:
        QTest.mouseClick(row, LEFT, Qt.KeyboardModifier.NoModifier, QPoint(18, row.height() // 2))
    assert ticked.args == ["m.open", True]
    with qtbot.waitSignal(work.takenInHand) as taken:
        QTest.mouseClick(row, LEFT, Qt.KeyboardModifier.NoModifier, QPoint(300, row.height() // 2))
    assert taken.args == ["m.open"]
    with qtbot.waitSignal(work.ticked):
        QTest.keyClick(row, Qt.Key.Key_Space)
    assert "Try on" in work.step_rows()[1].accessibleName()
