"""The head: five places side by side, or a menu where they have no room; nothing clipped, all of it by keyboard."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.desk.look import TWO_COLUMNS, look_of
from fitdoctor.desk.parts.head import RunningHead
from fitdoctor.desk.tokens import TARGET

PLACES = (("fit", "Fit a garment"), ("rack", "At the rack"), ("look-up", "Look it up"), ("practise", "Practise"), ("jobs", "Job book"))
WIDTHS, PERCENTS = (960, 1024, 1280, 1920), (100, 110, 125, 150, 175, 200)


class Bench:
    """A head on a window of its own."""

    def __init__(self, qtbot: QtBot, width: int, percent: int) -> None:
        self.window = QWidget()
        qtbot.addWidget(self.window)
        self.head = RunningHead(look_of(dark=False, percent=percent), PLACES)
        self.wanted: list[str] = []
        self.head.placeWanted.connect(self.wanted.append)
        self.head.show_place("look-up")
        column = QVBoxLayout(self.window)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.head)
        column.addStretch(1)
        self.window.setMinimumSize(400, 300)
        self.window.resize(width, 400)
        self.window.show()
        self.window.activateWindow()
        qtbot.waitUntil(self.window.isActiveWindow)
        QApplication.processEvents()

    def shown(self) -> list[QWidget]:
        return [w for w in self.head.findChildren(QWidget) if w.isVisible() and w.objectName()]

    def menu(self) -> QMenu:
        (menu,) = [menu for menu in self.head.findChildren(QMenu, "head-places-menu") if menu.isVisible()]
        return menu


@pytest.fixture
def narrow(qtbot: QtBot) -> Iterator[Bench]:
    bench = Bench(qtbot, 1024, 200)
    yield bench
    bench.window.close()


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("percent", PERCENTS)
def test_all_of_the_head_is_in_sight_at_every_size(qtbot: QtBot, width: int, percent: int) -> None:
    bench = Bench(qtbot, width, percent)
    shown = bench.shown()
    assert [w.objectName() for w in shown if getattr(w, "clipped", lambda: False)()] == []
    right = [w.geometry().right() for w in sorted(shown, key=lambda w: w.x())]
    left = [w.x() for w in sorted(shown, key=lambda w: w.x())]
    assert all(before < after for before, after in zip(right, left[1:], strict=False)), "parts lie over one another"
    assert right[-1] < bench.head.width()
    assert bench.head.settings.isVisible()
    assert all(w.height() >= TARGET - 2 for w in shown if w.focusPolicy() & Qt.FocusPolicy.TabFocus)


@pytest.mark.parametrize("percent", PERCENTS)
def test_the_places_are_a_menu_under_48_em(qtbot: QtBot, percent: int) -> None:
    for width in WIDTHS:
        bench = Bench(qtbot, width, percent)
        side_by_side = [button.isVisible() for button in bench.head.places]
        assert len(set(side_by_side)) == 1
        assert bench.head.menu.isVisible() != side_by_side[0]
        if width < bench.head.look.px(TWO_COLUMNS):
            assert bench.head.menu.isVisible()
    roomy = Bench(qtbot, 1280, 100)
    assert roomy.head.places[0].isVisible()


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Space, Qt.Key.Key_Down])
def test_the_menu_opens_by_key_on_the_place_that_is_open(narrow: Bench, key: Qt.Key) -> None:
    narrow.head.menu.setFocus()
    QTest.keyClick(narrow.head.menu, key)
    menu = narrow.menu()
    assert menu.activeAction().objectName() == "head-places-look-up"
    assert [[word.strip() for word in action.text().split("\t")] for action in menu.actions()] == [
        [title, f"Ctrl {n}"] for n, (_, title) in enumerate(PLACES, 1)
    ]
    menu.close()


def test_arrows_and_enter_choose_a_place_and_escape_leaves_the_menu(narrow: Bench) -> None:
    narrow.head.menu.setFocus()
    QTest.keyClick(narrow.head.menu, Qt.Key.Key_Down)
    QTest.keyClick(narrow.menu(), Qt.Key.Key_Down)
    QTest.keyClick(narrow.menu(), Qt.Key.Key_Return)
    assert narrow.wanted == ["practise"]
    QTest.keyClick(narrow.head.menu, Qt.Key.Key_Down)
    menu = narrow.menu()
    QTest.keyClick(menu, Qt.Key.Key_Escape)
    assert not menu.isVisible()
    assert narrow.wanted == ["practise"]
    assert narrow.window.focusWidget() is narrow.head.menu


def test_the_menu_says_which_place_is_open(narrow: Bench) -> None:
    assert narrow.head.menu.accessibleName() == "All places; open is Look it up"
    narrow.head.show_place("settings")
    assert narrow.head.menu.words == "Places"
    assert narrow.head.settings.isChecked()


def test_the_focus_goes_over_to_the_menu_when_the_places_fold(qtbot: QtBot) -> None:
    bench = Bench(qtbot, 1280, 100)
    bench.head.places[2].setFocus()
    bench.window.resize(700, 400)
    QApplication.processEvents()
    assert bench.window.focusWidget() is bench.head.menu


def test_settings_are_reached_by_the_mouse_and_by_tab(qtbot: QtBot) -> None:
    bench = Bench(qtbot, 1280, 100)
    QTest.mouseClick(bench.head.settings, Qt.MouseButton.LeftButton)
    assert bench.wanted == ["settings"]
    bench.head.places[2].setFocus()
    stops = []
    for _ in range(3):
        QTest.keyClick(bench.window.focusWidget(), Qt.Key.Key_Tab)
        stops.append(bench.window.focusWidget().objectName())
    assert stops[:2] == ["head-find", "head-place-settings"]
