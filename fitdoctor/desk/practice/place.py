"""Practise: keeps the window and the sitting in step."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QKeyEvent
from PySide6.QtWidgets import QFileDialog, QStackedWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.pages.page import Page
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.practice.exercise_page import ExercisePage
from fitdoctor.desk.practice.results_page import ResultsPage
from fitdoctor.desk.practice.set_page import SetPage
from fitdoctor.desk.practice.sitting import Sitting
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.window import Window
from fitdoctor.desk.words import count, tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.practice.keeping import practice_file
from fitdoctor.practice.results import write_results
from fitdoctor.practice.scope import Scope

PLACE = "practise"
Key = tuple[str, str]


class Practise(QObject):
    """The place in the window."""

    def __init__(self, window: Window, job: Job, read: Callable[[Key], None], kept: Path | None = None) -> None:
        """`read` opens a page of the handbook; answers are kept in `kept`, the user's own file if left out."""
        super().__init__(window)
        self.window, self.job, self._read = window, job, read
        self.sitting = Sitting(job.knowledge, window.shop, kept or practice_file())
        self._sheet = "exercise"
        self._asked: object = None
        self.sitting.changed.connect(self.show)
        self.sitting.failed.connect(window.say)
        window.placeWanted.connect(lambda place: self.open() if place == PLACE else None)
        window.keyTyped.connect(lambda text: self._open() and self.page().take_key(text))
        window.fills.append(self.fill)
        self.fill()

    def fill(self) -> None:
        """Put the pages into the window, in its look."""
        look = self.window.look
        self.sitting.blockSignals(True)  # the pages that would show it are only now built
        self.sitting.take(self.job.knowledge, self.window.shop)
        self.sitting.blockSignals(False)
        self.exercise = ExercisePage(look, self.job, self.sitting)
        self.results, self.set = ResultsPage(look, self.job, self.sitting), SetPage(look, self.job)
        self.stack = _Stack(self)
        lay_on(self.stack, look, "paper")
        for page in (self.exercise, self.results, self.set):
            self.stack.addWidget(page)
        self.window.pages.addWidget(self.stack)
        self._listen()
        self._asked = None
        self._show_page()

    def _listen(self) -> None:
        sitting = self.sitting
        self.exercise.answered.connect(sitting.answer)
        self.exercise.onWanted.connect(sitting.go_on)
        self.exercise.moreWanted.connect(lambda: sitting.practise(Scope()))
        self.exercise.pageWanted.connect(self.read)
        self.exercise.margin.pairWanted.connect(sitting.practise_pair)
        self.exercise.margin.setWanted.connect(lambda: self.turn_to("set"))
        self.exercise.margin.resultsWanted.connect(lambda: self.turn_to("results"))
        self.results.left.connect(lambda: self.turn_to("exercise"))
        self.results.saveWanted.connect(self.ask_and_save)
        self.set.left.connect(lambda: self.turn_to("exercise"))
        self.set.started.connect(self._start_set)

    # ---- what is shown

    def page(self) -> Page:
        """The page that is open."""
        pages: dict[str, Page] = {"exercise": self.exercise, "results": self.results, "set": self.set}
        return pages[self._sheet]

    def open(self) -> None:
        """Come here, with the focus on the first answer."""
        self.window.show_place(PLACE, self.stack)
        if self.sitting.note:
            self.window.message.say(self.sitting.note, error=False)
            self.sitting.note = ""
        self.sitting.start()
        self._show_page()
        self.page().focus_first(Qt.FocusReason.OtherFocusReason)

    def turn_to(self, sheet: str) -> None:
        """Show another page of the place."""
        self._sheet = sheet
        self._show_page()
        self.page().focus_first(Qt.FocusReason.OtherFocusReason)

    def show(self) -> None:
        """Show the sitting as it is now; the focus goes to what is to be done now."""
        if not self._open():
            return
        focus = self.window.focusWidget()
        keyed = isinstance(focus, Control) and focus.ringed
        self._show_page()
        now = (self.sitting.question, self.sitting.feedback, self.sitting.finished)
        if now != self._asked:
            self._asked = now
            self.page().focus_first(Qt.FocusReason.TabFocusReason if keyed else Qt.FocusReason.OtherFocusReason)
            self._say_aloud()

    def _show_page(self) -> None:
        page = self.page()
        with page.focus_kept():
            page.show_job()
        self.stack.setCurrentWidget(page)

    def _say_aloud(self) -> None:
        """Say what the answer was worth to those who do not see it."""
        if self.sitting.feedback is not None:
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.stack, self.sitting.feedback.headline))

    def _open(self) -> bool:
        return self.window.place == PLACE

    def escape(self) -> None:
        """Back to the exercises."""
        if self._sheet != "exercise":
            self.turn_to("exercise")

    # ---- going on

    def _start_set(self, scope: Scope, seed: str, number: int) -> None:
        self._sheet = "exercise"
        self.sitting.start_set(scope, seed, number)

    def read(self, key: Key) -> None:
        """Open a page of the handbook; Escape there leads back here."""
        self.window.placeWanted.emit("look-up")
        self._read(key)

    def ask_and_save(self) -> None:
        """Save the answers as a table through the system's dialog."""
        dialog = QFileDialog(self.window, tr("Save the answers"), "", tr("Table (*.csv)"))
        dialog.setObjectName("practise-save-dialog")
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix("csv")
        dialog.selectFile("practice.csv")
        dialog.fileSelected.connect(lambda path: self.save(Path(path)))
        dialog.open()

    def save(self, path: Path) -> None:
        """Write the answers as a table, and say so."""
        answers = self.sitting.record.answers
        try:
            write_results(answers, path)
        except FitdoctorError as error:
            self.window.say(error)
            return
        written = count(len(answers), "1 answer written to {path}.", "{number} answers written to {path}.", path=path)
        self.window.message.say(written, error=False)


class _Stack(QStackedWidget):
    """The pages of the place; Escape goes back to the exercise."""

    def __init__(self, place: Practise) -> None:
        super().__init__()
        self._place = place
        self.setObjectName("page-practise-place")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self._place.escape()
        else:
            super().keyPressEvent(event)
