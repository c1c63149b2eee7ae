"""Back and forward through the pages opened before; each says where it leads."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link


class Turns(QWidget):
    """Emits -1 for back and 1 for forward."""

    turned = Signal(int)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.back, self.forward = Link(look, "", "look-up-back"), Link(look, "", "look-up-forward")
        self.back.clicked.connect(lambda: self.turned.emit(-1))
        self.forward.clicked.connect(lambda: self.turned.emit(1))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 8)
        row.setSpacing(24)
        row.addWidget(self.back, 0, Qt.AlignmentFlag.AlignLeft)
        row.addStretch(1)
        row.addWidget(self.forward, 0, Qt.AlignmentFlag.AlignRight)

    def show_turns(self, back: str, forward: str) -> None:
        """Name the page before and the page after; an empty name takes the link away."""
        self.back.say(f"‹ {back}" if back else "")
        self.forward.say(f"{forward} ›" if forward else "")
        self.setVisible(bool(back or forward))
