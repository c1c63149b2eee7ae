"""The running head: the name, the places, and the way to the handbook."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.parts.find_door import FindDoor
from fitdoctor.desk.parts.text import OneLine
from fitdoctor.desk.tokens import MARGIN

HIGH = 52
_BAR = 4


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
    """Emits the place wanted."""

    placeWanted = Signal(str)

    def __init__(self, look: Look, places: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self.look = look
        self.setObjectName("head")
        self.setAutoFillBackground(True)
        self.setFixedHeight(max(HIGH, look.grown(HIGH)))
        row = QHBoxLayout(self)
        row.setContentsMargins(MARGIN, 0, MARGIN, 0)
        row.setSpacing(24)
        row.addWidget(OneLine(look, "fitdoctor", "name", name="head-name"))
        row.addSpacing(8)
        self.places = [PlaceButton(look, place, title) for place, title in places]
        self.group = ControlGroup(self.places, exclusive=True)
        for button in self.places:
            button.clicked.connect(lambda _on=False, who=button: self._press(who))
            row.addWidget(button)
        row.addStretch(1)
        self.find_door = FindDoor(look)
        self.find_door.clicked.connect(lambda: self.placeWanted.emit("look-up"))
        row.addWidget(self.find_door)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.find_door.setVisible(self.width() > self.look.px(60))  # where it has no room, the place and the key lead there too

    def _press(self, button: PlaceButton) -> None:
        button.setChecked(True)
        self.placeWanted.emit(button.place)

    def show_place(self, place: str) -> None:
        """Show which place is open."""
        for button in self.places:
            button.setChecked(button.place == place)
        self.group.rest()
