"""Garments side by side: what to do, the sum, what decided it; what to buy first stands first."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Page
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.rows import Rows, emptied
from fitdoctor.desk.parts.tag import StateTag
from fitdoctor.desk.parts.text import PageTitle, Rule, Words
from fitdoctor.desk.rack.hand import RackHand
from fitdoctor.desk.rack.kept import OnRack
from fitdoctor.desk.rack.list_column import TAGS
from fitdoctor.desk.rack.said import DECISIONS, comparison_lines
from fitdoctor.desk.words import tr
from fitdoctor.rack.answer import RackAnswer

GAP = 32
LEAST = 17.0
"Em that a garment needs beside another."


class ComparePage(Page):
    """Emits that the comparison is to be printed or written as PDF, a garment to be fitted, one to be taken off."""

    step = "rack-compare"
    printWanted = Signal()
    pdfWanted = Signal()
    fitWanted = Signal(str)
    dropWanted = Signal(str)

    def __init__(self, look: Look, hand: RackHand) -> None:
        super().__init__(look, hand.job)
        self.hand = hand
        self._title = PageTitle(look, tr("Side by side"), "rack-compare-title")
        self._working = Words(look, tr("Working it out."), "lead", "ink-2", "rack-compare-working")
        self._body = _Beside(look)
        ways = QWidget()
        flow = FlowLayout(ways, 16)
        new = Button(look, tr("Another garment"), "rack-compare-new", "go")
        prints = Button(look, tr("Print the comparison"), "rack-print")
        pdf = Button(look, tr("Save as PDF"), "rack-pdf")
        for button in (new, prints, pdf):
            flow.addWidget(button)
        new.clicked.connect(hand.describe_new)
        prints.clicked.connect(self.printWanted.emit)
        pdf.clicked.connect(self.pdfWanted.emit)
        self._new = new
        self._ways = Rows()
        self._ways.show_rows([ways])
        self.stand(self._title, self._working, self._body, self._ways, gap=16)

    def arrange(self, _columns: int) -> None:
        self._body.place()

    def show_job(self) -> None:
        self._title.remark(tr("What to buy first stands first. The list is kept on this computer as you go."))
        ready = self.hand.ready()
        self._working.setVisible(len(ready) < len(self.hand.list.garments))
        self._body.hold([self._column(one, answer) for one, answer in ready])

    def _column(self, one: OnRack, answer: RackAnswer) -> QWidget:
        name = f"rack-compared-{one.id}"
        head = Link(self.look, self.hand.title_of(one), name, "section-title", big=True)
        head.clicked.connect(lambda: self.hand.open(one.id))
        tag = StateTag(self.look, TAGS[answer.decision], tr(DECISIONS[answer.decision]), f"{name}-tag")
        column = QWidget()
        column.setObjectName(f"{name}-column")
        lines = QVBoxLayout(column)
        lines.setContentsMargins(0, 0, 0, 0)
        lines.setSpacing(0)
        lines.addWidget(head, 0, Qt.AlignmentFlag.AlignLeft)
        lines.addSpacing(6)
        lines.addWidget(tag, 0, Qt.AlignmentFlag.AlignLeft)
        lines.addSpacing(12)
        lines.addLayout(self._sum(answer))
        lines.addWidget(Words(self.look, answer.reason.text, "reading", name=f"{name}-reason"))
        lines.addSpacing(10)
        lines.addWidget(self._links(one, answer, name))
        lines.addStretch(1)
        return column

    def _sum(self, answer: RackAnswer) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(5)
        grid.setColumnStretch(0, 1)
        at = 0
        for line in comparison_lines(self.hand.money, answer):
            if line.adds_up:
                grid.addWidget(Rule(self.look, "ink"), at, 0, 1, 2)
                at += 1
            role = "bold" if line.adds_up else "row"
            amount = Words(self.look, line.amount, role)
            amount.align = Qt.AlignmentFlag.AlignRight
            grid.addWidget(Words(self.look, line.title, role), at, 0)
            grid.addWidget(amount, at, 1)
            at += 1
        grid.setRowMinimumHeight(at, 10)
        return grid

    def _links(self, one: OnRack, answer: RackAnswer, name: str) -> QWidget:
        links = QWidget()
        flow = FlowLayout(links, 18)
        if answer.decision != "LEAVE_IT":
            fit = Link(self.look, tr("Fit this garment"), f"{name}-fit", "body", big=True)
            fit.clicked.connect(lambda: self.fitWanted.emit(one.id))
            flow.addWidget(fit)
        drop = Link(self.look, tr("Take off the list"), f"{name}-drop", "body", big=True)
        drop.clicked.connect(lambda: self.dropWanted.emit(one.id))
        flow.addWidget(drop)
        for link in links.findChildren(Link):
            link.setAccessibleName(f"{link.words}: {self.hand.title_of(one)}")
        return links

    def focus_first(self, reason: Qt.FocusReason) -> None:
        first = next((link for link in self._body.findChildren(Link) if not link.isHidden()), None)
        (first or self._new).setFocus(reason)


class _Beside(QWidget):
    """As many columns beside one another as there is room for; the others below."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self._rows = Rows("rack-compared", 0)
        self._columns: list[QWidget] = []
        self._grid: QGridLayout | None = None
        self._across = 0
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 24)
        whole.addWidget(self._rows)

    def hold(self, columns: list[QWidget]) -> None:
        """Hold these columns."""
        self._columns, self._across = columns, 0
        holder = QWidget()
        self._grid = QGridLayout(holder)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(GAP)
        self._grid.setVerticalSpacing(GAP)
        self.place()
        self._rows.show_rows([holder])

    def place(self) -> None:
        """Lay them out for the width there is."""
        fits = int((self.width() + GAP) // (self.look.px(LEAST) + GAP))
        across = max(1, min(fits, max(2, len(self._columns))))
        if self._grid is None or across == self._across:
            return
        emptied(self._grid)
        for stale in range(self._across):
            self._grid.setColumnStretch(stale, 0)
        self._across = across
        for at, column in enumerate(self._columns):
            self._grid.addWidget(column, at // across, at % across)
        for number in range(across):
            self._grid.setColumnStretch(number, 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.place()
