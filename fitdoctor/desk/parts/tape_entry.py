"""A tape measure to click, drag or step: it shows the stretch round the value."""

from __future__ import annotations

from math import floor

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import KEYBOARD, ring
from fitdoctor.desk.tokens import HAIR
from fitdoctor.desk.words import tr
from fitdoctor.shop import Shop
from fitdoctor.units import speak_length, step_mm

HIGH, EDGE = 56, 14.0
_SPANS = {"in": 2, "cm": 5}
_INCH_TICKS = ((8, 30), (4, 21), (2, 14), (1, 8))
_CM_TICKS = ((10, 30), (5, 20), (1, 9))


class TapeEntry(QWidget):
    """Emits the length pointed at, rounded to the shop's step, mm."""

    lengthPointed = Signal(float)

    def __init__(self, look: Look, shop: Shop, name: str, says: str) -> None:
        super().__init__()
        self.look, self.shop = look, shop
        self.mm: float | None = None
        self._first, self._ringed = 0, False
        self.setObjectName(name)
        self._says = says
        self.setAccessibleName(says)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(look.grown(HIGH))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(18), self.look.grown(HIGH))

    def minimumSizeHint(self) -> QSize:
        return QSize(200, self.look.grown(HIGH))

    def show_length(self, mm: float | None) -> None:
        """Show a length, and the stretch of tape round it."""
        self.mm = mm
        whole = floor((mm or 0.0) / self._unit_mm())
        span = _SPANS[self.shop.unit]
        if not self._first <= whole < self._first + span:
            self._first = max(0, whole - (1 if whole >= span else 0))
        if whole < span:
            self._first = 0
        spoken = speak_length(mm, self.shop.unit, self.shop.finest) if mm is not None else tr("nothing yet")
        self.setAccessibleDescription(spoken)
        self.update()

    def _unit_mm(self) -> float:
        return step_mm("in", 1) if self.shop.unit == "in" else step_mm("cm") * 10

    def _per_unit(self) -> float:
        return (self.width() - 2 * EDGE) / _SPANS[self.shop.unit]

    def _at(self, x: float) -> float:
        step = step_mm(self.shop.unit, self.shop.finest)
        mm = (self._first + (x - EDGE) / self._per_unit()) * self._unit_mm()
        return max(0.0, round(mm / step) * step)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.lengthPointed.emit(self._at(event.position().x()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton:
            self.lengthPointed.emit(self._at(min(self.width() - EDGE, max(EDGE, event.position().x()))))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        by = {Qt.Key.Key_Left: -1, Qt.Key.Key_Down: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: 1}.get(Qt.Key(event.key()))
        if by is None:
            super().keyPressEvent(event)
            return
        step = step_mm(self.shop.unit, self.shop.finest)
        self.lengthPointed.emit(max(0.0, (round((self.mm or 0.0) / step) + by) * step))

    def focusInEvent(self, event: QFocusEvent) -> None:
        self._ringed = event.reason() in KEYBOARD
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self._ringed = False
        super().focusOutEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        low = self.look.grown(40)
        painter.setPen(QPen(self.look.colour("edge"), HAIR))
        painter.drawLine(QPointF(0, 1), QPointF(self.width(), 1))
        painter.drawLine(QPointF(0, low), QPointF(self.width(), low))
        self._paint_ticks(painter)
        self._paint_value(painter)
        if self._ringed and self.hasFocus():
            ring(painter, self.look, self.rect().toRectF())
        painter.end()

    def _paint_ticks(self, painter: QPainter) -> None:
        ticks = _INCH_TICKS if self.shop.unit == "in" else _CM_TICKS
        parts, span = ticks[0][0], _SPANS[self.shop.unit]
        for nth in range(span * parts + 1):
            x = EDGE + nth * self._per_unit() / parts
            high = next(h for every, h in ticks if nth % every == 0)
            painter.setPen(QPen(self.look.colour("ink"), 2 if nth % parts == 0 else 1.3))
            painter.drawLine(QPointF(x, 2), QPointF(x, 2 + self.look.grown(high)))
            if nth % parts == 0:
                self._paint_number(painter, x, self._first + nth // parts, nth == span * parts)

    def _paint_number(self, painter: QPainter, x: float, number: int, last: bool) -> None:
        painter.setFont(self.look.font("small-bold"))
        wide = self.look.metrics("small-bold").horizontalAdvance(str(number))
        painter.drawText(QPointF(x - wide - 5 if last else x + 5, self.look.grown(35)), str(number))

    def _paint_value(self, painter: QPainter) -> None:
        if self.mm is None:
            return
        x = EDGE + (self.mm / self._unit_mm() - self._first) * self._per_unit()
        if not 0 <= x <= self.width():
            return
        thread, low = self.look.colour("thread"), self.look.grown(44)
        painter.setPen(QPen(thread, 3.4))
        painter.drawLine(QPointF(x, 2), QPointF(x, low))
        arrow = QPainterPath(QPointF(x, low - 2))
        arrow.lineTo(x - 7, self.height() - 2)
        arrow.lineTo(x + 7, self.height() - 2)
        arrow.closeSubpath()
        painter.fillPath(arrow, thread)
