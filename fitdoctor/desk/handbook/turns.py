"""Back and forward through what was opened before, each with where it leads; and from the page of an entry to its map."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link


class Turns(QWidget):
    """Emits -1 for back and 1 for forward; and that the map is wanted in place of the page, or the page again."""

    turned = Signal(int)
    mapWanted = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.back, self.forward = Link(look, "", "look-up-back"), Link(look, "", "look-up-forward")
        self.back.clicked.connect(lambda: self.turned.emit(-1))
        self.forward.clicked.connect(lambda: self.turned.emit(1))
        self.map = Link(look, "", "look-up-map-turn")
        self.map.clicked.connect(self.mapWanted.emit)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 8)
        row.setSpacing(24)
        row.addWidget(self.back, 0, Qt.AlignmentFlag.AlignLeft)
        row.addWidget(self.map, 0, Qt.AlignmentFlag.AlignLeft)
        row.addStretch(1)
        row.addWidget(self.forward, 0, Qt.AlignmentFlag.AlignRight)

    def show_turns(self, back: str, forward: str, other_way: str) -> None:
        """Name the page before, the page after, and the other way of showing this one; an empty name takes the link away."""
        self.back.say(f"‹ {back}" if back else "")
        self.forward.say(f"{forward} ›" if forward else "")
        self.map.say(other_way)
        self.setVisible(bool(back or forward or other_way))
