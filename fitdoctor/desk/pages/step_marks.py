"""The marks of the operation in hand, on a plate of their own, and how far the line lies along the seam."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from fitdoctor.amounts.marks import Mark
from fitdoctor.assess import Assessment
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.marks import MarksPlate, lettered
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.mark_diagram import MarkDiagram
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import OneLine, Rule, SectionHead, Words
from fitdoctor.desk.words import tr, upper_first
from fitdoctor.plan import PlannedOperation
from fitdoctor.sheet import TAKE_WORDS, SheetMark, how_much, sheet_marks

MOST_STATIONS = 5


class StepMarks(QWidget):
    """Shows what the operation in hand marks or works to; emits that the marks are wanted at full size."""

    guidesWanted = Signal()

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self._print = Link(look, tr("Print at full size"), "plan-guides")
        self._print.clicked.connect(self.guidesWanted.emit)
        self._head = SectionHead(look, " ", self._print)
        self._remark = Words(look, "", "small", "ink-2", "plan-marks-remark")
        self._plate = MarksPlate(look, job)
        self._rows = Rows("plan-mark-rows", 8)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        for widget in (self._head, self._remark, self._plate, self._rows):
            column.addWidget(widget)

    def show_step(self, assessment: Assessment, operation: PlannedOperation, number: int) -> None:
        """Show the marks of one operation."""
        marks = _marks_of(lettered(assessment), operation)
        own = bool(marks)
        marks = marks or lettered(assessment)
        remark = "" if own else tr("Step {number} works to none of its own.", number=number) if marks else ""
        self._head.say(tr("Marks for step {number}", number=number) if own else tr("Marks on the cloth"))
        self._remark.say(remark)
        self._print.setVisible(bool(marks))
        if operation.try_on:
            self._head.say(tr("How it should hang at step {number}", number=number))
            self._remark.say(tr("What was treated is gone; basted, what was moved. If it looks otherwise, note what shows."))
            self._plate.show_after(assessment, marks)
        else:
            self._plate.show_marks(marks)
        sheet = {mark.letter: mark for mark in sheet_marks(self.job.knowledge, assessment.amounts, assessment.shop)}
        rows: list[QWidget] = []
        for letter, _, mark in marks:
            rows.append(self._said(sheet[letter], mark))
            if len(mark.stations) > 2:
                rows.append(self._stations(sheet[letter], mark))
            if len(mark.old) > 1:
                rows.append(self._diagram(sheet[letter], mark))
        if not marks:
            rows.append(Words(self.look, tr("Nothing is marked until the lengths of step 4 are taken."), "small", "ink-2"))
        self._rows.show_rows(rows)

    def _said(self, shown: SheetMark, mark: Mark) -> Words:
        place = ", ".join(part for part in (upper_first(shown.seam), shown.where) if part)
        return Words(self.look, f"**{shown.letter}**  {place}: {tr(TAKE_WORDS[mark.take])} **{how_much(mark, self.job.shop)}**", "small")

    def _diagram(self, shown: SheetMark, mark: Mark) -> MarkDiagram:
        drawn = MarkDiagram(self.look, self.job.shop, f"plan-diagram-{shown.letter}")
        drawn.show_mark(mark, shown)
        return drawn

    def _stations(self, shown: SheetMark, mark: Mark) -> QWidget:
        """Along the seam, and how far from the old line there."""
        kept = _few(shown.stations)
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(5)
        do = tr("{do} by", do=upper_first(tr(TAKE_WORDS[mark.take])))
        grid.addWidget(Words(self.look, tr("Along, {unit}", unit=shown.unit), "small", "ink-2"), 0, 0)
        grid.addWidget(Rule(self.look, "ink"), 1, 0, 1, len(kept) + 1)
        grid.addWidget(Words(self.look, do, "row"), 2, 0)
        for at, (way, offset) in enumerate(kept, 1):
            grid.addWidget(OneLine(self.look, way, "small", "ink-2"), 0, at, Qt.AlignmentFlag.AlignLeft)
            grid.addWidget(OneLine(self.look, offset, "bold"), 2, at, Qt.AlignmentFlag.AlignLeft)
            grid.setColumnStretch(at, 1)
        grid.setColumnStretch(0, 2)
        grid.addWidget(Rule(self.look), 3, 0, 1, len(kept) + 1)
        return holder


def _marks_of(marks: list[tuple[str, str, Mark]], operation: PlannedOperation) -> list[tuple[str, str, Mark]]:
    """Those of the operation's methods; where some lie on the seams it opens or closes, only these."""
    own = [entry for entry in marks if entry[1] in operation.for_methods]
    seams = {*operation.opens, *operation.closes}
    return [entry for entry in own if entry[2].at in seams] or own


def _few(stations: tuple[tuple[str, str], ...]) -> list[tuple[str, str]]:
    """At most five of them, the ends among them."""
    if len(stations) <= MOST_STATIONS:
        return list(stations)
    last = len(stations) - 1
    return [stations[round(last * nth / (MOST_STATIONS - 1))] for nth in range(MOST_STATIONS)]
