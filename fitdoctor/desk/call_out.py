"""A call-out: a ball with a number or a letter beside the figure, a leader line, and a dot on the place it means."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QGraphicsItem, QGraphicsSceneMouseEvent, QStyleOptionGraphicsItem, QWidget

from fitdoctor.desk.figure_tones import FigureTones
from fitdoctor.figure.shapes import Point

EM = 17.0
"Body size of the text in pixels where none is set."
BALL_EM = 0.88
DOT = 3.5


def ball_radius(em: float) -> float:
    """Radius of a ball for a body size of text, in pixels."""
    return em * BALL_EM


@dataclass(frozen=True)
class CallOutText:
    """What a call-out says and where it points; the entry is what a click on it means."""

    label: str
    at: Point
    says: str = ""
    entry: str = ""


class CallOut(QGraphicsItem):
    """Keeps its size in pixels while the figure is enlarged; its own place is the ball's middle, in mm."""

    def __init__(self, text: CallOutText, tones: FigureTones, chosen: Callable[[str], None], em: float = EM) -> None:
        super().__init__()
        self.text, self.tones, self._chosen, self._em = text, tones, chosen, em
        self._to = QPointF()
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)
        self.setAcceptedMouseButtons(Qt.MouseButton.LeftButton)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setZValue(1000)
        self.setToolTip(text.says)

    def place(self, ball: QPointF, scale: float) -> None:
        """Put the ball's middle at a place in mm; `scale` is pixels a mm."""
        self.prepareGeometryChange()
        self.setPos(ball)
        self._to = QPointF((self.text.at[0] - ball.x()) * scale, (self.text.at[1] - ball.y()) * scale)

    def boundingRect(self) -> QRectF:
        edge = ball_radius(self._em) + 2
        ball = QRectF(-edge, -edge, 2 * edge, 2 * edge)
        return ball.united(QRectF(self._to.x() - DOT - 1, self._to.y() - DOT - 1, 2 * DOT + 2, 2 * DOT + 2))

    def shape(self) -> QPainterPath:
        ball = QPainterPath()
        ball.addEllipse(QPointF(0, 0), ball_radius(self._em) + 2, ball_radius(self._em) + 2)
        return ball

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        draw_call_out(painter, self.tones, self.text.label, (0.0, 0.0), (self._to.x(), self._to.y()), self._em)

    def mousePressEvent(self, _event: QGraphicsSceneMouseEvent) -> None:
        self._chosen(self.text.entry)


def draw_call_out(painter: QPainter, tones: FigureTones, label: str, ball: Point, to: Point, em: float = EM) -> None:
    """Paint a call-out in pixels: the ball round its label, the leader from its rim, the dot at its end."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    radius = ball_radius(em)
    thread, middle, end = tones.colour("guide"), QPointF(*ball), QPointF(*to)
    way = end - middle
    away = (way.x() ** 2 + way.y() ** 2) ** 0.5 or 1.0
    painter.setPen(QPen(thread, 1.6))
    painter.drawLine(middle + way * (radius / away), end)
    painter.setBrush(thread)
    painter.drawEllipse(end, DOT, DOT)
    painter.setBrush(tones.colour("paper"))
    painter.setPen(QPen(thread, 2))
    painter.drawEllipse(middle, radius, radius)
    font = QFont(tones.font)
    font.setPixelSize(round(em * 0.94))
    font.setBold(True)
    painter.setFont(font)
    painter.drawText(QRectF(middle.x() - radius, middle.y() - radius, 2 * radius, 2 * radius), int(Qt.AlignmentFlag.AlignCenter), label)


def spread(wanted: list[float], least: float, top: float, bottom: float) -> list[float]:
    """Heights in order, moved apart to at least `least` and kept between top and bottom as far as they fit."""
    placed: list[float] = []
    for height in wanted:
        placed.append(max(height, top, placed[-1] + least if placed else top))
    over = max(0.0, (placed[-1] - bottom) if placed else 0.0)
    limit = bottom
    for i in range(len(placed) - 1, -1, -1):
        if over and placed[i] > limit:
            placed[i] = limit
        limit = placed[i] - least
    return placed
