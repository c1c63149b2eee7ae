"""Step 4: measure. What to measure, the length in hand, and the marks that follow from it."""

from __future__ import annotations

from PySide6.QtCore import Qt

from fitdoctor.assess import Assessment, Wanted
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.length_in_hand import LengthInHand
from fitdoctor.desk.pages.marks import Marks
from fitdoctor.desk.pages.page import Columns, Page, section
from fitdoctor.desk.pages.said import convention_of, for_causes
from fitdoctor.desk.parts.empty_note import EmptyNote
from fitdoctor.desk.parts.measure_list import MeasureList, MeasureRow
from fitdoctor.desk.parts.text import PageTitle, SectionHead, Words
from fitdoctor.desk.words import tr

GUTTER = 48


class MeasurePage(Page):
    """One length in hand at a time."""

    step = "measure"

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(look, job)
        self.in_hand = ""
        self._title = PageTitle(look, tr("Measure"), "measure-title")
        self._empty = EmptyNote(look, "", "measure-empty", " ")
        self._empty.pressed.connect(self._go_where_it_lacks)
        self._head = SectionHead(look, tr("To measure"), " ")
        self._list = MeasureList(look, "measure-list")
        self._list.taken.connect(self.take)
        self._length = LengthInHand(look, job)
        self._nothing = Words(look, tr("Nothing has to be measured for this work."), "reading", name="measure-nothing")
        self._marks = Marks(look, job, "measure")
        self._left = section(self._head, self._list, self._nothing, self._length, gap=0)
        self._columns = Columns(GUTTER)
        self._scroll = self.stand(self._title, self._empty, self._columns)

    def arrange(self, columns: int) -> None:
        if columns > 1:
            self._columns.lay([[(self._left, 52), (self._marks, 65)]])
        else:
            self._columns.lay([[(self._left, 1)], [(self._marks, 1)]])

    def show_job(self) -> None:
        assessment = self.job.assessment
        ready = assessment is not None and bool(assessment.treat)
        self._empty.setVisible(not ready)
        self._columns.setVisible(ready)
        self._title.remark(for_causes(self.job.knowledge, assessment) if ready and assessment else "")
        if not ready or assessment is None:
            if assessment is not None and assessment.left_alone:
                text = tr("It is left alone by choice, so there is nothing to measure.")
                self._empty.say(text, tr("Go to Can it be done"))
                return
            lacking = bool(self.job.case.seen)
            text = tr("No cause stands out yet to measure for.") if lacking else tr("No cause to measure for yet. Note what shows first.")
            self._empty.say(text, tr("Go to Narrow it down") if lacking else tr("Go to What shows"))
            return
        self._show_list(assessment)
        self._marks.show_marks(assessment)

    def _show_list(self, assessment: Assessment) -> None:
        wanted = assessment.wanted
        ids = [want.measurement for want in wanted]
        if self.in_hand not in ids:
            first = next((w.measurement for w in wanted if w.needed and not w.taken), None)
            self.in_hand = first or next((w.measurement for w in wanted if not w.taken), ids[0] if ids else "")
        taken = sum(want.taken for want in wanted)
        self._head.say(tr("To measure"), tr("{taken} of {all} taken", taken=taken, all=len(wanted)) if wanted else "")
        self._list.show_rows([self._row(want) for want in wanted], self.in_hand)
        self._nothing.setVisible(not wanted)
        self._length.setVisible(bool(self.in_hand))
        if self.in_hand:
            self._length.show_measurement(self.in_hand)

    def _row(self, want: Wanted) -> MeasureRow:
        entry = self.job.knowledge.measurements[want.measurement]
        reading = self.job.case.measured.get(want.measurement)
        if reading is not None:
            length = f"{convention_of(entry)} {self.job.shop.length(reading.mm)}".strip()
            return MeasureRow(want.measurement, entry.title, length, "taken")
        remark = tr("not yet") if want.needed else tr("if it is at hand")
        return MeasureRow(want.measurement, entry.title, remark, "needed" if want.needed else "optional")

    def take(self, measurement: str) -> None:
        """Take a measurement in hand."""
        self.in_hand = measurement
        self.show_job()
        self.focus_first(Qt.FocusReason.OtherFocusReason)

    def _go_where_it_lacks(self) -> None:
        found = self.job.assessment
        self.job.go_to("done" if found and found.left_alone else "narrow" if self.job.case.seen else "shows")

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self._empty.isVisibleTo(self):
            self._empty.button.setFocus(reason)
        elif self.in_hand:
            self._length.focus_first(reason)

    def summary(self) -> str:
        marks = self._marks.number()
        return tr("Marks: {number}", number=marks) if self.columns < 2 and marks else ""

    def show_summary(self) -> None:
        self._scroll.bring_up(self._marks)
