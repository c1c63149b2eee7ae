"""Fractions set in type: a raised numerator, a drawn stroke, a lowered denominator, so that no font needs the signs."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

SMALL = 0.7
RAISED, LOWERED = 0.32, 0.06
STROKE = 0.3
AIR = 0.05


@dataclass(frozen=True)
class Fraction:
    """A numerator over a denominator in a font."""

    numerator: str
    denominator: str

    def width(self, font: QFont) -> float:
        """How much room it takes, pixels."""
        metrics, px = QFontMetricsF(_small(font)), font.pixelSize()
        digits = metrics.horizontalAdvance(self.numerator) + metrics.horizontalAdvance(self.denominator)
        return digits + px * (STROKE + 2 * AIR)

    def paint(self, painter: QPainter, font: QFont, at: QPointF, colour: QColor) -> None:
        """Paint it with its left end on the base line at a place."""
        small, px = _small(font), font.pixelSize()
        painter.setFont(small)
        painter.setPen(colour)
        x = at.x() + px * AIR
        painter.drawText(QPointF(x, at.y() - px * RAISED), self.numerator)
        x += QFontMetricsF(small).horizontalAdvance(self.numerator)
        pen = QPen(colour, max(1.1, px * (0.075 if font.bold() else 0.055)))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.drawLine(QPointF(x + px * 0.02, at.y() + px * 0.04), QPointF(x + px * (STROKE - 0.02), at.y() - px * 0.68))
        x += px * STROKE
        painter.setPen(colour)
        painter.drawText(QPointF(x, at.y() + px * LOWERED), self.denominator)


def _small(font: QFont) -> QFont:
    small = QFont(font)
    small.setPixelSize(max(1, round(font.pixelSize() * SMALL)))
    return small
