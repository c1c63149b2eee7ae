"""One entry on the map: its outline and its sign tell its kind, so that no colour has to."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QEnterEvent, QFocusEvent, QKeyEvent, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.parts.signs import paint_sign
from fitdoctor.desk.tokens import CHOSEN, HAIR

if TYPE_CHECKING:
    from fitdoctor.knowledge.graph import Node

_PAD, _CUT, _TICK = 5.0, 0.5, 0.36
ARROWS = {Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1)}


def outline(kind: str, box: QRectF, cut: float) -> QPainterPath:
    """The outline of a kind: a cause has its corners cut, a method points on, a condition is a tag; the rest are plain."""
    left, top, right, bottom = box.left(), box.top(), box.right(), box.bottom()
    middle = box.center().y()
    corners = {
        "causes": ((left + cut, top), (right - cut, top), (right, top + cut), (right, bottom - cut), (right - cut, bottom),
                   (left + cut, bottom), (left, bottom - cut), (left, top + cut)),
        "methods": ((left, top), (right - cut, top), (right, middle), (right - cut, bottom), (left, bottom)),
        "conditions": ((left + cut, top), (right, top), (right, bottom), (left + cut, bottom), (left, bottom - cut), (left, top + cut)),
        "features": ((left, top), (right - cut, top), (right, top + cut), (right, bottom), (left, bottom)),
    }.get(kind, ((left, top), (right, top), (right, bottom), (left, bottom)))  # fmt: skip
    path = QPainterPath()
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))
    path.closeSubpath()
    return path


class MapNode(Control):
    """Emits where the arrows want to go, and that it is pointed at."""

    moved = Signal(int, int)
    pointed = Signal(bool)

    def __init__(self, look: Look, node: Node, says: str, current: bool) -> None:
        super().__init__(look, f"look-up-map-{node.kind}-{node.id}", says)
        self.node, self.current = node, current

    def _title(self) -> Paragraph:
        return Paragraph(self.look, self.node.title, "small-bold" if self.current else "small")

    def _word(self) -> Paragraph:
        return Paragraph(self.look, self.node.word.replace("-", " "), "small")

    def _indent(self) -> float:
        marked = {"conditions": 1.25, "checks": 1.15}.get(self.node.kind, 0.0)
        return _PAD + 4 + self.look.px(marked)

    def _room(self, width: float) -> float:
        point = self.look.px(_CUT) if self.node.kind in ("methods", "features", "causes") else 0
        return max(1.0, width - self._indent() - _PAD - 2 - point)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        words = self._word().height(self._room(width)) if self.node.word else 0.0
        ticks = self.look.px(_TICK) if self.node.kind == "measurements" else 0
        return ceil(self._title().height(self._room(width)) + words + ticks + 2 * _PAD)

    def sizeHint(self) -> QSize:
        wide = self.look.px(10)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        wide = max(self._title().least_width(), self._word().least_width())
        return QSize(ceil(self._indent() + wide + _PAD + 3 + self.look.px(_CUT)), ceil(self.look.line("small") + 2 * _PAD))

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self._title().least_width() > self._room(self.width()) + 1 or self.height() < self.heightForWidth(self.width())

    # ---- pointing

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        self.pointed.emit(True)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.pointed.emit(False)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.pointed.emit(True)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.pointed.emit(False)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = ARROWS.get(Qt.Key(event.key()))
        if step and not event.modifiers() & Qt.KeyboardModifier.AltModifier:
            self.moved.emit(*step)
        else:
            super().keyPressEvent(event)

    # ---- painting

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, lit = self.look, self.current or self.hovered
        width = CHOSEN if self.current else HAIR
        box = QRectF(self.rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2)
        painter.setBrush(look.colour("thread-tint" if self.current else "paper-2" if self.hovered else "paper"))
        painter.setPen(QPen(look.colour("thread" if lit else "edge"), width))
        painter.drawPath(outline(self.node.kind, box, look.px(_CUT)))
        self._paint_sign(painter, box)
        text = QRectF(self._indent(), _PAD, self._room(self.width()), self.height())
        self._title().paint(painter, text, look.colour("ink"))
        if self.node.word:
            text.setTop(_PAD + self._title().height(text.width()))
            self._word().paint(painter, text, look.colour("ink-2"))
        self.paint_ring(painter)
        painter.end()

    def _paint_sign(self, painter: QPainter, box: QRectF) -> None:
        """The eye of a tag, the mark of a question, the ticks of a tape."""
        look, line = self.look, self.look.line("small")
        if self.node.kind == "conditions":
            eye = look.px(0.2)
            painter.setBrush(look.colour("paper"))
            painter.drawEllipse(QPointF(_PAD + look.px(0.55), self.height() / 2), eye, eye)
        elif self.node.kind == "checks":
            size = look.px(0.8)
            paint_sign(painter, "query", QRectF(_PAD + 3, _PAD + (line - size) / 2, size, size), look.colour("ink-2"))
        elif self.node.kind == "measurements":
            step, long = look.px(0.62), look.px(_TICK)
            for nth in range(1, int(box.width() / step)):
                x = box.left() + nth * step
                painter.drawLine(QPointF(x, box.bottom()), QPointF(x, box.bottom() - (long if nth % 4 == 0 else long / 2)))
