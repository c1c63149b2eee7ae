"""A box to tick with its words; the whole row can be pressed."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.signs import paint_sign
from fitdoctor.desk.tokens import HAIR

BOX = 1.24


def paint_box(painter: QPainter, look: Look, box: QRectF, on: bool, tone: str = "ink") -> None:
    """A square, with a tick where done."""
    painter.setPen(QPen(look.colour(tone), HAIR))
    painter.setBrush(look.colour("paper"))
    painter.drawRoundedRect(box.adjusted(0.75, 0.75, -0.75, -0.75), 2, 2)
    if on:
        inset = box.width() * 0.18
        paint_sign(painter, "tick", box.adjusted(inset, inset, -inset, -inset), look.colour("ink"), 2.6)


class TickBox(Control):
    """Toggled by a press anywhere on it."""

    def __init__(self, look: Look, text: str, name: str, role: str = "row") -> None:
        super().__init__(look, name, plain(text))
        self.words, self.text_role = text, role
        self.setCheckable(True)
        policy = QSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def say(self, text: str) -> None:
        """Change its words."""
        self.words = text
        self.setAccessibleName(plain(text))
        self.updateGeometry()
        self.update()

    def _paragraph(self) -> Paragraph:
        return Paragraph(self.look, self.words, self.text_role)

    def _indent(self) -> float:
        return self.look.px(BOX) + 14

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return max(self.look.target(), ceil(self._paragraph().height(max(1.0, width - self._indent() - 4)) + 8))

    def sizeHint(self) -> QSize:
        return QSize(ceil(self._paragraph().natural_width() + self._indent() + 6), self.look.target())

    def minimumSizeHint(self) -> QSize:
        return QSize(ceil(self._paragraph().least_width() + self._indent() + 6), self.look.target())

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        size = self.look.px(BOX)
        text = self._paragraph()
        high = text.height(self.width() - self._indent() - 4)
        top = (self.height() - high) / 2
        first = top + self.look.line(self.text_role) / 2
        paint_box(painter, self.look, QRectF(1, first - size / 2, size, size), self.isChecked())
        tone = "ink" if self.isEnabled() else "ink-2"
        text.paint(painter, QRectF(self._indent(), top, self.width() - self._indent() - 3, high), self.look.colour(tone))
        self.paint_ring(painter)
        painter.end()
