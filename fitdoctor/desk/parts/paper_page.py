"""A sheet of paper on the screen: looked at, or small in a row to choose from."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.tokens import CHOSEN, HAIR

GAP = 6


class PaperPage(QWidget):
    """One page on white paper, with a hair line round it."""

    def __init__(self, look: Look, image: QImage, says: str) -> None:
        super().__init__()
        self.look, self._image = look, image
        self.setAccessibleName(says)
        self.setFixedSize(image.deviceIndependentSize().toSize())
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.drawImage(0, 0, self._image)
        painter.setPen(QPen(self.look.colour("edge"), HAIR))
        painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        painter.end()


class SmallPage(Control):
    """One page in small with its number below; chosen it is the one shown large."""

    def __init__(self, look: Look, image: QImage, number: int, says: str, name: str) -> None:
        super().__init__(look, name, says)
        self._image, self.number = image, number
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        size = self._image.deviceIndependentSize().toSize()
        return QSize(size.width() + 2 * GAP, size.height() + 2 * GAP + round(self.look.line("small")))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, on = self.look, self.isChecked()
        size = self._image.deviceIndependentSize()
        if self.hovered or on:
            painter.fillRect(self.rect(), look.colour("thread-tint" if on else "paper-2"))
        painter.drawImage(GAP, GAP, self._image)
        painter.setPen(QPen(look.colour("thread" if on else "edge"), CHOSEN if on else HAIR))
        painter.drawRect(QRectF(GAP, GAP, size.width(), size.height()))
        painter.setFont(look.font("small-bold" if on else "small"))
        painter.setPen(look.colour("ink"))
        below = QRectF(0, GAP + size.height() + 2, self.width(), self.height() - size.height() - GAP)
        painter.drawText(below, 0x84, str(self.number))  # in the middle of the line
        self.paint_ring(painter)
        painter.end()
