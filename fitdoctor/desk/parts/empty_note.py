"""What is said where there is nothing yet: a sentence, and one button that helps."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.text import Words


class EmptyNote(QWidget):
    """Set at the top left like any text. Emits that its button was pressed."""

    pressed = Signal()

    def __init__(self, look: Look, text: str, name: str, button: str = "") -> None:
        super().__init__()
        self.setObjectName(name)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(16)
        self.words = Words(look, text, "reading", name=f"{name}-words")
        self.words.setMaximumWidth(look.px(34))
        column.addWidget(self.words)
        self.button = Button(look, button, f"{name}-button")
        self.button.setVisible(bool(button)) if not button else None
        self.button.clicked.connect(self.pressed.emit)
        column.addWidget(self.button, 0, Qt.AlignmentFlag.AlignLeft)

    def say(self, text: str, button: str = "") -> None:
        """Say something else."""
        self.words.say(text)
        self.button.setVisible(bool(button))
        self.button.say(button)
