"""Someone who looks something up in the middle of a job. A plugin of the tests beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.desk.app import Desk
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.window import Window
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop


class Reader:
    """Presses keys and what is on the page, by name, and reads it."""

    def __init__(self, window: Window, desk: Desk) -> None:
        assert desk.look_up is not None
        assert desk.fitting is not None
        self.window, self.fitting, self.look_up = window, desk.fitting, desk.look_up

    def settle(self) -> None:
        for _ in range(6):
            QApplication.processEvents()

    def keys(self, key: Qt.Key, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        QTest.keyClick(QApplication.focusWidget() or self.window, key, held)
        self.settle()

    def type(self, text: str) -> None:
        focus = QApplication.focusWidget()
        assert focus is not None
        QTest.keyClicks(focus, text)
        self.settle()

    def there(self, name: str) -> QWidget | None:
        return next((w for w in self.window.findChildren(QWidget, name) if w.isVisible()), None)

    def click(self, name: str) -> None:
        widget = self.there(name)
        assert isinstance(widget, QAbstractButton), f"nothing to press is called {name}"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
        self.settle()

    def press(self, name: str) -> None:
        """Press what may lie below the edge of the window."""
        widget = self.there(name)
        assert isinstance(widget, QAbstractButton), f"nothing to press is called {name}"
        widget.click()
        self.settle()

    def said(self, name: str) -> str:
        words = self.there(name)
        assert isinstance(words, Words), f"nothing is said under {name}"
        return words.said()

    def all_said(self) -> str:
        page = self.there("look-up-page")
        assert page is not None
        return "\n".join(words.said() for words in page.findChildren(Words))

    def open(self) -> None:
        self.keys(Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
        field = QApplication.focusWidget()
        assert isinstance(field, QLineEdit)
        assert field.objectName() == "look-up-field"


MakeReader = Callable[..., Reader]


@pytest.fixture
def sit_down(qtbot: QtBot, knowledge: Knowledge) -> Iterator[MakeReader]:
    made: list[Window] = []

    def make(theme: str = "light", percent: int = 100) -> Reader:
        window = Window(Shop(theme=theme, text_percent=percent))  # type: ignore[arg-type]
        qtbot.addWidget(window)
        made.append(window)
        window.show()
        desk = Desk(window)
        desk.open(knowledge)
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)
        return Reader(window, desk)

    yield make
    for window in made:
        window.close()


@pytest.fixture
def reader(sit_down: MakeReader) -> Reader:
    return sit_down()
