"""A few words side by side, one of them chosen and filled with ink: which part of a list is shown."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.tokens import HAIR

_PAD = 18


class SwitchButton(Control):
    """One part of a switch."""

    def __init__(self, look: Look, value: str, text: str, name: str, first: bool) -> None:
        super().__init__(look, name, text)
        self.value, self.words, self.first = value, text, first
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def say(self, text: str) -> None:
        """Change its words."""
        self.words = text
        self.setAccessibleName(text)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(ceil(self.look.metrics("bold").horizontalAdvance(self.words)) + 2 * _PAD, self.look.target())

    def minimumSizeHint(self) -> QSize:
        return QSize(self.sizeHint().width() - _PAD, self.look.target())

    def clipped(self) -> bool:
        """Whether its words are out of sight."""
        return self.width() < self.minimumSizeHint().width()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, on = self.look, self.isChecked()
        painter.fillRect(self.rect(), look.colour("ink" if on else "paper-2" if self.hovered else "paper"))
        painter.setPen(QPen(look.colour("ink"), HAIR))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        frame = QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75)
        painter.drawRect(frame if self.first else frame.adjusted(-1.5, 0, 0, 0))
        painter.setFont(look.font("bold" if on else "body"))
        painter.setPen(look.colour("paper" if on else "ink"))
        painter.drawText(self.rect(), int(Qt.AlignmentFlag.AlignCenter), self.words)
        self.paint_ring(painter)
        painter.end()


class Switch(QWidget):
    """Emits the value chosen. One stop of the Tab key."""

    chosen = Signal(str)

    def __init__(self, look: Look, values: Sequence[tuple[str, str]], value: str, name: str) -> None:
        super().__init__()
        self.setObjectName(name)
        self.buttons = [SwitchButton(look, each, text, f"{name}-{each}", not at) for at, (each, text) in enumerate(values)]
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        for button in self.buttons:
            button.setChecked(button.value == value)
            button.clicked.connect(lambda _on=False, who=button: self._press(who))
            row.addWidget(button)
        self.group = ControlGroup(self.buttons, exclusive=True)

    def _press(self, button: SwitchButton) -> None:
        button.setChecked(True)
        self.chosen.emit(button.value)
