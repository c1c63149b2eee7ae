"""A share in per cent, one step less or more by buttons and keys."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.text import OneLine
from fitdoctor.desk.words import tr


class Stepper(QWidget):
    """Emits the share wanted. Minus and plus step too."""

    stepped = Signal(int)

    def __init__(self, look: Look, name: str, says: str, least: int, most: int, step: int) -> None:
        super().__init__()
        self.says, self.least, self.most, self._step = says, least, most, step
        self.percent = 100
        self.setObjectName(name)
        self.less = Button(look, "", f"{name}-less", sign="minus")
        self.more = Button(look, "", f"{name}-more", sign="plus")
        self.shown = OneLine(look, "", "bold", name=f"{name}-percent")
        self.shown.align = Qt.AlignmentFlag.AlignHCenter
        self.shown.setFixedWidth(ceil(look.metrics("bold").horizontalAdvance(tr("{n} %", n=most)) + 8))
        self.less.clicked.connect(lambda: self._move(-1))
        self.more.clicked.connect(lambda: self._move(1))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        for widget in (self.less, self.shown, self.more):
            row.addWidget(widget)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_percent(self, percent: int) -> None:
        """Show a share."""
        self.percent = percent
        self.shown.say(tr("{n} %", n=percent))
        self.less.setEnabled(percent > self.least)
        self.more.setEnabled(percent < self.most)
        self.less.setAccessibleName(tr("{what}, {n} per cent, less", what=self.says, n=percent))
        self.more.setAccessibleName(tr("{what}, {n} per cent, more", what=self.says, n=percent))

    def _move(self, by: int) -> None:
        to = min(self.most, max(self.least, self.percent + by * self._step))
        if to != self.percent:
            self.stepped.emit(to)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.text() in ("+", "=", "-"):
            self._move(-1 if event.text() == "-" else 1)
        else:
            super().keyPressEvent(event)
