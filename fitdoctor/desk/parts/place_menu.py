"""The places as a menu, where there is no room for them side by side."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QMenu, QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.tokens import CORNER, HAIR
from fitdoctor.desk.words import tr

_PAD, _GAP, _ARROW = 14, 10, 0.6
_APART = "   "
"Keeps the name and the key in the menu from touching."


class PlaceMenu(Control):
    """Says which place is open; pressed, or with Enter, Space or the arrow down, it shows them all."""

    placeWanted = Signal(str)

    def __init__(self, look: Look, places: Sequence[tuple[str, str]]) -> None:
        super().__init__(look, "head-places")
        self.places = list(places)
        self.open, self.words = "", ""
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.clicked.connect(self.show_menu)
        self.show_place("")

    def show_place(self, place: str) -> None:
        """Say which place is open."""
        self.open = place
        self.words = dict(self.places).get(place, tr("Places"))
        self.setAccessibleName(tr("All places; open is {title}", title=self.words) if place in dict(self.places) else tr("All places"))
        self.updateGeometry()
        self.update()

    def show_menu(self) -> None:
        """All places as a menu, with their keys."""
        menu = QMenu(self)
        menu.setObjectName("head-places-menu")
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for number, (place, title) in enumerate(self.places, 1):
            action = menu.addAction(f"{title}{_APART}\t{tr('Ctrl {number}', number=number)}")
            action.setObjectName(f"head-places-{place}")
            action.triggered.connect(lambda _on=False, where=place: self.placeWanted.emit(where))
        menu.popup(self.mapToGlobal(self.rect().bottomLeft()))
        here = next((at for at, (place, _) in enumerate(self.places) if place == self.open), 0)
        menu.setActiveAction(menu.actions()[here])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Down:
            self.show_menu()
        else:
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        words = self.look.metrics("bold").horizontalAdvance(self.words)
        return QSize(ceil(words + self.look.em * _ARROW) + 2 * _PAD + _GAP, self.look.target())

    def clipped(self) -> bool:
        """Whether its words are out of sight."""
        return self.width() < self.sizeHint().width()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, inset = self.look, HAIR / 2
        painter.setPen(QPen(look.colour("ink"), HAIR))
        painter.setBrush(look.colour("paper-2" if self.hovered else "paper"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(inset, inset, -inset, -inset), CORNER, CORNER)
        painter.setFont(look.font("bold"))
        painter.setPen(look.colour("ink"))
        side = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        painter.drawText(self.rect().adjusted(_PAD, 0, -_PAD, 0), int(side), self.words)
        wide = look.em * _ARROW
        left, middle, rise = self.width() - _PAD - wide, self.height() / 2, wide / 4
        arrow = ((left, middle - rise), (left + wide / 2, middle + rise), (left + wide, middle - rise))
        painter.setPen(QPen(look.colour("ink"), HAIR + 0.5))
        painter.drawPolyline(QPolygonF([QPointF(*point) for point in arrow]))
        self.paint_ring(painter)
        painter.end()
