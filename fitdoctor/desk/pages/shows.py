"""Step 2: what shows. Point at the place and choose the line, or type what you see."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QHBoxLayout

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.figure_plate import FigurePlate
from fitdoctor.desk.pages.lines import Lines, by_frequency
from fitdoctor.desk.pages.noted import NotedColumn
from fitdoctor.desk.pages.page import Columns, Page, ScrollColumn
from fitdoctor.desk.parts.empty_note import EmptyNote
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.text import PageTitle
from fitdoctor.desk.tokens import GUTTER
from fitdoctor.desk.words import tr
from fitdoctor.knowledge.entries import Symptom
from fitdoctor.knowledge.filters import Filter

LEAST_LETTERS = 3


class ShowsPage(Page):
    """The figure at the left, the lines in the middle, what was noted at the right."""

    step = "shows"

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(look, job)
        self._zone: str | None = None
        self._garment = ""
        self._comparing: tuple[Symptom, Symptom, str] | None = None
        self.plate = FigurePlate(look, job, "shows")
        self.plate.zoneChosen.connect(self.choose_zone)
        self.plate.symptomClicked.connect(self._drop)
        self.plate.viewChanged.connect(self._change_view)
        self._title = PageTitle(look, tr("What shows"), "shows-title")
        hint, such_as = tr("Point at the place, or type what you see"), tr("such as: sags below the seat")
        self._find = Field(look, "shows-find", tr("Type what you see"), hint, such_as)
        self._find.edit.textEdited.connect(lambda _text: self._show_lines())
        self._find.edit.left.connect(self._leave_find)
        self._empty = EmptyNote(look, tr("No garment yet, so nothing can show on it."), "shows-empty", tr("Go to The garment"))
        self._empty.pressed.connect(lambda: job.go_to("garment"))
        self.lines = Lines(look, job)
        self.lines.linePressed.connect(self._press_line)
        self.lines.placeChosen.connect(self.choose_zone)
        self.lines.comparingEnded.connect(self._end_comparing)
        self.noted = NotedColumn(look, job)
        self.noted.dropped.connect(self._drop)
        self.noted.pointed.connect(self.plate.figure.light)
        self.noted.comparingWanted.connect(self._compare)
        self._over = self.plate.make_over("shows-over-below")
        self._columns = Columns(GUTTER)
        self._scroll = ScrollColumn("shows-scroll")
        self._scroll.column.addWidget(self._title)
        self._scroll.column.addSpacing(14)
        self._scroll.column.addWidget(self._empty)
        self._scroll.column.addWidget(self._find)
        self._scroll.column.addSpacing(16)
        self._scroll.column.addWidget(self._columns)
        self._scroll.column.addWidget(self._over)
        self._scroll.column.addStretch(1)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.plate)
        whole.addWidget(self._scroll, 1)

    def fold(self, width: int) -> None:
        super().fold(width)
        self.plate.fold(width, self.columns)

    def arrange(self, columns: int) -> None:
        if columns > 2:
            self._columns.lay([[(self.lines, 46), (self.noted, 30)]])
        else:
            self._columns.lay([[(self.lines, 1)], [(self.noted, 1)]])
        beside = columns < 2
        self._over.setVisible(beside)
        if self.lines.beside != beside:
            self.lines.beside = beside
            self._show_lines()

    # ---- showing

    def show_job(self) -> None:
        known = self.job.case.garment in self.job.knowledge.garments
        self._empty.setVisible(not known)
        for part in (self._find, self._columns):
            part.setVisible(known)
        self._title.remark("" if self.columns == 1 else tr("Stand easy, own shoes. Note what you see, not yet why."))
        self.plate.show_over(self._over)
        self.plate.show_garment()
        if not known:
            return
        fresh = self._garment != self.job.kept.id
        if fresh or self._zone not in self.plate.zones():
            self._garment = self.job.kept.id
            self._zone = self._zone_of_last() if fresh else None
            self._comparing = None
        self.plate.choose(self._zone or "")
        self._show_lines()
        self.noted.show_job()

    def _zone_of_last(self) -> str | None:
        know, view = self.job.knowledge, self.plate.view()
        seen = [know.symptoms[s] for s in self.job.case.seen if s in know.symptoms]
        return next((symptom.zone for symptom in seen if symptom.view == view), None)

    def _show_lines(self) -> None:
        job, words = self.job, self._find.edit.text().strip()
        if self._comparing:
            self.lines.compare(*self._comparing)
        elif len(words) >= LEAST_LETTERS:
            hits = job.index.search(words, Filter("symptoms", job.case.garment), most=8)
            self.lines.show_finds(words, [job.knowledge.symptoms[hit.id] for hit in hits])
        elif self._zone:
            view = self.plate.view()
            at = [s for s in job.knowledge.symptoms_of(job.case.garment).values() if s.view == view and s.zone == self._zone]
            title = self.plate.zones().get(self._zone, "")
            self.lines.show_place(self._zone, title, view, by_frequency(job.knowledge, job.case.garment, at))
        else:
            self.lines.show_places(self.plate.zones(), self.plate.view(), not job.case.seen)

    # ---- what the fitter does

    def choose_zone(self, zone: str) -> None:
        """Show the lines at a place; no place shows the list of places."""
        self._zone, self._comparing = zone or None, None
        self._find.edit.clear()
        self.plate.choose(zone)
        self._show_lines()
        self._scroll.verticalScrollBar().setValue(0)
        if QGuiApplication.mouseButtons() == Qt.MouseButton.NoButton and zone:
            self.lines.focus_first(Qt.FocusReason.TabFocusReason)

    def _change_view(self, _view: str) -> None:
        self._zone, self._comparing = self._zone_of_last(), None
        self.plate.choose(self._zone or "")
        self._show_lines()

    def _press_line(self, symptom: str) -> None:
        if symptom in self.job.case.seen:
            self._drop(symptom)
            return
        view = self.job.knowledge.symptoms[symptom].view
        if view != self.plate.view():
            self.job.look_at(view)
        self.job.note(symptom)

    def _drop(self, symptom: str) -> None:
        if symptom in self.job.case.seen:
            number = self.job.case.seen.index(symptom) + 1
            self.job.drop_note(symptom, tr("Noted {number} removed.", number=number))

    def _compare(self, one: str, other: str, tell_apart: str) -> None:
        symptoms = self.job.knowledge.symptoms
        self._comparing = (symptoms[one], symptoms[other], tell_apart)
        self._show_lines()

    def _end_comparing(self) -> None:
        self._comparing = None
        self._show_lines()

    def _leave_find(self) -> None:
        self._find.edit.clear()
        self._show_lines()
        self.plate.focus_figure(Qt.FocusReason.OtherFocusReason)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self._empty.isVisibleTo(self):
            self._empty.button.setFocus(reason)
        else:
            self.plate.focus_figure(reason)

    def summary(self) -> str:
        number = len(self.job.case.seen)
        return tr("Noted: {number}", number=number) if self.columns < 2 and number else ""

    def show_summary(self) -> None:
        self._scroll.ensureWidgetVisible(self.noted, 0, self._scroll.height() // 2)
