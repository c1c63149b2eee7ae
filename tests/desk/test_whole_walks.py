"""The nine situations walked in the window with real clicks and keys, from a new garment to the written sheet."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.assess import Assessment
from fitdoctor.desk.app import Desk
from fitdoctor.desk.figure_view import FigureView
from fitdoctor.desk.fitting import Fitting
from fitdoctor.desk.window import Window
from fitdoctor.knowledge.entries import SolvedCase
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop

SITUATIONS = [
    "slacks-level-folds-set-on-band",
    "mens-trousers-level-folds-and-wide-hip",
    "trousers-too-long-cuffed",
    "fold-below-collar-square-shoulders",
    "back-darts-too-deep",
    "back-neck-stands-away",
    "shoulders-too-wide-smooth-sleeve",
    "jacket-sleeve-one-inch-short",
    "back-waist-too-big-no-vent",
]


class Walker:
    """A person at the window: clicks and types by the names of things."""

    def __init__(self, qtbot: QtBot, window: Window, fitting: Fitting) -> None:
        self.qtbot, self.window, self.fitting = qtbot, window, fitting

    def settle(self) -> None:
        self.qtbot.waitUntil(lambda: not self.window.at_work.busy)
        for _ in range(3):
            QApplication.processEvents()

    def there(self, name: str) -> QWidget | None:
        found = [w for w in self.window.findChildren(QWidget, name) if w.isVisible()]
        return found[0] if found else None

    def click(self, name: str) -> None:
        widget = self.there(name)
        assert isinstance(widget, QAbstractButton), f"nothing to press is called {name}"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
        self.settle()

    def type(self, name: str, text: str) -> None:
        field = self.there(name)
        assert isinstance(field, QLineEdit), f"no field is called {name}"
        field.setFocus()
        field.selectAll()
        QTest.keyClicks(field, text)
        QTest.keyClick(field, Qt.Key.Key_Return)
        self.settle()

    def turn_to(self, number: int) -> None:
        QTest.keyClick(self.window, Qt.Key(Qt.Key.Key_0.value + number), Qt.KeyboardModifier.AltModifier)
        self.settle()

    def point_at(self, zone: str) -> None:
        """Click a place of the drawn garment."""
        figure = self.fitting.pages["shows"].findChild(FigureView, "shows-figure")
        assert isinstance(figure, FigureView)
        for y in range(4, figure.height(), 6):
            for x in range(4, figure.width(), 6):
                at = QPoint(x, y)
                if figure.zone_at(figure.mapToScene(at)) == zone and not figure.symptom_at(figure.mapToScene(at)):
                    QTest.mouseClick(figure.viewport(), Qt.MouseButton.LeftButton, pos=at)
                    self.settle()
                    return
        raise AssertionError(f"the place {zone} cannot be pointed at")

    # ---- the seven pages

    def new_garment(self, case: SolvedCase) -> None:
        self.window.activateWindow()
        self.qtbot.waitUntil(self.window.isActiveWindow)
        QTest.keyClick(self.window, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier)
        self.settle()
        self.click(f"garment-kind-{case.garment}")
        self.type("garment-name", case.title)
        for fact, value in case.facts.items():
            if self.there(f"garment-fact-{fact}-{value}") is None:
                self.click("garment-facts-more")
            self.click(f"garment-fact-{fact}-{value}")

    def note(self, knowledge: Knowledge, case: SolvedCase) -> None:
        self.turn_to(2)
        for id_ in case.seen:
            symptom = knowledge.symptoms[id_]
            self.click(f"shows-view-{symptom.view}")
            self.point_at(symptom.zone)
            if self.there(f"shows-line-{id_}") is None:
                self.click("shows-more")
            self.click(f"shows-line-{id_}")
        for view in case.looked:
            self.click(f"shows-view-{view}")
            self.click("shows-over")

    def answer(self, case: SolvedCase) -> None:
        """Answer what is asked as the case says, until its own checks are all answered."""
        self.turn_to(3)
        left = dict(case.answers)
        for _ in range(40):
            job = self.fitting.job
            asked = [ask.id for ask in (job.assessment.next if job.assessment else ())]
            ready = next((id_ for id_ in asked if id_ in left), None)
            if not left or not asked:
                break
            if ready and ready != asked[0]:
                if self.there(f"narrow-other-{ready}") is None:
                    self.click("narrow-others-more")
                self.click(f"narrow-other-{ready}")
            self.click(f"narrow-answer-{left.pop(ready) if ready else 'not-known'}")
        assert not left, f"never asked: {left}"

    def no_other_window_came_up(self) -> None:
        """A part shown before it has its place flashes as a window of its own and takes the keyboard away."""
        assert self.window.isActiveWindow()

    def measure(self, case: SolvedCase) -> None:
        self.turn_to(4)
        for id_, length in case.measured.items():
            if self.there(f"measure-list-{id_}") is None:
                continue
            self.click(f"measure-list-{id_}")
            self.type(f"measure-{id_}-field", length)
            if self.there(f"measure-{id_}-sense-all"):
                self.click(f"measure-{id_}-sense-all")

    def assessment(self) -> Assessment:
        found = self.fitting.job.assessment
        assert found is not None
        return found


@pytest.fixture
def walker(qtbot: QtBot, knowledge: Knowledge) -> Iterator[Walker]:
    window = Window(Shop(theme="light"))
    qtbot.addWidget(window)
    window.resize(1280, 800)
    window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    desk = Desk(window)
    desk.open(knowledge)
    assert desk.fitting is not None
    yield Walker(qtbot, window, desk.fitting)
    window.close()


@pytest.mark.parametrize("situation", SITUATIONS)
def test_a_situation_is_walked_from_the_sight_to_the_written_sheet(
    situation: str, walker: Walker, knowledge: Knowledge, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    case = knowledge.cases[situation]
    walker.new_garment(case)
    walker.note(knowledge, case)
    walker.answer(case)
    walker.measure(case)
    walker.no_other_window_came_up()
    found = walker.assessment()
    assert set(case.expect.causes) <= set(found.treat)
    walker.turn_to(5)
    assert found.verdict.level in case.expect.verdict
    said = walker.there("done-verdict-words")
    assert said is not None
    assert found.verdict.words in said.accessibleName() or found.verdict.words in getattr(said, "text", str)()
    walker.turn_to(6)
    rows = [w for w in walker.window.findChildren(QWidget) if w.objectName().startswith("plan-step-") and w.isVisible()]
    assert len(rows) >= len(found.plan.operations)
    walker.turn_to(7)
    target = tmp_path / "sheet.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    walker.click("sheet-save-html")
    assert escape(case.title).replace("&#x27;", "&#39;") in target.read_text()
