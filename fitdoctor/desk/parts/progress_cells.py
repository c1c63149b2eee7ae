"""One cell for each thing learned: filled and sewn where it is known, open and basted where it is not."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look

_HIGH, _GAP = 0.55, 5
"In em; pixels."


class ProgressCells(QWidget):
    """Cells side by side over the width it gets; the words beside it say the same."""

    def __init__(self, look: Look, known: int, met: int, says: str) -> None:
        super().__init__()
        self.look, self.known, self.met = look, known, met
        self.setAccessibleName(says)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(10), self.look.px(_HIGH) + 2)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        wide = (self.width() + _GAP) / max(1, self.met)
        for at in range(self.met):
            cell = QRectF(at * wide + 0.75, 0.75, max(1.0, wide - _GAP - 1.5), self.height() - 1.5)
            if at < self.known:
                painter.fillRect(cell, self.look.colour("thread"))
                continue
            pen = QPen(self.look.colour("edge"), 1.2)
            pen.setDashPattern([3, 2])
            pen.setCapStyle(Qt.PenCapStyle.FlatCap)
            painter.setPen(pen)
            painter.drawRect(cell)
        painter.end()
