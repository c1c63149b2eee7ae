"""A small plate with a zone's name, of one size however far the figure is enlarged."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from fitdoctor.desk.figure_tones import FigureTones

PAD = 8.0
GAP = 6.0


class NamePlate(QGraphicsItem):
    """Stands above a place in mm; hidden while it has nothing to say."""

    def __init__(self, tones: FigureTones) -> None:
        super().__init__()
        self.tones, self.text = tones, ""
        self.pixels = 16
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)
        self.setZValue(2000)
        self.hide()

    def say(self, text: str, at: QPointF) -> None:
        """Show a name above a place; an empty name hides the plate."""
        self.prepareGeometryChange()
        self.text = text
        self.setPos(at)
        self.setVisible(bool(text))

    def _font(self) -> QFont:
        font = QFont(self.tones.font)
        font.setPixelSize(self.pixels)
        font.setBold(True)
        return font

    def boundingRect(self) -> QRectF:
        metrics = QFontMetricsF(self._font())
        wide, high = metrics.horizontalAdvance(self.text) + 2 * PAD, metrics.height() + PAD
        return QRectF(-wide / 2, -high - GAP, wide, high)

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setBrush(self.tones.colour("paper"))
        painter.setPen(QPen(self.tones.colour("guide"), 1.5))
        painter.drawRoundedRect(self.boundingRect().adjusted(1, 1, -1, -1), 3, 3)
        painter.setPen(self.tones.colour("text"))
        painter.setFont(self._font())
        painter.drawText(self.boundingRect(), int(Qt.AlignmentFlag.AlignCenter), self.text)
