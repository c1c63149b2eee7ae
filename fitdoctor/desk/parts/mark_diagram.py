"""The reduced diagram of one mark: here, this much, this way."""

from __future__ import annotations

import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.amounts.marks import Mark, Point
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.tokens import CHOSEN, HAIR
from fitdoctor.desk.words import tr
from fitdoctor.guides import Diagram, diagram
from fitdoctor.sheet import SheetMark
from fitdoctor.shop import Shop

HIGH, WIDE = 190, 300
ROOM_EM = 1.9
"Kept free round the lines for amounts and names, as a share of the text's size."
HEAD, CLEAR = 9.0, 4.0
"Pixels: the arrow's head; between a line and the words beside it."


class MarkDiagram(QWidget):
    """Paints both lines of a mark with the amounts between them; nothing where the mark has no lines."""

    def __init__(self, look: Look, shop: Shop, name: str = "mark-diagram") -> None:
        super().__init__()
        self.look, self.shop = look, shop
        self._drawn: Diagram | None = None
        self.setObjectName(name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(look.grown(HIGH))

    def show_mark(self, mark: Mark, said: SheetMark) -> None:
        """Show a mark; the words are those of its row."""
        self._drawn = diagram(mark)
        what = tr("{letter}, reduced: {do}, {how_much}", letter=said.letter, do=said.do, how_much=said.how_much)
        larger = self._drawn.larger
        often = tr("The amount is drawn {times} times as large as the seam.", times=f"{larger:.0f}") if larger >= 1.5 else ""
        self.setAccessibleName(f"{what}. {often}".strip())
        if self.parent() or not self._drawn.old:
            self.setVisible(bool(self._drawn.old))  # shown without a parent it would flash up as a window of its own
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(self.look.grown(WIDE), self.look.grown(HIGH))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), self.look.colour("paper-2"))
        if self._drawn and self._drawn.old:
            _Sketch(painter, self.look, self.shop, self._drawn, QRectF(self.rect())).paint()
        painter.end()


def diagram_image(look: Look, shop: Shop, mark: Mark, dpr: float) -> QImage:
    """The diagram of a mark on white paper."""
    size = (look.grown(WIDE), look.grown(HIGH))
    image = QImage(round(size[0] * dpr), round(size[1] * dpr), QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(dpr)
    image.fill(0xFFFFFFFF)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _Sketch(painter, look, shop, diagram(mark), QRectF(0, 0, *size)).paint()
    painter.end()
    return image


class _Sketch:
    """One diagram laid into a box of pixels."""

    def __init__(self, painter: QPainter, look: Look, shop: Shop, drawn: Diagram, box: QRectF) -> None:
        self.painter, self.look, self.shop, self.drawn = painter, look, shop, drawn
        high, wide = look.em * ROOM_EM, self._words_wide()
        lines = (*drawn.old, *drawn.new)
        left, right = min(x for x, _ in lines), max(x for x, _ in lines)
        top, bottom = min(y for _, y in lines), max(y for _, y in lines)
        self.scale = min((box.width() - 2 * wide) / max(right - left, 1), (box.height() - 2 * high) / max(bottom - top, 1))
        self.scale = max(0.4, self.scale)
        self._middle, self._at = box.center(), ((left + right) / 2, (top + bottom) / 2)

    def _words_wide(self) -> float:
        """Room beside the lines for the longest of the words that stand there."""
        metrics = self.look.metrics("small")
        beside = [name for _, name, anchor in self.drawn.ends if anchor != "middle"]
        beside += [self.shop.length(label.mm) for label in self.drawn.labels if label.anchor != "middle"]
        return max((metrics.horizontalAdvance(words) for words in beside), default=0.0) + self.look.em

    def _place(self, point: Point) -> QPointF:
        return self._middle + QPointF((point[0] - self._at[0]) * self.scale, (point[1] - self._at[1]) * self.scale)

    def _polygon(self, points: Sequence[Point]) -> QPolygonF:
        return QPolygonF([self._place(point) for point in points])

    def paint(self) -> None:
        """Old line thin, new line in the thread's colour, the cloth between them tinted; amounts, names, and which way."""
        painter, look, drawn = self.painter, self.look, self.drawn
        if len(drawn.old) == len(drawn.new):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look.colour("thread-tint"))
            painter.drawPolygon(self._polygon((*drawn.old, *reversed(drawn.new))))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(look.colour("edge"), HAIR))
        for tick in drawn.ticks:
            painter.drawPolyline(self._polygon(tick))
        for line, tone, width in ((drawn.old, "ink", HAIR), (drawn.new, "thread", CHOSEN + 0.5)):
            pen = QPen(look.colour(tone), width)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
            painter.setPen(pen)
            painter.drawPolyline(self._polygon(line))
        if drawn.arrow:
            self._arrow(*drawn.arrow)
        for label in drawn.labels:
            self._words(label.at, self.shop.length(label.mm), label.anchor, "small-bold", "ink")
        for at, name, anchor in drawn.ends:
            self._words(at, name, anchor, "small", "ink-2")

    def _arrow(self, start: Point, end: Point) -> None:
        """From the old line to the new one, where they are farthest apart."""
        tail, tip = self._place(start), self._place(end)
        way = math.atan2(tip.y() - tail.y(), tip.x() - tail.x())
        size = min(HEAD, math.hypot(tip.x() - tail.x(), tip.y() - tail.y()) * 0.6)
        head = [tip - QPointF(math.cos(way + turn) * size, math.sin(way + turn) * size) for turn in (0.45, -0.45)]
        self.painter.setPen(QPen(self.look.colour("ink"), HAIR))
        self.painter.drawLine(tail, tip)
        self.painter.setBrush(self.look.colour("ink"))
        self.painter.drawPolygon(QPolygonF([tip, *head]))

    def _words(self, at: Point, words: str, anchor: str, role: str, tone: str) -> None:
        text = Paragraph(self.look, words, role)
        wide, high = text.natural_width() + 1, self.look.line(role)
        foot = self._place(at)
        left = foot.x() - {"start": -CLEAR, "middle": wide / 2, "end": wide + CLEAR}[anchor]
        text.paint(self.painter, QRectF(left, foot.y() - high * 0.72, wide, high), self.look.colour(tone))
