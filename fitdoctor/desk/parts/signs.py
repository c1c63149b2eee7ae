"""The drawn signs: tick, cross, question mark, triangle and the rest, as paths, so that no font needs them."""

from __future__ import annotations

from functools import cache
from typing import Literal

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

Sign = Literal["tick", "cross", "query", "care", "plus", "minus", "leave", "hanger"]

_M, _L, _C, _Z = "M", "L", "C", "Z"
# In a box of 16 by 16.
_STROKES: dict[str, tuple[tuple[object, ...], ...]] = {
    "tick": ((_M, 2.5, 8.5), (_L, 6.3, 12.5), (_L, 13.5, 3.5)),
    "cross": ((_M, 3.5, 3.5), (_L, 12.5, 12.5), (_M, 12.5, 3.5), (_L, 3.5, 12.5)),
    "query": (
        (_M, 4.6, 5.4),
        (_C, 4.6, 1.2, 11.6, 1.4, 11.4, 5.4),
        (_C, 11.3, 7.8, 8, 7.6, 8, 10.4),
        (_M, 8, 13.8),
        (_L, 8, 14.1),
    ),
    "care": ((_M, 8, 2), (_L, 14.5, 13.5), (_L, 1.5, 13.5), (_Z,), (_M, 8, 6.6), (_L, 8, 9.2), (_M, 8, 11.3), (_L, 8, 11.5)),
    "plus": ((_M, 8, 2.5), (_L, 8, 13.5), (_M, 2.5, 8), (_L, 13.5, 8)),
    "minus": ((_M, 2.5, 8), (_L, 13.5, 8)),
    "leave": ((_M, 4, 3), (_L, 4, 13), (_M, 12, 3), (_L, 12, 13)),
    "hanger": (
        (_M, 6.6, 3.4),
        (_C, 6.4, 1.2, 9.8, 1.2, 9.4, 3.4),
        (_C, 9.2, 4.4, 8, 4.4, 8, 6),
        (_L, 15.2, 11.6),
        (_L, 0.8, 11.6),
        (_L, 8, 6),
    ),
}
_WEIGHT = {"hanger": 1.3, "care": 1.7}


@cache
def _path(sign: str) -> QPainterPath:
    path = QPainterPath()
    for step in _STROKES[sign]:
        numbers = [float(str(number)) for number in step[1:]]
        points = [QPointF(numbers[at], numbers[at + 1]) for at in range(0, len(numbers), 2)]
        if step[0] == _M:
            path.moveTo(points[0])
        elif step[0] == _L:
            path.lineTo(points[0])
        elif step[0] == _C:
            path.cubicTo(*points)
        else:
            path.closeSubpath()
    return path


def paint_sign(painter: QPainter, sign: Sign, box: QRectF, colour: QColor, weight: float | None = None) -> None:
    """Paint a sign into a square; weight is the width of its line as a share of 16."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(box.topLeft())
    painter.scale(box.width() / 16, box.height() / 16)
    pen = QPen(colour, weight or _WEIGHT.get(sign, 2.3))
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(_path(sign))
    painter.restore()
