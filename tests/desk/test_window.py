"""The window: painted before anything is read, built anew in another look, known errors in the bar and bugs in a dialog."""

from __future__ import annotations

import os
import subprocess
import sys
from typing import TYPE_CHECKING

import msgspec
import pytest
from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.desk.app import Desk
from fitdoctor.desk.background import run_in_background
from fitdoctor.desk.look import look_of
from fitdoctor.desk.opening import open_shelf
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.step_names import STEPS
from fitdoctor.desk.window import Window
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop, load_shop

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable

pytest_plugins = ["tests.desk.table_top"]

SLOW = ("networkx", "numpy", "jinja2", "yaml", "sqlite3", "fitdoctor.assess", "fitdoctor.jobbook")
PAINT_ONLY = """
import sys
from fitdoctor.desk.app import application_of
from fitdoctor.desk.window import Window
from fitdoctor.shop import Shop
application = application_of()
window = Window(Shop())
window.show()
application.processEvents()
assert not window.grab().isNull()
print([name for name in {slow} if name in sys.modules])
"""


def test_the_window_is_painted_before_anything_slow_is_imported() -> None:
    code = PAINT_ONLY.replace("{slow}", repr(SLOW))
    run = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, env={**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    )
    assert run.stdout.strip() == "[]"


def test_the_desk_opens_on_the_demo_and_next_time_where_one_left_off(qtbot: QtBot, knowledge: Knowledge) -> None:
    window = Window(Shop(theme="light"))
    qtbot.addWidget(window)
    desk = Desk(window)
    desk.open(knowledge)
    assert desk.fitting is not None
    desk.fitting.job.name("Left off here")
    desk.fitting.job.go_to("sheet")
    again_window = Window(Shop(theme="light"))
    qtbot.addWidget(again_window)
    again = Desk(again_window)
    again.open(knowledge)
    assert again.fitting is not None
    assert again.fitting.job.case.title == "Left off here"
    assert again.fitting.page().step == "sheet"
    assert len(open_shelf().at_hand()) == 3


def test_reading_in_the_background_comes_back_to_the_window(qtbot: QtBot) -> None:
    came: list[object] = []
    run_in_background(lambda: 6 * 7, came.append, came.append)
    qtbot.waitUntil(lambda: came == [42])


def test_what_goes_wrong_in_the_background_is_heard_of(qtbot: QtBot) -> None:
    came: list[Exception] = []

    def fail() -> None:
        raise FitdoctorError("There is no folder of knowledge.", "Name another.")

    run_in_background(fail, lambda _: None, came.append)
    qtbot.waitUntil(lambda: len(came) == 1)
    assert isinstance(came[0], FitdoctorError)


# ---- look


@pytest.mark.parametrize("step", STEPS)
def test_a_page_stays_open_with_its_focus_when_the_text_grows(table: MakeTable, step: str) -> None:
    top = table("trousers")
    top.go(step)
    top.window.activateWindow()
    top.qtbot.waitUntil(top.window.isActiveWindow)
    named = top.window.focusWidget().objectName()
    em = top.window.look.em
    QTest.keyClick(top.window, Qt.Key.Key_Plus, Qt.KeyboardModifier.ControlModifier)
    top.settle()
    assert top.window.look.em > em
    assert top.page.step == step
    assert top.page.isVisible()
    assert top.window.focusWidget().objectName() == named
    QTest.keyClick(top.window, Qt.Key.Key_0, Qt.KeyboardModifier.ControlModifier)
    assert top.window.look.em == em


def test_the_size_of_the_text_is_kept_in_the_settings(qtbot: QtBot, knowledge: Knowledge) -> None:
    window = Window(Shop(theme="light"))
    qtbot.addWidget(window)
    desk = Desk(window)
    desk.open(knowledge)
    window.set_text(150)
    assert load_shop()[0].text_percent == 150


def test_the_theme_of_the_settings_goes_before_that_of_the_system(qtbot: QtBot) -> None:
    for theme in ("light", "dark"):
        window = Window(msgspec.structs.replace(Shop(), theme=theme))
        qtbot.addWidget(window)
        assert window.look.tokens.name == theme


def test_another_theme_keeps_a_message_that_was_shown(table: MakeTable) -> None:
    top = table()
    top.window.say(FitdoctorError("The disk is full.", "What you entered is still here."))
    top.window.rebuild(look_of(dark=True))
    assert top.find(Words, "message-words").text() == "The disk is full. What you entered is still here."


