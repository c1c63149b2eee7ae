"""The job book as a place: keeps the page in step with the book, and follows what other windows change."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date

from PySide6.QtCore import QObject, Qt, QTimer

from fitdoctor.assess import Assessment, assess
from fitdoctor.case import Case
from fitdoctor.desk.fitting import Fitting
from fitdoctor.desk.jobbook.lines import RowWords, row_words
from fitdoctor.desk.jobbook.one_look import Chosen
from fitdoctor.desk.jobbook.page import JobBookPage
from fitdoctor.desk.jobbook.photos import PhotoStrip
from fitdoctor.desk.jobbook.trouble import way_out
from fitdoctor.desk.jobbook.view import View
from fitdoctor.desk.shelf import Kept, Shelf
from fitdoctor.desk.window import Window
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import JobBook
from fitdoctor.jobbook.finding import Line, Sought, find
from fitdoctor.jobbook.job import Job as BookJob

PLACE = "job-book"
LOOK_AGAIN_MS = 2000
FIRST_SHOWN = 40


class JobBookPlace(QObject):
    """Shows the list and the chosen job."""

    def __init__(self, window: Window, fitting: Fitting) -> None:
        super().__init__(window)
        self.window, self.fitting, self.job = window, fitting, fitting.job
        self.sought = Sought(order="changed", backwards=True)
        self.id, self._most, self._state = "", FIRST_SHOWN, -1
        self._from = "fit"
        self._make: Callable[[], View] | None = None
        self._view: View | None = None
        self._rows: tuple[RowWords, ...] = ()
        self._timer = QTimer(self)
        self._timer.setInterval(LOOK_AGAIN_MS)
        self._timer.timeout.connect(self.look_again)
        self._timer.start()
        window.placeWanted.connect(lambda place: self.open() if place == PLACE else None)
        window.closed.connect(self.leave_the_book)
        window.fills.append(self.fill)
        self.fill()

    @property
    def shelf(self) -> Shelf:
        """The shelf the garments stand on."""
        return self.job.shelf

    @property
    def book(self) -> JobBook:
        """The open book.

        Raises:
            FitdoctorError: it could not be opened.
        """
        return self.shelf.opened()

    def fill(self) -> None:
        """Put the page into the window, in its look."""
        self._view = None
        self.page = page = JobBookPage(self.window.look, self.job, self.sought)
        self.window.pages.addWidget(page)
        page.list.soughtChanged.connect(self._seek)
        page.list.moreWanted.connect(self._show_more)
        page.list.came.connect(self.choose)
        page.list.pressed.connect(self._press_row)
        page.list.opened.connect(self._open_row)
        for part in (page, page.list):
            part.left.connect(self.leave)
        page.wanted.connect(lambda want: self.window.newWanted.emit() if want == "new" else None)
        page.form.done.connect(page.changed)
        self._rows = ()
        self.refresh()

    # ---- coming and going

    def open(self) -> None:
        """Come here; the garment in hand is the chosen one."""
        if self.window.place != PLACE:
            self._from = self.window.place
            self.id = self.id if self._make else self.job.kept.id or self.id
        else:
            self._make = None
        if self._make:
            self.show_view(self._make)
        else:
            self.back()

    def back(self) -> None:
        """Show the list, with the focus on the chosen job."""
        self._make = None
        self.refresh()
        self.window.show_place(PLACE, self.page)
        self.page.focus_first(Qt.FocusReason.ShortcutFocusReason)
        self._drop_view()

    def show_view(self, make: Callable[[], View]) -> None:
        """Show a page beside the list; it is made anew after every rebuilding of the window."""
        self._make = make
        view = make()
        view.back.connect(self.back)
        self.window.pages.addWidget(view)
        self.window.show_place(PLACE, view)
        view.focus_first(Qt.FocusReason.ShortcutFocusReason)
        self._drop_view()
        self._view = view

    def _drop_view(self) -> None:
        if self._view:
            self.window.pages.removeWidget(self._view)
            self._view.deleteLater()
            self._view = None

    def leave(self) -> None:
        """Go back to where one was."""
        self.window.placeWanted.emit(self._from)

    def leave_the_book(self) -> None:
        """The window closes: note what is thought of the garment in hand, and give the file back."""
        self._timer.stop()
        self.job.put_down()
        book, self.shelf.book = self.shelf.book, None
        if book:
            book.file.close()

    @contextmanager
    def said(self) -> Iterator[None]:
        """Known errors go into the bar."""
        try:
            yield
        except FitdoctorError as error:
            self.window.say(error)

    # ---- the list

    def refresh(self) -> None:
        """Show the book as it is now."""
        if self.shelf.book is None:
            trouble = self.shelf.trouble or FitdoctorError(tr("There is no job book."))
            self.page.show_trouble(f"{trouble.text} {trouble.hint}".strip(), *way_out(self.shelf))
            return
        with self.said():
            everything, found = find(self.book.file), find(self.book.file, self.sought)
            self._state = self.book.state_of_the_file()
            self._show_list(everything, found)
            self._show_chosen(everything)

    def _show_list(self, everything: tuple[Line, ...], found: tuple[Line, ...]) -> None:
        know, page = self.job.knowledge, self.page
        empty = tr("The job book is empty. A garment you fit is kept here by itself.")
        page.show_trouble("" if everything else empty, tr("New garment"), "new")
        page.list.show_counts(len(everything), sum(line.closed is None for line in everything))
        kinds = dict.fromkeys(line.garment for line in everything)
        page.list.show_garments([(kind, know.garments[kind].title if kind in know.garments else kind) for kind in kinds])
        rows = tuple(row_words(know, self.book, line, date.today()) for line in found[: self._most])
        if rows != self._rows or not rows:
            self._rows = rows
            with page.scroll_kept():
                page.list.show_rows(rows, self.id, len(found) - len(rows), self._nothing())

    def _nothing(self) -> str:
        words = self.sought.words.strip()
        return tr("Nothing under ‘{words}’.", words=words) if words else tr("No job stands like that.")

    def _show_more(self) -> None:
        self._most += FIRST_SHOWN
        self.refresh()

    def _seek(self) -> None:
        self.sought, self._most = self.page.list.sought, FIRST_SHOWN
        self.refresh()

    def look_again(self) -> None:
        """Follow what another window has changed."""
        if self.shelf.book is None:
            return
        with self.said():
            if self.book.state_of_the_file() != self._state:
                self.refresh()
                self._follow_in_hand()

    def _follow_in_hand(self) -> None:
        """The garment in hand as another window left it; one that was deleted there is put away here too."""
        mine = self.job.kept.id
        if mine and all(line.id != mine for line in find(self.book.file)):
            self.job.open(Kept(case=Case(garment="")), noted=False)
            self.window.message.say(tr("The garment in hand was deleted for good in another window."), error=False)
        self.job.look_again()

    # ---- the chosen job

    def choose(self, id_: str) -> None:
        """Look at a job."""
        if id_ != self.id:
            self.id = id_
            self.page.changing = False
            self.page.ask.drop()
            self.page.list.show_chosen(id_)
            self._show_chosen(find(self.book.file))

    def _show_chosen(self, everything: tuple[Line, ...]) -> None:
        if not any(line.id == self.id for line in everything):
            self.id = self._rows[0].id if self._rows else ""
            self.page.list.show_chosen(self.id)
        if not self.id:
            self.page.show_chosen(None, None)
            return
        chosen = self.chosen()
        photos = [(photo, self.book.photos.path(photo)) for photo in chosen.photos]
        self.page.show_chosen(chosen, PhotoStrip(self.window.look, photos))

    def chosen(self) -> Chosen:
        """The chosen job with all that is shown of it.

        Raises:
            FitdoctorError: it was deleted in another window.
        """
        job = self.book.job(self.id)
        return Chosen(job, self.book.history.of(self.id), self.book.photos.of(self.id), self.assessed(job))

    def assessed(self, job: BookJob) -> Assessment | None:
        """What is thought of a job now; None where its garment is not known."""
        if job.id == self.job.kept.id:
            return self.job.assessment
        if job.case.garment not in self.job.knowledge.garments:
            return None
        return assess(self.job.knowledge, job.case, self.window.shop, learned=self.job.learned)

    def _press_row(self, id_: str) -> None:
        self.choose(id_)
        if self.page.columns == 1:
            self.page.look_at_one(True)

    def _open_row(self, id_: str) -> None:
        """Enter opens the job; where the list takes the whole width, it first shows the job on one look."""
        self._press_row(id_)
        if self.page.columns > 1:
            self.open_job()

    def open_job(self) -> None:
        """Take the chosen job in hand, where one left off."""
        with self.said():
            self.fitting.open_kept(self.shelf.take(self.id))
