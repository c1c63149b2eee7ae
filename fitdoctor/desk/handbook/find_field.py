"""The field of the look-up: arrows go through what was found while one types on."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent

from fitdoctor.desk.parts.field import Edit, Field

_STEPS = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}
_PAGES = {Qt.Key.Key_PageDown: 1, Qt.Key.Key_PageUp: -1}


class FindEdit(Edit):
    """A line to type in that hands arrows, Enter and the page keys on."""

    moved = Signal(int)
    taken = Signal()
    turned = Signal(int)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in _STEPS:
            self.moved.emit(_STEPS[key])
        elif key in _PAGES:
            self.turned.emit(_PAGES[key])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.taken.emit()
        else:
            super().keyPressEvent(event)


class FindField(Field):
    """The one field of the look-up."""

    edit: FindEdit

    def _make_edit(self) -> Edit:
        return FindEdit()
