"""A line of a summary: what it is in ink-2 at the left, what stands there at the right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.text import Rule, Words

_LABEL_EM, _ROOMY_EM = 4.8, 17
_UNBOUND = 16777215


class LabelRow(QWidget):
    """With a hair line below; one above the other where there is no room."""

    def __init__(self, look: Look, label: str, body: str | QWidget, name: str = "") -> None:
        super().__init__()
        self.look = look
        said = body if isinstance(body, QWidget) else Words(look, body, "row", name=name)
        words = Words(look, label, "row", "ink-2")
        self._label = words
        self._line = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._line.setContentsMargins(0, 8, 0, 8)
        self._line.addWidget(words, 0, Qt.AlignmentFlag.AlignTop)
        self._line.addWidget(said, 1, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(self._line)
        column.addWidget(Rule(look))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        level = event.size().width() > self.look.px(_ROOMY_EM)
        self._line.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)
        self._line.setSpacing(12 if level else 2)
        self._label.setFixedWidth(self.look.px(_LABEL_EM)) if level else self._label.setMaximumWidth(_UNBOUND)
