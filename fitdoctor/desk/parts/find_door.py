"""The find field of the running head: looks like a field, and leads to the one in Look it up."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.tokens import CORNER, HAIR
from fitdoctor.desk.words import tr

_PAD, _GAP, _HIGH = 12, 20, 44


class FindDoor(Control):
    """Says what it does and by which key."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, "head-find", tr("Find in the handbook"))
        self.words, self.keys = tr("Find in the handbook"), tr("Ctrl F")
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.IBeamCursor)

    def sizeHint(self) -> QSize:
        advance = self.look.metrics("small").horizontalAdvance
        return QSize(ceil(advance(self.words) + advance(self.keys)) + 2 * _PAD + _GAP, self.look.grown(_HIGH))

    def clipped(self) -> bool:
        """Whether some of the words are out of sight."""
        return self.width() < self.sizeHint().width()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.look.colour("thread" if self.hovered else "edge"), HAIR))
        painter.setBrush(self.look.colour("paper"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), CORNER, CORNER)
        painter.setFont(self.look.font("small"))
        painter.setPen(self.look.colour("ink-2"))
        box = self.rect().adjusted(_PAD, 0, -_PAD, 0)
        middle = Qt.AlignmentFlag.AlignVCenter
        painter.drawText(box, int(Qt.AlignmentFlag.AlignLeft | middle), self.words)
        painter.drawText(box, int(Qt.AlignmentFlag.AlignRight | middle), self.keys)
        self.paint_ring(painter)
        painter.end()
