"""A trainee at the window, who practises. A plugin of the tests beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.desk.app import Desk
from fitdoctor.desk.practice.place import Practise
from fitdoctor.desk.practice.sitting import Sitting
from fitdoctor.desk.window import Window
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.practice.exercise import Choice, Mark, Question
from fitdoctor.practice.scope import read_scope
from fitdoctor.shop import Shop
from tests.desk.reading_chair import Reader


class Trainee(Reader):
    """Opens the place, presses answers, and reads what is said to them."""

    def __init__(self, qtbot: QtBot, window: Window, desk: Desk) -> None:
        super().__init__(window, desk)
        self.qtbot, self._desk = qtbot, desk

    @property
    def practise(self) -> Practise:
        """The place; made when it is first opened."""
        assert self._desk.practise is not None
        return self._desk.practise

    @property
    def sitting(self) -> Sitting:
        return self.practise.sitting

    @property
    def question(self) -> Question:
        question = self.sitting.question
        assert question is not None
        return question

    def sit_down_to_it(self) -> None:
        """By the key of the place."""
        places = [button.place for button in self.window.head.places]
        self.keys(Qt.Key(Qt.Key.Key_1.value + places.index("practise")), Qt.KeyboardModifier.ControlModifier)
        self.wait()

    def wait(self) -> None:
        """Until an exercise is there."""
        self.qtbot.waitUntil(lambda: not self.sitting.busy, timeout=30000)
        self.settle()

    def take_set(self, words: str, seed: str = "4", count: int = 2) -> None:
        """A set, as if it were chosen."""
        self.sitting.start_set(read_scope(self.sitting.knowledge, words), seed, count)
        self.wait()

    def choice(self, mark: Mark) -> str:
        """The letter of an answer of this mark."""
        assert isinstance(self.question, Choice)
        return next(letter for letter, option in zip("abcd", self.question.options, strict=False) if option.mark == mark)

    def press_key(self, text: str) -> None:
        QTest.keyClicks(QApplication.focusWidget() or self.window, text)
        self.settle()

    def shown(self, name: str) -> QWidget:
        widget = self.there(name)
        assert widget is not None, f"{name} is not in sight"
        return widget


MakeTrainee = Callable[..., Trainee]


@pytest.fixture
def school(qtbot: QtBot, knowledge: Knowledge) -> Iterator[MakeTrainee]:
    """Makes a window on the place Practise."""
    made: list[Window] = []

    def make(theme: str = "light", percent: int = 100, size: tuple[int, int] = (1280, 800), **shop: object) -> Trainee:
        window = Window(Shop(theme=theme, text_percent=percent, **shop))  # type: ignore[arg-type]
        qtbot.addWidget(window)
        made.append(window)
        window.resize(*size)
        window.show()
        desk = Desk(window)
        desk.open(knowledge)
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)
        trainee = Trainee(qtbot, window, desk)
        trainee.sit_down_to_it()
        return trainee

    yield make
    for window in made:
        window.close()


@pytest.fixture
def trainee(school: MakeTrainee) -> Trainee:
    return school()
