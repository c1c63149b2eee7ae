"""How it went over time, as a line: the share of points got over the last answers."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QDate, QLocale, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.tokens import HAIR, THREAD_LINE
from fitdoctor.desk.words import count, tr
from fitdoctor.practice.progress import Point

_HIGH = 13.0
"In em."
_LEVELS = ((1.0, "all"), (0.5, "half"), (0.0, "none"))


class Curve(QWidget):
    """Answers from left to right; how much was right from bottom to top. Says its ends aloud."""

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.look = look
        self._points: tuple[Point, ...] = ()
        self.setObjectName(name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_points(self, points: Sequence[Point]) -> None:
        """Show another curve."""
        self._points = tuple(points)
        self.setAccessibleName(self.says())
        self.update()

    def says(self) -> str:
        """The curve in words."""
        if not self._points:
            return tr("No curve yet.")
        first, last = self._points[0], self._points[-1]
        asked = count(last.answers, "After 1 answer", "After {number} answers")
        so_far = tr("{tenths} in 10 right of late", tenths=round(last.share * 10))
        return tr("{asked}, from {day}: {so_far}.", asked=asked, day=_day(first), so_far=so_far)

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(30), self.look.px(_HIGH))

    def _field(self) -> QRectF:
        """Where the line is drawn: words at its left and below it."""
        metrics = self.look.metrics("small")
        wide = max(metrics.horizontalAdvance(tr(word)) for _, word in _LEVELS) + 10
        below = self.look.line("small") + 6
        top = self.look.line("small") / 2 + 2
        return QRectF(wide, top, self.width() - wide - 8, self.height() - below - top)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        field = self._field()
        self._paint_levels(painter, field)
        self._paint_days(painter, field)
        painter.setPen(
            QPen(self.look.colour("thread"), THREAD_LINE, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)
        )
        places = [self._at(field, at) for at in range(len(self._points))]
        painter.drawPolyline(QPolygonF(places)) if len(places) > 1 else None
        if places:
            painter.setBrush(self.look.colour("thread"))
            painter.drawEllipse(places[-1], 3.0, 3.0)
        painter.end()

    def _at(self, field: QRectF, number: int) -> QPointF:
        point = self._points[number]
        along = number / max(1, len(self._points) - 1)
        return QPointF(field.left() + along * field.width(), field.bottom() - point.share * field.height())

    def _paint_levels(self, painter: QPainter, field: QRectF) -> None:
        painter.setFont(self.look.font("small"))
        high = self.look.line("small")
        for share, word in _LEVELS:
            y = field.bottom() - share * field.height()
            painter.setPen(QPen(self.look.colour("ink" if share == 0 else "rule"), HAIR))
            painter.drawLine(QPointF(field.left(), y), QPointF(field.right(), y))
            painter.setPen(self.look.colour("ink-2"))
            box = QRectF(0, y - high / 2, field.left() - 10, high)
            painter.drawText(box, int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter), tr(word))

    def _paint_days(self, painter: QPainter, field: QRectF) -> None:
        """The first day and the last below the line."""
        if not self._points:
            return
        painter.setPen(self.look.colour("ink-2"))
        box = QRectF(field.left(), field.bottom() + 4, field.width(), self.look.line("small"))
        first, last = (_day(self._points[at], QLocale.FormatType.ShortFormat) for at in (0, -1))
        painter.drawText(box, int(Qt.AlignmentFlag.AlignLeft), first)
        if last != first:
            painter.drawText(box, int(Qt.AlignmentFlag.AlignRight), last)


def _day(point: Point, form: QLocale.FormatType = QLocale.FormatType.LongFormat) -> str:
    day = point.day
    return QLocale().toString(QDate(day.year, day.month, day.day), form)
