"""Several lines to type in, with the edge of a field; Tab leads on and is not typed."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Signal
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QPlainTextEdit, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.tokens import CHOSEN, CORNER, HAIR


class _Lines(QPlainTextEdit):
    focusChanged = Signal()

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.focusChanged.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.focusChanged.emit()


class TextBox(QWidget):
    """Emits the text when the user changes it."""

    edited = Signal(str)

    def __init__(self, look: Look, name: str, says: str, lines: int = 4) -> None:
        super().__init__()
        self.look = look
        self.edit = _Lines()
        self.edit.setObjectName(name)
        self.edit.setAccessibleName(says)
        self.edit.setFont(look.font("body"))
        self.edit.setTabChangesFocus(True)
        self.edit.setFrameShape(QPlainTextEdit.Shape.NoFrame)
        self.edit.focusChanged.connect(self.update)
        self.edit.textChanged.connect(self._changed)
        self._silent = False
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 6, 8, 6)
        column.addWidget(self.edit)
        self.setFixedHeight(round(look.line("body") * lines) + 24)
        self.setFocusProxy(self.edit)

    def show_text(self, text: str) -> None:
        """Show another text; the cursor stays where nothing changed."""
        if self.edit.toPlainText() != text:
            self._silent = True
            self.edit.setPlainText(text)
            self._silent = False

    def _changed(self) -> None:
        if not self._silent:
            self.edited.emit(self.edit.toPlainText())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        focused = self.edit.hasFocus()
        width = CHOSEN if focused else HAIR
        painter.setPen(QPen(self.look.colour("thread" if focused else "edge"), width))
        painter.setBrush(self.look.colour("paper"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2), CORNER, CORNER)
        painter.end()
