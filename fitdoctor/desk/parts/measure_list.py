"""The list of what to measure: taken, needed, or only of use; the one in hand has a bar."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from typing import Literal

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.signs import paint_sign
from fitdoctor.desk.parts.text import Rule
from fitdoctor.desk.tokens import ROW_BAR
from fitdoctor.desk.words import tr

HIGH = 44


@dataclass(frozen=True)
class MeasureRow:
    """One length to take."""

    id: str
    title: str
    remark: str
    state: Literal["taken", "needed", "optional"]


class _Row(Control):
    def __init__(self, look: Look, row: MeasureRow, in_hand: bool, name: str) -> None:
        state = {"taken": tr("taken"), "needed": tr("not taken yet"), "optional": tr("not needed")}[row.state]
        super().__init__(look, name, f"{row.title}, {plain(row.remark)}, {state}")
        self.row = row
        self.setCheckable(True)
        self.setChecked(in_hand)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _title(self) -> Paragraph:
        return Paragraph(self.look, self.row.title, "bold" if self.isChecked() else "row")

    def _remark(self) -> Paragraph:
        return Paragraph(self.look, self.row.remark, "bold" if self.row.state == "taken" else "row")

    def _indent(self) -> float:
        return self.look.px(1) + 26

    def _room(self, width: int) -> float:
        return max(1.0, width - self._indent() - self._remark().natural_width() - 28)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        high = Paragraph(self.look, self.row.title, "bold").height(self._room(width))
        return max(self.look.grown(HIGH), ceil(high + 20))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(24), self.look.grown(HIGH))

    def minimumSizeHint(self) -> QSize:
        wide = self._indent() + self._remark().natural_width() + self._title().least_width() + 30
        return QSize(ceil(wide), self.look.grown(HIGH))

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.height() < self.heightForWidth(self.width()) or self.width() < self.minimumSizeHint().width()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look = self.look
        if self.isChecked() or self.hovered:
            painter.fillRect(self.rect(), look.colour("thread-tint" if self.isChecked() else "paper-2"))
        if self.isChecked():
            painter.fillRect(0, 0, ROW_BAR, self.height(), look.colour("thread"))
        size, line = look.px(0.9), look.line("row")
        sign_box = QRectF(14, 10 + (line - size) / 2, size, size)
        if self.row.state == "taken":
            paint_sign(painter, "tick", sign_box, look.colour("good"))
        elif self.row.state == "needed":
            paint_sign(painter, "query", sign_box, look.colour("care"))
        self._title().paint(painter, QRectF(self._indent(), 10, self._room(self.width()), 999), look.colour("ink"))
        tone = "ink" if self.row.state == "taken" else "ink-2"
        right = QRectF(self._indent(), 10, self.width() - self._indent() - 12, 99)
        self._remark().paint(painter, right, look.colour(tone), Qt.AlignmentFlag.AlignRight)
        self.paint_ring(painter)
        painter.end()


class MeasureList(QWidget):
    """Emits the measurement taken in hand."""

    taken = Signal(str)

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.look = look
        self.setObjectName(name)
        self._rows = Rows()
        self.group = ControlGroup()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._rows)

    def show_rows(self, rows: Sequence[MeasureRow], in_hand: str) -> None:
        """Show these in place of those before."""
        shown: list[QWidget] = []
        controls = []
        for row in rows:
            control = _Row(self.look, row, row.id == in_hand, f"{self.objectName()}-{row.id}")
            control.clicked.connect(lambda _on=False, id_=row.id: self.taken.emit(id_))
            controls.append(control)
            shown += [control, Rule(self.look)]
        self._rows.show_rows(shown)
        self.group = ControlGroup(controls)
