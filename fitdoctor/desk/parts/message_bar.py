"""What went wrong, or what to know, in a bar above the foot: a sign, a sentence, one way out. It stays until it is closed."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.signs import Sign, paint_sign
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import MARGIN, VERDICT_BAR
from fitdoctor.desk.words import tr


class SignBox(QWidget):
    """A drawn sign in a row."""

    def __init__(self, look: Look, sign: Sign, tone: str, em: float = 1.0) -> None:
        super().__init__()
        self.look, self.sign, self.tone = look, sign, tone
        size = look.px(em)
        self.setFixedSize(QSize(size, size))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        paint_sign(painter, self.sign, QRectF(self.rect()), self.look.colour(self.tone))
        painter.end()


class MessageBar(QWidget):
    """Shows known errors (cross) and remarks (triangle)."""

    closed = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look, self._tone = look, "care"
        self.setObjectName("message")
        self._sign = SignBox(look, "care", "care", 1.2)
        self._words = Words(look, "", "body", name="message-words")
        self._way_out = Button(look, "", "message-button")
        self._close = Link(look, tr("Close this message"), "message-close", "body", big=True)
        self._act: Callable[[], None] | None = None
        self._close.clicked.connect(self.close_message)
        self._way_out.clicked.connect(self._do)
        row = QHBoxLayout(self)
        row.setContentsMargins(MARGIN, 8, MARGIN, 8)
        row.setSpacing(12)
        row.addWidget(self._sign, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self._words, 1, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self._way_out, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self._close, 0, Qt.AlignmentFlag.AlignVCenter)
        self.hide()

    def say(self, text: str, error: bool = True, button: str = "", act: Callable[[], None] | None = None) -> None:
        """Show a message, and one button that helps."""
        self._tone = "stop" if error else "care"
        self._sign.sign, self._sign.tone = ("cross", "stop") if error else ("care", "care")
        self._words.say(text)
        self._act = act
        self._way_out.setVisible(bool(button))
        self._way_out.say(button)
        self.setAccessibleName(text)
        self.show()
        self.update()

    def add(self, text: str) -> None:
        """Say one remark more below those that are shown."""
        shown = self.shown()
        self.say(f"{shown[0]}\n{text}" if shown else text, error=bool(shown and shown[1]))

    def shown(self) -> tuple[str, bool] | None:
        """The message shown just now and whether it is an error, to show it again after a rebuilding."""
        return None if self.isHidden() else (self._words.said(), self._tone == "stop")

    def close_message(self) -> None:
        """Take the message away."""
        self.hide()
        self.closed.emit()

    def _do(self) -> None:
        act = self._act
        self.close_message()
        if act:
            act()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.look.colour(f"{self._tone}-tint"))
        painter.fillRect(0, 0, VERDICT_BAR, self.height(), self.look.colour(self._tone))
        painter.end()
