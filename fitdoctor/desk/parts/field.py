"""A field to type in, with its edge painted, a remark at its right, and a sentence below when what was typed cannot be used."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.text import OneLine
from fitdoctor.desk.tokens import CHOSEN, CORNER, HAIR


class Edit(QLineEdit):
    """A line to type in that tells its field of the focus; Escape asks to leave."""

    focusChanged = Signal()
    left = Signal()

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.focusChanged.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.focusChanged.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)


class Field(QWidget):
    """The edge is thread-coloured while one types, stop-coloured while what is typed cannot be used."""

    def __init__(self, look: Look, name: str, says: str, hint: str = "", remark: str = "") -> None:
        super().__init__()
        self.look, self.wrong = look, False
        self.edit = self._make_edit()
        self.edit.setObjectName(name)
        self.edit.setAccessibleName(says)
        self.edit.setPlaceholderText(hint)
        self.edit.setFont(look.font("body"))
        self.edit.setFrame(False)
        self.edit.focusChanged.connect(self.update)
        self.remark = OneLine(look, remark, "small", "ink-2")
        self.remark.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 3, 12, 3)
        row.setSpacing(10)
        row.addWidget(self.edit, 1)
        row.addWidget(self.remark, 0)
        self.setFocusProxy(self.edit)
        self.setCursor(Qt.CursorShape.IBeamCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(look.target())

    def _make_edit(self) -> Edit:
        return Edit()

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(16), self.look.target())

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(6), self.look.target())

    def show_wrong(self, wrong: bool) -> None:
        """Show whether what is typed cannot be used."""
        self.wrong = wrong
        self.update()

    def mousePressEvent(self, _event: QMouseEvent) -> None:
        self.edit.setFocus(Qt.FocusReason.MouseFocusReason)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        room = self.width() - 24 - self.edit.fontMetrics().horizontalAdvance(self.edit.placeholderText())
        self.remark.setVisible(bool(self.remark.said()) and room > self.remark.sizeHint().width() + 20)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        focused = self.edit.hasFocus()
        width = CHOSEN if focused or self.wrong else HAIR
        painter.setPen(QPen(self.look.colour("stop" if self.wrong else "thread" if focused else "edge"), width))
        painter.setBrush(self.look.colour("paper"))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2), CORNER, CORNER)
        painter.end()