class Strays(QObject):
    """Notes every part that shows as a window of its own."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Show and isinstance(watched, QWidget) and watched.isWindow() and not isinstance(watched, Window):
            self.found.append(f"{type(watched).__name__} {watched.objectName()}")
        return False


@pytest.mark.parametrize("which", ["new", "dress", "trousers", "jacket"])
def test_no_part_ever_flashes_up_as_a_window_of_its_own(table: MakeTable, which: str) -> None:
    strays = Strays()
    application = QApplication.instance()
    assert application is not None
    application.installEventFilter(strays)
    try:
        top = table(which)
        for step in STEPS:
            top.go(step)
        top.window.rebuild(look_of(dark=True, percent=200))
        for step in STEPS:
            top.go(step)
    finally:
        application.removeEventFilter(strays)
    assert strays.found == []


# ---- keys


@pytest.mark.parametrize(("number", "step"), list(enumerate(STEPS, 1)))
def test_alt_and_a_figure_open_a_step(table: MakeTable, number: int, step: str) -> None:
    top = table()
    top.window.activateWindow()
    top.qtbot.waitUntil(top.window.isActiveWindow)
    QTest.keyClick(top.window, Qt.Key(Qt.Key.Key_0.value + number), Qt.KeyboardModifier.AltModifier)
    assert top.page.step == step


def test_the_pages_are_turned_by_keys_and_by_the_foot(table: MakeTable) -> None:
    top = table()
    top.go("shows")
    top.click("foot-on")
    assert top.page.step == "narrow"
    top.click("foot-back")
    assert top.page.step == "shows"
    top.window.activateWindow()
    top.qtbot.waitUntil(top.window.isActiveWindow)
    QTest.keyClick(top.window, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    assert top.page.step == "narrow"


def test_f6_goes_round_the_bands_of_the_window(table: MakeTable) -> None:
    top = table()
    top.go("narrow")
    top.window.activateWindow()
    top.qtbot.waitUntil(top.window.isActiveWindow)
    bands = []
    for _ in range(4):
        QTest.keyClick(top.window, Qt.Key.Key_F6)
        focus = top.window.focusWidget()
        bands.append(next(b.objectName() for b in (top.window.tape, top.page, top.window.foot, top.window.head) if b.isAncestorOf(focus)))
    assert sorted(bands) == ["foot", "head", "page-narrow", "tape"]


@pytest.mark.parametrize("step", STEPS)
def test_tab_reaches_every_stop_of_a_page_and_comes_round(table: MakeTable, step: str) -> None:
    top = table("trousers")
    top.go(step)
    top.window.activateWindow()
    top.qtbot.waitUntil(top.window.isActiveWindow)
    stops = {
        w.objectName()
        for w in top.page.findChildren(QWidget)
        if w.isVisible() and w.isEnabled() and w.focusPolicy() & Qt.FocusPolicy.TabFocus and w.objectName()
    }
    reached = []
    for _ in range(4 * len(stops) + 40):
        QTest.keyClick(top.window.focusWidget(), Qt.Key.Key_Tab)
        reached.append(top.window.focusWidget().objectName())
    assert stops <= set(reached)


def test_a_letter_typed_in_a_field_is_no_answer(table: MakeTable) -> None:
    top = table("trousers")
    top.go("shows")
    before = top.job.case
    QTest.keyClicks(top.find(QLineEdit, "shows-find"), "ny")
    top.go("narrow")
    assert top.job.case == before


# ---- errors and garments at hand


def test_a_known_error_stands_in_the_bar_and_a_bug_in_a_dialog(qtbot: QtBot, capsys: pytest.CaptureFixture[str]) -> None:
    window = Window(Shop(theme="light"))
    qtbot.addWidget(window)
    window.show()
    desk = Desk(window)
    desk.show_bug(FitdoctorError, FitdoctorError("The disk is full."), None)
    assert window.message.isVisible()
    assert window.findChild(QMessageBox, "bug") is None
    desk.show_bug(ZeroDivisionError, ZeroDivisionError("division by zero"), None)
    box = window.findChild(QMessageBox, "bug")
    assert isinstance(box, QMessageBox)
    assert "ZeroDivisionError" in box.detailedText()
    assert "division by zero" in capsys.readouterr().err
    box.close()


def test_entries_left_out_are_said_with_file_and_line(qtbot: QtBot, knowledge: Knowledge) -> None:
    from dataclasses import replace
    from pathlib import Path

    from fitdoctor.knowledge.knowledge import Problem

    window = Window(Shop(theme="light"))
    qtbot.addWidget(window)
    desk = Desk(window)
    desk.open(replace(knowledge, problems=(Problem(Path("methods/waist/lower-back.yaml"), 12, "a key is missing"),) * 2))
    said = window.message.shown()
    assert said is not None
    assert "methods/waist/lower-back.yaml:12" in said[0]
    assert "1 more" in said[0]


def test_another_garment_is_taken_in_hand_and_the_first_waits_in_the_book(table: MakeTable) -> None:
    top = table("trousers")
    top.job.note("seat-cups-below")
    first = top.job.kept
    top.window.activateWindow()
    top.qtbot.waitUntil(top.window.isActiveWindow)
    QTest.keyClick(top.window, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier)
    assert top.job.case.garment == ""
    assert top.page.step == "garment"
    assert top.job.shelf.at_hand() == (first.id,)
    top.fitting.open_kept(top.job.shelf.take(first.id))
    assert top.job.case == first.case
