"""How it goes: a curve over time, what was mixed up, and the answers as a table to carry away."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Columns, Page, section
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.text import PageTitle, SectionHead, Words
from fitdoctor.desk.practice.curve import Curve
from fitdoctor.desk.practice.mixed_up import MixedUp
from fitdoctor.desk.practice.sitting import Sitting
from fitdoctor.desk.tokens import GUTTER
from fitdoctor.desk.words import count, tr
from fitdoctor.practice.progress import confusions, curve, matrix, title_of

MOST = {3: 8, 2: 8, 1: 5}
"Rows of the table, by how many columns the page has."


class ResultsPage(Page):
    """Emits that one wants back to the exercises, and the table."""

    step = "practise-results"
    left = Signal()
    saveWanted = Signal()

    def __init__(self, look: Look, job: Job, sitting: Sitting) -> None:
        super().__init__(look, job)
        self.sitting = sitting
        self._title = PageTitle(look, tr("How it goes"), "practise-results-title")
        self.curve = Curve(look, "practise-curve")
        self._of_late = Words(look, tr("Each point is the mean of the last 20 answers; one in part counts half."), "small", "ink-2")
        self.table = MixedUp(look, "practise-table")
        self._table_says = Words(look, "", "small", "ink-2", "practise-table-says")
        over_time = section(SectionHead(look, tr("Right, over time")), self.curve, self._of_late)
        mixed = section(SectionHead(look, tr("Taken for one another"), tr("row: what it was")), self.table, self._table_says)
        self._body = Columns(GUTTER)
        self._parts: tuple[QWidget, QWidget] = (over_time, mixed)
        self.back = Button(look, tr("Back to the exercises ›"), "practise-back", "go")
        self.save = Button(look, tr("Save the answers as a table (CSV)"), "practise-save")
        self.back.clicked.connect(self.left.emit)
        self.save.clicked.connect(self.saveWanted.emit)
        ways = QWidget()
        flow = FlowLayout(ways, 16)
        flow.addWidget(self.back)
        flow.addWidget(self.save)
        ways.setContentsMargins(0, 24, 0, 0)
        self.stand(self._title, self._body, ways, gap=16)

    def arrange(self, columns: int) -> None:
        one, other = self._parts
        self._body.lay([[(one, 1), (other, 1)]] if columns > 2 else [[(one, 1)], [(other, 1)]])
        self.show_job()

    def show_job(self) -> None:
        answers, know = self.sitting.record.answers, self.sitting.knowledge
        right, part = (sum(answer.mark == mark for answer in answers) for mark in ("right", "part"))
        lead = count(
            len(answers),
            "Of 1 answer {right} right, {part} in part.",
            "Of {number} answers {right} right, {part} in part.",
            right=right,
            part=part,
        )
        self._title.remark(lead if answers else tr("Nothing answered yet."))
        self.curve.show_points(curve(answers))
        found = confusions(answers)
        table = matrix(found, MOST.get(self.columns, 8))
        self.table.show_table(table, [title_of(know, id_) for id_ in table.ids])
        self.table.setVisible(bool(table.ids))
        says = tr("A column has the letter of its row: what was said.") if table.ids else tr("Nothing was taken for anything else.")
        self._table_says.say(says)
        self.save.setVisible(bool(answers))

    def focus_first(self, reason: Qt.FocusReason) -> None:
        self.back.setFocus(reason)
