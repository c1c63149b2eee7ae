"""What was taken for what, as a table: a row for what it was, a column for what was said."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.tokens import HAIR
from fitdoctor.desk.words import count, tr
from fitdoctor.practice.progress import Matrix

LETTERS = "ABCDEFGH"
_CELL, _LEAST_TITLE, _PAD = 2.1, 8.0, 5
"In em; in em; pixels."


class MixedUp(QWidget):
    """The columns have the letters of the rows. Figures say how often; the ground only repeats them."""

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.look = look
        self._table = Matrix((), ())
        self._titles: tuple[str, ...] = ()
        self.setObjectName(name)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_table(self, table: Matrix, titles: Sequence[str]) -> None:
        """Show another table with the titles of its rows."""
        self._table, self._titles = table, tuple(titles)
        self.setAccessibleName(self.says())
        self.updateGeometry()
        self.update()

    def says(self) -> str:
        """The table in words, the most frequent first."""
        cells = [(n, r, c) for r, row in enumerate(self._table.times) for c, n in enumerate(row) if n]
        cells.sort(key=lambda cell: -cell[0])
        said = (
            tr(
                "‘{right}’ taken for ‘{given}’ {often}",
                right=plain(self._titles[r]),
                given=plain(self._titles[c]),
                often=count(n, "once", "{number} times"),
            )
            for n, r, c in cells
        )
        return "; ".join(said)

    def _cell(self) -> float:
        return self.look.em * _CELL

    def _title_room(self, width: int) -> float:
        return max(1.0, width - len(self._titles) * self._cell() - self.look.em * 1.6 - 8)

    def _row(self, title: str, width: int) -> float:
        return max(self._cell(), Paragraph(self.look, title, "small").height(self._title_room(width)) + 2 * _PAD)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return ceil(self._cell() + sum(self._row(title, width) for title in self._titles)) + 2

    def sizeHint(self) -> QSize:
        wide = self.look.px(_LEAST_TITLE * 2 + 1.6 + len(self._titles) * _CELL)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        least = max((Paragraph(self.look, title, "small").least_width() for title in self._titles), default=0.0)
        return QSize(ceil(least + len(self._titles) * self._cell() + self.look.em * 1.6 + 9), 0)

    def clipped(self) -> bool:
        """Whether some of it is out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        left = self.width() - len(self._titles) * self._cell()
        painter.setFont(self.look.font("small-bold"))
        painter.setPen(self.look.colour("ink-2"))
        for at, letter in enumerate(LETTERS[: len(self._titles)]):
            painter.drawText(QRectF(left + at * self._cell(), 0, self._cell(), self._cell()), int(Qt.AlignmentFlag.AlignCenter), letter)
        top = self._cell()
        for at, title in enumerate(self._titles):
            high = self._row(title, self.width())
            self._paint_row(painter, at, title, QRectF(0, top, self.width(), high), left)
            top += high
        painter.end()

    def _paint_row(self, painter: QPainter, at: int, title: str, row: QRectF, left: float) -> None:
        painter.setPen(QPen(self.look.colour("ink" if at == 0 else "rule"), HAIR))
        painter.drawLine(row.topLeft(), row.topRight())
        spare = row.height() - Paragraph(self.look, title, "small").height(self._title_room(self.width()))
        box = row.adjusted(0, spare / 2, 0, 0)
        Paragraph(self.look, LETTERS[at], "small-bold").paint(painter, box, self.look.colour("ink-2"))
        words = QRectF(self.look.em * 1.6, box.top(), self._title_room(self.width()), box.height())
        Paragraph(self.look, title, "small").paint(painter, words, self.look.colour("ink"))
        painter.setFont(self.look.font("bold"))
        for across, times in enumerate(self._table.times[at]):
            cell = QRectF(left + across * self._cell(), row.top(), self._cell(), row.height())
            if times:
                painter.fillRect(cell.adjusted(1, 2, -1, -1), self.look.colour("thread-tint"))
            painter.setPen(self.look.colour("ink" if times else "ink-2"))
            painter.drawText(cell, int(Qt.AlignmentFlag.AlignCenter), str(times) if times else "–" if across == at else "")
