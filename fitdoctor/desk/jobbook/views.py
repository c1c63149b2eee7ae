"""The pages of the job book that look back: the history of a job, a photo in large, the figures with what is learned."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QSize
from PySide6.QtWidgets import QFileDialog

from fitdoctor.desk.jobbook.changes import Changes
from fitdoctor.desk.jobbook.figures_page import FiguresPage
from fitdoctor.desk.jobbook.history_page import HistoryPage
from fitdoctor.desk.jobbook.lines import title_of
from fitdoctor.desk.jobbook.photo_page import PhotoPage
from fitdoctor.desk.jobbook.view import View
from fitdoctor.desk.words import count, tr
from fitdoctor.jobbook.figures import figures
from fitdoctor.jobbook.job import Photo
from fitdoctor.jobbook.lessons import minutes_by_operation
from fitdoctor.jobbook.overlay import export_overlay


class Views(QObject):
    """Listens to the page of the job book and shows its own."""

    def __init__(self, changes: Changes) -> None:
        super().__init__(changes)
        self.changes, self.place = changes, changes.place
        self.window, self.job = self.place.window, self.place.job
        self.window.fills.append(self.fill)
        self.fill()

    def fill(self) -> None:
        """Listen to the page that is in the window now."""
        page = self.place.page
        page.one.wanted.connect(lambda want: self._show(self._history) if want == "history" else None)
        page.wanted.connect(lambda want: self._show(self._figures) if want == "figures" else None)
        page.photoOpened.connect(lambda photo: self._show(partial(self._photo, photo)))

    def _show(self, make: Callable[[], View]) -> None:
        with self.place.said():
            self.place.show_view(make)

    # ---- looking back

    def _history(self) -> View:
        chosen = self.place.chosen()
        return HistoryPage(self.window.look, self.job, title_of(self.job.knowledge, chosen.job), chosen.readings)

    def _photo(self, photo: Photo) -> View:
        room = QSize(self.window.width() - 100, max(240, self.window.height() - self.window.look.px(16)))
        page = PhotoPage(self.window.look, self.job, photo, self.place.book.photos.path(photo), room)
        page.deleteMeant.connect(lambda: self._remove(photo))
        return page

    def _remove(self, photo: Photo) -> None:
        with self.place.said():
            self.place.book.remove_photo(self.place.id, photo)
        self.place.back()

    # ---- figures and learning

    def _figures(self) -> View:
        learning = self.place.book.learning
        found = figures(self.place.book)
        teaching = len(learning.jobs())
        page = FiguresPage(self.window.look, self.job, found, learning.on, teaching, learning.forgotten())
        page.switched.connect(self.switch)
        page.wanted.connect(self._do)
        return page

    def _do(self, want: str) -> None:
        {"reset": self.reset, "restore": self.restore, "overlay": self._ask_folder}[want]()

    def switch(self, on: bool) -> None:
        """Use what was learned, or the printed chances alone."""
        with self.place.said():
            self.place.book.learning.switch(on)
            self.job.look_again()

    def reset(self) -> None:
        """Let the jobs closed so far teach no more."""
        with self.place.said():
            number = self.place.book.learning.reset()
            self._learned_anew(count(number, "1 job teaches no more.", "{number} jobs teach no more."))

    def restore(self) -> None:
        """Let every closed job teach again."""
        with self.place.said():
            number = self.place.book.learning.restore()
            self._learned_anew(count(number, "1 job teaches again.", "{number} jobs teach again."))

    def _learned_anew(self, said: str) -> None:
        self.job.look_again()
        self._show(self._figures)
        self.window.message.say(said, error=False)

    def _ask_folder(self) -> None:
        path, _ = QFileDialog.getSaveFileName(self.window, tr("Write what was learned into a new folder"), "learned")
        if path:
            self.write_overlay(Path(path))

    def write_overlay(self, folder: Path) -> None:
        """Write what was learned as entries that lie over the handbook, into a new folder."""
        with self.place.said():
            book, know = self.place.book, self.job.knowledge
            jobs = book.learning.jobs()
            written = export_overlay(know, book.learning.learned(know), minutes_by_operation(jobs), folder)
            said = count(len(written), "1 entry written to {folder}.", "{number} entries written to {folder}.", folder=folder)
            self.window.message.say(said, error=False)
