"""The running head: the name, the places, and the way to the handbook."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from fitdoctor.desk.look import TWO_COLUMNS, Look
from fitdoctor.desk.parts.control import Control, ControlGroup, paint_edge
from fitdoctor.desk.parts.find_door import FindDoor
from fitdoctor.desk.parts.place_menu import PlaceMenu
from fitdoctor.desk.parts.text import OneLine
from fitdoctor.desk.tokens import MARGIN
from fitdoctor.desk.words import tr

HIGH = 52
_BAR, _GAP = 4, 24


class PlaceButton(Control):
    """One place of the program; the current one is bold with a bar below."""

    def __init__(self, look: Look, place: str, title: str) -> None:
        super().__init__(look, f"head-place-{place}", title)
        self.place, self.title = place, title
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)

    def sizeHint(self) -> QSize:
        return QSize(ceil(self.look.metrics("bold").horizontalAdvance(self.title)) + 8, self.look.grown(HIGH))

    def clipped(self) -> bool:
        """Whether its name is out of sight."""
        return self.width() < self.sizeHint().width()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        on = self.isChecked()
        painter.setFont(self.look.font("bold" if on else "body"))
        painter.setPen(self.look.colour("ink" if on or self.hovered else "ink-2"))
        painter.drawText(self.rect(), int(Qt.AlignmentFlag.AlignCenter), self.title)
        if on:
            painter.fillRect(QRectF(4, self.height() - _BAR, self.width() - 8, _BAR), self.look.colour("ink"))
        self.paint_ring(painter)
        painter.end()


class RunningHead(QWidget):
    """Emits the place wanted. Where the places have no room side by side they become a menu."""

    placeWanted = Signal(str)

    def __init__(self, look: Look, places: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self.look = look
        self.setObjectName("head")
        self.setAutoFillBackground(True)
        self.setFixedHeight(max(HIGH, look.grown(HIGH)))
        self.name = OneLine(look, "fitdoctor", "name", name="head-name")
        self.places = [PlaceButton(look, place, title) for place, title in places]
        self.group = ControlGroup(self.places, exclusive=True)
        self.menu = PlaceMenu(look, places)
        self.find_door = FindDoor(look)
        self.settings = PlaceButton(look, "settings", tr("Settings"))
        for button in (*self.places, self.settings):
            button.clicked.connect(lambda _on=False, who=button: self._press(who))
        self.menu.placeWanted.connect(self.placeWanted.emit)
        self.find_door.clicked.connect(lambda: self.placeWanted.emit("look-up"))
        row = QHBoxLayout(self)
        row.setContentsMargins(MARGIN, 0, MARGIN, 0)
        row.setSpacing(_GAP)
        row.addWidget(self.name)
        row.addSpacing(8)
        for widget in (*self.places, self.menu):
            row.addWidget(widget)
        row.addStretch(1)
        row.addWidget(self.find_door)
        row.addWidget(self.settings)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fold(event.size().width())

    def fold(self, width: int) -> None:
        """Choose between the places and their menu for a width in pixels, and whether the door to the handbook has room."""
        fixed = 2 * MARGIN + 8 + _GAP + sum(widget.sizeHint().width() + _GAP for widget in (self.name, self.settings))
        side_by_side = sum(button.sizeHint().width() + _GAP for button in self.places)
        as_menu = width < self.look.px(TWO_COLUMNS) or fixed + side_by_side > width
        taken = fixed + (self.menu.sizeHint().width() + _GAP if as_menu else side_by_side)
        focus = self.window().focusWidget()
        for button in self.places:
            button.setVisible(not as_menu)
        self.menu.setVisible(as_menu)
        if as_menu and focus in self.places:
            self.menu.setFocus(Qt.FocusReason.OtherFocusReason)
        self.find_door.setVisible(taken + self.find_door.sizeHint().width() <= width)  # its place and its key lead there too

    def _press(self, button: PlaceButton) -> None:
        button.setChecked(True)
        self.placeWanted.emit(button.place)

    def show_place(self, place: str) -> None:
        """Show which place is open."""
        for button in (*self.places, self.settings):
            button.setChecked(button.place == place)
        self.group.rest()
        self.menu.show_place(place)
        self.fold(self.width())

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        paint_edge(self, self.look, below=True)
