"""A small picture in a row, and the ball with the number that a call-out bears."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.line_choice import Picture

BALL = 1.5


def paint_ball(painter: QPainter, look: Look, middle: QPointF, label: str, basted: bool = False) -> None:
    """A ball with its letter or number; basted where the thing is not settled."""
    radius = look.em * BALL / 2
    pen = QPen(look.colour("thread"), 1.5)
    if basted:
        pen.setDashPattern([3, 2])
    painter.setPen(pen)
    painter.setBrush(look.colour("paper"))
    painter.drawEllipse(middle, radius, radius)
    painter.setFont(look.font("small-bold"))
    painter.setPen(look.colour("thread"))
    box = QRectF(middle.x() - radius, middle.y() - radius, 2 * radius, 2 * radius)
    painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter), label)


class Ball(QWidget):
    """A ball in a row."""

    def __init__(self, look: Look, label: str) -> None:
        super().__init__()
        self.look, self.label = look, label
        self.setAccessibleName(label)
        size = look.px(BALL) + 3
        self.setFixedSize(size, size)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_ball(painter, self.look, QPointF(self.width() / 2, self.height() / 2), self.label)
        painter.end()


class SmallPicture(QWidget):
    """A picture of fixed size with a sentence for those who cannot see it."""

    def __init__(self, look: Look, picture: Picture, size: tuple[int, int], says: str) -> None:
        super().__init__()
        self.look, self._picture, self._size = look, picture, size
        self.setAccessibleName(says)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(*self._size)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), self.look.colour("paper-2"))
        image = self._picture((self.width(), self.height()), self.devicePixelRatioF())
        if image is not None:
            painter.drawImage(self.rect(), image)
        painter.end()
