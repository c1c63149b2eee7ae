"""What a purchase hangs on, in a basted frame: not settled yet."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.message_bar import SignBox
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import CORNER

_EDGE = 2.0


class Basted(QWidget):
    """A question mark, what must be so, and how one sees it."""

    def __init__(self, look: Look, lines: Sequence[tuple[str, str]], name: str) -> None:
        super().__init__()
        self.look = look
        self.setObjectName(name)
        self.setAccessibleName(". ".join(said for said, _ in lines))
        words = QVBoxLayout()
        words.setSpacing(6)
        for at, (said, how) in enumerate(lines):
            words.addWidget(Words(look, said, "body", name=f"{name}-{at + 1}"))
            if how:
                words.addWidget(Words(look, how, "small", "ink-2"))
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 10, 14, 12)
        row.setSpacing(12)
        row.addWidget(SignBox(look, "query", "care", 1.1), 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = QPen(self.look.colour("care"), _EDGE)
        pen.setDashPattern([4, 2.5])
        painter.setPen(pen)
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), CORNER, CORNER)
        painter.end()
