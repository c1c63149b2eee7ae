"""A buyer at a rail of second-hand clothes. A plugin of the tests beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.case import Case
from fitdoctor.desk.fitting import Fitting
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.rack.place import AtTheRack
from fitdoctor.desk.shelf import Kept, Shelf
from fitdoctor.desk.window import Window
from fitdoctor.jobbook.book import open_book
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.question import RackQuestion
from fitdoctor.shop import Shop

BRITISH = QLocale("en_GB")
Policy = Callable[[RackQuestion], str]


class Buyer:
    """Presses keys and what is on the page, by name, and reads it."""

    def __init__(self, qtbot: QtBot, window: Window, job: Job) -> None:
        self.qtbot, self.window, self.job = qtbot, window, job
        self.fitting = Fitting(window, job)
        self.rack = AtTheRack(window, job, BRITISH)
        self.hand = self.rack.hand

    def settle(self) -> None:
        """Wait until all is worked out and laid out."""
        self.qtbot.waitUntil(lambda: not self.hand.thinker.busy, timeout=20_000)
        for _ in range(6):
            QApplication.processEvents()

    def come(self) -> None:
        self.window.placeWanted.emit("rack")
        self.settle()

    def there(self, name: str) -> QWidget | None:
        return next((w for w in self.window.findChildren(QWidget, name) if w.isVisible()), None)

    def press(self, name: str) -> None:
        """Press what may lie below the edge of the window."""
        widget = self.there(name)
        assert isinstance(widget, QAbstractButton), f"nothing to press is called {name}"
        widget.click()
        self.settle()

    def click(self, name: str) -> None:
        """Press with the mouse."""
        widget = self.there(name)
        assert isinstance(widget, QAbstractButton), f"nothing to press is called {name}"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
        self.settle()

    def key(self, key: Qt.Key, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        QTest.keyClick(QApplication.focusWidget() or self.window, key, held)
        self.settle()

    def type(self, text: str) -> None:
        focus = QApplication.focusWidget()
        assert focus is not None
        QTest.keyClicks(focus, text)
        self.settle()

    def focus(self) -> str:
        focus = QApplication.focusWidget()
        return focus.objectName() if focus else ""

    def tab_to(self, name: str) -> None:
        """Go on with the Tab key until the focus is there."""
        for _ in range(60):
            if self.focus() == name:
                return
            self.key(Qt.Key.Key_Tab)
        raise AssertionError(f"Tab never comes to {name}")

    def said(self, name: str) -> str:
        words = self.there(name)
        assert isinstance(words, Words), f"nothing is said under {name}"
        return words.said()

    def text(self, name: str, text: str) -> None:
        """Type into a field in place of what stands there."""
        field = self.there(name)
        assert isinstance(field, QLineEdit), f"nothing to type in is called {name}"
        field.setFocus()
        field.selectAll()
        QTest.keyClicks(field, text) if text else QTest.keyClick(field, Qt.Key.Key_Delete)
        self.settle()

    def describe(self, kind: str, price: str, worth: str, title: str = "") -> None:
        self.press(f"rack-kind-{kind}")
        self.text("rack-price", price)
        self.text("rack-worth", worth)
        if title:
            self.text("rack-name", title)

    def look_at(self, kind: str, price: str, worth: str, title: str = "") -> None:
        """Describe a garment and begin."""
        self.describe(kind, price, worth, title)
        self.press("rack-go")

    def question(self) -> RackQuestion:
        question = self.hand.question()
        assert question is not None, "nothing is asked"
        return question

    def answer(self, value: str) -> None:
        self.press(f"rack-answer-{value}")

    @staticmethod
    def nothing_else(question: RackQuestion) -> str:
        """What someone says to whom nothing shows and who can tell nothing."""
        return "no" if question.kind == "side" else "not-known"

    def see(self, words: str, symptom: str) -> None:
        """Note what shows, by the find field."""
        self.press("rack-see")
        self.text("rack-see-find", words)
        self.press(f"rack-see-{symptom}")

    def go_on(self, policy: Policy) -> str:
        """Answer until nothing is asked any more; the decision."""
        for _ in range(40):
            question = self.hand.question()
            if question is None:
                return self.said("rack-decision")
            self.answer(policy(question))
        raise AssertionError("it never stops asking")


MakeBuyer = Callable[..., Buyer]


@pytest.fixture
def at_the_rail(qtbot: QtBot, knowledge: Knowledge, tmp_path: Path) -> Iterator[MakeBuyer]:
    """Makes a window at the rack; a second one finds what the first one kept."""
    made: list[Window] = []
    with open_book(tmp_path / "jobs.db") as book:

        def make(look: Look | None = None, size: tuple[int, int] = (1280, 800), shop: Shop | None = None) -> Buyer:
            window = Window(Shop(), look or look_of(dark=False))
            qtbot.addWidget(window)
            window.resize(*size)
            window.show()
            window.activateWindow()
            qtbot.waitUntil(window.isActiveWindow)
            made.append(window)
            buyer = Buyer(qtbot, window, Job(knowledge, shop or Shop(), Shelf(book), Kept(case=Case(garment=""))))
            buyer.come()
            return buyer

        yield make
        for window in made:
            window.close()


@pytest.fixture
def buyer(at_the_rail: MakeBuyer) -> Buyer:
    return at_the_rail()
