"""Someone at the counter with the job book open. A plugin of the tests beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TypeVar

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QMenu, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.desk.app import Desk
from fitdoctor.desk.jobbook.place import JobBookPlace
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.window import Window
from fitdoctor.jobbook.book import JobBook
from fitdoctor.jobbook.job import Job
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop

W = TypeVar("W", bound=QWidget)
CONTROL, NONE = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.NoModifier


class Counter:
    """Presses keys and what is on the page, by name, and reads it."""

    def __init__(self, qtbot: QtBot, window: Window, desk: Desk) -> None:
        assert desk.job_book is not None
        assert desk.fitting is not None
        self.qtbot, self.window, self.fitting = qtbot, window, desk.fitting
        self.place: JobBookPlace = desk.job_book

    @property
    def book(self) -> JobBook:
        return self.place.book

    @property
    def chosen(self) -> Job:
        return self.book.job(self.place.id)

    def settle(self) -> None:
        for _ in range(6):
            QApplication.processEvents()

    def activate(self) -> None:
        self.window.activateWindow()
        self.qtbot.waitUntil(self.window.isActiveWindow)

    def open(self) -> None:
        self.window.placeWanted.emit("job-book")
        self.settle()

    def keys(self, key: Qt.Key, held: Qt.KeyboardModifier = NONE) -> None:
        QTest.keyClick(QApplication.focusWidget() or self.window, key, held)
        self.settle()

    def type_in(self, text: str) -> None:
        focus = QApplication.focusWidget()
        assert focus is not None
        QTest.keyClicks(focus, text)
        self.settle()

    def focus(self) -> str:
        focus = QApplication.focusWidget()
        return focus.objectName() if focus else ""

    def tab_to(self, name: str) -> None:
        """Press Tab until the focus is there."""
        for _ in range(120):
            if self.focus() == name:
                return
            self.keys(Qt.Key.Key_Tab)
        raise AssertionError(f"Tab never comes to {name}")

    def there(self, name: str) -> QWidget | None:
        return next((w for w in self.window.findChildren(QWidget, name) if w.isVisible()), None)

    def find(self, kind: type[W], name: str) -> W:
        widget = self.there(name)
        assert isinstance(widget, kind), f"no {kind.__name__} is called {name}"
        return widget

    def press(self, name: str) -> None:
        """Press what may lie below the edge of the window."""
        self.find(QAbstractButton, name).click()
        self.settle()

    def click(self, name: str) -> None:
        QTest.mouseClick(self.find(QAbstractButton, name), Qt.MouseButton.LeftButton)
        self.settle()

    def pick(self, name: str, value: str) -> None:
        """Take a value from the list that a pick opens."""
        self.press(name)
        menu = self.window.findChild(QMenu, f"{name}-menu")
        assert isinstance(menu, QMenu)
        next(action for action in menu.actions() if action.objectName() == f"{name}-{value}").trigger()
        menu.close()
        self.settle()
        self.activate()

    def menu_keys(self, name: str, *keys: Qt.Key) -> None:
        """Press keys in the list that a pick has opened."""
        menu = self.window.findChild(QMenu, f"{name}-menu")
        assert isinstance(menu, QMenu)
        for key in keys:
            QTest.keyClick(menu, key)
        self.settle()
        self.activate()

    def write(self, name: str, text: str) -> None:
        """Type into a field in place of what stands there."""
        field = self.find(QLineEdit, name)
        field.setFocus()
        field.selectAll()
        QTest.keyClicks(field, text)
        self.settle()

    def said(self, name: str) -> str:
        return self.find(Words, name).said()

    def rows(self) -> list[str]:
        """The titles in the list, from the top."""
        return [row.words.title for row in self.place.page.list.rows]


MakeCounter = Callable[..., Counter]


@pytest.fixture
def at_the_counter(qtbot: QtBot, knowledge: Knowledge) -> Iterator[MakeCounter]:
    made: list[Window] = []

    def make(look: Look | None = None, size: tuple[int, int] = (1280, 800)) -> Counter:
        window = Window(Shop(theme="light"), look)
        window.resize(*size)
        qtbot.addWidget(window)
        made.append(window)
        window.show()
        desk = Desk(window)
        desk.open(knowledge)
        counter = Counter(qtbot, window, desk)
        counter.activate()
        counter.open()
        return counter

    yield make
    for window in made:
        window.close()


@pytest.fixture
def counter(at_the_counter: MakeCounter) -> Counter:
    return at_the_counter()
