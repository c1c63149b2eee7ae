"""One find in the list: its title; tinted with a bar at its left while it is the one in hand."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.handbook.kinds import Key
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.tokens import ROW_BAR

_LEFT, _RIGHT, _HIGH = 12.0, 6.0, 6.0


class FoundRow(Control):
    """Pressing it opens its page."""

    def __init__(self, look: Look, key: Key, title: str) -> None:
        super().__init__(look, f"look-up-found-{key[1]}", title)
        self.key, self.title, self.current = key, title, False
        self._heights: dict[tuple[int, bool], int] = {}
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_current(self, current: bool) -> None:
        """Show whether it is the one in hand."""
        if current != self.current:
            self.current = current
            self.updateGeometry()
            self.update()

    def paragraph(self) -> Paragraph:
        """Its title as it is set."""
        return Paragraph(self.look, self.title, "bold" if self.current else "row")

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        """Kept once worked out: while one types, layouts ask for it many times over."""
        asked = width, self.current
        if asked not in self._heights:
            self._heights[asked] = ceil(self.paragraph().height(max(1.0, width - _LEFT - _RIGHT)) + 2 * _HIGH)
        return self._heights[asked]

    def sizeHint(self) -> QSize:
        return QSize(ceil(self.paragraph().natural_width() + _LEFT + _RIGHT), ceil(self.look.line("row") + 2 * _HIGH))

    def minimumSizeHint(self) -> QSize:
        return QSize(ceil(self.paragraph().least_width() + _LEFT + _RIGHT), ceil(self.look.line("row") + 2 * _HIGH))

    def clipped(self) -> bool:
        """Whether some of the title is out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        if self.current or self.hovered:
            painter.fillRect(self.rect(), self.look.colour("thread-tint" if self.current else "paper-2"))
        if self.current:
            painter.fillRect(0, 0, ROW_BAR, self.height(), self.look.colour("thread"))
        box = QRectF(self.rect()).adjusted(_LEFT, _HIGH, -_RIGHT, -_HIGH)
        self.paragraph().paint(painter, box, self.look.colour("ink"))
        self.paint_ring(painter)
        painter.end()
