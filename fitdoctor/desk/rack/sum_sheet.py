"""The sum: what it would be worth, what goes off, what is left; a line that changed stands bold for a moment."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import OneLine, Rule, Words

FRESH_MS = 2000


@dataclass(frozen=True)
class SumLine:
    """One line of a sum.

    Attributes:
        below: a remark in small; link: what is asked about this line.
        adds_up: a total, under a rule.
    """

    name: str
    title: str
    amount: str = ""
    below: str = ""
    link: str = ""
    adds_up: bool = False


class SumSheet(QWidget):
    """Emits the name of the line whose link was pressed."""

    asked = Signal(str)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self._lines: tuple[SumLine, ...] = ()
        self._fresh: list[Words] = []
        self._rows = Rows("rack-sum-lines")
        self._calm = QTimer(self)
        self._calm.setSingleShot(True)
        self._calm.setInterval(FRESH_MS)
        self._calm.timeout.connect(self._settle)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._rows)

    def show_sum(self, lines: Sequence[SumLine], fresh: bool) -> None:
        """Show a sum; `fresh` marks what changed since the last one."""
        if tuple(lines) == self._lines:
            return
        before = {line.name: line.amount or line.title for line in self._lines} if fresh else {}
        changed = {line.name for line in lines if before.get(line.name, "") not in ("", line.amount or line.title)}
        self._lines = tuple(lines)
        self._fresh = []
        rows: list[QWidget] = []
        for line in lines:
            if line.adds_up:
                rows.append(Rule(self.look, "ink"))
            rows.append(self._row(line, line.name in changed))
        self._rows.show_rows(rows)
        if changed:
            self._calm.start()

    def _settle(self) -> None:
        for words in self._fresh:
            words.role = "row"
            words.updateGeometry()
            words.update()
        self._fresh = []

    def _row(self, line: SumLine, fresh: bool) -> QWidget:
        role = "bold" if line.adds_up or fresh else "row"
        title = Words(self.look, line.title, role, name=f"rack-sum-{line.name}")
        amount = OneLine(self.look, line.amount, role, name=f"rack-sum-{line.name}-amount")
        if fresh and not line.adds_up:
            self._fresh += [title, amount]
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(title)
        if line.below:
            words.addWidget(Words(self.look, line.below, "small", "ink-2"))
        if line.link:
            link = Link(self.look, line.link, f"rack-sum-{line.name}-why")
            link.clicked.connect(lambda: self.asked.emit(line.name))
            words.addWidget(left(link))
        row = QWidget()
        across = QHBoxLayout(row)
        across.setContentsMargins(0, 6, 0, 6)
        across.setSpacing(12)
        across.addLayout(words, 1)
        if line.amount:
            across.addWidget(amount, 0, Qt.AlignmentFlag.AlignTop)
        return row
