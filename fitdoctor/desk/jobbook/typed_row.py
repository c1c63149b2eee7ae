"""A line with something to type at its right: minutes of an operation, the amount used at a mark."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Words
from fitdoctor.errors import FitdoctorError

_FIELD_EM, _ROOMY_EM = 8.2, 22
Read = Callable[[str], float]


class TypedRow(QWidget):
    """Emits the value as soon as it can be read, and None when the field is emptied.

    Args:
        read: text into the value; raises FitdoctorError where it is none.
    """

    typed = Signal(object)

    def __init__(self, look: Look, words: str, remark: str, field: Field, read: Read) -> None:
        super().__init__()
        self.look, self.field, self._read = look, field, read
        self._wrong = Words(look, "", "small", "stop", f"{field.edit.objectName()}-wrong")
        said = Rows()
        said.show_rows([Words(look, words, "row"), Words(look, remark, "small", "ink-2"), self._wrong])
        field.setFixedWidth(look.px(_FIELD_EM))
        field.edit.textEdited.connect(self._type)
        self._line = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._line.setContentsMargins(0, 6, 0, 6)
        self._line.setSpacing(16)
        self._line.addWidget(said, 1, Qt.AlignmentFlag.AlignVCenter)
        self._line.addWidget(field, 0, Qt.AlignmentFlag.AlignVCenter)

    def show_text(self, text: str) -> None:
        """Show a value as it is written."""
        self.field.edit.setText(text)
        self._say_wrong("")

    def _type(self, text: str) -> None:
        try:
            value = self._read(text) if text.strip() else None
        except FitdoctorError as error:
            self._say_wrong(str(error))
            return
        self._say_wrong("")
        self.typed.emit(value)

    def _say_wrong(self, why: str) -> None:
        self._wrong.say(why)
        self.field.show_wrong(bool(why))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        level = event.size().width() > self.look.px(_ROOMY_EM)
        self._line.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)
        self._line.setSpacing(16 if level else 4)
