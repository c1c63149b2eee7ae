"""One reading in the history of a job: when, what was thought, what was new in it."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.tokens import HAIR, ROW_BAR

_LEFT, _PAD = 14.0, 8.0


class ReadingRow(Control):
    """Tinted with a bar while it is the one looked at."""

    def __init__(self, look: Look, head: str, thought: str, news: str, name: str) -> None:
        super().__init__(look, name, ". ".join(plain(part) for part in (head, thought, news) if part))
        self._texts = ((head, "bold", "ink"), (thought, "small", "ink"), (news, "small", "ink-2"))
        self.setCheckable(True)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _paragraphs(self) -> Iterator[tuple[Paragraph, str]]:
        yield from ((Paragraph(self.look, text, role), tone) for text, role, tone in self._texts if text)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        room = max(1.0, width - _LEFT - 8)
        return max(self.look.target(), ceil(sum(text.height(room) for text, _ in self._paragraphs()) + 2 * _PAD))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(20), self.look.target())

    def minimumSizeHint(self) -> QSize:
        wide = max(text.least_width() for text, _ in self._paragraphs())
        return QSize(ceil(wide + _LEFT + 8), self.look.target())

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, on = self.look, self.isChecked()
        if on or self.hovered:
            painter.fillRect(self.rect(), look.colour("thread-tint" if on else "paper-2"))
        if on:
            painter.fillRect(0, 0, ROW_BAR, self.height(), look.colour("thread"))
        y, room = _PAD, self.width() - _LEFT - 8
        for text, tone in self._paragraphs():
            text.paint(painter, QRectF(_LEFT, y, room, 999), look.colour(tone))
            y += text.height(room)
        painter.setPen(QPen(look.colour("rule"), HAIR))
        painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)
        self.paint_ring(painter)
        painter.end()
