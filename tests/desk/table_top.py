"""A desk for the tests: the window with the demo of the wardrobe room on it. A plugin of the tests beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TypeVar

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.case import Case
from fitdoctor.desk.first import kept_from_file
from fitdoctor.desk.fitting import Fitting
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.pages.page import Page
from fitdoctor.desk.shelf import Kept, Shelf
from fitdoctor.desk.window import Window
from fitdoctor.jobbook.book import open_book
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import demo_files
from fitdoctor.shop import Shop

W = TypeVar("W", bound=QWidget)
DEMO = {"dress": 0, "trousers": 1, "jacket": 2}


class TableTop:
    """A window with a job in it, and short ways to what is on it."""

    def __init__(self, qtbot: QtBot, window: Window, job: Job) -> None:
        self.qtbot, self.window, self.job = qtbot, window, job
        self.fitting = Fitting(window, job)

    @property
    def page(self) -> Page:
        """The page in hand."""
        return self.fitting.page()

    def settle(self) -> None:
        """Let work and layouts come to rest."""
        self.qtbot.waitUntil(lambda: not self.window.at_work.busy)
        for _ in range(6):
            QApplication.processEvents()

    def go(self, step: str) -> Page:
        """Open a step."""
        self.job.go_to(step)
        self.settle()
        return self.page

    def find(self, kind: type[W], name: str) -> W:
        """The one visible widget of this name."""
        found = [w for w in self.window.findChildren(kind, name) if w.isVisible()]
        assert len(found) == 1, f"{len(found)} visible widgets are called {name}"
        return found[0]

    def click(self, name: str) -> None:
        """Press something by its name."""
        QTest.mouseClick(self.find(QAbstractButton, name), Qt.MouseButton.LeftButton)
        self.settle()


MakeTable = Callable[..., TableTop]


@pytest.fixture
def shelf(tmp_path: Path) -> Iterator[Shelf]:
    with open_book(tmp_path / "jobs.db") as book:
        yield Shelf(book)


@pytest.fixture
def table(qtbot: QtBot, knowledge: Knowledge, shelf: Shelf) -> Iterator[MakeTable]:
    """Makes a window on a garment of the demo, or on a new one."""
    made: list[Window] = []

    def make(which: str = "trousers", look: Look | None = None, size: tuple[int, int] = (1280, 800)) -> TableTop:
        new = Kept(case=Case(garment=""))
        kept = kept_from_file(knowledge, demo_files()[DEMO[which]]) if which in DEMO else new
        window = Window(Shop(), look or look_of(dark=False))
        qtbot.addWidget(window)
        window.resize(*size)
        window.show()
        made.append(window)
        top = TableTop(qtbot, window, Job(knowledge, Shop(), shelf, kept))
        top.settle()
        return top

    yield make
    for window in made:
        window.close()
