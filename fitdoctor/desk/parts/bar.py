"""The bar of a chance, with three ticks; a ruled-out cause has a basted line in its place."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, QVariantAnimation
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.tokens import HAIR
from fitdoctor.desk.words import tr

MOVE_MS = 160
WIDE, HIGH, TICK = 7.3, 0.76, 0.28
"In em."


class LikelihoodBar(QWidget):
    """A chance from 0 to 1; None is ruled out. The word stands beside it; both are spoken."""

    def __init__(self, look: Look, chance: float | None, word: str, name: str = "", before: float | None = None) -> None:
        super().__init__()
        self.look, self.chance = look, chance
        moves = before is not None and chance is not None and abs(before - chance) > 0.01 and not look.still
        self._shown = before if moves and before is not None else (chance or 0.0)
        self.setObjectName(name)
        self.setAccessibleName(word if chance is None else tr("{word}, about {tenths} in 10", word=word, tenths=round(chance * 10)))
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self._move = QVariantAnimation(self)
        self._move.valueChanged.connect(self._moved)
        if moves:
            self._move.setDuration(MOVE_MS)
            self._move.setStartValue(before)
            self._move.setEndValue(chance)
            self._move.start()

    def _moved(self, value: float) -> None:
        self._shown = value
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(WIDE), self.look.px(HIGH + TICK) + 2)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        high, wide = self.look.px(HIGH), float(self.width())
        if self.chance is None:
            pen = QPen(self.look.colour("edge"), 2)
            pen.setDashPattern([3.5, 2.2])
            pen.setCapStyle(Qt.PenCapStyle.FlatCap)
            painter.setPen(pen)
            painter.drawLine(QPointF(1, 1 + high / 2), QPointF(wide - 1, 1 + high / 2))
            painter.end()
            return
        frame = QRectF(1, 1, wide - 2, high)
        painter.fillRect(QRectF(1, 1, (wide - 2) * max(0.0, min(1.0, self._shown)), high), self.look.colour("thread"))
        painter.setPen(QPen(self.look.colour("ink-2"), HAIR))
        painter.drawRoundedRect(frame, 2, 2)
        painter.setPen(QPen(self.look.colour("ink-2"), 1))
        for share in (0.25, 0.5, 0.75):
            x = round(frame.left() + frame.width() * share) + 0.5
            painter.drawLine(QPointF(x, 1 + high), QPointF(x, 1 + high + self.look.px(TICK)))
        painter.end()
