"""What was thought of a job when: its readings, and two of them side by side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import groupby

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.jobbook.reading_row import ReadingRow
from fitdoctor.desk.jobbook.readings import Compared, compared, headline, thought
from fitdoctor.desk.jobbook.view import View
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.pick import Pick
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import Rule, SectionHead, Words
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.desk.words import count, tr
from fitdoctor.jobbook.reading import Reading

_ROOMY_EM = 26


class HistoryPage(View):
    """The last reading stands beside the one before it, until others are chosen."""

    def __init__(self, look: Look, job: Job, title: str, readings: Sequence[Reading]) -> None:
        super().__init__(look, job, "history", tr("What was thought when"), title)
        self._readings = tuple(readings)
        self._at = len(readings) - 1
        self._against = max(0, self._at - 1)
        self._whole = False
        today = date.today()
        self.rows = [self._row(number, today) for number in reversed(range(len(readings)))]
        self.group = ControlGroup(self.rows, exclusive=True)
        list_ = Rows("history-readings")
        list_.show_rows(self.rows)
        names = [(str(number), headline(reading, today)) for number, reading in enumerate(readings)]
        self._pick = Pick(look, tr("Beside it"), names, str(self._against), "history-against")
        self._pick.picked.connect(self._stand_against)
        self._tick = TickBox(look, tr("What stayed the same too"), "history-whole", "small")
        self._tick.clicked.connect(self._turn)
        self._head, self._table = SectionHead(look, "", name="history-head"), Rows("history-table")
        readings_head = SectionHead(look, tr("Readings, the last first"))
        right = section(self._head, left(self._pick), self._table, left(self._tick), gap=8)
        self.lay((section(readings_head, list_, gap=0), 40), (right, 60))
        self._show()

    def _row(self, number: int, today: date) -> ReadingRow:
        reading = self._readings[number]
        know, shop = self.job.knowledge, self.job.shop
        news = sum(line.changed for line in compared(know, shop, self._readings[number - 1], reading)) if number else 0
        said = count(news, "1 thing changed since the reading before.", "{number} things changed since the reading before.") if news else ""
        row = ReadingRow(self.look, headline(reading, today), thought(know, reading), said, f"history-reading-{number}")
        row.clicked.connect(lambda: self.choose(number))
        return row

    # ---- choosing

    def choose(self, number: int) -> None:
        """Look at a reading, beside the one before it."""
        self._at, self._against = number, max(0, number - 1)
        self._show()

    def _stand_against(self, number: str) -> None:
        self._against = int(number)
        self._show()

    def _turn(self, whole: bool) -> None:
        self._whole = whole
        self._show()

    # ---- showing

    def _show(self) -> None:
        today, last = date.today(), len(self._readings) - 1
        for place, row in enumerate(self.rows):
            row.setChecked(last - place == self._at)
        self._pick.show_value(str(self._against))
        before, after = (self._readings[place] for place in sorted((self._against, self._at)))
        self._head.say(tr("Side by side") if before is not after else tr("As it was read"))
        lines = [
            line for line in compared(self.job.knowledge, self.job.shop, before, after) if line.changed or self._whole or before is after
        ]
        self._table.show_rows(self._lines(lines, headline(before, today), headline(after, today)))

    def _lines(self, lines: Sequence[Compared], before: str, after: str) -> Iterator[QWidget]:
        yield _Line(self.look, "", before, after, "small", False)
        yield Rule(self.look, "ink")
        for part, group in groupby(lines, key=lambda line: line.part):
            head = Words(self.look, part, "small-bold", "ink-2")
            head.setContentsMargins(0, 8, 0, 0)
            yield head
            for line in group:
                yield _Line(self.look, line.what, line.before, line.after, "small", line.changed)
                yield Rule(self.look)
        if not lines:
            yield Words(self.look, tr("Nothing changed between the two."), "reading", name="history-nothing")

    def focus_first(self, reason: Qt.FocusReason) -> None:
        self.rows[0].setFocus(reason)


class _Line(QWidget):
    """What it is, how it stood before and after; what changed is bold."""

    def __init__(self, look: Look, what: str, before: str, after: str, role: str, changed: bool) -> None:
        super().__init__()
        self.look = look
        self.setAccessibleName(tr("{what}: {before}, then {after}", what=what, before=before, after=after))
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._row.setContentsMargins(0, 6, 0, 6)
        self._row.setSpacing(16)
        self._row.addWidget(Words(look, what, role) if what else QWidget(), 5)
        self._row.addWidget(Words(look, before, role, "ink-2"), 3)
        self._row.addWidget(Words(look, f"**{after}**" if changed else after, role), 3)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        level = event.size().width() > self.look.px(_ROOMY_EM)
        self._row.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)
        self._row.setSpacing(16 if level else 0)
