"""A zone of the figure: a place that can be pointed at and chosen, and says its name."""

from __future__ import annotations

import math
from collections.abc import Iterable

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QBrush, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QGraphicsPathItem, QStyleOptionGraphicsItem, QWidget

from fitdoctor.desk.figure_tones import FigureTones
from fitdoctor.desk.painter import path
from fitdoctor.figure.shapes import Polygon

CHOSEN_FILL = 0.13


def joined(areas: tuple[Polygon, ...]) -> QPainterPath:
    """Areas as one path: neighbours without the line between them."""
    whole = QPainterPath()
    for area in areas:
        whole = whole.united(path(area, True))
    return whole.simplified()


class ZoneItem(QGraphicsPathItem):
    """At rest a faint dashed outline; solid while pointed at; solid and tinted while chosen."""

    def __init__(self, zone: str, title: str, areas: tuple[Polygon, ...], tones: FigureTones) -> None:
        super().__init__(joined(areas))
        self.zone, self.title, self.tones = zone, title, tones
        self.pointed = self.chosen = False
        box = self.path().boundingRect()
        self.setZValue(100 - box.width() * box.height() / 1e5)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def set_state(self, pointed: bool, chosen: bool) -> None:
        """Show it pointed at, chosen, both or neither."""
        self.pointed, self.chosen = pointed, chosen
        self.update()

    def middles(self) -> tuple[QPointF, ...]:
        """The middle of each of its areas: a zone on both sides has two."""
        return tuple(area.boundingRect().center() for area in self.path().toSubpathPolygons())

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        if self.chosen:
            painter.fillPath(self.path(), QBrush(self.tones.colour("guide", CHOSEN_FILL)))
        strong = self.pointed or self.chosen
        pen = QPen(self.tones.colour("guide") if strong else self.tones.colour("edge", 0.55), 2.4 if strong else 1.2)
        pen.setCosmetic(True)
        if not strong:
            pen.setDashPattern([4, 4])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(self.path())


def nearest(zones: Iterable[ZoneItem], here: QPointF, dx: int, dy: int) -> tuple[str, QPointF] | None:
    """The zone, and the middle of its area, that lies nearest in a direction: near along it and not far aside."""
    best: tuple[str, QPointF] | None = None
    least = math.inf
    for item in zones:
        for middle in item.middles():
            way = middle - here
            along, aside = way.x() * dx + way.y() * dy, abs(way.x() * dy) + abs(way.y() * dx)
            if along > 1.0 and along + 2 * aside < least:
                best, least = (item.zone, middle), along + 2 * aside
    return best
